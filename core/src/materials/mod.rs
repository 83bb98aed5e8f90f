//! Material: how to cut it, and how much of it to buy. Apart from the plan.
//!
//! - [`cutting`]: boards cut to lengths, from the fewest or the cheapest boards, proven.

pub mod cutting;
