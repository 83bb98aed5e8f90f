//! Symbols to bits and back. Each function takes what is to be told when it writes, and `None` when it reads; it
//! returns what was told either way. So one walk over a value does both, and the two cannot differ.

use super::bits::Bits;
use super::likely::{Likely, Told, mix};

/// Why a walk ends early: more is told than anybody sends, or what is told makes no sense.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stop;

pub(super) type Walk<T> = Result<T, Stop>;

/// The most bits that one walk tells, whatever the text it comes from promises: what bounds time and memory. An
/// ordinary plan of fifty items takes some 30,000, the demo plan 35,000.
pub const MOST_BITS: u32 = 150_000;

/// How often a context is met before it begins to forget: what is told of plans changes slowly, words do not change.
const MOST_MET: u32 = 60;
const MOST_MET_OF_LETTERS: u32 = 250;

#[derive(Clone)]
pub(super) struct Codec {
    bits: Bits,
    likely: Likely,
    left: u32,
}

impl Codec {
    pub(super) fn new(bits: Bits) -> Self {
        Self { bits, likely: Likely::new(), left: MOST_BITS }
    }

    /// Goes on with other bits, and with all that was learned. Returns those before.
    pub(super) fn go_on_with(&mut self, bits: Bits) -> Bits {
        self.left = MOST_BITS;
        std::mem::replace(&mut self.bits, bits)
    }

    /// Forgets how much was told already.
    pub(super) fn allow_more(&mut self) {
        self.left = MOST_BITS;
    }

    pub(super) fn into_bits(self) -> Bits {
        self.bits
    }

    /// A number of `width` bits.
    pub(super) fn symbol(&mut self, known: Option<u32>, told: Told, width: u32, contexts: &[u32]) -> Walk<u32> {
        let most = if matches!(told, Told::Letter) { MOST_MET_OF_LETTERS } else { MOST_MET };
        self.left = self.left.checked_sub(width).ok_or(Stop)?;
        let (mut node, mut near) = (1, 1);
        self.likely.begin(contexts, node);
        for at in (0..width).rev() {
            if near >= 16 {
                self.likely.begin(contexts, node);
                near = 1;
            }
            let likely = self.likely.bit(told, node, near);
            let bit = self.bits.code(known.is_some_and(|known| known >> at & 1 == 1), likely);
            self.likely.learn(bit, most);
            node = node << 1 | u32::from(bit);
            near = near << 1 | u32::from(bit);
        }
        Ok(node - (1 << width))
    }

    /// Yes or no.
    pub(super) fn flag(&mut self, known: Option<bool>, contexts: &[u32]) -> Walk<bool> {
        Ok(self.symbol(known.map(u32::from), Told::Flag, 1, contexts)? == 1)
    }
}

/// Several things as one context.
pub(super) fn all<const N: usize>(parts: [u32; N]) -> u32 {
    parts.into_iter().fold(0, |all, part| mix(all.wrapping_mul(0x9E37_79B1) ^ part.wrapping_add(0x7F4A_7C15)))
}

/// A text as a context: FNV-1a, which is short.
pub(super) fn hash(text: &str) -> u32 {
    text.bytes().fold(0x811C_9DC5, |hash, byte| (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}
