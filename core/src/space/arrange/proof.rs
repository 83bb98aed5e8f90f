//! That there is no arrangement.

use super::Wish;
use super::board::{Board, Range, bounds, is_square};
use super::corridors::{rectangle, room_for};
use crate::space::item::Solid;
use crate::space::rectangles::{Decision, Passage, RectangleSearch};
use crate::space::walkway::Place;

/// Steps that count as one piece of work.
const STEPS_OF_WORK: u64 = 1_000;

/// Whether what may not be moved already breaks something, which nothing that is added can mend.
pub(super) fn pinned_are_in_their_own_way(wish: &Wish, board: &Board) -> bool {
    !crate::space::fit::fit(&board.layout).is_clear() || !board.holds(wish)
}

/// Rectangles that do not fit on the floor, for each height at which many things are.
///
/// Things that reach over one height must not overlap on the floor. What is built in there, what is pinned there and what is
/// to be free inside the doors is taken; at the height of the body, every cross-section between the two ends of a way
/// has to have the body's width free. If the rectangles do not fit even so, nothing else can make them.
pub(super) struct Proof {
    searches: Vec<RectangleSearch>,
    turn: usize,
    done: bool,
}

impl Proof {
    pub(super) fn new(wish: &Wish) -> Self {
        let board = Board::new(wish);
        let movable = wish.movable();
        let mut heights: Vec<i32> = movable.iter().map(|item| board.item(*item).solid().from_mm).collect();
        heights.sort_unstable();
        heights.dedup();
        let mut searches = Vec::new();
        for height in heights {
            searches.push(Slice::new(wish, &board, &movable, height).search(wish));
        }
        Self { searches, turn: 0, done: false }
    }

    pub(super) fn is_done(&self) -> bool {
        self.done
    }

    /// Goes on with one height for so many pieces of work.
    pub(super) fn work(&mut self, pieces: u32) -> u32 {
        if self.searches.is_empty() {
            return 0;
        }
        let turn = self.turn % self.searches.len();
        self.turn = turn + 1;
        match self.searches[turn].step(STEPS_OF_WORK * u64::from(pieces)) {
            Some(Decision::Impossible) => self.done = true,
            Some(_) => {
                self.searches.swap_remove(turn);
            }
            None => {}
        }
        pieces
    }
}

/// All that reaches over one height.
struct Slice<'a> {
    board: &'a Board,
    height: i32,
    walls: [Range; 2],
    items: Vec<usize>,
}

impl<'a> Slice<'a> {
    fn new(wish: &Wish, board: &'a Board, movable: &[usize], height: i32) -> Self {
        let walls = bounds(&Solid { corners: wish.layout.shape.floor(), ..Solid::default() });
        let mut slice = Self { board, height, walls, items: Vec::new() };
        slice.items = movable.iter().copied().filter(|item| slice.has(&board.item(*item).solid())).collect();
        slice
    }

    fn has(&self, solid: &Solid) -> bool {
        solid.from_mm <= self.height && self.height < solid.to_mm
    }

    /// The rectangles of all that is here, on the floor at this height.
    fn search(&self, wish: &Wish) -> RectangleSearch {
        let of = |item: &usize| rectangle(&self.board.item(*item).solid(), wish.moves(*item) == Some(true));
        let rectangles: Vec<_> = self.items.iter().map(of).collect();
        // What is turned by an angle takes less than its bounds, so it is left out. Walls that come in are, too: things of
        // different heights have different ones.
        let mut sound = self.board.clone();
        sound.blocked.retain(is_square);
        sound.solids.retain(|solid| solid.as_ref().is_some_and(is_square));
        let mut upright = wish.clone();
        upright.layout.shape.walls.clear();
        let slice = Solid { from_mm: self.height, to_mm: self.height.saturating_add(1), ..Solid::default() };
        let mut room = room_for(&upright, &sound, self.walls, &[slice]);
        if (wish.body.from_mm..wish.body.to_mm).contains(&self.height) {
            let [along, across] = [0, 1].map(|axis| self.ways(wish, axis));
            (room.ways_along, room.ways_across) = (along, across);
        }
        RectangleSearch::new(&room, &rectangles)
    }

    /// Where a way has to be, along the van or across it. Two ways may be one in part, so only the longest counts, and where
    /// something is to be free inside a door, the way may lead through it.
    fn ways(&self, wish: &Wish, axis: usize) -> Vec<Passage> {
        let mut ways = Vec::new();
        for (from, to) in &wish.ways {
            if let [Some(from), Some(to)] = [from, to].map(|place| reach(wish, self.board, *place)) {
                ways.extend(passage(from[axis], to[axis], self.walls[axis], wish.body.width_mm));
            }
        }
        ways.sort_by_key(|way: &Passage| way.from_mm - way.to_mm);
        ways.truncate(1);
        for zone in self.board.blocked.iter().skip(wish.layout.shape.fixed.len()).map(bounds) {
            let low = self.walls[axis].0;
            ways = beside(&ways, zone[axis].0 - low, zone[axis].1 - low);
        }
        ways
    }
}

/// Where the middle of the body may be at a place, along and across; unknown beside what is not pinned.
fn reach(wish: &Wish, board: &Board, place: Place) -> Option<[Range; 2]> {
    let grown = |solid: &Solid| bounds(solid).map(|(low, high)| (low - wish.body.width_mm, high + wish.body.width_mm));
    match place {
        Place::Spot(spot) => Some(bounds(&Solid { corners: vec![spot.point()], ..Solid::default() })),
        Place::Door(door) => {
            let (from, to) = wish.layout.shape.door_ends(wish.layout.shape.doors.get(door)?)?;
            Some(bounds(&Solid { corners: vec![from, to], ..Solid::default() }))
        }
        Place::Beside { item, .. } | Place::On(item) => board.solids.get(item)?.as_ref().map(grown),
    }
}

/// What lies between two ranges.
fn passage(one: Range, other: Range, walls: Range, width_mm: i32) -> Option<Passage> {
    let (from, to) = if one.1 < other.0 { (one.1, other.0) } else { (other.1, one.0) };
    (from < to).then_some(Passage { from_mm: from - walls.0, to_mm: to - walls.0, width_mm })
}

/// What of the passages lies before and behind a stretch.
fn beside(ways: &[Passage], from_mm: i32, to_mm: i32) -> Vec<Passage> {
    let cut = ways.iter().flat_map(|way| {
        let before = Passage { to_mm: way.to_mm.min(from_mm), ..*way };
        let behind = Passage { from_mm: way.from_mm.max(to_mm), ..*way };
        [before, behind]
    });
    cut.filter(|way| way.from_mm < way.to_mm).collect()
}
