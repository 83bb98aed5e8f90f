//! How a file writes its days and amounts, as far as its cells can tell.

use super::amounts::{Coin, amount};
use super::days::{DateOrder, day};

/// What the file cannot tell and the person must.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ask {
    /// Which number is the day.
    DateOrder {
        /// A date of the file that could be either.
        example: String,
    },
    /// Whether a comma or a point stands before the decimals.
    DecimalMark {
        /// An amount of the file that could be either.
        example: String,
    },
    /// Which column holds what was paid.
    AmountColumn,
}

/// Cells that tell of two ways to read them.
#[derive(Default)]
struct Votes<'a> {
    /// One that can only be read in the first way.
    first: Option<&'a str>,
    /// One that can only be read in the second way.
    second: Option<&'a str>,
    /// One that means something else either way.
    either: Option<&'a str>,
}

impl<'a> Votes<'a> {
    fn count<V: PartialEq>(&mut self, cell: &'a str, first: Option<V>, second: Option<V>) {
        let kind = match (first, second) {
            (Some(_), None) => &mut self.first,
            (None, Some(_)) => &mut self.second,
            (Some(one), Some(other)) if one != other => &mut self.either,
            _ => return,
        };
        kind.get_or_insert(cell);
    }

    /// The way that some cells need and none forbids; where no cell depends on it, the first. An error is a cell of
    /// those that leave it open.
    fn settled<T>(&self, ways: [T; 2]) -> Result<T, String> {
        let [first, second] = ways;
        match (self.first, self.second) {
            (Some(_), None) => Ok(first),
            (None, Some(_)) => Ok(second),
            (None, None) => self.either.map_or(Ok(first), |cell| Err(cell.to_owned())),
            (Some(_), Some(cell)) => Err(self.either.unwrap_or(cell).to_owned()),
        }
    }
}

/// The mark before the decimals.
pub(super) fn decimal_of<'a>(cells: impl Iterator<Item = &'a str>, coin: Coin) -> Result<char, Ask> {
    let mut votes = Votes::default();
    for cell in cells {
        votes.count(cell, amount(cell, '.', coin).ok(), amount(cell, ',', coin).ok());
    }
    votes.settled(['.', ',']).map_err(|example| Ask::DecimalMark { example })
}

/// Which number of a date is the day.
pub(super) fn order_of<'a>(cells: impl Iterator<Item = &'a str>) -> Result<DateOrder, Ask> {
    let mut votes = Votes::default();
    for cell in cells {
        votes.count(cell, day(cell, DateOrder::DayFirst), day(cell, DateOrder::MonthFirst));
    }
    votes.settled([DateOrder::DayFirst, DateOrder::MonthFirst]).map_err(|example| Ask::DateOrder { example })
}
