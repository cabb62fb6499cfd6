//! One question a line in, one answer a line out: `cargo run -q -p planner --example answer < questions.jsonl`.

use planner::{Catalogue, answer_text};
use std::io::{self, BufRead, Write};

fn main() -> io::Result<()> {
    let catalogue = Catalogue::standard();
    let mut out = io::stdout().lock();
    for line in io::stdin().lock().lines() {
        writeln!(out, "{}", answer_text(&catalogue, &line?))?;
    }
    Ok(())
}
