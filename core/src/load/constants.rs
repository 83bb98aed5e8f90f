//! Numbers of the load that do not come from the plan.

/// Strips and hooks must hold so many times as much as is needed, unless somebody says more. Common practice, no source.
pub const STRIP_TIMES: u32 = 3;
/// Never fewer times than that. Common practice, no source.
pub const LEAST_STRIP_TIMES: u32 = 2;
/// What a strip still holds in a van in the sun, in percent, unless somebody says otherwise. Common practice, no source.
pub const STRIP_HEAT_PERCENT: f64 = 50.0;
/// How full a fuel tank is when a van is weighed or its mass is stated, in percent, unless somebody says otherwise: the mass
/// in running order is taken with 90 %. Source: Commission Regulation (EU) No 1230/2012, article 2 (from memory).
pub const WEIGHED_FUEL_PERCENT: f64 = 90.0;
/// From the front axle back to the middle of the front seats. Common practice, no source.
pub const SEATS_FROM_AXLE_MM: f64 = 1_000.0;
/// Mass of a person. Source: Commission Regulation (EU) No 1230/2012, article 2 (from memory); 49 CFR 571.110 takes 68 kg.
pub const PERSON_KG: f64 = 75.0;

/// Density of diesel. Source: EN 590, the middle of 0.820 to 0.845 at 15 °C (from memory).
pub const DIESEL_KG_PER_L: f64 = 0.832;
/// Density of petrol. Source: EN 228, near the middle of 0.720 to 0.775 at 15 °C (from memory).
pub const PETROL_KG_PER_L: f64 = 0.745;
/// Where the fuel tank is, as a part of the wheelbase behind the front axle. Common practice, no source.
pub const TANK_AT_WHEELBASE: f64 = 0.5;

/// Less than this part of a limit to spare is called close. Common practice, no source.
pub const CLOSE_PERCENT: f64 = 3.0;
/// Less than this part of the whole mass on the front axle is called light: the front wheels steer, and brake most.
/// Common practice, no source.
pub const FRONT_LEAST_PERCENT: f64 = 35.0;
/// More than this part of the whole mass more on one side than on the other is called uneven. Common practice, no source.
pub const SIDES_DIFFER_PERCENT: f64 = 6.0;

/// What weighs as much is to be fastened by more than its own weight. Common practice, no source.
pub const HEAVY_KG: f64 = 2.0;
/// More strips than this for one thing are a sign that strips are not the way to fasten it. Common practice, no source.
pub const MOST_STRIPS: u32 = 8;
/// What begins so high above a bed could fall on who lies there. Common practice, no source.
pub const ABOVE_BED_MM: f64 = 300.0;
/// How far beside a bed that still counts. Common practice, no source.
pub const BESIDE_BED_MM: f64 = 600.0;

/// Standard acceleration of gravity, in m/s². Source: CGPM 1901; NIST SP 330 (exact).
pub const GRAVITY: f64 = 9.806_65;
/// What a tie-down must not break at, driving forwards and braking, in parts of gravity. Source: 49 CFR 393.102(a)(1).
pub const BREAKING_FORWARD: f64 = 0.8;
/// The same rearwards. Source: 49 CFR 393.102(a)(1).
pub const BREAKING_REARWARD: f64 = 0.5;
/// The same to either side. Source: 49 CFR 393.102(a)(1).
pub const BREAKING_SIDEWAYS: f64 = 0.5;
/// What a tie-down's working load limit must not be passed at, forwards, in parts of gravity. Source: 49 CFR 393.102(a)(2).
pub const WORKING_FORWARD: f64 = 0.435;
/// The same rearwards. Source: 49 CFR 393.102(a)(2).
pub const WORKING_REARWARD: f64 = 0.5;
/// The same to either side. Source: 49 CFR 393.102(a)(2).
pub const WORKING_SIDEWAYS: f64 = 0.25;
/// What of its weight must hold a thing down that walls do not hold. Source: 49 CFR 393.102(b).
pub const UPWARD: f64 = 0.2;
/// What of the weight all working load limits together must be. Source: 49 CFR 393.106(d).
pub const AGGREGATE_PART: f64 = 0.5;
/// What of its working load limit a tie-down counts that goes from an anchor to the thing. Source: 49 CFR 393.106(d).
pub const DIRECT_PART: f64 = 0.5;
/// Up to this length one tie-down may be enough: 5 ft. Source: 49 CFR 393.110(b); the foot by NIST Handbook 44 (exact).
pub const SHORT_MM: f64 = 1_524.0;
/// Up to this mass too: 1,100 lb. Source: 49 CFR 393.110(b); the pound by NIST Handbook 44, appendix C (exact).
pub const LIGHT_KG: f64 = 1_100.0 * 0.453_592_37;
/// For each stretch of this length begun there is one more: 10 ft. Source: 49 CFR 393.110; NIST Handbook 44 (exact).
pub const STRETCH_MM: f64 = 3_048.0;
/// At which angle straps are thought to go from a thing to its anchors, seen from above. Common practice, no source.
pub const STRAP_ANGLE_DEG: f64 = 45.0;

/// The most kilograms that are believed of anything.
pub const MOST_KG: f64 = 1e6;
