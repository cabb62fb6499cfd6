//! What went wrong with a run, from the draft.

use super::{FIRST, Reader};
use crate::state::at;
use crate::state::draft::Draft;
use planner::after::{Accident, After};
use planner::job::{FORMAT, Until};
use planner::{Job, Process, fields};

/// What went wrong, and how it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Happened {
    /// The question; none while something it needs is not said.
    pub after: Option<After>,
    /// The address of what is not said yet.
    pub waits_for: Option<&'static str>,
    /// Whether a last good entry stands in for one that cannot be read.
    pub stands_in: bool,
}

/// The step it happened in: the one picked where the job has it, else the growing.
pub fn step_of<'a>(draft: &'a Draft, job: &'a Job) -> Option<&'a str> {
    let picked = draft.text(at::HAPPENED_IN);
    let has = |id: &&str| job.steps.iter().any(|s| s.id == *id);
    [picked, FIRST].into_iter().find(has)
}

/// Reads what went wrong with a job.
pub fn happened(draft: &Draft, job: &Job) -> Happened {
    let mut r = Reader::of(draft);
    let after = r.number(&fields::AFTER, at::HAPPENED_AT);
    let step = step_of(draft, job);
    let what = r.accident(job, step);
    let waits_for = match (after, &what) {
        (None, _) => Some(at::HAPPENED_AT),
        (_, Err(address)) => Some(*address),
        _ => None,
    };
    let mut job = job.clone();
    // When it goes on is not said: only an aim by the clock needs a time of day.
    let by_clock = |s: &planner::job::Step| matches!(s.until, Some(Until::Clock(_)));
    if draft.text(at::START).trim().is_empty() || !job.steps.iter().any(by_clock) {
        job.start = None;
    }
    let asked = after.zip(what.ok()).zip(step.map(str::to_owned));
    Happened {
        after: asked.map(|((at, what), step)| After {
            format: FORMAT,
            job,
            step,
            at,
            what,
        }),
        waits_for,
        stands_in: r.stands_in,
    }
}

impl Reader<'_> {
    /// What happened, or the address of what is not said.
    fn accident(&mut self, job: &Job, step: Option<&str>) -> Result<Accident, &'static str> {
        // Nothing grows in an etch that could be filed off or go back.
        let what = match self.process() {
            Process::Etch => "",
            _ => self.draft.text(at::HAPPENED),
        };
        match what {
            "reversed" => {
                let current = self.number(&fields::CURRENT, at::REVERSED_CURRENT);
                let lasted = self.number(&fields::REVERSED, at::REVERSED_FOR);
                let lasted = lasted.ok_or(at::REVERSED_FOR)?;
                Ok(Accident::Reversed { lasted, current })
            }
            "filed" => {
                let mass = self.number(&fields::FILED, at::FILED_MASS);
                let area = self.number(&fields::FILED_BARE, at::FILED_AREA);
                if mass.is_none() && area.is_none() {
                    return Err(at::FILED_MASS);
                }
                let picked = self.draft.text(at::FILED_PIECE);
                let here = job.steps.iter().filter(|s| Some(s.id.as_str()) == step);
                let mut hung = here.flat_map(|s| &s.places).flat_map(|p| &p.pieces);
                let piece = hung.find(|id| *id == picked).cloned();
                Ok(Accident::Filed { piece, mass, area })
            }
            _ => Ok(Accident::PowerCut {
                gap: self.number(&fields::GAP, at::GAP),
            }),
        }
    }
}
