//! Rates: what money costs or earns in a period. A rate is a ratio, not an amount, so it may be a float.

/// Money at a time, counted in periods from the start: positive comes in, negative goes out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatedFlow {
    /// Whole periods from the start.
    pub periods: u32,
    /// The part of a period beyond them, 0 to below 1.
    pub fraction: f64,
    /// What comes in; a ratio is all that is made of it.
    pub amount: f64,
}

/// The rate of a period, as a fraction, at which all flows together are worth nothing today: the internal rate of
/// return of an investment, the cost of a loan.
///
/// A part of a period counts as simple interest, `1 + fraction * rate`, and whole periods compound, as the general
/// equation of 12 CFR 1026, Appendix J, paragraph (b)(8) has it. `None` when no rate between -99 % and 1,000 % a period
/// does it, as when money only comes in.
///
/// ```
/// use kerbstead_core::money::{RatedFlow, rate_per_period};
/// let flow = |periods, amount| RatedFlow { periods, fraction: 0.0, amount };
/// let rate = rate_per_period(&[flow(0, -100.0), flow(1, 110.0)]).unwrap();
/// assert!((rate - 0.1).abs() < 1e-12);
/// ```
pub fn rate_per_period(flows: &[RatedFlow]) -> Option<f64> {
    let (mut low, mut high) = bracket(flows)?;
    let sign_low = present_value(flows, low) > 0.0;
    // Halving gains a bit a step; a float has 53, and the bracket is narrow.
    for _ in 0..80 {
        let middle = f64::midpoint(low, high);
        if (present_value(flows, middle) > 0.0) == sign_low {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(f64::midpoint(low, high))
}

/// What the flows are worth at the start, at that rate a period.
pub fn present_value(flows: &[RatedFlow], rate: f64) -> f64 {
    let growth = 1.0 + rate;
    flows
        .iter()
        .map(|flow| flow.amount / ((1.0 + flow.fraction * rate) * libm::pow(growth, f64::from(flow.periods))))
        .sum()
}

/// Two rates between which the worth changes its sign, the pair nearest to nothing.
fn bracket(flows: &[RatedFlow]) -> Option<(f64, f64)> {
    const STEPS: [f64; 16] =
        [-0.99, -0.9, -0.7, -0.5, -0.3, -0.15, -0.05, 0.0, 0.05, 0.15, 0.3, 0.6, 1.0, 2.0, 5.0, 10.0];
    let pairs = STEPS.iter().zip(STEPS.iter().skip(1));
    let crossing = pairs.filter(|(low, high)| {
        let (at_low, at_high) = (present_value(flows, **low), present_value(flows, **high));
        at_low.is_finite() && at_high.is_finite() && (at_low > 0.0) != (at_high > 0.0)
    });
    let nearest = crossing.min_by(|one, other| one.0.abs().total_cmp(&other.0.abs()));
    nearest.map(|(low, high)| (*low, *high))
}

/// How many months of a fixed payment pay a debt off, the last one counted in part: `-ln(1 - i P / a) / ln(1 + i)`.
/// `None` when the payment does not even meet the interest. Only a time is made of the amounts.
pub fn months_to_pay_off(owed: f64, yearly_percent: f64, payment: f64) -> Option<f64> {
    let monthly = yearly_percent / 1200.0;
    let months =
        if monthly == 0.0 { owed / payment } else { -libm::log1p(-monthly * owed / payment) / libm::log1p(monthly) };
    months.is_finite().then_some(months)
}
