//! What is wrong with a shape, each with its place.

use super::{Door, Fixed, Shape, Spot};
use crate::space::constants::MOST_MM;

/// What is wrong, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Fewer than three corners.
    TooFewCorners {
        /// How many there are.
        count: usize,
    },
    /// All corners lie in a line.
    NoArea,
    /// Two stretches of the outline cross or touch; a stretch has the number of the corner it begins at.
    Crossing {
        /// The first of the two.
        first: usize,
        /// The second.
        second: usize,
        /// Where, to the millimetre.
        at: Spot,
    },
    /// The outline comes to a corner and goes back the way it came, or stays.
    Spike {
        /// The number of the corner.
        corner: usize,
    },
    /// A measure or place is below what it can be, or beyond [`MOST_MM`].
    OutOfRange {
        /// What it belongs to.
        part: Part,
        /// Which of them, from 0.
        number: usize,
    },
    /// A door is in no stretch of the outline, or does not end in the one it begins in.
    DoorPastItsWall {
        /// Which door, from 0.
        door: usize,
    },
    /// Two doors of one stretch overlap.
    DoorsOverlap {
        /// The first of the two.
        first: usize,
        /// The second.
        second: usize,
    },
    /// A row is not beyond the one before.
    OutOfOrder {
        /// What it belongs to.
        part: Part,
        /// Which row, from 0.
        number: usize,
    },
}

/// A part of a shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A corner of the outline.
    Corner,
    /// Something that is built in.
    Fixed,
    /// A door.
    Door,
    /// A row of the walls.
    Wall,
    /// A row of the roof.
    Roof,
}

impl Shape {
    /// All that is wrong with it; nothing if it can be reckoned with. What has faults is reckoned with all the same,
    /// and no more than its answers is wrong.
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = self.out_of_range();
        if faults.is_empty() {
            faults.extend(self.of_the_outline());
            faults.extend(self.of_the_doors());
        }
        let walls: Vec<i32> = self.walls.iter().map(|row| row.height_mm).collect();
        let roof: Vec<i32> = self.roof.iter().map(|row| row.x_mm).collect();
        faults.extend(out_of_order(&walls, Part::Wall).chain(out_of_order(&roof, Part::Roof)));
        faults
    }

    /// How many faults its outline has.
    pub(crate) fn outline_faults(&self) -> usize {
        self.of_the_outline().len()
    }

    fn out_of_range(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        let mut check = |part: Part, number: usize, sound: bool| {
            if !sound {
                faults.push(Fault::OutOfRange { part, number });
            }
        };
        let (place, size) = (-MOST_MM..=MOST_MM, 1..=MOST_MM);
        let inward = 0..=MOST_MM;
        for (number, spot) in self.outline.iter().enumerate() {
            check(Part::Corner, number, place.contains(&spot.x_mm) && place.contains(&spot.y_mm));
        }
        for (number, Fixed { x_mm, y_mm, length_mm, width_mm, base_mm, height_mm }) in self.fixed.iter().enumerate() {
            let there = place.contains(x_mm) && place.contains(y_mm) && inward.contains(base_mm);
            check(Part::Fixed, number, there && [length_mm, width_mm, height_mm].iter().all(|mm| size.contains(mm)));
        }
        for (number, Door { from_mm, width_mm, height_mm, .. }) in self.doors.iter().enumerate() {
            check(Part::Door, number, inward.contains(from_mm) && size.contains(width_mm) && size.contains(height_mm));
        }
        for (number, row) in self.walls.iter().enumerate() {
            let all = [row.height_mm, row.low_side_in_mm, row.high_side_in_mm];
            check(Part::Wall, number, all.iter().all(|mm| inward.contains(mm)));
        }
        for (number, row) in self.roof.iter().enumerate() {
            check(Part::Roof, number, place.contains(&row.x_mm) && size.contains(&row.height_mm));
        }
        faults
    }

    fn of_the_outline(&self) -> Vec<Fault> {
        let count = self.outline.len();
        if count < 3 {
            return vec![Fault::TooFewCorners { count }];
        }
        let mut faults = Vec::new();
        for (corner, spots) in self.corners().into_iter().enumerate() {
            let [before, here, after] = spots;
            if side(before, here, after) == 0 && dot(before, here, after) <= 0 {
                faults.push(Fault::Spike { corner });
            }
        }
        for first in 0..count {
            for second in first + 2..count {
                let next_to_it = first == 0 && second == count - 1;
                if !next_to_it && let Some(at) = meet(self.stretch(first), self.stretch(second)) {
                    faults.push(Fault::Crossing { first, second, at });
                }
            }
        }
        if self.twice_the_area() == 0 && faults.is_empty() || self.all_in_a_line() {
            faults = vec![Fault::NoArea];
        }
        faults
    }

    fn of_the_doors(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        for (number, door) in self.doors.iter().enumerate() {
            let end = i64::from(door.from_mm) + i64::from(door.width_mm);
            let length = self.outline.get(door.wall).map_or(0, |_| squared_length(self.stretch(door.wall)));
            if end * end > length {
                faults.push(Fault::DoorPastItsWall { door: number });
            }
            for (earlier, other) in self.doors.iter().enumerate().take(number) {
                let apart =
                    i64::from(other.from_mm) >= end || other.from_mm.saturating_add(other.width_mm) <= door.from_mm;
                if other.wall == door.wall && !apart {
                    faults.push(Fault::DoorsOverlap { first: earlier, second: number });
                }
            }
        }
        faults
    }

    fn stretch(&self, from: usize) -> [Spot; 2] {
        let at = |corner: usize| self.outline.get(corner % self.outline.len().max(1)).copied().unwrap_or_default();
        [at(from), at(from + 1)]
    }

    /// Each corner between its neighbours.
    fn corners(&self) -> Vec<[Spot; 3]> {
        let count = self.outline.len();
        (0..count)
            .map(|corner| [self.stretch(corner + count - 1)[0], self.stretch(corner)[0], self.stretch(corner)[1]])
            .collect()
    }

    fn twice_the_area(&self) -> i64 {
        let origin = Spot::default();
        (0..self.outline.len()).map(|from| side(origin, self.stretch(from)[0], self.stretch(from)[1])).sum()
    }

    fn all_in_a_line(&self) -> bool {
        self.corners().iter().all(|[before, here, after]| side(*before, *here, *after) == 0)
    }
}

fn out_of_order(rows: &[i32], part: Part) -> impl Iterator<Item = Fault> {
    let pairs = rows.windows(2).enumerate().filter(|(_, pair)| pair[1] <= pair[0]);
    pairs.map(move |(number, _)| Fault::OutOfOrder { part, number: number + 1 })
}

/// More than nothing when the third is to the left of the way from the first to the second. Exact.
fn side(from: Spot, to: Spot, spot: Spot) -> i64 {
    let (along, over) = (way(from, to), way(from, spot));
    along.0 * over.1 - along.1 * over.0
}

/// More than nothing when the way from the second on goes forward, not back.
fn dot(before: Spot, here: Spot, after: Spot) -> i64 {
    let (come, go) = (way(before, here), way(here, after));
    come.0 * go.0 + come.1 * go.1
}

fn way(from: Spot, to: Spot) -> (i64, i64) {
    (i64::from(to.x_mm) - i64::from(from.x_mm), i64::from(to.y_mm) - i64::from(from.y_mm))
}

fn squared_length([from, to]: [Spot; 2]) -> i64 {
    let (x, y) = way(from, to);
    x * x + y * y
}

/// Where two stretches have a point in common, to the millimetre.
fn meet(first: [Spot; 2], second: [Spot; 2]) -> Option<Spot> {
    let on = |stretch: [Spot; 2], spot: Spot| {
        side(stretch[0], stretch[1], spot) == 0 && dot(stretch[0], spot, stretch[1]) >= 0
    };
    let ends =
        second.into_iter().filter(|spot| on(first, *spot)).chain(first.into_iter().filter(|spot| on(second, *spot)));
    if let Some(end) = ends.into_iter().next() {
        return Some(end);
    }
    let sides = |stretch: [Spot; 2], other: [Spot; 2]| other.map(|spot| side(stretch[0], stretch[1], spot));
    let ([before, after], [other_before, other_after]) = (sides(second, first), sides(first, second));
    let crosses = before.signum() * after.signum() < 0 && other_before.signum() * other_after.signum() < 0;
    crosses.then(|| {
        let (x, y) = way(first[0], first[1]);
        let part = |length: i64| i128::from(length) * i128::from(before) / i128::from(before - after);
        let on = |from: i32, length: i64| from.saturating_add(i32::try_from(part(length)).unwrap_or(0));
        Spot { x_mm: on(first[0].x_mm, x), y_mm: on(first[0].y_mm, y) }
    })
}
