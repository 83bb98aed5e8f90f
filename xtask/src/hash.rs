//! Short names of contents.

use sha2::{Digest as _, Sha256};

/// Sixteen hexadecimal digits that change with the content: the beginning of its SHA-256.
pub fn short(content: &[u8]) -> String {
    let number = Sha256::digest(content).iter().take(8).fold(0_u64, |number, byte| (number << 8) | u64::from(*byte));
    format!("{number:016x}")
}
