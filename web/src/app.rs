//! The whole page: one owner of state at the top, one direction.

use crate::browser::{use_countdown, use_gone, use_now, use_settled};
use crate::places::answer::Shown;
use crate::places::emergency::Emergency;
use crate::places::plan::{Ask, Plan, core};
use crate::places::top::Top;
use crate::state::draft::Unread;
use crate::state::{State, demo, job};
use crate::storage::{self, Found, LocalShelf, NoShelf, Shelf, ShelfProblem};
use crate::words;
use planner::{Catalogue, answer};
use quantity::Current;
use std::rc::Rc;
use yew::prelude::*;

/// The page.
#[component]
pub fn App() -> Html {
    let shelf: Rc<Option<LocalShelf>> = use_memo((), |()| LocalShelf::open());
    let found: Rc<Found> = {
        let shelf = shelf.clone();
        use_memo((), move |()| storage::load(shelf_of(&shelf)))
    };
    let state = {
        let found = found.clone();
        use_reducer_eq(move || {
            State::new(found.draft.clone().map_or_else(demo::demo, demo::complete))
        })
    };
    let now = use_now();
    let read = use_memo((state.draft.clone(), now), |(draft, now)| {
        job::read(draft, now.as_deref())
    });
    let worked = use_memo(read.job.clone(), |job| {
        Rc::new(answer(&Catalogue::standard(), job))
    });
    let kept = use_state_eq(|| Ok::<(), ShelfProblem>(()));
    {
        let (shelf, kept) = (shelf.clone(), kept.clone());
        use_effect_with(state.draft.clone(), move |draft| {
            kept.set(storage::save(shelf_of(&shelf), draft))
        });
    }
    let emergency = use_state_eq(|| false);
    let set_emergency = |open: bool| {
        let emergency = emergency.clone();
        Callback::from(move |()| emergency.set(open))
    };
    let (rinse, onrinse) = use_countdown(words::RINSE);
    let rinse = rinse.map(|left| AttrValue::from(words::rinse(left)));
    let head = use_node_ref();
    let gone = use_gone(head.clone());
    let act = {
        let state = state.clone();
        use_callback((), move |action, ()| state.dispatch(action))
    };
    let shown = Shown {
        answer: (*worked).clone(),
        stands_in: read.stands_in,
        display: display_step(&read.job),
        start: read.job.start.clone(),
        core: core(&state),
        labels: read.job.pieces.iter().map(|p| p.label.clone()).collect(),
    };
    let parts = shown.in_a_line();
    let said = use_settled(parts.join(", "));
    let ask = Ask {
        state: Rc::new((*state).clone()),
        act,
        problems: Rc::new(read.problems.clone()),
    };
    let shelf_note = match *kept {
        Ok(()) => None,
        Err(ShelfProblem::Refused) => Some(AttrValue::from(words::NO_SHELF)),
        Err(ShelfProblem::Full) => Some(AttrValue::from(words::SHELF_FULL)),
    };
    let aside = found.aside.as_ref().map(|(text, why)| {
        let why = match why {
            Unread::Newer => words::SET_ASIDE_NEWER,
            Unread::NotADraft => words::SET_ASIDE,
        };
        (AttrValue::from(why), AttrValue::from(text.clone()))
    });
    html! {
        <>
            <Top {parts} strip={gone} stands_in={shown.stands_in} rinse={rinse.clone()} onemergency={set_emergency(true)} />
            <Plan {ask} {shown} {head} {shelf_note} {aside} />
            <p class="unseen" role="status" aria-live="polite">{ said }</p>
            if *emergency {
                <Emergency {rinse} {onrinse} onclose={set_emergency(false)} />
            }
        </>
    }
}

fn shelf_of(shelf: &Option<LocalShelf>) -> &dyn Shelf {
    match shelf {
        Some(shelf) => shelf,
        None => &NoShelf,
    }
}

/// The step of the supply's display.
fn display_step(job: &planner::Job) -> Option<Current> {
    match &job.supply {
        Some(planner::job::Supply::ConstantCurrent(bench)) => bench.display_step,
        _ => None,
    }
}
