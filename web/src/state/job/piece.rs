//! The pieces.

use super::Reader;
use crate::state::{at, kinds};
use planner::fields;
use planner::job::{
    Area, Artwork, Base, Coat, Coated, Contact, Extent, Fit, Hanger, Lead, Method, Model, Moment,
    Part, Piece, Resist, Sides, Stock, piece,
};
use planner::{Opening, Process, Shape};
use quantity::Length;

/// The words for the film.
const RESISTS: [(&str, Resist); 5] = [
    ("toner", Resist::Toner),
    ("pen", Resist::Pen),
    ("varnish", Resist::Varnish),
    ("dry_film", Resist::DryFilm),
    ("vinyl", Resist::Vinyl),
];

impl Reader<'_> {
    pub(super) fn piece(&mut self, id: &str) -> Piece {
        self.piece = id.to_owned();
        let extent = self.extent();
        let wire_d = self.number(&fields::HANGER_WIRE, at::HANGER_WIRE);
        let wet = self.number(&fields::HANGER_WET, at::HANGER_WET);
        let etches = self.process() == Process::Etch;
        let fit = Fit {
            bore: self.number(&fields::FIT_BORE, at::BORE),
            wanted: self.number(&fields::WANTED_BORE, at::WANTED_BORE),
        };
        let clip = self.draft.text(&at::of(at::CLIP, id)).trim();
        let contact = Contact {
            clip: (!clip.is_empty()).then(|| clip.to_owned()),
            contact: self.number(&fields::CONTACT, at::CONTACT),
            lead: self.number(&fields::LEAD, at::CONTACT_LEAD),
        };
        let wires = self.count(&fields::WIRES, at::HANGER_WIRES);
        Piece {
            id: id.to_owned(),
            label: self.draft.text(&at::of(at::LABEL, id)).trim().to_owned(),
            count: self.count(&fields::COUNT, at::COUNT).unwrap_or(1),
            extent,
            base: self.base(),
            grown: None,
            open: if etches {
                self.number(&fields::OPEN, at::OPEN)
            } else {
                None
            },
            hanger: wire_d.zip(wet).map(|(wire_d, wet)| Hanger {
                wire_d,
                wet,
                wires: wires.unwrap_or(1),
            }),
            contact: (contact.contact.is_some() || contact.lead.is_some()).then_some(contact),
            opening: Some(self.pick(
                at::OPENING_WAY,
                &[("to", Opening::To), ("away", Opening::Away)],
                Opening::To,
            )),
            min_over_mean: self.number(&fields::MIN_OVER_MEAN, at::RATIO),
            fit: (!etches && (fit.bore.is_some() || fit.wanted.is_some())).then_some(fit),
            artwork: if etches { Some(self.artwork()) } else { None },
            joins: self.moment(at::JOINS),
            leaves: self.moment(at::LEAVES),
        }
    }

    /// A moment of the growing, the etch or the first coat.
    fn moment(&mut self, address: &str) -> Option<Moment> {
        let after = self.number(&fields::AFTER, address)?;
        Some(Moment {
            step: self.step.clone(),
            after,
        })
    }

    fn extent(&mut self) -> Option<Extent> {
        let Some(kind) = kinds::of(self.scoped(at::SHAPE)) else {
            let one_side = self.number(&fields::ONE_SIDE, at::AREA)?;
            let method = self.pick(at::METHOD, &piece::METHODS, Method::Eye);
            return Some(Extent::Area(Area {
                one_side,
                sides: self.pick(at::AREA_SIDES, &[("one", 1), ("both", 2)], 1),
                texture: self.number(&fields::TEXTURE, at::AREA_TEXTURE),
                method: Some(method),
            }));
        };
        let texture = self.number(&fields::TEXTURE_OUTSIDE, at::TEXTURE);
        let first = kind.parts.first()?;
        let sizes: Vec<Option<Length>> = kinds::addresses(&self.piece, &kind)
            .iter()
            .zip(first.shape.size_names())
            .map(|(address, name)| {
                fields::shape_size(name).and_then(|field| self.number(field, address))
            })
            .collect();
        let sizes: Vec<Length> = sizes.into_iter().collect::<Option<_>>()?;
        let number = kinds::number_address(&self.piece, &kind);
        let number = number.and_then(|at| self.count(&fields::HOLES, &at));
        let mut usual = None;
        first.shape.map_sizes(|n, size| {
            usual.get_or_insert(sizes[n] / size);
            size
        });
        let parts = kind
            .parts
            .iter()
            .enumerate()
            .map(|(n, part)| Part {
                id: kinds::part_id(n).to_owned(),
                // The others keep their proportion to the first size asked for.
                shape: numbered(number, part.shape).map_sizes(|k, size| {
                    if n == 0 {
                        sizes[k]
                    } else {
                        size * usual.unwrap_or(1.0)
                    }
                }),
                texture_outside: texture.filter(|_| n == 0).or(part.texture),
                times: part.times,
                faces: Default::default(),
            })
            .collect();
        Some(Extent::Parts(parts))
    }

    fn base(&mut self) -> Option<Base> {
        let coat = match self.scoped(at::BASE) {
            "graphite" => Coat::Graphite,
            "copper" => Coat::Copper,
            "silver" => Coat::Silver,
            "unknown" => return Some(Base::Unknown),
            id => {
                let id = id.to_owned();
                let thickness = match self.process() {
                    Process::Etch => self.number(&fields::STOCK, at::STOCK),
                    _ => None,
                };
                return Some(Base::Metal(Stock { id, thickness }));
            }
        };
        Some(Base::Nonconductor(Coated {
            coat,
            sheet: None,
            contacts: 1,
            girth: None,
            height: None,
        }))
    }

    fn artwork(&mut self) -> Artwork {
        Artwork {
            opening: self.number(&fields::ART_OPENING, at::OPENING),
            land_wanted: self.number(&fields::ART_LAND, at::LAND),
            length: self.number(&fields::ART_LENGTH, at::ART_LENGTH),
            etch_factor: self.number(&fields::ETCH_FACTOR, at::ETCH_FACTOR),
            sides: Some(self.pick(
                at::SIDES,
                &[("one", Sides::One), ("both", Sides::Both)],
                Sides::One,
            )),
            model: Some(self.pick(
                at::MODEL,
                &[("flat", Model::Flat), ("groove", Model::Groove)],
                Model::Flat,
            )),
            resist: Some(self.pick(at::RESIST, &RESISTS, Resist::Varnish)),
            lead: Some(self.pick(
                at::LEAD,
                &[("plus", Lead::Plus), ("minus", Lead::Minus)],
                Lead::Plus,
            )),
        }
    }
}

fn numbered(number: Option<u32>, shape: Shape) -> Shape {
    number.map_or(shape, |n| kinds::numbered(shape, n))
}
