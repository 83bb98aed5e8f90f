//! The starter list: usual values of usual things, so that a kit list can be begun before anything was measured.

mod guessed;
mod row;
mod table;

use serde::Serialize;

pub(super) use guessed::Guessed;
pub use table::STARTERS;

use super::{
    Draw, DrawDays, Estimate, Group, Id, Item, ItemWater, Money, Need, Obtain, Outlet, Panel, PanelSetup, Path, Store,
    Tank, TankKind, Works,
};

/// A generic thing with what it usually measures, draws, holds and costs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Starter {
    /// A short name that never changes; the catalogue has its words under [`Starter::name_key`].
    pub key: &'static str,
    /// The name's key in the catalogue: `starter-` and the key.
    pub name_key: &'static str,
    /// The heading it is listed under.
    pub group: Group,
    /// How much a plan usually depends on it.
    pub need: Need,
    /// Length, width and height as it travels, in mm. A published source is that of length and width.
    pub size_mm: Option<Sourced<[f64; 3]>>,
    /// Mass of one in kg: low, likely and high.
    pub mass_kg: Option<Sourced<[f64; 3]>>,
    /// Price of one, second-hand to new, in euro: low, likely and high.
    pub price_eur: Option<Sourced<[i64; 3]>>,
    /// What it draws. The source is that of the power; hours and shares are common practice.
    pub draw: Option<Sourced<StarterDraw>>,
    /// What it is for, and the litres it holds.
    pub tank: Option<Sourced<(TankKind, f64)>>,
    /// What it stores.
    pub store: Option<Sourced<StarterStore>>,
    /// What it makes of the sun: peak watts, and how it is set up.
    pub panel: Option<Sourced<(f64, PanelSetup)>>,
    /// Fresh water it uses in litres a day (low, likely, high), and how much of it becomes used water, in percent.
    pub water: Option<Sourced<([f64; 3], f64)>>,
}

/// A value with whose it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Whose it is.
    pub source: StarterSource,
}

/// Whose a value of the starter list is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StarterSource {
    /// What such things usually are; no source.
    CommonPractice,
    /// A published source, by its usual short name.
    Published(&'static str),
}

/// What a starter draws.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StarterDraw {
    /// Power while it runs, in W: low, likely and high.
    pub power_w: [f64; 3],
    /// Which outlet it needs.
    pub outlet: Outlet,
    /// Hours a day it is switched on; without it, all day.
    pub hours_per_day: Option<f64>,
    /// Hour of the day it is switched on, 0 to 24.
    pub from_hour: Option<f64>,
    /// Share of that time it really runs, in percent: low, likely and high; without it, all of it.
    pub duty_percent: Option<[f64; 3]>,
    /// The days it is used on.
    pub days: DrawDays,
    /// What decides how long it runs.
    pub works: Works,
    /// Litres that it heats each time.
    pub heats_l: Option<f64>,
    /// What its label says it takes a day, in Wh.
    pub label_wh: Option<f64>,
}

/// What a starter stores. The rest of a store is as in [`Store::default`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StarterStore {
    /// Energy that can be taken out at the cells, in Wh.
    pub usable_wh: f64,
    /// The most the mains-voltage outlets give for long, in W; for a moment, twice as much.
    pub ac_continuous_w: f64,
    /// The most it takes from the mains, in W.
    pub mains_input_w: f64,
}

/// What a store loses in a month by itself, in percent. Common practice, no source.
const SELF_DISCHARGE_PERCENT: f64 = 3.0;

/// Currencies whose unit is near enough to the euro for a rough price to be of use.
const NEAR_EURO: [&str; 4] = ["EUR", "USD", "GBP", "CHF"];

/// Whether the rough prices of this tool mean anything in a currency: they are meant in euro, and are taken as they
/// stand for EUR, USD, GBP and CHF only.
pub(crate) fn has_rough_prices(currency: &str) -> bool {
    NEAR_EURO.contains(&currency)
}

/// An item with the starter's values, to be bought, and the paths of all of them: each is a guess until it is
/// confirmed. Prices are rough and meant in euro: they are set for EUR, USD, GBP and CHF and left empty for any other
/// currency.
///
/// ```
/// use kerbstead_core::plan::{STARTERS, starter_item};
/// let cool_box = STARTERS.iter().find(|starter| starter.key == "cool-box").unwrap();
/// let (item, guesses) = starter_item(cool_box, 12, "Cool box".to_owned(), "EUR");
/// assert!(item.unit_price.is_some());
/// assert!(guesses.contains(&"kit/12/draw/power_w".into()));
/// ```
pub fn starter_item(starter: &Starter, id: Id, name: String, currency: &str) -> (Item, Vec<Path>) {
    let along = |axis: usize| starter.size_mm.map(|size| size.value[axis]);
    let item = Item {
        id,
        name,
        group: starter.group,
        need: starter.need,
        obtain: Obtain::Bought,
        unit_price: starter.price_eur.filter(|_| has_rough_prices(currency)).map(|price| money(price.value)),
        mass_kg: starter.mass_kg.map(|mass| range(mass.value)),
        length_mm: along(0),
        width_mm: along(1),
        height_mm: along(2),
        draw: starter.draw.map(|draw| plan_draw(draw.value)),
        water: starter.water.map(|water| plan_water(water.value)),
        store: starter.store.map(|store| plan_store(store.value)),
        panel: starter.panel.map(|panel| plan_panel(panel.value)),
        tank: starter.tank.map(|tank| plan_tank(tank.value)),
        ..Item::default()
    };
    let guesses = Guessed::new().in_item(&item);
    (item, guesses)
}

/// Positions of the names that contain every word typed: those that begin with the first word before the others, each
/// in their order. Nothing typed matches all. Both are to be in small letters, which the caller makes as its language
/// does: the tables for all of them are in every browser already.
///
/// ```
/// use kerbstead_core::plan::matching;
/// let names = ["gas stove".to_owned(), "stove cartridge".to_owned(), "lamp".to_owned()];
/// assert_eq!(matching(&names, "stove"), [1, 0]);
/// ```
pub fn matching(names: &[String], typed: &str) -> Vec<usize> {
    let words: Vec<&str> = typed.split_whitespace().collect();
    let first = words.first().copied().unwrap_or_default();
    let found = (0..names.len()).filter(|index| words.iter().all(|word| names[*index].contains(word)));
    let (mut found, others): (Vec<usize>, Vec<usize>) = found.partition(|index| names[*index].starts_with(first));
    found.extend(others);
    found
}

fn range([low, likely, high]: [f64; 3]) -> Estimate<f64> {
    if low < high { Estimate::Range { low, likely, high } } else { Estimate::Plain(likely) }
}

/// Low, likely and high in whole units of the currency.
pub(super) fn money([low, likely, high]: [i64; 3]) -> Estimate<Money> {
    Estimate::Range { low: Money::whole(low), likely: Money::whole(likely), high: Money::whole(high) }
}

fn plan_draw(draw: StarterDraw) -> Draw {
    Draw {
        power_w: range(draw.power_w),
        outlet: draw.outlet,
        hours_per_day: draw.hours_per_day.map(Estimate::Plain),
        from_hour: draw.from_hour,
        duty_percent: draw.duty_percent.map(range),
        days: draw.days,
        works: (draw.works != Works::ByClock).then_some(draw.works),
        heats_l: draw.heats_l,
        label_wh: draw.label_wh,
        ..Draw::default()
    }
}

fn plan_store(store: StarterStore) -> Store {
    Store {
        usable_wh: store.usable_wh,
        ac_continuous_w: store.ac_continuous_w,
        ac_surge_w: 2.0 * store.ac_continuous_w,
        mains_input_w: store.mains_input_w,
        loses_percent: Some(SELF_DISCHARGE_PERCENT),
        ..Store::default()
    }
}

fn plan_panel((peak_w, setup): (f64, PanelSetup)) -> Panel {
    // What stands beside the van is turned: in the morning, at noon, in the afternoon.
    let turned_times = (setup == PanelSetup::Beside).then_some(3);
    Panel { peak_w, setup: Some(setup), turned_times, ..Panel::default() }
}

fn plan_tank((holds, capacity_l): (TankKind, f64)) -> Tank {
    Tank { holds, capacity_l, opening_percent: None }
}

fn plan_water((litres_per_day, to_grey_percent): ([f64; 3], f64)) -> ItemWater {
    ItemWater { litres_per_day: range(litres_per_day), to_grey_percent }
}
