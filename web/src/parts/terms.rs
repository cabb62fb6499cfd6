//! Names and their values, one under the other.

use yew::prelude::*;

/// A list of what is known: a name and its value in words. What has no value is left out.
pub fn terms(all: impl IntoIterator<Item = (&'static str, Option<String>)>) -> Html {
    html! {
        <dl class="also">
            for (name, value) in all.into_iter().filter_map(|(n, v)| Some((n, v?))) {
                <div><dt>{ name }</dt><dd>{ value }</dd></div>
            }
        </dl>
    }
}
