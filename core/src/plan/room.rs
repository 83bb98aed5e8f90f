//! The inside of the van and what stands in it: the shape, the things at their places, who sleeps where, and what is to be
//! near to what or away from it.
//!
//! All places are measured from one corner of the floor: the front left one, as one looks the way the van drives. `x_mm`
//! counts from there towards the rear, `y_mm` towards the right.

use super::Id;
use super::record::{record, words};
use crate::load::constants as fastening;
use crate::space::constants as usual;
pub use crate::space::item::Level;

/// Who walks through the van, and what things are fastened with.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Room {
    /// How wide the way must be; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub body_width_mm: Option<f64>,
    /// How high the way must be, what begins above is ducked under; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub body_height_mm: Option<f64>,
    /// The working load limit of one strap, as its label says.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub strap_limit_kg: Option<f64>,
    /// What one adhesive strip or hook holds, as its packet says.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub strip_holds_kg: Option<f64>,
    /// How many times as much as is needed the strips must hold, at least 2; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub strip_times: Option<u32>,
    /// What of that they still hold on a hot day, in percent; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub strip_heat_percent: Option<f64>,
}

record!(Room { body_width_mm, body_height_mm, strap_limit_kg, strip_holds_kg, strip_times, strip_heat_percent });

impl Room {
    /// How wide the way must be, in millimetres.
    pub fn body_width_mm(&self) -> f64 {
        self.body_width_mm.unwrap_or(usual::BODY_WIDTH_MM)
    }

    /// How high the way must be, in millimetres.
    pub fn body_height_mm(&self) -> f64 {
        self.body_height_mm.unwrap_or(usual::BODY_HEIGHT_MM)
    }

    /// How many times as much as is needed strips must hold.
    pub fn strip_times(&self) -> u32 {
        self.strip_times.unwrap_or(fastening::STRIP_TIMES)
    }

    /// What strips still hold on a hot day, in percent.
    pub fn strip_heat_percent(&self) -> f64 {
        self.strip_heat_percent.unwrap_or(fastening::STRIP_HEAT_PERCENT)
    }
}

/// A corner of the floor. All of them in order, either way round, are its outline.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Corner {
    /// Unique in the plan.
    pub id: Id,
    /// From the front towards the rear.
    pub x_mm: f64,
    /// From the left towards the right.
    pub y_mm: f64,
}

record!(Corner { id, x_mm, y_mm });

/// A wheel arch or whatever else is built into the van.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct BuiltIn {
    /// Unique in the plan.
    pub id: Id,
    /// What it is.
    pub name: String,
    /// Where it begins, from the front.
    pub x_mm: f64,
    /// Where it begins, from the left.
    pub y_mm: f64,
    /// From front to rear.
    pub length_mm: f64,
    /// From left to right.
    pub width_mm: f64,
    /// From the floor up to where it begins.
    pub base_mm: f64,
    /// From where it begins to where it ends.
    pub height_mm: f64,
}

record!(BuiltIn { id, name, x_mm, y_mm, length_mm, width_mm, base_mm, height_mm });

impl Default for BuiltIn {
    fn default() -> Self {
        let (length_mm, width_mm, height_mm) = (700.0, 200.0, 280.0);
        Self { id: 0, name: String::new(), x_mm: 0.0, y_mm: 0.0, length_mm, width_mm, base_mm: 0.0, height_mm }
    }
}

/// A door, or the way through to the cab.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Door {
    /// Unique in the plan.
    pub id: Id,
    /// The side it is in. What is in the front leads to the cab.
    pub side: VanSide,
    /// Where it begins: from the front when it is in a side, from the left when it is in the rear or the front.
    pub from_mm: f64,
    /// Its clear width.
    pub width_mm: f64,
    /// Its clear height.
    pub height_mm: f64,
    /// How far into the van nothing may stand inside it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub clear_mm: Option<f64>,
}

record!(Door { id, side, from_mm, width_mm, height_mm, clear_mm });

impl Default for Door {
    fn default() -> Self {
        let (width_mm, height_mm) = (1_000.0, 1_200.0);
        Self { id: 0, side: VanSide::default(), from_mm: 0.0, width_mm, height_mm, clear_mm: None }
    }
}

/// A side of the van, as one looks the way it drives.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum VanSide {
    Left,
    #[default]
    Right,
    Rear,
    Front,
}

words!(VanSide { Left = "left", Right = "right", Rear = "rear", Front = "front" });

/// How far the walls come in at one height; straight between two such rows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct WallRow {
    /// Unique in the plan.
    pub id: Id,
    /// Above the floor.
    pub height_mm: f64,
    /// How far the left wall is inside of the outline.
    pub left_in_mm: f64,
    /// How far the right wall is inside of the outline.
    pub right_in_mm: f64,
}

record!(WallRow { id, height_mm, left_in_mm, right_in_mm });

/// How high it is inside at one place; straight between two such rows.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct RoofRow {
    /// Unique in the plan.
    pub id: Id,
    /// From the front.
    pub x_mm: f64,
    /// From the floor to the roof.
    pub height_mm: f64,
}

record!(RoofRow { id, x_mm, height_mm });

impl Default for RoofRow {
    fn default() -> Self {
        Self { id: 0, x_mm: 0.0, height_mm: 1_800.0 }
    }
}

/// One thing of the kit at its place. An item of which there are several can have several.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
#[allow(clippy::struct_excessive_bools)] // each by itself
pub struct Placement {
    /// Unique in the plan.
    pub id: Id,
    /// The item of the kit. A placement whose item is not there takes no room.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub thing: Option<Id>,
    /// Where it belongs.
    pub level: Level,
    /// Its first corner from the front; without it, it has no place yet.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub x_mm: Option<f64>,
    /// Its first corner from the left.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub y_mm: Option<f64>,
    /// From the floor up to where it begins.
    pub base_mm: f64,
    /// How far it is turned about its first corner, from the front towards the right, in degrees.
    pub turn_deg: f64,
    /// On which of its faces it stands.
    pub stands: Stands,
    /// Whether it stays where it is when all is arranged anew.
    pub pinned: bool,
    /// Free height under it, as under a bed on legs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub clear_under_mm: Option<f64>,
    /// Whether one must get to it on foot.
    pub reached: bool,
    /// How many sleep on it.
    pub sleeps: u32,
    /// At which end the heads are.
    pub head: Head,
    /// What it takes up when it is folded out or pulled open.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub opened: Option<OpenedBox>,
    /// What keeps it in its place while the van drives.
    pub fastened: Fastened,
}

record!(Placement {
    id,
    thing,
    level,
    x_mm,
    y_mm,
    base_mm,
    turn_deg,
    stands,
    pinned,
    clear_under_mm,
    reached,
    sleeps,
    head,
    opened,
    fastened,
});

words!(Level {
    Floor = "floor", UnderBed = "under_bed", Counter = "counter", Wall = "wall", Roof = "roof", Outside = "outside",
});

/// On which face a box stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Stands {
    /// As its sizes say.
    #[default]
    Flat,
    /// On its long edge: what was its width is its height.
    OnEdge,
    /// On its end: what was its length is its height.
    OnEnd,
}

words!(Stands { Flat = "flat", OnEdge = "on_edge", OnEnd = "on_end" });

/// The end of a bed where the heads are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Head {
    /// The end of its first corner.
    #[default]
    Start,
    /// The other end.
    End,
}

words!(Head { Start = "start", End = "end" });

/// The box of a thing that is open, in place of the closed one. Zero lengths are as when it is closed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct OpenedBox {
    /// Where it begins along the thing, from the first corner of the closed one; may be less than nothing.
    pub x_mm: f64,
    /// The same across.
    pub y_mm: f64,
    /// Along the thing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
    /// Across the thing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub width_mm: Option<f64>,
    /// From the floor up to where it begins; without it, as when it is closed.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub base_mm: Option<f64>,
    /// Its height.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub height_mm: Option<f64>,
    /// Whether it is open while others that say so are open too.
    pub with_others: bool,
}

record!(OpenedBox { x_mm, y_mm, length_mm, width_mm, base_mm, height_mm, with_others });

/// What keeps a thing in its place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Fastened {
    /// Nothing that was said.
    #[default]
    Nothing,
    /// Straps from it to anchors.
    Straps,
    /// Walls and heavy things around it that are fastened themselves.
    Wedged,
    /// Bolts or screws into the van or into what is bolted.
    Bolted,
    /// Adhesive strips or hooks.
    Strips,
}

words!(Fastened {
    Nothing = "nothing", Straps = "straps", Wedged = "wedged", Bolted = "bolted", Strips = "strips",
});

/// Somebody who sleeps in the van.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Sleeper {
    /// Unique in the plan.
    pub id: Id,
    /// What they are called.
    pub name: String,
    /// How tall they are.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub height_mm: Option<f64>,
    /// From the seat to the crown; without it, worked out from how tall they are.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub sitting_mm: Option<f64>,
    /// The item they sleep on; without it, the first that somebody sleeps on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub bed: Option<Id>,
}

record!(Sleeper { id, name, height_mm, sitting_mm, bed });

/// A distance to be kept.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Distance {
    /// Unique in the plan.
    pub id: Id,
    /// The item it is about.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub of: Option<Id>,
    /// Which part of it.
    pub of_side: BoxSide,
    /// What is to be kept.
    pub keeps: Keeps,
    /// The other item, where there is one.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub other: Option<Id>,
    /// Which part of the other.
    pub other_side: BoxSide,
    /// How far.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub distance_mm: Option<f64>,
}

record!(Distance { id, of, of_side, keeps, other, other_side, distance_mm });

/// What a distance is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Keeps {
    /// The other is at least so far away.
    #[default]
    Apart,
    /// The other is at most so far away.
    Near,
    /// Nothing stands so close, and no wall: a gap for cooling, or room to stand.
    Clear,
}

words!(Keeps { Apart = "apart", Near = "near", Clear = "clear" });

/// A side of a thing as it lies before it is turned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum BoxSide {
    /// All of it.
    #[default]
    Whole,
    /// The end of its first corner.
    Start,
    /// The other end.
    End,
    /// The long side at its first corner.
    Left,
    /// The other long side.
    Right,
}

words!(BoxSide { Whole = "whole", Start = "start", End = "end", Left = "left", Right = "right" });
