//! What there is to say about data and hours of work.

use serde::Serialize;

use crate::assessment::{Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Quantity};

/// Something wrong, close or worth knowing about data and hours of work.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// Data is used and no contract is in use.
    NoContract {
        /// What is used in a month, in GB.
        month_gb: f64,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::NoContract { .. } => "signal-no-contract",
        }
    }

    fn figures(&self) -> Figures {
        match self {
            Self::NoContract { month_gb } => vec![("month", Figure::of(*month_gb, Quantity::DataGb))],
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        match self {
            Self::NoContract { .. } => Some("signal-no-contract-next"),
        }
    }

    fn severity(&self) -> Severity {
        match self {
            Self::NoContract { .. } => Severity::Close,
        }
    }

    fn subject(&self) -> Option<Id> {
        None
    }
}
