//! Do these rectangles fit on that floor, square to its walls? Decided, not tried: yes with places, or no.
//!
//! ```
//! use kerbstead_core::space::rectangles::{Decision, Rectangle, Room, fits_rectangles};
//! let box_of = |length_mm, width_mm| Rectangle { length_mm, width_mm, may_turn: true };
//! let room = Room::empty(2_600, 1_700);
//! let kit = [box_of(1_900, 700), box_of(900, 500), box_of(600, 450), box_of(1_000, 550), box_of(700, 400)];
//! assert!(matches!(fits_rectangles(&room, &kit, 100_000), Decision::Fits(_)));
//! let beds = [box_of(1_900, 900), box_of(1_900, 800), box_of(800, 800)];
//! assert_eq!(fits_rectangles(&room, &beds, 100_000), Decision::Impossible);
//! ```
//!
//! Two searches, one from end to end of the room and one from side to side, take turns, and the first to be done answers.
//! Each first settles where along the room the rectangles begin (`sweep.rs`) and then at what height across
//! (`stack.rs`), with what sums of their sides can fill at all (`sums.rs`) as a bound. The split into two such questions
//! is that of Clautiaux, Jouglet, Carlier and Moukrim, "A new constraint programming approach for the orthogonal packing
//! problem", 2008 (from memory).

mod problem;
mod stack;
mod sums;
mod sweep;

use super::constants::MOST_MM;
use problem::{Bar, Piece, Problem, Reserve};
use sweep::{Outcome, Sweep};

/// The steps that one of the two searches takes before the other has its turn.
const TURN: u64 = 1_000;

/// What is to be placed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rectangle {
    /// Along the room, in millimetres.
    pub length_mm: i32,
    /// Across it, in millimetres.
    pub width_mm: i32,
    /// Whether it may be turned by a quarter.
    pub may_turn: bool,
}

/// A part of the floor that is taken. Where two overlap, it is taken once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Block {
    /// Where it begins along the room, in millimetres.
    pub x_mm: i32,
    /// Where it begins across, in millimetres.
    pub y_mm: i32,
    /// Along the room, in millimetres.
    pub length_mm: i32,
    /// Across it, in millimetres.
    pub width_mm: i32,
}

/// A stretch in which a width is to stay free, wherever it is. Only its width counts, so with passages a yes is not yet
/// one for the walkway, but a no is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Passage {
    /// Where it begins, in millimetres.
    pub from_mm: i32,
    /// Where it ends, in millimetres.
    pub to_mm: i32,
    /// What stays free at right angles to it, in millimetres.
    pub width_mm: i32,
}

/// A floor with right angles.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Room {
    /// Its length, in millimetres.
    pub length_mm: i32,
    /// Its width, in millimetres.
    pub width_mm: i32,
    /// What is taken of it.
    pub blocks: Vec<Block>,
    /// Ways along the room.
    pub ways_along: Vec<Passage>,
    /// Ways across it.
    pub ways_across: Vec<Passage>,
}

/// Where a rectangle stands: its corner nearest to the room's first corner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// Along the room, in millimetres.
    pub x_mm: i32,
    /// Across it, in millimetres.
    pub y_mm: i32,
    /// Whether it is turned by a quarter, its length across the room.
    pub turned: bool,
}

/// The answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Decision {
    /// They fit, like this, in the order of the question.
    Fits(Vec<Place>),
    /// They do not, and that is proven.
    Impossible,
    /// The steps did not suffice to tell, or there are too many of them.
    Unknown,
}

/// Decides within so many steps; a thousand take about a twentieth of a millisecond.
pub fn fits_rectangles(room: &Room, rectangles: &[Rectangle], steps: u64) -> Decision {
    RectangleSearch::new(room, rectangles).step(steps).unwrap_or(Decision::Unknown)
}

/// The same in slices.
pub struct RectangleSearch {
    /// Known without a search.
    known: Option<Decision>,
    count: usize,
    /// Along the room and across it, each with how it stands.
    sweeps: Vec<(Sweep, Outcome)>,
    /// Both must have found something, because each knows one kind of ways.
    wants_both: bool,
    turn: usize,
}

impl Room {
    /// One that is bare.
    pub fn empty(length_mm: i32, width_mm: i32) -> Self {
        Self { length_mm, width_mm, ..Self::default() }
    }
}

impl RectangleSearch {
    /// Prepares the question.
    pub fn new(room: &Room, rectangles: &[Rectangle]) -> Self {
        let problems = [false, true].map(|across| problem(room, rectangles, across));
        let known = if problems.iter().any(Problem::has_no_room) {
            Some(Decision::Impossible)
        } else {
            problems.iter().any(Problem::is_too_large).then_some(Decision::Unknown)
        };
        let wants_both = !room.ways_along.is_empty() || !room.ways_across.is_empty();
        let mut sweeps = Vec::new();
        if known.is_none() {
            sweeps.extend(problems.map(|problem| (Sweep::new(problem), Outcome::Searching)));
        }
        Self { known, count: rectangles.len(), sweeps, wants_both, turn: 0 }
    }

    /// Goes on for so many steps; an answer once there is one.
    pub fn step(&mut self, steps: u64) -> Option<Decision> {
        let mut left = steps;
        loop {
            let decided = self.known.clone().or_else(|| self.decided());
            if decided.is_some() || left == 0 {
                return decided;
            }
            let turn = self.turn % self.sweeps.len();
            self.turn = turn + 1;
            if let Some((sweep, outcome)) = self.sweeps.get_mut(turn)
                && *outcome == Outcome::Searching
            {
                let slice = left.min(TURN);
                *outcome = sweep.step(slice);
                left -= slice;
            }
        }
    }

    fn decided(&self) -> Option<Decision> {
        let is = |wanted: Outcome| self.sweeps.iter().position(|(_, outcome)| *outcome == wanted);
        if is(Outcome::Impossible).is_some() {
            return Some(Decision::Impossible);
        }
        let searching = is(Outcome::Searching).is_some();
        match is(Outcome::Found) {
            Some(found) if !(self.wants_both && searching) => Some(Decision::Fits(self.places(found))),
            None if !searching => Some(Decision::Unknown),
            _ => None,
        }
    }

    fn places(&self, sweep: usize) -> Vec<Place> {
        let mut places = vec![Place::default(); self.count];
        let found = self.sweeps.get(sweep).map(|(sweep, _)| sweep.places());
        for (number, along, across, turned) in found.unwrap_or_default() {
            let (x_mm, y_mm) = if sweep == 0 { (along, across) } else { (across, along) };
            if let Some(place) = places.get_mut(number) {
                *place = Place { x_mm, y_mm, turned };
            }
        }
        places
    }
}

/// The question along the room, or across it.
fn problem(room: &Room, rectangles: &[Rectangle], across: bool) -> Problem {
    let sides = |first: i32, second: i32| {
        let (first, second) = (first.clamp(0, MOST_MM), second.clamp(0, MOST_MM));
        if across { (second, first) } else { (first, second) }
    };
    let whole = sides(room.length_mm, room.width_mm);
    let mut pieces: Vec<Piece> = Vec::new();
    for (number, rectangle) in rectangles.iter().enumerate() {
        let way = sides(rectangle.length_mm.max(1), rectangle.width_mm.max(1));
        let fits = |way: (i32, i32)| way.0 <= whole.0 && way.1 <= whole.1;
        let turned = (way.1, way.0);
        let may_turn = rectangle.may_turn && way.0 != way.1 && fits(turned);
        pieces.push(Piece { number, ways: [fits(way).then_some(way), may_turn.then_some(turned)] });
    }
    let mut blocks = Vec::new();
    for block in &room.blocks {
        if let Some(bar) = bar(block, whole, across) {
            blocks = with_the_rest_of(blocks, bar);
        }
    }
    let ways = if across { &room.ways_across } else { &room.ways_along };
    let reserve = |way: &Passage| Reserve {
        from: way.from_mm.clamp(0, whole.0),
        to: way.to_mm.clamp(0, whole.0),
        across: way.width_mm.clamp(0, MOST_MM),
    };
    Problem {
        along: whole.0,
        across: whole.1,
        pieces: crate::order::by_key(&pieces, |piece| u64::MAX - piece.area().unsigned_abs()),
        blocks,
        reserves: ways.iter().map(reserve).filter(|part| part.from < part.to).collect(),
    }
}

/// What of a block lies in the room.
fn bar(block: &Block, whole: (i32, i32), across: bool) -> Option<Bar> {
    let (x, y) = ((block.x_mm, block.length_mm), (block.y_mm, block.width_mm));
    let (along, over) = if across { (y, x) } else { (x, y) };
    let within =
        |part: (i32, i32), most: i32| (part.0.clamp(0, most), part.0.saturating_add(part.1.max(0)).clamp(0, most));
    let ((from, to), (low, high)) = (within(along, whole.0), within(over, whole.1));
    let there = from < to && low < high;
    there.then_some(Bar { from, to, across: high - low, fixed_at: Some(low), in_lower_half: false })
}

/// Adds what of a bar is not among the others yet, in up to four parts for each that it meets.
fn with_the_rest_of(others: Vec<Bar>, bar: Bar) -> Vec<Bar> {
    let mut rest = vec![bar];
    for other in &others {
        let mut cut = Vec::new();
        for part in rest {
            part.without(other, &mut cut);
        }
        rest = cut;
    }
    others.into_iter().chain(rest).collect()
}
