//! Bath, supply and coat: one quiet line, and everything behind it.

use super::ask::Ask;
use super::questions::select;
use crate::parts::Select;
use crate::parts::choice::Options;
use crate::state::at;
use crate::state::job::{OWN, SETTINGS};
use crate::words::{self, number};
use planner::job::own::PROCESSES;
use planner::{Catalogue, Process, Setting};
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
    let cover = match ask.text(at::COVER).as_str() {
        _ if process.as_str() != "electroform" => None,
        "on" => Some(ask.shown(at::COVER_TIME)),
        "coat" => {
            let covering = ask.answer.steps.iter().find(|s| s.covering.is_some());
            covering
                .and_then(|s| s.time.known())
                .map(|t| number::time(t.likely))
        }
        _ => None,
    };
    let supply = match ask.text(at::SUPPLY).as_str() {
        "constant_voltage" => [at::VOLTS_LOWEST, at::VOLTS_HIGHEST, at::VOLTS_STEP],
        _ => [at::LOWEST, at::HIGHEST, at::DISPLAY_STEP],
    };
    let supply = (ask.text(at::SUPPLY).as_str() != "fixed_settings").then_some(supply);
    words::setup_line(
        words::solution(draft.scoped(at::SOLUTION)),
        words::option_label(at::STIRRING, &ask.text(at::STIRRING)),
        base,
        cover.as_deref(),
        supply.map(|s| s.map(|a| ask.shown(a))),
    )
}

/// The solutions of these processes that may be used where the person works, and the picked one.
pub fn offered(
    ask: &Ask,
    of: impl Fn(Process) -> bool,
    picked: &str,
) -> Vec<(&'static str, &'static str)> {
    let setting = match ask.text(at::PLACE).as_str() {
        "class" => Setting::Class,
        "shop" => Setting::Shop,
        _ => Setting::Home,
    };
    let catalogue = Catalogue::standard();
    let mut all: Vec<(&'static str, &'static str)> = catalogue
        .offered(setting)
        .filter(|s| of(s.process))
        .map(|s| (s.id, words::solution(s.id)))
        .collect();
    // One that was picked for another place stays in the list: its limit says what is wrong with it.
    if !all.iter().any(|(id, _)| *id == picked)
        && let Some(solution) = catalogue.solution(picked)
    {
        all.push((solution.id, words::solution(solution.id)));
    }
    all
}

/// The solutions of the process, and the person's own.
fn solutions(ask: &Ask) -> Vec<(&'static str, &'static str)> {
    let process = ask.text(at::PROCESS);
    let of = |p| {
        PROCESSES
            .iter()
            .any(|(word, q)| *word == process.as_str() && *q == p)
    };
    let mut all = offered(ask, of, &ask.scoped(at::SOLUTION));
    all.push((OWN, words::OWN_SOLUTION));
    all
}

/// What a bottle's label says.
fn label(ask: &Ask) -> Html {
    html! {
        <>
            { select(ask, at::OWN_METAL) }
            for address in [at::OWN_DENSITY, at::OWN_HIGHEST, at::OWN_EFFICIENCY, at::OWN_MOVES, at::OWN_VOLTS] {
                { ask.field(address) }
            }
        </>
    }
}

/// What the supply is, and what it gives.
fn supply(ask: &Ask) -> Html {
    let fields: &[&'static str] = match ask.text(at::SUPPLY).as_str() {
        "constant_voltage" => &[
            at::VOLTS_LOWEST,
            at::VOLTS_HIGHEST,
            at::VOLTS_STEP,
            at::VOLTS_CURRENT,
        ],
        "fixed_settings" => return few(ask),
        _ => &[at::LOWEST, at::HIGHEST, at::DISPLAY_STEP, at::VOLTS],
    };
    html! {
        <>
            { select(ask, at::SUPPLY) }
            for address in fields {
                { ask.field(address) }
            }
        </>
    }
}

/// The settings typed so far, and one more.
fn few(ask: &Ask) -> Html {
    let typed = |id: &str| {
        [at::FIXED_CURRENT, at::FIXED_GAIN].iter().any(|a| {
            let at = at::setting(a, id);
            !ask.state.draft.text(&at).is_empty()
        })
    };
    let last = SETTINGS
        .iter()
        .rposition(|id| typed(id))
        .map_or(0, |n| n + 1);
    html! {
        <>
            { select(ask, at::SUPPLY) }
            for (n, id) in SETTINGS.iter().enumerate().take(last + 1) {
                // Without a key the next setting, which comes with the first key typed in this one, would take the field away.
                <key={*id}>
                    { group(&words::setting(n + 1), html! {
                        <>
                            for address in [at::FIXED_CURRENT, at::FIXED_GAIN, at::FIXED_TIME] {
                                { ask.field(&at::setting(address, id)) }
                            }
                        </>
                    }) }
                </>
            }
        </>
    }
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
                    if ask.text(at::PLACE).as_str() == "class" {
                        { ask.field(at::STUDENTS) }
                        { ask.field(at::LESSON) }
                        { ask.field(at::WITNESS) }
                    }
                    { scoped(ask, at::SOLUTION, Options::Made(solutions(ask))) }
                    if ask.scoped(at::SOLUTION).as_str() == OWN {
                        { label(ask) }
                    }
                    { select(ask, at::STIRRING) }
                    { select(ask, at::ARRANGEMENT) }
                    { ask.field(at::DISTANCE) }
                    { ask.field(at::VOLUME) }
                    { ask.field(at::VESSELS) }
                </>
            }) }
            { group(words::SUPPLY, supply(ask)) }
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
