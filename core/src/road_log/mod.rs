//! What is noted on the road, and what it says of a plan; apart from the plan.
//!
//! - [`calibration`]: by which factors what was expected of a plan's parameters is to be multiplied.

pub mod calibration;
