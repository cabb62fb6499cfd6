//! The fixed sample points. Every uncertain input has one variate, named by its address, so that two results that share
//! an input move together and the same job always gives the same range.

use std::cell::RefCell;
use std::rc::Rc;

/// How many points a range is made of.
pub const POINTS: usize = 512;

/// How many shuffles are kept.
const MOST_KEPT: usize = 256;

thread_local! {
    /// Shuffles that were made already, by their seed, in its order: one question after the other has the same inputs, and
    /// shuffling them anew would cost a twentieth of an answer.
    static KEPT: RefCell<Vec<(u64, Rc<[u16; POINTS]>)>> = const { RefCell::new(Vec::new()) };
}

/// The ranks of one input over all points: a shuffle of 0 to 511 that depends on the input's name alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Variate {
    ranks: Rc<[u16; POINTS]>,
}

impl Variate {
    /// The variate of the input called `name`: Fisher-Yates from the last place down, drawing with splitmix64 seeded by
    /// FNV-1a 64 of the name's bytes; a draw below n is the high word of the 128-bit product with n.
    pub fn of(name: &str) -> Self {
        let seed = fnv1a(name.as_bytes());
        let ranks = KEPT.with_borrow_mut(|kept| {
            let mut place = match kept.binary_search_by_key(&seed, |(seed, _)| *seed) {
                Ok(found) => return Rc::clone(&kept[found].1),
                Err(place) => place,
            };
            if kept.len() == MOST_KEPT {
                kept.clear();
                place = 0;
            }
            let ranks = Rc::new(shuffled(seed));
            kept.insert(place, (seed, Rc::clone(&ranks)));
            ranks
        });
        Self { ranks }
    }

    /// The rank at a point, 0 to 511. `point` wraps beyond the last.
    pub fn rank(&self, point: usize) -> usize {
        usize::from(self.ranks[point % POINTS])
    }

    /// Evenly spread over 0 to 1: (rank + 1/2) / 512. `point` wraps beyond the last.
    pub fn uniform(&self, point: usize) -> f64 {
        uniform(self.rank(point))
    }

    /// The same as a standard normal variate.
    pub fn normal(&self, point: usize) -> f64 {
        normal(self.rank(point))
    }
}

fn shuffled(seed: u64) -> [u16; POINTS] {
    let mut state = seed;
    let mut ranks = [0u16; POINTS];
    for (place, rank) in ranks.iter_mut().enumerate() {
        *rank = place as u16;
    }
    for last in (1..POINTS).rev() {
        let n = last as u64 + 1;
        let pick = ((u128::from(splitmix(&mut state)) * u128::from(n)) >> 64) as usize;
        ranks.swap(last, pick);
    }
    ranks
}

/// A rank as a share of all.
pub(crate) fn uniform(rank: usize) -> f64 {
    (rank as f64 + 0.5) / POINTS as f64
}

/// The normal quantile of a rank.
pub(crate) fn normal(rank: usize) -> f64 {
    normals()[rank]
}

/// The normal quantile of each rank, worked out once.
fn normals() -> &'static [f64; POINTS] {
    static NORMALS: std::sync::OnceLock<[f64; POINTS]> = std::sync::OnceLock::new();
    NORMALS.get_or_init(|| core::array::from_fn(|rank| normal_quantile(uniform(rank))))
}

fn fnv1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, &b| {
        (hash ^ u64::from(b)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

fn splitmix(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

/// Quantile of the standard normal distribution, `p` strictly between 0 and 1.
///
/// Source: Wichura, "Algorithm AS 241: The Percentage Points of the Normal Distribution", Applied Statistics 37 (1988)
/// 477-484, routine PPND16; the far-tail branch is left out, since p here is never below 1/1024 and the middle-tail
/// branch holds to p = 1.4e-11.
pub fn normal_quantile(p: f64) -> f64 {
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        let r = 0.180625 - q * q;
        return q * ratio(r, &CENTRE_TOP, &CENTRE_BOTTOM);
    }
    let tail = if q < 0.0 { p } else { 1.0 - p };
    let r = (-libm::log(tail)).sqrt() - 1.6;
    let x = ratio(r, &TAIL_TOP, &TAIL_BOTTOM);
    if q < 0.0 { -x } else { x }
}

fn ratio(r: f64, top: &[f64; 8], bottom: &[f64; 8]) -> f64 {
    let horner = |c: &[f64; 8]| c.iter().rev().fold(0.0, |sum, &a| sum * r + a);
    horner(top) / horner(bottom)
}

const CENTRE_TOP: [f64; 8] = [
    3.387_132_872_796_366_5,
    133.141_667_891_784_38,
    1_971.590_950_306_551_3,
    13_731.693_765_509_46,
    45_921.953_931_549_87,
    67_265.770_927_008_7,
    33_430.575_583_588_13,
    2_509.080_928_730_122_7,
];
const CENTRE_BOTTOM: [f64; 8] = [
    1.0,
    42.313_330_701_600_91,
    687.187_007_492_057_9,
    5_394.196_021_424_751,
    21_213.794_301_586_597,
    39_307.895_800_092_71,
    28_729.085_735_721_943,
    5_226.495_278_852_854,
];
const TAIL_TOP: [f64; 8] = [
    1.423_437_110_749_683_5,
    4.630_337_846_156_546,
    5.769_497_221_460_691,
    3.647_848_324_763_204_5,
    1.270_458_252_452_368_4,
    0.241_780_725_177_450_6,
    0.022_723_844_989_269_184,
    7.745_450_142_783_414e-4,
];
const TAIL_BOTTOM: [f64; 8] = [
    1.0,
    2.053_191_626_637_759,
    1.676_384_830_183_803_8,
    0.689_767_334_985_1,
    0.148_103_976_427_480_08,
    0.015_198_666_563_616_457,
    5.475_938_084_995_345e-4,
    1.050_750_071_644_416_9e-9,
];
