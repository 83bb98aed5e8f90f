//! What a file holds, shown before anything is taken over.

use super::Meaning;
use super::amounts::{Coin, amount};
use super::columns::{headings_of, meanings};
use super::days::DateOrder;
use super::encoding::{Encoding, text_of};
use super::records::{MOST_CELLS, Reader, Record, delimiter_of, stated_delimiter};
use super::row::{Kept, Manner, Reason, Row};
use super::settle::{Ask, decimal_of, order_of};
use crate::plan::{Money, minor_digits};

/// The most bytes of a file: many years of receipts. Looked at before anything else is done.
pub const MOST_BYTES: usize = 2_000_000;

/// The most rows of a file. It is refused rather than cut off.
pub const MOST_ROWS: usize = 20_000;

/// What the person says about a file; what they do not is found out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// The plan's currency, as its ISO 4217 code.
    pub currency: String,
    /// What parts cells: any character but a quote and the ends of lines.
    pub delimiter: Option<char>,
    /// The mark before the decimals, a point or a comma.
    pub decimal: Option<char>,
    /// Which number of a date is the day.
    pub order: Option<DateOrder>,
    /// The line that the headings begin in, from 1; 0 for none.
    pub headings_line: Option<u32>,
    /// What each column is taken for, from the first.
    pub columns: Option<Vec<Meaning>>,
    /// Whether what was paid is negative, as in the tables of banks.
    pub paid_is_negative: Option<bool>,
}

/// A column of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// What stands above it; empty where nothing does.
    pub heading: String,
    /// What it is taken for.
    pub taken_for: Meaning,
}

/// A file, looked through. Each row with anything in it is the headings, or read, or kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Preview {
    /// How its letters are written.
    pub encoding: Encoding,
    /// What parts its cells.
    pub delimiter: char,
    /// The mark before its decimals; none while that is asked.
    pub decimal: Option<char>,
    /// Which number of its dates is the day; none while that is asked.
    pub order: Option<DateOrder>,
    /// Whether what was paid is negative in it.
    pub paid_is_negative: bool,
    /// The line that its headings begin in, from 1; 0 for none.
    pub headings_line: u32,
    /// Its headings as they stand there.
    pub headings_text: String,
    /// Its columns.
    pub columns: Vec<Column>,
    /// What was read.
    pub rows: Vec<Row>,
    /// What was not.
    pub kept: Vec<Kept>,
    /// What the person must say before all can be read.
    pub asks: Vec<Ask>,
}

/// Why a file is not looked through at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It has more than [`MOST_BYTES`].
    TooLong,
    /// It has more than [`MOST_ROWS`].
    TooManyRows,
    /// Nothing is in it.
    Empty,
}

/// Looks a file through. The person's answers and corrections go into the settings, and it is looked through again.
///
/// ```
/// use kerbstead_core::papers::receipts::{Meaning, Settings, preview};
/// let file = "Datum;Betrag;Laden\r\n24.03.2027;1.012,50;Baumarkt\r\n25.03.2027;7,-;\r\nam Ende;?;\r\n";
/// let settings = Settings { currency: "EUR".into(), ..Settings::default() };
/// let preview = preview(file.as_bytes(), &settings).unwrap();
/// assert_eq!((preview.delimiter, preview.decimal), (';', Some(',')));
/// assert_eq!(preview.columns[1].taken_for, Meaning::Amount);
/// assert_eq!(preview.rows[0].amount, "1012.50".parse().ok());
/// assert_eq!((preview.kept[0].line, preview.kept[0].text.as_str()), (4, "am Ende;?;"));
/// ```
///
/// # Errors
/// Why it is not looked through.
pub fn preview(bytes: &[u8], settings: &Settings) -> Result<Preview, Refused> {
    if bytes.len() > MOST_BYTES {
        return Err(Refused::TooLong);
    }
    let (text, encoding) = text_of(bytes);
    let (records, delimiter) = records_of(&text, settings.delimiter)?;
    let headings = match settings.headings_line {
        Some(line) => records.iter().position(|record| record.line == line),
        None => headings_of(&records),
    };
    let first_row = headings.map_or(0, |at| at + 1);
    let rows = &records[first_row..];
    let headings = headings.and_then(|at| records.get(at));
    let found = meanings(headings, rows, columns_of(headings, rows));
    let meanings =
        settings.columns.as_ref().map_or(found, |columns| columns.iter().copied().take(MOST_CELLS).collect());
    let coin = Coin { code: &settings.currency, digits: minor_digits(&settings.currency) };
    let mut asks = Vec::new();
    let manner = manner(settings, &meanings, rows, coin, &mut asks);
    let (read, kept) = sorted(&records, first_row, &manner);
    Ok(Preview {
        encoding,
        delimiter,
        decimal: manner.decimal,
        order: manner.order,
        paid_is_negative: manner.paid_is_negative,
        headings_line: headings.map_or(0, |record| record.line),
        headings_text: headings.map_or_else(String::new, |record| record.text.to_owned()),
        columns: columns(headings, &meanings),
        rows: read,
        kept,
        asks,
    })
}

/// What can be read and what is kept aside, all but the headings above the first row.
fn sorted(records: &[Record], first_row: usize, manner: &Manner) -> (Vec<Row>, Vec<Kept>) {
    let (mut rows, mut kept) = (Vec::new(), Vec::new());
    for (at, record) in records.iter().enumerate() {
        let read = if at < first_row { Err(Reason::AboveHeadings) } else { manner.row(record) };
        match read {
            _ if at + 1 == first_row => {}
            Ok(row) => rows.push(row),
            Err(reason) => kept.push(Kept { line: record.line, text: record.text.to_owned(), reason }),
        }
    }
    (rows, kept)
}

impl Preview {
    /// All that was kept aside as a file of its own, under the headings, to be mended and read again. Empty where
    /// everything was read.
    pub fn kept_text(&self) -> String {
        let mut text = String::new();
        if !self.kept.is_empty() {
            let headings = std::iter::once(self.headings_text.as_str()).filter(|headings| !headings.is_empty());
            for row in headings.chain(self.kept.iter().map(|kept| kept.text.as_str())) {
                text.push_str(row);
                text.push_str("\r\n");
            }
        }
        text
    }
}

/// All records with anything in them, and what parts their cells.
fn records_of(text: &str, delimiter: Option<char>) -> Result<(Vec<Record<'_>>, char), Refused> {
    let (stated, start) = stated_delimiter(text).map_or((None, 0), |(delimiter, end)| (Some(delimiter), end));
    let is_fit = |delimiter: &char| !matches!(delimiter, '"' | '\r' | '\n');
    let known = delimiter.or(stated).filter(is_fit);
    let delimiter = known.unwrap_or_else(|| delimiter_of(&text[start..]));
    let mut reader = Reader::new(text, delimiter);
    reader.at = start;
    let mut records = Vec::new();
    while let Some(record) = reader.next() {
        if record.is_blank() {
            continue;
        }
        if records.len() == MOST_ROWS {
            return Err(Refused::TooManyRows);
        }
        records.push(record);
    }
    if records.is_empty() { Err(Refused::Empty) } else { Ok((records, delimiter)) }
}

/// How many columns there are: as many as there are headings, or as most rows have cells.
fn columns_of(headings: Option<&Record>, rows: &[Record]) -> usize {
    let most = || {
        let mut frequency = [0_u32; MOST_CELLS + 1];
        for record in rows {
            frequency[record.count.min(MOST_CELLS)] += 1;
        }
        (0..=MOST_CELLS).max_by_key(|count| frequency[*count]).unwrap_or(0)
    };
    headings.map_or_else(most, |record| record.cells.len())
}

fn columns(headings: Option<&Record>, meanings: &[Meaning]) -> Vec<Column> {
    let heading = |at: usize| headings.and_then(|record| record.cells.get(at)).map_or("", |cell| cell.trim());
    let column = |(at, meaning): (usize, &Meaning)| Column { heading: heading(at).to_owned(), taken_for: *meaning };
    meanings.iter().enumerate().map(column).collect()
}

/// Finds out what the settings do not say.
fn manner<'a>(
    settings: &Settings,
    meanings: &'a [Meaning],
    rows: &[Record],
    coin: Coin<'a>,
    asks: &mut Vec<Ask>,
) -> Manner<'a> {
    let cells = |wanted: fn(Meaning) -> bool| {
        let is_wanted = move |at: usize| meanings.get(at).is_some_and(|meaning| wanted(*meaning));
        rows.iter().flat_map(move |record| {
            let cells = record.cells.iter().enumerate().filter(move |(at, _)| is_wanted(*at));
            cells.map(|(_, cell)| cell.trim()).filter(|cell| !cell.is_empty())
        })
    };
    let is_money = |it: Meaning| matches!(it, Meaning::Amount | Meaning::Back | Meaning::Total);
    if !meanings.iter().any(|meaning| is_money(*meaning)) {
        asks.push(Ask::AmountColumn);
    }
    let decimal =
        settings.decimal.filter(|mark| matches!(mark, '.' | ',')).map_or_else(|| decimal_of(cells(is_money), coin), Ok);
    let decimal = decimal.map_err(|ask| asks.push(ask)).ok();
    let order = settings.order.map_or_else(|| order_of(cells(|it| it == Meaning::Day)), Ok);
    let order = order.map_err(|ask| asks.push(ask)).ok();
    let paid_is_negative = settings.paid_is_negative.unwrap_or_else(|| {
        mostly_negative(cells(|it| it == Meaning::Amount).filter_map(|cell| amount(cell, decimal?, coin).ok()))
    });
    Manner { meanings, coin, decimal, order, paid_is_negative }
}

fn mostly_negative(amounts: impl Iterator<Item = Money>) -> bool {
    let (mut negative, mut all) = (0, 0);
    for amount in amounts {
        negative += u32::from(amount.is_negative());
        all += 1;
    }
    negative > all / 2
}
