//! The example that stands on a fresh page: a pair of resin-printed hoop earrings, sealed and painted with copper paint.
//! Invented data.

use super::draft::{Draft, FORMAT};
use super::entries::at;
use super::kinds;
use std::collections::BTreeMap;

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
    let shape = draft.scoped(at::SHAPE).to_owned();
    kinds::fill_in(&mut draft, &shape);
    draft
}
