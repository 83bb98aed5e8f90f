//! Material: how to cut it, and how much of it to buy. Apart from the plan.
//!
//! - [`cutting`]: boards cut to lengths, from the fewest or the cheapest boards, proven;
//! - [`sheets`]: sheets cut to parts, edge to edge, with what nothing can cost less than;
//! - [`coverage`]: areas and edges to amounts and packs;
//! - [`offers`]: the same in other packs, which is cheaper for what is needed, and what is left over for the next need;
//! - [`lumber`]: nominal and actual sizes, board feet, masses.

pub mod coverage;
pub mod cutting;
pub mod lumber;
mod measure;
pub mod offers;
pub mod sheets;
