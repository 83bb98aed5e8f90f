//! Plans as short text that a link or a QR code carries, and the answers of friends.
//!
//! What travels is a [`Parcel`]: [`seal`] makes it a text and [`open`] reads it. A text that is too long for one QR code
//! is [`split`] into parts, which [`joined`] puts together again; [`codes`] draws them. What a parcel tells a stranger, [`told`] says
//! beforehand.
//!
//! Inside, a parcel is a walk over a plan's file (`tree.rs`) that tells symbols (`codec.rs`); each bit of them takes the
//! more room the less it was to be expected (`likely.rs`, `bits.rs`). Everything before the first link is read is in
//! `prime.rs`.
//!
//! Texts come from strangers. Nothing in one makes [`open`] take more than a bounded time and memory, or panic.

mod answer;
mod bits;
mod code;
mod codec;
mod collect;
mod concerns;
mod helping;
mod laid_over;
mod likely;
mod numbers;
mod parcel;
mod place;
mod prime;
mod scalar;
mod scope;
mod text;
mod told;
mod tree;
mod unreadable;

pub use answer::{Answer, Help, Mark};
pub use code::{Code, MOST_VERSION, QUIET_MODULES, codes};
pub use codec::MOST_BITS;
pub use collect::{Collected, collect};
pub use parcel::{Parcel, open, seal, seal_as};
pub use prime::{Reader, Version, numbered_fields, prime_bytes, prime_parcels};
pub use scope::Scope;
pub use text::{MOST_CHARS, MOST_PARTS, Part, code_chars, found_in, joined, split};
pub use told::{Told, told};
pub use unreadable::Unreadable;

/// The part in a text; `None` when it is none, or not as it was made.
pub fn part_of(text: &str) -> Option<Part> {
    text::part(text)
}

/// The text of those bytes, whatever they are, with their check: for tests of what strangers could send.
#[doc(hidden)]
pub fn text_of(version: Version, bytes: &[u8]) -> String {
    text::short(version, bytes)
}
