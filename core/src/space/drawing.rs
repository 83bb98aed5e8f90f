//! What a plan view and a side view of the van show: outlines in millimetres, and what state each thing is in.

use super::fit::{Thing as Part, fit};
use super::input::Placed;
use super::item::Level;
use super::report::head_zone;
use super::shape::DoorKind;
use crate::plan::{Id, Plan};
use crate::space::geometry::Point;

/// A van from above.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// The floor.
    pub outline: Vec<Point>,
    /// Wheel arches and what else is built in.
    pub built_in: Vec<Outline>,
    /// The doors: both ends of each.
    pub doors: Vec<(DoorKind, Point, Point)>,
    /// The things, those lowest first.
    pub things: Vec<Drawn>,
    /// How high it is inside along the van: place and height, in millimetres.
    pub roof: Vec<Point>,
}

/// A thing from above.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The placement.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// Where it belongs.
    pub level: Level,
    /// Its outline.
    pub closed: Outline,
    /// Its outline when it is open.
    pub opened: Option<Outline>,
    /// Where the heads are, if somebody sleeps on it.
    pub head: Option<Outline>,
    /// Along it and across it, in millimetres.
    pub size_mm: [i32; 2],
    /// Its first corner, in millimetres.
    pub corner_mm: [i32; 2],
    /// Whether it stays when all is arranged anew.
    pub pinned: bool,
    /// Whether something is wrong with where it is.
    pub is_wrong: bool,
    /// Whether something higher covers its middle.
    pub is_covered: bool,
}

/// An outline, from one height to another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// The corners.
    pub corners: Vec<Point>,
    /// Where it begins above the floor, in millimetres.
    pub from_mm: i32,
    /// Where it ends, in millimetres.
    pub to_mm: i32,
}

impl From<super::item::Solid> for Outline {
    fn from(solid: super::item::Solid) -> Self {
        Self { corners: solid.corners, from_mm: solid.from_mm, to_mm: solid.to_mm }
    }
}

/// Whether something higher covers its middle.
fn is_covered(placed: &Placed, at: usize) -> bool {
    let Some(own) = placed.layout.items.get(at).map(super::item::Item::solid) else { return false };
    let Some(middle) = own.middle() else { return false };
    let higher = placed.layout.items.iter().map(super::item::Item::solid).filter(|other| other.to_mm > own.to_mm);
    higher.into_iter().any(|other| super::geometry::contains(&other.corners, middle))
}

/// What the van of a plan looks like.
pub fn drawing(plan: &Plan) -> Drawing {
    let placed = Placed::new(plan);
    let fits = fit(&placed.layout);
    let wrong = |at: usize| {
        let is = |part: Part| matches!(part, Part::Item(other) | Part::Opened(other) if other == at);
        fits.overlaps.iter().any(|overlap| is(overlap.first) || is(overlap.second))
            || fits.outside.iter().any(|out| is(out.thing))
            || fits.stuck.iter().any(|stuck| stuck.item == at)
    };
    let shape = &placed.layout.shape;
    let doors = shape.doors.iter().filter_map(|door| shape.door_ends(door).map(|(from, to)| (door.kind, from, to)));
    let mut things: Vec<Drawn> = placed
        .things
        .iter()
        .zip(&placed.layout.items)
        .enumerate()
        .map(|(at, (thing, item))| Drawn {
            id: thing.id,
            name: thing.name.clone(),
            level: item.level,
            closed: item.solid().into(),
            opened: item.opened_solid().map(Outline::from),
            head: (thing.sleeps > 0).then(|| head_zone(item, thing.head).into()),
            size_mm: [item.length_mm, item.width_mm],
            corner_mm: [item.x_mm, item.y_mm],
            pinned: thing.pinned,
            is_wrong: wrong(at),
            is_covered: is_covered(&placed, at),
        })
        .collect();
    things.sort_by_key(|thing| thing.closed.to_mm);
    Drawing {
        outline: shape.floor(),
        built_in: shape.fixed.iter().map(|fixed| fixed.solid().into()).collect(),
        doors: doors.collect(),
        things,
        roof: shape.roof.iter().map(|row| Point::at(row.x_mm, row.height_mm)).collect(),
    }
}

impl Drawing {
    /// What it takes up: the least and the greatest place along the van and across it, in millimetres, things included.
    pub fn bounds(&self) -> [(f64, f64); 2] {
        let points = || {
            let things = self.things.iter().flat_map(|thing| {
                thing.closed.corners.iter().chain(thing.opened.iter().flat_map(|open| &open.corners))
            });
            self.outline.iter().chain(things)
        };
        let along = |pick: fn(&Point) -> f64| {
            let low = points().map(pick).fold(f64::INFINITY, f64::min);
            let high = points().map(pick).fold(f64::NEG_INFINITY, f64::max);
            if low <= high { (low, high) } else { (0.0, 1.0) }
        };
        [along(|point| point.x), along(|point| point.y)]
    }
}
