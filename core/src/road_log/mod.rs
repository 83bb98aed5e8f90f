//! The road log: what was counted on the way corrects the plan, and what was missed earns its place.
//!
//! [`learned`] looks at what lies between two counts of one thing (`stretches`), beside what the plan expected of that time,
//! and works out by how much the plan's number is off ([`calibration`]); `corrections` makes the changes of it, for the person
//! to accept or not. [`earned`] ranks the wishes, and [`brief`] sums up what the next build needs. All of it is asked for by a
//! page; the run itself needs none of it, since every count replaces what was computed from its moment on.

mod brief;
pub mod calibration;
mod constants;
mod corrections;
mod learned;
mod stretches;
mod wishes;

pub use brief::{Brief, BriefLine, brief};
pub use learned::{Learned, Span, What, learned, told_money};
pub use stretches::{Gap, Why};
pub use wishes::{Earned, EarnedWish, earned};
