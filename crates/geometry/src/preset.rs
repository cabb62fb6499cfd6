//! Finds: what people bring in from a walk, each with the shapes it starts from, its usual texture, spread and hanger.

use crate::outline::{Ring, oval, strip};
use crate::shape::{Covering, LeafForm, Shape};
use crate::source::{Source, Sourced};
use crate::surface::Surface;
use quantity::{Band, Fraction, Length, Quantity, Ratio};

/// A find.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Preset {
    /// Its id; never renamed or reused.
    pub id: &'static str,
    /// The shapes it is put together from, at a usual size (judgement); the first carries the picture.
    pub parts: &'static [PresetPart],
    /// How far such a sum lies from the truth, two in three.
    pub spread: Sourced<Fraction>,
    /// The wire it usually hangs on.
    pub hanger: Sourced<HangerWire>,
}

/// One shape of a find.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PresetPart {
    /// The shape at a usual size.
    pub shape: Shape,
    /// Real over smooth surface outside: lowest, typical, highest; 1 or more.
    pub texture: Sourced<Band<Ratio>>,
    /// How often it stands on the find.
    pub times: u32,
}

/// A hanger wire and how much of it is wetted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HangerWire {
    /// Diameter.
    pub wire_d: Length,
    /// Wetted length.
    pub wet: Length,
}

impl Preset {
    /// The preset with this id.
    pub fn of_id(id: &str) -> Option<&'static Preset> {
        PRESETS.iter().find(|p| p.id == id)
    }

    /// The find as a small picture: its first shape's, or its own where that would not be known again.
    pub fn outline(&self) -> Vec<Ring> {
        match (self.id, self.parts.first()) {
            ("beetle", _) => beetle(),
            (_, Some(part)) => part.shape.outline(),
            (_, None) => Vec::new(),
        }
    }

    /// The surface at the usual sizes and textures; texture counts outside only.
    pub fn surface(&self) -> Option<Surface> {
        self.parts
            .iter()
            .map(|part| {
                let smooth = part.shape.surface().times(part.times);
                Surface {
                    outside: smooth.outside * part.texture.value.typ.si(),
                    ..smooth
                }
            })
            .reduce(Surface::and)
    }
}

/// From above: body with closed wing cases, head, six legs.
fn beetle() -> Vec<Ring> {
    let leg = |y: f64, reach: f64, sign: f64| {
        strip(
            &[
                (sign * 5.5e-3, y),
                (sign * 9e-3, y + reach / 2.0),
                (sign * 11e-3, y + reach),
            ],
            1.2e-3,
        )
    };
    let mut picture = vec![
        oval(12e-3, 18e-3).moved(0.0, -2e-3),
        oval(7e-3, 5e-3).moved(0.0, 9.2e-3),
        strip(&[(0.0, -10e-3), (0.0, 4e-3)], 0.8e-3).cut(),
        strip(&[(-5.0e-3, 4e-3), (5.0e-3, 4e-3)], 0.8e-3).cut(),
    ];
    for sign in [1.0, -1.0] {
        picture.extend([
            leg(2e-3, 5e-3, sign),
            leg(-2e-3, -1e-3, sign),
            leg(-6e-3, -5e-3, sign),
        ]);
    }
    picture
}

const fn mm(value: f64) -> Length {
    Length::mm(value)
}

const fn texture(min: f64, typ: f64, max: f64, source: Source) -> Sourced<Band<Ratio>> {
    Sourced {
        value: Band {
            min: Ratio::of_si(min),
            typ: Ratio::of_si(typ),
            max: Ratio::of_si(max),
        },
        source,
    }
}

const fn practice(min: f64, typ: f64, max: f64) -> Sourced<Band<Ratio>> {
    texture(min, typ, max, Source::CommonPractice)
}

const fn part(shape: Shape, texture: Sourced<Band<Ratio>>) -> PresetPart {
    PresetPart {
        shape,
        texture,
        times: 1,
    }
}

const SMOOTH: Sourced<Band<Ratio>> = practice(1.0, 1.0, 1.05);
const LEAF: Sourced<Band<Ratio>> = practice(1.05, 1.1, 1.3);

/// Ideal forms under natural pieces.
const NATURAL: Sourced<Fraction> = Sourced {
    value: Fraction::of_si(0.20),
    source: Source::CommonPractice,
};
/// Ideal forms under smooth pieces.
const PLAIN: Sourced<Fraction> = Sourced {
    value: Fraction::of_si(0.10),
    source: Source::CommonPractice,
};

const THIN_WIRE: Sourced<HangerWire> = Sourced {
    value: HangerWire {
        wire_d: mm(0.8),
        wet: mm(20.0),
    },
    source: Source::CommonPractice,
};
const WIRE: Sourced<HangerWire> = Sourced {
    value: HangerWire {
        wire_d: mm(1.0),
        wet: mm(15.0),
    },
    source: Source::CommonPractice,
};

const fn natural(
    id: &'static str,
    parts: &'static [PresetPart],
    hanger: Sourced<HangerWire>,
) -> Preset {
    Preset {
        id,
        parts,
        spread: NATURAL,
        hanger,
    }
}

const fn leaf(length: f64, width: f64, form: LeafForm) -> Shape {
    Shape::Leaf {
        length: mm(length),
        width: mm(width),
        form,
    }
}

/// All finds. Textures are common practice without a source except where said.
#[rustfmt::skip]
pub const PRESETS: &[Preset] = &[
    natural("leaf", &[part(leaf(60.0, 30.0, LeafForm::Elliptic), LEAF)], THIN_WIRE),
    natural("willow_leaf", &[part(leaf(70.0, 14.0, LeafForm::Lanceolate), LEAF)], THIN_WIRE),
    natural("maple_leaf", &[part(leaf(60.0, 60.0, LeafForm::Lobed), LEAF)], THIN_WIRE),
    natural("ginkgo_leaf", &[part(leaf(45.0, 60.0, LeafForm::Fan), LEAF)], THIN_WIRE),
    natural("petal", &[part(leaf(30.0, 25.0, LeafForm::Round), practice(1.05, 1.05, 1.1))], THIN_WIRE),
    natural("fern", &[part(leaf(90.0, 40.0, LeafForm::Fern), LEAF)], THIN_WIRE),
    natural("feather", &[part(Shape::Feather { length: mm(60.0), width: mm(15.0) }, practice(1.2, 1.35, 1.5))], THIN_WIRE),
    // A model of ball or ellipsoid was 15 and 18 % too small on apples: 1/0.85 and 1/0.82.
    natural("pod", &[part(
        Shape::Ellipsoid { length: mm(40.0), width: mm(15.0), height: mm(12.0) },
        texture(1.0, 1.18, 1.22, Source::Published { work: "apple_surface", locator: "abstract" }),
    )], WIRE),
    natural("acorn_cap", &[part(
        Shape::Cap { outer_d: mm(18.0), inner_d: mm(16.0), height: mm(9.0) },
        practice(1.2, 1.3, 1.4),
    )], WIRE),
    natural("shell", &[part(
        Shape::Shell { length: mm(35.0), width: mm(30.0), height: mm(10.0) },
        practice(1.1, 1.2, 1.3),
    )], WIRE),
    natural("snail_shell", &[part(
        Shape::Snail { diameter: mm(20.0), height: mm(18.0) },
        practice(1.2, 1.3, 1.4),
    )], WIRE),
    natural("twig", &[part(
        Shape::Twig { base_d: mm(6.0), top_d: mm(3.0), length: mm(60.0) },
        practice(1.1, 1.2, 1.3),
    )], WIRE),
    // The whole surface is 2.5 to 5 times the envelope; only the outer scales take current, and that part is meant here.
    natural("seed_head", &[part(
        Shape::SeedHead { diameter: mm(25.0), height: mm(35.0) },
        practice(1.5, 2.0, 2.5),
    )], WIRE),
    Preset {
        id: "crystal",
        parts: &[part(
            Shape::Crystal { flats: mm(12.0), height: mm(25.0), point: mm(8.0), base: Covering::Covered },
            SMOOTH,
        )],
        spread: PLAIN,
        hanger: WIRE,
    },
    // A body, two wing cases or wings, six legs.
    natural("beetle", &[
        part(Shape::Ellipsoid { length: mm(22.0), width: mm(12.0), height: mm(8.0) }, practice(1.1, 1.2, 1.3)),
        PresetPart { shape: leaf(18.0, 7.0, LeafForm::Lens), texture: practice(1.0, 1.05, 1.1), times: 2 },
        PresetPart {
            shape: Shape::Rod { diameter: mm(0.8), length: mm(12.0), ends: Covering::Covered },
            texture: practice(1.0, 1.0, 1.2),
            times: 6,
        },
    ], THIN_WIRE),
];
