//! Obstacles that are closer than a width act as one: the bridges between them, shortest first.

use super::nodes::{Doorway, Node, Nodes};
use crate::space::geometry::{Point, nearest, side};

/// The shortest way between two obstacles.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bridge {
    first: usize,
    second: usize,
    pub(super) from: Point,
    pub(super) to: Point,
    pub(super) gap_mm: f64,
}

/// Those that may matter.
pub(super) struct Bridges(Vec<Bridge>);

impl Bridges {
    /// All that are shorter than `most_mm`.
    pub(super) fn new(nodes: &Nodes, most_mm: f64) -> Self {
        let mut bridges = Vec::new();
        for (second, node) in nodes.all.iter().enumerate() {
            for (first, other) in nodes.all.iter().enumerate().take(second) {
                let (from, to) = between(other, node);
                let gap_mm = from.distance(to);
                if gap_mm < most_mm {
                    bridges.push(Bridge { first, second, from, to, gap_mm });
                }
            }
        }
        bridges.sort_unstable_by(|one, other| {
            let place = |bridge: &Bridge| (bridge.second, bridge.first);
            one.gap_mm.total_cmp(&other.gap_mm).then(place(one).cmp(&place(other)))
        });
        Self(bridges)
    }

    /// The first bridge shorter than `width_mm` that, with those before it, separates two places, and its length; no
    /// bridge but a length of nothing when the doors alone do.
    pub(super) fn first_odd(
        &self,
        nodes: &Nodes,
        absent: &[bool],
        doors: [Option<&Doorway>; 2],
        (from, to): (Point, Point),
        width_mm: f64,
    ) -> Option<(f64, Option<Bridge>)> {
        let line = Line { from, to };
        let sides: Vec<bool> = nodes.all.iter().map(|node| line.is_left(node.points[0])).collect();
        let mut circles = Circles::new(nodes.all.len());
        for door in doors.into_iter().flatten() {
            let (one, other) = (nodes.all[door.jambs.0].points[0], nodes.all[door.jambs.1].points[0]);
            let odd = line.crosses(one, door.ends.0) ^ line.crosses_outside(door) ^ line.crosses(door.ends.1, other);
            if circles.join(door.jambs.0, door.jambs.1, odd) {
                return Some((0.0, None));
            }
        }
        for bridge in self.0.iter().take_while(|bridge| bridge.gap_mm < width_mm) {
            if absent[bridge.first] || absent[bridge.second] {
                continue;
            }
            let left = [line.is_left(bridge.from), line.is_left(bridge.to), sides[bridge.second]];
            let odd = left.iter().any(|left| *left != sides[bridge.first]) && {
                let (one, other) = (nodes.all[bridge.first].points[0], nodes.all[bridge.second].points[0]);
                line.crosses(one, bridge.from) ^ line.crosses(bridge.from, bridge.to) ^ line.crosses(bridge.to, other)
            };
            if circles.join(bridge.first, bridge.second, odd) {
                return Some((bridge.gap_mm, Some(*bridge)));
            }
        }
        None
    }
}

/// The straight line between two places. A point on it counts as left of it, as if it lay a trifle to the right.
struct Line {
    from: Point,
    to: Point,
}

impl Line {
    fn is_left(&self, point: Point) -> bool {
        side(self.from, self.to, point) >= 0.0
    }

    fn crosses(&self, one: Point, other: Point) -> bool {
        self.is_left(one) != self.is_left(other)
            && (side(one, other, self.from) >= 0.0) != (side(one, other, self.to) >= 0.0)
    }

    /// Whether it crosses the way from jamb to jamb that passes just outside of its own end in the door.
    fn crosses_outside(&self, door: &Doorway) -> bool {
        let (one, other) = door.ends;
        let (from, to) = (side(one, other, self.from), side(one, other, self.to));
        let its_other_end = if from.abs() > to.abs() { from } else { to };
        if its_other_end == 0.0 {
            // All in one line: outside is right of the door, and right of this line if both go the same way.
            return other.minus(one).dot(self.to.minus(self.from)) > 0.0;
        }
        its_other_end < 0.0
    }
}

/// Union-find that knows for each obstacle whether the way from the first of its group crosses the line an odd number
/// of times.
struct Circles {
    above: Vec<(usize, bool)>,
}

impl Circles {
    fn new(count: usize) -> Self {
        Self { above: (0..count).map(|node| (node, false)).collect() }
    }

    fn top(&mut self, node: usize) -> (usize, bool) {
        let (mut at, mut odd) = (node, false);
        while self.above[at].0 != at {
            // Halving of paths: each second one on the way is hung higher.
            let (next, crosses) = self.above[at];
            let (over, more) = self.above[next];
            self.above[at] = (over, crosses ^ more);
            odd ^= self.above[at].1;
            at = over;
        }
        (at, odd)
    }

    /// Joins two by a way; says whether that closed an odd circle.
    fn join(&mut self, first: usize, second: usize, odd: bool) -> bool {
        let ((one, from_one), (other, from_other)) = (self.top(first), self.top(second));
        let odd = odd ^ from_one ^ from_other;
        if one != other {
            self.above[one] = (other, odd);
        }
        one == other && odd
    }
}

/// The ends of the shortest way between two obstacles.
fn between(first: &Node, second: &Node) -> (Point, Point) {
    if !(first.is_square && second.is_square) {
        return nearest(&first.points, &second.points);
    }
    let (x, other_x) = facing(first.bounds[0], second.bounds[0]);
    let (y, other_y) = facing(first.bounds[1], second.bounds[1]);
    (Point { x, y }, Point { x: other_x, y: other_y })
}

/// A place of each of two ranges, nearest to one another: in the middle of what they share, or their ends.
fn facing(first: (f64, f64), second: (f64, f64)) -> (f64, f64) {
    let (low, high) = (first.0.max(second.0), first.1.min(second.1));
    if low <= high {
        let middle = f64::midpoint(low, high);
        return (middle, middle);
    }
    if first.1 < second.0 { (first.1, second.0) } else { (first.0, second.1) }
}
