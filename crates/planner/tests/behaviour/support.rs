//! Small helpers of these tests: jobs as trees, answers as trees.

use planner::{Catalogue, answer_text};
use proptest::test_runner::{Config, RngSeed};
use serde_json::{Value, json};

/// The same cases in every run, so that a red test is red for everyone; `PROPTEST_RNG_SEED` and `PROPTEST_CASES` look
/// further.
pub fn config(cases: u32) -> Config {
    let given = Config::default();
    Config {
        cases: if std::env::var_os("PROPTEST_CASES").is_some() {
            given.cases
        } else {
            cases
        },
        rng_seed: match given.rng_seed {
            RngSeed::Random => RngSeed::Fixed(1),
            fixed => fixed,
        },
        failure_persistence: None,
        ..given
    }
}

/// The parts of a plan that these tests change: one band ring, one bath, one step.
pub fn base() -> Value {
    json!({
        "format": 1,
        "pieces": [{
            "id": "p1",
            "extent": {"parts": [{"id": "a", "shape": {"band": {"bore_m": 0.0176, "wall_m": 0.0015, "width_m": 0.006}}}]}
        }],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "counter": {"distance_m": 0.08}}],
        "steps": [{
            "id": "s1",
            "in": [{"bath": "b1", "pieces": ["p1"]}],
            "kind": "electroform",
            "drive": {"density_A_per_m2": 120},
            "until": {"mean_m": 0.0002}
        }]
    })
}

/// A sheet that is etched: copper 0.8 mm thick, half of it open.
pub fn etch_base() -> Value {
    json!({
        "format": 1,
        "pieces": [{
            "id": "p1",
            "extent": {"parts": [{"id": "a", "shape": {"sheet": {"length_m": 0.04, "width_m": 0.025, "thickness_m": 0.0008}}}]},
            "base": {"metal": {"id": "Cu", "thickness_m": 0.0008}},
            "open_frac": 0.5,
            "artwork": {"lead": "plus"}
        }],
        "baths": [{"id": "b1", "solution": "et_cuso4_cu", "counter": {"material": "S31603", "distance_m": 0.04}}],
        "steps": [{
            "id": "s1",
            "in": [{"bath": "b1", "pieces": ["p1"]}],
            "kind": "etch",
            "drive": {"density_A_per_m2": 300},
            "until": {"depth_m": 0.00008}
        }]
    })
}

/// A finish: gold on a sterling ring, for ten minutes.
pub fn finish_base() -> Value {
    json!({
        "format": 1,
        "pieces": [{
            "id": "p1",
            "extent": {"parts": [{"id": "a", "shape": {"band": {"bore_m": 0.0176, "wall_m": 0.0015, "width_m": 0.006}}}]},
            "base": {"metal": {"id": "Ag925"}}
        }],
        "baths": [{"id": "b1", "solution": "au_sulfite", "counter": {"material": "platinised_titanium", "distance_m": 0.05}}],
        "steps": [{
            "id": "s1",
            "in": [{"bath": "b1", "pieces": ["p1"]}],
            "kind": "electroplate",
            "drive": {"density_A_per_m2": 30},
            "until": {"time_s": 600}
        }]
    })
}

/// The plan that a row starts from.
pub fn from(name: Option<&str>) -> Value {
    match name {
        None => base(),
        Some("etch") => etch_base(),
        Some("finish") => finish_base(),
        Some(other) => panic!("no plan {other:?} to start from"),
    }
}

/// Puts `value` at `pointer`; groups on the way are made, `/-` adds to a list, a JSON null takes away.
pub fn set(tree: &mut Value, pointer: &str, value: &Value) {
    let (parent, last) = pointer
        .rsplit_once('/')
        .unwrap_or_else(|| panic!("no pointer: {pointer:?}"));
    let mut here = tree;
    for key in parent.split('/').skip(1) {
        if let Value::Object(map) = here {
            map.entry(key).or_insert_with(|| json!({}));
        }
        here = here
            .pointer_mut(&format!("/{key}"))
            .unwrap_or_else(|| panic!("nothing at {key} of {pointer}"));
    }
    match here {
        Value::Array(items) if last == "-" => items.push(value.clone()),
        Value::Array(items) => {
            let n: usize = last
                .parse()
                .unwrap_or_else(|_| panic!("no index in {pointer}"));
            items[n] = value.clone();
        }
        Value::Object(map) if value.is_null() => {
            map.remove(last);
        }
        Value::Object(map) => {
            map.insert(last.to_owned(), value.clone());
        }
        other => panic!("{pointer}: cannot set in {other}"),
    }
}

/// The base plan with changes.
pub fn changed(changes: &[(&str, Value)]) -> Value {
    with(base(), changes)
}

/// A plan with changes.
pub fn with(mut plan: Value, changes: &[(&str, Value)]) -> Value {
    for (pointer, value) in changes {
        set(&mut plan, pointer, value);
    }
    plan
}

/// The line that asks for this plan.
pub fn line(plan: &Value) -> String {
    json!({ "plan": plan }).to_string()
}

/// The answer to a line, as a tree.
pub fn ask(line: &str) -> Value {
    let text = answer_text(&Catalogue::standard(), line);
    serde_json::from_str(&text).unwrap_or_else(|e| panic!("{e}: {text}"))
}

/// The answer to a plan, as a tree.
pub fn ask_plan(plan: &Value) -> Value {
    ask(&line(plan))
}

/// The number at `pointer`.
#[track_caller]
pub fn number(answer: &Value, pointer: &str) -> f64 {
    match answer.pointer(pointer).and_then(Value::as_f64) {
        Some(number) => number,
        None => panic!("no number at {pointer} of {answer}"),
    }
}

/// Whether two numbers agree to `part` of the larger.
pub fn close(a: f64, b: f64, part: f64) -> bool {
    let larger = if a.abs() > b.abs() { a.abs() } else { b.abs() };
    (a - b).abs() <= part * larger
}

/// Calls `each` with every value in a tree and the keys that lead to it.
pub fn walk(tree: &Value, at: &str, each: &mut impl FnMut(&str, &Value)) {
    each(at, tree);
    match tree {
        Value::Array(items) => {
            for (n, item) in items.iter().enumerate() {
                walk(item, &format!("{at}/{n}"), each);
            }
        }
        Value::Object(map) => {
            for (key, value) in map {
                walk(value, &format!("{at}/{key}"), each);
            }
        }
        _ => {}
    }
}

/// Fails where an answer holds a JSON null (a number that is none), a range that does not hold its likely value, or a
/// time, a mass or a current below 0. What a bath and its counter electrode gain may be a loss.
#[track_caller]
pub fn is_sound(answer: &Value, of: &str) {
    walk(answer, "", &mut |at, value| {
        assert!(!value.is_null(), "null at {at}; job: {of}");
        let Some(map) = value.as_object() else { return };
        for (key, likely) in map {
            let Some(unit) = key.strip_prefix("likely_") else {
                continue;
            };
            let end = |name: &str| map.get(&format!("{name}_{unit}")).and_then(Value::as_f64);
            let (Some(likely), Some(low), Some(high)) = (likely.as_f64(), end("low"), end("high"))
            else {
                panic!("half a range at {at}: {value}; job: {of}");
            };
            assert!(
                low <= likely && likely <= high,
                "{low} {likely} {high} at {at}; job: {of}"
            );
            let balance = ["/gained/known", "/counter/known"]
                .iter()
                .any(|end| at.ends_with(end));
            let never_negative = matches!(
                unit,
                "s" | "kg"
                    | "A"
                    | "C"
                    | "m2"
                    | "A_per_m2"
                    | "ratio"
                    | "V"
                    | "W"
                    | "m_per_s"
                    | "kg_per_m3"
                    | "money"
            );
            if never_negative && !balance {
                assert!(low >= 0.0, "{low} below 0 at {at}; job: {of}");
            }
        }
    });
}

/// The rows of a file of JSON lines.
pub fn rows(text: &str) -> Vec<Value> {
    text.lines()
        .filter(|line| !line.is_empty())
        .map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{e}: {line}")))
        .collect()
}

/// What a row asks: its `line`, or the plan it is `from` with its `set`.
pub fn asked(row: &Value) -> String {
    if let Some(text) = row["line"].as_str() {
        return text.to_owned();
    }
    let mut plan = from(row["from"].as_str());
    for (pointer, value) in row["set"].as_object().into_iter().flatten() {
        set(&mut plan, pointer, value);
    }
    line(&plan)
}
