//! Whether somebody gets through: from a door to the bed, to the kitchen, to the cab, and out again at night.
//!
//! ```
//! use kerbstead_core::space::item::{Item, Layout};
//! use kerbstead_core::space::shape::{Shape, Spot};
//! use kerbstead_core::space::walkway::{Body, Place, Walkway};
//! let bed = Item { length_mm: 1_900, width_mm: 700, height_mm: 400, ..Item::default() };
//! let box_ = Item { x_mm: 1_200, y_mm: 1_200, length_mm: 1_000, width_mm: 500, height_mm: 400, ..Item::default() };
//! let layout = Layout { shape: Shape::square(3_000, 1_700), items: vec![bed, box_], together: vec![] };
//! let at = |x_mm, y_mm| Place::Spot(Spot { x_mm, y_mm });
//! let body = |width_mm| Body { width_mm, from_mm: 0, to_mm: 1_900 };
//! let way = Walkway::new(&layout, &body(499), &[]).way(at(2_700, 850), at(300, 1_200));
//! assert!(way.passes);
//! assert_eq!(way.widest_mm, 500.0);
//! assert!(!Walkway::new(&layout, &body(503), &[]).way(at(2_700, 850), at(300, 1_200)).passes);
//! ```
//!
//! # Why the answer is exact
//!
//! The body is a disc on the floor. Walls, built-in things and items that reach into its range of heights are convex sets,
//! the *obstacles*. Its middle may be wherever it is no nearer than half a width to any of them: outside the union `U` of
//! the obstacles, each grown by half a width (as open sets, so touching is allowed).
//!
//! 1. Two places outside `U` are in different pieces of what is free just when some closed curve in `U` goes round one
//!    of them and not round the other (Alexander's duality; pieces of a closed set in the plane that is bounded by
//!    segments and arcs are also connected by paths).
//! 2. Grown convex sets are convex. So `U` has the same holes as the nerve of these sets (nerve theorem), and every closed
//!    curve in it is made up of those that lead from set to set where two of them meet. Two meet just when the obstacles
//!    are closer than one width, and then the shortest way between the two, a *bridge*, lies in their union.
//! 3. Whether a closed curve goes round one place and not round the other is told by how often it crosses the straight
//!    line between them: an odd number of times.
//!
//! So bridges are added to the obstacles from the shortest to the longest, in a union-find that also keeps the parity of
//! the crossings with that line. The first bridge that closes an odd circle is where it gets too narrow: its length is the
//! greatest width that passes, and its ends are the narrowest place. What is square to the walls is reckoned without
//! rounding.
//!
//! A door that one goes through is no obstacle, its jambs are. So that the way does not lead round outside, a bridge of no
//! length connects the jambs; it passes outside of the place at which the body stands in the door.

mod bridges;
mod line;
mod nodes;

use super::constants::{MOST_MM, TOUCH_MM};
use super::geometry::{Point, contains, edges, nearest, whole};
use super::item::Layout;
use super::shape::Spot;
use bridges::{Bridge, Bridges};
use line::free_stretches;
use nodes::Nodes;

/// Who goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Body {
    /// How wide, in millimetres.
    pub width_mm: i32,
    /// What stands below this is stepped over, in millimetres above the floor.
    pub from_mm: i32,
    /// What begins above this is ducked under, in millimetres above the floor. Whether one can stand upright is not
    /// asked here: [`Shape::headroom_mm`](super::shape::Shape::headroom_mm).
    pub to_mm: i32,
}

/// Where one comes from or goes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// In the door of this number.
    Door(usize),
    /// Before one side of an item, with the middle of the body before it; without a side, before any. Sides count from
    /// the one along the item at its first corner, anticlockwise, from 0.
    Beside {
        /// The number of the item.
        item: usize,
        /// Which side.
        side: Option<usize>,
    },
    /// On an item, which is then in nobody's way: on the bed at night.
    On(usize),
    /// The middle of the body at a place.
    Spot(Spot),
}

/// What a way is like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// Whether the body gets through.
    pub passes: bool,
    /// The greatest width that does, in millimetres; nothing when none does. To the whole millimetre where it is the room
    /// at its ends that limits it, and exact where it is on the way.
    pub widest_mm: f64,
    /// Where it is narrowest.
    pub narrowest: Option<Narrow>,
}

/// A narrow place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Narrow {
    /// One end of it.
    pub from: Point,
    /// The other end.
    pub to: Point,
    /// What is between them, in millimetres.
    pub gap_mm: f64,
}

/// A way out through a door.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WayOut {
    /// The number of the door.
    pub door: usize,
    /// What the way is like.
    pub way: Way,
}

/// All that is in the way, worked out once for many ways.
pub struct Walkway {
    width_mm: i32,
    floor: Vec<Point>,
    /// Nothing wider is tried.
    most_mm: i32,
    nodes: Nodes,
    bridges: Bridges,
}

/// What came of trying one width.
enum Trial {
    /// It does, between these two places.
    Passes([Point; 2]),
    /// Not, and the most that passes between these two places.
    Narrow(f64, Option<Bridge>),
    /// There is nowhere to stand at one of the ends.
    NoPlace,
}

impl Walkway {
    /// Takes a layout in which the items of these numbers are open.
    pub fn new(layout: &Layout, body: &Body, open: &[usize]) -> Self {
        let floor = layout.shape.floor();
        let nodes = Nodes::new(layout, body, open);
        let extent = |pick: fn(&Spot) -> i32| {
            let along = || layout.shape.outline.iter().map(pick);
            along().max().unwrap_or(0).saturating_sub(along().min().unwrap_or(0))
        };
        let most_mm = extent(|spot| spot.x_mm).min(extent(|spot| spot.y_mm)).clamp(0, 2 * MOST_MM);
        Self { width_mm: body.width_mm, floor, most_mm, bridges: Bridges::new(&nodes, f64::from(most_mm)), nodes }
    }

    /// The way from one place to another.
    pub fn way(&self, from: Place, to: Place) -> Way {
        let (mut passes, mut fails) = (0, self.most_mm + 1);
        let (mut widest_mm, mut narrow, mut stood) = (0.0_f64, None, None);
        let mut next = self.most_mm;
        while fails - passes > 1 {
            match self.attempt(from, to, next) {
                Trial::Passes(places) => {
                    (passes, stood) = (next, Some(places));
                    widest_mm = widest_mm.max(f64::from(next));
                    next = passes + (fails - passes) / 2;
                }
                Trial::Narrow(most, bridge) => {
                    (fails, narrow) = (next, bridge.or(narrow));
                    widest_mm = widest_mm.max(most);
                    // Whoever is too wide for these two places gets through between them with the width that was found.
                    passes = passes.max(whole(most)).min(fails - 1);
                    next = passes + 1;
                }
                Trial::NoPlace => {
                    (fails, narrow) = (next, None);
                    next = passes + (fails - passes) / 2;
                }
            }
        }
        let narrowest = match (narrow, stood) {
            (Some(bridge), _) => Some(Narrow { from: bridge.from, to: bridge.to, gap_mm: bridge.gap_mm }),
            (None, Some(places)) => self.squeeze(places, [from, to]),
            (None, None) => None,
        };
        Way { passes: widest_mm + TOUCH_MM >= f64::from(self.width_mm), widest_mm, narrowest }
    }

    /// The ways from a bed through each door. Two doors are to be had in the night, so that fire or a door that jams
    /// leaves one.
    pub fn ways_out(&self, bed: usize) -> Vec<WayOut> {
        (0..self.nodes.doors.len())
            .map(|door| WayOut { door, way: self.way(Place::On(bed), Place::Door(door)) })
            .collect()
    }

    /// Whether the body of the width asked for gets from one place to another; quicker than [`Self::way`].
    pub fn passes(&self, from: Place, to: Place) -> bool {
        self.width_mm <= self.most_mm && matches!(self.attempt(from, to, self.width_mm), Trial::Passes(_))
    }

    fn attempt(&self, from: Place, to: Place, width_mm: i32) -> Trial {
        let absent = self.nodes.absent([from, to]);
        let radius = (f64::from(width_mm) / 2.0 - TOUCH_MM).max(0.0);
        let starts = self.standing(from, radius, &absent);
        let ends = self.standing(to, radius, &absent);
        let mut best: Option<(f64, Option<Bridge>)> = None;
        for start in &starts {
            for end in &ends {
                let barriers = [from, to].map(|place| self.nodes.barrier(place));
                match self.bridges.first_odd(&self.nodes, &absent, barriers, (*start, *end), 2.0 * radius) {
                    None => return Trial::Passes([*start, *end]),
                    Some((gap_mm, bridge)) if best.is_none_or(|best| gap_mm > best.0) => best = Some((gap_mm, bridge)),
                    Some(_) => {}
                }
            }
        }
        best.map_or(Trial::NoPlace, |(gap_mm, bridge)| Trial::Narrow(gap_mm, bridge))
    }

    /// A point of each stretch on which the body can stand at a place.
    fn standing(&self, place: Place, radius: f64, absent: &[bool]) -> Vec<Point> {
        let mut points = Vec::new();
        for (from, to) in self.lines(place, radius) {
            let own = if let Place::Beside { item, .. } = place { self.nodes.of_item(item) } else { None };
            for middle in free_stretches(&self.nodes, from, to, radius, |node| absent[node] || own == Some(node)) {
                points.push(middle);
            }
        }
        points.retain(|point| contains(&self.floor, *point) || matches!(place, Place::Door(_)));
        points
    }

    /// The lines on which the middle of the body is, at a place.
    fn lines(&self, place: Place, radius: f64) -> Vec<(Point, Point)> {
        let corners = |item: usize| self.nodes.solids.get(item).map(Vec::as_slice).unwrap_or_default();
        match place {
            Place::Spot(spot) => vec![(spot.point(), spot.point())],
            Place::Door(door) => self.nodes.doors.get(door).map(|door| door.ends).into_iter().collect(),
            Place::Beside { item, side } => {
                let sides = edges(corners(item)).enumerate().filter(|(at, _)| side.is_none_or(|side| side == *at));
                sides.map(|(_, (from, to))| before(from, to, radius)).collect()
            }
            Place::On(item) => {
                let mut lines: Vec<_> = edges(corners(item)).collect();
                if let [first, second, third, fourth] = *corners(item) {
                    let middle = |one: Point, other: Point| one.towards(other.minus(one), 0.5);
                    lines.push((middle(first, second), middle(third, fourth)));
                    lines.push((middle(second, third), middle(fourth, first)));
                }
                lines
            }
        }
    }

    /// What the body is wedged between at that end of the way where it has less room: the two obstacles nearest to it.
    fn squeeze(&self, stood: [Point; 2], ends: [Place; 2]) -> Option<Narrow> {
        let absent = self.nodes.absent(ends);
        let wedged = stood.into_iter().filter_map(|place| {
            let there = self.nodes.all.iter().zip(&absent).filter(|(_, absent)| !**absent);
            let mut touched: Vec<Point> = there.map(|(node, _)| nearest(&[place], &node.points).1).collect();
            touched.sort_by(|one, other| place.distance(*one).total_cmp(&place.distance(*other)));
            let from = *touched.first()?;
            let to = touched.into_iter().find(|other| other.distance(from) > TOUCH_MM)?;
            Some(Narrow { from, to, gap_mm: from.distance(to) })
        });
        wedged.min_by(|one, other| one.gap_mm.total_cmp(&other.gap_mm))
    }
}

/// The line on which the middle of a body is that touches a side from outside.
fn before(from: Point, to: Point, radius: f64) -> (Point, Point) {
    let along = to.minus(from);
    let outward = Point { x: along.y, y: -along.x };
    let share = (radius + TOUCH_MM) / along.length().max(TOUCH_MM);
    (from.towards(outward, share), to.towards(outward, share))
}
