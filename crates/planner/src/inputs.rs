//! The uncertain inputs of a job: each with its address, its likely value and its spread.

use crate::answer::{InputUsed, Origin};
use crate::path::FieldPath;
use quantity::{AnyQuantity, POINTS, Quantity, Spread, Variate};

/// The place of an input in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InputId(usize);

/// One input.
#[derive(Clone, Debug)]
pub struct Input {
    /// Its address.
    pub at: FieldPath,
    /// Its likely value.
    pub likely: AnyQuantity,
    /// How far it may lie from that.
    pub spread: Spread,
    /// Where the value comes from.
    pub origin: Origin,
    /// Lowest and highest it can be, whatever the spread says: a share never passes 1.
    pub bounds: (f64, f64),
}

/// All inputs of a job, each once.
#[derive(Clone, Debug, Default)]
pub struct InputList {
    all: Vec<Input>,
    /// What no sample needs: its ends are worked out apart.
    beside: Vec<Input>,
}

/// The values of all inputs in one sample.
#[derive(Clone, Debug)]
pub struct Inputs {
    values: Vec<f64>,
}

impl Input {
    /// Where the value usually lies: a catalogue's lowest and highest, a display's half step to either side, else what two
    /// in three lie between. None for what is known exactly.
    pub(crate) fn band(&self) -> Option<(f64, f64)> {
        let likely = self.likely.si;
        let (low, high) = match self.spread {
            Spread::None => return None,
            Spread::Lognormal { frac } => (likely / (1.0 + frac), likely * (1.0 + frac)),
            Spread::Normal { sd } => (likely - sd, likely + sd),
            Spread::Triangle { low, high } => (likely * low, likely * high),
            Spread::Uniform { half } => (likely - half, likely + half),
        };
        let (least, most) = self.bounds;
        Some((low.clamp(least, most), high.clamp(least, most)))
    }
}

/// From one column of samples to the next: a power of two apart they would drive each other out of the processor's cache.
pub(crate) const COLUMN: usize = POINTS + 8;

/// The drawn values of the uncertain inputs, and the likely ones of the rest.
pub struct Draws {
    likely: Inputs,
    /// The uncertain ones, by their place in the list.
    uncertain: Vec<usize>,
    /// The same, input by input, sample by sample.
    columns: Vec<f64>,
}

impl Draws {
    /// The uncertain inputs, by their place in the list.
    pub fn uncertain(&self) -> impl Iterator<Item = usize> + '_ {
        self.uncertain.iter().copied()
    }

    /// Calls `each` with every sample in turn; the values are overwritten in place. The inputs that `held` names keep
    /// their likely value.
    pub fn each(&self, held: impl Fn(usize) -> bool, mut each: impl FnMut(usize, &Inputs)) {
        let mut inputs = self.likely.clone();
        for point in 0..POINTS {
            for (n, drawn) in self.uncertain.iter().zip(self.columns.chunks_exact(COLUMN)) {
                if !held(*n) {
                    inputs.values[*n] = drawn[point];
                }
            }
            each(point, &inputs);
        }
    }
}

impl InputList {
    /// Adds an input and gives its place.
    pub fn add(&mut self, input: Input) -> InputId {
        self.all.push(input);
        InputId(self.all.len() - 1)
    }

    /// Adds an input that is not drawn.
    pub(crate) fn add_beside(&mut self, input: Input) {
        self.beside.push(input);
    }

    /// Whether some input has this address.
    pub fn has(&self, at: &FieldPath) -> bool {
        self.all.iter().chain(&self.beside).any(|i| i.at == *at)
    }

    /// All at their likely values.
    pub fn likely(&self) -> Inputs {
        Inputs {
            values: self.all.iter().map(|i| i.likely.si).collect(),
        }
    }

    /// The address of the input at a place in the list.
    pub fn at(&self, n: usize) -> &FieldPath {
        &self.all[n].at
    }

    /// Whether any input is uncertain.
    pub fn any_spread(&self) -> bool {
        self.all.iter().any(|i| i.spread != Spread::None)
    }

    /// The drawn values of every uncertain input at all points.
    pub fn draws(&self) -> Draws {
        let all = self.all.iter().enumerate();
        let uncertain: Vec<usize> = all
            .filter(|(_, i)| i.spread != Spread::None)
            .map(|(n, _)| n)
            .collect();
        let mut columns = vec![0.0; uncertain.len() * COLUMN];
        // Many inputs have one spread: its distances are worked out once.
        let mut known: Vec<(Spread, [f64; POINTS])> = Vec::new();
        for (n, column) in uncertain.iter().zip(columns.chunks_exact_mut(COLUMN)) {
            let input = &self.all[*n];
            let (spread, likely) = (input.spread, input.likely.si);
            let of_spread = known.iter().position(|(s, _)| *s == spread);
            let of_spread = of_spread.unwrap_or_else(|| {
                known.push((spread, spread.distances()));
                known.len() - 1
            });
            let distances = &known[of_spread].1;
            let variate = Variate::of(input.at.as_str());
            let (least, most) = input.bounds;
            for (point, value) in column[..POINTS].iter_mut().enumerate() {
                let distance = distances[variate.rank(point)];
                *value = spread.off(likely, distance).clamp(least, most);
            }
        }
        Draws {
            likely: self.likely(),
            uncertain,
            columns,
        }
    }

    /// The inputs as an Answer lists them.
    pub fn used(&self) -> Vec<InputUsed> {
        self.all
            .iter()
            .chain(&self.beside)
            .map(|i| InputUsed {
                at: i.at.clone(),
                value: i.likely,
                band: i.band(),
                origin: i.origin,
            })
            .collect()
    }

    /// Where the value of an input comes from.
    pub fn origin(&self, id: InputId) -> Origin {
        self.all[id.0].origin
    }
}

impl Inputs {
    /// The same with another value for one input.
    pub fn with<Q: Quantity>(&self, id: InputId, value: Q) -> Self {
        let mut other = self.clone();
        other.values[id.0] = value.si();
        other
    }

    /// The value of one input.
    pub fn get<Q: Quantity>(&self, id: InputId) -> Q {
        Q::from_si(self.values[id.0])
    }
}
