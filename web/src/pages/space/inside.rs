//! The inside of the van: what is measured of floor, doors, walls and roof.

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path, Plain, Plan, Quantity};
use kerbstead_core::space::{drawing, four_corners, usual_inside};
use serde_json::json;

use super::super::{section, standing, verdict_line};
use super::{say_mm, side, view};
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{t, tell};
use crate::parts::{Entries, button, fields, said_value};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn inside() -> View {
    let app = App::here();
    let data = live::memo(move || app.plan(drawing));
    let usual = move || {
        let edit = app.plan(|plan| usual_inside(plan, &|key| t(key)));
        app.edit_and_tell(edit, t!("inside-usual-done"));
    };
    let vehicle = &["size", "inside_length_mm", "inside_width_mm", "inside_height_mm"];
    let begin = fragment()
        .put(el("p").put(key!("inside-usual-hint")))
        .put(button(key!("inside-usual-put"), usual).class("add"))
        .done();
    fragment()
        .put(el("h1").put(key!("page-inside")))
        .put(verdict_line(live::memo(move || standing(app, Balance::Space))))
        .put(el("p").put(key!("inside-origin")))
        .put(section(key!("inside-measures"), fields(&Path::section("vehicle"), vehicle)))
        .put(section(key!("inside-usual"), begin))
        .put(section(key!("inside-doors"), doors()))
        .put(section(key!("inside-built-ins"), built_ins()))
        .put(section(key!("inside-walls"), walls()))
        .put(section(key!("inside-roof"), roof()))
        .put(section(key!("inside-corners"), corners(app)))
        .put(section(key!("space-drawing"), view::still_view(data)))
        .put(section(key!("space-side"), side::side_view(data)))
        .put(el("p").class("links").put(el("a").attr("href", Page::Space.link()).put(key!("space-back"))))
        .done()
}

fn doors() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(door) = plan.doors.iter().find(|door| door.id == id) else { return Default::default() };
        let side = said_value(plan, &Path::entry("doors", id).child("side"), &door.side.to_plain());
        let mm = |length: f64| Figure::of(length, Quantity::LengthMm);
        (side, tell("inside-door-line", &vec![("width", mm(door.width_mm)), ("height", mm(door.height_mm))]))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("doors", id), &["side", "from_mm", "width_mm", "height_mm", "clear_mm"])
    }
    let fresh = || json!({ "width_mm": 1_000.0, "height_mm": 1_200.0 });
    Entries { list: List::Doors, line, body, fresh, add: key!("inside-doors-add") }.show()
}

fn built_ins() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let mm = plan.built_ins.iter().find(|part| part.id == id).map(|part| say_mm(part.length_mm));
        (plan.name_of(id).unwrap_or_default().to_owned(), mm.unwrap_or_default())
    }
    fn body(id: Id) -> View {
        let names = &["name", "x_mm", "y_mm", "length_mm", "width_mm", "base_mm", "height_mm"];
        fields(&Path::entry("built_ins", id), names)
    }
    let fresh = || json!({ "length_mm": 700.0, "width_mm": 200.0, "height_mm": 280.0 });
    Entries { list: List::BuiltIns, line, body, fresh, add: key!("inside-built-ins-add") }.show()
}

fn walls() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(row) = plan.wall_rows.iter().find(|row| row.id == id) else { return Default::default() };
        let height = vec![("height", Figure::of(row.height_mm, Quantity::LengthMm))];
        (tell("inside-wall-row", &height), format!("{} · {}", say_mm(row.left_in_mm), say_mm(row.right_in_mm)))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("wall_rows", id), &["height_mm", "left_in_mm", "right_in_mm"])
    }
    let list = Entries { list: List::WallRows, line, body, fresh: || json!({}), add: key!("inside-walls-add") };
    fragment().put(el("p").put(key!("inside-walls-hint"))).put(list.show()).done()
}

fn roof() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(row) = plan.roof_rows.iter().find(|row| row.id == id) else { return Default::default() };
        (say_mm(row.x_mm), say_mm(row.height_mm))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("roof_rows", id), &["x_mm", "height_mm"])
    }
    let fresh = || json!({ "height_mm": 1_800.0 });
    let list = Entries { list: List::RoofRows, line, body, fresh, add: key!("inside-roof-add") };
    fragment().put(el("p").put(key!("inside-roof-hint"))).put(list.show()).done()
}

fn corners(app: App) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let at = plan.corners.iter().position(|corner| corner.id == id);
        let Some(corner) = at.and_then(|at| plan.corners.get(at)) else { return Default::default() };
        let number = Figure::count(at.unwrap_or(0) + 1);
        (tell("inside-corner", &vec![("number", number)]), format!("{} · {}", say_mm(corner.x_mm), say_mm(corner.y_mm)))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("corners", id), &["x_mm", "y_mm"])
    }
    let list = Entries { list: List::Corners, line, body, fresh: || json!({}), add: key!("inside-corners-add") };
    let none = move || app.plan(|plan| plan.corners.is_empty());
    let four = move || {
        let edit: Edit = app.plan(four_corners);
        app.edit(edit);
    };
    fragment()
        .put(el("p").put(key!("inside-corners-hint")))
        .put(live::when(none, move || button(key!("inside-corners-four"), four).class("add").done()))
        .put(live::when(move || !none(), move || list.show()))
        .done()
}
