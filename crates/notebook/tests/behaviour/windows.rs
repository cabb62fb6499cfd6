//! Several windows on one shelf.

use crate::support::{Memory, plain, typed};
use notebook::{Book, Change, DraftId, Keeper, Named, Shelf};
use proptest::prelude::*;
use std::collections::BTreeSet;

const COUNT: &str = "pieces/p1/count";

/// A window: its book, its keeper, and what a page does with changes.
struct Window<'a> {
    shelf: &'a Memory,
    keeper: Keeper,
    book: Book,
}

impl<'a> Window<'a> {
    fn open(shelf: &'a Memory) -> Self {
        let (keeper, book, _) = Keeper::load(shelf, None, || plain("first"));
        let mut window = Self {
            shelf,
            keeper,
            book,
        };
        window.keep();
        window
    }

    fn apply(&mut self, changes: Vec<Change>) {
        for change in changes {
            match change {
                Change::Theirs(id, named) => self.book.put(id, named),
                Change::Gone(id) => {
                    self.book.remove(id);
                }
                Change::Parted { from, to, theirs } => {
                    let mine = self.book.get(from).cloned().expect("mine");
                    self.book.put(to, mine);
                    if self.book.open_id() == from {
                        self.book.turn_to(to);
                    }
                    match theirs {
                        Some(theirs) => self.book.put(from, theirs),
                        None => {
                            self.book.remove(from);
                        }
                    }
                }
            }
        }
    }

    fn keep(&mut self) {
        let kept = self.keeper.keep(self.shelf, &self.book);
        assert_eq!(kept.stored, Ok(()));
        self.apply(kept.changes);
    }

    fn look(&mut self) {
        let kept = self.keeper.look(self.shelf, &self.book);
        assert_eq!(kept.stored, Ok(()));
        self.apply(kept.changes);
    }

    fn type_in(&mut self, text: &str) {
        let id = self.book.open_id();
        let mut named = self.book.open().cloned().expect("one is open");
        std::rc::Rc::make_mut(&mut named.draft).put(COUNT, text, true);
        self.book.put(id, named);
        self.keep();
    }

    fn count(&self) -> &str {
        self.book.open().map_or("", |n| n.draft.text(COUNT))
    }
}

fn on_the_shelf(shelf: &Memory) -> BTreeSet<String> {
    let (_, book, _) = Keeper::load(shelf, None, || plain(""));
    book.iter()
        .map(|(_, n)| n.draft.text(COUNT).to_owned())
        .collect()
}

#[test]
fn a_window_that_looks_sees_what_the_other_typed() {
    let shelf = Memory::default();
    let mut a = Window::open(&shelf);
    let mut b = Window::open(&shelf);
    b.type_in("5");
    a.look();
    assert_eq!(a.count(), "5");
    a.type_in("6");
    assert_eq!(a.book.count(), 1, "one draft still");
    b.look();
    assert_eq!(b.count(), "6");
}

#[test]
fn two_windows_typing_in_one_draft_unseen_each_keep_theirs() {
    let shelf = Memory::default();
    let mut a = Window::open(&shelf);
    let mut b = Window::open(&shelf);
    b.type_in("5");
    a.type_in("7");
    assert_eq!(a.count(), "7");
    assert_eq!(on_the_shelf(&shelf), ["5", "7"].map(str::to_owned).into());
    // From here on each has its own: no third draft, however often they type.
    for n in 10..20 {
        a.type_in(&format!("a{n}"));
        b.type_in(&format!("b{n}"));
    }
    assert_eq!(
        on_the_shelf(&shelf),
        ["a19", "b19"].map(str::to_owned).into()
    );
}

#[test]
fn two_windows_making_a_draft_at_once_make_two() {
    let shelf = Memory::default();
    let mut a = Window::open(&shelf);
    let mut b = Window::open(&shelf);
    for (window, count) in [(&mut a, "11"), (&mut b, "12")] {
        let id = window.book.add(typed("new", COUNT, count));
        window.book.turn_to(id);
        window.keep();
    }
    assert_eq!(
        on_the_shelf(&shelf),
        ["2", "11", "12"].map(str::to_owned).into()
    );
    assert_eq!((a.count(), b.count()), ("11", "12"));
}

#[test]
fn taken_out_elsewhere_it_stays_where_it_is_open_and_comes_back_when_typed_in() {
    let shelf = Memory::default();
    let mut a = Window::open(&shelf);
    let second = a.book.add(typed("second", COUNT, "4"));
    a.book.turn_to(second);
    a.keep();
    let mut b = Window::open(&shelf);
    assert!(b.book.remove(second).is_some());
    b.keep();
    assert_eq!(shelf.load("ionwright.draft.d2"), None);
    a.look();
    assert_eq!(a.count(), "4");
    a.type_in("40");
    b.look();
    assert_eq!(b.book.get(second).map(|n| n.draft.text(COUNT)), Some("40"));
}

#[test]
fn taken_out_here_and_changed_there_it_stays() {
    let shelf = Memory::default();
    let mut a = Window::open(&shelf);
    let second = a.book.add(typed("second", COUNT, "4"));
    a.keep();
    let mut b = Window::open(&shelf);
    b.book.turn_to(second);
    b.type_in("41");
    assert!(a.book.remove(second).is_some());
    a.keep();
    assert_eq!(a.book.get(second).map(|n| n.draft.text(COUNT)), Some("41"));
}

#[test]
fn what_a_newer_page_wrote_meanwhile_is_left_alone_and_mine_goes_beside_it() {
    let shelf = Memory::default();
    let mut a = Window::open(&shelf);
    let newer = "{\"format\":2,\"all\":\"new\"}";
    let _ = shelf.save("ionwright.draft.d1", newer);
    a.type_in("3");
    assert_eq!(shelf.load("ionwright.draft.d1").as_deref(), Some(newer));
    assert_eq!(a.count(), "3");
    assert_eq!(on_the_shelf(&shelf), ["3".to_owned()].into());
}

/// What a person does in one of two windows.
#[derive(Clone, Debug)]
enum Act {
    Type,
    New,
    Turn(usize),
    Remove(usize),
    Look,
    Reload,
}

fn act() -> impl Strategy<Value = (bool, Act)> {
    let what = prop_oneof![
        6 => Just(Act::Type),
        1 => Just(Act::New),
        2 => (0_usize..9).prop_map(Act::Turn),
        1 => (0_usize..9).prop_map(Act::Remove),
        2 => Just(Act::Look),
        1 => Just(Act::Reload),
    ];
    (any::<bool>(), what)
}

fn stamps(named: &Named) -> Vec<String> {
    let text = named.draft.text(COUNT);
    text.split(',').map(str::to_owned).collect()
}

proptest! {
    // Every stamp typed in any window stands in a draft on the shelf, unless a window that saw it took that draft out.
    #[test]
    fn nothing_typed_is_ever_lost(acts in prop::collection::vec(act(), 1..60)) {
        let shelf = Memory::default();
        let mut windows = [Window::open(&shelf), Window::open(&shelf)];
        let mut wanted: BTreeSet<String> = BTreeSet::new();
        for (n, (second, act)) in acts.into_iter().enumerate() {
            let window = &mut windows[usize::from(second)];
            let pick = |book: &Book, k: usize| -> Option<DraftId> {
                book.iter().nth(k % book.count()).map(|(id, _)| id)
            };
            match act {
                Act::Type => {
                    let text = format!("{},t{n}", window.count());
                    window.type_in(&text);
                    wanted.insert(format!("t{n}"));
                }
                Act::New => {
                    let id = window.book.add(plain("new"));
                    window.book.turn_to(id);
                    window.keep();
                }
                Act::Turn(k) => {
                    let id = pick(&window.book, k);
                    window.book.turn_to(id.expect("one"));
                    window.keep();
                }
                Act::Remove(k) => {
                    let id = pick(&window.book, k).expect("one");
                    if let Some(named) = window.book.remove(id) {
                        for stamp in stamps(&named) {
                            wanted.remove(&stamp);
                        }
                    }
                    window.keep();
                }
                Act::Look => window.look(),
                Act::Reload => *window = Window::open(&shelf),
            }
            let (_, all, _) = Keeper::load(&shelf, None, || plain(""));
            let there: BTreeSet<String> = all.iter().flat_map(|(_, n)| stamps(n)).collect();
            prop_assert!(wanted.is_subset(&there), "{wanted:?} in {there:?}");
        }
        // Looking comes to rest: both see the same, but for one that is open here and was taken out there.
        for _ in 0..2 {
            for window in &mut windows {
                window.look();
            }
        }
        for window in &mut windows {
            prop_assert!(window.keeper.look(&shelf, &window.book).changes.is_empty());
        }
    }
}
