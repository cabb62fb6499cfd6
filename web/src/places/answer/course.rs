//! The steps as a bar along the time of day.

use super::Shown;
use super::turns::Turn;
use crate::parts::card::card;
use crate::parts::course::{self, Span};
use crate::words::{self, number};
use planner::job::Start;
use quantity::Quantity;
use yew::prelude::*;

/// A job shorter than this, s, is done before anybody looks at a clock.
const SHORT: f64 = 1800.0;
const DAY: f64 = 86_400.0;

/// The card; nothing where the times are not known, or the job is short.
pub fn course(shown: &Shown) -> Html {
    let steps = &shown.answer.steps;
    let spans: Vec<Span> = steps
        .iter()
        .filter_map(|s| {
            Some(Span {
                seconds: s.time.known()?.likely.si(),
                ends: shown.moment(s)?,
            })
        })
        .collect();
    let whole: f64 = spans.iter().map(|s| s.seconds).sum();
    let Some(start) = &shown.start else {
        return Html::default();
    };
    if spans.len() < steps.len() || whole < SHORT {
        return Html::default();
    }
    let nights = nights(start, whole);
    let starts = number::moment(&start.local, &start.local);
    let turns: Vec<String> = shown.turns().iter().map(Turn::line).collect();
    let said = words::course(&starts, &turns, !nights.is_empty());
    let body = html! {
        <>
            { course::drawing(&starts, &spans, &nights) }
            <p class="unseen">{ said }</p>
        </>
    };
    card("card course", words::CLOCK, body)
}

/// The nights that touch the job, in seconds from its start.
fn nights(start: &Start, whole: f64) -> Vec<(f64, f64)> {
    let (from, to) = (start.night_from.si(), start.night_to.si());
    let length = if to > from {
        to - from
    } else {
        to + DAY - from
    };
    let mut parts = start
        .local
        .split_once('T')
        .map_or("", |(_, t)| t)
        .split(':')
        .map(|p| p.parse::<f64>().unwrap_or_default());
    let now = 3600.0 * parts.next().unwrap_or_default() + 60.0 * parts.next().unwrap_or_default();
    let mut nights = Vec::new();
    let mut begins = from - now - DAY;
    // A plan of a year and more is no plan; its bar needs no nights.
    while begins < whole && nights.len() < 400 {
        if begins + length > 0.0 {
            nights.push((begins, begins + length));
        }
        begins += DAY;
    }
    nights
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::job::{NIGHT_FROM, NIGHT_TO};
    use quantity::Time;

    fn at(clock: &str, hours: f64) -> Vec<(f64, f64)> {
        let start = Start {
            local: format!("2026-05-01T{clock}"),
            night_from: NIGHT_FROM,
            night_to: NIGHT_TO,
        };
        nights(&start, hours * 3600.0)
            .iter()
            .map(|(a, b)| (a / 3600.0, b / 3600.0))
            .collect()
    }

    #[test]
    fn the_nights_lie_where_the_clock_has_them() {
        // Night is from 22:00 to 6:00.
        assert_eq!(at("10:00", 6.0), []);
        assert_eq!(at("10:00", 13.0), [(12.0, 20.0)]);
        assert_eq!(at("23:00", 2.0), [(-1.0, 7.0)]);
        assert_eq!(at("05:00", 20.0), [(-7.0, 1.0), (17.0, 25.0)]);
        // A night that does not cross midnight.
        let start = Start {
            local: "2026-05-01T00:00".to_owned(),
            night_from: Time::hours(1.0),
            night_to: Time::hours(5.0),
        };
        assert_eq!(nights(&start, 7200.0), [(3600.0, 18_000.0)]);
    }
}
