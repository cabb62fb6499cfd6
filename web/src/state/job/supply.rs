//! The supply.

use super::Reader;
use crate::state::at;
use planner::job::supply::{FixedSetting, VoltBench};
use planner::job::{Bench, Supply};
use planner::{FieldPath, fields};

/// The ids of a supply's few settings.
pub const SETTINGS: [&str; 6] = ["f1", "f2", "f3", "f4", "f5", "f6"];

impl Reader<'_> {
    pub(super) fn supply(&mut self) -> Supply {
        match self.draft.text(at::SUPPLY) {
            "constant_voltage" => self.holds_volts(),
            "fixed_settings" => self.few_settings(),
            _ => self.holds_current(),
        }
    }

    fn holds_volts(&mut self) -> Supply {
        Supply::ConstantVoltage(VoltBench {
            lowest: self.number(&fields::LOWEST_VOLTS, at::VOLTS_LOWEST),
            highest: self.number(&fields::HIGHEST_VOLTS, at::VOLTS_HIGHEST),
            display_step: self.number(&fields::DISPLAY_STEP_VOLTS, at::VOLTS_STEP),
            highest_current: self.number(&fields::HIGHEST, at::VOLTS_CURRENT),
        })
    }

    /// The settings that anything is known of.
    fn few_settings(&mut self) -> Supply {
        let mut all = Vec::new();
        for id in SETTINGS {
            let setting = FixedSetting {
                id: id.to_owned(),
                current: self.number(&fields::CURRENT, &at::setting(at::FIXED_CURRENT, id)),
                strip_gain: self.number(&fields::STRIP_GAIN, &at::setting(at::FIXED_GAIN, id)),
                strip_time: self.number(&fields::STRIP_TIME, &at::setting(at::FIXED_TIME, id)),
            };
            let known = setting.current.is_some() || setting.strip_gain.is_some();
            if known || all.is_empty() {
                all.push(setting);
            }
        }
        Supply::FixedSettings(all)
    }

    fn holds_current(&mut self) -> Supply {
        let mut bench = Bench {
            lowest: self.number(&fields::LOWEST, at::LOWEST),
            highest: self.number(&fields::HIGHEST, at::HIGHEST),
            display_step: self.number(&fields::DISPLAY_STEP, at::DISPLAY_STEP),
            offset: self.number(&fields::OFFSET, at::OFFSET),
            highest_volts: self.number(&fields::HIGHEST_VOLTS, at::VOLTS),
        };
        self.problems.extend(planner::job::supply::upside_down(
            &mut bench,
            &FieldPath::new("supply/constant_current"),
        ));
        Supply::ConstantCurrent(bench)
    }
}
