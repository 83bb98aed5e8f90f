//! Numbers of the room in a van that do not come from the plan.

/// The longest measure and the farthest place, in millimetres: longer than any vehicle (EU Directive 96/53/EC, annex I:
/// an articulated bus of 18.75 m; from memory), and small enough that the products of two are exact.
pub const MOST_MM: i32 = 100_000;
/// What lies no deeper than this touches and does not overlap: far below what can be measured, far above the rounding of
/// a corner that is turned by an angle.
pub const TOUCH_MM: f64 = 1e-6;
/// An area no larger than this is none, for the same reason.
pub const NO_AREA_MM2: f64 = 1e-4;
/// An inch, in tenths of a millimetre. Source: NIST Handbook 44, appendix C (exact).
pub const INCH_TENTHS_MM: i64 = 254;
