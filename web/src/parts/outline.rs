//! Draws a shape's outline points as a small picture.

use planner::outline::Ring;
use quantity::Quantity;
use yew::prelude::*;

/// A picture from a shape's outline points, filling a square.
pub fn picture(rings: &[Ring]) -> Html {
    let points = || rings.iter().flat_map(|r| &r.points);
    let reach = points()
        .map(|p| {
            if p.x.si().abs() > p.y.si().abs() {
                p.x.si().abs()
            } else {
                p.y.si().abs()
            }
        })
        .fold(1e-9, |a: f64, b| if b > a { b } else { a });
    let scale = 21.0 / reach;
    let d: String = rings
        .iter()
        .map(|ring| {
            let line: Vec<String> = ring
                .points
                .iter()
                .map(|p| {
                    format!(
                        "{:.1} {:.1}",
                        24.0 + p.x.si() * scale,
                        24.0 - p.y.si() * scale
                    )
                })
                .collect();
            format!("M{}Z", line.join("L"))
        })
        .collect();
    html! {
        <svg class="picture" viewBox="0 0 48 48" aria-hidden="true">
            <path {d} fill="currentColor" fill-rule="evenodd" />
        </svg>
    }
}

/// A picture for an area that is already known: a sheet with its measure.
pub fn measured() -> Html {
    html! {
        <svg class="picture" viewBox="0 0 48 48" aria-hidden="true">
            <path d="M8 8h32v32H8Z" fill="none" stroke="currentColor" stroke-width="3" />
            <path d="M8 24h6M8 16h4M8 32h4M24 40v-6M16 40v-4M32 40v-4" stroke="currentColor" stroke-width="3" />
        </svg>
    }
}
