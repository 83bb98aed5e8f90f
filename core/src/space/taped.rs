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
