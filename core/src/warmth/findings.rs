//! What there is to say about warmth, damp and air.

use serde::Serialize;

use crate::assessment::{Moment, Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, Quantity};

/// Something wrong, close or worth knowing about warmth, damp or air.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// A night is colder than the bedding is for.
    TooCold {
        /// When it is coldest.
        at: Moment,
        /// Inside then, in °C.
        inside_c: f64,
        /// What the bedding is for, in °C.
        least_c: f64,
        /// Nights that are too cold.
        nights: usize,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::TooCold { .. } => "warmth-too-cold",
        }
    }

    fn figures(&self) -> Figures {
        match self {
            Self::TooCold { at, inside_c, least_c, nights } => vec![
                ("at", Figure::Moment(*at)),
                ("inside", Figure::of(*inside_c, Quantity::TemperatureC)),
                ("least", Figure::of(*least_c, Quantity::TemperatureC)),
                ("nights", Figure::count(*nights)),
            ],
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        match self {
            Self::TooCold { .. } => Some("warmth-too-cold-next"),
        }
    }

    fn severity(&self) -> Severity {
        match self {
            Self::TooCold { .. } => Severity::Short,
        }
    }

    fn subject(&self) -> Option<Id> {
        None
    }
}
