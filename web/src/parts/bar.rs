//! A bar as long as a share of the width.

use crate::el::{View, svg};

/// The words beside it say the same.
#[allow(clippy::cast_possible_truncation)] // a share of the width
pub fn bar(share: f64) -> View {
    let width = (share.clamp(0.0, 1.0) * 1_000.0) as i32;
    svg("svg")
        .class("bar")
        .attr("viewBox", "0 0 1000 40")
        .attr("preserveAspectRatio", "none")
        .attr("aria-hidden", "true")
        .put(svg("rect").attr("width", width.max(4)).attr("height", 40))
        .done()
}
