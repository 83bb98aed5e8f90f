//! What sums of sides can fill.

use super::problem::Problem;
use super::stack::bits;

/// The widest room whose sums are told apart, in units of the greatest measure that all sides have in common.
const MOST_UNITS: usize = 4_096;

/// The sums that some of the pieces make when they lie side by side across the room, one bit each.
pub(super) struct Sums {
    unit: i32,
    units: usize,
    sides: Vec<[usize; 2]>,
    least: Vec<i32>,
    set: Vec<u64>,
    of: u64,
    least_left: i32,
}

impl Sums {
    pub(super) fn new(problem: &Problem) -> Self {
        let all = problem.pieces.iter().flat_map(|piece| piece.ways).flatten().map(|way| way.1);
        let unit = all.fold(0, common_measure).max(1);
        let side = |way: Option<(i32, i32)>| way.map_or(0, |way| (way.1 / unit).unsigned_abs() as usize);
        let units = (problem.across / unit).unsigned_abs() as usize;
        Self {
            unit,
            units,
            sides: problem.pieces.iter().map(|piece| piece.ways.map(side)).collect(),
            least: problem.pieces.iter().map(super::problem::Piece::least_across).collect(),
            set: vec![0; if units < MOST_UNITS { units / 64 + 1 } else { 0 }],
            of: 0,
            least_left: 0,
        }
    }

    /// Takes the sums of these pieces.
    pub(super) fn of(&mut self, pieces: u64) {
        if self.of == pieces {
            return;
        }
        self.of = pieces;
        self.least_left = bits(pieces).map(|piece| self.least[piece]).min().unwrap_or(i32::MAX);
        if self.set.is_empty() {
            return;
        }
        self.set.fill(0);
        self.set[0] = 1;
        for piece in bits(pieces) {
            self.with_either(self.sides[piece]);
        }
    }

    /// The greatest sum that is not more than this.
    pub(super) fn most_within(&self, room: i32) -> i32 {
        if room < self.least_left {
            return 0;
        }
        if self.set.is_empty() {
            return room;
        }
        let units = ((room / self.unit).unsigned_abs() as usize).min(self.units);
        let word = units / 64;
        let within = self.set[word] & (u64::MAX >> (63 - units % 64));
        let lower = self.set[..word].iter().enumerate().rev().map(|(word, bits)| (word, *bits));
        let best = std::iter::once((word, within)).chain(lower).find(|(_, bits)| *bits != 0);
        let sum = best.map_or(0, |(word, bits)| 64 * word + 63 - bits.leading_zeros() as usize);
        i32::try_from(sum).unwrap_or(0) * self.unit
    }

    /// Adds one of two sides, or none, to every sum. From above, so that nothing is added twice.
    fn with_either(&mut self, sides: [usize; 2]) {
        for word in (0..self.set.len()).rev() {
            let mut with = self.set[word];
            for side in sides.into_iter().filter(|side| *side > 0) {
                let (words, shift) = (side / 64, side % 64);
                if words <= word {
                    with |= self.set[word - words] << shift;
                    if shift > 0 && words < word {
                        with |= self.set[word - words - 1] >> (64 - shift);
                    }
                }
            }
            self.set[word] = with;
        }
    }
}

/// Euclid's algorithm.
fn common_measure(first: i32, second: i32) -> i32 {
    if second == 0 { first } else { common_measure(second, first % second) }
}
