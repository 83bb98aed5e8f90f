//! Names of sentences as numbers, so that a phone loads no names. The build script uses this too.

/// The name of a sentence, as a number of twenty bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Key(u32);

impl Key {
    /// The key of a name: FNV-1a, its upper bits folded onto the lower twenty. The build fails when two names of a catalogue
    /// have the same.
    ///
    /// ```
    /// use kerbstead_core::words::Key;
    /// const UNDO: Key = Key::of("undo");
    /// assert_ne!(UNDO, Key::of("redo"));
    /// ```
    pub const fn of(name: &str) -> Self {
        let name = name.as_bytes();
        let mut hash: u32 = 0x811c_9dc5;
        let mut at = 0;
        while at < name.len() {
            hash = (hash ^ name[at] as u32).wrapping_mul(0x0100_0193);
            at += 1;
        }
        Self((hash >> 20) ^ (hash & 0xf_ffff))
    }

    /// How far it is from the one before it.
    #[allow(dead_code, reason = "for the build script")]
    pub(super) const fn after(self, before: Self) -> u32 {
        self.0.wrapping_sub(before.0)
    }

    /// The one so far behind it.
    #[allow(dead_code, reason = "for the app")]
    pub(super) const fn plus(self, distance: u32) -> Self {
        Self(self.0.wrapping_add(distance))
    }

    /// Before the first.
    pub(super) const START: Self = Self(0);
}
