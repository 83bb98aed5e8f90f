//! The least cost with shares of boards, over every pattern there is, without listing them: the simplex method among
//! some patterns, and for each entry of boards the most valuable filling at the prices that come of it, which joins them
//! if it is worth more than the board (column generation; Gilmore and Gomory, "A linear programming approach to the
//! cutting-stock problem", 1961 and 1963, from memory).

use super::knapsack::{Item, Knapsack, by_density};
use super::lp::{Column, Lp, Row, SURPLUS};
use super::problem::{Filling, Pattern, Problem};
use super::proof::{Worths, whole};

/// A filling joins where it is worth more than its board by this part of the largest cost (one in 2^30).
const GAIN: i128 = 1 << 12;
/// Pivots in a step, and pivots and rounds at most for each row.
const PIVOTS: usize = 24;
const MOST_PIVOTS: usize = 300;

pub(super) struct Master {
    pub(super) lp: Lp,
    pub(super) demand: Vec<u64>,
    pub(super) limits: Vec<u64>,
    /// Worths that give the best bound so far, and that bound in parts.
    pub(super) worths: Worths,
    pub(super) bound: i128,
    /// The entry of boards that comes next; none while there are pivots to make.
    next: Option<usize>,
    items: Vec<Item>,
    trial: Worths,
    has_grown: bool,
    pivots: usize,
    pub(super) is_done: bool,
}

/// The row of an entry's limit, where it has one.
pub(super) fn limit_row(problem: &Problem, stock: usize) -> Option<usize> {
    let before = |stocks: &[super::problem::Stock]| stocks.iter().filter(|stock| stock.limit.is_some()).count();
    problem.stocks[stock].limit?;
    Some(problem.kinds.len() + before(&problem.stocks[..stock]))
}

/// A pattern as a column.
pub(super) fn column(problem: &Problem, pattern: Pattern) -> Column {
    let mut entries = pattern.totals();
    entries.extend(limit_row(problem, pattern.stock).map(|row| (row, 1)));
    Column { cost: problem.stocks[pattern.stock].cost, entries, pattern: Some(pattern) }
}

impl Master {
    /// So many of each kind out of so many boards, with some patterns to begin with.
    pub(super) fn new(problem: &Problem, demand: &[u64], limits: &[u64], known: &[Pattern]) -> Self {
        let mut rows: Vec<Row> = demand.iter().map(|count| Row { goal: count.cast_signed(), is_least: true }).collect();
        let limited = problem.stocks.iter().zip(limits).filter(|(stock, _)| stock.limit.is_some());
        rows.extend(limited.map(|(_, limit)| Row { goal: limit.cast_signed(), is_least: false }));
        let mut columns = Vec::new();
        let mut basics = Vec::new();
        for (kind, count) in demand.iter().enumerate() {
            basics.push(if *count > 0 { columns.len() } else { SURPLUS + kind });
            if *count > 0 {
                columns.push(first(problem, kind, *count));
            }
        }
        basics.extend((demand.len()..rows.len()).map(|row| SURPLUS + row));
        let known = known.iter().map(|pattern| pattern.within(demand));
        let known = known.filter(|pattern| pattern.fillings.iter().any(|filling| !filling.is_empty()));
        columns.extend(known.map(|pattern| column(problem, pattern)));
        Self {
            lp: Lp::new(rows, columns, basics),
            demand: demand.to_vec(),
            limits: limits.to_vec(),
            worths: Worths::default(),
            bound: -1,
            next: None,
            items: Vec::new(),
            trial: Worths::default(),
            has_grown: false,
            pivots: 0,
            is_done: false,
        }
    }

    /// Makes a few pivots, or finds the most valuable filling of one entry of boards. `most` are the boards of each
    /// entry that anything better can have.
    pub(super) fn step(&mut self, problem: &Problem, knapsack: &mut Knapsack, most: &[u64]) {
        match self.next {
            None => self.pivot(problem),
            Some(stock) if stock < problem.stocks.len() => self.fill(problem, knapsack, stock),
            Some(_) => self.end_round(most),
        }
    }

    fn pivot(&mut self, problem: &Problem) {
        for _ in 0..PIVOTS {
            self.pivots += 1;
            if !self.lp.lower() || self.pivots > MOST_PIVOTS * self.lp.rows.len() {
                self.begin_round(problem);
                return;
            }
        }
    }

    fn begin_round(&mut self, problem: &Problem) {
        self.trial = Worths::new(problem, &self.lp.prices);
        let kinds = problem.kinds.iter().zip(&self.demand).zip(&self.trial.kinds).enumerate();
        let items = kinds.map(|(kind, ((of, most), value))| Item { kind, size: of.size, value: *value, most: *most });
        self.items = by_density(&items.filter(|item| item.most > 0 && item.value > 0).collect::<Vec<_>>());
        self.next = Some(0);
        self.has_grown = false;
    }

    fn fill(&mut self, problem: &Problem, knapsack: &mut Knapsack, stock: usize) {
        self.next = Some(stock + 1);
        if self.limits[stock] == 0 {
            return;
        }
        let cost = self.trial.cost(problem, stock);
        let rent =
            limit_row(problem, stock).and_then(|row| self.lp.prices.get(row)).map_or(0.0, |price| -price.min(0.0));
        let wanted = cost + i128::from(whole(rent * self.trial.parts as f64));
        let rooms = &problem.stocks[stock].rooms;
        let above = if rooms.len() == 1 { u64::try_from(wanted).unwrap_or(0) } else { 0 };
        let mut value = 0;
        let mut fillings: Vec<Filling> = Vec::new();
        let mut last = None;
        for room in rooms {
            let packed = match last.take() {
                Some((known, packed)) if known == *room => packed,
                _ => knapsack.most(&self.items, *room, above),
            };
            value += i128::from(packed.value);
            fillings.push(packed.filling.clone().unwrap_or_default());
            last = Some((*room, packed));
        }
        self.trial.excess[stock] = u64::try_from((value - cost).max(0)).unwrap_or(u64::MAX);
        if value > wanted + GAIN && fillings.iter().any(|filling| !filling.is_empty()) {
            let pattern = Pattern { stock, fillings };
            if !self.lp.columns.iter().any(|column| column.pattern.as_ref() == Some(&pattern)) {
                self.lp.push(column(problem, pattern));
                self.has_grown = true;
            }
        }
    }

    fn end_round(&mut self, most: &[u64]) {
        let bound = self.trial.bound(&self.demand, most);
        if bound > self.bound {
            self.bound = bound;
            std::mem::swap(&mut self.worths, &mut self.trial);
        }
        self.next = None;
        self.is_done = !self.has_grown || self.pivots > MOST_PIVOTS * self.lp.rows.len();
    }

    /// The patterns of which there is some, with how much.
    pub(super) fn shares(&self) -> Vec<(Pattern, f64)> {
        let shares = self.lp.shares();
        shares.filter_map(|(column, value)| Some((column.pattern.clone()?, value))).collect()
    }
}

/// As many of a kind as one board gives where that is cheapest; a missing piece where no entry always has enough boards.
fn first(problem: &Problem, kind: usize, wanted: u64) -> Column {
    let size = problem.kinds[kind].size;
    let mut best: Option<(u128, Pattern)> = None;
    for (at, stock) in problem.stocks.iter().enumerate().filter(|(_, stock)| stock.limit.is_none() && stock.holds(size))
    {
        let mut left = wanted;
        let mut fill = |room: &u64| {
            let count = left.min(room / size);
            left -= count;
            if count > 0 { vec![(kind, count)] } else { Vec::new() }
        };
        let fillings: Vec<Filling> = stock.rooms.iter().map(&mut fill).collect();
        let each = u128::from(stock.cost.unsigned_abs()) * 1_000_000 / u128::from((wanted - left).max(1));
        if best.as_ref().is_none_or(|(least, _)| each < *least) {
            best = Some((each, Pattern { stock: at, fillings }));
        }
    }
    match best {
        Some((_, pattern)) => column(problem, pattern),
        None => Column { cost: problem.missing.unwrap_or(0), entries: vec![(kind, 1)], pattern: None },
    }
}
