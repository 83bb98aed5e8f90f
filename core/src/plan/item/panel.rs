//! A panel in the sun.

use crate::plan::Id;
use crate::plan::record::{record, words};
pub use crate::sun::panel::Fixing;

/// A panel in the sun, one of as many as there are of the item.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Panel {
    /// Peak watts of one, by its label.
    pub peak_w: f64,
    /// How it is set up; without it, flat.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub setup: Option<PanelSetup>,
    /// How far it is tilted; without it, flat.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub tilt_deg: Option<f64>,
    /// Where it faces, clockwise from north; without it, south.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub azimuth_deg: Option<f64>,
    /// How often a day it is turned to the sun; without it, not at all.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub turned_times: Option<u32>,
    /// How much air is behind it; without it, a gap above the roof, and air all around beside the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fixing: Option<Fixing>,
    /// The hour from which the sun reaches it; without it, from sunrise.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub sun_from_hour: Option<f64>,
    /// The hour until which it does; without it, until sunset.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub sun_until_hour: Option<f64>,
    /// What shade takes besides, all day, in percent; without it, nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub shade_percent: Option<f64>,
    /// What dirt takes, in percent; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub dirt_percent: Option<f64>,
    /// What a degree above 25 °C changes, in percent, mostly negative; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub per_degree_percent: Option<f64>,
    /// What stands between it and the store; without it, one that follows the best voltage.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub controller: Option<Controller>,
    /// What that passes on, in percent; without it, as is usual for its kind.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub controller_percent: Option<f64>,
    /// The item whose store it charges; without it, the first store of the list.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub charges: Option<Id>,
}

record!(Panel {
    peak_w,
    setup,
    tilt_deg,
    azimuth_deg,
    turned_times,
    fixing,
    sun_from_hour,
    sun_until_hour,
    shade_percent,
    dirt_percent,
    per_degree_percent,
    controller,
    controller_percent,
    charges
});

/// How a panel is set up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum PanelSetup {
    /// Flat on the roof.
    #[default]
    Flat,
    /// Fixed on the van with a tilt, which faces where the van happens to stand: taken as it is stated.
    Tilted,
    /// Stood up beside the van while it does not move, and turned to the sun.
    Beside,
}

words!(PanelSetup { Flat = "flat", Tilted = "tilted", Beside = "beside" });

words!(Fixing { Open = "open", Close = "close", Glued = "glued" });

/// What stands between a panel and a store.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Controller {
    /// It follows the panel's best voltage.
    #[default]
    Tracking,
    /// It switches the panel straight to the store.
    Switching,
}

words!(Controller { Tracking = "tracking", Switching = "switching" });
