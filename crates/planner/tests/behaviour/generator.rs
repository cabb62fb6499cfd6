//! Random Jobs within the declared bounds: the bounds are the fields' own.

use chemistry::{Process, Stirring};
use field::{Arrangement, Opening};
use geometry::Shape;
use planner::FieldPath;
use planner::fields::{self, CountField, Field};
use planner::job::{
    Area, Artwork, Assume, Base, Bath, Bench, Class, Coat, Coated, Contact, Counter, Drive,
    Effects, Extent, Fit, Hanger, Holds, InBath, Job, Method, Moment, Own, Part, Piece, Place,
    Price, SpreadAt, Start, Step, Stock, Supply, Switch, Until, Use, piece,
};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::BoxedStrategy;
use quantity::{AnyQuantity, Quantity};
use serde_json::{Value, json};

/// A quantity within a field's bounds: anywhere, small ones as often as large ones, and the ends.
pub fn within<Q: Quantity>(field: &Field<Q>) -> BoxedStrategy<Q> {
    let (least, most) = (field.least.si(), field.most.si());
    let floor = if least > 0.0 { least } else { most * 1e-6 };
    let inside = move |x: f64| Q::from_si(x.clamp(least, most));
    prop_oneof![
        3 => (0.0..=1.0f64).prop_map(move |u| inside(floor * libm::pow(most / floor, u))),
        1 => (least..=most).prop_map(inside),
        1 => select(vec![least, most]).prop_map(inside),
    ]
    .boxed()
}

fn counted(field: &CountField) -> BoxedStrategy<u32> {
    let (least, most) = (field.least, field.most);
    prop_oneof![
        3 => least..=(if most < least + 4 { most } else { least + 4 }),
        1 => least..=most,
    ]
    .boxed()
}

fn shape() -> BoxedStrategy<Shape> {
    prop_oneof![
        (within(&fields::BORE), within(&fields::RING_WIRE))
            .prop_map(|(bore, wire_d)| Shape::Torus { bore, wire_d }),
        (
            within(&fields::BORE),
            within(&fields::WALL),
            within(&fields::WIDTH)
        )
            .prop_map(|(bore, wall, width)| Shape::Band { bore, wall, width }),
        (
            within(&fields::INNER_D),
            1.001..1.5f64,
            within(&fields::CAP_HEIGHT)
        )
            .prop_filter_map(
                "an outer diameter within its bounds",
                |(inner_d, more, height)| {
                    let outer_d = inner_d * more;
                    (outer_d.si() >= fields::OUTER_D.least.si()
                        && outer_d.si() <= fields::OUTER_D.most.si())
                    .then_some(Shape::Cap {
                        outer_d,
                        inner_d,
                        height,
                    })
                }
            ),
    ]
    .boxed()
}

fn parts() -> BoxedStrategy<Extent> {
    prop::collection::vec(
        (
            shape(),
            of(within(&fields::TEXTURE_OUTSIDE)),
            counted(&fields::TIMES),
        ),
        1..4,
    )
    .prop_map(|parts| {
        Extent::Parts(
            parts
                .into_iter()
                .zip(["a", "b", "c"])
                .map(|((shape, texture_outside, times), id)| Part {
                    id: id.to_owned(),
                    shape,
                    texture_outside,
                    times,
                })
                .collect(),
        )
    })
    .boxed()
}

fn area() -> BoxedStrategy<Extent> {
    let methods = [
        Method::Mesh,
        Method::Photo,
        Method::Tracing,
        Method::Foil,
        Method::Sizes,
        Method::Eye,
    ];
    (
        within(&fields::ONE_SIDE),
        counted(&fields::SIDES),
        of(within(&fields::TEXTURE)),
        of(select(methods.to_vec())),
    )
        .prop_map(|(one_side, sides, texture, method)| {
            Extent::Area(Area {
                one_side,
                sides,
                texture,
                method,
            })
        })
        .boxed()
}

fn base() -> BoxedStrategy<Base> {
    let coats = [Coat::Graphite, Coat::Copper, Coat::Silver, Coat::Other];
    prop_oneof![
        Just(Base::Unknown),
        of(within(&fields::STOCK)).prop_map(|thickness| Base::Metal(Stock {
            id: "Cu".to_owned(),
            thickness,
        })),
        (
            select(coats.to_vec()),
            of(within(&fields::SHEET)),
            counted(&fields::CONTACTS),
            of(within(&fields::GIRTH)),
            of(within(&fields::COAT_HEIGHT)),
        )
            .prop_map(|(coat, sheet, contacts, girth, height)| {
                Base::Nonconductor(Coated {
                    coat,
                    sheet,
                    contacts,
                    girth,
                    height,
                })
            }),
    ]
    .boxed()
}

fn hanger() -> BoxedStrategy<Hanger> {
    (
        within(&fields::HANGER_WIRE),
        within(&fields::HANGER_WET),
        counted(&fields::WIRES),
    )
        .prop_map(|(wire_d, wet, wires)| Hanger { wire_d, wet, wires })
        .boxed()
}

fn artwork() -> BoxedStrategy<Artwork> {
    (
        of(within(&fields::ART_OPENING)),
        of(within(&fields::ART_LAND)),
        of(within(&fields::ART_LENGTH)),
        of(within(&fields::ETCH_FACTOR)),
        of(select(vec![piece::Sides::One, piece::Sides::Both])),
        of(select(vec![piece::Model::Flat, piece::Model::Groove])),
        of(select(vec![
            piece::Resist::Toner,
            piece::Resist::Pen,
            piece::Resist::Varnish,
            piece::Resist::DryFilm,
            piece::Resist::Vinyl,
        ])),
        of(select(vec![piece::Lead::Plus, piece::Lead::Minus])),
    )
        .prop_map(
            |(opening, land_wanted, length, etch_factor, sides, model, resist, lead)| Artwork {
                opening,
                land_wanted,
                length,
                etch_factor,
                sides,
                model,
                resist,
                lead,
            },
        )
        .boxed()
}

fn moment() -> BoxedStrategy<Moment> {
    within(&fields::AFTER)
        .prop_map(|after| Moment {
            step: "s1".to_owned(),
            after,
        })
        .boxed()
}

/// A piece that this edition computes with.
fn plannable_piece() -> BoxedStrategy<Piece> {
    (
        "\\PC{0,8}",
        counted(&fields::COUNT),
        prop_oneof![parts(), area()],
        of(base()),
        of(hanger()),
        of(select(vec![Opening::To, Opening::Away])),
        of(within(&fields::MIN_OVER_MEAN)),
        of((
            of(within(&fields::FIT_BORE)),
            of(within(&fields::WANTED_BORE)),
        )),
    )
        .prop_map(
            |(label, count, extent, base, hanger, opening, min_over_mean, fit)| Piece {
                id: String::new(),
                label,
                count,
                extent: Some(extent),
                base,
                open: None,
                hanger,
                contact: None,
                opening,
                min_over_mean,
                fit: fit.map(|(bore, wanted)| Fit { bore, wanted }),
                artwork: None,
                joins: None,
                leaves: None,
            },
        )
        .boxed()
}

fn any_piece() -> BoxedStrategy<Piece> {
    (
        plannable_piece(),
        any::<bool>(),
        of(within(&fields::OPEN)),
        of((of(within(&fields::CONTACT)), of(within(&fields::LEAD)))),
        of(artwork()),
        of(moment()),
        of(moment()),
    )
        .prop_map(
            |(piece, known, open, contact, artwork, joins, leaves)| Piece {
                extent: piece.extent.filter(|_| known),
                open,
                contact: contact.map(|(contact, lead)| Contact { contact, lead }),
                artwork,
                joins,
                leaves,
                ..piece
            },
        )
        .boxed()
}

fn bath() -> BoxedStrategy<Bath> {
    let arrangements = [
        Arrangement::OneSide,
        Arrangement::BothSides,
        Arrangement::Turned,
        Arrangement::AllRound,
    ];
    (
        of(within(&fields::VOLUME)),
        of(within(&fields::PASSED)),
        of((
            of(within(&fields::HOLDS_NOW)),
            of(within(&fields::HOLDS_FLOOR)),
        )),
        of((
            of(Just("Cu".to_owned())),
            of(within(&fields::FACING)),
            of(within(&fields::DISTANCE)),
            of(select(arrangements.to_vec())),
        )),
    )
        .prop_map(|(volume, passed, holds, counter)| Bath {
            id: "b1".to_owned(),
            solution: "cu_acid_form".to_owned(),
            volume,
            passed,
            holds: holds
                .into_iter()
                .map(|(now, floor)| Holds {
                    metal: "Cu".to_owned(),
                    now,
                    floor,
                })
                .collect(),
            counter: counter.map(|(material, facing, distance, arrangement)| Counter {
                material,
                facing,
                distance,
                arrangement,
            }),
        })
        .boxed()
}

fn drive() -> BoxedStrategy<Drive> {
    prop_oneof![
        within(&fields::DENSITY).prop_map(Drive::Density),
        within(&fields::CURRENT).prop_map(Drive::Current),
        Just(Drive::Advised),
    ]
    .boxed()
}

fn use_of_a_piece() -> BoxedStrategy<Use> {
    select(vec![
        Use::Keepsake,
        Use::Earring,
        Use::Pendant,
        Use::Ring,
        Use::Handled,
    ])
    .boxed()
}

fn clock() -> BoxedStrategy<String> {
    (0..24u32, 0..60u32)
        .prop_map(|(h, m)| format!("{h:02}:{m:02}"))
        .boxed()
}

fn until() -> BoxedStrategy<Until> {
    prop_oneof![
        within(&fields::UNTIL_TIME).prop_map(Until::Time),
        within(&fields::UNTIL_MEAN).prop_map(Until::Mean),
        within(&fields::UNTIL_THINNEST).prop_map(Until::Thinnest),
        within(&fields::UNTIL_MASS).prop_map(Until::Mass),
        use_of_a_piece().prop_map(Until::Use),
        clock().prop_map(Until::Clock),
    ]
    .boxed()
}

fn step(drive: BoxedStrategy<Drive>, until: BoxedStrategy<Until>) -> BoxedStrategy<Step> {
    let stirrings = [Stirring::Still, Stirring::Gentle, Stirring::Vigorous];
    (
        select(stirrings.to_vec()),
        of(within(&fields::TEMPERATURE)),
        of(within(&fields::CEILING)),
        drive,
        until,
    )
        .prop_map(|(stirring, temperature, ceiling, drive, until)| Step {
            id: String::new(),
            places: Vec::new(),
            kind: Process::Electroform,
            stirring,
            temperature,
            ceiling,
            drive: Some(drive),
            until: Some(until),
        })
        .boxed()
}

fn bench() -> BoxedStrategy<Bench> {
    (
        of(within(&fields::LOWEST)),
        of(within(&fields::HIGHEST)),
        of(within(&fields::DISPLAY_STEP)),
        of(within(&fields::OFFSET)),
        of(within(&fields::HIGHEST_VOLTS)),
    )
        .prop_map(|(lowest, highest, display_step, offset, highest_volts)| {
            // What contradicts the highest current is left out.
            let fits = |q: &quantity::Current| highest.is_none_or(|h| q.si() <= h.si());
            Bench {
                lowest: lowest.filter(fits),
                highest,
                display_step: display_step.filter(fits),
                offset,
                highest_volts,
            }
        })
        .boxed()
}

fn start() -> BoxedStrategy<Start> {
    (
        (1970..2200u32, 1..=12u32, 1..=28u32),
        clock(),
        within(&fields::OF_DAY_FROM),
        within(&fields::OF_DAY_TO),
    )
        .prop_map(|((y, m, d), clock, night_from, night_to)| Start {
            local: format!("{y:04}-{m:02}-{d:02}T{clock}"),
            night_from,
            night_to,
        })
        .boxed()
}

fn own_value() -> BoxedStrategy<Assume> {
    fn at<Q: Quantity>(name: &'static str, field: &Field<Q>) -> BoxedStrategy<Assume> {
        within(field)
            .prop_map(move |value| Assume {
                at: FieldPath::new(&format!("baths/b1/{name}")),
                value: AnyQuantity::from(value),
            })
            .boxed()
    }
    prop_oneof![
        at("efficiency", &fields::EFFICIENCY),
        at("conductivity", &fields::CONDUCTIVITY),
        at("evenness_factor", &fields::EVENNESS_FACTOR),
        at("surface_volts", &fields::SURFACE_VOLTS),
    ]
    .boxed()
}

fn own_spread() -> BoxedStrategy<SpreadAt> {
    let known = [
        "pieces/p1/extent",
        "baths/b1/efficiency",
        "baths/b1/conductivity",
        "baths/b1/evenness_factor",
    ];
    (select(known.to_vec()), within(&fields::SPREAD))
        .prop_map(|(at, spread)| SpreadAt {
            at: FieldPath::new(at),
            spread,
        })
        .boxed()
}

/// Ids in order, and everything in the one bath.
fn put_together(mut pieces: Vec<Piece>, mut steps: Vec<Step>) -> (Vec<Piece>, Vec<Step>) {
    for (n, piece) in pieces.iter_mut().enumerate() {
        piece.id = format!("p{}", n + 1);
    }
    for (n, step) in steps.iter_mut().enumerate() {
        step.id = format!("s{}", n + 1);
        step.places = vec![InBath {
            bath: "b1".to_owned(),
            pieces: pieces.iter().map(|p| p.id.clone()).collect(),
        }];
    }
    (pieces, steps)
}

/// A job that this edition reads without a problem and can plan, save where a thinnest place is asked for of pieces
/// without a known evenness.
pub fn plannable() -> BoxedStrategy<Job> {
    (
        prop::collection::vec(plannable_piece(), 1..4),
        bath(),
        prop::collection::vec(step(drive(), until()), 1..=2),
        of(bench()),
        prop::collection::vec(own_value(), 0..3),
        prop::collection::vec(own_spread(), 0..3),
        select(vec![Place::Home, Place::Class, Place::Shop]),
        start(),
    )
        .prop_map(
            |(pieces, bath, steps, bench, assume, spreads, place, start)| {
                let (pieces, steps) = put_together(pieces, steps);
                Job {
                    pieces,
                    baths: vec![bath],
                    steps,
                    supply: bench.map(Supply::ConstantCurrent),
                    assume,
                    spreads,
                    place,
                    start: Some(start),
                    ..Job::default()
                }
            },
        )
        .boxed()
}

fn own() -> BoxedStrategy<Vec<Value>> {
    prop::collection::vec("[a-z]{1,6}".prop_map(|id| json!({ "id": id })), 0..3).boxed()
}

fn switch() -> BoxedStrategy<Switch> {
    select(vec![Switch::Off, Switch::On]).boxed()
}

/// A job with anything in it that the format has.
pub fn any_job() -> BoxedStrategy<Job> {
    let drive = prop_oneof![3 => drive(), 1 => Just(Drive::AllSupply)].boxed();
    let until = prop_oneof![5 => until(), 1 => within(&fields::UNTIL_DEPTH).prop_map(Until::Depth)];
    let kinds = [Process::Electroform, Process::Electroplate, Process::Etch];
    let supply = prop_oneof![
        3 => bench().prop_map(Supply::ConstantCurrent),
        1 => Just(Supply::ConstantVoltage),
        1 => Just(Supply::Both),
        1 => Just(Supply::FixedSettings),
    ];
    let steps = prop::collection::vec(
        (
            step(drive, until.boxed()),
            select(kinds.to_vec()),
            any::<bool>(),
            any::<bool>(),
        )
            .prop_map(|(step, kind, driven, ends)| Step {
                kind,
                drive: step.drive.filter(|_| driven),
                until: step.until.filter(|_| ends),
                ..step
            }),
        0..4,
    );
    let later = (
        own(),
        own(),
        switch(),
        switch(),
        of("[A-Z]{2}"),
        of(within(&fields::PRICE)),
        of((counted(&fields::STUDENTS), of(within(&fields::LESSON)))),
        any::<bool>(),
    );
    (
        plannable(),
        prop::collection::vec(any_piece(), 0..3),
        steps,
        of(supply),
        later,
    )
        .prop_map(
            |(
                job,
                pieces,
                steps,
                supply,
                (metals, solutions, growth, contacts, country, price, class, starts),
            )| {
                let (pieces, steps) = put_together(pieces, steps);
                Job {
                    pieces,
                    steps,
                    supply,
                    own: Own { metals, solutions },
                    effects: Effects { growth, contacts },
                    country,
                    prices: price
                        .into_iter()
                        .map(|price| Price {
                            metal: "Cu".to_owned(),
                            price,
                        })
                        .collect(),
                    class: class.map(|(students, lesson)| Class { students, lesson }),
                    start: job.start.filter(|_| starts),
                    ..job
                }
            },
        )
        .boxed()
}
