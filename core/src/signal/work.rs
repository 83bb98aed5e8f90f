//! Hours of work of a plan, and what they lack.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::{USUAL_BEGINS_HOUR, USUAL_GOOD_MBIT_S, USUAL_TOO_COLD_C, USUAL_TOO_HOT_C, USUAL_WEAK_MBIT_S};
use super::hours::{Cause, Hours, Lacking, pay, work_minutes};
use crate::assessment::Moment;
use crate::plan::{Estimate, Group, Id, Item, Money, Plan, Signal, Work};
use crate::run::{Day, Timeline};

/// What is around the work, hour by hour from the first hour of the road: what other balances know of it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Around<'a> {
    /// How warm it is inside, in °C. Empty where that was not worked out: then no hour is too cold or too hot.
    pub inside_c: &'a [f64],
    /// Whether what the work needs has power. Empty where that was not worked out: then no hour lacks it.
    pub served: &'a [bool],
}

/// What the work lacks from the day asked on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AtRisk {
    /// Hours that are meant to be worked.
    pub wanted_hours: f64,
    /// Hours that lack nothing.
    pub sure_hours: f64,
    /// Hours that lack something and their pay, by cause; causes without any are left out.
    pub causes: Vec<OfCause>,
    /// The pay of hours that certainly lack something.
    pub certain: Money,
    /// The pay of hours of which it is not known.
    pub unknown: Money,
    /// Place by place, in the order of the route; those that lack nothing are left out.
    pub places: Vec<OfPlace>,
    /// Day by day; those that lack nothing are left out.
    pub days: Vec<OfDay>,
    /// The first hour that certainly lacks something.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_lost: Option<Moment>,
    /// Whether the temperature inside was looked at.
    pub is_warmth_known: bool,
}

/// Hours that lack something for one reason.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OfCause {
    /// Why.
    pub cause: Cause,
    /// How many.
    pub hours: f64,
    /// Their pay.
    pub pay: Money,
    /// The first day that has any.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub first_on: Date,
}

/// What the work at a place lacks.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OfPlace {
    /// The stay, or the day of the week; 0 for none.
    pub place: Id,
    /// Hours that are meant to be worked there.
    pub wanted_hours: f64,
    /// Hours that lack something, by cause.
    pub causes: Vec<OfCause>,
}

/// What the work of a day lacks.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OfDay {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Hours that certainly lack something.
    pub lost_hours: f64,
    /// Hours of which it is not known.
    pub unknown_hours: f64,
    /// The pay of the first.
    pub certain: Money,
    /// The pay of the others.
    pub unknown: Money,
}

impl AtRisk {
    /// Hours of a cause.
    pub fn hours(&self, cause: Cause) -> f64 {
        self.causes.iter().find(|of| of.cause == cause).map_or(0.0, |of| of.hours)
    }

    /// Hours that certainly lack something.
    pub fn lost_hours(&self) -> f64 {
        self.causes.iter().filter(|of| of.cause != Cause::Unknown).fold(0.0, |sum, of| sum + of.hours)
    }

    /// The pay that is certainly not earned, day by day.
    pub fn unearned(&self) -> Vec<(Date, Money)> {
        let lost = self.days.iter().filter(|day| day.certain > Money::ZERO);
        lost.map(|day| (day.on, day.certain)).collect()
    }
}

/// The things that must have power for the work: the one that is stated, or all under the heading of work, as far as they are
/// carried and draw any.
pub fn powered(plan: &Plan) -> impl Iterator<Item = &Item> {
    let is_it = |item: &&Item| match plan.work.works_with {
        Some(id) => item.id == id,
        None => item.group == Group::Work,
    };
    plan.carried().filter(|item| item.draw.is_some()).filter(is_it)
}

/// What goes out with a signal, in Mbit/s: as the work has it, or else as is usual; nothing without one, none where the signal is
/// not known.
///
/// ```
/// use kerbstead_core::plan::{Signal, Work};
/// use kerbstead_core::signal::rate_mbit_s;
/// let work = Work { good_mbit_s: Some(12.0.into()), ..Work::default() };
/// assert_eq!(rate_mbit_s(&work, Signal::Good), Some(12.0.into()));
/// assert_eq!(rate_mbit_s(&work, Signal::Unknown), None);
/// ```
pub fn rate_mbit_s(work: &Work, signal: Signal) -> Option<Estimate<f64>> {
    let usual = |[low, likely, high]: [f64; 3]| Estimate::Range { low, likely, high };
    match signal {
        Signal::Good => Some(work.good_mbit_s.unwrap_or_else(|| usual(USUAL_GOOD_MBIT_S))),
        Signal::Weak => Some(work.weak_mbit_s.unwrap_or_else(|| usual(USUAL_WEAK_MBIT_S))),
        Signal::None => Some(Estimate::Plain(0.0)),
        Signal::Unknown => None,
    }
}

/// What the work on the road lacks from `as_of` on; none where there is no work or no road.
pub(super) fn at_risk(plan: &Plan, as_of: Date, timeline: &Timeline, around: &Around) -> Option<AtRisk> {
    let work = &plan.work;
    let work_hours = work.work_hours.filter(|hours| *hours > 0.0)?;
    let road: Vec<&Day> = timeline.road().collect();
    road.first()?;
    let minutes = wanted_minutes(plan, as_of, &road, work_hours);
    let signal: Vec<Signal> = road.iter().flat_map(|day| [signal_of(plan, day); 24]).collect();
    let (yes, bearable) = (vec![true; minutes.len()], bearable(plan, around));
    let hours = Hours {
        wanted_minutes: &minutes,
        signal: &signal,
        power: if around.served.is_empty() { &yes } else { around.served },
        bearable: if around.inside_c.is_empty() { &yes } else { &bearable },
        weak_is_enough: work.weak_is_enough || work.offline,
    };
    let mut told = told(plan, &road, &hours);
    told.is_warmth_known = !around.inside_c.is_empty();
    Some(told)
}

/// The minutes of each hour of the road that are meant to be worked, from a day on.
fn wanted_minutes(plan: &Plan, as_of: Date, road: &[&Day], work_hours: f64) -> Vec<u32> {
    let day_minutes = work_minutes(plan.work.begins_hour.unwrap_or(USUAL_BEGINS_HOUR), work_hours);
    let mut minutes = vec![0; road.len() * 24];
    for (at, _) in road.iter().enumerate().filter(|(_, day)| day.is_working && day.date >= as_of) {
        for (sum, more) in minutes.iter_mut().skip(at * 24).zip(day_minutes) {
            *sum = (*sum + more).min(60);
        }
    }
    minutes
}

fn signal_of(plan: &Plan, day: &Day) -> Signal {
    if plan.work.offline { Signal::Good } else { day.offer.map_or(Signal::Unknown, |offer| offer.signal) }
}

fn bearable(plan: &Plan, around: &Around) -> Vec<bool> {
    let too_cold_c = plan.work.too_cold_c.unwrap_or(USUAL_TOO_COLD_C);
    let too_hot_c = plan.work.too_hot_c.unwrap_or(USUAL_TOO_HOT_C);
    around.inside_c.iter().map(|inside_c| *inside_c >= too_cold_c && *inside_c <= too_hot_c).collect()
}

fn told(plan: &Plan, road: &[&Day], hours: &Hours) -> AtRisk {
    let per_hour = plan.work.pay_per_hour.unwrap_or(Money::ZERO);
    let digits = plan.minor_digits();
    let (mut all, mut places, mut days) = (Sum::default(), Vec::<(Id, Sum)>::new(), Vec::new());
    for (at, day) in road.iter().enumerate() {
        let lacking = hours.lacking(at * 24..at * 24 + 24);
        all.add(&lacking, day.date);
        let place = day.source.unwrap_or(0);
        if !places.iter().any(|(known, _)| *known == place) {
            places.push((place, Sum::default()));
        }
        places.iter_mut().filter(|(known, _)| *known == place).for_each(|(_, sum)| sum.add(&lacking, day.date));
        if is_short(&lacking) {
            days.push(of_day(day.date, &lacking, per_hour, digits));
        }
    }
    places.retain(|(_, sum)| is_short(&sum.lacking));
    let of_place = |(place, sum): &(Id, Sum)| OfPlace {
        place: *place,
        wanted_hours: in_hours(sum.lacking.wanted_minutes),
        causes: sum.causes(per_hour, digits),
    };
    AtRisk {
        wanted_hours: in_hours(all.lacking.wanted_minutes),
        sure_hours: in_hours(all.lacking.sure_minutes()),
        causes: all.causes(per_hour, digits),
        certain: days.iter().map(|day| day.certain).sum(),
        unknown: days.iter().map(|day| day.unknown).sum(),
        places: places.iter().map(of_place).collect(),
        days,
        first_lost: first_lost(road, hours),
        is_warmth_known: false,
    }
}

fn is_short(lacking: &Lacking) -> bool {
    lacking.sure_minutes() < lacking.wanted_minutes
}

fn of_day(on: Date, lacking: &Lacking, per_hour: Money, digits: u32) -> OfDay {
    let risk = lacking.at_risk(per_hour);
    OfDay {
        on,
        lost_hours: in_hours(lacking.certain_minutes()),
        unknown_hours: risk.hours(Cause::Unknown),
        certain: risk.certain.rounded(digits),
        unknown: risk.unknown.rounded(digits),
    }
}

fn first_lost(road: &[&Day], hours: &Hours) -> Option<Moment> {
    let is_lost = |hour: &usize| hours.cause(*hour).is_some_and(|cause| cause != Cause::Unknown);
    let hour = (0..hours.wanted_minutes.len()).find(is_lost)?;
    Some(Moment::hours_into(road.get(hour / 24)?.date, (hour % 24) as f64))
}

/// What several days lack together, and since when.
#[derive(Default)]
struct Sum {
    lacking: Lacking,
    first_on: [Option<Date>; 5],
}

impl Sum {
    fn add(&mut self, day: &Lacking, on: Date) {
        self.lacking = self.lacking.and(day);
        for (first_on, minutes) in self.first_on.iter_mut().zip(day.minutes) {
            *first_on = first_on.or((minutes > 0).then_some(on));
        }
    }

    fn causes(&self, per_hour: Money, digits: u32) -> Vec<OfCause> {
        let of = |(cause, first_on): (Cause, &Option<Date>)| {
            let minutes = self.lacking.of(cause);
            let pay = pay(per_hour, minutes).rounded(digits);
            Some(OfCause { cause, hours: in_hours(minutes), pay, first_on: (*first_on)? })
        };
        Cause::ALL.into_iter().zip(&self.first_on).filter_map(of).collect()
    }
}

fn in_hours(minutes: u32) -> f64 {
    f64::from(minutes) / 60.0
}
