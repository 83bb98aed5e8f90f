//! The changes of a plan, tried one after the other, for the worker.

use jiff::civil::Date;
use serde_json::Value;

use super::set::{MoveSet, SetSearch};
use super::{Candidate, Found, Move, tried};
use crate::Verdict;
use crate::assessment::{Again, Balance, Outcome};
use crate::plan::record::record;
use crate::plan::{Plain, Plan};
use crate::task::Task;

/// What was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Moves {
    /// The balances that fall short, or where none does those that are tight.
    pub wanting: Vec<Balance>,
    /// Whether they fall short.
    pub falls_short: bool,
    /// How many changes there are to try.
    pub to_try: u32,
    /// How many of them were tried.
    pub tried: u32,
    /// Those that mend something, the most worth first.
    pub moves: Vec<Move>,
    /// The cheapest set of them with which the plan holds, once it was looked for.
    pub set: Option<MoveSet>,
}

record!(Moves { wanting, falls_short, to_try, tried, moves, set });

/// [`Moves`] being worked out.
pub struct MovesTask {
    plan: Plan,
    as_of: Date,
    doing: Doing,
    found: Moves,
    /// How many changes were told of, and whether it was told that all were tried.
    told: (usize, bool),
}

enum Doing {
    Begin,
    Try { again: Box<Again>, candidates: Vec<Candidate>, outcomes: Vec<(Move, Outcome)> },
    Set { again: Box<Again>, search: Box<SetSearch> },
    Done,
}

/// The share of the trials in all of it.
const TRIALS: f64 = 0.5;

impl MovesTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date) -> Self {
        Self { plan: plan.clone(), as_of, doing: Doing::Begin, found: Moves::default(), told: (0, false) }
    }

    /// What came of it so far.
    pub fn moves(&self) -> Moves {
        self.found.clone()
    }

    fn begin(&mut self) -> Doing {
        let again = Box::new(Again::new(&self.plan, self.as_of));
        let before = again.before();
        let wanting = super::candidate::wanting(before);
        self.found.falls_short = wanting.iter().any(|balance| balance.verdict == Verdict::FallsShort);
        self.found.wanting = wanting.iter().map(|outlined| outlined.balance).collect();
        let candidates = Found::new(&self.plan, self.as_of, before).candidates;
        self.found.to_try = u32::try_from(candidates.len()).unwrap_or(u32::MAX);
        Doing::Try { again, candidates, outcomes: Vec::new() }
    }

    fn next(&mut self, doing: Doing) -> (Doing, f64) {
        match doing {
            Doing::Begin => (self.begin(), 0.05),
            Doing::Try { again, candidates, mut outcomes } => {
                let at = self.found.tried as usize;
                let Some(candidate) = candidates.get(at) else {
                    if !self.found.falls_short {
                        return (Doing::Done, 1.0);
                    }
                    let search = Box::new(SetSearch::new(&self.plan, &again, outcomes));
                    return (Doing::Set { again, search }, TRIALS);
                };
                self.found.tried += 1;
                if let Some((found, outcome)) = tried(&again, &self.plan, candidate) {
                    if found.mends > 0.0 {
                        self.rank(found.clone());
                    }
                    outcomes.push((found, outcome));
                }
                let share = f64::from(self.found.tried) / f64::from(self.found.to_try.max(1));
                (Doing::Try { again, candidates, outcomes }, 0.05 + share * (TRIALS - 0.05))
            }
            Doing::Set { again, mut search } => {
                let share = search.step(&self.plan, &again);
                if share < 1.0 {
                    return (Doing::Set { again, search }, TRIALS + share * (1.0 - TRIALS));
                }
                self.found.set = Some(search.end());
                (Doing::Done, 1.0)
            }
            Doing::Done => (Doing::Done, 1.0),
        }
    }

    /// Puts a change at its place among the others.
    fn rank(&mut self, found: Move) {
        let at = self.found.moves.partition_point(|other| other.worth() >= found.worth());
        self.found.moves.insert(at, found);
    }
}

impl Task for MovesTask {
    fn step(&mut self) -> f64 {
        let doing = std::mem::replace(&mut self.doing, Doing::Done);
        let (doing, share) = self.next(doing);
        self.doing = doing;
        share
    }

    fn so_far(&mut self) -> Option<Value> {
        let are_tried = self.found.tried == self.found.to_try;
        let told = std::mem::replace(&mut self.told, (self.found.moves.len(), are_tried));
        (self.told.0 > 0 && told != self.told).then(|| self.answer())
    }

    fn answer(&self) -> Value {
        self.found.to_plain()
    }
}
