//! What a piece gets, or gives.

use super::absent::{does_not_apply, known, needs};
use super::{Builder, layer_metals};
use crate::answer::{Etched, LayerAnswer, PieceAnswer, Section};
use crate::groove;
use crate::path::FieldPath;
use crate::ranges::{OfLayer, OfPiece, Ranges};
use crate::value::{Absence, Because, Maybe};
use quantity::{Mass, Money, Quantity, Range};

impl Builder<'_> {
    pub(super) fn etched(&self, n: usize, ranges: &Ranges) -> Option<Etched> {
        let piece = &self.plan.pieces[n];
        if !self.plan.etches() {
            return None;
        }
        let at = FieldPath::new("pieces").child(&piece.id);
        let art = at.child("artwork");
        let or_needs = |there: bool, path: FieldPath| {
            if there {
                self.no_outcome()
            } else {
                needs(path)
            }
        };
        Some(Etched {
            depth: known(ranges.piece(n, OfPiece::Depth), || self.no_outcome()),
            flat_depth: known(ranges.piece(n, OfPiece::Mean), || self.no_outcome()),
            fine_line: known(ranges.piece(n, OfPiece::FineLine), || {
                or_needs(piece.art.opening.is_some(), art.child("opening"))
            }),
            left: known(ranges.piece(n, OfPiece::Left), || {
                or_needs(piece.stock.is_some(), at.child("base/metal/thickness"))
            }),
            opening_after: known(ranges.piece(n, OfPiece::OpeningAfter), || {
                or_needs(piece.art.opening.is_some(), art.child("opening"))
            }),
            line_to_draw: known(ranges.piece(n, OfPiece::LineToDraw), || {
                or_needs(piece.art.land.is_some(), art.child("land_wanted"))
            }),
            section: self.section(n),
        })
    }

    pub(super) fn section(&self, n: usize) -> Option<Section> {
        let piece = &self.plan.pieces[n];
        let run = &self.likely.pieces[n];
        Some(Section {
            undercut: run.depth?.as_length() / groove::etch_factor(piece, self.inputs),
            opening: piece.art.opening,
            line: run.line_to_draw,
            stock: piece.stock,
            film: piece.art.resist.map(groove::film),
            sides: if piece.art.both { 2 } else { 1 },
        })
    }

    /// What the metals on a piece and its wires cost, layer by layer, by the person's own prices; wires count with the
    /// last layer's price where there are several, in proportion to its share.
    pub(super) fn cost(
        &self,
        n: usize,
        mass: Option<Range<Mass>>,
        wire: Option<Range<Mass>>,
    ) -> Maybe<Range<Money>> {
        let metals = layer_metals(self.plan);
        if metals.is_empty() {
            return Maybe::absent(Because::DoesNotApply);
        }
        let of_piece = &self.likely.layers[n * self.plan.layers..(n + 1) * self.plan.layers];
        let (mut money, mut grams) = (0.0, 0.0);
        for (metal, layer) in metals.iter().zip(of_piece) {
            let found = self.job.prices.iter().find(|p| p.metal == **metal);
            let Some(price) = found else {
                return Maybe::Absent(needs(FieldPath::new("prices").child(metal)));
            };
            let mass = layer.mass.map_or(f64::NAN, Quantity::si);
            money += price.price.si() * mass;
            grams += mass;
        }
        // One price for all of it: the ends are added, a little wide where a longer wire takes from the piece.
        let only = self
            .job
            .prices
            .iter()
            .find(|p| *p.metal == **metals.first().unwrap_or(&""));
        let per_kg = match (metals.len(), only) {
            (1, Some(price)) => price.price.si(),
            _ if grams > 0.0 => money / grams,
            _ => 0.0,
        };
        known(
            mass.zip(wire).map(|(m, w)| Range {
                likely: Money::from_si(per_kg * (m.likely + w.likely).si()),
                low: Money::from_si(per_kg * (m.low + w.low).si()),
                high: Money::from_si(per_kg * (m.high + w.high).si()),
            }),
            || self.no_outcome(),
        )
    }

    pub(super) fn piece(&self, n: usize, ranges: &Ranges) -> PieceAnswer {
        let piece = &self.plan.pieces[n];
        let at = FieldPath::new("pieces").child(&piece.id);
        let extent = || Absence {
            because: Because::InputMissing,
            needs: vec![at.child("extent")],
        };
        let last = || self.no_outcome();
        let uneven = || self.no_ratio(piece);
        let hollow = || match self.likely.pieces[n].thin_at {
            Some(_) => does_not_apply(at.child("extent")),
            None => self.no_ratio(piece),
        };
        let mass = ranges.piece(n, OfPiece::Mass);
        let wire_mass = ranges.piece(n, OfPiece::WireMass);
        let etches = self.plan.etches();
        let no_bore = || match piece.bore {
            Some(_) if !etches => self.no_outcome(),
            _ => does_not_apply(at.child("fit").child("bore")),
        };
        let no_wanted = || match piece.wanted_bore {
            Some(_) if !etches => self.no_outcome(),
            _ => does_not_apply(at.child("fit").child("wanted_bore")),
        };
        PieceAnswer {
            id: piece.id.clone(),
            count: piece.count,
            area: known(ranges.piece(n, OfPiece::Area), extent),
            wire_area: known(ranges.piece(n, OfPiece::WireArea), extent),
            wetted: known(ranges.piece(n, OfPiece::Wetted), extent),
            current: known(ranges.piece(n, OfPiece::Current), last),
            metal: self.metal_on(n),
            share: known(ranges.piece(n, OfPiece::Share), last),
            density: known(ranges.piece(n, OfPiece::Density), last),
            layers: self.layers(n, ranges),
            mean: known(ranges.piece(n, OfPiece::Mean), last),
            thinnest: known(ranges.piece(n, OfPiece::Thinnest), uneven),
            thickest: known(ranges.piece(n, OfPiece::Thickest), uneven),
            thin_place: known(self.likely.pieces[n].thin_at, uneven),
            inside: known(ranges.piece(n, OfPiece::Inside), hollow),
            wagner: known(ranges.piece(n, OfPiece::Wagner), uneven),
            mass: known(mass, last),
            wire_mass: known(wire_mass, last),
            cost: self.cost(n, mass, wire_mass),
            bore_after: known(ranges.piece(n, OfPiece::BoreAfter), no_bore),
            bore_to_make: known(ranges.piece(n, OfPiece::BoreToMake), no_wanted),
            etched: self.etched(n, ranges),
        }
    }

    /// The metal laid on a piece in the last step it hangs in, or taken from it.
    pub(super) fn metal_on(&self, n: usize) -> Option<String> {
        let steps = self.plan.steps.iter().rev();
        let mut vessels = steps.flat_map(|s| &s.vessels);
        let vessel = vessels.find(|v| v.pieces.contains(&n))?;
        self.plan.moved(n, vessel.bath).map(|m| m.id.clone())
    }

    /// The layers of a stack on a piece; empty where there is only one.
    pub(super) fn layers(&self, n: usize, ranges: &Ranges) -> Vec<LayerAnswer> {
        if self.plan.layers < 2 {
            return Vec::new();
        }
        let last = || self.no_outcome();
        let uneven = || self.no_ratio(&self.plan.pieces[n]);
        let metals = layer_metals(self.plan);
        let each = metals.iter().enumerate();
        each.map(|(l, metal)| LayerAnswer {
            metal: (*metal).to_owned(),
            mean: known(ranges.layer(n, l, OfLayer::Mean), last),
            thinnest: known(ranges.layer(n, l, OfLayer::Thinnest), uneven),
            thickest: known(ranges.layer(n, l, OfLayer::Thickest), uneven),
            mass: known(ranges.layer(n, l, OfLayer::Mass), last),
        })
        .collect()
    }
}
