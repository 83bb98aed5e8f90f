//! What keeps things in their places, and where that is not enough.

use super::constants::{ABOVE_BED_MM, BESIDE_BED_MM, MOST_STRIPS};
use super::findings::Finding;
use super::tying::Tying;
use crate::plan::{Fastened, Plan};
use crate::space::Placed;
use crate::space::item::Solid;

/// What there is to say about it, in the order of the placements.
pub(super) fn findings(plan: &Plan, placed: &Placed, tying: &[Tying]) -> Vec<Finding> {
    let beds = beds(placed);
    let mut found: Vec<Finding> = unfastened(tying).into_iter().collect();
    let mut not_rated = 0;
    for (thing, standing) in placed.things.iter().zip(&placed.layout.items).filter(|(_, item)| item.is_inside()) {
        if thing.fastened != Fastened::Strips {
            continue;
        }
        not_rated += usize::from(plan.room.strip_holds_kg.is_none());
        let solid = standing.solid();
        if let Some(bed) = beds.iter().find(|(_, bed)| is_over_bed(&solid, bed)) {
            let (name, bed) = (thing.name.clone(), bed.0.clone());
            found.push(Finding::StripsAlone { placement: thing.id, name, bed });
        }
    }
    found.extend(tying.iter().filter_map(|tying| {
        let strips = tying.strips.filter(|strips| *strips > MOST_STRIPS)?;
        Some(Finding::StripsTooMany { placement: tying.placement, name: tying.name.clone(), strips })
    }));
    if not_rated > 0 {
        found.push(Finding::StripsNotRated { count: not_rated });
    }
    found
}

/// The heaviest thing that nothing keeps in its place, with the number of the others.
fn unfastened(tying: &[Tying]) -> Option<Finding> {
    let loose = || tying.iter().filter(|tying| tying.fastened == Fastened::Nothing);
    let heaviest = loose().min_by(|one, other| other.mass_kg.total_cmp(&one.mass_kg))?;
    let Tying { placement, mass_kg, ref name, .. } = *heaviest;
    Some(Finding::Unfastened { placement, name: name.clone(), mass_kg, others: loose().count() - 1 })
}

/// What somebody sleeps on, with its name.
fn beds(placed: &Placed) -> Vec<(String, Solid)> {
    let things = placed.things.iter().zip(&placed.layout.items);
    let slept_on = things.filter(|(thing, item)| thing.sleeps > 0 && item.is_inside());
    slept_on.map(|(thing, item)| (thing.name.clone(), item.opened_solid().unwrap_or_else(|| item.solid()))).collect()
}

/// Whether something begins so high above a bed, and so near to it, that it could fall on who lies there. What is turned
/// counts with the rectangle around it, square to the walls.
fn is_over_bed(thing: &Solid, bed: &Solid) -> bool {
    let above_mm = f64::from(thing.from_mm) - f64::from(bed.to_mm);
    let gap = |(low, high): (f64, f64), (other_low, other_high): (f64, f64)| {
        (low - other_high).max(other_low - high).max(0.0)
    };
    // What takes up nothing is infinitely far from everything.
    let ([thing_x, thing_y], [bed_x, bed_y]) = (thing.bounds(), bed.bounds());
    let (along, across) = (gap(thing_x, bed_x), gap(thing_y, bed_y));
    above_mm >= ABOVE_BED_MM && libm::hypot(along, across) <= BESIDE_BED_MM
}
