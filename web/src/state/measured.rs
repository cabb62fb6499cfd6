//! Measuring a piece better: from what was typed to an area with its spread. The methods are the geometry's.

use super::at;
use super::draft::Draft;
use super::entries::{self, PIXELS, WEIGHED};
use super::units::Units;
use planner::FieldPath;
use planner::fields::{self, Field};
use planner::measure::{
    CardSides, FOIL_ALUMINIUM, FOIL_COPPER, Measured, Pixels, SquarePixels, beside_card, by_foil,
    by_tracing,
};
use quantity::{Quantity, WorkArea};

/// The ways offered, and the word of the method in the job that each is.
pub const WAYS: [(&str, &str); 3] = [("tracing", "tracing"), ("foil", "foil"), ("card", "photo")];

/// The area one side has, as measured; nothing while something is missing or impossible.
pub fn area(draft: &Draft, piece: &str) -> Option<Measured<WorkArea>> {
    let r = Readings { draft, piece };
    match draft.text(&at::of(at::MEASURE, piece)) {
        "card" => {
            let side = |at| r.number(&PIXELS, at).map(|n| Pixels(n.si()));
            let sides = CardSides {
                long: side(at::CARD_LONG),
                short: side(at::CARD_SHORT),
            };
            let piece = SquarePixels(r.number(&PIXELS, at::CARD_PIECE)?.si());
            beside_card(sides, piece, None).ok()
        }
        "foil" => {
            let foil = match draft.text(&at::of(at::FOIL, piece)) {
                "copper" => FOIL_COPPER,
                _ => FOIL_ALUMINIUM,
            };
            by_foil(
                r.number(&WEIGHED, at::WRAP)?,
                foil,
                r.number(&WEIGHED, at::SCALE_STEP)?,
            )
            .ok()
        }
        _ => by_tracing(
            r.number(&WEIGHED, at::TRACING)?,
            r.number(&WEIGHED, at::SQUARE)?,
            r.number(&fields::ONE_SIDE, at::SQUARE_AREA)?,
            r.number(&WEIGHED, at::SCALE_STEP)?,
        )
        .ok(),
    }
}

struct Readings<'a> {
    draft: &'a Draft,
    piece: &'a str,
}

impl Readings<'_> {
    fn number<Q: Quantity>(&self, field: &Field<Q>, address: &str) -> Option<Q> {
        let address = at::of(address, self.piece);
        let unit = entries::unit_in(Units::of(self.draft), field);
        let path = FieldPath::new(&address);
        let read = field.read_text_in(unit, self.draft.text(&address), &path);
        read.ok().map(|r| r.value)
    }
}

/// What using a measured area writes into the draft.
pub fn texts(draft: &Draft, piece: &str, found: &Measured<WorkArea>) -> Vec<(String, String)> {
    let way = draft.text(&at::of(at::MEASURE, piece));
    let method = WAYS.iter().find(|(w, _)| *w == way).unwrap_or(&WAYS[0]).1;
    let here = |address: &str| at::of(address, piece);
    let cm2 = found.value.in_unit(fields::ONE_SIDE.unit());
    let percent = found.spread.in_unit(fields::SPREAD.unit());
    let with_unit =
        |value: f64, unit: &str| format!("{} {unit}", quantity::print::significant(value, 4));
    vec![
        (draft.scope(&here(at::SHAPE)), "area".to_owned()),
        (here(at::AREA), with_unit(cm2, "cm²")),
        (here(at::METHOD), method.to_owned()),
        (at::spread(&here(at::SHAPE)), with_unit(percent, "%")),
    ]
}
