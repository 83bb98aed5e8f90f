//! A portable store: what it holds, gives and takes, and within which limits.
//!
//! ```
//! use kerbstead_core::energy::store::{Chemistry, Store};
//! let store = Store::usual(Chemistry::Lfp, 1_000.0);
//! assert_eq!(store.charging.share_at(-0.1), 0.0);
//! assert_eq!(store.charging.share_at(20.0), 1.0);
//! ```

pub use super::curves::{Ageing, Charging, Curve};

use super::constants::{
    AC_W_PER_WH, CHARGE_EFFICIENCY, DC_W, DISCHARGE_EFFICIENCY, HOURS_PER_MONTH, INVERTER_EFFICIENCY,
    INVERTER_STANDBY_W, LEFT_AFTER_CYCLES, LFP_CYCLES, LFP_HOT_C, LFP_SELF_DISCHARGE_PER_MONTH, MAINS_W_PER_WH, MOST_W,
    MOST_WH, NMC_CYCLES, NMC_HOT_C, NMC_SELF_DISCHARGE_PER_MONTH, NONE_BELOW_C, PANEL_W_PER_WH, SURGE_TIMES,
    TAPER_FROM_STATE, VEHICLE_W,
};
use super::draw::Outlet;
use super::{sound, within};

/// What the cells are made of, as far as it sets usual limits.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Chemistry {
    /// Lithium iron phosphate.
    #[default]
    Lfp,
    /// Lithium nickel manganese cobalt.
    Nmc,
}

/// A portable store. Shares and efficiencies are from 0 to 1.
#[derive(Clone, Debug, PartialEq)]
pub struct Store {
    /// Energy that its cells give from full to empty, in Wh.
    pub usable_wh: f64,
    /// What reaches the cells of what reaches the sockets; at least 0.01 is counted.
    pub charge_efficiency: f64,
    /// What reaches the low-voltage outlets and the inverter of what the cells give; at least 0.01 is counted.
    pub discharge_efficiency: f64,
    /// What makes mains voltage, if anything does.
    pub inverter: Option<Inverter>,
    /// Low-voltage outlets.
    pub dc: Limits,
    /// What the sockets take.
    pub inputs: Inputs,
    /// How charging slows down near full.
    pub taper: Taper,
    /// At which temperatures it charges.
    pub charging: Charging,
    /// Share of its charge that it loses in 30 days by itself.
    pub self_discharge_per_month: f64,
    /// What cycles leave of it.
    pub ageing: Ageing,
}

/// What outlets give, in W.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Limits {
    /// For long.
    pub continuous_w: f64,
    /// For the moment in which something starts; not less than for long.
    pub surge_w: f64,
}

/// What makes mains voltage.
#[derive(Clone, Debug, PartialEq)]
pub struct Inverter {
    /// Efficiency over load, without the standby draw.
    pub efficiency: Curve,
    /// What it takes for itself while it is on, in W.
    pub standby_w: f64,
    /// What it gives.
    pub limits: Limits,
    /// When it is on.
    pub on: InverterOn,
}

/// When an inverter is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InverterOn {
    /// All the time.
    Always,
    /// While something hangs on it that may draw.
    WhileDrawing,
    /// Through every hour in which something draws.
    HoursWithDraws,
}

/// What the sockets take, in W.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Inputs {
    /// From the mains.
    pub mains_w: f64,
    /// From the vehicle.
    pub vehicle_w: f64,
    /// From panels.
    pub panel_w: f64,
    /// From all of them together.
    pub together_w: f64,
}

/// How charging slows down near full: above a state it takes the share (1 - state) / (1 - from) of what is on offer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taper {
    /// The state from which on it does; 1 never does.
    pub from_state: f64,
    /// Which sockets it is about.
    pub of: TaperOf,
    /// How it goes within an hour.
    pub within: TaperWithin,
}

/// Which sockets taper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TaperOf {
    /// All of them.
    Every,
    /// The mains alone.
    Mains,
}

/// How the taper goes within an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TaperWithin {
    /// As the charge does at every moment, in closed form.
    Exact,
    /// As it was when the hour began. Rough, as simpler calculations do it, and there to be compared with them.
    AtStart,
}

impl Store {
    /// A usual store of this size; everything about it is common practice (see [`super::constants`]).
    pub fn usual(chemistry: Chemistry, usable_wh: f64) -> Self {
        let (hot_c, self_discharge_per_month, cycles) = match chemistry {
            Chemistry::Lfp => (LFP_HOT_C, LFP_SELF_DISCHARGE_PER_MONTH, LFP_CYCLES),
            Chemistry::Nmc => (NMC_HOT_C, NMC_SELF_DISCHARGE_PER_MONTH, NMC_CYCLES),
        };
        let usable_wh = sound(usable_wh, MOST_WH);
        let mains_w = usable_wh * MAINS_W_PER_WH;
        let panel_w = usable_wh * PANEL_W_PER_WH;
        Self {
            usable_wh,
            charge_efficiency: CHARGE_EFFICIENCY,
            discharge_efficiency: DISCHARGE_EFFICIENCY,
            inverter: Some(Inverter {
                efficiency: Curve { points: INVERTER_EFFICIENCY.to_vec() },
                standby_w: INVERTER_STANDBY_W,
                limits: Limits::usual(usable_wh * AC_W_PER_WH),
                on: InverterOn::WhileDrawing,
            }),
            dc: Limits { continuous_w: DC_W, surge_w: DC_W },
            inputs: Inputs { mains_w, vehicle_w: VEHICLE_W, panel_w, together_w: mains_w + VEHICLE_W },
            taper: Taper { from_state: TAPER_FROM_STATE, of: TaperOf::Every, within: TaperWithin::Exact },
            charging: Charging {
                none_below_c: NONE_BELOW_C,
                full_from_c: NONE_BELOW_C,
                full_to_c: hot_c.0,
                none_above_c: hot_c.1,
            },
            self_discharge_per_month,
            ageing: Ageing { cycles, left: LEFT_AFTER_CYCLES },
        }
    }

    /// A store without losses and limits, for closed forms: all that it is given to hold, it gives.
    pub fn ideal(usable_wh: f64) -> Self {
        let limits = Limits { continuous_w: MOST_W, surge_w: MOST_W };
        Self {
            usable_wh,
            charge_efficiency: 1.0,
            discharge_efficiency: 1.0,
            inverter: Some(Inverter {
                efficiency: Curve::flat(1.0),
                standby_w: 0.0,
                limits,
                on: InverterOn::WhileDrawing,
            }),
            dc: limits,
            inputs: Inputs { mains_w: MOST_W, vehicle_w: MOST_W, panel_w: MOST_W, together_w: MOST_W },
            taper: Taper { from_state: 1.0, of: TaperOf::Every, within: TaperWithin::Exact },
            charging: Charging { none_below_c: -300.0, full_from_c: -300.0, full_to_c: 1e4, none_above_c: 1e4 },
            self_discharge_per_month: 0.0,
            ageing: Ageing { cycles: 1.0, left: 1.0 },
        }
    }

    /// The store after so many full cycles, 0 or more.
    ///
    /// ```
    /// use kerbstead_core::energy::store::{Ageing, Store};
    /// let store = Store { ageing: Ageing { cycles: 1_000.0, left: 0.8 }, ..Store::ideal(500.0) };
    /// assert_eq!(store.aged_to(500.0).usable_wh, 450.0);
    /// ```
    #[must_use]
    pub fn aged_to(&self, cycles: f64) -> Self {
        Self { usable_wh: self.usable_wh * self.ageing.share_left(cycles), ..self.clone() }
    }

    /// What its outlets of a kind give; nothing where there is no inverter.
    pub fn limits(&self, outlet: Outlet) -> Limits {
        match outlet {
            Outlet::Ac => self.inverter.as_ref().map_or(Limits::default(), |inverter| inverter.limits),
            Outlet::Dc => self.dc,
        }
    }

    /// The store with nothing infinite, negative or not a number in it.
    pub(crate) fn made_sound(&self) -> Self {
        let inputs = self.inputs;
        Self {
            usable_wh: sound(self.usable_wh, MOST_WH),
            charge_efficiency: within(self.charge_efficiency, 0.01, 1.0),
            discharge_efficiency: within(self.discharge_efficiency, 0.01, 1.0),
            inverter: self.inverter.as_ref().map(Inverter::made_sound),
            dc: self.dc.made_sound(),
            inputs: Inputs {
                mains_w: sound(inputs.mains_w, MOST_W),
                vehicle_w: sound(inputs.vehicle_w, MOST_W),
                panel_w: sound(inputs.panel_w, MOST_W),
                together_w: sound(inputs.together_w, 4.0 * MOST_W),
            },
            taper: Taper { from_state: sound(self.taper.from_state, 1.0), ..self.taper },
            self_discharge_per_month: sound(self.self_discharge_per_month, 1.0),
            charging: self.charging,
            ageing: self.ageing,
        }
    }

    /// Share of its charge that is left after an hour by itself: the 720th root of what a month leaves.
    pub(super) fn kept_per_hour(&self) -> f64 {
        if self.self_discharge_per_month <= 0.0 {
            return 1.0;
        }
        libm::pow(1.0 - self.self_discharge_per_month, 1.0 / HOURS_PER_MONTH)
    }
}

impl Limits {
    /// Lasting power, with a usual surge.
    pub fn usual(continuous_w: f64) -> Self {
        Self { continuous_w, surge_w: continuous_w * SURGE_TIMES }
    }

    fn made_sound(self) -> Self {
        let continuous_w = sound(self.continuous_w, MOST_W);
        Self { continuous_w, surge_w: within(self.surge_w, continuous_w, 10.0 * MOST_W) }
    }
}

impl Inverter {
    /// What it takes to give so much, in W, without its standby draw.
    pub fn input_w(&self, ac_w: f64) -> f64 {
        let share = if self.limits.continuous_w > 0.0 { ac_w / self.limits.continuous_w } else { 1.0 };
        ac_w / self.efficiency.at(share)
    }

    fn made_sound(&self) -> Self {
        let point = |&(load, efficiency): &(f64, f64)| (sound(load, 1e3), within(efficiency, 0.01, 1.0));
        Self {
            efficiency: Curve { points: self.efficiency.points.iter().map(point).collect() },
            standby_w: sound(self.standby_w, MOST_W),
            limits: self.limits.made_sound(),
            on: self.on,
        }
    }
}
