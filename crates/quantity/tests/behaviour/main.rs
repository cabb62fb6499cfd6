//! The behaviour of quantities: reading, printing, spreads and the fixed sample points.

mod every_unit;
mod printing;
mod properties;
mod ranges;
mod reading;
mod refusing;
mod support;
mod variate;
