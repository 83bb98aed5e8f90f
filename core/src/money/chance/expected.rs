//! The average, without drawing.

use super::input::{Outlook, Refused, UncertainFlow};

/// A triangle's mean is a third of its three amounts, and a chance counts in millionths.
const PARTS: i64 = 3_000_000;

impl Outlook {
    /// The exact expected cash in the evening of each day, rounded to the minor unit at the end: a triangle's mean,
    /// `(low + likely + high) / 3`, times its chance, times the share of its days that have passed. (A share of days is
    /// cut at a three-millionth of a minor unit.)
    ///
    /// # Errors
    /// As [`Outlook::check`].
    pub fn expected_by_day(&self) -> Result<Vec<i64>, Refused> {
        self.check()?;
        let mut cash = self.certain_by_day();
        for (day, cash) in (0..).zip(&mut cash) {
            let mut parts = 0;
            for flow in &self.uncertain {
                let so_far = parts_by(flow, day);
                *cash += so_far.div_euclid(PARTS);
                parts += so_far.rem_euclid(PARTS);
            }
            *cash += (parts + PARTS / 2).div_euclid(PARTS);
        }
        Ok(cash)
    }
}

/// What a flow brings on average up to a day, in [`PARTS`] of a minor unit. At most 3e18, which an `i64` holds.
fn parts_by(flow: &UncertainFlow, day: u32) -> i64 {
    let whole = (flow.low + flow.likely + flow.high) * i64::from(flow.chance_ppm);
    let days = i64::from(flow.last_day - flow.first_day) + 1;
    let passed = (i64::from(day) - i64::from(flow.first_day) + 1).clamp(0, days);
    whole / days * passed + whole % days * passed / days
}
