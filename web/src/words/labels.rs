//! Names of fields, choices and headings.

use crate::state::at;
use planner::job::Use;

/// The product.
pub const NAME: &str = "Ionwright";
/// Heading of the whole page, for those who cannot see it.
pub const PAGE: &str = "Plan a piece: what to set, for how long, what you will have";
/// Over the current to set.
pub const SET_NOW: &str = "Set now";
/// Beside the voltage ceiling.
pub const CEILING: &str = "ceiling";
/// A current goes down.
pub const TURN_DOWN: &str = "turn down to";
/// It goes up.
pub const TURN_UP: &str = "turn up to";
/// It stays.
pub const LEAVE: &str = "leave at";
/// Before what to do when the coat is covered.
pub const COVERED: &str = "covered";
/// A piece is hung in.
pub const HANG_IN: &str = "hang in";
/// A piece is taken out.
pub const TAKE_OUT: &str = "take out";
/// All go over into another bath.
pub const INTO: &str = "rinse, then into";
/// Beside it, what then flows.
pub const FLOWS: &str = "flows about";
/// The end.
pub const LIFT_OUT: &str = "lift out";
/// After an answer that stands on an earlier entry.
pub const LAST_GOOD: &str = "from your last good entry";
/// Where no answer can be given at all.
pub const NO_ANSWER: &str = "No answer yet";
/// First question.
pub const WHAT: &str = "What is it?";
/// Second question.
pub const HOW_BIG: &str = "How big?";
/// Third question.
pub const WHAT_FOR: &str = "What for?";
/// More aims.
pub const OTHER_AIMS: &str = "More aims";
/// Opens the set-up.
pub const CHANGE: &str = "Change";
/// Closes it.
pub const DONE: &str = "Done";
/// Heading of the set-up.
pub const SETUP: &str = "Bath, supply, coat";
/// Name of the part that answers, which scrolls by itself on a wide window.
pub const ANSWER: &str = "The answer";
/// In the drawing, what the layer grows on: a find that was sealed and coated.
pub const COATED: &str = "sealed, coated";
/// The same where nothing is known of it.
pub const THE_PIECE: &str = "the piece";
/// Heading of the drawing.
pub const WALL: &str = "The layer, to scale";
/// Heading of what an etch makes of a sheet.
pub const SHEET: &str = "The sheet, to scale";
/// Which lead goes where in an etch.
pub const LEADS: &str = "Sheet on plus, counter electrode on minus.";
/// Heading of the working.
pub const WORKING: &str = "Show the working";
/// Heading of the cautions.
pub const CARE: &str = "Take care";
/// Takes the last thing back.
pub const UNDO: &str = "Undo";
/// Opens the emergency lines.
pub const EMERGENCY: &str = "Emergency";
/// Closes them.
pub const CLOSE: &str = "Close";
/// What the answer's numbers rest on.
pub const RANGE_NOTE: &str = "nine in ten land between";
/// Storage is refused.
pub const NO_SHELF: &str = "This window cannot keep your entries: they are gone when it closes.";
/// Storage is full.
pub const SHELF_FULL: &str = "The browser's store is full: your latest entries are not kept.";
/// A stored draft could not be read.
pub const SET_ASIDE: &str = "An earlier draft could not be read. It is kept as it was:";
/// A stored draft is from a newer page.
pub const SET_ASIDE_NEWER: &str =
    "An earlier draft was written by a newer edition of this page. It is kept as it was:";

/// How long an eye is rinsed.
pub const RINSE: quantity::Time = quantity::Time::minutes(20.0);
/// Starts the rinse clock.
pub const RINSE_START: &str = "Eye: start the 20-minute rinse clock";
/// Ends it.
pub const RINSE_STOP: &str = "Stop the clock";

/// What is left of the rinse.
pub fn rinse(left: quantity::Time) -> String {
    let seconds = quantity::Quantity::si(left).ceil() as u64;
    if seconds == 0 {
        return "20 minutes are over: see a doctor".to_owned();
    }
    format!("Rinse {}:{:02}", seconds / 60, seconds % 60)
}

/// Opens the plan as a text to copy.
pub const AS_TEXT: &str = "The plan as text";
/// Copies it.
pub const COPY: &str = "Copy";
/// It was copied.
pub const COPIED: &str = "Copied";
/// Prints the plan.
pub const PRINT: &str = "Print";
/// Saves the page as a file that carries the plan.
pub const SAVE_COPY: &str = "Save this page with the plan";
/// It was handed to the browser.
pub const SAVED_COPY: &str = "Saved among your downloads";
/// It was not.
pub const NO_COPY: &str = "This page cannot be saved here";
/// A newer edition of the page is ready.
pub const EDITION: &str = "A new edition of this page is ready. What you typed stays.";
/// Loads it.
pub const TAKE_OVER: &str = "Use it now";

/// The emergency lines, in the order of urgency.
pub const EMERGENCY_LINES: &[(&str, &str)] = &[
    (
        "Eyes",
        "Rinse now with running water, lids held open, 20 minutes. Then call a doctor; with acid, an ambulance.",
    ),
    (
        "Skin",
        "Take off wetted clothes, rinse 20 minutes. Burns: a doctor.",
    ),
    (
        "Swallowed",
        "Rinse the mouth, do not make them vomit, call the poison centre.",
    ),
    ("Electric shock", "Pull the plug first. Then help."),
    (
        "Spill",
        "Gloves and goggles, soak it up, bag it, label it. Never into a drain. With cyanide near: leave, ventilate, call help.",
    ),
];
/// Under them.
pub const EMERGENCY_NOTE: &str = "The safety data sheets of your own products and your local emergency number come before this page.";

/// The label of a field. The unit is part of it, since a printed unit beside a field is not read aloud.
pub fn field(address: &str) -> &'static str {
    if at::spread_of(address).is_some() {
        return "Two in three within\u{a0}±";
    }
    if let Some((_, size)) = address.split_once("/shape/") {
        return size_label(size);
    }
    let plain = at::plain(address);
    if plain.starts_with("baths/b1/holds/") {
        return if address.ends_with("/now") {
            "Metal in the bath now"
        } else {
            "Renew the bath below"
        };
    }
    if address.starts_with("prices/") {
        return "Price of the metal";
    }
    // A later layer is asked for in its own card, which says what it is.
    if plain != address && plain.starts_with("steps/") {
        match &*plain {
            at::DRIVE => return "Current",
            at::DENSITY => return "Current density",
            at::CURRENT => return "So much current",
            at::UNTIL => return "Until it is",
            at::TIME => return "For so long",
            _ => (),
        }
    }
    match &*plain {
        at::FORM => "Counter electrode is",
        at::PLATE_WIDTH => "Plate, wide",
        at::PLATE_HEIGHT => "Plate, deep in the bath",
        at::PLATES => "Plates",
        at::COIL_WIRE => "Coil, wire across",
        at::COIL_LENGTH => "Coil, wire in the bath",
        at::SCRAP => "Scrap weighs",
        at::SCRAP_THICK => "Scrap is thick",
        at::VESSEL_D => "Vessel, inside across",
        at::VESSEL_HEIGHT => "Filled so high",
        at::SURFACE => "Open surface of the bath",
        at::HEATER => "Your heater",
        at::VESSELS => "Vessels, one behind the other",
        at::CONTACT => "Contact of clip and hook",
        at::STUDENTS => "Students",
        at::LESSON => "Until the bell",
        at::WITNESS => "Bare wire beside them, across",
        at::CLIP => "Clip it shares, by a name",
        at::CONTACT_LEAD => "Its own wire and lead",
        at::JOINS => "Hung in later, after",
        at::LEAVES => "Taken out earlier, after",
        at::GROWTH => "Count that it grows thicker",
        at::OWN_METAL => "Metal in it",
        at::OWN_DENSITY => "Current density on its label",
        at::OWN_HIGHEST => "Highest current density",
        at::OWN_EFFICIENCY => "Efficiency on its label",
        at::OWN_MOVES => "Metal a charge moves, on its label",
        at::OWN_VOLTS => "Volts on its label",
        at::SUPPLY => "The supply holds",
        at::VOLTS_LOWEST => "Lowest voltage",
        at::VOLTS_HIGHEST => "Highest voltage",
        at::VOLTS_STEP => "Smallest step of its volts",
        at::VOLTS_CURRENT => "Most current it gives",
        at::FIXED_CURRENT => "Current of the setting",
        at::FIXED_GAIN => "or: a copper strip gained",
        at::FIXED_TIME => "in this time",
        at::PROCESS => "What happens",
        at::SOLUTION => "Solution",
        at::LABEL => "Its name",
        at::VOLUME => "Bath holds",
        at::PASSED => "Passed since it was made",
        at::SIDES => "Etched from",
        at::ART_LENGTH => "Length of line in all",
        at::ETCH_FACTOR => "Depth over undercut",
        at::AREA_SIDES => "That area is",
        at::AREA_TEXTURE | at::TEXTURE => "Real over smooth surface",
        at::HANGER_WIRES => "Hanging wires",
        at::BORE => "Inside across now",
        at::MASS => "Metal to lay on",
        at::TEMPERATURE => "Bath is warm",
        at::CEILING => "Voltage ceiling, your own",
        at::COUNTER => "Counter electrode",
        at::FACING => "Its side facing the work",
        at::BATCH => "Thinnest over worked out, batch to batch",
        at::CONDUCTIVITY => "Conductivity of the bath",
        at::EVENNESS_FACTOR => "Factor on its evenness length",
        at::SURFACE_VOLTS => "Volts at both surfaces and leads",
        at::OFFSET => "Real current less shown",
        at::UNITS => "Units",
        at::DECIMAL => "Decimal mark",
        at::MEASURE => "Measured by",
        at::CARD_LONG => "Card, long side in the picture",
        at::CARD_SHORT => "Card, short side in the picture",
        at::CARD_PIECE => "Piece, area in the picture",
        at::TRACING => "The cut-out weighs",
        at::SQUARE => "The square weighs",
        at::SQUARE_AREA => "The square has",
        at::FOIL => "Foil",
        at::WRAP => "The foil weighs",
        at::SCALE_STEP => "The scale shows steps of",
        at::OPEN => "Open share of the sheet",
        at::STOCK => "Sheet is thick",
        at::OPENING => "Openings are wide",
        at::LAND => "Metal to be left between",
        at::MODEL => "The picture is",
        at::RESIST => "Film on it",
        at::LEAD => "Lead on the sheet",
        at::DEPTH => "Depth",
        at::OPENING_WAY => "A hollow looks",
        at::RATIO => "Thinnest over average, if you know",
        at::AREA => "Area",
        at::METHOD => "How was it measured?",
        at::COUNT => "How many",
        at::HANGER_WIRE => "Hanging wire, across",
        at::HANGER_WET => "Hanging wire, in the liquid",
        at::BASE => "Made of",
        at::WANTED_BORE => "Inside across to end with",
        at::COVER => "Covering first",
        at::COVER_DENSITY => "While covering",
        at::COVER_TIME => "Covered after about",
        at::DRIVE => "Current, chosen how",
        at::DENSITY => "Growth, current density",
        at::CURRENT => "Growth, current",
        at::MEAN => "Thickness on average",
        at::THINNEST => "Thickness at the thinnest",
        at::CLOCK => "Lift out at",
        at::TIME => "Time to grow",
        at::STIRRING => "The bath is",
        at::ARRANGEMENT => "The anode stands",
        at::DISTANCE => "Anode to piece",
        at::EFFICIENCY => "Efficiency, if you weighed it",
        at::LOWEST => "Lowest current it holds",
        at::HIGHEST => "Highest current",
        at::DISPLAY_STEP => "Smallest step of its display",
        at::VOLTS => "Highest voltage",
        at::PLACE => "Where you work",
        at::START => "Start at",
        plain => super::after::field(plain),
    }
}

/// The label of a size, by shape and name: `torus/bore`.
fn size_label(size: &str) -> &'static str {
    match size {
        "cap/height" | "cup/height" => "Deep",
        "crystal/flats" => "Thick, flat to flat",
        "mesh/pitch" => "From wire to wire",
        _ => match size.rsplit('/').next().unwrap_or_default() {
            "bore" => "Inside across",
            "wire_d" => "Wire across",
            "wall" => "Wall",
            "width" => "Width",
            "length" => "Length",
            "height" => "Height",
            "diameter" | "outer_d" => "Across",
            "inner_d" => "Across, inside",
            "opening_d" => "Across the opening",
            "thickness" => "Thick",
            "base_d" => "Across, thick end",
            "top_d" => "Across, thin end",
            "point" => "Point, high",
            "hole_d" => "Holes, across",
            "holes" => "Holes",
            "layers" => "Layers",
            "depth" => "Deep",
            "pitch" => "From turn to turn",
            "link_length" => "Link, long",
            "link_width" => "Link, wide",
            _ => "Size",
        },
    }
}

/// What stands in an empty field that may stay empty and that the catalogue knows nothing of.
pub fn empty_field(address: &str) -> &'static str {
    match address {
        at::START => "now",
        at::DISPLAY_STEP => "any",
        _ => super::after::empty(address),
    }
}

/// The name of an input of the answer; none for what is no input of a person's.
pub fn input(address: &str) -> &'static str {
    let plain = at::plain(address);
    match &*plain {
        at::SHAPE => "Area, as measured",
        at::RESIST => "",
        _ if plain.ends_with("/texture_outside") || plain.ends_with("/texture") => {
            "Real over smooth surface"
        }
        "baths/b1/cell_volts" => "Volts of the whole cell",
        plain => field(plain),
    }
}

/// Before what was read.
pub fn read_as(text: &str) -> String {
    ["read as ", text].concat()
}

/// Name of the minus beside a count.
pub fn one_less(label: &str) -> String {
    [label, ": one less"].concat()
}

/// Name of the plus beside a count.
pub fn one_more(label: &str) -> String {
    [label, ": one more"].concat()
}

/// Heading of the pieces.
pub const ON_THE_BAR: &str = "On the bar";
/// Heading of the layers after the first.
pub const LAYERS: &str = "And then?";
/// One more layer.
pub const ANOTHER_LAYER: &str = "Another layer after it";
/// The solution of a layer: the same.
pub const SAME_BATH: &str = "the same bath again";
/// The solution is the person's own.
pub const OWN_SOLUTION: &str = "another, by its label";
/// Fields of a supply's setting.
pub fn setting(n: usize) -> String {
    format!("Setting {n}")
}

/// Takes a piece off.
pub const REMOVE: &str = "Remove";
/// The same piece again.
pub const SAME_AGAIN: &str = "Same again";
/// One more piece.
pub const ANOTHER_PIECE: &str = "Another piece";
/// Fields of a piece.
pub const PIECE: &str = "Piece";
/// Fields of the bath.
pub const BATH: &str = "Bath";
/// Fields of the supply.
pub const SUPPLY: &str = "Supply";
/// How numbers are printed.
pub const PRINTED: &str = "Numbers";
/// Opens the ways to measure a piece.
pub const MEASURE: &str = "Measure it better";
/// Takes the area found.
pub const USE_AREA: &str = "Use this area";
/// Opens the finer entries.
pub const EXACT: &str = "More exact";
/// Under it.
pub const EXACT_NOTE: &str =
    "What would narrow the range most comes first. An empty field means the usual value.";
/// An input was given.
pub const GIVEN: &str = "You entered it.";
/// An input is the person's own value in place of the usual one.
pub const ASSUMED: &str = "Your own value, in place of the usual one.";

/// Where a usual value comes from, and between what it lies.
pub fn usual(source: &str, band: Option<(String, String)>) -> String {
    match band {
        Some((low, high)) => format!("Usually {low} to {high}; {source}."),
        None => format!("The usual value; {source}."),
    }
}

/// How much the range would narrow if an input were known.
pub fn narrows(remains: quantity::Ratio) -> String {
    let less = 1.0 - quantity::Quantity::si(remains);
    format!(
        "known, the range is {} narrower",
        super::number::percent(less)
    )
}

/// What is worth measuring first.
pub fn measure_first(input: &str, remains: quantity::Ratio) -> String {
    format!("Measure first: {input}; {}.", narrows(remains))
}

/// Removes this piece, for those who cannot see where the button stands.
pub fn remove_piece(name: &str) -> String {
    [REMOVE, " ", name].concat()
}

/// The set-up in one line: solution, stirring, base, time of covering, and the supply's lowest, highest and step; none
/// where it has a few settings only.
pub fn setup_line(
    solution: &str,
    stirring: &str,
    base: &str,
    cover: Option<&str>,
    supply: Option<[String; 3]>,
) -> String {
    let cover = cover.map_or(String::new(), |time| format!("Covering for {time} first. "));
    let supply = supply.map_or_else(
        || "a few settings".to_owned(),
        |[lowest, highest, step]| format!("{lowest} to {highest}, in steps of {step}"),
    );
    format!("{solution}, {stirring}. Piece: {base}. {cover}My supply: {supply}.")
}

/// How to measure, by way.
pub fn how_to_measure(way: &str) -> &'static str {
    match way {
        "card" => {
            "Take a picture from straight above with a bank card (85.60 x 53.98\u{a0}mm) beside the piece. Count picture points in any picture editor: along the card, and inside the piece's outline. One side of the card is enough."
        }
        "foil" => {
            "Wrap the dry piece in one layer of foil without folds, cut away what overlaps, weigh the foil."
        }
        _ => {
            "Trace the outline on paper, cut it out, weigh it; weigh a square of the same paper. This gives one side."
        }
    }
}

/// What was measured.
pub fn found_area(area: &str, spread: quantity::Fraction) -> String {
    let percent = super::number::percent(quantity::Quantity::si(spread));
    format!("{area}, two in three within {percent}")
}

/// The label of a kind of piece.
pub fn kind(word: &str) -> &'static str {
    match word {
        "leaf" => "leaf",
        "acorn_cap" => "acorn cap",
        "torus" => "ring, hoop",
        "band" => "band ring",
        "pod" => "pod",
        "fern" => "fern",
        "feather" => "feather",
        "shell" => "shell",
        "twig" => "twig",
        "seed_head" => "seed head",
        "crystal" => "crystal",
        "beetle" => "beetle",
        "sphere" => "ball",
        "disc" => "disc",
        "sheet" => "sheet",
        "rod" => "rod",
        "cup" => "cup",
        "willow_leaf" => "narrow leaf",
        "maple_leaf" => "lobed leaf",
        "ginkgo_leaf" => "fan leaf",
        "petal" => "petal",
        "snail_shell" => "snail shell",
        "half_round" => "half-round ring",
        "dome" => "domed disc",
        "bezel" => "bezel",
        "chain" => "chain",
        "link" => "link",
        "coil" => "coil",
        "twisted_pair" => "twisted wires",
        "mesh" => "mesh",
        "pierced_sheet" => "pierced sheet",
        "ellipsoid" => "pebble, egg",
        "half_ellipsoid" => "half egg, cabochon",
        "cone" => "cone",
        "frustum" => "cut cone",
        "box" => "block",
        "tube" => "tube",
        "hole" => "hole",
        "area" => "known area",
        _ => "",
    }
}

/// What a piece of a kind is called where it has no name of its own.
pub fn one(kind_word: &str) -> &'static str {
    let label = kind(kind_word);
    label.split_once(',').map_or(label, |(first, _)| first)
}

/// Shows all kinds, or the first few.
pub const MORE: &str = "More shapes";
/// The other way.
pub const FEWER: &str = "Fewer";

/// The processes: word, label.
pub const PROCESSES: &[(&str, &str)] = &[
    ("electroform", "grow copper"),
    ("electroplate", "thin coat"),
    ("etch", "etch"),
];

/// The name of a solution.
pub fn solution(id: &str) -> &'static str {
    match id {
        "cu_acid_form" => "Acid copper, general",
        "cu_acid_throw" => "Acid copper, high throw",
        "cu_acid_low" => "Acid copper, little acid",
        "cu_pyro" => "Copper pyrophosphate",
        "cu_citrate" => "Copper citrate",
        "ni_watts" => "Watts nickel",
        "ni_sulfamate" => "Nickel sulfamate",
        "ni_wood" => "Nickel strike, chloride",
        "ag_ncn" => "Silver, cyanide-free",
        "ag_hydantoin" => "Silver, hydantoin",
        "ag_succinimide" => "Silver, succinimide",
        "au_acid" => "Acid gold",
        "au_neutral" => "Neutral gold, soft",
        "au_sulfite" => "Gold sulfite",
        "rh_sulf" => "Rhodium sulfate",
        "pd_acid" => "Palladium, acid",
        "pdni" => "Palladium-nickel",
        "pd_ammonia" => "Palladium, ammonia",
        "pd_ammonia_cl" => "Palladium, ammonia chloride",
        "bronze_ncn" => "Bronze, cyanide-free",
        "et_cuso4_cu" => "Copper sulfate, for copper",
        "et_cuso4_br" => "Copper sulfate, for brass and bronze",
        "et_cuno3" => "Copper nitrate",
        "et_agno3" => "Silver nitrate, for silver",
        "et_nano3" => "Sodium nitrate",
        "et_h2so4" => "Dilute sulfuric acid",
        "own" => "Own solution",
        "same" => SAME_BATH,
        _ => "",
    }
}

/// Which gold, silver or copper a metal's id means.
pub fn metal(id: &str) -> &'static str {
    match id {
        "Cu" => "copper",
        "C26000" => "brass, 70/30",
        "C22000" => "gilding metal, 90/10",
        "C51000" => "phosphor bronze",
        "C75200" => "nickel silver",
        "Ag" => "fine silver",
        "Ag925" => "sterling silver",
        "Ni" => "nickel",
        "Pd" => "palladium",
        "PdNi20" => "palladium-nickel",
        "CuSn8" => "bronze",
        "Au" => "gold",
        "Rh" => "rhodium",
        "Fe" => "steel",
        _ => "",
    }
}

/// What for: word, label.
pub fn use_label(of: Use) -> &'static str {
    match of {
        Use::Keepsake => "Keepsake, framed",
        Use::Earring => "Earring",
        Use::Pendant => "Pendant, pin",
        Use::Ring => "Ring to wear",
        Use::Handled => "Handled often",
    }
}

/// When a later layer is done: word, label.
pub const LAYER_AIMS: &[(&str, &str)] = &[
    ("mean", "so thick on average"),
    ("thinnest", "so thick at the thinnest"),
    ("mass", "so much metal"),
    ("time", "so long in the bath"),
];

/// Aims that are a number: word, label.
pub const AIMS: &[(&str, &str)] = &[
    ("clock", "I have until…"),
    ("mean", "So thick on average"),
    ("thinnest", "So thick at the thinnest"),
    ("mass", "So much metal"),
    ("time", "For so long"),
];

/// Words of a choice and their labels.
pub fn options(address: &str) -> &'static [(&'static str, &'static str)] {
    match &*at::plain(address) {
        at::METHOD => &[
            ("mesh", "from the print file"),
            ("photo", "photo beside a ruler"),
            ("tracing", "traced, cut out, weighed"),
            ("foil", "foil, weighed"),
            ("sizes", "worked out from sizes"),
            ("eye", "by eye"),
        ],
        at::AREA_SIDES => &[("one", "all that gets wet"), ("both", "one side of two")],
        at::SIDES => &[("one", "one side"), ("both", "both sides")],
        at::UNITS => &[("metric", "metric"), ("us", "US shop")],
        at::DECIMAL => &[("point", "1.5"), ("comma", "1,5")],
        at::MEASURE => &[
            ("tracing", "tracing, weighed"),
            ("foil", "foil, weighed"),
            ("card", "a picture beside a card"),
        ],
        at::FOIL => &[
            ("aluminium", "kitchen foil, 16 µm"),
            ("copper", "copper foil, 0.1 mm"),
        ],
        at::BASE => &[
            ("copper", "sealed, copper paint"),
            ("graphite", "sealed, graphite"),
            ("silver", "sealed, silver paint"),
            ("Cu", "copper"),
            ("C26000", "brass, 70/30"),
            ("Ag925", "sterling silver"),
            ("Ag", "fine silver"),
            ("Fe", "steel, iron"),
            ("unknown", "a metal I do not know"),
        ],
        "pieces/p1/base@electroplate" => &[
            ("Cu", "copper"),
            ("C26000", "brass, 70/30"),
            ("C51000", "bronze"),
            ("C75200", "nickel silver"),
            ("Ag925", "sterling silver"),
            ("Ag", "fine silver"),
            ("Ni", "nickel"),
            ("Pd", "palladium"),
            ("Fe", "steel, iron"),
            ("unknown", "a metal I do not know"),
        ],
        "pieces/p1/base@etch" => &[
            ("Cu", "copper"),
            ("C26000", "brass, 70/30"),
            ("C22000", "gilding metal, 90/10"),
            ("C51000", "bronze"),
            ("C75200", "nickel silver"),
            ("Ag925", "sterling silver"),
            ("Ag", "fine silver"),
        ],
        at::MODEL => &[("flat", "wide fields"), ("groove", "fine lines")],
        at::RESIST => &[
            ("toner", "toner"),
            ("pen", "paint pen"),
            ("varnish", "varnish"),
            ("dry_film", "dry film"),
            ("vinyl", "vinyl"),
        ],
        at::LEAD => &[("plus", "plus"), ("minus", "minus")],
        at::OPENING_WAY => &[("to", "towards the anode"), ("away", "away from it")],
        at::COVER => &[
            ("coat", "as this coat needs"),
            ("on", "my own current and time"),
            ("off", "no"),
        ],
        at::FORM => &[
            ("", "its area typed"),
            ("plate", "plates"),
            ("coil", "a coil of wire"),
            ("scrap", "scrap in a basket"),
            ("vessel", "the vessel itself"),
        ],
        at::DRIVE => &[
            ("advised", "advise me"),
            ("density", "my own density"),
            ("current", "my own current"),
            ("all_supply", "all the supply gives"),
        ],
        at::GROWTH => &[("on", "yes"), ("off", "no")],
        at::SUPPLY => &[
            ("constant_current", "a current"),
            ("constant_voltage", "a voltage"),
            ("fixed_settings", "a few settings only"),
        ],
        at::OWN_METAL => &[
            ("Cu", "copper"),
            ("Ni", "nickel"),
            ("Ag", "silver"),
            ("Au", "gold"),
            ("Rh", "rhodium"),
            ("Pd", "palladium"),
        ],
        at::STIRRING => &[
            ("still", "still"),
            ("gentle", "moved gently"),
            ("vigorous", "stirred hard"),
        ],
        at::ARRANGEMENT => &[
            ("one_side", "on one side"),
            ("both_sides", "on both sides"),
            ("turned", "on one side, piece turned half-way"),
            ("all_round", "all round"),
        ],
        at::PLACE => &[
            ("home", "home studio"),
            ("class", "a class"),
            ("shop", "ventilated shop"),
        ],
        plain => super::after::options(plain),
    }
}

/// The label of a picked word.
pub fn option_label(address: &str, word: &str) -> &'static str {
    options(address)
        .iter()
        .find(|(w, _)| *w == word)
        .map_or("", |(_, l)| l)
}

/// The aims of an etch: word, label.
pub const ETCH_AIMS: &[(&str, &str)] = &[
    ("depth", "So deep"),
    ("clock", "I have until…"),
    ("time", "For so long"),
];

/// Where the layer is thinnest.
pub fn thin_place(place: planner::ThinAt) -> &'static str {
    use planner::ThinAt;
    match place {
        ThinAt::Inside => "on the inside",
        ThinAt::BoreMiddle => "in the middle of the inside",
        ThinAt::Back => "on the back",
        ThinAt::Girdle => "round the middle",
        ThinAt::Middle => "half-way along",
        ThinAt::BackCentre => "in the middle of the back",
        ThinAt::BothCentres => "in the middle of both sides",
        ThinAt::InsidePole => "at the deepest point inside",
        ThinAt::InsideCorner => "in the corner inside",
        ThinAt::HiddenLayer => "in the hidden layer",
    }
}

/// Days of the week, Monday first.
pub fn weekday(index: usize) -> &'static str {
    ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"][index % 7]
}

/// What ruled an advised density.
pub fn ruling(ruling: planner::answer::Ruling) -> &'static str {
    use planner::answer::Ruling;
    match ruling {
        Ruling::Typical => "the density this bath usually takes",
        Ruling::Edges => "as much as the edges bear",
        Ruling::Supply => "all your supply gives",
        Ruling::Covering => "what covers this coat",
    }
}

/// When a caution is due.
pub fn when(when: planner::answer::When) -> &'static str {
    use planner::answer::When;
    match when {
        When::Before => "Before you start",
        When::During => "While it runs",
        When::After => "Afterwards",
    }
}

/// Yardsticks drawn beside layer and sheet, the smallest first: name and size in micrometres. A sheet of 80 g/m2 paper and
/// an ID-1 card (ISO/IEC 7810, 0.76 mm) as usual figures; a hair varies from 50 to 100. The others from memory.
pub const YARDSTICKS: &[(&str, f64)] = &[
    ("gold leaf", 0.1),
    ("a bacterium", 1.0),
    ("a blood cell", 7.0),
    ("kitchen foil", 15.0),
    ("a hair", 70.0),
    ("sheet of paper", 100.0),
    ("a bank card", 760.0),
    ("a coin", 2000.0),
];
