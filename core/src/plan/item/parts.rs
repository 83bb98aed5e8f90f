//! What an item draws, uses, stores and holds.

use crate::plan::record::{record, words};
use crate::plan::{Estimate, Id};

/// What an item draws from a power store.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Draw {
    /// Power of one while it runs.
    pub power_w: Estimate<f64>,
    /// Which outlet it needs.
    pub outlet: Outlet,
    /// Power of one in the moment it starts; without it, its running power.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub surge_w: Option<f64>,
    /// Hours a day it is switched on; without it, all day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub hours_per_day: Option<Estimate<f64>>,
    /// Hour of the day it is switched on, 0 to 24; without it, 0.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub from_hour: Option<f64>,
    /// Share of the time switched on that it really runs (a cool box, a blanket), in percent; without it, 100.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub duty_percent: Option<Estimate<f64>>,
    /// The days it is used on.
    pub days: DrawDays,
    /// The item whose store it runs on; without it, the first store of the list.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub store: Option<Id>,
}

record!(Draw { power_w, outlet, surge_w, hours_per_day, from_hour, duty_percent, days, store });

impl Default for Draw {
    fn default() -> Self {
        Self {
            power_w: Estimate::Plain(0.0),
            outlet: Outlet::Ac,
            surge_w: None,
            hours_per_day: None,
            from_hour: None,
            duty_percent: None,
            days: DrawDays::Every,
            store: None,
        }
    }
}

impl Draw {
    /// Energy that `quantity` of it take at the outlet on a day they are used, as the likely run counts it.
    ///
    /// ```
    /// use kerbstead_core::plan::{Draw, Estimate};
    /// let lamp = Draw { power_w: 5.0.into(), hours_per_day: Some(4.0.into()), ..Draw::default() };
    /// assert_eq!(lamp.wh_per_day(2), 40.0);
    /// ```
    pub fn wh_per_day(&self, quantity: u32) -> f64 {
        let hours = self.hours_per_day.map_or(24.0, |hours| hours.likely());
        let duty = self.duty_percent.map_or(100.0, |duty| duty.likely()) / 100.0;
        self.power_w.likely() * f64::from(quantity) * hours * duty
    }
}

/// The side of the store an item is plugged into.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Outlet {
    /// Mains voltage, through the inverter.
    #[default]
    Ac,
    /// Low voltage, without the inverter: 12 V or USB.
    Dc,
}

words!(Outlet { Ac = "ac", Dc = "dc" });

/// The days of the route an item is used on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum DrawDays {
    /// Every day.
    #[default]
    Every,
    /// Days on which somebody works.
    Working,
    /// Days on which nobody works.
    Free,
    /// Days on which the van is driven.
    Driving,
    /// Days on which the van stands still.
    Standing,
}

words!(DrawDays { Every = "every", Working = "working", Free = "free", Driving = "driving", Standing = "standing" });

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

/// A portable power store, as its maker states it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Store {
    /// Energy that can really be taken out at the cells.
    pub usable_wh: f64,
    /// How full it is on the day of leaving, in percent.
    pub opening_percent: f64,
    /// What the inverter passes on of what it takes, in percent.
    pub inverter_efficiency_percent: f64,
    /// What the inverter takes for itself while it is on.
    pub inverter_idle_w: f64,
    /// What reaches the cells of what goes into the socket, in percent.
    pub charge_efficiency_percent: f64,
    /// The most the mains-voltage outlets give for long.
    pub ac_continuous_w: f64,
    /// The most they give for a moment.
    pub ac_surge_w: f64,
    /// The most the low-voltage outlets give together.
    pub dc_continuous_w: f64,
    /// The most it takes from a vehicle socket.
    pub vehicle_input_w: f64,
    /// The most it takes from the mains.
    pub mains_input_w: f64,
    /// The most it takes from all sockets together; without it, no further limit.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub total_input_w: Option<f64>,
    /// Above this charge, in percent, it takes less and less, in proportion to what is missing.
    pub taper_from_percent: f64,
}

record!(Store {
    usable_wh,
    opening_percent,
    inverter_efficiency_percent,
    inverter_idle_w,
    charge_efficiency_percent,
    ac_continuous_w,
    ac_surge_w,
    dc_continuous_w,
    vehicle_input_w,
    mains_input_w,
    total_input_w,
    taper_from_percent,
});

impl Default for Store {
    fn default() -> Self {
        use crate::power::constants as typical;
        Self {
            usable_wh: 0.0,
            opening_percent: 100.0,
            inverter_efficiency_percent: typical::INVERTER_EFFICIENCY_PERCENT,
            inverter_idle_w: typical::INVERTER_IDLE_W,
            charge_efficiency_percent: typical::CHARGE_EFFICIENCY_PERCENT,
            ac_continuous_w: typical::AC_CONTINUOUS_W,
            ac_surge_w: typical::AC_SURGE_W,
            dc_continuous_w: typical::DC_CONTINUOUS_W,
            vehicle_input_w: typical::VEHICLE_INPUT_W,
            mains_input_w: typical::MAINS_INPUT_W,
            total_input_w: None,
            taper_from_percent: typical::TAPER_FROM_PERCENT,
        }
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
