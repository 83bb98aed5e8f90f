//! The distances that a plan wants kept, and what is to be free inside doors, as rules of the arranging.

use super::arrange::{Rule, Side};
use super::constants::MOST_CORNERS;
use super::geometry::mm;
use super::input::Placed;
use crate::plan::{BoxSide, Distance, Id, Keeps, Plan};

/// Each rule with the distance or the door it comes from. One that names an item counts for each of its pieces; two items are near when
/// their first pieces are.
pub(super) fn rules_of(plan: &Plan, placed: &Placed) -> Vec<(Id, Rule)> {
    let mut rules = Vec::new();
    for distance in &plan.distances {
        let far_mm = distance.distance_mm.filter(|length| length.is_finite()).map_or(0, |length| mm(length).max(0));
        let pieces = |item: Option<Id>| {
            (0..placed.things.len()).filter(move |at| Some(placed.things[*at].item) == item).collect::<Vec<_>>()
        };
        let (of, other) = (pieces(distance.of), pieces(distance.other));
        let own = |item: usize| Side { item, side: side(distance.of_side) };
        let its = |item: usize| Side { item, side: side(distance.other_side) };
        let found: Vec<Rule> = match distance.keeps {
            Keeps::Clear => of.iter().map(|item| Rule::Clear { of: own(*item), depth_mm: far_mm }).collect(),
            Keeps::Near => {
                let first = of.first().zip(other.first());
                first
                    .map(|(first, second)| Rule::Near { first: own(*first), second: its(*second), most_mm: far_mm })
                    .into_iter()
                    .collect()
            }
            Keeps::Apart => apart(distance, &of, &other)
                .map(|(first, second)| Rule::Apart { first: own(first), second: its(second), least_mm: far_mm })
                .collect(),
        };
        rules.extend(found.into_iter().map(|rule| (distance.id, rule)));
    }
    rules.extend(plan.doors.iter().take(MOST_CORNERS).enumerate().filter_map(|(door, of)| {
        let [depth_mm, height_mm] =
            [of.clear_mm?, of.height_mm].map(|length| if length.is_finite() { mm(length).max(0) } else { 0 });
        Some((of.id, Rule::DoorClear { door, depth_mm, height_mm }))
    }));
    rules
}

/// Every piece of one beside every piece of the other.
fn apart<'a>(distance: &'a Distance, of: &'a [usize], other: &'a [usize]) -> impl Iterator<Item = (usize, usize)> + 'a {
    let pairs = of.iter().flat_map(move |first| other.iter().map(move |second| (*first, *second)));
    pairs.filter(move |(first, second)| first != second && distance.of.is_some())
}

/// The number of a side: from the one along the thing at its first corner, anticlockwise, from 0.
const fn side(of: BoxSide) -> Option<usize> {
    match of {
        BoxSide::Whole => None,
        BoxSide::Left => Some(0),
        BoxSide::End => Some(1),
        BoxSide::Right => Some(2),
        BoxSide::Start => Some(3),
    }
}
