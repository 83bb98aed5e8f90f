//! What there is to say about the power.

use serde::Serialize;

use crate::assessment::{Moment, Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Quantity};

/// Something wrong, close or worth knowing about the power.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// A store is empty while something wants to run.
    RunsOut {
        /// The store's item.
        item: Id,
        /// Its name.
        name: String,
        /// When first.
        at: Moment,
        /// Hours in which something wanted more than there was.
        short_hours: f64,
        /// Energy that was missing in all, at the cells.
        missing_wh: f64,
    },
    /// A store's reserve is small at its lowest moment.
    CloseToEmpty {
        /// The store's item.
        item: Id,
        /// Its name.
        name: String,
        /// When it is lowest.
        at: Moment,
        /// Hours it would still last.
        reserve_hours: f64,
    },
    /// A draw is above what its outlet gives: it does not run, however much energy there is.
    AboveOutlet {
        /// The item that draws.
        item: Id,
        /// Its name.
        name: String,
        /// What it needs.
        needs_w: f64,
        /// What the outlet gives.
        limit_w: f64,
    },
    /// A start is above what the outlets give for a moment.
    AboveSurge {
        /// The item that draws.
        item: Id,
        /// Its name.
        name: String,
        /// What it needs to start.
        needs_w: f64,
        /// What the outlets give for a moment.
        limit_w: f64,
    },
    /// Things that may run at once are together above what the outlets give.
    TogetherAboveOutlet {
        /// The store's item.
        item: Id,
        /// Its name.
        name: String,
        /// The hour of the day it is worst.
        hour: u32,
        /// What they need together.
        needs_w: f64,
        /// What the outlets give.
        limit_w: f64,
    },
    /// Something draws and there is no store for it to run on.
    NoStore {
        /// How many such things.
        count: usize,
        /// The first one.
        item: Id,
        /// Its name.
        name: String,
    },
    /// Nothing in the kit draws power.
    NothingDraws,
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::RunsOut { .. } => "power-runs-out",
            Self::CloseToEmpty { .. } => "power-close-to-empty",
            Self::AboveOutlet { .. } => "power-above-outlet",
            Self::AboveSurge { .. } => "power-above-surge",
            Self::TogetherAboveOutlet { .. } => "power-together-above-outlet",
            Self::NoStore { .. } => "power-no-store",
            Self::NothingDraws => "power-nothing-draws",
        }
    }

    fn figures(&self) -> Figures {
        let watts = |value: f64| Figure::of(value, Quantity::PowerW);
        match self.clone() {
            Self::RunsOut { name, at, short_hours, missing_wh, .. } => vec![
                ("name", Figure::Name(name)),
                ("at", Figure::Moment(at)),
                ("short", Figure::of(short_hours, Quantity::Hours)),
                ("missing", Figure::of(missing_wh, Quantity::EnergyWh)),
            ],
            Self::CloseToEmpty { name, at, reserve_hours, .. } => vec![
                ("name", Figure::Name(name)),
                ("at", Figure::Moment(at)),
                ("reserve", Figure::of(reserve_hours, Quantity::Hours)),
            ],
            Self::AboveOutlet { name, needs_w, limit_w, .. } | Self::AboveSurge { name, needs_w, limit_w, .. } => {
                vec![("name", Figure::Name(name)), ("needs", watts(needs_w)), ("limit", watts(limit_w))]
            }
            Self::TogetherAboveOutlet { name, hour, needs_w, limit_w, .. } => vec![
                ("name", Figure::Name(name)),
                ("hour", Figure::of(f64::from(hour), Quantity::HourOfDay)),
                ("needs", watts(needs_w)),
                ("limit", watts(limit_w)),
            ],
            Self::NoStore { count, name, .. } => {
                vec![("count", Figure::count(count)), ("name", Figure::Name(name))]
            }
            Self::NothingDraws => Vec::new(),
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::RunsOut { .. } => "next-power-runs-out",
            Self::CloseToEmpty { .. } => "next-power-close-to-empty",
            Self::AboveOutlet { .. } | Self::AboveSurge { .. } => "next-power-above-outlet",
            Self::TogetherAboveOutlet { .. } => "next-power-together-above-outlet",
            Self::NoStore { .. } => "next-power-no-store",
            Self::NothingDraws => return None,
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::RunsOut { .. } | Self::AboveOutlet { .. } | Self::AboveSurge { .. } | Self::NoStore { .. } => {
                Severity::Short
            }
            Self::CloseToEmpty { .. } | Self::TogetherAboveOutlet { .. } => Severity::Close,
            Self::NothingDraws => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::RunsOut { item, .. }
            | Self::CloseToEmpty { item, .. }
            | Self::AboveOutlet { item, .. }
            | Self::AboveSurge { item, .. }
            | Self::TogetherAboveOutlet { item, .. }
            | Self::NoStore { item, .. } => Some(*item),
            Self::NothingDraws => None,
        }
    }
}
