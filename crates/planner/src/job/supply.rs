//! The supply: what it can give and what its display can show.

use super::tree::{Node, Problems, Tagged, each, tagged, wrong_type};
use crate::fields;
use crate::path::FieldPath;
use crate::problem::{Accepted, Problem, ProblemKind};
use crate::value::Named;
use quantity::{Current, Mass, Quantity, Time, Voltage};
use serde::Serialize;
use serde_json::Value;

/// How the supply works.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Supply {
    /// Holds the current.
    ConstantCurrent(Bench),
    /// Holds the voltage; the current follows.
    ConstantVoltage(VoltBench),
    /// Holds whichever is reached first: set like a constant current under a ceiling.
    Both(Bench),
    /// A few settings only, each a current.
    FixedSettings(Vec<FixedSetting>),
}

/// A supply with a voltage setting.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct VoltBench {
    /// The lowest voltage it holds.
    #[serde(rename = "lowest_V", skip_serializing_if = "Option::is_none")]
    pub lowest: Option<Voltage>,
    /// The highest.
    #[serde(rename = "highest_V", skip_serializing_if = "Option::is_none")]
    pub highest: Option<Voltage>,
    /// The step of its display.
    #[serde(rename = "display_step_V", skip_serializing_if = "Option::is_none")]
    pub display_step: Option<Voltage>,
    /// The highest current it gives.
    #[serde(rename = "highest_A", skip_serializing_if = "Option::is_none")]
    pub highest_current: Option<Current>,
}

/// One of a supply's few settings. Its current is read from a meter in series, or from a weighed copper strip in series;
/// with neither it cannot be counted on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FixedSetting {
    /// Its mark on the supply.
    pub id: String,
    /// Its current.
    #[serde(rename = "current_A", skip_serializing_if = "Option::is_none")]
    pub current: Option<Current>,
    /// What a copper strip in an acid copper bath in series gained.
    #[serde(rename = "strip_gain_kg", skip_serializing_if = "Option::is_none")]
    pub strip_gain: Option<Mass>,
    /// In this time.
    #[serde(rename = "strip_time_s", skip_serializing_if = "Option::is_none")]
    pub strip_time: Option<Time>,
}

/// A bench supply with a current setting.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
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

/// The supply of a Job. A word alone is a supply of that kind whose figures are not known.
pub fn read(node: &mut Node<'_>, problems: &mut Problems) -> Option<Supply> {
    let at = node.path.child("supply");
    let value = node.get("supply")?;
    let words = ["constant_voltage", "both", "fixed_settings"];
    let groups = ["constant_current", words[0], words[1], words[2]];
    match tagged(value, &at, &words, &groups, problems)? {
        Tagged::Word("constant_voltage") => Some(Supply::ConstantVoltage(VoltBench::default())),
        Tagged::Word("both") => Some(Supply::Both(Bench::default())),
        Tagged::Word(_) => Some(Supply::FixedSettings(Vec::new())),
        Tagged::Group("fixed_settings", value, path) => fixed(value, &path, problems),
        Tagged::Group(kind, value, path) => {
            let mut n = Node::new(value, path, problems)?;
            let supply = match kind {
                "constant_voltage" => Supply::ConstantVoltage(VoltBench {
                    lowest: n.number(&fields::LOWEST_VOLTS, problems),
                    highest: n.number(&fields::HIGHEST_VOLTS, problems),
                    display_step: n.number(&fields::DISPLAY_STEP_VOLTS, problems),
                    highest_current: n.number(&fields::HIGHEST, problems),
                }),
                "both" => Supply::Both(bench(&mut n, problems)),
                _ => Supply::ConstantCurrent(bench(&mut n, problems)),
            };
            n.finish(problems);
            Some(supply)
        }
    }
}

fn bench(n: &mut Node<'_>, problems: &mut Problems) -> Bench {
    let mut bench = Bench {
        lowest: n.number(&fields::LOWEST, problems),
        highest: n.number(&fields::HIGHEST, problems),
        display_step: n.number(&fields::DISPLAY_STEP, problems),
        offset: n.number(&fields::OFFSET, problems),
        highest_volts: n.number(&fields::HIGHEST_VOLTS, problems),
    };
    problems.extend(upside_down(&mut bench, &n.path));
    bench
}

fn fixed(value: &Value, path: &FieldPath, problems: &mut Problems) -> Option<Supply> {
    let Some(items) = value.as_array() else {
        problems.push(wrong_type(path.clone(), value, "list"));
        return None;
    };
    let all = each(items, path, problems, |id, mut node, problems| {
        node.get("id");
        let setting = FixedSetting {
            id,
            current: node.number(&fields::CURRENT, problems),
            strip_gain: node.number(&fields::STRIP_GAIN, problems),
            strip_time: node.number(&fields::STRIP_TIME, problems),
        };
        node.finish(problems);
        Some(setting)
    });
    Some(Supply::FixedSettings(all))
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
