//! The questions beside the plan: as lines of text, with what the functions of the same name say.

use crate::keys::ends_in_its_unit;
use crate::support::{ask, ask_plan, base, close, is_sound, number, with};
use planner::asked::{Fair, ThiefOf};
use planner::batches::FitBy;
use planner::question::{Question, to_line};
use planner::{Catalogue, Job, batches, fair_share, job, narrowing, thief_of, ways_out};
use quantity::{Length, Thickness};
use serde_json::{Value, json};

/// Three leaves, the last of which comes an hour late, on a supply that gives 0.5 A.
fn leaves() -> Value {
    let leaf = |id: &str, m2: f64| json!({"id": id, "extent": {"area": {"one_side_m2": m2, "sides_count": 2}}});
    let mut plan = with(
        base(),
        &[
            (
                "/pieces",
                json!([
                    leaf("p1", 0.00142),
                    leaf("p2", 0.00098),
                    leaf("p3", 0.00215)
                ]),
            ),
            ("/steps/0/in/0/pieces", json!(["p1", "p2", "p3"])),
            ("/steps/0/until", json!({"time_s": 40000})),
            ("/supply", json!({"constant_current": {"highest_A": 0.5}})),
            (
                "/prices",
                json!([{"metal": "Cu", "price_money_per_kg": 20}]),
            ),
        ],
    );
    plan["pieces"][2]["joins"] = json!({"step": "s1", "after_s": 3600});
    plan
}

/// A stud that wants 52 mA on a supply that holds no less than 100.
fn stud() -> Value {
    with(
        base(),
        &[
            ("/pieces/0/extent", json!({"area": {"one_side_m2": 5.2e-4}})),
            ("/steps/0/drive", json!({"density_A_per_m2": 100})),
            ("/steps/0/until", json!({"time_s": 7200})),
            (
                "/supply",
                json!({"constant_current": {"lowest_A": 0.1, "highest_A": 3}}),
            ),
        ],
    )
}

fn read(plan: &Value) -> Job {
    match job::read(plan) {
        (Some(job), problems) if problems.is_empty() => job,
        (_, problems) => panic!("not readable: {problems:?}"),
    }
}

fn asked(question: &Question) -> Value {
    let line = to_line(question);
    let answer = ask(&line);
    is_sound(&answer, &line);
    ends_in_its_unit(&answer, &line);
    assert_eq!(answer["problems"], json!([]), "{line}");
    answer
}

#[test]
fn batches_are_asked_for_as_a_plan_is() {
    let plan = with(leaves(), &[("/pieces/2/joins", Value::Null)]);
    let answer = asked(&Question::Batches(read(&plan)));
    let Some(found) = batches(&Catalogue::standard(), &read(&plan)) else {
        panic!("no batches")
    };
    assert_eq!(answer["asked"]["batches"]["known"], json!(found));
    // 91 cm2 at 1.2 A/dm2 want 1.09 A: by 0.5 A one of 30 cm2 at a time.
    assert_eq!(found.pieces, 3);
    let fits = answer["asked"]["batches"]["known"]["fits"][0].clone();
    assert_eq!(fits, json!({"by": FitBy::Current, "at_once_count": 1}));
    // The rest is the plan's.
    let mut rest = answer;
    rest.as_object_mut().map(|a| a.remove("asked"));
    assert_eq!(rest, ask_plan(&plan));
}

#[test]
fn batches_that_cannot_be_counted_say_what_they_lack() {
    let plan = with(leaves(), &[("/pieces/1/extent", Value::Null)]);
    let answer = ask(&json!({ "batches": plan }).to_string());
    assert_eq!(
        answer["asked"]["batches"],
        json!({"absent": {"because": "input_missing", "needs": ["pieces/p2/extent"]}})
    );
}

#[test]
fn a_fair_share_is_answered_with_the_job_in_which_it_is_dealt() {
    let job = read(&leaves());
    let mean = Thickness::um(80.0);
    let question = Question::FairShare(Fair {
        format: 1,
        job: job.clone(),
        mean,
    });
    let answer = asked(&question);
    let Some(found) = fair_share(&Catalogue::standard(), &job, mean) else {
        panic!("no fair share")
    };
    assert_eq!(answer["asked"]["fair_share"]["known"], json!(found));
    for n in 0..3 {
        let mean = number(&answer, &format!("/pieces/{n}/mean/known/likely_m"));
        assert!(close(mean, 80e-6, 1e-6), "{n}: {mean}");
    }
    // Where no time can be said there is none to deal out.
    let open = with(leaves(), &[("/steps/0/drive", Value::Null)]);
    let answer =
        ask(&json!({"fair_share": {"format": 1, "job": open, "mean_m": 8e-5}}).to_string());
    let absent = &answer["asked"]["fair_share"]["absent"];
    assert_eq!(absent["because"], "input_missing", "{absent}");
    assert_eq!(absent["needs"], json!(["steps/s1/drive"]));
}

#[test]
fn a_thief_is_answered_with_the_job_in_which_it_hangs() {
    let job = read(&stud());
    for (wire, metres) in [(None, 0.1528), (Some(Length::mm(0.5)), 0.3056)] {
        let answer = asked(&Question::Thief(ThiefOf {
            format: 1,
            job: job.clone(),
            wire,
        }));
        let gauge = wire.unwrap_or(Length::mm(1.0));
        let Some(found) = thief_of(&Catalogue::standard(), &job, gauge) else {
            panic!("no thief")
        };
        let known = &answer["asked"]["thief"]["known"];
        assert_eq!(*known, json!(found));
        // By hand: 4.8 cm2 more; of 1 mm wire 4.8 / (0.1 pi) cm.
        assert!(
            close(number(known, "/thief/length_m"), metres, 1e-3),
            "{known}"
        );
        assert_eq!(answer["pieces"][1]["id"], "thief");
        let density = number(&answer, "/pieces/0/density/known/likely_A_per_m2");
        assert!(close(density, 100.0, 1e-4));
    }
    let why = |plan: Value| {
        let answer = ask(&json!({"thief": {"format": 1, "job": plan}}).to_string());
        answer["asked"]["thief"]["absent"].clone()
    };
    let none = with(stud(), &[("/supply", Value::Null)]);
    assert_eq!(
        why(none),
        json!({"because": "input_missing", "needs": ["supply"]})
    );
    let fine = with(
        stud(),
        &[("/supply", json!({"constant_current": {"lowest_A": 0.01}}))],
    );
    assert_eq!(
        why(fine),
        json!({"because": "does_not_apply", "needs": ["supply"]})
    );
}

#[test]
fn what_to_measure_first_and_the_ways_out_are_asked_for_as_a_plan_is() {
    let job = read(&stud());
    let catalogue = Catalogue::standard();
    let answer = asked(&Question::MeasureFirst(job.clone()));
    assert_eq!(
        answer["asked"]["measure_first"],
        json!(narrowing(&catalogue, &job))
    );
    // An area judged by eye narrows more than a catalogue's efficiency.
    assert_eq!(
        answer["asked"]["measure_first"][0]["at"],
        "pieces/p1/extent"
    );
    let answer = asked(&Question::WaysOut(job.clone()));
    let ways = ways_out(&catalogue, &job);
    assert!(ways.len() > 1);
    assert_eq!(answer["asked"]["ways_out"], json!(ways));
}

/// A plan asks for nothing beside itself.
#[test]
fn a_plan_has_nothing_asked_beside_it() {
    assert!(ask_plan(&stud())["asked"].is_null());
}
