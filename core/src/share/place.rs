//! Where a value stands in a plan, and which form it has: what its likelihood depends on first.

use super::codec::{all, hash};

/// The place of a value, the same for every entry of a list.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) struct Place {
    /// The names on the way to it.
    pub(super) path: u32,
    /// What its name ends in, which in most cases is its unit: `mm`, `kg`, `price`.
    pub(super) unit: u32,
    depth: u32,
    is_of_range: bool,
}

/// Deeper than any plan is, and shallow enough for every stack.
const MOST_DEPTH: u32 = 16;

impl Place {
    pub(super) const PLAN: Self = Self::root(1);
    pub(super) const GUESSES: Self = Self::root(2);
    pub(super) const NAME: Self = Self::root(3);
    pub(super) const ANSWER: Self = Self::root(4);

    const fn root(path: u32) -> Self {
        Self { path, unit: path, depth: 0, is_of_range: false }
    }

    pub(super) fn child(self, name: &str) -> Self {
        let is_of_range = matches!(name, "low" | "likely" | "high");
        let unit = hash(name.rsplit('_').next().unwrap_or(name));
        // The ends of a range are of its unit.
        let unit = if is_of_range { all([self.unit, unit]) } else { unit };
        Self { path: all([self.path, hash(name)]), unit, depth: self.depth + 1, is_of_range }
    }

    /// An entry of the list here.
    pub(super) fn entry(self) -> Self {
        Self { path: all([self.path, 1]), depth: self.depth + 1, ..self }
    }

    /// Whether something is here, rather than what.
    pub(super) fn presence(self) -> Self {
        Self { path: all([self.path, 2]), ..self }
    }

    pub(super) const fn is_too_deep(self) -> bool {
        self.depth > MOST_DEPTH
    }

    /// Whether it is the low, likely or high end of an estimate.
    pub(super) const fn is_of_range(self) -> bool {
        self.is_of_range
    }

    pub(super) fn is_id(self) -> bool {
        self.unit == hash("id")
    }

    /// Its place in a table of 4,096.
    pub(super) const fn slot(self) -> usize {
        (self.path >> 20) as usize
    }
}

/// The form of a value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    Null,
    No,
    Yes,
    /// A whole number.
    Whole,
    /// A number with a few decimals.
    Decimals,
    /// A float that is told bit by bit.
    OddFloat,
    /// A whole number that is told bit by bit.
    OddWhole,
    /// An amount, as text.
    Amount,
    /// A date that was not told here before.
    Date,
    /// One that was.
    DateAgain,
    Text,
    /// A text that begins with a capital letter.
    Capital,
    /// A text that was told here before.
    TextAgain,
    /// A text that is told byte by byte.
    OddText,
    List,
    Object,
}

impl Form {
    /// All of them, each at its number.
    pub(super) const ALL: [Self; 16] = [
        Self::Null,
        Self::No,
        Self::Yes,
        Self::Whole,
        Self::Decimals,
        Self::OddFloat,
        Self::OddWhole,
        Self::Amount,
        Self::Date,
        Self::DateAgain,
        Self::Text,
        Self::Capital,
        Self::TextAgain,
        Self::OddText,
        Self::List,
        Self::Object,
    ];
}
