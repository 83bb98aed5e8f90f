//! Which of the plans is better under an assumption.

use super::assumptions::Assumption;
use crate::assessment::{Assessment, Verdict};
use crate::plan::Money;
use crate::plan::record::{record, words};

/// What becomes of the plans under one assumption.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Under {
    /// Which.
    pub assumption: Assumption,
    /// What each plan comes to.
    pub outcomes: Vec<Outcome>,
    /// The plans than which none is better, where another one is worse; all false where none is better.
    pub best: Vec<bool>,
    /// What makes them better.
    pub by: By,
    /// Whether other plans are best than as planned.
    pub turns: bool,
}

record!(Under { assumption, outcomes, best, by, turns });

/// What a plan comes to under an assumption.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Outcome {
    /// Whether the assumption changes anything about the plan.
    pub is_changed: bool,
    /// How many balances hold.
    pub hold: u32,
    /// How many last, but with less to spare than is usual.
    pub tight: u32,
    /// How many fall short.
    pub short: u32,
    /// How many are not known.
    pub unknown: u32,
    /// The cash at the end, where it is known.
    pub cash_at_end: Option<Money>,
}

record!(Outcome { is_changed, hold, tight, short, unknown, cash_at_end });

/// What makes a plan better than others. Plans are told apart by each of these in turn; this is the last that was
/// needed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum By {
    /// Nothing does.
    #[default]
    Nothing,
    /// Fewer balances fall short, of those that are known of all plans.
    Short,
    /// More of them hold with what is usual to spare.
    Hold,
    /// There is more cash at the end.
    Cash,
}

words!(By { Nothing = "nothing", Short = "short", Hold = "hold", Cash = "cash" });

/// What is kept of an assessment.
#[derive(Clone, Debug)]
pub(super) struct Kept {
    pub(super) is_changed: bool,
    verdicts: Vec<Verdict>,
    cash_at_end: Option<Money>,
}

impl Kept {
    pub(super) fn new(assessment: &Assessment, is_changed: bool) -> Self {
        let last = assessment.money.days.last();
        let is_known = assessment.money.standing.verdict != Verdict::Unknown;
        Self {
            is_changed,
            verdicts: assessment.verdicts().into_iter().map(|(_, verdict)| verdict).collect(),
            cash_at_end: last.filter(|_| is_known).map(|day| day.closing),
        }
    }

    fn outcome(&self) -> Outcome {
        let count = |wanted: Verdict| {
            let count = self.verdicts.iter().filter(|verdict| **verdict == wanted).count();
            u32::try_from(count).unwrap_or(u32::MAX)
        };
        Outcome {
            is_changed: self.is_changed,
            hold: count(Verdict::Holds),
            tight: count(Verdict::Tight),
            short: count(Verdict::FallsShort),
            unknown: count(Verdict::Unknown),
            cash_at_end: self.cash_at_end,
        }
    }
}

/// All assumptions, each with what the plans come to under it; the plain case first.
pub(super) fn under(kept: &[(Assumption, Vec<Kept>)], same_currency: bool) -> Vec<Under> {
    let mut all: Vec<Under> = Vec::new();
    for (assumption, kept) in kept {
        let (best, by) = best(kept, same_currency);
        let turns = all.first().is_some_and(|plain| plain.best != best);
        let outcomes = kept.iter().map(Kept::outcome).collect();
        all.push(Under { assumption: *assumption, outcomes, best, by, turns });
    }
    all
}

/// The best plans, and what makes them so.
fn best(kept: &[Kept], same_currency: bool) -> (Vec<bool>, By) {
    let of_all = |at: usize| kept.iter().all(|kept| kept.verdicts.get(at).is_some_and(|it| *it != Verdict::Unknown));
    let count = |wanted: Verdict| -> Vec<i64> {
        let known = |kept: &Kept| {
            let verdicts = kept.verdicts.iter().enumerate();
            verdicts.filter(|(at, verdict)| **verdict == wanted && of_all(*at)).map(|_| 1).sum()
        };
        kept.iter().map(known).collect()
    };
    let mut best = vec![true; kept.len()];
    let mut by = By::Nothing;
    let fewest: Vec<i64> = count(Verdict::FallsShort).into_iter().map(|count| -count).collect();
    keep_most(&mut best, &mut by, By::Short, &fewest);
    keep_most(&mut best, &mut by, By::Hold, &count(Verdict::Holds));
    let cash: Option<Vec<Money>> = kept.iter().map(|kept| kept.cash_at_end).collect();
    if let Some(cash) = cash.filter(|_| same_currency) {
        keep_most(&mut best, &mut by, By::Cash, &cash);
    }
    if by == By::Nothing { (vec![false; kept.len()], by) } else { (best, by) }
}

/// Of those that are best so far, those that have the most. What tells some of them apart last is why they are best.
fn keep_most<T: Ord + Copy>(best: &mut [bool], by: &mut By, why: By, have: &[T]) {
    let most = best.iter().zip(have).filter(|(is_best, _)| **is_best).map(|(_, has)| *has).max();
    let Some(most) = most else { return };
    for (is_best, has) in best.iter_mut().zip(have) {
        if *is_best && *has < most {
            *is_best = false;
            *by = why;
        }
    }
}
