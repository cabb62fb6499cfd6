//! Reference values and acceptance scenarios.
