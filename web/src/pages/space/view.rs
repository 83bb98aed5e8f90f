//! The van from above: drawn, moved about in, and looked at closer.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Quantity};
use kerbstead_core::space::geometry::Point;
use kerbstead_core::space::shape::Spot;
use kerbstead_core::space::{Drawing, Drawn, Moving, Outline, turned};
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use super::drag::Drag;
use super::{Chosen, level_class};
use crate::el::{El, View, el, fragment, nothing, svg};
use crate::live::{self, Memo, Signal};
use crate::locale::tell;
use crate::parts::{button, line, named};
use crate::state::App;

/// What is seen of the van, in millimetres: from the left, from the front, how wide, how long.
pub type Window = [i32; 4];

/// Room around the van, in millimetres.
const AROUND_MM: i32 = 120;
/// What letters of a name take, in millimetres of the drawing.
const LETTER_MM: i32 = 46;

/// The drawing with its buttons.
pub fn plan_view(app: App, data: Memo<Drawing>, chosen: Chosen) -> View {
    let whole = live::memo(move || data.with(whole_window));
    let seen: Signal<Option<Window>> = Signal::new(None);
    let window = live::memo(move || seen.get().unwrap_or_else(|| whole.get()));
    let count = move || data.with(|data| Figure::count(data.things.len()));
    let closer = move |tenths: i32| {
        let [x, y, width, length] = window.get_untracked();
        let (new_width, new_length) = ((width * 10 / tenths).max(300), (length * 10 / tenths).max(300));
        let new = [x + (width - new_width) / 2, y + (length - new_length) / 2, new_width, new_length];
        let is_all = new_width >= whole.get_untracked()[2];
        seen.set((!is_all).then_some(new));
    };
    let picture = svg("svg")
        .attr("id", "plan-view")
        .live("class", move || Some((if seen.get().is_some() { "plan-view closer" } else { "plan-view" }).to_owned()))
        .live("viewBox", move || {
            let [x, y, width, length] = window.get();
            Some(format!("{x} {y} {width} {length}"))
        })
        .attr("role", "group")
        .live("aria-label", move || Some(tell("space-drawing-label", &vec![("count", count())])))
        .put(live::view(move || data.with(|data| draw(app, data, chosen))))
        .put(live::view(move || narrowest(app)));
    let picture = Drag::listen(picture, app, chosen, window, seen);
    el("div")
        .class("plan-frame")
        .put(picture)
        .put(
            el("div")
                .class("buttons")
                .put(button(key!("space-bigger"), move || closer(15)))
                .put(button(key!("space-smaller"), move || closer(7)))
                .put(button(key!("space-whole"), move || seen.set(None))),
        )
        .put(el("p").class("hint").put(key!("space-drawing-hint")))
        .done()
}

/// All of the van with what stands in it and around it.
fn whole_window(data: &Drawing) -> Window {
    let [(from_x, to_x), (from_y, to_y)] = data.bounds();
    let whole = |mm: f64| clamp(mm);
    let (left, front) = (whole(from_y) - AROUND_MM, whole(from_x) - AROUND_MM);
    [left, front, whole(to_y) + AROUND_MM - left, whole(to_x) + AROUND_MM - front]
}

/// Whole millimetres, for a drawing.
pub fn clamp(mm: f64) -> i32 {
    #[allow(clippy::cast_possible_truncation)] // clamped
    let whole = mm.clamp(-1e5, 1e5) as i32;
    whole
}

/// Corners as the drawing has them: across the van to the right, along it downwards.
pub fn corners_text(outline: &Outline) -> String {
    let corners = outline.corners.iter().map(|corner| format!("{},{}", clamp(corner.y), clamp(corner.x)));
    corners.collect::<Vec<_>>().join(" ")
}

fn shape(class: &str, outline: &Outline) -> View {
    svg("polygon").class(class).attr("points", corners_text(outline)).done()
}

/// The van with its things.
fn draw(app: App, data: &Drawing, chosen: Chosen) -> View {
    let floor = Outline { corners: data.outline.clone(), ..Outline::default() };
    let [left, front, width, length] = whole_window(data);
    let [(from_x, to_x), (from_y, to_y)] = Drawing { things: Vec::new(), ..data.clone() }.bounds();
    let middle = clamp(f64::midpoint(from_x, to_x));
    let side =
        |text: String, y: i32| svg("text").class("side").attr("x", left + width / 2).attr("y", y).put(text).done();
    fragment()
        .put(shape("floor", &floor))
        .put_each(data.built_in.iter().map(|part| shape("built-in", part)))
        .put_each(doors(data))
        .put(side(format!("{} · {}", t!("space-front"), super::say_mm(to_y - from_y)), front + 70))
        .put(
            svg("text")
                .class("side")
                .attr("x", left + 60)
                .attr("y", middle)
                .attr("transform", format!("rotate(-90 {} {middle})", left + 60))
                .put(super::say_mm(to_x - from_x)),
        )
        .put(side(t!("space-rear"), front + length - 30))
        .put_each(data.things.iter().map(|drawn| thing(app, drawn, chosen)))
        .done()
}

/// A line from one place of the van to another.
fn between(class: &str, from: Point, to: Point) -> View {
    line(class, (clamp(from.y), clamp(to.y)), (clamp(from.x), clamp(to.x))).done()
}

/// The doors, each a line in its wall.
fn doors(data: &Drawing) -> Vec<View> {
    data.doors.iter().map(|(_, from, to)| between("door", *from, *to)).collect()
}

/// One thing, which can be chosen, dragged and moved by keys.
fn thing(app: App, drawn: &Drawn, chosen: Chosen) -> View {
    let id = drawn.id;
    let class = format!("thing level-{}{}", level_class(drawn.level), if drawn.is_wrong { " wrong" } else { "" });
    let is_chosen = move || chosen.get() == Some(id);
    svg("g")
        .attr("id", format!("thing-{id}"))
        .live("class", move || Some(if is_chosen() { format!("{class} chosen") } else { class.clone() }))
        .attr("tabindex", "0")
        .attr("role", "group")
        .attr("aria-roledescription", t!("space-movable"))
        .attr("aria-label", place_text(drawn))
        .live("aria-current", move || is_chosen().then(|| "true".to_owned()))
        .on("keydown", Box::new(move |event: Event| on_key(app, id, chosen, &event)))
        .put(drawn.opened.as_ref().map(|open| shape("opened", open)))
        .put(shape("closed", &drawn.closed))
        .put(drawn.head.as_ref().map(|head| shape("head", head)))
        .put(label(drawn))
        .done()
}

/// What a thing is called, how large it is, and where it stands.
pub fn place_text(drawn: &Drawn) -> String {
    let mm = |length: i32| Figure::of(f64::from(length), Quantity::LengthMm);
    let figures = vec![
        ("name", Figure::Name(named(drawn.name.clone()))),
        ("x", mm(drawn.corner_mm[0])),
        ("y", mm(drawn.corner_mm[1])),
        ("length", mm(drawn.size_mm[0])),
        ("width", mm(drawn.size_mm[1])),
    ];
    tell("space-thing-at", &figures)
}

/// Its name, as much of it as there is room for; upright where it is longer than wide.
fn label(drawn: &Drawn) -> View {
    let along = |pick: fn(&Point) -> f64| {
        let places = || drawn.closed.corners.iter().map(pick);
        let (low, high) = (places().fold(f64::MAX, f64::min), places().fold(f64::MIN, f64::max));
        (clamp(low), clamp(high))
    };
    let ((top, bottom), (left, right)) = (along(|point| point.x), along(|point| point.y));
    let (wide, tall) = (right - left, bottom - top);
    let is_upright = tall > wide && wide < LETTER_MM * 8;
    let room = usize::try_from((if is_upright { tall } else { wide }) / LETTER_MM).unwrap_or(0);
    let (x, y) = (left + wide / 2, top + tall / 2);
    if drawn.is_covered {
        return nothing();
    }
    let mark = if drawn.is_wrong { "! " } else { "" };
    let name: String = format!("{mark}{}", drawn.name).chars().take(room.max(1)).collect();
    let [long, broad] = drawn.size_mm.map(|mm| super::say_mm(f64::from(mm)));
    let size = format!("{long} × {broad}");
    let has_room = room >= size.chars().count() && (if is_upright { wide } else { tall }) >= LETTER_MM * 5;
    let written = |y: i32, text: String| {
        let line = svg("text").attr("x", x).attr("y", y).put(text);
        if is_upright {
            line.attr("transform", format!("rotate(90 {x} {})", top + tall / 2)).done()
        } else {
            line.done()
        }
    };
    let size = has_room.then(|| written(y + LETTER_MM, size));
    fragment().put(written(if has_room { y - LETTER_MM } else { y }, name)).put(size).done()
}

/// Arrows move, R turns, and what is pressed for a button chooses.
fn on_key(app: App, id: Id, chosen: Chosen, event: &Event) {
    let Some(event) = event.dyn_ref::<KeyboardEvent>() else { return };
    let step = if event.shift_key() { 100.0 } else { 10.0 };
    let way = match event.key().as_str() {
        "ArrowUp" => [-step, 0.0],
        "ArrowDown" => [step, 0.0],
        "ArrowLeft" => [0.0, -step],
        "ArrowRight" => [0.0, step],
        "r" | "R" => {
            event.prevent_default();
            turn(app, id);
            return;
        }
        "Enter" | " " => {
            event.prevent_default();
            chosen.set(Some(id));
            return;
        }
        _ => return,
    };
    event.prevent_default();
    chosen.set(Some(id));
    shift(app, id, way);
}

/// Moves a thing by so much along and across the van.
pub fn shift(app: App, id: Id, [x, y]: [f64; 2]) {
    let edit = app.plan(|plan| {
        let moving = Moving::new(plan, id)?;
        let [from_x, from_y] = moving.corner_mm();
        Some(moving.edit(&moving.to(from_x + x, from_y + y, 0.0)))
    });
    if let Some(edit) = edit {
        app.edit(edit);
    }
}

/// Turns a thing by a quarter.
pub fn turn(app: App, id: Id) {
    let edit = app.plan(|plan| turned(plan, id));
    if let Some(edit) = edit {
        app.edit(edit);
    }
}

/// Where each way is narrowest, if it is too narrow.
fn narrowest(app: App) -> View {
    app.settled_assessment(|assessment| {
        let ways = assessment.space.ways.iter().filter(|way| !way.passes);
        let lines = ways.filter_map(|way| way.narrowest).map(|[from, to]| between("narrowest", from, to));
        fragment().put_each(lines).done()
    })
}

/// The van as it is, only to be looked at.
pub fn still_view(data: Memo<Drawing>) -> View {
    live::view(move || {
        data.with(|data| {
            let count = vec![("count", Figure::count(data.things.len()))];
            small_picture(data, tell("space-drawing-label", &count), None)
        })
    })
}

/// An arrangement as a small picture.
pub fn small_picture(data: &Drawing, says: String, ring: Option<Spot>) -> View {
    let [x, y, width, length] = whole_window(data);
    let floor = Outline { corners: data.outline.clone(), ..Outline::default() };
    let picture: El = svg("svg")
        .class("plan-view small")
        .attr("viewBox", format!("{x} {y} {width} {length}"))
        .attr("role", "img")
        .attr("aria-label", says)
        .put(shape("floor", &floor))
        .put_each(data.built_in.iter().map(|part| shape("built-in", part)))
        .put_each(doors(data));
    let things = data.things.iter().map(|drawn| {
        let class = format!("thing level-{}", level_class(drawn.level));
        svg("g").class(&class).put(shape("closed", &drawn.closed)).put(label(drawn)).done()
    });
    let ring =
        ring.map(|spot| svg("circle").class("ring").attr("cx", spot.y_mm).attr("cy", spot.x_mm).attr("r", 70).done());
    picture.put_each(things).put(ring).done()
}
