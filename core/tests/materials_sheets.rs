//! Sheets cut to parts: published counts, and what must hold of every plan.
#![allow(clippy::unwrap_used, clippy::float_cmp, reason = "a test stops at what it did not expect")]

use kerbstead_core::draws::Chance;
use kerbstead_core::materials::sheets::{
    CutNode, CutSheet, Part, Place, Sheet, SheetError, SheetJob, SheetPlan, SheetSearch,
};
use kerbstead_core::plan::Money;

const CLOSE: f64 = 1e-5;

fn part(length_mm: f64, width_mm: f64, count: u32) -> Part {
    Part { length_mm, width_mm, count, keeps_grain: false }
}

fn sheet(length_mm: f64, width_mm: f64, price: &str) -> Sheet {
    Sheet { length_mm, width_mm, price: price.parse().unwrap(), available: None }
}

fn end(job: &SheetJob) -> SheetPlan {
    let plan = SheetSearch::new(job).unwrap().end();
    assert_sound(job, &plan);
    plan
}

/// The rectangle of a node is just what the cuts above it leave, so that all of it can be cut from edge to edge and
/// nothing overlaps: each cut takes its kerf, and what is before and beyond it is the rest.
fn assert_cuttable(cut: &CutSheet, at: usize, place: Place, kerf: f64, made: &mut [u32], job: &SheetJob) {
    let close = |a: f64, b: f64| (a - b).abs() < CLOSE;
    let same = |a: Place, b: Place| {
        close(a.along_mm, b.along_mm)
            && close(a.across_mm, b.across_mm)
            && close(a.length_mm, b.length_mm)
            && close(a.width_mm, b.width_mm)
    };
    match cut.nodes[at] {
        CutNode::Offcut { place: found } => assert!(same(found, place)),
        CutNode::Part { part, is_turned, place: found } => {
            let wanted = job.parts[part];
            let (length, width) = (wanted.length_mm, wanted.width_mm);
            let size = if is_turned { (width, length) } else { (length, width) };
            assert!(same(found, place) && close(found.length_mm, size.0) && close(found.width_mm, size.1));
            assert!(!(is_turned && wanted.keeps_grain));
            made[part] += cut.alike;
        }
        CutNode::Cut { place: found, is_across, at_mm, first, second } => {
            assert!(same(found, place) && first > at && second.is_none_or(|second| second > first));
            let (from, size) =
                if is_across { (place.along_mm, place.length_mm) } else { (place.across_mm, place.width_mm) };
            assert!(at_mm > from && at_mm < from + size);
            let piece = |from: f64, size: f64| {
                if is_across {
                    Place { along_mm: from, length_mm: size, ..place }
                } else {
                    Place { across_mm: from, width_mm: size, ..place }
                }
            };
            assert_cuttable(cut, first, piece(from, at_mm - from), kerf, made, job);
            let left = from + size - at_mm - kerf;
            assert_eq!(second.is_some(), left > CLOSE, "{left}");
            if let Some(second) = second {
                assert_cuttable(cut, second, piece(at_mm + kerf, left), kerf, made, job);
            }
        }
    }
}

fn assert_sound(job: &SheetJob, plan: &SheetPlan) {
    let mut made = vec![0; job.parts.len()];
    let mut used = vec![0; job.sheets.len()];
    for cut in &plan.sheets {
        let sheet = job.sheets[cut.sheet];
        let (length_mm, width_mm) = (sheet.length_mm - 2.0 * job.trim_mm, sheet.width_mm - 2.0 * job.trim_mm);
        let whole = Place { along_mm: job.trim_mm, across_mm: job.trim_mm, length_mm, width_mm };
        assert_cuttable(cut, 0, whole, job.kerf_mm, &mut made, job);
        used[cut.sheet] += cut.alike;
    }
    for (part, count) in &plan.missing {
        made[*part] += count;
    }
    assert!(made.iter().zip(&job.parts).all(|(made, part)| *made == part.count), "{job:?}");
    assert!(
        used.iter().zip(&job.sheets).all(|(used, sheet)| sheet.available.is_none_or(|available| *used <= available))
    );
    let cost: Money = used.iter().zip(&job.sheets).map(|(used, sheet)| sheet.price.times(*used)).sum();
    assert_eq!((plan.cost, plan.sheet_count), (cost, used.iter().sum()));
    assert!(
        plan.bound <= plan.cost && plan.is_proven == (plan.bound == plan.cost && plan.missing.is_empty()),
        "{plan:?}"
    );
    assert!((0.0..=100.0).contains(&plan.waste_percent));
}

/// Source: CP-SAT, proven with parts cut anyhow; both can be cut from edge to edge.
#[test]
fn published_counts_of_sheets_are_found_and_proven() {
    let job = |parts: Vec<Part>| SheetJob { parts, sheets: vec![sheet(2440.0, 1220.0, "1")], ..SheetJob::default() };
    for (parts, sheets) in [(part(1200.0, 600.0, 4), 1), (part(1300.0, 700.0, 3), 3)] {
        let plan = end(&job(vec![parts]));
        assert_eq!((plan.sheet_count, plan.is_proven), (sheets, true), "{plan:?}");
    }
}

#[test]
fn the_kerf_decides_where_parts_fit_just_so() {
    let job = |kerf_mm: f64| SheetJob {
        parts: vec![part(1220.0, 610.0, 4)],
        sheets: vec![sheet(2440.0, 1220.0, "1")],
        kerf_mm,
        ..SheetJob::default()
    };
    assert_eq!(end(&job(0.0)).sheet_count, 1);
    assert!(end(&job(0.0)).sheets[0].offcut.is_none());
    let with_kerf = end(&job(3.0));
    // Turned, three strips of 610 mm and their kerfs go on a sheet.
    assert_eq!((with_kerf.sheet_count, with_kerf.is_proven), (2, true));
    // With 3 mm more each way two strips and two parts of each just fit.
    let larger = SheetJob { sheets: vec![sheet(2443.0, 1223.0, "1")], ..job(3.0) };
    assert_eq!(end(&larger).sheet_count, 1);
    let trimmed = SheetJob { trim_mm: 5.0, sheets: vec![sheet(2453.0, 1233.0, "1")], ..job(3.0) };
    assert_eq!(end(&trimmed).sheet_count, 1);
}

#[test]
fn grain_keeps_a_part_from_being_turned() {
    let job = |keeps_grain: bool| SheetJob {
        parts: vec![Part { keeps_grain, ..part(600.0, 1200.0, 4) }],
        sheets: vec![sheet(2440.0, 1220.0, "1")],
        ..SheetJob::default()
    };
    assert_eq!(end(&job(true)).sheet_count, 1);
    let narrow = |keeps_grain: bool| SheetJob { sheets: vec![sheet(1200.0, 600.0, "1")], ..job(keeps_grain) };
    assert_eq!(end(&narrow(false)).sheet_count, 4);
    assert_eq!(SheetSearch::new(&narrow(true)).err(), Some(SheetError::PartTooLarge { part: 0 }));
}

#[test]
fn own_scrap_goes_first_and_the_cheaper_size_where_it_does() {
    let scrap = Sheet { available: Some(1), ..sheet(1300.0, 700.0, "0") };
    let job = |count: u32| SheetJob {
        parts: vec![part(1200.0, 600.0, count)],
        sheets: vec![sheet(2440.0, 1220.0, "30"), scrap, sheet(1220.0, 610.0, "9")],
        kerf_mm: 3.0,
        ..SheetJob::default()
    };
    assert_eq!(end(&job(1)).cost, Money::ZERO);
    assert_eq!(end(&job(2)).cost.to_string(), "9");
    assert_eq!(end(&job(5)).cost.to_string(), "30");
    assert_eq!(end(&job(6)).cost.to_string(), "39");
    let only_scrap = SheetJob { sheets: vec![scrap], ..job(3) };
    assert_eq!(end(&only_scrap).missing, [(0, 2)]);
}

#[test]
fn what_is_wrong_is_named() {
    let good = SheetJob {
        parts: vec![part(500.0, 300.0, 2)],
        sheets: vec![sheet(2440.0, 1220.0, "1")],
        ..SheetJob::default()
    };
    let wrong = |job: SheetJob| SheetSearch::new(&job).err().unwrap();
    for side in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let parts = vec![part(500.0, 300.0, 2), part(500.0, side, 1)];
        assert_eq!(wrong(SheetJob { parts, ..good.clone() }), SheetError::PartSize { part: 1 });
        let sheets = vec![sheet(side, 1220.0, "1")];
        assert_eq!(wrong(SheetJob { sheets, ..good.clone() }), SheetError::SheetSize { sheet: 0 });
    }
    let large = vec![part(500.0, 300.0, 2), part(2400.0, 1221.0, 1)];
    assert_eq!(wrong(SheetJob { parts: large, ..good.clone() }), SheetError::PartTooLarge { part: 1 });
    assert_eq!(wrong(SheetJob { sheets: vec![], ..good.clone() }), SheetError::PartTooLarge { part: 0 });
    assert_eq!(
        wrong(SheetJob { sheets: vec![sheet(2440.0, 1220.0, "-1")], ..good.clone() }),
        SheetError::Price { sheet: 0 }
    );
    assert_eq!(wrong(SheetJob { kerf_mm: f64::NAN, ..good.clone() }), SheetError::Kerf);
    assert_eq!(wrong(SheetJob { trim_mm: -1.0, ..good.clone() }), SheetError::Trim);
    assert_eq!(wrong(SheetJob { trim_mm: 700.0, ..good.clone() }), SheetError::PartTooLarge { part: 0 });
    let many = vec![part(50.0, 30.0, u32::MAX), part(50.0, 30.0, 2)];
    assert_eq!(wrong(SheetJob { parts: many, ..good.clone() }), SheetError::TooManyParts { most: 1_000 });
    assert_eq!(wrong(SheetJob { sheets: vec![good.sheets[0]; 51], ..good }), SheetError::TooManySheets { most: 50 });
    assert!(end(&SheetJob::default()).is_proven);
}

#[test]
fn every_plan_of_a_hundred_jobs_by_chance_can_be_cut() {
    let mut chance = Chance::new(21);
    let mut draw = |low: u32, high: u32| low + chance.below(high - low + 1);
    let mut proven = 0;
    for _ in 0..100 {
        let sizes = draw(1, 3);
        let parts = (0..draw(1, 6)).map(|_| Part {
            keeps_grain: draw(0, 2) == 0,
            ..part(f64::from(draw(80, 1_200)), f64::from(draw(80, 600)), draw(0, 5))
        });
        let parts: Vec<Part> = parts.collect();
        let mut sheets = vec![sheet(2_500.0, 1_250.0, "30")];
        for _ in 1..sizes {
            let few = (draw(0, 1) == 0).then(|| draw(0, 2));
            let price = Money::whole(i64::from(draw(0, 20)));
            sheets.push(Sheet {
                length_mm: f64::from(draw(400, 3_000)),
                width_mm: f64::from(draw(300, 1_500)),
                price,
                available: few,
            });
        }
        let job = SheetJob { parts, sheets, kerf_mm: f64::from(draw(0, 4)), trim_mm: f64::from(draw(0, 10)) };
        proven += u32::from(end(&job).is_proven);
    }
    assert!(proven > 25, "{proven} proven");
}

#[test]
fn a_thousand_parts_end_and_nothing_gets_worse_on_the_way() {
    let mut chance = Chance::new(22);
    let parts = (0..100).map(|_| part(f64::from(100 + chance.below(500)), f64::from(80 + chance.below(300)), 10));
    let job = SheetJob {
        parts: parts.collect(),
        sheets: vec![sheet(2_440.0, 1_220.0, "30"), sheet(3_050.0, 1_525.0, "48")],
        kerf_mm: 3.2,
        trim_mm: 5.0,
    };
    let mut search = SheetSearch::new(&job).unwrap();
    let (mut cost, mut steps) = (search.best().cost, 0);
    while search.step() < 1.0 {
        let best = search.best().cost;
        assert!(best <= cost);
        (cost, steps) = (best, steps + 1);
        assert!(steps < 10_000);
    }
    let plan = search.best();
    assert_sound(&job, &plan);
    assert!(plan.cost <= plan.bound + plan.bound.percent(12.into()), "{} against {}", plan.cost, plan.bound);
    assert_eq!(plan, SheetSearch::new(&job).unwrap().end());
}
