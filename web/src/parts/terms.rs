//! Names and their values, one under the other.

use yew::prelude::*;

/// A list of what is known: a name and its value in words. What has no value is left out.
pub fn terms(all: Vec<(&'static str, Option<String>)>) -> Html {
    html! {
        <dl class="also">
            for (name, value) in all {
                if let Some(value) = value {
                    <div><dt>{ name }</dt><dd>{ value }</dd></div>
                }
            }
        </dl>
    }
}
