//! What is to be cut, in nanometres and ten-thousandths.

use super::{Part, Sheet, SheetError, SheetJob};
use crate::materials::measure::{length, price, some_length};

/// So many parts and entries of sheets at most.
const MOST_PARTS: u32 = 1_000;
const MOST_SHEETS: usize = 50;

/// A part: its sides as it lies, and whether it may be turned.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wanted {
    /// Which entry it is of.
    pub(super) entry: usize,
    pub(super) length: u64,
    pub(super) width: u64,
    pub(super) may_turn: bool,
}

impl Wanted {
    /// As it may lie: length, width, whether it is turned.
    pub(super) fn ways(&self) -> impl Iterator<Item = (u64, u64, bool)> + use<> {
        let turned = (self.may_turn && self.length != self.width).then_some((self.width, self.length, true));
        std::iter::once((self.length, self.width, false)).chain(turned)
    }
}

/// An entry of sheets, without what is trimmed off.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stock {
    pub(super) length: u64,
    pub(super) width: u64,
    pub(super) cost: i64,
    pub(super) limit: Option<u64>,
}

pub(super) struct Problem {
    /// A part of each entry, by the entry's place.
    pub(super) entries: Vec<Wanted>,
    /// Each part by itself.
    pub(super) parts: Vec<Wanted>,
    pub(super) stocks: Vec<Stock>,
    pub(super) kerf: u64,
    pub(super) trim: u64,
}

impl Problem {
    pub(super) fn new(job: &SheetJob) -> Result<Self, SheetError> {
        let kerf = length(job.kerf_mm).ok_or(SheetError::Kerf)?;
        let trim = length(job.trim_mm).ok_or(SheetError::Trim)?;
        if job.sheets.len() > MOST_SHEETS {
            return Err(SheetError::TooManySheets { most: MOST_SHEETS });
        }
        let count = job.parts.iter().fold(0_u32, |sum, part| sum.saturating_add(part.count));
        if count > MOST_PARTS {
            return Err(SheetError::TooManyParts { most: MOST_PARTS });
        }
        let stocks: Result<Vec<Stock>, SheetError> =
            job.sheets.iter().enumerate().map(|(at, sheet)| stock(at, sheet, trim)).collect();
        let stocks = stocks?;
        let (mut entries, mut parts) = (Vec::new(), Vec::new());
        for (entry, part) in job.parts.iter().enumerate() {
            let wanted = wanted(entry, part)?;
            if part.count > 0 && !stocks.iter().any(|stock| stock.holds(&wanted)) {
                return Err(SheetError::PartTooLarge { part: entry });
            }
            entries.push(wanted);
            parts.extend((0..part.count).map(|_| wanted));
        }
        Ok(Self { entries, parts, stocks, kerf, trim })
    }
}

impl Stock {
    pub(super) fn holds(&self, part: &Wanted) -> bool {
        part.ways().any(|(length, width, _)| length <= self.length && width <= self.width)
    }
}

fn wanted(entry: usize, part: &Part) -> Result<Wanted, SheetError> {
    let side = |side: f64| some_length(side).ok_or(SheetError::PartSize { part: entry });
    let (length, width) = (side(part.length_mm)?, side(part.width_mm)?);
    Ok(Wanted { entry, length, width, may_turn: !part.keeps_grain })
}

fn stock(at: usize, sheet: &Sheet, trim: u64) -> Result<Stock, SheetError> {
    let side = |side: f64| some_length(side).ok_or(SheetError::SheetSize { sheet: at });
    Ok(Stock {
        length: side(sheet.length_mm)?.saturating_sub(2 * trim),
        width: side(sheet.width_mm)?.saturating_sub(2 * trim),
        cost: price(sheet.price).ok_or(SheetError::Price { sheet: at })?,
        limit: sheet.available.map(u64::from),
    })
}
