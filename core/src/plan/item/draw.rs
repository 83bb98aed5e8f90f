//! What an item draws from a power store.

pub use crate::energy::draw::Outlet;
use crate::plan::record::{record, words};
use crate::plan::{Estimate, Id};
use crate::run::Day;

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
    /// What it is used by; without it, by the clock.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub works: Option<Works>,
    /// How often a day, its hours in equal parts; without it, once.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub times_per_day: Option<u32>,
    /// Hours from one time to the next; without it, spread over twelve.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub again_after_hours: Option<f64>,
    /// Chance that it is used on such a day, in percent; without it, 100.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub used_percent: Option<f64>,
    /// What its charger loses, in percent; without it, nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub loss_percent: Option<f64>,
    /// How much it matters, 9 the most: what matters least goes first; without it, 5.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub importance: Option<u32>,
    /// Whether it may hang on another store when its own is empty.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub may_move: bool,
    /// Water, or food that is mostly water, that is heated each time.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub heats_l: Option<f64>,
    /// How warm that is before; without it, 15 °C.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub heats_from_c: Option<f64>,
    /// How warm it gets; without it, it boils.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub heats_to_c: Option<f64>,
    /// What the vessel weighs, of steel; without it, half a kilogram.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub vessel_kg: Option<f64>,
    /// What boils away each time; without it, nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub boiled_away_l: Option<f64>,
    /// What reaches vessel and water of what is drawn, in percent; without it, 85.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub heat_percent: Option<f64>,
    /// Energy a day by its label, in air of `label_air_c`.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub label_wh: Option<f64>,
    /// The air that the label is for; without it, 25 °C.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub label_air_c: Option<f64>,
    /// How cold it keeps its inside; without it, 5 °C.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub inside_c: Option<f64>,
    /// How thick its walls are: with the size of the item, instead of a label.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wall_mm: Option<f64>,
}

record!(Draw {
    power_w, outlet, surge_w, hours_per_day, from_hour, duty_percent, days, store, works, times_per_day, again_after_hours, used_percent, loss_percent, importance, may_move, heats_l, heats_from_c, heats_to_c, vessel_kg, boiled_away_l, heat_percent, label_wh, label_air_c, inside_c, wall_mm,
} unless empty { may_move });

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
            works: None,
            times_per_day: None,
            again_after_hours: None,
            used_percent: None,
            loss_percent: None,
            importance: None,
            may_move: false,
            heats_l: None,
            heats_from_c: None,
            heats_to_c: None,
            vessel_kg: None,
            boiled_away_l: None,
            heat_percent: None,
            label_wh: None,
            label_air_c: None,
            inside_c: None,
            wall_mm: None,
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

/// What decides how long something runs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Works {
    /// Its hours.
    #[default]
    ByClock,
    /// What it heats: a kettle, a hob.
    Heating,
    /// The air around it: a cool box with a compressor.
    Cooling,
    /// How much warmth the room lacks: an electric heater with a thermostat.
    Warming,
}

words!(Works { ByClock = "by_clock", Heating = "heating", Cooling = "cooling", Warming = "warming" });

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

impl DrawDays {
    /// Whether a day is one of them.
    pub fn has(self, day: &Day) -> bool {
        let is_driving = day.drive_hours > 0.0;
        match self {
            Self::Every => true,
            Self::Working => day.is_working,
            Self::Free => !day.is_working,
            Self::Driving => is_driving,
            Self::Standing => !is_driving,
        }
    }
}

words!(DrawDays { Every = "every", Working = "working", Free = "free", Driving = "driving", Standing = "standing" });
