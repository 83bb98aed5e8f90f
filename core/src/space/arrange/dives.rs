//! One thing after another, each where it touches the most.

use super::board::{Board, Range, bounds, placed, turns};
use super::{Wish, board};
use crate::money::chance::Chance;
use crate::space::fit::Van;
use crate::space::geometry::whole;
use crate::space::item::{Item, Layout, Solid};

/// How many things are put down in one dive before the next one begins.
const WORK_OF_A_DIVE: u32 = 60;
/// How many places of each thing are tried at first; later dives try more.
const FIRST_BREADTH: usize = 4;
/// The most that are tried.
const MOST_BREADTH: usize = 150;

/// The dives one after another.
pub(super) struct Dives {
    board: Board,
    movable: Vec<usize>,
    turns: Vec<Vec<f64>>,
    number: u64,
    work_left: u32,
    order: Vec<usize>,
    frames: Vec<Frame>,
    chance: Chance,
}

/// The places of one thing, the best last.
struct Frame {
    item: usize,
    places: Vec<Item>,
    stands: bool,
}

impl Dives {
    pub(super) fn new(wish: &Wish, board: Board) -> Self {
        let movable = wish.movable();
        Self {
            turns: movable.iter().map(|item| turns(wish, *item)).collect(),
            movable,
            board,
            number: 0,
            work_left: 0,
            order: Vec::new(),
            frames: Vec::new(),
            chance: Chance::new(0),
        }
    }

    /// Puts one thing down, or takes one up.
    pub(super) fn work(&mut self, wish: &Wish) -> (u32, Option<Layout>) {
        if self.movable.is_empty() {
            return (super::MOST_WORK, Some(self.board.layout.clone()));
        }
        if self.work_left == 0 || self.frames.is_empty() {
            self.begin_again(wish);
        }
        self.work_left = self.work_left.saturating_sub(1);
        let Some(frame) = self.frames.last_mut() else { return (1, None) };
        if frame.stands {
            self.board.take_out(frame.item);
            frame.stands = false;
        }
        let Some(place) = frame.places.pop() else {
            self.frames.pop();
            return (1, None);
        };
        frame.stands = true;
        self.board.put(frame.item, place);
        if !self.board.holds(wish) {
            return (1, None);
        }
        if self.frames.len() < self.order.len() {
            let frame = self.places_of(wish, self.order[self.frames.len()]);
            self.frames.push(frame);
            return (2, None);
        }
        // Another one is to be found from another beginning.
        self.work_left = 0;
        (1, Some(self.board.layout.clone()))
    }

    fn begin_again(&mut self, wish: &Wish) {
        for frame in self.frames.drain(..).filter(|frame| frame.stands) {
            self.board.take_out(frame.item);
        }
        self.number += 1;
        self.work_left = WORK_OF_A_DIVE + 2 * u32::try_from(self.number).unwrap_or(u32::MAX / 4).min(400);
        self.chance = Chance::new(self.number);
        let mut keyed = Vec::new();
        for item in self.movable.clone() {
            let size = whole(libm::sqrt(self.board.item(item).solid().area_mm2()));
            keyed.push((u64::MAX - self.noisy(size.into()).unsigned_abs(), item));
        }
        self.order = crate::order::by_key(&keyed, |(key, _)| *key).into_iter().map(|(_, item)| item).collect();
        let first = self.places_of(wish, self.order[0]);
        self.frames.push(first);
    }

    /// A value made more or less by chance, not at all in the first dive.
    fn noisy(&mut self, value: i64) -> i64 {
        let spread = if self.number == 1 { 0 } else { 60 };
        value * i64::from(100 - spread / 2 + self.chance.below(spread + 1)) / 100
    }

    fn places_of(&mut self, wish: &Wish, number: usize) -> Frame {
        let van = Van::new(&wish.layout.shape);
        let item = self.board.item(number);
        let at = self.movable.iter().position(|other| *other == number).unwrap_or(0);
        let mut scored: Vec<(i64, f64, [i32; 2])> = Vec::new();
        for turn in self.turns[at].clone() {
            self.score(wish, &item, turn, &mut scored);
        }
        let breadth = (FIRST_BREADTH + usize::try_from(self.number / 6).unwrap_or(MOST_BREADTH)).min(MOST_BREADTH);
        let mut places: Vec<Item> = Vec::new();
        for (_, turn, place) in crate::order::by_key(&scored, |(score, ..)| u64::MAX - score.unsigned_abs()) {
            let place = placed(&item, turn, place);
            if places.len() < breadth && self.board.has_room(&van, number, &place) {
                places.push(place);
            }
        }
        places.reverse();
        Frame { item: number, places, stands: false }
    }

    /// Adds the places of an item that is turned so, as far as its bounds are in nobody else's, each with what it touches.
    fn score(&mut self, wish: &Wish, item: &Item, turn: f64, scored: &mut Vec<(i64, f64, [i32; 2])>) {
        let solid = placed(item, turn, [0, 0]).solid();
        let own = bounds(&solid);
        let others = self.board.blocked.iter().chain(self.board.solids.iter().flatten());
        let others: Vec<Other> = others.filter(|other| other.common_height_mm(&solid) > 0).map(Other::new).collect();
        let walls = bounds(&Solid { corners: wish.layout.shape.floor(), ..Solid::default() });
        let [columns, rows] = edges_for(wish, &solid, walls, &others);
        for x in &columns {
            for y in &rows {
                let at = [(*x, x + own[0].1), (*y, y + own[1].1)];
                if others.iter().all(|other| !other.is_met_by(at)) {
                    let sides = others.iter().map(|other| common_side(at, other.bounds)).sum::<i32>();
                    let touch = i64::from(sides) + i64::from(wall_side(at, walls));
                    scored.push((self.noisy(touch), turn, [*x, *y]));
                }
            }
        }
    }
}

/// What stands at the same height.
struct Other {
    bounds: [Range; 2],
    /// It fills its bounds.
    is_square: bool,
}

impl Other {
    fn new(solid: &Solid) -> Self {
        Self { bounds: bounds(solid), is_square: board::is_square(solid) }
    }

    fn is_met_by(&self, at: [Range; 2]) -> bool {
        let within = |one: Range, other: Range| one.0 < other.1 && other.0 < one.1;
        self.is_square && within(at[0], self.bounds[0]) && within(at[1], self.bounds[1])
    }
}

/// Where something could begin along the van and across it: at the walls and at everything that is there, flush with it, or
/// a body's width away.
fn edges_for(wish: &Wish, solid: &Solid, walls: [Range; 2], others: &[Other]) -> [Vec<i32>; 2] {
    let own = bounds(solid);
    let walls_in = wish.layout.shape.walls_in_mm(solid.from_mm, solid.to_mm);
    [0, 1].map(|axis| {
        let size = own[axis].1 - own[axis].0;
        let inward = if axis == 1 { walls_in } else { (0, 0) };
        let (low, high) = (walls[axis].0 + inward.0, walls[axis].1 - inward.1);
        let gap = wish.body.width_mm;
        let mut edges = vec![low, high - size, low + gap, high - size - gap];
        for other in others {
            let (from, to) = other.bounds[axis];
            edges.extend([to, from - size, from, to - size, to + gap, from - size - gap]);
        }
        edges.retain(|edge| low <= *edge && edge + size <= high);
        edges.sort_unstable();
        edges.dedup();
        edges
    })
}

/// The length of the sides that are on the walls.
fn wall_side(at: [Range; 2], walls: [Range; 2]) -> i32 {
    let mut shared = 0;
    for (across, along) in [(0, 1), (1, 0)] {
        let ends = i32::from(at[across].0 <= walls[across].0) + i32::from(at[across].1 >= walls[across].1);
        shared += ends * (at[along].1 - at[along].0);
    }
    shared
}

/// The length of the side that two rectangles share.
fn common_side(one: [Range; 2], other: [Range; 2]) -> i32 {
    let mut shared = 0;
    for (across, along) in [(0, 1), (1, 0)] {
        if one[across].1 == other[across].0 || one[across].0 == other[across].1 {
            shared += (one[along].1.min(other[along].1) - one[along].0.max(other[along].0)).max(0);
        }
    }
    shared
}
