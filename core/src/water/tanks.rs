//! What water is kept in on a route, and what each day asks of it: the question that [`super::course`] answers.
//!
//! Everything is counted in whole millilitres, and the toilet in thousandths of a person-day, so that what was there and came
//! is what went and is left, to the last one.
//!
//! ```
//! use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
//! let day = Day { wants: Use::new(7.0, 5.0, 2.0), ..Day::default() };
//! let setup = Setup {
//!     fresh: vec![Tank::full(20.0), Tank::full(10.0)],
//!     grey: vec![Tank::empty(15.0)],
//!     toilet: Some(Tank::empty(7.0)), // person-days
//!     days: vec![day; 10],
//! };
//! assert_eq!(setup.fresh[0].capacity_ml, 20_000);
//! ```

use super::constants::MOST_ML;
use crate::energy::sound;

/// A can, a tank or a toilet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tank {
    /// What it holds: ml, or thousandths of a person-day. More than 1,000,000,000 counts as that.
    pub capacity_ml: u64,
    /// What is in it when the first day begins; no more than it holds.
    pub opening_ml: u64,
}

impl Tank {
    /// A full can of so many litres.
    pub fn full(capacity_l: f64) -> Self {
        Self { capacity_ml: milli(capacity_l), opening_ml: milli(capacity_l) }
    }

    /// An empty one, or an empty toilet for so many person-days.
    pub fn empty(capacity_l: f64) -> Self {
        Self { capacity_ml: milli(capacity_l), opening_ml: 0 }
    }

    /// Within bounds.
    pub(super) fn sound(self) -> Self {
        let capacity_ml = self.capacity_ml.min(MOST_ML);
        Self { capacity_ml, opening_ml: self.opening_ml.min(capacity_ml) }
    }
}

/// What a day asks for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Use {
    /// Fresh water, in ml.
    pub fresh_ml: u64,
    /// What of it becomes used water, in ml; no more than the fresh.
    pub grey_ml: u64,
    /// Thousandths of a person-day on the toilet: 2,000 for two people and a whole day.
    pub toilet: u64,
}

impl Use {
    /// By litres of fresh and used water, and person-days on the toilet.
    pub fn new(fresh_l: f64, grey_l: f64, person_days: f64) -> Self {
        Self { fresh_ml: milli(fresh_l), grey_ml: milli(grey_l), toilet: milli(person_days) }
    }

    /// Within bounds.
    pub(super) fn sound(self) -> Self {
        let fresh_ml = self.fresh_ml.min(MOST_ML);
        Self { fresh_ml, grey_ml: self.grey_ml.min(fresh_ml), toilet: self.toilet.min(MOST_ML) }
    }
}

/// A day of the route.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[allow(
    clippy::struct_excessive_bools,
    reason = "each is a plain yes or no about a place, of which any may be together"
)]
pub struct Day {
    /// What is asked for if somebody is there.
    pub wants: Use,
    /// There is a tap: the day's water comes from it, and every can is full in the evening.
    pub refill: bool,
    /// Used water can be poured away: none is left in the evening.
    pub empty_grey: bool,
    /// The toilet can be emptied, or bags be had: it is empty in the evening.
    pub empty_toilet: bool,
    /// There is a toilet: the own one is not used.
    pub public_toilet: bool,
    /// Nobody is there: nothing is used. What can be filled and emptied is all the same.
    pub away: bool,
}

impl Day {
    /// What is asked for of the own vessels.
    pub(crate) fn asks(&self) -> Use {
        let wants = self.wants.sound();
        match (self.away, self.public_toilet) {
            (true, _) => Use::default(),
            (false, true) => Use { toilet: 0, ..wants },
            (false, false) => wants,
        }
    }

    /// The same day, at whose place one does not stop.
    pub(super) fn driven_by(self) -> Self {
        Self { refill: false, empty_grey: false, empty_toilet: false, ..self }
    }

    /// Whether stopping does anything.
    pub(super) fn may_stop(&self) -> bool {
        self.refill || self.empty_grey || self.empty_toilet
    }
}

/// Vessels and a route.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Setup {
    /// Cans of fresh water, in the order in which they are emptied.
    pub fresh: Vec<Tank>,
    /// Tanks of used water, in the order in which they fill. None: used water is not kept, and nothing is said about it.
    pub grey: Vec<Tank>,
    /// The toilet's room, in thousandths of a person-day. None: there is none, and nothing is said about it.
    pub toilet: Option<Tank>,
    /// The days, one after another.
    pub days: Vec<Day>,
}

/// Thousandths of a number, rounded; what is not a number or below nothing is nothing.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole, and within bounds")]
pub(super) fn milli(value: f64) -> u64 {
    libm::round(sound(value, MOST_ML as f64 / 1_000.0) * 1_000.0) as u64
}
