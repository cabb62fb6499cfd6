//! From one likely run and 512 sampled ones to ranges.

use crate::plan::{MOST_METALS, MOST_STEPS, Plan};
use crate::run::{Kept, Run, run};
use quantity::{POINTS, Quantity, Range};

/// Which value of a step.
#[derive(Clone, Copy, Debug)]
pub enum OfStep {
    /// The current that would be right.
    Wanted,
    /// How long.
    Time,
    /// What flows.
    Real,
    /// Density over the wetted area.
    Density,
    /// Density at the thickest place.
    Densest,
    /// Charge passed.
    Charge,
    /// Growth of the layer.
    Growth,
    /// Mean thickness at the end.
    MeanAfter,
    /// What the supply shows.
    Volts,
    /// The solution's own share of that.
    Ohmic,
    /// What it takes.
    Power,
}
const STEP_SLOTS: usize = OfStep::Power as usize + 1;

/// Which value of a piece.
#[derive(Clone, Copy, Debug)]
pub enum OfPiece {
    /// Its own surface.
    Area,
    /// Its wires'.
    WireArea,
    /// Both.
    Wetted,
    /// Mean thickness.
    Mean,
    /// Thinnest.
    Thinnest,
    /// Thickest.
    Thickest,
    /// Wagner number.
    Wagner,
    /// Mass on the piece.
    Mass,
    /// Mass on its wires.
    WireMass,
    /// Bore after growth.
    BoreAfter,
    /// Bore to make.
    BoreToMake,
    /// Mean of the inside.
    Inside,
    /// Depth of an etch.
    Depth,
    /// Metal left under the floor.
    Left,
    /// Charge of grooves over that of a flat floor.
    FineLine,
    /// An opening after the etch.
    OpeningAfter,
    /// The line to draw.
    LineToDraw,
}
const PIECE_SLOTS: usize = OfPiece::LineToDraw as usize + 1;

const TIME: usize = STEP_SLOTS * MOST_STEPS;
const CHARGE: usize = TIME + 1;
const COUNTER: usize = CHARGE + 1;
const GAINED: usize = COUNTER + 1;
const PIECES: usize = GAINED + MOST_METALS;

/// All samples of a plan, ready to be asked for ranges.
pub struct Ranges {
    likely: Vec<f64>,
    /// Empty where no input is uncertain.
    columns: Vec<[f64; POINTS]>,
}

impl Ranges {
    /// Runs the samples. Settings are kept from `likely`.
    pub fn of(plan: &Plan, likely: &Run) -> Self {
        let width = PIECES + PIECE_SLOTS * plan.pieces.len();
        let mut row = vec![f64::NAN; width];
        fill(likely, &mut row);
        let first = row.clone();
        if !plan.inputs.any_spread() {
            return Self {
                likely: first,
                columns: Vec::new(),
            };
        }
        let kept: [Kept; MOST_STEPS] = likely.kept();
        let mut columns = vec![[0.0; POINTS]; width];
        let mut sample = Run::for_plan(plan);
        plan.inputs.draws().each(
            |_| false,
            |point, inputs| {
                run(plan, inputs, Some(&kept), &mut sample);
                fill(&sample, &mut row);
                for (column, value) in columns.iter_mut().zip(&row) {
                    column[point] = *value;
                }
            },
        );
        Self {
            likely: first,
            columns,
        }
    }

    fn range<Q: Quantity>(&mut self, slot: usize) -> Option<Range<Q>> {
        let likely = self.likely[slot];
        if !likely.is_finite() {
            return None;
        }
        let likely = Q::from_si(likely);
        Some(match self.columns.get_mut(slot) {
            Some(samples) => Range::of_samples(likely, samples),
            None => Range::exactly(likely),
        })
    }

    /// A value of step `n`.
    pub fn step<Q: Quantity>(&mut self, n: usize, which: OfStep) -> Option<Range<Q>> {
        self.range(n * STEP_SLOTS + which as usize)
    }

    /// A value of piece `n`.
    pub fn piece<Q: Quantity>(&mut self, n: usize, which: OfPiece) -> Option<Range<Q>> {
        self.range(PIECES + n * PIECE_SLOTS + which as usize)
    }

    /// From the first step's start to the last one's end.
    pub fn time<Q: Quantity>(&mut self) -> Option<Range<Q>> {
        self.range(TIME)
    }

    /// What the counter electrode gains.
    pub fn counter<Q: Quantity>(&mut self) -> Option<Range<Q>> {
        self.range(COUNTER)
    }

    /// What the bath gains of its metal `n`.
    pub fn gained<Q: Quantity>(&mut self, n: usize) -> Option<Range<Q>> {
        self.range(GAINED + n)
    }

    /// Charge of all steps.
    pub fn charge<Q: Quantity>(&mut self) -> Option<Range<Q>> {
        self.range(CHARGE)
    }
}

/// Writes a run into a row; what is absent becomes NaN, which [`Ranges::range`] gives back as absent.
fn fill(run: &Run, row: &mut [f64]) {
    fn si<Q: Quantity>(q: Option<Q>) -> f64 {
        q.map_or(f64::NAN, Quantity::si)
    }
    for (n, s) in run.steps.iter().enumerate() {
        let at = n * STEP_SLOTS;
        row[at..at + STEP_SLOTS].copy_from_slice(&[
            si(s.wanted),
            si(s.time),
            si(s.real),
            si(s.density),
            si(s.densest),
            si(s.charge),
            si(s.growth),
            si(s.mean_after),
            si(s.volts),
            si(s.ohmic),
            si(s.power),
        ]);
    }
    row[TIME] = si(run.time);
    row[CHARGE] = si(run.charge);
    row[COUNTER] = si(run.counter);
    for (slot, gained) in row[GAINED..].iter_mut().zip(run.gained) {
        *slot = si(gained);
    }
    for (n, p) in run.pieces.iter().enumerate() {
        let at = PIECES + n * PIECE_SLOTS;
        row[at..at + PIECE_SLOTS].copy_from_slice(&[
            si(p.area),
            si(Some(p.wire_area)),
            si(p.area.map(|a| a + p.wire_area)),
            si(p.mean),
            si(p.thinnest),
            si(p.thickest),
            si(p.wagner),
            si(p.mass),
            si(p.wire_mass),
            si(p.bore_after),
            si(p.bore_to_make),
            si(p.inside),
            si(p.depth),
            si(p.left),
            si(p.fine_line),
            si(p.opening_after),
            si(p.line_to_draw),
        ]);
    }
}
