//! The pieces of a plan as jobs: what goes together, and what the engines make of it.

use super::answer::Fault;
use super::cutting::{Board, CutError, CutJob, CutSearch, Objective, Piece};
use super::sheets::{Part, Sheet, SheetError, SheetJob, SheetSearch};
use crate::plan::{Cut, CutFor, Id, Money, Plan, Stock, StockKind};

/// The pieces of one material, and what they can be cut from.
pub(super) struct Job<'a> {
    pub(super) kind: StockKind,
    pub(super) first: Id,
    pub(super) stocks: Vec<&'a Stock>,
    pub(super) cuts: Vec<&'a Cut>,
}

/// A search of either kind.
pub(super) enum Search {
    Boards(Box<CutSearch>),
    Sheets(Box<SheetSearch>),
}

/// What is wrong: why, with which entry, and the most there may be.
pub(super) type Wrong = (Fault, Option<Id>, u32);

/// The jobs in the order of the pieces, and the pieces of which it is not said what they are cut from.
pub(super) fn jobs(plan: &Plan) -> (Vec<Job<'_>>, Vec<Id>) {
    let (mut jobs, mut from_nothing): (Vec<Job>, Vec<Id>) = (Vec::new(), Vec::new());
    for cut in &plan.cuts {
        let named = cut.cut_from.and_then(|id| plan.stock.iter().find(|stock| stock.id == id));
        let Some(named) = named else {
            from_nothing.push(cut.id);
            continue;
        };
        if let Some(job) = jobs.iter_mut().find(|job| job.stocks.iter().any(|stock| stock.id == named.id)) {
            job.cuts.push(cut);
            continue;
        }
        let stocks = plan.stock.iter().filter(|stock| goes_with(named, stock)).collect();
        jobs.push(Job { kind: named.stock_kind, first: named.id, stocks, cuts: vec![cut] });
    }
    (jobs, from_nothing)
}

/// Whether pieces for one can be cut from the other.
fn goes_with(named: &Stock, other: &Stock) -> bool {
    let ((thick, width), (other_thick, other_width)) = (named.section_mm(), other.section_mm());
    named.stock_kind == other.stock_kind
        && named.material == other.material
        && thick == other_thick
        && (named.stock_kind == StockKind::Sheet || width == other_width)
}

/// How many there are: of scrap one, unless it is said.
fn available(stock: &Stock) -> Option<u32> {
    stock.how_many.or(stock.at_hand.then_some(1))
}

impl Job<'_> {
    /// Begins to look for a way of cutting.
    pub(super) fn search(&self, plan: &Plan) -> Result<Search, Wrong> {
        if let Some(stock) = self.stocks.iter().find(|stock| !stock.at_hand && stock.stock_price.is_none()) {
            return Err((Fault::StockPrice, Some(stock.id), 0));
        }
        match self.kind {
            StockKind::Board => self.boards(plan),
            StockKind::Sheet => self.sheets(plan),
        }
    }

    fn boards(&self, plan: &Plan) -> Result<Search, Wrong> {
        let boards = self.stocks.iter().map(|stock| Board {
            length_mm: stock.length_mm.unwrap_or(0.0),
            price: price(stock),
            available: available(stock),
            defects_mm: flaws_mm(plan, stock.id),
        });
        let pieces = self.cuts.iter().map(|cut| Piece { length_mm: cut.length_mm.unwrap_or(0.0), count: cut.pieces });
        let job = CutJob {
            pieces: pieces.collect(),
            boards: boards.collect(),
            kerf_mm: plan.cutting.kerf_mm(),
            trim_mm: plan.cutting.trim_mm.unwrap_or(0.0),
            objective: if is_by_count(plan) { Objective::FewestBoards } else { Objective::Cheapest },
        };
        let search = CutSearch::new(&job).map_err(|error| self.of_boards(error))?;
        Ok(Search::Boards(Box::new(search)))
    }

    fn of_boards(&self, error: CutError) -> Wrong {
        match error {
            CutError::PieceLength { piece } => (Fault::PieceSize, self.cut(piece), 0),
            CutError::PieceTooLong { piece } => (Fault::PieceTooLarge, self.cut(piece), 0),
            CutError::BoardLength { board } => (Fault::StockSize, self.stock(board), 0),
            CutError::Defects { board, most } => (Fault::Flaws, self.stock(board), whole(most as u64)),
            CutError::Price { board } => (Fault::StockPrice, self.stock(board), 0),
            CutError::Kerf => (Fault::Kerf, None, 0),
            CutError::Trim => (Fault::Trim, None, 0),
            CutError::TooManyPieces { most } => (Fault::TooManyPieces, None, whole(most)),
            CutError::TooManyBoards { most } => (Fault::TooManyStock, None, whole(most as u64)),
        }
    }

    fn sheets(&self, plan: &Plan) -> Result<Search, Wrong> {
        let by_count = is_by_count(plan);
        let sheets = self.stocks.iter().map(|stock| Sheet {
            length_mm: stock.length_mm.unwrap_or(0.0),
            width_mm: stock.section_mm().1.unwrap_or(0.0),
            // Each that is bought counts one, where these are to be few.
            price: if by_count && !price(stock).decimal().is_zero() { Money::whole(1) } else { price(stock) },
            available: available(stock),
        });
        let parts = self.cuts.iter().map(|cut| Part {
            length_mm: cut.length_mm.unwrap_or(0.0),
            width_mm: cut.width_mm.unwrap_or(0.0),
            count: cut.pieces,
            keeps_grain: cut.keeps_grain,
        });
        let job = SheetJob {
            parts: parts.collect(),
            sheets: sheets.collect(),
            kerf_mm: plan.cutting.kerf_mm(),
            trim_mm: plan.cutting.trim_mm.unwrap_or(0.0),
        };
        let search = SheetSearch::new(&job).map_err(|error| self.of_sheets(error))?;
        Ok(Search::Sheets(Box::new(search)))
    }

    fn of_sheets(&self, error: SheetError) -> Wrong {
        match error {
            SheetError::PartSize { part } => (Fault::PieceSize, self.cut(part), 0),
            SheetError::PartTooLarge { part } => (Fault::PieceTooLarge, self.cut(part), 0),
            SheetError::SheetSize { sheet } => (Fault::StockSize, self.stock(sheet), 0),
            SheetError::Price { sheet } => (Fault::StockPrice, self.stock(sheet), 0),
            SheetError::Kerf => (Fault::Kerf, None, 0),
            SheetError::Trim => (Fault::Trim, None, 0),
            SheetError::TooManyParts { most } => (Fault::TooManyPieces, None, most),
            SheetError::TooManySheets { most } => (Fault::TooManyStock, None, whole(most as u64)),
        }
    }

    pub(super) fn cut(&self, at: usize) -> Option<Id> {
        self.cuts.get(at).map(|cut| cut.id)
    }

    fn stock(&self, at: usize) -> Option<Id> {
        self.stocks.get(at).map(|stock| stock.id)
    }
}

/// What of a board cannot be used, from where to where. One of which it is not said how far it goes is left out; an end before
/// its beginning is the engine's to refuse.
pub fn flaws_mm(plan: &Plan, stock: Id) -> Vec<(f64, f64)> {
    let flaws = plan.flaws.iter().filter(|flaw| flaw.flawed == Some(stock));
    flaws.filter_map(|flaw| Some((flaw.flaw_from_mm?, flaw.flaw_to_mm?))).collect()
}

/// What one costs: nothing where it is at hand.
pub(super) fn price(stock: &Stock) -> Money {
    if stock.at_hand { Money::ZERO } else { stock.stock_price.unwrap_or(Money::ZERO) }
}

pub(super) fn is_by_count(plan: &Plan) -> bool {
    plan.cutting.cut_for == Some(CutFor::Fewest)
}

fn whole(most: u64) -> u32 {
    u32::try_from(most).unwrap_or(u32::MAX)
}
