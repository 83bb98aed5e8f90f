//! A way of cutting as it is told: which piece where on which board, and where the saw goes.

use std::collections::BTreeMap;

use super::problem::{Filling, Pattern, spans};
use super::search::Search;
use super::{CutBoard, CutJob, CutPlan, PlacedPiece};
use crate::materials::measure::{as_money, in_mm, length};

/// Which entries of pieces still want some of a kind.
type Wanting = Vec<Vec<(usize, u32)>>;

/// The best plan of a search.
pub(super) fn plan(job: &CutJob, search: &Search) -> CutPlan {
    let mut wanting = wanting(job, search);
    let mut boards: Vec<CutBoard> = Vec::new();
    for (pattern, count) in &search.best.boards {
        let mut alike: BTreeMap<Vec<Vec<usize>>, u32> = BTreeMap::new();
        for _ in 0..*count {
            *alike.entry(named(pattern, &mut wanting)).or_default() += 1;
        }
        boards.extend(alike.iter().map(|(named, alike)| cut(job, pattern.stock, named, *alike)));
    }
    let boards = crate::order::by_key(&boards, |board| board.board as u64);
    let missing = wanting.into_iter().flatten().filter(|(_, count)| *count > 0).collect();
    told(job, search, boards, missing)
}

fn wanting(job: &CutJob, search: &Search) -> Wanting {
    let entries =
        |pieces: &Vec<usize>| pieces.iter().filter_map(|at| Some((*at, job.pieces.get(*at)?.count))).collect();
    search.problem.kinds.iter().map(|kind| entries(&kind.pieces)).collect()
}

/// The entries of the pieces that a board gives, span by span, the longest first.
fn named(pattern: &Pattern, wanting: &mut Wanting) -> Vec<Vec<usize>> {
    let mut name = |filling: &Filling| {
        let mut pieces = Vec::new();
        for (kind, count) in filling {
            for _ in 0..*count {
                let entry = wanting.get_mut(*kind).and_then(|entries| entries.iter_mut().find(|(_, count)| *count > 0));
                if let Some((piece, count)) = entry {
                    *count -= 1;
                    pieces.push(*piece);
                }
            }
        }
        pieces
    };
    pattern.fillings.iter().map(&mut name).collect()
}

fn cut(job: &CutJob, board: usize, named: &[Vec<usize>], alike: u32) -> CutBoard {
    let (kerf, trim) = (length(job.kerf_mm).unwrap_or(0), length(job.trim_mm).unwrap_or(0));
    let whole_mm = job.boards.get(board).map(|board| board.length_mm);
    let spans = job.boards.get(board).and_then(|board| spans(board, kerf, trim)).unwrap_or_default();
    let mut whole = CutBoard { board, alike, pieces: Vec::new(), cuts_mm: Vec::new(), offcut_mm: 0.0 };
    let (mut offcut, mut saws) = (0, Vec::new());
    let last = whole_mm.and_then(length).unwrap_or(0).saturating_sub(trim);
    for ((from, to), pieces) in spans.into_iter().zip(named) {
        // What lies behind a defect is cut off from it first, unless the cut before it has done that.
        let parts = from.saturating_sub(kerf);
        if from > trim && !pieces.is_empty() && saws.last().is_none_or(|saw| *saw < parts) {
            saws.push(parts);
        }
        let mut at = from;
        for piece in pieces {
            let end = at + job.pieces.get(*piece).and_then(|piece| length(piece.length_mm)).unwrap_or(0);
            whole.pieces.push(PlacedPiece { piece: *piece, from_mm: in_mm(at), to_mm: in_mm(end) });
            if end < last {
                saws.push(end);
            }
            at = end + kerf;
        }
        offcut = offcut.max(to.saturating_sub(at));
    }
    whole.cuts_mm = saws.into_iter().map(in_mm).collect();
    whole.offcut_mm = in_mm(offcut);
    whole
}

fn told(job: &CutJob, search: &Search, boards: Vec<CutBoard>, missing: Vec<(usize, u32)>) -> CutPlan {
    let mut plan = CutPlan { missing, is_proven: search.is_proven(), ..CutPlan::default() };
    let (mut of_boards, mut of_pieces) = (0, 0);
    for cut in &boards {
        let Some(board) = job.boards.get(cut.board) else { continue };
        let pieces = cut.pieces.iter().filter_map(|placed| length(job.pieces.get(placed.piece)?.length_mm));
        of_pieces += pieces.sum::<u64>() * u64::from(cut.alike);
        of_boards += length(board.length_mm).unwrap_or(0) * u64::from(cut.alike);
        plan.cost += board.price.times(cut.alike);
        plan.board_count += cut.alike;
        plan.bought_count += if board.price.decimal().is_zero() { 0 } else { cut.alike };
    }
    let waste = of_boards.saturating_sub(of_pieces);
    plan.waste_mm = in_mm(waste);
    plan.waste_percent = if of_boards > 0 { 100.0 * waste as f64 / of_boards as f64 } else { 0.0 };
    if plan.missing.is_empty() {
        plan.bound = as_money(search.bound, search.problem.unit(job));
    }
    CutPlan { boards, ..plan }
}
