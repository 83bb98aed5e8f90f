//! Good choices, fast: something to begin with, and what is near to it.

use super::problem::{Problem, bits};

/// Adds what gives most of what is missing for its cost, until every row has what it needs. `worth` is that of a unit
/// of each row's need. None when that leads nowhere.
pub(super) fn filled_up(problem: &Problem, from: u64, worth: &[f64]) -> Option<u64> {
    let mut chosen = from;
    loop {
        let missing: Vec<i64> = spares(problem, chosen).iter().map(|spare| (-spare).max(0)).collect();
        if missing.iter().all(|missing| *missing == 0) {
            return Some(chosen);
        }
        let mut best: Option<(usize, f64)> = None;
        for at in bits(problem.all & !chosen) {
            let gain = gain(problem, at, &missing, worth) / (1.0 + problem.costs[at] as f64);
            if gain > best.map_or(0.0, |(_, most)| most) {
                best = Some((at, gain));
            }
        }
        chosen |= 1 << best?.0;
    }
}

/// What a change gives of what is missing, in worth; what it takes from rows counts in full.
fn gain(problem: &Problem, change: usize, missing: &[i64], worth: &[f64]) -> f64 {
    let rows = problem.rows.iter().zip(missing).zip(worth);
    rows.map(|((row, missing), worth)| row.effects[change].min(*missing) as f64 * worth).sum()
}

/// Leaves out what is not needed, the dearest first, and exchanges one for a cheaper one, as long as that helps.
pub(super) fn polished(problem: &Problem, from: u64) -> u64 {
    let mut chosen = from;
    while let Some(better) = nearest_better(problem, chosen) {
        chosen = better;
    }
    chosen
}

/// The neighbour that saves most; none when none is good and cheaper, or as cheap with less in it.
fn nearest_better(problem: &Problem, chosen: u64) -> Option<u64> {
    let spares = spares(problem, chosen);
    let is_good = |out: usize, into: Option<usize>, other: u64| {
        let effect = |effects: &[i64]| into.map_or(0, |into| effects[into]) - effects[out];
        let mut rows = problem.rows.iter().zip(&spares);
        rows.all(|(row, spare)| spare + effect(&row.effects) >= 0) && !problem.refused.contains(&other)
    };
    let mut best: Option<(u64, u64)> = None;
    for out in bits(chosen) {
        let cheaper = bits(problem.all & !chosen).filter(|into| problem.costs[*into] < problem.costs[out]);
        for into in std::iter::once(None).chain(cheaper.map(Some)) {
            let saved = problem.costs[out] - into.map_or(0, |into| problem.costs[into]);
            let other = (chosen & !(1 << out)) | into.map_or(0, |into| 1 << into);
            if best.is_none_or(|(_, most)| saved > most) && is_good(out, into, other) {
                best = Some((other, saved));
            }
        }
    }
    best.map(|(other, _)| other)
}

/// What each row has beyond its need.
fn spares(problem: &Problem, chosen: u64) -> Vec<i64> {
    problem.rows.iter().map(|row| row.sum(chosen) - row.need).collect()
}
