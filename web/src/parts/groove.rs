//! An etched sheet to scale: openings and land in section, the floor, the undercut below the film, what is left.

use super::picture::{Picture, larger, smaller};
use super::yardstick;
use crate::words;
use planner::answer::Section;
use quantity::{Length, Quantity, Thickness};
use yew::prelude::*;

const RIGHT: f64 = 164.0;
const DEEPEST: f64 = 150.0;
/// Widths and thicknesses beyond so many depths are cut short.
const CUT: f64 = 10.0;

/// The drawing, with a sentence on its scale. What is drawn is said in words as well.
pub fn drawing(section: &Section, depth: Thickness, tone: &'static str) -> Html {
    let um = |l: Length| l.si() * 1e6;
    let d = depth.si() * 1e6;
    let u = um(section.undercut);
    // Land and half an opening on each side; what was not given is drawn as wide as it needs to be seen.
    let most = CUT * larger(d, u);
    let whole = section.opening.map_or(4.0 * d, um);
    let opening = smaller(whole, most);
    let line = smaller(section.line.map_or(2.0 * u + 2.0 * d, um), 2.0 * u + most);
    let stock = section.stock.map_or(3.0 * d, um);
    let sheet = smaller(stock, CUT * d * f64::from(section.sides));
    let film = section.film.map_or(0.0, |f| f.si() * 1e6);
    let sticks = yardstick::beside(d, d);
    let stick = sticks.iter().fold(0.0, |a, s| larger(a, s.1));
    let scale = smaller(
        RIGHT / (opening + line),
        smaller(DEEPEST / (sheet + film), DEEPEST / larger(stick, 1e-9)),
    );
    let scale = if scale.is_finite() { scale } else { 1.0 };
    let width = (opening + line) * scale;
    let (left, right) = (opening / 2.0 * scale, width - opening / 2.0 * scale);
    let thick = sheet * scale;
    let drawn_film = larger(film * scale, 2.0);
    // Room above for the film and for yardsticks and their words, which stand on the sheet's lower face.
    let high = larger(stick * scale + 8.0, yardstick::room(sticks.len()));
    let top = larger(high - thick, drawn_film + 8.0);
    let bottom = top + thick;
    let mut p = Picture::default();
    p.rect(tone, 0.0, top, width, thick);
    // Where both sides just meet, half a unit more leaves no hair between them.
    let meet = if section.sides > 1 && 2.0 * d * scale > thick - 0.5 {
        0.5
    } else {
        0.0
    };
    let mut side = |face: f64, down: f64| {
        let (d, u) = ((d * scale + meet) * down, u * scale);
        // The side of a groove is a quarter ellipse about the film's edge. A unit beyond the sheet, so that no hair of
        // it stays.
        let (turn, back, out, floor) = if down > 0.0 {
            (1, 0, face - 1.0, face + d)
        } else {
            (0, 1, face + 1.0, face + d)
        };
        let deep = d.abs();
        p.path("open", format!(
            "M-1 {out:.1}H{:.1}V{face:.1}A{u:.1} {deep:.1} 0 0 {turn} {left:.1} {floor:.1}H-1ZM{:.1} {out:.1}H{:.1}V{face:.1}A{u:.1} {deep:.1} 0 0 {back} {right:.1} {floor:.1}H{:.1}Z",
            left + u, width + 1.0, right - u, width + 1.0,
        ));
        let film_y = if down > 0.0 { face - drawn_film } else { face };
        if section.film.is_some() {
            p.rect("film", left, film_y, right - left, drawn_film);
        }
    };
    side(top, 1.0);
    if section.sides > 1 {
        side(bottom, -1.0);
    }
    // Where a part is cut short, a wavy edge says so.
    if stock > sheet || section.stock.is_none() {
        p.path("cut", wave(bottom, width));
    }
    yardstick::draw(&mut p, &sticks, bottom, scale);
    let short = whole > opening || stock > sheet;
    html! {
        <>
            { p.show(bottom + drawn_film + 8.0, Some(words::sheet_said(section, depth, &yardstick::said(&sticks)))) }
            <p class="soft scale">{ words::enlarged(scale) }{ if short { words::CUT_SHORT } else { "" } }</p>
        </>
    }
}

/// A wavy line from the left to `width` at the height `y`.
fn wave(y: f64, width: f64) -> String {
    let half = width / 8.0;
    let mut d = format!("M0 {y:.1}q{:.1} -8 {half:.1} 0", half / 2.0);
    for _ in 0..7 {
        d.push_str(&format!("t{half:.1} 0"));
    }
    d
}
