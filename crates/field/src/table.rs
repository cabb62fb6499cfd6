//! The numbers of the computed table, as printed. Method and accuracy stand in [`crate::evenness`].

use crate::evenness::{Row, ThinAt};
use core::f64::consts::LN_2;

/// The Wagner numbers of the columns.
pub const COLUMNS: [f64; 4] = [0.02, 0.1, 0.5, 2.0];

/// A row: values at each column.
pub(crate) struct Entry {
    pub(crate) min: [f64; 4],
    pub(crate) max: [f64; 4],
    pub(crate) inside: Option<[f64; 4]>,
    pub(crate) bottom: Option<[f64; 4]>,
    pub(crate) twentieth: Option<[f64; 4]>,
    pub(crate) thin_at: ThinAt,
}

const fn plain(min: [f64; 4], max: [f64; 4], thin_at: ThinAt) -> Entry {
    Entry {
        min,
        max,
        inside: None,
        bottom: None,
        twentieth: None,
        thin_at,
    }
}

const fn cup(min: [f64; 4], max: [f64; 4], inside: [f64; 4], bottom: [f64; 4]) -> Entry {
    Entry {
        inside: Some(inside),
        bottom: Some(bottom),
        ..plain(min, max, ThinAt::InsideCorner)
    }
}

static BEAD_NEAR: Entry = plain([0.51, 0.56, 0.72, 0.88], [1.85, 1.73, 1.43, 1.17], ThinAt::Back);
static BEAD_FAR: Entry = plain([0.70, 0.73, 0.83, 0.93], [1.42, 1.37, 1.22, 1.09], ThinAt::Back);
static BEAD_BETWEEN: Entry = plain([0.91, 0.93, 0.96, 0.99], [1.18, 1.15, 1.08, 1.03], ThinAt::Girdle);
static ROD_ROUND: Entry = plain([0.87, 0.92, 0.97, 0.99], [1.69, 1.37, 1.12, 1.03], ThinAt::Middle);
static ROD_END_ON: Entry = plain([0.78, 0.85, 0.94, 0.98], [2.3, 1.7, 1.23, 1.07], ThinAt::Middle);
static DISC_AT_1: Entry = Entry {
    twentieth: Some([2.6, 1.8, 1.29, 1.09]),
    ..plain([0.28, 0.38, 0.64, 0.86], [3.2, 2.1, 1.33, 1.10], ThinAt::BackCentre)
};
static DISC_AT_2: Entry = plain([0.30, 0.40, 0.65, 0.87], [3.3, 2.1, 1.34, 1.10], ThinAt::BackCentre);
static DISC_AT_4: Entry = plain([0.45, 0.54, 0.76, 0.91], [3.4, 2.1, 1.35, 1.10], ThinAt::BackCentre);
static DISC_BETWEEN: Entry = plain([0.57, 0.65, 0.82, 0.94], [3.3, 2.1, 1.33, 1.09], ThinAt::BothCentres);
static WIRE_RING: Entry = plain([0.70, 0.82, 0.94, 0.98], [1.26, 1.16, 1.05, 1.02], ThinAt::Inside);
static BAND_ONE_SIDE: Entry = plain([0.31, 0.46, 0.74, 0.91], [2.7, 1.9, 1.31, 1.09], ThinAt::BoreMiddle);
static BAND_ALL_ROUND: Entry = plain([0.29, 0.44, 0.73, 0.91], [2.1, 1.6, 1.19, 1.06], ThinAt::BoreMiddle);
static DOME_TO: Entry = Entry {
    inside: Some([0.36, 0.46, 0.62, 0.80]),
    ..plain([0.12, 0.16, 0.34, 0.65], [4.0, 2.8, 1.7, 1.25], ThinAt::InsidePole)
};
static DOME_AWAY: Entry = plain([0.05, 0.07, 0.22, 0.55], [2.2, 2.0, 1.7, 1.4], ThinAt::InsidePole);
static DOME_BETWEEN: Entry = plain([0.08, 0.11, 0.28, 0.59], [3.0, 2.2, 1.5, 1.2], ThinAt::InsidePole);
static FILIGREE_ONE_SIDE: Entry = plain([0.46, 0.68, 0.89, 0.97], [2.1, 1.6, 1.2, 1.06], ThinAt::Back);
static FILIGREE_BETWEEN: Entry = plain([0.69, 0.80, 0.92, 0.97], [2.0, 1.5, 1.18, 1.05], ThinAt::Back);
static FILIGREE_3_ONE_SIDE: Entry = plain([0.06, 0.21, 0.58, 0.85], [5.4, 3.5, 1.9, 1.3], ThinAt::HiddenLayer);
static FILIGREE_3_BETWEEN: Entry = plain([0.13, 0.36, 0.70, 0.90], [3.4, 2.4, 1.5, 1.15], ThinAt::HiddenLayer);

/// Depth over opening of the cups, each twice the one before.
pub(crate) const DEPTHS: [f64; 4] = [0.25, 0.5, 1.0, 2.0];
static CUPS: [Entry; 4] = [
    cup([0.02, 0.12, 0.43, 0.74], [3.8, 2.7, 1.7, 1.2], [0.38, 0.48, 0.66, 0.84], [0.56, 0.62, 0.74, 0.87]),
    cup([0.01, 0.04, 0.22, 0.54], [5.0, 3.5, 2.0, 1.4], [0.32, 0.40, 0.53, 0.72], [0.27, 0.32, 0.46, 0.67]),
    cup([0.0, 0.01, 0.06, 0.28], [7.7, 5.2, 2.8, 1.7], [0.29, 0.35, 0.45, 0.58], [0.04, 0.06, 0.14, 0.35]),
    cup([0.0, 0.0, 0.0, 0.06], [13.0, 9.0, 4.7, 2.6], [0.28, 0.34, 0.41, 0.48], [0.0, 0.0, 0.01, 0.08]),
];

/// Where a cup stands between two computed ones.
pub(crate) struct CupPlace {
    pub(crate) shallower: &'static Entry,
    pub(crate) deeper: &'static Entry,
    /// 0 at the shallower, 1 at the deeper.
    pub(crate) along: f64,
    pub(crate) before_shallowest: bool,
    pub(crate) beyond_deepest: bool,
}

impl CupPlace {
    pub(crate) fn between<const N: usize>(&self, x: &[f64; N], y: &[f64; N]) -> [f64; N] {
        core::array::from_fn(|n| x[n] + self.along * (y[n] - x[n]))
    }

    pub(crate) fn between_both(&self, x: &Option<[f64; 4]>, y: &Option<[f64; 4]>) -> Option<[f64; 4]> {
        x.as_ref().zip(y.as_ref()).map(|(x, y)| self.between(x, y))
    }
}

pub(crate) fn cup_place(depth: f64) -> CupPlace {
    let at = |k: usize, beyond_deepest, before_shallowest| CupPlace {
        shallower: &CUPS[k],
        deeper: &CUPS[k],
        along: 0.0,
        before_shallowest,
        beyond_deepest,
    };
    if depth < DEPTHS[0] {
        return at(0, false, true);
    }
    match DEPTHS[..3].iter().rposition(|&d| depth >= d) {
        Some(k) if depth < DEPTHS[k + 1] => CupPlace {
            shallower: &CUPS[k],
            deeper: &CUPS[k + 1],
            along: libm::log(depth / DEPTHS[k]) / LN_2,
            before_shallowest: false,
            beyond_deepest: false,
        },
        // Deeper than the deepest, or not a number.
        _ => at(3, !matches!(depth.partial_cmp(&DEPTHS[3]), Some(o) if o.is_le()), false),
    }
}

/// The row as printed; a cup's is found by [`cup_place`], its shallowest stands for it here.
pub(crate) fn entry(row: Row) -> &'static Entry {
    match row {
        Row::BeadNear => &BEAD_NEAR,
        Row::BeadFar => &BEAD_FAR,
        Row::BeadBetween => &BEAD_BETWEEN,
        Row::RodRound => &ROD_ROUND,
        Row::RodEndOn => &ROD_END_ON,
        Row::DiscAt1 => &DISC_AT_1,
        Row::DiscAt2 => &DISC_AT_2,
        Row::DiscAt4 => &DISC_AT_4,
        Row::DiscBetween => &DISC_BETWEEN,
        Row::WireRing => &WIRE_RING,
        Row::BandOneSide => &BAND_ONE_SIDE,
        Row::BandAllRound => &BAND_ALL_ROUND,
        Row::DomeTo => &DOME_TO,
        Row::DomeAway => &DOME_AWAY,
        Row::DomeBetween => &DOME_BETWEEN,
        Row::Cup { .. } => &CUPS[0],
        Row::FiligreeOneSide => &FILIGREE_ONE_SIDE,
        Row::FiligreeBetween => &FILIGREE_BETWEEN,
        Row::FiligreeThreeOneSide => &FILIGREE_3_ONE_SIDE,
        Row::FiligreeThreeBetween => &FILIGREE_3_BETWEEN,
    }
}
