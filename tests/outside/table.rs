//! Reading the rows of `tests/data/*.csv`.

use std::path::Path;

/// One row: its cells by the name in the header.
pub struct Row {
    file: String,
    cells: Vec<(String, String)>,
}

impl Row {
    /// The text of a cell; empty where nothing stands there.
    pub fn text(&self, column: &str) -> &str {
        match self.cells.iter().find(|(name, _)| name == column) {
            Some((_, cell)) => cell,
            None => panic!("{}: no column {column}", self.file),
        }
    }

    /// The number in a cell, absent where it is empty.
    pub fn maybe(&self, column: &str) -> Option<f64> {
        let text = self.text(column);
        (!text.is_empty()).then(|| {
            text.parse()
                .unwrap_or_else(|_| panic!("{self}: {column} is no number: {text:?}"))
        })
    }

    /// The number in a cell.
    pub fn number(&self, column: &str) -> f64 {
        self.maybe(column)
            .unwrap_or_else(|| panic!("{self}: {column} is empty"))
    }

    /// Fails with case, got, want and source unless `got` lies within `tolerance` of the wanted value.
    #[track_caller]
    pub fn expect(&self, got: f64, tolerance: f64) {
        let want = self.number("want");
        assert!(
            (got - want).abs() <= tolerance,
            "{self}: got {got}, want {want} within {tolerance}; source: {}",
            self.text("source")
        );
    }

    /// The same, with a tolerance that is a part of the wanted value.
    #[track_caller]
    pub fn expect_part(&self, got: f64, part: f64) {
        self.expect(got, part * self.number("want").abs());
    }
}

impl core::fmt::Display for Row {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}, case {:?}", self.file, self.text("case"))
    }
}

/// All rows of a file of `tests/data`. Every row must name its source.
pub fn rows(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("data")
        .join(file);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    let mut lines = text.lines();
    let header = cells(lines.next().unwrap_or_default());
    let rows: Vec<Row> = lines
        .filter(|line| !line.is_empty())
        .map(|line| {
            let row = cells(line);
            assert_eq!(row.len(), header.len(), "{file}: {line}");
            Row {
                file: file.to_owned(),
                cells: header.iter().cloned().zip(row).collect(),
            }
        })
        .collect();
    assert!(!rows.is_empty(), "{file}: no rows");
    for row in &rows {
        assert!(!row.text("source").is_empty(), "{row}: no source");
    }
    rows
}

/// The cells of a line: separated by commas, in double quotes where a cell has a comma, a quote doubled within. No line
/// breaks within cells.
fn cells(line: &str) -> Vec<String> {
    let mut all = vec![String::new()];
    let mut quoted = false;
    let mut letters = line.chars().peekable();
    while let Some(c) = letters.next() {
        match c {
            '"' if quoted && letters.peek() == Some(&'"') => {
                letters.next();
                push(&mut all, '"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => all.push(String::new()),
            c => push(&mut all, c),
        }
    }
    all
}

fn push(all: &mut [String], c: char) {
    if let Some(last) = all.last_mut() {
        last.push(c);
    }
}

#[test]
fn cells_may_hold_commas_and_quotes() {
    assert_eq!(
        cells(r#"a,"b, c","d ""e"" f",,g"#),
        ["a", "b, c", "d \"e\" f", "", "g"]
    );
}
