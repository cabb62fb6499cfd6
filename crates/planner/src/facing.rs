//! The counter electrode: how much of it looks at the work, and how far the vessel's own wall is.

use crate::answer::{Limit, LimitKind};
use crate::checks::named;
use crate::fields;
use crate::job::{Extent, Form, Job};
use crate::path::FieldPath;
use crate::plan::Plan;
use crate::value::Named;
use chemistry::element::element_of;
use chemistry::material::{Anode, Material};
use core::f64::consts::PI;
use geometry::Shape;
use quantity::{CounterArea, Length, Quantity};

/// The facing area. Plates count with one face each; of a wire's or of scrap's whole surface the half that looks at the work
/// (common practice, no source); a round vessel with its wall. None for scrap of a material whose density is not known.
pub fn area(form: &Form, material: Option<&Material>) -> Option<CounterArea> {
    Some(CounterArea::from_si(match *form {
        Form::Plate {
            width,
            height,
            plates,
        } => width.si() * height.si() * f64::from(plates),
        Form::Coil { wire_d, length } => PI * wire_d.si() * length.si() / 2.0,
        Form::Scrap { mass, thickness } => {
            let material = material?;
            let id = match material.anode {
                Anode::Dissolves(metal) => metal,
                Anode::Stays => material.id,
            };
            mass.si() / (element_of(id)?.density.value.si() * thickness.si())
        }
        Form::Vessel { diameter, height } => PI * diameter.si() * height.si(),
    }))
}

/// From the edge of the widest sheet in a vessel to its wall, the sheet hanging in the middle with its shorter side across;
/// below 0 where it does not fit. None for other counter electrodes and other pieces.
pub fn gap(form: &Form, job: &Job, bath: &str) -> Option<Length> {
    let each = gaps(form, job, bath).map(|(_, gap)| gap);
    each.reduce(|a, b| if b < a { b } else { a })
}

/// The same of every sheet in it, by its place in the job.
fn gaps<'j>(
    form: &Form,
    job: &'j Job,
    bath: &'j str,
) -> impl Iterator<Item = (usize, Length)> + use<'j> {
    let round = match *form {
        Form::Vessel { diameter, .. } => Some(diameter),
        _ => None,
    };
    let here = move |id: &String| {
        let mut places = job.steps.iter().flat_map(|s| &s.places);
        places.any(|p| p.bath == bath && p.pieces.contains(id))
    };
    let pieces = job.pieces.iter().enumerate();
    pieces.filter_map(move |(n, piece)| {
        let Some(Extent::Parts(parts)) = piece.extent.as_ref().filter(|_| here(&piece.id)) else {
            return None;
        };
        Some((n, (round? - across(&parts.first()?.shape)?) / 2.0))
    })
}

fn across(shape: &Shape) -> Option<Length> {
    match *shape {
        Shape::Sheet { length, width, .. } => Some(if width < length { width } else { length }),
        Shape::Disc { diameter, .. } => Some(diameter),
        _ => None,
    }
}

/// A sheet that touches the wall of the vessel that is its counter electrode, or nearly does: then the current goes round the
/// solution, and the work is spoilt.
pub(crate) fn limits(job: &Job, plan: &Plan, all: &mut Vec<Limit>) {
    for bath in &plan.baths {
        let least = fields::DISTANCE.least;
        let Some(gap) = bath.gap.filter(|g| g.si() < least.si()) else {
            continue;
        };
        let said = job.baths.iter().find(|b| b.id == bath.id);
        let form = said.and_then(|b| b.counter.as_ref()?.form);
        let near = form.into_iter().flat_map(|f| gaps(&f, job, &bath.id));
        let near = near.filter(|(_, g)| g.si() < least.si()).map(|(n, _)| n);
        let pieces = named(plan, near);
        let gap = Length::from_si(if gap.si() > 0.0 { gap.si() } else { 0.0 });
        all.push(Limit {
            kind: LimitKind::TouchesWall,
            at: FieldPath::new("baths")
                .child(&bath.id)
                .child("counter/form"),
            numbers: vec![Named::new("gap", gap), Named::new("least", least)],
            pieces,
            note: None,
        });
    }
}
