//! The taping sheet of a plan: what to lay out with tape, thing by thing.

use super::input::Placed;
use super::taping::{Mark, Marked, taping};
use crate::plan::Plan;

/// One thing to lay out.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedThing {
    /// What it is called; nothing for the floor of the van.
    pub name: String,
    /// Its corners, in the order in which the tape is laid.
    pub marks: Vec<Mark>,
}

/// A thing that stands square to the van, all of it in three lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TapedSquare {
    /// Where it begins and ends along the van, in millimetres.
    pub along_mm: [i32; 2],
    /// Where it begins and ends across the van, in millimetres.
    pub across_mm: [i32; 2],
    /// Straight to the farthest corner, in millimetres.
    pub straight_mm: i32,
}

impl TapedThing {
    /// It as a square thing, if it has four corners square to the van.
    pub fn square(&self) -> Option<TapedSquare> {
        let range = |pick: fn(&Mark) -> i32| {
            let places = || self.marks.iter().map(pick);
            Some([places().min()?, places().max()?])
        };
        let (along_mm, across_mm) = (range(|mark| mark.along_mm)?, range(|mark| mark.across_mm)?);
        let is_corner = |mark: &Mark| along_mm.contains(&mark.along_mm) && across_mm.contains(&mark.across_mm);
        let straight_mm = self.marks.iter().map(|mark| mark.straight_mm).max()?;
        let is_square = self.marks.len() == 4 && self.marks.iter().all(is_corner);
        is_square.then_some(TapedSquare { along_mm, across_mm, straight_mm })
    }
}

/// All that is laid out, in that order, from a corner of the floor by its number.
///
/// ```
/// use kerbstead_core::plan::{Plan, Vehicle};
/// use kerbstead_core::space::taped;
/// let vehicle = Vehicle { inside_length_mm: Some(2_500.0), inside_width_mm: Some(1_600.0), ..Vehicle::default() };
/// let things = taped(&Plan { vehicle, ..Plan::default() }, 0);
/// assert_eq!((things[0].marks[2].along_mm, things[0].marks[2].across_mm), (2_500, 1_600));
/// assert_eq!(things[0].marks[2].straight_mm, 2_968);
/// ```
pub fn taped(plan: &Plan, corner: usize) -> Vec<TapedThing> {
    let placed = Placed::new(plan);
    let name = |of: Marked| match of {
        Marked::Outline => String::new(),
        Marked::Fixed(at) => plan.built_ins.get(at).map(|part| part.name.clone()).unwrap_or_default(),
        Marked::Item(at) => placed.things.get(at).map(|thing| thing.name.clone()).unwrap_or_default(),
    };
    let mut things: Vec<(Marked, TapedThing)> = Vec::new();
    for mark in taping(&placed.layout, corner) {
        match things.last_mut().filter(|(of, _)| *of == mark.of) {
            Some((_, thing)) => thing.marks.push(mark),
            None => things.push((mark.of, TapedThing { name: name(mark.of), marks: vec![mark] })),
        }
    }
    things.into_iter().map(|(_, thing)| thing).collect()
}
