//! Every schedule that could be better, looked at: branch and bound.
//!
//! A node is a partial schedule; its children place one more activity, at the first start that is free and not before
//! the start of the one placed last (the precedence tree of Patterson, Słowiński, Talbot and Węglarz, 1989, from memory).
//! Let a node be done when the best finish is no later than that of every schedule that goes on from it with starts not
//! before its last one. By the argument in [`super`], among the schedules that go on with the least finish, the one with
//! the least sum of starts is found below the node, and it stays so when these are left out:
//!
//! - an activity that could not start before another one could be done: that other one would fit in before it;
//! - a node after which something must end too late, alone or by what a resource has left until then;
//! - a node whose activities were all placed in a node done before, with no less left for everything else (Demeulemeester
//!   and Herroelen, "A branch-and-bound procedure for the multiple resource-constrained project scheduling problem", 1992,
//!   from memory): whatever goes on from here goes on from there.
//!
//! Milestones use nothing; they are placed as soon as what they come after is.

use super::Span;
use super::board::Board;
use super::bounds::{Store, latest_alone, stores};
use super::ground::Ground;
use super::memo::{Memo, Partial};
use super::serial::{Placement, Planner};
use crate::order;

/// The most activities, besides milestones: a bit for each.
pub(super) const MOST_ACTIVITIES: usize = 128;

pub(super) struct Tree {
    board: Board,
    stores: Vec<Store>,
    /// By store, what each activity needs of it.
    needs: Vec<Vec<u64>>,
    /// Those that work, each behind what it comes after, and the bit of each.
    works: Vec<usize>,
    bits: Vec<u128>,
    /// All must end by this slot to be better than what is known, and so each has a latest span.
    deadline: usize,
    latest: Vec<Span>,
    spans: Vec<Option<Span>>,
    waits_for: Vec<usize>,
    ready: Vec<usize>,
    /// What each step back must put right: whose readiness was changed, and what it was.
    trail: Vec<(usize, usize)>,
    frames: Vec<Frame>,
    choices: Vec<(usize, Span)>,
    running: Vec<(usize, Span)>,
    memo: Memo,
    is_done: bool,
}

struct Frame {
    placed: Option<usize>,
    set: u128,
    last_start: usize,
    reached: usize,
    trail: usize,
    first_choice: usize,
    next_choice: usize,
}

impl Tree {
    /// Looks for schedules that end by the deadline. None when there are too many activities.
    pub(super) fn new(planner: &Planner, deadline: usize) -> Option<Self> {
        let ground = &planner.ground;
        let works: Vec<usize> = ground.topo.iter().copied().filter(|at| ground.acts[*at].work > 0).collect();
        if works.len() > MOST_ACTIVITIES {
            return None;
        }
        let mut bits = vec![0; ground.acts.len()];
        for (bit, at) in works.iter().enumerate() {
            bits[*at] = 1_u128 << bit;
        }
        let stores = stores(ground);
        let mut needs = vec![vec![0; ground.acts.len()]; stores.len()];
        for (store, needs) in stores.iter().zip(&mut needs) {
            for (at, need) in &store.users {
                needs[*at] = *need;
            }
        }
        let mut tree = Self {
            board: Board::new(ground),
            stores,
            needs,
            works,
            bits,
            deadline,
            latest: Vec::new(),
            spans: vec![None; ground.acts.len()],
            waits_for: ground.after.iter().map(Vec::len).collect(),
            ready: ground.acts.iter().map(|act| act.earliest).collect(),
            trail: Vec::new(),
            frames: Vec::new(),
            choices: Vec::new(),
            running: Vec::new(),
            memo: Memo::new(),
            is_done: false,
        };
        tree.must_end_by(planner, deadline);
        tree.begin(ground);
        Some(tree)
    }

    /// From now on only what ends by this slot is of use.
    pub(super) fn must_end_by(&mut self, planner: &Planner, deadline: usize) {
        self.deadline = deadline;
        match latest_alone(&planner.mirror, deadline) {
            Some(latest) => self.latest = latest,
            None => self.is_done = true,
        }
        for store in &mut self.stores {
            store.users = order::by_key(&store.users, |(at, _)| self.latest.get(*at).map_or(0, |span| span.end) as u64);
        }
    }

    /// Whether nothing is left to look at.
    pub(super) fn is_done(&self) -> bool {
        self.is_done
    }

    /// Looks at so many nodes, or until a better schedule is found, which it gives.
    pub(super) fn step(&mut self, planner: &Planner, nodes: u32) -> Option<Placement> {
        let mut left = nodes;
        while left > 0 && !self.is_done {
            let Some((at, span)) = self.next_choice() else {
                self.step_back(&planner.ground);
                continue;
            };
            if span.start > self.latest[at].start {
                continue;
            }
            left -= 1;
            if !self.put(&planner.ground, at, span) {
                self.step_back(&planner.ground);
                continue;
            }
            if let Some(found) = self.look(&planner.ground) {
                self.must_end_by(planner, found.finish.saturating_sub(1));
                self.is_done |= found.finish == 0;
                return Some(found);
            }
        }
        None
    }

    fn next_choice(&mut self) -> Option<(usize, Span)> {
        let frame = self.frames.last_mut()?;
        let choice = self.choices.get(frame.next_choice).copied();
        frame.next_choice += 1;
        choice
    }

    /// The root: what needs nothing to begin is placed, if it is a milestone.
    fn begin(&mut self, ground: &Ground) {
        if self.is_done {
            return;
        }
        self.push_frame(None, Span::default());
        let firsts: Vec<usize> = ground.topo.iter().copied().filter(|at| ground.after[*at].is_empty()).collect();
        let mut is_possible = true;
        for at in firsts.into_iter().filter(|at| ground.acts[*at].work == 0) {
            is_possible &= self.pass(ground, at);
        }
        if !is_possible || self.works.is_empty() {
            self.is_done = true;
        } else {
            self.choose(ground);
        }
    }

    fn push_frame(&mut self, placed: Option<usize>, span: Span) {
        let (set, reached) = self.frames.last().map_or((0, 0), |frame| (frame.set, frame.reached));
        self.frames.push(Frame {
            placed,
            set: set | placed.map_or(0, |at| self.bits[at]),
            last_start: span.start,
            reached: reached.max(span.end),
            trail: self.trail.len(),
            first_choice: self.choices.len(),
            next_choice: self.choices.len(),
        });
    }

    /// Places an activity; whether what comes after it can still be in time.
    fn put(&mut self, ground: &Ground, at: usize, span: Span) -> bool {
        self.push_frame(Some(at), span);
        self.board.take(ground, at, span);
        self.spans[at] = Some(span);
        self.release(ground, at, span.end)
    }

    /// Tells what comes after that one has ended.
    fn release(&mut self, ground: &Ground, at: usize, end: usize) -> bool {
        let mut is_possible = true;
        for (later, wait) in &ground.before[at] {
            self.trail.push((*later, self.ready[*later]));
            self.ready[*later] = self.ready[*later].max(end + wait);
            self.waits_for[*later] -= 1;
            is_possible &= self.ready[*later] <= self.latest[*later].start;
            if self.waits_for[*later] == 0 && ground.acts[*later].work == 0 {
                is_possible &= self.pass(ground, *later);
            }
        }
        is_possible
    }

    /// Places a milestone.
    fn pass(&mut self, ground: &Ground, at: usize) -> bool {
        let ready = self.ready[at];
        self.spans[at] = Some(Span { start: ready, end: ready });
        if let Some(frame) = self.frames.last_mut() {
            frame.reached = frame.reached.max(ready);
        }
        self.release(ground, at, ready) && ready <= self.latest[at].start
    }

    fn step_back(&mut self, ground: &Ground) {
        let Some(frame) = self.frames.pop() else { return };
        while self.trail.len() > frame.trail {
            let Some((at, ready)) = self.trail.pop() else { break };
            self.ready[at] = ready;
            self.waits_for[at] += 1;
            if ground.acts[at].work == 0 {
                self.spans[at] = None;
            }
        }
        self.choices.truncate(frame.first_choice);
        match frame.placed {
            Some(at) => {
                if let Some(span) = self.spans[at].take() {
                    self.board.give_back(ground, at, span);
                }
            }
            None => self.is_done = true,
        }
    }

    /// What the new node is good for: a whole schedule, which it gives, or choices, if it can lead to something better.
    fn look(&mut self, ground: &Ground) -> Option<Placement> {
        if self.frames.len() > self.works.len() {
            let finish = self.frames.last().map_or(0, |frame| frame.reached);
            return (finish <= self.deadline).then(|| Placement { spans: self.spans.clone(), missing: 0, finish });
        }
        self.choose(ground);
        None
    }

    /// Adds the choices of the last node, the first start first.
    fn choose(&mut self, ground: &Ground) {
        let Some(Frame { last_start, first_choice, .. }) = self.frames.last() else { return };
        let (last_start, first) = (*last_start, *first_choice);
        let (mut next_start, mut first_end) = (usize::MAX, usize::MAX);
        for at in &self.works {
            if self.spans[*at].is_some() || self.waits_for[*at] > 0 {
                continue;
            }
            match self.board.earliest(ground, *at, self.ready[*at].max(last_start)) {
                Some(span) if span.start <= self.latest[*at].start => {
                    next_start = next_start.min(span.start);
                    first_end = first_end.min(span.end);
                    self.choices.push((*at, span));
                }
                _ => return self.choices.truncate(first),
            }
        }
        if self.is_overdrawn(ground, next_start) || self.is_known(next_start) {
            return self.choices.truncate(first);
        }
        let latest = &self.latest;
        let mut kept: Vec<_> = self.choices.drain(first..).filter(|(_, span)| span.start < first_end).collect();
        kept.sort_unstable_by_key(|(at, span)| (span.start, latest[*at].start, *at));
        self.choices.append(&mut kept);
    }

    /// Whether this, or something as good, was looked at before. If not, it will have been.
    fn is_known(&mut self, next_start: usize) -> bool {
        let Some(frame) = self.frames.last() else { return false };
        let partial = Partial {
            set: frame.set,
            last_start: frame.last_start,
            next_start,
            reached: frame.reached,
            spans: &self.spans,
            ready: &self.ready,
        };
        let is_known = self.memo.covers(&partial);
        if !is_known {
            self.memo.add(&partial, &self.works);
        }
        is_known
    }

    /// Whether some resource has too little left for what must be done with it by some slot.
    fn is_overdrawn(&mut self, ground: &Ground, from: usize) -> bool {
        self.running.clear();
        for at in &self.works {
            if let Some(span) = self.spans[*at].filter(|span| span.end > from) {
                self.running.push((*at, span));
            }
        }
        self.stores.iter().zip(&self.needs).any(|(store, needs)| {
            let mut need = 0;
            store.users.iter().filter(|(at, _)| self.spans[*at].is_none()).any(|(at, needs_each)| {
                need += needs_each * ground.acts[*at].work as u64;
                let to = self.latest[*at].end;
                let running = self.running.iter().filter(|(at, _)| needs[*at] > 0);
                let taken = running.map(|(at, span)| {
                    let act = &ground.acts[*at];
                    let slots = ground.open_before(act, span.end.min(to)) - ground.open_before(act, from.min(to));
                    needs[*at] * slots as u64
                });
                need + taken.sum::<u64>() > store.between(from, to)
            })
        })
    }
}
