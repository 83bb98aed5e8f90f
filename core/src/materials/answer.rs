//! How boards and sheets are cut: the answer, as plain values.

use crate::plan::record::{record, words};
use crate::plan::{Id, Money, StockKind};

/// How all of a plan is cut.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cuts {
    /// Material by material, in the order of the pieces.
    pub jobs: Vec<JobCuts>,
    /// Pieces of which it is not said what they are cut from.
    pub from_nothing: Vec<Id>,
}

record!(Cuts { jobs, from_nothing });

/// How the pieces of one material are cut.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JobCuts {
    /// The board or sheet that its first piece names.
    pub stock: Id,
    /// How it is cut.
    pub kind: StockKind,
    /// Why it cannot be, if so.
    pub fault: Option<Fault>,
    /// The entry that is wrong.
    pub wrong: Option<Id>,
    /// The most there may be of what there is too much of.
    pub most: u32,
    /// Boards or sheets, those cut alike together.
    pub ones: Vec<CutOne>,
    /// How many there are, own scrap with them.
    pub count: u32,
    /// How many are bought.
    pub bought: u32,
    /// What they cost, with tax.
    pub cost: Money,
    /// What of all of them becomes no piece, in hundredths.
    pub waste_percent: f64,
    /// Pieces for which there is not enough.
    pub missing: Vec<LeftOut>,
    /// Whether as few as possible are to be bought; else what they cost counts.
    pub by_count: bool,
    /// No way of cutting all costs less, with tax, or buys fewer.
    pub bound: Money,
    /// Whether nothing is better.
    pub is_proven: bool,
}

record!(JobCuts {
    stock,
    kind,
    fault,
    wrong,
    most,
    ones,
    count,
    bought,
    cost,
    waste_percent,
    missing,
    by_count,
    bound,
    is_proven,
});

/// Boards or sheets that are cut alike.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CutOne {
    /// The entry they are of.
    pub stock: Id,
    /// How many are cut like this.
    pub alike: u32,
    /// How long each is, in mm.
    pub length_mm: f64,
    /// How wide each is, in mm; nothing where it is not known.
    pub width_mm: f64,
    /// The pieces.
    pub pieces: Vec<PieceAt>,
    /// Where the saw goes in, in the order of the cuts.
    pub saws: Vec<Saw>,
    /// The largest piece that is left, in mm: its length, and of a sheet its width.
    pub left_length_mm: f64,
    /// Of a board, nothing.
    pub left_width_mm: f64,
}

record!(CutOne { stock, alike, length_mm, width_mm, pieces, saws, left_length_mm, left_width_mm });

/// A piece where it is cut.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PieceAt {
    /// The entry it is of.
    pub cut: Id,
    /// From the beginning, in mm.
    pub along_mm: f64,
    /// From the side, in mm.
    pub across_mm: f64,
    /// How long it is along the board or sheet, in mm.
    pub length_mm: f64,
    /// How wide across, in mm; nothing on a board.
    pub width_mm: f64,
    /// Whether its length lies across.
    pub is_turned: bool,
}

record!(PieceAt { cut, along_mm, across_mm, length_mm, width_mm, is_turned });

/// A cut.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Saw {
    /// Whether it runs across, so that what lies there shortens.
    pub is_across: bool,
    /// Where the saw goes in: from the beginning, or from the side.
    pub at_mm: f64,
    /// Where it begins, from the other edge, in mm.
    pub from_mm: f64,
    /// Where it ends, in mm.
    pub to_mm: f64,
}

record!(Saw { is_across, at_mm, from_mm, to_mm });

/// Pieces that are left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LeftOut {
    /// The entry they are of.
    pub cut: Id,
    /// How many.
    pub count: u32,
}

record!(LeftOut { cut, count });

/// Why a material cannot be cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fault {
    /// A piece has no size above 0.
    #[default]
    PieceSize,
    /// A piece is larger than all it could be cut from.
    PieceTooLarge,
    /// A board or a sheet has no size above 0.
    StockSize,
    /// Of a board, what cannot be used ends before it begins, or is in too many places.
    Flaws,
    /// It has no price, or one that cannot be.
    StockPrice,
    /// The kerf is no length.
    Kerf,
    /// What is trimmed off is no length.
    Trim,
    /// More pieces than can be looked at.
    TooManyPieces,
    /// More entries of boards or sheets than can be looked at.
    TooManyStock,
}

words!(Fault {
    PieceSize = "piece_size", PieceTooLarge = "piece_too_large", StockSize = "stock_size", Flaws = "flaws",
    StockPrice = "stock_price", Kerf = "kerf", Trim = "trim", TooManyPieces = "too_many_pieces", TooManyStock = "too_many_stock",
});
