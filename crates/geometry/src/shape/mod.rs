//! Shapes as parts: sizes in, wetted area, volume and outline out. One file per family holds the formulas; here is the list.

mod crystal;
mod cup;
mod ellipsoid;
mod leaf;
mod list;
mod plate;
mod ring;
mod rod;
mod round;
mod taper;
mod wire;

pub use leaf::LeafForm;
pub use list::Shape;

use crate::outline::Ring;
use crate::surface::{Surface, larger};
use quantity::{Length, Quantity, Ratio, WorkArea};
use serde::Serialize;

/// Whether a face that may be hidden (an end, a base, the inside under a stone) touches the solution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Covering {
    /// It does.
    #[default]
    Bare,
    /// It is masked, glued down, or under a stone.
    Covered,
}

impl Covering {
    /// 1 for a bare face, 0 for a covered one.
    pub(crate) fn counts(self) -> f64 {
        match self {
            Covering::Bare => 1.0,
            Covering::Covered => 0.0,
        }
    }
}

const COVERINGS: &[&str] = &["bare", "covered"];

/// A hollow: how deep, and how wide at its mouth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Recess {
    /// From the mouth to the bottom; through a tube, its whole length.
    pub depth: Length,
    /// Across the mouth, measured inside.
    pub opening: Length,
}

impl Recess {
    /// Depth over opening; infinite for no opening.
    pub fn depth_over_opening(&self) -> Ratio {
        Ratio::from_si(self.depth / self.opening)
    }
}

/// The bound that a size breaks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit {
    /// It must be more than this, or as much where the two may touch.
    Least(Length),
    /// It must be less than this.
    Most(Length),
}

/// Two sizes that no real piece can have together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contradiction {
    /// The size to blame: its place in [`Shape::size_names`].
    pub size: usize,
    /// What the other sizes ask of it.
    pub limit: Limit,
}

impl Shape {
    /// The typical instance of the shape with this id.
    pub fn of_id(id: &str) -> Option<Self> {
        Self::TYPICAL.iter().find(|s| s.id() == id).copied()
    }

    /// Areas, volume and sizes by the formulas of the shape's family. Never below 0; finite for finite sizes above 0.
    pub fn surface(&self) -> Surface {
        use Shape as S;
        match *self {
            S::Torus { bore, wire_d } => ring::torus(bore.si(), wire_d.si()),
            S::Band { bore, wall, width } => ring::band(bore.si(), wall.si(), width.si()),
            S::HalfRound { bore, wall, width } => {
                ring::half_round(bore.si(), wall.si(), width.si())
            }
            S::Cap {
                outer_d,
                inner_d,
                height,
            } => round::cap(outer_d.si(), inner_d.si(), height.si()),
            S::Dome { opening_d, height } => round::dome(opening_d.si(), height.si()),
            S::Sphere { diameter } => round::sphere(diameter.si()),
            S::Sheet {
                length,
                width,
                thickness,
            } => plate::cuboid(length.si(), width.si(), thickness.si()),
            S::PiercedSheet {
                length,
                width,
                thickness,
                hole_d,
                holes,
            } => plate::pierced(length.si(), width.si(), thickness.si(), hole_d.si(), holes),
            S::Disc {
                diameter,
                thickness,
            } => plate::disc(diameter.si(), thickness.si()),
            S::Block {
                length,
                width,
                height,
            } => plate::cuboid(length.si(), width.si(), height.si()),
            S::Rod {
                diameter,
                length,
                ends,
            } => rod::rod(diameter.si(), length.si(), ends),
            S::Tube { bore, wall, length } => rod::tube(bore.si(), wall.si(), length.si()),
            S::Hole { diameter, depth } => rod::hole(diameter.si(), depth.si()),
            S::Twig {
                base_d,
                top_d,
                length,
            } => taper::frustum(base_d.si(), top_d.si(), length.si(), Covering::Bare),
            S::Cone {
                base_d,
                height,
                base,
            } => taper::frustum(base_d.si(), 0.0, height.si(), base),
            S::Frustum {
                base_d,
                top_d,
                height,
                ends,
            } => taper::frustum(base_d.si(), top_d.si(), height.si(), ends),
            S::Snail { diameter, height } => taper::snail(diameter.si(), height.si()),
            S::Cup {
                opening_d,
                base_d,
                height,
                wall,
            } => cup::cup(
                opening_d.si(),
                base_d.si(),
                height.si(),
                wall.si(),
                Covering::Bare,
            ),
            S::Bezel {
                outer_d,
                height,
                wall,
                inside,
            } => cup::cup(outer_d.si(), outer_d.si(), height.si(), wall.si(), inside),
            S::Ellipsoid {
                length,
                width,
                height,
            } => ellipsoid::whole(length.si(), width.si(), height.si()),
            S::SeedHead { diameter, height } => Surface {
                volume: None,
                ..ellipsoid::whole(diameter.si(), diameter.si(), height.si())
            },
            S::HalfEllipsoid {
                length,
                width,
                height,
                base,
            } => ellipsoid::half(length.si(), width.si(), height.si(), base),
            S::Shell {
                length,
                width,
                height,
            } => ellipsoid::shell(length.si(), width.si(), height.si()),
            S::Coil {
                bore,
                wire_d,
                pitch,
                length,
            } => wire::coil(bore.si(), wire_d.si(), pitch.si(), length.si()),
            S::TwistedPair {
                wire_d,
                pitch,
                length,
            } => wire::twisted_pair(wire_d.si(), pitch.si(), length.si()),
            S::Link {
                length,
                width,
                wire_d,
            } => wire::link(length.si(), width.si(), wire_d.si()),
            S::Chain {
                length,
                link_length,
                link_width,
                wire_d,
            } => wire::chain(length.si(), link_length.si(), link_width.si(), wire_d.si()),
            S::Mesh {
                length,
                width,
                wire_d,
                pitch,
                layers,
            } => wire::mesh(length.si(), width.si(), wire_d.si(), pitch.si(), layers),
            S::Leaf {
                length,
                width,
                form,
            } => leaf::leaf(length.si(), width.si(), form),
            S::Feather { length, width } => leaf::feather(length.si(), width.si()),
            S::Crystal {
                flats,
                height,
                point,
                base,
            } => crystal::crystal(flats.si(), height.si(), point.si(), base),
        }
    }

    /// The hollow of a cup, dome, tube or hole; none for shapes without one, and for one that is covered.
    pub fn recess(&self) -> Option<Recess> {
        let (depth, opening) = match *self {
            Shape::Cap {
                outer_d,
                inner_d,
                height,
            } => (height - (outer_d - inner_d) / 2.0, inner_d),
            Shape::Dome { opening_d, height } => (height, opening_d),
            Shape::Cup {
                opening_d,
                height,
                wall,
                ..
            } => (height - wall, opening_d - wall * 2.0),
            Shape::Bezel {
                outer_d,
                height,
                wall,
                inside: Covering::Bare,
            } => (height - wall, outer_d - wall * 2.0),
            Shape::Shell {
                length,
                width,
                height,
            } => (height, Length::from_si(larger(length.si(), width.si()))),
            Shape::Tube { bore, length, .. } => (length, bore),
            Shape::Hole { diameter, depth } => (depth, diameter),
            _ => return None,
        };
        (depth.si() > 0.0 && opening.si() > 0.0).then_some(Recess { depth, opening })
    }

    /// The length on which evenness is judged: the radius of the opening for whatever has a hollow, half the width for fern
    /// and feather (they plate like a grating; common practice, no source), otherwise half the longest size.
    pub fn scale(&self) -> Length {
        self.scale_with(&self.surface())
    }

    /// The same, where its surface is known already.
    pub fn scale_with(&self, surface: &Surface) -> Length {
        if let Some(recess) = self.recess() {
            return recess.opening / 2.0;
        }
        match *self {
            Shape::Feather { width, .. }
            | Shape::Leaf {
                width,
                form: LeafForm::Fern,
                ..
            } => width / 2.0,
            _ => surface.longest / 2.0,
        }
    }

    /// Has points or hairs that grow faster than a rim.
    pub fn pointed(&self) -> bool {
        matches!(
            self,
            Shape::Crystal { .. }
                | Shape::Leaf {
                    form: LeafForm::Lobed,
                    ..
                }
        )
    }

    /// Area over the two-thirds power of the volume: the k that turns a volume measured by suspension into an area; 4.836 for
    /// a sphere, the least there is. None without a volume.
    pub fn area_factor(&self) -> Option<Ratio> {
        let surface = self.surface();
        let volume = surface.volume?.si();
        let third = libm::cbrt(volume);
        (third > 0.0).then(|| Ratio::from_si(surface.total().si() / (third * third)))
    }

    /// What no real piece has: an inside wider than its outside, a wire thicker than its link is wide. None where the sizes
    /// go together.
    pub fn contradiction(&self) -> Option<Contradiction> {
        let broken = |holds: bool, size, limit| (!holds).then_some(Contradiction { size, limit });
        let below =
            |size, value: Length, most: Length| broken(value < most, size, Limit::Most(most));
        let above =
            |size, value: Length, least: Length| broken(value > least, size, Limit::Least(least));
        let at_least =
            |size, value: Length, least: Length| broken(value >= least, size, Limit::Least(least));
        match *self {
            Shape::Cap {
                outer_d, inner_d, ..
            } => below(1, inner_d, outer_d),
            Shape::PiercedSheet {
                length,
                width,
                hole_d,
                holes,
                ..
            } => {
                let narrow = if width.si() < length.si() {
                    width
                } else {
                    length
                };
                let n = f64::from(holes.max(1));
                // All holes together leave some sheet.
                let share = (4.0 * length.si() * width.si() / (core::f64::consts::PI * n)).sqrt();
                let most = if share < narrow.si() {
                    Length::from_si(share)
                } else {
                    narrow
                };
                below(3, hole_d, most)
            }
            Shape::Cup {
                opening_d,
                base_d,
                height,
                wall,
            } => {
                let narrow = if base_d.si() < opening_d.si() {
                    base_d
                } else {
                    opening_d
                };
                below(3, wall, narrow / 2.0).or_else(|| below(3, wall, height))
            }
            Shape::Bezel {
                outer_d,
                height,
                wall,
                ..
            } => below(2, wall, outer_d / 2.0).or_else(|| below(2, wall, height)),
            // A coil may be wound close: its pitch is then the wire's diameter.
            Shape::Coil { wire_d, pitch, .. } => at_least(2, pitch, wire_d),
            // Two wires side by side cannot be twisted shorter.
            Shape::TwistedPair { wire_d, pitch, .. } => at_least(1, pitch, wire_d * 2.0),
            Shape::Link {
                length,
                width,
                wire_d,
            } => above(0, length, wire_d * 2.0).or_else(|| above(1, width, wire_d * 2.0)),
            Shape::Chain {
                link_length,
                link_width,
                wire_d,
                ..
            } => above(1, link_length, wire_d * 2.0).or_else(|| above(2, link_width, wire_d * 2.0)),
            Shape::Mesh { wire_d, pitch, .. } => above(3, pitch, wire_d),
            _ => None,
        }
    }

    /// The word this shape takes beside its sizes, if any: its key in a Job, and the words accepted.
    pub fn word(&self) -> Option<(&'static str, &'static [&'static str])> {
        match self {
            Shape::Rod { .. } | Shape::Frustum { .. } => Some(("ends", COVERINGS)),
            Shape::Cone { .. } | Shape::HalfEllipsoid { .. } | Shape::Crystal { .. } => {
                Some(("base", COVERINGS))
            }
            Shape::Bezel { .. } => Some(("inside", COVERINGS)),
            Shape::Leaf { .. } => Some(("form", LeafForm::WORDS)),
            _ => None,
        }
    }

    /// The same shape with its word set; none where the shape takes no word or not this one.
    pub fn with_word(mut self, word: &str) -> Option<Self> {
        match &mut self {
            Shape::Rod { ends: face, .. }
            | Shape::Frustum { ends: face, .. }
            | Shape::Cone { base: face, .. }
            | Shape::HalfEllipsoid { base: face, .. }
            | Shape::Crystal { base: face, .. }
            | Shape::Bezel { inside: face, .. } => {
                *face = match word {
                    "bare" => Covering::Bare,
                    "covered" => Covering::Covered,
                    _ => return None,
                }
            }
            Shape::Leaf { form, .. } => *form = LeafForm::of_word(word)?,
            _ => return None,
        }
        Some(self)
    }

    /// The count this shape takes beside its sizes, if any: its key in a Job.
    pub fn count_key(&self) -> Option<&'static str> {
        match self {
            Shape::PiercedSheet { .. } => Some("holes_count"),
            Shape::Mesh { .. } => Some("layers_count"),
            _ => None,
        }
    }

    /// The same shape with its count set; unchanged where it takes none.
    pub fn with_count(mut self, count: u32) -> Self {
        match &mut self {
            Shape::PiercedSheet { holes: n, .. } | Shape::Mesh { layers: n, .. } => *n = count,
            _ => {}
        }
        self
    }

    /// The shape as seen from its most telling side, for a small picture: true in its main sizes, thin walls and wires thick
    /// enough to be seen.
    pub fn outline(&self) -> Vec<Ring> {
        use Shape as S;
        match *self {
            S::Torus { bore, wire_d: wall } => ring::draw(bore.si(), wall.si()),
            S::Band { bore, wall, width } => ring::draw_band(bore.si(), wall.si(), width.si()),
            S::HalfRound { bore, wall, width } => {
                ring::draw_half_round(bore.si(), wall.si(), width.si())
            }
            S::Cap {
                outer_d, height, ..
            } => round::draw_cap(outer_d.si(), height.si()),
            S::Dome { opening_d, height } => round::draw_dome(opening_d.si(), height.si()),
            S::Sphere { diameter } => round::draw_sphere(diameter.si()),
            S::Sheet { length, width, .. } => plate::draw_sheet(length.si(), width.si()),
            S::PiercedSheet {
                length,
                width,
                hole_d,
                holes,
                ..
            } => plate::draw_pierced(length.si(), width.si(), hole_d.si(), holes),
            S::Disc {
                diameter,
                thickness,
            } => plate::draw_disc(diameter.si(), thickness.si()),
            S::Block {
                length,
                width,
                height,
            } => plate::draw_block(length.si(), width.si(), height.si()),
            S::Rod {
                diameter, length, ..
            } => rod::draw_rod(diameter.si(), length.si()),
            S::Tube { bore, wall, length } => rod::draw_tube(bore.si(), wall.si(), length.si()),
            S::Hole { diameter, depth } => rod::draw_hole(diameter.si(), depth.si()),
            S::Twig {
                base_d,
                top_d,
                length,
            } => taper::draw_twig(base_d.si(), top_d.si(), length.si()),
            S::Cone { base_d, height, .. } => taper::draw(base_d.si(), 0.0, height.si()),
            S::Frustum {
                base_d,
                top_d,
                height,
                ..
            } => taper::draw(base_d.si(), top_d.si(), height.si()),
            S::Snail { diameter, height } => taper::draw_snail(diameter.si(), height.si()),
            S::Cup {
                opening_d,
                base_d,
                height,
                wall,
            } => cup::draw(opening_d.si(), base_d.si(), height.si(), wall.si()),
            S::Bezel {
                outer_d,
                height,
                wall,
                ..
            } => cup::draw(outer_d.si(), outer_d.si(), height.si(), wall.si()),
            S::Ellipsoid { length, width, .. } => ellipsoid::draw_pod(length.si(), width.si()),
            S::SeedHead { diameter, height } => {
                ellipsoid::draw_seed_head(diameter.si(), height.si())
            }
            S::HalfEllipsoid { length, height, .. } => {
                ellipsoid::draw_half(length.si(), height.si())
            }
            S::Shell { length, width, .. } => ellipsoid::draw_shell(length.si(), width.si()),
            S::Coil {
                bore,
                wire_d,
                pitch,
                length,
            } => wire::draw_coil(bore.si(), wire_d.si(), pitch.si(), length.si()),
            S::TwistedPair {
                wire_d,
                pitch,
                length,
            } => wire::draw_twisted_pair(wire_d.si(), pitch.si(), length.si()),
            S::Link {
                length,
                width,
                wire_d,
            } => wire::draw_link(length.si(), width.si(), wire_d.si()),
            S::Chain {
                link_length,
                link_width,
                wire_d,
                ..
            } => wire::draw_chain(link_length.si(), link_width.si(), wire_d.si()),
            S::Mesh { length, width, .. } => wire::draw_mesh(length.si(), width.si()),
            S::Leaf {
                length,
                width,
                form,
            } => leaf::draw_leaf(length.si(), width.si(), form),
            S::Feather { length, width } => leaf::draw_feather(length.si(), width.si()),
            S::Crystal {
                flats,
                height,
                point,
                ..
            } => crystal::draw(flats.si(), height.si(), point.si()),
        }
    }
}

/// Wetted side of a round wire: pi d l, ends left out.
pub fn wire_side(diameter: Length, wet: Length) -> WorkArea {
    diameter.by(wet) * core::f64::consts::PI
}

/// The edge of a sheet of any outline: perimeter times thickness. The two faces are its outline's area each.
pub fn sheet_edge(perimeter: Length, thickness: Length) -> WorkArea {
    perimeter.by(thickness)
}
