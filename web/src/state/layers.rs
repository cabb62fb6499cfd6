//! The layers of a draft that come after the first: which there are, one more, one less. An id is never used again.

use super::at;
use super::draft::Draft;

/// How many come after the first at most.
pub const MOST: usize = 6;

/// The word for a layer from the same bath as the first.
pub const SAME: &str = "same";

/// The ids, in order.
pub fn ids(draft: &Draft) -> Vec<&str> {
    draft.text(at::LAYERS).split_whitespace().collect()
}

/// The id the next one will have: covering and the first layer are s1 and s2.
fn next(draft: &Draft) -> String {
    let number = |id: &str| id.strip_prefix('s').and_then(|n| n.parse::<u32>().ok());
    let highest = ids(draft).into_iter().filter_map(number).max();
    let made = draft.text(at::LAYERS_MADE).parse().ok();
    format!("s{}", highest.max(made).unwrap_or(2) + 1)
}

/// What a layer begins with.
const TEXTS: [(&str, &str); 9] = [
    (at::DRIVE, "advised"),
    (at::DENSITY, "0.5"),
    (at::CURRENT, "50"),
    (at::UNTIL, "mean"),
    (at::MEAN, "1"),
    (at::THINNEST, "1"),
    (at::TIME, "0.5"),
    (at::MASS, "0.1"),
    (at::STIRRING, "gentle"),
];

/// One more: a thin coat of what the draft's thin coats are.
pub fn add(draft: &mut Draft) {
    let id = next(draft);
    for (address, text) in TEXTS {
        draft.put(&at::in_step(address, &id), text, true);
    }
    let solution = draft.text("baths/b1/solution@electroplate").to_owned();
    draft.put(&at::in_step(at::SOLUTION, &id), &solution, true);
    for address in [at::DISTANCE, at::ARRANGEMENT, at::VOLUME] {
        let text = draft.text(address).to_owned();
        draft.put(&at::in_step(address, &id), &text, true);
    }
    let mut list = draft.text(at::LAYERS).to_owned();
    list.push(' ');
    list.push_str(&id);
    draft.put(at::LAYERS, list.trim(), true);
    draft.put(at::LAYERS_MADE, id.trim_start_matches('s'), true);
}

/// Takes one out.
pub fn remove(draft: &mut Draft, step: &str) {
    let left: Vec<&str> = ids(draft).into_iter().filter(|id| *id != step).collect();
    let list = left.join(" ");
    draft.put(at::LAYERS, &list, true);
    let (own, bath) = (
        ["steps/", step, "/"].concat(),
        ["baths/b", step.trim_start_matches('s'), "/"].concat(),
    );
    let mine = |address: &String| {
        let plain = address.trim_start_matches("spreads/");
        !plain.starts_with(&own) && !plain.starts_with(&bath)
    };
    draft.texts.retain(|address, _| mine(address));
    draft.good.retain(|address, _| mine(address));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::demo;

    #[test]
    fn a_layer_comes_and_goes_and_its_id_is_not_used_again() {
        let mut draft = demo::demo();
        add(&mut draft);
        add(&mut draft);
        assert_eq!(ids(&draft), ["s3", "s4"]);
        assert_eq!(draft.text("baths/b3/solution"), "au_acid");
        remove(&mut draft, "s4");
        assert!(
            draft
                .texts
                .keys()
                .all(|a| !a.contains("s4") && !a.contains("b4"))
        );
        add(&mut draft);
        assert_eq!(ids(&draft), ["s3", "s5"]);
    }
}
