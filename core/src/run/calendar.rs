//! The calendar: days at home, then the route, one entry a day.

use jiff::civil::Date;

use crate::assessment::Moment;
use crate::plan::civil::day_after;
use crate::plan::{Estimate, Id, Mode, Offer, Plan, Stay, WeekDay, WeekdayKind, add_days, days_between, weekday};

/// The most days a run covers: three years and a few days. Longer plans are cut there, and validation says so.
pub const MOST_DAYS: u32 = 1_100;

/// The days of a plan in order, without a gap.
#[derive(Clone, Debug, PartialEq)]
pub struct Timeline<'a> {
    /// At least one day.
    pub days: Vec<Day<'a>>,
}

/// One civil day of the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Day<'a> {
    /// The date.
    pub date: Date,
    /// At home or on the road.
    pub phase: Phase,
    /// Whether somebody works.
    pub is_working: bool,
    /// Hours driven.
    pub drive_hours: f64,
    /// Distance driven.
    pub drive_km: f64,
    /// What the place of the night offers; at home, nothing is needed.
    pub offer: Option<&'a Offer>,
    /// The stay or day of the week it comes from.
    pub source: Option<Id>,
}

/// The part of the plan a day belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Before leaving.
    Home,
    /// From the day of leaving.
    Road,
}

impl<'a> Timeline<'a> {
    /// The days of a plan. Without a first day it begins on `as_of`; without a day of leaving it is all home and ends
    /// with the last dated movement of money.
    pub fn new(plan: &'a Plan, as_of: Date) -> Self {
        let leaves_on = plan.calendar.leaves_on;
        let mut starts_on = plan.calendar.starts_on.unwrap_or_else(|| leaves_on.map_or(as_of, |day| day.min(as_of)));
        if let Some(leaves_on) = leaves_on {
            starts_on = starts_on.min(leaves_on);
        }
        let mut days = Vec::new();
        let home_ends = leaves_on.unwrap_or_else(|| day_after(last_dated(plan).unwrap_or(as_of).max(as_of)));
        push_home(&mut days, starts_on, home_ends);
        if let Some(leaves_on) = leaves_on {
            match plan.calendar.mode {
                Mode::Stays => push_stays(&mut days, leaves_on, &plan.stays),
                Mode::Week => push_weeks(&mut days, leaves_on, plan.calendar.ends_on, &plan.week),
            }
        }
        if days.is_empty() {
            days.push(at_home(starts_on));
        }
        Self { days }
    }

    /// The first day.
    pub fn starts_on(&self) -> Date {
        self.days.first().map_or(Date::ZERO, |day| day.date)
    }

    /// The last day.
    pub fn ends_on(&self) -> Date {
        self.days.last().map_or(Date::ZERO, |day| day.date)
    }

    /// The position of a date, if the timeline has it.
    pub fn index_of(&self, date: Date) -> Option<usize> {
        let days = days_between(self.starts_on(), date);
        usize::try_from(days).ok().filter(|index| *index < self.days.len())
    }

    /// The position of the first day that is not before `as_of`; beyond the end when the plan is over.
    pub fn index_from(&self, as_of: Date) -> usize {
        usize::try_from(days_between(self.starts_on(), as_of)).unwrap_or(0)
    }

    /// Whether the days at home alone are more than a run covers.
    pub fn is_cut_at_home(&self) -> bool {
        is_full(&self.days) && self.days.last().is_some_and(|day| day.phase == Phase::Home)
    }

    /// The days on the road.
    pub fn road(&self) -> impl Iterator<Item = &Day<'a>> {
        self.days.iter().filter(|day| day.phase == Phase::Road)
    }
}

fn last_dated(plan: &Plan) -> Option<Date> {
    let items = plan.kit.iter().flat_map(|item| {
        [
            item.buy_on.or(item.needed_on),
            item.sale.and_then(|sale| sale.on),
            item.returned.and_then(|returned| returned.on),
        ]
    });
    let belongings = plan.belongings.iter().map(|belonging| belonging.on);
    let incomes = plan.incomes.iter().map(|income| income.on);
    let purchase = &plan.purchase;
    let van = [purchase.pay_on, purchase.deposit_on, purchase.registration_on];
    let loans = plan.loans.iter().flat_map(|loan| [loan.drawn_on, loan.first_payment_on, loan.paid_off_on]);
    let receipts = plan.receipts.iter().map(|receipt| receipt.on);
    items.chain(belongings).chain(receipts).chain(incomes).chain(van).chain(loans).flatten().max()
}

fn is_full(days: &[Day]) -> bool {
    days.len() >= MOST_DAYS as usize
}

fn at_home<'a>(date: Date) -> Day<'a> {
    Day { date, phase: Phase::Home, is_working: false, drive_hours: 0.0, drive_km: 0.0, offer: None, source: None }
}

fn push_home(days: &mut Vec<Day>, from: Date, until: Date) {
    let mut date = from;
    while date < until && !is_full(days) {
        days.push(at_home(date));
        date = day_after(date);
    }
}

fn push_stays<'a>(days: &mut Vec<Day<'a>>, leaves_on: Date, stays: &'a [Stay]) {
    let mut date = leaves_on;
    for stay in stays {
        for night in 0..stay.nights {
            if is_full(days) {
                return;
            }
            let arrives = night == 0;
            let hours = |estimate: Option<Estimate<f64>>| if arrives { likely(estimate) } else { 0.0 };
            days.push(Day {
                date,
                phase: Phase::Road,
                is_working: weekday(date) < stay.working_days_per_week,
                drive_hours: hours(stay.drive_hours).clamp(0.0, 24.0),
                drive_km: hours(stay.drive_km).max(0.0),
                offer: Some(&stay.offers),
                source: Some(stay.id),
            });
            let Some(next) = add_days(date, 1) else { return };
            date = next;
        }
    }
}

fn push_weeks<'a>(days: &mut Vec<Day<'a>>, leaves_on: Date, ends_on: Option<Date>, week: &'a [WeekDay]) {
    let Some(ends_on) = ends_on else { return };
    if week.is_empty() {
        return;
    }
    let mut date = leaves_on;
    while date < ends_on && !is_full(days) {
        let day = week.iter().find(|day| day.weekday as u32 == weekday(date));
        days.push(Day {
            date,
            phase: Phase::Road,
            is_working: day.is_some_and(|day| day.kind == WeekdayKind::Working),
            drive_hours: likely(day.and_then(|day| day.drive_hours)).clamp(0.0, 24.0),
            drive_km: likely(day.and_then(|day| day.drive_km)).max(0.0),
            offer: day.map(|day| &day.offers),
            source: day.map(|day| day.id),
        });
        date = day_after(date);
    }
}

fn likely(estimate: Option<Estimate<f64>>) -> f64 {
    estimate.map_or(0.0, |estimate| estimate.likely()).max(0.0)
}

/// Where the hours of the road lie in time.
#[derive(Clone, Copy)]
pub(crate) struct Span {
    from: Date,
    /// The first hour that is ahead, counted from the first on the road.
    pub first_hour: usize,
}

impl Span {
    /// Of a road that begins on a day, as of another.
    pub fn new(from: Date, as_of: Date) -> Self {
        let days = usize::try_from(days_between(from, as_of)).unwrap_or(0);
        Self { from, first_hour: days * 24 }
    }

    /// So far into an hour.
    pub fn moment(self, hour: usize, into_h: f64) -> Moment {
        let on = i32::try_from(hour / 24).ok().and_then(|days| add_days(self.from, days));
        Moment::hours_into(on.unwrap_or(self.from), (hour % 24) as f64 + into_h)
    }
}
