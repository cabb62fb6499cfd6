//! Starts the page inside `#app`.

fn main() {
    let _ = web::interface::offer();
    let root = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.get_element_by_id("app"));
    if let Some(root) = root {
        yew::Renderer::<web::App>::with_root(root).render();
    }
}
