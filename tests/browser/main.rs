//! The packaged page in a real browser, at the size of a phone. `cargo xtask test` packages it, brings the browser and
//! sets the variables that `driver` reads.

mod axe;
mod bad_input;
mod bar;
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
mod plates;
mod saved_copy;
mod site;
mod steps;
mod still;
mod storage;
mod supplies;
mod undo;
mod views;
