//! Every formula of the working, by id, as it is written down.

use crate::expr::Expr::{self, Add, Div, E, Mul, Number, Pi, Pow, Sqrt, Sub, Value};

/// Every formula of the working, by id.
pub const FORMULAS: &[(&str, Expr)] = &[
    (
        "equivalent",
        Div(
            &Value("molar_mass"),
            &Mul(&Value("valence"), &Value("faraday")),
        ),
    ),
    // pi^2 (bore + wire) wire
    (
        "area_torus",
        Mul(
            &Pow(&Pi, &Number(2.0)),
            &Mul(&Add(&Value("bore"), &Value("wire_d")), &Value("wire_d")),
        ),
    ),
    // 2 pi (bore + wall) (width + wall): outside pi (bore + 2 wall) width, inside pi bore width, two flat rings
    (
        "area_band",
        Mul(
            &Mul(&Number(2.0), &Pi),
            &Mul(
                &Add(&Value("bore"), &Value("wall")),
                &Add(&Value("width"), &Value("wall")),
            ),
        ),
    ),
    (
        "wire_area",
        Mul(
            &Mul(&Pi, &Value("wire_d")),
            &Mul(&Value("wet"), &Value("wires")),
        ),
    ),
    (
        "wetted",
        Mul(
            &Add(&Value("piece_area"), &Value("wire_area")),
            &Value("count"),
        ),
    ),
    ("wanted", Mul(&Value("density"), &Value("wetted"))),
    // By area, where contacts are not counted.
    (
        "share",
        Div(
            &Add(&Value("piece_area"), &Value("wire_area")),
            &Value("wetted"),
        ),
    ),
    // Resistance of a piece's branch: contact, lead, its surface and the solution in front of it. Shares go as 1 over it.
    (
        "branch",
        Add(
            &Add(&Value("contact"), &Value("lead")),
            &Div(
                &Add(
                    &Div(&Value("slope"), &Value("density")),
                    &Div(&Value("distance"), &Value("conductivity")),
                ),
                &Add(&Value("piece_area"), &Value("wire_area")),
            ),
        ),
    ),
    // d (d + 4 T), its root: a wire's metal is pi/4 (d1^2 - d^2) a length, that of the charge pi d T.
    (
        "witness",
        Sqrt(&Mul(
            &Value("witness_d"),
            &Add(&Value("witness_d"), &Mul(&Number(4.0), &Value("mean"))),
        )),
    ),
    // As a wire of a gauge, the surface by which the work is too small for the supply's lowest current.
    (
        "thief",
        Div(
            &Mul(
                &Value("wetted"),
                &Sub(&Div(&Value("lowest"), &Value("wanted")), &Number(1.0)),
            ),
            &Mul(&Pi, &Value("gauge")),
        ),
    ),
    (
        "growth",
        Div(
            &Mul(
                &Mul(&Value("equivalent"), &Value("efficiency")),
                &Div(&Value("flows"), &Value("wetted")),
            ),
            &Value("metal_density"),
        ),
    ),
    (
        "time",
        Div(&Sub(&Value("target"), &Value("reached")), &Value("growth")),
    ),
    (
        "mean",
        Add(&Value("reached"), &Mul(&Value("growth"), &Value("time"))),
    ),
    ("charge", Mul(&Value("flows"), &Value("time"))),
    (
        "mass",
        Mul(
            &Mul(&Value("equivalent"), &Value("efficiency")),
            &Mul(
                &Value("charge"),
                &Div(&Value("piece_area"), &Value("wetted")),
            ),
        ),
    ),
    (
        "wagner",
        Div(
            &Mul(
                &Mul(&Value("conductivity"), &Value("evenness_factor")),
                &Div(&Value("slope"), &Value("density")),
            ),
            &Value("scale"),
        ),
    ),
    ("thinnest", Mul(&Value("grown"), &Value("min_over_mean"))),
    (
        "limiting",
        Div(
            &Mul(
                &Mul(&Value("valence"), &Value("faraday")),
                &Mul(&Value("diffusivity"), &Value("metal_content")),
            ),
            &Mul(&Value("molar_mass"), &Value("layer")),
        ),
    ),
    (
        "volts",
        Add(
            &Div(
                &Mul(&Value("density"), &Value("distance")),
                &Value("conductivity"),
            ),
            &Value("surface_volts"),
        ),
    ),
    // d (1 + (pi / 2) d / (EF w))
    (
        "flat_for_groove",
        Mul(
            &Value("depth"),
            &Add(
                &Number(1.0),
                &Div(
                    &Mul(&Div(&Pi, &Number(2.0)), &Value("depth")),
                    &Mul(&Value("etch_factor"), &Value("opening")),
                ),
            ),
        ),
    ),
    (
        "stalls",
        Div(
            &Value("bare_volts"),
            &Add(
                &Value("front"),
                &Div(&Value("bare_volts"), &Value("limiting")),
            ),
        ),
    ),
    (
        "bites",
        Div(
            &Mul(
                &Value("flows"),
                &Sub(&Value("ceiling"), &Value("surface_volts")),
            ),
            &Sub(&Value("volts"), &Value("surface_volts")),
        ),
    ),
    // (P / U) (1 - e^(-t / tau))
    (
        "warms",
        Mul(
            &Div(&Value("power"), &Value("heat_loss")),
            &Sub(
                &Number(1.0),
                &Pow(&E, &Sub(&Number(0.0), &Div(&Value("time"), &Value("tau")))),
            ),
        ),
    ),
    (
        "bore_after",
        Sub(&Value("bore"), &Mul(&Number(2.0), &Value("mean"))),
    ),
    (
        "bore_to_make",
        Add(&Value("wanted_bore"), &Mul(&Number(2.0), &Value("mean"))),
    ),
];
