//! Reference values and acceptance scenarios: rows of `data/` against the crates. Every row names its source.

mod bar;
mod chemistry_elements;
mod chemistry_properties;
mod chemistry_solutions;
mod chemistry_sources;
mod conversions;
mod copper;
mod evenness;
mod facts;
mod field_rows;
mod frozen;
mod geometry_identities;
mod geometry_job;
mod geometry_measure;
mod geometry_reference;
mod jobs;
mod limiting;
mod made_up;
mod normal_quantile;
mod recess;
mod scenarios;
mod shapes;
mod table;
mod trade;
mod warmth;
mod worked_examples;
