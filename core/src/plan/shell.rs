//! The van as a shell: what it is lined with, what lets air in, and how warm it is to be inside.

use super::record::{record, words};
use super::{Id, Money};
pub use crate::thermal::shell::Colour;

/// How the van keeps warmth and air, and what those inside want. What is not said is taken as is usual.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Shell {
    /// Its colour outside; without it, light.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub colour: Option<Colour>,
    /// What divides the cab off; without it, nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cab: Option<Cab>,
    /// Window panes of the load space, all together.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub window_m2: Option<f64>,
    /// Share of walls and roof that ribs take.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub rib_percent: Option<f64>,
    /// Free area of all gaps that nobody can close.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub leak_cm2: Option<f64>,
    /// Free area of what is left open at night: a window ajar, a roof vent.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub vent_cm2: Option<f64>,
    /// Height between a low and a high opening, where there are both.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub vent_rise_mm: Option<f64>,
    /// Free area of all that can be opened on a hot day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub open_cm2: Option<f64>,
    /// What heaters with a thermostat keep while somebody is awake inside; without it, they are off.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wanted_c: Option<f64>,
    /// The same while all sleep; without it, they are off then.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wanted_asleep_c: Option<f64>,
    /// The coldest that the bedding is warm enough for.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub least_asleep_c: Option<f64>,
    /// The hour from which all sleep.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub asleep_from_hour: Option<f64>,
    /// The hour until which they do.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub asleep_until_hour: Option<f64>,
    /// Relative humidity outside in the early morning.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub damp_percent: Option<f64>,
    /// Wind where one stands.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wind_m_s: Option<f64>,
}

record!(Shell {
    colour,
    cab,
    window_m2,
    rib_percent,
    leak_cm2,
    vent_cm2,
    vent_rise_mm,
    open_cm2,
    wanted_c,
    wanted_asleep_c,
    least_asleep_c,
    asleep_from_hour,
    asleep_until_hour,
    damp_percent,
    wind_m_s,
});

impl Shell {
    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

words!(Colour { Light = "light", Middling = "middling", Dark = "dark" });

/// What divides the cab off.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Cab {
    /// Nothing.
    #[default]
    Open,
    /// A curtain.
    Curtain,
    /// A wall of steel.
    Wall,
}

words!(Cab { Open = "open", Curtain = "curtain", Wall = "wall" });

/// A layer on the steel. The layers of a surface lie on one another as the list has them, from the steel inwards.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Layer {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Which surface it is on.
    pub covers: Covers,
    /// What it is of.
    pub material: Material,
    /// How thick it is; without it, as is usual for the material.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub thick_mm: Option<f64>,
    /// Its conductivity, in W/(m K); without it, as is usual for the material.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub conducts_w_mk: Option<f64>,
    /// Mass of a square metre of it; without it, by its thickness and what is usual for the material.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub square_metre_kg: Option<f64>,
    /// What all of it costs, to hold it against what it saves. The money goes by the kit.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub layer_price: Option<Money>,
    /// The thing of the kit it is made of: when that is left out, so is the layer.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub made_of: Option<Id>,
}

record!(Layer { id, name, covers, material, thick_mm, conducts_w_mk, square_metre_kg, layer_price, made_of });

/// A surface of the van, or several alike.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Covers {
    /// Roof and sides.
    #[default]
    RoofAndSides,
    /// The roof.
    Roof,
    /// Both sides, without their doors and windows.
    Sides,
    /// The doors of the load space, without their windows.
    Doors,
    /// The floor.
    Floor,
    /// The windows of the load space, at night.
    Windows,
    /// What divides the cab off.
    Divider,
}

words!(Covers {
    RoofAndSides = "roof_and_sides", Roof = "roof", Sides = "sides", Doors = "doors", Floor = "floor",
    Windows = "windows", Divider = "divider",
});

/// What a layer is of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Material {
    /// Extruded polystyrene.
    #[default]
    Xps,
    /// Expanded polystyrene.
    Eps,
    /// Rigid polyurethane foam.
    Pir,
    /// Soft closed-cell foam.
    SoftFoam,
    /// Wool, of sheep or minerals.
    Wool,
    /// Cork.
    Cork,
    /// Plywood.
    Plywood,
    /// Boards of softwood.
    Timber,
    /// Carpet, felt.
    Carpet,
    /// Thick cloth, a blanket.
    Cloth,
    /// Reflective foil; with its thickness and conductivity also the bubbles or the foam that carry it.
    Foil,
    /// Closed air.
    AirGap,
    /// Anything else, with its conductivity.
    Other,
}

words!(Material {
    Xps = "xps", Eps = "eps", Pir = "pir", SoftFoam = "soft_foam", Wool = "wool", Cork = "cork", Plywood = "plywood",
    Timber = "timber", Carpet = "carpet", Cloth = "cloth", Foil = "foil", AirGap = "air_gap", Other = "other",
});
