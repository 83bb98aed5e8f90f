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
    /// A draw gives way, because what may run at once is together above what the outlets give.
    GivesWay {
        /// The item that draws.
        item: Id,
        /// Its name.
        name: String,
        /// When first.
        at: Moment,
        /// What the outlets give.
        limit_w: f64,
        /// What it does not get in all.
        missing_wh: f64,
    },
    /// A store holds less than is to stay in it.
    BelowFloor {
        /// The store's item.
        item: Id,
        /// Its name.
        name: String,
        /// When first.
        at: Moment,
        /// The least it holds.
        lowest_wh: f64,
    },
    /// A store ran out after its sockets had taken less than was there.
    InputLimits {
        /// The store's item.
        item: Id,
        /// Its name.
        name: String,
        /// What is not served because of that.
        missing_wh: f64,
    },
    /// Something was on offer while a store was too cold or too hot to charge.
    TooColdOrHot {
        /// The store's item.
        item: Id,
        /// Its name.
        name: String,
        /// In so many hours.
        hours: f64,
    },
    /// Panels lie in the sun of a place that nobody stated.
    NoPlaceForTheSun {
        /// The first panel.
        item: Id,
        /// Its name.
        name: String,
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
            Self::GivesWay { .. } => "power-gives-way",
            Self::BelowFloor { .. } => "power-below-floor",
            Self::InputLimits { .. } => "power-sockets-refuse",
            Self::TooColdOrHot { .. } => "power-too-cold-or-hot",
            Self::NoPlaceForTheSun { .. } => "power-no-place",
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
            Self::GivesWay { name, at, limit_w, missing_wh, .. } => vec![
                ("name", Figure::Name(name)),
                ("at", Figure::Moment(at)),
                ("limit", watts(limit_w)),
                ("missing", Figure::of(missing_wh, Quantity::EnergyWh)),
            ],
            Self::BelowFloor { name, at, lowest_wh, .. } => vec![
                ("name", Figure::Name(name)),
                ("at", Figure::Moment(at)),
                ("lowest", Figure::of(lowest_wh, Quantity::EnergyWh)),
            ],
            Self::InputLimits { name, missing_wh, .. } => {
                vec![("name", Figure::Name(name)), ("missing", Figure::of(missing_wh, Quantity::EnergyWh))]
            }
            Self::TooColdOrHot { name, hours, .. } => {
                vec![("name", Figure::Name(name)), ("hours", Figure::of(hours, Quantity::Hours))]
            }
            Self::NoPlaceForTheSun { name, .. } => vec![("name", Figure::Name(name))],
            Self::NoStore { count, name, .. } => {
                vec![("count", Figure::count(count)), ("name", Figure::Name(name))]
            }
            Self::NothingDraws => Vec::new(),
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::RunsOut { .. } => "next-power-runs-out",
            Self::CloseToEmpty { .. } | Self::BelowFloor { .. } => "next-power-close-to-empty",
            Self::AboveOutlet { .. } | Self::AboveSurge { .. } => "next-power-above-outlet",
            Self::GivesWay { .. } => "next-power-gives-way",
            Self::InputLimits { .. } => "next-power-sockets-refuse",
            Self::TooColdOrHot { .. } => "next-power-too-cold-or-hot",
            Self::NoPlaceForTheSun { .. } => "next-power-no-place",
            Self::NoStore { .. } => "next-power-no-store",
            Self::NothingDraws => return None,
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::RunsOut { .. }
            | Self::AboveOutlet { .. }
            | Self::AboveSurge { .. }
            | Self::BelowFloor { .. }
            | Self::NoStore { .. } => Severity::Short,
            Self::CloseToEmpty { .. } | Self::GivesWay { .. } => Severity::Close,
            Self::InputLimits { .. }
            | Self::TooColdOrHot { .. }
            | Self::NoPlaceForTheSun { .. }
            | Self::NothingDraws => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::RunsOut { item, .. }
            | Self::CloseToEmpty { item, .. }
            | Self::AboveOutlet { item, .. }
            | Self::AboveSurge { item, .. }
            | Self::GivesWay { item, .. }
            | Self::BelowFloor { item, .. }
            | Self::InputLimits { item, .. }
            | Self::TooColdOrHot { item, .. }
            | Self::NoPlaceForTheSun { item, .. }
            | Self::NoStore { item, .. } => Some(*item),
            Self::NothingDraws => None,
        }
    }
}
