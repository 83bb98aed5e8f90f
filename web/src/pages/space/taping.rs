//! The taping sheet: where to put tape on a floor, in the order in which it is laid.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Plan, Quantity};
use kerbstead_core::space::taping::Mark;
use kerbstead_core::space::{TapedThing, drawing, taped};

use super::super::papers::row;
use super::view::small_picture;
use crate::el::{View, el, fragment};
use crate::live::{self, Signal};
use crate::locale::{on_tape, tell, words};
use crate::state::App;

/// The sheet.
pub fn taping_sheet(app: App) -> View {
    let corner = Signal::new(0_usize);
    let count = app.plan(|plan| kerbstead_core::space::shape_of(plan).outline.len());
    let options = (0..count).map(|at| {
        let text = tell("taping-corner", &vec![("number", Figure::count(at + 1))]);
        el("option").attr("value", at.to_string()).put(text).done()
    });
    let choose = move |text: String| corner.set(text.parse().unwrap_or(0));
    let field = el("div")
        .class("field screen-only")
        .put(el("label").attr("for", "taped-from").put(key!("taping-from")))
        .put(el("select").attr("id", "taped-from").on_change(choose).put_each(options));
    fragment()
        .put(el("h2").put(key!("sheet-taping")))
        .put(field)
        .put(live::view(move || app.plan(|plan| sheet(plan, corner.get()))))
        .put(el("p").class("hint").put(key!("taping-caution")))
        .done()
}

fn sheet(plan: &Plan, corner: usize) -> View {
    let things = taped(plan, corner);
    let from = tell("taping-corner", &vec![("number", Figure::count(corner + 1))]);
    let unit = words(|words| words.unit_sign(Quantity::LengthMm));
    let head = ["taping-along", "taping-across", "taping-straight"]
        .map(|key| el("th").attr("scope", "col").put(tell(key, &vec![("unit", Figure::Name(unit.clone()))])).done());
    let head = el("tr").put(el("th").attr("scope", "col").put(key!("taping-mark"))).put_each(head);
    let none = plan.placements.is_empty().then(|| el("p").put(key!("taping-empty")).done());
    let ring = kerbstead_core::space::shape_of(plan).outline.get(corner).copied();
    fragment()
        .put(el("p").put(key!("taping-how")))
        .put(el("p").put(el("strong").put(t!("taping-from")).put(": ").put(from)))
        .put(
            el("div")
                .class("taping")
                .put(small_picture(&drawing(plan), t!("sheet-taping"), ring))
                .put(el("table").put(el("thead").put(head)).put(el("tbody").put_each(things.iter().flat_map(rows)))),
        )
        .put(none)
        .done()
}

/// A row for what is square to the van; else one for each corner.
fn rows(thing: &TapedThing) -> Vec<View> {
    let name = if thing.name.is_empty() { t!("taping-van") } else { thing.name.clone() };
    if let Some(square) = thing.square() {
        let [along, across] = [square.along_mm, square.across_mm]
            .map(|[from, to]| format!("{} – {}", on_tape(from.into()), on_tape(to.into())));
        return vec![row(&name, &[along, across, on_tape(square.straight_mm.into())])];
    }
    let mark = |mark: &Mark| {
        let number = tell("taping-corner", &vec![("number", Figure::count(mark.corner + 1))]);
        row(
            &format!("{name}, {number}"),
            &[mark.along_mm, mark.across_mm, mark.straight_mm].map(|mm| on_tape(mm.into())),
        )
    };
    thing.marks.iter().map(mark).collect()
}
