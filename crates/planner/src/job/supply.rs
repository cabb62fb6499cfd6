//! The supply: what it can give and what its display can show.

use super::tree::{Node, Problems, Tagged, tagged};
use crate::fields;
use crate::problem::{Accepted, Problem, ProblemKind};
use crate::value::Named;
use quantity::{Current, Quantity, Voltage};
use serde::Serialize;

/// How the supply works.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Supply {
    /// Holds the current.
    ConstantCurrent(Bench),
    /// Holds the voltage.
    ConstantVoltage,
    /// Holds whichever is reached first.
    Both,
    /// A few settings only.
    FixedSettings,
}

/// A bench supply with a current setting.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bench {
    /// The lowest current it holds.
    #[serde(rename = "lowest_A", skip_serializing_if = "Option::is_none")]
    pub lowest: Option<Current>,
    /// The highest current it gives.
    #[serde(rename = "highest_A", skip_serializing_if = "Option::is_none")]
    pub highest: Option<Current>,
    /// The step of its display; without one any current can be set.
    #[serde(rename = "display_step_A", skip_serializing_if = "Option::is_none")]
    pub display_step: Option<Current>,
    /// Real current less the shown one.
    #[serde(rename = "offset_A", skip_serializing_if = "Option::is_none")]
    pub offset: Option<Current>,
    /// The highest voltage it gives.
    #[serde(rename = "highest_V", skip_serializing_if = "Option::is_none")]
    pub highest_volts: Option<Voltage>,
}

/// The supply of a Job.
pub fn read(node: &mut Node<'_>, problems: &mut Problems) -> Option<Supply> {
    let at = node.path.child("supply");
    let value = node.get("supply")?;
    let words = ["constant_voltage", "both", "fixed_settings"];
    match tagged(value, &at, &words, &["constant_current"], problems)? {
        Tagged::Word("constant_voltage") => Some(Supply::ConstantVoltage),
        Tagged::Word("both") => Some(Supply::Both),
        Tagged::Word(_) => Some(Supply::FixedSettings),
        Tagged::Group(_, value, path) => {
            let mut n = Node::new(value, path, problems)?;
            let mut bench = Bench {
                lowest: n.number(&fields::LOWEST, problems),
                highest: n.number(&fields::HIGHEST, problems),
                display_step: n.number(&fields::DISPLAY_STEP, problems),
                offset: n.number(&fields::OFFSET, problems),
                highest_volts: n.number(&fields::HIGHEST_VOLTS, problems),
            };
            problems.extend(upside_down(&mut bench, &n.path));
            n.finish(problems);
            Some(Supply::ConstantCurrent(bench))
        }
    }
}

/// A lowest current above the highest: both are set aside, the job is answered as if neither were known. A display step
/// above the highest current is set aside likewise.
pub fn upside_down(bench: &mut Bench, path: &crate::path::FieldPath) -> Option<Problem> {
    let highest = bench.highest?;
    let Some(lowest) = bench.lowest.filter(|l| l.si() > highest.si()) else {
        let step = bench.display_step.filter(|s| s.si() > highest.si())?;
        bench.display_step = None;
        return Some(
            Problem::at(
                path.child(fields::DISPLAY_STEP.name()),
                ProblemKind::Contradiction,
            )
            .reading(step.si().to_string())
            .accepting(Accepted::Between {
                least: Named::new("least", fields::DISPLAY_STEP.least),
                most: Named::new("most", highest),
            }),
        );
    };
    bench.lowest = None;
    bench.highest = None;
    Some(
        Problem::at(
            path.child(fields::LOWEST.name()),
            ProblemKind::Contradiction,
        )
        .reading(lowest.si().to_string())
        .accepting(Accepted::Between {
            least: Named::new("least", fields::LOWEST.least),
            most: Named::new("most", highest),
        }),
    )
}
