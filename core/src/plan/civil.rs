//! Civil dates as text, YEAR-MONTH-DAY as ISO 8601 has them, and counting in days and months.
//!
//! Written here because the date crate's spans, errors and reader of every form of date and time would be a tenth of
//! what a phone has to load. Of the crate, only its type for a date is used; a test compares all of this with the rest
//! of it.

use jiff::civil::Date;
use serde::Serializer;

/// Reads `2027-04-18`; years before 0 carry a minus sign.
///
/// ```
/// use kerbstead_core::plan::{date_text, read_date};
/// let date = read_date("2028-02-29").unwrap();
/// assert_eq!(date_text(date), "2028-02-29");
/// assert!(read_date("2027-02-29").is_none());
/// ```
pub fn read_date(text: &str) -> Option<Date> {
    let (is_negative, digits) = text.strip_prefix('-').map_or((false, text), |rest| (true, rest));
    let mut parts = digits.split('-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    let is_shaped = parts.next().is_none() && (4..=6).contains(&year.len()) && month.len() == 2 && day.len() == 2;
    let is_digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    if !is_shaped || ![year, month, day].into_iter().all(is_digits) {
        return None;
    }
    let year: i16 = year.parse().ok()?;
    Date::new(if is_negative { -year } else { year }, month.parse().ok()?, day.parse().ok()?).ok()
}

/// Writes `2027-04-18`.
pub fn date_text(date: Date) -> String {
    let sign = if date.year() < 0 { "-" } else { "" };
    format!("{sign}{:04}-{:02}-{:02}", date.year().unsigned_abs(), date.month(), date.day())
}

/// The number of a day: of 1 March of the year 0 it is 0. A year is counted from March, so that the leap day is its
/// last, and the 400 years after which the calendar repeats have 146,097 days.
fn number(year: i32, month: i32, day: i32) -> i32 {
    let from_march = (month + 9) % 12;
    let year = if month <= 2 { year - 1 } else { year };
    let (era, of_era) = (year.div_euclid(400), year.rem_euclid(400));
    // From March on, five months have 153 days: 31, 30, 31, 30, 31, and again.
    let of_year = (153 * from_march + 2) / 5 + day - 1;
    era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year
}

/// The date of that number, if the calendar reaches so far.
fn dated(number: i32) -> Option<Date> {
    let (era, of_era) = (number.div_euclid(146_097), number.rem_euclid(146_097));
    // Take out the leap days, of which the last is of the era: what is left are years of 365 days.
    let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let from_march = (5 * of_year + 2) / 153;
    let day = of_year - (153 * from_march + 2) / 5 + 1;
    let month = (from_march + 2) % 12 + 1;
    date_of(era * 400 + year + i32::from(month <= 2), month, day)
}

fn date_of(year: i32, month: i32, day: i32) -> Option<Date> {
    Date::new(year.try_into().ok()?, month.try_into().ok()?, day.try_into().ok()?).ok()
}

fn number_of(date: Date) -> i32 {
    number(date.year().into(), date.month().into(), date.day().into())
}

/// Days from one date to another; negative when `to` is earlier.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::days_between;
/// assert_eq!(days_between(date(2028, 2, 1), date(2028, 3, 1)), 29);
/// ```
pub fn days_between(from: Date, to: Date) -> i32 {
    number_of(to) - number_of(from)
}

/// The date so many days later, or earlier when negative; `None` beyond the years -9999 and 9999.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::add_days;
/// assert_eq!(add_days(date(2027, 12, 30), 2), Some(date(2028, 1, 1)));
/// ```
pub fn add_days(date: Date, days: i32) -> Option<Date> {
    number_of(date).checked_add(days).and_then(dated)
}

/// The same day so many months later, or the last of a month that lacks it.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::add_months;
/// assert_eq!(add_months(date(2027, 1, 31), 1), Some(date(2027, 2, 28)));
/// ```
pub fn add_months(date: Date, months: i32) -> Option<Date> {
    let months = (i32::from(date.year()) * 12 + i32::from(date.month()) - 1).checked_add(months)?;
    in_month(months.div_euclid(12), months.rem_euclid(12) + 1, date.day().into())
}

/// That day of the date's month, or its last where the month lacks it.
pub(crate) fn on_day(date: Date, day: u32) -> Option<Date> {
    in_month(date.year().into(), date.month().into(), day.try_into().ok()?)
}

fn in_month(year: i32, month: i32, day: i32) -> Option<Date> {
    // No year comes near the ends of the numbers, but months are added before anybody looks.
    let year = i32::from(i16::try_from(year).ok()?);
    let next = if month == 12 { number(year + 1, 1, 1) } else { number(year, month + 1, 1) };
    date_of(year, month, day.min(next - number(year, month, 1)))
}

/// The day of the week, counted from Monday, which is 0.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::weekday;
/// assert_eq!(weekday(date(2027, 4, 18)), 6); // a Sunday
/// ```
pub fn weekday(date: Date) -> u32 {
    // 1 March of the year 0 is a Wednesday.
    (number_of(date) + 2).rem_euclid(7).unsigned_abs()
}

/// The number of a day to sort by.
pub(crate) fn day_key(date: Date) -> u64 {
    days_between(Date::MIN, date).unsigned_abs().into()
}

/// The day after; the last day of the calendar stays where it is.
pub(crate) fn day_after(date: Date) -> Date {
    add_days(date, 1).unwrap_or(date)
}

/// For a date in a report.
#[allow(clippy::trivially_copy_pass_by_ref)] // serde asks for it
pub(crate) fn serialize<S: Serializer>(date: &Date, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(&date_text(*date))
}

/// For a date in a report that may be missing.
pub(crate) mod optional {
    use super::{Date, Serializer, date_text};

    #[allow(clippy::ref_option, clippy::trivially_copy_pass_by_ref)] // serde asks for it
    pub fn serialize<S: Serializer>(date: &Option<Date>, serializer: S) -> Result<S::Ok, S::Error> {
        match date {
            Some(date) => serializer.serialize_str(&date_text(*date)),
            None => serializer.serialize_none(),
        }
    }
}
