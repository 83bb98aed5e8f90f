//! Small drawings of our own, each with one stroke width, beside words and never instead of them.

use kerbstead_core::Verdict;

use crate::el::{View, svg};

/// What a drawing shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// A signpost: where the plan stands.
    Signpost,
    /// A crate with its lid: the kit.
    Crate,
    /// A price tag: the shop.
    PriceTag,
    /// A level with three marks: balances.
    Level,
    /// Two folded maps: plans.
    Maps,
    /// A verdict.
    Verdict(Verdict),
}

impl Shape {
    /// The drawing as a path in a box of 24 by 24.
    const fn path(self) -> &'static str {
        match self {
            Self::Signpost => "M12 3v18M12 5h7l2 2.5-2 2.5h-7M12 12H6l-2 2 2 2h6",
            Self::Crate => "M4 9h16v11H4zM3 5h18v4H3zM9 13h6",
            Self::PriceTag => "M4 4h8l9 9-8 8-9-9zM8 8v.6",
            Self::Level => "M4 20h16M7 20v-6M12 20V5M17 20v-9",
            Self::Maps => "M4 6l5-2 6 2 5-2v14l-5 2-6-2-5 2zM9 4v14M15 6v14",
            Self::Verdict(Verdict::Holds) => "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM8 12.5l3 3 5.5-6.5",
            Self::Verdict(Verdict::Tight) => "M12 4 21.5 20h-19zM12 10v5M12 17v.6",
            Self::Verdict(Verdict::FallsShort) => "M12 2.5 21.5 12 12 21.5 2.5 12zM9 9l6 6M15 9l-6 6",
            Self::Verdict(Verdict::Unknown) => "M5 5h14v14H5zM10 10a2 2 0 1 1 2.5 2c-.5.2-.5.6-.5 1.5M12 16v.6",
        }
    }
}

/// A drawing without words of its own; the words stand beside it.
pub fn icon(shape: Shape) -> View {
    svg("svg")
        .class("icon")
        .attr("viewBox", "0 0 24 24")
        .attr("aria-hidden", "true")
        .attr("focusable", "false")
        .put(svg("path").attr("d", shape.path()))
        .done()
}
