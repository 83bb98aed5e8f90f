//! Good schedules without proof: priority rules, and small changes of a list that are kept when they do no harm.

use super::bounds::{earliest_alone, latest_alone};
use super::ground::Ground;
use super::serial::{Placement, Planner, by_time};
use crate::draws::Chance;

/// The best of several rules, each pushed to and fro. `bound` is a finish that cannot be beaten.
pub(super) fn by_rules(planner: &mut Planner, bound: usize) -> Placement {
    let mut best: Option<Placement> = None;
    let is_large = planner.ground.acts.len() > MOST_FOR_ALL_RULES;
    let lists = lists_by_rules(&planner.ground, &planner.mirror, bound);
    for list in lists.into_iter().take(if is_large { 2 } else { usize::MAX }) {
        let mut placed = planner.place(&list);
        if !is_large {
            placed = planner.justified(placed);
        }
        if best.as_ref().is_none_or(|best| placed.is_better_than(best)) {
            best = Some(placed);
        }
        if best.as_ref().is_some_and(|best| best.missing == 0 && best.finish <= bound) {
            break;
        }
    }
    best.unwrap_or_default()
}

/// Of more activities two rules are tried, and nothing is pushed: whoever types does not wait for it.
const MOST_FOR_ALL_RULES: usize = 150;

/// The order in which they are given, where that can be kept; then latest start, latest end, most work behind it, most activities behind it, first come first served: the rules of
/// Kolisch, "Serial and parallel resource-constrained project scheduling methods revisited", 1996 (from memory).
fn lists_by_rules(ground: &Ground, mirror: &Ground, bound: usize) -> Vec<Vec<usize>> {
    let earliest = earliest_alone(ground, 0).unwrap_or_default();
    let latest = latest_alone(mirror, bound).unwrap_or_else(|| earliest.clone());
    let (count, work) = behind(ground);
    vec![
        by_time(ground, |at| at),
        by_time(ground, |at| latest[at].start),
        by_time(ground, |at| latest[at].end),
        by_time(ground, |at| usize::MAX - work[at]),
        by_time(ground, |at| usize::MAX - count[at]),
        by_time(ground, |at| earliest[at].start),
        by_time(ground, |at| earliest[at].start + latest[at].end),
    ]
}

/// How many activities lie behind each, and the work of it and all of them.
fn behind(ground: &Ground) -> (Vec<usize>, Vec<usize>) {
    let count = ground.acts.len();
    let words = count.div_ceil(64);
    let mut sets = vec![0_u64; count * words];
    let (mut counts, mut sums) = (vec![0; count], vec![0; count]);
    for at in ground.topo.iter().rev() {
        let mut set = vec![0; words];
        for (later, _) in &ground.before[*at] {
            set[later / 64] |= 1 << (later % 64);
            for (word, other) in set.iter_mut().zip(&sets[later * words..]) {
                *word |= other;
            }
        }
        sums[*at] = ground.acts[*at].work + members(&set).map(|later| ground.acts[later].work).sum::<usize>();
        counts[*at] = members(&set).count();
        sets[at * words..][..words].copy_from_slice(&set);
    }
    (counts, sums)
}

fn members(set: &[u64]) -> impl Iterator<Item = usize> {
    set.iter()
        .enumerate()
        .flat_map(|(at, word)| (0..64).filter(move |bit| word >> bit & 1 == 1).map(move |bit| at * 64 + bit))
}

/// After so many changes in a row without a better finish, more is changed at once.
const STUCK_AFTER: u32 = 3_000;

/// Changes lists at random, from a seed, and keeps what does no harm.
pub(super) struct Climber {
    list: Vec<usize>,
    current: Placement,
    chance: Chance,
    stuck: u32,
}

impl Climber {
    pub(super) fn new(planner: &Planner, start: &Placement) -> Self {
        let list = by_time(&planner.ground, |at| start.start(at));
        Self { list, current: start.clone(), chance: Chance::new(1), stuck: 0 }
    }

    /// One change. Gives the schedule when it is better than the best.
    pub(super) fn round(&mut self, planner: &mut Planner, best: &Placement) -> Option<Placement> {
        let is_stuck = self.stuck >= STUCK_AFTER;
        let moves = if is_stuck { 8 } else { 1 + self.chance.below(3) };
        if is_stuck && self.chance.below(2) == 0 {
            self.list = by_time(&planner.ground, |at| best.start(at));
        }
        let mut list = self.list.clone();
        for _ in 0..moves {
            self.move_one(&planner.ground, &mut list);
        }
        let mut placed = planner.place(&list);
        // Pushing to and fro takes two more placements, so only for what comes near.
        if is_stuck || placed.missing == 0 && placed.finish <= self.current.finish + self.current.finish / 64 {
            placed = planner.justified(placed);
        }
        self.stuck = if is_stuck { 0 } else { self.stuck + 1 };
        if is_stuck || !self.current.is_better_than(&placed) {
            self.list = by_time(&planner.ground, |at| placed.start(at));
            self.current = placed;
        }
        if !self.current.is_better_than(best) {
            return None;
        }
        self.stuck = 0;
        Some(self.current.clone())
    }

    /// Moves one activity to another place between what it comes after and what comes after it.
    fn move_one(&mut self, ground: &Ground, list: &mut [usize]) {
        let from = self.chance.below(u32::try_from(list.len()).unwrap_or(u32::MAX)) as usize;
        let Some(at) = list.get(from).copied() else { return };
        let comes_after = |other: &usize| ground.after[at].iter().any(|(of, _)| of == other);
        let comes_before = |other: &usize| ground.before[at].iter().any(|(later, _)| later == other);
        let least = list[..from].iter().rposition(comes_after).map_or(0, |place| place + 1);
        let most = list[from..].iter().position(comes_before).map_or(list.len(), |place| from + place) - 1;
        let to = least + self.chance.below(u32::try_from(most + 1 - least).unwrap_or(u32::MAX)) as usize;
        if to < from {
            list[to..=from].rotate_right(1);
        } else {
            list[from..=to].rotate_left(1);
        }
    }
}
