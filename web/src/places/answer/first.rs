//! The first two minutes at the bench, in order, with this job's own numbers.

use super::Shown;
use crate::parts::Fold;
use crate::parts::list::items;
use crate::words;
use yew::prelude::*;

impl Shown {
    /// What to do, in order; nothing where no current is known.
    fn first_minutes(&self) -> Vec<String> {
        let (Some(step), Some(setting)) = (self.answer.steps.first(), self.now()) else {
            return Vec::new();
        };
        let current = self.current(setting.set);
        let ceiling = step.ceiling.known();
        let mut all = vec![
            words::leads(step.work_lead).to_owned(),
            words::set_ceiling(ceiling.map(|c| c.set)),
        ];
        all.extend(step.socket.map(|s| words::meter(s).to_owned()));
        all.push(words::set_current(&current));
        all.extend(step.entry.map(|e| words::entry(e).to_owned()));
        all.push(words::first_minute(&current, ceiling.map(|c| &c.expected)));
        if self.covers(step) {
            all.push(words::COVERS.to_owned());
        }
        all
    }
}

/// Folded, since who has done it before knows; on paper it is open.
pub fn first(shown: &Shown) -> Html {
    let lines = shown.first_minutes();
    if lines.is_empty() {
        return Html::default();
    }
    let body = Callback::from(move |_| html! { <ol>{ items(&lines) }</ol> });
    html! { <Fold id="first" title={words::FIRST} {body} /> }
}
