//! Warmth: is it warm enough at night, does it stay dry, and is the air fit to breathe?
//!
//! [`Input`] makes of the plan what the engine in [`crate::thermal`] takes: [`shell`] the van's surfaces with their layers,
//! `input` what each hour brings. The walk in [`crate::run`] steps the engine hour by hour beside the stores; [`report`]
//! judges its course.

pub mod answers;
pub mod constants;
mod findings;
mod input;
mod judging;
mod moves;
mod report;
pub mod shell;

pub use findings::Finding;
pub use input::Input;
pub(crate) use moves::moves;
pub use report::{FacePart, FaceReport, Hour, LayerReport, Report, SurfaceReport, report};
