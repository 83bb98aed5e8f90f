//! What does not fit: things that overlap, that stick out of the van, that cannot be opened.
//!
//! Things overlap when their outlines do and their heights do; what touches does not overlap.

use serde::Serialize;

use super::constants::{NO_AREA_MM2, TOUCH_MM};
use super::geometry::{Point, contains, depth, edges, nearest_on, shared_area, side, whole};
use super::item::{Layout, Solid};
use super::shape::Shape;

/// All that does not fit.
///
/// ```
/// use kerbstead_core::space::fit::{Thing, fit};
/// use kerbstead_core::space::item::{Item, Layout};
/// use kerbstead_core::space::shape::Shape;
/// let bed = Item { length_mm: 1_900, width_mm: 700, height_mm: 400, ..Item::default() };
/// let crate_ = Item { x_mm: 1_850, length_mm: 400, width_mm: 300, height_mm: 300, ..Item::default() };
/// let layout = Layout { shape: Shape::square(3_000, 1_700), items: vec![bed, crate_], together: vec![] };
/// let overlap = fit(&layout).overlaps[0];
/// assert_eq!((overlap.first, overlap.second), (Thing::Item(0), Thing::Item(1)));
/// assert_eq!((overlap.shared_mm2, overlap.depth_mm, overlap.height_mm), (15_000.0, 50.0, 300));
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FitReport {
    /// Closed items that overlap one another or what is built in.
    pub overlaps: Vec<Overlap>,
    /// Closed items that stick out of the van.
    pub outside: Vec<Outside>,
    /// Items that cannot be opened.
    pub stuck: Vec<Stuck>,
}

/// Something in the van, by its number in the layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Thing {
    /// One of the items, closed.
    Item(usize),
    /// One of the items, open.
    Opened(usize),
    /// Something that is built in.
    Fixed(usize),
}

/// Two things in one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overlap {
    /// One of them.
    pub first: Thing,
    /// The other.
    pub second: Thing,
    /// The area they share, seen from above, in mm².
    pub shared_mm2: f64,
    /// How far one of them must at least be moved on the floor, in millimetres.
    pub depth_mm: f64,
    /// How much of their heights is the same, in millimetres.
    pub height_mm: i32,
}

/// What sticks out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outside {
    /// What it is.
    pub thing: Thing,
    /// What it goes through.
    pub past: Limit,
    /// How far, in millimetres: at the corner of it that is farthest out, or at the corner of the van deepest within it.
    pub by_mm: f64,
}

/// What a thing must stay within.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Limit {
    /// The outline of the floor.
    Outline,
    /// The wall at the side of the least `y`, where it comes in.
    LowSide,
    /// The wall at the side of the greatest `y`, where it comes in.
    HighSide,
    /// The roof.
    Roof,
}

/// What cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stuck {
    /// The number of the item.
    pub item: usize,
    /// What is in its way.
    pub by: Obstacle,
    /// How far they are in one another, in millimetres.
    pub depth_mm: f64,
}

/// What is in the way of something that opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Obstacle {
    /// Something in the van.
    Thing(Thing),
    /// The van.
    Limit(Limit),
}

/// Finds all that does not fit.
pub fn fit(layout: &Layout) -> FitReport {
    let closed = things(layout);
    let van = Van::new(&layout.shape);
    let mut report = FitReport::default();
    for (at, (first, solid)) in closed.iter().enumerate() {
        for (second, other) in closed.iter().skip(at + 1) {
            let built_in = matches!((first, second), (Thing::Fixed(_), Thing::Fixed(_)));
            if !built_in && let Some(overlap) = overlap(*first, solid, *second, other) {
                report.overlaps.push(overlap);
            }
        }
        if let Thing::Item(_) = first {
            report.outside.extend(van.left_by(*first, solid));
        }
    }
    report.stuck = stuck(layout, &van, &closed);
    report
}

impl FitReport {
    /// Nothing overlaps, sticks out or is stuck.
    pub fn is_clear(&self) -> bool {
        self.overlaps.is_empty() && self.outside.is_empty() && self.stuck.is_empty()
    }
}

/// All in the van that takes up room, closed.
fn things(layout: &Layout) -> Vec<(Thing, Solid)> {
    let items = layout.items.iter().enumerate().filter(|(_, item)| item.is_inside());
    let items = items.map(|(number, item)| (Thing::Item(number), item.solid()));
    let fixed = layout.shape.fixed.iter().enumerate().map(|(number, fixed)| (Thing::Fixed(number), fixed.solid()));
    items.chain(fixed).collect()
}

/// Whether two solids overlap.
pub(super) fn meets(first: &Solid, second: &Solid) -> bool {
    first.common_height_mm(second) > 0 && {
        let depth_mm = depth(&first.corners, &second.corners);
        depth_mm > TOUCH_MM && depth_mm.is_finite()
    }
}

/// How two solids are in one another, if they are.
fn overlap(first: Thing, solid: &Solid, second: Thing, other: &Solid) -> Option<Overlap> {
    let height_mm = solid.common_height_mm(other);
    if height_mm == 0 {
        return None;
    }
    let depth_mm = depth(&solid.corners, &other.corners);
    let there = depth_mm > TOUCH_MM && depth_mm.is_finite();
    there.then(|| {
        let shared_mm2 = shared_area(&solid.corners, &other.corners);
        Overlap { first, second, shared_mm2, depth_mm, height_mm }
    })
}

fn stuck(layout: &Layout, van: &Van, closed: &[(Thing, Solid)]) -> Vec<Stuck> {
    let mut stuck = Vec::new();
    for (number, item) in layout.items.iter().enumerate().filter(|(_, item)| item.is_inside()) {
        let Some(open) = item.opened_solid() else { continue };
        let opened = Thing::Opened(number);
        let others = closed.iter().filter(|(thing, _)| *thing != Thing::Item(number));
        let mut in_the_way: Vec<Overlap> =
            others.filter_map(|(thing, other)| overlap(opened, &open, *thing, other)).collect();
        for partner in partners(layout, number) {
            let other = layout.items.get(partner).filter(|other| other.is_inside());
            if let Some(other) = other.and_then(super::item::Item::opened_solid) {
                in_the_way.extend(overlap(opened, &open, Thing::Opened(partner), &other));
            }
        }
        let things = in_the_way.iter().map(|overlap| (Obstacle::Thing(overlap.second), overlap.depth_mm));
        let limits = van.left_by(opened, &open).into_iter().map(|out| (Obstacle::Limit(out.past), out.by_mm));
        stuck.extend(things.chain(limits).map(|(by, depth_mm)| Stuck { item: number, by, depth_mm }));
    }
    stuck
}

/// The items that are used open together with one.
fn partners(layout: &Layout, item: usize) -> impl Iterator<Item = usize> {
    layout.together.iter().filter_map(move |pair| match pair {
        (first, second) if *first == item && *second != item => Some(*second),
        (first, second) if *second == item && *first != item => Some(*first),
        _ => None,
    })
}

/// The van, worked out once for all things in it.
pub(super) struct Van<'a> {
    shape: &'a Shape,
    floor: Vec<Point>,
    sides_mm: (i32, i32),
    /// The floor is a rectangle square to itself, so nothing but its bounds counts.
    bounds: Option<[(f64, f64); 2]>,
}

impl<'a> Van<'a> {
    pub(super) fn new(shape: &'a Shape) -> Self {
        let floor = shape.floor();
        let whole = Solid { corners: floor.clone(), from_mm: 0, to_mm: 0 };
        let bounds = whole.bounds();
        let area_of_bounds = (bounds[0].1 - bounds[0].0) * (bounds[1].1 - bounds[1].0);
        let is_square = whole.area_mm2() >= area_of_bounds;
        Self { shape, sides_mm: shape.sides_mm(), bounds: is_square.then_some(bounds), floor }
    }

    /// Whether a solid stays within the van.
    pub(super) fn holds(&self, solid: &Solid) -> bool {
        self.left_by(Thing::Item(0), solid).is_empty()
    }

    /// Where a solid leaves the van.
    fn left_by(&self, thing: Thing, solid: &Solid) -> Vec<Outside> {
        if solid.corners.is_empty() || self.floor.len() < 3 {
            return Vec::new();
        }
        let [(from_x, to_x), (from_y, to_y)] = solid.bounds();
        let (low_in, high_in) = self.shape.walls_in_mm(solid.from_mm, solid.to_mm);
        let headroom = self.shape.headroom_mm(whole(libm::floor(from_x)), whole(libm::ceil(to_x)));
        let low = f64::from(self.sides_mm.0) + f64::from(low_in) - from_y;
        let high = to_y + f64::from(high_in) - f64::from(self.sides_mm.1);
        let past = [
            (Limit::Outline, self.past_outline(solid)),
            (Limit::LowSide, if low_in > 0 { low } else { 0.0 }),
            (Limit::HighSide, if high_in > 0 { high } else { 0.0 }),
            (Limit::Roof, headroom.map_or(0.0, |headroom| f64::from(solid.to_mm) - f64::from(headroom))),
        ];
        let out = past.into_iter().filter(|(_, by_mm)| *by_mm > TOUCH_MM);
        out.map(|(past, by_mm)| Outside { thing, past, by_mm }).collect()
    }

    fn past_outline(&self, solid: &Solid) -> f64 {
        if let Some([(from_x, to_x), (from_y, to_y)]) = self.bounds {
            let [x, y] = solid.bounds();
            if x.0 >= from_x && x.1 <= to_x && y.0 >= from_y && y.1 <= to_y {
                return 0.0;
            }
        }
        if solid.area_mm2() - shared_area(&self.floor, &solid.corners) <= NO_AREA_MM2 {
            return 0.0;
        }
        let outer = solid.corners.iter().map(|corner| self.distance_to_floor(*corner));
        let inner = self.floor.iter().map(|corner| depth_within(&solid.corners, *corner));
        outer.chain(inner).fold(0.0, f64::max)
    }

    /// How far a point is from the floor; nothing for one on it.
    fn distance_to_floor(&self, point: Point) -> f64 {
        if contains(&self.floor, point) {
            return 0.0;
        }
        let distances = edges(&self.floor).map(|(from, to)| nearest_on(from, to, point).distance(point));
        distances.fold(f64::INFINITY, f64::min)
    }
}

/// How far a point is within a convex outline; less than nothing for one outside it.
fn depth_within(convex: &[Point], point: Point) -> f64 {
    let depths = edges(convex).map(|(from, to)| side(from, to, point) / from.distance(to));
    depths.fold(f64::INFINITY, f64::min)
}
