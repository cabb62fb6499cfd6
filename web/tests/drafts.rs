//! Several plans: nothing is written over, nothing is lost, everything can be taken back.

use std::rc::Rc;
use web::state::drafts::Act;
use web::state::{Action, State, at, demo, demos, sent};
use yew::Reducible;

fn begin() -> Rc<State> {
    Rc::new(State::new(demo::demo()))
}

fn act(state: Rc<State>, act: Act) -> Rc<State> {
    state.reduce(Action::Drafts(act))
}

fn typed(state: Rc<State>, address: &str, text: &str) -> Rc<State> {
    state.reduce(Action::Typed(address.to_owned(), text.to_owned()))
}

#[test]
fn an_example_opens_beside_what_was_there() {
    for id in demos::ids() {
        let mine = typed(begin(), at::COUNT, "5");
        let first = mine.book().open_id();
        let state = act(mine, Act::StartedFrom(id.to_owned()));
        assert_eq!(Some(&state.draft), demos::of(id).as_ref(), "{id}");
        let back = act(state.clone(), Act::Opened(first));
        assert_eq!(back.draft.text(at::COUNT), "5", "{id}");
        // Taking it back takes out what was made, and opens what was open.
        let undone = state.reduce(Action::Undid);
        assert_eq!(undone.book().count(), 1, "{id}");
        assert_eq!(undone.draft.text(at::COUNT), "5", "{id}");
    }
}

#[test]
fn a_new_plan_keeps_the_supply() {
    let mine = typed(begin(), at::HIGHEST, "1.5");
    let state = act(typed(mine, at::COUNT, "7"), Act::Began);
    assert_eq!(state.draft.text(at::HIGHEST), "1.5");
    assert_eq!(state.draft.text(at::COUNT), "2");
}

#[test]
fn a_plan_taken_out_comes_back_with_everything_in_it() {
    let state = act(begin(), Act::Copied);
    let state = typed(state, at::HANGER_WET, "1,5 c");
    let gone = state.book().open_id();
    let state = act(state, Act::Removed(gone));
    assert_eq!(state.book().count(), 1);
    let state = state.reduce(Action::Undid);
    assert_eq!(state.book().open_id(), gone);
    assert_eq!(state.draft.text(at::HANGER_WET), "1,5 c");
    // The last one cannot be taken out.
    let alone = begin();
    let same = act(alone.clone(), Act::Removed(alone.book().open_id()));
    assert_eq!(same.book().count(), 1);
}

#[test]
fn undo_stays_within_the_open_plan() {
    let state = typed(begin(), at::COUNT, "5");
    let first = state.book().open_id();
    let state = act(state, Act::Began);
    let second = state.book().open_id();
    let state = typed(state, at::COUNT, "9");
    let state = act(state, Act::Opened(first)).reduce(Action::Undid);
    assert_eq!(state.draft.text(at::COUNT), "2");
    let state = act(state, Act::Opened(second));
    assert_eq!(state.draft.text(at::COUNT), "9");
}

#[test]
fn a_plan_that_was_sent_opens_as_it_was_typed() {
    let mine = begin()
        .reduce(Action::PieceRepeated("p1".to_owned()))
        .reduce(Action::Picked(
            "pieces/p2/extent".to_owned(),
            "leaf".to_owned(),
        ));
    let mine = typed(mine, "pieces/p2/label", "fern, \"left\"");
    let mine = typed(mine, at::VOLUME, "2,0 L");
    let mine = typed(mine, &at::spread(at::SHAPE), "7");
    let text = sent::text_of(mine.book().open().expect("an open plan"));
    let taken = sent::read(&text).expect("a plan");
    assert_eq!(taken.remarks, []);
    let theirs = act(begin(), Act::Took(taken.named));
    assert_eq!(theirs.draft.texts, mine.draft.texts);
    assert_eq!(theirs.book().count(), 2);
}
