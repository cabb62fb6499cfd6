//! Vessels one behind the other, and how they are wired.

use super::picture::{Picture, WIDTH};
use yew::prelude::*;

/// The drawing: so many beakers, in each a counter electrode (a plate) and the work (a ring); a wire from each work to the
/// next counter electrode. `signs` are the leads at both ends. The words beside it say the same.
pub fn drawing(vessels: usize, signs: [&'static str; 2]) -> Html {
    let cell = (WIDTH - 40.0) / vessels as f64;
    let mut p = Picture::default();
    p.text("sign", 8.0, 22.0, signs[0].to_owned());
    p.text("sign", WIDTH - 8.0, 22.0, signs[1].to_owned());
    // From the left lead on, along the tops.
    let mut wire = String::from("M16 16");
    for n in 0..vessels {
        let left = 20.0 + cell * n as f64;
        let (plate, work) = (left + 0.3 * cell, left + 0.7 * cell);
        p.path(
            "yard",
            format!("M{:.1} 40v48h{:.1}v-48", left + 0.1 * cell, 0.8 * cell),
        );
        p.path(
            "axis",
            format!("M{:.1} 52h{:.1}", left + 0.1 * cell, 0.8 * cell),
        );
        p.rect("step last", plate - 3.0, 44.0, 6.0, 36.0);
        p.path("yard", format!("M{work:.1} 60a8 8 0 1 1 -0.1 0"));
        wire.push_str(&format!("H{plate:.1}V44M{work:.1} 60V16"));
    }
    wire.push_str(&format!("H{:.1}", WIDTH - 16.0));
    p.path("axis", wire);
    p.show(96.0, None)
}
