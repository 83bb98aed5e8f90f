//! What there is to say about the money.

use jiff::civil::Date;
use serde::Serialize;

use crate::assessment::{Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Money};

/// Something wrong, close or worth knowing about the money.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// Cash falls below the floor.
    BelowFloor {
        /// The first day below.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// How much is missing on the worst day.
        missing: Money,
        /// The worst day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        lowest_on: Date,
    },
    /// The lowest day is less than a week on the road above the floor.
    CloseToFloor {
        /// The lowest day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        lowest_on: Date,
        /// What is to spare that day.
        margin: Money,
    },
    /// The largest payment before cash first runs short, if the plan does not depend on it.
    LargestBefore {
        /// The item.
        item: Id,
        /// Its name.
        name: String,
        /// What it costs.
        amount: Money,
    },
    /// Receipts of days past that nobody confirmed: not counted.
    ReceiptsUnanswered {
        /// How many.
        count: usize,
        /// Together.
        amount: Money,
    },
    /// Payments of days past that nobody confirmed: counted.
    PaymentsUnanswered {
        /// How many.
        count: usize,
        /// Together.
        amount: Money,
    },
    /// Things to buy or make without a price: counted as nothing.
    WithoutPrice {
        /// How many.
        count: usize,
        /// The first one.
        item: Id,
        /// Its name.
        name: String,
    },
    /// The loans are more than the van would bring.
    OwesMore {
        /// The first such day, month by month.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        on: Date,
        /// What would settle all loans.
        owed: Money,
        /// What the van would bring.
        resale: Money,
    },
    /// Sales that are less likely than not: not counted on.
    SalesUnlikely {
        /// How many.
        count: usize,
        /// What they would bring together.
        amount: Money,
    },
    /// Going home stays affordable only up to a day.
    HomeUntil {
        /// The last such day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        last_on: Date,
        /// What is missing the day after.
        missing: Money,
    },
    /// Going home is not affordable today.
    NoWayHome {
        /// What is missing.
        missing: Money,
    },
    /// Home and road are paid for at the same time.
    Overlap {
        /// What is due for the home from the day of leaving on.
        home: Money,
        /// What is due for the road before it.
        road: Money,
    },
    /// Incomes that the plan counts on hang on hours of work that lack something.
    PayAtRisk {
        /// What may be missing of them in all.
        amount: Money,
        /// By the last day of such work.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        by: Date,
        /// What the lowest cash comes to without it.
        lowest: Money,
        /// On that day.
        #[serde(serialize_with = "crate::plan::civil::serialize")]
        lowest_on: Date,
        /// Whether that is below the floor.
        breaks_floor: bool,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::BelowFloor { .. } => "money-below-floor",
            Self::CloseToFloor { .. } => "money-close-to-floor",
            Self::LargestBefore { .. } => "money-largest-before",
            Self::ReceiptsUnanswered { .. } => "money-receipts-unanswered",
            Self::PaymentsUnanswered { .. } => "money-payments-unanswered",
            Self::WithoutPrice { .. } => "money-without-price",
            Self::OwesMore { .. } => "money-owes-more",
            Self::Overlap { .. } => "money-overlap",
            Self::SalesUnlikely { .. } => "money-sales-unlikely",
            Self::HomeUntil { .. } => "money-home-until",
            Self::NoWayHome { .. } => "money-no-way-home",
            Self::PayAtRisk { breaks_floor: true, .. } => "money-pay-breaks-floor",
            Self::PayAtRisk { .. } => "money-pay-at-risk",
        }
    }

    fn figures(&self) -> Figures {
        match self.clone() {
            Self::BelowFloor { on, missing, lowest_on } => vec![
                ("on", Figure::Date(on)),
                ("missing", Figure::Money(missing)),
                ("lowest_on", Figure::Date(lowest_on)),
            ],
            Self::CloseToFloor { lowest_on, margin } => {
                vec![("lowest_on", Figure::Date(lowest_on)), ("margin", Figure::Money(margin))]
            }
            Self::LargestBefore { name, amount, .. } => {
                vec![("name", Figure::Name(name)), ("amount", Figure::Money(amount))]
            }
            Self::HomeUntil { last_on, missing } => {
                vec![("last_on", Figure::Date(last_on)), ("missing", Figure::Money(missing))]
            }
            Self::NoWayHome { missing } => vec![("missing", Figure::Money(missing))],
            Self::ReceiptsUnanswered { count, amount }
            | Self::PaymentsUnanswered { count, amount }
            | Self::SalesUnlikely { count, amount } => {
                vec![("count", Figure::count(count)), ("amount", Figure::Money(amount))]
            }
            Self::WithoutPrice { count, name, .. } => {
                vec![("count", Figure::count(count)), ("name", Figure::Name(name))]
            }
            Self::PayAtRisk { amount, by, lowest, lowest_on, .. } => vec![
                ("amount", Figure::Money(amount)),
                ("by", Figure::Date(by)),
                ("lowest", Figure::Money(lowest)),
                ("lowest_on", Figure::Date(lowest_on)),
            ],
            Self::Overlap { home, road } => vec![("home", Figure::Money(home)), ("road", Figure::Money(road))],
            Self::OwesMore { on, owed, resale } => {
                vec![("on", Figure::Date(on)), ("owed", Figure::Money(owed)), ("resale", Figure::Money(resale))]
            }
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::BelowFloor { .. } => "next-money-below-floor",
            Self::CloseToFloor { .. } => "next-money-close-to-floor",
            Self::LargestBefore { .. } => "next-money-largest-before",
            Self::ReceiptsUnanswered { .. } | Self::PaymentsUnanswered { .. } => "next-money-unanswered",
            Self::WithoutPrice { .. } => "next-money-without-price",
            Self::OwesMore { .. } => "next-money-owes-more",
            Self::Overlap { .. } => "next-money-overlap",
            Self::SalesUnlikely { .. } => "next-money-sales-unlikely",
            Self::HomeUntil { .. } | Self::NoWayHome { .. } => "next-money-way-home",
            Self::PayAtRisk { .. } => "next-money-pay-at-risk",
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::BelowFloor { .. } => Severity::Short,
            Self::CloseToFloor { .. } | Self::PayAtRisk { breaks_floor: true, .. } => Severity::Close,
            _ => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::LargestBefore { item, .. } | Self::WithoutPrice { item, .. } => Some(*item),
            _ => None,
        }
    }
}
