//! The solutions: what each takes, gives and asks.

use crate::element::ElementId;
use crate::source::{Cited, Datum, MethodId, Source, WorkId};
use quantity::{
    Band, Concentration, Conductivity, CurrentDensity, Diffusivity, Fraction, Ratio, Voltage,
};
use serde::Serialize;

/// The id of a solution.
pub type SolutionId = &'static str;

/// What a solution is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Process {
    /// Growing a shell.
    Electroform,
    /// Thin finish.
    Electroplate,
    /// Dissolving a masked sheet.
    Etch,
}

/// How the solution is moved at the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Stirring {
    /// Not at all.
    #[default]
    Still,
    /// A slow stirrer, rocking, or the piece turned now and then.
    Gentle,
    /// A strong stirrer or air.
    Vigorous,
}

/// Where a solution may be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// A trained adult with good ventilation and a waste plan.
    Conditions,
    /// A shop only.
    Shop,
}

/// One solution of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solution {
    /// Its id, never renamed or reused.
    pub id: SolutionId,
    /// What it is used for.
    pub process: Process,
    /// The metal it lays down.
    pub metal: ElementId,
    /// Charges per atom of that metal in this solution.
    pub valence: u8,
    /// Mass of the metal per volume.
    pub metal_content: Datum<Concentration>,
    /// The densities it takes without stirring.
    pub window_still: Datum<CurrentDensity>,
    /// The highest it takes when stirred.
    pub highest_stirred: Datum<CurrentDensity>,
    /// Share of the charge that makes metal.
    pub efficiency: Datum<Fraction>,
    /// Conductivity.
    pub conductivity: Datum<Conductivity>,
    /// Slope of the polarisation curve per decade over 2.303.
    pub slope: Datum<Voltage>,
    /// How far the evenness length may lie from conductivity times slope over density.
    pub evenness_factor: Datum<Ratio>,
    /// How fast the metal's ion spreads.
    pub diffusivity: Datum<Diffusivity>,
    /// Overvoltage of work and counter electrode together with leads: what the supply shows beyond the solution's own.
    pub surface_volts: Datum<Voltage>,
    /// Hazard statements by the made-up solution's and the salts' usual sheets.
    pub hazards: Cited<&'static [&'static str]>,
    /// Home and class suitability.
    pub home: Cited<Place>,
}

const fn dm2(value: f64) -> CurrentDensity {
    CurrentDensity::amp_per_dm2(value)
}

/// All solutions.
pub const SOLUTIONS: &[Solution] = &[Solution {
    id: "cu_acid_form",
    process: Process::Electroform,
    metal: "Cu",
    valence: 2,
    metal_content: Datum::Band(Cited::new(
        Band {
            min: Concentration::g_per_l(49.6),
            typ: Concentration::g_per_l(50.9),
            max: Concentration::g_per_l(63.1),
        },
        Source::Published {
            work: WorkId::Mfg11,
            locator: "p. 206, Table VIII: copper sulfate pentahydrate 195-248 g/L",
        },
    )),
    window_still: Datum::Band(Cited::new(
        Band {
            min: dm2(0.3),
            typ: dm2(1.2),
            max: dm2(2.0),
        },
        Source::CommonPractice,
    )),
    highest_stirred: Datum::Band(Cited::new(
        Band {
            min: dm2(2.2),
            typ: dm2(2.2),
            max: dm2(10.8),
        },
        Source::Published {
            work: WorkId::Mfg11,
            locator: "p. 206, Table VIII",
        },
    )),
    efficiency: Datum::Band(Cited::new(
        Band {
            min: Fraction::of_si(0.97),
            typ: Fraction::of_si(0.98),
            max: Fraction::of_si(1.0),
        },
        Source::Published {
            work: WorkId::Mfg11,
            locator: "p. 206",
        },
    )),
    conductivity: Datum::Band(Cited::new(
        Band {
            min: Conductivity::s_per_cm(0.12),
            typ: Conductivity::s_per_cm(0.16),
            max: Conductivity::s_per_cm(0.22),
        },
        Source::Published {
            work: WorkId::AcidCopperConductivity,
            locator: "50 g/L free acid, with copper",
        },
    )),
    slope: Datum::Value(crate::kinetics::TAFEL_HALF),
    evenness_factor: Datum::Band(Cited::new(
        Band {
            min: Ratio::of_si(0.7),
            typ: Ratio::of_si(1.0),
            max: Ratio::of_si(2.0),
        },
        Source::Computed {
            method: MethodId::Derived,
        },
    )),
    diffusivity: Datum::Value(Cited::new(Diffusivity::of_si(5.5e-10), Source::FromMemory)),
    surface_volts: Datum::Band(Cited::new(
        Band {
            min: Voltage::volt(0.15),
            typ: Voltage::volt(0.28),
            max: Voltage::volt(0.45),
        },
        Source::Computed {
            method: MethodId::Derived,
        },
    )),
    hazards: Cited::new(&["H302", "H318", "H410", "H314"], Source::FromMemory),
    home: Cited::new(Place::Conditions, Source::CommonPractice),
}];
