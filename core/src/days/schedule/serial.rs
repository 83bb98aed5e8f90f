//! Serial placement: a list, one by one, each as early as can be beside those before it.

use super::board::Board;
use super::ground::Ground;
use super::hindrance::told;
use super::{Schedule, Span, Workload};
use crate::order;

/// A ground, its mirror, and a board for each, used again and again.
#[derive(Clone)]
pub(super) struct Planner {
    pub(super) ground: Ground,
    pub(super) mirror: Ground,
    board: Board,
    mirror_board: Board,
}

/// Spans of a placement.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Placement {
    pub(super) spans: Vec<Option<Span>>,
    /// How many of those that could be placed alone found no place.
    pub(super) missing: usize,
    pub(super) finish: usize,
}

impl Placement {
    pub(super) fn is_better_than(&self, other: &Self) -> bool {
        (self.missing, self.finish) < (other.missing, other.finish)
    }

    pub(super) fn start(&self, at: usize) -> usize {
        self.spans[at].map_or(usize::MAX, |span| span.start)
    }
}

impl Planner {
    pub(super) fn new(workload: &Workload) -> Self {
        Self::on(Ground::new(workload))
    }

    pub(super) fn on(ground: Ground) -> Self {
        let mirror = ground.mirrored();
        Self { board: Board::new(&ground), mirror_board: Board::new(&mirror), ground, mirror }
    }

    /// Places a list in which each stands behind what it comes after.
    pub(super) fn place(&mut self, list: &[usize]) -> Placement {
        serial(&self.ground, &mut self.board, list, 0)
    }

    /// Places each as late as can be, so that all still ends by the same finish; the last end first. What it gives is
    /// in the time of the mirror. All must have been placed.
    pub(super) fn place_late(&mut self, placement: &Placement) -> Placement {
        let ground = &self.ground;
        let end = |at: usize| placement.spans[at].map_or(0, |span| ground.mirrored_span(span).start);
        let list = by_time(&self.mirror, end);
        serial(&self.mirror, &mut self.mirror_board, &list, ground.slots - placement.finish.min(ground.slots))
    }

    /// Pushes all to the right and back to the left, as long as the finish gets earlier: Valls, Ballestín and
    /// Quintanilla, "Justification and RCPSP", 2005 (from memory).
    pub(super) fn justified(&mut self, mut placement: Placement) -> Placement {
        while placement.missing == 0 {
            let late = self.place_late(&placement);
            if late.missing > 0 {
                break;
            }
            let ground = &self.ground;
            let start = |at: usize| late.spans[at].map_or(0, |span| ground.mirrored_span(span).start);
            let list = by_time(ground, start);
            let early = self.place(&list);
            let is_better = early.is_better_than(&placement);
            placement = if early.finish <= placement.finish { early } else { placement };
            if !is_better {
                break;
            }
        }
        placement
    }

    /// A placement as it is told.
    pub(super) fn schedule(&self, placement: &Placement) -> Schedule {
        let mut order = by_time(&self.ground, |at| placement.start(at));
        order.retain(|at| placement.spans[*at].is_some());
        Schedule {
            finish: placement.finish,
            order,
            not_placed: told(&self.ground, |at| placement.spans[at].is_some()),
            spans: placement.spans.clone(),
        }
    }
}

/// What can be placed, by a time; of the same time what comes before stands before.
pub(super) fn by_time(ground: &Ground, time: impl Fn(usize) -> usize) -> Vec<usize> {
    let keys = ground.topo.iter().map(|at| time(*at) as u64);
    order::sorted(keys).into_iter().map(|(_, place)| ground.topo[place]).collect()
}

/// Places a list on an empty board, nothing before a slot.
pub(super) fn serial(ground: &Ground, board: &mut Board, list: &[usize], from: usize) -> Placement {
    board.clear(ground);
    let mut placement = Placement { spans: vec![None; ground.acts.len()], ..Placement::default() };
    for at in list {
        let ready = ready(ground, *at, &placement.spans).map(|ready| ready.max(from));
        match ready.and_then(|ready| board.earliest(ground, *at, ready)) {
            Some(span) => {
                board.take(ground, *at, span);
                placement.finish = placement.finish.max(span.end);
                placement.spans[*at] = Some(span);
            }
            None => placement.missing += 1,
        }
    }
    placement
}

/// When an activity may start, after what it comes after; none when one of them is not placed.
pub(super) fn ready(ground: &Ground, at: usize, spans: &[Option<Span>]) -> Option<usize> {
    let mut ready = ground.acts[at].earliest;
    for (of, wait) in &ground.after[at] {
        ready = ready.max(spans[*of]?.end + wait);
    }
    Some(ready)
}
