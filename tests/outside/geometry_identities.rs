//! What holds for every shape: scaling, sums, growth with each size, outlines.

use geometry::{Covering, Shape};
use proptest::prelude::*;
use quantity::{Length, Quantity};

/// Any shape, its usual sizes each changed by up to a factor of 4, without contradictions; its word any of those accepted.
fn any_shape() -> impl Strategy<Value = Shape> {
    let factor = 0.25..4.0f64;
    (
        0..Shape::TYPICAL.len(),
        [factor.clone(), factor.clone(), factor.clone(), factor],
        0..8usize,
        1..5u32,
    )
        .prop_map(|(which, factors, word, count)| {
            let usual = Shape::TYPICAL[which];
            let sized = usual.map_sizes(|n, size| size * factors[n]);
            let worded = match usual.word() {
                Some((_, words)) => sized.with_word(words[word % words.len()]),
                None => None,
            };
            worded.unwrap_or(sized).with_count(count)
        })
        .prop_filter("sizes go together", |shape| shape.contradiction().is_none())
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (a.abs() + b.abs()) + 1e-300
}

/// Sizes that do not raise the area when they alone grow, and why.
fn shrinks(shape: &Shape, name: &str) -> bool {
    match shape {
        // Steeper turns of the same length need less wire.
        Shape::Coil { .. } | Shape::TwistedPair { .. } | Shape::Mesh { .. } => name == "pitch",
        // Fewer links to the length.
        Shape::Chain { .. } => name == "link_length",
        // A side that flares less is shorter; a bottom that widens under a covered or open end may shorten it.
        Shape::Frustum {
            ends: Covering::Covered,
            ..
        } => name == "base_d" || name == "top_d",
        // A thicker wall narrows the hollow; widening the narrower end takes the slope away.
        Shape::Cup {
            opening_d, base_d, ..
        } => {
            name == "wall"
                || name
                    == if opening_d < base_d {
                        "opening_d"
                    } else {
                        "base_d"
                    }
        }
        Shape::Bezel { .. } => name == "wall",
        // A hole takes more of both faces than its wall gives back.
        Shape::PiercedSheet { .. } => name == "hole_d",
        // Beyond half a sphere a wider mouth at the same height closes the shell less.
        Shape::Cap { .. } => name == "outer_d",
        // A wider link of the same length has shorter straights only; a thicker wire takes from its axis.
        Shape::Link { .. } => name == "wire_d",
        _ => false,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn sizes_times_s_are_areas_times_s2_and_volumes_times_s3(shape in any_shape(), s in 0.1..10.0f64) {
        let (small, large) = (shape.surface(), shape.map_sizes(|_, size| size * s).surface());
        prop_assert!(close(large.outside.si(), small.outside.si() * s * s), "{shape:?}");
        prop_assert!(close(large.inside.si(), small.inside.si() * s * s), "{shape:?}");
        prop_assert!(close(large.longest.si(), small.longest.si() * s), "{shape:?}");
        prop_assert_eq!(large.volume.is_some(), small.volume.is_some());
        if let (Some(a), Some(b)) = (large.volume, small.volume) {
            prop_assert!(close(a.si(), b.si() * s * s * s), "{shape:?}");
        }
    }

    #[test]
    fn outside_and_inside_make_up_the_whole(shape in any_shape()) {
        let surface = shape.surface();
        prop_assert_eq!(surface.outside.si() + surface.inside.si(), surface.total().si());
        prop_assert!(surface.outside.si() >= 0.0 && surface.inside.si() >= 0.0);
        prop_assert!(surface.total().si() > 0.0, "{shape:?}");
        prop_assert!(surface.longest.si() > 0.0);
        prop_assert_eq!(surface.in_recess().inside, surface.total());
        let twice = surface.and(surface);
        prop_assert_eq!(twice.total(), surface.times(2).total());
    }

    #[test]
    fn a_larger_size_means_more_surface(shape in any_shape(), which in 0..4usize, more in 1.001..1.5f64) {
        let names = shape.size_names();
        let which = which % names.len();
        let larger = shape.map_sizes(|n, size| if n == which { size * more } else { size });
        prop_assume!(larger.contradiction().is_none());
        if !shrinks(&shape, names[which]) {
            prop_assert!(
                larger.surface().total().si() >= shape.surface().total().si() * (1.0 - 1e-12),
                "{} of {shape:?} times {more}", names[which]
            );
        }
    }

    #[test]
    fn no_solid_has_less_surface_than_a_ball_of_its_volume(shape in any_shape()) {
        // What touches and hides is not counted; covered faces neither.
        let hides = matches!(shape, Shape::TwistedPair { .. } | Shape::Chain { .. } | Shape::Coil { .. });
        let bare = shape.with_word("bare").unwrap_or(shape);
        if let Some(k) = bare.area_factor() {
            prop_assert!(hides || k.si() >= 4.8359, "{} of {bare:?}", k.si());
        }
    }

    #[test]
    fn the_scale_lies_within_the_piece(shape in any_shape()) {
        let (scale, longest) = (shape.scale(), shape.surface().longest);
        prop_assert!(scale.si() > 0.0);
        prop_assert!(scale.si() <= longest.si() / 2.0 * (1.0 + 1e-12), "{shape:?}");
    }

    #[test]
    fn an_outline_is_closed_and_finite(shape in any_shape()) {
        let rings = shape.outline();
        prop_assert!(!rings.is_empty() && !rings[0].hole);
        for ring in &rings {
            prop_assert!(ring.points.len() >= 3, "{shape:?}");
            for p in &ring.points {
                prop_assert!(p.x.si().is_finite() && p.y.si().is_finite(), "{shape:?}");
            }
        }
    }

    #[test]
    fn whatever_the_sizes_nothing_breaks(which in 0..Shape::TYPICAL.len(), sizes in [1e-7..10.0f64, 1e-7..10.0, 1e-7..10.0, 1e-7..10.0]) {
        let shape = Shape::TYPICAL[which].map_sizes(|n, _| Length::from_si(sizes[n]));
        let surface = shape.surface();
        prop_assert!(surface.outside.si().is_finite() && surface.outside.si() >= 0.0, "{shape:?}");
        prop_assert!(surface.inside.si().is_finite() && surface.inside.si() >= 0.0, "{shape:?}");
        prop_assert!(surface.volume.is_none_or(|v| v.si().is_finite() && v.si() >= 0.0), "{shape:?}");
        let _ = (shape.scale(), shape.recess(), shape.contradiction(), shape.area_factor(), shape.outline());
    }
}

#[test]
fn every_shape_is_listed_once_under_its_id() {
    let ids: Vec<_> = Shape::TYPICAL.iter().map(Shape::id).collect();
    assert_eq!(ids, Shape::IDS);
    for shape in Shape::TYPICAL {
        assert_eq!(shape.contradiction(), None, "{}", shape.id());
        assert_eq!(Shape::of_id(shape.id()), Some(*shape));
    }
    let once: std::collections::BTreeSet<_> = ids.iter().collect();
    assert_eq!(once.len(), ids.len());
}

#[test]
fn a_key_is_its_name_with_the_unit() {
    for shape in Shape::TYPICAL {
        let tree = serde_json::to_value(shape).expect("a shape is JSON");
        let group = tree[shape.id()].as_object().expect("a group under its id");
        let mut keys: Vec<String> = shape
            .size_names()
            .iter()
            .map(|n| format!("{n}_m"))
            .collect();
        keys.extend(shape.word().map(|(key, _)| key.to_owned()));
        keys.extend(shape.count_key().map(str::to_owned));
        keys.sort();
        let got: Vec<String> = group.keys().cloned().collect();
        assert_eq!(got, keys, "{}", shape.id());
    }
}

#[test]
fn a_bore_that_must_fit_is_the_first_size() {
    for shape in Shape::TYPICAL {
        if let Some(bore) = shape.surface().bore {
            let mut first = None;
            shape.map_sizes(|n, size| {
                if n == 0 {
                    first = Some(size);
                }
                size
            });
            assert_eq!((shape.size_names()[0], Some(bore)), ("bore", first));
        }
    }
}

#[test]
fn special_cases_meet_their_simpler_shapes() {
    let shape = crate::geometry_reference::shape_of;
    for (a, b) in [
        (
            "ellipsoid length=10 width=10 height=10",
            "sphere diameter=10",
        ),
        (
            "cone base_d=8 height=5 base=covered",
            "frustum base_d=8 top_d=0.0000001 height=5 ends=covered",
        ),
        (
            "snail diameter=8 height=5",
            "cone base_d=8 height=5 base=covered",
        ),
        (
            "tube bore=5 wall=0.5 length=20",
            "band bore=5 wall=0.5 width=20",
        ),
        ("link length=20 width=20 wire_d=2", "torus bore=16 wire_d=2"),
        (
            "frustum base_d=8 top_d=8 height=5",
            "rod diameter=8 length=5",
        ),
        ("disc diameter=8 thickness=5", "rod diameter=8 length=5"),
        (
            "sheet length=8 width=5 thickness=2",
            "box length=8 width=5 height=2",
        ),
        (
            "seed_head diameter=8 height=20",
            "ellipsoid length=20 width=8 height=8",
        ),
        (
            "half_ellipsoid length=10 width=10 height=5 base=covered",
            "dome opening_d=10 height=5",
        ),
        (
            "cup opening_d=12 base_d=12 height=4 wall=0.5",
            "bezel outer_d=12 height=4 wall=0.5",
        ),
    ] {
        let (x, y) = (
            shape(a).surface().total().si(),
            shape(b).surface().total().si(),
        );
        // A dome counts both its faces.
        let y = if b.starts_with("dome") { y / 2.0 } else { y };
        assert!((x / y - 1.0).abs() < 1e-6, "{a}: {x}; {b}: {y}");
    }
    let hole = shape("hole diameter=3 depth=0.8").surface().inside.si() * 4.0;
    let pierced =
        shape("pierced_sheet length=40 width=25 thickness=0.8 hole_d=3 holes_count=4").surface();
    assert!(close(hole, pierced.inside.si()));
}

#[test]
fn sizes_that_cannot_be_are_named() {
    let shape = crate::geometry_reference::shape_of;
    for (text, blamed) in [
        ("cap outer_d=16 inner_d=16 height=9", "inner_d"),
        (
            "pierced_sheet length=10 width=10 thickness=1 hole_d=6 holes_count=4",
            "hole_d",
        ),
        ("cup opening_d=16 base_d=10 height=12 wall=5", "wall"),
        ("cup opening_d=16 base_d=10 height=0.5 wall=0.8", "wall"),
        ("bezel outer_d=12 height=4 wall=6", "wall"),
        ("coil bore=9 wire_d=1 pitch=0.9 length=20", "pitch"),
        ("twisted_pair wire_d=0.8 pitch=1.5 length=60", "pitch"),
        ("link length=9 width=2 wire_d=1", "width"),
        ("link length=2 width=6 wire_d=1", "length"),
        (
            "chain length=100 link_length=2 link_width=6 wire_d=1",
            "link_length",
        ),
        (
            "chain length=100 link_length=9 link_width=2 wire_d=1",
            "link_width",
        ),
        ("mesh length=30 width=20 wire_d=1.2 pitch=1.2", "pitch"),
    ] {
        let shape = shape(text);
        let wrong = shape
            .contradiction()
            .unwrap_or_else(|| panic!("{text}: accepted"));
        assert_eq!(shape.size_names()[wrong.size], blamed, "{text}");
    }
    assert_eq!(
        shape("coil bore=9 wire_d=1 pitch=1 length=20").contradiction(),
        None,
        "close turns"
    );
}
