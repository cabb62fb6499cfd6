//! The behaviour of the planner, at its boundary: a line of text in, an answer out.

mod accidents;
mod asked;
mod bar;
mod bench_clock;
mod bench_side;
mod class;
mod clock;
mod determinism;
mod display;
mod etching;
mod finishing;
mod generator;
mod identities;
mod keys;
mod mutations;
mod narrowing;
mod notices;
mod problems;
mod properties;
mod reading;
mod support;
mod units;
mod ways;
mod working;
