//! What there is to say about the water.

use jiff::civil::Date;
use serde::Serialize;

use super::frost::FrostDays;
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
    /// The toilets are full before they can be emptied.
    ToiletFull {
        /// The first day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// Days on which there is no room.
        full_days: usize,
    },
    /// There are days without any toilet.
    NoToilet {
        /// The first of the most in a row.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        from: Date,
        /// So many in a row.
        in_a_row: usize,
        /// So many in all.
        days: usize,
    },
    /// Water is to be boiled, and nothing heats it.
    NothingBoils {
        /// A day's.
        litres_per_day: f64,
    },
    /// Water is to be filtered, and there is no filter.
    NoFilter {
        /// A day's.
        litres_per_day: f64,
    },
    /// The filters have done what they are good for.
    FiltersDone {
        /// The first day with more.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// A day's.
        litres_per_day: f64,
    },
    /// Cans in the van may freeze.
    CansFreeze {
        /// When.
        frost: FrostDays,
    },
    /// A tank outside may freeze.
    TankFreezes {
        /// The item.
        item: Id,
        /// When.
        frost: FrostDays,
    },
    /// A filter may freeze, and is done then.
    FilterFreezes {
        /// The item.
        item: Id,
        /// When.
        frost: FrostDays,
    },
}

fn days(count: usize) -> Figure {
    Figure::of(count as f64, Quantity::Days)
}

impl FrostDays {
    fn figures(self) -> Figures {
        vec![
            ("on", Figure::Date(self.on)),
            ("days", days(self.days)),
            ("hours", Figure::of(self.hours, Quantity::Hours)),
            ("coldest", Figure::of(self.coldest_c, Quantity::TemperatureC)),
        ]
    }
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::RunsOut { .. } => "water-runs-out",
            Self::CloseToEmpty { .. } => "water-close-to-empty",
            Self::GreyFull { .. } => "water-grey-full",
            Self::NoGreyTank { .. } => "water-no-grey-tank",
            Self::NoFreshTank { .. } => "water-no-fresh-tank",
            Self::ToiletFull { .. } => "water-toilet-full",
            Self::NoToilet { .. } => "water-no-toilet",
            Self::NothingBoils { .. } => "water-nothing-boils",
            Self::NoFilter { .. } => "water-no-filter",
            Self::FiltersDone { .. } => "water-filters-done",
            Self::CansFreeze { .. } => "water-cans-freeze",
            Self::TankFreezes { .. } => "water-tank-freezes",
            Self::FilterFreezes { .. } => "water-filter-freezes",
        }
    }

    fn figures(&self) -> Figures {
        let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
        match *self {
            Self::RunsOut { on, short_days, missing_l } => {
                vec![("on", Figure::Date(on)), ("days", days(short_days)), ("missing", litres(missing_l))]
            }
            Self::CloseToEmpty { on, left_l, days } => {
                vec![("on", Figure::Date(on)), ("left", litres(left_l)), ("days", Figure::of(days, Quantity::Days))]
            }
            Self::GreyFull { on, over_l } => vec![("on", Figure::Date(on)), ("over", litres(over_l))],
            Self::ToiletFull { on, full_days } => vec![("on", Figure::Date(on)), ("days", days(full_days))],
            Self::NoToilet { from, in_a_row, days: all } => {
                vec![
                    ("from", Figure::Date(from)),
                    ("row", days(in_a_row)),
                    ("hours", Figure::of((in_a_row * 24) as f64, Quantity::Hours)),
                    ("days", days(all)),
                ]
            }
            Self::FiltersDone { on, litres_per_day } => {
                vec![("on", Figure::Date(on)), ("litres", litres(litres_per_day))]
            }
            Self::NoGreyTank { litres_per_day }
            | Self::NoFreshTank { litres_per_day }
            | Self::NothingBoils { litres_per_day }
            | Self::NoFilter { litres_per_day } => vec![("litres", litres(litres_per_day))],
            Self::CansFreeze { frost } | Self::TankFreezes { frost, .. } | Self::FilterFreezes { frost, .. } => {
                frost.figures()
            }
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::RunsOut { .. } | Self::CloseToEmpty { .. } => "next-water-runs-out",
            Self::GreyFull { .. } => "next-water-grey-full",
            Self::NoGreyTank { .. } => "next-water-no-grey-tank",
            Self::NoFreshTank { .. } => "next-water-no-fresh-tank",
            Self::ToiletFull { .. } => "next-water-toilet-full",
            Self::NoToilet { .. } => "next-water-no-toilet",
            Self::NothingBoils { .. } => "next-water-nothing-boils",
            Self::NoFilter { .. } | Self::FiltersDone { .. } => "next-water-filters-done",
            Self::CansFreeze { .. } => "next-water-cans-freeze",
            Self::TankFreezes { .. } => "next-water-tank-freezes",
            Self::FilterFreezes { .. } => "next-water-filter-freezes",
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::RunsOut { .. } | Self::GreyFull { .. } | Self::ToiletFull { .. } => Severity::Short,
            Self::CloseToEmpty { .. }
            | Self::NothingBoils { .. }
            | Self::NoFilter { .. }
            | Self::FiltersDone { .. }
            | Self::CansFreeze { .. }
            | Self::TankFreezes { .. }
            | Self::FilterFreezes { .. } => Severity::Close,
            Self::NoGreyTank { .. } | Self::NoFreshTank { .. } | Self::NoToilet { .. } => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::TankFreezes { item, .. } | Self::FilterFreezes { item, .. } => Some(*item),
            _ => None,
        }
    }
}
