//! What holds a job back in its vessels: unlike areas in series, poor contacts, the counter electrode, the bath's load, the
//! ends of a bar.

use crate::answer::{Limit, LimitKind};
use crate::answering::heaviest;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath};
use crate::run::Run;
use crate::value::Named;
use chemistry::Datum;
use quantity::{CurrentDensity, Quantity, Ratio, Resistance, Voltage, Volume, WorkArea};

/// Vessels in series are balanced while the largest holds no more than this over the least. Common practice, no source.
const BALANCED: f64 = 1.1;

/// More than this from clip to piece is bad. Common practice, no source.
const CLIP: Voltage = Voltage::volt(0.02);

/// So many pieces make a bar with ends. Common practice, no source.
const BAR: f64 = 4.0;

/// All of them.
pub(crate) fn limits(plan: &Plan, likely: &Run, all: &mut Vec<Limit>) {
    let limit = |kind, at, numbers| Limit {
        kind,
        at,
        numbers,
        pieces: Vec::new(),
        note: None,
    };
    for (n, step) in plan.steps.iter().enumerate() {
        let Some(k) = plan.first_stage(n).filter(|_| step.vessels.len() > 1) else {
            continue;
        };
        let areas = || plan.stages[k].hung.iter().map(|h| likely.bare_area(h));
        let end = |larger: fn(f64, f64) -> bool| {
            areas().reduce(|a, b| if larger(b.si(), a.si()) { b } else { a })
        };
        let (least, most) = (end(|b, a| b < a), end(|b, a| b > a));
        if let Some((least, most)) = least.zip(most)
            && most.si() > least.si() * BALANCED
        {
            let at = FieldPath::new("steps").child(&step.id);
            let numbers = vec![Named::new("least", least), Named::new("most", most)];
            all.push(limit(LimitKind::VesselsUneven, at, numbers));
        }
    }
    for found in poor(plan, likely) {
        let at = FieldPath::new("pieces").child(&plan.pieces[found.piece].id);
        let numbers = vec![
            Named::new("volts", found.volts),
            Named::new("density", found.density),
            Named::new("mean", found.mean),
        ];
        all.push(limit(LimitKind::PoorContact, at, numbers));
    }
    for (n, bath) in plan.baths.iter().enumerate() {
        let at = FieldPath::new("baths").child(&bath.id);
        let (current, area) = heaviest(plan, likely, n);
        let mut add = |kind, at, numbers| all.push(limit(kind, at, numbers));
        counter(
            bath,
            &at.child("counter/facing"),
            current.zip(area),
            &mut add,
        );
        let volume = bath.volume.map(|id| plan.inputs.likely().get::<Volume>(id));
        if let (Some(i), Some(volume), Some(highest)) =
            (current, volume, highest(&bath.solution.load))
            && (i / volume).si() > highest.si() * (1.0 + 1e-9)
        {
            let numbers = vec![
                Named::new("load", i / volume),
                Named::new("highest", highest),
            ];
            add(LimitKind::BathOverloaded, at.child("volume"), numbers);
        }
        bar_ends(plan, n, bath, &at.child("counter/over_bar"), &mut add);
    }
}

/// The lowest a catalogue figure goes.
pub(crate) fn lowest<Q: Quantity>(datum: &Datum<Q>) -> Option<Q> {
    match datum {
        Datum::Unknown => None,
        Datum::Value(v) => Some(v.value),
        Datum::Band(b) => Some(b.value.min),
    }
}

/// The highest a catalogue figure goes.
pub(crate) fn highest<Q: Quantity>(datum: &Datum<Q>) -> Option<Q> {
    match datum {
        Datum::Unknown => None,
        Datum::Value(v) => Some(v.value),
        Datum::Band(b) => Some(b.value.max),
    }
}

fn counter(
    bath: &PlanBath,
    at: &FieldPath,
    work: Option<(quantity::Current, WorkArea)>,
    add: &mut impl FnMut(LimitKind, FieldPath, Vec<Named>),
) {
    let Some((facing, (current, area))) = bath.facing.zip(work) else {
        return;
    };
    let least = lowest(&bath.solution.counter_ratio);
    let ratio = Ratio::from_si(facing.si() / area.si());
    if let Some(least) = least
        && ratio.si() < least.si() * (1.0 - 1e-9)
    {
        let numbers = vec![Named::new("ratio", ratio), Named::new("least", least)];
        add(LimitKind::CounterTooSmall, at.clone(), numbers);
    }
    let density = CurrentDensity::from_si(current.si() / facing.si());
    if let Some(highest) = highest(&bath.solution.counter_highest)
        && density.si() > highest.si()
    {
        let numbers = vec![
            Named::new("density", density),
            Named::new("highest", highest),
        ];
        add(LimitKind::CounterTooDense, at.clone(), numbers);
    }
}

/// A contact that takes too many volts.
pub(crate) struct Poor {
    pub(crate) piece: usize,
    /// The stage in which that shows first.
    pub(crate) stage: usize,
    pub(crate) volts: Voltage,
    pub(crate) density: CurrentDensity,
    pub(crate) mean: CurrentDensity,
}

pub(crate) fn poor(plan: &Plan, likely: &Run) -> Vec<Poor> {
    let inputs = plan.inputs.likely();
    let mut all = Vec::new();
    for (p, piece) in plan.pieces.iter().enumerate().filter(|_| plan.contacts) {
        let [Some(contact), _] = piece.contact else {
            continue;
        };
        let mut stages = plan.stages.iter().zip(&likely.stages).enumerate();
        all.extend(stages.find_map(|(k, (stage, run))| {
            let shared = |p: usize| likely.shared[k * plan.pieces.len() + p];
            let vessel = stage.hung.iter().find(|h| h.contains(&p))?;
            let ohm: Resistance = inputs.get(contact);
            // What hangs on one clip flows through it together.
            let through = match piece.clip {
                None => shared(p).share?.si(),
                clip => {
                    let on = vessel.iter().filter(|q| plan.pieces[**q].clip == clip);
                    on.map(|q| {
                        f64::from(plan.pieces[*q].count)
                            * shared(*q).share.map_or(0.0, Quantity::si)
                    })
                    .sum()
                }
            };
            let volts = ohm * (run.real? * through);
            (volts.si() > CLIP.si()).then_some(Poor {
                piece: p,
                stage: k,
                volts,
                density: shared(p).density?,
                mean: run.real? / likely.bare_area(vessel),
            })
        }));
    }
    all
}

/// End over middle piece of a bar, lowest and highest, by the counter electrode's length over the bar's: finite elements
/// over seven rods, one method; a second one came within 13 %. The rule, from the centre of the first piece to that of the
/// last, gives 1.02 to 1.07.
fn end_over_middle(over_bar: f64) -> (f64, f64) {
    match over_bar {
        x if x < 0.5 => (0.12, 0.25),
        x if x < 0.9 => (0.71, 0.81),
        x if x <= 1.1 => (0.97, 1.10),
        x if x <= 1.35 => (1.18, 1.36),
        _ => (1.5, 1.8),
    }
}

fn bar_ends(
    plan: &Plan,
    n: usize,
    bath: &PlanBath,
    at: &FieldPath,
    add: &mut impl FnMut(LimitKind, FieldPath, Vec<Named>),
) {
    let vessels = plan.steps.iter().flat_map(|s| &s.vessels);
    let pieces = vessels
        .filter(|v| v.bath == n)
        .map(|v| {
            v.pieces
                .iter()
                .map(|p| f64::from(plan.pieces[*p].count))
                .sum()
        })
        .fold(0.0, |a: f64, b| if b > a { b } else { a });
    let Some(over_bar) = bath.over_bar.filter(|_| pieces >= BAR) else {
        return;
    };
    let (low, high) = end_over_middle(over_bar.si());
    if low > 1.1 || high < 0.9 {
        let numbers = vec![
            Named::new("low", Ratio::from_si(low)),
            Named::new("high", Ratio::from_si(high)),
        ];
        add(LimitKind::BarEnds, at.clone(), numbers);
    }
}
