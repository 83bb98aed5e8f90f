//! A layout while things are being put into it.

use super::{Wish, rules};
use crate::space::fit::{Van, meets};
use crate::space::geometry::whole;
use crate::space::item::{Item, Layout, Level, Solid};

/// What stands so far. What does not yet counts as outside.
#[derive(Clone)]
pub(super) struct Board {
    pub(super) layout: Layout,
    levels: Vec<Level>,
    /// What is built in, and what is to be free inside the doors.
    pub(super) blocked: Vec<Solid>,
    pub(super) solids: Vec<Option<Solid>>,
}

/// A range in whole millimetres.
pub(super) type Range = (i32, i32);

impl Board {
    /// With what is pinned.
    pub(super) fn new(wish: &Wish) -> Self {
        let mut layout = wish.layout.clone();
        let levels = layout.items.iter().map(|item| item.level).collect();
        for item in wish.movable() {
            layout.items[item].level = Level::Outside;
        }
        let solids = layout.items.iter().map(|item| item.is_inside().then(|| item.solid())).collect();
        let blocked = layout.shape.fixed.iter().map(crate::space::shape::Fixed::solid);
        let zones = wish.rules.iter().filter_map(|rule| rule.zone(&layout.shape));
        Self { blocked: blocked.chain(zones).collect(), levels, solids, layout }
    }

    /// An item as it would be in the van.
    pub(super) fn item(&self, item: usize) -> Item {
        Item { level: self.levels[item], ..self.layout.items[item] }
    }

    pub(super) fn put(&mut self, item: usize, placed: Item) {
        self.solids[item] = Some(placed.solid());
        self.layout.items[item] = placed;
    }

    pub(super) fn take_out(&mut self, item: usize) {
        self.solids[item] = None;
        self.layout.items[item].level = Level::Outside;
    }

    /// Whether an item could stand like this beside what stands already: quick, and not yet all that counts.
    pub(super) fn has_room(&self, van: &Van, number: usize, item: &Item) -> bool {
        let solid = item.solid();
        if !van.holds(&solid) || self.blocked.iter().any(|other| meets(other, &solid)) {
            return false;
        }
        if self.solids.iter().flatten().any(|other| meets(other, &solid)) {
            return false;
        }
        let opens = item.opened_solid().is_none_or(|open| {
            let fixed = self.layout.shape.fixed.iter().map(crate::space::shape::Fixed::solid);
            van.holds(&open)
                && !self.solids.iter().flatten().any(|other| meets(other, &open))
                && !fixed.into_iter().any(|other| meets(&other, &open))
        });
        opens && self.leaves_others_open(number, &solid)
    }

    fn leaves_others_open(&self, number: usize, solid: &Solid) -> bool {
        let others = self.layout.items.iter().enumerate().filter(|(other, item)| *other != number && item.is_inside());
        others.filter_map(|(_, other)| other.opened_solid()).all(|open| !meets(&open, solid))
    }

    /// Whether what stands keeps the rules and leaves the ways, as far as that can be told yet. More things only ever make
    /// it worse, but for rules about things that are still missing.
    pub(super) fn holds(&self, wish: &Wish) -> bool {
        wish.rules.iter().all(|rule| rule.is_kept(&self.layout))
            && rules::all_ways_pass(&self.layout, &wish.body, &wish.ways)
    }
}

/// The least corner of an item's bounds, in whole millimetres.
pub(super) fn corner(item: &Item) -> [i32; 2] {
    bounds(&item.solid()).map(|range| range.0)
}

/// The bounds of a solid, rounded outwards to whole millimetres; at the beginning of the van for one that takes up nothing.
pub(super) fn bounds(solid: &Solid) -> [Range; 2] {
    if solid.corners.is_empty() {
        return [(0, 0); 2];
    }
    let near = crate::space::constants::TOUCH_MM;
    solid.bounds().map(|(low, high)| (whole(libm::floor(low + near)), whole(libm::ceil(high - near))))
}

/// An item turned so, its bounds beginning at a place.
pub(super) fn placed(item: &Item, turn_deg: f64, [x, y]: [i32; 2]) -> Item {
    let turned = Item { turn_deg, x_mm: 0, y_mm: 0, ..*item };
    let [at_x, at_y] = corner(&turned);
    Item { x_mm: x - at_x, y_mm: y - at_y, ..turned }
}

/// The ways in which an item may be turned. One that is the same from behind, with nothing asked of its sides, has two.
pub(super) fn turns(wish: &Wish, number: usize) -> Vec<f64> {
    let Some(item) = wish.layout.items.get(number) else { return Vec::new() };
    let quarters: &[f64] = match wish.moves(number) {
        Some(true) if item.opened.is_some() || has_sides(wish, number) => &[0.0, 90.0, 180.0, 270.0],
        Some(true) if item.length_mm != item.width_mm => &[0.0, 90.0],
        _ => &[0.0],
    };
    quarters.iter().map(|quarter| item.turn_deg + quarter).collect()
}

/// Whether it matters which side of an item is where.
fn has_sides(wish: &Wish, number: usize) -> bool {
    let is_side = |side: &rules::Side| side.item == number && side.side.is_some();
    let in_rule = wish.rules.iter().any(|rule| match rule {
        rules::Rule::Near { first, second, .. } | rules::Rule::Apart { first, second, .. } => {
            is_side(first) || is_side(second)
        }
        rules::Rule::Clear { of, .. } => is_side(of),
        rules::Rule::DoorClear { .. } => false,
    });
    let is_place =
        |place: &super::Place| matches!(place, super::Place::Beside { item, side: Some(_) } if *item == number);
    in_rule || wish.ways.iter().any(|(from, to)| is_place(from) || is_place(to))
}

/// Whether a solid fills its bounds.
pub(super) fn is_square(solid: &Solid) -> bool {
    let [x, y] = bounds(solid);
    let area = (f64::from(x.1) - f64::from(x.0)) * (f64::from(y.1) - f64::from(y.0));
    (solid.area_mm2() - area).abs() < 1.0
}
