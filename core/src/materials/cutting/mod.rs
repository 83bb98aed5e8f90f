//! Boards cut to lengths: the cheapest boards from which all pieces can be cut, proven to be the cheapest or with what
//! nothing can cost less than. Apart from the plan.
//!
//! Lengths count in nanometres and costs in ten-thousandths, so that millimetres, sixty-fourths of an inch and cents are
//! exact, and every proof is in whole numbers. What is supported: several lengths with prices, of which there are always
//! enough or so many; own scrap (price 0, so many); a kerf; ends trimmed off; spans of a board that cannot be used, which
//! make several usable spans of it. What is not: pieces that may be a little longer or shorter, costs of cuts, and joints.
//!
//! ```
//! use kerbstead_core::materials::cutting::{Board, CutJob, CutSearch, Piece};
//! let board = |length_mm, price: &str| Board { length_mm, price: price.parse().unwrap(), ..Board::default() };
//! let job = CutJob {
//!     pieces: [(890.0, 5), (610.0, 7), (1340.0, 3)].map(|(length_mm, count)| Piece { length_mm, count }).to_vec(),
//!     boards: vec![board(2438.0, "3.89"), board(3658.0, "6.07")],
//!     kerf_mm: 3.0,
//!     ..CutJob::default()
//! };
//! let plan = CutSearch::new(&job).unwrap().end();
//! assert_eq!((plan.cost.to_string().as_str(), plan.is_proven), ("22.10", true));
//! ```

mod dive;
mod fork;
mod found;
mod greedy;
mod knapsack;
mod layout;
mod levels;
mod lp;
mod master;
mod pool;
mod problem;
pub(super) mod proof;
mod search;
mod tree;

use serde::Serialize;

use super::measure::as_money;
use crate::plan::Money;
use problem::Problem;
use search::Search;

/// Pieces of one length that are wanted.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Piece {
    /// How long each is to be, above 0 and to 100 m.
    pub length_mm: f64,
    /// How many.
    pub count: u32,
}

/// Boards of one length that can be had, or that are there.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Board {
    /// How long each is, above 0 and to 100 m.
    pub length_mm: f64,
    /// What each costs, to a million, rounded to four digits; 0 for own scrap.
    pub price: Money,
    /// How many there are; none where there are always enough.
    pub available: Option<u32>,
    /// Spans that cannot be used, each from one distance from the board's beginning to another: a knot, a split, holes.
    /// Twenty at most. The cut beside one takes its kerf from it, as far as it is that wide.
    pub defects_mm: Vec<(f64, f64)>,
}

/// What is to be as little as possible.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Objective {
    /// What the boards cost.
    #[default]
    Cheapest,
    /// How many boards with a price there are, whatever the price.
    FewestBoards,
}

/// Pieces, and boards that they can be cut from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CutJob {
    /// What is wanted, 20,000 pieces at most. Equal lengths count as one.
    pub pieces: Vec<Piece>,
    /// What they can be cut from, 200 entries at most.
    pub boards: Vec<Board>,
    /// What a cut takes away, in mm. Between `n` pieces of a span there are `n - 1` cuts; one more where something is left.
    pub kerf_mm: f64,
    /// What is cut off at each end of every board before anything else, its kerf included, in mm.
    pub trim_mm: f64,
    /// What is to be as little as possible.
    pub objective: Objective,
}

/// What is wrong with a job; places begin with 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum CutError {
    /// The length of this entry of pieces is no length above 0.
    PieceLength {
        /// Its place.
        piece: usize,
    },
    /// This entry of pieces is longer than every span of every board.
    PieceTooLong {
        /// Its place, the first of such.
        piece: usize,
    },
    /// The length of this entry of boards is no length above 0.
    BoardLength {
        /// Its place.
        board: usize,
    },
    /// Its defects are no spans, or too many.
    Defects {
        /// Its place.
        board: usize,
        /// How many there can be.
        most: usize,
    },
    /// Its price is below 0 or above a million.
    Price {
        /// Its place.
        board: usize,
    },
    /// The kerf is no length.
    Kerf,
    /// What is trimmed off is no length.
    Trim,
    /// More pieces than can be looked at.
    TooManyPieces {
        /// How many can be.
        most: u64,
    },
    /// More entries of boards than can be looked at.
    TooManyBoards {
        /// How many can be.
        most: usize,
    },
}

/// A piece on a board.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PlacedPiece {
    /// Which entry of pieces it is of.
    pub piece: usize,
    /// Where it begins on the board, in mm.
    pub from_mm: f64,
    /// Where it ends.
    pub to_mm: f64,
}

/// Boards that are cut alike.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CutBoard {
    /// Which entry of boards they are of.
    pub board: usize,
    /// How many are cut like this.
    pub alike: u32,
    /// The pieces from the board's beginning on, in the order of the cuts: in each span the longest first.
    pub pieces: Vec<PlacedPiece>,
    /// Where the saw goes in, from the board's beginning on, in mm; it takes the kerf beyond that. What cannot be used is cut
    /// off like an offcut. Trimming is left out.
    pub cuts_mm: Vec<f64>,
    /// The longest usable piece that is left, in mm.
    pub offcut_mm: f64,
}

/// How all is cut.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct CutPlan {
    /// The boards.
    pub boards: Vec<CutBoard>,
    /// What they cost.
    pub cost: Money,
    /// How many they are, own scrap with them, and how many of them have a price.
    pub board_count: u32,
    /// Of these, those with a price.
    pub bought_count: u32,
    /// What of all boards becomes no piece, in mm, and in hundredths of their length.
    pub waste_mm: f64,
    /// The same in hundredths of the boards' length.
    pub waste_percent: f64,
    /// Pieces for which there are not enough boards: which entry, and how many.
    pub missing: Vec<(usize, u32)>,
    /// No way of cutting all costs less; as a number of boards with a price, where these are to be few. Nothing where
    /// pieces are missing.
    pub bound: Money,
    /// Whether nothing is better: no plan costs less, or where pieces are missing, no plan has fewer that are missing.
    pub is_proven: bool,
}

/// A search for the best way to cut a job. The same job gives the same plan, whatever the steps.
pub struct CutSearch {
    job: CutJob,
    search: Search,
}

impl CutSearch {
    /// Begins with a good plan.
    ///
    /// # Errors
    /// What is wrong with the job.
    pub fn new(job: &CutJob) -> Result<Self, CutError> {
        Ok(Self { search: Search::new(Problem::new(job)?), job: job.clone() })
    }

    /// Goes on for a few milliseconds at most; gives the share that is done, 1 when all is. A search that takes too
    /// long is given up, which [`is_proven`](Self::is_proven) tells.
    pub fn step(&mut self) -> f64 {
        self.search.step()
    }

    /// The best plan so far.
    pub fn best(&self) -> CutPlan {
        layout::plan(&self.job, &self.search)
    }

    /// No way of cutting all costs less, as in [`CutPlan::bound`].
    pub fn bound(&self) -> Money {
        let is_whole = self.search.best.is_whole();
        if is_whole { as_money(self.search.bound, self.search.problem.unit(&self.job)) } else { Money::ZERO }
    }

    /// Whether the best plan is proven to be the best there is.
    pub fn is_proven(&self) -> bool {
        self.search.is_proven()
    }

    /// Goes on to the end.
    pub fn end(mut self) -> CutPlan {
        while self.step() < 1.0 {}
        self.best()
    }
}
