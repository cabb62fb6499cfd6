//! The example that stands on a fresh page: a pair of resin-printed hoop earrings, sealed and painted with copper paint.
//! Invented data.
//!
//! It is the base of every job that is sent as a text: what such a text does not say stands here. A text once here is never changed;
//! a new field is added with what an earlier page took for granted.

use super::Draft;
use super::at;
use super::kinds;
use super::pieces;

const TEXTS: &[(&str, &str)] = &[
    (at::PROCESS, "electroform"),
    (at::SHAPE, "torus"),
    ("pieces/p1/extent@etch", "sheet"),
    (at::SOLUTION, "cu_acid_form"),
    ("baths/b1/solution@electroplate", "au_acid"),
    ("baths/b1/solution@etch", "et_cuso4_cu"),
    ("pieces/p1/extent/parts/a/shape/torus/bore", "22"),
    ("pieces/p1/extent/parts/a/shape/torus/wire_d", "2"),
    (at::AREA, "11.4"),
    (at::AREA_SIDES, "one"),
    (at::METHOD, "mesh"),
    (at::COUNT, "2"),
    (at::HANGER_WIRE, "0.8"),
    (at::HANGER_WET, "20"),
    (at::BASE, "copper"),
    ("pieces/p1/base@electroplate", "Ag925"),
    ("pieces/p1/base@etch", "Cu"),
    (at::OPEN, "40"),
    (at::STOCK, "0.8"),
    (at::OPENING, ""),
    (at::LAND, ""),
    (at::MODEL, "flat"),
    (at::SIDES, "one"),
    (at::RESIST, "varnish"),
    (at::LEAD, "plus"),
    (at::DEPTH, "150"),
    (at::OPENING_WAY, "to"),
    (at::COVER, "on"),
    (at::COVER_DENSITY, "1.5"),
    (at::COVER_TIME, "20"),
    (at::DRIVE, "advised"),
    (at::DENSITY, "1.2"),
    (at::CURRENT, "140"),
    (at::UNTIL, "earring"),
    ("steps/s2/until@electroplate", "earring"),
    ("steps/s2/until@etch", "depth"),
    (at::MEAN, "200"),
    (at::THINNEST, "150"),
    (at::CLOCK, "16:20"),
    (at::TIME, "6"),
    (at::STIRRING, "still"),
    (at::ARRANGEMENT, "one_side"),
    (at::DISTANCE, "80"),
    (at::VOLUME, "1"),
    (at::LOWEST, "10"),
    (at::HIGHEST, "3"),
    (at::DISPLAY_STEP, "10"),
    (at::VOLTS, "6"),
    (at::PLACE, "home"),
    (at::MASS, "1"),
    (at::UNITS, "metric"),
    (at::DECIMAL, "point"),
    ("pieces/p1/measure/tracing/square_area", "100"),
    ("pieces/p1/measure/scale_step", "0.01"),
    ("pieces/p1/measure/foil", "aluminium"),
    ("pieces/p1/measure", "tracing"),
    (at::SUPPLY, "constant_current"),
    (at::VOLTS_HIGHEST, "6"),
    (at::VOLTS_STEP, "0.1"),
    (at::OWN_METAL, "Cu"),
    (at::GROWTH, "off"),
    (at::VESSELS, "1"),
];

/// What a new piece begins with.
pub fn texts_of_a_piece() -> impl Iterator<Item = (&'static str, &'static str)> {
    let own = |at: &str| at::piece_of(at).is_some();
    TEXTS.iter().copied().filter(move |(at, _)| own(at))
}

/// A fresh draft of the example.
pub fn demo() -> Draft {
    let own = |(at, text): &(&str, &str)| ((*at).to_owned(), (*text).to_owned());
    Draft::of(TEXTS.iter().map(own).collect())
}

/// A stored draft from before some field existed gets that field from the example; nothing in it is changed.
pub fn complete(mut draft: Draft) -> Draft {
    let fill = |draft: &mut Draft, at: &str, text: &str| {
        draft
            .texts
            .entry(at.to_owned())
            .or_insert_with(|| text.to_owned());
    };
    for (at, text) in TEXTS {
        if at::piece_of(at).is_none() {
            fill(&mut draft, at, text);
        }
    }
    let all: Vec<String> = pieces::ids(&draft).into_iter().map(str::to_owned).collect();
    for piece in &all {
        for (at, text) in texts_of_a_piece() {
            fill(&mut draft, &at::of(at, piece), text);
        }
    }
    kinds::fill_in_all(&mut draft);
    draft
}
