//! Sheets cut to parts, edge to edge: every cut goes from one edge of what lies on the saw to the other (guillotine
//! cuts). A good plan by rules and by chance from a fixed seed, beside what nothing can cost less than. Apart from the
//! plan.
//!
//! Nothing is called proven but what costs no more than that bound. Lengths count in nanometres and prices in
//! ten-thousandths, as for [`cutting`](super::cutting). What is supported: several sizes with prices, of which there are
//! always enough or so many; own scrap (price 0, so many); a kerf; edges trimmed off; parts whose grain runs along the
//! sheet's length and that may not be turned. What is not: defects, and shapes other than rectangles.
//!
//! ```
//! use kerbstead_core::materials::sheets::{Part, Sheet, SheetJob, SheetSearch};
//! let sheet = Sheet { length_mm: 2440.0, width_mm: 1220.0, price: "31".parse().unwrap(), available: None };
//! let part = Part { length_mm: 1200.0, width_mm: 600.0, count: 4, keeps_grain: false };
//! let job = SheetJob { parts: vec![part], sheets: vec![sheet], kerf_mm: 3.0, trim_mm: 0.0 };
//! let plan = SheetSearch::new(&job).unwrap().end();
//! assert_eq!((plan.sheet_count, plan.is_proven), (1, true));
//! ```

mod bound;
mod layout;
mod packing;
mod problem;
mod search;

use serde::Serialize;

use super::measure::as_money;
use crate::plan::Money;
use problem::Problem;
use search::Search;

/// Parts of one size that are wanted.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Part {
    /// Along the grain where it has one, above 0 and to 100 m.
    pub length_mm: f64,
    /// Across.
    pub width_mm: f64,
    /// How many.
    pub count: u32,
    /// Whether its length must lie along the sheet's, as the grain does. Otherwise it may be turned.
    pub keeps_grain: bool,
}

/// Sheets of one size that can be had, or that are there.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sheet {
    /// Along its grain.
    pub length_mm: f64,
    /// Across.
    pub width_mm: f64,
    /// What each costs, to a million; 0 for own scrap.
    pub price: Money,
    /// How many there are; none where there are always enough.
    pub available: Option<u32>,
}

/// Parts, and sheets that they can be cut from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SheetJob {
    /// What is wanted, 1,000 parts at most.
    pub parts: Vec<Part>,
    /// What they can be cut from, 50 entries at most.
    pub sheets: Vec<Sheet>,
    /// What a cut takes away, in mm.
    pub kerf_mm: f64,
    /// What is cut off along each edge of every sheet before anything else, its kerf included, in mm.
    pub trim_mm: f64,
}

/// What is wrong with a job; places begin with 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum SheetError {
    /// A side of this entry of parts is no length above 0.
    PartSize {
        /// Its place.
        part: usize,
    },
    /// This entry of parts is larger than every sheet, as it may lie.
    PartTooLarge {
        /// Its place, the first of such.
        part: usize,
    },
    /// A side of this entry of sheets is no length above 0.
    SheetSize {
        /// Its place.
        sheet: usize,
    },
    /// Its price is below 0 or above a million.
    Price {
        /// Its place.
        sheet: usize,
    },
    /// The kerf is no length.
    Kerf,
    /// What is trimmed off is no length.
    Trim,
    /// More parts than can be looked at.
    TooManyParts {
        /// How many can be.
        most: u32,
    },
    /// More entries of sheets than can be looked at.
    TooManySheets {
        /// How many can be.
        most: usize,
    },
}

/// A rectangle on a sheet, from the corner where its length and its width begin.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Place {
    /// From the sheet's beginning, along its length.
    pub along_mm: f64,
    /// From its side, across.
    pub across_mm: f64,
    /// How long it is along the sheet.
    pub length_mm: f64,
    /// How wide across.
    pub width_mm: f64,
}

/// What becomes of a rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum CutNode {
    /// It is a part.
    Part {
        /// Which entry.
        part: usize,
        /// Whether its length lies across the sheet.
        is_turned: bool,
        /// Where it is.
        place: Place,
    },
    /// It is left over.
    Offcut {
        /// Where it is.
        place: Place,
    },
    /// It is cut in two.
    Cut {
        /// Where it is.
        place: Place,
        /// Whether the cut runs across the sheet, so that it shortens; otherwise it runs along.
        is_across: bool,
        /// Where the saw goes in, from the sheet's beginning or side; it takes the kerf beyond that.
        at_mm: f64,
        /// What is before the cut, by its place in the list.
        first: usize,
        /// What is beyond the kerf, if that leaves anything.
        second: Option<usize>,
    },
}

/// Sheets that are cut alike.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CutSheet {
    /// Which entry of sheets they are of.
    pub sheet: usize,
    /// How many are cut like this.
    pub alike: u32,
    /// What becomes of one, without what is trimmed off, as a tree of which the first is the root. Its cuts, in the order
    /// in which they stand here, can all be made from edge to edge.
    pub nodes: Vec<CutNode>,
    /// The largest rectangle that is left.
    pub offcut: Option<Place>,
}

/// How all is cut.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SheetPlan {
    /// The sheets.
    pub sheets: Vec<CutSheet>,
    /// What they cost.
    pub cost: Money,
    /// How many they are, own scrap with them.
    pub sheet_count: u32,
    /// What of all sheets becomes no part, in m².
    pub waste_m2: f64,
    /// The same in hundredths of the sheets' area.
    pub waste_percent: f64,
    /// Parts for which there are not enough sheets: which entry, and how many.
    pub missing: Vec<(usize, u32)>,
    /// No way of cutting all costs less, by areas and long sides; nothing where parts are missing.
    pub bound: Money,
    /// Whether the plan costs just that and nothing is missing. Otherwise there may be a cheaper one.
    pub is_proven: bool,
}

/// A search for a good way to cut a job. The same job gives the same plan, whatever the steps.
pub struct SheetSearch {
    job: SheetJob,
    search: Search,
}

impl SheetSearch {
    /// Begins with a plan.
    ///
    /// # Errors
    /// What is wrong with the job.
    pub fn new(job: &SheetJob) -> Result<Self, SheetError> {
        Ok(Self { search: Search::new(Problem::new(job)?), job: job.clone() })
    }

    /// Goes on for a few milliseconds at most; gives the share that is done, 1 when all is.
    pub fn step(&mut self) -> f64 {
        self.search.step()
    }

    /// The best plan so far.
    pub fn best(&self) -> SheetPlan {
        layout::plan(&self.job, &self.search)
    }

    /// No way of cutting all costs less.
    pub fn bound(&self) -> Money {
        as_money(self.search.bound, 1)
    }

    /// Goes on to the end.
    pub fn end(mut self) -> SheetPlan {
        while self.step() < 1.0 {}
        self.best()
    }
}
