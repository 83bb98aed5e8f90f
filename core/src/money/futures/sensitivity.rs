//! What the answer depends on most.

use super::{Case, Question, Way};
use crate::money::MOST_MONTHS;
use crate::order;
use crate::plan::{Estimate, Money};

/// One input. Those of a build are told by the position of their way, 0 for the first and 1 for the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lever {
    /// A month at home.
    HomeMonthly,
    /// A month on the road.
    RoadMonthly,
    /// The chance that the life does not suit.
    UnsuitedPercent,
    /// The months until one finds out.
    FindsOutMonths,
    /// Living at home again.
    GoingBack,
    /// What a sale brings of what was paid.
    KeptPercent,
    /// The months of a build.
    BuildMonths(usize),
    /// What can be taken out of it again.
    Removable(usize),
    /// What cannot.
    Fixed(usize),
    /// What is redone of it.
    Redone(usize),
}

/// All of them, for two ways.
const LEVERS: [Lever; 14] = [
    Lever::HomeMonthly,
    Lever::RoadMonthly,
    Lever::UnsuitedPercent,
    Lever::FindsOutMonths,
    Lever::GoingBack,
    Lever::KeptPercent,
    Lever::BuildMonths(0),
    Lever::Removable(0),
    Lever::Fixed(0),
    Lever::Redone(0),
    Lever::BuildMonths(1),
    Lever::Removable(1),
    Lever::Fixed(1),
    Lever::Redone(1),
];

/// How far the answer moves with one input. A difference is what the first way costs on average at the end less what
/// the second does, rounded to the minor unit: below nothing, the first is cheaper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Swing {
    /// The input.
    pub lever: Lever,
    /// The difference with its low value.
    pub at_low: Money,
    /// The difference with its high value.
    pub at_high: Money,
}

impl Swing {
    /// How far it moves the difference, never below nothing.
    pub fn size(&self) -> Money {
        let swing = self.at_high - self.at_low;
        if swing.is_negative() { -swing } else { swing }
    }

    /// Whether another way is cheaper at one end than at the other: then the answer hangs on this input alone.
    pub fn turns(&self) -> bool {
        self.at_low.is_negative() != self.at_high.is_negative()
    }
}

/// What the difference between two ways depends on: each input from its low to its high, all others at their likely
/// values, the widest swing first. Inputs that move nothing, such as those without a range, are left out.
///
/// One at a time is not all: inputs that go together can move the answer further. Common practice, no source.
///
/// ```
/// use kerbstead_core::money::futures::{Build, Lever, Question, Way, sensitivity};
/// use kerbstead_core::plan::{Estimate, Money};
/// let money = |units| Estimate::Plain(Money::whole(units));
/// let rent = Estimate::Range { low: Money::whole(700), likely: Money::whole(800), high: Money::whole(1_000) };
/// let question = Question {
///     months: 12, digits: 2, home_monthly: rent, road_monthly: money(500),
///     unsuited_percent: Estimate::Plain(0.into()), finds_out_months: Estimate::Plain(2),
///     going_back: money(0), kept_percent: Estimate::Plain(50.into()),
/// };
/// let fixed = Estimate::Range { low: Money::whole(300), likely: Money::whole(400), high: Money::whole(900) };
/// let build = Build { months: Estimate::Plain(0), removable: money(2_600), fixed, redone: money(0) };
/// let swings = sensitivity(&question, &Way::Leave(build), &Way::Stay);
/// // The rent of twelve months moves the difference by 12 times 300, from +600 to -3,000; the build by 600.
/// assert_eq!((swings[0].lever, swings[0].size()), (Lever::HomeMonthly, Money::whole(3_600)));
/// assert!(swings[0].turns());
/// assert_eq!((swings[1].lever, swings[1].size()), (Lever::Fixed(0), Money::whole(600)));
/// assert_eq!(swings.len(), 2);
/// ```
pub fn sensitivity(question: &Question, first: &Way, second: &Way) -> Vec<Swing> {
    let end = question.months.clamp(1, MOST_MONTHS);
    let difference = |lever, end_of_range| {
        let held = Held { lever: Some(lever), at: end_of_range };
        let expected = |way, at| Case::new(question, way, at, held).expected(end);
        (expected(first, 0) - expected(second, 1)).rounded(question.digits)
    };
    let mut swings = Vec::new();
    for lever in LEVERS {
        let swing = Swing { lever, at_low: difference(lever, End::Low), at_high: difference(lever, End::High) };
        if swing.size() > Money::ZERO {
            swings.push(swing);
        }
    }
    // The widest first; those of one width stay in their order.
    order::by_key(&swings, |swing| swings.iter().filter(|other| other.size() > swing.size()).count() as u64)
}

/// An end of a range.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum End {
    Low,
    High,
}

/// Which input is held at an end of its range; all others are likely.
#[derive(Clone, Copy)]
pub(super) struct Held {
    lever: Option<Lever>,
    at: End,
}

impl Held {
    /// None is.
    pub const LIKELY: Self = Self { lever: None, at: End::Low };

    /// The value of an input.
    pub fn of<T: Copy>(self, lever: Lever, estimate: &Estimate<T>) -> T {
        match self.at {
            _ if self.lever != Some(lever) => estimate.likely(),
            End::Low => estimate.low(),
            End::High => estimate.high(),
        }
    }
}
