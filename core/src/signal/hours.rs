//! Hours of work against signal, power and warmth, and the income that is at risk.
//!
//! ```
//! use kerbstead_core::plan::{Money, Signal};
//! use kerbstead_core::signal::hours::{Cause, Hours, whole_days};
//! let days = [Signal::Good, Signal::None, Signal::Unknown];
//! let signal = whole_days(&days);
//! // Four hours of work each day, from nine on; no power from eleven on.
//! let wanted_minutes: Vec<u32> = (0..72).map(|hour| if (9..13).contains(&(hour % 24)) { 60 } else { 0 }).collect();
//! let power: Vec<bool> = (0..72).map(|hour| hour % 24 < 11).collect();
//! let hours = Hours {
//!     wanted_minutes: &wanted_minutes, signal: &signal, power: &power, bearable: &[true; 72], weak_is_enough: true,
//! };
//! let risk = hours.at_risk("18.50".parse().unwrap());
//! assert_eq!((risk.hours(Cause::NoSignal), risk.hours(Cause::NoPower), risk.hours(Cause::Unknown)), (4.0, 4.0, 2.0));
//! assert_eq!((risk.certain, risk.unknown), (Money::whole(148), Money::whole(37)));
//! ```

use std::ops::Range;

use serde::Serialize;

use super::sound;
use crate::plan::{Money, Signal, decimal};

/// Why an hour cannot be worked. An hour that lacks several things counts for the first of this order only: what no charge
/// and no shade mends comes first, and what is only not known comes last, after all that is certain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// There is no signal.
    NoSignal,
    /// It is weak, where that is not enough.
    WeakSignal,
    /// There is no power.
    NoPower,
    /// It is too hot or too cold.
    Unbearable,
    /// Nobody knows the signal, or nobody said anything of the rest.
    Unknown,
}

impl Cause {
    /// All, in their order.
    pub const ALL: [Self; 5] = [Self::NoSignal, Self::WeakSignal, Self::NoPower, Self::Unbearable, Self::Unknown];
}

/// Hours one after another. Where a list is shorter than that of the wanted minutes, nobody said.
#[derive(Clone, Copy, Debug)]
pub struct Hours<'a> {
    /// How many minutes of each one means to work: 0 to 60.
    pub wanted_minutes: &'a [u32],
    /// The signal in each.
    pub signal: &'a [Signal],
    /// Whether there is power for the work.
    pub power: &'a [bool],
    /// Whether it is neither too hot nor too cold.
    pub bearable: &'a [bool],
    /// Whether the work can be done with a weak signal.
    pub weak_is_enough: bool,
}

/// Time that cannot be worked. A minute that lacks several things counts once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Lacking {
    /// Minutes one means to work.
    pub wanted_minutes: u32,
    /// Minutes that lack something, by cause in the order of [`Cause::ALL`].
    pub minutes: [u32; 5],
}

/// What may not be earned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Risk {
    /// The time it is about.
    pub lacking: Lacking,
    /// Pay of the time that certainly lacks something.
    pub certain: Money,
    /// Pay of the time of which it is not known.
    pub unknown: Money,
}

impl Lacking {
    fn add(&mut self, minutes: u32, cause: Option<Cause>) {
        self.wanted_minutes += minutes;
        for (of, sum) in Cause::ALL.into_iter().zip(&mut self.minutes) {
            *sum += if cause == Some(of) { minutes } else { 0 };
        }
    }

    /// Both together.
    #[must_use]
    pub fn and(mut self, other: &Self) -> Self {
        self.wanted_minutes += other.wanted_minutes;
        for (sum, minutes) in self.minutes.iter_mut().zip(other.minutes) {
            *sum += minutes;
        }
        self
    }

    /// Minutes of a cause.
    pub fn of(&self, cause: Cause) -> u32 {
        let [no_signal, weak, no_power, unbearable, unknown] = self.minutes;
        match cause {
            Cause::NoSignal => no_signal,
            Cause::WeakSignal => weak,
            Cause::NoPower => no_power,
            Cause::Unbearable => unbearable,
            Cause::Unknown => unknown,
        }
    }

    /// Minutes that certainly lack something.
    pub fn certain_minutes(&self) -> u32 {
        self.minutes.iter().sum::<u32>() - self.of(Cause::Unknown)
    }

    /// Minutes that can be worked for certain.
    pub fn sure_minutes(&self) -> u32 {
        self.wanted_minutes.saturating_sub(self.minutes.iter().sum())
    }

    /// What it puts at risk, at a pay for an hour.
    pub fn at_risk(self, pay_per_hour: Money) -> Risk {
        Risk {
            lacking: self,
            certain: pay(pay_per_hour, self.certain_minutes()),
            unknown: pay(pay_per_hour, self.of(Cause::Unknown)),
        }
    }
}

impl Risk {
    /// Hours of a cause.
    pub fn hours(&self, cause: Cause) -> f64 {
        f64::from(self.lacking.of(cause)) / 60.0
    }
}

/// Pay for so many minutes: that of whole hours, and a part of an hour's; unrounded.
pub fn pay(per_hour: Money, minutes: u32) -> Money {
    let rest = per_hour.times(minutes % 60).decimal();
    per_hour.times(minutes / 60) + decimal::over(rest, 60.into()).map_or(Money::ZERO, Money::new)
}

impl Hours<'_> {
    /// Why an hour cannot be worked; none if it can, or is not wanted.
    pub fn cause(&self, hour: usize) -> Option<Cause> {
        if self.wanted_minutes.get(hour).is_none_or(|minutes| *minutes == 0) {
            return None;
        }
        let signal = self.signal.get(hour).copied().unwrap_or_default();
        let (power, bearable) = (self.power.get(hour), self.bearable.get(hour));
        match () {
            () if signal == Signal::None => Some(Cause::NoSignal),
            () if signal == Signal::Weak && !self.weak_is_enough => Some(Cause::WeakSignal),
            () if power == Some(&false) => Some(Cause::NoPower),
            () if bearable == Some(&false) => Some(Cause::Unbearable),
            () if signal == Signal::Unknown || power.is_none() || bearable.is_none() => Some(Cause::Unknown),
            () => None,
        }
    }

    /// What some of the hours lack.
    pub fn lacking(&self, hours: Range<usize>) -> Lacking {
        let mut lacking = Lacking::default();
        for hour in hours {
            lacking.add(self.wanted_minutes.get(hour).map_or(0, |minutes| (*minutes).min(60)), self.cause(hour));
        }
        lacking
    }

    /// What may not be earned at a pay for an hour.
    pub fn at_risk(&self, pay_per_hour: Money) -> Risk {
        self.lacking(0..self.wanted_minutes.len()).at_risk(pay_per_hour)
    }

    /// What a cause puts at risk, at a pay for an hour.
    pub fn at_risk_by(&self, cause: Cause, pay_per_hour: Money) -> Money {
        pay(pay_per_hour, self.lacking(0..self.wanted_minutes.len()).of(cause))
    }
}

/// The minutes of each hour of a day's work that begins at an hour of the day and lasts so many hours, from the day's first
/// hour on; what is after midnight is in hours 24 and on. Both are taken to the minute, and it lasts a day at the most.
///
/// ```
/// use kerbstead_core::signal::hours::work_minutes;
/// let minutes = work_minutes(8.5, 2.25);
/// assert_eq!((minutes[7], minutes[8], minutes[9], minutes[10], minutes[11]), (0, 30, 60, 45, 0));
/// ```
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within a day")]
pub fn work_minutes(begins_hour: f64, hours: f64) -> [u32; 48] {
    let minutes = |hours: f64| libm::round(sound(hours, 24.0) * 60.0) as u32;
    let from = minutes(begins_hour);
    let until = from + minutes(hours);
    let mut by_hour = [0; 48];
    for (hour, minutes) in (0..).zip(&mut by_hour) {
        let (begins, ends): (u32, u32) = (hour * 60, hour * 60 + 60);
        *minutes = until.min(ends).saturating_sub(from.max(begins));
    }
    by_hour
}

/// The signal of whole days, hour by hour.
pub fn whole_days(days: &[Signal]) -> Vec<Signal> {
    days.iter().flat_map(|signal| [*signal; 24]).collect()
}
