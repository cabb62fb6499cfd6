//! From one likely run and 512 sampled ones to ranges.

use crate::inputs::COLUMN;
use crate::plan::{MOST_METALS, Plan};
use crate::run::{Run, run, si};
use quantity::{Quantity, Range, Ratio};

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
    /// Density at its end.
    DensityAfter,
    /// The current at which the ceiling is reached.
    Bites,
}
const STEP_SLOTS: usize = OfStep::Bites as usize + 1;

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
    /// Its part of the current.
    Current,
    /// Its share of the current.
    Share,
    /// Its density.
    Density,
}
const PIECE_SLOTS: usize = OfPiece::Density as usize + 1;

/// Which value of a layer on a piece.
#[derive(Clone, Copy, Debug)]
pub enum OfLayer {
    /// Mean thickness.
    Mean,
    /// Thinnest.
    Thinnest,
    /// Thickest.
    Thickest,
    /// Mass.
    Mass,
}
const LAYER_SLOTS: usize = OfLayer::Mass as usize + 1;

/// The job's time, and its charge.
const TIME: usize = 0;
const CHARGE: usize = 1;
const STEPS: usize = 2;
/// What a bath gains of each of its metals, and its counter electrode.
const BATH_SLOTS: usize = MOST_METALS + 1;
/// Samples that are written into the columns together.
const TOGETHER: usize = 8;

/// Where the values of a plan stand in a row.
#[derive(Clone, Copy)]
struct Places {
    baths: usize,
    pieces: usize,
    layers: usize,
    layers_each: usize,
    width: usize,
}

impl Places {
    fn of(plan: &Plan) -> Self {
        let baths = STEPS + STEP_SLOTS * plan.steps.len();
        let pieces = baths + BATH_SLOTS * plan.baths.len();
        let layers = pieces + PIECE_SLOTS * plan.pieces.len();
        // One layer is the whole of it, and is not said twice.
        let layers_each = if plan.layers > 1 { plan.layers } else { 0 };
        Self {
            baths,
            pieces,
            layers,
            layers_each,
            width: layers + LAYER_SLOTS * layers_each * plan.pieces.len(),
        }
    }
}

/// All samples of a plan, ready to be asked for ranges.
pub struct Ranges {
    places: Places,
    likely: Vec<f64>,
    /// Value by value, sample by sample, of the values that are known; empty where no input is uncertain.
    columns: Vec<f64>,
    /// Which value each column holds, in order.
    held: Vec<usize>,
}

impl Ranges {
    /// Runs the samples. Settings are kept from `likely`.
    pub fn of(plan: &Plan, likely: &Run) -> Self {
        let places = Places::of(plan);
        let mut ranges = Self::exactly(plan, likely);
        if !plan.inputs.any_spread() {
            return ranges;
        }
        let kept = likely.kept();
        // What is absent in the likely run is absent in every sample.
        let slots = 0..places.width;
        ranges.held = slots.filter(|n| ranges.likely[*n].is_finite()).collect();
        let mut columns = vec![f64::NAN; ranges.held.len() * COLUMN];
        let mut sample = Run::for_samples(plan);
        // A few samples together, so that each column is written where it was written last.
        let mut rows = vec![[f64::NAN; TOGETHER]; places.width];
        plan.inputs.draws().each(
            |_| false,
            |point, inputs| {
                run(plan, inputs, Some(&kept), &mut sample);
                let of = point % TOGETHER;
                fill(&places, &sample, &mut rows, of);
                if of + 1 == TOGETHER {
                    let each = ranges.held.iter().zip(columns.chunks_exact_mut(COLUMN));
                    for (slot, column) in each {
                        column[point - of..=point].copy_from_slice(&rows[*slot]);
                    }
                }
            },
        );
        ranges.columns = columns;
        ranges
    }

    /// The likely values alone.
    pub fn exactly(plan: &Plan, likely: &Run) -> Self {
        let places = Places::of(plan);
        let mut row = vec![[f64::NAN]; places.width];
        fill(&places, likely, &mut row, 0);
        Self {
            places,
            likely: row.into_iter().flatten().collect(),
            columns: Vec::new(),
            held: Vec::new(),
        }
    }

    fn range<Q: Quantity>(&self, slot: usize) -> Option<Range<Q>> {
        let likely = self.likely[slot];
        if !likely.is_finite() {
            return None;
        }
        let likely = Ratio::from_si(likely);
        let held = self.held.binary_search(&slot).ok();
        let column = held.and_then(|n| self.columns.chunks_exact(COLUMN).nth(n));
        let found = match column.and_then(|c| c.first_chunk()) {
            Some(samples) => Range::of_samples(likely, samples),
            None => Range::exactly(likely),
        };
        Some(found.map(Q::from_si))
    }

    /// A value of step `n`.
    pub fn step<Q: Quantity>(&self, n: usize, which: OfStep) -> Option<Range<Q>> {
        self.range(STEPS + n * STEP_SLOTS + which as usize)
    }

    /// A value of piece `n`.
    pub fn piece<Q: Quantity>(&self, n: usize, which: OfPiece) -> Option<Range<Q>> {
        self.range(self.places.pieces + n * PIECE_SLOTS + which as usize)
    }

    /// A value of layer `layer` on piece `n`, where there is more than one.
    pub fn layer<Q: Quantity>(&self, n: usize, layer: usize, which: OfLayer) -> Option<Range<Q>> {
        let each = self.places.layers_each;
        let slot = self.places.layers + (n * each + layer) * LAYER_SLOTS + which as usize;
        self.range(slot)
    }

    /// From the first step's start to the last one's end.
    pub fn time<Q: Quantity>(&self) -> Option<Range<Q>> {
        self.range(TIME)
    }

    /// What the counter electrode of bath `n` gains.
    pub fn counter<Q: Quantity>(&self, n: usize) -> Option<Range<Q>> {
        self.range(self.places.baths + n * BATH_SLOTS + MOST_METALS)
    }

    /// What bath `n` gains of its metal `metal`.
    pub fn gained<Q: Quantity>(&self, n: usize, metal: usize) -> Option<Range<Q>> {
        self.range(self.places.baths + n * BATH_SLOTS + metal)
    }

    /// Charge of all steps.
    pub fn charge<Q: Quantity>(&self) -> Option<Range<Q>> {
        self.range(CHARGE)
    }
}

/// Writes a run into place `of` of each row of a few samples; what is absent becomes NaN, which [`Ranges::range`] gives back
/// as absent.
fn fill<const N: usize>(places: &Places, run: &Run, rows: &mut [[f64; N]], of: usize) {
    let write = |rows: &mut [[f64; N]], values: &[f64]| {
        for (row, value) in rows.iter_mut().zip(values) {
            row[of] = *value;
        }
    };
    write(&mut rows[TIME..], &[si(run.time), si(run.charge)]);
    let steps = rows[STEPS..].chunks_exact_mut(STEP_SLOTS);
    for (s, rows) in run.steps.iter().zip(steps) {
        let values = [
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
            si(s.density_after),
            si(s.bites),
        ];
        write(rows, &values);
    }
    let baths = rows[places.baths..].chunks_exact_mut(BATH_SLOTS);
    for (b, rows) in run.baths.iter().zip(baths) {
        write(rows, &b.gained.map(si));
        rows[MOST_METALS][of] = si(b.counter);
    }
    let pieces = rows[places.pieces..].chunks_exact_mut(PIECE_SLOTS);
    for (p, rows) in run.pieces.iter().zip(pieces) {
        let values = [
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
            si(p.current),
            si(p.share),
            si(p.density),
        ];
        write(rows, &values);
    }
    let layers = rows[places.layers..].chunks_exact_mut(LAYER_SLOTS);
    for (l, rows) in run.layers.iter().zip(layers) {
        write(
            rows,
            &[si(l.mean), si(l.thinnest), si(l.thickest), si(l.mass)],
        );
    }
}
