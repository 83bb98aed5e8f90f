//! The generated plans and documents reach everything they are for: each verdict of each balance, and each problem,
//! in at least one case of a hundred.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use std::collections::BTreeMap;

use kerbstead_core::plan::{Document, Problem};
use kerbstead_core::words::ENGLISH;
use kerbstead_core::{Verdict, assess};
use kerbstead_tests::generate::{cases, documents, seeded, seeded_plans};

const CASES: usize = 3_000;
const LEAST_PERCENT: f64 = 1.0;

#[test]
fn every_verdict_of_every_balance_is_reached() {
    let mut counts = BTreeMap::new();
    for balance in ["Money", "Power", "Water", "Days", "Space", "Load", "Warmth", "Signal"] {
        for verdict in [Verdict::Unknown, Verdict::FallsShort, Verdict::Tight, Verdict::Holds] {
            counts.insert(format!("{balance} {verdict:?}"), 0);
        }
    }
    for (plan, as_of) in seeded(&cases(), 1, CASES) {
        for (balance, verdict) in assess(&plan, as_of).verdicts() {
            *counts.get_mut(&format!("{balance:?} {verdict:?}")).unwrap() += 1;
        }
    }
    check_shares(&counts);
}

/// What only a line of arithmetic can have, which no document holds; `calculations.rs` of core reaches each.
const ONLY_TYPED: [&str; 4] = ["divided_by_nothing", "no_unit", "other_unit", "units_mixed"];

/// The catalogue has a sentence for each problem, so its names are the list of all problems.
#[test]
fn every_problem_of_a_document_is_reached() {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    for line in ENGLISH.lines().filter(|line| line.starts_with("problem-")) {
        let name = line.split(" =").next().unwrap().trim_start_matches("problem-");
        counts.insert(name.replace('-', "_"), 0);
    }
    for text in seeded(&documents(), 2, CASES) {
        let problems = match Document::open(&text) {
            Ok(opened) => opened.problems,
            Err(problem) => vec![problem],
        };
        let mut kinds: Vec<String> = problems.iter().map(kind).collect();
        kinds.sort();
        kinds.dedup();
        for kind in kinds {
            *counts.entry(kind).or_default() += 1;
        }
    }
    for name in ONLY_TYPED {
        assert_eq!(counts.remove(name), Some(0), "{name} in a document");
    }
    check_shares(&counts);
}

#[test]
fn the_same_seed_gives_the_same_plans() {
    assert_eq!(seeded_plans(7, 20), seeded_plans(7, 20));
    assert_ne!(seeded_plans(7, 20), seeded_plans(8, 20));
    assert_eq!(seeded_plans(7, 20)[..5], seeded_plans(7, 5)[..]);
}

fn kind(problem: &Problem) -> String {
    serde_json::to_value(&problem.wrong).unwrap()["kind"].as_str().unwrap().to_owned()
}

/// Shown with `--nocapture`.
fn check_shares(counts: &BTreeMap<String, usize>) {
    let mut rare = Vec::new();
    for (name, count) in counts {
        let percent = *count as f64 * 100.0 / CASES as f64;
        println!("{percent:6.2} %  {name}");
        if percent < LEAST_PERCENT {
            rare.push(format!("{name}: {percent:.2} %"));
        }
    }
    assert!(rare.is_empty(), "reached in less than {LEAST_PERCENT} % of {CASES} cases: {}", rare.join(", "));
}
