//! The pieces: surface, base, what is etched, how it hangs.

use super::*;

impl Resolver<'_> {
    pub(super) fn pieces(&mut self, baths: &[PlanBath]) -> Vec<PlanPiece> {
        let job = self.job;
        if job.pieces.is_empty() {
            self.stop_without_list("pieces");
        }
        let mut all: Vec<PlanPiece> = job.pieces.iter().map(|p| self.piece(p, baths)).collect();
        self.clips(&mut all);
        all
    }

    /// Pieces on one clip: its contact is given once, or alike.
    fn clips(&mut self, all: &mut [PlanPiece]) {
        let job = self.job;
        let name = |p: &Piece| p.contact.as_ref().and_then(|c| c.clip.clone());
        for (n, piece) in job.pieces.iter().enumerate() {
            let Some(clip) = name(piece).filter(|_| job.effects.contacts == Switch::On) else {
                continue;
            };
            let same = |p: &&Piece| name(p).as_ref() == Some(&clip);
            let given = |p: &Piece| p.contact.as_ref().and_then(|c| c.contact);
            let first = job.pieces.iter().position(|p| same(&p)).unwrap_or(n);
            let said = job
                .pieces
                .iter()
                .position(|p| same(&p) && given(p).is_some());
            let Some(said) = said else { continue };
            if given(piece).is_some_and(|own| Some(own) != given(&job.pieces[said])) {
                let at = FieldPath::new("pieces")
                    .child(&piece.id)
                    .child("contact/contact");
                self.problem(at, ProblemKind::Contradiction);
            }
            all[n].clip = Some(first);
            all[n].contact[0] = all[said].contact[0];
        }
    }

    fn piece(&mut self, piece: &Piece, baths: &[PlanBath]) -> PlanPiece {
        let path = FieldPath::new("pieces").child(&piece.id);
        let extent = path.child("extent");
        let surface = self.surface(piece, &extent);
        let factor = self.given(
            extent,
            Ratio::of_si(1.0),
            Spread::Lognormal {
                frac: usual_spread(piece),
            },
            ANY,
        );
        let wires = piece.hanger.as_ref().map(|h| {
            let at = path.child("hanger");
            let d = self.given(at.child("wire_d"), h.wire_d, Spread::None, ANY);
            // The liquid's level on a wire is judged by eye.
            let wet = self.given(at.child("wet"), h.wet, Spread::Lognormal { frac: 0.1 }, ANY);
            (d, wet, h.wires)
        });
        let etches = baths.first().is_some_and(PlanBath::etches);
        let single = match &piece.extent {
            Some(Extent::Parts(parts)) if parts.len() == 1 && parts[0].faces == Faces::Open => {
                Some(&parts[0].shape)
            }
            _ => None,
        };
        let rows = baths.iter().map(|b| self.row(b, single, piece)).collect();
        let own_ratio = piece
            .min_over_mean
            .map(|r| self.given(path.child("min_over_mean"), r, Spread::None, (1e-9, 1.0)));
        let bore = match (piece.fit.as_ref().and_then(|f| f.bore), &surface) {
            (Some(bore), _) => {
                Some(self.given(path.child("fit").child("bore"), bore, Spread::None, ANY))
            }
            (None, Some(PlanSurface::Parts(parts))) => parts
                .iter()
                .find_map(|p| p.shape.surface().bore.map(|_| p.sizes[0])),
            _ => None,
        };
        let mut gives: Vec<Option<Moved>> = baths
            .iter()
            .map(|b| self.gives(piece, Some(b), &path))
            .collect();
        if gives.is_empty() {
            gives.push(self.gives(piece, None, &path));
        }
        let link_at = path.child("contact");
        let link = |r: &mut Self, name: &str, ohms: Option<quantity::Resistance>| {
            let spread = Spread::Lognormal { frac: 0.5 };
            ohms.filter(|_| r.job.effects.contacts == Switch::On)
                .map(|ohms| r.given(link_at.child(name), ohms, spread, ANY))
        };
        let contact = piece.contact.as_ref();
        let contact = [
            link(self, "contact", contact.and_then(|c| c.contact)),
            link(self, "lead", contact.and_then(|c| c.lead)),
        ];
        if etches && piece.open.is_none() {
            self.stop_without(path.child("open"));
        }
        let open = piece.open.map(|o| {
            self.given(
                path.child("open"),
                o,
                Spread::Lognormal { frac: 0.1 },
                SHARE,
            )
        });
        PlanPiece {
            id: piece.id.clone(),
            count: piece.count,
            surface,
            factor,
            grown: piece.grown.unwrap_or_else(|| Thickness::um(0.0)),
            wires,
            rows,
            own_ratio,
            bore,
            wanted_bore: piece.fit.as_ref().and_then(|f| f.wanted),
            gives,
            contact,
            clip: None,
            coat: match &piece.base {
                Some(Base::Nonconductor(coated)) => Some(coated.coat),
                _ => None,
            },
            open: open.filter(|_| etches),
            stock: match &piece.base {
                Some(Base::Metal(stock)) => stock.thickness,
                _ => None,
            },
            art: self.art(piece, etches, &path.child("artwork")),
            pointed: single.is_some_and(Shape::pointed),
        }
    }

    /// A piece's row of the evenness table in a bath. The table is of layers that grow; an etch is nearly primary, and its
    /// resist has edges of its own.
    fn row(&self, bath: &PlanBath, single: Option<&Shape>, piece: &Piece) -> Option<field::Row> {
        let shape = single.filter(|_| !bath.etches())?;
        let said = self.job.baths.iter().find(|b| b.id == bath.id)?;
        let counter = said.counter.as_ref();
        let arrangement = counter.and_then(|c| c.arrangement).unwrap_or_default();
        let distance = counter.and_then(|c| c.distance);
        arrangement::row_for(shape, arrangement, piece.opening, distance)
    }

    /// The metal an etch takes from a piece. A base that is no known metal is a Problem, and stops an etch.
    pub(super) fn gives(
        &mut self,
        piece: &Piece,
        bath: Option<&PlanBath>,
        path: &FieldPath,
    ) -> Option<Moved> {
        let at = path.child("base").child("metal").child("id");
        let etch = bath.filter(|b| b.etches());
        let Some(Base::Metal(stock)) = &piece.base else {
            if etch.is_some() {
                self.stop_without(path.child("base"));
            }
            return None;
        };
        if let Some(own) = self.job.own.metals.iter().find(|m| m.id == stock.id) {
            return self.own_metal(own, etch.is_some());
        }
        let metal = Metal::of(&stock.id);
        let moved = metal.zip(etch).and_then(|(m, b)| Moved::of(m, &b.solution));
        if metal.is_none() || (etch.is_some() && moved.is_none()) {
            if etch.is_some() {
                self.stopped_by.push(at.clone());
            }
            let elements = self.catalogue.elements.iter().map(|e| e.id);
            let alloys = self.catalogue.alloys.iter().map(|a| a.id);
            // A known metal that this solution dissolves in no known way.
            let kind = match metal {
                Some(_) => ProblemKind::Contradiction,
                None => ProblemKind::UnknownId,
            };
            let dissolves = |id: &&str| {
                etch.is_none_or(|b| {
                    Metal::of(id)
                        .and_then(|m| Moved::of(m, &b.solution))
                        .is_some()
                })
            };
            self.problems.push(
                Problem::at(at, kind)
                    .reading(stock.id.as_str())
                    .one_of(elements.chain(alloys).filter(dissolves)),
            );
        }
        moved
    }

    /// A metal of the person's own, where it is etched.
    pub(super) fn own_metal(&mut self, own: &OwnAlloy, etches: bool) -> Option<Moved> {
        let at = FieldPath::new("own/metals").child(&own.id).child("parts");
        match Moved::of_own(own) {
            Ok(moved) => etches.then_some(moved),
            Err(fault) => {
                if etches {
                    self.stopped_by.push(at.clone());
                }
                let problem = match fault {
                    OwnFault::Element(id) => Problem::at(at.child(&id), ProblemKind::UnknownId)
                        .reading(id)
                        .one_of(self.catalogue.elements.iter().map(|e| e.id)),
                    OwnFault::Parts => Problem::at(at, ProblemKind::Contradiction),
                };
                self.problems.push(problem);
                None
            }
        }
    }

    pub(super) fn art(&mut self, piece: &Piece, etches: bool, at: &FieldPath) -> PlanArt {
        let Some(art) = &piece.artwork else {
            if etches {
                // Which lead is on the sheet is asked before every etch.
                self.missing_unless_said(at.child("lead"));
            }
            return PlanArt::default();
        };
        if etches && art.lead.is_none() {
            self.missing_unless_said(at.child("lead"));
        }
        let ef = art.etch_factor.unwrap_or(Ratio::of_si(1.0));
        // A stirred film-forming bath may reach 2 (from memory); 1 is the safe guess.
        let etch_factor = self.given(
            at.child("etch_factor"),
            ef,
            Spread::Lognormal { frac: 0.2 },
            (0.1, 10.0),
        );
        PlanArt {
            opening: art.opening,
            land: art.land_wanted,
            etch_factor: Some(etch_factor),
            groove: art.model == Some(Model::Groove),
            both: art.sides == Some(Sides::Both),
            resist: art.resist,
            lead: art.lead,
        }
    }

    pub(super) fn surface(&mut self, piece: &Piece, at: &FieldPath) -> Option<PlanSurface> {
        match &piece.extent {
            None => {
                // Where the extent was there but unreadable, its own fields have said so.
                if self.problems.iter().any(|p| p.field.within(at.as_str())) {
                    self.stopped_by.push(at.clone());
                } else {
                    self.stop(at.clone(), ProblemKind::Missing);
                }
                None
            }
            Some(Extent::Area(area)) => {
                let at = at.child("area");
                let one_side = self.given(at.child("one_side"), area.one_side, Spread::None, ANY);
                let texture = self.given(
                    at.child("texture"),
                    area.texture.unwrap_or(Ratio::of_si(1.0)),
                    Spread::None,
                    ANY,
                );
                Some(PlanSurface::Area(one_side, area.sides, texture))
            }
            Some(Extent::Parts(parts)) => {
                let planned = parts
                    .iter()
                    .map(|part| {
                        let at = at.child("parts").child(&part.id);
                        let sizes_at = at.child("shape").child(part.shape.id());
                        let mut sizes = Vec::new();
                        part.shape.map_sizes(|n, size| {
                            let name = part.shape.size_names()[n];
                            sizes.push(self.given(sizes_at.child(name), size, Spread::None, ANY));
                            size
                        });
                        let texture = self.given(
                            at.child("texture_outside"),
                            part.texture_outside.unwrap_or(Ratio::of_si(1.0)),
                            Spread::None,
                            ANY,
                        );
                        PlanPart {
                            at: sizes_at,
                            shape: part.shape,
                            sizes,
                            texture,
                            times: part.times,
                            in_recess: part.faces == Faces::Recess,
                        }
                    })
                    .collect();
                Some(PlanSurface::Parts(planned))
            }
        }
    }
}

/// Two in three, by how the surface was found: measured figures of the trade, common practice, no source.
fn usual_spread(piece: &Piece) -> f64 {
    match &piece.extent {
        Some(Extent::Area(area)) => match area.method {
            Some(Method::Mesh) => 0.03,
            Some(Method::Photo) => 0.05,
            Some(Method::Tracing) => 0.04,
            Some(Method::Foil) => 0.25,
            Some(Method::Sizes) => 0.10,
            Some(Method::Eye) => 0.60,
            None => 0.20,
        },
        // Sizes of something smooth, or of something grown.
        Some(Extent::Parts(parts)) if parts.iter().any(|p| natural(&p.shape)) => 0.20,
        _ => 0.10,
    }
}

/// Whether a shape stands for a find rather than for something made.
fn natural(shape: &Shape) -> bool {
    matches!(
        shape,
        Shape::Leaf { .. }
            | Shape::Feather { .. }
            | Shape::Twig { .. }
            | Shape::SeedHead { .. }
            | Shape::Shell { .. }
            | Shape::Snail { .. }
            | Shape::Crystal { .. }
    )
}
