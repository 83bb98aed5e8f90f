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
        let searches = heights.into_iter().map(|height| at_height(wish, &board, &movable, height)).collect();
        Self { searches, turn: 0, done: false }
    }

    pub(super) fn is_done(&self) -> bool {
        self.done
    }

    /// Goes on with one height; gives the cost.
    pub(super) fn work(&mut self) -> u32 {
        if self.searches.is_empty() {
            return 0;
        }
        let turn = self.turn % self.searches.len();
        self.turn = turn + 1;
        match self.searches[turn].step(STEPS_OF_WORK) {
            Some(Decision::Impossible) => self.done = true,
            Some(_) => {
                self.searches.swap_remove(turn);
            }
            None => {}
        }
        1
    }
}

fn at_height(wish: &Wish, board: &Board, movable: &[usize], height: i32) -> RectangleSearch {
    let floor = Solid { corners: wish.layout.shape.floor(), ..Solid::default() };
    let walls = bounds(&floor);
    let slice = Solid { from_mm: height, to_mm: height.saturating_add(1), ..Solid::default() };
    let reaches = |solid: &Solid| solid.common_height_mm(&slice) > 0;
    let (mut solids, mut rectangles) = (Vec::new(), Vec::new());
    for item in movable {
        let solid = board.item(*item).solid();
        if reaches(&solid) {
            rectangles.push(rectangle(&solid, wish.moves(*item) == Some(true)));
            solids.push(solid);
        }
    }
    // What is turned by an angle takes less than its bounds, so it is left out. Walls that come in are, too: things of
    // different heights have different ones.
    let mut sound = board.clone();
    sound.blocked.retain(is_square);
    sound.solids.retain(|solid| solid.as_ref().is_some_and(is_square));
    let mut upright = wish.clone();
    upright.layout.shape.walls.clear();
    let mut room = room_for(&upright, &sound, walls, &[slice]);
    if (wish.body.from_mm..wish.body.to_mm).contains(&height) {
        for (from, to) in &wish.ways {
            let ends = [from, to].map(|place| reach(wish, board, *place));
            if let [Some(from), Some(to)] = ends {
                room.ways_along.extend(passage(from[0], to[0], walls[0], wish.body.width_mm));
                room.ways_across.extend(passage(from[1], to[1], walls[1], wish.body.width_mm));
            }
        }
        // Two ways may be one in part, so only the longest counts, and where something is to be free inside a door, the way
        // may lead through it.
        let zones: Vec<_> = board.blocked.iter().skip(wish.layout.shape.fixed.len()).map(bounds).collect();
        for (axis, ways) in [&mut room.ways_along, &mut room.ways_across].into_iter().enumerate() {
            ways.sort_by_key(|way| way.from_mm - way.to_mm);
            ways.truncate(1);
            for zone in &zones {
                *ways = beside(ways, zone[axis].0 - walls[axis].0, zone[axis].1 - walls[axis].0);
            }
        }
    }
    RectangleSearch::new(&room, &rectangles)
}

/// Where the middle of the body may be at a place, along and across; unknown beside what is not pinned.
fn reach(wish: &Wish, board: &Board, place: Place) -> Option<[Range; 2]> {
    let grown = |solid: &Solid| bounds(solid).map(|(low, high)| (low - wish.body.width_mm, high + wish.body.width_mm));
    match place {
        Place::Spot(spot) => Some([(spot.x_mm, spot.x_mm), (spot.y_mm, spot.y_mm)]),
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
