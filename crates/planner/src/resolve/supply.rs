//! The supply: what it can be set to.

use super::*;
use crate::job::VoltBench;
use chemistry::faraday;

impl Resolver<'_> {
    /// The supply as a current setting, as a voltage setting, and the few currents it has where it has no more.
    pub(super) fn supply(&mut self) -> (Option<Bench>, Option<VoltBench>, Vec<Current>) {
        match &self.job.supply {
            None => (None, None, Vec::new()),
            Some(Supply::ConstantCurrent(bench) | Supply::Both(bench)) => {
                (Some(bench.clone()), None, Vec::new())
            }
            Some(Supply::ConstantVoltage(volts)) => {
                let bench = Bench {
                    highest: volts.highest_current,
                    highest_volts: volts.highest,
                    ..Bench::default()
                };
                (Some(bench), Some(volts.clone()), Vec::new())
            }
            Some(Supply::FixedSettings(all)) => {
                let fixed = self.fixed(all);
                let bench = Bench {
                    lowest: fixed.first().copied(),
                    highest: fixed.last().copied(),
                    ..Bench::default()
                };
                (Some(bench), None, fixed)
            }
        }
    }

    /// The currents of a supply's few settings, lowest first; at least one must be known.
    fn fixed(&mut self, all: &[crate::job::FixedSetting]) -> Vec<Current> {
        let mut currents: Vec<Current> = all.iter().filter_map(current_of).collect();
        currents.sort_by(|a, b| a.si().total_cmp(&b.si()));
        if currents.is_empty() {
            let at = FieldPath::new("supply/fixed_settings");
            let at = all
                .first()
                .map_or(at.clone(), |s| at.child(&s.id).child("current"));
            if !self.problems.iter().any(|p| p.field.within("supply")) {
                self.stop(at, ProblemKind::Missing);
            } else {
                self.stopped_by.push(at);
            }
        }
        currents
    }

    pub(super) fn display(&mut self, bench: Option<&Bench>) -> Option<InputId> {
        let step = bench?.display_step?;
        let at = FieldPath::new("supply/constant_current/display_step");
        let spread = match self
            .job
            .spreads
            .iter()
            .any(|s| s.at == at && s.spread.si() == 0.0)
        {
            true => Spread::None,
            false => Spread::Uniform {
                half: step.si() / 2.0,
            },
        };
        Some(self.inputs.add(Input {
            at,
            likely: Current::from_si(0.0).into(),
            spread,
            origin: Origin::Given,
            bounds: (-f64::INFINITY, f64::INFINITY),
        }))
    }
}

/// The current of a setting: as metered, or by what a copper strip in series gained. At the pace of such a strip copper
/// takes all the charge (handbook practice: the copper coulometer).
fn current_of(setting: &crate::job::FixedSetting) -> Option<Current> {
    let weighed = || {
        let copper = chemistry::element::element_of("Cu")?;
        let per_charge = faraday::equivalent(copper.molar_mass.value, 2);
        Some(setting.strip_gain? / per_charge / setting.strip_time?)
    };
    setting.current.or_else(weighed)
}
