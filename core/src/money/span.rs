//! Amounts that may be ranges, while flows are made of them.

use crate::plan::{Estimate, Money};

/// The least an amount may come to, the most likely, and the most. Of what goes out, which is negative, the least is the
/// dearest price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Span {
    pub low: Money,
    pub likely: Money,
    pub high: Money,
}

impl Span {
    /// Nothing, for sure.
    pub(super) const NOTHING: Self = Self::sure(Money::ZERO);

    /// An amount that is sure.
    pub(super) const fn sure(amount: Money) -> Self {
        Self { low: amount, likely: amount, high: amount }
    }

    pub(super) fn of(amount: Estimate<Money>) -> Self {
        Self { low: amount.low(), likely: amount.likely(), high: amount.high() }
    }

    /// The range, or nothing.
    pub(super) fn of_any(amount: Option<Estimate<Money>>) -> Self {
        amount.map_or(Self::NOTHING, Self::of)
    }

    /// All three changed alike.
    pub(super) fn each(self, change: &dyn Fn(Money) -> Money) -> Self {
        Self { low: change(self.low), likely: change(self.likely), high: change(self.high) }
    }

    /// What is paid where this is received.
    pub(super) fn negated(self) -> Self {
        Self { low: -self.high, likely: -self.likely, high: -self.low }
    }

    /// Both together, at the least of both and at the most of both.
    pub(super) fn plus(self, other: Self) -> Self {
        Self { low: self.low + other.low, likely: self.likely + other.likely, high: self.high + other.high }
    }

    /// Rounded to the minor unit, and in order whatever was typed: the likely amount is the one that counts.
    pub(super) fn rounded(self, digits: u32) -> Self {
        let Self { low, likely, high } = self.each(&|amount| amount.rounded(digits));
        Self { low: low.min(likely), likely, high: high.max(likely) }
    }
}
