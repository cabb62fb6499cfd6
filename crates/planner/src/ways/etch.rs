//! An etch otherwise: from both sides, under another film.

use super::{Search, To, Way};
use crate::answer::LimitKind;
use crate::job::{Base, Job, Resist, Sides};

impl Search<'_> {
    pub(super) fn both_sides(&mut self) {
        let Some(p) = self.piece() else { return };
        let sheet = matches!(self.job.pieces[p].base, Some(Base::Metal(_)));
        let once = |a: &crate::job::Artwork| a.sides != Some(Sides::Both);
        if sheet && self.job.pieces[p].artwork.as_ref().is_some_and(once) {
            let at = self.limit.at.child("artwork/sides");
            self.attempt(Way::Turn, at, To::Word("both"), |j| {
                if let Some(art) = &mut j.pieces[p].artwork {
                    art.sides = Some(Sides::Both);
                }
            });
        }
    }

    pub(super) fn other_film(&mut self) {
        let Some(p) = self.piece() else { return };
        let films = [
            ("varnish", Resist::Varnish),
            ("dry_film", Resist::DryFilm),
            ("vinyl", Resist::Vinyl),
        ];
        for (word, film) in films {
            let at = self.limit.at.child("artwork/resist");
            let set = |j: &mut Job| {
                if let Some(art) = &mut j.pieces[p].artwork {
                    art.resist = Some(film);
                }
            };
            if self.limit.kind == LimitKind::TooDeepForResist
                && self.attempt(Way::Resist, at, To::Word(word), set)
            {
                return;
            }
        }
    }
}
