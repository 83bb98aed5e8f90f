//! What comes in, hour by hour: from the vehicle while driving, and from sockets.

use super::constants::{DRIVE_FROM_HOUR, MAINS_FROM_HOUR, SOCKET_LASTING_SHARE};
use crate::energy::setup::Given;
use crate::plan::{Plan, Vehicle};
use crate::run::Day;

/// The most that is on offer anywhere, in W: sockets of which nothing is known have no limit but the store's.
pub(super) const NO_LIMIT_W: f64 = 1e6;

/// What a vehicle socket gives for hours: volts by amperes of the fuse, less what a fuse does not bear for long.
pub(super) fn socket_w(vehicle: &Vehicle) -> f64 {
    vehicle.socket_volts.max(0.0) * vehicle.socket_fuse_a.max(0.0) * SOCKET_LASTING_SHARE
}

/// Share of an hour of a day in which the van drives.
pub(super) fn driving_share(day: &Day, hour: usize) -> f64 {
    overlap(DRIVE_FROM_HOUR.min(24.0 - day.drive_hours), day.drive_hours, hour as f64)
}

/// The hours of days, without their sky.
pub(super) fn hours(plan: &Plan, days: &[&Day]) -> Vec<Given> {
    let socket_w = socket_w(&plan.vehicle);
    let mut hours = vec![Given::default(); days.len() * 24];
    for (at, given) in hours.iter_mut().enumerate() {
        let Some(day) = days.get(at / 24) else { continue };
        given.vehicle_hour = driving_share(day, at % 24);
        given.vehicle_w = socket_w * given.vehicle_hour;
        (given.mains_w, given.mains_hour) = (0.0, 0.0);
    }
    for (number, day) in days.iter().enumerate() {
        if let Some((offer, length)) = day.offer.and_then(|offer| Some((offer, offer.mains_hours?.likely()))) {
            let from = offer.mains_from_hour.unwrap_or(MAINS_FROM_HOUR);
            let limit_w = offer.mains_w.unwrap_or(NO_LIMIT_W);
            plug_in(&mut hours, number, (from, length), limit_w);
        }
        for place in plan.charging.iter().filter(|place| place.in_use && place.is_there(day.date, day.source)) {
            plug_in(&mut hours, number, (place.from_hour(), place.hours()), place.gives_w.unwrap_or(NO_LIMIT_W));
        }
    }
    hours
}

/// A socket for a span of a day, which may last past midnight.
fn plug_in(hours: &mut [Given], day: usize, (from, length): (f64, f64), limit_w: f64) {
    for (at, given) in hours.iter_mut().enumerate().skip(day * 24).take(48) {
        let share = overlap(from, length.clamp(0.0, 24.0), at as f64 - (day * 24) as f64);
        if share > 0.0 {
            given.mains_w = (given.mains_w + limit_w * share).min(NO_LIMIT_W);
            given.mains_hour = (given.mains_hour + share).min(1.0);
        }
    }
}

/// Share of the hour beginning at `hour` that lies in a span of `length` hours from `from`.
fn overlap(from: f64, length: f64, hour: f64) -> f64 {
    ((from + length).min(hour + 1.0) - from.max(hour)).clamp(0.0, 1.0)
}
