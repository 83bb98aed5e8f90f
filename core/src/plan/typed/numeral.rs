//! Plain numbers, as they are written where the person lives.

/// How numbers are written where the person lives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NumberMarks {
    /// The mark before the decimals.
    pub decimal: char,
    /// The mark between thousands.
    pub group: char,
}

impl Default for NumberMarks {
    fn default() -> Self {
        Self { decimal: '.', group: ',' }
    }
}

/// The most characters of a number that are read.
const MOST_CHARS: usize = 60;

/// What sets thousands apart here and there.
const APOSTROPHES: [char; 2] = ['\'', '\u{2019}'];

/// The number with a point and without marks between thousands. Of a lone mark that could be either, `1.5` where the
/// point groups thousands, the decimals win unless exactly three digits follow a group of up to three that does not
/// begin with a nought: `0.125` can only mean an eighth.
pub(super) fn plain(text: &str, marks: NumberMarks) -> Option<String> {
    if text.chars().count() > MOST_CHARS || !apostrophes_group(text) {
        return None;
    }
    let is_space = |c: char| c.is_whitespace() || c == '\u{a0}' || c == '\u{202f}' || APOSTROPHES.contains(&c);
    let text: String = text.chars().filter(|c| !is_space(*c)).map(|c| if c == '\u{2212}' { '-' } else { c }).collect();
    let (whole, decimals) = split(&text, marks);
    let whole: String = whole.chars().filter(|c| *c != marks.group).collect();
    let digits = whole.trim_start_matches(['-', '+']);
    let sound = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    if digits.len() + 1 < whole.len()
        || !sound(digits)
        || !sound(decimals)
        || (digits.is_empty() && decimals.is_empty())
    {
        return None;
    }
    let sign = if whole.starts_with('-') { "-" } else { "" };
    let digits = if digits.is_empty() { "0" } else { digits };
    Some(if decimals.is_empty() { format!("{sign}{digits}") } else { format!("{sign}{digits}.{decimals}") })
}

/// Whether each apostrophe sets thousands apart, and none means feet.
fn apostrophes_group(text: &str) -> bool {
    let is_thousand = |group: &str| group.bytes().take_while(u8::is_ascii_digit).count() == 3;
    text.split(APOSTROPHES).skip(1).all(is_thousand)
}

/// What stands before and after the decimal mark.
fn split(text: &str, marks: NumberMarks) -> (&str, &str) {
    if let Some(parts) = text.split_once(marks.decimal) {
        return parts;
    }
    match text.split_once(['.', ',']) {
        Some((whole, rest)) if !groups_thousands(whole, rest) => (whole, rest),
        _ => (text, ""),
    }
}

fn groups_thousands(whole: &str, rest: &str) -> bool {
    let digits = whole.trim_start_matches(['-', '+']);
    (1..=3).contains(&digits.len()) && !digits.starts_with('0') && rest.split(['.', ',']).all(|group| group.len() == 3)
}

/// The float nearest to a number of at most 15 digits, not counting noughts at its ends.
///
/// Written here because reading numbers of any length takes a table of ten kilobytes. Up to that length one
/// multiplication or division of two floats that are both exact rounds just once, and so as well as can be; see W. D.
/// Clinger, "How to read floating point numbers accurately", 1990.
pub(super) fn float(text: &str) -> Option<f64> {
    const MOST_DIGITS: usize = 15;
    // The highest power of ten that is exact as a float.
    const MOST_POWER: usize = 22;
    let digits = text.trim_start_matches('-');
    let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let digits: String = digits.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0');
    let significant = digits.trim_end_matches('0');
    if significant.len() > MOST_DIGITS {
        return None;
    }
    let noughts = digits.len() - significant.len();
    let mantissa = significant.bytes().fold(0.0, |number, digit| number * 10.0 + f64::from(digit - b'0'));
    let power = |tens: usize| (tens <= MOST_POWER).then(|| (0..tens).fold(1.0, |power, _| power * 10.0));
    let size = match noughts.checked_sub(decimals) {
        _ if significant.is_empty() => 0.0,
        Some(tens) => mantissa * power(tens)?,
        None => mantissa / power(decimals - noughts)?,
    };
    Some(if text.starts_with('-') { -size } else { size })
}
