//! A plan at once: the longest piece first, each into the tightest span that has room for it ("best fit decreasing").

use std::collections::BTreeMap;

use super::problem::{Filling, Pattern, Problem};

/// Spans of boards that were begun.
struct Begun {
    stock: usize,
    fillings: Vec<Filling>,
}

/// So many of each kind, out of boards of which there are so many. Where a piece fits nowhere a board of the entry
/// `opened` is begun, or if that does not hold it the one that costs least. What fits nowhere is left out.
pub(super) fn best_fit(problem: &Problem, demand: &[u64], limits: &[u64], opened: usize) -> Vec<(Pattern, u64)> {
    let mut fit = Fit { problem, limits: limits.to_vec(), begun: Vec::new(), rooms: BTreeMap::new() };
    for (at, stock) in problem.stocks.iter().enumerate() {
        let scraps = if stock.cost == 0 && stock.limit.is_some() { limits[at] } else { 0 };
        (0..scraps.min(demand.iter().sum())).for_each(|_| fit.begin(at));
    }
    for (kind, count) in demand.iter().enumerate() {
        for _ in 0..*count {
            fit.place(kind, opened);
        }
    }
    fit.patterns()
}

struct Fit<'a> {
    problem: &'a Problem,
    limits: Vec<u64>,
    begun: Vec<Begun>,
    /// Which spans of which boards have so much room.
    rooms: BTreeMap<u64, Vec<(usize, usize)>>,
}

impl Fit<'_> {
    fn begin(&mut self, stock: usize) {
        let rooms = &self.problem.stocks[stock].rooms;
        for (span, room) in rooms.iter().enumerate() {
            self.rooms.entry(*room).or_default().push((self.begun.len(), span));
        }
        self.begun.push(Begun { stock, fillings: vec![Filling::new(); rooms.len()] });
        self.limits[stock] = self.limits[stock].saturating_sub(1);
    }

    fn place(&mut self, kind: usize, opened: usize) {
        let size = self.problem.kinds[kind].size;
        if self.rooms.range(size..).next().is_none() {
            let Some(stock) = self.opening(size, opened) else { return };
            self.begin(stock);
        }
        let Some((room, spans)) = self.rooms.range_mut(size..).next() else { return };
        let room = *room;
        let Some((board, span)) = spans.pop() else { return };
        if spans.is_empty() {
            self.rooms.remove(&room);
        }
        self.rooms.entry(room - size).or_default().push((board, span));
        let filling = &mut self.begun[board].fillings[span];
        match filling.last_mut().filter(|(last, _)| *last == kind) {
            Some((_, count)) => *count += 1,
            None => filling.push((kind, 1)),
        }
    }

    fn opening(&self, size: u64, opened: usize) -> Option<usize> {
        let holds = |stock: usize| self.limits[stock] > 0 && self.problem.stocks[stock].holds(size);
        let all = 0..self.problem.stocks.len();
        let cheapest = || all.filter(|stock| holds(*stock)).min_by_key(|stock| self.problem.stocks[*stock].cost);
        if holds(opened) { Some(opened) } else { cheapest() }
    }

    /// Those alike as one, in the order in which they were begun.
    fn patterns(self) -> Vec<(Pattern, u64)> {
        let mut counts: BTreeMap<Pattern, u64> = BTreeMap::new();
        for Begun { stock, fillings } in self.begun {
            if fillings.iter().any(|filling| !filling.is_empty()) {
                *counts.entry(Pattern { stock, fillings }).or_default() += 1;
            }
        }
        counts.into_iter().collect()
    }
}
