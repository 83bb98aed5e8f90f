//! The thing that is chosen: where it is, what it meets, and buttons to move it.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, List, Path};
use kerbstead_core::space::{Drawing, Moving};

use super::view::{place_text, shift, turn};
use super::{Chosen, placement_body, with_name};
use crate::el::{View, el, fragment};
use crate::live::{self, Memo};
use crate::locale::tell;
use crate::parts::{button, field, named_in};
use crate::state::App;

/// The panel below the drawing.
pub fn panel(app: App, data: Memo<Drawing>, chosen: Chosen) -> View {
    let is_there =
        live::memo(move || chosen.get().filter(|id| app.plan(|plan| List::Placements.entry(plan, *id).is_some())));
    let text = move || is_there.get().map_or_else(|| t!("space-selected-none"), |id| told(app, data, id));
    fragment()
        .put(el("p").class("chosen-thing").attr("aria-live", "polite").put(live::text(text)))
        .put(live::view(move || is_there.get().map_or_else(crate::el::nothing, |id| buttons(app, id))))
        .done()
}

/// Where it is and what it meets there.
fn told(app: App, data: Memo<Drawing>, id: Id) -> String {
    let place = data.with(|data| data.things.iter().find(|drawn| drawn.id == id).map(place_text));
    app.plan(|plan| {
        let Some(place) = place else { return format!("{}: {}", named_in(plan, id), t!("space-thing-line-none")) };
        let Some(moving) = Moving::new(plan, id) else { return place };
        let [x, y] = moving.corner_mm();
        let moved = moving.to(x, y, 0.0);
        let name = |met: &Id| if *met == 0 { t!("space-thing-meets-built-in") } else { named_in(plan, *met) };
        let names = moved.meets.iter().map(name).collect::<Vec<_>>().join(", ");
        let mut parts = vec![place];
        if !names.is_empty() {
            parts.push(tell("space-thing-meets", &vec![("names", Figure::Name(names))]));
        }
        if !moved.is_inside {
            parts.push(t!("space-thing-out"));
        }
        if parts.len() == 1 {
            parts.push(t!("space-thing-clear"));
        }
        parts.join(" ")
    })
}

fn buttons(app: App, id: Id) -> View {
    const STEP_MM: f64 = 10.0;
    let path = Path::entry("placements", id);
    let take_out = move || {
        let name = app.plan(|plan| named_in(plan, id));
        let edit = Edit::Remove { list: List::Placements, id };
        app.edit_and_tell(edit, with_name("space-taken-out", name));
    };
    el("div")
        .put(
            el("div")
                .class("buttons")
                .put(button(key!("space-move-front"), move || shift(app, id, [-STEP_MM, 0.0])))
                .put(button(key!("space-move-rear"), move || shift(app, id, [STEP_MM, 0.0])))
                .put(button(key!("space-move-left"), move || shift(app, id, [0.0, -STEP_MM])))
                .put(button(key!("space-move-right"), move || shift(app, id, [0.0, STEP_MM])))
                .put(button(key!("space-turn"), move || turn(app, id)))
                .put(button(key!("space-take-out"), take_out).class("remove")),
        )
        .put(field(path.child("pinned")))
        .put(super::folded(key!("space-open-fields"), move || placement_body(id)))
        .done()
}
