//! Where on a line the middle of a body can be.

use super::nodes::Nodes;
use crate::space::geometry::{Point, edges};

/// The middle of each stretch between two points that is no nearer than `radius` to any obstacle; some may be a point.
pub(super) fn free_stretches(
    nodes: &Nodes,
    from: Point,
    to: Point,
    radius: f64,
    is_absent: impl Fn(usize) -> bool,
) -> Vec<Point> {
    let axis = Axis::new(from, to);
    let mut taken: Vec<(f64, f64)> = Vec::new();
    for (number, node) in nodes.all.iter().enumerate() {
        if !is_absent(number) && axis.comes_near(node.bounds, radius) {
            taken.extend(axis.taken_by(&node.points, radius));
        }
    }
    taken.sort_unstable_by(|one, other| one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1)));
    let (mut at, mut middles) = (0.0, Vec::new());
    for (begin, end) in taken.into_iter().chain([(axis.length, f64::INFINITY)]) {
        if at <= begin.min(axis.length) && at <= axis.length {
            middles.push(f64::midpoint(at, begin.min(axis.length)));
        }
        at = at.max(end);
    }
    middles.into_iter().map(|middle| axis.at(middle)).collect()
}

/// A line as an axis of its own.
struct Axis {
    from: Point,
    to: Point,
    along: Point,
    length: f64,
}

impl Axis {
    fn new(from: Point, to: Point) -> Self {
        let length = from.distance(to);
        let along = if length > 0.0 {
            Point::default().towards(to.minus(from), 1.0 / length)
        } else {
            Point { x: 1.0, y: 0.0 }
        };
        Self { from, to, along, length }
    }

    fn at(&self, place: f64) -> Point {
        self.from.towards(self.along, place)
    }

    fn comes_near(&self, bounds: [(f64, f64); 2], radius: f64) -> bool {
        let apart = |one: f64, other: f64, range: (f64, f64)| (range.0 - one.max(other)).max(one.min(other) - range.1);
        apart(self.from.x, self.to.x, bounds[0]) < radius && apart(self.from.y, self.to.y, bounds[1]) < radius
    }

    /// The stretch that is nearer than `radius` to a convex obstacle. It is one stretch, because what is near to something
    /// convex is convex, so it reaches from the least to the greatest place that is near one of its edges.
    fn taken_by(&self, obstacle: &[Point], radius: f64) -> Option<(f64, f64)> {
        let mut whole: Option<(f64, f64)> = None;
        for (one, other) in edges(obstacle) {
            let (one, other) = (self.own(one), self.own(other));
            let parts = [near_point(one, radius), near_point(other, radius), near_stretch(one, other, radius)];
            for (begin, end) in parts.into_iter().flatten() {
                whole = Some(whole.map_or((begin, end), |whole| (whole.0.min(begin), whole.1.max(end))));
            }
        }
        whole
    }

    /// A point as seen from the axis: along it, and to the left of it.
    fn own(&self, point: Point) -> Point {
        let way = point.minus(self.from);
        Point { x: way.dot(self.along), y: self.along.cross(way) }
    }
}

/// Where the axis is nearer than `radius` to a point.
fn near_point(point: Point, radius: f64) -> Option<(f64, f64)> {
    let squared = radius * radius - point.y * point.y;
    (squared > 0.0).then(|| (point.x - libm::sqrt(squared), point.x + libm::sqrt(squared)))
}

/// Where the axis is nearer than `radius` to the inside of a stretch, at right angles to it.
fn near_stretch(one: Point, other: Point, radius: f64) -> Option<(f64, f64)> {
    let along = other.minus(one);
    let length = along.length();
    if length <= 0.0 {
        return None;
    }
    // At the place x, the way along the stretch is a linear function of x, and so is the distance from its line.
    let beside = between((-one.x * along.x - one.y * along.y, along.x), (0.0, length * length));
    let near = between((one.x * along.y - one.y * along.x, -along.y), (-radius * length, radius * length));
    let (beside, near) = (beside?, near?);
    let both = (beside.0.max(near.0), beside.1.min(near.1));
    (both.0 < both.1).then_some(both)
}

/// Where `value + slope * x` is between two bounds.
fn between((value, slope): (f64, f64), (low, high): (f64, f64)) -> Option<(f64, f64)> {
    if slope == 0.0 {
        return (low < value && value < high).then_some((f64::NEG_INFINITY, f64::INFINITY));
    }
    let (one, other) = ((low - value) / slope, (high - value) / slope);
    Some((one.min(other), one.max(other)))
}
