//! The demo plan: two seasonal orchard workers follow the harvest north in a plain van. People, things, places and
//! prices are invented; its money falls just short once, its power runs out at one stay, its water holds.

mod ids;
mod kit;
mod money;
mod route;
mod row;

use jiff::civil::Date;

pub(super) use ids::number;

use super::{Calendar, Estimate, Mode, Plan, SizeClass, Vehicle};

/// The demo plan of 2027.
///
/// ```
/// use kerbstead_core::plan::{demo_plan, validate};
/// assert!(validate(&demo_plan()).is_empty());
/// ```
pub fn demo_plan() -> Plan {
    plan_of(Year(2027))
}

/// The demo plan of the first year whose days at home begin after `today`, so that all of it lies ahead. At the very
/// end of the calendar, where no such year is left, that of the last year.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::demo_plan_after;
/// assert_eq!(demo_plan_after(date(2029, 6, 30)).calendar.starts_on, Some(date(2030, 3, 1)));
/// ```
pub fn demo_plan_after(today: Date) -> Plan {
    let this = Year(today.year());
    let year = if first_day(this) > today { this } else { Year(this.0.saturating_add(1).min(Date::MAX.year())) };
    plan_of(year)
}

/// The year everything happens in. All days lie between March and September, so that leap years change nothing.
#[derive(Clone, Copy)]
struct Year(i16);

impl Year {
    fn on(self, month: i8, day: i8) -> Date {
        Date::new(self.0, month, day).unwrap_or(Date::ZERO)
    }
}

fn first_day(year: Year) -> Date {
    year.on(3, 1)
}

fn plan_of(year: Year) -> Plan {
    let mut plan = Plan {
        title: "North with the harvest".to_owned(),
        people: 2,
        calendar: Calendar {
            starts_on: Some(first_day(year)),
            leaves_on: Some(year.on(4, 19)),
            ends_on: None,
            mode: Mode::Stays,
        },
        vehicle: vehicle(),
        purse: money::purse(),
        kit: kit::items(year),
        belongings: money::belongings(year),
        incomes: money::incomes(year),
        costs: money::costs(),
        stays: route::stays(),
        water_uses: route::water_uses(),
        ..Plan::default()
    };
    number(&mut plan);
    plan
}

fn vehicle() -> Vehicle {
    Vehicle {
        size: SizeClass::HighRoof,
        inside_length_mm: Some(3_120.0),
        inside_width_mm: Some(1_740.0),
        inside_height_mm: Some(1_860.0),
        empty_mass_kg: Some(1_985.0),
        gross_limit_kg: Some(3_300.0),
        ..Vehicle::default()
    }
}

/// Low, likely and high.
fn about<T>(low: T, likely: T, high: T) -> Estimate<T> {
    Estimate::Range { low, likely, high }
}
