//! The units a person prefers: what a bare number means, and what numbers are printed in.

use super::at;
use super::draft::Draft;
use super::entries;

/// A preference.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Millimetres, micrometres, A/dm2, litres.
    #[default]
    Metric,
    /// Inches, mils, A/ft2, US gallons: as US shops write.
    UsShop,
}

/// What stands for what in a US shop.
const US: [(&str, &str); 7] = [
    ("mm", "in"),
    ("cm²", "in²"),
    ("µm", "mil"),
    ("A/dm²", "A/ft²"),
    ("L", "US gal"),
    ("g/L", "oz/US gal"),
    ("°C", "°F"),
];

impl Units {
    /// What a draft is typed in.
    pub fn of(draft: &Draft) -> Self {
        match draft.text(at::UNITS) {
            "us" => Self::UsShop,
            _ => Self::Metric,
        }
    }

    /// The unit that stands for a metric one.
    pub fn symbol(self, metric: &'static str) -> &'static str {
        match self {
            Self::Metric => metric,
            Self::UsShop => US
                .iter()
                .find(|(m, _)| *m == metric)
                .map_or(metric, |(_, us)| us),
        }
    }
}

/// Changes the preference. A bare number keeps its meaning: it gets the unit it was typed in.
pub fn prefer(draft: &mut Draft, word: &str) {
    let old = Units::of(draft);
    draft.put(at::UNITS, word, true);
    let new = Units::of(draft);
    if old == new {
        return;
    }
    for map in [&mut draft.texts, &mut draft.good] {
        for (address, text) in map.iter_mut() {
            let Some(declared) = entries::declared(address) else {
                continue;
            };
            let metric = declared.unit();
            let symbol = old.symbol(metric);
            // A text that has a unit already cannot be read with another behind it.
            let named = [text.trim(), " ", symbol].concat();
            let bare = !text.trim().is_empty()
                && symbol != new.symbol(metric)
                && matches!(entries::read_in(old, address, &named), Some(Ok(_)));
            if bare {
                *text = named;
            }
        }
    }
}
