//! Jobs to start from, each as what differs from the base example. Invented pieces.

use super::at;
use super::demo;
use notebook::Draft;

type Texts = &'static [(&'static str, &'static str)];

/// No hanger wire, one piece.
const BARE: Texts = &[
    (at::COUNT, "1"),
    (at::HANGER_WIRE, ""),
    (at::HANGER_WET, ""),
];

/// An area, known from sizes.
const SIZED: Texts = &[(at::SHAPE, "area"), (at::METHOD, "sizes")];

/// Id, and the texts that differ from the base example. Ids are never renamed or reused.
const DEMOS: &[(&str, &[Texts])] = &[
    ("hoops", &[&[(at::GROWTH, "on"), (at::COVER, "coat")]]),
    (
        "acorn_cap",
        &[&[
            (at::SHAPE, "acorn_cap"),
            ("pieces/p1/extent/parts/a/shape/cap/outer_d", "18"),
            ("pieces/p1/extent/parts/a/shape/cap/inner_d", "16"),
            ("pieces/p1/extent/parts/a/shape/cap/height", "9"),
            (at::COUNT, "1"),
            (at::HANGER_WIRE, "1"),
            (at::HANGER_WET, "15"),
            (at::BASE, "graphite"),
            (at::DRIVE, "density"),
            (at::DENSITY, "0.8"),
            (at::UNTIL, "time"),
            (at::TIME, "6"),
        ]],
    ),
    (
        "resin_ring",
        &[
            BARE,
            &[
                (at::SHAPE, "area"),
                (at::AREA, "11.40"),
                (at::METHOD, "mesh"),
                ("pieces/p1/fit/bore", "17.60"),
                (at::WANTED_BORE, "17.35"),
                (at::BASE, "graphite"),
                (at::COVER, "off"),
                (at::DRIVE, "density"),
                (at::DENSITY, "1.2"),
                (at::UNTIL, "mean"),
                (at::MEAN, "200"),
            ],
        ],
    ),
    (
        "stud",
        &[
            BARE,
            SIZED,
            &[
                (at::AREA, "5.2"),
                (at::BASE, "graphite"),
                (at::COVER, "off"),
                (at::DRIVE, "density"),
                (at::DENSITY, "1.0"),
                (at::UNTIL, "mean"),
                (at::MEAN, "100"),
            ],
        ],
    ),
    (
        "vermeil",
        &[
            BARE,
            SIZED,
            &[
                (at::PROCESS, "electroplate"),
                (at::AREA, "13.6"),
                (at::DRIVE, "density"),
                (at::DENSITY, "0.8"),
                ("steps/s2/until@electroplate", "thinnest"),
                (at::THINNEST, "2.5"),
                (at::RATIO, "0.6"),
                (at::EFFICIENCY, "35"),
                (at::PLACE, "shop"),
            ],
        ],
    ),
    (
        "rhodium",
        &[
            BARE,
            SIZED,
            &[
                (at::PROCESS, "electroplate"),
                ("baths/b1/solution@electroplate", "rh_sulf"),
                ("pieces/p1/base@electroplate", "Pd"),
                (at::AREA, "9.0"),
                (at::VOLUME, "0.25"),
                ("baths/b1/holds/Rh/now", "2.0"),
                ("baths/b1/holds/Rh/floor", "1.5"),
                (at::DRIVE, "density"),
                (at::DENSITY, "2.0"),
                ("steps/s2/until@electroplate", "mean"),
                (at::MEAN, "0.30"),
                (at::EFFICIENCY, "60"),
                (at::PLACE, "shop"),
            ],
        ],
    ),
    (
        "pendant",
        &[
            BARE,
            &[
                (at::PROCESS, "etch"),
                ("pieces/p1/extent@etch", "disc"),
                ("pieces/p1/extent/parts/a/shape/disc/diameter", "30"),
                ("pieces/p1/extent/parts/a/shape/disc/thickness", "1.2"),
                (at::STOCK, "1.2"),
                (at::OPEN, "42"),
                ("pieces/p1/base@etch", "Ag925"),
                ("baths/b1/solution@etch", "et_agno3"),
                (at::VOLUME, "0.40"),
                ("baths/b1/holds/Ag/now", "60"),
                (at::DRIVE, "density"),
                (at::DENSITY, "4"),
                (at::DEPTH, "350"),
                (at::OPENING, "0.50"),
                (at::LAND, "0.40"),
                ("pieces/p1/artwork/etch_factor", "1"),
                (at::RESIST, "vinyl"),
                (at::EFFICIENCY, "97"),
                (at::PLACE, "shop"),
            ],
        ],
    ),
    (
        "bookmark",
        &[
            BARE,
            &[
                (at::PROCESS, "etch"),
                ("pieces/p1/extent/parts/a/shape/sheet/length", "120"),
                ("pieces/p1/extent/parts/a/shape/sheet/width", "25"),
                ("pieces/p1/extent/parts/a/shape/sheet/thickness", "0.8"),
                (at::STOCK, "0.8"),
                (at::OPEN, "55"),
                ("pieces/p1/base@etch", "C26000"),
                ("baths/b1/solution@etch", "et_cuso4_br"),
                (at::VOLUME, "1.0"),
                ("baths/b1/holds/Cu/now", "50.9"),
                ("baths/b1/holds/Cu/floor", "30"),
                (at::DRIVE, "density"),
                (at::DENSITY, "3"),
                (at::DEPTH, "200"),
                (at::RESIST, "toner"),
                (at::EFFICIENCY, "100"),
            ],
        ],
    ),
    (
        "gear",
        &[
            BARE,
            SIZED,
            &[
                (at::PROCESS, "etch"),
                ("pieces/p1/extent@etch", "area"),
                (at::AREA, "1.4"),
                (at::AREA_SIDES, "both"),
                (at::STOCK, "0.6"),
                (at::OPEN, "100"),
                (at::OPENING, "1.0"),
                (at::ART_LENGTH, "140"),
                ("pieces/p1/artwork/etch_factor", "1"),
                (at::SIDES, "both"),
                (at::MODEL, "groove"),
                (at::RESIST, "vinyl"),
                (at::STIRRING, "gentle"),
                (at::DRIVE, "current"),
                (at::DEPTH, "300"),
                (at::EFFICIENCY, "100"),
            ],
        ],
    ),
    (
        "ferns",
        &[&[
            (at::PIECES, "p1 p2 p3"),
            (at::MADE, "3"),
            (at::SHAPE, "area"),
            (at::AREA, "14.2"),
            (at::AREA_SIDES, "both"),
            (at::AREA_TEXTURE, "1.10"),
            (at::METHOD, "photo"),
            (at::COUNT, "1"),
            ("pieces/p2/extent", "area"),
            ("pieces/p2/extent/area/one_side", "9.8"),
            ("pieces/p2/extent/area/sides", "both"),
            ("pieces/p2/extent/area/texture", "1.10"),
            ("pieces/p2/extent/area/method", "photo"),
            ("pieces/p2/count", "1"),
            ("pieces/p3/extent", "area"),
            ("pieces/p3/extent/area/one_side", "21.5"),
            ("pieces/p3/extent/area/sides", "both"),
            ("pieces/p3/extent/area/texture", "1.10"),
            ("pieces/p3/extent/area/method", "photo"),
            ("pieces/p3/count", "1"),
            ("pieces/p3/leaves/after", "3"),
            (at::LABEL, "fern 1"),
            ("pieces/p2/label", "fern 2"),
            ("pieces/p3/label", "fern 3"),
            (at::COVER, "off"),
            (at::DRIVE, "density"),
            (at::DENSITY, "1.0"),
            (at::UNTIL, "time"),
            (at::TIME, "8"),
            (at::EFFICIENCY, "98"),
            (at::VOLUME, "4"),
        ]],
    ),
    (
        "class",
        &[&[
            (at::PIECES, "p1 p2"),
            (at::MADE, "2"),
            (at::SHAPE, "area"),
            (at::AREA, "15.23"),
            (at::AREA_SIDES, "both"),
            (at::AREA_TEXTURE, "1.10"),
            (at::METHOD, "sizes"),
            (at::COUNT, "9"),
            (at::HANGER_WET, "15"),
            (at::LABEL, "leaf"),
            ("pieces/p2/extent", "area"),
            ("pieces/p2/extent/area/one_side", "16.71"),
            ("pieces/p2/extent/area/texture", "1.10"),
            ("pieces/p2/extent/area/method", "sizes"),
            ("pieces/p2/count", "5"),
            ("pieces/p2/hanger/wet", "15"),
            ("pieces/p2/label", "pod"),
            (at::COVER, "off"),
            (at::DRIVE, "all_supply"),
            (at::UNTIL, "mean"),
            (at::MEAN, "60"),
            (at::HIGHEST, "1.5"),
            (at::EFFICIENCY, "98"),
            (at::VOLUME, "6"),
            (at::FACING, "240"),
            (at::PLACE, "class"),
            (at::STUDENTS, "14"),
            (at::LESSON, "2.5"),
        ]],
    ),
];

/// Their ids, in the order in which they are offered.
pub fn ids() -> impl Iterator<Item = &'static str> {
    DEMOS.iter().map(|(id, _)| *id)
}

/// The draft of a fresh page: the first example.
pub fn first() -> Draft {
    ids().next().and_then(of).unwrap_or_else(demo::demo)
}

/// The draft of an example; none for an unknown id.
pub fn of(id: &str) -> Option<Draft> {
    let (_, differ) = DEMOS.iter().find(|(known, _)| *known == id)?;
    let mut draft = demo::demo();
    for (at, text) in differ.iter().copied().flatten() {
        draft.put(at, text, true);
    }
    Some(demo::complete(draft))
}
