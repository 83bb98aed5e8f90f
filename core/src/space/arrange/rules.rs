//! What an arrangement has to keep to.

use crate::space::constants::{MOST_MM, NO_AREA_MM2, TOUCH_MM};
use crate::space::fit::meets;
use crate::space::geometry::{Point, area, nearest, shared_area};
use crate::space::item::{Item, Layout, Solid};
use crate::space::shape::Shape;
use crate::space::walkway::{Body, Place, Walkway};

/// A wish about where something is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// Two are close to one another.
    Near {
        /// One of them.
        first: Side,
        /// The other.
        second: Side,
        /// What may be between them, in millimetres.
        most_mm: i32,
    },
    /// Two are away from one another, such as a hob from a curtain, or the head end of the bed from a heater.
    Apart {
        /// One of them.
        first: Side,
        /// The other.
        second: Side,
        /// What must be between them, in millimetres.
        least_mm: i32,
    },
    /// Nothing stands close to a side, and no wall: a gap for cooling, or to stand in front of it.
    Clear {
        /// Which side of which item; all sides when none is named.
        of: Side,
        /// How deep, in millimetres.
        depth_mm: i32,
    },
    /// Nothing stands inside a door, at the height of the body.
    DoorClear {
        /// The number of the door.
        door: usize,
        /// How far into the van, in millimetres.
        depth_mm: i32,
        /// Up to which height above the floor, in millimetres.
        height_mm: i32,
    },
}

/// A side of an item, or all of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Side {
    /// The number of the item.
    pub item: usize,
    /// Which side: from the one along the item at its first corner, anticlockwise, from 0; the whole item without.
    pub side: Option<usize>,
}

impl Rule {
    /// Whether a layout keeps it. Items outside the van or missing break nothing.
    pub fn is_kept(&self, layout: &Layout) -> bool {
        match self {
            Self::Near { first, second, most_mm } => {
                distance(layout, *first, *second).is_none_or(|gap| gap <= f64::from(*most_mm) + TOUCH_MM)
            }
            Self::Apart { first, second, least_mm } => {
                distance(layout, *first, *second).is_none_or(|gap| gap + TOUCH_MM >= f64::from(*least_mm))
            }
            Self::Clear { of, depth_mm } => {
                let floor = layout.shape.floor();
                let free = |zone: &Solid| {
                    let whole = area(&zone.corners) - shared_area(&floor, &zone.corners) <= NO_AREA_MM2;
                    whole && nothing_in(layout, zone, Some(of.item)) && nothing_built_in(&layout.shape, zone)
                };
                zones(layout, *of, *depth_mm).iter().all(free)
            }
            Self::DoorClear { .. } => self.zone(&layout.shape).is_none_or(|zone| nothing_in(layout, &zone, None)),
        }
    }

    /// What is to be free inside a door.
    pub(super) fn zone(&self, shape: &Shape) -> Option<Solid> {
        let Self::DoorClear { door, depth_mm, height_mm } = self else { return None };
        let (from, to) = shape.door_ends(shape.doors.get(*door)?)?;
        Some(strip(to, from, *depth_mm, (0, *height_mm)))
    }
}

/// Whether the body gets through wherever it is wished, as far as what the ways lead to is in the van.
pub(super) fn all_ways_pass(layout: &Layout, body: &Body, ways: &[(Place, Place)]) -> bool {
    let there = |place: Place| match place {
        Place::Beside { item, .. } | Place::On(item) => layout.items.get(item).is_some_and(Item::is_inside),
        Place::Door(_) | Place::Spot(_) => true,
    };
    let mut ways = ways.iter().filter(|(from, to)| there(*from) && there(*to)).peekable();
    if ways.peek().is_none() {
        return true;
    }
    let walkway = Walkway::new(layout, body, &[]);
    ways.all(|(from, to)| walkway.passes(*from, *to))
}

/// What is between two, in millimetres.
fn distance(layout: &Layout, first: Side, second: Side) -> Option<f64> {
    let (one, other) = (points(layout, first)?, points(layout, second)?);
    let (from, to) = nearest(&one, &other);
    Some(from.distance(to))
}

fn points(layout: &Layout, of: Side) -> Option<Vec<Point>> {
    let item = layout.items.get(of.item).filter(|item| item.is_inside())?;
    let corners = item.solid().corners;
    match of.side {
        None => (!corners.is_empty()).then_some(corners),
        Some(side) => Some(vec![*corners.get(side)?, *corners.get((side + 1) % corners.len())?]),
    }
}

/// What is to be free beside an item.
fn zones(layout: &Layout, of: Side, depth_mm: i32) -> Vec<Solid> {
    let Some(item) = layout.items.get(of.item).filter(|item| item.is_inside()) else { return Vec::new() };
    let solid = item.solid();
    let sides = crate::space::geometry::edges(&solid.corners).enumerate();
    let sides = sides.filter(|(number, _)| of.side.is_none_or(|side| side == *number));
    sides.map(|(_, (from, to))| strip(from, to, depth_mm, (solid.from_mm, solid.to_mm))).collect()
}

/// A strip of some depth to the right of the way between two points, anticlockwise.
fn strip(from: Point, to: Point, depth_mm: i32, (from_mm, to_mm): (i32, i32)) -> Solid {
    let along = to.minus(from);
    let outward = Point { x: along.y, y: -along.x };
    let share = f64::from(depth_mm.clamp(0, MOST_MM)) / along.length().max(TOUCH_MM);
    let corners = vec![to, from, from.towards(outward, share), to.towards(outward, share)];
    Solid { corners, from_mm, to_mm }
}

fn nothing_in(layout: &Layout, zone: &Solid, but: Option<usize>) -> bool {
    let items = layout.items.iter().enumerate().filter(|(number, item)| but != Some(*number) && item.is_inside());
    items.into_iter().all(|(_, item)| !meets(&item.solid(), zone))
}

fn nothing_built_in(shape: &Shape, zone: &Solid) -> bool {
    shape.fixed.iter().all(|fixed| !meets(&fixed.solid(), zone))
}
