//! Bath, supply and coat: one quiet line, and everything behind it.

use super::ask::Ask;
use super::questions::select;
use crate::parts::Select;
use crate::parts::choice::Options;
use crate::state::at;
use crate::words;
use planner::job::own::PROCESSES;
use planner::{Catalogue, Setting};
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
    let draft = &ask.state.draft;
    let process = ask.text(at::PROCESS);
    let base_address = draft.scope(at::BASE);
    let base = words::option_label(&base_address, &ask.scoped(at::BASE));
    let covers = process.as_str() == "electroform" && ask.text(at::COVER).as_str() == "on";
    let cover = covers.then(|| ask.shown(at::COVER_TIME));
    words::setup_line(
        words::solution(draft.scoped(at::SOLUTION)),
        words::option_label(at::STIRRING, &ask.text(at::STIRRING)),
        base,
        cover.as_deref(),
        [at::LOWEST, at::HIGHEST, at::DISPLAY_STEP].map(|a| ask.shown(a)),
    )
}

/// The solutions of this process that may be used where the person works.
fn solutions(ask: &Ask) -> Vec<(&'static str, &'static str)> {
    let process = ask.text(at::PROCESS);
    let setting = match ask.text(at::PLACE).as_str() {
        "class" => Setting::Class,
        "shop" => Setting::Shop,
        _ => Setting::Home,
    };
    let catalogue = Catalogue::standard();
    let mut all: Vec<(&'static str, &'static str)> = catalogue
        .offered(setting)
        .filter(|s| {
            PROCESSES
                .iter()
                .any(|(word, p)| *word == process.as_str() && *p == s.process)
        })
        .map(|s| (s.id, words::solution(s.id)))
        .collect();
    // One that was picked for another place stays in the list: its limit says what is wrong with it.
    let picked = ask.scoped(at::SOLUTION);
    if !all.iter().any(|(id, _)| *id == picked.as_str())
        && let Some(solution) = catalogue.solution(picked.as_str())
    {
        all.push((solution.id, words::solution(solution.id)));
    }
    all
}

fn panel(ask: &Ask) -> Html {
    let draft = &ask.state.draft;
    let process = ask.text(at::PROCESS);
    let grows = process.as_str() == "electroform";
    let drive = ask.text(at::DRIVE);
    let own = match drive.as_str() {
        "density" => Some(at::DENSITY),
        "current" => Some(at::CURRENT),
        _ => None,
    };
    let covers = grows && ask.text(at::COVER).as_str() == "on";
    html! {
        <>
            { group(words::PIECE, html! {
                <>
                    { scoped(ask, at::BASE, Options::from(words::options(&draft.scope(at::BASE)))) }
                    if process.as_str() != "etch" {
                        { ask.field(at::WANTED_BORE) }
                    }
                    if grows {
                        { select(ask, at::COVER) }
                    }
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
            { group(words::BATH, html! {
                <>
                    { select(ask, at::PLACE) }
                    { scoped(ask, at::SOLUTION, Options::Made(solutions(ask))) }
                    { select(ask, at::STIRRING) }
                    { select(ask, at::ARRANGEMENT) }
                    { ask.field(at::DISTANCE) }
                    { ask.field(at::VOLUME) }
                </>
            }) }
            { group(words::SUPPLY, html! {
                <>
                    { ask.field(at::LOWEST) }
                    { ask.field(at::HIGHEST) }
                    { ask.field(at::DISPLAY_STEP) }
                    { ask.field(at::VOLTS) }
                </>
            }) }
            { group(words::PRINTED, html! {
                <>
                    { select(ask, at::UNITS) }
                    { select(ask, at::DECIMAL) }
                </>
            }) }
        </>
    }
}

/// A select that each process has its own word of.
pub fn scoped(ask: &Ask, address: &'static str, options: Options) -> Html {
    html! {
        <Select key={ask.here(address)} id={ask.here(address)} label={words::field(address)} {options} picked={ask.scoped(address)}
            onpick={ask.pick_scoped(address)} />
    }
}

/// Fields that belong together.
pub fn group(name: &str, fields: Html) -> Html {
    html! {
        <fieldset class="group">
            <legend>{ name }</legend>
            <div class="fields">{ fields }</div>
        </fieldset>
    }
}
