//! The Wagner number: polarisation over ohmic drop. Large is even.

use quantity::{Length, Ratio};

/// Evenness length of the bath over the scale of the piece (half its longest size, or the radius of an opening; fern and
/// feather half their width).
/// Source: Popov, Pavlovic, Zivkovic, Electrochemistry Encyclopedia (ECS), 2011.
pub fn wagner(evenness_length: Length, scale: Length) -> Ratio {
    Ratio::of_si(evenness_length / scale)
}
