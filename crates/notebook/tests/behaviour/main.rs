//! The behaviour of the notebook, at its boundary: texts in, texts out, a shelf in memory.

mod carrying;
mod frozen;
mod jobtext;
mod keeping;
mod support;
mod windows;
