//! The packaged page in a real browser, at the size of a phone. `cargo xtask test` packages it, brings the browser and
//! sets the variables that `driver` reads.

mod axe;
mod bad_input;
mod driver;
mod fields;
mod first_answer;
mod frozen;
mod keyboard;
mod language;
mod layout;
mod manners;
mod measure;
mod offline;
mod paper;
mod pictures;
mod saved_copy;
mod site;
mod still;
mod storage;
mod undo;
mod views;
