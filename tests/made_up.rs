//! Question lines made up from a fixed seed: every solution, shape and aim, whole and damaged.

use chemistry::{Process, Solution};
use geometry::Shape;
use planner::Catalogue;
use serde_json::{Map, Value, json};

/// splitmix64 (Steele, Lea, Flood 2014).
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }

    /// True once in `n` times.
    fn once_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    fn pick<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    /// Between two values, to about four digits.
    fn within(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * (self.below(1001) as f64 / 1000.0)
    }
}

/// So many question lines; the same ones every time. About one in eight is damaged.
pub fn made_up(count: usize) -> Vec<String> {
    let mut random = Random(0x10f3_7e61_4a5d_c0de);
    let solutions = Catalogue::standard().solutions;
    (0..count)
        .map(|n| {
            let solution = &solutions[n % solutions.len()];
            let line = json!({ "plan": plan(solution, n, &mut random) }).to_string();
            if random.once_in(8) {
                damaged(line, &mut random)
            } else {
                line
            }
        })
        .collect()
}

/// Puts an entry in, most of the time.
fn maybe(random: &mut Random, into: &mut Map<String, Value>, key: &str, value: Value) {
    if !random.once_in(3) {
        into.insert(key.to_owned(), value);
    }
}

fn plan(solution: &Solution, n: usize, random: &mut Random) -> Value {
    let etches = solution.process == Process::Etch;
    let pieces: Vec<Value> = (1..=1 + random.below(3))
        .map(|k| piece(k, n, solution, random))
        .collect();
    let ids: Vec<String> = (1..=pieces.len()).map(|k| format!("p{k}")).collect();
    let steps: Vec<Value> = (1..=1 + random.below(2))
        .map(|k| {
            json!({"id": format!("s{k}"), "in": [{"bath": "b1", "pieces": ids}], "kind": kind(solution, random),
                "stirring": random.pick(&["still", "gentle", "vigorous"]),
                "drive": drive(random), "until": until(etches, random)})
        })
        .collect();
    let mut pieces = pieces;
    let mut steps = steps;
    let mut baths = vec![bath(solution, random)];
    if random.once_in(3) {
        on_a_bar(&mut pieces, random);
    }
    if pieces.len() > 1 && random.once_in(4) {
        in_series(&pieces, &mut steps, &mut baths);
    }
    let mut plan = Map::new();
    plan.insert("format".to_owned(), json!(1));
    plan.insert("pieces".to_owned(), Value::Array(pieces));
    plan.insert("baths".to_owned(), Value::Array(baths));
    if random.once_in(2) {
        let switch = |random: &mut Random| random.pick(&["on", "off"]);
        plan.insert(
            "effects".to_owned(),
            json!({"growth": switch(random), "contacts": switch(random)}),
        );
    }
    if random.once_in(4) {
        let class = json!({"students_count": 1 + random.below(30), "lesson_s": random.within(1800.0, 12_000.0),
            "witness_d_m": random.within(5e-4, 2e-3)});
        plan.insert("class".to_owned(), class);
    }
    plan.insert("steps".to_owned(), Value::Array(steps));
    let place = random.pick(&["shop", "shop", "class", "home"]);
    plan.insert("place".to_owned(), json!(place));
    let supply = json!({"constant_current": {"lowest_A": 0.01, "highest_A": random.within(0.5, 5.0),
        "display_step_A": random.pick(&[0.001, 0.01, 0.05]), "highest_V": random.within(3.0, 30.0)}});
    maybe(random, &mut plan, "supply", supply);
    let start = json!({"local": format!("2026-{:02}-{:02}T{:02}:{:02}", 1 + random.below(12), 1 + random.below(28),
        random.below(24), random.below(60))});
    maybe(random, &mut plan, "start", start);
    if random.once_in(3) {
        let value = random.within(0.3, 1.0);
        plan.insert(
            "assume".to_owned(),
            json!([{"at": "baths/b1/efficiency", "value_frac": value}]),
        );
    }
    if random.once_in(4) {
        let spread = random.within(0.0, 0.3);
        plan.insert(
            "spreads".to_owned(),
            json!([{"at": "pieces/p1/extent", "spread_frac": spread}]),
        );
    }
    if random.once_in(4) {
        plan.insert(
            "prices".to_owned(),
            json!([{"metal": solution.metal, "price_money_per_kg": random.within(5.0, 90_000.0)}]),
        );
    }
    Value::Object(plan)
}

/// Pieces that come late, leave early, hang on one clip or touch badly; the first hangs all the time.
fn on_a_bar(pieces: &mut [Value], random: &mut Random) {
    for (n, piece) in pieces.iter_mut().enumerate() {
        piece["contact"] =
            json!({"contact_ohm": random.within(0.0, 1.0), "lead_ohm": random.within(0.0, 0.05)});
        if n == 0 {
            continue;
        }
        match random.below(4) {
            0 => piece["joins"] = json!({"step": "s1", "after_s": random.within(0.0, 20.0)}),
            1 => piece["leaves"] = json!({"step": "s1", "after_s": random.within(10.0, 30.0)}),
            2 => piece["contact"] = json!({"clip": "k"}),
            _ => {}
        }
    }
}

/// The first piece in one vessel, the others in a second one like it.
fn in_series(pieces: &[Value], steps: &mut [Value], baths: &mut Vec<Value>) {
    let mut second = baths[0].clone();
    second["id"] = json!("b2");
    baths.push(second);
    let id = |p: &Value| p["id"].clone();
    let rest: Vec<Value> = pieces[1..].iter().map(id).collect();
    for step in steps {
        step["in"] =
            json!([{"bath": "b1", "pieces": [id(&pieces[0])]}, {"bath": "b2", "pieces": rest}]);
    }
}

/// What the solution is for, seldom something else.
fn kind(solution: &Solution, random: &mut Random) -> Value {
    if random.once_in(20) {
        json!(random.pick(&["electroform", "electroplate", "etch"]))
    } else {
        json!(solution.process)
    }
}

fn piece(k: usize, n: usize, solution: &Solution, random: &mut Random) -> Value {
    let mut piece = Map::new();
    piece.insert("id".to_owned(), json!(format!("p{k}")));
    piece.insert("count".to_owned(), json!(1 + random.below(4)));
    // Every shape in turn, not in step with the solutions.
    let shape = Shape::TYPICAL[(n + 7 * k) % Shape::TYPICAL.len()];
    let scale = random.within(0.6, 1.8);
    let shape = shape.map_sizes(|_, size| size * scale);
    let extent = if random.once_in(4) {
        json!({"area": {"one_side_m2": random.within(2e-4, 5e-3), "sides_count": 1 + random.below(2),
            "texture_ratio": random.within(1.0, 1.5),
            "method": random.pick(&["mesh", "photo", "tracing", "foil", "sizes", "eye"])}})
    } else {
        json!({"parts": [{"id": "a", "shape": shape, "texture_outside_ratio": random.within(1.0, 1.6),
            "times_count": 1 + random.below(2)}]})
    };
    piece.insert("extent".to_owned(), extent);
    let hanger =
        json!({"wire_d_m": random.within(3e-4, 1.5e-3), "wet_m": random.within(5e-3, 4e-2)});
    maybe(random, &mut piece, "hanger", hanger);
    let opening = random.pick(&["to", "away"]);
    maybe(random, &mut piece, "opening", json!(opening));
    if solution.process == Process::Etch {
        let metals = solution.attacks.value;
        let metal = if metals.is_empty() {
            "Cu"
        } else {
            random.pick(metals)
        };
        piece.insert(
            "base".to_owned(),
            json!({"metal": {"id": metal, "thickness_m": random.within(4e-4, 2e-3)}}),
        );
        piece.insert("open_frac".to_owned(), json!(random.within(0.05, 1.0)));
        piece.insert("artwork".to_owned(), artwork(random));
    } else {
        let base = random.pick(&["Cu", "Ag925", "C26000", "S30400", "Fe", "Al"]);
        let base = match random.below(4) {
            0 => json!("unknown"),
            1 => json!({"nonconductor": {"coat": random.pick(&["graphite", "copper", "silver"])}}),
            _ => json!({"metal": {"id": base}}),
        };
        maybe(random, &mut piece, "base", base);
        if random.once_in(3) {
            piece.insert(
                "min_over_mean_ratio".to_owned(),
                json!(random.within(0.2, 1.0)),
            );
        }
        if random.once_in(3) {
            piece.insert(
                "fit".to_owned(),
                json!({"bore_m": random.within(0.014, 0.022), "wanted_bore_m": random.within(0.013, 0.02)}),
            );
        }
    }
    Value::Object(piece)
}

fn artwork(random: &mut Random) -> Value {
    json!({"opening_m": random.within(2e-4, 5e-3), "land_wanted_m": random.within(1e-4, 1e-3),
        "etch_factor_ratio": random.within(0.8, 2.0), "sides": random.pick(&["one", "both"]),
        "model": random.pick(&["flat", "groove"]),
        "resist": random.pick(&["toner", "pen", "varnish", "dry_film", "vinyl"]),
        "lead": random.pick(&["plus", "plus", "plus", "minus"])})
}

fn bath(solution: &Solution, random: &mut Random) -> Value {
    let mut bath = Map::new();
    bath.insert("id".to_owned(), json!("b1"));
    bath.insert("solution".to_owned(), json!(solution.id));
    let volume = random.within(2e-4, 6e-3);
    maybe(random, &mut bath, "volume_m3", json!(volume));
    let holds = json!([{"metal": solution.metal, "now_kg_per_m3": random.within(1.0, 80.0),
        "floor_kg_per_m3": random.within(0.5, 30.0)}]);
    maybe(random, &mut bath, "holds", holds);
    let materials = Catalogue::standard().materials;
    let counter = json!({"material": materials[random.below(materials.len())].id, "distance_m": random.within(0.02, 0.2),
        "arrangement": random.pick(&["one_side", "both_sides", "turned", "all_round"])});
    maybe(random, &mut bath, "counter", counter);
    Value::Object(bath)
}

fn drive(random: &mut Random) -> Value {
    match random.below(6) {
        0 => json!("advised"),
        1 => json!("all_supply"),
        2 => json!({"current_A": random.within(0.005, 2.0)}),
        _ => json!({"density_A_per_m2": random.within(10.0, 500.0)}),
    }
}

fn until(etches: bool, random: &mut Random) -> Value {
    let of = random.pick(&["keepsake", "earring", "pendant", "ring", "handled"]);
    match random.below(8) {
        0 => json!({"time_s": random.within(30.0, 60_000.0)}),
        1 => json!({"mass_kg": random.within(1e-5, 5e-3)}),
        2 => json!({"clock": format!("{:02}:{:02}", random.below(24), random.below(60))}),
        3 | 4 if etches => json!({"depth_m": random.within(2e-5, 8e-4)}),
        3 => json!({ "use": of }),
        4 => json!({"thinnest_m": random.within(1e-7, 2e-4)}),
        5 if !etches => json!({"wear": {"use": of, "lasts_s": random.within(1e6, 1e9)}}),
        _ => json!({"mean_m": random.within(1e-7, 4e-4)}),
    }
}

/// A line with something wrong in it. Lines are ASCII.
fn damaged(line: String, random: &mut Random) -> String {
    let place = random.below(line.len());
    match random.below(6) {
        0 => line[..place].to_owned(),
        1 => line.replacen("\"format\":1", "\"format\":2", 1),
        2 => line.replacen("\"format\":1", "\"format\":1,\"surplus\":[null]", 1),
        3 => line.replacen("_m\":0", "_m\":-0", 1),
        4 => line.replacen("\":0.", "\":\"0,", 1),
        // A digit that becomes an exponent, or nothing readable.
        _ => match line[place..].find(|c: char| c.is_ascii_digit()) {
            Some(at) => format!("{}e9{}", &line[..place + at], &line[place + at + 1..]),
            None => line,
        },
    }
}
