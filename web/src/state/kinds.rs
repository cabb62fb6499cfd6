//! What a piece can be: finds and plain shapes, each with the sizes it asks for.

use super::at;
use super::draft::Draft;
use super::pieces;
use super::units::Units;
use planner::{Preset, Shape};
use quantity::print::significant;
use quantity::{Length, Quantity, Ratio};

/// A kind of piece that is described by sizes.
#[derive(Clone, Debug, PartialEq)]
pub struct Kind {
    /// Its word in the draft: a find's or a shape's id.
    pub word: &'static str,
    /// What it is put together from, at a usual size. The sizes of the first are asked; the others keep their proportion.
    pub parts: Vec<KindPart>,
}

/// One shape of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KindPart {
    /// At its usual size.
    pub shape: Shape,
    /// Real over smooth surface outside.
    pub texture: Option<Ratio>,
    /// How often it stands on the piece.
    pub times: u32,
}

/// The kinds offered for growing and thin coats, the most asked for first.
pub const GROWN: &[&str] = &[
    "leaf",
    "acorn_cap",
    "torus",
    "band",
    "pod",
    "fern",
    "feather",
    "shell",
    "twig",
    "seed_head",
    "crystal",
    "beetle",
    "sphere",
    "disc",
    "sheet",
    "rod",
    "cup",
    "willow_leaf",
    "maple_leaf",
    "ginkgo_leaf",
    "petal",
    "snail_shell",
    "half_round",
    "dome",
    "bezel",
    "chain",
    "link",
    "coil",
    "twisted_pair",
    "mesh",
    "pierced_sheet",
    "ellipsoid",
    "half_ellipsoid",
    "cone",
    "frustum",
    "box",
    "tube",
    "hole",
];

/// The kinds offered for etching: flat ones.
pub const ETCHED: &[&str] = &["sheet", "disc", "pierced_sheet"];

/// How many of them stand before "more".
pub const FIRST: usize = 4;

/// The kind of this word; none for `area` and unknown words.
pub fn of(word: &str) -> Option<Kind> {
    if let Some(preset) = Preset::of_id(word) {
        let parts = preset
            .parts
            .iter()
            .map(|p| KindPart {
                shape: p.shape,
                texture: Some(p.texture.value.typ),
                times: p.times,
            })
            .collect();
        return Some(Kind {
            word: preset.id,
            parts,
        });
    }
    let shape = Shape::of_id(word)?;
    Some(Kind {
        word: shape.id(),
        parts: vec![KindPart {
            shape,
            texture: None,
            times: 1,
        }],
    })
}

const PART_IDS: [&str; 6] = ["a", "b", "c", "d", "e", "f"];

/// The id of a kind's part by its place.
pub fn part_id(n: usize) -> &'static str {
    PART_IDS[n % PART_IDS.len()]
}

/// The address of a size of a kind's first part.
fn address(piece: &str, shape: &Shape, size: &str) -> String {
    [
        "pieces/",
        piece,
        "/extent/parts/a/shape/",
        shape.id(),
        "/",
        size,
    ]
    .concat()
}

/// What a shape has a number of, by its usual number.
fn number_of(shape: &Shape) -> Option<(&'static str, u32)> {
    match *shape {
        Shape::PiercedSheet { holes, .. } => Some(("holes", holes)),
        Shape::Mesh { layers, .. } => Some(("layers", layers)),
        _ => None,
    }
}

/// The same shape with another number of them.
pub fn numbered(shape: Shape, number: u32) -> Shape {
    let mut shape = shape;
    if let Shape::PiercedSheet { holes: n, .. } | Shape::Mesh { layers: n, .. } = &mut shape {
        *n = number;
    }
    shape
}

/// The address of that number, where the kind has one.
pub fn number_address(piece: &str, kind: &Kind) -> Option<String> {
    let shape = &kind.parts.first()?.shape;
    number_of(shape).map(|(name, _)| address(piece, shape, name))
}

/// The addresses of the sizes a kind asks for.
pub fn addresses(piece: &str, kind: &Kind) -> Vec<String> {
    let Some(first) = kind.parts.first() else {
        return Vec::new();
    };
    first
        .shape
        .size_names()
        .iter()
        .map(|name| address(piece, &first.shape, name))
        .collect()
}

/// Gives a piece the usual sizes of the kind it was picked to be, where it has none of its own.
pub fn fill_in(draft: &mut Draft, piece: &str, word: &str) {
    let Some(kind) = of(word) else { return };
    let Some(first) = kind.parts.first() else {
        return;
    };
    if let Some((name, number)) = number_of(&first.shape) {
        let at = address(piece, &first.shape, name);
        if draft.text(&at).is_empty() {
            draft.put(&at, &number.to_string(), true);
        }
    }
    first.shape.map_sizes(|n, size| {
        let at = address(piece, &first.shape, first.shape.size_names()[n]);
        if draft.text(&at).is_empty() {
            let mut text = in_mm(size);
            if Units::of(draft) != Units::Metric {
                text.push_str(" mm");
            }
            draft.put(&at, &text, true);
        }
        size
    });
}

/// The same for every piece of a draft.
pub fn fill_in_all(draft: &mut Draft) {
    let all: Vec<String> = pieces::ids(draft).into_iter().map(str::to_owned).collect();
    for piece in all {
        let shape = draft.scoped(&at::of(at::SHAPE, &piece)).to_owned();
        fill_in(draft, &piece, &shape);
    }
}

fn in_mm(size: Length) -> String {
    let text = significant(size.in_unit(&Length::UNITS[0]), 3);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_offered_is_known_and_asks_for_at_most_four_sizes() {
        for word in GROWN.iter().chain(ETCHED) {
            let kind = of(word);
            assert!(kind.is_some(), "{word}");
            let asked = kind.map(|k| addresses("p1", &k).len()).unwrap_or_default();
            assert!((1..=4).contains(&asked), "{word} asks for {asked}");
        }
    }

    /// A cap stands there as the acorn's, a snail as its shell.
    #[test]
    fn every_shape_can_be_picked() {
        for id in Shape::IDS {
            let by_preset = ["cap", "snail"].contains(id);
            assert_eq!(GROWN.contains(id), !by_preset, "{id}");
        }
    }
}
