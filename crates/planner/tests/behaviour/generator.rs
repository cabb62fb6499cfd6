//! Random Jobs within the declared bounds: the bounds are the fields' own.

use chemistry::solution::SOLUTIONS;
use chemistry::{Choosable, Electrode, Process, Setting, Solution, Stirring};
use field::{Arrangement, Opening};
use geometry::Shape;
use planner::FieldPath;
use planner::fields::{self, CountField, Field};
use planner::job::{
    Area, Artwork, Assume, Attend, Base, Bath, Bench, Class, Coat, Coated, Contact, Counter,
    Draught, Drive, Effects, Extent, Faces, Fit, FixedSetting, Form, Hanger, Holds, InBath, Job,
    Lead, Method, Moment, Own, OwnAlloy, OwnPart, OwnSolution, Part, Piece, Place, Price, Purpose,
    Room, SpreadAt, Start, Step, Stock, Supply, Switch, Until, Use, VoltBench, Wear, piece,
};
use planner::uses;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::strategy::BoxedStrategy;
use quantity::{AnyQuantity, Fraction, Length, Quantity};

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

/// Any shape: about the size usual on the bench, or anywhere within the bounds.
pub fn shape() -> BoxedStrategy<Shape> {
    (
        select(Shape::TYPICAL.to_vec()),
        prop::collection::vec(0.0..=1.0f64, 4),
        prop::bool::weighted(0.2),
        any::<Index>(),
        1..30u32,
    )
        .prop_filter_map(
            "sizes that go together",
            |(typical, u, wide, word, count)| {
                let sized = typical.map_sizes(|n, usual| {
                    let Some(field) = fields::shape_size(typical.size_names()[n]) else {
                        return usual;
                    };
                    let (least, most) = (field.least.si(), field.most.si());
                    let (from, to) = if wide {
                        (least, most)
                    } else {
                        (usual.si() / 2.0, usual.si() * 2.0)
                    };
                    Length::from_si((from * libm::pow(to / from, u[n])).clamp(least, most))
                });
                let worded = match sized.word() {
                    Some((_, words)) => sized.with_word(words[word.index(words.len())])?,
                    None => sized,
                };
                let shape = worded.with_count(count);
                shape.contradiction().is_none().then_some(shape)
            },
        )
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
                    // The second part of three stands in a hollow of the others.
                    faces: if id == "b" {
                        Faces::Recess
                    } else {
                        Faces::Open
                    },
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

fn any_base() -> BoxedStrategy<Base> {
    let coats = [Coat::Graphite, Coat::Copper, Coat::Silver, Coat::Other];
    prop_oneof![
        Just(Base::Unknown),
        stock(METALS.iter().map(|m| (*m).to_owned()).collect()),
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

/// Elements and alloys of every kind of base.
const METALS: [&str; 16] = [
    "Cu", "C11000", "C26000", "C51000", "C75200", "Ag", "Ag925", "Au", "Au585", "Pt", "Ni", "Fe",
    "S30400", "Zn", "A91100", "R50400",
];

fn stock(ids: Vec<String>) -> BoxedStrategy<Base> {
    (select(ids), of(within(&fields::STOCK)))
        .prop_map(|(id, thickness)| Base::Metal(Stock { id, thickness }))
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

/// What a job is done in: where, which solution, and what of it the job needs to know.
#[derive(Clone, Debug)]
struct Bathed {
    place: Place,
    solution: String,
    own: Option<OwnSolution>,
    etches: bool,
    finish: bool,
    /// The metal laid down.
    lays: String,
    /// What may be etched in it.
    sheets: Vec<String>,
    /// Addresses of the catalogue's values that have one.
    known: Vec<String>,
}

const PLACES: [(Place, Setting); 3] = [
    (Place::Home, Setting::Home),
    (Place::Class, Setting::Class),
    (Place::Shop, Setting::Shop),
];

fn of_catalogue(place: Place, s: &Solution) -> Bathed {
    let mut known = Vec::new();
    for (there, name) in [
        (s.efficiency.typical().is_some(), "efficiency"),
        (s.conductivity.typical().is_some(), "conductivity"),
        (s.evenness_factor.typical().is_some(), "evenness_factor"),
        (s.cell_volts.typical().is_some(), "cell_volts"),
        (s.process == Process::Electroplate, "batch"),
    ] {
        if there {
            known.push(format!("baths/b1/{name}"));
        }
    }
    // What the solution is for, and now and then a sheet that is not for it.
    let mut sheets: Vec<String> = Vec::new();
    for _ in 0..3 {
        sheets.extend(s.attacks.value.iter().map(|m| (*m).to_owned()));
    }
    sheets.extend(["Cu", "Ag925", "C26000", "S30400", MINE].map(str::to_owned));
    Bathed {
        place,
        solution: s.id.to_owned(),
        own: None,
        etches: s.work == Electrode::Anode,
        finish: s.process == Process::Electroplate,
        lays: s.metal.to_owned(),
        sheets,
        known,
    }
}

/// Every solution that a job can be planned with, at every place.
fn bathed() -> BoxedStrategy<Bathed> {
    let mut all = Vec::new();
    for (place, setting) in PLACES {
        for s in SOLUTIONS {
            if matches!(
                s.choosable(setting),
                Choosable::Offered | Choosable::NeedsShop
            ) {
                all.push(of_catalogue(place, s));
            }
        }
    }
    prop_oneof![8 => select(all), 1 => from_a_label()].boxed()
}

fn own_solution() -> BoxedStrategy<OwnSolution> {
    (
        select(vec![
            Process::Electroform,
            Process::Electroplate,
            Process::Etch,
        ]),
        select(vec!["Ag", "Au", "Ni", "Pd", "Zn", "Cu", "C26000"]),
        of(counted(&fields::VALENCE)),
        within(&fields::DENSITY),
        of(within(&fields::CATHODE_EFFICIENCY)),
        of(within(&fields::OWN_CONDUCTIVITY)),
        of(within(&fields::OWN_VOLTS)),
    )
        .prop_map(
            |(process, metal, valence, density, efficiency, conductivity, volts)| OwnSolution {
                id: "mine".to_owned(),
                process,
                metal: metal.to_owned(),
                valence,
                density: Some(density),
                highest: None,
                efficiency,
                moves: None,
                conductivity,
                volts,
            },
        )
        .boxed()
}

fn from_a_label() -> BoxedStrategy<Bathed> {
    own_solution()
        .prop_map(|own| Bathed {
            place: Place::Home,
            solution: own.id.clone(),
            etches: own.process == Process::Etch,
            finish: own.process == Process::Electroplate,
            lays: own.metal.clone(),
            sheets: ["Ag", "Ni", "Zn", "C26000", "Ag925", MINE]
                .map(str::to_owned)
                .to_vec(),
            known: Vec::new(),
            own: Some(own),
        })
        .boxed()
}

/// The id of an alloy of the person's own.
const MINE: &str = "my_brass";

/// Copper and zinc, in any proportion.
fn own_alloy() -> BoxedStrategy<OwnAlloy> {
    (
        within(&fields::OWN_DENSITY),
        0.01..0.99f64,
        1..=4u32,
        1..=4u32,
    )
        .prop_map(|(density, copper, z, y)| {
            let part = |id: &str, share: f64, valence| OwnPart {
                id: id.to_owned(),
                share: Fraction::from_si(share),
                valence,
            };
            OwnAlloy {
                id: MINE.to_owned(),
                density,
                parts: vec![part("Cu", copper, z), part("Zn", 1.0 - copper, y)],
            }
        })
        .boxed()
}

/// A piece that this edition computes with.
fn plannable_piece(bathed: &Bathed) -> BoxedStrategy<Piece> {
    let etches = bathed.etches;
    let base = if etches {
        stock(bathed.sheets.clone()).prop_map(Some).boxed()
    } else {
        of(any_base()).boxed()
    };
    let open = if etches {
        within(&fields::OPEN).prop_map(Some).boxed()
    } else {
        of(within(&fields::OPEN)).boxed()
    };
    let art = if etches {
        (artwork(), select(vec![Lead::Plus, Lead::Plus, Lead::Minus]))
            .prop_map(|(art, lead)| {
                Some(Artwork {
                    lead: Some(lead),
                    ..art
                })
            })
            .boxed()
    } else {
        of(artwork()).boxed()
    };
    (
        "\\PC{0,8}",
        counted(&fields::COUNT),
        prop_oneof![parts(), area()],
        base,
        of(hanger()),
        of(select(vec![Opening::To, Opening::Away])),
        of(within(&fields::MIN_OVER_MEAN)),
        of((
            of(within(&fields::FIT_BORE)),
            of(within(&fields::WANTED_BORE)),
        )),
        open,
        art,
    )
        .prop_map(
            |(label, count, extent, base, hanger, opening, min_over_mean, fit, open, artwork)| {
                Piece {
                    id: String::new(),
                    label,
                    count,
                    extent: Some(extent),
                    base,
                    grown: None,
                    open,
                    hanger,
                    contact: None,
                    opening,
                    min_over_mean,
                    fit: fit.map(|(bore, wanted)| Fit { bore, wanted }),
                    artwork,
                    joins: None,
                    leaves: None,
                }
            },
        )
        .boxed()
}

fn any_piece() -> BoxedStrategy<Piece> {
    bathed()
        .prop_flat_map(|bathed| {
            (
                plannable_piece(&bathed),
                any::<bool>(),
                of(within(&fields::OPEN)),
                of((of(within(&fields::CONTACT)), of(within(&fields::LEAD)))),
                of(artwork()),
                of(moment()),
                of(moment()),
                of(within(&fields::GROWN)),
            )
        })
        .prop_map(
            |(piece, known, open, contact, artwork, joins, leaves, grown)| Piece {
                grown,
                extent: piece.extent.filter(|_| known),
                open,
                contact: contact.map(|(contact, lead)| Contact {
                    contact,
                    lead,
                    clip: None,
                }),
                artwork,
                joins,
                leaves,
                ..piece
            },
        )
        .boxed()
}

fn bath(bathed: &Bathed) -> BoxedStrategy<Bath> {
    let arrangements = [
        Arrangement::OneSide,
        Arrangement::BothSides,
        Arrangement::Turned,
        Arrangement::AllRound,
    ];
    let solution = bathed.solution.clone();
    let metals = ["Cu", "Zn", "Ag", bathed.lays.as_str()].map(str::to_owned);
    let materials: Vec<String> = chemistry::material::MATERIALS
        .iter()
        .map(|m| m.id.to_owned())
        .collect();
    (
        of(within(&fields::VOLUME)),
        of(within(&fields::PASSED)),
        of((
            select(metals.to_vec()),
            of(within(&fields::HOLDS_NOW)),
            of(within(&fields::HOLDS_FLOOR)),
        )),
        of((
            of(select(materials)),
            of(within(&fields::FACING)),
            of(within(&fields::DISTANCE)),
            of(within(&fields::OVER_BAR)),
            of(select(arrangements.to_vec())),
            of(form()),
        )),
        (of(within(&fields::SURFACE)), of(within(&fields::HEATER))),
    )
        .prop_map(
            move |(volume, passed, holds, counter, (surface, heater))| Bath {
                id: "b1".to_owned(),
                solution: solution.clone(),
                volume,
                passed,
                holds: holds
                    .into_iter()
                    .map(|(metal, now, floor)| Holds { metal, now, floor })
                    .collect(),
                counter: counter.map(
                    |(material, facing, distance, over_bar, arrangement, form)| Counter {
                        over_bar,
                        form: form.filter(|_| material.is_some()),
                        material,
                        facing,
                        distance,
                        arrangement,
                    },
                ),
                surface,
                heater,
            },
        )
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

fn wear() -> BoxedStrategy<Until> {
    (
        select(vec![Use::Earring, Use::Pendant, Use::Ring, Use::Handled]),
        within(&fields::LASTS),
    )
        .prop_map(|(of, lasts)| Until::Wear(Wear { of, lasts }))
        .boxed()
}

/// What ends a step of a plating.
fn until() -> BoxedStrategy<Until> {
    prop_oneof![
        within(&fields::UNTIL_TIME).prop_map(Until::Time),
        within(&fields::UNTIL_MEAN).prop_map(Until::Mean),
        within(&fields::UNTIL_THINNEST).prop_map(Until::Thinnest),
        within(&fields::UNTIL_MASS).prop_map(Until::Mass),
        wear(),
        clock().prop_map(Until::Clock),
    ]
    .boxed()
}

fn until_in(bathed: &Bathed) -> BoxedStrategy<Until> {
    if bathed.etches {
        return prop_oneof![
            within(&fields::UNTIL_TIME).prop_map(Until::Time),
            within(&fields::UNTIL_DEPTH).prop_map(Until::Depth),
            within(&fields::UNTIL_MEAN).prop_map(Until::Mean),
            within(&fields::UNTIL_MASS).prop_map(Until::Mass),
            clock().prop_map(Until::Clock),
        ]
        .boxed();
    }
    if uses::layer(Use::Ring, &bathed.lays).is_some() {
        return prop_oneof![5 => until(), 1 => use_of_a_piece().prop_map(Until::Use)].boxed();
    }
    until()
}

fn step(
    drive: BoxedStrategy<Drive>,
    until: BoxedStrategy<Until>,
    kinds: Vec<Process>,
) -> BoxedStrategy<Step> {
    let stirrings = [Stirring::Still, Stirring::Gentle, Stirring::Vigorous];
    (
        select(stirrings.to_vec()),
        of(within(&fields::TEMPERATURE)),
        of(within(&fields::CEILING)),
        drive,
        until,
        select(kinds),
    )
        .prop_map(
            |(stirring, temperature, ceiling, drive, until, kind)| Step {
                id: String::new(),
                places: Vec::new(),
                kind,
                purpose: Default::default(),
                stirring,
                temperature,
                ceiling,
                drive: Some(drive),
                until: Some(until),
            },
        )
        .boxed()
}

fn attend() -> BoxedStrategy<Attend> {
    let due = (1..=28u32, 0..24u32, 0..60u32)
        .prop_map(|(d, h, m)| format!("2026-05-{d:02}T{h:02}:{m:02}"));
    (
        of(within(&fields::SESSION)),
        of(within(&fields::BETWEEN)),
        of(due),
        of(within(&fields::CURE)),
        of(within(&fields::DRY)),
    )
        .prop_map(|(session, between, due, cure, dry)| Attend {
            session,
            between,
            due,
            cure,
            dry,
        })
        .boxed()
}

fn form() -> BoxedStrategy<Form> {
    let height = || within(&fields::PLATE_HEIGHT);
    prop_oneof![
        (
            within(&fields::PLATE_WIDTH),
            height(),
            counted(&fields::PLATES)
        )
            .prop_map(|(width, height, plates)| Form::Plate {
                width,
                height,
                plates
            }),
        (within(&fields::COIL_WIRE), within(&fields::COIL_LENGTH))
            .prop_map(|(wire_d, length)| Form::Coil { wire_d, length }),
        (within(&fields::SCRAP), within(&fields::SCRAP_STOCK))
            .prop_map(|(mass, thickness)| Form::Scrap { mass, thickness }),
        (within(&fields::VESSEL_D), height())
            .prop_map(|(diameter, height)| Form::Vessel { diameter, height }),
    ]
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

fn volt_bench() -> BoxedStrategy<VoltBench> {
    (
        of(within(&fields::LOWEST_VOLTS)),
        of(within(&fields::HIGHEST_VOLTS)),
        of(within(&fields::DISPLAY_STEP_VOLTS)),
        of(within(&fields::HIGHEST)),
    )
        .prop_map(
            |(lowest, highest, display_step, highest_current)| VoltBench {
                lowest,
                highest,
                display_step,
                highest_current,
            },
        )
        .boxed()
}

fn fixed_settings() -> BoxedStrategy<Vec<FixedSetting>> {
    let setting = (
        of(within(&fields::CURRENT)),
        of(within(&fields::STRIP_GAIN)),
        of(within(&fields::STRIP_TIME)),
    )
        .prop_map(|(current, strip_gain, strip_time)| FixedSetting {
            id: String::new(),
            current,
            strip_gain,
            strip_time,
        });
    prop::collection::vec(setting, 1..4)
        .prop_map(|mut all| {
            for (n, setting) in all.iter_mut().enumerate() {
                setting.id = format!("f{}", n + 1);
            }
            all
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

fn own_value(bathed: &Bathed) -> BoxedStrategy<Assume> {
    fn at<Q: Quantity>(name: &'static str, field: &Field<Q>) -> BoxedStrategy<Assume> {
        within(field)
            .prop_map(move |value| Assume {
                at: FieldPath::new(&format!("baths/b1/{name}")),
                value: AnyQuantity::from(value),
            })
            .boxed()
    }
    let efficiency = if bathed.etches {
        at("efficiency", &fields::EFFICIENCY)
    } else {
        at("efficiency", &fields::CATHODE_EFFICIENCY)
    };
    let all = prop_oneof![
        efficiency,
        at("conductivity", &fields::CONDUCTIVITY),
        at("evenness_factor", &fields::EVENNESS_FACTOR),
        at("surface_volts", &fields::SURFACE_VOLTS),
        at("cell_volts", &fields::SURFACE_VOLTS),
    ];
    if bathed.finish {
        prop_oneof![5 => all, 1 => at("batch", &fields::BATCH)].boxed()
    } else {
        all.boxed()
    }
}

fn own_spread(bathed: &Bathed) -> BoxedStrategy<SpreadAt> {
    let mut known = bathed.known.clone();
    known.push("pieces/p1/extent".to_owned());
    (select(known), within(&fields::SPREAD))
        .prop_map(|(at, spread)| SpreadAt {
            at: FieldPath::new(&at),
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
    bathed().prop_flat_map(|b| job_in(&b)).boxed()
}

fn job_in(bathed: &Bathed) -> BoxedStrategy<Job> {
    let kinds = if bathed.etches {
        vec![Process::Etch]
    } else {
        vec![Process::Electroform, Process::Electroplate]
    };
    let own = bathed.own.clone();
    let (place, lays) = (bathed.place, bathed.lays.clone());
    (
        prop::collection::vec(plannable_piece(bathed), 1..4),
        bath(bathed),
        prop::collection::vec(step(drive(), until_in(bathed), kinds), 1..=2),
        of(bench()),
        prop::collection::vec(own_value(bathed), 0..3),
        prop::collection::vec(own_spread(bathed), 0..3),
        of(within(&fields::PRICE)),
        (own_alloy(), prop::bool::weighted(0.3)),
        (
            start(),
            of(attend()),
            any::<bool>(),
            prop::bool::weighted(0.3),
            of(room()),
        ),
    )
        .prop_map(
            move |(
                pieces,
                bath,
                steps,
                bench,
                mut assume,
                spreads,
                price,
                (alloy, all),
                (start, attend, covers, covered, room),
            )| {
                let (pieces, mut steps) = put_together(pieces, steps);
                let coated = |p: &Piece| matches!(p.base, Some(Base::Nonconductor(_)));
                if pieces.iter().any(coated) {
                    if covers {
                        steps[0].purpose = Purpose::Cover;
                    }
                    if covered {
                        steps[0].until = Some(Until::Covered);
                    }
                }
                // All the supply gives, where that is known.
                if all && bench.as_ref().is_some_and(|b| b.highest.is_some()) {
                    steps[0].drive = Some(Drive::AllSupply);
                }
                // One value at an address.
                if assume.len() == 2 && assume[0].at == assume[1].at {
                    assume.pop();
                }
                Job {
                    pieces,
                    baths: vec![bath],
                    steps,
                    supply: bench.map(Supply::ConstantCurrent),
                    own: Own {
                        metals: vec![alloy],
                        solutions: own.iter().cloned().collect(),
                    },
                    assume,
                    spreads,
                    place,
                    prices: price
                        .into_iter()
                        .map(|price| Price {
                            metal: lays.clone(),
                            price,
                        })
                        .collect(),
                    start: Some(start),
                    attend,
                    room,
                    ..Job::default()
                }
            },
        )
        .boxed()
}

fn room() -> BoxedStrategy<Room> {
    (
        of(within(&fields::ROOM_TEMPERATURE)),
        of(within(&fields::HUMIDITY)),
        of(select(vec![
            Draught::Still,
            Draught::Light,
            Draught::Strong,
        ])),
    )
        .prop_map(|(temperature, humidity, draught)| Room {
            temperature,
            humidity,
            draught,
        })
        .boxed()
}

fn own() -> BoxedStrategy<Own> {
    (
        of(own_alloy()),
        of((
            own_solution(),
            of(within(&fields::OWN_HIGHEST)),
            of(within(&fields::MOVES)),
        )),
    )
        .prop_map(|(metal, solution)| Own {
            metals: metal.into_iter().collect(),
            solutions: solution
                .into_iter()
                .map(|(solution, highest, moves)| OwnSolution {
                    highest,
                    moves,
                    ..solution
                })
                .collect(),
        })
        .boxed()
}

fn switch() -> BoxedStrategy<Switch> {
    select(vec![Switch::Off, Switch::On]).boxed()
}

/// A job with anything in it that the format has.
pub fn any_job() -> BoxedStrategy<Job> {
    let drive = prop_oneof![3 => drive(), 1 => Just(Drive::AllSupply)].boxed();
    let until = prop_oneof![
        5 => until(),
        1 => use_of_a_piece().prop_map(Until::Use),
        1 => within(&fields::UNTIL_DEPTH).prop_map(Until::Depth),
    ];
    let kinds = vec![Process::Electroform, Process::Electroplate, Process::Etch];
    let supply = prop_oneof![
        3 => bench().prop_map(Supply::ConstantCurrent),
        1 => volt_bench().prop_map(Supply::ConstantVoltage),
        1 => bench().prop_map(Supply::Both),
        1 => fixed_settings().prop_map(Supply::FixedSettings),
    ];
    let steps = prop::collection::vec(
        (
            step(drive, until.boxed(), kinds),
            any::<bool>(),
            any::<bool>(),
        )
            .prop_map(|(step, driven, ends)| Step {
                drive: step.drive.filter(|_| driven),
                until: step.until.filter(|_| ends),
                ..step
            }),
        0..4,
    );
    let later = (
        own(),
        switch(),
        switch(),
        of("[A-Z]{2}"),
        of((
            counted(&fields::STUDENTS),
            of(within(&fields::LESSON)),
            of(within(&fields::WITNESS)),
        )),
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
            |(job, pieces, steps, supply, (own, growth, contacts, country, class, starts))| {
                let (pieces, steps) = put_together(pieces, steps);
                Job {
                    pieces,
                    steps,
                    supply,
                    own,
                    effects: Effects { growth, contacts },
                    country,
                    class: class.map(|(students, lesson, witness)| Class {
                        students,
                        lesson,
                        witness,
                    }),
                    start: job.start.filter(|_| starts),
                    ..job
                }
            },
        )
        .boxed()
}
