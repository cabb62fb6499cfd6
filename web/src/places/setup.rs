//! Bath, supply and coat: one quiet line, and everything behind it.

use super::plan::Ask;
use crate::parts::Select;
use crate::state::at;
use crate::words;
use yew::prelude::*;

/// What the set-up needs.
#[derive(Properties, PartialEq)]
pub struct SetupProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
}

/// The line, and the panel behind it.
#[component]
pub fn Setup(props: &SetupProps) -> Html {
    let open = use_state_eq(|| false);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    let ask = &props.ask;
    let label = if *open { words::DONE } else { words::CHANGE };
    html! {
        <section class="card setup">
            <h2 class="unseen">{ words::SETUP }</h2>
            <div class="line">
                <p class="soft">{ line(ask) }</p>
                <button type="button" class="link" aria-expanded={(*open).to_string()} aria-controls="setup" onclick={toggle}>{ label }</button>
            </div>
            <div id="setup" hidden={!*open}>
                if *open {
                    { panel(ask) }
                }
            </div>
        </section>
    }
}

/// The set-up in one line.
fn line(ask: &Ask) -> String {
    let option = |address: &str| words::option_label(address, &ask.text(address));
    let cover = if ask.text(at::COVER).as_str() == "on" {
        format!("Covering for {} first. ", ask.shown(at::COVER_TIME))
    } else {
        String::new()
    };
    format!(
        "Copper, acid bath, {}. Piece: {}. {cover}My supply: {} to {}, in steps of {}.",
        option(at::STIRRING),
        option(at::BASE),
        ask.shown(at::LOWEST),
        ask.shown(at::HIGHEST),
        ask.shown(at::DISPLAY_STEP),
    )
}

fn panel(ask: &Ask) -> Html {
    let drive = ask.text(at::DRIVE);
    let own = match drive.as_str() {
        "density" => Some(at::DENSITY),
        "current" => Some(at::CURRENT),
        _ => None,
    };
    let covers = ask.text(at::COVER).as_str() == "on";
    html! {
        <>
            { group("Piece", html! {
                <>
                    { select(ask, at::BASE) }
                    { ask.field(at::WANTED_BORE) }
                    { select(ask, at::COVER) }
                    if covers {
                        { ask.field(at::COVER_DENSITY) }
                        { ask.field(at::COVER_TIME) }
                    }
                    { select(ask, at::DRIVE) }
                    if let Some(address) = own {
                        { ask.field(address) }
                    }
                    { ask.field(at::START) }
                </>
            }) }
            { group("Bath", html! {
                <>
                    { select(ask, at::STIRRING) }
                    { select(ask, at::ARRANGEMENT) }
                    { ask.field(at::DISTANCE) }
                    { ask.field(at::EFFICIENCY) }
                    { select(ask, at::PLACE) }
                </>
            }) }
            { group("Supply", html! {
                <>
                    { ask.field(at::LOWEST) }
                    { ask.field(at::HIGHEST) }
                    { ask.field(at::DISPLAY_STEP) }
                    { ask.field(at::VOLTS) }
                </>
            }) }
        </>
    }
}

fn group(name: &str, fields: Html) -> Html {
    html! {
        <fieldset class="group">
            <legend>{ name }</legend>
            <div class="fields">{ fields }</div>
        </fieldset>
    }
}

fn select(ask: &Ask, address: &'static str) -> Html {
    html! {
        <Select key={address} id={address} label={words::field(address)} options={words::options(address)}
            picked={ask.text(address)} onpick={ask.pick(address)} />
    }
}
