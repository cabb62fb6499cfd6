//! A job carried by a saved copy of the page.

use crate::support::{plain, typed};
use notebook::carried::{join, read, write};
use notebook::{Book, Named, Unread};
use proptest::prelude::*;

const COUNT: &str = "pieces/p1/count";

fn renamed(name: &str) -> String {
    format!("{name}, from the copy")
}

proptest! {
    #[test]
    fn what_is_carried_is_read_again_and_closes_no_element(name in any::<String>(), text in any::<String>()) {
        let named = typed(&name, COUNT, &text);
        let carried = write(&named);
        prop_assert!(!carried.contains(['<', '>', '&']));
        let again = read(&carried).map_err(|e| TestCaseError::fail(format!("{e:?}")))?;
        prop_assert_eq!(again.name, named.name);
        prop_assert_eq!(again.draft, named.draft);
    }

    #[test]
    fn any_text_is_read_without_a_panic(text in any::<String>()) {
        prop_assert!(read(&text).is_err());
    }
}

#[test]
fn an_element_that_would_close_its_own_is_carried_whole() {
    let named = typed("</script><b>", COUNT, "<!-- & -->");
    assert_eq!(
        read(&format!("\n{}\n", write(&named))).map(|n| (n.name, n.draft)),
        Ok((named.name, named.draft))
    );
}

#[test]
fn damaged_and_newer_ones_say_so() {
    for (text, why) in [
        ("", Unread::NotADraft),
        ("{\"format\":1,\"name\":\"x\",", Unread::NotADraft),
        ("{\"format\":3,\"drafts\":[]}", Unread::Newer),
    ] {
        assert_eq!(read(text), Err(why), "{text}");
    }
}

fn carried(named: &Named) -> Named {
    read(&write(named)).expect("a carried job")
}

#[test]
fn a_carried_job_becomes_a_new_draft_and_changes_none() {
    let mut book = Book::new(plain("mine"));
    let before = book.get(book.open_id()).cloned();
    let id = join(&mut book, carried(&typed("Leaf", COUNT, "9")), renamed);
    assert_eq!((book.count(), book.open_id()), (2, id));
    let opened = book.open().cloned();
    assert_eq!(
        opened.as_ref().map(|n| n.name.as_str()),
        Some("Leaf, from the copy")
    );
    assert_eq!(
        opened.map(|n| n.draft.text(COUNT).to_owned()).as_deref(),
        Some("9")
    );
    let first = book.iter().next().map(|(_, n)| n.clone());
    assert_eq!(first, before);
}

#[test]
fn the_same_content_is_opened_and_not_doubled() {
    let mut book = Book::new(plain("mine"));
    let leaf = typed("Leaf", COUNT, "9");
    let there = book.add(leaf.clone());
    assert_eq!(join(&mut book, carried(&leaf), renamed), there);
    assert_eq!((book.count(), book.open_id()), (2, there));
}

#[test]
fn opening_a_copy_again_finds_what_came_of_it() {
    let mut book = Book::new(plain("mine"));
    let copy = write(&typed("Leaf", COUNT, "9"));
    let id = join(&mut book, read(&copy).expect("a job"), renamed);
    let mut changed = book.get(id).cloned().expect("there");
    std::rc::Rc::make_mut(&mut changed.draft).put(COUNT, "10", true);
    book.put(
        id,
        Named::from_text(&changed.to_text()).expect("stored and read"),
    );
    let first = book.iter().next().map(|(id, _)| id).expect("the first");
    book.turn_to(first);
    assert_eq!(join(&mut book, read(&copy).expect("a job"), renamed), id);
    assert_eq!((book.count(), book.open_id()), (2, id));
    // A copy of that one is another job again.
    let second = write(book.get(id).expect("there"));
    assert_eq!(
        join(&mut book, read(&second).expect("a job"), renamed),
        id,
        "the same content"
    );
}
