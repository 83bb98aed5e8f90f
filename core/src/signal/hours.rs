//! Hours of work against signal, power and warmth, and the income that is at risk.
//!
//! ```
//! use kerbstead_core::plan::{Money, Signal};
//! use kerbstead_core::signal::hours::{Cause, Hours, whole_days};
//! let days = [Signal::Good, Signal::None, Signal::Unknown];
//! let signal = whole_days(&days);
//! // Four hours of work each day, from nine on; no power from eleven on.
//! let wanted: Vec<bool> = (0..72).map(|hour| (9..13).contains(&(hour % 24))).collect();
//! let power: Vec<bool> = (0..72).map(|hour| hour % 24 < 11).collect();
//! let hours = Hours { wanted: &wanted, signal: &signal, power: &power, bearable: &[true; 72], weak_is_enough: true };
//! let risk = hours.at_risk("18.50".parse().unwrap());
//! assert_eq!((risk.hours(Cause::NoSignal), risk.hours(Cause::NoPower), risk.hours(Cause::Unknown)), (4, 4, 2));
//! assert_eq!((risk.certain, risk.unknown), (Money::whole(148), Money::whole(37)));
//! ```

use crate::plan::{Money, Signal};

/// Why an hour cannot be worked. An hour that lacks several things counts for the first of this order only: what no charge
/// and no shade mends comes first, and what is only not known comes last, after all that is certain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
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

/// Hours one after another. Where a list is shorter than that of the wanted hours, nobody said.
#[derive(Clone, Copy, Debug)]
pub struct Hours<'a> {
    /// In which one means to work.
    pub wanted: &'a [bool],
    /// The signal in each.
    pub signal: &'a [Signal],
    /// Whether there is power for the work.
    pub power: &'a [bool],
    /// Whether it is neither too hot nor too cold.
    pub bearable: &'a [bool],
    /// Whether the work can be done with a weak signal.
    pub weak_is_enough: bool,
}

/// What may not be earned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Risk {
    /// Hours one means to work.
    pub wanted_hours: u32,
    /// Hours that lack something, by cause in the order of [`Cause::ALL`], each counted once.
    pub lacking_hours: [u32; 5],
    /// Pay of the hours that certainly lack something.
    pub certain: Money,
    /// Pay of the hours of which it is not known.
    pub unknown: Money,
}

impl Risk {
    /// Hours of a cause.
    pub fn hours(&self, cause: Cause) -> u32 {
        let [no_signal, weak, no_power, unbearable, unknown] = self.lacking_hours;
        match cause {
            Cause::NoSignal => no_signal,
            Cause::WeakSignal => weak,
            Cause::NoPower => no_power,
            Cause::Unbearable => unbearable,
            Cause::Unknown => unknown,
        }
    }

    /// Hours that can be worked for certain.
    pub fn sure_hours(&self) -> u32 {
        self.wanted_hours.saturating_sub(self.lacking_hours.iter().sum())
    }
}

impl Hours<'_> {
    /// Why an hour cannot be worked; none if it can, or is not wanted.
    pub fn cause(&self, hour: usize) -> Option<Cause> {
        if !self.wanted.get(hour).copied().unwrap_or_default() {
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

    /// What may not be earned at a pay for an hour.
    pub fn at_risk(&self, pay_per_hour: Money) -> Risk {
        let mut risk = Risk { wanted_hours: 0, lacking_hours: [0; 5], certain: Money::ZERO, unknown: Money::ZERO };
        for hour in 0..self.wanted.len() {
            let cause = self.cause(hour);
            risk.wanted_hours += u32::from(self.wanted.get(hour) == Some(&true));
            for (of, lacking_hours) in Cause::ALL.into_iter().zip(&mut risk.lacking_hours) {
                *lacking_hours += u32::from(cause == Some(of));
            }
        }
        let unknown_hours = risk.hours(Cause::Unknown);
        let lacking_hours: u32 = risk.lacking_hours.iter().sum();
        risk.certain = pay_per_hour.times(lacking_hours - unknown_hours);
        risk.unknown = pay_per_hour.times(unknown_hours);
        risk
    }

    /// What a cause puts at risk, at a pay for an hour.
    pub fn at_risk_by(&self, cause: Cause, pay_per_hour: Money) -> Money {
        pay_per_hour.times(self.at_risk(pay_per_hour).hours(cause))
    }
}

/// The signal of whole days, hour by hour.
pub fn whole_days(days: &[Signal]) -> Vec<Signal> {
    days.iter().flat_map(|signal| [*signal; 24]).collect()
}
