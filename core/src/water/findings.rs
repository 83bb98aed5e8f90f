//! What there is to say about the water.

use jiff::civil::Date;
use serde::Serialize;

use crate::assessment::{Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Quantity};

/// Something wrong, close or worth knowing about the water.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// The cans are empty.
    RunsOut {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// Days on which something is missing.
        short_days: usize,
        /// Litres missing in all.
        missing_l: f64,
    },
    /// There is little left at the lowest moment.
    CloseToEmpty {
        /// The day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// Litres left that evening.
        left_l: f64,
        /// How long they last.
        days: f64,
    },
    /// There is no room left for used water.
    GreyFull {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// Litres without room in all.
        over_l: f64,
    },
    /// Used water is stated but nothing to keep it in.
    NoGreyTank {
        /// Used water a day.
        litres_per_day: f64,
    },
    /// Water is used and there is no can for it.
    NoFreshTank {
        /// Water wanted a day.
        litres_per_day: f64,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::RunsOut { .. } => "water-runs-out",
            Self::CloseToEmpty { .. } => "water-close-to-empty",
            Self::GreyFull { .. } => "water-grey-full",
            Self::NoGreyTank { .. } => "water-no-grey-tank",
            Self::NoFreshTank { .. } => "water-no-fresh-tank",
        }
    }

    fn figures(&self) -> Figures {
        let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
        match *self {
            Self::RunsOut { on, short_days, missing_l } => vec![
                ("on", Figure::Date(on)),
                ("days", Figure::of(short_days as f64, Quantity::Days)),
                ("missing", litres(missing_l)),
            ],
            Self::CloseToEmpty { on, left_l, days } => {
                vec![("on", Figure::Date(on)), ("left", litres(left_l)), ("days", Figure::of(days, Quantity::Days))]
            }
            Self::GreyFull { on, over_l } => vec![("on", Figure::Date(on)), ("over", litres(over_l))],
            Self::NoGreyTank { litres_per_day } | Self::NoFreshTank { litres_per_day } => {
                vec![("litres", litres(litres_per_day))]
            }
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::RunsOut { .. } | Self::CloseToEmpty { .. } => "next-water-runs-out",
            Self::GreyFull { .. } => "next-water-grey-full",
            Self::NoGreyTank { .. } => "next-water-no-grey-tank",
            Self::NoFreshTank { .. } => "next-water-no-fresh-tank",
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::RunsOut { .. } | Self::GreyFull { .. } => Severity::Short,
            Self::CloseToEmpty { .. } => Severity::Close,
            Self::NoGreyTank { .. } | Self::NoFreshTank { .. } => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        None
    }
}
