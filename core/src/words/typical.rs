//! What is said of a file of a typical year that was not read.

use super::{Format, Words};
use crate::explain::{Figure, Figures};
use crate::plan::Quantity;
use crate::sun::typical::{Fault, MOST_LINES, Unreadable};

impl<F: Format> Words<F> {
    /// Why a file of a typical year was not read: the line, what is wrong with it, and what would be right.
    ///
    /// ```
    /// use kerbstead_core::sun::typical::read;
    /// use kerbstead_core::words::{Plain, Units, Words};
    /// let words = Words::english(Plain, Units::Metric, "EUR");
    /// let said = words.unreadable_year(&read("Dear diary,\n").unwrap_err());
    /// assert!(said.starts_with("Line 1: "));
    /// ```
    pub fn unreadable_year(&self, unreadable: &Unreadable) -> String {
        let name = |name: &str| Figure::Name(name.to_owned());
        let plain = |value| Figure::of(value, Quantity::Count);
        let (key, mut figures): (&str, Figures) = match &unreadable.fault {
            Fault::NeitherFormat => ("typical-neither-format", vec![]),
            Fault::NoColumn(column) => ("typical-no-column", vec![("column", name(column))]),
            Fault::TooShort(column) => ("typical-too-short", vec![("column", name(column))]),
            Fault::NotANumber(column, text) => {
                ("typical-not-a-number", vec![("column", name(column)), ("text", name(text))])
            }
            Fault::OutOfRange(column, value, [least, most]) => (
                "typical-out-of-range",
                vec![
                    ("column", name(column)),
                    ("value", Figure::Name(self.format().number(*value, 2))),
                    ("least", plain(*least)),
                    ("most", plain(*most)),
                ],
            ),
            Fault::NotADay(text) => ("typical-not-a-day", vec![("text", name(text))]),
            Fault::NotAnHour(text) => ("typical-not-an-hour", vec![("text", name(text))]),
            Fault::TooManyLines => ("typical-too-many-lines", vec![("most", Figure::count(MOST_LINES))]),
            Fault::Nothing { column, month, hour } => (
                "typical-nothing",
                vec![("column", name(column)), ("month", plain(f64::from(*month))), ("hour", plain(f64::from(*hour)))],
            ),
        };
        figures.push(("line", Figure::count(unreadable.line)));
        self.with(key, &figures)
    }
}
