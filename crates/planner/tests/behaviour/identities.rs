//! Laws that hold in every answer.

use crate::generator::plannable;
use crate::support::config;
use crate::support::{ask, close, is_sound};
use planner::Process;
use planner::job::{Base, Job, Model, Piece, Sides};
use planner::question::{Question, to_line};
use proptest::prelude::*;
use quantity::Quantity;
use serde_json::Value;

/// Faraday's constant, C/mol: e N_A, both exact since 2019.
const FARADAY: f64 = 96_485.332_123_31;

fn likely(value: &Value, unit: &str) -> Option<f64> {
    value["known"][format!("likely_{unit}")].as_f64()
}

fn list<'a>(answer: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    answer[key].as_array().into_iter().flatten()
}

/// Mass per charge and density of what a piece gets or gives, by Faraday's law from the parts.
fn moved(job: &Job, piece: &Piece) -> (f64, f64) {
    let bath = &job.baths[0];
    let own_solution = job.own.solutions.iter().find(|s| s.id == bath.solution);
    let solution = chemistry::solution::SOLUTIONS
        .iter()
        .find(|s| s.id == bath.solution);
    let sheet = match &piece.base {
        Some(Base::Metal(stock)) => stock.id.as_str(),
        _ => "",
    };
    let etches = job.steps[0].kind == Process::Etch;
    let metal = match (etches, solution, own_solution) {
        (true, ..) => sheet,
        (false, Some(s), _) => s.metal,
        (false, None, Some(own)) => own.metal.as_str(),
        (false, None, None) => panic!("no solution {}", bath.solution),
    };
    let own_metal = job.own.metals.iter().find(|m| m.id == metal);
    // Every element with its share and its valence.
    let said = |element: &str| {
        let table = solution.map(|s| s.valences.value).unwrap_or_default();
        table.iter().find(|(id, _)| *id == element).map(|(_, z)| *z)
    };
    let (parts, density): (Vec<(String, f64, u8)>, f64) = if let Some(own) = own_metal {
        let parts = own.parts.iter();
        (
            parts
                .map(|p| (p.id.clone(), p.share.si(), p.valence as u8))
                .collect(),
            own.density.si(),
        )
    } else if let Some(element) = chemistry::element::element_of(metal) {
        let label = own_solution
            .filter(|_| !etches)
            .and_then(|s| s.valence)
            .map(|z| z as u8);
        let z = label
            .or(said(metal))
            .or(element.valences.value.first().copied());
        (
            vec![(metal.to_owned(), 1.0, z.unwrap_or(0))],
            element.density.value.si(),
        )
    } else {
        let Some(alloy) = chemistry::alloy::alloy_of(metal) else {
            panic!("no metal {metal}")
        };
        let parts = alloy.parts.value.iter().map(|p| {
            let z = said(p.element).unwrap_or(p.valence);
            (p.element.to_owned(), p.share.si(), z)
        });
        (parts.collect(), alloy.density.value.si())
    };
    let whole: f64 = parts.iter().map(|p| p.1).sum();
    let moles: f64 = parts
        .iter()
        .map(|(id, share, z)| {
            let Some(element) = chemistry::element::element_of(id) else {
                panic!("no element {id}")
            };
            share / whole * f64::from(*z) / element.molar_mass.value.si()
        })
        .sum();
    (1.0 / (FARADAY * moles), density)
}

/// Charge of each step, and the share of it that moved metal, as its working shows. None where either is not known.
fn effective(answer: &Value) -> Option<Vec<(f64, f64)>> {
    list(answer, "steps")
        .map(|step| {
            let at = format!("steps/{}", step["id"].as_str().unwrap_or_default());
            let growth =
                list(answer, "working").find(|w| w["id"] == "growth" && w["at"] == at.as_str())?;
            let values = growth["values"].as_array()?;
            let share =
                values.iter().find(|v| v["name"] == "efficiency")?["value_frac"].as_f64()?;
            Some((likely(&step["charge"], "C")?, share))
        })
        .collect()
}

fn charge_is_current_times_time(answer: &Value) {
    let mut sum = 0.0;
    for step in list(answer, "steps") {
        let real = step["current"]["known"]["real"]["likely_A"].as_f64();
        let time = likely(&step["time"], "s");
        let charge = likely(&step["charge"], "C");
        assert_eq!(real.zip(time).is_some(), charge.is_some(), "{step}");
        if let (Some(real), Some(time), Some(charge)) = (real, time, charge) {
            // While a coat fills under its ceiling, not all of what is set passes.
            let passes = step["covering"]["passes_frac"].as_f64().unwrap_or(1.0);
            assert!(close(real * passes * time, charge, 1e-12), "{step}");
            sum += charge;
        }
    }
    if let Some(all) = likely(&answer["charge"], "C") {
        assert!(close(all, sum, 1e-12), "{all} of {sum} C");
    }
}

fn mass_is_equivalent_times_effective_charge_times_share_of_the_area(job: &Job, answer: &Value) {
    let Some(steps) = effective(answer) else {
        return;
    };
    let charge: f64 = steps.iter().map(|(q, e)| q * e).sum();
    let total: f64 = list(answer, "pieces")
        .map(|p| {
            let wetted = likely(&p["wetted"], "m2").unwrap_or(f64::NAN);
            wetted * p["count"].as_f64().unwrap_or(f64::NAN)
        })
        .sum();
    for (piece, got) in job.pieces.iter().zip(list(answer, "pieces")) {
        let (k, _) = moved(job, piece);
        for (mass, area) in [("mass", "area"), ("wire_mass", "wire_area")] {
            let share = likely(&got[area], "m2").unwrap_or(f64::NAN) / total;
            let got = likely(&got[mass], "kg").unwrap_or(f64::NAN);
            let want = k * charge * share;
            assert!(close(got, want, 1e-9), "{mass}: {got} kg, want {want}");
        }
    }
}

fn mass_is_thickness_times_density_times_area(job: &Job, answer: &Value) {
    for (piece, got) in job.pieces.iter().zip(list(answer, "pieces")) {
        let (_, density) = moved(job, piece);
        let (Some(mean), Some(area), Some(mass)) = (
            likely(&got["mean"], "m"),
            likely(&got["area"], "m2"),
            likely(&got["mass"], "kg"),
        ) else {
            continue;
        };
        assert!(close(mean * density * area, mass, 1e-9), "{got}");
        if let Some(etched) = got.get("etched") {
            let flat = likely(&etched["flat_depth"], "m").unwrap_or(f64::NAN);
            assert!(close(flat * density * area, mass, 1e-9), "{got}");
        }
    }
}

/// What the bath gains, what its counter electrode gains and what the work gains add up to nothing.
fn no_metal_is_made_or_lost(job: &Job, answer: &Value) {
    let etches = job.steps[0].kind == Process::Etch;
    let bath = &answer["baths"][0];
    let gained: Option<Vec<f64>> = list(bath, "metals")
        .map(|m| likely(&m["gained"], "kg"))
        .collect();
    let (Some(gained), Some(counter)) = (gained, likely(&bath["counter"], "kg")) else {
        return;
    };
    let work: f64 = list(answer, "pieces")
        .map(|p| {
            let all = likely(&p["mass"], "kg")
                .zip(likely(&p["wire_mass"], "kg"))
                .map_or(f64::NAN, |(m, w)| m + w);
            all * p["count"].as_f64().unwrap_or(f64::NAN)
        })
        .sum();
    let sum = gained.iter().sum::<f64>() + counter + if etches { -work } else { work };
    let scale = work + counter.abs();
    assert!(sum.abs() <= 1e-9 * scale, "{sum} kg of {scale}: {bath}");
}

/// An anode of the bath's own metal gives the whole charge, the work takes its share: the bath gains the difference.
fn a_bath_with_its_own_anode_gains_what_the_work_leaves(job: &Job, answer: &Value) {
    let bath = &job.baths[0];
    let material = bath.counter.as_ref().and_then(|c| c.material.as_deref());
    let solution = chemistry::solution::SOLUTIONS
        .iter()
        .find(|s| s.id == bath.solution);
    let (Some(solution), Some(material), Some(steps)) = (solution, material, effective(answer))
    else {
        return;
    };
    let etches = job.steps[0].kind == Process::Etch;
    if etches || material != solution.metal {
        return;
    }
    // Of all that is listed only the bath's own metal moves.
    let (k, _) = moved(job, &job.pieces[0]);
    let stays: f64 = steps.iter().map(|(q, e)| q * k * (1.0 - e)).sum();
    let given: f64 = steps.iter().map(|(q, _)| q * k).sum();
    let got = list(&answer["baths"][0], "metals")
        .find(|m| m["metal"] == solution.metal)
        .and_then(|m| likely(&m["gained"], "kg"));
    let Some(got) = got.filter(|_| stays.is_finite()) else {
        return;
    };
    assert!(
        (got - stays).abs() <= 1e-9 * given,
        "{got} kg, want {stays}"
    );
}

fn thinnest_is_at_most_mean_and_thickest_at_least(answer: &Value) {
    for piece in list(answer, "pieces") {
        let Some(mean) = likely(&piece["mean"], "m") else {
            continue;
        };
        if let Some(thin) = likely(&piece["thinnest"], "m") {
            assert!(thin <= mean * (1.0 + 1e-12), "{piece}");
        }
        if let Some(thick) = likely(&piece["thickest"], "m") {
            assert!(thick >= mean * (1.0 - 1e-12), "{piece}");
        }
    }
}

fn areas_add_up(answer: &Value) {
    for piece in list(answer, "pieces") {
        let (Some(own), Some(wire), Some(both)) = (
            likely(&piece["area"], "m2"),
            likely(&piece["wire_area"], "m2"),
            likely(&piece["wetted"], "m2"),
        ) else {
            panic!("an area is not known: {piece}");
        };
        assert!(close(own + wire, both, 1e-12), "{piece}");
    }
}

fn bore_shrinks_by_twice_the_mean(answer: &Value) {
    for piece in list(answer, "pieces") {
        let bore = list(answer, "working").find(|w| {
            w["id"] == "bore_after"
                && w["at"].as_str()
                    == piece["id"]
                        .as_str()
                        .map(|id| format!("pieces/{id}"))
                        .as_deref()
        });
        let (Some(after), Some(mean), Some(bore)) = (
            likely(&piece["bore_after"], "m"),
            likely(&piece["mean"], "m"),
            bore.and_then(|w| w["values"][0]["value_m"].as_f64()),
        ) else {
            continue;
        };
        assert!(
            (bore - 2.0 * mean - after).abs() <= 1e-12 * (bore + mean),
            "{piece}"
        );
    }
}

/// Opening and land by the undercut, the sheet by the depth, the groove's charge by its section.
fn an_etch_keeps_to_its_geometry(job: &Job, answer: &Value) {
    for (piece, got) in job.pieces.iter().zip(list(answer, "pieces")) {
        let (Some(etched), Some(art)) = (got.get("etched"), &piece.artwork) else {
            continue;
        };
        let ef = art.etch_factor.map_or(1.0, Quantity::si);
        let (Some(depth), Some(flat)) = (
            likely(&etched["depth"], "m"),
            likely(&etched["flat_depth"], "m"),
        ) else {
            continue;
        };
        assert!(depth <= flat, "{etched}");
        let undercut = depth / ef;
        if let Some(opening) = art.opening.map(Quantity::si) {
            let after = likely(&etched["opening_after"], "m").unwrap_or(f64::NAN);
            assert!(after >= opening, "{etched}");
            assert!(close(after, opening + 2.0 * undercut, 1e-12), "{etched}");
            // (w d + (pi / 2) d^2 / EF) / (w d)
            let times = 1.0 + core::f64::consts::FRAC_PI_2 * depth / (ef * opening);
            let fine = likely(&etched["fine_line"], "ratio").unwrap_or(f64::NAN);
            assert!(close(fine, times, 1e-12), "{etched}");
        }
        let groove = art.model == Some(Model::Groove) && art.opening.is_some();
        let times = art.opening.map_or(1.0, |w| {
            1.0 + core::f64::consts::FRAC_PI_2 * depth / (ef * w.si())
        });
        let want = if groove { depth * times } else { depth };
        assert!(
            close(flat, want, 1e-9),
            "flat {flat}, want {want}: {etched}"
        );
        if let Some(land) = art.land_wanted.map(Quantity::si) {
            let line = likely(&etched["line_to_draw"], "m").unwrap_or(f64::NAN);
            assert!(close(line, land + 2.0 * undercut, 1e-12), "{etched}");
        }
        if let Some(Base::Metal(stock)) = &piece.base
            && let Some(stock) = stock.thickness.map(Quantity::si)
        {
            let sides = if art.sides == Some(Sides::Both) {
                2.0
            } else {
                1.0
            };
            let left = likely(&etched["left"], "m").unwrap_or(f64::NAN);
            let slack = 1e-12 * (stock + depth);
            assert!((left - (stock - sides * depth)).abs() <= slack, "{etched}");
        }
    }
}

fn cost_is_price_times_mass(job: &Job, answer: &Value) {
    for piece in list(answer, "pieces") {
        let Some(cost) = likely(&piece["cost"], "money") else {
            continue;
        };
        let mass = likely(&piece["mass"], "kg").zip(likely(&piece["wire_mass"], "kg"));
        let want = mass.map_or(f64::NAN, |(m, w)| job.prices[0].price.si() * (m + w));
        assert!(close(cost, want, 1e-12), "{cost}, want {want}");
    }
}

fn the_work_is_on_plus_in_an_etch_and_on_minus_else(answer: &Value) {
    for step in list(answer, "steps") {
        let want = if step["kind"] == "etch" {
            "plus"
        } else {
            "minus"
        };
        assert_eq!(step["work_lead"], want, "{step}");
    }
}

/// An own value is listed as such; the catalogue's names its source.
fn every_input_says_where_it_comes_from(job: &Job, answer: &Value) {
    for own in &job.assume {
        let listed = list(answer, "inputs").find(|i| i["at"] == own.at.as_str());
        let Some(listed) = listed else {
            panic!("{} is not listed", own.at)
        };
        assert_eq!(listed["origin"], "assumed", "{listed}");
        let value = &listed[format!("value_{}", own.value.key_unit)];
        assert_eq!(value.as_f64(), Some(own.value.si), "{listed}");
    }
    for input in list(answer, "inputs") {
        let at = input["at"].as_str().unwrap_or_default();
        let own = job.assume.iter().any(|a| a.at.as_str() == at);
        let catalogues = [
            "efficiency",
            "conductivity",
            "evenness_factor",
            "surface_volts",
            "cell_volts",
            "batch",
        ];
        let usual = job.room.clone().unwrap_or_default();
        let of_the_room = match at {
            "room/temperature" => usual.temperature.is_none(),
            "room/humidity" => usual.humidity.is_none(),
            _ => false,
        };
        let of_the_bath = at
            .strip_prefix("baths/b1/")
            .is_some_and(|name| catalogues.contains(&name));
        let origin = &input["origin"];
        if (of_the_bath || of_the_room || at.ends_with("/covering")) && !own {
            let names_it = origin["work"].is_string()
                || (origin.is_string() && *origin != "given" && *origin != "assumed");
            assert!(names_it, "{input}");
        } else if !own {
            assert_eq!(*origin, "given", "{input}");
        }
    }
}

/// All that a plannable job may lack is how even a piece is.
fn nothing_is_a_problem_but_an_unknown_evenness(answer: &Value, of: &str) {
    for problem in list(answer, "problems") {
        let field = problem["field"].as_str().unwrap_or_default();
        let evenness = problem["kind"] == "missing" && field.ends_with("/min_over_mean");
        assert!(evenness, "{problem}; job: {of}");
    }
}

proptest! {
    #![proptest_config(config(300))]

    #[test]
    fn every_answer_obeys_the_laws(job in plannable()) {
        let line = to_line(&Question::Plan(job.clone()));
        let answer = ask(&line);
        is_sound(&answer, &line);
        nothing_is_a_problem_but_an_unknown_evenness(&answer, &line);
        charge_is_current_times_time(&answer);
        mass_is_equivalent_times_effective_charge_times_share_of_the_area(&job, &answer);
        mass_is_thickness_times_density_times_area(&job, &answer);
        no_metal_is_made_or_lost(&job, &answer);
        a_bath_with_its_own_anode_gains_what_the_work_leaves(&job, &answer);
        thinnest_is_at_most_mean_and_thickest_at_least(&answer);
        areas_add_up(&answer);
        bore_shrinks_by_twice_the_mean(&answer);
        an_etch_keeps_to_its_geometry(&job, &answer);
        cost_is_price_times_mass(&job, &answer);
        the_work_is_on_plus_in_an_etch_and_on_minus_else(&answer);
        every_input_says_where_it_comes_from(&job, &answer);
    }
}
