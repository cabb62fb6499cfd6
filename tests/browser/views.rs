//! Every view of the page, and how a person gets to it from a fresh start.

use crate::driver::{Browser, TORUS_WIRE, Window};
use serde_json::{Value, json};

/// One thing a person does.
#[derive(Clone, Copy, Debug)]
pub enum Act {
    /// Taps the first element of a selector.
    Tap(&'static str),
    /// Opens every `details` of a selector.
    Open(&'static str),
    /// Waits until a selector finds something.
    Wait(&'static str),
    /// Types into the field at an address and leaves it.
    Type(&'static str, &'static str),
    /// Picks an option of the list at an address.
    Pick(&'static str, &'static str),
    /// A newer edition of the page comes.
    Edition,
}

/// A view: what the page looks like after a few acts.
#[derive(Clone, Copy, Debug)]
pub struct View {
    /// Its name, for messages and file names.
    pub name: &'static str,
    /// How to get there.
    pub acts: &'static [Act],
}

use Act::{Edition, Open, Pick, Tap, Type, Wait};

const DRAFTS: Act = Tap(".drafts .line .link");

macro_rules! demo {
    ($name:literal, $id:literal) => {
        View {
            name: $name,
            acts: &[
                DRAFTS,
                Open("#drafts details"),
                Tap(concat!("[data-demo='", $id, "'] button")),
                DRAFTS,
                Tap(".working .link"),
            ],
        }
    };
}

/// All of them.
pub const VIEWS: &[View] = &[
    View {
        name: "first",
        acts: &[],
    },
    View {
        name: "kinds",
        acts: &[Tap(".kinds + .link")],
    },
    View {
        name: "area",
        acts: &[
            Tap("[id='pieces/p1/extent=area']"),
            Wait("[id='pieces/p1/extent/area/one_side']"),
        ],
    },
    View {
        name: "measure-tracing",
        acts: &[Tap(".measure .link"), Wait("#measure .fields")],
    },
    View {
        name: "measure-card",
        acts: &[
            Tap(".measure .link"),
            Pick("pieces/p1/measure", "card"),
            Type("pieces/p1/measure/card/long", "1070"),
            Type("pieces/p1/measure/card/short", "675"),
            Type("pieces/p1/measure/card/piece", "90000"),
            Wait("#measure .actions .button"),
        ],
    },
    View {
        name: "exact",
        acts: &[
            Tap(".exact h2 .link"),
            Open("#exact details"),
            Wait("#exact .hint:not(:empty)"),
        ],
    },
    View {
        name: "set-up",
        acts: &[Tap(".setup .link")],
    },
    View {
        name: "own-current",
        acts: &[
            Tap(".setup .link"),
            Pick("steps/s2/drive", "density"),
            Tap("[id='steps/s2/until=mean']"),
            Wait("[id='steps/s2/until/mean']"),
        ],
    },
    View {
        name: "working",
        acts: &[
            Tap(".first .link"),
            Tap(".working .link"),
            Open(".share details"),
        ],
    },
    View {
        name: "emergency",
        acts: &[Tap(".emergency"), Tap(".rinse .button"), Wait(".clock")],
    },
    View {
        name: "rinse-runs",
        acts: &[
            Tap(".emergency"),
            Tap(".rinse .button"),
            Tap(".sheet > .button"),
            Wait(".emergency strong"),
        ],
    },
    View {
        name: "drafts",
        acts: &[
            DRAFTS,
            Tap("#drafts .actions .button"),
            Open("#drafts details"),
        ],
    },
    View {
        name: "taken-in",
        acts: &[
            DRAFTS,
            Open("#drafts details"),
            Type("take", "no plan at all"),
            Tap(".take > .button"),
        ],
    },
    View {
        name: "problem",
        acts: &[Type(TORUS_WIRE, "abc"), Type("pieces/p1/count", "0")],
    },
    View {
        name: "no-answer",
        acts: &[
            DRAFTS,
            Open("#drafts details"),
            Type("take", NO_ANSWER),
            Tap(".take > .button"),
            DRAFTS,
        ],
    },
    View {
        name: "pieces",
        acts: &[
            Tap(".measure + .actions .button"),
            Wait(".bar li + li"),
            Tap("[id='pieces/p2/extent=acorn_cap']"),
            Type("pieces/p2/label", "Cap of the large oak by the stream"),
            Tap(".measure + .actions .button + .button"),
            Wait(".bar li + li + li"),
        ],
    },
    View {
        name: "us-shop",
        acts: &[
            Tap(".setup .link"),
            Pick("units", "us"),
            Pick("decimal", "comma"),
        ],
    },
    View {
        name: "edition",
        acts: &[Edition, Wait(".edition button")],
    },
    View {
        name: "compare",
        acts: &[
            DRAFTS,
            Open("#drafts > details"),
            Tap("[data-demo='stud'] button"),
            Wait("#beside"),
            Pick("beside", "d1"),
            Wait(".compare table"),
        ],
    },
    View {
        name: "fair",
        acts: &[
            Tap(".measure + .actions .button"),
            Wait("[id='pieces/p2/joins/after']"),
            Type("pieces/p2/joins/after", "2"),
            Tap(".fair .link"),
            Wait("#fair .button"),
        ],
    },
    View {
        name: "ways",
        acts: &[
            Tap(".setup .link"),
            Type("supply/constant_current/highest", "0.05"),
            Tap(".setup .link"),
            Wait(".ways:not([inert]) li"),
        ],
    },
    View {
        name: "tried",
        acts: &[
            Tap(".setup .link"),
            Type("supply/constant_current/highest", "0.05"),
            Tap(".setup .link"),
            Wait(".ways:not([inert]) button"),
            Tap(".ways:not([inert]) button"),
            Wait(".limits .note .link"),
        ],
    },
    View {
        name: "layers",
        acts: &[
            Tap(".layers > .button"),
            Wait("[id='steps/s3/until']"),
            Tap(".layers > .button"),
            Pick("baths/b4/solution", "rh_sulf"),
            Pick("steps/s4/until", "time"),
            Wait("[id='steps/s4/until/time']"),
        ],
    },
    View {
        name: "series",
        acts: &[
            Type("pieces/p1/count", "6"),
            Tap(".setup .link"),
            Type("steps/s2/in", "3"),
            Wait(".series svg"),
        ],
    },
    View {
        name: "sessions",
        acts: &[
            Tap(".attend .link"),
            Type("attend/session", "3"),
            Type("attend/due", "2031-12-05 16:00"),
            Wait(".card.sessions"),
        ],
    },
    View {
        name: "accident",
        acts: &[
            Tap(".accident .link"),
            Type("after/after", "3"),
            Wait("#accident dl"),
        ],
    },
    View {
        name: "holds-volts",
        acts: &[Tap(".setup .link"), Pick("supply", "constant_voltage")],
    },
    View {
        name: "few-settings",
        acts: &[
            Tap(".setup .link"),
            Pick("supply", "fixed_settings"),
            Type("supply/fixed_settings/f1/current", "100"),
            Wait("[id='supply/fixed_settings/f2/current']"),
        ],
    },
    View {
        name: "own-solution",
        acts: &[
            Tap(".setup .link"),
            Pick("baths/b1/solution", "own"),
            Wait("[id='own/solutions/own/density']"),
            Type("own/solutions/own/density", "1"),
        ],
    },
    demo!("demo-ferns", "ferns"),
    demo!("demo-class", "class"),
    demo!("demo-gear", "gear"),
    demo!("demo-acorn-cap", "acorn_cap"),
    demo!("demo-resin-ring", "resin_ring"),
    demo!("demo-stud", "stud"),
    demo!("demo-vermeil", "vermeil"),
    demo!("demo-rhodium", "rhodium"),
    demo!("demo-pendant", "pendant"),
    demo!("demo-bookmark", "bookmark"),
];

/// A plan nothing can be answered for.
const NO_ANSWER: &str =
    "ionwright job 1\npieces/p1/extent/parts/a/shape/torus/bore: wide\npieces/p1/count: many\n";

/// A view of a browser that may keep nothing.
pub const REFUSED: View = View {
    name: "no-storage",
    acts: &[Wait(".shelf")],
};

/// Shows a view from a fresh start, in the page that is open.
pub async fn show(browser: &Browser, view: &View) {
    browser.forgets().await;
    browser.reload().await;
    go_on(browser, view).await;
}

/// Does a view's acts from where the page stands.
pub async fn go_on(browser: &Browser, view: &View) {
    let rows: Vec<Value> = view
        .acts
        .iter()
        .map(|act| match act {
            Tap(at) => json!(["tap", at]),
            Open(at) => json!(["open", at]),
            Wait(at) => json!(["wait", at]),
            Type(at, text) => json!(["type", at, text]),
            Pick(at, word) => json!(["pick", at, word]),
            Edition => json!(["edition", ""]),
        })
        .collect();
    browser
        .client
        .execute(include_str!("scripts/act.js"), vec![json!(rows)])
        .await
        .unwrap_or_else(|e| panic!("{}: {e}", view.name));
}

/// What a script finds wrong, a line for each.
pub async fn findings(browser: &Browser, script: &str, with: Vec<Value>) -> Vec<String> {
    let found = browser
        .client
        .execute(script, with)
        .await
        .unwrap_or_else(|e| panic!("{e}"));
    serde_json::from_value(found.clone()).unwrap_or_else(|e| panic!("{e}: {found}"))
}

/// The two themes by their media feature.
pub const THEMES: [&str; 2] = ["light", "dark"];

/// What the browser says of the person's wishes.
pub async fn prefer(browser: &Browser, features: &[(&str, &str)]) {
    let all: Vec<Value> = features
        .iter()
        .map(|(name, value)| json!({"name": name, "value": value}))
        .collect();
    browser
        .cdp("Emulation.setEmulatedMedia", json!({"features": all}))
        .await;
}

/// Makes the window another size without opening a new one.
pub async fn resize(browser: &Browser, width: u32, height: u32) {
    browser
        .cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 900}),
        )
        .await;
    // A page that is wider than a phone's window makes `innerWidth` larger, not the width a style is asked for.
    browser
        .until(&format!("matchMedia('(width: {width}px)').matches"))
        .await;
    browser
        .until(
            "new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => r(true))))",
        )
        .await;
}

/// A window of this size that shows the page from the site.
pub async fn opened(width: u32, height: u32, storage: bool) -> Browser {
    let (way, address) = crate::driver::ways().remove(0);
    let browser = Browser::open(Window {
        width,
        height,
        storage,
    })
    .await;
    browser.go(way, &address).await;
    browser
}
