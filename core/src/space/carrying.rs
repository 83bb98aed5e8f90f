//! Whether a long thing gets into the van: round a corner, upright, through a door.
//!
//! ```
//! use kerbstead_core::space::carrying::{height_to_tip_mm, longest_round_corner_mm, passes_opening};
//! assert!((longest_round_corner_mm(1_000.0, 700.0, 0.0) - 2_391.59).abs() < 0.01);
//! assert!((height_to_tip_mm(1_700.0, 550.0) - 1_786.76).abs() < 0.01);
//! assert!(passes_opening(1_180.0, 20.0, 1_100.0, 500.0)); // at a slant
//! ```

/// The longest board that is carried flat round a right-angled corner from a passage of one width into one of the other,
/// in millimetres; `thickness_mm` is how wide the board lies. Nothing when it is wider than a passage.
///
/// A thin one: `(a^(2/3) + b^(2/3))^(3/2)`, the ladder problem of textbooks of calculus. One of some width `t` touches
/// the inner corner with its long side: the least of `(a·cos + b·sin - t) / (sin·cos)` over all angles (the same argument).
pub fn longest_round_corner_mm(first_mm: f64, second_mm: f64, thickness_mm: f64) -> f64 {
    let (first, second, thick) = (first_mm.max(0.0), second_mm.max(0.0), thickness_mm.max(0.0));
    if !(first > thick && second > thick) {
        return 0.0;
    }
    if thick == 0.0 {
        let two_thirds = |width: f64| libm::cbrt(width * width);
        return libm::pow(two_thirds(first) + two_thirds(second), 1.5);
    }
    let length = |angle: f64| {
        let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
        (first * cosine + second * sine - thick) / (sine * cosine)
    };
    least(length, 1e-6, std::f64::consts::FRAC_PI_2 - 1e-6)
}

/// The height that is needed to tip a thing upright over its lower edge, in millimetres: its diagonal (Pythagoras).
pub fn height_to_tip_mm(height_mm: f64, depth_mm: f64) -> f64 {
    libm::sqrt(height_mm * height_mm + depth_mm * depth_mm)
}

/// Whether a thing whose end has these two sides passes an opening with those two, straight on, upright, lying or at a
/// slant; touching passes. Carver, "Solution to problem E1225", American Mathematical Monthly 64, 1957 (from memory).
pub fn passes_opening(one_mm: f64, other_mm: f64, width_mm: f64, height_mm: f64) -> bool {
    let (long, short) = (one_mm.max(other_mm), one_mm.min(other_mm));
    let (wide, narrow) = (width_mm.max(height_mm), width_mm.min(height_mm));
    if long <= wide {
        return short <= narrow;
    }
    let squares = long * long + short * short;
    let needed =
        (2.0 * long * short * wide + (long * long - short * short) * libm::sqrt(squares - wide * wide)) / squares;
    narrow >= needed
}

/// The least of a function that falls and then rises, by golden sections.
fn least(function: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    for _ in 0..80 {
        let (one, other) = (high - (high - low) * GOLDEN, low + (high - low) * GOLDEN);
        if function(one) < function(other) { high = other } else { low = one }
    }
    function(f64::midpoint(low, high))
}
