//! Changes that may mend the room.

use super::input::{shape_of, stood_mm};
use crate::moves::constants::{MOST_OF_A_KIND, SMALLER_PERCENT};
use crate::moves::{Change, Found, of_item};
use crate::plan::{Edit, Item, Level, List, Path, Placement};

/// Adds the changes that may mend the room: things that are no must left out or taken smaller, and things moved to the other side
/// or the other end, or turned.
pub fn moves(found: &mut Found) {
    mirrored(found);
    turned(found);
    let placed = |item: &Item| found.plan.placements.iter().any(|place| place.thing == Some(item.id));
    let mut large: Vec<&Item> =
        found.wants().into_iter().map(|(item, _)| item).filter(|item| room(item) > 0.0).collect();
    // What stands on the floor first, then what takes up most.
    large.sort_by(|a, b| placed(b).cmp(&placed(a)).then(room(b).total_cmp(&room(a))));
    large.truncate(MOST_OF_A_KIND);
    found.leave_out(large.iter().copied());
    for item in large {
        let sizes = [("length_mm", item.length_mm), ("width_mm", item.width_mm), ("height_mm", item.height_mm)];
        let smaller = sizes.into_iter().filter_map(|(field, size)| {
            Some(Edit::set(of_item(item.id, field), (size? * SMALLER_PERCENT / 100.0 + 0.0).max(1.0)))
        });
        found.add(Change::Smaller, item.id, Edit::All { edits: smaller.collect() });
    }
}

/// What it takes up, in litres.
fn room(item: &Item) -> f64 {
    let boxed = [item.length_mm, item.width_mm, item.height_mm].into_iter().flatten();
    let sides = boxed.fold((0, 1.0), |(count, litres), size| (count + 1, litres * size / 100.0));
    let one = if sides.0 == 3 { sides.1 } else { item.packed_l.unwrap_or(0.0) };
    let litres = one * f64::from(item.kept());
    if litres.is_finite() { litres } else { 0.0 }
}

/// Things on the floor on the other side of the van, or at its other end.
pub fn mirrored(found: &mut Found) {
    let outline = shape_of(found.plan).outline;
    let length = outline.iter().map(|spot| spot.x_mm).max().map_or(0.0, f64::from);
    let width = outline.iter().map(|spot| spot.y_mm).max().map_or(0.0, f64::from);
    for (placement, [long, wide]) in on_the_floor(found) {
        let (Some(x), Some(y)) = (placement.x_mm, placement.y_mm) else { continue };
        for (field, to) in [("y_mm", width - y - wide), ("x_mm", length - x - long)] {
            let path = Path::entry(List::Placements.name(), placement.id).child(field);
            if to >= 0.0 {
                found.add(Change::MoveIt, placement.id, Edit::set(path, to));
            }
        }
    }
}

/// Things on the floor turned by a quarter, about the place where they stand.
fn turned(found: &mut Found) {
    for (placement, [long, wide]) in on_the_floor(found) {
        let (Some(x), Some(y)) = (placement.x_mm, placement.y_mm) else { continue };
        let path = Path::entry(List::Placements.name(), placement.id);
        // Turned to the right, its first corner is where its end was across.
        let edits = vec![
            Edit::set(path.child("turn_deg"), 90.0),
            Edit::set(path.child("x_mm"), x + wide),
            Edit::set(path.child("y_mm"), y),
        ];
        if (long - wide).abs() > 1.0 {
            found.add(Change::MoveIt, placement.id, Edit::All { edits });
        }
    }
}

/// What stands on the floor as it came and may be moved, with its length and width.
fn on_the_floor<'a>(found: &Found<'a>) -> Vec<(&'a Placement, [f64; 2])> {
    let plan = found.plan;
    let loose = plan.placements.iter().filter(|it| it.level == Level::Floor && !it.pinned && it.turn_deg == 0.0);
    let sized = loose.filter_map(|placement| {
        let item = placement.thing.and_then(|id| plan.item(id))?;
        let [long, wide, _] = stood_mm(item, placement.stands)?;
        Some((placement, [long, wide]))
    });
    sized.take(MOST_OF_A_KIND).collect()
}
