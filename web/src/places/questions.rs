//! The questions: what happens, what it is, how big, what for.

use super::ask::Ask;
use super::measure::Measure;
use crate::parts::choice::{Card, Options};
use crate::parts::outline::{measured, picture};
use crate::parts::{Cards, Select};
use crate::state::{Action, at, kinds, pieces};
use crate::words::{self, number};
use planner::job::step::USES;
use planner::uses::layer;
use planner::{Catalogue, Preset, Shape};
use yew::prelude::*;

/// What the questions need.
#[derive(Properties, PartialEq)]
pub struct QuestionsProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
    /// Asked for another piece to describe.
    pub onpiece: Callback<String>,
}

/// All of them.
#[component]
pub fn Questions(props: &QuestionsProps) -> Html {
    let more = use_state_eq(|| false);
    let toggle = {
        let more = more.clone();
        Callback::from(move |_: MouseEvent| more.set(!*more))
    };
    let ask = &props.ask;
    html! {
        <>
            { process(ask) }
            { on_the_bar(ask, &props.onpiece) }
            { what(ask, *more, toggle) }
            { how_big(ask, &props.onpiece) }
            { what_for(ask) }
        </>
    }
}

fn process(ask: &Ask) -> Html {
    let cards = words::PROCESSES
        .iter()
        .map(|(word, label)| plain_card(word, label))
        .collect::<Vec<_>>();
    html! {
        <section class="card">
            <Cards id={at::PROCESS} legend={words::field(at::PROCESS)} {cards} picked={ask.text(at::PROCESS)} across={true}
                onpick={ask.pick(at::PROCESS)} />
        </section>
    }
}

/// The pieces, where there are several: one of them is being described.
fn on_the_bar(ask: &Ask, onpiece: &Callback<String>) -> Html {
    let ids = pieces::ids(&ask.state.draft);
    if ids.len() < 2 {
        return Html::default();
    }
    html! {
        <section class="card bar">
            <h2>{ words::ON_THE_BAR }</h2>
            <ul>
                for id in ids {
                    { piece(ask, id, onpiece) }
                }
            </ul>
        </section>
    }
}

fn piece(ask: &Ask, id: &str, onpiece: &Callback<String>) -> Html {
    let one = ask.of(id);
    let name = one.name();
    let open = id == ask.piece.as_str();
    let (this, that) = (id.to_owned(), id.to_owned());
    let onopen = onpiece.reform(move |_: MouseEvent| this.clone());
    let onremove = ask
        .act
        .reform(move |_: MouseEvent| Action::PieceRemoved(that.clone()));
    let found = ask.answer.pieces.iter().find(|p| p.id == id);
    let area = found
        .and_then(|p| p.wetted.known())
        .map(|a| number::area(a.likely));
    html! {
        <li key={id.to_owned()}>
            <button type="button" class="piece" aria-pressed={open.to_string()} onclick={onopen}>
                <span>{ &name }{ format!(" × {}", one.shown(at::COUNT)) }</span>
                <span class="soft">{ area.unwrap_or_default() }</span>
            </button>
            <button type="button" class="link" aria-label={words::remove_piece(&name)} onclick={onremove}>{ words::REMOVE }</button>
        </li>
    }
}

fn what(ask: &Ask, more: bool, toggle: Callback<MouseEvent>) -> Html {
    let etches = is_etch(ask);
    let all = if etches { kinds::ETCHED } else { kinds::GROWN };
    let picked = ask.scoped(at::SHAPE);
    let shown = |n: usize, word: &str| more || n < kinds::FIRST || word == picked.as_str();
    let mut cards: Vec<Card> = all
        .iter()
        .enumerate()
        .filter(|(n, word)| shown(*n, word))
        .map(|(_, word)| kind_card(word))
        .collect();
    cards.push(kind_card("area"));
    let label = if more { words::FEWER } else { words::MORE };
    html! {
        <section class="card">
            <h2>{ words::WHAT }</h2>
            <div class="kinds">
                <Cards id={ask.here(at::SHAPE)} legend={words::WHAT} {cards} {picked} across={true} onpick={ask.pick_scoped(at::SHAPE)} />
            </div>
            if !etches {
                <button type="button" class="link" aria-expanded={more.to_string()} onclick={toggle}>{ label }</button>
            }
        </section>
    }
}

fn is_etch(ask: &Ask) -> bool {
    ask.text(at::PROCESS).as_str() == "etch"
}

fn plain_card(word: &'static str, label: &'static str) -> Card {
    Card {
        word,
        label: AttrValue::from(label),
        remark: AttrValue::default(),
        drawing: None,
    }
}

fn kind_card(word: &'static str) -> Card {
    Card {
        drawing: Some(html! { <Drawing {word} /> }),
        ..plain_card(word, words::kind(word))
    }
}

#[derive(Properties, PartialEq)]
struct DrawingProps {
    word: &'static str,
}

/// The picture of a kind, drawn once and not with every key.
#[component]
fn Drawing(props: &DrawingProps) -> Html {
    match (Preset::of_id(props.word), Shape::of_id(props.word)) {
        (Some(preset), _) => picture(&preset.outline()),
        (None, Some(shape)) => picture(&shape.outline()),
        (None, None) => measured(),
    }
}

fn how_big(ask: &Ask, onpiece: &Callback<String>) -> Html {
    let kind = kinds::of(ask.scoped(at::SHAPE).as_str());
    let mut sizes = kind.as_ref().map_or_else(
        || vec![at::AREA.to_owned()],
        |kind| kinds::addresses(&ask.piece, kind),
    );
    sizes.extend(
        kind.as_ref()
            .and_then(|kind| kinds::number_address(&ask.piece, kind)),
    );
    let hollow = kind.is_some_and(|k| k.parts.iter().any(|p| p.shape.recess().is_some()));
    let several = pieces::ids(&ask.state.draft).len();
    let piece = ask.piece.to_string();
    let next = pieces::next(&ask.state.draft);
    let then = |action: Action| {
        let (act, onpiece, next) = (ask.act.clone(), onpiece.clone(), next.clone());
        Callback::from(move |_: MouseEvent| {
            act.emit(action.clone());
            onpiece.emit(next.clone());
        })
    };
    html! {
        <section class="card">
            <h2>{ words::HOW_BIG }</h2>
            <div class="fields">
                // In an etch the sheet's thickness is asked once, as what may be dissolved.
                for address in sizes.iter().filter(|a| !(is_etch(ask) && a.ends_with("/thickness"))) {
                    { ask.field(address) }
                }
                if ask.scoped(at::SHAPE).as_str() == "area" {
                    { select(ask, at::AREA_SIDES) }
                    { select(ask, at::METHOD) }
                }
                if hollow {
                    { select(ask, at::OPENING_WAY) }
                }
                if is_etch(ask) {
                    { ask.field(at::STOCK) }
                    { ask.field(at::OPEN) }
                }
                { ask.field(at::COUNT) }
                { ask.field(at::HANGER_WIRE) }
                { ask.field(at::HANGER_WET) }
                if several > 1 {
                    { ask.name_field(at::LABEL, &ask.name()) }
                    { ask.field(at::JOINS) }
                    { ask.field(at::LEAVES) }
                }
            </div>
            <Measure ask={ask.clone()} />
            if several < pieces::MOST {
                <div class="actions">
                    <button type="button" class="button" onclick={then(Action::PieceRepeated(piece))}>{ words::SAME_AGAIN }</button>
                    <button type="button" class="button" onclick={then(Action::PieceAdded)}>{ words::ANOTHER_PIECE }</button>
                </div>
            }
        </section>
    }
}

/// A select over a plain address.
pub fn select(ask: &Ask, address: &'static str) -> Html {
    let id = ask.here(address);
    html! {
        <Select key={id.clone()} id={id.clone()} label={words::field(address)} options={Options::from(words::options(address))}
            picked={ask.text(address)} onpick={ask.pick(address)} />
    }
}

fn what_for(ask: &Ask) -> Html {
    let picked = ask.scoped(at::UNTIL);
    let etches = is_etch(ask);
    let metal = Catalogue::standard()
        .solution(ask.scoped(at::SOLUTION).as_str())
        .map_or("", |s| s.metal);
    let mut cards: Vec<Card> = USES
        .iter()
        .filter(|_| !etches)
        .filter_map(|(word, of)| {
            let band = layer(*of, metal)?;
            let two = |t| number::micrometres_plain(t, 2);
            let range = if band.least == band.most {
                two(band.most)
            } else {
                format!("{}–{}", two(band.least), two(band.most))
            };
            Some(Card {
                remark: AttrValue::from(format!("{range}\u{a0}{}", number::thickness_unit())),
                ..plain_card(word, words::use_label(*of))
            })
        })
        .collect();
    let aims = if etches {
        words::ETCH_AIMS
    } else {
        words::AIMS
    };
    cards.extend(aims.iter().map(|(word, label)| plain_card(word, label)));
    let own = match picked.as_str() {
        "mean" => Some(at::MEAN),
        "thinnest" => Some(at::THINNEST),
        "depth" => Some(at::DEPTH),
        "time" => Some(at::TIME),
        "clock" => Some(at::CLOCK),
        "mass" => Some(at::MASS),
        _ => None,
    };
    html! {
        <section class="card">
            <h2>{ words::WHAT_FOR }</h2>
            <Cards id={at::UNTIL} legend={words::WHAT_FOR} {cards} {picked} onpick={ask.pick_scoped(at::UNTIL)} />
            if let Some(address) = own {
                <div class="fields own">{ ask.field(address) }</div>
            }
            if etches {
                <div class="fields own">
                    { select(ask, at::RESIST) }
                    { select(ask, at::LEAD) }
                    { select(ask, at::SIDES) }
                    { select(ask, at::MODEL) }
                    { ask.field(at::OPENING) }
                    { ask.field(at::LAND) }
                </div>
            }
        </section>
    }
}
