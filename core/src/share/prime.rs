//! What everybody knows of plans before the first link is read.

use super::bits::Bits;
use super::codec::{Codec, Stop, Walk};
use super::parcel::Parcel;
use super::tree::Tree;
use super::unreadable::Unreadable;

/// Plans made for the purpose, told as links are. Reading them teaches which fields there are, in which order they are
/// numbered, what their values usually are, and words. `tests/data/share/prime-1.json` has them to read.
///
/// They belong to version 1 for ever: were a bit changed, no link of that version could be read any more.
const PRIME: &[u8] = include_bytes!("prime-1.bin");

/// How many they are.
const PARCELS: usize = 3;

/// All that is known before the first link, for reading many.
#[derive(Clone)]
pub struct Reader(Tree);

impl Default for Reader {
    fn default() -> Self {
        Self(primed(Bits::writing()))
    }
}

impl Reader {
    /// What [`open`](super::open) gives, of bytes whose check is right.
    ///
    /// # Errors
    /// As there.
    pub fn open_bytes(&self, bytes: &[u8]) -> Result<Parcel, Unreadable> {
        let mut tree = self.0.clone();
        tree.codec.go_on_with(Bits::reading(bytes));
        Parcel::walk(&mut tree, None).map_err(|Stop| Unreadable::TooMuch)
    }
}

/// What is known before `bits`.
pub(super) fn primed(bits: Bits) -> Tree {
    let mut tree = Tree::new(Codec::new(Bits::reading(PRIME)));
    for _ in 0..PARCELS {
        // It was written by the same walk, and a test reads it.
        let _: Walk<Parcel> = Parcel::walk(&mut tree, None);
    }
    tree.codec.go_on_with(bits);
    tree
}

/// The bytes for a new version of [`PRIME`], from its parcels. Nothing in the app asks for it.
#[doc(hidden)]
pub fn prime_bytes(parcels: &[Parcel]) -> Vec<u8> {
    let mut tree = Tree::new(Codec::new(Bits::writing()));
    for parcel in parcels {
        let _: Walk<Parcel> = Parcel::walk(&mut tree, Some(parcel));
        tree.codec.allow_more();
    }
    tree.codec.into_bits().finish()
}

/// The fields that have a number, each list in the order of its numbers.
#[doc(hidden)]
pub fn numbered_fields() -> Vec<(u32, String)> {
    primed(Bits::writing()).numbered().to_vec()
}
