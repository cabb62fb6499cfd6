//! Every number field of three plans: a wrong entry is kept and said on leaving, a right one is repeated and changes the
//! answer, or stands on the list of those that rightly change nothing there.

use crate::views::{Act, View, findings, opened, show};
use serde_json::json;
use std::collections::BTreeSet;

/// Plan, field, why it changes nothing there.
const IDLE: &str = include_str!("../data/fields_without_effect.csv");

macro_rules! plan {
    ($name:literal, $start:expr, $($more:expr),*) => {
        View {
            name: $name,
            acts: &[
                Act::Tap(".drafts .line .link"),
                Act::Open("#drafts details"),
                $start,
                Act::Tap(".drafts .line .link"),
                Act::Tap(".setup .link"),
                Act::Type("start/local", "10:00"),
                Act::Tap(".measure .link"),
                $($more,)*
                Act::Tap(".first .link"),
                Act::Tap(".meter .link"),
                Act::Tap(".bath .link"),
                Act::Tap(".working .link"),
                Act::Tap(".exact h2 .link"),
                Act::Open("#exact details"),
            ],
        }
    };
}

const PLANS: [View; 3] = [
    plan!(
        "hoops",
        Act::Wait("#drafts"),
        Act::Pick("steps/s2/drive", "density")
    ),
    plan!(
        "vermeil",
        Act::Tap("[data-demo='vermeil'] button"),
        Act::Pick("pieces/p1/measure", "card"),
        Act::Type("pieces/p1/measure/card/long", "1070"),
        Act::Type("pieces/p1/measure/card/short", "675"),
        Act::Type("pieces/p1/measure/card/piece", "90000")
    ),
    plan!("bookmark", Act::Tap("[data-demo='bookmark'] button"),),
];

async fn edited(plan: &View) {
    let browser = opened(1280, 800, true).await;
    show(&browser, plan).await;
    let script = include_str!("scripts/fields.js");
    let fields = findings(&browser, script, vec![json!([])]).await;
    assert!(fields.len() > 25, "{}: {} fields", plan.name, fields.len());
    let mut lines = Vec::new();
    for some in fields.chunks(4) {
        lines.extend(findings(&browser, script, vec![json!(some)]).await);
    }
    let mut wrong = Vec::new();
    let mut idle = BTreeSet::new();
    for line in &lines {
        match line.split_once('\t').unwrap_or_default() {
            (_, "") => {}
            (field, "changes nothing") => {
                idle.insert(field.to_owned());
            }
            (field, what) => wrong.push(format!("{field} {what}")),
        }
    }
    assert!(wrong.is_empty(), "{}:\n{}", plan.name, wrong.join("\n"));
    let listed: BTreeSet<String> = IDLE
        .lines()
        .skip(1)
        .filter_map(|line| {
            let cells: Vec<&str> = line.splitn(3, ',').collect();
            let [of, field, why] = cells[..] else {
                panic!("{line}: three cells");
            };
            assert!(why.len() > 10, "{line}: a reason");
            (of == plan.name).then(|| field.to_owned())
        })
        .collect();
    assert_eq!(
        idle, listed,
        "{}: left changes nothing, right is listed",
        plan.name
    );
}

#[tokio::test]
async fn every_field_of_a_grown_piece() {
    edited(&PLANS[0]).await;
}

#[tokio::test]
async fn every_field_of_a_thin_coat() {
    edited(&PLANS[1]).await;
}

#[tokio::test]
async fn every_field_of_an_etch() {
    edited(&PLANS[2]).await;
}
