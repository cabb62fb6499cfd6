//! The whole page: one owner of state at the top, one direction.

use crate::browser::{carried, use_countdown, use_gone, use_now, use_painted, use_settled};
use crate::places::answer::{Shown, display_step};
use crate::places::ask::Ask;
use crate::places::edition::Edition;
use crate::places::emergency::Emergency;
use crate::places::plan::{Plan, core};
use crate::places::top::Top;
use crate::state::draft::Unread;
use crate::state::drafts::Act;
use crate::state::units::Units;
use crate::state::{Action, State, at, job, pieces};
use crate::storage::{self, Found, LocalShelf, NoShelf, Shelf, ShelfProblem, use_elsewhere};
use crate::words::{self, number};
use planner::{Answer, Catalogue, FieldPath, Job, Problem, ProblemKind, answer};
use quantity::print::Mark;
use std::rc::Rc;
use yew::prelude::*;

/// The page.
#[component]
pub fn App() -> Html {
    let shelf: Rc<Option<LocalShelf>> = use_memo((), |()| LocalShelf::open());
    let found: Rc<Found> = {
        let shelf = shelf.clone();
        use_memo((), move |()| {
            let copy = carried();
            storage::load(shelf_of(&shelf), storage::last_open(), copy.as_deref())
        })
    };
    let state = {
        let found = found.clone();
        use_reducer_eq(move || State::of(found.book.clone()))
    };
    let keeper = {
        let found = found.clone();
        use_mut_ref(move || found.keeper.clone())
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
        let (shelf, kept, keeper, state) =
            (shelf.clone(), kept.clone(), keeper.clone(), state.clone());
        use_painted(state.book().clone(), move |book| {
            let done = keeper.borrow_mut().keep(shelf_of(&shelf), book);
            storage::remember_open(book.open_id());
            kept.set(done.stored);
            if !done.changes.is_empty() {
                state.dispatch(Action::Drafts(Act::Found(done.changes)));
            }
        });
    }
    let elsewhere = use_elsewhere();
    {
        let (shelf, state) = (shelf.clone(), state.clone());
        use_effect_with(elsewhere, move |_| {
            let done = keeper.borrow_mut().look(shelf_of(&shelf), state.book());
            if !done.changes.is_empty() {
                state.dispatch(Action::Drafts(Act::Found(done.changes)));
            }
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
    let preferred = state.draft.text(at::DECIMAL) == "comma";
    let mark = if preferred { Mark::Comma } else { Mark::Point };
    let units = Units::of(&state.draft);
    // Before anything is drawn.
    number::print_in(units, mark);
    let job = use_memo(read.job.clone(), Clone::clone);
    let act = {
        let state = state.clone();
        use_callback((), move |action, ()| state.dispatch(action))
    };
    let shown = Shown {
        answer: without_idle(&worked, &read.job),
        stands_in: read.stands_in,
        display: display_step(&read.job),
        start: read.job.start.clone(),
        core: core(&state),
        names: pieces::names(&state.draft, read.job.pieces.iter().map(|p| p.id.as_str())),
        baths: baths(&read.job),
        printed: number::printed(),
    };
    let parts = shown.in_a_line();
    // For those who listen: no keystroke is read out.
    let said = use_settled(String::new, parts.join(", "), 1200);
    let ask = Ask {
        state: Rc::new((*state).clone()),
        act,
        problems: Rc::new(read.problems.clone()),
        answer: (*worked).clone(),
        piece: AttrValue::from("p1"),
        step: AttrValue::from("s2"),
    };
    let shelf_note = match *kept {
        Ok(()) => None,
        Err(ShelfProblem::Refused) => Some(AttrValue::from(words::NO_SHELF)),
        Err(ShelfProblem::Full) => Some(AttrValue::from(words::SHELF_FULL)),
    };
    let aside = found.aside.iter().map(|aside| {
        let why = match aside.why {
            Unread::Newer => words::SET_ASIDE_NEWER,
            Unread::NotADraft => words::SET_ASIDE,
        };
        (AttrValue::from(why), AttrValue::from(aside.text.clone()))
    });
    let aside: Vec<_> = aside.collect();
    html! {
        <>
            <Top {parts} strip={gone} stands_in={shown.stands_in} rinse={rinse.clone()} onemergency={set_emergency(true)} />
            <Plan {ask} {job} {shown} {head} {shelf_note} {aside} />
            <p class="unseen" role="status" aria-live="polite">{ said }</p>
            <Edition kept={kept.is_ok()} />
            if *emergency {
                <Emergency {rinse} {onrinse} onclose={set_emergency(false)} />
            }
        </>
    }
}

/// An own value or a spread of something that this job does not use stays typed and says nothing.
fn without_idle(worked: &Rc<Answer>, job: &Job) -> Rc<Answer> {
    let own = |at: &FieldPath| {
        job.spreads.iter().any(|s| s.at == *at) || job.assume.iter().any(|a| a.at == *at)
    };
    let idle = |p: &Problem| p.kind == ProblemKind::UnknownId && own(&p.field);
    if !worked.problems.iter().any(idle) {
        return worked.clone();
    }
    let mut answer = (**worked).clone();
    answer.problems.retain(|p| !idle(p));
    Rc::new(answer)
}

fn shelf_of(shelf: &Option<LocalShelf>) -> &dyn Shelf {
    match shelf {
        Some(shelf) => shelf,
        None => &NoShelf,
    }
}

/// The solution of each step, in words.
fn baths(job: &Job) -> Vec<(String, String)> {
    let bath = |id: &str| job.baths.iter().find(|b| b.id == id);
    let of = |s: &planner::job::Step| {
        let bath = s.places.first().and_then(|p| bath(&p.bath));
        let said = bath.map_or("", |b| words::solution(&b.solution));
        (s.id.clone(), said.to_owned())
    };
    job.steps.iter().map(of).collect()
}
