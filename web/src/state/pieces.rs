//! The pieces of a draft: which there are, one more, the same again, one less. An id is never used again.

use super::at;
use super::demo;
use super::draft::Draft;
use super::kinds;
use crate::words;

/// How many kinds of piece hang on one bar at most.
pub const MOST: usize = 10;

/// The ids, in order of making. There is always one.
pub fn ids(draft: &Draft) -> Vec<&str> {
    let ids: Vec<&str> = draft.text(at::PIECES).split_whitespace().collect();
    if ids.is_empty() { vec!["p1"] } else { ids }
}

/// What the pieces are called: by their own name, else by their kind, numbered where there are several of it. Of a part
/// that hangs in another vessel (`p1_2`) also in which.
pub fn names<'a>(draft: &Draft, of: impl Iterator<Item = &'a str>) -> Vec<String> {
    let kind = |id: &str| {
        let shape = draft.scoped(&at::of(at::SHAPE, id));
        words::one(shape)
    };
    let own = |id: &str| draft.text(&at::of(at::LABEL, id)).trim().to_owned();
    let all = ids(draft);
    let unnamed: Vec<&str> = all.into_iter().filter(|id| own(id).is_empty()).collect();
    let name = |id: &str| {
        let own = own(id);
        if !own.is_empty() {
            return own;
        }
        let alike = || unnamed.iter().filter(|other| kind(other) == kind(id));
        match alike().position(|other| *other == id) {
            Some(n) if alike().count() > 1 => words::numbered(kind(id), n + 1),
            _ => kind(id).to_owned(),
        }
    };
    let of: Vec<&str> = of.collect();
    // One name in several vessels says of each in which.
    let first = of.iter().any(|id| id.contains('_'));
    of.into_iter()
        .map(|id| match id.split_once('_') {
            Some((piece, vessel)) => words::in_vessel(&name(piece), vessel),
            None if first => words::in_vessel(&name(id), "1"),
            None => name(id),
        })
        .collect()
}

/// The id the next piece will have.
pub fn next(draft: &Draft) -> String {
    let number = |id: &str| id.strip_prefix('p').and_then(|n| n.parse::<u32>().ok());
    let highest = ids(draft).into_iter().filter_map(number).max();
    let made = draft.text(at::MADE).parse().ok();
    format!("p{}", highest.max(made).unwrap_or(1) + 1)
}

/// One more, as the example describes one.
pub fn add(draft: &mut Draft) {
    let id = next(draft);
    for (address, text) in demo::texts_of_a_piece() {
        draft.put(&at::of(address, &id), text, true);
    }
    draft.put(&at::of(at::COUNT, &id), "1", true);
    let shape = draft.scoped(&at::of(at::SHAPE, &id)).to_owned();
    kinds::fill_in(draft, &id, &shape);
    join(draft, &id);
}

/// The same again: everything typed of a piece, under a new id.
pub fn repeat(draft: &mut Draft, piece: &str) {
    let id = next(draft);
    let from = format!("pieces/{piece}/");
    for map in [&mut draft.texts, &mut draft.good] {
        let copies: Vec<(String, String)> = map
            .iter()
            .filter_map(|(address, text)| {
                // How sure an input is belongs to its piece too.
                let (before, after) = address.split_once(from.as_str())?;
                (before.is_empty() || at::spread_of(address).is_some())
                    .then(|| (format!("{before}pieces/{id}/{after}"), text.clone()))
            })
            .collect();
        map.extend(copies);
    }
    join(draft, &id);
}

fn join(draft: &mut Draft, id: &str) {
    let mut list = ids(draft).join(" ");
    list.push(' ');
    list.push_str(id);
    draft.put(at::PIECES, &list, true);
    draft.put(at::MADE, id.trim_start_matches('p'), true);
}

/// Takes a piece off the bar; the last one stays.
pub fn remove(draft: &mut Draft, piece: &str) {
    let left: Vec<&str> = ids(draft).into_iter().filter(|id| *id != piece).collect();
    if left.is_empty() {
        return;
    }
    let list = left.join(" ");
    if draft.text(at::MADE).is_empty() {
        let made = next(draft);
        let made = made.trim_start_matches('p').parse::<u32>().unwrap_or(2) - 1;
        draft.put(at::MADE, &made.to_string(), true);
    }
    draft.put(at::PIECES, &list, true);
    let own = format!("pieces/{piece}/");
    let mine = |address: &String| !address.trim_start_matches("spreads/").starts_with(&own);
    draft.texts.retain(|address, _| mine(address));
    draft.good.retain(|address, _| mine(address));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_never_used_again() {
        let mut draft = demo::demo();
        assert_eq!(ids(&draft), ["p1"]);
        add(&mut draft);
        repeat(&mut draft, "p1");
        assert_eq!(ids(&draft), ["p1", "p2", "p3"]);
        remove(&mut draft, "p3");
        repeat(&mut draft, "p2");
        assert_eq!(ids(&draft), ["p1", "p2", "p4"]);
        assert!(draft.texts.keys().all(|a| !a.contains("pieces/p3/")));
    }

    #[test]
    fn the_same_again_has_everything_of_the_first() {
        let mut draft = demo::demo();
        draft.put(at::HANGER_WET, "33", true);
        draft.put(&at::spread(at::HANGER_WET), "5", true);
        repeat(&mut draft, "p1");
        let second = |address: &str| draft.text(&at::of(address, "p2")).to_owned();
        assert_eq!(second(at::HANGER_WET), "33");
        assert_eq!(second(at::COUNT), "2");
        assert_eq!(draft.text("spreads/pieces/p2/hanger/wet"), "5");
    }

    #[test]
    fn the_last_piece_stays() {
        let mut draft = demo::demo();
        remove(&mut draft, "p1");
        assert_eq!(ids(&draft), ["p1"]);
        assert_eq!(draft, demo::demo());
    }
}
