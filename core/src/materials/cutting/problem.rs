//! What is to be cut, in whole numbers: equal lengths as one kind, spans of boards as rooms.
//!
//! A piece takes its length and one kerf, and a room is its span and one kerf: between `n` pieces there are `n - 1` cuts.
//! Lengths are nanometres divided by what divides all of them, so that millimetres and sixty-fourths of an inch are both
//! exact. Costs are ten-thousandths of the currency, or a 1 for each board bought.

use super::{Board, CutError, CutJob, Objective, Piece};
use crate::materials::measure::{PRICE_DIGITS, divisor, length, price, some_length};
use crate::order;

/// So many pieces, entries of boards and defects of one at most.
const MOST_PIECES: u64 = 20_000;
const MOST_BOARDS: usize = 200;
const MOST_DEFECTS: usize = 20;

/// How many of which kind lie in a span, by kind.
pub(super) type Filling = Vec<(usize, u64)>;

/// A board with what is cut from each of its spans.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Pattern {
    pub(super) stock: usize,
    pub(super) fillings: Vec<Filling>,
}

impl Pattern {
    /// How many of which kind are cut from it in all, by kind.
    pub(super) fn totals(&self) -> Filling {
        let mut totals = Filling::new();
        for (kind, count) in self.fillings.iter().flatten() {
            match totals.binary_search_by_key(kind, |(kind, _)| *kind) {
                Ok(at) => totals[at].1 += count,
                Err(at) => totals.insert(at, (*kind, *count)),
            }
        }
        totals
    }

    /// It with no more of each kind than so many.
    pub(super) fn within(&self, most: &[u64]) -> Self {
        let mut left = most.to_vec();
        let mut cut = self.clone();
        for filling in &mut cut.fillings {
            for (kind, count) in filling.iter_mut() {
                *count = (*count).min(left[*kind]);
                left[*kind] -= *count;
            }
            filling.retain(|(_, count)| *count > 0);
        }
        cut
    }
}

/// Pieces of one length.
pub(super) struct Kind {
    /// Its length and a kerf.
    pub(super) size: u64,
    pub(super) count: u64,
    /// Which pieces these are, by their place in the job.
    pub(super) pieces: Vec<usize>,
}

/// An entry of boards.
pub(super) struct Stock {
    /// Its spans, each with a kerf.
    pub(super) rooms: Vec<u64>,
    pub(super) cost: i64,
    /// How many there are; none where there are always enough.
    pub(super) limit: Option<u64>,
}

/// The whole question.
pub(super) struct Problem {
    /// The longest first.
    pub(super) kinds: Vec<Kind>,
    pub(super) stocks: Vec<Stock>,
    /// What a piece counts that is not cut at all, where that can be: more than all pieces on a board each.
    pub(super) missing: Option<i64>,
    /// Costs are in so many ten-thousandths, or in boards.
    unit: i64,
}

impl Problem {
    pub(super) fn new(job: &CutJob) -> Result<Self, CutError> {
        let kerf = length(job.kerf_mm).ok_or(CutError::Kerf)?;
        length(job.trim_mm).ok_or(CutError::Trim)?;
        let mut kinds = kinds(&job.pieces, kerf)?;
        let mut stocks = stocks(job)?;
        let fits = |kind: &Kind| stocks.iter().any(|stock| stock.holds(kind.size));
        let too_long = kinds.iter().filter(|kind| !fits(kind)).flat_map(|kind| kind.pieces.iter().copied()).min();
        if let Some(piece) = too_long {
            return Err(CutError::PieceTooLong { piece });
        }
        let step = kinds.iter().fold(0, |step, kind| divisor(step, kind.size)).max(1);
        for kind in &mut kinds {
            kind.size /= step;
        }
        for room in stocks.iter_mut().flat_map(|stock| &mut stock.rooms) {
            *room /= step;
        }
        let unit = stocks.iter().fold(0, |unit, stock| divisor(unit, stock.cost.unsigned_abs())).max(1).cast_signed();
        for stock in &mut stocks {
            stock.cost /= unit;
        }
        let mut problem = Self { kinds, stocks, missing: None, unit };
        problem.missing = problem.penalty();
        Ok(problem)
    }

    pub(super) fn pieces(&self) -> u64 {
        self.kinds.iter().map(|kind| kind.count).sum()
    }

    pub(super) fn demand(&self) -> Vec<u64> {
        self.kinds.iter().map(|kind| kind.count).collect()
    }

    /// How many there are of each entry of boards; all pieces where there are always enough.
    pub(super) fn limits(&self) -> Vec<u64> {
        let pieces = self.pieces();
        self.stocks.iter().map(|stock| stock.limit.unwrap_or(pieces)).collect()
    }

    /// What the dearest board costs.
    pub(super) fn dearest(&self) -> i64 {
        self.stocks.iter().map(|stock| stock.cost).max().unwrap_or(0)
    }

    /// What a cost of 1 is in ten-thousandths.
    pub(super) fn unit(&self, job: &CutJob) -> i64 {
        if job.objective == Objective::FewestBoards { 10_i64.pow(PRICE_DIGITS) } else { self.unit }
    }

    fn penalty(&self) -> Option<i64> {
        let is_sure = |kind: &Kind| self.stocks.iter().any(|stock| stock.limit.is_none() && stock.holds(kind.size));
        let each = 1 + self.dearest().saturating_mul(self.pieces().cast_signed());
        (!self.kinds.iter().all(is_sure)).then_some(each)
    }
}

impl Stock {
    /// Whether a piece fits into it at all.
    pub(super) fn holds(&self, size: u64) -> bool {
        self.rooms.iter().any(|room| *room >= size)
    }
}

/// The usable spans of a board, from where to where, in nanometres.
pub(super) fn spans(board: &Board, kerf: u64, trim: u64) -> Option<Vec<(u64, u64)>> {
    let whole = some_length(board.length_mm)?;
    let defects: Option<Vec<(u64, u64)>> = board
        .defects_mm
        .iter()
        .map(|(from, to)| length(*from).zip(length(*to)).filter(|(from, to)| from <= to))
        .collect();
    let end = whole.saturating_sub(trim);
    let mut from = trim;
    let mut spans = Vec::new();
    for (begins, ends) in order::by_key(&defects?, |defect| defect.0) {
        if begins > from {
            spans.push((from, begins.min(end)));
        }
        // The cut beside a defect takes its kerf from the defect, as far as that goes; at the board's beginning it lies on the
        // board as a whole.
        let behind_the_cut = if begins > trim { begins + kerf } else { kerf };
        if ends > from || begins > trim {
            from = from.max(ends).max(behind_the_cut);
        }
    }
    spans.push((from, end));
    spans.retain(|(from, to)| from < to);
    Some(spans)
}

fn kinds(pieces: &[Piece], kerf: u64) -> Result<Vec<Kind>, CutError> {
    let mut sizes = Vec::new();
    let mut count = 0;
    for (piece, Piece { length_mm, count: many }) in pieces.iter().enumerate() {
        sizes.push(some_length(*length_mm).ok_or(CutError::PieceLength { piece })? + kerf);
        count += u64::from(*many);
    }
    if count > MOST_PIECES {
        return Err(CutError::TooManyPieces { most: MOST_PIECES });
    }
    let mut kinds: Vec<Kind> = Vec::new();
    for (key, piece) in order::sorted(sizes.iter().map(|size| !size)) {
        let (size, many) = (!key, u64::from(pieces[piece].count));
        match kinds.last_mut().filter(|kind| kind.size == size) {
            _ if many == 0 => {}
            Some(kind) => {
                kind.count += many;
                kind.pieces.push(piece);
            }
            None => kinds.push(Kind { size, count: many, pieces: vec![piece] }),
        }
    }
    Ok(kinds)
}

fn stocks(job: &CutJob) -> Result<Vec<Stock>, CutError> {
    let (kerf, trim) = (length(job.kerf_mm).unwrap_or(0), length(job.trim_mm).unwrap_or(0));
    let pieces: u64 = job.pieces.iter().map(|piece| u64::from(piece.count)).sum();
    if job.boards.len() > MOST_BOARDS {
        return Err(CutError::TooManyBoards { most: MOST_BOARDS });
    }
    let stock = |(at, board): (usize, &Board)| {
        let defects = CutError::Defects { board: at, most: MOST_DEFECTS };
        if board.defects_mm.len() > MOST_DEFECTS {
            return Err(defects);
        }
        if some_length(board.length_mm).is_none() {
            return Err(CutError::BoardLength { board: at });
        }
        let spans = spans(board, kerf, trim).ok_or(defects)?;
        let price = price(board.price).ok_or(CutError::Price { board: at })?;
        Ok(Stock {
            rooms: spans.iter().map(|(from, to)| to - from + kerf).collect(),
            cost: if job.objective == Objective::FewestBoards { price.min(1) } else { price },
            limit: board.available.map(u64::from).filter(|available| *available < pieces),
        })
    };
    job.boards.iter().enumerate().map(stock).collect()
}
