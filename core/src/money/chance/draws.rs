//! Drawing flows by chance, in whole numbers.

use super::input::UncertainFlow;
use crate::draws::Chance;

/// A half of a number.
const HALF: u64 = 0xffff_ffff;

/// An uncertain flow, prepared to be drawn many times.
#[derive(Clone, Copy)]
pub(super) struct Lot {
    /// Of 2^32, how many draws happen.
    happens: u64,
    /// Of them, how many lie below the likely amount.
    below: u64,
    low: i64,
    high: i64,
    /// From low to likely, and from likely to high.
    rise: u64,
    fall: u64,
    /// Where its first day's gains are counted, and how many days follow from there.
    pub(super) slot: usize,
    days: u64,
}

impl Lot {
    pub(super) fn new(flow: &UncertainFlow, slot: usize) -> Self {
        let happens = (u64::from(flow.chance_ppm) << 32) / 1_000_000;
        let (rise, fall) = (flow.likely.abs_diff(flow.low), flow.high.abs_diff(flow.likely));
        // The area of the triangle below the likely amount is its share of the width.
        let (mut share, mut width) = (rise, rise + fall);
        while width >> 31 > 0 {
            (share, width) = (share / 2, width / 2);
        }
        let below = (happens * share).checked_div(width).unwrap_or(0);
        let days = u64::from(flow.last_day - flow.first_day) + 1;
        Self { happens, below, low: flow.low, high: flow.high, rise, fall, slot, days }
    }

    /// The amount and where it counts; nothing when it does not happen. It always takes two numbers, so that the draws of the
    /// flows after it do not depend on it.
    ///
    /// A side of a triangle has the distribution of the greater of two even draws, whose square root the usual formula
    /// takes; so whole numbers do.
    #[inline]
    pub(super) fn draw(&self, chance: &mut Chance) -> (i64, usize) {
        let (first, second) = (chance.draw(), chance.draw());
        let fate = first >> 32;
        let far = (second >> 32).max(second & HALF);
        let rising = self.low + part(self.rise, far);
        let falling = self.high - part(self.fall, far);
        let amount = if fate < self.below { rising } else { falling };
        let later = ((first & HALF) * self.days) >> 32;
        (if fate < self.happens { amount } else { 0 }, self.slot + later as usize)
    }
}

/// So many 2^32nds of a width, rounded; in two halves, so that no product overflows.
#[inline]
fn part(width: u64, of_2_32: u64) -> i64 {
    let low = ((width & HALF) * of_2_32 + (1 << 31)) >> 32;
    ((width >> 32) * of_2_32 + low).cast_signed()
}
