//! Counting in days and months, against the date crate itself.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use jiff::{Span, ToSpan};
use kerbstead_core::plan::{add_days, add_months, date_text, days_between, read_date, weekday};

fn weekday_of_crate(day: Date) -> u32 {
    day.weekday().to_monday_zero_offset().unsigned_abs().into()
}

#[test]
fn every_day_of_four_hundred_years_has_its_neighbours_its_weekday_and_its_text() {
    let first = date(1799, 12, 31);
    let mut day = first;
    for count in 0..146_100 {
        assert_eq!(days_between(first, day), count);
        assert_eq!(days_between(day, first), -count);
        assert_eq!(add_days(first, count), Some(day));
        assert_eq!(add_days(day, -count), Some(first));
        assert_eq!(weekday(day), weekday_of_crate(day));
        assert_eq!(read_date(&date_text(day)), Some(day));
        day = day.tomorrow().unwrap();
    }
}

#[test]
fn years_before_zero_count_as_in_the_crate() {
    for year in (-9_999..=9_999).step_by(37) {
        for (month, day) in [(1, 1), (2, 28), (3, 1), (12, 31)] {
            let day = date(year, month, day);
            assert_eq!(days_between(date(0, 3, 1), day), date(0, 3, 1).until(day).unwrap().get_days());
            assert_eq!(add_days(day, 1), day.tomorrow().ok());
            assert_eq!(add_days(day, -1), day.yesterday().ok());
            assert_eq!(weekday(day), weekday_of_crate(day));
        }
    }
}

#[test]
fn months_are_stepped_as_in_the_crate() {
    for first in [date(2027, 1, 31), date(2028, 2, 29), date(2027, 11, 30), date(-1, 12, 31), date(9_990, 8, 31)] {
        for months in -500..500_i32 {
            let expected = first.checked_add(months.months()).ok();
            assert_eq!(add_months(first, months), expected, "{first} and {months} months");
        }
        for years in -40..40_i32 {
            assert_eq!(add_months(first, 12 * years), first.checked_add(years.years()).ok());
        }
    }
}

#[test]
fn beyond_the_calendar_there_is_nothing() {
    assert_eq!(add_days(Date::MAX, 1), None);
    assert_eq!(add_days(Date::MIN, -1), None);
    assert_eq!(add_months(Date::MAX, 1), None);
    assert_eq!(add_months(Date::MIN, -1), None);
    assert_eq!(add_days(Date::MIN, days_between(Date::MIN, Date::MAX)), Some(Date::MAX));
    let widest: Span = Date::MIN.until(Date::MAX).unwrap();
    assert_eq!(days_between(Date::MIN, Date::MAX), widest.get_days());
    for count in [i32::MIN, i32::MIN + 1, -1_000_000_000, 1_000_000_000, i32::MAX - 1, i32::MAX] {
        for day in [Date::MIN, Date::ZERO, date(2027, 5, 1), Date::MAX] {
            assert_eq!(add_days(day, count), None);
            assert_eq!(add_months(day, count), None);
        }
    }
}
