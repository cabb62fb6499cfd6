//! A thief: metal hung beside the work so that a supply whose lowest current is too high for it can still be used.

use super::{Search, To, Way};
use crate::job::{Drive, Extent, Faces, Part, Piece};
use crate::path::FieldPath;
use geometry::{Covering, Shape};
use quantity::{Current, Length, Quantity, WorkArea};
use serde::Serialize;

/// Copper wire of this gauge where nothing else is said. Common practice, no source.
pub const GAUGE: Length = Length::mm(1.0);

/// A thief as a bare copper wire on the same bar. What it collects is [`super::WayOut::wasted`], and in the cost.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Thief {
    /// Surface it needs.
    #[serde(rename = "area_m2")]
    pub area: WorkArea,
    /// Gauge of the wire.
    #[serde(rename = "wire_d_m")]
    pub wire: Length,
    /// Length of it in the bath.
    #[serde(rename = "length_m")]
    pub length: Length,
}

impl Search<'_> {
    /// So much surface more that the density stays and the current is the supply's lowest.
    pub(super) fn thief(&mut self, wire: Length) {
        let n = self.step();
        let lowest = self.number::<Current>("lowest");
        let wanted = self.number::<Current>("wanted");
        let (Some(lowest), Some(wanted), Some(area)) = (lowest, wanted, self.area()) else {
            return;
        };
        let step = &self.job.steps[n];
        if self.now.plan.etches() || step.places.len() != 1 {
            return;
        }
        // A hair more, so that rounding does not leave it below.
        let area = area * (lowest / wanted * (1.0 + 1e-6) - 1.0);
        let length = Length::from_si(area.si() / (core::f64::consts::PI * wire.si()));
        let drive = match step.drive {
            Some(Drive::Current(_)) => Some(Drive::Current(lowest)),
            other => other,
        };
        let id = "thief";
        let piece = Piece {
            id: id.to_owned(),
            count: 1,
            extent: Some(Extent::Parts(vec![Part {
                id: "a".to_owned(),
                shape: Shape::Rod {
                    diameter: wire,
                    length,
                    ends: Covering::Covered,
                },
                texture_outside: None,
                times: 1,
                faces: Faces::Open,
            }])),
            ..Piece::default()
        };
        let known = length.si() <= crate::fields::LENGTH.most.si()
            && length.si() >= crate::fields::LENGTH.least.si();
        if !known || self.job.pieces.iter().any(|p| p.id == id) {
            return;
        }
        let at = FieldPath::new("pieces")
            .child(id)
            .child("extent/parts/a/shape/rod/length");
        let hung = self.attempt(Way::Thief, at, To::Quantity(length.into()), |j| {
            j.steps[n].drive = drive;
            j.steps[n].places[0].pieces.push(id.to_owned());
            j.pieces.push(piece);
        });
        if let Some(way) = self.found.last_mut().filter(|_| hung) {
            way.thief = Some(Thief { area, wire, length });
        }
    }
}
