//! Space: the van from above with all that stands in it, and whether it fits.

mod answers;
mod arrange;
mod chosen;
mod drag;
mod inside;
mod side;
mod taping;
mod view;

pub use inside::inside;
pub use taping::taping_sheet;
pub(super) use view::clamp;

use kerbstead_core::Balance;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity, Room};
use kerbstead_core::space::{drawing, place, without_place};
use serde_json::json;

use super::{balance_head, section};
use crate::browser;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{say_measure, tell};
use crate::parts::{Entries, button, entry_line, fields, named_in, optional};
use crate::route::{self, Page};
use crate::state::App;

/// The thing that is chosen in the drawing.
type Chosen = Signal<Option<Id>>;

/// The page.
pub fn space() -> View {
    let app = App::here();
    let linked = route::entry_in_address();
    let is_placement = |id: &Id| app.desk.plan.with_untracked(|plan| List::Placements.entry(plan, *id).is_some());
    let data = live::memo(move || app.plan(drawing));
    let chosen: Chosen = Signal::new(linked.filter(is_placement));
    if let Some(id) = linked {
        browser::focus_soon(if is_placement(&id) { format!("thing-{id}") } else { entry_line(id) });
    }
    fragment()
        .put(balance_head(Balance::Space))
        .put(links())
        .put(section(
            key!("space-drawing"),
            all([view::plan_view(app, data, chosen), chosen::panel(app, data, chosen)]),
        ))
        .put(section(key!("space-put-in"), put_in(app, chosen)))
        .put(section(key!("space-arrange"), arrange::arrange(app)))
        .put(section(key!("space-ways"), answers::ways(app)))
        .put(section(key!("space-sleepers"), sleepers()))
        .put(section(key!("space-side"), side::side_view(data)))
        .put(section(key!("space-things"), things()))
        .put(section(key!("space-storage"), answers::storage(app)))
        .put(section(key!("space-distances"), distances()))
        .put(section(key!("space-walker"), walker()))
        .done()
}

fn walker() -> View {
    let usual = Room::default();
    let mm = |length: f64| Figure::of(length, Quantity::LengthMm);
    let figures = vec![("width", mm(usual.body_width_mm())), ("height", mm(usual.body_height_mm()))];
    fragment()
        .put(fields(&Path::section("room"), &["body_width_mm", "body_height_mm"]))
        .put(el("p").class("hint").put(tell("space-walker-usual", &figures)))
        .done()
}

fn links() -> View {
    let link = |page: Page, text| el("p").class("links").put(el("a").attr("href", page.link()).put(text)).done();
    all([
        link(Page::Inside, key!("space-to-inside")),
        link(Page::Load, key!("space-to-load")),
        link(Page::Papers, key!("space-to-taping")),
    ])
}

/// A length in words.
pub(super) fn say_mm(length: f64) -> String {
    say_measure(length, Quantity::LengthMm)
}

const PLACEMENT: &[&str] = &[
    "thing",
    "level",
    "x_mm",
    "y_mm",
    "base_mm",
    "turn_deg",
    "stands",
    "clear_under_mm",
    "pinned",
    "reached",
    "sleeps",
    "head",
    "fastened",
];
const OPENED: &[&str] = &[
    "opened/x_mm",
    "opened/y_mm",
    "opened/length_mm",
    "opened/width_mm",
    "opened/base_mm",
    "opened/height_mm",
    "opened/with_others",
];

/// All that is told of a thing at its place.
fn placement_body(id: Id) -> View {
    let app = App::here();
    let path = Path::entry("placements", id);
    let item = app.desk.plan.with_untracked(|plan| {
        plan.placements.iter().find(|placement| placement.id == id).and_then(|placement| placement.thing)
    });
    let sizes = item.map_or_else(nothing, |item| {
        fields(&Path::entry("kit", item), &["length_mm", "width_mm", "height_mm", "mass_kg", "holds_l"])
    });
    all([fields(&path, PLACEMENT), optional(&path, "opened", [OPENED, &[]], "space-opened"), sizes])
}

/// The things at their places as a list: the same as the drawing, in words.
fn things() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(placement) = plan.placements.iter().find(|placement| placement.id == id) else {
            return Default::default();
        };
        let value = match (placement.x_mm, placement.y_mm) {
            (Some(x), Some(y)) => tell!(
                "space-thing-line",
                &vec![("x", Figure::of(x, Quantity::LengthMm)), ("y", Figure::of(y, Quantity::LengthMm))]
            ),
            _ => t!("space-thing-line-none"),
        };
        (named_in(plan, id), value)
    }
    let app = App::here();
    let entries = Entries {
        list: List::Placements,
        line,
        body: placement_body,
        fresh: || json!({}),
        add: key!("space-put-in-add"),
    };
    let ids = live::memo(move || app.plan(|plan| List::Placements.ids(plan)));
    let linked = route::entry_in_address();
    fragment()
        .put(el("ul").class("entries").put(live::rows(ids, move |id| entries.entry(id, linked == Some(id)))))
        .put(live::when(move || ids.with(Vec::is_empty), || el("p").put(key!("space-things-none")).done()))
        .done()
}

/// A thing of the kit, chosen and put in.
fn put_in(app: App, chosen: Chosen) -> View {
    let free = live::memo(move || app.settled_plan(named_without_place));
    let picked = Signal::new(String::new());
    let form = move || {
        let options =
            free.with(|free| free.iter().map(|(id, name)| (id.to_string(), name.clone())).collect::<Vec<_>>());
        if options.is_empty() {
            return el("p").put(key!("space-put-in-none")).done();
        }
        picked.set(options.first().map(|(id, _)| id.clone()).unwrap_or_default());
        let options = options.into_iter().map(|(id, name)| el("option").attr("value", id).put(name).done());
        let put = move || {
            let Some(item) = picked.get_untracked().parse::<Id>().ok() else { return };
            let (edit, id, name) = app.plan(|plan| (place(plan, item), plan.next_id(), named_in(plan, item)));
            if let Some(edit) = edit {
                app.edit_and_tell(edit, tell!("space-was-put-in", &vec![("name", Figure::Name(name))]));
                chosen.set(Some(id));
            }
        };
        el("div")
            .class("fields")
            .put(
                el("div")
                    .class("field")
                    .put(el("label").attr("for", "put-in").put(key!("space-put-in-choose")))
                    .put(el("select").attr("id", "put-in").on_change(move |id| picked.set(id)).put_each(options)),
            )
            .put(button(key!("space-put-in-add"), put).class("add"))
            .done()
    };
    live::view(form)
}

/// Items of the kit with all their sizes, of which there are more than have a place: the largest first.
fn named_without_place(plan: &Plan) -> Vec<(Id, String)> {
    without_place(plan).into_iter().map(|id| (id, named_in(plan, id))).collect()
}

fn sleepers() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let app = App::here();
        let said = app.desk.assessment.with_untracked(|assessment| {
            let lying = assessment.space.sleepers.iter().find(|lying| lying.id == id)?;
            let spare = lying.spare_mm?;
            let key = if spare < 0.0 { "space-sleeper-short" } else { "space-sleeper-spare" };
            let spare = Figure::of(spare.abs(), Quantity::LengthMm);
            Some(tell(key, &vec![("spare", spare.clone()), ("by", spare)]))
        });
        (plan.name_of(id).unwrap_or_default().to_owned(), said.unwrap_or_default())
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("sleepers", id), &["name", "height_mm", "sitting_mm", "bed"])
    }
    Entries { list: List::Sleepers, line, body, fresh: || json!({}), add: key!("space-sleepers-add") }.show()
}

fn distances() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(distance) = plan.distances.iter().find(|distance| distance.id == id) else {
            return Default::default();
        };
        let name = distance.of.map(|of| named_in(plan, of)).unwrap_or_default();
        let mm = distance.distance_mm.map(say_mm).unwrap_or_default();
        (name, mm)
    }
    fn body(id: Id) -> View {
        let names = &["of", "of_side", "keeps", "other", "other_side", "distance_mm"];
        fields(&Path::entry("distances", id), names)
    }
    let list = Entries { list: List::Distances, line, body, fresh: || json!({}), add: key!("space-distances-add") };
    fragment().put(el("p").put(key!("space-distances-hint"))).put(list.show()).done()
}

/// The name of a level in words.
fn level_class(level: kerbstead_core::plan::Level) -> &'static str {
    use kerbstead_core::plan::Level;
    match level {
        Level::Floor => "floor",
        Level::UnderBed => "under-bed",
        Level::Counter => "counter",
        Level::Wall => "wall",
        Level::Roof => "roof",
        Level::Outside => "outside",
    }
}

/// Text of the catalogue with a name in it.
fn with_name(key: &'static str, name: String) -> String {
    tell(key, &vec![("name", Figure::Name(name))])
}

/// What is shown only when it is unfolded.
fn folded(title: kerbstead_core::words::Key, body: impl Fn() -> View + 'static) -> View {
    let is_open = Signal::new(false);
    el("details")
        .on_toggle(move |open| is_open.set(open))
        .put(el("summary").put(title))
        .put(live::when(move || is_open.get(), body))
        .done()
}
