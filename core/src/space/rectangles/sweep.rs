//! Places along the room: from one end to the other, wherever a rectangle ends.

use super::problem::{Bar, Problem};
use super::stack::{Heights, Stack, bits};
use super::sums::Sums;

/// Steps that may go into the heights of some of the rectangles, before they are taken to be possible.
const STEPS_OF_SOME: u32 = 4_000;
/// Steps that may go into the heights of all of them, before the answer is no longer a proof.
const STEPS_OF_ALL: u32 = 100_000;

/// How a search stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    Found,
    Impossible,
    /// Not all could be told.
    Unknown,
    Searching,
}

/// One choice: a piece that begins here, or going on to where the next one ends.
#[derive(Clone, Copy, Debug)]
struct Choice {
    at: i32,
    wasted: i64,
    /// What is tried next: each piece in each of its ways, then going on.
    next: usize,
    adds: bool,
    /// The heights of what is placed so far are known to be possible.
    checked: bool,
}

/// A search along the room. Every arrangement can be pushed to the near end and down until each rectangle touches
/// something, so each begins at the end of the room or where another one ends; these places are gone through in order.
/// At each the room across is shared out among those that cover it. What is left over there for good adds up, and there
/// is only so much area to spare.
pub(super) struct Sweep {
    problem: Problem,
    spare: i64,
    choices: Vec<Choice>,
    placed: Vec<Bar>,
    /// The piece and the way of each of `placed`, after the blocks.
    who: Vec<(usize, usize)>,
    left: u64,
    sums: Sums,
    stack: Stack,
    certain: bool,
    mirrored: bool,
    pub(super) steps: u64,
}

impl Sweep {
    pub(super) fn new(problem: Problem) -> Self {
        let count = problem.pieces.len();
        Self {
            spare: problem.spare_area(),
            choices: vec![Choice { at: 0, wasted: 0, next: 0, adds: false, checked: true }],
            placed: problem.blocks.clone(),
            who: Vec::new(),
            left: if count >= 64 { u64::MAX } else { (1 << count) - 1 },
            sums: Sums::new(&problem),
            stack: Stack::new(),
            certain: true,
            mirrored: problem.blocks.is_empty() && problem.reserves.is_empty(),
            steps: 0,
            problem,
        }
    }

    /// Goes on for so many steps.
    pub(super) fn step(&mut self, steps: u64) -> Outcome {
        let until = self.steps + steps;
        while self.steps < until {
            let Some(choice) = self.choices.last_mut() else {
                return if self.certain { Outcome::Impossible } else { Outcome::Unknown };
            };
            self.steps += 1;
            let tried = choice.next;
            choice.next += 1;
            let ways = 2 * self.problem.pieces.len();
            if self.left == 0 {
                if tried == 0 && self.all_stack() {
                    return Outcome::Found;
                }
                self.take_back();
            } else if tried < ways {
                self.add(tried / 2, tried % 2);
            } else if tried == ways {
                self.go_on();
            } else {
                self.take_back();
            }
        }
        Outcome::Searching
    }

    /// Where each piece came to lie: its number, along, across, and whether it is turned.
    pub(super) fn places(&self) -> Vec<(usize, i32, i32, bool)> {
        let blocks = self.problem.blocks.len();
        let bars = self.placed.iter().zip(&self.stack.across).skip(blocks);
        bars.zip(&self.who)
            .map(|((bar, across), (piece, way))| (self.problem.pieces[*piece].number, bar.from, *across, *way == 1))
            .collect()
    }

    fn all_stack(&mut self) -> bool {
        let mut steps = STEPS_OF_ALL;
        let heights = self.stack.search(&self.placed, self.problem.across, &mut steps);
        self.steps += u64::from(STEPS_OF_ALL - steps) / 8;
        self.certain &= heights != Heights::Unknown;
        heights == Heights::Found
    }

    fn add(&mut self, piece: usize, way: usize) {
        let Some(choice) = self.choices.last().copied() else { return };
        if self.left >> piece & 1 == 0 || self.twin_waits(piece) {
            return;
        }
        let Some((along, across)) = self.problem.pieces[piece].ways[way] else { return };
        let (from, to) = (choice.at, choice.at + along);
        if to > self.problem.along || (self.mirrored && piece == 0 && from + to > self.problem.along) {
            return;
        }
        if self.used_most(from, to) + across > self.problem.across {
            return;
        }
        let in_lower_half = self.mirrored && piece == 0;
        self.placed.push(Bar { from, to, across, fixed_at: None, in_lower_half });
        self.who.push((piece, way));
        self.left &= !(1 << piece);
        let next = if self.left == 0 { 0 } else { 2 * piece + 2 };
        self.choices.push(Choice { next, adds: true, checked: false, ..choice });
    }

    /// Equal pieces are taken in the order of their numbers.
    fn twin_waits(&self, piece: usize) -> bool {
        piece > 0
            && self.left >> (piece - 1) & 1 == 1
            && self.problem.pieces[piece - 1].ways == self.problem.pieces[piece].ways
    }

    fn go_on(&mut self) {
        let Some(choice) = self.choices.last().copied() else { return };
        // What is pushed to the near end stops where something ends, and where there need be no way any more.
        let ends = self.placed.iter().map(|bar| bar.to).chain(self.problem.reserves.iter().map(|part| part.to));
        let Some(next) = ends.filter(|end| *end > choice.at).min() else { return };
        for piece in bits(self.left) {
            if next + self.problem.pieces[piece].least_along() > self.problem.along {
                return;
            }
        }
        let wasted = choice.wasted + self.lost(choice.at, next, false);
        if wasted > self.spare || wasted + self.lost(next, self.problem.along, true) > self.spare {
            return;
        }
        if !choice.checked {
            let mut steps = STEPS_OF_SOME;
            let heights = self.stack.search(&self.placed, self.problem.across, &mut steps);
            self.steps += u64::from(STEPS_OF_SOME - steps) / 8;
            if heights == Heights::None {
                return;
            }
        }
        self.choices.push(Choice { at: next, wasted, next: 0, adds: false, checked: true });
    }

    fn take_back(&mut self) {
        if self.choices.pop().is_some_and(|choice| choice.adds)
            && let (Some(_), Some((piece, _))) = (self.placed.pop(), self.who.pop())
        {
            self.left |= 1 << piece;
        }
    }

    /// What is used across at one place along.
    fn used(&self, at: i32) -> i32 {
        let bars = self.placed.iter().filter(|bar| bar.from <= at && at < bar.to).map(|bar| bar.across);
        let reserves = self.problem.reserves.iter().filter(|part| part.from <= at && at < part.to);
        bars.sum::<i32>() + reserves.map(|part| part.across).sum::<i32>()
    }

    fn used_most(&self, from: i32, to: i32) -> i32 {
        let begins = self.problem.blocks.iter().map(|bar| bar.from);
        let begins = begins.chain(self.problem.reserves.iter().map(|part| part.from));
        let inside = begins.filter(|begin| from < *begin && *begin < to).map(|begin| self.used(begin)).max();
        self.used(from).max(inside.unwrap_or(0))
    }

    /// The area between two places that stays empty: all that is free, or, `at_least`, what no sum of the pieces that
    /// are left can fill.
    fn lost(&mut self, from: i32, to: i32, at_least: bool) -> i64 {
        if at_least {
            self.sums.of(self.left);
        }
        let (mut at, mut lost) = (from, 0);
        while at < to {
            let edges = self.placed.iter().flat_map(|bar| [bar.from, bar.to]);
            let edges = edges.chain(self.problem.reserves.iter().flat_map(|part| [part.from, part.to]));
            let next = edges.filter(|edge| *edge > at).min().map_or(to, |edge| edge.min(to));
            let free = self.problem.across - self.used(at);
            let filled = if at_least { self.sums.most_within(free) } else { 0 };
            lost += i64::from(free - filled) * i64::from(next - at);
            at = next;
        }
        lost
    }
}
