//! The kit list: one item carries all that any balance needs to know of it.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::record::{record, words};
use super::{Estimate, Id, Money};

mod air;
mod draw;
mod panel;
mod parts;
mod store;

pub use air::{Burner, BurnerFuel, Fan};
pub use draw::{Draw, DrawDays, Outlet, Works};
pub use panel::{Controller, Fixing, Panel, PanelSetup};
pub use parts::{ItemWater, Tank, TankKind, Toilet, ToiletWay};
pub use store::{Chemistry, Store};

/// A thing in the plan. Only a name is needed; a name and a price make a first estimate.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Item {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// The heading it is listed under.
    pub group: Group,
    /// How much the plan depends on it. No suggestion ever touches a must.
    pub need: Need,
    /// How it comes into the van.
    pub obtain: Obtain,
    /// How many, 1 to 1,000.
    pub quantity: u32,
    /// Price of one, when it is bought or made from materials; as marked, with or without tax as the purse says.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub unit_price: Option<Estimate<Money>>,
    /// Sales tax on it in percent; without it, the purse's.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub tax_percent: Option<Decimal>,
    /// What is taken off the price, in percent.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub discount_percent: Option<Decimal>,
    /// What bringing all of it costs, tax included.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub delivery: Option<Money>,
    /// When it must be there; without it, the day of leaving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub needed_on: Option<Date>,
    /// Days from paying for it until it is there; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub delivery_days: Option<u32>,
    /// When it is bought and paid; without it, the day it must be there, less the days of delivery.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub buy_on: Option<Date>,
    /// What came of the purchase.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub paid: Option<Outcome>,
    /// Who lends it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub lender: String,
    /// Its sale later on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub sale: Option<Sale>,
    /// What of it goes back to the seller unused.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub returned: Option<Return>,
    /// Mass of one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub mass_kg: Option<Estimate<f64>>,
    /// Length of one as it travels.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
    /// Width of one as it travels.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub width_mm: Option<f64>,
    /// Height of one as it travels.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub height_mm: Option<f64>,
    /// What goes into one of it: into a crate, onto a shelf with an edge.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub holds_l: Option<f64>,
    /// What one of it takes up when it is packed soft, as clothes and bedding are.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub packed_l: Option<f64>,
    /// What it draws, when it runs on electricity.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub draw: Option<Draw>,
    /// The fresh water it uses.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub water: Option<ItemWater>,
    /// What it stores, when it is a portable power store.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub store: Option<Store>,
    /// What it makes of the sun, when it is a panel.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub panel: Option<Panel>,
    /// What it holds, when it is a can or a tank.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub tank: Option<Tank>,
    /// What it holds, when it is a toilet.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub toilet: Option<Toilet>,
    /// Litres one of it is good for, when it is a water filter.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub filters_l: Option<f64>,
    /// What it burns, when it is a stove or a heater.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub burner: Option<Burner>,
    /// What it blows, when it is a fan.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fan: Option<Fan>,
    /// Anything else worth remembering.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub note: String,
}

record!(Item {
    id, name, group, need, obtain, quantity, unit_price, tax_percent, discount_percent, delivery,
    needed_on, delivery_days, buy_on, paid, lender, sale, returned, mass_kg,
    length_mm, width_mm, height_mm, holds_l, packed_l, draw, water, store, panel, tank, toilet,
    filters_l, burner, fan, note,
} unless empty { lender, note });

impl Default for Item {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            group: Group::Other,
            need: Need::Want,
            obtain: Obtain::Bought,
            quantity: 1,
            unit_price: None,
            tax_percent: None,
            discount_percent: None,
            delivery: None,
            needed_on: None,
            delivery_days: None,
            buy_on: None,
            paid: None,
            lender: String::new(),
            sale: None,
            returned: None,
            mass_kg: None,
            length_mm: None,
            width_mm: None,
            height_mm: None,
            holds_l: None,
            packed_l: None,
            draw: None,
            water: None,
            store: None,
            panel: None,
            tank: None,
            toilet: None,
            filters_l: None,
            burner: None,
            fan: None,
            note: String::new(),
        }
    }
}

impl Item {
    /// How many are kept: all but those that go back.
    pub fn kept(&self) -> u32 {
        let is_going = |returned: &Return| returned.outcome.is_none_or(|outcome| outcome.happened);
        let returned = self.returned.filter(|returned| self.obtain.is_paid() && is_going(returned));
        self.quantity.saturating_sub(returned.map_or(0, |returned| returned.quantity))
    }
}

/// The headings of the kit list.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Group {
    /// Bed, bedding, curtains for sleeping.
    Sleeping,
    /// Cooking, cooling, eating.
    Kitchen,
    /// Stores, cables, lamps.
    Power,
    /// Cans, filters, washing up.
    Water,
    /// Washing, toilet.
    Hygiene,
    /// Boards, screws, floor, shelves.
    Structure,
    /// Insulation, blankets, ventilation.
    Warmth,
    /// What earns the money.
    Work,
    /// What is worn.
    Clothing,
    /// Alarms, extinguishers, first aid.
    Safety,
    /// What builds and mends.
    Tools,
    /// For the vehicle itself.
    Vehicle,
    /// Everything else.
    #[default]
    Other,
}

words!(Group {
    Sleeping = "sleeping", Kitchen = "kitchen", Power = "power", Water = "water", Hygiene = "hygiene",
    Structure = "structure", Warmth = "warmth", Work = "work", Clothing = "clothing", Safety = "safety",
    Tools = "tools", Vehicle = "vehicle", Other = "other",
});

/// How much the plan depends on an item.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Need {
    /// Without it there is no leaving; no suggestion ever touches it.
    Must,
    /// Better with it.
    #[default]
    Want,
    /// Taken along to find out.
    Experiment,
}

words!(Need { Must = "must", Want = "want", Experiment = "experiment" });

/// How an item comes into the van.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Obtain {
    /// It is there already and costs nothing.
    Owned,
    /// Somebody lends it; it costs nothing.
    Borrowed,
    /// It is paid for.
    #[default]
    Bought,
    /// It is made from materials, whose price is its price.
    Made,
    /// It stays on the list but is not part of the plan.
    LeftOut,
}

words!(Obtain { Owned = "owned", Borrowed = "borrowed", Bought = "bought", Made = "made", LeftOut = "left_out" });

impl Obtain {
    /// Whether money is paid for it.
    pub const fn is_paid(self) -> bool {
        matches!(self, Self::Bought | Self::Made)
    }
}

/// What came of a planned payment or sale. Without one, a date in the past is *unanswered* and the app asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Outcome {
    /// Whether it happened at all.
    pub happened: bool,
    /// The day it happened, when not the planned one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// The whole amount that changed hands, tax included, when not the planned one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub amount: Option<Money>,
}

record!(Outcome { happened, on, amount });

impl Default for Outcome {
    fn default() -> Self {
        Self { happened: true, on: None, amount: None }
    }
}

/// A sale planned or done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Sale {
    /// What it brings in all.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub price: Option<Estimate<Money>>,
    /// When the money is expected.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// What came of it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub outcome: Option<Outcome>,
}

record!(Sale { price, on, outcome });

/// Unused goods that go back to the seller. Their price comes back; what was paid for bringing them does not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Return {
    /// How many.
    pub quantity: u32,
    /// When the money is expected back; without it, the day of leaving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// What came of it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub outcome: Option<Outcome>,
}

record!(Return { quantity, on, outcome });

impl Default for Return {
    fn default() -> Self {
        Self { quantity: 1, on: None, outcome: None }
    }
}
