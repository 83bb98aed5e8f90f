//! Cutting the boards and sheets of a plan in steps, for the worker.

use rust_decimal::Decimal;
use serde_json::Value;

use super::answer::{CutOne, Cuts, JobCuts, LeftOut, PieceAt, Saw};
use super::cut_jobs::{Job, Search, Wrong, is_by_count, jobs, price};
use super::cutting::{CutBoard, CutPlan};
use super::sheets::{CutNode, CutSheet, SheetPlan};
use crate::money::price_parts;
use crate::plan::{Id, Money, Plain, Plan, Stock};
use crate::task::Task;

/// All searches of a plan, one after the other.
///
/// ```
/// use kerbstead_core::materials::{Cuts, CutsTask};
/// use kerbstead_core::plan::{Cut, Money, Plain, Plan, Stock};
/// use kerbstead_core::task::Task;
/// let price = Some(Money::whole(4));
/// let stock = vec![Stock { id: 1, length_mm: Some(2400.0), stock_price: price, ..Stock::default() }];
/// let cuts = vec![Cut { id: 2, cut_from: Some(1), length_mm: Some(700.0), pieces: 4, ..Cut::default() }];
/// let mut task = CutsTask::new(&Plan { stock, cuts, ..Plan::default() });
/// while task.step() < 1.0 {}
/// let found = Cuts::from_plain(&task.answer()).unwrap();
/// assert_eq!((found.jobs[0].bought, found.jobs[0].is_proven), (2, true));
/// ```
pub struct CutsTask {
    runs: Vec<Run>,
    from_nothing: Vec<Id>,
    by_count: bool,
    /// Sales tax in percent, whether marked prices have it in them, and the digits a till rounds to.
    tax: (Decimal, bool, u32),
    /// How many are done.
    done: usize,
    /// How many were done when it was told last.
    told: Option<usize>,
}

/// A job with its search, or what is wrong with it.
struct Run {
    first: Id,
    kind: crate::plan::StockKind,
    stocks: Vec<Stock>,
    cuts: Vec<Id>,
    search: Result<Search, Wrong>,
}

impl CutsTask {
    /// Reads what is to be cut.
    pub fn new(plan: &Plan) -> Self {
        let (jobs, from_nothing) = jobs(plan);
        let run = |job: &Job| Run {
            first: job.first,
            kind: job.kind,
            stocks: job.stocks.iter().map(|stock| (*stock).clone()).collect(),
            cuts: (0..job.cuts.len()).filter_map(|at| job.cut(at)).collect(),
            search: job.search(plan),
        };
        let runs = jobs.iter().map(run).collect();
        let tax = (plan.purse.tax_percent, plan.purse.prices_include_tax, plan.minor_digits());
        Self { runs, from_nothing, by_count: is_by_count(plan), tax, done: 0, told: None }
    }

    /// As it is now.
    pub fn cuts(&self) -> Cuts {
        let jobs = self.runs.iter().map(|run| self.with_tax(run.told(self.by_count))).collect();
        Cuts { jobs, from_nothing: self.from_nothing.clone() }
    }

    /// With prices as at the till. The search goes by marked ones, taxed alike, so that what is cheapest is so with tax too.
    fn with_tax(&self, job: JobCuts) -> JobCuts {
        let (percent, is_included, digits) = self.tax;
        let till = |marked: Money| price_parts(marked, 1, percent, is_included, digits).total;
        let bound = if job.by_count { job.bound } else { till(job.bound) };
        JobCuts { cost: till(job.cost), bound, ..job }
    }
}

impl Task for CutsTask {
    fn step(&mut self) -> f64 {
        let count = self.runs.len();
        let Some(run) = self.runs.get_mut(self.done) else { return 1.0 };
        let share = match &mut run.search {
            Ok(Search::Boards(search)) => search.step(),
            Ok(Search::Sheets(search)) => search.step(),
            Err(_) => 1.0,
        };
        if share < 1.0 {
            return ((self.done as f64 + share) / count as f64).min(0.999);
        }
        self.done += 1;
        self.done as f64 / count as f64
    }

    fn so_far(&mut self) -> Option<Value> {
        (self.told != Some(self.done)).then(|| {
            self.told = Some(self.done);
            self.answer()
        })
    }

    fn answer(&self) -> Value {
        self.cuts().to_plain()
    }
}

impl Run {
    fn told(&self, by_count: bool) -> JobCuts {
        let job = match &self.search {
            Ok(Search::Boards(search)) => self.of_boards(&search.best()),
            Ok(Search::Sheets(search)) => self.of_sheets(&search.best()),
            Err((fault, wrong, most)) => {
                JobCuts { fault: Some(*fault), wrong: *wrong, most: *most, ..JobCuts::default() }
            }
        };
        JobCuts { stock: self.first, kind: self.kind, by_count, ..job }
    }

    fn of_boards(&self, plan: &CutPlan) -> JobCuts {
        let missing = self.left_out(&plan.missing);
        let (bound, is_proven, waste_percent) = (plan.bound, plan.is_proven, plan.waste_percent);
        let ones = plan.boards.iter().filter_map(|board| self.board(board)).collect();
        self.counted(JobCuts { ones, waste_percent, missing, bound, is_proven, ..JobCuts::default() })
    }

    fn of_sheets(&self, plan: &SheetPlan) -> JobCuts {
        let missing = self.left_out(&plan.missing);
        let (bound, is_proven, waste_percent) = (plan.bound, plan.is_proven, plan.waste_percent);
        let ones = plan.sheets.iter().filter_map(|sheet| self.sheet(sheet)).collect();
        self.counted(JobCuts { ones, waste_percent, missing, bound, is_proven, ..JobCuts::default() })
    }

    /// With what the boards or sheets come to.
    fn counted(&self, mut job: JobCuts) -> JobCuts {
        for one in &job.ones {
            let stock = self.stocks.iter().find(|stock| stock.id == one.stock);
            let each = stock.map_or(Money::ZERO, price);
            job.cost += each.times(one.alike);
            job.count = job.count.saturating_add(one.alike);
            let is_bought = stock.is_some_and(|stock| !stock.at_hand);
            job.bought = job.bought.saturating_add(if is_bought { one.alike } else { 0 });
        }
        job
    }

    fn left_out(&self, missing: &[(usize, u32)]) -> Vec<LeftOut> {
        let left_out =
            missing.iter().filter_map(|(at, count)| Some(LeftOut { cut: *self.cuts.get(*at)?, count: *count }));
        left_out.collect()
    }

    fn one(&self, stock: usize, alike: u32) -> Option<CutOne> {
        let stock = self.stocks.get(stock)?;
        let (length_mm, width_mm) = (stock.length_mm.unwrap_or(0.0), stock.section_mm().1.unwrap_or(0.0));
        Some(CutOne { stock: stock.id, alike, length_mm, width_mm, ..CutOne::default() })
    }

    fn board(&self, board: &CutBoard) -> Option<CutOne> {
        let mut one = self.one(board.board, board.alike)?;
        one.pieces.extend(board.pieces.iter().filter_map(|placed| {
            let (cut, length_mm) = (*self.cuts.get(placed.piece)?, placed.to_mm - placed.from_mm);
            Some(PieceAt { cut, along_mm: placed.from_mm, length_mm, ..PieceAt::default() })
        }));
        let to_mm = one.width_mm;
        let saws = board.cuts_mm.iter().map(|at_mm| Saw { is_across: true, at_mm: *at_mm, from_mm: 0.0, to_mm });
        one.saws.extend(saws);
        one.left_length_mm = board.offcut_mm;
        Some(one)
    }

    fn sheet(&self, sheet: &CutSheet) -> Option<CutOne> {
        let mut one = self.one(sheet.sheet, sheet.alike)?;
        for node in &sheet.nodes {
            match node {
                CutNode::Part { part, is_turned, place } => one.pieces.push(PieceAt {
                    cut: *self.cuts.get(*part)?,
                    along_mm: place.along_mm,
                    across_mm: place.across_mm,
                    length_mm: place.length_mm,
                    width_mm: place.width_mm,
                    is_turned: *is_turned,
                }),
                CutNode::Cut { place, is_across, at_mm, .. } => {
                    let (from_mm, side_mm) =
                        if *is_across { (place.across_mm, place.width_mm) } else { (place.along_mm, place.length_mm) };
                    one.saws.push(Saw { is_across: *is_across, at_mm: *at_mm, from_mm, to_mm: from_mm + side_mm });
                }
                CutNode::Offcut { .. } => {}
            }
        }
        if let Some(left) = sheet.offcut {
            (one.left_length_mm, one.left_width_mm) = (left.length_mm, left.width_mm);
        }
        Some(one)
    }
}
