//! Heights for rectangles whose places along the room are settled.

use super::problem::{Bar, MOST_COLUMNS};

/// What the search for heights came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Heights {
    /// They are in [`Stack::across`].
    Found,
    /// There are none.
    None,
    /// The steps did not suffice to tell.
    Unknown,
}

/// Lets bars drop one after another, each as low as it goes, in the order of where their lower edges come to lie.
///
/// Every arrangement can be had so: take the bars of one by their lower edges, and let each drop; none ends up higher than
/// it was. The room is cut into columns where bars begin or end. A column has only so much height to lose, that of the
/// room less that of its bars, and every gap below a bar uses some of it up.
pub(super) struct Stack {
    bars: Vec<Bar>,
    /// A bit for each column that a bar stands in.
    columns: Vec<u64>,
    top: [i32; MOST_COLUMNS],
    spare: [i32; MOST_COLUMNS],
    /// The lower edge of each bar, where it is settled.
    pub(super) across: Vec<i32>,
    left: u64,
    steps: u32,
}

impl Stack {
    pub(super) fn new() -> Self {
        Self {
            bars: Vec::new(),
            columns: Vec::new(),
            top: [0; MOST_COLUMNS],
            spare: [0; MOST_COLUMNS],
            across: Vec::new(),
            left: 0,
            steps: 0,
        }
    }

    /// Heights for these bars below `height`; `steps` is what may be spent, and comes back as what is left of it.
    pub(super) fn search(&mut self, bars: &[Bar], height: i32, steps: &mut u32) -> Heights {
        self.bars.clear();
        self.bars.extend_from_slice(bars);
        if !self.cut_into_columns(height) {
            return Heights::None;
        }
        self.across.clear();
        self.across.resize(bars.len(), 0);
        self.left = if bars.len() >= 64 { u64::MAX } else { (1 << bars.len()) - 1 };
        self.steps = *steps;
        let found = self.drop_next(0, 0, height);
        *steps = self.steps;
        match found {
            true => Heights::Found,
            false if self.steps == 0 => Heights::Unknown,
            false => Heights::None,
        }
    }

    /// Says whether every column has room for its bars.
    fn cut_into_columns(&mut self, height: i32) -> bool {
        let mut edges: Vec<i32> = self.bars.iter().flat_map(|bar| [bar.from, bar.to]).collect();
        edges.sort_unstable();
        edges.dedup();
        self.columns.clear();
        for bar in &self.bars {
            let mut mask = 0;
            for (column, edge) in edges.iter().enumerate().take(MOST_COLUMNS) {
                if bar.from <= *edge && *edge < bar.to {
                    mask |= 1 << column;
                }
            }
            self.columns.push(mask);
        }
        self.top = [0; MOST_COLUMNS];
        self.spare = [height; MOST_COLUMNS];
        for (bar, columns) in self.bars.iter().zip(&self.columns) {
            for column in bits(*columns) {
                self.spare[column] -= bar.across;
            }
        }
        self.spare.iter().all(|spare| *spare >= 0)
    }

    /// `lowest` and `after`: where the last bar came to lie, and which it was; those at one height go by their number.
    fn drop_next(&mut self, lowest: i32, after: usize, height: i32) -> bool {
        if self.left == 0 {
            return true;
        }
        for number in bits(self.left) {
            if self.steps == 0 {
                return false;
            }
            self.steps -= 1;
            let bar = self.bars[number];
            let columns = self.columns[number];
            let rests_on = bits(columns).map(|column| self.top[column]).max().unwrap_or(0);
            let at = bar.fixed_at.unwrap_or(rests_on);
            let in_order = at > lowest || (at == lowest && number >= after);
            if at < rests_on
                || !in_order
                || at + bar.across > height
                || (bar.in_lower_half && 2 * at + bar.across > height)
            {
                continue;
            }
            if bits(columns).any(|column| at - self.top[column] > self.spare[column]) {
                continue;
            }
            let tops = self.top;
            for column in bits(columns) {
                self.spare[column] -= at - tops[column];
                self.top[column] = at + bar.across;
            }
            self.left &= !(1 << number);
            self.across[number] = at;
            if self.drop_next(at, number + 1, height) {
                return true;
            }
            self.left |= 1 << number;
            self.top = tops;
            for column in bits(columns) {
                self.spare[column] += at - tops[column];
            }
        }
        false
    }
}

/// The places of the bits that are set, lowest first.
pub(super) fn bits(mut set: u64) -> impl Iterator<Item = usize> {
    std::iter::from_fn(move || {
        let at = set.trailing_zeros() as usize;
        set &= set.wrapping_sub(1);
        (at < 64).then_some(at)
    })
}
