//! Every field of the page: its address and its declaration. One table feeds the reading, the hint, the message and the
//! memory of the last good entry.

use planner::fields::{self, CountField, Field};
use planner::{Accepted, FieldPath, Problem};
use quantity::{Quantity, print};

/// Addresses used by the page.
pub mod at {
    /// Growing, a thin coat, or an etch.
    pub const PROCESS: &str = "steps/s2/kind";
    /// Which kind of piece, or `area`; asked apart for an etch.
    pub const SHAPE: &str = "pieces/p1/extent";
    /// The solution; asked apart for each process.
    pub const SOLUTION: &str = "baths/b1/solution";
    /// Volume of the bath.
    pub const VOLUME: &str = "baths/b1/volume";
    /// Open share of a masked sheet.
    pub const OPEN: &str = "pieces/p1/open";
    /// Thickness of the sheet.
    pub const STOCK: &str = "pieces/p1/base/metal/thickness";
    /// Width of the openings in the film.
    pub const OPENING: &str = "pieces/p1/artwork/opening";
    /// Width of metal to be left.
    pub const LAND: &str = "pieces/p1/artwork/land_wanted";
    /// Fine lines or a wide field.
    pub const MODEL: &str = "pieces/p1/artwork/model";
    /// The film.
    pub const RESIST: &str = "pieces/p1/artwork/resist";
    /// The lead on the sheet.
    pub const LEAD: &str = "pieces/p1/artwork/lead";
    /// Depth of an etch.
    pub const DEPTH: &str = "steps/s2/until/depth";
    /// Which way a hollow looks.
    pub const OPENING_WAY: &str = "pieces/p1/opening";
    /// Thinnest over average, the person's own.
    pub const RATIO: &str = "pieces/p1/min_over_mean";
    /// Area known.
    pub const AREA: &str = "pieces/p1/extent/area/one_side";
    /// How it was measured.
    pub const METHOD: &str = "pieces/p1/extent/area/method";
    /// How many alike.
    pub const COUNT: &str = "pieces/p1/count";
    /// Hanger wire, thickness.
    pub const HANGER_WIRE: &str = "pieces/p1/hanger/wire_d";
    /// Hanger wire, length in the liquid.
    pub const HANGER_WET: &str = "pieces/p1/hanger/wet";
    /// What it is made of.
    pub const BASE: &str = "pieces/p1/base";
    /// Inner diameter to end with.
    pub const WANTED_BORE: &str = "pieces/p1/fit/wanted_bore";
    /// Whether there is a covering step.
    pub const COVER: &str = "steps/s1";
    /// Density while covering.
    pub const COVER_DENSITY: &str = "steps/s1/drive/density";
    /// How long covering takes.
    pub const COVER_TIME: &str = "steps/s1/until/time";
    /// How the growth current is found.
    pub const DRIVE: &str = "steps/s2/drive";
    /// Own density.
    pub const DENSITY: &str = "steps/s2/drive/density";
    /// Own current.
    pub const CURRENT: &str = "steps/s2/drive/current";
    /// What for.
    pub const UNTIL: &str = "steps/s2/until";
    /// Own thickness.
    pub const MEAN: &str = "steps/s2/until/mean";
    /// Own thinnest.
    pub const THINNEST: &str = "steps/s2/until/thinnest";
    /// Until a time of day.
    pub const CLOCK: &str = "steps/s2/until/clock";
    /// For a length of time.
    pub const TIME: &str = "steps/s2/until/time";
    /// How the solution is moved.
    pub const STIRRING: &str = "steps/s2/stirring";
    /// Where the counter electrode stands.
    pub const ARRANGEMENT: &str = "baths/b1/counter/arrangement";
    /// How far off.
    pub const DISTANCE: &str = "baths/b1/counter/distance";
    /// The bath's own efficiency.
    pub const EFFICIENCY: &str = "baths/b1/efficiency";
    /// Lowest current.
    pub const LOWEST: &str = "supply/constant_current/lowest";
    /// Highest current.
    pub const HIGHEST: &str = "supply/constant_current/highest";
    /// Display step.
    pub const DISPLAY_STEP: &str = "supply/constant_current/display_step";
    /// Highest voltage.
    pub const VOLTS: &str = "supply/constant_current/highest_volts";
    /// Home, class or shop.
    pub const PLACE: &str = "place";
    /// When it starts: a time of day, or empty for now.
    pub const START: &str = "start/local";
}

/// What a text was read as.
#[derive(Clone, Debug, PartialEq)]
pub struct Echo {
    /// The reading, in the field's own unit.
    pub text: String,
    /// Whether it should be shown: something other than a plain number in the field's unit was typed.
    pub show: bool,
}

/// The declaration of a field, whatever its quantity.
pub trait Declared: Sync {
    /// Reads a text: the echo, or the Problem.
    fn echo(&self, text: &str, at: &FieldPath) -> Result<Echo, Problem>;
    /// The unit's symbol.
    fn unit(&self) -> &'static str;
}

impl<Q: Quantity + Sync> Declared for Field<Q> {
    fn echo(&self, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        let reading = self.read_text(text, at)?;
        let shown = print::significant(reading.value.in_unit(Field::unit(self)), 4);
        let shown = if shown.contains('.') {
            shown.trim_end_matches('0').trim_end_matches('.').to_owned()
        } else {
            shown
        };
        Ok(Echo {
            text: print::with_unit(&shown, Field::unit(self)),
            show: reading.echo,
        })
    }

    fn unit(&self) -> &'static str {
        self.unit
    }
}

impl Declared for CountField {
    fn echo(&self, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        let count = self.read_text(text, at)?;
        Ok(Echo {
            text: count.to_string(),
            show: false,
        })
    }

    fn unit(&self) -> &'static str {
        ""
    }
}

/// A time of day, `16:20`.
pub struct TimeOfDay {
    /// Whether an empty field is right too.
    pub may_be_empty: bool,
}

impl Declared for TimeOfDay {
    fn echo(&self, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        let text = text.trim();
        if (text.is_empty() && self.may_be_empty) || planner::clock::time_of_day(text).is_some() {
            return Ok(Echo {
                text: text.to_owned(),
                show: false,
            });
        }
        let kind = if text.is_empty() {
            planner::ProblemKind::Missing
        } else {
            planner::ProblemKind::UnknownWord
        };
        Err(Problem::at(at.clone(), kind)
            .reading(text)
            .accepting(Accepted::OneOf(vec!["16:20".to_owned()])))
    }

    fn unit(&self) -> &'static str {
        ""
    }
}

/// Every field: address and declaration.
pub const ENTRIES: &[(&str, &dyn Declared)] = &[
    (at::VOLUME, &fields::VOLUME),
    (at::OPEN, &fields::OPEN),
    (at::STOCK, &fields::STOCK),
    (at::OPENING, &fields::ART_OPENING),
    (at::LAND, &fields::ART_LAND),
    (at::DEPTH, &fields::UNTIL_DEPTH),
    (at::RATIO, &fields::MIN_OVER_MEAN),
    (at::AREA, &fields::ONE_SIDE),
    (at::COUNT, &fields::COUNT),
    (at::HANGER_WIRE, &fields::HANGER_WIRE),
    (at::HANGER_WET, &fields::HANGER_WET),
    (at::WANTED_BORE, &fields::WANTED_BORE),
    (at::COVER_DENSITY, &fields::DENSITY),
    (at::COVER_TIME, &COVER_MINUTES),
    (at::DENSITY, &fields::DENSITY),
    (at::CURRENT, &fields::CURRENT),
    (at::MEAN, &fields::UNTIL_MEAN),
    (at::THINNEST, &fields::UNTIL_THINNEST),
    (
        at::CLOCK,
        &TimeOfDay {
            may_be_empty: false,
        },
    ),
    (at::TIME, &fields::UNTIL_TIME),
    (at::DISTANCE, &fields::DISTANCE),
    (at::EFFICIENCY, &fields::EFFICIENCY),
    (at::LOWEST, &fields::LOWEST),
    (at::HIGHEST, &fields::HIGHEST),
    (at::DISPLAY_STEP, &fields::DISPLAY_STEP),
    (at::VOLTS, &fields::HIGHEST_VOLTS),
    (at::START, &TimeOfDay { may_be_empty: true }),
];

/// Covering is a matter of minutes: a bare number means those.
pub const COVER_MINUTES: Field<quantity::Time> = Field {
    key: fields::UNTIL_TIME.key,
    least: fields::UNTIL_TIME.least,
    most: fields::UNTIL_TIME.most,
    unit: "min",
};

/// Fields that may stay empty.
pub const OPTIONAL: &[&str] = &[
    at::VOLUME,
    at::STOCK,
    at::OPENING,
    at::LAND,
    at::RATIO,
    at::WANTED_BORE,
    at::EFFICIENCY,
    at::LOWEST,
    at::HIGHEST,
    at::DISPLAY_STEP,
    at::VOLTS,
    at::DISTANCE,
    at::HANGER_WIRE,
    at::HANGER_WET,
];

/// The declaration at an address; every size of a shape has its shape's own.
pub fn declared(at: &str) -> Option<&'static dyn Declared> {
    let listed = ENTRIES
        .iter()
        .find(|(path, _)| *path == at)
        .map(|(_, d)| *d);
    listed.or_else(|| {
        let (_, size) = at.split_once("/shape/")?.1.split_once('/')?;
        fields::shape_size(size).map(|field| field as &dyn Declared)
    })
}

/// Reads the text of a field. An empty optional one has no echo and no Problem.
pub fn read(at: &str, text: &str) -> Option<Result<Echo, Problem>> {
    if text.trim().is_empty() && OPTIONAL.contains(&at) {
        return None;
    }
    declared(at).map(|d| d.echo(text, &FieldPath::new(at)))
}
