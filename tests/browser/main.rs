//! The packaged page in a real browser, at the size of a phone. `cargo xtask test` packages it, brings the browser and
//! sets the variables that `driver` reads.

mod bad_input;
mod driver;
mod first_answer;
mod frozen;
mod layout;
mod measure;
mod offline;
mod saved_copy;
mod site;
mod still;
mod storage;
