//! A thing that is being moved: where it comes to lie, snapped to walls and to what stands beside it, and what it then meets.
//!
//! ```
//! use kerbstead_core::plan::{Item, Placement, Plan};
//! use kerbstead_core::space::Moving;
//! let sized = |id, length, width| Item {
//!     id, length_mm: Some(length), width_mm: Some(width), height_mm: Some(400.0), ..Item::default()
//! };
//! let at = |id, item, x, y| Placement { id, thing: Some(item), x_mm: Some(x), y_mm: Some(y), ..Placement::default() };
//! let plan = Plan {
//!     kit: vec![sized(1, 1_900.0, 700.0), sized(2, 400.0, 300.0)],
//!     placements: vec![at(3, 1, 0.0, 0.0), at(4, 2, 1_000.0, 1_000.0)],
//!     ..Plan::default()
//! };
//! let crate_ = Moving::new(&plan, 4).unwrap();
//! assert_eq!(crate_.to(12.0, 713.0, 40.0).corner_mm, [0, 700]); // against the front wall and the bed
//! assert_eq!(crate_.to(100.0, 500.0, 0.0).meets, [3]);
//! ```

use super::fit::{Van, meets};
use super::geometry::mm;
use super::input::Placed;
use super::item::Item;
use crate::plan::{Edit, Id, Path, Plan};

/// One thing of a plan, lifted from its place.
#[derive(Clone, Debug)]
pub struct Moving {
    placed: Placed,
    number: usize,
    /// The bounds of all else that is as high, to snap to: along the van and across it.
    lines: [Vec<f64>; 2],
}

/// Where a thing comes to lie.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// Its first corner, along and across the van, in whole millimetres.
    pub corner_mm: [i32; 2],
    /// The placements it overlaps there; 0 for what is built in.
    pub meets: Vec<Id>,
    /// Whether all of it is within the van.
    pub is_inside: bool,
}

impl Moving {
    /// Lifts a placement; nothing when it has no place.
    pub fn new(plan: &Plan, placement: Id) -> Option<Self> {
        let placed = Placed::new(plan);
        let number = placed.number_of(placement)?;
        let own = placed.layout.items.get(number)?.solid();
        let floor = placed.layout.shape.floor_solid();
        let others = placed.layout.items.iter().enumerate().filter(|(at, item)| *at != number && item.is_inside());
        let others = others
            .map(|(_, item)| item.solid())
            .chain(placed.layout.shape.fixed.iter().map(super::shape::Fixed::solid));
        let beside = others.filter(|other| own.common_height_mm(other) > 0).chain([floor]);
        let mut lines = [Vec::new(), Vec::new()];
        for solid in beside {
            for (lines, (low, high)) in lines.iter_mut().zip(solid.bounds()) {
                lines.extend([low, high]);
            }
        }
        Some(Self { placed, number, lines })
    }

    /// Where its first corner is now, in millimetres.
    pub fn corner_mm(&self) -> [f64; 2] {
        let item = self.item();
        [f64::from(item.x_mm), f64::from(item.y_mm)]
    }

    /// Where it comes to lie when its first corner is put there: an edge of it that comes closer than `snap_mm` to one of
    /// something else, or to a wall, is laid to it.
    pub fn to(&self, x_mm: f64, y_mm: f64, snap_mm: f64) -> Moved {
        let at = |x: f64, y: f64| Item { x_mm: mm(x), y_mm: mm(y), ..*self.item() };
        let [x, y] = at(x_mm, y_mm).solid().bounds();
        let [lines_x, lines_y] = &self.lines;
        let item = at(x_mm + nearest(lines_x, x, snap_mm), y_mm + nearest(lines_y, y, snap_mm));
        let solid = item.solid();
        let others = self.placed.layout.items.iter().enumerate();
        let others = others.filter(|(number, other)| *number != self.number && other.is_inside());
        let mut met: Vec<Id> = others
            .filter(|(_, other)| item.is_inside() && meets(&other.solid(), &solid))
            .filter_map(|(number, _)| self.placed.things.get(number).map(|thing| thing.id))
            .collect();
        let shape = &self.placed.layout.shape;
        if item.is_inside() && shape.fixed.iter().any(|fixed| meets(&fixed.solid(), &solid)) {
            met.push(0);
        }
        let is_inside = !item.is_inside() || Van::new(shape).holds(&solid);
        Moved { corner_mm: [item.x_mm, item.y_mm], meets: met, is_inside }
    }

    /// The change that puts it there.
    pub fn edit(&self, moved: &Moved) -> Edit {
        let id = self.placed.things.get(self.number).map_or(0, |thing| thing.id);
        let path = Path::entry("placements", id);
        let [x, y] = moved.corner_mm.map(f64::from);
        Edit::all([
            Edit::Set { path: path.child("x_mm"), value: x.into() },
            Edit::Set { path: path.child("y_mm"), value: y.into() },
        ])
    }

    fn item(&self) -> &Item {
        // There since it was lifted.
        static NONE: Item = Item::NOTHING;
        self.placed.layout.items.get(self.number).unwrap_or(&NONE)
    }
}

/// The change that turns a placement by a quarter, anticlockwise from above, about its middle.
pub fn turned(plan: &Plan, placement: Id) -> Option<Edit> {
    let moving = Moving::new(plan, placement)?;
    let item = moving.item();
    let turn_deg = libm::fmod(item.turn_deg + 90.0, 360.0);
    let (before, after) = (item.solid().middle()?, Item { turn_deg, ..*item }.solid().middle()?);
    let corner_mm = [mm(f64::from(item.x_mm) + before.x - after.x), mm(f64::from(item.y_mm) + before.y - after.y)];
    let path = Path::entry("placements", placement).child("turn_deg");
    let moved = moving.edit(&Moved { corner_mm, meets: Vec::new(), is_inside: true });
    Some(Edit::all([Edit::Set { path, value: turn_deg.into() }, moved]))
}

/// How far one of two edges is from the nearest line, as long as that is less than `most`.
fn nearest(lines: &[f64], (low, high): (f64, f64), most: f64) -> f64 {
    let ways = lines.iter().flat_map(|line| [line - low, line - high]);
    let near = ways.filter(|way| way.abs() < most).min_by(|one, other| one.abs().total_cmp(&other.abs()));
    near.unwrap_or(0.0)
}
