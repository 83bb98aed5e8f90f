//! The rules and numbers of Kerbstead: a [`plan::Plan`] in, an [`Assessment`] out.
//!
//! ```
//! use kerbstead_core::{assess, plan};
//! use jiff::civil::date;
//!
//! let plan = plan::demo_plan();
//! let assessment = assess(&plan, date(2027, 2, 1));
//! assert!(assessment.money.standing.first_short.is_some());
//! ```
//!
//! Where to go from here:
//! - [`plan`]: the model, its one table of fields, validation, edits, files;
//! - [`run`]: the calendar, and the walk along it that every balance shares;
//! - [`money`], [`power`], [`water`], [`warmth`]: a balance each: what it takes (`input`), what it gives (`report`), the
//!   computation (`step`), its findings;
//! - [`load`]: what the van weighs and bears, and what keeps things in their places;
//! - [`compare`]: two to four plans side by side, as planned and under a few assumptions;
//! - [`days`]: work placed in time, with the hands and tools there are;
//! - [`chances`]: how likely all of it holds together, one world a run;
//! - [`draws`]: numbers by chance, from a seed;
//! - [`keeping`]: what is kept beside a plan: history, journal, earlier versions, merging, the backup;
//! - [`materials`]: how to cut boards and sheets, and how much of what to buy, apart from the plan;
//! - [`moves`]: what to change when the plan falls short;
//! - [`order`]: sorting, all of it by one piece of code, and what is in a row;
//! - [`energy`]: portable stores, what draws on them and what charges them, hour by hour, apart from the plan;
//! - [`explain`]: the working of a number;
//! - [`task`]: questions that take longer than a key should, worked out in steps;
//! - [`road_log`]: what was counted on the way corrects the plan; wishes, and the next build;
//! - [`shop`]: what a thing on a shelf would do to the plan;
//! - [`signal`]: data, contracts, and hours of work that need signal;
//! - [`space`]: what fits in the van and where, and whether one gets through;
//! - [`sun`]: where the sun stands, what a panel gets of it and gives, and how warm it is outside;
//! - [`statistics`]: percentiles, ranks, the normal distribution and Student's t;
//! - [`thermal`]: warmth, damp and air in a small room, hour by hour, apart from the plan;
//! - [`papers`]: tables and calendar files for other programs;
//! - [`tree()`]: what leaves core, as JSON has it;
//! - [`words`]: data into sentences.
//!
//! Nothing here asks the world for anything: no clock (the day comes in as `as_of`), no randomness, no browser, and no
//! input makes it panic. The same plan gives the same assessment, native and in WebAssembly, to the bit.

#![forbid(unsafe_code)]
#![warn(missing_docs)]

mod assessment;
pub mod chances;
pub mod compare;
pub mod days;
pub mod draws;
pub mod energy;
pub mod explain;
pub mod keeping;
pub mod load;
pub mod materials;
pub mod money;
pub mod moves;
pub mod order;
pub mod papers;
pub mod plan;
pub mod power;
pub mod road_log;
pub mod run;
pub mod share;
pub mod shop;
pub mod signal;
pub mod space;
pub mod statistics;
pub mod sun;
pub mod task;
pub mod thermal;
mod tree;
pub mod warmth;
pub mod water;
pub mod words;

pub use assessment::{
    Again, Assessment, Balance, Caution, Margin, Moment, Outcome, Outlined, Say, Severity, Standing, Verdict, assess,
};
pub use tree::tree;
