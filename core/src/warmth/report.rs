//! What the warmth comes to.

use jiff::civil::Date;
use serde::Serialize;

use super::findings::Finding;
use crate::assessment::Standing;
use crate::plan::{Path, Plan};
use crate::run::{Timeline, missing_road};

/// The warmth of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
}

/// Judges the warmth from `as_of` on.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline) -> Report {
    let mut missing = missing_road(plan, as_of, timeline);
    if missing.is_empty() {
        missing = vec![Path::section("climate").child("like")];
    }
    Report { standing: Standing::unknown(missing) }
}
