//! Days as files have them.

use jiff::civil::Date;

/// Which number of `03/04/2027` is the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateOrder {
    /// The first.
    DayFirst,
    /// The second.
    MonthFirst,
}

/// The most characters of a day, with the time that may follow it.
const MOST_CHARS: usize = 40;

/// The first letters of the months' English names.
const MONTHS: &str = "janfebmaraprmayjunjulaugsepoctnovdec";

/// Reads `2027-04-18` and `20270418` (ISO 8601), the same with other marks between, and three numbers in the order
/// given, of which the last is the year and two digits are one of this century. A month may be an English name. A time
/// behind it is passed over.
pub(super) fn day(text: &str, order: DateOrder) -> Option<Date> {
    let text = text.trim();
    if text.len() > MOST_CHARS {
        return None;
    }
    if text.len() == 8 && text.bytes().all(|byte| byte.is_ascii_digit()) {
        return dated(&text[..4], &text[4..6], &text[6..]);
    }
    let mut rest = text;
    let (first, second, third) = (part(&mut rest)?, part(&mut rest)?, part(&mut rest)?);
    if !rest.is_empty() && !rest.contains(':') {
        return None;
    }
    let is_month = |part: &str| part.starts_with(|letter: char| letter.is_ascii_alphabetic());
    if first.len() == 4 && !is_month(first) {
        dated(first, second, third)
    } else if is_month(first) || order == DateOrder::MonthFirst && !is_month(second) {
        dated(third, first, second)
    } else {
        dated(third, second, first)
    }
}

/// The letters or digits that come next, without the marks before them.
fn part<'a>(rest: &mut &'a str) -> Option<&'a str> {
    let text = rest.trim_start_matches([' ', '/', '.', '-', ',']);
    let is_digit = text.starts_with(|first: char| first.is_ascii_digit());
    let goes_on = |letter: char| if is_digit { letter.is_ascii_digit() } else { letter.is_ascii_alphabetic() };
    let end = text.find(|letter| !goes_on(letter)).unwrap_or(text.len());
    let part;
    (part, *rest) = text.split_at_checked(end)?;
    (!part.is_empty()).then_some(part)
}

fn dated(year: &str, month: &str, day: &str) -> Option<Date> {
    let number = |text: &str, most: usize| text.parse::<i16>().ok().filter(|_| text.len() <= most);
    let year = match year.len() {
        2 => 2000 + number(year, 2)?,
        4 => number(year, 4)?,
        _ => return None,
    };
    let month = number(month, 2).or_else(|| named(month))?;
    Date::new(year, month.try_into().ok()?, number(day, 2)?.try_into().ok()?).ok()
}

fn named(month: &str) -> Option<i16> {
    let start = month.get(..3)?.to_ascii_lowercase();
    (1..=12).zip(MONTHS.as_bytes().chunks(3)).find(|(_, name)| *name == start.as_bytes()).map(|(month, _)| month)
}
