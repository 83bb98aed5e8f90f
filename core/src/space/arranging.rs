//! Arranging for somebody, as the plan has it: what may be moved, what moves along with what, and the changes that come of it.

use serde_json::Value;

use super::arrange::{Freedom, Search, State, Wish};
use super::fit::fit;
use super::input::Placed;
use super::item::{Item, Layout, Level, Solid};
use super::report::{body, is_within};
use super::rules_of::rules_of;
use super::shape::DoorKind;
use super::walkway::Place;
use crate::plan::record::{record, words};
use crate::plan::{Edit, Id, Path, Plain, Plan};
use crate::task::Task;

/// How many arrangements are looked for.
const WANTED: usize = 4;

/// Once there is one, others are looked for up to this share of all the work.
const SHARE_FOR_MORE: f64 = 0.3;

/// What came of arranging.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arranged {
    /// How it ended.
    pub ending: Ending,
    /// The arrangements, each different from the others.
    pub arrangements: Vec<Arrangement>,
}

record!(Arranged { ending, arrangements });

/// How looking for an arrangement ended.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ending {
    /// There are some.
    Found,
    /// There is none, and that is proven.
    Impossible,
    /// None was found in the time; there may be one.
    #[default]
    NotFound,
    /// There is nothing that may be moved.
    NothingToMove,
}

words!(Ending {
    Found = "found", Impossible = "impossible", NotFound = "not_found", NothingToMove = "nothing_to_move",
});

/// Where everything would stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arrangement {
    /// The things that are somewhere else, each with its place.
    pub places: Vec<NewPlace>,
}

record!(Arrangement { places });

/// A thing at another place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NewPlace {
    /// The placement.
    pub id: Id,
    /// Its first corner along the van, in millimetres.
    pub x_mm: f64,
    /// Its first corner across the van, in millimetres.
    pub y_mm: f64,
    /// How far it is turned, in degrees.
    pub turn_deg: f64,
}

record!(NewPlace { id, x_mm, y_mm, turn_deg });

impl Arrangement {
    /// The change that makes it so.
    pub fn edit(&self) -> Edit {
        Edit::all(self.places.iter().map(|place| {
            let path = Path::entry("placements", place.id);
            let set = |name: &str, value: f64| Edit::Set { path: path.child(name), value: value.into() };
            Edit::all([set("x_mm", place.x_mm), set("y_mm", place.y_mm), set("turn_deg", place.turn_deg)])
        }))
    }
}

/// Arranging in steps.
pub struct ArrangeTask {
    placed: Placed,
    /// What is carried by what: the thing, and the movable one that it stands on, under or in.
    riders: Vec<(usize, usize)>,
    /// The numbers of what the search knows, in the order in which it knows it.
    known: Vec<usize>,
    search: Option<Search>,
}

impl ArrangeTask {
    /// Prepares it. What has no place yet is given one too.
    pub fn new(plan: &Plan) -> Self {
        let mut plan = plan.clone();
        for placement in &mut plan.placements {
            placement.x_mm = placement.x_mm.or(Some(0.0));
            placement.y_mm = placement.y_mm.or(Some(0.0));
        }
        let placed = Placed::new(&plan);
        let moves: Vec<bool> = placed
            .things
            .iter()
            .zip(&placed.layout.items)
            .map(|(thing, item)| !thing.pinned && matches!(item.level, Level::Floor | Level::UnderBed))
            .collect();
        let riders = riders(&placed, &moves);
        let is_rider = |at: usize| riders.iter().any(|(rider, _)| *rider == at);
        let known: Vec<usize> = (0..placed.things.len()).filter(|at| !is_rider(*at)).collect();
        let search =
            known.iter().any(|at| moves[*at]).then(|| Search::new(&wish(&plan, &placed, &known, &riders, &moves)));
        Self { placed, riders, known, search }
    }

    /// All things as they would stand, from where the search puts those it knows.
    fn whole(&self, found: &[Item]) -> Layout {
        let mut layout = self.placed.layout.clone();
        for (at, item) in self.known.iter().zip(found) {
            let (before, own) = (self.placed.layout.items[*at], &mut layout.items[*at]);
            *own = Item { x_mm: item.x_mm, y_mm: item.y_mm, turn_deg: item.turn_deg, ..before };
        }
        for (rider, carrier) in &self.riders {
            let (before, after) = (self.placed.layout.items[*carrier], layout.items[*carrier]);
            layout.items[*rider] = carried(self.placed.layout.items[*rider], before, after);
        }
        layout
    }
}

impl Task for ArrangeTask {
    fn step(&mut self) -> f64 {
        let Some(search) = &mut self.search else { return 1.0 };
        let share = search.step();
        if search.found().is_empty() { share } else { (share / SHARE_FOR_MORE).min(1.0) }
    }

    fn answer(&self) -> Value {
        let Some(search) = &self.search else {
            return Arranged { ending: Ending::NothingToMove, ..Arranged::default() }.to_plain();
        };
        let layouts = search.found().iter().map(|found| self.whole(found)).filter(|layout| fit(layout).is_clear());
        let arrangements: Vec<Arrangement> = layouts
            .map(|layout| {
                let places = layout.items.iter().zip(&self.placed.layout.items).zip(&self.placed.things);
                let moved = places.filter(|((after, before), _)| after != before);
                let place = |((after, _), thing): ((&Item, &Item), &super::Thing)| NewPlace {
                    id: thing.id,
                    x_mm: f64::from(after.x_mm),
                    y_mm: f64::from(after.y_mm),
                    turn_deg: after.turn_deg,
                };
                Arrangement { places: moved.map(place).collect() }
            })
            .collect();
        let ending = match search.state() {
            State::Impossible => Ending::Impossible,
            State::Found | State::Searching if !arrangements.is_empty() => Ending::Found,
            _ => Ending::NotFound,
        };
        Arranged { ending, arrangements }.to_plain()
    }
}

/// What stands on something that may be moved, or under it, within its outline: it moves along. Of several it is the one
/// whose top or underside is nearest.
fn riders(placed: &Placed, moves: &[bool]) -> Vec<(usize, usize)> {
    let items = &placed.layout.items;
    let solids: Vec<Solid> = items.iter().map(Item::solid).collect();
    let carrier_of = |rider: usize| {
        let own = &solids[rider];
        let gap = |carrier: &usize| match items[rider].level {
            Level::UnderBed => (solids[*carrier].from_mm - own.to_mm).abs(),
            _ => (own.from_mm - solids[*carrier].to_mm).abs(),
        };
        let is_carried = matches!(items[rider].level, Level::Counter | Level::UnderBed);
        let may_carry = |other: &usize| *other != rider && moves[*other] && items[*other].level == Level::Floor;
        let carriers = (0..items.len()).filter(|other| is_carried && may_carry(other));
        carriers.filter(|other| is_within(own, &solids[*other])).min_by_key(gap)
    };
    (0..items.len()).filter_map(|rider| Some((rider, carrier_of(rider)?))).collect()
}

fn wish(plan: &Plan, placed: &Placed, known: &[usize], riders: &[(usize, usize)], moves: &[bool]) -> Wish {
    let items = known.iter().map(|at| with_riders(placed, *at, riders)).collect();
    let layout = Layout { items, ..placed.layout.clone() };
    let of = |at: usize| {
        let carrier = riders.iter().find(|(rider, _)| *rider == at).map_or(at, |(_, carrier)| *carrier);
        known.iter().position(|other| *other == carrier)
    };
    let doors = &layout.shape.doors;
    let side = doors.iter().position(|door| door.kind == DoorKind::Side);
    let door = side.or_else(|| doors.iter().position(|door| door.kind == DoorKind::Rear));
    let cab = doors.iter().position(|door| door.kind == DoorKind::Cab).map(Place::Door);
    let goals = (0..placed.things.len()).filter(|at| placed.things[*at].reached || placed.things[*at].sleeps > 0);
    let goals = goals.filter_map(&of).map(|item| Place::Beside { item, side: None });
    let ways = door.map(|door| goals.chain(cab).map(|goal| (Place::Door(door), goal)).collect());
    let together = layout.together.iter().filter_map(|(one, other)| Some((of(*one)?, of(*other)?))).collect();
    let known_placed =
        Placed { things: known.iter().map(|at| placed.things[*at].clone()).collect(), ..Placed::default() };
    Wish {
        freedoms: known
            .iter()
            .map(|at| if moves[*at] { Freedom::Moves { may_turn: true } } else { Freedom::Pinned })
            .collect(),
        rules: rules_of(plan, &known_placed).into_iter().map(|(_, rule)| rule).collect(),
        ways: ways.unwrap_or_default(),
        body: body(plan),
        wanted: WANTED,
        layout: Layout { together, ..layout },
    }
}

/// A thing as high as with all that it carries.
fn with_riders(placed: &Placed, at: usize, riders: &[(usize, usize)]) -> Item {
    let mut item = placed.layout.items[at];
    for (rider, _) in riders.iter().filter(|(_, carrier)| *carrier == at) {
        let rider = placed.layout.items[*rider];
        let top = (item.base_mm + item.height_mm).max(rider.base_mm + rider.height_mm);
        item.base_mm = item.base_mm.min(rider.base_mm);
        item.height_mm = top - item.base_mm;
    }
    item
}

/// A thing that moved along with what carries it.
fn carried(rider: Item, before: Item, after: Item) -> Item {
    let turn_deg = after.turn_deg - before.turn_deg;
    let way = Item { x_mm: 0, y_mm: 0, length_mm: 1, width_mm: 1, turn_deg, ..Item::default() }.solid();
    let [origin, along, _, across] = way.corners.as_slice() else { return rider };
    let (x, y) = (f64::from(rider.x_mm - before.x_mm), f64::from(rider.y_mm - before.y_mm));
    let to = |one: f64, other: f64| super::geometry::whole(libm::round(one * x + other * y));
    Item {
        x_mm: after.x_mm + to(along.x - origin.x, across.x - origin.x),
        y_mm: after.y_mm + to(along.y - origin.y, across.y - origin.y),
        turn_deg: libm::fmod(rider.turn_deg + turn_deg, 360.0) + 0.0,
        ..rider
    }
}
