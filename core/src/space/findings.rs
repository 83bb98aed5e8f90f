//! What there is to say about the room.

use serde::Serialize;

use super::fit::Limit;
use super::shape::DoorKind;
use crate::assessment::{Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Keeps, List, Quantity};

/// Something wrong, close or worth knowing about the room.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[allow(missing_docs, reason = "`placement` and `name` are those of the thing, `mm` and its kin what their names say")]
pub enum Finding {
    /// A thing is larger than the van.
    LargerThanVan { placement: Id, name: String, by_mm: f64 },
    /// A thing goes through a wall or the roof.
    SticksOut { placement: Id, name: String, past: Limit, by_mm: f64 },
    /// Two things are in one place.
    Overlaps { placement: Id, name: String, other: Id, other_name: String, is_built_in: bool, depth_mm: f64 },
    /// A thing cannot be opened.
    CannotOpen { placement: Id, name: String, by: Hindrance, depth_mm: f64 },
    /// One does not get there.
    WayTooNarrow {
        #[serde(skip_serializing_if = "Option::is_none")]
        placement: Option<Id>,
        name: String,
        widest_mm: f64,
        wanted_mm: f64,
    },
    /// One just gets there.
    WayClose {
        #[serde(skip_serializing_if = "Option::is_none")]
        placement: Option<Id>,
        name: String,
        widest_mm: f64,
        wanted_mm: f64,
    },
    /// From a bed one gets out through no door.
    NoWayOut { placement: Id, name: String },
    /// From a bed one gets out through one door only.
    OneWayOut { placement: Id, name: String },
    /// Somebody is taller than the bed is long.
    BedTooShort { sleeper: Id, name: String, by_mm: f64 },
    /// Somebody is nearly as tall as the bed is long.
    BedClose { sleeper: Id, name: String, spare_mm: f64 },
    /// Somebody cannot sit up in bed.
    CannotSit { sleeper: Id, name: String, by_mm: f64 },
    /// Something is above where a head lies.
    OverAHead { placement: Id, name: String, bed: String },
    /// A distance is not kept.
    DistanceNotKept { distance: Id, keeps: Keeps, name: String, other: String, mm: f64 },
    /// Something stands inside a door where nothing should.
    DoorNotClear { door: Id, door_kind: DoorKind, mm: f64 },
    /// What is to be put away does not go in.
    NotStowed { left_over_l: f64, goods_l: f64 },
    /// Nothing is told that things could be put in.
    NothingToStowIn { goods_l: f64 },
    /// Things that have no place yet.
    Waiting { count: usize },
    /// No doors are told.
    NoDoors,
    /// There is no bed.
    NoBed,
    /// There is a bed, and nobody's length.
    NobodySleeps,
    /// More things than are counted.
    Uncounted { count: usize },
    /// The roof is lower than the height that is asked for.
    RoofBelowBody { mm: f64 },
}

/// What is in the way of something that opens.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Hindrance {
    /// A thing, or something that is built in.
    Thing {
        /// Which.
        id: Id,
        /// What it is called.
        name: String,
    },
    /// The van.
    Van {
        /// Which part of it.
        past: Limit,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::LargerThanVan { .. } => "space-larger-than-van",
            Self::SticksOut { past: Limit::Outline, .. } => "space-sticks-out",
            Self::SticksOut { past: Limit::LowSide, .. } => "space-sticks-out-left",
            Self::SticksOut { past: Limit::HighSide, .. } => "space-sticks-out-right",
            Self::SticksOut { past: Limit::Roof, .. } => "space-sticks-out-roof",
            Self::Overlaps { .. } => "space-overlaps",
            Self::CannotOpen { by: Hindrance::Thing { .. }, .. } => "space-cannot-open",
            Self::CannotOpen { by: Hindrance::Van { past: Limit::Roof }, .. } => "space-cannot-open-roof",
            Self::CannotOpen { .. } => "space-cannot-open-wall",
            Self::WayTooNarrow { placement: Some(_), .. } => "space-way-too-narrow",
            Self::WayTooNarrow { .. } => "space-cab-too-narrow",
            Self::WayClose { placement: Some(_), .. } => "space-way-close",
            Self::WayClose { .. } => "space-cab-close",
            Self::NoWayOut { .. } => "space-no-way-out",
            Self::OneWayOut { .. } => "space-one-way-out",
            Self::BedTooShort { .. } => "space-bed-too-short",
            Self::BedClose { .. } => "space-bed-close",
            Self::CannotSit { .. } => "space-cannot-sit",
            Self::OverAHead { .. } => "space-over-a-head",
            Self::DistanceNotKept { keeps: Keeps::Apart, .. } => "space-not-apart",
            Self::DistanceNotKept { keeps: Keeps::Near, .. } => "space-not-near",
            Self::DistanceNotKept { keeps: Keeps::Clear, .. } => "space-not-clear",
            Self::DoorNotClear { door_kind: DoorKind::Side, .. } => "space-side-door-not-clear",
            Self::DoorNotClear { door_kind: DoorKind::Rear, .. } => "space-rear-door-not-clear",
            Self::DoorNotClear { door_kind: DoorKind::Cab, .. } => "space-cab-door-not-clear",
            Self::NotStowed { .. } => "space-not-stowed",
            Self::NothingToStowIn { .. } => "space-nothing-to-stow-in",
            Self::Waiting { .. } => "space-waiting",
            Self::NoDoors => "space-no-doors",
            Self::NoBed => "space-no-bed",
            Self::NobodySleeps => "space-nobody-sleeps",
            Self::Uncounted { .. } => "space-uncounted",
            Self::RoofBelowBody { .. } => "space-roof-below-body",
        }
    }

    fn figures(&self) -> Figures {
        let mm = |length: &f64| Figure::of(*length, Quantity::LengthMm);
        let name = |name: &String| Figure::Name(name.clone());
        let litres = |value: &f64| Figure::of(*value, Quantity::VolumeL);
        match self {
            Self::LargerThanVan { name: of, by_mm, .. }
            | Self::SticksOut { name: of, by_mm, .. }
            | Self::BedTooShort { name: of, by_mm, .. }
            | Self::CannotSit { name: of, by_mm, .. } => vec![("name", name(of)), ("by", mm(by_mm))],
            Self::Overlaps { name: of, other_name, depth_mm, .. } => {
                vec![("name", name(of)), ("other", name(other_name)), ("by", mm(depth_mm))]
            }
            Self::CannotOpen { name: of, by, depth_mm, .. } => {
                let other = if let Hindrance::Thing { name, .. } = by { name.clone() } else { String::new() };
                vec![("name", name(of)), ("other", Figure::Name(other)), ("by", mm(depth_mm))]
            }
            Self::WayTooNarrow { name: of, widest_mm, wanted_mm, .. }
            | Self::WayClose { name: of, widest_mm, wanted_mm, .. } => {
                vec![("name", name(of)), ("widest", mm(widest_mm)), ("wanted", mm(wanted_mm))]
            }
            Self::NoWayOut { name: of, .. } | Self::OneWayOut { name: of, .. } => vec![("name", name(of))],
            Self::BedClose { name: of, spare_mm, .. } => vec![("name", name(of)), ("spare", mm(spare_mm))],
            Self::OverAHead { name: of, bed, .. } => vec![("name", name(of)), ("bed", name(bed))],
            Self::DistanceNotKept { name: of, other, mm: distance, .. } => {
                vec![("name", name(of)), ("other", name(other)), ("distance", mm(distance))]
            }
            Self::DoorNotClear { mm: distance, .. } => vec![("distance", mm(distance))],
            Self::NothingToStowIn { goods_l } => vec![("goods", litres(goods_l))],
            Self::NotStowed { left_over_l, goods_l } => vec![("left", litres(left_over_l)), ("goods", litres(goods_l))],
            Self::Waiting { count } | Self::Uncounted { count } => vec![("count", Figure::count(*count))],
            Self::RoofBelowBody { mm: height } => vec![("height", mm(height))],
            Self::NoDoors | Self::NoBed | Self::NobodySleeps => vec![],
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::LargerThanVan { .. } => "next-space-larger-than-van",
            Self::SticksOut { .. } | Self::Overlaps { .. } | Self::CannotOpen { .. } => "next-space-move",
            Self::WayTooNarrow { .. } | Self::WayClose { .. } => "next-space-way",
            Self::NoWayOut { .. } | Self::OneWayOut { .. } => "next-space-way-out",
            Self::BedTooShort { .. } | Self::BedClose { .. } => "next-space-bed",
            Self::CannotSit { .. } => "next-space-sit",
            Self::OverAHead { .. } => "next-space-over-a-head",
            Self::DistanceNotKept { .. } => "next-space-distance",
            Self::DoorNotClear { .. } => "next-space-door-not-clear",
            Self::NotStowed { .. } | Self::NothingToStowIn { .. } => "next-space-not-stowed",
            Self::Waiting { .. } => "next-space-waiting",
            Self::NoDoors => "next-space-no-doors",
            Self::NobodySleeps => "next-space-nobody-sleeps",
            Self::NoBed | Self::Uncounted { .. } | Self::RoofBelowBody { .. } => return None,
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::LargerThanVan { .. }
            | Self::SticksOut { .. }
            | Self::Overlaps { .. }
            | Self::CannotOpen { .. }
            | Self::WayTooNarrow { .. }
            | Self::NoWayOut { .. }
            | Self::BedTooShort { .. }
            | Self::DoorNotClear { .. }
            | Self::DistanceNotKept { keeps: Keeps::Apart | Keeps::Clear, .. }
            | Self::NotStowed { .. } => Severity::Short,
            Self::WayClose { .. }
            | Self::OneWayOut { .. }
            | Self::BedClose { .. }
            | Self::CannotSit { .. }
            | Self::OverAHead { .. }
            | Self::DistanceNotKept { .. }
            | Self::Uncounted { .. } => Severity::Close,
            Self::NothingToStowIn { .. }
            | Self::Waiting { .. }
            | Self::NoDoors
            | Self::NoBed
            | Self::NobodySleeps
            | Self::RoofBelowBody { .. } => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::LargerThanVan { placement, .. }
            | Self::SticksOut { placement, .. }
            | Self::Overlaps { placement, .. }
            | Self::CannotOpen { placement, .. }
            | Self::NoWayOut { placement, .. }
            | Self::OneWayOut { placement, .. }
            | Self::OverAHead { placement, .. } => Some(*placement),
            Self::WayTooNarrow { placement, .. } | Self::WayClose { placement, .. } => *placement,
            Self::BedTooShort { sleeper, .. } | Self::BedClose { sleeper, .. } | Self::CannotSit { sleeper, .. } => {
                Some(*sleeper)
            }
            Self::DistanceNotKept { distance, .. } => Some(*distance),
            Self::DoorNotClear { door, .. } => Some(*door),
            _ => None,
        }
    }

    fn list(&self) -> List {
        match self {
            Self::BedTooShort { .. } | Self::BedClose { .. } | Self::CannotSit { .. } => List::Sleepers,
            Self::DistanceNotKept { .. } => List::Distances,
            Self::DoorNotClear { .. } => List::Doors,
            _ => List::Placements,
        }
    }

    fn id(&self) -> String {
        match self {
            Self::Overlaps { placement, other, .. } => format!("{}-{placement}-{other}", self.key()),
            Self::CannotOpen { placement, by: Hindrance::Thing { id, .. }, .. } => {
                format!("{}-{placement}-{id}", self.key())
            }
            _ => self.id_by_subject(),
        }
    }
}
