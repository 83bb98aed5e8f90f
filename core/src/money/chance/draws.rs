//! Drawing by chance, in whole numbers.

use super::input::UncertainFlow;

/// A half of a number.
const HALF: u64 = 0xffff_ffff;

/// Numbers by chance from a seed: `SplitMix64`, of Steele, Lea and Flood, "Fast splittable pseudorandom number
/// generators", OOPSLA 2014, with the constants of Vigna's public-domain `splitmix64.c` (from memory; the numbers below
/// are those that are usually given for its check, from memory too).
///
/// ```
/// use kerbstead_core::money::chance::Chance;
/// let mut chance = Chance::new(1_234_567);
/// assert_eq!([chance.draw(), chance.draw()], [6_457_827_717_110_365_317, 3_203_168_211_198_807_973]);
/// ```
pub struct Chance(u64);

impl Chance {
    /// Starts with a seed; any will do.
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// Those of one course of many, so that no course depends on how many draws another one takes.
    pub(super) fn of_course(seed: u64, number: u64) -> Self {
        Self(Self(seed.rotate_left(32) ^ number).draw())
    }

    /// The next 64 bits.
    #[inline]
    pub fn draw(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number from 0 to below `count`, as even as 32 bits can be.
    #[inline]
    pub fn below(&mut self, count: u32) -> u32 {
        (((self.draw() >> 32) * u64::from(count)) >> 32) as u32
    }
}

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
