//! What portable stores give and take, hour by hour: an engine that knows no plan.
//!
//! - [`store`]: a portable store with its limits; [`draw`]: what hangs on it, of which [`fridge`] and [`heat`] are worked
//!   out from physics;
//! - [`setup`]: stores, draws and the hours they are run through;
//! - [`run`]: the hours one after another, exactly within each (`hour`); what cannot be served, and which limit says so;
//! - [`chance`]: many runs by chance, with numbers of [`spread`];
//! - [`worlds`]: runs whose days are drawn elsewhere;
//! - [`sizing`]: the least panel and the least store; [`stops`]: where to charge on the way;
//! - [`quick`]: how long, how large and how soon, from a few fields; [`tonight`]: from a reading on, when it runs out (`lasting`)
//!   and what to go without.
//!
//! `prepare` works out once what does not depend on the charge: what each store must give in each hour, and what its
//! outlets refuse. Each run then walks over these tables.

pub mod chance;
mod chances;
pub mod constants;
mod curves;
pub mod draw;
pub mod fridge;
pub mod heat;
mod hour;
mod lanes;
mod lasting;
mod outlets;
mod prepare;
pub mod quick;
pub mod run;
pub mod setup;
mod several;
pub mod sizing;
pub mod spread;
mod step;
pub mod stops;
pub mod store;
pub mod tonight;
pub mod worlds;

/// A number from 0 to `most`, whatever was typed: what is not a number, or below zero, becomes zero.
pub(crate) fn sound(value: f64, most: f64) -> f64 {
    if value > 0.0 { least(value, most) } else { 0.0 }
}

/// A number between bounds; what is not a number becomes the lower one.
pub(crate) fn within(value: f64, low: f64, high: f64) -> f64 {
    if value > low { least(value, high) } else { low }
}

/// The smaller of two numbers, in one instruction; the second if one of them is not a number.
#[inline]
fn least(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The greater of two, likewise.
#[inline]
fn most(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// The whole part of a number that is not negative; of what is, or is not a number, 0.
#[inline]
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "casts saturate, which is what is said")]
fn whole(value: f64) -> usize {
    value as usize
}
