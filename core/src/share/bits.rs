//! A binary range coder: bits written as finely as the likelihood of each asks for.
//!
//! The carryless coder in its 32-bit form, after G. N. N. Martin, "Range encoding" (1979; from memory).
#![allow(clippy::cast_possible_truncation, reason = "bytes are cut out of words here")]

/// Where bits go to, or where they come from.
#[derive(Clone)]
pub(super) enum Bits {
    /// They are written.
    Writing { low: u32, high: u32, bytes: Vec<u8> },
    /// They are read. After the last byte come zeros without end.
    Reading { low: u32, high: u32, at: u32, bytes: Vec<u8>, next: usize },
}

impl Bits {
    pub(super) const fn writing() -> Self {
        Self::Writing { low: 0, high: u32::MAX, bytes: Vec::new() }
    }

    pub(super) fn reading(bytes: &[u8]) -> Self {
        let first = bytes.iter().copied().chain([0; 4]).take(4);
        let at = first.fold(0, |at, byte| at << 8 | u32::from(byte));
        Self::Reading { low: 0, high: u32::MAX, at, bytes: bytes.to_vec(), next: 4 }
    }

    /// Writes `bit`; or reads one, whatever `bit` is. `likely` is how likely it is set, in 65,536ths.
    pub(super) fn code(&mut self, bit: bool, likely: u32) -> bool {
        match self {
            Self::Writing { low, high, bytes } => {
                narrow(low, high, bit, likely);
                while let Some(byte) = settled(low, high) {
                    bytes.push(byte);
                }
                bit
            }
            Self::Reading { low, high, at, bytes, next } => {
                let bit = *at <= middle(*low, *high, likely);
                narrow(low, high, bit, likely);
                while settled(low, high).is_some() {
                    *at = *at << 8 | u32::from(bytes.get(*next).copied().unwrap_or(0));
                    *next += 1;
                }
                bit
            }
        }
    }

    /// What was written, without the zeros at its end.
    pub(super) fn finish(self) -> Vec<u8> {
        let Self::Writing { low, high, mut bytes } = self else { return Vec::new() };
        // The shortest number in what is left that zeros may follow.
        let number = (0..=24).rev().step_by(8).find_map(|free: u32| {
            let rest = (1_u32 << free) - 1;
            let number = low.checked_add(rest)? & !rest;
            (number <= high).then_some(number)
        });
        bytes.extend(number.unwrap_or(low).to_be_bytes());
        while bytes.last() == Some(&0) {
            bytes.pop();
        }
        bytes
    }
}

fn middle(low: u32, high: u32, likely: u32) -> u32 {
    low + ((u64::from(high - low) * u64::from(likely)) >> 16) as u32
}

fn narrow(low: &mut u32, high: &mut u32, bit: bool, likely: u32) {
    let middle = middle(*low, *high, likely);
    if bit {
        *high = middle;
    } else {
        *low = middle + 1;
    }
}

/// The first byte, once nothing can change it any more; the next one takes its place.
fn settled(low: &mut u32, high: &mut u32) -> Option<u8> {
    if (*low ^ *high) >> 24 != 0 {
        return None;
    }
    let byte = (*high >> 24) as u8;
    *low <<= 8;
    *high = *high << 8 | 255;
    Some(byte)
}
