//! Pieces that pages are made of.

mod asked;
mod bar;
mod button;
mod courses;
mod entries;
mod field;
mod icon;
mod link;
mod plot;
mod question;
mod standing;
mod table;
mod two_days;

pub use asked::asked;
pub use bar::bar;
pub use button::button;
pub use courses::{Course, courses};
pub use entries::{Entries, entry_line, entry_row, folded_fields, named, named_in, optional};
pub use field::{comes_to, field, field_label, field_text, fields, said_value, scale, tick_box, unit_sign};
pub use icon::{Shape, icon};
pub use link::{link_out, told_list, unreadable};
pub use plot::{Band, Mark, Picked, PlotData, line, plot, plot_to_pick};
pub use question::{Choice, Number, Typed, choice, input, number_field, number_of, question, worded};
pub use standing::{
    Grounds, StandingView, folded_working, standing_details, standing_details_once, take_care, verdict_badge,
    verdict_word,
};
pub use table::{TableRow, folded_table, named_table, table};
pub use two_days::{Lane, TwoDays, around, time};
