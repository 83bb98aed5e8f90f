//! How long a file takes, and whether it is through before one must leave.
//!
//! ```
//! use kerbstead_core::plan::Estimate;
//! use kerbstead_core::signal::transfer::{Transfer, payload_share};
//! assert!((payload_share() - 0.949_28).abs() < 1e-5);
//! let rate_mbit_s = Estimate::Range { low: 0.8, likely: 2.0, high: 5.0 };
//! let file = Transfer { size_mb: 250.0, rate_mbit_s, payload_share: 1.0 };
//! assert_eq!(file.seconds(), [Some(2_500.0), Some(1_000.0), Some(400.0)]);
//! // Half an hour is enough at the likely rate; at the low one 72 % is through.
//! let sent = file.within(0.5);
//! assert!(sent[1].is_done && !sent[0].is_done && (sent[0].part - 0.72).abs() < 1e-12);
//! ```

use super::constants::{
    BITS_PER_MBIT, ETHERNET_BYTES, IPV4_HEADER_BYTES, MOST_HOURS, MOST_MB, MOST_MBIT_S, MTU_BYTES, TCP_HEADER_BYTES,
};
use super::data::{bits, three};
use super::sound;
use crate::plan::Estimate;

/// The share of a line's bits that are the file's: (MTU - headers) / (MTU + framing), for full packets. Sources: RFC 791, RFC
/// 9293, IEEE 802.3. What a speed test shows is mostly the file's share already; then take 1. Lost packets, and waiting for
/// answers, take more.
pub const fn payload_share() -> f64 {
    (MTU_BYTES - IPV4_HEADER_BYTES - TCP_HEADER_BYTES) / (MTU_BYTES + ETHERNET_BYTES)
}

/// A file on its way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Transfer {
    /// In MB.
    pub size_mb: f64,
    /// The line's rate, in Mbit/s.
    pub rate_mbit_s: Estimate<f64>,
    /// What of its bits are the file's: [`payload_share`], or 1 where the rate is that of files.
    pub payload_share: f64,
}

/// How far it came.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sent {
    /// Whether it is through.
    pub is_done: bool,
    /// What part of it is, 0 to 1.
    pub part: f64,
    /// That part, in MB.
    pub sent_mb: f64,
}

impl Transfer {
    /// Seconds it takes at the low, the likely and the high rate; none where it never gets through: no rate, or more than 100,000
    /// hours.
    pub fn seconds(&self) -> [Option<f64>; 3] {
        self.bits_per_s().map(|bits_per_s| {
            let seconds = self.bits() / bits_per_s;
            if self.bits() <= 0.0 { Some(0.0) } else { (seconds <= MOST_HOURS * 3_600.0).then_some(seconds) }
        })
    }

    /// How far it comes in so many hours at the low, the likely and the high rate. A file that is sent in one go is all or
    /// nothing; a part helps only if it can be gone on with.
    pub fn within(&self, hours: f64) -> [Sent; 3] {
        let seconds = sound(hours, MOST_HOURS) * 3_600.0;
        self.bits_per_s().map(|bits_per_s| {
            let through = bits_per_s * seconds;
            let is_done = through >= self.bits();
            let part = if is_done { 1.0 } else { through / self.bits() };
            Sent { is_done, part, sent_mb: sound(self.size_mb, MOST_MB as f64) * part }
        })
    }

    /// The rate with which it is just through in so many hours, in Mbit/s of the line; none without time or share.
    pub fn needs_mbit_s(&self, hours: f64) -> Option<f64> {
        let line_s = sound(hours, MOST_HOURS) * 3_600.0 * sound(self.payload_share, 1.0);
        let rate_mbit_s = self.bits() / BITS_PER_MBIT / line_s;
        (rate_mbit_s <= MOST_MBIT_S).then_some(rate_mbit_s)
    }

    fn bits(&self) -> f64 {
        bits(self.size_mb)
    }

    /// The file's bits in a second.
    fn bits_per_s(&self) -> [f64; 3] {
        three(self.rate_mbit_s, MOST_MBIT_S)
            .map(|rate_mbit_s| rate_mbit_s * BITS_PER_MBIT * sound(self.payload_share, 1.0))
    }
}
