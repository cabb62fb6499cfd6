//! The packaged page in a real browser.
fn main() {}
