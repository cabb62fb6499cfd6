//! More exact: every input the answer stands on, with its usual value, where that comes from, and how much the range would
//! narrow if it were known; then what else may be said.

use super::ask::Ask;
use super::questions::select;
use super::setup::{group, scoped};
use crate::browser::use_narrowing;
use crate::parts::choice::Options;
use crate::state::{at, entries, pieces};
use crate::words::{self, number, working};
use planner::answer::{InputUsed, Origin};
use planner::narrowing::Narrowed;
use planner::{Catalogue, FieldPath, Job};
use quantity::AnyQuantity;
use std::rc::Rc;
use yew::prelude::*;

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct ExactProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
    /// The job as read, for what would narrow its range.
    pub job: Rc<Job>,
}

/// Fields that stand here and nowhere else on the page: of the piece, the bath, the step, the supply.
const PIECE: [&str; 8] = [
    at::TEXTURE,
    at::AREA_TEXTURE,
    at::HANGER_WIRES,
    at::RATIO,
    at::BORE,
    at::ETCH_FACTOR,
    at::CONTACT,
    at::CONTACT_LEAD,
];
const BATH: [&str; 12] = [
    at::TEMPERATURE,
    at::EFFICIENCY,
    at::BATCH,
    at::CONDUCTIVITY,
    at::EVENNESS_FACTOR,
    at::SURFACE_VOLTS,
    at::CEILING,
    at::OFFSET,
    at::FACING,
    at::PASSED,
    at::SURFACE,
    at::HEATER,
];

/// Closed until asked for.
#[component]
pub fn Exact(props: &ExactProps) -> Html {
    let open = use_state_eq(|| false);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    let narrowed = use_narrowing(&props.job);
    // While it is open every field stays where it was found: one that moved would be lost from under the finger.
    let kept = use_mut_ref(Kept::default);
    if !*open {
        *kept.borrow_mut() = Kept::default();
    }
    let named = |n: &&Narrowed| !words::input(n.at.as_str()).is_empty();
    let first = narrowed.iter().find(named);
    let first = first.map(|n| measure_first(&props.ask, n));
    html! {
        <section class="card exact">
            <h2>
                <button type="button" class="link" aria-expanded={(*open).to_string()} aria-controls="exact" onclick={toggle}>
                    { words::EXACT }
                </button>
            </h2>
            if !*open {
                // Its line is kept free, so that nothing jumps when it comes.
                <p class="soft help">{ first.unwrap_or_default() }</p>
            }
            <div id="exact" hidden={!*open}>
                if *open {
                    { panel(&props.ask, &narrowed, &mut kept.borrow_mut()) }
                }
            </div>
        </section>
    }
}

/// The inputs in the order in which they were found.
#[derive(Default)]
struct Kept {
    order: Vec<FieldPath>,
    /// What knowing each would do was known by then.
    settled: bool,
}

/// What is worth measuring first, and by how much that would narrow the range.
fn measure_first(ask: &Ask, narrowed: &Narrowed) -> String {
    words::measure_first(&name(ask, narrowed.at.as_str()), narrowed.remains)
}

/// The name of an input; with several pieces it says whose it is.
fn name(ask: &Ask, address: &str) -> String {
    let whose = at::piece_of(address).filter(|_| pieces::ids(&ask.state.draft).len() > 1);
    let mut name = words::input(address).to_owned();
    if let Some(piece) = whose {
        name.push_str(", ");
        name.push_str(&ask.of(piece).name());
    }
    name
}

fn panel(ask: &Ask, narrowed: &[Narrowed], kept: &mut Kept) -> Html {
    let mut inputs: Vec<&InputUsed> = ask
        .answer
        .inputs
        .iter()
        .filter(|i| i.band.is_some() || i.origin != Origin::Given)
        .filter(|i| !words::input(i.at.as_str()).is_empty())
        .collect();
    let place = |at: &FieldPath, order: &[FieldPath]| {
        let found = order.iter().position(|o| o == at);
        found.unwrap_or(usize::MAX)
    };
    if !kept.settled {
        let order: Vec<FieldPath> = narrowed.iter().map(|n| n.at.clone()).collect();
        inputs.sort_by_key(|i| place(&i.at, &order));
        kept.order = inputs.iter().map(|i| i.at.clone()).collect();
        kept.settled = !narrowed.is_empty();
    }
    inputs.sort_by_key(|i| place(&i.at, &kept.order));
    let used = |address: &str| {
        let here = |at: &FieldPath| at.as_str() == address;
        kept.order.iter().any(here) && inputs.iter().any(|i| here(&i.at))
    };
    let rest = |all: &[&'static str]| {
        let left = all.iter().filter(|a| applies(ask, a));
        left.filter(|a| !used(&ask.here(a)))
            .map(|a| ask.field(a))
            .collect::<Html>()
    };
    let metal = Catalogue::standard()
        .solution(&ask.scoped(at::SOLUTION))
        .map_or("", |s| s.metal);
    html! {
        <>
            <p class="soft">{ words::EXACT_NOTE }</p>
            for used in &inputs {
                { input(ask, used, narrowed, kept.order.contains(&used.at)) }
            }
            { group(words::PIECE, html! {
                <>
                    { rest(&PIECE) }
                    if pieces::ids(&ask.state.draft).len() > 1 {
                        { ask.name_field(at::CLIP, "–") }
                    }
                </>
            }) }
            { group(words::BATH, html! {
                <>
                    { rest(&BATH) }
                    { ask.field(&at::holds(metal, "now")) }
                    { ask.field(&at::holds(metal, "floor")) }
                    { ask.field(&at::price(metal)) }
                    { scoped(ask, at::COUNTER, Options::Made(counters(ask))) }
                    { select(ask, at::FORM) }
                    for address in form(ask) {
                        { ask.field(address) }
                    }
                    { select(ask, at::GROWTH) }
                </>
            }) }
        </>
    }
}

/// The sizes that the picked counter electrode asks for.
fn form(ask: &Ask) -> &'static [&'static str] {
    match ask.text(at::FORM).as_str() {
        "plate" => &[at::PLATE_WIDTH, at::PLATE_HEIGHT, at::PLATES],
        "coil" => &[at::COIL_WIRE, at::COIL_LENGTH],
        "scrap" => &[at::SCRAP, at::SCRAP_THICK],
        "vessel" => &[at::VESSEL_D, at::VESSEL_HEIGHT],
        _ => &[],
    }
}

/// Whether a field means anything for this process and this piece.
fn applies(ask: &Ask, address: &str) -> bool {
    let etches = ask.text(at::PROCESS).as_str() == "etch";
    let area = ask.scoped(at::SHAPE).as_str() == "area";
    match address {
        at::ETCH_FACTOR => etches,
        at::RATIO | at::BORE => !etches,
        at::TEXTURE => !area,
        at::AREA_TEXTURE => area,
        at::FACING => ask.text(at::FORM).is_empty(),
        _ => true,
    }
}

/// The counter electrodes the solution takes; the usual one first.
fn counters(ask: &Ask) -> Vec<(&'static str, &'static str)> {
    let solution = Catalogue::standard().solution(&ask.scoped(at::SOLUTION));
    let ids = solution.map(|s| s.counters.value).unwrap_or_default();
    ids.iter().map(|id| (*id, words::material(id))).collect()
}

/// A value in the unit its field asks for: a share in per cent.
fn usual(value: AnyQuantity) -> String {
    match value.key_unit {
        "frac" => number::in_symbol(value, "%", 3),
        _ => number::any(value),
    }
}

/// `here`: its own field stands in it and nowhere else.
fn input(ask: &Ask, used: &InputUsed, narrowed: &[Narrowed], here: bool) -> Html {
    let address = used.at.as_str();
    let found = narrowed.iter().find(|n| n.at == used.at);
    let hint = found.map(|n| words::narrows(n.remains));
    // A shape's area is reckoned from its sizes: what may be known of it is only how far off that is.
    let value = match used.value.key_unit {
        "ratio" if address.ends_with("/extent") => String::new(),
        _ if address.ends_with("/display_step") => String::new(),
        _ => usual(used.value),
    };
    let from = match used.origin {
        Origin::Given => words::GIVEN.to_owned(),
        Origin::Assumed => words::ASSUMED.to_owned(),
        Origin::Catalogue(source) => {
            let end = |si| usual(AnyQuantity { si, ..used.value });
            let band = used.band.map(|(low, high)| (end(low), end(high)));
            words::usual(&working::source(source), band)
        }
    };
    let plain = at::plain(address);
    let own = PIECE.iter().chain(&BATH).any(|a| *a == plain);
    let sure = at::spread(address);
    html! {
        <details key={address.to_owned()}>
            <summary>
                <span>{ name(ask, address) }</span>
                <span class="soft">{ value }</span>
                <span class="soft hint">{ hint.unwrap_or_default() }</span>
            </summary>
            <p class="soft">{ from }</p>
            <div class="fields">
                if here && own && entries::declared(address).is_some() {
                    { ask.field(address) }
                }
                { ask.field(&sure) }
            </div>
        </details>
    }
}
