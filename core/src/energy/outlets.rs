//! What the outlets of a store let through in an hour, moment by moment where it matters.
//!
//! Most hours are far below every limit, and one comparison says so. Otherwise the hour is cut where a draw begins or ends;
//! in each part the more important are served as long as the lasting limit bears them, and nothing starts that would exceed
//! what the outlets bear for a moment beside all else that runs.

use super::draw::{Draw, Outlet, Piece};
use super::run::Limit;
use super::store::{Inverter, InverterOn, Limits, Store};
use super::{least, most};

/// A part of a draw that the outlets refuse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Refused {
    pub draw: usize,
    pub outlet_wh: f64,
    pub limit: Limit,
}

/// Takes out of the pieces, which are sorted by importance, what the outlets refuse.
pub(super) fn refuse(store: &Store, draws: &[Draw], pieces: &mut Vec<Piece>, refused: &mut Vec<Refused>) {
    for outlet in [Outlet::Ac, Outlet::Dc] {
        let limits = store.limits(outlet);
        let (peak_w, extra_w) = peaks(draws, pieces, outlet);
        if peak_w > limits.continuous_w || peak_w + extra_w > limits.surge_w {
            cut(limits, draws, outlet, pieces, refused);
        }
    }
}

/// Power if all that hangs on an outlet runs at once, and the most that one start adds to it, in W.
pub(super) fn peaks(draws: &[Draw], pieces: &[Piece], outlet: Outlet) -> (f64, f64) {
    let (mut peak_w, mut extra_w) = (0.0, 0.0);
    for draw in pieces.iter().filter_map(|piece| draws.get(piece.draw)).filter(|draw| draw.outlet == outlet) {
        peak_w += draw.power_w;
        extra_w = most(extra_w, draw.surge_w - draw.power_w);
    }
    (peak_w, extra_w)
}

fn cut(limits: Limits, draws: &[Draw], outlet: Outlet, pieces: &mut Vec<Piece>, refused: &mut Vec<Refused>) {
    let is_here = |piece: &Piece| draws.get(piece.draw).is_some_and(|draw| draw.outlet == outlet);
    let here: Vec<Piece> = pieces.iter().copied().filter(is_here).collect();
    pieces.retain(|piece| !is_here(piece));
    let mut edges: Vec<f64> = here.iter().flat_map(|piece| [piece.from, piece.to]).collect();
    edges.sort_unstable_by(f64::total_cmp);
    edges.dedup();
    let mut is_refused = vec![None; here.len()];
    for edge in edges.windows(2) {
        let &[from, to] = edge else { continue };
        let mut sum_w = 0.0;
        for (piece, was_refused) in here.iter().zip(&mut is_refused) {
            let Some(draw) = draws.get(piece.draw) else { continue };
            if piece.from >= to || piece.to <= from {
                continue;
            }
            let starts = piece.from >= from || piece.duty < 1.0;
            let limit = match () {
                // What could not start does not start later in the same piece.
                () if *was_refused == Some(Limit::Surge) => Some(Limit::Surge),
                () if sum_w + draw.power_w > limits.continuous_w => Some(Limit::Power),
                () if starts && sum_w + draw.surge_w > limits.surge_w => Some(Limit::Surge),
                () => None,
            };
            *was_refused = limit;
            if let Some(limit) = limit {
                let outlet_wh = draw.power_w * piece.duty * (to - from);
                refused.push(Refused { draw: piece.draw, outlet_wh, limit });
            } else {
                sum_w += draw.power_w;
                pieces.push(Piece { from, to, ..*piece });
            }
        }
    }
}

/// What the inverter takes beyond its standby for all that hangs on it in an hour, in Wh: its efficiency counts at the load
/// of each moment. Of draws that run at unknown moments each is laid over all that runs for certain.
pub(super) fn inverter_wh(inverter: &Inverter, draws: &[Draw], pieces: &[Piece]) -> f64 {
    let ac = || {
        pieces
            .iter()
            .filter_map(|piece| Some((piece, draws.get(piece.draw)?)))
            .filter(|(_, draw)| draw.outlet == Outlet::Ac)
    };
    if inverter.efficiency.is_flat() {
        let outlet_wh: f64 = ac().map(|(piece, draw)| draw.power_w * piece.duty * (piece.to - piece.from)).sum();
        return inverter.input_w(outlet_wh);
    }
    let mut edges: Vec<f64> = ac().flat_map(|(piece, _)| [piece.from, piece.to]).collect();
    edges.sort_unstable_by(f64::total_cmp);
    edges.dedup();
    let mut taken_wh = 0.0;
    for edge in edges.windows(2) {
        let &[from, to] = edge else { continue };
        let running = || ac().filter(|(piece, _)| piece.from < to && piece.to > from);
        let certain_w: f64 = running().filter(|(piece, _)| piece.duty >= 1.0).map(|(_, draw)| draw.power_w).sum();
        let base_w = inverter.input_w(certain_w);
        let mut taken_w = base_w;
        for (piece, draw) in running().filter(|(piece, _)| piece.duty < 1.0) {
            taken_w += piece.duty * most(inverter.input_w(certain_w + draw.power_w) - base_w, 0.0);
        }
        taken_wh += taken_w * (to - from);
    }
    taken_wh
}

/// Share of the hour in which the inverter is on.
pub(super) fn inverter_share(inverter: &Inverter, draws: &[Draw], pieces: &[Piece]) -> f64 {
    let mut ac: Vec<(f64, f64)> = pieces
        .iter()
        .filter(|piece| draws.get(piece.draw).is_some_and(|draw| draw.outlet == Outlet::Ac))
        .map(|piece| (piece.from, piece.to))
        .collect();
    match inverter.on {
        InverterOn::Always => 1.0,
        InverterOn::HoursWithDraws => f64::from(u8::from(!ac.is_empty())),
        InverterOn::WhileDrawing => {
            ac.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
            let (mut share, mut end) = (0.0, 0.0);
            for (from, to) in ac {
                share += most(to - most(from, end), 0.0);
                end = most(end, to);
            }
            least(share, 1.0)
        }
    }
}
