//! What a search over patterns settles: how many boards there are of some kind of pattern, at most or at least.

use std::collections::BTreeMap;

use super::lp::Column;
use super::problem::Pattern;

/// Sums nearer to a whole number than this are one.
const WHOLE: f64 = 1e-6;

/// Which patterns are meant.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Group {
    /// All of one entry of boards.
    Stock(usize),
    /// Those with at least so many of each of these kinds.
    Holds(Vec<(usize, u64)>),
    /// One alone.
    One(Pattern),
}

impl Group {
    pub(super) fn has(&self, column: &Column) -> bool {
        let Some(pattern) = &column.pattern else { return false };
        match self {
            Self::Stock(stock) => pattern.stock == *stock,
            Self::Holds(kinds) => kinds
                .iter()
                .all(|wanted| column.entries.iter().any(|(kind, count)| *kind == wanted.0 && *count >= wanted.1)),
            Self::One(one) => pattern == one,
        }
    }
}

/// A group of which there is no whole number of boards, with how many there are; entries of boards before kinds, kinds
/// before pairs of kinds, and those before single patterns. None when all shares are whole.
pub(super) fn fork(shares: &[(&Column, f64)], kinds: usize) -> Option<(Group, f64)> {
    let families: [fn(&Column, usize) -> Vec<Group>; 4] = [of_stock, of_kinds, of_pairs, alone];
    let mut sums: BTreeMap<Group, f64> = BTreeMap::new();
    for groups in families {
        sums.clear();
        for (column, _) in shares {
            for group in groups(column, kinds) {
                sums.insert(group, 0.0);
            }
        }
        for (group, sum) in &mut sums {
            *sum = shares.iter().filter(|(column, _)| group.has(column)).map(|(_, share)| share).sum();
        }
        let mut best: Option<(&Group, f64, f64)> = None;
        for (group, sum) in &sums {
            let part = sum - sum.floor();
            let off = part.min(1.0 - part);
            if off > WHOLE && best.is_none_or(|(.., most)| off > most) {
                best = Some((group, *sum, off));
            }
        }
        if let Some((group, sum, _)) = best {
            return Some((group.clone(), sum));
        }
    }
    None
}

fn of_stock(column: &Column, _: usize) -> Vec<Group> {
    column.pattern.iter().map(|pattern| Group::Stock(pattern.stock)).collect()
}

fn of_kinds(column: &Column, kinds: usize) -> Vec<Group> {
    let entries = column.entries.iter().filter(|(kind, _)| *kind < kinds && column.pattern.is_some());
    entries.map(|entry| Group::Holds(vec![*entry])).collect()
}

fn of_pairs(column: &Column, kinds: usize) -> Vec<Group> {
    let entries: Vec<(usize, u64)> = column.entries.iter().filter(|(kind, _)| *kind < kinds).copied().collect();
    let pair = |(at, first): (usize, &(usize, u64))| {
        let first = *first;
        entries[at + 1..].iter().map(move |second| Group::Holds(vec![first, *second])).collect::<Vec<_>>()
    };
    entries.iter().enumerate().flat_map(pair).collect()
}

fn alone(column: &Column, _: usize) -> Vec<Group> {
    column.pattern.iter().map(|pattern| Group::One(pattern.clone())).collect()
}
