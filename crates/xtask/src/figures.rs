//! From what was seen in the browser to a table. Pure: samples in, text out.

use crate::failure::{Explain, Failure, Outcome};
use serde_json::Value;

/// What was seen, in order; the pages took turns, so that the nth sample of one belongs to the nth of the other.
pub struct Samples {
    /// The browser's name and version.
    pub browser: String,
    samples: Vec<Value>,
}

/// The bytes of the two files.
pub struct Bytes {
    /// Of the almost empty page.
    pub empty: usize,
    /// Of the page.
    pub page: usize,
}

const EMPTY: &str = "empty";
const PAGE: &str = "page";

/// A row of the table: its label, the throttle, which times, and which of them.
struct Row {
    label: &'static str,
    slowed: u64,
    key: &'static str,
    part: f64,
}

const fn row(label: &'static str, slowed: u64, key: &'static str, part: f64) -> Row {
    Row {
        label,
        slowed,
        key,
        part,
    }
}

const ROWS: [Row; 12] = [
    row("start to first answer, ms", 1, "start_ms", 0.5),
    row("the same, processor slowed 4 times", 4, "start_ms", 0.5),
    row("keystroke to painted answer, p50, ms", 1, "keys_ms", 0.5),
    row("p95", 1, "keys_ms", 0.95),
    row("slowed 4 times, p50", 4, "keys_ms", 0.5),
    row("slowed 4 times, p95", 4, "keys_ms", 0.95),
    row(
        "20 keys 60 ms apart, all open, p95, ms",
        1,
        "burst_ms",
        0.95,
    ),
    row("slowed 4 times, p50", 4, "burst_ms", 0.5),
    row("slowed 4 times, p95", 4, "burst_ms", 0.95),
    row(
        "a key into the work of a pause, all open, p95, ms",
        1,
        "after_a_pause_ms",
        0.95,
    ),
    row("slowed 4 times, p50", 4, "after_a_pause_ms", 0.5),
    row("slowed 4 times, p95", 4, "after_a_pause_ms", 0.95),
];

/// A throttle that does less than this did nothing.
const THROTTLED: f64 = 2.0;

impl Samples {
    /// Reads what the collecting test wrote.
    pub fn read(json: &str) -> Outcome<Self> {
        let all: Value =
            serde_json::from_str(json).explain(|| "The samples cannot be read".to_owned())?;
        let samples = all["samples"].as_array().cloned().unwrap_or_default();
        if samples.is_empty() {
            return Err(Failure::new(
                "The browser ran, but no samples were written.",
            ));
        }
        Ok(Self {
            browser: all["browser"].as_str().unwrap_or("a browser").to_owned(),
            samples,
        })
    }

    /// The table, as Markdown.
    pub fn table(&self, bytes: &Bytes) -> String {
        let mut table =
            "| | empty page | Ionwright | more, in pairs |\n|---|---|---|---|\n".to_owned();
        let mut add = |label: &str, cells: [String; 3]| {
            table.push_str(&format!("| {label} | {} |\n", cells.join(" | ")));
        };
        add(
            "saved page, bytes",
            [
                thousands(bytes.empty),
                thousands(bytes.page),
                thousands(bytes.page.saturating_sub(bytes.empty)),
            ],
        );
        for row in &ROWS {
            let (empty, page) = (self.each(EMPTY, row), self.each(PAGE, row));
            let more = page.iter().zip(&empty).map(|(page, empty)| page - empty);
            let cells = [&empty, &page, &more.collect()].map(|all| milliseconds(part(all, 0.5)));
            add(row.label, cells);
        }
        table
    }

    /// How many times longer the same work took under the throttle of four.
    pub fn throttle(&self) -> Outcome<f64> {
        let work = |slowed| {
            let row = row("", slowed, "work_ms", 0.5);
            part(
                &[self.each(EMPTY, &row), self.each(PAGE, &row)].concat(),
                0.5,
            )
        };
        match (work(1), work(4)) {
            (Some(free), Some(slowed)) if slowed > THROTTLED * free => Ok(slowed / free),
            _ => Err(Failure::new(
                "The browser did not slow the page down when it was told to; these figures would mean nothing.",
            )),
        }
    }

    /// The row's figure of every run of a page.
    fn each(&self, page: &str, row: &Row) -> Vec<f64> {
        let of = |sample: &&Value| sample["page"] == page && sample["slowed"] == row.slowed;
        let values = self.samples.iter().filter(of).filter_map(|sample| {
            let seen = &sample[row.key];
            let all = seen
                .as_array()
                .map_or(std::slice::from_ref(seen), Vec::as_slice);
            part(
                &all.iter().filter_map(Value::as_f64).collect::<Vec<_>>(),
                row.part,
            )
        });
        values.collect()
    }
}

/// The value below which this part of all lies, by nearest rank; halfway between two for the middle of an even number.
fn part(values: &[f64], part: f64) -> Option<f64> {
    let mut values = values.to_vec();
    values.sort_by(f64::total_cmp);
    let at = part * values.len() as f64;
    let rank = at.ceil() as usize;
    let lower = values.get(rank.max(1) - 1)?;
    match values.get(rank) {
        Some(upper) if part == 0.5 && at == rank as f64 => Some((lower + upper) / 2.0),
        _ => Some(*lower),
    }
}

fn milliseconds(value: Option<f64>) -> String {
    match value {
        None => "not measured".to_owned(),
        Some(value) if value.abs() < 9.95 => format!("{value:.1}"),
        Some(value) => format!("{value:.0}"),
    }
}

fn thousands(count: usize) -> String {
    let digits = count.to_string();
    let mut text = String::new();
    for (n, digit) in digits.chars().enumerate() {
        if n > 0 && (digits.len() - n).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use serde_json::json;

    #[test]
    fn nearest_rank_by_hand() {
        // The usual worked example of the nearest-rank method (from memory): 15, 20, 35, 40, 50.
        let five = [50.0, 15.0, 40.0, 20.0, 35.0];
        for (of, wanted) in [
            (0.05, 15.0),
            (0.3, 20.0),
            (0.4, 20.0),
            (1.0, 50.0),
            (0.5, 35.0),
        ] {
            assert_eq!(part(&five, of), Some(wanted), "{of}");
        }
        assert_eq!(part(&[1.0, 2.0, 4.0, 8.0], 0.5), Some(3.0));
        let twenty: Vec<f64> = (1..=20).map(f64::from).collect();
        assert_eq!(part(&twenty, 0.95), Some(19.0));
        assert_eq!(part(&[], 0.5), None);
        assert_eq!(part(&[7.0], 0.95), Some(7.0));
    }

    proptest! {
        /// At least this part of all is not above it, and it is one of them.
        #[test]
        fn so_many_lie_below(values in prop::collection::vec(-1e3..1e3_f64, 1..60), of in 0.01..1.0_f64) {
            prop_assume!(of != 0.5);
            let found = part(&values, of);
            prop_assert!(values.iter().any(|v| Some(*v) == found));
            let below = values.iter().filter(|v| Some(**v) <= found).count();
            prop_assert!(below as f64 >= of * values.len() as f64 - 1e-9);
        }
    }

    fn sample(page: &str, slowed: u64, start: f64, keys: &[f64]) -> Value {
        json!({"page": page, "slowed": slowed, "start_ms": start, "work_ms": slowed as f64, "keys_ms": keys})
    }

    fn samples() -> Samples {
        let mut all = Vec::new();
        for (empty, page) in [(10.0, 110.0), (30.0, 100.0), (20.0, 250.0)] {
            all.push(sample(EMPTY, 1, empty, &[1.0, 2.0, 3.0]));
            all.push(sample(PAGE, 4, page * 4.0, &[40.0]));
            all.push(sample(PAGE, 1, page, &[4.0, 9.0, 5.0]));
        }
        Samples {
            browser: String::new(),
            samples: all,
        }
    }

    #[test]
    fn the_table_worked_by_hand() {
        let bytes = Bytes {
            empty: 99_999,
            page: 1_428_309,
        };
        let table = samples().table(&bytes);
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(lines.len(), 3 + ROWS.len());
        assert_eq!(
            lines[2],
            "| saved page, bytes | 99,999 | 1,428,309 | 1,328,310 |"
        );
        // Medians 20 and 110; in pairs 100, 70 and 230.
        assert_eq!(lines[3], "| start to first answer, ms | 20 | 110 | 100 |");
        assert_eq!(
            lines[4],
            "| the same, processor slowed 4 times | not measured | 440 | not measured |"
        );
        assert_eq!(
            lines[5],
            "| keystroke to painted answer, p50, ms | 2.0 | 5.0 | 3.0 |"
        );
        assert_eq!(lines[6], "| p95 | 3.0 | 9.0 | 6.0 |");
        assert_eq!(
            lines[8],
            "| slowed 4 times, p95 | not measured | 40 | not measured |"
        );
    }

    #[test]
    fn a_throttle_that_does_nothing_is_noticed() {
        let mut all = samples();
        assert_eq!(all.throttle().ok(), Some(4.0));
        for sample in &mut all.samples {
            sample["work_ms"] = json!(1.5);
        }
        assert!(all.throttle().is_err());
        all.samples.clear();
        assert!(all.throttle().is_err());
    }

    #[test]
    fn what_holds_no_samples_is_refused() {
        for text in ["", "{}", "{\"samples\": []}", "[1"] {
            assert!(Samples::read(text).is_err(), "{text}");
        }
        let read = Samples::read("{\"browser\": \"B/1\", \"samples\": [{}]}");
        assert!(read.is_ok_and(|read| read.browser == "B/1"));
    }
}
