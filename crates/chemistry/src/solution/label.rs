//! A solution of the person's own, from what its bottle's label says.

use super::make::BLANK;
use super::{Electrode, Family, Place, Process, Solution};
use crate::alloy::MetalId;
use crate::notes;
use crate::source::{Cited, Datum, Source};
use quantity::{Band, Conductivity, CurrentDensity, Fraction, Quantity, Voltage};

/// What a label says. What it does not say is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Label {
    /// What it is used for.
    pub process: Process,
    /// The metal it lays down or takes away.
    pub metal: MetalId,
    /// Charges per atom of that metal in it; of an alloy its greatest part's.
    pub valence: u8,
    /// The density to use.
    pub density: Option<CurrentDensity>,
    /// The highest density; the same as `density` where it is not said.
    pub highest: Option<CurrentDensity>,
    /// Share of the charge that moves metal.
    pub efficiency: Option<Fraction>,
    /// Conductivity.
    pub conductivity: Option<Conductivity>,
    /// Volts of the whole cell.
    pub volts: Option<Voltage>,
}

/// The id such a solution goes by inside the catalogue's types; the Job keeps the person's own.
pub const OWN: &str = "own";

impl Solution {
    /// A solution as its label describes it. Its values count as the person's own; nothing is filled in for what the label
    /// leaves out.
    pub fn from_label(label: &Label) -> Self {
        // The person's own word stands like a memory: they may be asked for better.
        const OWN_WORD: Source = Source::FromMemory;
        fn datum<Q: Quantity>(value: Option<Q>) -> Datum<Q> {
            value.map_or(Datum::Unknown, |v| Datum::Value(Cited::new(v, OWN_WORD)))
        }
        let window = match label.density {
            Some(typ) => {
                let highest = label.highest.filter(|h| h.si() > typ.si()).unwrap_or(typ);
                Datum::Band(Cited::new(
                    Band {
                        // No label says how little is too little.
                        min: typ * 0.1,
                        typ,
                        max: highest,
                    },
                    OWN_WORD,
                ))
            }
            None => Datum::Unknown,
        };
        Self {
            id: OWN,
            family: Family::Own,
            process: label.process,
            work: match label.process {
                Process::Etch => Electrode::Anode,
                Process::Electroform | Process::Electroplate => Electrode::Cathode,
            },
            metal: label.metal,
            valence: label.valence,
            window_still: window,
            efficiency: datum(label.efficiency),
            conductivity: datum(label.conductivity),
            cell_volts: datum(label.volts),
            home: Cited::new(Place::Conditions, OWN_WORD),
            class_use: Cited::new(Place::Conditions, OWN_WORD),
            home_note: notes::HOME_CONDITIONS,
            ..BLANK
        }
    }
}
