//! A way of cutting as it is told.

use std::collections::BTreeMap;

use super::packing::{Begun, Node, Rect};
use super::search::Search;
use super::{CutNode, CutSheet, Place, SheetJob, SheetPlan};
use crate::materials::measure::{as_money, in_mm};

/// Square nanometres by the square metre.
const NM2_PER_M2: f64 = 1e18;

/// The best plan of a search.
pub(super) fn plan(job: &SheetJob, search: &Search) -> SheetPlan {
    let mut alike: BTreeMap<&Begun, u32> = BTreeMap::new();
    for begun in &search.best.sheets {
        *alike.entry(begun).or_default() += 1;
    }
    let mut plan = SheetPlan { is_proven: search.is_proven(), ..SheetPlan::default() };
    let (mut of_sheets, mut of_parts) = (0.0, 0.0);
    for (begun, count) in alike {
        let Some(sheet) = job.sheets.get(begun.stock) else { continue };
        of_sheets += sheet.length_mm * sheet.width_mm * f64::from(count);
        of_parts += f64::from(count) * parts_area(begun);
        plan.cost += sheet.price.times(count);
        plan.sheet_count += count;
        plan.sheets.push(told(begun, count));
    }
    let (of_sheets, of_parts) = (of_sheets / 1e6, of_parts / NM2_PER_M2);
    plan.waste_m2 = (of_sheets - of_parts).max(0.0);
    plan.waste_percent = if of_sheets > 0.0 { 100.0 * plan.waste_m2 / of_sheets } else { 0.0 };
    let mut missing: BTreeMap<usize, u32> = BTreeMap::new();
    for part in &search.best.missing {
        *missing.entry(part.entry).or_default() += 1;
    }
    plan.missing = missing.into_iter().collect();
    if plan.missing.is_empty() {
        plan.bound = as_money(search.bound, 1);
    }
    plan
}

fn parts_area(begun: &Begun) -> f64 {
    let areas = begun.nodes.iter().map(|node| if let Node::Part { rect, .. } = node { rect.area() } else { 0 });
    areas.sum::<u128>() as f64
}

fn told(begun: &Begun, alike: u32) -> CutSheet {
    let free = begun.nodes.iter().filter_map(|node| if let Node::Free(rect) = node { Some(*rect) } else { None });
    let largest = free.max_by_key(Rect::area);
    CutSheet { sheet: begun.stock, alike, nodes: in_order(begun), offcut: largest.map(place) }
}

/// The nodes in the order of the cuts: what is before a cut is done with before what is beyond it.
fn in_order(begun: &Begun) -> Vec<CutNode> {
    let mut order = Vec::new();
    let mut waiting = vec![0];
    while let Some(at) = waiting.pop() {
        order.push(at);
        if let Some(Node::Cut { first, second, .. }) = begun.nodes.get(at) {
            waiting.extend(*second);
            waiting.push(*first);
        }
    }
    let mut places = vec![0; begun.nodes.len()];
    for (place, at) in order.iter().enumerate() {
        places[*at] = place;
    }
    order.into_iter().filter_map(|at| begun.nodes.get(at).map(|node| as_told(*node, &places))).collect()
}

fn as_told(node: Node, places: &[usize]) -> CutNode {
    match node {
        Node::Free(rect) => CutNode::Offcut { place: place(rect) },
        Node::Part { entry, is_turned, rect } => CutNode::Part { part: entry, is_turned, place: place(rect) },
        Node::Cut { rect, is_across, at, first, second } => CutNode::Cut {
            place: place(rect),
            is_across,
            at_mm: in_mm(at),
            first: places[first],
            second: second.map(|second| places[second]),
        },
    }
}

fn place(rect: Rect) -> Place {
    Place {
        along_mm: in_mm(rect.along),
        across_mm: in_mm(rect.across),
        length_mm: in_mm(rect.length),
        width_mm: in_mm(rect.width),
    }
}
