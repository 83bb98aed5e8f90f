//! Power in the aisle: three questions, each answered from two or three fields by the same engine as the plan.

use kerbstead_core::Caution;
use kerbstead_core::energy::quick::{Source, charge_time, lasts, size_for};
use kerbstead_core::energy::run::Limit;
use kerbstead_core::energy::store::{Chemistry, Store};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Field, Outlet, Plan, Quantity};
use kerbstead_core::power::engine_store;

use super::super::section;
use crate::el::{View, el, fragment};
use crate::parts::{Choice, Number, Typed, number_field, number_of, question, take_care, worded};
use crate::state::App;

static POWER: Field = number_field("power", Quantity::PowerW, [0.0, 20_000.0], 45.0);
static ENERGY: Field = number_field("energy", Quantity::EnergyWh, [0.0, 200_000.0], 630.0);
static HOURS: Field = number_field("hours", Quantity::Hours, [0.0, 1_000.0], 12.0);
static FROM: Field = number_field("from", Quantity::Percent, [0.0, 100.0], 20.0);
static UNTIL: Field = number_field("until", Quantity::Percent, [0.0, 100.0], 100.0);

/// What is to stay in the store whose size is asked for.
const SPARE: f64 = 0.2;

/// The page.
pub fn aisle() -> View {
    let app = App::here();
    fragment()
        .put(el("h1").put(key!("page-aisle")))
        .put(el("p").put(key!("aisle-hint")))
        .put(section(
            key!("aisle-lasts"),
            question(
                app,
                "lasts",
                &[
                    number_of(key!("aisle-power"), &POWER),
                    Number { unless: Some("store"), ..number_of(key!("aisle-energy"), &ENERGY) },
                ],
                &[OUTLET, STORE],
                how_long,
            ),
        ))
        .put(section(
            key!("aisle-size"),
            question(
                app,
                "size",
                &[number_of(key!("aisle-power"), &POWER), number_of(key!("aisle-hours"), &HOURS)],
                &[OUTLET],
                what_size,
            ),
        ))
        .put(section(
            key!("aisle-charge"),
            question(
                app,
                "charge",
                &[
                    Number { unless: Some("store"), ..number_of(key!("aisle-energy"), &ENERGY) },
                    number_of(key!("aisle-from"), &FROM),
                    number_of(key!("aisle-until"), &UNTIL),
                    number_of(key!("aisle-gives"), &POWER),
                ],
                &[SOURCE, STORE],
                how_long_to_charge,
            ),
        ))
        .put(take_care(&[Caution::StoreHeatAndFrost, Caution::ChargingUnattended, Caution::ExtensionLeads]))
        .done()
}

const OUTLET: Choice = Choice {
    label: key!("aisle-outlet"),
    name: "outlet",
    options: |_| worded(&[("ac", key!("choice-outlet-ac")), ("dc", key!("choice-outlet-dc"))]),
};

const SOURCE: Choice = Choice {
    label: key!("aisle-source"),
    name: "source",
    options: |_| {
        worded(&[("mains", key!("aisle-mains")), ("vehicle", key!("aisle-vehicle")), ("panel", key!("aisle-panel"))])
    },
};

const STORE: Choice = Choice { label: key!("aisle-store"), name: "store", options: stores };

fn stores(app: App) -> Vec<(String, String)> {
    let mut options = worded(&[("", key!("aisle-usual-store"))]);
    app.desk.plan.with_untracked(|plan| {
        let stores = plan.carried().filter(|item| item.store.is_some());
        options.extend(stores.map(|item| (item.id.to_string(), item.name.clone())));
    });
    options
}

fn outlet(typed: &Typed) -> Outlet {
    if typed.text("outlet") == "dc" { Outlet::Dc } else { Outlet::Ac }
}

/// The plan's store that is chosen, or else a usual one of the energy that is typed.
fn store(typed: &Typed) -> Option<Store> {
    let chosen = typed.text("store").parse().ok();
    let of_plan = |id| typed.app.plan(|plan: &Plan| plan.item(id)?.store.as_ref().map(engine_store));
    chosen.and_then(of_plan).or_else(|| Some(Store::usual(Chemistry::Lfp, typed.read(&ENERGY)?)))
}

fn hours(hours: f64) -> Figure {
    Figure::of(hours, Quantity::Hours)
}

fn how_long(_: App, typed: &Typed) -> Option<String> {
    let lasts = lasts(&store(typed)?, 1.0, typed.read(&POWER)?, outlet(typed));
    Some(match lasts.limit {
        Some(Limit::Surge | Limit::Power) => t!("aisle-too-strong"),
        _ => tell!("aisle-lasts-hours", &vec![("hours", hours(lasts.hours))]),
    })
}

fn what_size(_: App, typed: &Typed) -> Option<String> {
    let (power_w, wanted_h) = (typed.read(&POWER)?, typed.read(&HOURS)?);
    let size = size_for(Chemistry::Lfp, power_w, outlet(typed), wanted_h, SPARE);
    let Some(usable_wh) = size.usable_wh else { return Some(t!("aisle-no-size")) };
    let figures = vec![
        ("energy", Figure::of(f64::from(usable_wh), Quantity::EnergyWh)),
        ("spare", Figure::of(SPARE * 100.0, Quantity::Percent)),
    ];
    Some(match size.limit {
        Some(Limit::Power | Limit::Surge) => tell!("aisle-size-by-outlet", &figures),
        _ => tell!("aisle-size-by-energy", &figures),
    })
}

fn how_long_to_charge(_: App, typed: &Typed) -> Option<String> {
    let store = store(typed)?;
    let watts = typed.read(&POWER)?;
    let source = match typed.text("source").as_str() {
        "vehicle" => Source::Vehicle,
        "panel" => Source::Panels,
        _ => Source::Mains,
    };
    let (from, until) = (typed.read(&FROM).unwrap_or(0.0), typed.read(&UNTIL).unwrap_or(100.0));
    let time = charge_time(&store, from / 100.0, until / 100.0, source, watts);
    let Some(lasting) = time.hours else { return Some(t!("aisle-charge-never")) };
    let figures = vec![("hours", hours(lasting)), ("takes", Figure::of(time.accepted_w, Quantity::PowerW))];
    Some(if time.accepted_w < watts {
        tell!("aisle-charge-cut", &figures)
    } else {
        tell!("aisle-charge-hours", &figures)
    })
}
