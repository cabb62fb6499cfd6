//! Formulas as MathML, from their trees.

use crate::words::working;
use planner::expr::Expr;
use quantity::print::significant;
use yew::prelude::*;

/// A formula with its result: `A = pi^2 (d + w) w`.
pub fn formula(result: &str, expr: &Expr) -> Html {
    html! {
        <math display="block">
            <mrow>
                { symbol(result) }
                <mo>{ "=" }</mo>
                { tree(expr, 0) }
            </mrow>
        </math>
    }
}

/// A value's symbol within a line of text.
pub fn inline(name: &str) -> Html {
    html! { <math>{ symbol(name) }</math> }
}

fn symbol(name: &str) -> Html {
    match working::symbol(name).split_once('_') {
        Some((letter, below)) => html! { <msub><mi>{ letter }</mi><mi>{ below }</mi></msub> },
        None => html! { <mi>{ working::symbol(name) }</mi> },
    }
}

/// `tight` is how strongly the surrounding operator binds: 1 for sums, 2 for products, 3 for powers.
fn tree(expr: &Expr, tight: u8) -> Html {
    let binary = |a: &Expr, b: &Expr, sign: &'static str, level: u8| {
        let inner = html! { <>{ tree(a, level) }<mo>{ sign }</mo>{ tree(b, level) }</> };
        if tight > level {
            html! { <mrow><mo stretchy="false">{ "(" }</mo>{ inner }<mo stretchy="false">{ ")" }</mo></mrow> }
        } else {
            html! { <mrow>{ inner }</mrow> }
        }
    };
    match expr {
        Expr::Value(name) => symbol(name),
        Expr::Number(n) => {
            html! { <mn>{ significant(*n, 3).trim_end_matches('0').trim_end_matches('.').to_owned() }</mn> }
        }
        Expr::Pi => html! { <mi>{ "π" }</mi> },
        Expr::E => html! { <mi>{ "e" }</mi> },
        Expr::Add(a, b) => binary(a, b, "+", 1),
        Expr::Sub(a, b) => binary(a, b, "−", 1),
        Expr::Mul(a, b) => binary(a, b, "\u{2062}", 2),
        Expr::Div(a, b) => html! { <mfrac>{ row(a) }{ row(b) }</mfrac> },
        Expr::Sqrt(a) => html! { <msqrt>{ tree(a, 0) }</msqrt> },
        Expr::Pow(a, b) => {
            html! { <msup>{ html!{ <mrow>{ tree(a, 3) }</mrow> } }{ row(b) }</msup> }
        }
        Expr::Min(a, b) => function("min", a, b),
        Expr::Max(a, b) => function("max", a, b),
    }
}

fn row(expr: &Expr) -> Html {
    html! { <mrow>{ tree(expr, 0) }</mrow> }
}

fn function(name: &'static str, a: &Expr, b: &Expr) -> Html {
    html! { <mrow><mi>{ name }</mi><mo>{ "(" }</mo>{ tree(a, 0) }<mo>{ "," }</mo>{ tree(b, 0) }<mo>{ ")" }</mo></mrow> }
}
