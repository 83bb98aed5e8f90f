//! What areas and rows take, and the packs that takes.
//!
//! Everything is an exact decimal of millimetres, square metres, litres or kilograms: what just fits takes no pack more.
//!
//! ```
//! use kerbstead_core::materials::coverage::{packs_for, with_waste};
//! let needed = with_waste("8.4".parse().unwrap(), 10.into()).unwrap();
//! let (packs, left_over) = packs_for(needed, "2.31".parse().unwrap()).unwrap();
//! assert_eq!((packs, left_over.to_string().as_str()), (4, "0"));
//! ```

use rust_decimal::Decimal;
use serde::Serialize;

use super::measure::{length, some_length};
use crate::plan::decimal;

/// So many packs at most.
const MOST_PACKS: u32 = 1_000_000;

/// An amount with so much more for waste, in hundredths of it. None where one is below nothing.
pub fn with_waste(amount: Decimal, waste_percent: Decimal) -> Option<Decimal> {
    if is_negative(amount) || is_negative(waste_percent) {
        return None;
    }
    let factor = decimal::times(decimal::plus(Decimal::ONE_HUNDRED, waste_percent)?, Decimal::new(1, 2))?;
    decimal::times(amount, factor).map(|amount| amount.normalize())
}

/// How many packs an amount takes, and what is left over, in the same unit. None where a pack holds nothing, something is
/// below nothing, or it would be more than a million packs.
pub fn packs_for(amount: Decimal, per_pack: Decimal) -> Option<(u32, Decimal)> {
    if per_pack <= Decimal::ZERO || is_negative(amount) {
        return None;
    }
    let about = decimal::over(amount, per_pack)?.floor();
    let mut packs = u32::try_from(about).ok().filter(|packs| *packs <= MOST_PACKS)?;
    // The quotient is rounded, so what it says is checked by products, which are exact to 28 digits.
    while packs > 0 && decimal::times(per_pack, Decimal::from(packs - 1))? >= amount {
        packs -= 1;
    }
    while decimal::times(per_pack, Decimal::from(packs))? < amount {
        packs += 1;
    }
    let left = decimal::less(decimal::times(per_pack, Decimal::from(packs))?, amount)?;
    Some((packs, left.normalize()))
}

/// So many coats of an area, in m²: to be held against the m² of one coat that a pack covers, so that nothing is divided.
pub fn paint_m2(area_m2: Decimal, coats: u32) -> Option<Decimal> {
    decimal::times(area_m2, Decimal::from(coats))
}

/// Glue, sealant or filler: so much of it for a metre or a square metre.
pub fn by_rate(amount: Decimal, rate: Decimal) -> Option<Decimal> {
    decimal::times(amount, rate)
}

/// Screws or nails in one row: the first and the last so far from the ends, and no two farther apart than the spacing.
/// Just one where there is no room for two. None where a length is none or the spacing is nothing.
///
/// ```
/// use kerbstead_core::materials::coverage::screws_in_row;
/// assert_eq!(screws_in_row(2440.0, 20.0, 150.0), Some(17));
/// assert_eq!(screws_in_row(1240.0, 20.0, 150.0), Some(9));
/// assert_eq!(screws_in_row(30.0, 20.0, 150.0), Some(1));
/// ```
pub fn screws_in_row(row_mm: f64, edge_mm: f64, spacing_mm: f64) -> Option<u32> {
    let (row, edge, spacing) = (some_length(row_mm)?, length(edge_mm)?, some_length(spacing_mm)?);
    let Some(between) = row.checked_sub(2 * edge) else { return Some(1) };
    u32::try_from(between.div_ceil(spacing)).ok()?.checked_add(1)
}

/// Rolls for an area as strips, none of them pieced together: how many strips side by side, each as long as the area
/// with what is cut off it, and how many of those a roll gives.
///
/// ```
/// use kerbstead_core::materials::coverage::{Roll, Strips, strips};
/// let roll = Roll { length_mm: 10_050.0, width_mm: 530.0, overlap_mm: 0.0 };
/// let wanted = Strips { strips: 8, per_roll: 3, rolls: 3 };
/// assert_eq!(strips(roll, 2_600.0, 4_000.0, 50.0), Some(wanted));
/// ```
pub fn strips(roll: Roll, run_mm: f64, side_mm: f64, cut_off_mm: f64) -> Option<Strips> {
    let (whole, width, overlap) = (some_length(roll.length_mm)?, some_length(roll.width_mm)?, length(roll.overlap_mm)?);
    let strip = some_length(run_mm)? + length(cut_off_mm)?;
    let step = width.checked_sub(overlap).filter(|step| *step > 0)?;
    let strips = 1 + some_length(side_mm)?.saturating_sub(width).div_ceil(step);
    let per_roll = whole / strip;
    let count = |number: u64| u32::try_from(number).ok();
    (per_roll > 0).then_some(())?;
    Some(Strips { strips: count(strips)?, per_roll: count(per_roll)?, rolls: count(strips.div_ceil(per_roll))? })
}

/// A roll, to 100 m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Roll {
    /// How long it is.
    pub length_mm: f64,
    /// How wide.
    pub width_mm: f64,
    /// By how much each strip lies on the one before it.
    pub overlap_mm: f64,
}

/// What of rolls covers an area.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Strips {
    /// How many strips lie side by side.
    pub strips: u32,
    /// How many of them a roll gives.
    pub per_roll: u32,
    /// How many rolls they take.
    pub rolls: u32,
}

fn is_negative(amount: Decimal) -> bool {
    amount < Decimal::ZERO
}
