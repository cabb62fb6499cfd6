//! Formulas as constant trees, so that the page can show them and a test can evaluate them.

use crate::value::Named;

/// A formula over named values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Expr {
    /// A value of the working step, by name. A table look-up is one too.
    Value(&'static str),
    /// A plain number.
    Number(f64),
    /// The circle's number.
    Pi,
    /// The base of the natural logarithm.
    E,
    /// Sum.
    Add(&'static Expr, &'static Expr),
    /// Difference.
    Sub(&'static Expr, &'static Expr),
    /// Product.
    Mul(&'static Expr, &'static Expr),
    /// Quotient.
    Div(&'static Expr, &'static Expr),
    /// Square root.
    Sqrt(&'static Expr),
    /// Power.
    Pow(&'static Expr, &'static Expr),
    /// The smaller.
    Min(&'static Expr, &'static Expr),
    /// The larger.
    Max(&'static Expr, &'static Expr),
}

impl Expr {
    /// Evaluates over `values`; none where a name is missing.
    pub fn evaluate(&self, values: &[Named]) -> Option<f64> {
        let both = |a: &Expr, b: &Expr| a.evaluate(values).zip(b.evaluate(values));
        match self {
            Expr::Value(name) => values.iter().find(|v| v.name == *name).map(|v| v.value.si),
            Expr::Number(n) => Some(*n),
            Expr::Pi => Some(core::f64::consts::PI),
            Expr::E => Some(core::f64::consts::E),
            Expr::Add(a, b) => both(a, b).map(|(a, b)| a + b),
            Expr::Sub(a, b) => both(a, b).map(|(a, b)| a - b),
            Expr::Mul(a, b) => both(a, b).map(|(a, b)| a * b),
            Expr::Div(a, b) => both(a, b).map(|(a, b)| a / b),
            Expr::Sqrt(a) => a.evaluate(values).map(f64::sqrt),
            Expr::Pow(a, b) => both(a, b).map(|(a, b)| libm::pow(a, b)),
            Expr::Min(a, b) => both(a, b).map(|(a, b)| if a < b { a } else { b }),
            Expr::Max(a, b) => both(a, b).map(|(a, b)| if a > b { a } else { b }),
        }
    }
}
