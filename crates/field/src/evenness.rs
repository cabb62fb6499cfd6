//! The computed table: local over mean density on the whole wetted piece.
//!
//! Finite elements (axisymmetric or plane P1), insulating jar, unpolarised anode, linear kinetics, rims rounded to 0.02 of
//! the scale; meshes agree to 2 % (3 % at the lowest Wagner number). Against a straight slope a logarithmic one leaves the thin
//! place thicker, so the thinnest here is on the safe side; the rim may be up to 30 % low below Wa 0.5.

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
    /// One, the piece turned half-way.
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

/// A row of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Row {
    /// Ring of round wire, one anode or all round, jar radius 3 times the scale.
    WireRing,
    /// Band ring, one anode.
    BandOneSide,
    /// Band ring, anode all round.
    BandAllRound,
}

/// Where the layer is thinnest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ThinPlace {
    /// The side towards the axis.
    Inside,
    /// The middle of the bore.
    BoreMiddle,
}

/// How the layer spreads over the piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evenness {
    /// Thinnest over mean, 0 to 1.
    pub min_over_mean: Ratio,
    /// Thickest over mean, 1 or more.
    pub max_over_mean: Ratio,
    /// Where it is thinnest.
    pub thin_place: ThinPlace,
    /// The Wagner number lies below the table: the values are at best.
    pub at_best: bool,
}

/// The Wagner numbers of the columns.
pub const COLUMNS: [f64; 4] = [0.02, 0.1, 0.5, 2.0];

struct Entry {
    min: [f64; 4],
    max: [f64; 4],
    thin_place: ThinPlace,
}

fn entry(row: Row) -> Entry {
    match row {
        Row::WireRing => Entry {
            min: [0.70, 0.82, 0.94, 0.98],
            max: [1.26, 1.16, 1.05, 1.02],
            thin_place: ThinPlace::Inside,
        },
        Row::BandOneSide => Entry {
            min: [0.31, 0.46, 0.74, 0.91],
            max: [2.7, 1.9, 1.31, 1.09],
            thin_place: ThinPlace::BoreMiddle,
        },
        Row::BandAllRound => Entry {
            min: [0.29, 0.44, 0.73, 0.91],
            max: [2.1, 1.6, 1.19, 1.06],
            thin_place: ThinPlace::BoreMiddle,
        },
    }
}

/// Thinnest and thickest over mean at a Wagner number: straight lines against ln Wa between the columns; above the last,
/// the rest to 1 falls as 2 / Wa; below the first, its values, marked `at_best`.
pub fn evenness(row: Row, wagner: Ratio) -> Evenness {
    let entry = entry(row);
    let wa = wagner.si();
    Evenness {
        min_over_mean: Ratio::from_si(look_up(&entry.min, wa)),
        max_over_mean: Ratio::from_si(look_up(&entry.max, wa)),
        thin_place: entry.thin_place,
        at_best: !(wa >= COLUMNS[0]),
    }
}

fn look_up(values: &[f64; 4], wa: f64) -> f64 {
    if !(wa > COLUMNS[0]) {
        return values[0];
    }
    if wa >= COLUMNS[3] {
        return 1.0 - (1.0 - values[3]) * COLUMNS[3] / wa;
    }
    let left = COLUMNS.iter().rposition(|&c| wa >= c).unwrap_or(0);
    let (a, b) = (COLUMNS[left], COLUMNS[left + 1]);
    let along = libm::log(wa / a) / libm::log(b / a);
    values[left] + along * (values[left + 1] - values[left])
}
