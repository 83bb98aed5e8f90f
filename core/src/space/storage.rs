//! How much room is left to put things, and whether soft things go into it.
//!
//! ```
//! use kerbstead_core::space::item::{Item, Layout, Level};
//! use kerbstead_core::space::shape::Shape;
//! use kerbstead_core::space::storage::{Bay, SoftGoods, storage};
//! let box_ = Item { length_mm: 500, width_mm: 400, height_mm: 300, level: Level::UnderBed, ..Item::default() };
//! let layout = Layout { shape: Shape::square(3_000, 1_700), items: vec![box_], together: vec![] };
//! let under = Item { length_mm: 1_900, width_mm: 700, height_mm: 300, ..Item::default() };
//! let bay = Bay { room: under, level: Level::UnderBed, usable_percent: 100.0 };
//! let report = storage(&layout, &[bay], &[SoftGoods { litres: 339.0, level: None }]);
//! assert_eq!(report.levels[0].free_l, 339.0);
//! assert!(report.fits);
//! ```

use serde::Serialize;

use super::fit::meets;
use super::geometry::{Point, free_area};
use super::item::{Item, Layout, Level, Solid};

/// Where things can be put.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bay {
    /// Its box, placed as an item is.
    pub room: Item,
    /// What it counts as.
    pub level: Level,
    /// How much of what is free in it soft things can fill, in percent, 0 to 100.
    pub usable_percent: f64,
}

/// Clothes, bedding and the like, which take any form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SoftGoods {
    /// How much of it, in litres.
    pub litres: f64,
    /// Where it is to go, if not anywhere.
    pub level: Option<Level>,
}

/// What room there is.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StorageReport {
    /// Each level that has bays, lowest first.
    pub levels: Vec<LevelRoom>,
    /// Whether all soft goods go in.
    pub fits: bool,
    /// What finds no room, in litres.
    pub left_over_l: f64,
}

/// The room of one level.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LevelRoom {
    /// Which one.
    pub level: Level,
    /// All of its bays within the van, in litres. Bays that overlap count twice.
    pub whole_l: f64,
    /// What neither items nor what is built in takes of it, in litres.
    pub free_l: f64,
    /// What of that soft things can fill, in litres.
    pub usable_l: f64,
    /// What is meant for this level, in litres.
    pub asked_l: f64,
}

/// Adds up what is free, and shares the soft goods out: those that belong to a level first.
pub fn storage(layout: &Layout, bays: &[Bay], goods: &[SoftGoods]) -> StorageReport {
    let floor = layout.shape.floor();
    let taken: Vec<Solid> = layout.items.iter().filter(|item| item.is_inside()).map(Item::solid).collect();
    let taken: Vec<Solid> =
        taken.into_iter().chain(layout.shape.fixed.iter().map(super::shape::Fixed::solid)).collect();
    let mut report = StorageReport::default();
    for bay in bays {
        let room = bay.room.solid();
        let (whole_l, free_l) = (volume_l(&floor, &room, &[]), volume_l(&floor, &room, &taken));
        let usable_l = free_l * sound(bay.usable_percent).min(100.0) / 100.0;
        report.add(LevelRoom { level: bay.level, whole_l, free_l, usable_l, asked_l: 0.0 });
    }
    report.shared_out(goods)
}

impl StorageReport {
    /// Adds room of a level.
    pub fn add(&mut self, room: LevelRoom) {
        let at = self.levels.partition_point(|other| other.level < room.level);
        match self.levels.get_mut(at).filter(|other| other.level == room.level) {
            Some(other) => {
                other.whole_l += room.whole_l;
                other.free_l += room.free_l;
                other.usable_l += room.usable_l;
            }
            None => self.levels.insert(at, room),
        }
    }

    /// Shares the soft goods out: those that belong to a level first.
    #[must_use]
    pub fn shared_out(self, goods: &[SoftGoods]) -> Self {
        share_out(self.levels, goods)
    }
}

fn share_out(mut levels: Vec<LevelRoom>, goods: &[SoftGoods]) -> StorageReport {
    let (mut anywhere_l, mut left_over_l) = (0.0, 0.0);
    for part in goods {
        let litres = sound(part.litres);
        match part.level {
            None => anywhere_l += litres,
            Some(level) => match levels.iter_mut().find(|room| room.level == level) {
                Some(room) => room.asked_l += litres,
                None => left_over_l += litres,
            },
        }
    }
    let spare_l: f64 = levels.iter().map(|room| (room.usable_l - room.asked_l).max(0.0)).sum();
    left_over_l += levels.iter().map(|room| (room.asked_l - room.usable_l).max(0.0)).sum::<f64>();
    left_over_l += (anywhere_l - spare_l).max(0.0);
    StorageReport { levels, fits: left_over_l <= 0.0, left_over_l }
}

/// The volume of a room within the walls less what stands in it, in litres: slice by slice, from one height at which
/// something begins or ends to the next.
fn volume_l(floor: &[Point], room: &Solid, taken: &[Solid]) -> f64 {
    let in_it: Vec<&Solid> = taken.iter().filter(|solid| meets(solid, room)).collect();
    let within = |height: &i32| room.from_mm < *height && *height < room.to_mm;
    let mut heights: Vec<i32> = in_it.iter().flat_map(|solid| [solid.from_mm, solid.to_mm]).filter(within).collect();
    heights.extend([room.from_mm, room.to_mm]);
    heights.sort_unstable();
    heights.dedup();
    let slices = heights.windows(2).map(|pair| {
        let (low, high) = (pair[0], pair[1]);
        let there = in_it.iter().filter(|solid| solid.from_mm <= low && high <= solid.to_mm);
        free_area(floor, &room.corners, there.map(|solid| solid.corners.as_slice())) * f64::from(high - low)
    });
    slices.sum::<f64>() / 1e6
}

fn sound(value: f64) -> f64 {
    if value.is_finite() { value.max(0.0) } else { 0.0 }
}
