//! What everybody knows of plans before the first link is read.

use super::bits::Bits;
use super::codec::{Codec, Stop, Walk};
use super::parcel::Parcel;
use super::tree::Tree;
use super::unreadable::Unreadable;

/// A version of links: what everybody knew when they were made. It stands in the mark of a text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Version {
    /// The fields that there were at first.
    First,
    /// Those that came later as well: the work, the room inside, the load.
    #[default]
    Second,
}

impl Version {
    /// All of them, each at its number less one.
    pub const ALL: [Self; 2] = [Self::First, Self::Second];

    /// What is read before a link of this version, in this order.
    fn primes(self) -> impl Iterator<Item = &'static Prime> {
        PRIMES.iter().take(self as usize + 1)
    }
}

/// Plans and answers made for the purpose, told as links are.
struct Prime {
    bytes: &'static [u8],
    /// How many they are.
    parcels: usize,
}

/// What each version adds to those before. Reading it teaches which fields there are, in which order they are numbered,
/// what their values usually are, and words. `tests/data/share/prime-1.json` and `prime-2.json` have them to read.
///
/// They belong to their version for ever: were a bit changed, no link of it, or of a later one, could be read any more.
const PRIMES: [Prime; Version::ALL.len()] = [
    Prime { bytes: include_bytes!("prime-1.bin"), parcels: 3 },
    Prime { bytes: include_bytes!("prime-2.bin"), parcels: 3 },
];

/// All that is known before a link of one version, for reading many.
#[derive(Clone)]
pub struct Reader(Tree);

impl Default for Reader {
    fn default() -> Self {
        Self::of(Version::default())
    }
}

impl Reader {
    /// For links of that version.
    pub fn of(version: Version) -> Self {
        Self(primed(version, Bits::writing()))
    }

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

/// What is known before `bits`, which are of that version.
pub(super) fn primed(version: Version, bits: Bits) -> Tree {
    knowing(version.primes(), bits)
}

fn knowing<'a>(primes: impl Iterator<Item = &'a Prime>, bits: Bits) -> Tree {
    let mut tree = Tree::new(Codec::new(Bits::writing()));
    for prime in primes {
        tree.codec.go_on_with(Bits::reading(prime.bytes));
        for _ in 0..prime.parcels {
            // It was written by the same walk, and a test reads it.
            let _: Walk<Parcel> = Parcel::walk(&mut tree, None);
        }
    }
    tree.codec.go_on_with(bits);
    tree
}

/// The parcels that a version adds to [`PRIMES`], as far as they can be read.
#[doc(hidden)]
pub fn prime_parcels(version: Version) -> Vec<Parcel> {
    let Some(own) = version.primes().last() else { return Vec::new() };
    let mut tree = knowing(PRIMES.iter().take(version as usize), Bits::reading(own.bytes));
    std::iter::from_fn(|| Parcel::walk(&mut tree, None).ok()).take(own.parcels).collect()
}

/// The bytes that a version adds to [`PRIMES`], from its parcels. Nothing in the app asks for it.
#[doc(hidden)]
pub fn prime_bytes(version: Version, parcels: &[Parcel]) -> Vec<u8> {
    let mut tree = knowing(PRIMES.iter().take(version as usize), Bits::writing());
    for parcel in parcels {
        let _: Walk<Parcel> = Parcel::walk(&mut tree, Some(parcel));
        tree.codec.allow_more();
    }
    tree.codec.into_bits().finish()
}

/// The fields that have a number in a version, each list in the order of its numbers.
#[doc(hidden)]
pub fn numbered_fields(version: Version) -> Vec<(u32, String)> {
    primed(version, Bits::writing()).numbered().to_vec()
}
