//! The van from the side, for the heights.

use kerbstead_core::space::{Drawing, Drawn, Outline};

use super::level_class;
use super::view::clamp;
use crate::el::{View, el, svg};
use crate::live::{self, Memo};
use crate::parts::line;

/// Room around it, in millimetres.
const AROUND_MM: i32 = 100;

/// The drawing; what it shows is also told by the fields of each thing.
pub fn side_view(data: Memo<Drawing>) -> View {
    el("figure").put(live::view(move || data.with(draw))).done()
}

fn draw(data: &Drawing) -> View {
    let [(from_x, to_x), _] = data.bounds();
    let (from, to) = (clamp(from_x), clamp(to_x));
    let tops = data.things.iter().map(|drawn| drawn.closed.to_mm).chain(data.roof.iter().map(|row| clamp(row.y)));
    let top = tops.max().unwrap_or(1_000).clamp(500, 10_000);
    let (width, height) = (to - from + 2 * AROUND_MM, top + 2 * AROUND_MM);
    let up = |height_mm: i32| top + AROUND_MM - height_mm;
    let mut points: Vec<(i32, i32)> = data.roof.iter().map(|row| (clamp(row.x), up(clamp(row.y)))).collect();
    if let (Some(first), Some(last)) = (points.first().copied(), points.last().copied()) {
        points.insert(0, (from, first.1));
        points.push((to, last.1));
    }
    let roof = points.iter().map(|(x, y)| format!("{x},{y}")).collect::<Vec<_>>().join(" ");
    let parts = data.built_in.iter().map(|part| block("built-in", part, &up));
    let things = data.things.iter().map(|drawn| thing(drawn, &up));
    svg("svg")
        .class("plan-view side-view")
        .attr("viewBox", format!("{} 0 {width} {height}", from - AROUND_MM))
        .attr("role", "img")
        .attr("aria-label", t!("space-side-label"))
        .put(line("floor-line", (from, to), (up(0), up(0))))
        .put(svg("polyline").class("roof-line").attr("points", roof))
        .put_each(parts)
        .put_each(things)
        .done()
}

fn thing(drawn: &Drawn, up: &dyn Fn(i32) -> i32) -> View {
    let class = format!("thing level-{}{}", level_class(drawn.level), if drawn.is_wrong { " wrong" } else { "" });
    let open = drawn.opened.as_ref().map(|open| block("opened", open, up));
    svg("g").class(&class).put(open).put(block("closed", &drawn.closed, up)).done()
}

fn block(class: &str, outline: &Outline, up: &dyn Fn(i32) -> i32) -> View {
    let places = || outline.corners.iter().map(|corner| corner.x);
    let (low, high) = (places().fold(f64::MAX, f64::min), places().fold(f64::MIN, f64::max));
    svg("rect")
        .class(class)
        .attr("x", clamp(low))
        .attr("y", up(outline.to_mm))
        .attr("width", (clamp(high) - clamp(low)).max(0))
        .attr("height", (outline.to_mm - outline.from_mm).max(0))
        .done()
}
