//! A store of the plan as the engine takes it.

use super::constants::RATED_SHARE;
use crate::energy::store::{
    Ageing, Charging, Curve, Inputs, Inverter, InverterOn, Limits, Store as Engine, Taper, TaperOf, TaperWithin,
};
use crate::plan::Store;

/// What a store can do after the cycles it has behind it.
pub fn of_plan(store: &Store) -> Engine {
    let usual = Engine::usual(store.chemistry.unwrap_or_default(), 0.0);
    let share = |percent: f64| percent / 100.0;
    let above_c = store.charges_below_c.unwrap_or(usual.charging.none_above_c);
    let below_c = store.charges_above_c.unwrap_or(usual.charging.none_below_c);
    // Its label's limits are where it stops; what is usual for its cells is where it begins to slow down.
    let slows_c = store.charges_below_c.unwrap_or(usual.charging.full_to_c);
    let panel_w = store.panel_input_w.unwrap_or(store.mains_input_w);
    let engine = Engine {
        usable_wh: usable_wh(store),
        charge_efficiency: share(store.charge_efficiency_percent),
        discharge_efficiency: store.discharge_efficiency_percent.map_or(1.0, share),
        inverter: Some(inverter(store)),
        dc: Limits { continuous_w: store.dc_continuous_w, surge_w: store.dc_surge_w.unwrap_or(store.dc_continuous_w) },
        inputs: Inputs {
            mains_w: store.mains_input_w,
            vehicle_w: store.vehicle_input_w,
            panel_w,
            together_w: store.total_input_w.unwrap_or(store.mains_input_w + store.vehicle_input_w + panel_w),
        },
        taper: Taper { from_state: share(store.taper_from_percent), of: TaperOf::Every, within: TaperWithin::Exact },
        charging: Charging { none_below_c: below_c, full_from_c: below_c, full_to_c: slows_c, none_above_c: above_c },
        self_discharge_per_month: store.loses_percent.map_or(0.0, share),
        ageing: Ageing {
            cycles: store.cycles_stated.unwrap_or(usual.ageing.cycles),
            left: store.cycles_left_percent.map_or(usual.ageing.left, share),
        },
    };
    engine.aged_to(store.cycles_done.unwrap_or(0.0)).made_sound()
}

/// What can be taken out of it when it is new: as stated, or else a share of what its label says.
pub fn usable_wh(store: &Store) -> f64 {
    if store.usable_wh > 0.0 { store.usable_wh } else { store.rated_wh.unwrap_or(0.0) * RATED_SHARE }
}

/// Efficiencies at a tenth, half and all of its load, as far as they are stated.
fn inverter(store: &Store) -> Inverter {
    let usual = store.inverter_efficiency_percent;
    let low = store.inverter_low_percent.map(|percent| (0.1, percent));
    let full = store.inverter_full_percent.map(|percent| (1.0, percent));
    let points = low.into_iter().chain([(0.5, usual)]).chain(full).map(|(load, percent)| (load, percent / 100.0));
    Inverter {
        efficiency: Curve { points: points.collect() },
        standby_w: store.inverter_idle_w,
        limits: Limits { continuous_w: store.ac_continuous_w, surge_w: store.ac_surge_w },
        on: if store.inverter_stays_on { InverterOn::Always } else { InverterOn::WhileDrawing },
    }
}
