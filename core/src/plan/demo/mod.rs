//! The demo plan: two seasonal orchard workers follow the harvest north in a plain van. People, things, places and
//! prices are invented; its money falls just short once, its power runs out at one stay, its water holds.

mod ids;
mod read;

use jiff::civil::Date;

pub(super) use ids::number;

use super::{Plan, date_text};

const DEMO: &str = include_str!("demo.txt");

/// The demo plan of 2027.
///
/// ```
/// use kerbstead_core::plan::{demo_plan, validate};
/// assert!(validate(&demo_plan()).is_empty());
/// ```
pub fn demo_plan() -> Plan {
    plan_of(2027)
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
    let year = today.year();
    let is_ahead = first_day(year) > today;
    plan_of(if is_ahead { year } else { year.saturating_add(1).min(Date::MAX.year()) })
}

fn first_day(year: i16) -> Date {
    Date::new(year, 3, 1).unwrap_or(Date::ZERO)
}

/// The plan with all days in one year. They lie between March and September, so that leap years change nothing.
fn plan_of(year: i16) -> Plan {
    let first_day = date_text(first_day(year));
    // A test reads every line of it.
    first_day.strip_suffix("03-01").and_then(|year| read::plan(DEMO, year)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_line_of_the_demo_is_understood() {
        assert!(super::read::plan(super::DEMO, "2027-").is_some());
        assert!(super::read::plan("[kit]\nCan: need perhaps", "2027-").is_none());
    }
}
