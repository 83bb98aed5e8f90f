//! What can become of each thing, side by side.

use kerbstead_core::explain::{Figure, Working};
use kerbstead_core::money::selling::{Fate, FateWay, Fates, fates_of};
use kerbstead_core::plan::Quantity;

use super::super::section;
use crate::browser;
use crate::el::{View, all, el, fragment};
use crate::live;
use crate::locale::{plain_sentence, words};
use crate::parts::{TableRow, folded_working, named_in, table};
use crate::state::App;

/// What the plan says of a thing that is not sold.
pub const FIELDS: &[&str] = &[
    "kept/replaces",
    "kept/usable",
    "kept/later_price",
    "kept/mass_kg",
    "kept/floor_m2",
    "kept/fit_cost",
    "kept/fitted_later_price",
    "kept/fitted_mass_kg",
    "kept/fitted_floor_m2",
    "kept/storage_monthly",
];

/// A table for each thing of which the plan says what it would be worth.
pub fn kept() -> View {
    let app = App::here();
    let found = live::memo(move || app.settled_plan(|plan| fates_of(plan, browser::today())));
    let tables = move || found.with(|found| all(found.iter().map(table_of)));
    let working = live::memo(move || {
        let of_all = |found: &Vec<Fates>| -> Vec<Working> {
            found.iter().flat_map(|thing| &thing.ways).map(|way| way.working.clone()).collect()
        };
        found.with(of_all)
    });
    let content = fragment()
        .put(el("p").put(key!("selling-kept-hint")))
        .put(live::view(tables))
        .put(folded_working(working))
        .done();
    section(key!("selling-kept"), content)
}

fn table_of(thing: &Fates) -> View {
    let name = App::here().desk.plan.with_untracked(|plan| named_in(plan, thing.id));
    let heads = [key!("selling-way"), key!("selling-better"), key!("selling-mass"), key!("selling-floor")];
    let rows = thing.ways.iter().map(row).collect();
    fragment().put(el("h3").put(name.as_str())).put(table(name, true, &heads, rows)).done()
}

fn row(way: &FateWay) -> TableRow {
    let mass = Figure::of(way.mass_kg, Quantity::MassKg);
    let floor = Figure::of(way.floor_m2, Quantity::AreaM2);
    let cells = [Figure::Money(way.better), mass, floor];
    TableRow(fate_word(way.fate), words(|words| cells.iter().map(|cell| words.figure(cell)).collect()), None)
}

fn fate_word(fate: Fate) -> String {
    plain_sentence(match fate {
        Fate::Sell => key!("fate-sell"),
        Fate::Keep => key!("fate-keep"),
        Fate::Adapt => key!("fate-adapt"),
        Fate::Store => key!("fate-store"),
    })
}
