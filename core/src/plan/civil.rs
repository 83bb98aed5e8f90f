//! Civil dates as text, YEAR-MONTH-DAY, as ISO 8601 has them.
//!
//! Written here in a few lines: the date crate's own reader takes every form of date and time there is, and would be a
//! tenth of what a phone has to load.

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
