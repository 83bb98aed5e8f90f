//! Chances: what the cash comes to when sales may fail and prices are ranges.
//!
//! An [`Outlook`] has what is certain and what is not. [`Outlook::expected_by_day`] is the exact average; [`Runs`] draws
//! many courses of the cash from a seed, in slices, and says how often the floor holds ([`Chances`]). All amounts are
//! whole minor units, so the same seed gives the same bits everywhere.
//!
//! ```
//! use kerbstead_core::money::chance::{Outlook, Runs, UncertainFlow};
//! // 100.00 in hand, 150.00 to pay on the third day, and a table that sells on the second with a chance of 75 %.
//! let table = UncertainFlow { chance_ppm: 750_000, ..UncertainFlow::fixed(8_000, 1) };
//! let outlook = Outlook { opening: 10_000, days: 5, uncertain: vec![table], ..Outlook::default() }.paying(15_000, 2);
//! let mut runs = Runs::new(&outlook, 1, 10_000).unwrap();
//! while runs.step(1_000) > 0 {} // a worker reports and can stop between two slices
//! let chances = runs.chances();
//! assert!((chances.percent_kept() - 75.0).abs() < 2.0);
//! assert_eq!(chances.end.percentile(5), -5_000);
//! assert_eq!(outlook.expected_by_day().unwrap()[4], 1_000);
//! ```

mod draws;
mod expected;
mod input;
mod percentile;
mod runs;

pub use crate::draws::Chance;
pub use input::{CertainFlow, MOST_CERTAIN, MOST_MINOR, MOST_PATHS, MOST_UNCERTAIN, Outlook, Refused, UncertainFlow};
pub use percentile::Spread;
pub use runs::{BandDay, Chances, Runs};
