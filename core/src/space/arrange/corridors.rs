//! Ways first: a corridor is kept free, and rectangles are fitted in beside it.

use super::board::{Board, Range, bounds, placed};
use super::{Wish, board};
use crate::space::item::{Layout, Solid};
use crate::space::rectangles::{Block, Decision, Place, Rectangle, RectangleSearch, Room};
use crate::space::walkway;

/// The steps that go into one corridor at first, and how often all corridors are gone through, each time with eight times as
/// many.
const FIRST_STEPS: u64 = 2_000;
const ROUNDS: u32 = 4;
/// Steps that count as one piece of work.
const STEPS_OF_WORK: u64 = 500;
/// The most places of a corridor across or along the van.
const MOST_PLACES: usize = 14;

/// Corridors to be tried one after another.
pub(super) struct Corridors {
    room: Room,
    from: [i32; 2],
    items: Vec<usize>,
    rectangles: Vec<Rectangle>,
    /// What each corridor keeps free.
    all: Vec<Vec<Block>>,
    next: usize,
    round: u32,
    search: Option<RectangleSearch>,
    steps: u64,
    board: Board,
}

impl Corridors {
    pub(super) fn new(wish: &Wish) -> Self {
        let board = Board::new(wish);
        let items = wish.movable();
        let solids: Vec<Solid> = items.iter().map(|item| board.item(*item).solid()).collect();
        let floor = Solid { corners: wish.layout.shape.floor(), ..Solid::default() };
        let walls = bounds(&floor);
        let room = room_for(wish, &board, walls, &solids);
        let rectangles: Vec<Rectangle> =
            items.iter().zip(&solids).map(|(item, solid)| rectangle(solid, wish.moves(*item) == Some(true))).collect();
        let all = corridors(wish, walls, &room, &rectangles);
        Self {
            room,
            from: [walls[0].0, walls[1].0],
            items,
            rectangles,
            all,
            next: 0,
            round: 0,
            search: None,
            steps: 0,
            board,
        }
    }

    /// Goes on with one corridor; gives the cost, and a layout if the rectangles fit beside it.
    pub(super) fn work(&mut self, wish: &Wish) -> (u32, Option<Layout>) {
        if self.items.is_empty() || self.round >= ROUNDS || self.all.is_empty() {
            return (0, None);
        }
        let search = self.search.get_or_insert_with(|| {
            let mut room = self.room.clone();
            room.blocks.extend(self.all.get(self.next).into_iter().flatten());
            RectangleSearch::new(&room, &self.rectangles)
        });
        let decision = search.step(STEPS_OF_WORK);
        self.steps += STEPS_OF_WORK;
        let layout = if let Some(Decision::Fits(places)) = &decision { Some(self.layout(wish, places)) } else { None };
        if decision.is_some() || self.steps >= FIRST_STEPS << (3 * self.round) {
            if decision.is_some() {
                // Settled for good.
                self.all.swap_remove(self.next);
            } else {
                self.next += 1;
            }
            (self.search, self.steps) = (None, 0);
            if self.next >= self.all.len() {
                (self.next, self.round) = (0, self.round + 1);
            }
        }
        (1, layout)
    }

    /// The items at their places, turned as far as the rules ask for it.
    fn layout(&self, wish: &Wish, places: &[Place]) -> Layout {
        let mut board = self.board.clone();
        for (item, place) in self.items.iter().zip(places) {
            let own = board.item(*item);
            let turn = if place.turned { 90.0 } else { 0.0 };
            let corner = [self.from[0] + place.x_mm, self.from[1] + place.y_mm];
            board.put(*item, placed(&own, own.turn_deg + turn, corner));
        }
        self.turn_round(wish, &mut board);
        board.layout
    }

    /// Turns things by half, one after another, if more is kept then.
    fn turn_round(&self, wish: &Wish, board: &mut Board) {
        let broken = |board: &Board| {
            let rules = wish.rules.iter().filter(|rule| !rule.is_kept(&board.layout)).count();
            let pass = |way: &(walkway::Place, walkway::Place)| {
                super::rules::all_ways_pass(&board.layout, &wish.body, std::slice::from_ref(way))
            };
            rules
                + crate::space::fit::fit(&board.layout).stuck.len()
                + wish.ways.iter().filter(|way| !pass(way)).count()
        };
        let mut before = broken(board);
        for item in &self.items {
            if before > 0 && board::turns(wish, *item).len() == 4 {
                let own = board.item(*item);
                board.put(*item, placed(&own, own.turn_deg + 180.0, board::corner(&own)));
                let after = broken(board);
                if after >= before {
                    board.put(*item, own);
                }
                before = before.min(after);
            }
        }
    }
}

/// The bounds of the floor, with what is taken of it at the heights of these items.
pub(super) fn room_for(wish: &Wish, board: &Board, walls: [Range; 2], items: &[Solid]) -> Room {
    let mut room = Room::empty(walls[0].1 - walls[0].0, walls[1].1 - walls[1].0);
    let meets_any = |solid: &Solid| items.iter().any(|item| item.common_height_mm(solid) > 0);
    let taken = board.blocked.iter().chain(board.solids.iter().flatten());
    let mut taken: Vec<[Range; 2]> = taken.filter(|solid| meets_any(solid)).map(bounds).collect();
    for item in items {
        let (low, high) = wish.layout.shape.walls_in_mm(item.from_mm, item.to_mm);
        taken.extend((low > 0).then_some([walls[0], (walls[1].0, walls[1].0 + low)]));
        taken.extend((high > 0).then_some([walls[0], (walls[1].1 - high, walls[1].1)]));
    }
    room.blocks = taken.into_iter().map(|taken| block(walls, taken)).collect();
    room
}

pub(super) fn rectangle(solid: &Solid, may_turn: bool) -> Rectangle {
    let [x, y] = bounds(solid);
    Rectangle { length_mm: x.1 - x.0, width_mm: y.1 - y.0, may_turn }
}

/// A block by the corner of the room.
pub(super) fn block(walls: [Range; 2], [x, y]: [Range; 2]) -> Block {
    Block { x_mm: x.0 - walls[0].0, y_mm: y.0 - walls[1].0, length_mm: x.1 - x.0, width_mm: y.1 - y.0 }
}

/// Straight corridors along the van, each with one from a door to it; without a way that is asked for, none at all is kept
/// free.
fn corridors(wish: &Wish, walls: [Range; 2], room: &Room, rectangles: &[Rectangle]) -> Vec<Vec<Block>> {
    if wish.ways.is_empty() {
        return vec![Vec::new()];
    }
    let width = wish.body.width_mm;
    let doors: Vec<[Range; 2]> =
        wish.ways.iter().flat_map(|(from, to)| [*from, *to]).filter_map(|place| door(wish, place)).collect();
    let ends = |pick: fn(&[Range; 2]) -> Range, low: i32, most: i32| -> Vec<i32> {
        let mut ends = vec![0, most];
        ends.extend(doors.iter().flat_map(|door| [pick(door).0 - low, pick(door).1 - low]));
        ends.extend(room.blocks.iter().flat_map(|block| [block.x_mm, block.x_mm + block.length_mm]));
        ends.retain(|end| 0 <= *end && *end <= most);
        ends.sort_unstable();
        ends.dedup();
        ends
    };
    let along = ends(|door| door[0], walls[0].0, room.length_mm);
    let mut all = vec![Vec::new()];
    for y in places_across(room, rectangles, width) {
        for (at, from) in along.iter().enumerate() {
            for to in along.iter().skip(at + 1).filter(|to| *to - from >= width) {
                let lane = Block { x_mm: *from, y_mm: y, length_mm: to - from, width_mm: width };
                let mut blocks = vec![lane];
                blocks.extend(doors.iter().map(|door| from_door(walls, *door, lane, width)));
                all.push(blocks);
            }
        }
    }
    // The shorter a corridor, the more room it leaves, and the more does it leave to luck whether it leads anywhere: the
    // middling ones first.
    let middling = i64::from(room.length_mm) / 2;
    crate::order::by_key(&all, |blocks| {
        blocks.first().map_or(0, |lane| (i64::from(lane.length_mm) - middling).unsigned_abs())
    })
}

/// What is kept free from a door to a lane: across the van from a door at a side, along it from one at an end.
fn from_door(walls: [Range; 2], door: [Range; 2], lane: Block, width: i32) -> Block {
    let door = block(walls, door);
    if door.length_mm >= door.width_mm {
        let x = (door.x_mm + (door.length_mm - width) / 2).max(0);
        let (low, high) = (door.y_mm.min(lane.y_mm), (door.y_mm + door.width_mm).max(lane.y_mm + lane.width_mm));
        Block { x_mm: x, y_mm: low, length_mm: width, width_mm: high - low }
    } else {
        let y = lane.y_mm.clamp(door.y_mm, (door.y_mm + door.width_mm - width).max(door.y_mm));
        let (low, high) = (door.x_mm.min(lane.x_mm), (door.x_mm + door.length_mm).max(lane.x_mm + lane.length_mm));
        Block { x_mm: low, y_mm: y, length_mm: high - low, width_mm: width }
    }
}

/// The bounds of a door that is one end of a way.
fn door(wish: &Wish, place: walkway::Place) -> Option<[Range; 2]> {
    let walkway::Place::Door(door) = place else { return None };
    let (from, to) = wish.layout.shape.door_ends(wish.layout.shape.doors.get(door)?)?;
    Some(bounds(&Solid { corners: vec![from, to], ..Solid::default() }))
}

/// Where a lane can begin across the van: at the walls, in the middle, and where one or two rectangles leave off.
fn places_across(room: &Room, rectangles: &[Rectangle], width: i32) -> Vec<i32> {
    let most = room.width_mm - width;
    let mut places = vec![0, most];
    for one in rectangles {
        for side in [one.width_mm, one.length_mm] {
            places.extend([side, most - side]);
        }
    }
    places.push(most / 2);
    let mut kept: Vec<i32> = Vec::new();
    for place in places {
        if 0 <= place && place <= most && kept.len() < MOST_PLACES && !kept.contains(&place) {
            kept.push(place);
        }
    }
    kept
}
