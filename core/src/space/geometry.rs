//! Points, and convex outlines made of them.
//!
//! Coordinates are millimetres in floats. As long as they are whole, and no larger than
//! [`MOST_MM`](super::constants::MOST_MM), sums and products of two of them are exact, so what is built square to the
//! walls is decided without rounding. Only what is turned by an angle is rounded, on every target alike.

use serde::Serialize;

use super::constants::{MOST_MM, NO_AREA_MM2};

/// A place on the floor: along the van and across it, in millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Point {
    /// Along the van, in millimetres.
    pub x: f64,
    /// Across the van, in millimetres.
    pub y: f64,
}

impl Point {
    /// From whole millimetres.
    pub fn at(x_mm: i32, y_mm: i32) -> Self {
        Self { x: f64::from(x_mm), y: f64::from(y_mm) }
    }

    pub(super) fn minus(self, other: Self) -> Self {
        Self { x: self.x - other.x, y: self.y - other.y }
    }

    /// So far along a direction.
    pub(super) fn towards(self, direction: Self, share: f64) -> Self {
        Self { x: self.x + direction.x * share, y: self.y + direction.y * share }
    }

    pub(super) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// More than nothing when `other` points to the left of it.
    pub(super) fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    pub(super) fn length(self) -> f64 {
        libm::sqrt(self.dot(self))
    }

    /// How far it is to another one, in millimetres.
    pub fn distance(self, other: Self) -> f64 {
        self.minus(other).length()
    }

    /// A quarter turn to the left.
    pub(super) fn left(self) -> Self {
        Self { x: -self.y, y: self.x }
    }
}

/// A place or a length as a whole number; what is beyond the numbers is the last of them.
#[allow(clippy::cast_possible_truncation, reason = "saturates, and nothing here is longer than MOST_MM")]
pub(super) fn whole(mm: f64) -> i32 {
    mm as i32
}

/// A length in whole millimetres, rounded, no more than can be reckoned with.
pub(super) fn mm(length: f64) -> i32 {
    let most = f64::from(MOST_MM);
    if length.is_nan() { 0 } else { whole(libm::round(length.clamp(-most, most))) }
}

/// More than nothing when `point` is to the left of the way from `from` to `to`: twice the area of the triangle.
pub(super) fn side(from: Point, to: Point, point: Point) -> f64 {
    to.minus(from).cross(point.minus(from))
}

/// The edges of a closed outline; a single point has one that leads to itself.
pub(super) fn edges(outline: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    outline.iter().copied().zip(outline.iter().copied().cycle().skip(1))
}

/// The area inside, in mm²; negative for an outline that goes round clockwise. The surveyor's formula (shoelace).
pub(super) fn area(outline: &[Point]) -> f64 {
    let Some(origin) = outline.first() else { return 0.0 };
    edges(outline).map(|(from, to)| from.minus(*origin).cross(to.minus(*origin))).sum::<f64>() / 2.0
}

/// What of an outline, convex or not, lies within a convex one that goes round anticlockwise: Sutherland and Hodgman,
/// "Reentrant polygon clipping", 1974. Of one that is not convex, parts hang together by edges without area.
pub(super) fn clip(outline: &[Point], convex: &[Point]) -> Vec<Point> {
    edges(convex).fold(outline.to_vec(), |kept, (from, to)| left_of(&kept, from, to))
}

/// What of an outline is to the left of a line.
pub(super) fn left_of(outline: &[Point], from: Point, to: Point) -> Vec<Point> {
    let mut kept = Vec::with_capacity(outline.len() + 2);
    for (start, end) in edges(outline) {
        let (before, after) = (side(from, to, start), side(from, to, end));
        if before >= 0.0 {
            kept.push(start);
        }
        if (before > 0.0 && after < 0.0) || (before < 0.0 && after > 0.0) {
            kept.push(start.towards(end.minus(start), before / (before - after)));
        }
    }
    kept
}

/// The area that an outline and a convex one share, in mm².
pub(super) fn shared_area(outline: &[Point], convex: &[Point]) -> f64 {
    if convex.len() < 3 { 0.0 } else { area(&clip(outline, convex)).abs() }
}

/// The area of a convex part of an outline that other convex ones leave free, in mm². What one of them leaves of a convex
/// part is cut into convex parts again, one for each of its edges.
pub(super) fn free_area<'a>(outline: &[Point], part: &[Point], others: impl Iterator<Item = &'a [Point]>) -> f64 {
    let mut free = vec![part.to_vec()];
    for other in others {
        let mut left = Vec::new();
        for mut rest in free {
            if depth(&rest, other) <= 0.0 {
                left.push(rest);
                continue;
            }
            for (from, to) in edges(other) {
                let outer = left_of(&rest, to, from);
                if area(&outer) > NO_AREA_MM2 {
                    left.push(outer);
                }
                rest = left_of(&rest, from, to);
            }
        }
        free = left;
    }
    free.iter().map(|part| shared_area(outline, part)).sum()
}

/// How deep two convex outlines are in one another: the shortest way by which one of them would come free, in
/// millimetres; less than nothing when a straight line separates them. The shortest way is at right angles to an edge of one
/// of them (separating axes: Gottschalk, Lin and Manocha, "`OBBTree`", 1996; from memory).
pub(super) fn depth(first: &[Point], second: &[Point]) -> f64 {
    let mut least = f64::INFINITY;
    for (from, to) in edges(first).chain(edges(second)) {
        let along = to.minus(from);
        let length = along.length();
        if length > 0.0 {
            let across = along.left();
            let (low, high) = extent(first, across);
            let (other_low, other_high) = extent(second, across);
            least = least.min((high - other_low).min(other_high - low) / length);
        }
    }
    least
}

/// The least and the most of an outline in a direction.
pub(super) fn extent(outline: &[Point], direction: Point) -> (f64, f64) {
    let along = outline.iter().map(|point| point.dot(direction));
    along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
}

/// The point between two that is nearest to a third.
pub(super) fn nearest_on(from: Point, to: Point, point: Point) -> Point {
    let along = to.minus(from);
    let squared = along.dot(along);
    if squared <= 0.0 {
        return from;
    }
    let share = point.minus(from).dot(along) / squared;
    if share >= 1.0 { to } else { from.towards(along, share.max(0.0)) }
}

/// Whether a point lies in an outline, convex or not; on its edge it does too. Counts the edges to the right.
pub(super) fn contains(outline: &[Point], point: Point) -> bool {
    let mut inside = false;
    for (from, to) in edges(outline) {
        let turn = side(from, to, point);
        if turn == 0.0 && point.minus(from).dot(point.minus(to)) <= 0.0 {
            return true;
        }
        if (from.y > point.y) != (to.y > point.y) && (turn > 0.0) == (to.y > from.y) {
            inside = !inside;
        }
    }
    inside
}

/// Where two stretches cross, if they do at one place.
pub(super) fn crossing(first: (Point, Point), second: (Point, Point)) -> Option<Point> {
    let (before, after) = (side(second.0, second.1, first.0), side(second.0, second.1, first.1));
    let (other_before, other_after) = (side(first.0, first.1, second.0), side(first.0, first.1, second.1));
    let crosses = before * after <= 0.0 && other_before * other_after <= 0.0 && (before - after) != 0.0;
    crosses.then(|| first.0.towards(first.1.minus(first.0), before / (before - after)))
}

/// A point of each of two convex outlines, nearest to one another; the same point twice where they meet.
pub(super) fn nearest(first: &[Point], second: &[Point]) -> (Point, Point) {
    let (Some(mut of_first), Some(mut of_second)) = (first.first().copied(), second.first().copied()) else {
        return Default::default();
    };
    if first.len() > 2 && contains(first, of_second) {
        return (of_second, of_second);
    }
    if second.len() > 2 && contains(second, of_first) {
        return (of_first, of_first);
    }
    let squared = |first: Point, second: Point| first.minus(second).dot(first.minus(second));
    let mut least = f64::INFINITY;
    for edge in edges(first) {
        for other in edges(second) {
            if let Some(common) = crossing(edge, other) {
                return (common, common);
            }
            let (here, there) = (nearest_on(edge.0, edge.1, other.0), nearest_on(other.0, other.1, edge.0));
            for (one, another) in [(here, other.0), (edge.0, there)] {
                let distance = squared(one, another);
                if distance < least {
                    (least, of_first, of_second) = (distance, one, another);
                }
            }
        }
    }
    (of_first, of_second)
}
