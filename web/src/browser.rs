//! What the page asks of the browser: the wall clock, a later moment, and whether something is in view.

use planner::narrowing::{Narrowed, Narrowing};
use planner::{Catalogue, Job, WayOut, ways_out};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use yew::prelude::*;

/// The wall clock to the minute, `2026-05-01T10:00`.
pub fn local_now() -> String {
    let d = js_sys::Date::new_0();
    format!(
        "{:04}-{:02}-{:02}T{:02}:{:02}",
        d.get_full_year(),
        d.get_month() + 1,
        d.get_date(),
        d.get_hours(),
        d.get_minutes()
    )
}

/// The wall clock, brought up to date every few seconds and whenever the page comes back into view.
#[hook]
pub fn use_now() -> Option<String> {
    let now = use_state_eq(|| None::<String>);
    {
        let now = now.clone();
        use_effect_with((), move |()| {
            now.set(Some(local_now()));
            let tick = Closure::<dyn FnMut()>::new(move || now.set(Some(local_now())));
            let window = web_sys::window();
            let id = window.as_ref().and_then(|w| {
                w.set_interval_with_callback_and_timeout_and_arguments_0(
                    tick.as_ref().unchecked_ref(),
                    5000,
                )
                .ok()
            });
            if let Some(document) = window.as_ref().and_then(|w| w.document()) {
                let _ = document.add_event_listener_with_callback(
                    "visibilitychange",
                    tick.as_ref().unchecked_ref(),
                );
            }
            move || {
                if let (Some(window), Some(id)) = (&window, id) {
                    window.clear_interval_with_handle(id);
                    if let Some(document) = window.document() {
                        let _ = document.remove_event_listener_with_callback(
                            "visibilitychange",
                            tick.as_ref().unchecked_ref(),
                        );
                    }
                }
                drop(tick);
            }
        });
    }
    (*now).clone()
}

/// Puts a text on the clipboard; false where the browser has none.
pub fn copy(text: &str) -> bool {
    let Some(window) = web_sys::window() else {
        return false;
    };
    let clipboard = js_sys::Reflect::get(&window.navigator(), &"clipboard".into());
    let Some(clipboard) = clipboard.ok().filter(|c| c.is_object()) else {
        return false;
    };
    let write = js_sys::Reflect::get(&clipboard, &"writeText".into()).ok();
    let write = write.and_then(|w| w.dyn_into::<js_sys::Function>().ok());
    // The promise's own refusal is left to the browser to report: the text stays on the page to be marked by hand.
    write.is_some_and(|w| w.call1(&clipboard, &text.into()).is_ok())
}

/// What a saved copy of the page carries, as JSON; none where this page carries nothing.
pub fn carried() -> Option<String> {
    let records = web_sys::window()?
        .document()?
        .get_element_by_id("records")?;
    records.text_content().filter(|text| text.trim() != "null")
}

/// Something that the script around the program does for it; none where that script is another.
fn shell(name: &str) -> Option<js_sys::Function> {
    let shell = js_sys::Reflect::get(&web_sys::window()?.into(), &"shell".into()).ok()?;
    let does = js_sys::Reflect::get(&shell, &name.into()).ok()?;
    does.dyn_into().ok()
}

/// Hands out this page as a file of this name that carries this JSON; false where that cannot be done.
pub fn save_copy(json: &str, name: &str) -> bool {
    shell("copy").is_some_and(|copy| {
        copy.call2(&JsValue::NULL, &json.into(), &name.into())
            .is_ok()
    })
}

/// Puts the newer edition in the place of this one and loads the page anew.
pub fn take_over() {
    if let Some(take_over) = shell("takeOver") {
        let _ = take_over.call0(&JsValue::NULL);
    }
}

/// Whether a newer edition of the page waits.
#[hook]
pub fn use_edition() -> bool {
    let waits = use_state_eq(|| false);
    {
        let waits = waits.clone();
        use_effect_with((), move |()| {
            let document = web_sys::window().and_then(|w| w.document());
            let root = document.as_ref().and_then(|d| d.document_element());
            let look = move || {
                waits.set(
                    root.as_ref()
                        .is_some_and(|root| root.has_attribute("data-edition")),
                );
            };
            // It may have come before the program did.
            look();
            let look = Closure::<dyn FnMut()>::new(look);
            if let Some(document) = &document {
                let _ = document
                    .add_event_listener_with_callback("edition", look.as_ref().unchecked_ref());
            }
            move || {
                if let Some(document) = document {
                    let _ = document.remove_event_listener_with_callback(
                        "edition",
                        look.as_ref().unchecked_ref(),
                    );
                }
                drop(look);
            }
        });
    }
    *waits
}

/// A countdown that counts nothing itself: it compares clocks, so that a sleeping page is right when it wakes.
/// Gives what is left, and a way to start it and to stop it.
#[hook]
pub fn use_countdown(whole: quantity::Time) -> (Option<quantity::Time>, Callback<bool>) {
    let started = use_state_eq(|| None::<f64>);
    let now = use_state_eq(js_sys::Date::now);
    {
        let now = now.clone();
        use_effect_with(*started, move |started| {
            let tick = Closure::<dyn FnMut()>::new(move || now.set(js_sys::Date::now()));
            let window = web_sys::window();
            let id = started.and(window.as_ref()).and_then(|w| {
                w.set_interval_with_callback_and_timeout_and_arguments_0(
                    tick.as_ref().unchecked_ref(),
                    500,
                )
                .ok()
            });
            move || {
                if let (Some(window), Some(id)) = (window, id) {
                    window.clear_interval_with_handle(id);
                }
                drop(tick);
            }
        });
    }
    let left = started.map(|since| {
        let gone = (*now - since) / 1000.0;
        let left = quantity::Quantity::si(whole) - gone;
        quantity::Time::seconds(left.clamp(0.0, quantity::Quantity::si(whole)))
    });
    let set = {
        let (started, now) = (started.clone(), now.clone());
        Callback::from(move |on: bool| {
            now.set(js_sys::Date::now());
            started.set(on.then(js_sys::Date::now));
        })
    };
    (left, set)
}

/// Whether the element has scrolled out of view above.
#[hook]
pub fn use_gone(node: NodeRef) -> bool {
    let gone = use_state_eq(|| false);
    {
        let gone = gone.clone();
        use_effect_with(node, move |node| {
            let seen = Closure::<dyn FnMut(js_sys::Array)>::new(move |entries: js_sys::Array| {
                if let Some(last) = entries.iter().last() {
                    let entry: web_sys::IntersectionObserverEntry = last.unchecked_into();
                    gone.set(!entry.is_intersecting());
                }
            });
            let observer = web_sys::IntersectionObserver::new(seen.as_ref().unchecked_ref()).ok();
            if let (Some(observer), Some(element)) = (&observer, node.cast::<web_sys::Element>()) {
                observer.observe(&element);
            }
            move || {
                if let Some(observer) = observer {
                    observer.disconnect();
                }
                drop(seen);
            }
        });
    }
    *gone
}

/// A value as it stood after it has not changed for so many milliseconds; `first` until then.
#[hook]
pub fn use_settled<T: Clone + PartialEq + 'static>(
    first: impl FnOnce() -> T,
    now: T,
    pause: i32,
) -> T {
    let settled = use_state_eq(first);
    {
        let settled = settled.clone();
        use_effect_with(now, move |now| {
            let now = now.clone();
            let later = Closure::<dyn FnMut()>::new(move || settled.set(now.clone()));
            let window = web_sys::window();
            let id = window.as_ref().and_then(|w| {
                w.set_timeout_with_callback_and_timeout_and_arguments_0(
                    later.as_ref().unchecked_ref(),
                    pause,
                )
                .ok()
            });
            move || {
                if let (Some(window), Some(id)) = (window, id) {
                    window.clear_timeout_with_handle(id);
                }
                drop(later);
            }
        });
    }
    (*settled).clone()
}

/// Does something with a value once it has been painted, at the latest when the page is put away or hidden; with the first one
/// at once. A newer value takes the place of one that still waits.
#[hook]
pub fn use_painted<T: Clone + PartialEq + 'static>(value: T, does: impl Fn(&T) + 'static) {
    let waits = use_mut_ref(|| None::<T>);
    let newest = use_mut_ref(|| None::<Rc<dyn Fn(&T)>>);
    newest.replace(Some(Rc::new(does)));
    let go = {
        let waits = waits.clone();
        use_memo((), move |()| {
            Closure::<dyn FnMut()>::new(move || {
                let does = newest.borrow().clone();
                if let (Some(does), Some(value)) = (does, waits.take()) {
                    does(&value);
                }
            })
        })
    };
    {
        let go = go.clone();
        // Once: anew at every value they cost a twentieth of all that a key sets going.
        use_effect_with((), move |()| {
            let window = web_sys::window();
            let document = window.as_ref().and_then(|w| w.document());
            let away: [Option<web_sys::EventTarget>; 2] =
                [window.map(Into::into), document.map(Into::into)];
            for (target, event) in away.iter().zip(AWAY) {
                if let Some(target) = target {
                    let _ = target.add_event_listener_with_callback(event, called(&go));
                }
            }
            move || {
                for (target, event) in away.iter().zip(AWAY) {
                    if let Some(target) = target {
                        let _ = target.remove_event_listener_with_callback(event, called(&go));
                    }
                }
            }
        });
    }
    let first = use_mut_ref(|| true);
    use_effect_with(value, move |value| {
        waits.replace(Some(value.clone()));
        let at_once = first.replace(false);
        if at_once {
            let _ = called(&go).call0(&JsValue::NULL);
        }
        let window = web_sys::window().filter(|_| !at_once);
        let id = window.as_ref().and_then(|w| {
            w.set_timeout_with_callback_and_timeout_and_arguments_0(called(&go), AFTER_PAINT)
                .ok()
        });
        move || {
            if let (Some(window), Some(id)) = (window, id) {
                window.clear_timeout_with_handle(id);
            }
        }
    });
}

/// As the browser calls it.
fn called(closure: &Closure<dyn FnMut()>) -> &js_sys::Function {
    closure.as_ref().unchecked_ref()
}

/// After the last of a few keys, and after all that follows it on the page, ms.
const AFTER_PAINT: i32 = 200;
/// What the window and the document say when the page is put away or hidden.
const AWAY: [&str; 2] = ["pagehide", "visibilitychange"];

/// What knowing each input would leave of the range. Worked out one input at a time, in tasks of their own after the page
/// was painted; another job drops what is not done.
#[hook]
pub fn use_narrowing(job: &Rc<Job>) -> Rc<Vec<Narrowed>> {
    let found = use_state_eq(|| Rc::new(Vec::new()));
    {
        let found = found.clone();
        use_effect_with(job.clone(), move |job| {
            let mut work = None;
            let mut job = Some(job.clone());
            // Nothing while a person types.
            let mut wait = PAUSE / SLICE;
            let tick = Closure::<dyn FnMut()>::new(move || {
                wait -= 1;
                if wait > 0 {
                    return;
                }
                if let Some(job) = job.take() {
                    work = Some(Narrowing::begin(&Catalogue::standard(), &job));
                } else if let Some(begun) = work.take_if(|begun| !begun.step()) {
                    found.set(Rc::new(begun.found()));
                }
            });
            let window = web_sys::window();
            let id = window.as_ref().and_then(|w| {
                w.set_interval_with_callback_and_timeout_and_arguments_0(
                    tick.as_ref().unchecked_ref(),
                    SLICE,
                )
                .ok()
            });
            move || {
                if let (Some(window), Some(id)) = (window, id) {
                    window.clear_interval_with_handle(id);
                }
                drop(tick);
            }
        });
    }
    (*found).clone()
}

/// Puts the focus on an element, where what had it is gone.
pub fn focus_in_place(on: &NodeRef) {
    let document = web_sys::window().and_then(|w| w.document());
    let lost = document.is_some_and(|d| d.active_element().is_none_or(|e| e.tag_name() == "BODY"));
    if let Some(element) = on.cast::<web_sys::HtmlElement>().filter(|_| lost) {
        let _ = element.focus();
    }
}

/// The ways out of what holds a job back, and whether they are of this very job. Worked out after the page was painted and
/// the person has paused; until then those of the job before keep their place, so that nothing jumps while typing.
#[hook]
pub fn use_ways(job: &Rc<Job>, held_back: bool) -> (Rc<Vec<WayOut>>, bool) {
    let found = use_state_eq(|| None::<Found>);
    {
        let found = found.clone();
        use_effect_with((job.clone(), held_back), move |(job, held_back)| {
            let job = job.clone();
            let later = Closure::<dyn FnMut()>::new(move || {
                let ways = Rc::new(ways_out(&Catalogue::standard(), &job));
                found.set(Some(Found(job.clone(), ways)));
            });
            let window = web_sys::window();
            let id = window.as_ref().filter(|_| *held_back).and_then(|w| {
                w.set_timeout_with_callback_and_timeout_and_arguments_0(
                    later.as_ref().unchecked_ref(),
                    PAUSE,
                )
                .ok()
            });
            move || {
                if let (Some(window), Some(id)) = (window, id) {
                    window.clear_timeout_with_handle(id);
                }
                drop(later);
            }
        });
    }
    match &*found {
        Some(Found(of, ways)) => (ways.clone(), Rc::ptr_eq(of, job)),
        None => Default::default(),
    }
}

/// Ways out, and of which job.
struct Found(Rc<Job>, Rc<Vec<WayOut>>);

impl PartialEq for Found {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// Milliseconds without a change after which a person is taken to look at the answer.
const PAUSE: i32 = 300;
/// Milliseconds between two slices of secondary work.
const SLICE: i32 = 30;
