//! A portable power store.

pub use crate::energy::store::Chemistry;
use crate::plan::record::{record, words};

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
    /// What the cells are made of; without it, iron phosphate.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub chemistry: Option<Chemistry>,
    /// Energy by its label. Counts when what can be taken out is not known.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub rated_wh: Option<f64>,
    /// What comes out of what the cells give, before the inverter, in percent; without it, all of it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub discharge_efficiency_percent: Option<f64>,
    /// What the inverter passes on at a tenth of its load, in percent; without it, as at any other.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub inverter_low_percent: Option<f64>,
    /// What the inverter passes on at its full load, in percent; without it, as at any other.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub inverter_full_percent: Option<f64>,
    /// Whether the inverter stays on when nothing runs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub inverter_stays_on: bool,
    /// The most the low-voltage outlets give for a moment; without it, as for long.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub dc_surge_w: Option<f64>,
    /// The most it takes from panels; without it, as much as from the mains.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub panel_input_w: Option<f64>,
    /// Below this it does not charge; without it, 0 °C.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub charges_above_c: Option<f64>,
    /// Above this it does not charge; without it, as is usual for its cells.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub charges_below_c: Option<f64>,
    /// What it loses in a month by itself, in percent; without it, nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub loses_percent: Option<f64>,
    /// Full cycles it has behind it; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cycles_done: Option<f64>,
    /// Full cycles after which the stated share is left; without it, as is usual for its cells.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cycles_stated: Option<f64>,
    /// What is left of it after these, in percent; without it, 80.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cycles_left_percent: Option<f64>,
    /// What is to stay in it, in percent; without it, it may be emptied.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub keeps_percent: Option<f64>,
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
    chemistry,
    rated_wh,
    discharge_efficiency_percent,
    inverter_low_percent,
    inverter_full_percent,
    inverter_stays_on,
    dc_surge_w,
    panel_input_w,
    charges_above_c,
    charges_below_c,
    loses_percent,
    cycles_done,
    cycles_stated,
    cycles_left_percent,
    keeps_percent,
} unless empty { inverter_stays_on });

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
            chemistry: None,
            rated_wh: None,
            discharge_efficiency_percent: None,
            inverter_low_percent: None,
            inverter_full_percent: None,
            inverter_stays_on: false,
            dc_surge_w: None,
            panel_input_w: None,
            charges_above_c: None,
            charges_below_c: None,
            loses_percent: None,
            cycles_done: None,
            cycles_stated: None,
            cycles_left_percent: None,
            keeps_percent: None,
        }
    }
}

words!(Chemistry { Lfp = "lfp", Nmc = "nmc" });
