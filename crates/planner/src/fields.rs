//! Every numeric input, declared once: its key, its bounds, the unit it is typed in. From this line come the check, the
//! message, the hint under the field and the generator of the property tests.

use crate::path::{FieldPath, name_of};
use crate::problem::{Accepted, Problem, ProblemKind, of_unreadable};
use crate::value::Named;
use quantity::{
    AnyQuantity, AreaResistance, BathSurface, Concentration, Conductivity, CounterArea, Current,
    CurrentDensity, Fraction, Length, Mass, Power, Quantity, Ratio, Reading, Resistance,
    SheetResistance, Temperature, Thickness, Time, Unit, Voltage, Volume, WorkArea,
};
use serde_json::Value;

/// The declaration of a numeric input.
#[derive(Clone, Copy, Debug)]
pub struct Field<Q: 'static> {
    /// The key in a Job, its unit ending included.
    pub key: &'static str,
    /// Lowest accepted.
    pub least: Q,
    /// Highest accepted.
    pub most: Q,
    /// Symbol of the unit it is typed in.
    pub unit: &'static str,
}

impl<Q: Quantity> Field<Q> {
    const fn new(key: &'static str, least: Q, most: Q, unit: &'static str) -> Self {
        Self {
            key,
            least,
            most,
            unit,
        }
    }

    /// The declaration without its kind.
    pub fn bare(&self) -> Bare {
        Bare {
            key: self.key,
            key_unit: Q::KEY_UNIT,
            units: Q::UNITS,
            least: self.least.si(),
            most: self.most.si(),
        }
    }

    /// The last part of its address: its key without the unit. A supply's highest voltage stands beside its highest
    /// current, and has an address of its own.
    pub fn name(&self) -> &'static str {
        self.bare().name()
    }

    /// The unit a number without one is taken to be in.
    pub fn unit(&self) -> &'static Unit {
        quantity::unit::by_symbol(Q::UNITS, self.unit).unwrap_or(&Q::UNITS[0])
    }

    /// What is accepted.
    pub fn accepted(&self) -> Accepted {
        self.bare().accepted()
    }

    /// Holds a quantity against the bounds.
    pub fn check(&self, value: Q, at: &FieldPath, read: &str) -> Result<Q, Problem> {
        self.bare().check(value.si(), at, read).map(|()| value)
    }

    /// Reads what a person typed.
    pub fn read_text(&self, text: &str, at: &FieldPath) -> Result<Reading<Q>, Problem> {
        self.read_text_in(self.unit(), text, at)
    }

    /// The same where a bare number is in another unit than the declared one.
    pub fn read_text_in(
        &self,
        unit: &'static Unit,
        text: &str,
        at: &FieldPath,
    ) -> Result<Reading<Q>, Problem> {
        self.bare().read_text(unit, text, at).map(|r| Reading {
            value: Q::from_si(r.value.si),
            unit: r.unit,
            echo: r.echo,
        })
    }

    /// Reads what stands in a Job.
    pub fn read_json(&self, value: &Value, at: &FieldPath) -> Result<Q, Problem> {
        self.bare().read_json(value, at).map(Q::from_si)
    }
}

/// A declaration without its kind: reading is done once for all kinds, not in a copy for each.
#[derive(Clone, Copy, Debug)]
pub struct Bare {
    pub(crate) key: &'static str,
    key_unit: &'static str,
    units: &'static [Unit],
    least: f64,
    most: f64,
}

impl Bare {
    pub(crate) fn name(&self) -> &'static str {
        match self.key {
            "highest_V" => "highest_volts",
            key => name_of(key, self.key_unit),
        }
    }

    pub(crate) fn accepted(&self) -> Accepted {
        let named = |name, si| Named {
            name,
            value: self.named(si),
        };
        Accepted::Between {
            least: named("least", self.least),
            most: named("most", self.most),
        }
    }

    /// A number of its kind.
    pub(crate) fn named(&self, si: f64) -> AnyQuantity {
        AnyQuantity {
            key_unit: self.key_unit,
            si,
        }
    }

    fn check(&self, si: f64, at: &FieldPath, read: &str) -> Result<(), Problem> {
        match outside(si, self.least, self.most) {
            None => Ok(()),
            Some(kind) => Err(refused(kind, at, Some(read), self.accepted())),
        }
    }

    /// As [`Field::read_text_in`].
    #[inline(never)]
    pub fn read_text(
        &self,
        unit: &'static Unit,
        text: &str,
        at: &FieldPath,
    ) -> Result<Reading<AnyQuantity>, Problem> {
        match quantity::read_any(text, self.key_unit, self.units, unit) {
            Ok(reading) => self
                .check(reading.value.si, at, text.trim())
                .map(|()| reading),
            Err(why) => {
                let (kind, part) = of_unreadable(&why);
                Err(refused(kind, at, part, self.accepted()))
            }
        }
    }

    #[inline(never)]
    pub(crate) fn read_json(&self, value: &Value, at: &FieldPath) -> Result<f64, Problem> {
        number_in(value, self.least, self.most)
            .map_err(|kind| refused(kind, at, Some(&value.to_string()), self.accepted()))
    }
}

/// How a number breaks its bounds.
fn outside(number: f64, least: f64, most: f64) -> Option<ProblemKind> {
    if number < least {
        Some(ProblemKind::TooSmall)
    } else if number > most {
        Some(ProblemKind::TooLarge)
    } else if number.is_finite() {
        None
    } else {
        Some(ProblemKind::NotFinite)
    }
}

fn number_in(value: &Value, least: f64, most: f64) -> Result<f64, ProblemKind> {
    let number = value.as_f64().ok_or(ProblemKind::WrongType)?;
    outside(number, least, most).map_or(Ok(number), Err)
}

fn refused(kind: ProblemKind, at: &FieldPath, read: Option<&str>, accepted: Accepted) -> Problem {
    let problem = Problem::at(at.clone(), kind).accepting(accepted);
    match read {
        Some(read) => problem.reading(read),
        None => problem,
    }
}

/// A whole number with bounds.
#[derive(Clone, Copy, Debug)]
pub struct CountField {
    /// The key in a Job.
    pub key: &'static str,
    /// Lowest accepted.
    pub least: u32,
    /// Highest accepted.
    pub most: u32,
}

impl CountField {
    /// The last part of its address.
    pub fn name(&self) -> &'static str {
        name_of(self.key, "count")
    }

    /// What is accepted.
    pub fn accepted(&self) -> Accepted {
        let named = |name, n| Named {
            name,
            value: quantity::AnyQuantity {
                key_unit: "count",
                si: f64::from(n),
            },
        };
        Accepted::Between {
            least: named("least", self.least),
            most: named("most", self.most),
        }
    }

    /// Holds a number against the bounds.
    pub fn check(&self, number: f64, at: &FieldPath, read: &str) -> Result<u32, Problem> {
        let kind = if !number.is_finite() {
            ProblemKind::NotFinite
        } else if number < f64::from(self.least) {
            ProblemKind::TooSmall
        } else if number > f64::from(self.most) {
            ProblemKind::TooLarge
        } else if number.fract() != 0.0 {
            ProblemKind::NotANumber
        } else {
            return Ok(number as u32);
        };
        Err(Problem::at(at.clone(), kind)
            .reading(read)
            .accepting(self.accepted()))
    }

    /// Reads what a person typed.
    pub fn read_text(&self, text: &str, at: &FieldPath) -> Result<u32, Problem> {
        match quantity::read::<Ratio>(text, &Ratio::UNITS[0]) {
            Ok(reading) => self.check(reading.value.si(), at, text.trim()),
            Err(why) => {
                let (kind, part) = of_unreadable(&why);
                let problem = Problem::at(at.clone(), kind).accepting(self.accepted());
                Err(match part {
                    Some(part) => problem.reading(part),
                    None => problem,
                })
            }
        }
    }

    /// Reads what stands in a Job.
    pub fn read_json(&self, value: &Value, at: &FieldPath) -> Result<u32, Problem> {
        match value.as_f64() {
            Some(number) => self.check(number, at, &value.to_string()),
            None => Err(Problem::at(at.clone(), ProblemKind::WrongType)
                .reading(value.to_string())
                .accepting(self.accepted())),
        }
    }
}

const fn count(key: &'static str, least: u32, most: u32) -> CountField {
    CountField { key, least, most }
}

const fn mm(key: &'static str, least: f64, most: f64) -> Field<Length> {
    Field::new(key, Length::mm(least), Length::mm(most), "mm")
}

/// How many alike.
pub const COUNT: CountField = count("count", 1, 999);
/// How often a part stands on the piece.
pub const TIMES: CountField = count("times_count", 1, 999);
/// Sides of a flat piece that are wetted.
pub const SIDES: CountField = count("sides_count", 1, 2);
/// Hanger wires of one piece.
pub const WIRES: CountField = count("wires_count", 1, 20);
/// Contacts on a coat.
pub const CONTACTS: CountField = count("contacts_count", 1, 99);
/// Students in a class.
pub const STUDENTS: CountField = count("students_count", 1, 200);

/// Inner diameter of a ring.
pub const BORE: Field<Length> = mm("bore_m", 1.0, 300.0);
/// Diameter of the wire of a round ring.
pub const RING_WIRE: Field<Length> = mm("wire_d_m", 0.1, 50.0);
/// Wall of a band.
pub const WALL: Field<Length> = mm("wall_m", 0.05, 50.0);
/// Width of a band.
pub const WIDTH: Field<Length> = mm("width_m", 0.2, 300.0);
/// Outer diameter of a cap.
pub const OUTER_D: Field<Length> = mm("outer_d_m", 0.5, 300.0);
/// Inner diameter of a cap.
pub const INNER_D: Field<Length> = mm("inner_d_m", 0.4, 300.0);
/// Height of a cap.
pub const CAP_HEIGHT: Field<Length> = mm("height_m", 0.2, 300.0);
/// Length of a piece.
pub const LENGTH: Field<Length> = mm("length_m", 0.2, 3000.0);
/// Diameter of a ball, disc, rod or hole.
pub const DIAMETER: Field<Length> = mm("diameter_m", 0.1, 500.0);
/// Depth of a hole.
pub const DEPTH: Field<Length> = mm("depth_m", 0.05, 500.0);
/// Diameter of a hole in a sheet.
pub const HOLE_D: Field<Length> = mm("hole_d_m", 0.1, 300.0);
/// Diameter at a mouth or rim.
pub const OPENING_D: Field<Length> = mm("opening_d_m", 0.5, 500.0);
/// Diameter at the foot or thick end.
pub const BASE_D: Field<Length> = mm("base_d_m", 0.2, 500.0);
/// Diameter at the top or thin end.
pub const TOP_D: Field<Length> = mm("top_d_m", 0.1, 500.0);
/// From turn to turn, wire to wire.
pub const PITCH: Field<Length> = mm("pitch_m", 0.05, 300.0);
/// Outer length of a link.
pub const LINK_LENGTH: Field<Length> = mm("link_length_m", 0.5, 300.0);
/// Outer width of a link.
pub const LINK_WIDTH: Field<Length> = mm("link_width_m", 0.5, 300.0);
/// Across two opposite flats.
pub const FLATS: Field<Length> = mm("flats_m", 0.5, 300.0);
/// Height of a crystal's point.
pub const POINT: Field<Length> = mm("point_m", 0.1, 300.0);
/// Holes in a sheet.
pub const HOLES: CountField = count("holes_count", 1, 9999);
/// Layers of cloth.
pub const LAYERS: CountField = count("layers_count", 1, 99);

/// Every size a shape may have: one declaration for all shapes that have a size of that name.
const SHAPE_SIZES: [&Field<Length>; 20] = [
    &BORE,
    &RING_WIRE,
    &WALL,
    &WIDTH,
    &OUTER_D,
    &INNER_D,
    &CAP_HEIGHT,
    &STOCK,
    &LENGTH,
    &DIAMETER,
    &DEPTH,
    &HOLE_D,
    &OPENING_D,
    &BASE_D,
    &TOP_D,
    &PITCH,
    &LINK_LENGTH,
    &LINK_WIDTH,
    &FLATS,
    &POINT,
];

/// The declaration of a shape's size, by its name in `Shape::size_names`.
pub fn shape_size(name: &str) -> Option<&'static Field<Length>> {
    SHAPE_SIZES.into_iter().find(|field| field.name() == name)
}

/// The declaration of a shape's count, by its key.
pub fn shape_count(key: &str) -> Option<&'static CountField> {
    [&HOLES, &LAYERS].into_iter().find(|field| field.key == key)
}

/// Real over smooth surface.
pub const TEXTURE: Field<Ratio> =
    Field::new("texture_ratio", Ratio::of_si(1.0), Ratio::of_si(5.0), "");
/// The same, of a shape's outside.
pub const TEXTURE_OUTSIDE: Field<Ratio> = Field::new(
    "texture_outside_ratio",
    Ratio::of_si(1.0),
    Ratio::of_si(5.0),
    "",
);
/// Area of one side.
pub const ONE_SIDE: Field<WorkArea> = Field::new(
    "one_side_m2",
    WorkArea::cm2(0.01),
    WorkArea::cm2(10_000.0),
    "cm²",
);
/// Layer that is already on a piece.
pub const GROWN: Field<Thickness> =
    Field::new("grown_m", Thickness::um(0.0), Thickness::um(5000.0), "µm");
/// Open share of a masked sheet.
pub const OPEN: Field<Fraction> = Field::new(
    "open_frac",
    Fraction::of_si(0.001),
    Fraction::of_si(1.0),
    "%",
);
/// Diameter of a hanger wire.
pub const HANGER_WIRE: Field<Length> = mm("wire_d_m", 0.1, 10.0);
/// Wetted length of a hanger wire.
pub const HANGER_WET: Field<Length> = mm("wet_m", 0.0, 1000.0);
/// Resistance of a contact.
pub const CONTACT: Field<Resistance> = Field::new(
    "contact_ohm",
    Resistance::of_si(0.0),
    Resistance::of_si(1000.0),
    "Ω",
);
/// Resistance of a lead.
pub const LEAD: Field<Resistance> = Field::new(
    "lead_ohm",
    Resistance::of_si(0.0),
    Resistance::of_si(1000.0),
    "Ω",
);
/// Sheet resistance of a coat.
pub const SHEET: Field<SheetResistance> = Field::new(
    "sheet_ohm_sq",
    SheetResistance::of_si(0.001),
    SheetResistance::of_si(1e6),
    "Ω/sq",
);
/// Girth of a coated piece.
pub const GIRTH: Field<Length> = mm("girth_m", 0.5, 2000.0);
/// Height of a coated piece.
pub const COAT_HEIGHT: Field<Length> = mm("height_m", 0.5, 2000.0);
/// Thickness of sheet or wall.
pub const STOCK: Field<Length> = mm("thickness_m", 0.01, 50.0);
/// Thinnest over mean, the person's own.
pub const MIN_OVER_MEAN: Field<Ratio> = Field::new(
    "min_over_mean_ratio",
    Ratio::of_si(0.001),
    Ratio::of_si(1.0),
    "",
);
/// Bore that must fit, now.
pub const FIT_BORE: Field<Length> = mm("bore_m", 1.0, 300.0);
/// Bore wanted after growth.
pub const WANTED_BORE: Field<Length> = mm("wanted_bore_m", 0.5, 300.0);
/// Width of an etched opening.
pub const ART_OPENING: Field<Length> = mm("opening_m", 0.01, 500.0);
/// Width of metal left between openings.
pub const ART_LAND: Field<Length> = mm("land_wanted_m", 0.01, 500.0);
/// Length of line.
pub const ART_LENGTH: Field<Length> = mm("length_m", 0.1, 100_000.0);
/// Depth over undercut.
pub const ETCH_FACTOR: Field<Ratio> = Field::new(
    "etch_factor_ratio",
    Ratio::of_si(0.7),
    Ratio::of_si(3.0),
    "",
);
/// Time after a step's start.
pub const AFTER: Field<Time> = Field::new("after_s", Time::seconds(0.0), Time::hours(720.0), "h");
/// Bath volume.
pub const VOLUME: Field<Volume> =
    Field::new("volume_m3", Volume::of_si(2e-5), Volume::of_si(1.0), "L");
/// Charge a bath has passed.
pub const PASSED: Field<quantity::Charge> = Field::new(
    "passed_C",
    quantity::Charge::of_si(0.0),
    quantity::Charge::of_si(3.6e9),
    "Ah",
);
/// Metal in a bath now.
pub const HOLDS_NOW: Field<Concentration> = Field::new(
    "now_kg_per_m3",
    Concentration::of_si(0.0),
    Concentration::of_si(500.0),
    "g/L",
);
/// Metal below which the bath is renewed.
pub const HOLDS_FLOOR: Field<Concentration> = Field::new(
    "floor_kg_per_m3",
    Concentration::of_si(0.0),
    Concentration::of_si(500.0),
    "g/L",
);
/// Facing area of the counter electrode.
pub const FACING: Field<CounterArea> = Field::new(
    "facing_m2",
    CounterArea::of_si(1e-5),
    CounterArea::of_si(10.0),
    "cm²",
);
/// Distance to the counter electrode.
pub const DISTANCE: Field<Length> = mm("distance_m", 5.0, 1000.0);
/// Length of the counter electrode over that of the bar, centre of the first piece to centre of the last.
pub const OVER_BAR: Field<Ratio> =
    Field::new("over_bar_ratio", Ratio::of_si(0.05), Ratio::of_si(20.0), "");
/// Temperature of a step.
pub const TEMPERATURE: Field<Temperature> = Field::new(
    "temperature_K",
    Temperature::celsius(1.0),
    Temperature::celsius(99.0),
    "°C",
);
/// Highest voltage the person sets.
pub const CEILING: Field<Voltage> =
    Field::new("ceiling_V", Voltage::of_si(0.05), Voltage::of_si(60.0), "V");
/// Density as a drive.
pub const DENSITY: Field<CurrentDensity> = Field::new(
    "density_A_per_m2",
    CurrentDensity::amp_per_dm2(0.001),
    CurrentDensity::amp_per_dm2(100.0),
    "A/dm²",
);
/// Current as a drive.
pub const CURRENT: Field<Current> = Field::new(
    "current_A",
    Current::milliampere(0.1),
    Current::ampere(100.0),
    "mA",
);
/// Until a time has passed.
pub const UNTIL_TIME: Field<Time> =
    Field::new("time_s", Time::seconds(1.0), Time::hours(720.0), "h");
/// Until this thickness on average.
pub const UNTIL_MEAN: Field<Thickness> =
    Field::new("mean_m", Thickness::um(0.01), Thickness::um(5000.0), "µm");
/// Until this thickness at the thinnest place.
pub const UNTIL_THINNEST: Field<Thickness> = Field::new(
    "thinnest_m",
    Thickness::um(0.01),
    Thickness::um(5000.0),
    "µm",
);
/// Until this depth.
pub const UNTIL_DEPTH: Field<Thickness> =
    Field::new("depth_m", Thickness::um(0.1), Thickness::um(10_000.0), "µm");
/// Until this mass lies on the pieces.
pub const UNTIL_MASS: Field<Mass> =
    Field::new("mass_kg", Mass::gram(0.0001), Mass::gram(10_000.0), "g");
/// How long a finish shall last.
pub const LASTS: Field<Time> = Field::new(
    "lasts_s",
    Time::hours(24.0),
    Time::hours(24.0 * 365.25 * 100.0),
    "h",
);
/// Lowest current of a supply.
pub const LOWEST: Field<Current> = Field::new(
    "lowest_A",
    Current::ampere(0.0),
    Current::ampere(100.0),
    "mA",
);
/// Highest current of a supply.
pub const HIGHEST: Field<Current> = Field::new(
    "highest_A",
    Current::milliampere(1.0),
    Current::ampere(100.0),
    "A",
);
/// Step of a supply's display.
pub const DISPLAY_STEP: Field<Current> = Field::new(
    "display_step_A",
    Current::milliampere(0.001),
    Current::ampere(10.0),
    "mA",
);
/// What a display shows too little: real less shown.
pub const OFFSET: Field<Current> = Field::new(
    "offset_A",
    Current::ampere(-1.0),
    Current::ampere(1.0),
    "mA",
);
/// Highest voltage of a supply.
pub const HIGHEST_VOLTS: Field<Voltage> =
    Field::new("highest_V", Voltage::of_si(0.1), Voltage::of_si(60.0), "V");
/// Lowest voltage of a supply.
pub const LOWEST_VOLTS: Field<Voltage> =
    Field::new("lowest_V", Voltage::of_si(0.0), Voltage::of_si(60.0), "V");
/// Step of a supply's voltage display.
pub const DISPLAY_STEP_VOLTS: Field<Voltage> = Field::new(
    "display_step_V",
    Voltage::of_si(0.001),
    Voltage::of_si(5.0),
    "V",
);
/// What a copper strip in series gained.
pub const STRIP_GAIN: Field<Mass> =
    Field::new("strip_gain_kg", Mass::gram(0.001), Mass::gram(1000.0), "g");
/// In this time.
pub const STRIP_TIME: Field<Time> =
    Field::new("strip_time_s", Time::minutes(1.0), Time::hours(720.0), "h");
/// A spread, two in three.
pub const SPREAD: Field<Fraction> = Field::new(
    "spread_frac",
    Fraction::of_si(0.0),
    Fraction::of_si(2.0),
    "%",
);
/// Length of a lesson.
pub const LESSON: Field<Time> = Field::new("lesson_s", Time::minutes(5.0), Time::hours(24.0), "h");
/// Diameter of a witness wire.
pub const WITNESS: Field<Length> = mm("witness_d_m", 0.2, 5.0);
/// A time of day, in seconds after midnight.
pub const OF_DAY_FROM: Field<Time> =
    Field::new("night_from_s", Time::seconds(0.0), Time::hours(24.0), "h");
/// The other end of the night.
pub const OF_DAY_TO: Field<Time> =
    Field::new("night_to_s", Time::seconds(0.0), Time::hours(24.0), "h");

/// Own efficiency of a bath.
///
/// Where metal is laid down it is at most 1, where metal dissolves at most 1.1; the plan holds it against the bath.
pub const EFFICIENCY: Field<Fraction> = Field::new(
    "value_frac",
    Fraction::of_si(0.01),
    Fraction::of_si(1.1),
    "%",
);
/// The same, where metal is laid down.
pub const CATHODE_EFFICIENCY: Field<Fraction> = Field::new(
    "value_frac",
    Fraction::of_si(0.01),
    Fraction::of_si(1.0),
    "%",
);
/// Own thinnest over mean from batch to batch.
pub const BATCH: Field<Ratio> = Field::new("value_ratio", Ratio::of_si(0.1), Ratio::of_si(1.0), "");
/// Own conductivity of a bath.
pub const CONDUCTIVITY: Field<Conductivity> = Field::new(
    "value_S_per_m",
    Conductivity::s_per_cm(0.001),
    Conductivity::s_per_cm(2.0),
    "mS/cm",
);
/// Own factor on a bath's evenness length.
pub const EVENNESS_FACTOR: Field<Ratio> =
    Field::new("value_ratio", Ratio::of_si(0.1), Ratio::of_si(10.0), "");
/// Own overvoltage of both surfaces and the leads.
pub const SURFACE_VOLTS: Field<Voltage> =
    Field::new("value_V", Voltage::of_si(0.0), Voltage::of_si(10.0), "V");
/// Density of an own metal.
pub const OWN_DENSITY: Field<quantity::Density> = Field::new(
    "density_kg_per_m3",
    quantity::Density::g_per_cm3(0.5),
    quantity::Density::g_per_cm3(25.0),
    "g/cm³",
);
/// Share of an element in an own alloy.
pub const OWN_SHARE: Field<Fraction> = Field::new(
    "share_frac",
    Fraction::of_si(0.0001),
    Fraction::of_si(1.0),
    "%",
);
/// Charges per atom.
pub const VALENCE: CountField = count("valence_count", 1, 8);
/// Highest density of an own solution.
pub const OWN_HIGHEST: Field<CurrentDensity> = Field::new(
    "highest_A_per_m2",
    CurrentDensity::amp_per_dm2(0.001),
    CurrentDensity::amp_per_dm2(100.0),
    "A/dm²",
);
/// Efficiency of an own solution.
pub const OWN_EFFICIENCY: Field<Fraction> = Field::new(
    "efficiency_frac",
    Fraction::of_si(0.01),
    Fraction::of_si(1.1),
    "%",
);
/// What a charge really moves in an own solution.
pub const MOVES: Field<quantity::MassPerCharge> = Field::new(
    "moves_kg_per_C",
    quantity::MassPerCharge::of_si(1e-10),
    quantity::MassPerCharge::of_si(1e-5),
    "mg/(A min)",
);
/// Conductivity of an own solution.
pub const OWN_CONDUCTIVITY: Field<Conductivity> = Field::new(
    "conductivity_S_per_m",
    Conductivity::s_per_cm(0.001),
    Conductivity::s_per_cm(2.0),
    "mS/cm",
);
/// Volts of an own solution's cell.
pub const OWN_VOLTS: Field<Voltage> =
    Field::new("volts_V", Voltage::of_si(0.05), Voltage::of_si(30.0), "V");
/// Own price of a metal.
pub const PRICE: Field<quantity::MoneyPerMass> = Field::new(
    "price_money_per_kg",
    quantity::MoneyPerMass::of_si(0.0),
    quantity::MoneyPerMass::of_si(1e9),
    "per g",
);
/// How warm a room is.
pub const ROOM_TEMPERATURE: Field<Temperature> = Field::new(
    "temperature_K",
    Temperature::celsius(-10.0),
    Temperature::celsius(50.0),
    "°C",
);
/// How damp its air is.
pub const HUMIDITY: Field<Fraction> = Field::new(
    "humidity_frac",
    Fraction::of_si(0.0),
    Fraction::of_si(1.0),
    "%",
);
/// Open surface of a bath.
pub const SURFACE: Field<BathSurface> = Field::new(
    "surface_m2",
    BathSurface::of_si(1e-4),
    BathSurface::of_si(2.0),
    "cm²",
);
/// Power of a bath's heater.
pub const HEATER: Field<Power> =
    Field::new("heater_W", Power::of_si(1.0), Power::of_si(10_000.0), "W");
/// Width of a counter electrode's plate.
pub const PLATE_WIDTH: Field<Length> = mm("width_m", 1.0, 2000.0);
/// Wetted height of a plate, or of a vessel that is the counter electrode.
pub const PLATE_HEIGHT: Field<Length> = mm("height_m", 1.0, 2000.0);
/// Plates that face the work.
pub const PLATES: CountField = count("plates_count", 1, 20);
/// Diameter of a coil's wire.
pub const COIL_WIRE: Field<Length> = mm("wire_d_m", 0.2, 20.0);
/// Wetted length of a coil's wire.
pub const COIL_LENGTH: Field<Length> = mm("length_m", 10.0, 100_000.0);
/// Mass of scrap in a basket.
pub const SCRAP: Field<Mass> = Field::new("mass_kg", Mass::gram(1.0), Mass::gram(100_000.0), "g");
/// Thickness of the scrap.
pub const SCRAP_STOCK: Field<Length> = mm("thickness_m", 0.05, 50.0);
/// Inner diameter of a vessel that is the counter electrode.
pub const VESSEL_D: Field<Length> = mm("diameter_m", 20.0, 1000.0);
/// Longest time somebody stays with a run.
pub const SESSION: Field<Time> =
    Field::new("session_s", Time::minutes(5.0), Time::hours(24.0), "h");
/// From the end of one session to the start of the next.
pub const BETWEEN: Field<Time> =
    Field::new("between_s", Time::seconds(0.0), Time::hours(720.0), "h");
/// Time the sealer takes to cure.
pub const CURE: Field<Time> = Field::new("cure_s", Time::seconds(0.0), Time::hours(720.0), "h");
/// Time the coat takes to dry.
pub const DRY: Field<Time> = Field::new("dry_s", Time::seconds(0.0), Time::hours(720.0), "h");
/// How long the current was away.
pub const GAP: Field<Time> = Field::new("gap_s", Time::seconds(0.0), Time::hours(8760.0), "h");
/// How long the leads were the wrong way round.
pub const REVERSED: Field<Time> =
    Field::new("for_s", Time::seconds(1.0), Time::hours(720.0), "min");
/// What was filed off.
pub const FILED: Field<Mass> = Field::new("mass_kg", Mass::gram(0.0001), Mass::gram(10_000.0), "g");
/// The area that was filed bare.
pub const FILED_BARE: Field<WorkArea> = Field::new(
    "area_m2",
    WorkArea::cm2(0.001),
    WorkArea::cm2(10_000.0),
    "cm²",
);
/// Own time a coat takes to be covered.
pub const COVERING: Field<Time> =
    Field::new("value_s", Time::seconds(10.0), Time::hours(72.0), "min");
/// Polarisation resistance of a coat's front.
pub const POLARISATION: Field<AreaResistance> = Field::new(
    "polarisation_ohm_m2",
    AreaResistance::of_si(1e-6),
    AreaResistance::of_si(1.0),
    "Ω cm²",
);
