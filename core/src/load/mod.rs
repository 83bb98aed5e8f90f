//! Load: does the van carry it, is it spread well, and does it stay where it is?
//!
//! [`Input`] puts masses at their places, [`Weight`] has their moments, [`report`] judges the days on the road. [`tying`]
//! has what it takes to keep a thing in its place, [`before_driving`] what to look at before driving off.

pub mod constants;
mod fastening;
mod findings;
mod input;
mod judging;
mod leaving;
mod moves;
mod report;
mod step;
pub mod tying;

pub use findings::Finding;
pub use input::{Input, full_tank_kg};
pub(crate) use input::{Thing, sound, things};
pub use leaving::{Check, Side, before_driving};
pub(crate) use moves::moves;
pub(crate) use report::stated;
pub use report::{Axle, Axles, BuildLoad, Parts, Report, Sides, report};
pub use step::{LoadDay, Weight};
pub use tying::Tying;
