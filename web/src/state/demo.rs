//! The example that stands on a fresh page: a pair of resin-printed hoop earrings, sealed and painted with copper paint.
//! Invented data.

use super::draft::{Draft, FORMAT};
use super::entries::at;
use std::collections::BTreeMap;

const TEXTS: &[(&str, &str)] = &[
    (at::SHAPE, "torus"),
    (at::BAND_BORE, "17.6"),
    (at::BAND_WALL, "1.5"),
    (at::BAND_WIDTH, "6"),
    (at::TORUS_BORE, "22"),
    (at::TORUS_WIRE, "2"),
    (at::AREA, "11.4"),
    (at::METHOD, "mesh"),
    (at::COUNT, "2"),
    (at::HANGER_WIRE, "0.8"),
    (at::HANGER_WET, "20"),
    (at::BASE, "copper"),
    (at::COVER, "on"),
    (at::COVER_DENSITY, "1.5"),
    (at::COVER_TIME, "20"),
    (at::DRIVE, "advised"),
    (at::DENSITY, "1.2"),
    (at::CURRENT, "140"),
    (at::UNTIL, "earring"),
    (at::MEAN, "200"),
    (at::THINNEST, "150"),
    (at::CLOCK, "16:20"),
    (at::TIME, "6"),
    (at::STIRRING, "still"),
    (at::ARRANGEMENT, "one_side"),
    (at::DISTANCE, "80"),
    (at::LOWEST, "10"),
    (at::HIGHEST, "3"),
    (at::DISPLAY_STEP, "10"),
    (at::VOLTS, "6"),
    (at::PLACE, "home"),
];

/// A fresh draft of the example.
pub fn demo() -> Draft {
    let texts: BTreeMap<String, String> = TEXTS
        .iter()
        .map(|(a, t)| ((*a).to_owned(), (*t).to_owned()))
        .collect();
    Draft {
        format: FORMAT,
        good: texts.clone(),
        texts,
    }
}

/// A stored draft from before some field existed gets that field from the example; nothing in it is changed.
pub fn complete(mut draft: Draft) -> Draft {
    for (at, text) in TEXTS {
        draft
            .texts
            .entry((*at).to_owned())
            .or_insert_with(|| (*text).to_owned());
    }
    draft
}
