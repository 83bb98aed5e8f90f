//! Material: how to cut it, and how much of it to buy.
//!
//! Of the plan:
//! - [`covered`]: what surfaces take, and which packs that is;
//! - [`Cuts`], [`CutsTask`]: how boards and sheets are cut, for the worker;
//! - [`into_kit`]: what is bought, as entries of the kit.
//!
//! Apart from the plan:
//! - [`cutting`]: boards cut to lengths, from the fewest or the cheapest boards, proven;
//! - [`sheets`]: sheets cut to parts, edge to edge, with what nothing can cost less than;
//! - [`coverage`]: areas and edges to amounts and packs;
//! - [`offers`]: the same in other packs, which is cheaper for what is needed, and what is left over for the next need;
//! - [`lumber`]: nominal and actual sizes, board feet, masses.

mod answer;
pub mod coverage;
mod covered;
mod cut_jobs;
mod cuts;
pub mod cutting;
mod kit;
pub mod lumber;
mod measure;
pub mod offers;
pub mod sheets;

pub use answer::{CutOne, Cuts, Fault, JobCuts, LeftOut, PieceAt, Saw};
pub use covered::{Covered, PackFor, covered, needs_fire_care, surface_m2};
pub use cut_jobs::flaws_mm;
pub use cuts::CutsTask;
pub use kit::{ToBuy, into_kit, packs_to_buy, stock_to_buy};
