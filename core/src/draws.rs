//! Numbers by chance, from a seed.

/// Numbers by chance from a seed: `SplitMix64`, of Steele, Lea and Flood, "Fast splittable pseudorandom number
/// generators", OOPSLA 2014, with the constants of Vigna's public-domain `splitmix64.c` (from memory; the numbers below
/// are those that are usually given for its check, from memory too).
///
/// ```
/// use kerbstead_core::draws::Chance;
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
    pub(crate) fn of_course(seed: u64, number: u64) -> Self {
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

    /// A number between 0 and 1, never one of them: the middle of one of 2^52 equal parts.
    #[inline]
    pub fn share(&mut self) -> f64 {
        ((self.draw() >> 12) as f64 + 0.5) / (1_u64 << 52) as f64
    }
}
