//! Values with a spread, and the range that comes of them.

use crate::kinds::{Quantity, unsigned_zero};
use crate::variate::{POINTS, Variate, normal, uniform};
use core::cmp::Ordering;
use serde::ser::{Serialize, SerializeMap, Serializer};

/// A lowest, a typical and a highest value, in that order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band<Q> {
    /// Lowest.
    pub min: Q,
    /// Typical.
    pub typ: Q,
    /// Highest.
    pub max: Q,
}

/// How far a value may lie from its likely one. Two in three fall within the stated spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Known exactly, or settled by definition.
    None,
    /// Lengths, areas, masses, ratios: two in three lie between likely / (1 + frac) and likely x (1 + frac).
    Lognormal {
        /// The spread as a share of the likely value, above 0.
        frac: f64,
    },
    /// Temperatures: one standard deviation, in the quantity's SI unit.
    Normal {
        /// One standard deviation.
        sd: f64,
    },
    /// A catalogue's lowest, typical, highest, as factors of the likely value.
    Triangle {
        /// Lowest over likely, 0 to 1.
        low: f64,
        /// Highest over likely, 1 or more.
        high: f64,
    },
    /// A display: anywhere within half a step to either side, in the quantity's SI unit.
    Uniform {
        /// Half the step.
        half: f64,
    },
}

impl Spread {
    /// The triangle of a band around its typical value.
    pub fn of_band<Q: Quantity>(band: &Band<Q>) -> Self {
        Self::Triangle {
            low: band.min.si() / band.typ.si(),
            high: band.max.si() / band.typ.si(),
        }
    }

    /// The value at sample `point` of `variate`, for a likely value of `likely` (any unit).
    pub fn at(&self, likely: f64, variate: &Variate, point: usize) -> f64 {
        self.off(likely, self.distance()(variate.rank(point)))
    }

    /// How far from the likely value each rank lies, for [`Spread::off`]: one table for all inputs of one spread.
    pub fn distances(&self) -> [f64; POINTS] {
        core::array::from_fn(self.distance())
    }

    /// Of a rank: a factor where the spread is one of shares, else a difference in the quantity's SI unit.
    fn distance(&self) -> impl Fn(usize) -> f64 {
        let spread = *self;
        // Of a lognormal spread, worked out once.
        let width = match spread {
            Spread::Lognormal { frac } => libm::log(1.0 + frac),
            _ => 0.0,
        };
        move |rank| match spread {
            Spread::None => 0.0,
            Spread::Lognormal { .. } => libm::exp(width * normal(rank)),
            Spread::Normal { sd } => sd * normal(rank),
            Spread::Triangle { low, high } => triangle(low, high, uniform(rank)),
            Spread::Uniform { half } => half * (2.0 * uniform(rank) - 1.0),
        }
    }

    /// The value so far from a likely one.
    pub fn off(&self, likely: f64, distance: f64) -> f64 {
        match self {
            Spread::None => likely,
            Spread::Lognormal { .. } | Spread::Triangle { .. } => likely * distance,
            Spread::Normal { .. } | Spread::Uniform { .. } => likely + distance,
        }
    }
}

/// Inverse distribution of a triangle from `low` over its peak 1 to `high`.
fn triangle(low: f64, high: f64, u: f64) -> f64 {
    let width = high - low;
    if width <= 0.0 {
        return 1.0;
    }
    let at_peak = (1.0 - low) / width;
    if u < at_peak {
        low + (u * width * (1.0 - low)).sqrt()
    } else {
        high - ((1.0 - u) * width * (high - 1.0)).sqrt()
    }
}

/// A result: likely, and the ends between which nine in ten fall. `low <= likely <= high` always.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<Q> {
    /// With every input at its likely value.
    pub likely: Q,
    /// 5th percentile, or likely if that is lower.
    pub low: Q,
    /// 95th percentile, or likely if that is higher.
    pub high: Q,
}

/// How many samples lie outside at each end: the ends are the 26th value from each side of 512.
const TAIL: usize = 25;

impl<Q: Quantity> Range<Q> {
    /// A value without any spread.
    pub fn exactly(likely: Q) -> Self {
        Self {
            likely,
            low: likely,
            high: likely,
        }
    }

    /// The same range of another kind.
    pub fn map<R>(self, mut f: impl FnMut(f64) -> R) -> Range<R> {
        Range {
            likely: f(self.likely.si()),
            low: f(self.low.si()),
            high: f(self.high.si()),
        }
    }

    /// From the likely value and all samples. Samples that are not numbers are a defect of the caller; they sort to the
    /// ends and widen the range rather than hide.
    pub fn of_samples(likely: Q, samples: &[f64; POINTS]) -> Self {
        let (low, high) = ends(samples);
        let middle = likely.si();
        Self {
            likely,
            low: Q::from_si(if low < middle { low } else { middle }),
            high: Q::from_si(if high > middle { high } else { middle }),
        }
    }
}

/// Bins that the samples are sorted into, from the lowest to the highest.
const BINS: usize = 128;
/// 2^52: beside it a double holds no fraction.
const WHOLE: f64 = 4_503_599_627_370_496.0;

/// The lowest and the highest sample, and whether all of them are numbers. Four side by side, since each waits for the one
/// before.
fn span(samples: &[f64; POINTS]) -> (f64, f64, bool) {
    let (mut least, mut most) = ([samples[0]; 4], [samples[0]; 4]);
    // A sum with what is not a number is none; without one it may be endless, but is.
    let mut sums = [0.0; 4];
    for four in samples.chunks_exact(4) {
        for (n, x) in four.iter().enumerate() {
            least[n] = if *x < least[n] { *x } else { least[n] };
            most[n] = if *x > most[n] { *x } else { most[n] };
            sums[n] += x;
        }
    }
    let lower = |a: f64, b: f64| if b < a { b } else { a };
    let higher = |a: f64, b: f64| if b > a { b } else { a };
    (
        least.into_iter().fold(samples[0], lower),
        most.into_iter().fold(samples[0], higher),
        !sums.iter().any(|sum| sum.is_nan()),
    )
}

/// Calls `each` with the samples of one bin.
fn of_bin(bins: &[u8; POINTS], samples: &[f64; POINTS], bin: u8, mut each: impl FnMut(f64)) {
    const ONES: u64 = 0x0101_0101_0101_0101;
    const TOPS: u64 = ONES << 7;
    let eights = bins.as_chunks::<8>().0.iter();
    for (eight, of_eight) in eights.zip(samples.as_chunks::<8>().0) {
        let differ = u64::from_le_bytes(*eight) ^ (ONES * u64::from(bin));
        // Most often none is of this bin, which is seen of all eight together.
        if differ.wrapping_sub(ONES) & !differ & TOPS == 0 {
            continue;
        }
        for (one, sample) in eight.iter().zip(of_eight) {
            if *one == bin {
                each(*sample);
            }
        }
    }
}

/// The outermost values but [`TAIL`] on both sides.
fn ends(samples: &[f64; POINTS]) -> (f64, f64) {
    let (least, most, numbers) = span(samples);
    if least == most && numbers {
        return (least, most);
    }
    let scale = (BINS - 1) as f64 / (most - least);
    // Too wide or too narrow to be binned, or not all of them numbers.
    if !(scale > 0.0 && scale.is_finite() && numbers) {
        let end = |outward| {
            let mut tail = Tail::new(TAIL, outward);
            samples.iter().for_each(|x| tail.see(*x));
            tail.end()
        };
        return (end(Ordering::Less), end(Ordering::Greater));
    }
    // A bin holds no lower value than the one before: only two of them have to be looked into.
    let mut bins = [0u8; POINTS];
    let mut counts = [0usize; BINS];
    for (bin, &x) in bins.iter_mut().zip(samples) {
        // To the nearest whole number, which stands in the last bits beside a number as large as this.
        *bin = ((x - least) * scale + WHOLE).to_bits() as u8;
        counts[usize::from(*bin) % BINS] += 1;
    }
    let inside = |outside_in: &mut dyn Iterator<Item = usize>, outward| {
        let mut before = 0;
        for bin in outside_in {
            if before + counts[bin] > TAIL {
                let mut tail = Tail::new(TAIL - before, outward);
                of_bin(&bins, samples, bin as u8, |x| tail.see(x));
                return tail.end();
            }
            before += counts[bin];
        }
        f64::NAN
    };
    (
        inside(&mut (0..BINS), Ordering::Less),
        inside(&mut (0..BINS).rev(), Ordering::Greater),
    )
}

/// Finds the outermost value but `but` on the side that `outward` names, of at least one more.
///
/// The standard library's own selection takes many times as long where that is built for size, as in the page.
struct Tail {
    but: usize,
    outward: Ordering,
    /// The outermost so far, from the outside in.
    outermost: [f64; TAIL + 1],
    seen: usize,
}

impl Tail {
    fn new(but: usize, outward: Ordering) -> Self {
        Self {
            but,
            outward,
            outermost: [0.0; TAIL + 1],
            seen: 0,
        }
    }

    fn see(&mut self, sample: f64) {
        let tail = &mut self.outermost;
        let mut at = self.seen;
        if at > self.but {
            if sample.total_cmp(&tail[self.but]) != self.outward {
                return;
            }
            at = self.but;
        } else {
            self.seen += 1;
        }
        while at > 0 && sample.total_cmp(&tail[at - 1]) == self.outward {
            tail[at] = tail[at - 1];
            at -= 1;
        }
        tail[at] = sample;
    }

    fn end(&self) -> f64 {
        self.outermost[self.but]
    }
}

/// As a map whose keys end in the unit: `{"likely_m": .., "low_m": .., "high_m": ..}`.
impl<Q: Quantity> Serialize for Range<Q> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut map = s.serialize_map(Some(3))?;
        let ends = [
            ("likely", self.likely),
            ("low", self.low),
            ("high", self.high),
        ];
        for (name, q) in ends {
            map.serialize_entry(&key(name, Q::KEY_UNIT), &unsigned_zero(q.si()))?;
        }
        map.end()
    }
}

fn key(name: &str, unit: &str) -> String {
    [name, "_", unit].concat()
}
