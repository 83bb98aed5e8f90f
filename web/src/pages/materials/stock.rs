//! Boards, sheets, and what is cut of them.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity, Stock};
use serde_json::json;

use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{say_money, say_on_tape};
use crate::parts::{Entries, fields, named_in};
use crate::state::App;

const STOCK: &[&str] = &[
    "name",
    "stock_kind",
    "material",
    "nominal",
    "length_mm",
    "width_mm",
    "thick_mm",
    "stock_price",
    "at_hand",
    "how_many",
    "one_kg",
    "bought_as",
];

const FLAW: &[&str] = &["flawed", "flaw_from_mm", "flaw_to_mm"];

const CUT: &[&str] = &["name", "cut_from", "length_mm", "width_mm", "pieces", "keeps_grain"];

/// Boards and sheets that can be had or are there.
pub fn stock() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(stock) = plan.stock.iter().find(|stock| stock.id == id) else { return Default::default() };
        let price = stock.stock_price.map_or_else(|| t!("materials-no-price"), say_money);
        (stock.name.clone(), if stock.at_hand { t!("materials-scrap") } else { price })
    }
    fn body(id: Id) -> View {
        let app = App::here();
        let of_stock = move |plan: &Plan| plan.stock.iter().find(|stock| stock.id == id).and_then(actual);
        let said = move || app.settled_plan(of_stock).unwrap_or_default();
        fragment()
            .put(fields(&Path::entry("stock", id), STOCK))
            .put(el("p").attr("aria-live", "polite").put(live::text(said)))
            .done()
    }
    let list = Entries { list: List::Stock, line, body, fresh: || json!({}), add: key!("materials-add-stock") };
    fragment().put(el("p").put(key!("materials-stock-hint"))).put(list.show()).done()
}

/// What of boards cannot be used.
pub fn flaws() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(flaw) = plan.flaws.iter().find(|flaw| flaw.id == id) else { return Default::default() };
        let ends = flaw.flaw_from_mm.zip(flaw.flaw_to_mm);
        let place = ends.map(|ends| tell!("materials-flaw-line", &between(ends)));
        (flaw.flawed.map(|board| named_in(plan, board)).unwrap_or_default(), place.unwrap_or_default())
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("flaws", id), FLAW)
    }
    let list = Entries { list: List::Flaws, line, body, fresh: || json!({}), add: key!("materials-add-flaw") };
    fragment().put(el("p").put(key!("materials-flaws-hint"))).put(list.show()).done()
}

/// From where to where, as figures of a message.
pub fn between((from_mm, to_mm): (f64, f64)) -> Vec<(&'static str, Figure)> {
    vec![("from", Figure::Name(say_on_tape(from_mm))), ("to", Figure::Name(say_on_tape(to_mm)))]
}

/// What a nominal size really is.
fn actual(stock: &Stock) -> Option<String> {
    let (thick_mm, width_mm) = stock.nominal?.section_mm()?;
    let mut figures = vec![("thick", Figure::of(thick_mm, Quantity::LengthMm))];
    Some(match width_mm {
        Some(width_mm) => {
            figures.push(("width", Figure::of(width_mm, Quantity::LengthMm)));
            tell!("materials-actual", &figures)
        }
        None => tell!("materials-actual-panel", &figures),
    })
}

/// Pieces that are wanted.
pub fn cuts() -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let Some(cut) = plan.cuts.iter().find(|cut| cut.id == id) else { return Default::default() };
        let sides = [cut.length_mm, cut.width_mm].into_iter().flatten();
        let size = sides.map(say_on_tape).collect::<Vec<_>>().join(" × ");
        let figures = vec![("count", Figure::of(f64::from(cut.pieces), Quantity::Count)), ("size", Figure::Name(size))];
        (named_in(plan, id), tell!("materials-cut-line", &figures))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("cuts", id), CUT)
    }
    let list = Entries { list: List::Cuts, line, body, fresh: || json!({}), add: key!("materials-add-cut") };
    fragment().put(el("p").put(key!("materials-cuts-hint"))).put(list.show()).done()
}
