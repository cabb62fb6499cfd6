//! Areas and volumes of shapes against mensuration and meshes.

use crate::table::{Row, rows};
use geometry::{Shape, Surface};
use quantity::{Length, Quantity};

fn surface(row: &Row) -> Surface {
    let size = |column| row.maybe(column).map_or(Length::mm(0.0), Length::mm);
    let (first, second, third) = (size("first_mm"), size("second_mm"), size("third_mm"));
    match row.text("shape") {
        "torus" => Shape::Torus {
            bore: first,
            wire_d: second,
        },
        "band" => Shape::Band {
            bore: first,
            wall: second,
            width: third,
        },
        "cap" => Shape::Cap {
            outer_d: first,
            inner_d: second,
            height: third,
        },
        other => panic!("{row}: no shape {other}"),
    }
    .surface()
}

#[test]
fn areas_volumes_and_sizes_are_those_of_mensuration() {
    for row in &rows("shapes.csv") {
        let surface = surface(row);
        let got = match row.text("what") {
            "area" => surface.total().si() * 1e6,
            "inside" => surface.inside.si() * 1e6,
            "volume" => surface.volume.map_or(f64::NAN, |v| v.si()) * 1e9,
            "longest" => surface.longest.si() * 1e3,
            other => panic!("{row}: no such figure {other}"),
        };
        row.expect_part(got, row.number("tolerance_percent") / 100.0);
    }
}

#[test]
fn inside_and_outside_make_up_the_whole() {
    for row in &rows("shapes.csv") {
        let surface = surface(row);
        assert!(surface.inside.si() > 0.0, "{row}");
        assert!(surface.outside.si() > surface.inside.si(), "{row}");
    }
}
