//! The inside of a van: its floor, what is built in, its doors, its walls and its roof.

mod faults;

pub use faults::{Fault, Part};

use serde::Serialize;

use super::constants::MOST_MM;
use super::geometry::{Point, area, free_area};
use super::item::Solid;

/// A place on the floor in whole millimetres: `x` along the van, `y` across it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Spot {
    /// Along the van, in millimetres.
    pub x_mm: i32,
    /// Across the van, in millimetres.
    pub y_mm: i32,
}

/// The inside of a van.
///
/// ```
/// use kerbstead_core::space::shape::{Fixed, Shape};
/// let arch = Fixed { x_mm: 1_800, y_mm: 0, length_mm: 700, width_mm: 200, base_mm: 0, height_mm: 250 };
/// let shape = Shape { fixed: vec![arch, Fixed { y_mm: 1_500, ..arch }], ..Shape::square(3_000, 1_700) };
/// assert!(shape.faults().is_empty());
/// assert_eq!(shape.floor_area_mm2(), 4_820_000.0);
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shape {
    /// The corners of the floor in order, either way round, at the height at which it is widest.
    pub outline: Vec<Spot>,
    /// Wheel arches and whatever else is built in.
    pub fixed: Vec<Fixed>,
    /// The doors.
    pub doors: Vec<Door>,
    /// How far the walls on both sides come in, by height, lowest first. None: they are upright.
    pub walls: Vec<WallRow>,
    /// The height inside along the van, rearmost or foremost first, `x` ascending. None: nothing is asked of it.
    pub roof: Vec<RoofRow>,
}

/// Something square to the walls that cannot be moved.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Fixed {
    /// Its corner along the van, in millimetres.
    pub x_mm: i32,
    /// Its corner across the van, in millimetres.
    pub y_mm: i32,
    /// Its length along the van, in millimetres.
    pub length_mm: i32,
    /// Its width across the van, in millimetres.
    pub width_mm: i32,
    /// How high above the floor it begins, in millimetres.
    pub base_mm: i32,
    /// How high it is, in millimetres.
    pub height_mm: i32,
}

/// Where one gets in and out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Door {
    /// Which one it is.
    pub kind: DoorKind,
    /// The stretch of the outline it is in: from the corner of this number, from 0, to the next.
    pub wall: usize,
    /// How far from that corner it begins, in millimetres.
    pub from_mm: i32,
    /// Its clear width, in millimetres.
    pub width_mm: i32,
    /// Its clear height, in millimetres.
    pub height_mm: i32,
}

/// Which door it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DoorKind {
    /// At the side.
    #[default]
    Side,
    /// At the rear.
    Rear,
    /// The way through to the cab.
    Cab,
}

/// How far the walls are from the outline at one height; straight between two rows, and beyond the last as there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct WallRow {
    /// Above the floor, in millimetres.
    pub height_mm: i32,
    /// How far the wall at the side of the least `y` comes in, in millimetres.
    pub low_side_in_mm: i32,
    /// How far the wall at the side of the greatest `y` comes in, in millimetres.
    pub high_side_in_mm: i32,
}

/// How high it is inside at one place; straight between two rows, and beyond the first and the last as there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RoofRow {
    /// Along the van, in millimetres.
    pub x_mm: i32,
    /// From the floor to the roof, in millimetres.
    pub height_mm: i32,
}

impl Shape {
    /// Length and width of its outline, in millimetres; nothing without corners.
    pub fn sizes_mm(&self) -> (i32, i32) {
        let extent = |of: fn(&Spot) -> i32| {
            let (low, high) = (self.outline.iter().map(of).min(), self.outline.iter().map(of).max());
            high.unwrap_or(0).saturating_sub(low.unwrap_or(0))
        };
        (extent(|spot| spot.x_mm), extent(|spot| spot.y_mm))
    }

    /// A floor with four corners and nothing in it.
    pub fn square(length_mm: i32, width_mm: i32) -> Self {
        let corners = [(0, 0), (length_mm, 0), (length_mm, width_mm), (0, width_mm)];
        let outline = corners.into_iter().map(|(x_mm, y_mm)| Spot { x_mm, y_mm }).collect();
        Self { outline, ..Self::default() }
    }

    /// The floor, anticlockwise.
    pub(super) fn floor(&self) -> Vec<Point> {
        let mut floor: Vec<Point> = self.outline.iter().map(|spot| spot.point()).collect();
        if area(&floor) < 0.0 {
            floor.reverse();
        }
        floor
    }

    /// The floor as what it takes up, without a height.
    pub(crate) fn floor_solid(&self) -> Solid {
        Solid { corners: self.floor(), ..Solid::default() }
    }

    /// The two ends of a door, its hinges and its lock, as one looks out: the inside is to the left of the way from the first to
    /// the second.
    pub(super) fn door_ends(&self, door: &Door) -> Option<(Point, Point)> {
        let from = self.outline.get(door.wall)?.point();
        let to = self.outline.get((door.wall + 1) % self.outline.len())?.point();
        let length = from.distance(to);
        if length <= 0.0 {
            return None;
        }
        let at = |mm: i32| from.towards(to.minus(from), f64::from(mm) / length);
        let begin = door.from_mm.clamp(0, MOST_MM);
        let ends = (at(begin), at(begin + door.width_mm.clamp(0, MOST_MM)));
        let floor: Vec<Point> = self.outline.iter().map(|spot| spot.point()).collect();
        Some(if area(&floor) < 0.0 { (ends.1, ends.0) } else { ends })
    }

    /// The least and the greatest `y` of the floor, in millimetres.
    pub(super) fn sides_mm(&self) -> (i32, i32) {
        let across = || self.outline.iter().map(|spot| spot.y_mm);
        (across().min().unwrap_or(0), across().max().unwrap_or(0))
    }

    /// How far both walls come in at the worst between two heights, in whole millimetres, rounded up.
    pub fn walls_in_mm(&self, from_mm: i32, to_mm: i32) -> (i32, i32) {
        let row = |row: &WallRow, inward: i32| (row.height_mm, -inward.clamp(-MOST_MM, MOST_MM));
        let low: Vec<_> = self.walls.iter().map(|wall| row(wall, wall.low_side_in_mm)).collect();
        let high: Vec<_> = self.walls.iter().map(|wall| row(wall, wall.high_side_in_mm)).collect();
        (-least_between(&low, from_mm, to_mm).unwrap_or(0), -least_between(&high, from_mm, to_mm).unwrap_or(0))
    }

    /// The least height inside between two places along the van, in whole millimetres, rounded down.
    pub fn headroom_mm(&self, from_x_mm: i32, to_x_mm: i32) -> Option<i32> {
        let rows: Vec<_> = self.roof.iter().map(|row| (row.x_mm, row.height_mm)).collect();
        least_between(&rows, from_x_mm, to_x_mm)
    }

    /// The floor without what is built in at its level, in mm².
    pub fn floor_area_mm2(&self) -> f64 {
        let floor = self.floor_solid();
        let [(from_x, to_x), (from_y, to_y)] = floor.bounds();
        let at = |x, y| Point { x, y };
        let around = [at(from_x, from_y), at(to_x, from_y), at(to_x, to_y), at(from_x, to_y)];
        let taken: Vec<_> = self.fixed.iter().filter(|fixed| fixed.base_mm <= 0).map(Fixed::corners).collect();
        free_area(&floor.corners, &around, taken.iter().map(<[Point; 4]>::as_slice))
    }
}

impl Spot {
    pub(super) fn point(self) -> Point {
        Point::at(self.x_mm.clamp(-MOST_MM, MOST_MM), self.y_mm.clamp(-MOST_MM, MOST_MM))
    }
}

impl Fixed {
    pub(super) fn corners(&self) -> [Point; 4] {
        let from = Spot { x_mm: self.x_mm, y_mm: self.y_mm }.point();
        let side = |mm: i32| f64::from(mm.clamp(0, MOST_MM));
        let to = Point { x: from.x + side(self.length_mm), y: from.y + side(self.width_mm) };
        [from, Point { x: to.x, ..from }, to, Point { x: from.x, ..to }]
    }

    /// From where to where it reaches upwards, in millimetres.
    pub(super) fn heights_mm(&self) -> (i32, i32) {
        (self.base_mm, self.base_mm.saturating_add(self.height_mm.max(0)))
    }
}

/// The least value of a line through rows between two places, rounded down; nothing without rows.
fn least_between(rows: &[(i32, i32)], from: i32, to: i32) -> Option<i32> {
    let ends = [from, to].into_iter().filter_map(|at| value_at(rows, at));
    let inside = rows.iter().filter(|row| from < row.0 && row.0 < to).map(|row| row.1);
    ends.chain(inside).min()
}

/// The value of a line through rows at a place, rounded down.
fn value_at(rows: &[(i32, i32)], at: i32) -> Option<i32> {
    let after = rows.partition_point(|row| row.0 <= at);
    let Some(next) = rows.get(after) else { return rows.last().map(|row| row.1) };
    let Some(before) = after.checked_sub(1).and_then(|before| rows.get(before)) else { return Some(next.1) };
    let (run, rise) = (i64::from(next.0) - i64::from(before.0), i64::from(next.1) - i64::from(before.1));
    let part = (rise * (i64::from(at) - i64::from(before.0))).div_euclid(run.max(1));
    i32::try_from(i64::from(before.1) + part).ok()
}
