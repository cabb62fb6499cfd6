//! Words of the working: what each step is, and what each value is called.

use planner::answer::{Origin, Whence};
use planner::{MethodId, Source};

/// What a step of the working finds.
pub fn title(id: &str) -> &'static str {
    match id {
        "equivalent" => "Metal moved by a charge (Faraday)",
        "area_torus" => "Surface of a round-wire ring",
        "area_band" => "Surface of a band ring",
        "wire_area" => "Surface of the hanging wire",
        "wetted" => "All that gets wet",
        "wanted" => "Current that is right",
        "share" => "Its share of the current, by area",
        "branch" => "Resistance on its way",
        "witness" => "What calipers read on the witness wire",
        "thief" => "Wire to hang beside the work",
        "growth" => "Growth of the layer",
        "time" => "Time to the aim",
        "mean" => "Thickness on average",
        "charge" => "Charge",
        "mass" => "Metal moved at the piece",
        "wagner" => "Wagner number: how even it gets",
        "thinnest" => "Grown at the thinnest place",
        "limiting" => "Limiting density of the bath",
        "volts" => "Volts to expect",
        "flat_for_groove" => "Flat depth that costs as much as the groove",
        "stalls" => "Density below which graphite is never covered",
        "bites" => "Current at which the ceiling is reached",
        "warms" => "Warming of the bath",
        "bore_after" => "Inside across after growth",
        "bore_to_make" => "Inside across to make",
        _ => "",
    }
}

/// The symbol of a value in a formula.
pub fn symbol(name: &str) -> &'static str {
    match name {
        "molar_mass" => "M",
        "valence" => "z",
        "faraday" => "F",
        "equivalent" => "k",
        "bore" => "d",
        "wire_d" => "w",
        "wall" => "s",
        "width" => "b",
        "wet" => "l",
        "wires" | "count" => "n",
        "piece_area" => "A_p",
        "wire_area" => "A_w",
        "smooth_area" => "A_0",
        "wetted" => "A",
        "density" => "i",
        "wanted" => "I_0",
        "efficiency" => "η",
        "flows" => "I",
        "metal_density" => "ρ",
        "growth" => "r",
        "target" => "T",
        "reached" => "T_0",
        "time" => "t",
        "mean" => "T_m",
        "charge" => "Q",
        "mass" => "m",
        "conductivity" => "κ",
        "evenness_factor" => "f",
        "slope" => "β",
        "scale" => "L",
        "wagner" => "Wa",
        "grown" => "ΔT",
        "min_over_mean" => "q",
        "thinnest" => "T_min",
        "diffusivity" => "D",
        "metal_content" => "c",
        "layer" => "δ",
        "limiting" => "i_L",
        "distance" => "g",
        "surface_volts" => "V_0",
        "volts" => "V",
        "bare_volts" => "E_b",
        "front" => "R_p",
        "stalls_below" => "i_s",
        "ceiling" => "V_c",
        "bites" => "I_c",
        "power" => "P",
        "heat_loss" => "U",
        "tau" => "τ",
        "rise" => "ΔK",
        "depth" => "D",
        "etch_factor" => "EF",
        "opening" => "w",
        "flat" => "D_0",
        "share" => "x",
        "branch" => "R",
        "contact" => "R_c",
        "lead" => "R_l",
        "witness_d" => "d",
        "witness" => "d_1",
        "lowest" => "I_min",
        "gauge" => "w",
        "thief" => "l",
        "bore_after" => "d_1",
        "bore_to_make" => "d_0",
        "wanted_bore" => "d_w",
        _ => "",
    }
}

/// What a value is called.
pub fn value(name: &str) -> &'static str {
    match name {
        "molar_mass" => "mass of a mole",
        "valence" => "charges per atom",
        "faraday" => "charge of a mole of electrons",
        "equivalent" => "metal per charge",
        "bore" => "inside across",
        "wire_d" => "wire across",
        "wall" => "wall",
        "width" => "width",
        "wet" => "length in the liquid",
        "wires" => "wires",
        "count" => "pieces",
        "piece_area" => "surface of the piece",
        "wire_area" => "surface of its wire",
        "smooth_area" => "surface",
        "wetted" => "all that gets wet",
        "density" => "current density",
        "wanted" => "current that is right",
        "efficiency" => "share of the charge that makes metal",
        "flows" => "current that flows",
        "metal_density" => "density of the metal",
        "growth" => "growth",
        "target" => "thickness aimed at",
        "reached" => "already there",
        "time" => "time",
        "mean" => "thickness on average",
        "charge" => "charge",
        "mass" => "metal moved",
        "conductivity" => "conductivity of the bath",
        "evenness_factor" => "factor on it",
        "slope" => "slope of the polarisation",
        "scale" => "half the longest size",
        "wagner" => "Wagner number",
        "grown" => "grown on average in this step",
        "min_over_mean" => "thinnest over average, from the table",
        "thinnest" => "grown at the thinnest",
        "diffusivity" => "how fast its ions spread",
        "metal_content" => "metal in the bath",
        "layer" => "still layer at the surface",
        "limiting" => "limiting density",
        "distance" => "anode to piece",
        "surface_volts" => "both surfaces and leads",
        "volts" => "volts",
        "bare_volts" => "volts that bare graphite needs",
        "front" => "resistance of the growing front",
        "stalls_below" => "density that stalls",
        "ceiling" => "ceiling",
        "bites" => "current at the ceiling",
        "power" => "power",
        "heat_loss" => "heat lost by a degree",
        "tau" => "time constant",
        "rise" => "warmer than the room",
        "depth" => "depth",
        "etch_factor" => "depth over undercut",
        "opening" => "width of the opening",
        "flat" => "flat depth",
        "share" => "share of the current",
        "branch" => "resistance on its way",
        "contact" => "contact",
        "lead" => "lead",
        "witness_d" => "witness wire across",
        "witness" => "across, by calipers",
        "lowest" => "lowest of the supply",
        "gauge" => "wire across",
        "thief" => "length of wire",
        "bore_after" => "inside across after",
        "bore_to_make" => "inside across to make",
        "wanted_bore" => "inside across wanted",
        _ => "",
    }
}

/// Where a value comes from.
pub fn source(source: Source) -> String {
    match source {
        Source::Published { work, locator } => {
            let title = planner::Catalogue::standard()
                .works
                .iter()
                .find(|w| w.id == work)
                .map_or("", |w| w.title);
            format!("{title}; {locator}")
        }
        Source::Computed {
            method: MethodId::FiniteElements,
        } => "computed here by finite elements".to_owned(),
        Source::Computed { .. } => "worked out here".to_owned(),
        Source::CommonPractice => "common practice, no source".to_owned(),
        Source::FromMemory => "from memory".to_owned(),
    }
}

/// Where a value of the working comes from.
pub fn whence(whence: &Whence) -> String {
    match whence {
        Whence::Worked => "worked out".to_owned(),
        Whence::From(Origin::Given) => "yours".to_owned(),
        Whence::From(Origin::Assumed) => "yours, in the catalogue's place".to_owned(),
        Whence::From(Origin::Catalogue(from)) => source(*from),
    }
}

/// Before the sources of a formula.
pub const SOURCES: &str = "The formula: ";

#[cfg(test)]
mod tests {
    use super::*;
    use planner::expr::Expr;
    use planner::working::FORMULAS;

    fn names(e: &Expr, out: &mut Vec<&'static str>) {
        match e {
            Expr::Value(name) => out.push(name),
            Expr::Number(_) | Expr::Pi | Expr::E => {}
            Expr::Sqrt(a) => names(a, out),
            Expr::Add(a, b)
            | Expr::Sub(a, b)
            | Expr::Mul(a, b)
            | Expr::Div(a, b)
            | Expr::Pow(a, b)
            | Expr::Min(a, b)
            | Expr::Max(a, b) => {
                names(a, out);
                names(b, out);
            }
        }
    }

    #[test]
    fn every_formula_and_value_has_words() {
        for (id, formula) in FORMULAS {
            assert!(!title(id).is_empty(), "{id}");
            let mut all = Vec::new();
            names(formula, &mut all);
            for name in all {
                assert!(
                    !symbol(name).is_empty() && !value(name).is_empty(),
                    "{name}"
                );
            }
        }
    }
}
