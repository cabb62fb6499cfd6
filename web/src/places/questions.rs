//! The three questions.

use super::plan::Ask;
use crate::parts::choice::Card;
use crate::parts::outline::{measured, picture};
use crate::parts::{Cards, Select};
use crate::state::at;
use crate::words::{self, number};
use planner::Shape;
use planner::job::step::USES;
use planner::uses::layer;
use quantity::Length;
use yew::prelude::*;

/// All three.
pub fn questions(ask: &Ask) -> Html {
    html! {
        <>
            { what(ask) }
            { how_big(ask) }
            { what_for(ask) }
        </>
    }
}

fn what(ask: &Ask) -> Html {
    let cards = words::SHAPES
        .iter()
        .map(|(word, label)| Card {
            word,
            label: AttrValue::from(*label),
            remark: AttrValue::default(),
            drawing: Some(shape_picture(word)),
        })
        .collect::<Vec<_>>();
    html! {
        <section class="card">
            <h2>{ words::WHAT }</h2>
            <Cards id={at::SHAPE} legend={words::WHAT} {cards} picked={ask.text(at::SHAPE)} across={true} onpick={ask.pick(at::SHAPE)} />
        </section>
    }
}

fn shape_picture(word: &str) -> Html {
    match word {
        "band" => picture(&Shape::Band {
            bore: Length::mm(17.0),
            wall: Length::mm(3.2),
            width: Length::mm(6.0),
        }),
        "torus" => picture(&Shape::Torus {
            bore: Length::mm(17.0),
            wire_d: Length::mm(1.6),
        }),
        _ => measured(),
    }
}

fn how_big(ask: &Ask) -> Html {
    let shape = ask.text(at::SHAPE);
    let sizes: &[&str] = match shape.as_str() {
        "torus" => &[at::TORUS_BORE, at::TORUS_WIRE],
        "area" => &[at::AREA],
        _ => &[at::BAND_BORE, at::BAND_WALL, at::BAND_WIDTH],
    };
    html! {
        <section class="card">
            <h2>{ words::HOW_BIG }</h2>
            <div class="fields">
                for address in sizes {
                    { ask.field(address) }
                }
                if shape.as_str() == "area" {
                    <Select key={at::METHOD} id={at::METHOD} label={words::field(at::METHOD)} options={words::options(at::METHOD)}
                        picked={ask.text(at::METHOD)} onpick={ask.pick(at::METHOD)} />
                }
                { ask.field(at::COUNT) }
                { ask.field(at::HANGER_WIRE) }
                { ask.field(at::HANGER_WET) }
            </div>
        </section>
    }
}

fn what_for(ask: &Ask) -> Html {
    let picked = ask.text(at::UNTIL);
    let mut cards: Vec<Card> = USES
        .iter()
        .filter_map(|(word, of)| {
            let band = layer(*of, "Cu")?;
            let whole = |t| number::micrometres(t, 2);
            Some(Card {
                word,
                label: AttrValue::from(words::use_label(*of)),
                remark: AttrValue::from(format!(
                    "{}–{}\u{a0}µm",
                    whole(band.least),
                    whole(band.most)
                )),
                drawing: None,
            })
        })
        .collect();
    cards.extend(words::AIMS.iter().map(|(word, label)| Card {
        word,
        label: AttrValue::from(*label),
        remark: AttrValue::default(),
        drawing: None,
    }));
    let own = match picked.as_str() {
        "mean" => Some(at::MEAN),
        "thinnest" => Some(at::THINNEST),
        "time" => Some(at::TIME),
        "clock" => Some(at::CLOCK),
        _ => None,
    };
    html! {
        <section class="card">
            <h2>{ words::WHAT_FOR }</h2>
            <Cards id={at::UNTIL} legend={words::WHAT_FOR} {cards} {picked} onpick={ask.pick(at::UNTIL)} />
            if let Some(address) = own {
                <div class="fields own">{ ask.field(address) }</div>
            }
        </section>
    }
}
