//! What is in the way, as convex sets.

use super::{Body, Place};
use crate::space::constants::TOUCH_MM;
use crate::space::geometry::{Point, extent};
use crate::space::item::{Layout, Solid};

/// An obstacle.
pub(super) struct Node {
    /// Its corners; two for a wall, one for a jamb.
    pub(super) points: Vec<Point>,
    /// Its bounds along the van and across it.
    pub(super) bounds: [(f64, f64); 2],
    /// It is a rectangle, a wall or a point square to the van, so its bounds are all of it.
    pub(super) is_square: bool,
}

/// A door with its jambs.
pub(super) struct Doorway {
    /// Its ends; the inside is to the left of the way from the first to the second.
    pub(super) ends: (Point, Point),
    /// The obstacles that its ends belong to.
    pub(super) jambs: (usize, usize),
    /// The obstacles that are gone when it is open.
    panels: Vec<usize>,
}

/// All obstacles.
#[derive(Default)]
pub(super) struct Nodes {
    pub(super) all: Vec<Node>,
    pub(super) doors: Vec<Doorway>,
    /// The corners of each item, also of those that are in nobody's way.
    pub(super) solids: Vec<Vec<Point>>,
    /// The obstacle that an item is.
    items: Vec<Option<usize>>,
}

impl Node {
    #[allow(clippy::float_cmp, reason = "the bounds are coordinates of the points themselves")]
    fn new(points: Vec<Point>) -> Self {
        let bounds = [extent(&points, Point { x: 1.0, y: 0.0 }), extent(&points, Point { x: 0.0, y: 1.0 })];
        let [x, y] = bounds;
        let at_a_corner = |point: &Point| (point.x == x.0 || point.x == x.1) && (point.y == y.0 || point.y == y.1);
        let is_thin = x.0 == x.1 || y.0 == y.1;
        let is_square = points.iter().all(at_a_corner) && (points.len() == 4 || is_thin);
        Self { points, bounds, is_square }
    }
}

impl Nodes {
    pub(super) fn new(layout: &Layout, body: &Body, open: &[usize]) -> Self {
        let mut nodes = Self::default();
        nodes.add_walls(layout);
        nodes.add_sloping_sides(layout, body);
        let reaches =
            |solid: &Solid| solid.from_mm < body.to_mm && body.from_mm < solid.to_mm && !solid.corners.is_empty();
        for solid in layout.shape.fixed.iter().map(crate::space::shape::Fixed::solid).filter(reaches) {
            nodes.add(solid.corners);
        }
        for (number, item) in layout.items.iter().enumerate() {
            let opened = if open.contains(&number) { item.opened_solid() } else { None };
            let solid = opened.unwrap_or_else(|| item.solid());
            let there = item.is_inside() && reaches(&solid);
            let node = there.then(|| nodes.add(solid.corners.clone()));
            nodes.items.push(node);
            nodes.solids.push(solid.corners);
        }
        nodes
    }

    /// Which obstacles are not there for somebody between two places.
    pub(super) fn absent(&self, places: [Place; 2]) -> Vec<bool> {
        let mut absent = vec![false; self.all.len()];
        for place in places {
            match place {
                Place::Door(door) => {
                    for panel in self.doors.get(door).map(|door| door.panels.as_slice()).unwrap_or_default() {
                        absent[*panel] = true;
                    }
                }
                Place::On(item) => {
                    if let Some(node) = self.of_item(item) {
                        absent[node] = true;
                    }
                }
                Place::Beside { .. } | Place::Spot(_) => {}
            }
        }
        absent
    }

    /// The door at a place.
    pub(super) fn barrier(&self, place: Place) -> Option<&Doorway> {
        if let Place::Door(door) = place { self.doors.get(door) } else { None }
    }

    /// The obstacle that an item is.
    pub(super) fn of_item(&self, item: usize) -> Option<usize> {
        self.items.get(item).copied().flatten()
    }

    fn add(&mut self, points: Vec<Point>) -> usize {
        self.all.push(Node::new(points));
        self.all.len() - 1
    }

    /// The outline, cut at its doors. What is left between two doors that touch is a point.
    fn add_walls(&mut self, layout: &Layout) {
        let floor = layout.shape.floor();
        let ends: Vec<_> = layout.shape.doors.iter().map(|door| layout.shape.door_ends(door)).collect();
        let mut found: Vec<Option<Doorway>> = ends.iter().map(|_| None).collect();
        for (from, to) in crate::space::geometry::edges(&floor) {
            let along = to.minus(from);
            let mut in_it: Vec<(usize, (Point, Point))> = Vec::new();
            for (number, door) in ends.iter().enumerate() {
                if let Some(door) = door
                    && found[number].is_none()
                    && is_part_of((from, to), *door)
                {
                    in_it.push((number, *door));
                }
            }
            in_it.sort_by(|one, other| one.1.0.dot(along).total_cmp(&other.1.0.dot(along)));
            let mut start = from;
            let mut pieces = Vec::new();
            for (_, door) in &in_it {
                pieces.push(self.add(vec![start, door.0]));
                start = door.1;
            }
            pieces.push(self.add(vec![start, to]));
            for (at, (number, door)) in in_it.into_iter().enumerate() {
                let panel = self.add(vec![door.0, door.1]);
                found[number] = Some(Doorway { ends: door, jambs: (pieces[at], pieces[at + 1]), panels: vec![panel] });
            }
        }
        let nowhere = || Doorway { ends: Default::default(), jambs: (0, 0), panels: Vec::new() };
        self.doors = found.into_iter().map(|door| door.unwrap_or_else(nowhere)).collect();
    }

    /// The sides as far as they come in at the height of the body, except in doors that are open.
    fn add_sloping_sides(&mut self, layout: &Layout, body: &Body) {
        let (low_in, high_in) = layout.shape.walls_in_mm(body.from_mm, body.to_mm);
        let (low, high) = layout.shape.sides_mm();
        let along = || layout.shape.outline.iter().map(|spot| spot.x_mm);
        let (Some(begin), Some(end)) = (along().min(), along().max()) else { return };
        let (low_at, high_at) = (f64::from(low) + f64::from(low_in), f64::from(high) - f64::from(high_in));
        if low_in > 0 {
            let doors = self.doors_where(|point| point.y <= low_at);
            self.add_side(low_at, (begin.into(), end.into()), doors);
        }
        if high_in > 0 {
            let doors = self.doors_where(|point| point.y >= high_at);
            self.add_side(high_at, (begin.into(), end.into()), doors);
        }
    }

    /// The doors both of whose ends are beyond a side, each with its stretch along the van, in order.
    fn doors_where(&self, is_beyond: impl Fn(Point) -> bool) -> Vec<(f64, f64, usize)> {
        let mut doors = Vec::new();
        for (number, door) in self.doors.iter().enumerate() {
            let (one, other) = door.ends;
            if is_beyond(one) && is_beyond(other) && (one.x - other.x).abs() > TOUCH_MM {
                doors.push((one.x.min(other.x), one.x.max(other.x), number));
            }
        }
        doors.sort_by(|one, other| one.0.total_cmp(&other.0));
        doors
    }

    fn add_side(&mut self, y: f64, (begin, end): (f64, f64), doors: Vec<(f64, f64, usize)>) {
        let mut start = begin;
        for (from, to, door) in doors {
            self.add(vec![Point { x: start, y }, Point { x: from, y }]);
            let panel = self.add(vec![Point { x: from, y }, Point { x: to, y }]);
            self.doors[door].panels.push(panel);
            start = to;
        }
        self.add(vec![Point { x: start, y }, Point { x: end, y }]);
    }
}

/// Whether a door lies in a stretch of the outline, within what rounding can do.
fn is_part_of(wall: (Point, Point), door: (Point, Point)) -> bool {
    let near = |point: Point| crate::space::geometry::nearest_on(wall.0, wall.1, point).distance(point) <= TOUCH_MM;
    near(door.0) && near(door.1) && door.1.minus(door.0).dot(wall.1.minus(wall.0)) > 0.0
}
