//! Why all ends when it does: the chain of causes from the first activity to the last.

use super::board::Board;
use super::ground::Ground;
use super::{Schedule, Span, Workload};

/// A link of the chain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// The activity.
    pub activity: usize,
    /// Why it starts when it does.
    pub why: Why,
    /// How many slots lie between what it waited for and its start because it is not open in them.
    pub closed_slots: usize,
}

/// What an activity waited for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// Nothing: it starts as soon as anything could.
    Beginning,
    /// The slot from which on it may start.
    Earliest,
    /// The end of one that it comes after, and the slots of the clock between.
    After {
        /// The one before.
        activity: usize,
        /// The slots between.
        wait_slots: usize,
    },
    /// The end of one that held a resource it needs.
    Freed {
        /// The resource.
        resource: usize,
        /// Who held it.
        by: usize,
    },
    /// More of a resource, or a pause of one that holds it.
    Room {
        /// The resource.
        resource: usize,
        /// Who held the rest of it just before.
        beside: usize,
    },
    /// Nothing that is known: it could start earlier.
    Unforced,
}

impl Why {
    /// The activity it waited for.
    pub fn cause(self) -> Option<usize> {
        match self {
            Self::After { activity, .. } => Some(activity),
            Self::Freed { by, .. } => Some(by),
            Self::Room { beside, .. } => Some(beside),
            Self::Beginning | Self::Earliest | Self::Unforced => None,
        }
    }
}

/// From an activity that waited for no other one to the one that ends last, each the cause of the next. Empty when nothing
/// is placed. Such chains through resources are the critical sequence of Wiest, 1964 (from memory).
pub fn critical_chain(workload: &Workload, schedule: &Schedule) -> Vec<Link> {
    let ground = Ground::new(workload);
    let placed = Placed::new(&ground, schedule);
    let mut at = (0..ground.acts.len()).rev().filter(|at| placed.span(*at).is_some()).max_by_key(|at| placed.end(*at));
    let mut chain = Vec::new();
    while let Some(activity) = at {
        let link = placed.explain(activity);
        chain.push(link);
        // A schedule that was not made here might lead in a circle.
        at = link.why.cause().filter(|_| chain.len() < ground.acts.len());
    }
    chain.reverse();
    chain
}

struct Placed<'a> {
    ground: &'a Ground,
    board: Board,
    spans: Vec<Option<Span>>,
}

impl<'a> Placed<'a> {
    fn new(ground: &'a Ground, schedule: &Schedule) -> Self {
        let spans = sound_spans(ground, schedule);
        let mut board = Board::new(ground);
        for (at, span) in spans.iter().enumerate() {
            if let Some(span) = span {
                board.take(ground, at, *span);
            }
        }
        Self { ground, board, spans }
    }

    fn span(&self, at: usize) -> Option<Span> {
        self.spans[at]
    }

    fn end(&self, at: usize) -> usize {
        self.spans[at].map_or(0, |span| span.end)
    }

    fn explain(&self, activity: usize) -> Link {
        let start = self.spans[activity].map_or(0, |span| span.start);
        let (ready, why) = self.ready(activity);
        let first = self.ground.nominal(activity, ready).map_or(ready, |span| span.start);
        if first >= start {
            return Link { activity, why, closed_slots: start.saturating_sub(ready) };
        }
        let (why, since) = self.held_up(activity, first, start);
        Link { activity, why, closed_slots: start.saturating_sub(since) }
    }

    /// From when on it may start, and why not before.
    fn ready(&self, at: usize) -> (usize, Why) {
        let earliest = self.ground.acts[at].earliest;
        let mut found = (earliest, if earliest == 0 { Why::Beginning } else { Why::Earliest });
        for (of, wait) in &self.ground.after[at] {
            let ready = self.end(*of) + wait;
            if ready > found.0 || ready == found.0 && found.1.cause().is_none() {
                found = (ready, Why::After { activity: *of, wait_slots: *wait });
            }
        }
        found
    }

    /// What kept it from its last start before this one, and the slot from which on it no longer did.
    fn held_up(&self, activity: usize, first: usize, start: usize) -> (Why, usize) {
        let act = &self.ground.acts[activity];
        let mut board = self.board.clone();
        if let Some(span) = self.spans[activity] {
            board.give_back(self.ground, activity, span);
        }
        let nominal = |from: usize| self.ground.nominal(activity, from).filter(|span| span.start == from);
        let Some(before) = (first..start).rev().find_map(nominal) else { return (Why::Unforced, start) };
        let full = (before.start..before.end).rev().find_map(|slot| {
            let is_open = self.works_in(activity, before, slot);
            let lane = act.lanes.iter().copied().find(|lane| is_open && board.is_full(self.ground, *lane, slot));
            Some((slot, self.ground.lanes[lane?].resource))
        });
        let Some((slot, resource)) = full else { return (Why::Unforced, start) };
        self.holder(activity, resource, slot, start).unwrap_or((Why::Unforced, start))
    }

    /// Who held a resource in a slot: the last of those that ended before the start, or else the one that ends last.
    fn holder(&self, activity: usize, resource: usize, slot: usize, start: usize) -> Option<(Why, usize)> {
        let holders = (0..self.spans.len()).filter(|other| {
            let works = self.spans[*other].is_some_and(|span| self.works_in(*other, span, slot));
            works && *other != activity && self.ground.demand(*other, resource).is_some()
        });
        let last = holders.max_by_key(|other| (self.end(*other) <= start, self.end(*other)))?;
        if self.end(last) <= start {
            return Some((Why::Freed { resource, by: last }, self.end(last)));
        }
        Some((Why::Room { resource, beside: last }, slot + 1))
    }

    fn works_in(&self, at: usize, span: Span, slot: usize) -> bool {
        let act = &self.ground.acts[at];
        let is_open = self.ground.open_before(act, slot + 1) > self.ground.open_before(act, slot);
        is_open && span.start <= slot && slot < span.end
    }
}

/// The spans of a schedule, without any that this ground has no place for.
pub(super) fn sound_spans(ground: &Ground, schedule: &Schedule) -> Vec<Option<Span>> {
    let mut spans = vec![None; ground.acts.len()];
    for at in &ground.topo {
        let known = schedule.spans.get(*at).copied().flatten();
        spans[*at] = known.filter(|span| span.start <= span.end && span.end <= ground.slots);
    }
    spans
}
