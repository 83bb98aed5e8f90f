//! What to change when the plan falls short.
//!
//! Each balance offers changes of the plan that may mend it, in its own folder (`moves.rs`): a [`Candidate`] is an
//! [`Edit`](crate::plan::Edit) with what the person gives up for it besides money. The plan is assessed again with each of
//! them ([`crate::Again`]); no rule of thumb says what a change does. [`Move`]s are ranked by what they mend for what they
//! cost ([`worth`]), and `set` looks for the cheapest set of them that makes the whole plan hold. A must is never touched.
//!
//! What a change costs is told in one unit, the *day on the road*: its money over what an average day there costs, the
//! days that it moves, and what it takes of comfort and trouble by the table in [`constants`].

mod candidate;
pub mod constants;
mod limits;
pub mod pick;
mod proof;
mod set;
mod task;
mod worth;

pub use candidate::{Candidate, Change, Found, of_item};
pub use set::MoveSet;
pub use task::{Moves, MovesTask};
pub use worth::{Effect, Move, tried};
