//! The demo plan: two seasonal orchard workers follow the harvest north in a plain van. People, things, places and
//! prices are invented; its money falls just short once, its power runs out at one stay, its water holds.

mod ids;
#[cfg(test)]
mod read;

use jiff::civil::Date;
use serde_json::Value;

pub(super) use ids::number;

use super::{Plain, Plan, date_text};
use crate::share::{Parcel, open};

/// The plan as a link tells it, a third of what `demo.txt` takes; a test makes it of that.
const DEMO: &str = include_str!("demo.link");

/// How its days begin.
const YEAR: &str = "2027-";

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
    let year = first_day.strip_suffix("03-01").unwrap_or(YEAR);
    let Ok(Parcel::Plan { mut file, .. }) = open(DEMO.trim_end()) else { return Plan::default() };
    move_days(&mut file, year);
    Plan::from_plain(&file).unwrap_or_default()
}

/// Puts all days into another year. No name begins as they do.
fn move_days(value: &mut Value, year: &str) {
    match value {
        Value::String(text) => {
            if let Some(day) = text.strip_prefix(YEAR) {
                *text = [year, day].concat();
            }
        }
        Value::Array(list) => list.iter_mut().for_each(|entry| move_days(entry, year)),
        Value::Object(fields) => fields.values_mut().for_each(|field| move_days(field, year)),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::{DEMO, YEAR, demo_plan, read};
    use crate::plan::Plain;
    use crate::share::{Parcel, Scope, seal};

    const TEXT: &str = include_str!("demo.txt");

    #[test]
    fn the_demo_is_what_its_lines_say() {
        let plan = read::plan(TEXT, YEAR).unwrap_or_default();
        let link = seal(&Parcel::of(&plan.to_plain(), Scope::Whole, true)).unwrap_or_default();
        assert!(DEMO.trim_end() == link, "demo.txt has changed: write this into demo.link\n{link}");
        assert_eq!(demo_plan(), plan);
        assert!(plan.kit.len() > 10, "a line of demo.txt is not understood");
        assert!(read::plan("[kit]\nCan: need perhaps", YEAR).is_none());
    }
}
