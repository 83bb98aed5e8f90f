//! The working of a number: what was computed, from what, by whose rule. Data; the words are in [`crate::words`].

use jiff::civil::Date;
use serde::Serialize;

use crate::assessment::Moment;
use crate::plan::{Money, Quantity};

/// A value that can be shown: it knows what it measures.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Figure {
    /// An amount of the plan's currency.
    Money(Money),
    /// A measured or computed value in the plan's unit for its quantity.
    Measure {
        /// The value.
        value: f64,
        /// What it measures.
        quantity: Quantity,
    },
    /// What one unit of something costs.
    Each {
        /// For one of the plan's unit.
        price: Money,
        /// What the unit measures.
        quantity: Quantity,
    },
    /// A day.
    Date(#[serde(serialize_with = "crate::plan::civil::serialize")] Date),
    /// A day, and the time of it where that is known.
    Moment(Moment),
    /// A name the person gave.
    Name(String),
}

impl Figure {
    /// A value of that quantity; zero has no sign, which JavaScript would not keep.
    pub const fn of(value: f64, quantity: Quantity) -> Self {
        Self::Measure { value: value + 0.0, quantity }
    }

    /// A count of things.
    pub fn count(count: usize) -> Self {
        Self::of(count as f64, Quantity::Count)
    }
}

/// Figures by the name they have in the catalogue's sentence.
pub type Figures = Vec<(&'static str, Figure)>;

/// How one number came about.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Working {
    /// Which formula: its sentence in the catalogue.
    pub formula: &'static str,
    /// The plan's own values in it, and the result.
    #[serde(serialize_with = "as_map")]
    pub figures: Figures,
    /// Whose rule it is.
    pub source: Source,
}

/// Whose rule a number follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// Adding, dividing, conservation: nothing to cite.
    Arithmetic,
    /// What people in the trade do; no source.
    CommonPractice,
    /// A published source, by its usual short name.
    Published(&'static str),
}

/// Writes figures as an object, in their order.
pub(crate) fn as_map<S: serde::Serializer>(figures: &Figures, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_map(figures.iter().map(|(name, figure)| (name, figure)))
}
