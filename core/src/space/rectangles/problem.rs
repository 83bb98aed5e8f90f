//! The question as the search takes it: along the room, and across it.

/// The most bars, blocks included; their edges make twice as many columns at most, less one.
pub(super) const MOST_BARS: usize = 32;
/// As many columns as a number has bits.
pub(super) const MOST_COLUMNS: usize = 64;

/// A rectangle whose place along the room is settled.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bar {
    pub(super) from: i32,
    pub(super) to: i32,
    pub(super) across: i32,
    /// Where it stands across the room, if that is settled too.
    pub(super) fixed_at: Option<i32>,
    /// Its middle is to be in the lower half.
    pub(super) in_lower_half: bool,
}

/// A rectangle to be placed: its sides, and which it is in the question.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub(super) number: usize,
    /// Along and across, as given and, if it may be turned, turned.
    pub(super) ways: [Option<(i32, i32)>; 2],
}

/// So much of what lies across is to stay free from one place along the room to another.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reserve {
    pub(super) from: i32,
    pub(super) to: i32,
    pub(super) across: i32,
}

/// All of it.
#[derive(Clone, Debug)]
pub(super) struct Problem {
    pub(super) along: i32,
    pub(super) across: i32,
    pub(super) pieces: Vec<Piece>,
    pub(super) blocks: Vec<Bar>,
    pub(super) reserves: Vec<Reserve>,
}

impl Piece {
    pub(super) fn area(&self) -> i64 {
        self.ways.iter().flatten().next().map_or(0, |way| i64::from(way.0) * i64::from(way.1))
    }

    pub(super) fn least_along(&self) -> i32 {
        self.ways.iter().flatten().map(|way| way.0).min().unwrap_or(0)
    }

    pub(super) fn least_across(&self) -> i32 {
        self.ways.iter().flatten().map(|way| way.1).min().unwrap_or(0)
    }
}

impl Bar {
    fn lower_edge(&self) -> i32 {
        self.fixed_at.unwrap_or(0)
    }

    fn with_height(&self, low: i32, high: i32) -> Self {
        Self { fixed_at: Some(low), across: high - low, ..*self }
    }

    /// Adds what is left of it when another one is cut out.
    pub(super) fn without(&self, other: &Self, rest: &mut Vec<Self>) {
        let (low, other_low) = (self.lower_edge(), other.lower_edge());
        let (high, other_high) = (low + self.across, other_low + other.across);
        let (from, to) = (self.from.max(other.from), self.to.min(other.to));
        if from >= to || low.max(other_low) >= high.min(other_high) {
            rest.push(*self);
            return;
        }
        rest.extend((self.from < from).then_some(Self { to: from, ..*self }));
        rest.extend((to < self.to).then_some(Self { from: to, ..*self }));
        let middle = Self { from, to, ..*self };
        rest.extend((low < other_low).then(|| middle.with_height(low, other_low)));
        rest.extend((other_high < high).then(|| middle.with_height(other_high, high)));
    }
}

impl Problem {
    /// What is taken across at one place along, by blocks and what is kept free.
    fn taken(&self, at: i32) -> i32 {
        let blocks = self.blocks.iter().filter(|bar| bar.from <= at && at < bar.to).map(|bar| bar.across);
        let reserves = self.reserves.iter().filter(|part| part.from <= at && at < part.to).map(|part| part.across);
        blocks.chain(reserves).sum()
    }

    /// More than there are bits and columns for.
    pub(super) fn is_too_large(&self) -> bool {
        self.pieces.len() + self.blocks.len() > MOST_BARS
    }

    /// A piece is too large by itself, something is kept free where nothing is left, or the areas do not add up.
    pub(super) fn has_no_room(&self) -> bool {
        let begins = self.blocks.iter().map(|bar| bar.from).chain(self.reserves.iter().map(|part| part.from));
        self.pieces.iter().any(|piece| piece.ways == [None; 2])
            || begins.into_iter().any(|at| self.taken(at) > self.across)
            || self.spare_area() < 0
    }

    /// The area that is neither taken nor needed; less than none where there is too little.
    pub(super) fn spare_area(&self) -> i64 {
        let area = |from: i32, to: i32, across: i32| i64::from(to - from) * i64::from(across);
        let pieces: i64 = self.pieces.iter().map(Piece::area).sum();
        let blocks: i64 = self.blocks.iter().map(|bar| area(bar.from, bar.to, bar.across)).sum();
        let reserves: i64 = self.reserves.iter().map(|part| area(part.from, part.to, part.across)).sum();
        area(0, self.along, self.across) - pieces - blocks - reserves
    }
}
