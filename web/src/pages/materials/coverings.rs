//! Coverings: what they take, which packs, and what is left over.

use kerbstead_core::explain::Figure;
use kerbstead_core::materials::{Covered, PackFor, covered, packs_to_buy};
use kerbstead_core::plan::{Id, List, Path, Plan, Quantity};
use kerbstead_core::words::Key;
use serde_json::json;

use super::kit_button;
use crate::el::{View, el, fragment, nothing};
use crate::live;
use crate::locale::{say_figure, say_money, typing_number};
use crate::parts::{Entries, TableRow, fields, named_in, table};
use crate::state::App;

const COVERING: &[&str] = &[
    "name",
    "surface",
    "own_m2",
    "material",
    "waste_percent",
    "coats",
    "unit_covers_m2",
    "each_m2_takes",
    "rest_used_percent",
    "same_as",
    "from_pack",
    "bought_as",
];

const PACK: &[&str] = &[
    "name",
    "covering",
    "pack_price",
    "tax_percent",
    "pack_m2",
    "pack_l",
    "pack_kg",
    "pack_mm",
    "pack_pieces",
    "one_kg",
    "length_mm",
    "width_mm",
    "height_mm",
];

/// All of it.
pub fn coverings(app: App) -> View {
    fn line(plan: &Plan, id: Id) -> (String, String) {
        let comes_to = covered(plan).into_iter().find(|covered| covered.id == id);
        (named_in(plan, id), comes_to.as_ref().map_or_else(String::new, bought))
    }
    fn body(id: Id) -> View {
        fields(&Path::entry("coverings", id), COVERING)
    }
    fn pack_line(plan: &Plan, id: Id) -> (String, String) {
        let pack = plan.material_packs.iter().find(|pack| pack.id == id);
        let price = pack.and_then(|pack| pack.pack_price).map_or_else(|| t!("materials-no-price"), say_money);
        (named_in(plan, id), price)
    }
    fn pack_body(id: Id) -> View {
        fields(&Path::entry("material_packs", id), PACK)
    }
    let list = Entries { list: List::Coverings, line, body, fresh: || json!({}), add: key!("materials-add-covering") };
    let packs = Entries {
        list: List::MaterialPacks,
        line: pack_line,
        body: pack_body,
        fresh: || json!({}),
        add: key!("materials-add-pack"),
    };
    fragment()
        .put(el("p").put(key!("materials-coverings-hint")))
        .put(list.show())
        .put(el("h3").put(key!("materials-packs")))
        .put(el("p").put(key!("materials-packs-hint")))
        .put(packs.show())
        .put(live::view(move || app.settled_plan(|plan| comes_to(app, plan))))
        .done()
}

/// What all of them come to, with the button.
fn comes_to(app: App, plan: &Plan) -> View {
    let all = covered(plan);
    if all.is_empty() {
        return nothing();
    }
    let bought = packs_to_buy(plan, &all);
    fragment().put_each(all.iter().map(|one| told(plan, one))).put(kit_button(app, bought)).done()
}

fn told(plan: &Plan, covered: &Covered) -> View {
    let area = Figure::of(covered.area_m2, Quantity::AreaM2);
    let [needed, left_over] = covered.amounts();
    let mut lines = Vec::new();
    if let Some(needed) = needed {
        let of = |id: Id| plan.coverings.iter().find(|covering| covering.id == id);
        let covering = of(covered.id);
        let coats = covering.and_then(|covering| covering.coats).unwrap_or(1);
        let waste = covering.and_then(|covering| covering.waste_percent).unwrap_or(0.0);
        let mut figures = vec![
            ("area", area),
            ("coats", Figure::of(f64::from(coats), Quantity::Count)),
            ("waste", Figure::of(waste, Quantity::Percent)),
            ("needed", covered.figure(needed)),
        ];
        let takes = of(covered.packs_of.unwrap_or(covered.id)).and_then(|first| first.each_m2_takes);
        lines.push(match takes {
            Some(takes) => {
                figures.push(("takes", Figure::Name(typing_number(takes))));
                tell!("materials-needed-units", &figures)
            }
            None => tell!("materials-needed", &figures),
        });
    }
    lines.push(bought(covered));
    if let (Some(left_over), Some(_)) = (left_over, covered.bought) {
        lines.push(tell!("materials-left-over", &vec![("amount", covered.figure(left_over))]));
    }
    if let Some(first) = covered.packs_of {
        lines.push(tell!("materials-of-packs", &vec![("name", Figure::Name(named_in(plan, first)))]));
    }
    fragment()
        .put(el("h4").put(named_in(plan, covered.id)))
        .put_each(lines.into_iter().map(|line| el("p").put(line).done()))
        .put((!covered.packs.is_empty()).then(|| packs(plan, covered)))
        .done()
}

/// How many packs, and what they cost.
fn bought(covered: &Covered) -> String {
    let Some(bought) = covered.bought else { return t!("materials-packs-unknown") };
    let packs = Figure::of(f64::from(bought.packs), Quantity::Count);
    tell!("materials-bought", &vec![("packs", packs), ("price", Figure::Money(bought.price.total))])
}

/// The packs beside one another for what is needed.
fn packs(plan: &Plan, covered: &Covered) -> View {
    // What is left over counts only where it is said to be of use.
    let counts_rest =
        plan.coverings.iter().any(|covering| covering.id == covered.id && covering.rest_used_percent.is_some());
    let counted = counts_rest.then_some(key!("materials-pack-counted"));
    let heads = [
        key!("materials-pack"),
        key!("materials-pack-count"),
        key!("materials-pack-total"),
        key!("materials-pack-unit"),
    ];
    let heads: Vec<Key> = heads.into_iter().chain(counted).collect();
    let row = |pack: &PackFor| {
        let mut name = named_in(plan, pack.id);
        if covered.cheapest == Some(pack.id) {
            name = tell!("materials-cheapest", &vec![("name", Figure::Name(name))]);
        } else if covered.cheapest_by_unit == Some(pack.id) {
            name = tell!("materials-cheapest-by-unit", &vec![("name", Figure::Name(name))]);
        }
        let cells = match pack.comes_to {
            Some(need) => {
                let packs = Figure::of(f64::from(need.packs), Quantity::Count);
                let cells = [packs, Figure::Money(need.price.total), covered.each(need.unit_price.price)];
                let counted = counts_rest.then_some(Figure::Money(need.counted));
                cells.iter().chain(&counted).map(say_figure).collect()
            }
            None => vec![t!("materials-pack-unknown")],
        };
        TableRow(name, cells, None)
    };
    table(t!("materials-packs"), true, &heads, covered.packs.iter().map(row).collect())
}
