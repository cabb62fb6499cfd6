//! What each piece gets, or gives.

use crate::value::Maybe;
use field::ThinAt;
use quantity::{
    Current, CurrentDensity, Fraction, Length, Mass, Money, Range, Ratio, Thickness, WorkArea,
};
use serde::Serialize;

/// What one piece will have. Masses and areas are of one piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PieceAnswer {
    /// The piece's id.
    pub id: String,
    /// How many alike.
    pub count: u32,
    /// Of the piece itself.
    pub area: Maybe<Range<WorkArea>>,
    /// Of its hanger wires.
    pub wire_area: Maybe<Range<WorkArea>>,
    /// Together: what sets the current.
    pub wetted: Maybe<Range<WorkArea>>,
    /// What one piece takes of the last step's current, its wires with it.
    pub current: Maybe<Range<Current>>,
    /// The metal laid on it or taken from it: an element's or alloy's id.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub metal: Option<String>,
    /// Its share of its vessel's current with its wires, while it last hung.
    pub share: Maybe<Range<Fraction>>,
    /// Its density then.
    pub density: Maybe<Range<CurrentDensity>>,
    /// Mean thickness, of all layers together.
    pub mean: Maybe<Range<Thickness>>,
    /// At the thinnest place.
    pub thinnest: Maybe<Range<Thickness>>,
    /// At the thickest place.
    pub thickest: Maybe<Range<Thickness>>,
    /// Layer by layer from below, where there are several metals.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub layers: Vec<LayerAnswer>,
    /// Where it is thinnest.
    pub thin_place: Maybe<ThinAt>,
    /// Mean of the inside of a hollow.
    pub inside: Maybe<Range<Thickness>>,
    /// Wagner number of the last step.
    pub wagner: Maybe<Range<Ratio>>,
    /// Mass grown on the piece, or dissolved from it in an etch.
    pub mass: Maybe<Range<Mass>>,
    /// The same on its wires.
    pub wire_mass: Maybe<Range<Mass>>,
    /// What the metal on piece and wires costs, by the person's own price.
    pub cost: Maybe<Range<Money>>,
    /// Inner diameter after growth.
    pub bore_after: Maybe<Range<Length>>,
    /// Inner diameter to make so that the wanted one comes of it.
    pub bore_to_make: Maybe<Range<Length>>,
    /// What an etch makes of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub etched: Option<Etched>,
}

/// One layer of a stack on a piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LayerAnswer {
    /// Its metal.
    pub metal: String,
    /// Mean thickness.
    pub mean: Maybe<Range<Thickness>>,
    /// At the thinnest place.
    pub thinnest: Maybe<Range<Thickness>>,
    /// At the thickest place.
    pub thickest: Maybe<Range<Thickness>>,
    /// Mass of it on the piece.
    pub mass: Maybe<Range<Mass>>,
}

/// What an etch makes of a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Etched {
    /// The depth reached: of a flat floor, or of grooves of the opening given.
    pub depth: Maybe<Range<Thickness>>,
    /// The depth of a flat floor by the same charge.
    pub flat_depth: Maybe<Range<Thickness>>,
    /// Charge of grooves of the opening given over that of a flat floor as deep.
    pub fine_line: Maybe<Range<Ratio>>,
    /// Metal left under the floor.
    pub left: Maybe<Range<Length>>,
    /// An opening after the etch.
    pub opening_after: Maybe<Range<Length>>,
    /// The line to draw for the land wanted.
    pub line_to_draw: Maybe<Range<Length>>,
    /// A section through it; none without a depth.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub section: Option<Section>,
}

/// What is thinner is gone: a thousandth of a micron, far under what arithmetic leaves of a sheet that is etched away.
const THROUGH: Length = Length::of_si(1e-9);

impl Etched {
    /// Whether nothing is left under the floor.
    pub fn through(&self) -> bool {
        self.left.known().is_some_and(|l| l.likely < THROUGH)
    }
}

/// A section through an etched sheet, at the likely values.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Section {
    /// How far the etch goes under the film at each edge.
    #[serde(rename = "undercut_m")]
    pub undercut: Length,
    /// Width of an opening in the film.
    #[serde(rename = "opening_m", skip_serializing_if = "Option::is_none")]
    pub opening: Option<Length>,
    /// Width of the film between two of them.
    #[serde(rename = "line_m", skip_serializing_if = "Option::is_none")]
    pub line: Option<Length>,
    /// Thickness of the sheet.
    #[serde(rename = "stock_m", skip_serializing_if = "Option::is_none")]
    pub stock: Option<Length>,
    /// Usual thickness of the film.
    #[serde(rename = "film_m", skip_serializing_if = "Option::is_none")]
    pub film: Option<Thickness>,
    /// From how many sides.
    #[serde(rename = "sides_count")]
    pub sides: u32,
}
