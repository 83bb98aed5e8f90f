//! Numbers of the money balance that do not come from the plan.

/// Cash that lasts fewer days on the road than this above the floor is called tight. Common practice, no source.
pub const TIGHT_DAYS: u32 = 7;
