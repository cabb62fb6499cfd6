//! One window and its shelf.

use crate::support::{Memory, base, plain, typed};
use notebook::{Book, DraftId, Keeper, Shelf, ShelfProblem, Unread};

const COUNT: &str = "pieces/p1/count";

fn id(text: &str) -> DraftId {
    DraftId::read(text).expect("an id")
}

fn load(shelf: &Memory) -> (Keeper, Book, Vec<notebook::Aside>) {
    Keeper::load(shelf, None, || plain("first"))
}

#[test]
fn an_empty_shelf_gives_one_draft_and_it_is_kept() {
    let shelf = Memory::default();
    let (mut keeper, book, aside) = load(&shelf);
    assert_eq!((book.count(), book.open_id(), aside), (1, id("d1"), vec![]));
    assert_eq!(keeper.keep(&shelf, &book).stored, Ok(()));
    let (_, again, _) = load(&shelf);
    assert_eq!(again, book);
}

#[test]
fn every_draft_comes_back_as_it_was_typed_and_the_one_that_was_open_is_open() {
    let shelf = Memory::default();
    let (mut keeper, mut book, _) = load(&shelf);
    let mut draft = base();
    draft.put(COUNT, "2,,\u{2028}\"\\", false);
    let second = book.add(notebook::Named::new("Zweite \u{201c}Probe\u{201d}", draft));
    book.add(typed("third", COUNT, "9"));
    book.turn_to(second);
    assert_eq!(keeper.keep(&shelf, &book).stored, Ok(()));
    assert_eq!(load(&shelf).1, book);
    let (_, mine, _) = Keeper::load(&shelf, Some(id("d1")), || plain(""));
    assert_eq!(mine.open_id(), id("d1"), "what this window had open");
    let (_, mine, _) = Keeper::load(&shelf, Some(id("d7")), || plain(""));
    assert_eq!(mine.open_id(), second, "what it had open is gone");
}

#[test]
fn ids_are_never_reused() {
    let shelf = Memory::default();
    let (mut keeper, mut book, _) = load(&shelf);
    let second = book.add(plain("second"));
    assert!(keeper.keep(&shelf, &book).stored.is_ok());
    assert!(book.remove(second).is_some());
    assert!(keeper.keep(&shelf, &book).stored.is_ok());
    assert_eq!(shelf.load("ionwright.draft.d2"), None);
    let (_, mut book, _) = load(&shelf);
    assert_eq!(book.add(plain("another")), id("d3"));
}

#[test]
fn the_last_draft_stays_and_a_neighbour_is_opened() {
    let mut book = Book::new(plain("only"));
    assert_eq!(book.remove(id("d1")), None);
    for name in ["b", "c"] {
        book.add(plain(name));
    }
    book.turn_to(id("d3"));
    assert!(book.remove(id("d3")).is_some());
    assert_eq!(book.open_id(), id("d2"));
    book.turn_to(id("d1"));
    assert!(book.remove(id("d1")).is_some());
    assert_eq!(book.open_id(), id("d2"));
}

#[test]
fn only_the_plain_spelling_is_an_id() {
    for text in [
        "",
        "d",
        "d0",
        "d01",
        "d+1",
        "D1",
        "d1 ",
        "x1",
        "d4294967295",
        "d4294967296",
        "aside",
    ] {
        assert_eq!(DraftId::read(text), None, "{text:?}");
    }
    assert_eq!(
        DraftId::read("d12").map(|i| i.to_string()).as_deref(),
        Some("d12")
    );
}

#[test]
fn the_single_draft_of_an_earlier_edition_becomes_the_first_once_and_stays_readable() {
    let shelf = Memory::default();
    let old = base().to_text();
    assert!(shelf.save("ionwright.draft", &old).is_ok());
    let (mut keeper, mut book, aside) = load(&shelf);
    assert_eq!((book.count(), aside), (1, vec![]));
    assert_eq!(book.get(id("d1")).map(|n| &*n.draft), Some(&base()));
    assert!(keeper.keep(&shelf, &book).stored.is_ok());
    assert_eq!(shelf.load("ionwright.draft"), Some(old));
    // Changed here since: it is not taken again.
    book.put(id("d1"), typed("mine", COUNT, "5"));
    assert!(keeper.keep(&shelf, &book).stored.is_ok());
    assert_eq!(load(&shelf).1, book);
    // Changed by the earlier edition since: another draft, and the open one stays open.
    let newer = typed("", COUNT, "7").draft.to_text();
    assert!(shelf.save("ionwright.draft", &newer).is_ok());
    let (_, again, _) = load(&shelf);
    assert_eq!((again.count(), again.open_id()), (2, id("d1")));
    assert_eq!(again.get(id("d2")).map(|n| n.draft.text(COUNT)), Some("7"));
}

#[test]
fn where_there_was_no_room_the_single_draft_is_taken_over_next_time() {
    let shelf = Memory::default();
    assert!(shelf.save("ionwright.draft", &base().to_text()).is_ok());
    let (mut keeper, book, _) = load(&shelf);
    shelf.refuses.set(Some(ShelfProblem::Full));
    assert_eq!(keeper.keep(&shelf, &book).stored, Err(ShelfProblem::Full));
    shelf.refuses.set(None);
    assert_eq!(
        load(&shelf).1.get(id("d1")).map(|n| &*n.draft),
        Some(&base())
    );
}

#[test]
fn what_cannot_be_read_is_set_aside_kept_and_never_written_over() {
    let texts = [
        ("{\"format\":1,\"texts\":", Unread::NotADraft),
        ("{\"format\":1,\"name\":\"x\"}", Unread::NotADraft),
        ("{\"format\":2,\"drafts\":{}}", Unread::Newer),
        ("[]", Unread::NotADraft),
        ("", Unread::NotADraft),
        (
            "{\"format\":1,\"name\":\"x\",\"draft\":{\"format\":1,\"texts\":{}},\"more\":1}",
            Unread::NotADraft,
        ),
        (
            "{\"format\":1,\"name\":\"x\",\"draft\":{\"format\":2,\"texts\":{}}}",
            Unread::Newer,
        ),
    ];
    for (text, why) in texts {
        let shelf = Memory::default();
        let _ = shelf.save("ionwright.draft.d1", text);
        let (mut keeper, book, aside) = load(&shelf);
        assert_eq!(aside.len(), 1, "{text}");
        assert_eq!((aside[0].text.as_str(), aside[0].why), (text, why));
        assert_eq!(book.open_id(), id("d2"), "{text}: its id is not used");
        assert!(keeper.keep(&shelf, &book).stored.is_ok());
        assert!(keeper.look(&shelf, &book).changes.is_empty(), "{text}");
        assert_eq!(shelf.load("ionwright.draft.d1").as_deref(), Some(text));
    }
    for (text, why) in [
        ("{\"format\":1,\"texts\":", Unread::NotADraft),
        ("{\"format\":2,\"texts\":{}}", Unread::Newer),
        ("[]", Unread::NotADraft),
        ("{\"format\":1,\"texts\":{},\"more\":1}", Unread::NotADraft),
    ] {
        let shelf = Memory::default();
        let _ = shelf.save("ionwright.draft", text);
        let (_, book, aside) = load(&shelf);
        assert_eq!(book.count(), 1);
        assert_eq!((aside[0].text.as_str(), aside[0].why), (text, why));
        assert_eq!(shelf.load("ionwright.draft.aside").as_deref(), Some(text));
        assert_eq!(shelf.load("ionwright.draft").as_deref(), Some(text));
    }
}

#[test]
fn a_damaged_line_about_all_loses_no_draft() {
    for text in [
        "",
        "1",
        "2 d9 d9 x",
        "1 x y z",
        "{\"format\":1}",
        "1 d2 d99 \u{0}",
    ] {
        let shelf = Memory::default();
        let (mut keeper, mut book, _) = load(&shelf);
        book.add(typed("second", COUNT, "5"));
        assert!(keeper.keep(&shelf, &book).stored.is_ok());
        let _ = shelf.save("ionwright.drafts", text);
        let (_, mut again, aside) = load(&shelf);
        assert!(again.iter().eq(book.iter()), "{text:?}");
        assert_eq!(aside, []);
        assert_eq!(again.add(plain("")), id("d3"), "{text:?}");
    }
}

#[test]
fn a_full_or_refusing_shelf_is_said_and_what_is_there_stays() {
    for problem in [ShelfProblem::Full, ShelfProblem::Refused] {
        let shelf = Memory::default();
        let (mut keeper, mut book, _) = load(&shelf);
        assert!(keeper.keep(&shelf, &book).stored.is_ok());
        let before = shelf.texts.borrow().clone();
        shelf.refuses.set(Some(problem));
        book.put(id("d1"), typed("mine", COUNT, "5"));
        let kept = keeper.keep(&shelf, &book);
        assert_eq!((kept.stored, kept.changes), (Err(problem), vec![]));
        assert_eq!(*shelf.texts.borrow(), before);
        shelf.refuses.set(None);
        assert_eq!(keeper.keep(&shelf, &book).stored, Ok(()), "tried again");
        assert_eq!(load(&shelf).1, book);
    }
}
