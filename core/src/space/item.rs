//! What stands in a van: boxes, and what of them folds out or slides.

use super::constants::MOST_MM;
use super::geometry::{Point, area, extent};
use super::shape::{Fixed, Shape};

/// A box, or two: closed and open.
///
/// ```
/// use kerbstead_core::space::item::Item;
/// let bench = Item { length_mm: 1_200, width_mm: 500, height_mm: 450, ..Item::default() };
/// assert_eq!(bench.solid().area_mm2(), 600_000.0);
/// assert_eq!(bench.opened_solid(), None);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Item {
    /// Where its first corner is along the van, in millimetres.
    pub x_mm: i32,
    /// Where its first corner is across the van, in millimetres.
    pub y_mm: i32,
    /// From the first corner along the van, before it is turned, in millimetres.
    pub length_mm: i32,
    /// From the first corner across the van, before it is turned, in millimetres.
    pub width_mm: i32,
    /// In millimetres.
    pub height_mm: i32,
    /// How high above the floor it begins, in millimetres.
    pub base_mm: i32,
    /// How far it is turned anticlockwise about its first corner, in degrees. Quarter turns are exact.
    pub turn_deg: f64,
    /// Where it belongs.
    pub level: Level,
    /// What it takes up when it is folded out or pulled open.
    pub opened: Option<Opened>,
}

/// Where something belongs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Level {
    /// On the floor.
    #[default]
    Floor,
    /// Under the bed.
    UnderBed,
    /// On a counter or another thing.
    Counter,
    /// On a wall.
    Wall,
    /// Under the roof.
    Roof,
    /// Outside the van, where it is in nobody's way.
    Outside,
}

/// The box of an item that is open, in place of the closed one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Opened {
    /// Where its first corner is from that of the closed one, along it, in millimetres; may be less than nothing.
    pub x_mm: i32,
    /// The same across.
    pub y_mm: i32,
    /// Along the item, in millimetres.
    pub length_mm: i32,
    /// Across the item, in millimetres.
    pub width_mm: i32,
    /// How high above the floor it begins, in millimetres.
    pub base_mm: i32,
    /// In millimetres.
    pub height_mm: i32,
}

/// A van with all that stands in it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layout {
    /// The inside.
    pub shape: Shape,
    /// The items.
    pub items: Vec<Item>,
    /// Pairs of items, by their numbers from 0, that are used open at the same time.
    pub together: Vec<(usize, usize)>,
}

/// What a box takes up: a convex outline, anticlockwise, from one height to another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solid {
    /// Its corners, or none if it takes up nothing.
    pub corners: Vec<Point>,
    /// Where it begins, in millimetres above the floor.
    pub from_mm: i32,
    /// Where it ends, in millimetres above the floor.
    pub to_mm: i32,
}

impl Item {
    /// Nothing anywhere.
    pub(super) const NOTHING: Self = Self {
        x_mm: 0,
        y_mm: 0,
        length_mm: 0,
        width_mm: 0,
        height_mm: 0,
        base_mm: 0,
        turn_deg: 0.0,
        level: Level::Floor,
        opened: None,
    };

    /// What it takes up when it is closed.
    pub fn solid(&self) -> Solid {
        let Self { length_mm, width_mm, base_mm, height_mm, .. } = *self;
        self.placed(&Opened { x_mm: 0, y_mm: 0, length_mm, width_mm, base_mm, height_mm })
    }

    /// What it takes up when it is open.
    pub fn opened_solid(&self) -> Option<Solid> {
        self.opened.map(|opened| self.placed(&opened))
    }

    /// Whether it is in the van at all.
    pub fn is_inside(&self) -> bool {
        self.level != Level::Outside
    }

    fn placed(&self, part: &Opened) -> Solid {
        let size = |mm: i32| f64::from(mm.clamp(0, MOST_MM));
        let place = |mm: i32| f64::from(mm.clamp(-MOST_MM, MOST_MM));
        let (from_mm, to_mm) = (part.base_mm, part.base_mm.saturating_add(part.height_mm.max(0)));
        if part.length_mm <= 0 || part.width_mm <= 0 {
            return Solid { corners: Vec::new(), from_mm, to_mm };
        }
        let along = direction(self.turn_deg);
        let first = Point::at(self.x_mm.clamp(-MOST_MM, MOST_MM), self.y_mm.clamp(-MOST_MM, MOST_MM));
        let at = |x: f64, y: f64| first.towards(along, x).towards(along.left(), y);
        let (x, y) = (place(part.x_mm), place(part.y_mm));
        let (end_x, end_y) = (x + size(part.length_mm), y + size(part.width_mm));
        Solid { corners: vec![at(x, y), at(end_x, y), at(end_x, end_y), at(x, end_y)], from_mm, to_mm }
    }
}

/// The direction that is turned so far from straight along the van.
fn direction(turn_deg: f64) -> Point {
    let turn = if turn_deg.is_finite() { turn_deg % 360.0 } else { 0.0 };
    let quarters = turn / 90.0;
    match quarters {
        0.0 => Point { x: 1.0, y: 0.0 },
        1.0 | -3.0 => Point { x: 0.0, y: 1.0 },
        2.0 | -2.0 => Point { x: -1.0, y: 0.0 },
        3.0 | -1.0 => Point { x: 0.0, y: -1.0 },
        _ => Point { x: libm::cos(turn.to_radians()), y: libm::sin(turn.to_radians()) },
    }
}

impl Fixed {
    /// What it takes up.
    pub fn solid(&self) -> Solid {
        let (from_mm, to_mm) = self.heights_mm();
        Solid { corners: self.corners().to_vec(), from_mm, to_mm }
    }
}

impl Solid {
    /// Seen from above, in mm².
    pub fn area_mm2(&self) -> f64 {
        area(&self.corners)
    }

    /// By how much two ranges of height overlap, in millimetres; nothing when they touch.
    pub(super) fn common_height_mm(&self, other: &Self) -> i32 {
        self.to_mm.min(other.to_mm).saturating_sub(self.from_mm.max(other.from_mm)).max(0)
    }

    /// The least and the greatest place along the van, and across it.
    pub(crate) fn bounds(&self) -> [(f64, f64); 2] {
        [extent(&self.corners, Point { x: 1.0, y: 0.0 }), extent(&self.corners, Point { x: 0.0, y: 1.0 })]
    }

    /// The middle between the least and the greatest place; of a box, its middle. Nothing of what takes up nothing.
    pub(crate) fn middle(&self) -> Option<Point> {
        let [(from_x, to_x), (from_y, to_y)] = self.bounds();
        let middle = Point { x: f64::midpoint(from_x, to_x), y: f64::midpoint(from_y, to_y) };
        (!self.corners.is_empty()).then_some(middle)
    }
}
