//! Many amounts in order, and what so many percent of them are below.

/// Amounts in ascending order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Spread(Vec<i64>);

impl Spread {
    pub(super) fn new(mut amounts: Vec<i64>) -> Self {
        sort(&mut amounts);
        Self(amounts)
    }

    /// The amounts.
    pub fn amounts(&self) -> &[i64] {
        &self.0
    }

    /// What `percent` of the amounts (0 to 100) are at most, between two amounts in proportion and rounded to the minor
    /// unit: type 7 of Hyndman and Fan, "Sample quantiles in statistical packages", 1996 (from memory). Nothing of no
    /// amounts.
    pub fn percentile(&self, percent: u32) -> i64 {
        let steps = self.0.len().saturating_sub(1) as u64 * u64::from(percent.min(100));
        let (at, rest) = ((steps / 100) as usize, (steps % 100).cast_signed());
        let below = self.0.get(at).copied().unwrap_or(0);
        let above = self.0.get(at + 1).copied().unwrap_or(below);
        let gap = above - below;
        below + gap / 100 * rest + (gap % 100 * rest + 50) / 100
    }
}

/// Sorts by a digit of 256 after the other, the lowest first; only as many as the amounts differ in. It takes as long
/// for any amounts, and its code is shorter than that of the standard library.
fn sort(amounts: &mut Vec<i64>) {
    let (Some(least), Some(most)) = (amounts.iter().min().copied(), amounts.iter().max().copied()) else { return };
    let range = most.abs_diff(least);
    let mut sorted = vec![0; amounts.len()];
    let mut shift = 0;
    while shift < 64 && range >> shift > 0 {
        by_digit(amounts, &mut sorted, least, shift);
        std::mem::swap(amounts, &mut sorted);
        shift += 8;
    }
}

fn by_digit(from: &[i64], to: &mut [i64], least: i64, shift: u32) {
    let digit = |amount: i64| (amount.abs_diff(least) >> shift & 0xff) as usize;
    let mut places = [0_usize; 256];
    for amount in from {
        places[digit(*amount)] += 1;
    }
    let mut before = 0;
    for place in &mut places {
        before += std::mem::replace(place, before);
    }
    for amount in from {
        let place = &mut places[digit(*amount)];
        if let Some(slot) = to.get_mut(*place) {
            *slot = *amount;
        }
        *place += 1;
    }
}
