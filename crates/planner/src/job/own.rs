//! Metals and solutions of the person's own. They stand inside the Job, never in the catalogue.

use super::tree::{Node, Problems, each};
use crate::fields;
use crate::problem::{Problem, ProblemKind};
use chemistry::Process;
use quantity::{Conductivity, CurrentDensity, Density, Fraction, MassPerCharge, Voltage};
use serde::Serialize;

/// The person's own metals and solutions.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct Own {
    /// Metals and alloys.
    pub metals: Vec<OwnAlloy>,
    /// Solutions.
    pub solutions: Vec<OwnSolution>,
}

impl Own {
    /// Whether there is nothing of the kind.
    pub fn is_empty(&self) -> bool {
        self.metals.is_empty() && self.solutions.is_empty()
    }
}

/// A metal or an alloy, by its elements.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnAlloy {
    /// Its id within the Job.
    pub id: String,
    /// Its density.
    #[serde(rename = "density_kg_per_m3")]
    pub density: Density,
    /// Its elements.
    pub parts: Vec<OwnPart>,
}

/// An element of an alloy.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnPart {
    /// The element.
    pub id: String,
    /// Its share of the mass.
    #[serde(rename = "share_frac")]
    pub share: Fraction,
    /// Charges per atom.
    #[serde(rename = "valence_count")]
    pub valence: u32,
}

/// A solution from its bottle's label.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnSolution {
    /// Its id within the Job.
    pub id: String,
    /// What it is used for.
    pub process: Process,
    /// The element or alloy it lays down or takes away.
    pub metal: String,
    /// Charges per atom of it; the usual one where it is left out.
    #[serde(rename = "valence_count", skip_serializing_if = "Option::is_none")]
    pub valence: Option<u32>,
    /// The density to use.
    #[serde(rename = "density_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub density: Option<CurrentDensity>,
    /// The highest density.
    #[serde(rename = "highest_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub highest: Option<CurrentDensity>,
    /// Share of the charge that moves metal.
    #[serde(rename = "efficiency_frac", skip_serializing_if = "Option::is_none")]
    pub efficiency: Option<Fraction>,
    /// What a charge really moves, `mg per A min` on a label: the efficiency counted in.
    #[serde(rename = "moves_kg_per_C", skip_serializing_if = "Option::is_none")]
    pub moves: Option<MassPerCharge>,
    /// Conductivity.
    #[serde(
        rename = "conductivity_S_per_m",
        skip_serializing_if = "Option::is_none"
    )]
    pub conductivity: Option<Conductivity>,
    /// Volts of the whole cell.
    #[serde(rename = "volts_V", skip_serializing_if = "Option::is_none")]
    pub volts: Option<Voltage>,
}

/// The person's own metals and solutions of a Job.
pub fn read(node: &mut Node<'_>, problems: &mut Problems) -> Own {
    let Some(mut n) = node.group("own", problems) else {
        return Own::default();
    };
    let own = Own {
        metals: each(
            n.list("metals", problems),
            &n.path.child("metals"),
            problems,
            metal,
        ),
        solutions: each(
            n.list("solutions", problems),
            &n.path.child("solutions"),
            problems,
            solution,
        ),
    };
    n.finish(problems);
    own
}

fn metal(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<OwnAlloy> {
    node.get("id");
    let density = node.needed(&fields::OWN_DENSITY, problems);
    let given = node.list("parts", problems);
    let at = node.path.child("parts");
    let parts = each(given, &at, problems, part);
    if given.is_empty() {
        problems.push(Problem::at(at, ProblemKind::Missing));
    }
    node.finish(problems);
    // With a part missing the rest would count for the whole.
    (parts.len() == given.len() && !parts.is_empty()).then_some(OwnAlloy {
        id,
        density: density?,
        parts,
    })
}

fn part(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<OwnPart> {
    node.get("id");
    let share = node.needed(&fields::OWN_SHARE, problems);
    let valence = node.count(&fields::VALENCE, 2, problems);
    node.finish(problems);
    Some(OwnPart {
        id,
        share: share?,
        valence: valence?,
    })
}

/// The words for what a solution is used for.
pub const PROCESSES: [(&str, Process); 3] = [
    ("electroform", Process::Electroform),
    ("electroplate", Process::Electroplate),
    ("etch", Process::Etch),
];

fn solution(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<OwnSolution> {
    node.get("id");
    let process = node.word("process", &PROCESSES, problems);
    if !node.has("process") {
        problems.push(
            Problem::at(node.path.child("process"), ProblemKind::Missing)
                .one_of(PROCESSES.map(|(word, _)| word)),
        );
    }
    let metal = node.needed_text("metal", problems);
    let valence = if node.has(fields::VALENCE.key) {
        node.count(&fields::VALENCE, 1, problems)
    } else {
        None
    };
    let own = OwnSolution {
        id,
        process: process.unwrap_or(Process::Electroplate),
        metal: metal.clone().unwrap_or_default(),
        valence,
        density: node.number(&fields::DENSITY, problems),
        highest: node.number(&fields::OWN_HIGHEST, problems),
        efficiency: node.number(&fields::OWN_EFFICIENCY, problems),
        moves: node.number(&fields::MOVES, problems),
        conductivity: node.number(&fields::OWN_CONDUCTIVITY, problems),
        volts: node.number(&fields::OWN_VOLTS, problems),
    };
    node.finish(problems);
    process.and(metal).map(|_| own)
}
