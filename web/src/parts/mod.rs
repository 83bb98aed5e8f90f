//! Pieces that pages are made of.

mod button;
mod entries;
mod field;
mod icon;
mod link;
mod plot;
mod standing;

pub use button::button;
pub use entries::{Entries, entry_line, named, optional};
pub use field::{comes_to, factor, field, field_label, field_text, fields, unit_sign};
pub use icon::{Shape, icon};
pub use link::{link_out, told_list, unreadable};
pub use plot::{PlotData, plot};
pub use standing::{Grounds, StandingView, standing_details, standing_details_once, verdict_badge, verdict_word};
