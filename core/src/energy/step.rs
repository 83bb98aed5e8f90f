//! One hour of all stores: what each gets of what is on offer, what it must give, and what moves to another one.

use super::constants::LEAST_SHORT_WH;
use super::draw::Outlet;
use super::hour::{Flow, Rates};
use super::least;
use super::prepare::{Offer, Prepared, Side, SideHour, Use};

/// What is not the same in every run.
#[derive(Clone, Copy, Debug)]
pub(super) struct Factors<'a> {
    /// Share of the clear sky's yield.
    pub cloud: f64,
    /// What the vehicle's socket gives of what is on offer.
    pub drive: f64,
    /// What is used of what is usually used: longer, not stronger.
    pub scale: f64,
    /// For each draw, whether an uncertain one happens, or how likely.
    pub happens: &'a [f64],
}

/// What a store's sockets take while it is far from full, in W.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[expect(clippy::struct_field_names, reason = "units stand in names")]
pub(super) struct Taken {
    pub panel_w: f64,
    pub vehicle_w: f64,
    pub mains_w: f64,
}

impl Taken {
    pub fn sum_w(self) -> f64 {
        self.panel_w + self.vehicle_w + self.mains_w
    }
}

/// What an hour did to one store.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct StoreStep {
    /// Lost by itself.
    pub lost_wh: f64,
    pub flow: Flow,
    /// What its panels gave, whether taken or not, in Wh.
    pub sun_wh: f64,
    /// What was on offer to it, within the sockets' limits or not, in Wh at the sockets.
    pub offered_wh: f64,
    pub taken: Taken,
    /// What reached it, in Wh at the sockets.
    pub accepted_wh: f64,
    /// What it gave to draws of other stores, in Wh at the cells; in `flow` already.
    pub lent_wh: f64,
    /// What other stores gave to its draws, as if it came from its cells, in Wh; in `flow` as not served.
    pub covered_wh: f64,
}

/// What a store takes: the sun first, then the vehicle, then the mains.
#[inline]
pub(super) fn taken(side: &Side, hour: &SideHour, cloud: f64, offer: Offer) -> Taken {
    let inputs = &side.store.inputs;
    let panel_w = least(least(hour.panel_w * cloud, inputs.panel_w), hour.cap_w);
    let vehicle_w = least(least(offer.vehicle_w, inputs.vehicle_w * offer.vehicle_hour), hour.cap_w - panel_w);
    let mains_w = least(least(offer.mains_w, inputs.mains_w * offer.mains_hour), hour.cap_w - panel_w - vehicle_w);
    Taken { panel_w, vehicle_w, mains_w }
}

/// The same at the cells, apart in what tapers and what does not.
#[inline]
pub(super) fn rates(side: &Side, taken: Taken, out_w: f64) -> Rates {
    let efficiency = side.store.charge_efficiency;
    let (sun_and_vehicle_w, mains_w) = ((taken.panel_w + taken.vehicle_w) * efficiency, taken.mains_w * efficiency);
    if side.tapers_all() {
        Rates { steady_w: 0.0, tapered_w: sun_and_vehicle_w + mains_w, out_w }
    } else {
        Rates { steady_w: sun_and_vehicle_w, tapered_w: mains_w, out_w }
    }
}

/// What of a use counts in a run, 0 to whatever it is scaled to.
pub(super) fn weight(one: &Use, factors: Factors) -> f64 {
    if one.chance >= 1.0 {
        factors.scale
    } else {
        factors.scale * factors.happens.get(one.draw).copied().unwrap_or(0.0)
    }
}

/// What a store must give in an hour, in Wh at the cells.
pub(super) fn need_wh(side: &Side, entry: &SideHour, hour: usize, factors: Factors) -> f64 {
    let mut need_wh = entry.fixed_wh + entry.certain_wh * factors.scale;
    if side.has_chances {
        for one in side.uses_of(hour).iter().filter(|one| one.chance < 1.0) {
            need_wh += one.cells_wh * weight(one, factors);
        }
    }
    need_wh
}

/// Runs the hour; `charge_wh` and `steps` have an entry a store. `unserved` hears of each use that is not served in full: the
/// draw and the energy at its outlet.
pub(super) fn step(
    prepared: &Prepared,
    hour: usize,
    mut offer: Offer,
    factors: Factors,
    charge_wh: &mut [f64],
    steps: &mut [StoreStep],
    unserved: &mut impl FnMut(usize, usize, f64),
) {
    offer.vehicle_w *= factors.drive;
    let mut is_short = false;
    for ((side, charge), step) in prepared.sides.iter().zip(charge_wh.iter_mut()).zip(steps.iter_mut()) {
        let Some(entry) = side.hours.get(hour) else { continue };
        let kept_wh = *charge * side.kept_per_hour;
        let taken = taken(side, entry, factors.cloud, offer);
        let flow = side.cell.hour(kept_wh, rates(side, taken, need_wh(side, entry, hour, factors)));
        let accepted_wh = flow.put_in_wh / side.store.charge_efficiency;
        let sun_wh = entry.panel_w * factors.cloud;
        *step = StoreStep {
            lost_wh: *charge - kept_wh,
            flow,
            sun_wh,
            offered_wh: sun_wh + offer.vehicle_w + offer.mains_w,
            taken,
            accepted_wh,
            lent_wh: 0.0,
            covered_wh: 0.0,
        };
        // What is left over is there for the next store.
        let mut left_wh = accepted_wh - least(accepted_wh, taken.panel_w);
        let vehicle_wh = least(left_wh, taken.vehicle_w);
        left_wh -= vehicle_wh;
        offer.vehicle_w -= vehicle_wh;
        offer.mains_w -= least(left_wh, offer.mains_w);
        *charge = flow.after_wh;
        is_short |= flow.unserved_wh > LEAST_SHORT_WH;
    }
    if is_short {
        for at in 0..prepared.sides.len() {
            shed(prepared, hour, factors, at, charge_wh, steps, unserved);
        }
    }
}

/// What a store that fell short serves, the most important first; the rest moves or is not served.
fn shed(
    prepared: &Prepared,
    hour: usize,
    factors: Factors,
    at: usize,
    charge_wh: &mut [f64],
    steps: &mut [StoreStep],
    unserved: &mut impl FnMut(usize, usize, f64),
) {
    let (Some(side), Some(step)) = (prepared.sides.get(at), steps.get(at)) else { return };
    if step.flow.unserved_wh <= LEAST_SHORT_WH {
        return;
    }
    let fixed_wh = side.hours.get(hour).map_or(0.0, |entry| entry.fixed_wh);
    let mut left_wh = step.flow.taken_out_wh - step.lent_wh - fixed_wh;
    for one in side.uses_of(hour) {
        let weight = weight(one, factors);
        let need_wh = one.cells_wh * weight;
        let given_wh = super::within(left_wh, 0.0, need_wh);
        left_wh -= given_wh;
        if need_wh - given_wh <= LEAST_SHORT_WH {
            continue;
        }
        let missing_wh = (need_wh - given_wh) * one.outlet_wh / one.cells_wh;
        let moved_wh = moved_wh(prepared, hour, at, one, missing_wh, charge_wh, steps);
        if let Some(step) = steps.get_mut(at) {
            step.covered_wh += moved_wh * one.cells_wh / one.outlet_wh;
        }
        let missing_wh = missing_wh - moved_wh;
        if missing_wh > LEAST_SHORT_WH {
            unserved(at, one.draw, missing_wh);
        }
    }
}

/// What other stores give to a draw out of what they have at the end of the hour, in Wh at its outlet: nothing of their own is
/// left out for it, and their outlets must bear it beside all that hangs on them.
fn moved_wh(
    prepared: &Prepared,
    hour: usize,
    from: usize,
    one: &Use,
    missing_wh: f64,
    charge_wh: &mut [f64],
    steps: &mut [StoreStep],
) -> f64 {
    let Some(draw) = prepared.draws.get(one.draw).filter(|draw| draw.may_move) else { return 0.0 };
    let mut moved_wh = 0.0;
    for (at, ((side, charge), step)) in prepared.sides.iter().zip(charge_wh).zip(steps).enumerate() {
        let Some(entry) = side.hours.get(hour).filter(|_| at != from) else { continue };
        let lent_peak_w = step.lent_wh;
        let (fits, cells_per_wh) = match (draw.outlet, &side.store.inverter) {
            (Outlet::Ac, Some(inverter)) => {
                let running_w = entry.ac_peak_w + draw.power_w + lent_peak_w;
                let limits = inverter.limits;
                let fits =
                    running_w <= limits.continuous_w && running_w - draw.power_w + draw.surge_w <= limits.surge_w;
                (fits && draw.power_w > 0.0, inverter.input_w(draw.power_w) / super::most(draw.power_w, 1e-300))
            }
            (Outlet::Ac, None) => (false, 1.0),
            (Outlet::Dc, _) => {
                let running_w = entry.dc_peak_w + draw.power_w + lent_peak_w;
                let limits = side.store.dc;
                (running_w <= limits.continuous_w && running_w - draw.power_w + draw.surge_w <= limits.surge_w, 1.0)
            }
        };
        if !fits {
            continue;
        }
        let cells_per_wh = cells_per_wh / side.store.discharge_efficiency;
        let given_wh = least((missing_wh - moved_wh) * cells_per_wh, *charge);
        if given_wh > 0.0 {
            *charge -= given_wh;
            step.flow.after_wh = *charge;
            step.flow.taken_out_wh += given_wh;
            step.lent_wh += given_wh;
            moved_wh += given_wh / cells_per_wh;
        }
    }
    moved_wh
}
