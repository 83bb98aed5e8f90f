//! Room in the van: what fits where, whether one gets through, and how else it could stand.
//!
//! - [`shape`]: the inside of the van; [`item`]: what stands in it;
//! - [`fit`]: what overlaps, sticks out, or cannot be opened;
//! - [`walkway`]: whether one gets from a door to the bed, how wide the way is, and where it is narrowest;
//! - [`rectangles`]: whether rectangles fit on a floor at all, decided; [`arrange`]: how all of it could stand;
//! - [`taping`]: what to measure to lay it out with tape; [`carrying`]: whether a long thing gets in;
//! - [`storage`]: what volume is left.
//!
//! - `input`: the plan as such a shape with such items;
//!
//! Nothing but these knows the plan. Measures are whole millimetres; what is square to the walls is decided exactly.

pub mod arrange;
mod arranging;
pub mod carrying;
pub mod constants;
mod drawing;
mod findings;
pub mod fit;
pub mod geometry;
mod input;
pub mod item;
mod moves;
mod moving;
pub mod rectangles;
mod report;
mod rules_of;
pub mod shape;
mod starter;
pub mod storage;
mod taped;
pub mod taping;
pub mod walkway;

pub use arranging::{ArrangeTask, Arranged, Arrangement, Ending, NewPlace};
pub use drawing::{Drawing, Drawn, Outline, drawing};
pub use findings::{Finding, Hindrance};
pub use input::{Placed, Thing, shape_of, stood_mm};
pub(crate) use moves::{mirrored, moves};
pub use moving::{Moved, Moving, turned};
pub use report::{Goal, Lying, Report, WayTo, report};
pub use starter::{four_corners, place, usual_inside, without_place};
pub use taped::{TapedSquare, TapedThing, taped};
