//! Answers from two or three fields, by the same engine: how long, how large, how soon. At 20 °C, with nothing else going on.
//!
//! ```
//! use kerbstead_core::energy::draw::Outlet;
//! use kerbstead_core::energy::quick::{Source, charge_time, lasts, size_for};
//! use kerbstead_core::energy::store::{Chemistry, Store};
//! let store = Store::ideal(500.0);
//! assert_eq!(lasts(&store, 0.5, 40.0, Outlet::Dc).hours, 6.25);
//! let charge = charge_time(&store, 0.0, 0.5, Source::Panels, 50.0);
//! assert_eq!((charge.hours, charge.accepted_w), (Some(5.0), 50.0));
//! // Twelve hours of 40 W, with a fifth left, losses counted.
//! assert_eq!(size_for(Chemistry::Lfp, 40.0, Outlet::Dc, 12.0, 0.2).usable_wh, Some(619));
//! ```

use super::constants::{MOST_RESERVE_H, MOST_W};
use super::draw::{Draw, Outlet};
use super::lasting::lasts_to;
use super::prepare::Prepared;
use super::run::Limit;
use super::setup::{Given, OnBoard, Setup};
use super::step::{rates, taken};
use super::store::{Chemistry, Store};
use super::{least, sound, whole};

/// From this state on a store counts as full: the last of a taper would take for ever. Common practice, no source.
pub const FULL_STATE: f64 = 0.995;
/// No greater store is looked for, in Wh.
pub const MOST_SIZE_WH: u32 = 1_000_000;
/// A store that changes by less than this in an hour gets nowhere, in Wh.
const LEAST_GAIN_WH: f64 = 1e-9;

/// How long a store lasts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lasts {
    /// In hours, at most 10,000; 0 if the outlet does not bear the draw.
    pub hours: f64,
    /// What the outlet does not bear, if so.
    pub limit: Option<Limit>,
}

/// The least usual store.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SizeFor {
    /// Usable energy in whole Wh: it does, and with one less it does not. None if nothing up to 1,000,000 Wh does.
    pub usable_wh: Option<u32>,
    /// What one Wh less fails by, or all sizes if none does: energy, or what the outlet bears, which with mains voltage grows
    /// with the store. None if nothing is needed at all.
    pub limit: Option<Limit>,
}

/// What charges.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The mains.
    Mains,
    /// The vehicle's socket.
    Vehicle,
    /// Panels that give so much steadily.
    Panels,
}

/// How soon a store is charged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChargeTime {
    /// In hours; none if it does not get there in 10,000.
    pub hours: Option<f64>,
    /// What its sockets take while it is far from full, in W.
    pub accepted_w: f64,
    /// [`Limit::Input`] if that is less than what is on offer.
    pub limit: Option<Limit>,
}

/// How long a store in a state (0 to 1) bears a steady draw, in W, exactly within the hour. Its inverter's curve and standby,
/// its losses and its own discharge count.
pub fn lasts(store: &Store, state: f64, power_w: f64, outlet: Outlet) -> Lasts {
    let board = OnBoard { opening_state: state, ..OnBoard::full(store.clone()) };
    let prepared = steady(board, power_w, outlet, MOST_RESERVE_H);
    match refused(&prepared) {
        Some(limit) => Lasts { hours: 0.0, limit: Some(limit) },
        None => Lasts { hours: lasts_to(&prepared).unwrap_or(MOST_RESERVE_H), limit: None },
    }
}

/// The least usual store that, full at first, bears a steady draw, in W, for so many hours (at most 10,000) with a share (0 to 1)
/// of its energy left.
pub fn size_for(chemistry: Chemistry, power_w: f64, outlet: Outlet, hours: f64, spare_share: f64) -> SizeFor {
    let hours = sound(hours, MOST_RESERVE_H);
    let fails = |usable_wh: u32| {
        let store = Store::usual(chemistry, f64::from(usable_wh));
        let prepared = steady(OnBoard { floor_state: spare_share, ..OnBoard::full(store) }, power_w, outlet, hours);
        let falls_short = || lasts_to(&prepared).is_some_and(|lasted_h| lasted_h < hours);
        refused(&prepared).or_else(|| falls_short().then_some(Limit::Energy))
    };
    let Some(mut limit) = fails(0) else { return SizeFor { usable_wh: Some(0), limit: None } };
    if let Some(limit) = fails(MOST_SIZE_WH) {
        return SizeFor { usable_wh: None, limit: Some(limit) };
    }
    // A greater usual store is never worse: what it needs for each Wh that it holds only shrinks.
    let (mut too_small, mut enough) = (0, MOST_SIZE_WH);
    while too_small + 1 < enough {
        let middle = too_small.midpoint(enough);
        match fails(middle) {
            Some(by) => (too_small, limit) = (middle, by),
            None => enough = middle,
        }
    }
    SizeFor { usable_wh: Some(enough), limit: Some(limit) }
}

/// How long charging takes from a state to another one (0 to 1; above 0.995 counts as 0.995, see [`FULL_STATE`]) with a steady
/// source, in W. The sockets' limits, losses, the taper and the store's own discharge count.
pub fn charge_time(store: &Store, from_state: f64, to_state: f64, source: Source, watts: f64) -> ChargeTime {
    let watts = sound(watts, MOST_W);
    let of = |which: Source| if source == which { watts } else { 0.0 };
    let given =
        Given { sun_share: 1.0, vehicle_w: of(Source::Vehicle), mains_w: of(Source::Mains), ..Given::default() };
    let board = OnBoard { panel_w: of(Source::Panels), opening_state: from_state, ..OnBoard::full(store.clone()) };
    let setup = Setup { stores: vec![board], hours: vec![given], ..Setup::default() };
    charging(&Prepared::new(&setup), sound(to_state, FULL_STATE), watts)
}

fn charging(prepared: &Prepared, to_state: f64, watts: f64) -> ChargeTime {
    let mut charge = ChargeTime { hours: None, accepted_w: 0.0, limit: None };
    let hour = prepared.sides.first().and_then(|side| Some((side, side.hours.first()?, *prepared.offers.first()?)));
    let Some((side, entry, offer)) = hour else { return charge };
    let taken = taken(side, entry, 1.0, offer);
    charge.accepted_w = taken.sum_w();
    charge.limit = (charge.accepted_w < watts).then_some(Limit::Input);
    let (rates, wanted_wh) = (rates(side, taken, entry.fixed_wh), side.cell.full_wh * to_state);
    let mut charge_wh = side.opening_wh;
    if charge_wh >= wanted_wh {
        charge.hours = Some(0.0);
    }
    let mut hours = 0.0;
    while charge.hours.is_none() && hours < MOST_RESERVE_H {
        let kept_wh = charge_wh * side.kept_per_hour;
        let until_h = side.cell.hours_until(kept_wh, rates, wanted_wh);
        let after_wh = side.cell.hour(kept_wh, rates).after_wh;
        if until_h <= 1.0 {
            charge.hours = Some(hours + until_h);
        } else if after_wh - charge_wh < LEAST_GAIN_WH {
            break;
        }
        (charge_wh, hours) = (after_wh, hours + 1.0);
    }
    charge
}

/// One draw, all the time.
fn steady(board: OnBoard, power_w: f64, outlet: Outlet, hours: f64) -> Prepared {
    let setup = Setup {
        stores: vec![board],
        draws: vec![Draw { power_w, outlet, ..Draw::default() }],
        hours: vec![Given::default(); whole(least(hours, MOST_RESERVE_H)) + 1],
        cloud_by_day: vec![],
    };
    Prepared::new(&setup)
}

fn refused(prepared: &Prepared) -> Option<Limit> {
    prepared.refused.first().map(|(_, part)| part.limit)
}
