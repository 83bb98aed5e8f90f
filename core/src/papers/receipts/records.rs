//! Text as records of cells, by RFC 4180, with any delimiter and any end of a line.

/// The most cells of a record that are read; a record of more is told by its number of them.
pub(super) const MOST_CELLS: usize = 64;

/// One record.
pub(super) struct Record<'a> {
    /// The line it begins in, from 1.
    pub line: u32,
    /// It as it stands, without the end of its last line.
    pub text: &'a str,
    /// What is in it, without quotes; at most [`MOST_CELLS`].
    pub cells: Vec<String>,
    /// How many cells it has.
    pub count: usize,
    /// Whether a quote in it is never closed. It then ends with the line of that quote, and nothing of it was read.
    pub is_open: bool,
}

impl Record<'_> {
    /// Whether there is nothing in it.
    pub fn is_blank(&self) -> bool {
        !self.is_open && self.cells.iter().all(|cell| cell.trim().is_empty())
    }
}

/// Reads one record after the other. Quotes count where a cell begins with one; anywhere else they are letters. Lines
/// end with a carriage return, a line feed, or both.
///
/// The time is linear: what follows a quote that is never closed has all its quotes in pairs, so that it cannot happen
/// again behind it.
pub(super) struct Reader<'a> {
    pub text: &'a str,
    /// The byte it goes on from.
    pub at: usize,
    pub line: u32,
    pub delimiter: char,
}

#[derive(Clone, Copy, PartialEq)]
enum Within {
    /// At the start of a cell.
    Start,
    /// In a cell that goes on to the next delimiter.
    Cell,
    /// Between quotes.
    Quotes,
}

impl<'a> Reader<'a> {
    pub fn new(text: &'a str, delimiter: char) -> Self {
        Self { text, at: 0, line: 1, delimiter }
    }

    /// The next record; none at the end of the text.
    pub fn next(&mut self) -> Option<Record<'a>> {
        let rest = self.text.get(self.at..).filter(|rest| !rest.is_empty())?;
        let mut record = Record { line: self.line, text: rest, cells: Vec::new(), count: 1, is_open: false };
        let (mut cell, mut within, mut quote_at, mut end) = (String::new(), Within::Start, 0, rest.len());
        let mut letters = rest.char_indices().peekable();
        while let Some((at, letter)) = letters.next() {
            match (letter, within) {
                ('"', Within::Quotes) if letters.next_if(|(_, next)| *next == '"').is_none() => within = Within::Cell,
                (_, Within::Quotes) => cell.push(letter),
                ('"', Within::Start) => (within, quote_at) = (Within::Quotes, at),
                ('\r' | '\n', _) => {
                    end = at;
                    break;
                }
                _ if letter == self.delimiter => {
                    record.keep(std::mem::take(&mut cell));
                    record.count += 1;
                    within = Within::Start;
                }
                _ => {
                    cell.push(letter);
                    within = Within::Cell;
                }
            }
        }
        record.is_open = within == Within::Quotes;
        let end = if record.is_open { line_end(rest, quote_at) } else { end };
        record.end(end, cell);
        self.pass(rest, end);
        Some(record)
    }

    /// Goes on behind a record and the end of its last line, at `end`.
    fn pass(&mut self, rest: &str, end: usize) {
        let behind = &rest[end..];
        let ending = if behind.starts_with("\r\n") { 2 } else { behind.len().min(1) };
        self.line += line_ends(&rest[..end]) + u32::from(ending > 0);
        self.at += end + ending;
    }
}

impl Record<'_> {
    fn keep(&mut self, cell: String) {
        if self.cells.len() < MOST_CELLS {
            self.cells.push(cell);
        }
    }

    fn end(&mut self, at: usize, last: String) {
        self.text = &self.text[..at];
        if self.is_open { self.cells.clear() } else { self.keep(last) }
    }
}

/// Where the line ends that the byte is in.
fn line_end(text: &str, from: usize) -> usize {
    text[from..].find(['\r', '\n']).map_or(text.len(), |length| from + length)
}

fn line_ends(text: &str) -> u32 {
    let bytes = text.as_bytes();
    let ends = bytes.iter().enumerate().filter(|(at, byte)| {
        // Of the two that belong together, the second counts.
        **byte == b'\n' || **byte == b'\r' && bytes.get(at + 1) != Some(&b'\n')
    });
    u32::try_from(ends.count()).unwrap_or(u32::MAX)
}

/// The delimiters that are told from one another, the less likely to be in a text or a number first.
const DELIMITERS: [char; 4] = ['\t', ';', '|', ','];

/// So many records tell the delimiter.
const SAMPLE: usize = 60;

/// The delimiter by which most records have the same number of cells, two or more; of several, the one that makes more
/// cells. A comma where none does.
pub(super) fn delimiter_of(text: &str) -> char {
    let mut best = (',', (0, 0));
    for delimiter in DELIMITERS {
        let steady = steadiness(text, delimiter);
        if steady > best.1 {
            best = (delimiter, steady);
        }
    }
    best.0
}

/// How many records have the most frequent number of cells, and that number; of numbers above one.
fn steadiness(text: &str, delimiter: char) -> (usize, usize) {
    let mut reader = Reader::new(text, delimiter);
    let mut frequency = [0; MOST_CELLS + 1];
    for _ in 0..SAMPLE {
        let Some(record) = reader.next() else { break };
        if !record.is_blank() {
            frequency[record.count.min(MOST_CELLS)] += 1;
        }
    }
    let steady = frequency.into_iter().enumerate().skip(2).map(|(cells, records)| (records, cells)).max();
    steady.filter(|(records, _)| *records > 0).unwrap_or((0, 0))
}

/// The delimiter that the first line states, as some spreadsheets write it, and how long that line is: `sep=;`. Common
/// practice, no source.
pub(super) fn stated_delimiter(text: &str) -> Option<(char, usize)> {
    let end = line_end(text, 0);
    let mut letters = text[..end].strip_prefix("sep=")?.chars();
    let delimiter = letters.next().filter(|_| letters.next().is_none())?;
    Some((delimiter, end))
}
