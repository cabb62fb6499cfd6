//! The computed table: local over mean density on the whole wetted piece.
//!
//! Finite elements (axisymmetric or plane P1), insulating jar, unpolarised anode, linear kinetics, rims rounded to 0.02 of
//! the scale; meshes agree to 2 % (3 % at the lowest Wagner number) or 0.01. Against a straight slope a logarithmic one
//! leaves the thin place thicker, so the thinnest here is on the safe side; the rim may be up to 30 % low below Wa 0.5. A
//! second method (boundary elements) brought back bead, disc at two scales, ring, rod, dome and cups half and once as deep
//! as wide to 2 % or 0.02 in one fitted set-up; the other rows stand on one method. The width of the jar matters more than
//! the distance.

use crate::table::{COLUMNS, Entry, cup_place, entry};
use quantity::{Quantity, Ratio};
use serde::Serialize;

/// Where the counter electrode stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Arrangement {
    /// One counter electrode, the piece not turned.
    #[default]
    OneSide,
    /// Between two.
    BothSides,
    /// One, the piece turned half-way: as between two (derived).
    Turned,
    /// All round the piece.
    AllRound,
}

/// Which way a hollow looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Opening {
    /// Towards the counter electrode.
    #[default]
    To,
    /// Away from it.
    Away,
}

/// A row of the table. L is the scale of the piece, d the distance to the counter electrode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Row {
    /// Ball, one anode at 3 L in a jar of radius 3 L.
    BeadNear,
    /// Ball, one anode at 6 L in a jar of radius 4 L.
    BeadFar,
    /// Ball, two anodes at 3 L, jar radius 3 L.
    BeadBetween,
    /// Rod ten diameters long with round ends, anode round it at 1 L.
    RodRound,
    /// The same, end-on to one anode.
    RodEndOn,
    /// Leaf or disc, one anode at 1 L.
    DiscAt1,
    /// Leaf or disc, one anode at 2 L, jar radius 2 L.
    DiscAt2,
    /// Leaf or disc, one anode at 4 L, wide tank.
    DiscAt4,
    /// Leaf or disc between two anodes at 2 L.
    DiscBetween,
    /// Ring of round wire 0.2 L thick, one anode or all round, jar radius 3 L. (Between two at Wa 0.02: 0.73 and 1.21.)
    WireRing,
    /// Band ring 0.6 L wide, wall 0.15 L, one anode.
    BandOneSide,
    /// Band ring, anode all round.
    BandAllRound,
    /// Half-sphere shell, opening to the anode.
    DomeTo,
    /// Half-sphere shell, back to the anode.
    DomeAway,
    /// Half-sphere shell between two.
    DomeBetween,
    /// Cup, opening to the anode. Computed at a quarter, half, once and twice the opening deep; between these straight
    /// against the logarithm of depth over opening (a choice; against a line over the depth itself it leaves the thinnest
    /// thinner and the rim thicker, the safe side). Never beyond: a shallower cup takes the first row, marked `at_worst`, a
    /// deeper one the last, marked `at_best`.
    Cup {
        /// Depth over opening, above 0.
        depth_over_opening: Ratio,
    },
    /// One layer of wire a third of its pitch thick, one anode.
    FiligreeOneSide,
    /// The same, two anodes.
    FiligreeBetween,
    /// Three layers, one anode.
    FiligreeThreeOneSide,
    /// Three layers, two anodes.
    FiligreeThreeBetween,
}

impl Row {
    /// Every row of the table, the cup at each computed depth.
    pub const ALL: &'static [Row] = &[
        Row::BeadNear,
        Row::BeadFar,
        Row::BeadBetween,
        Row::RodRound,
        Row::RodEndOn,
        Row::DiscAt1,
        Row::DiscAt2,
        Row::DiscAt4,
        Row::DiscBetween,
        Row::WireRing,
        Row::BandOneSide,
        Row::BandAllRound,
        Row::DomeTo,
        Row::DomeAway,
        Row::DomeBetween,
        Row::cup(0.25),
        Row::cup(0.5),
        Row::cup(1.0),
        Row::cup(2.0),
        Row::FiligreeOneSide,
        Row::FiligreeBetween,
        Row::FiligreeThreeOneSide,
        Row::FiligreeThreeBetween,
    ];

    const fn cup(depth_over_opening: f64) -> Self {
        Row::Cup {
            depth_over_opening: Ratio::of_si(depth_over_opening),
        }
    }

    /// Its id; the cup's is one whatever its depth.
    pub fn id(self) -> &'static str {
        match self {
            Row::BeadNear => "bead_near",
            Row::BeadFar => "bead_far",
            Row::BeadBetween => "bead_between",
            Row::RodRound => "rod_round",
            Row::RodEndOn => "rod_end_on",
            Row::DiscAt1 => "disc_at_1",
            Row::DiscAt2 => "disc_at_2",
            Row::DiscAt4 => "disc_at_4",
            Row::DiscBetween => "disc_between",
            Row::WireRing => "wire_ring",
            Row::BandOneSide => "band_one_side",
            Row::BandAllRound => "band_all_round",
            Row::DomeTo => "dome_to",
            Row::DomeAway => "dome_away",
            Row::DomeBetween => "dome_between",
            Row::Cup { .. } => "cup",
            Row::FiligreeOneSide => "filigree_one_side",
            Row::FiligreeBetween => "filigree_between",
            Row::FiligreeThreeOneSide => "filigree_three_one_side",
            Row::FiligreeThreeBetween => "filigree_three_between",
        }
    }
}

/// Where the layer is thinnest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ThinAt {
    /// The side towards the axis.
    Inside,
    /// The middle of the bore.
    BoreMiddle,
    /// The side away from the anode.
    Back,
    /// Round the middle, between two anodes.
    Girdle,
    /// Half-way along.
    Middle,
    /// The middle of the side away from the anode.
    BackCentre,
    /// The middles of both sides.
    BothCentres,
    /// The deepest point inside.
    InsidePole,
    /// The corner between wall and bottom, inside.
    InsideCorner,
    /// The layer in between.
    HiddenLayer,
}

impl ThinAt {
    /// Every place, for tables that must be complete.
    pub const ALL: &'static [ThinAt] = &[
        ThinAt::Inside,
        ThinAt::BoreMiddle,
        ThinAt::Back,
        ThinAt::Girdle,
        ThinAt::Middle,
        ThinAt::BackCentre,
        ThinAt::BothCentres,
        ThinAt::InsidePole,
        ThinAt::InsideCorner,
        ThinAt::HiddenLayer,
    ];
}

/// How the layer spreads over the piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evenness {
    /// Thinnest over mean, 0 to 1; 0 in a deep cup, where it is below 0.005.
    pub min_over_mean: Ratio,
    /// Thickest over mean, 1 or more.
    pub max_over_mean: Ratio,
    /// Mean of the inside over the whole mean; for dome and cup with the opening to the anode.
    pub inside_over_mean: Option<Ratio>,
    /// Middle of the bottom over the whole mean; for cups.
    pub bottom_over_mean: Option<Ratio>,
    /// Passed on a twentieth of the area; for the disc at one scale from its anode.
    pub twentieth_over_mean: Option<Ratio>,
    /// Where it is thinnest.
    pub thin_at: ThinAt,
    /// The Wagner number lies below the table, or a cup is deeper: the piece is no more even than this.
    pub at_best: bool,
    /// A cup is shallower than the table: the piece is no less even than this.
    pub at_worst: bool,
}

/// What of [`Evenness`] an amount of metal follows from: all that a sample of many needs. Not numbers where the row, or the
/// Wagner number, is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends {
    /// Thinnest over mean.
    pub min_over_mean: Ratio,
    /// Thickest over mean.
    pub max_over_mean: Ratio,
    /// Mean of the inside over the whole mean; a number for dome and cup with the opening to the anode.
    pub inside_over_mean: Ratio,
}

/// Where a row's layer is thinnest.
pub fn thin_at(row: Row) -> ThinAt {
    entry(row).thin_at
}

/// A row looked up once, to be read at many Wagner numbers: thinnest, thickest and inside at each column, and beyond all of
/// them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve([[f64; 3]; 5]);

impl Curve {
    /// Where no row is known.
    pub const UNKNOWN: Self = Self([[f64::NAN; 3]; 5]);

    /// Of a row; a cup's stands between two computed ones.
    pub fn of(row: Row) -> Self {
        let found = |entry: &Entry| {
            core::array::from_fn(|n| {
                let inside = entry.inside.map_or(f64::NAN, |v| v[n]);
                [entry.min[n], entry.max[n], inside]
            })
        };
        let Row::Cup { depth_over_opening } = row else {
            return Self(beyond(found(entry(row))));
        };
        let place = cup_place(depth_over_opening.si());
        let (a, b) = (found(place.shallower), found(place.deeper));
        Self(beyond(core::array::from_fn(|n| {
            place.between(&a[n], &b[n])
        })))
    }

    /// The same on a piece with points or hairs: its thickest place 1.3 times the rim. Common practice, no source.
    pub fn on_points(self) -> Self {
        Self(self.0.map(|[min, max, inside]| [min, max * 1.3, inside]))
    }

    /// Whether there is a row.
    pub fn is_known(&self) -> bool {
        let [[min, ..], ..] = self.0;
        !min.is_nan()
    }

    /// Its ends at a Wagner number.
    pub fn ends(&self, wagner: &Along) -> Ends {
        let [min, max, inside] = wagner.among(&self.0);
        Ends {
            min_over_mean: Ratio::from_si(min),
            max_over_mean: Ratio::from_si(max),
            inside_over_mean: Ratio::from_si(inside),
        }
    }

    /// Thinnest over mean at a Wagner number.
    pub fn thinnest(&self, wagner: &Along) -> Ratio {
        let [min, ..] = wagner.among(&self.0);
        Ratio::from_si(min)
    }
}

/// Columns with what lies beyond them: all even, where a ratio is known.
fn beyond<const N: usize>(columns: [[f64; N]; 4]) -> [[f64; N]; 5] {
    let [a, b, c, d] = columns;
    [a, b, c, d, d.map(|x| if x.is_nan() { x } else { 1.0 })]
}

/// Thinnest and thickest over mean at a Wagner number: straight lines against ln Wa between the columns; above the last,
/// the rest to 1 falls as 2 / Wa (derived); below the first, and for what is not a number, its values, marked `at_best`.
pub fn evenness(row: Row, wagner: Ratio) -> Evenness {
    let below = wagner.si().is_nan() || wagner.si() < COLUMNS[0];
    let along = if below {
        Along::FIRST
    } else {
        Along::of(wagner)
    };
    let of = |v: &Option<[f64; 4]>| {
        v.as_ref().map(|v| {
            let [x] = along.among(&beyond(v.map(|x| [x])));
            Ratio::from_si(x)
        })
    };
    let place = match row {
        Row::Cup { depth_over_opening } => Some(cup_place(depth_over_opening.si())),
        _ => None,
    };
    let Ends {
        min_over_mean,
        max_over_mean,
        inside_over_mean,
    } = Curve::of(row).ends(&along);
    Evenness {
        min_over_mean,
        max_over_mean,
        inside_over_mean: Some(inside_over_mean).filter(|x| !x.si().is_nan()),
        bottom_over_mean: of(&match &place {
            Some(p) => p.between_both(&p.shallower.bottom, &p.deeper.bottom),
            None => entry(row).bottom,
        }),
        twentieth_over_mean: of(&entry(row).twentieth),
        thin_at: thin_at(row),
        at_best: below || place.as_ref().is_some_and(|p| p.beyond_deepest),
        at_worst: place.is_some_and(|p| p.before_shallowest),
    }
}

/// Where a Wagner number lies among the columns: how far on the way from one to the next. Which column is found without a
/// branch, since no processor could foretell where the next sample lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Along {
    column: usize,
    way: f64,
}

/// Natural logarithms of the columns.
const LN_COLUMNS: [f64; 4] = [
    -3.912_023_005_428_146,
    -2.302_585_092_994_045_5,
    -core::f64::consts::LN_2,
    core::f64::consts::LN_2,
];
/// One over the way from each to the next; beyond the last there is none.
const PER_STEP: [f64; 4] = [
    1.0 / 1.609_437_912_434_100_3,
    1.0 / 1.609_437_912_434_100_3,
    1.0 / 1.386_294_361_119_890_6,
    0.0,
];

impl Along {
    /// At the first column.
    const FIRST: Self = Self {
        column: 0,
        way: 0.0,
    };

    /// Of a Wagner number.
    pub fn of(wagner: Ratio) -> Self {
        Self::of_ln(libm::log(wagner.si()))
    }

    /// Of a Wagner number's natural logarithm.
    pub fn of_ln(ln: f64) -> Self {
        let passed = |n: usize| usize::from(ln >= LN_COLUMNS[n]);
        let column = passed(1) + passed(2) + passed(3);
        let over = ln - LN_COLUMNS[column];
        let way = if column == 3 {
            // The rest to 1 falls as the Wagner number rises.
            1.0 - libm::exp(-over)
        } else {
            over * PER_STEP[column]
        };
        // What is not a number stays none.
        let way = if way < 0.0 { 0.0 } else { way };
        Self { column, way }
    }

    /// Each of some values that are known at the columns and beyond.
    fn among<const N: usize>(&self, values: &[[f64; N]; 5]) -> [f64; N] {
        // Of four places, which the compiler cannot know.
        let column = self.column % 4;
        let (a, b) = (&values[column], &values[column + 1]);
        core::array::from_fn(|n| a[n] + self.way * (b[n] - a[n]))
    }
}
