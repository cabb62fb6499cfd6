//! Lines of text as items of a list.

use yew::prelude::*;

/// An item a line.
pub fn items(lines: &[String]) -> Html {
    html! {
        <>
            for line in lines {
                <li>{ line }</li>
            }
        </>
    }
}
