//! A line of a file, cell by cell.

use super::{Fault, Unreadable};

/// No more cells of a line are looked at: both formats have fewer.
const MOST_CELLS: usize = 100;
/// No more characters of a cell are repeated in a fault.
const MOST_TOLD: usize = 24;

/// The cells of a line, and its number for faults.
pub(super) struct Line<'a> {
    pub number: usize,
    cells: Vec<&'a str>,
}

impl<'a> Line<'a> {
    pub fn new(number: usize, text: &'a str) -> Self {
        Self { number, cells: Cells(Some(text)).take(MOST_CELLS).collect() }
    }

    /// Where a heading stands.
    pub fn find(&self, heading: &'static str) -> Result<usize, Unreadable> {
        let at = self.cells.iter().position(|cell| cell.eq_ignore_ascii_case(heading));
        at.ok_or_else(|| self.fault(Fault::NoColumn(heading)))
    }

    pub fn text(&self, at: usize, column: &'static str) -> Result<&'a str, Unreadable> {
        self.cells.get(at).copied().ok_or_else(|| self.fault(Fault::TooShort(column)))
    }

    /// A number within a range.
    pub fn number(&self, at: usize, column: &'static str, range: [f64; 2]) -> Result<f64, Unreadable> {
        let value = self.any_number(at, column)?;
        let [least, most] = range;
        if value < least || value > most {
            return Err(self.fault(Fault::OutOfRange(column, value, range)));
        }
        Ok(value)
    }

    /// A number within a range, or nothing where the format has its mark for that.
    pub fn measured(
        &self,
        at: usize,
        column: &'static str,
        range: [f64; 2],
        is_missing: impl Fn(f64) -> bool,
    ) -> Result<Option<f64>, Unreadable> {
        if is_missing(self.any_number(at, column)?) { Ok(None) } else { self.number(at, column, range).map(Some) }
    }

    fn any_number(&self, at: usize, column: &'static str) -> Result<f64, Unreadable> {
        let text = self.text(at, column)?;
        let value = number_of(text);
        value.ok_or_else(|| self.fault(Fault::NotANumber(column, told(text))))
    }

    pub fn fault(&self, fault: Fault) -> Unreadable {
        Unreadable { line: self.number, fault }
    }
}

/// A number as such files have them: a sign, up to fifteen digits, a point. Whole numbers of fifteen digits and powers of ten
/// up to 10^15 are exact, so their quotient is the nearest number. The standard library reads every number there is, with
/// tables of powers that would weigh 10,000 bytes in the bundle.
pub(super) fn number_of(text: &str) -> Option<f64> {
    let digits = text.strip_prefix(['-', '+']).unwrap_or(text);
    let (mut whole, mut count, mut parts) = (0_u64, 0, None);
    for letter in digits.bytes() {
        match letter {
            b'0'..=b'9' if count < 15 => {
                whole = whole * 10 + u64::from(letter - b'0');
                count += 1;
                parts = parts.map(|parts: f64| parts * 10.0);
            }
            b'.' if parts.is_none() => parts = Some(1.0),
            _ => return None,
        }
    }
    let value = whole as f64 / parts.unwrap_or(1.0);
    (count > 0).then_some(if text.starts_with('-') { -value } else { value })
}

/// The beginning of what stands in a cell.
pub(super) fn told(text: &str) -> String {
    text.chars().take(MOST_TOLD).collect()
}

/// Cells between commas; one that begins with a quotation mark goes to the next one.
struct Cells<'a>(Option<&'a str>);

impl<'a> Iterator for Cells<'a> {
    type Item = &'a str;

    fn next(&mut self) -> Option<&'a str> {
        let rest = self.0?;
        let quoted = rest.strip_prefix('"').and_then(|inner| inner.split_once('"'));
        if let Some((cell, after)) = quoted {
            self.0 = after.split_once(',').map(|(_, rest)| rest);
            return Some(cell.trim());
        }
        let (cell, after) = rest.split_once(',').map_or((rest, None), |(cell, after)| (cell, Some(after)));
        self.0 = after;
        Some(cell.trim())
    }
}
