//! What an item uses and holds.

use crate::plan::record::{record, words};
use crate::plan::{Estimate, Money};

/// The fresh water an item uses.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct ItemWater {
    /// Litres a day, all of them together.
    pub litres_per_day: Estimate<f64>,
    /// How much of it ends in the grey tank, in percent.
    pub to_grey_percent: f64,
}

record!(ItemWater { litres_per_day, to_grey_percent });

impl Default for ItemWater {
    fn default() -> Self {
        Self { litres_per_day: Estimate::Plain(0.0), to_grey_percent: 0.0 }
    }
}

/// A can or a tank.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Tank {
    /// What it is for.
    pub holds: TankKind,
    /// Litres one holds.
    pub capacity_l: f64,
    /// How full it is on the day of leaving, in percent; grey tanks usually start empty.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub opening_percent: Option<f64>,
}

record!(Tank { holds, capacity_l, opening_percent });

impl Default for Tank {
    fn default() -> Self {
        Self { holds: TankKind::Fresh, capacity_l: 0.0, opening_percent: None }
    }
}

/// What a tank is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum TankKind {
    /// Drinking water.
    #[default]
    Fresh,
    /// Used water.
    Grey,
}

words!(TankKind { Fresh = "fresh", Grey = "grey" });

/// A toilet that is carried along; bags count as many as there are of the item.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Toilet {
    /// What way of a toilet it is.
    pub way: ToiletWay,
    /// What its waste tank holds.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub waste_l: Option<f64>,
    /// How many months it lasts; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub lasts_months: Option<u32>,
    /// What each emptying costs, with what is filled in; of bags, each bag.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub each_time: Option<Money>,
}

record!(Toilet { way, waste_l, lasts_months, each_time });

/// A way of having a toilet on board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum ToiletWay {
    /// A portable one that is flushed with water.
    #[default]
    Portable,
    /// One without flushing.
    Dry,
    /// Bags, one each time.
    Bags,
}

words!(ToiletWay { Portable = "portable", Dry = "dry", Bags = "bags" });
