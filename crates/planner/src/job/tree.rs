//! Reading a tree of JSON field by field: what cannot be read is a Problem and counts as absent, the rest is kept.

use crate::fields::{Bare, CountField, Field};
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use quantity::Quantity;
use serde_json::{Map, Value};

/// A JSON object being read, at its address.
pub struct Node<'a> {
    map: &'a Map<String, Value>,
    /// Its address.
    pub path: FieldPath,
    seen: Vec<&'static str>,
}

/// The problems met so far.
pub type Problems = Vec<Problem>;

/// Long texts are cut in messages.
pub fn shown(value: &Value) -> String {
    let text = match value {
        Value::String(text) => text.clone(),
        other => other.to_string(),
    };
    if text.chars().count() > 60 {
        text.chars().take(59).chain(['…']).collect()
    } else {
        text
    }
}

/// A value of another type than the one that is wanted.
pub fn wrong_type(at: FieldPath, value: &Value, wanted: &'static str) -> Problem {
    Problem::at(at, ProblemKind::WrongType)
        .reading(shown(value))
        .accepting(crate::problem::Accepted::Type(wanted))
}

impl<'a> Node<'a> {
    /// `value` as an object at `path`.
    pub fn new(value: &'a Value, path: FieldPath, problems: &mut Problems) -> Option<Self> {
        match value.as_object() {
            Some(map) => Some(Self {
                map,
                path,
                seen: Vec::new(),
            }),
            None => {
                problems.push(wrong_type(path, value, "group"));
                None
            }
        }
    }

    /// The value under `key`; a JSON null counts as not given.
    pub fn get(&mut self, key: &'static str) -> Option<&'a Value> {
        self.seen.push(key);
        self.map.get(key).filter(|v| !v.is_null())
    }

    /// Whether `key` is given.
    pub fn has(&self, key: &str) -> bool {
        self.map.get(key).is_some_and(|v| !v.is_null())
    }

    /// A quantity that may be left out.
    pub fn number<Q: Quantity>(&mut self, field: &Field<Q>, problems: &mut Problems) -> Option<Q> {
        self.bare(field.bare(), false, problems).map(Q::from_si)
    }

    /// A quantity that must be there.
    pub fn needed<Q: Quantity>(&mut self, field: &Field<Q>, problems: &mut Problems) -> Option<Q> {
        self.bare(field.bare(), true, problems).map(Q::from_si)
    }

    #[inline(never)]
    fn bare(&mut self, field: Bare, needed: bool, problems: &mut Problems) -> Option<f64> {
        let at = self.path.child(field.name());
        let Some(value) = self.get(field.key) else {
            if needed {
                problems.push(Problem::at(at, ProblemKind::Missing).accepting(field.accepted()));
            }
            return None;
        };
        field
            .read_json(value, &at)
            .map_err(|p| problems.push(p))
            .ok()
    }

    /// A whole number, `otherwise` where it is left out.
    pub fn count(
        &mut self,
        field: &CountField,
        otherwise: u32,
        problems: &mut Problems,
    ) -> Option<u32> {
        let at = self.path.child(field.name());
        match self.get(field.key) {
            None => Some(otherwise),
            Some(value) => field
                .read_json(value, &at)
                .map_err(|p| problems.push(p))
                .ok(),
        }
    }

    /// A text that may be left out.
    pub fn text(&mut self, key: &'static str, problems: &mut Problems) -> Option<String> {
        let at = self.path.child(key);
        let value = self.get(key)?;
        match value.as_str() {
            Some(text) => Some(text.to_owned()),
            None => {
                problems.push(wrong_type(at, value, "text"));
                None
            }
        }
    }

    /// A text that must be there.
    pub fn needed_text(&mut self, key: &'static str, problems: &mut Problems) -> Option<String> {
        if !self.has(key) {
            problems.push(Problem::at(self.path.child(key), ProblemKind::Missing));
        }
        self.text(key, problems)
    }

    /// One of a few words, each standing for a value.
    pub fn word<T: Copy>(
        &mut self,
        key: &'static str,
        words: &[(&'static str, T)],
        problems: &mut Problems,
    ) -> Option<T> {
        let place = self.place(key, &|n| words.get(n).map(|w| w.0), problems)?;
        words.get(place).map(|w| w.1)
    }

    /// The place of the word found, among words asked for by their place: once for all kinds.
    #[inline(never)]
    fn place(
        &mut self,
        key: &'static str,
        words: &dyn Fn(usize) -> Option<&'static str>,
        problems: &mut Problems,
    ) -> Option<usize> {
        let text = self.text(key, problems)?;
        let all = || (0..).map_while(words);
        let found = all().position(|word| word == text);
        if found.is_none() {
            problems.push(
                Problem::at(self.path.child(key), ProblemKind::UnknownWord)
                    .reading(text)
                    .one_of(all()),
            );
        }
        found
    }

    /// A group that may be left out.
    pub fn group(&mut self, key: &'static str, problems: &mut Problems) -> Option<Node<'a>> {
        let at = self.path.child(key);
        let value = self.get(key)?;
        Node::new(value, at, problems)
    }

    /// A list that may be left out.
    pub fn list(&mut self, key: &'static str, problems: &mut Problems) -> &'a [Value] {
        let at = self.path.child(key);
        match self.get(key) {
            None => &[],
            Some(Value::Array(items)) => items,
            Some(other) => {
                problems.push(wrong_type(at, other, "list"));
                &[]
            }
        }
    }

    /// A list of texts that may be left out; what is no text is a Problem.
    pub fn texts(&mut self, key: &'static str, problems: &mut Problems) -> Vec<String> {
        let at = self.path.child(key);
        let mut all = Vec::new();
        for item in self.list(key, problems) {
            match item.as_str() {
                Some(text) => all.push(text.to_owned()),
                None => problems.push(wrong_type(at.clone(), item, "text")),
            }
        }
        all
    }

    /// The one key of an externally tagged choice, and its value.
    pub fn choice(
        &mut self,
        words: &[&'static str],
        problems: &mut Problems,
    ) -> Option<(&'static str, &'a Value)> {
        let given: Vec<&'static str> = words.iter().copied().filter(|w| self.has(w)).collect();
        match given[..] {
            [one] => self.get(one).map(|value| (one, value)),
            _ => {
                let keys: Vec<&str> = self.map.keys().map(String::as_str).collect();
                self.seen.extend(words);
                problems.push(
                    Problem::at(self.path.clone(), ProblemKind::UnknownWord)
                        .reading(keys.join(", "))
                        .one_of(words.iter().copied()),
                );
                // The keys have been named once: not again as unknown fields.
                self.map = empty();
                None
            }
        }
    }

    /// Reports what this format does not have. Called last.
    pub fn finish(self, problems: &mut Problems) {
        for (key, value) in self.map {
            if !self.seen.contains(&key.as_str()) {
                problems.push(
                    Problem::at(self.path.child(key), ProblemKind::UnknownField)
                        .reading(shown(value))
                        .one_of(self.seen.iter().copied()),
                );
            }
        }
    }
}

fn empty() -> &'static Map<String, Value> {
    static EMPTY: std::sync::OnceLock<Map<String, Value>> = std::sync::OnceLock::new();
    EMPTY.get_or_init(Map::new)
}

/// A choice written either as a word (`"still"`) or as a group with one key (`{"metal": {..}}`).
pub enum Tagged<'a> {
    /// A word.
    Word(&'static str),
    /// A key and its value, at its address.
    Group(&'static str, &'a Value, FieldPath),
}

/// Reads such a choice.
pub fn tagged<'a>(
    value: &'a Value,
    path: &FieldPath,
    words: &[&'static str],
    groups: &[&'static str],
    problems: &mut Problems,
) -> Option<Tagged<'a>> {
    let all = || words.iter().chain(groups).copied();
    if let Some(text) = value.as_str() {
        let found = words.iter().copied().find(|w| *w == text);
        if found.is_none() {
            problems.push(
                Problem::at(path.clone(), ProblemKind::UnknownWord)
                    .reading(text)
                    .one_of(all()),
            );
        }
        return found.map(Tagged::Word);
    }
    let mut node = Node::new(value, path.clone(), problems)?;
    let (key, inner) = node.choice(groups, problems)?;
    node.finish(problems);
    Some(Tagged::Group(key, inner, path.child(key)))
}

/// The id of a list's element, for its address. A missing id is a Problem; a repeated one too.
pub fn id_of(
    value: &Value,
    path: &FieldPath,
    taken: &[String],
    problems: &mut Problems,
) -> Option<String> {
    let Some(id) = value.get("id").and_then(Value::as_str) else {
        problems.push(Problem::at(path.child("id"), ProblemKind::Missing));
        return None;
    };
    let plain = !id.is_empty()
        && id.len() <= 40
        && id.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'_');
    if !plain {
        problems.push(
            Problem::at(path.child("id"), ProblemKind::UnknownWord).reading(shown(&value["id"])),
        );
        return None;
    }
    if taken.iter().any(|t| t == id) {
        problems.push(Problem::at(path.child(id), ProblemKind::DuplicateId).reading(id));
        return None;
    }
    Some(id.to_owned())
}

/// Every element of a list that has an id, read at its address.
pub fn each<T>(
    items: &[Value],
    path: &FieldPath,
    problems: &mut Problems,
    read: impl Fn(String, Node<'_>, &mut Problems) -> Option<T>,
) -> Vec<T> {
    let mut ids = Vec::new();
    let mut all = Vec::new();
    for item in items {
        if let Some(id) = id_of(item, path, &ids, problems) {
            ids.push(id.clone());
            if let Some(node) = Node::new(item, path.child(&id), problems) {
                all.extend(read(id, node, problems));
            }
        }
    }
    all
}
