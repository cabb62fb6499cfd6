//! Words of the page as it stands while the program has not started, or never can.

/// What this is.
pub const INTRO: &str = "Ionwright works out current, time and thickness for copper grown on small pieces. The program has not started yet. If these lines stay, this is a preview that does not run programs: open the file in a current browser, on a computer or from the installed page. Until then, this table holds.";
/// Over the table.
pub const TABLE: &str =
    "Copper in an acid sulfate bath: current to set, by what gets wet and how dense";
/// First column.
pub const AREA: &str = "gets wet";
/// Last row.
pub const GROWTH: &str = "copper grown in an hour";
/// Under the table.
pub const TABLE_NOTE: &str = "Count both sides, insides and the hanging wire. About 0.5 to 1.2 A/dm² suits a still bath; start with the edges in mind, they get two to four times the average (common practice, no source). Goggles and gloves on; the safety data sheet, local rules and licensed practice decide.";
