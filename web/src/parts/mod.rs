//! Pieces that pages are made of.

mod entries;
mod field;
mod icon;
mod plot;
mod standing;

pub use entries::{Entries, Entry, Optional, nothing};
pub use field::{Field, Fields, field_label};
pub use icon::{Icon, Shape};
pub use plot::{Plot, PlotData};
pub use standing::{StandingView, VerdictBadge, verdict_word};
