//! The cheapest set of changes with which the plan holds.
//!
//! Effects are not additive: two stops may do what neither does, and two savings may overlap. So what is searched is what they
//! would be if they were ([`pick`](super::pick)), and what comes of it is assessed as a whole plan. A set that does not hold
//! is refused, what still falls short is asked for more of, and the search goes on. What is found is proven when every
//! cheaper set was assessed too and does not hold, or when all that is missing is money, which is added up exactly.

use super::constants::{MOST_IN_SEARCH, MOST_PROVED, MOST_ROUNDS, PARTS_OF_A_DAY};
use super::limits::limits;
use super::pick::{Choice, PickSearch};
use super::proof::cheaper_sets;
use super::worth::{Effect, effects};
use super::{Change, Move};
use crate::assessment::{Again, Outcome};
use crate::plan::record::record;
use crate::plan::{Edit, Id, Money, Plan};
use crate::{Balance, Verdict};

/// A set of changes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MoveSet {
    /// Whether one was found with which nothing falls short.
    pub is_found: bool,
    /// Whether it is proven that none of these changes do it for less.
    pub is_proven: bool,
    /// The changes, each with what it does by itself. Where none was found, those that mend most.
    pub moves: Vec<Move>,
    /// All of them as one.
    pub edit: Edit,
    /// What they do together.
    pub effects: Vec<Effect>,
    /// How much more cash is there at the end of the plan; less, if negative.
    pub money: Money,
    /// What they cost, in days on the road: the sum of each by itself.
    pub cost_days: f64,
    /// How many sets were assessed.
    pub assessed: u32,
    /// Among how many changes was searched.
    pub among: u32,
    /// Where none was found: the balances that fall short even with `moves`, those that mend most, all together.
    pub still_short: Vec<Balance>,
}

record!(MoveSet { is_found, is_proven, moves, edit, effects, money, cost_days, assessed, among, still_short });

/// The search, in steps of one assessment each.
pub struct SetSearch {
    /// The changes that mend a part of something.
    moves: Vec<(Move, Outcome)>,
    costs: Vec<u64>,
    choice: Choice,
    /// Which balance each limit of the choice is of.
    limits: Vec<Balance>,
    doing: Doing,
    rounds: u32,
    assessed: Vec<Vec<usize>>,
    best: Option<(Vec<usize>, u64)>,
    is_proven: bool,
    /// Whether what was asked for is still what is needed, so that the picks are the cheapest there can be.
    is_exact: bool,
    answer: MoveSet,
}

enum Doing {
    Pick(Box<PickSearch>),
    Assess(Vec<usize>),
    /// All that mends most, together: no set was found that does.
    All,
    /// Without each of the best set in turn.
    Thin(usize),
    Prove(Vec<Vec<usize>>),
    Done,
}

impl SetSearch {
    /// Begins, with what each change does by itself.
    pub fn new(plan: &Plan, again: &Again, outcomes: Vec<(Move, Outcome)>) -> Self {
        let before = again.before();
        let short: Vec<Balance> = super::candidate::wanting(before).iter().map(|outlined| outlined.balance).collect();
        let mut moves: Vec<(Move, Outcome)> =
            outcomes.into_iter().filter(|(_, outcome)| helps(before, outcome, &short)).collect();
        moves.sort_by(|(a, _), (b, _)| b.worth().total_cmp(&a.worth()));
        moves.truncate(MOST_IN_SEARCH);
        let costs: Vec<u64> = moves.iter().map(|(found, _)| parts(found.cost_days)).collect();
        let limits = limits(before, plan.purse.floor, &moves, &short);
        let groups = groups(&moves);
        let mut search = Self {
            choice: Choice {
                costs: costs.clone(),
                groups,
                needs: limits.needs,
                effects: limits.effects,
                refused: Vec::new(),
            },
            limits: limits.balances,
            is_exact: short == [Balance::Money],
            moves,
            costs,
            doing: Doing::Done,
            rounds: 0,
            assessed: Vec::new(),
            best: None,
            is_proven: false,
            answer: MoveSet::default(),
        };
        search.doing = search.pick();
        search
    }

    /// Goes on; gives the share that is done.
    pub fn step(&mut self, plan: &Plan, again: &Again) -> f64 {
        let doing = std::mem::replace(&mut self.doing, Doing::Done);
        self.doing = match doing {
            Doing::Pick(mut search) => {
                if search.step() < 1.0 {
                    Doing::Pick(search)
                } else {
                    let picked = search.best();
                    match picked.chosen {
                        Some(chosen) if self.rounds < MOST_ROUNDS => Doing::Assess(chosen),
                        _ => Doing::All,
                    }
                }
            }
            Doing::Assess(chosen) => {
                self.rounds += 1;
                match self.assess(plan, again, &chosen) {
                    Some(after) if after.holds() => self.take(chosen),
                    after => {
                        self.ask_for_more(after.as_ref());
                        self.choice.refused.push(chosen);
                        self.pick()
                    }
                }
            }
            Doing::All => self.take_all(plan, again),
            Doing::Thin(at) => self.thin(plan, again, at),
            Doing::Prove(mut sets) => match sets.pop() {
                None => {
                    self.is_proven = true;
                    Doing::Done
                }
                Some(set) => {
                    if self.is_cheaper(&set) && self.assess(plan, again, &set).is_some_and(|after| after.holds()) {
                        let cost = self.cost(&set);
                        self.best = Some((set, cost));
                    }
                    Doing::Prove(sets)
                }
            },
            Doing::Done => Doing::Done,
        };
        if let Doing::Done = self.doing {
            self.tell(plan, again);
            return 1.0;
        }
        let sets = MOST_ROUNDS + MOST_PROVED;
        (self.assessed.len() as f64 / f64::from(sets)).min(0.99)
    }

    /// What was found.
    pub fn end(self) -> MoveSet {
        self.answer
    }

    fn pick(&self) -> Doing {
        if self.moves.is_empty() { Doing::Done } else { Doing::Pick(Box::new(PickSearch::new(&self.choice))) }
    }

    fn cost(&self, set: &[usize]) -> u64 {
        set.iter().filter_map(|at| self.costs.get(*at)).sum()
    }

    fn is_cheaper(&self, set: &[usize]) -> bool {
        self.best.as_ref().is_none_or(|(_, cost)| self.cost(set) < *cost)
    }

    fn assess(&mut self, plan: &Plan, again: &Again, set: &[usize]) -> Option<Outcome> {
        self.assessed.push(set.to_vec());
        if let [only] = set {
            return self.moves.get(*only).map(|(_, outcome)| outcome.clone());
        }
        let mut changed = plan.clone();
        self.edit_of(plan, set).apply(&mut changed).ok()?;
        Some(again.outcome(&changed))
    }

    /// The changes of a set as one; entries that are new get ids of their own.
    fn edit_of(&self, plan: &Plan, set: &[usize]) -> Edit {
        let edits = set.iter().filter_map(|at| self.moves.get(*at)).map(|(found, _)| found.edit.clone());
        let count = edits.clone().filter(|edit| matches!(edit, Edit::Insert { .. })).count();
        let mut ids = plan.next_ids(count).into_iter();
        Edit::all(edits.map(|edit| with_id(edit, &mut ids)))
    }

    /// A set that holds: can anything of it be left? If it is the cheapest there can be, that is all.
    fn take(&mut self, chosen: Vec<usize>) -> Doing {
        let cost = self.cost(&chosen);
        self.best = Some((chosen, cost));
        if self.is_exact && self.is_all_money(cost) {
            self.is_proven = true;
            return Doing::Done;
        }
        Doing::Thin(0)
    }

    /// Whether every change that costs less keeps the days of the plan, and so does no more to the cash than its flows.
    fn is_all_money(&self, cost: u64) -> bool {
        let mut cheaper = self.moves.iter().zip(&self.costs).filter(|(_, single)| **single < cost);
        cheaper.all(|((found, _), _)| found.change != Change::Leave)
    }

    fn thin(&mut self, plan: &Plan, again: &Again, at: usize) -> Doing {
        let Some((best, cost)) = self.best.clone() else { return Doing::Done };
        let Some(left) = best.get(at) else {
            let sets = cheaper_sets(&self.costs, &self.choice.groups, cost, MOST_PROVED as usize);
            return match sets {
                // The cheapest last, for they are taken from the end.
                Some(sets) => Doing::Prove(sets.into_iter().filter(|set| !self.assessed.contains(set)).collect()),
                None => Doing::Done,
            };
        };
        let without: Vec<usize> = best.iter().copied().filter(|other| other != left).collect();
        if !without.is_empty()
            && !self.assessed.contains(&without)
            && self.assess(plan, again, &without).is_some_and(|after| after.holds())
        {
            let cost = self.cost(&without);
            self.best = Some((without, cost));
            return Doing::Thin(at);
        }
        Doing::Thin(at + 1)
    }

    /// What still falls short was asked for too little of: where effects are not added up exactly, more is asked for.
    fn ask_for_more(&mut self, after: Option<&Outcome>) {
        let Some(after) = after else { return };
        let is_short =
            |balance: &Balance| after.balance(*balance).is_some_and(|outlined| outlined.verdict == Verdict::FallsShort);
        for (need, balance) in self.choice.needs.iter_mut().zip(&self.limits) {
            if *balance != Balance::Money && is_short(balance) {
                *need += *need / MORE + 1;
                self.is_exact = false;
            }
        }
    }

    fn tell(&mut self, plan: &Plan, again: &Again) {
        let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        self.answer.assessed = count(self.assessed.len());
        self.answer.among = count(self.moves.len());
        let Some((best, cost)) = self.best.clone() else { return };
        let edit = self.edit_of(plan, &best);
        let mut changed = plan.clone();
        if edit.clone().apply(&mut changed).is_err() {
            return;
        }
        let (before, after) = (again.before(), again.outcome(&changed));
        self.answer = MoveSet {
            is_found: true,
            is_proven: self.is_proven,
            moves: best.iter().filter_map(|at| self.moves.get(*at)).map(|(found, _)| found.clone()).collect(),
            edit,
            effects: effects(before, &after),
            money: after.cash_at_end() - before.cash_at_end(),
            cost_days: cost as f64 / PARTS_OF_A_DAY,
            still_short: Vec::new(),
            ..self.answer.clone()
        };
    }
}

impl SetSearch {
    /// What the changes that mend most come to together: if even that does not hold, it is told how far it comes.
    fn take_all(&mut self, plan: &Plan, again: &Again) -> Doing {
        let mends = |at: &usize| self.moves.get(*at).map_or(0.0, |(found, _)| found.mends);
        let mut set: Vec<usize> = (0..self.moves.len()).filter(|at| mends(at) > 0.0).collect();
        for group in &self.choice.groups {
            let most = group.iter().copied().max_by(|a, b| mends(a).total_cmp(&mends(b)));
            set.retain(|at| Some(*at) == most || !group.contains(at));
        }
        let Some(after) = self.assess(plan, again, &set) else { return Doing::Done };
        if after.holds() && !set.is_empty() {
            self.is_exact = false;
            return self.take(set);
        }
        let is_short = |outlined: &&crate::Outlined| outlined.verdict == Verdict::FallsShort;
        self.answer.still_short = after.balances.iter().filter(is_short).map(|outlined| outlined.balance).collect();
        self.answer.effects = effects(again.before(), &after);
        self.answer.moves = set.iter().filter_map(|at| self.moves.get(*at)).map(|(found, _)| found.clone()).collect();
        Doing::Done
    }
}

/// By what part of itself more is asked for of what still falls short.
const MORE: i64 = 4;

/// Whether a change mends a part of any of these balances.
fn helps(before: &Outcome, after: &Outcome, short: &[Balance]) -> bool {
    let pairs = before.balances.iter().zip(&after.balances);
    pairs.filter(|(was, _)| short.contains(&was.balance)).any(|(was, is)| super::worth::mended(was, is, true) > 0.0)
}

/// Changes of the same entry exclude each other; stops at a place on several days do not.
fn groups(moves: &[(Move, Outcome)]) -> Vec<Vec<usize>> {
    let mut groups: Vec<(Id, Vec<usize>)> = Vec::new();
    for (at, (found, _)) in
        moves.iter().enumerate().filter(|(_, (found, _))| !matches!(found.change, Change::Stop | Change::WaterStop))
    {
        match groups.iter_mut().find(|(id, _)| *id == found.id) {
            Some((_, group)) => group.push(at),
            None => groups.push((found.id, vec![at])),
        }
    }
    groups.into_iter().map(|(_, group)| group).filter(|group| group.len() > 1).collect()
}

fn with_id(edit: Edit, ids: &mut impl Iterator<Item = Id>) -> Edit {
    match edit {
        Edit::Insert { list, at, mut entry } => {
            if let (Some(id), Some(place)) = (ids.next(), entry.get_mut("id")) {
                *place = id.into();
            }
            Edit::Insert { list, at, entry }
        }
        other => other,
    }
}

/// Days on the road in whole parts, up.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped just before
fn parts(days: f64) -> u64 {
    (libm::ceil(days * PARTS_OF_A_DAY)).clamp(1.0, 1e12) as u64
}
