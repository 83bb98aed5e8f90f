//! Numbers of the room in a van that do not come from the plan.

use crate::plan::SizeClass;

/// Usual lengths, widths and heights inside of panel vans by class, in millimetres. Common practice, no source: a tape wins.
pub const fn usual_inside_mm(size: SizeClass) -> [f64; 3] {
    match size {
        SizeClass::Small => [1_750.0, 1_450.0, 1_200.0],
        SizeClass::Medium => [2_450.0, 1_650.0, 1_380.0],
        SizeClass::HighRoof => [3_100.0, 1_750.0, 1_880.0],
        SizeClass::LongHighRoof => [4_000.0, 1_780.0, 1_900.0],
    }
}

/// No more corners, doors, rows or built-in parts are counted.
pub const MOST_CORNERS: usize = 60;
/// No more things at their places are counted: what is compared with each other grows with their square.
pub const MOST_PLACED: usize = 250;

/// How wide a way through the van must be, unless somebody says so. Common practice, no source; public buildings have 815 mm at
/// their narrowest (US accessibility standards 403.5.1).
pub const BODY_WIDTH_MM: f64 = 400.0;
/// How high, unless somebody says so. Common practice, no source.
pub const BODY_HEIGHT_MM: f64 = 1_700.0;
/// A way with less to spare is called tight. Common practice, no source.
pub const TIGHT_WAY_MM: f64 = 30.0;
/// A bed with less beyond how tall somebody is is called tight. Common practice, no source.
pub const BED_SPARE_MM: f64 = 50.0;
/// From the seat to the crown, as a share of how tall somebody is. Source: usual ratio of anthropometry, about 0.52 (from
/// memory; Pheasant and Haslegrave, Bodyspace).
pub const SITTING_SHARE: f64 = 0.52;
/// How much of a bed, from the end of the heads, has heads on it. Common practice, no source.
pub const HEAD_ZONE_MM: f64 = 400.0;
/// What begins no higher above a bed is bedding. Common practice, no source.
pub const BEDDING_OVER_MM: i32 = 300;
/// What of a bay or a box can be filled, in percent. Common practice, no source.
pub const USABLE_PERCENT: f64 = 80.0;
/// The longest measure and the farthest place, in millimetres: longer than any vehicle (EU Directive 96/53/EC, annex I:
/// an articulated bus of 18.75 m; from memory), and small enough that the products of two are exact.
pub const MOST_MM: i32 = 100_000;
/// What lies no deeper than this touches and does not overlap: far below what can be measured, far above the rounding of
/// a corner that is turned by an angle.
pub const TOUCH_MM: f64 = 1e-6;
/// An area no larger than this is none, for the same reason.
pub const NO_AREA_MM2: f64 = 1e-4;
