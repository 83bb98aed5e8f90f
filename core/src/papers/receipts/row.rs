//! One row of a file.

use jiff::civil::Date;

use super::Meaning;
use super::amounts::{Coin, NoAmount, amount};
use super::days::{DateOrder, day};
use super::records::Record;
use crate::plan::{Id, Money};

/// A row that was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The line of the file it begins in, from 1.
    pub line: u32,
    /// The day, where the file has it.
    pub on: Option<Date>,
    /// Where it was; empty where the file does not say.
    pub place: String,
    /// What was bought; empty where the file does not say.
    pub name: String,
    /// What was paid for it, negative for what came back; none where there is only a total.
    pub amount: Option<Money>,
    /// What its receipt states in all.
    pub total: Option<Money>,
    /// The item of the kit, by its number in a table that was written here.
    pub item: Option<Id>,
    /// Whether more of the item is still to be paid, in a table that was written here.
    pub more_follows: bool,
    /// What it has in common with the other lines of its receipt; empty where the file does not say.
    pub receipt: String,
}

/// A row that was not read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The line of the file it begins in, from 1.
    pub line: u32,
    /// It as it stands in the file, without the end of its last line.
    pub text: String,
    /// Why it was not read.
    pub reason: Reason,
}

/// Why a row was not read. Columns are told by their position, from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// It stands above the headings.
    AboveHeadings,
    /// It has more cells than there are columns, or fewer.
    Cells {
        /// The columns.
        expected: usize,
        /// Its cells.
        found: usize,
    },
    /// A quote in it is never closed.
    QuoteOpen,
    /// Neither an amount nor a total is in it.
    NoAmount,
    /// That cell is no amount such as the file's others.
    NotAnAmount {
        /// The column.
        column: usize,
    },
    /// That cell is of another currency than the plan.
    OtherCurrency {
        /// The column.
        column: usize,
    },
    /// That cell is more than a plan takes.
    TooMuch {
        /// The column.
        column: usize,
    },
    /// That cell is no day such as the file's others, or it is empty.
    NotADay {
        /// The column.
        column: usize,
    },
    /// That cell is no number of an item.
    NotAnItem {
        /// The column.
        column: usize,
    },
    /// That cell says neither yes nor no.
    NotYesOrNo {
        /// The column.
        column: usize,
    },
    /// It cannot be read before the person has answered what the preview asks.
    Waits,
}

/// How the rows of a file are read.
pub(super) struct Manner<'a> {
    pub meanings: &'a [Meaning],
    pub coin: Coin<'a>,
    /// The mark before decimals; none while it is asked for.
    pub decimal: Option<char>,
    /// Which number is the day; none while it is asked for.
    pub order: Option<DateOrder>,
    /// Whether what was paid is negative, as in the tables of banks.
    pub paid_is_negative: bool,
}

/// A cell and its column.
type Cell<'a> = Option<(usize, &'a str)>;

impl Manner<'_> {
    /// Reads a row.
    pub fn row(&self, record: &Record) -> Result<Row, Reason> {
        self.check_cells(record)?;
        let text = |meaning| self.cell(record, meaning).map_or_else(String::new, |(_, text)| unguarded(text));
        let receipt = text(Meaning::Receipt);
        let on = self.on(record, receipt.is_empty())?;
        let is_other = |(_, code): &(usize, &str)| !code.eq_ignore_ascii_case(self.coin.code);
        if let Some((column, _)) = self.cell(record, Meaning::Currency).filter(is_other) {
            return Err(Reason::OtherCurrency { column });
        }
        let money = |meaning| self.money(self.cell(record, meaning));
        let turned = |amount: Money| if self.paid_is_negative { -amount } else { amount };
        let (paid, back) = (money(Meaning::Amount)?.map(turned), money(Meaning::Back)?);
        let total = money(Meaning::Total)?.map(turned);
        let amount = match (paid, back) {
            (paid, Some(back)) => Some(paid.unwrap_or(Money::ZERO) - back),
            (paid, None) => paid,
        };
        if amount.is_none() && total.is_none() {
            return Err(Reason::NoAmount);
        }
        let item = self.cell(record, Meaning::Item);
        let item = item.map(|(column, id)| id.parse().map_err(|_| Reason::NotAnItem { column })).transpose()?;
        let more_follows = self.cell(record, Meaning::MoreFollows);
        let is_yes = |(column, word): (usize, &str)| yes_or_no(word).ok_or(Reason::NotYesOrNo { column });
        let more_follows = more_follows.map(is_yes).transpose()?.unwrap_or(false);
        let (place, name) = (text(Meaning::Place), text(Meaning::Name));
        Ok(Row { line: record.line, on, place, name, amount, total, item, more_follows, receipt })
    }

    fn check_cells(&self, record: &Record) -> Result<(), Reason> {
        if record.is_open {
            return Err(Reason::QuoteOpen);
        }
        let (expected, found) = (self.meanings.len(), record.count);
        let is_more = record.cells.iter().skip(expected).any(|cell| !cell.trim().is_empty());
        // Delimiters at the end are often one too many; what is beyond the cells that are read was not looked at.
        let is_unseen = found > record.cells.len();
        if found < expected || is_more || is_unseen { Err(Reason::Cells { expected, found }) } else { Ok(()) }
    }

    /// What stands in the column of that meaning, if anything.
    fn cell<'a>(&self, record: &'a Record, meaning: Meaning) -> Cell<'a> {
        let column = self.meanings.iter().position(|it| *it == meaning)?;
        record.cells.get(column).map(|cell| (column, cell.trim())).filter(|(_, cell)| !cell.is_empty())
    }

    /// The day. Where there is a column for it, a row without it is no purchase but a sum below the table, unless it
    /// belongs to a receipt.
    fn on(&self, record: &Record, is_alone: bool) -> Result<Option<Date>, Reason> {
        let Some(column) = self.meanings.iter().position(|it| *it == Meaning::Day) else { return Ok(None) };
        let Some((_, text)) = self.cell(record, Meaning::Day) else {
            return if is_alone { Err(Reason::NotADay { column }) } else { Ok(None) };
        };
        let order = self.order.ok_or(Reason::Waits)?;
        day(text, order).map(Some).ok_or(Reason::NotADay { column })
    }

    fn money(&self, cell: Cell) -> Result<Option<Money>, Reason> {
        let Some((column, text)) = cell else { return Ok(None) };
        let decimal = self.decimal.ok_or(Reason::Waits)?;
        let read = amount(text, decimal, self.coin).map(Some);
        read.map_err(|wrong| match wrong {
            NoAmount::Unreadable => Reason::NotAnAmount { column },
            NoAmount::OtherCurrency => Reason::OtherCurrency { column },
            NoAmount::TooMuch => Reason::TooMuch { column },
        })
    }
}

/// Words for yes and for no, in the languages of the headings and as spreadsheets have them. Common practice, no source.
const YES: &str = "yes ja oui si sí sì sim tak true 1 x";
const NO: &str = "no nein nee non não nie false 0";

fn yes_or_no(said: &str) -> Option<bool> {
    let is_of = |words: &str| words.split(' ').any(|word| word.eq_ignore_ascii_case(said));
    if is_of(YES) { Some(true) } else { is_of(NO).then_some(false) }
}

/// Text without the apostrophe that keeps spreadsheets from taking it for a formula.
fn unguarded(text: &str) -> String {
    let bare = text.strip_prefix('\'').filter(|bare| bare.starts_with(['=', '+', '-', '@', '\t', '\r']));
    bare.unwrap_or(text).to_owned()
}
