//! Every field of the page: its address and its declaration. One table feeds the reading, the hint, the message and the
//! memory of the last good entry.

use super::at;
use super::units::Units;
use crate::words::{self, number};
use planner::clock::Local;
use planner::fields::{self, CountField, Field};
use planner::{Accepted, FieldPath, Problem};
use quantity::{Mass, Quantity, Ratio, Unit, print, unit};

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
    fn echo(&self, units: Units, text: &str, at: &FieldPath) -> Result<Echo, Problem>;
    /// The metric unit's symbol.
    fn unit(&self) -> &'static str;
    /// Whether it goes up and down by ones.
    fn steps(&self) -> bool {
        false
    }
}

impl<Q: Quantity + Sync> Declared for Field<Q> {
    fn echo(&self, units: Units, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        let unit = unit_in(units, self);
        let reading = self.read_text_in(unit, text, at)?;
        Ok(Echo {
            text: print::with_unit(&number::short(reading.value.in_unit(unit), 4), unit),
            show: reading.echo,
        })
    }

    fn unit(&self) -> &'static str {
        self.unit
    }
}

impl Declared for CountField {
    fn echo(&self, _: Units, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        let count = self.read_text(text, at)?;
        Ok(Echo {
            text: count.to_string(),
            show: false,
        })
    }

    fn steps(&self) -> bool {
        true
    }

    fn unit(&self) -> &'static str {
        ""
    }
}

/// A time of day, `16:20`. The keypad of digits, whose keys a wet hand can hit, has no colon on many phones: `16.20`, `16,20` and
/// `1620` are the same.
pub struct TimeOfDay {
    /// Whether an empty field is right too.
    pub may_be_empty: bool,
}

/// With its colon, where it is a time of day.
fn with_colon(text: &str) -> Option<String> {
    let mut clock = text.replace(['.', ','], ":");
    if matches!(clock.len(), 3 | 4) && clock.bytes().all(|b| b.is_ascii_digit()) {
        clock.insert(clock.len() - 2, ':');
    }
    planner::clock::time_of_day(&clock).map(|_| clock)
}

impl Declared for TimeOfDay {
    fn echo(&self, _: Units, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        let text = text.trim();
        let empty = (text.is_empty() && self.may_be_empty).then(String::new);
        if let Some(clock) = with_colon(text).or(empty) {
            return Ok(Echo {
                show: clock != text,
                text: clock,
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

/// A local date and time, `2026-12-05 16:00`.
pub struct DateAndTime;

impl DateAndTime {
    /// Reads it.
    ///
    /// # Errors
    ///
    /// Where it is no minute of the calendar.
    pub fn read(text: &str, at: &FieldPath) -> Result<Local, Problem> {
        let mut parts = text.split(|c: char| c.is_whitespace() || c == 'T' || c == ',');
        let mut next = || parts.find(|p| !p.is_empty());
        let both = next().zip(next()).filter(|_| next().is_none());
        let local = both.and_then(|(day, time)| Local::parse(&[day, "T", time].concat()));
        local.ok_or_else(|| {
            Problem::at(at.clone(), planner::ProblemKind::UnknownWord)
                .reading(text.trim())
                .one_of(["2026-12-05 16:00"])
        })
    }
}

impl Declared for DateAndTime {
    fn echo(&self, _: Units, text: &str, at: &FieldPath) -> Result<Echo, Problem> {
        Ok(Echo {
            text: words::after::day(&Self::read(text, at)?.text()),
            show: true,
        })
    }

    fn unit(&self) -> &'static str {
        ""
    }
}

/// The unit a bare number in a field is in.
pub fn unit_in<Q: Quantity>(units: Units, field: &Field<Q>) -> &'static Unit {
    unit::by_symbol(Q::UNITS, units.symbol(field.unit)).unwrap_or(Field::unit(field))
}

/// A field of the page.
pub struct Entry {
    /// Its address, of the first piece where it belongs to one.
    pub at: &'static str,
    /// Its declaration.
    pub declared: &'static dyn Declared,
    /// Whether it may stay empty.
    pub optional: bool,
}

const fn needed(at: &'static str, declared: &'static dyn Declared) -> Entry {
    Entry {
        at,
        declared,
        optional: false,
    }
}

const fn optional(at: &'static str, declared: &'static dyn Declared) -> Entry {
    Entry {
        at,
        declared,
        optional: true,
    }
}

/// Every field with an address of its own.
pub const ENTRIES: &[Entry] = &[
    needed(at::OPEN, &fields::OPEN),
    needed(at::DEPTH, &fields::UNTIL_DEPTH),
    needed(at::AREA, &fields::ONE_SIDE),
    needed(at::COUNT, &fields::COUNT),
    needed(at::COVER_DENSITY, &fields::DENSITY),
    needed(at::COVER_TIME, &COVER_MINUTES),
    needed(at::DENSITY, &fields::DENSITY),
    needed(at::CURRENT, &fields::CURRENT),
    needed(at::MEAN, &fields::UNTIL_MEAN),
    needed(at::THINNEST, &fields::UNTIL_THINNEST),
    needed(at::MASS, &fields::UNTIL_MASS),
    needed(
        at::CLOCK,
        &TimeOfDay {
            may_be_empty: false,
        },
    ),
    needed(at::TIME, &fields::UNTIL_TIME),
    optional(at::START, &TimeOfDay { may_be_empty: true }),
    optional(at::SESSION, &fields::SESSION),
    optional(at::BETWEEN, &fields::BETWEEN),
    optional(at::DUE, &DateAndTime),
    optional(at::CURE, &fields::CURE),
    optional(at::DRY, &fields::DRY),
    optional(at::HAPPENED_AT, &fields::AFTER),
    optional(at::GAP, &fields::GAP),
    optional(at::REVERSED_FOR, &fields::REVERSED),
    optional(at::REVERSED_CURRENT, &fields::CURRENT),
    optional(at::FILED_MASS, &fields::FILED),
    optional(at::FILED_AREA, &fields::FILED_BARE),
    optional(at::STOCK, &fields::STOCK),
    optional(at::OPENING, &fields::ART_OPENING),
    optional(at::LAND, &fields::ART_LAND),
    optional(at::ART_LENGTH, &fields::ART_LENGTH),
    optional(at::ETCH_FACTOR, &fields::ETCH_FACTOR),
    optional(at::RATIO, &fields::MIN_OVER_MEAN),
    optional(at::AREA_TEXTURE, &fields::TEXTURE),
    optional(at::TEXTURE, &fields::TEXTURE_OUTSIDE),
    optional(at::HANGER_WIRE, &fields::HANGER_WIRE),
    optional(at::HANGER_WET, &fields::HANGER_WET),
    optional(at::HANGER_WIRES, &fields::WIRES),
    optional(at::BORE, &fields::FIT_BORE),
    optional(at::WANTED_BORE, &fields::WANTED_BORE),
    optional(at::VOLUME, &fields::VOLUME),
    optional(at::PASSED, &fields::PASSED),
    optional(at::TEMPERATURE, &fields::TEMPERATURE),
    optional(at::CEILING, &fields::CEILING),
    optional(at::FACING, &fields::FACING),
    optional(at::DISTANCE, &fields::DISTANCE),
    optional(at::PLATE_WIDTH, &fields::PLATE_WIDTH),
    optional(at::PLATE_HEIGHT, &fields::PLATE_HEIGHT),
    optional(at::PLATES, &fields::PLATES),
    optional(at::COIL_WIRE, &fields::COIL_WIRE),
    optional(at::COIL_LENGTH, &fields::COIL_LENGTH),
    optional(at::SCRAP, &fields::SCRAP),
    optional(at::SCRAP_THICK, &fields::SCRAP_STOCK),
    optional(at::VESSEL_D, &fields::VESSEL_D),
    optional(at::VESSEL_HEIGHT, &fields::PLATE_HEIGHT),
    optional(at::SURFACE, &fields::SURFACE),
    optional(at::HEATER, &fields::HEATER),
    optional(at::EFFICIENCY, &fields::EFFICIENCY),
    optional(at::BATCH, &fields::BATCH),
    optional(at::CONDUCTIVITY, &fields::CONDUCTIVITY),
    optional(at::EVENNESS_FACTOR, &fields::EVENNESS_FACTOR),
    optional(at::SURFACE_VOLTS, &fields::SURFACE_VOLTS),
    needed(at::VESSELS, &super::job::VESSELS),
    optional(at::STUDENTS, &fields::STUDENTS),
    optional(at::LESSON, &fields::LESSON),
    optional(at::WITNESS, &fields::WITNESS),
    optional(at::CONTACT, &fields::CONTACT),
    optional(at::CONTACT_LEAD, &fields::LEAD),
    optional(at::JOINS, &fields::AFTER),
    optional(at::LEAVES, &fields::AFTER),
    optional(at::OWN_DENSITY, &fields::DENSITY),
    optional(at::OWN_HIGHEST, &fields::OWN_HIGHEST),
    optional(at::OWN_EFFICIENCY, &fields::OWN_EFFICIENCY),
    optional(at::OWN_MOVES, &fields::MOVES),
    optional(at::OWN_VOLTS, &fields::OWN_VOLTS),
    optional(at::VOLTS_LOWEST, &fields::LOWEST_VOLTS),
    optional(at::VOLTS_HIGHEST, &fields::HIGHEST_VOLTS),
    optional(at::VOLTS_STEP, &fields::DISPLAY_STEP_VOLTS),
    optional(at::VOLTS_CURRENT, &fields::HIGHEST),
    optional(at::FIXED_CURRENT, &fields::CURRENT),
    optional(at::FIXED_GAIN, &fields::STRIP_GAIN),
    optional(at::FIXED_TIME, &fields::STRIP_TIME),
    optional(at::LOWEST, &fields::LOWEST),
    optional(at::HIGHEST, &fields::HIGHEST),
    optional(at::DISPLAY_STEP, &fields::DISPLAY_STEP),
    optional(at::OFFSET, &fields::OFFSET),
    optional(at::VOLTS, &fields::HIGHEST_VOLTS),
    optional(at::CARD_LONG, &PIXELS),
    optional(at::CARD_SHORT, &PIXELS),
    optional(at::CARD_PIECE, &PIXELS),
    optional(at::TRACING, &WEIGHED),
    optional(at::SQUARE, &WEIGHED),
    optional(at::SQUARE_AREA, &fields::ONE_SIDE),
    optional(at::WRAP, &WEIGHED),
    optional(at::SCALE_STEP, &WEIGHED),
];

/// A count of picture points, along a line or over an area.
pub const PIXELS: Field<Ratio> = Field {
    key: "pixels_ratio",
    least: Ratio::of_si(1.0),
    most: Ratio::of_si(1e9),
    unit: "",
};
/// Something weighed on a kitchen or jeweller's scale.
pub const WEIGHED: Field<Mass> = Field {
    key: "weighed_kg",
    least: Mass::gram(0.0001),
    most: Mass::gram(5000.0),
    unit: "g",
};

/// Fields whose address has a name in it that the person's choice gives: by how the address ends.
const NAMED: [(&str, Entry); 3] = [
    ("/now", optional("baths/b1/holds", &fields::HOLDS_NOW)),
    ("/floor", optional("baths/b1/holds", &fields::HOLDS_FLOOR)),
    ("/price", optional("prices", &fields::PRICE)),
];

/// How sure an input is: two in three within so many per cent.
const HOW_SURE: Entry = optional("spreads", &fields::SPREAD);

/// Covering is a matter of minutes: a bare number means those.
pub const COVER_MINUTES: Field<quantity::Time> = Field {
    key: fields::UNTIL_TIME.key,
    least: fields::UNTIL_TIME.least,
    most: fields::UNTIL_TIME.most,
    unit: "min",
};

/// The declaration at an address and whether it may stay empty; every size of a shape has its shape's own.
fn entry(at: &str) -> Option<(&'static dyn Declared, bool)> {
    if at::spread_of(at).is_some() {
        return Some((HOW_SURE.declared, true));
    }
    let plain = at::plain(at);
    let found = ENTRIES.iter().find(|e| e.at == plain).or_else(|| {
        let named = NAMED.iter();
        named
            .filter(|(end, e)| plain.starts_with(e.at) && at.ends_with(end))
            .map(|(_, e)| e)
            .next()
    });
    if let Some(e) = found {
        return Some((e.declared, e.optional));
    }
    let (_, size) = at.split_once("/shape/")?.1.split_once('/')?;
    let declared: &dyn Declared = match size {
        "holes" => &fields::HOLES,
        "layers" => &fields::LAYERS,
        size => fields::shape_size(size)?,
    };
    Some((declared, false))
}

/// The declaration at an address.
pub fn declared(at: &str) -> Option<&'static dyn Declared> {
    entry(at).map(|(declared, _)| declared)
}

/// Whether something can stand at an address of the page.
pub fn known(at: &str) -> bool {
    let words = [
        at::PIECES,
        at::MADE,
        at::LABEL,
        at::CLIP,
        at::COUNTER,
        at::LAYERS,
        at::LAYERS_MADE,
        at::OWN_METAL,
        at::HAPPENED,
        at::HAPPENED_IN,
        at::FILED_PIECE,
    ];
    words.contains(&&*at::plain(at)) || entry(at).is_some()
}

/// Whether a field may stay empty.
pub fn may_be_empty(at: &str) -> bool {
    entry(at).is_some_and(|(_, optional)| optional)
}

/// Reads the text of a field. An empty optional one has no echo and no Problem.
pub fn read_in(units: Units, at: &str, text: &str) -> Option<Result<Echo, Problem>> {
    let (declared, optional) = entry(at)?;
    if optional && text.trim().is_empty() {
        return None;
    }
    Some(declared.echo(units, text, &FieldPath::new(at)))
}

/// Whether a field is a count, which may be stepped.
pub fn is_count(at: &str) -> bool {
    declared(at).is_some_and(|d| d.steps())
}

/// The count that stands in a count's field.
pub fn count(at: &str, text: &str) -> Option<u32> {
    match read_in(Units::Metric, at, text) {
        Some(Ok(echo)) => echo.text.parse().ok(),
        _ => None,
    }
}
