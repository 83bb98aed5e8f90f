//! The regularised incomplete beta function.

/// Terms of the continued fraction; it needs some hundred at most for `a` and `b` up to 1,000.
const MOST_TERMS: u32 = 500;
/// What stands in for a zero below a fraction line.
const TINY: f64 = 1e-300;

/// The logarithm of the beta function.
pub(super) fn log_beta(a: f64, b: f64) -> f64 {
    libm::lgamma(a) + libm::lgamma(b) - libm::lgamma(a + b)
}

/// The share of a beta distribution below `x`, where `rest` is `1 - x`: asked for apart, so that neither end loses digits.
/// By its continued fraction on the side where that is short (NIST Digital Library of Mathematical Functions, 8.17.4 and
/// 8.17.22, from memory).
pub(super) fn beta_share_below(a: f64, b: f64, x: f64, rest: f64) -> f64 {
    if x <= 0.0 || rest <= 0.0 {
        return if x <= 0.0 { 0.0 } else { 1.0 };
    }
    let front = libm::exp(a * libm::log(x) + b * libm::log(rest) - log_beta(a, b));
    let share = if x < (a + 1.0) / (a + b + 2.0) {
        front * fraction(a, b, x) / a
    } else {
        1.0 - front * fraction(b, a, rest) / b
    };
    share.clamp(0.0, 1.0)
}

/// `1 / (1 + d1 / (1 + d2 / (1 + ...)))`, by Lentz's method as Thompson and Barnett have it, 1986 (from memory).
fn fraction(a: f64, b: f64, x: f64) -> f64 {
    let (mut value, mut above, mut below) = (1.0, 1.0, 0.0);
    for term in 1..=MOST_TERMS {
        let d = coefficient(a, b, x, term);
        above = not_zero(1.0 + d / above);
        below = 1.0 / not_zero(1.0 + d * below);
        let change = above * below;
        value *= change;
        if (change - 1.0).abs() < 1e-16 {
            break;
        }
    }
    1.0 / value
}

/// The numerator of a term of the continued fraction, from 1 on.
fn coefficient(a: f64, b: f64, x: f64, term: u32) -> f64 {
    let m = f64::from(term / 2);
    if term.is_multiple_of(2) {
        m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m))
    } else {
        -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0))
    }
}

fn not_zero(value: f64) -> f64 {
    if value.abs() < TINY { TINY } else { value }
}
