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
}

/// The values of all inputs in one sample.
#[derive(Clone, Debug)]
pub struct Inputs {
    values: Vec<f64>,
}

impl InputList {
    /// Adds an input and gives its place.
    pub fn add(&mut self, input: Input) -> InputId {
        self.all.push(input);
        InputId(self.all.len() - 1)
    }

    /// Whether some input has this address.
    pub fn has(&self, at: &FieldPath) -> bool {
        self.all.iter().any(|i| i.at == *at)
    }

    /// All at their likely values.
    pub fn likely(&self) -> Inputs {
        Inputs {
            values: self.all.iter().map(|i| i.likely.si).collect(),
        }
    }

    /// Whether any input is uncertain.
    pub fn any_spread(&self) -> bool {
        self.all.iter().any(|i| i.spread != Spread::None)
    }

    /// Calls `each` with every sample in turn; the values are overwritten in place.
    pub fn for_each_sample(&self, mut each: impl FnMut(usize, &Inputs)) {
        let mut inputs = self.likely();
        let variates: Vec<Option<Variate>> = self
            .all
            .iter()
            .map(|i| (i.spread != Spread::None).then(|| Variate::of(i.at.as_str())))
            .collect();
        for point in 0..POINTS {
            for ((value, input), variate) in inputs.values.iter_mut().zip(&self.all).zip(&variates)
            {
                if let Some(variate) = variate {
                    let drawn = input.spread.at(input.likely.si, variate, point);
                    *value = drawn.clamp(input.bounds.0, input.bounds.1);
                }
            }
            each(point, &inputs);
        }
    }

    /// The inputs as an Answer lists them.
    pub fn used(&self) -> Vec<InputUsed> {
        self.all
            .iter()
            .map(|i| InputUsed {
                at: i.at.clone(),
                value: i.likely,
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
    /// The value of one input.
    pub fn get<Q: Quantity>(&self, id: InputId) -> Q {
        Q::from_si(self.values[id.0])
    }
}
