//! The layer or the etched sheet of each piece to scale, with what else there is to say of it.

use super::{Shown, likely};
use crate::parts::card::card;
use crate::parts::layer::{Layer, tone};
use crate::parts::terms::terms;
use crate::parts::{groove, layer};
use crate::words::{self, number, term};
use planner::answer::{Etched, LayerAnswer, PieceAnswer};
use quantity::Quantity;
use yew::prelude::*;

/// The card; pieces whose figures are all alike share one drawing.
pub fn wall(shown: &Shown) -> Html {
    let pieces = &shown.answer.pieces;
    if pieces.iter().all(|p| p.mean.known().is_none()) {
        return Html::default();
    }
    let title = if pieces.iter().any(|p| p.etched.is_some()) {
        words::SHEET
    } else {
        words::WALL
    };
    let mut body = Vec::new();
    for (n, piece) in pieces.iter().enumerate() {
        if shown.several() {
            body.push(html! { <h3>{ shown.name(n) }</h3> });
        }
        if !pieces[..n].iter().any(|p| alike(p, piece)) {
            body.push(drawn(shown, piece));
        }
        body.push(beside(piece));
    }
    card("card wall", title, html! { <>{ body }</> })
}

fn alike(a: &PieceAnswer, b: &PieceAnswer) -> bool {
    a.mean == b.mean
        && a.thinnest == b.thinnest
        && a.thickest == b.thickest
        && a.etched == b.etched
        && a.layers == b.layers
}

fn drawn(shown: &Shown, piece: &PieceAnswer) -> Html {
    let top = tone(piece.metal.as_deref().unwrap_or_default());
    if let Some(etched) = &piece.etched {
        return match (&etched.section, etched.depth.known()) {
            (Some(section), Some(depth)) => groove::drawing(section, depth.likely, top),
            _ => Html::default(),
        };
    }
    let Some(mean) = piece.mean.known() else {
        return Html::default();
    };
    let coat = |l: &LayerAnswer| Some((l.mean.known()?.likely, tone(&l.metal)));
    let mut coats: Vec<_> = piece.layers.iter().filter_map(coat).collect();
    if coats.is_empty() {
        coats.push((mean.likely, top));
    }
    let layer = Layer {
        mean: mean.likely,
        thickest: piece.thickest.known().map(|t| t.likely),
        thinnest: piece.thinnest.known().map(|t| t.likely),
        inside: piece.inside.known().map(|t| t.likely),
        coats,
    };
    layer::drawing(&layer, shown.core)
}

fn beside(piece: &PieceAnswer) -> Html {
    let mass = likely(&piece.mass, number::mass);
    let mm = number::millimetres;
    match &piece.etched {
        Some(etched) => sheet(etched, mass, likely(&piece.area, number::area)),
        None => terms(vec![
            (term::THICKEST, likely(&piece.thickest, number::thickness)),
            (term::INSIDE, likely(&piece.inside, number::thickness)),
            (
                term::BORE_AFTER,
                likely(&piece.bore_after, mm).filter(|_| {
                    piece
                        .bore_after
                        .known()
                        .is_some_and(|b| b.likely.si() > 0.0)
                }),
            ),
            (term::BORE_TO_MAKE, likely(&piece.bore_to_make, mm)),
            (term::MASS, mass),
            (
                term::COST,
                likely(&piece.cost, |c| number::significant(c.si(), 3)),
            ),
            (term::WETTED, likely(&piece.wetted, number::area)),
        ]),
    }
}

/// Lines, openings, mass: what an etch makes of the sheet.
fn sheet(etched: &Etched, mass: Option<String>, open: Option<String>) -> Html {
    let mm = number::millimetres;
    terms(vec![
        (
            term::UNDERCUT,
            etched.section.as_ref().map(|s| mm(s.undercut)),
        ),
        (
            term::FINE_LINES,
            likely(&etched.fine_line, |r| {
                number::in_symbol(r.into(), "", 3) + " ×"
            }),
        ),
        (term::OPENINGS, likely(&etched.opening_after, mm)),
        (term::LINE, likely(&etched.line_to_draw, mm)),
        (term::DISSOLVED, mass),
        (term::OPEN, open),
    ])
}
