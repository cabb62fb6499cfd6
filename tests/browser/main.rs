//! The packaged page in a real browser, at the size of a phone. `cargo xtask test` packages it, brings the browser and
//! sets the variables that `driver` reads.

mod axe;
mod bad_input;
mod driver;
mod first_answer;
mod frozen;
mod keyboard;
mod layout;
mod measure;
mod manners;
mod offline;
mod pictures;
mod saved_copy;
mod site;
mod still;
mod storage;
mod views;
