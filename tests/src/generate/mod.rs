//! Plans and files made by chance, for properties that must hold for every one of them.
//!
//! All is drawn from the table of fields of core ([`field::SECTIONS`](kerbstead_core::plan::field::SECTIONS)), so
//! that a new field is generated as soon as the table has it:
//! - [`file_plans`]: plans that can be written to a file and read again as they were;
//! - [`native_plans`]: the same with numbers that no file can hold (not a number, infinite);
//! - [`cases`]: a plan and the day it is looked at, reaching every verdict of every balance;
//! - [`documents`]: texts of files, sound and broken, reaching every problem;
//! - [`edits`]: changes, possible and impossible.
//!
//! `tests/generated_shares.rs` measures that each verdict and each problem is reached in at least 1 % of cases.

mod documents;
mod edge;
mod edits;
mod numbers;
mod plans;
mod values;

use jiff::civil::Date;
use kerbstead_core::plan::{Document, Plan};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use serde_json::Value;

pub use documents::{add_unknown, documents, documents_of};
pub use edits::{Change, edits};
pub use numbers::numbers;
pub use plans::{days, plan_values};
pub use values::{Taste, value};

/// Plans that a file can hold: ids are unique and no number is infinite. Some are believable, some
/// have amounts, dates and lengths at the ends of what their types can say.
pub fn file_plans() -> impl Strategy<Value = Plan> {
    let believable = plan_values(Taste::Believable);
    let extreme = plan_values(Taste::Extreme);
    prop_oneof![8 => believable, 2 => extreme].prop_map(plan_of)
}

/// The plan that stands in a value, as a file has it.
///
/// # Panics
/// When the value is not even an object.
pub fn plan_of(value: Value) -> Plan {
    match Document::from_value(value) {
        Ok(opened) => opened.plan,
        Err(problem) => unreachable!("no plan: {problem:?}"),
    }
}

/// [`file_plans`] with some numbers replaced by those that only a program can make: not a number, infinite, the
/// smallest and the largest.
pub fn native_plans() -> impl Strategy<Value = Plan> {
    (file_plans(), prop::collection::vec((any::<prop::sample::Index>(), numbers::odd()), 1..12)).prop_map(
        |(mut plan, spoilt)| {
            let mut places = numbers(&mut plan);
            for (index, number) in spoilt {
                let at = index.index(places.len());
                *places[at] = number;
            }
            plan
        },
    )
}

/// A plan that a file can hold, and the day it is looked at. One in five is brought to the edge, where chance alone
/// seldom is.
pub fn cases() -> impl Strategy<Value = (Plan, Date)> {
    (file_plans(), days(Taste::Believable), prop::bool::weighted(0.2)).prop_map(|(mut plan, as_of, is_edge)| {
        if is_edge {
            edge::bring_to(&mut plan, as_of);
        }
        (plan, as_of)
    })
}

/// The first `count` plans that `seed` leads to: the same on every machine, so that what natively and in a browser
/// comes of them can be compared. Each is a plan that a file can hold (see [`file_plans`]).
pub fn seeded_plans(seed: u64, count: usize) -> Vec<Plan> {
    seeded(&file_plans(), seed, count)
}

/// The first `count` values of a strategy that `seed` leads to.
pub fn seeded<S: Strategy>(strategy: &S, seed: u64, count: usize) -> Vec<S::Value> {
    let mut bytes = [0_u8; 32];
    bytes[..8].copy_from_slice(&seed.to_le_bytes());
    let config = Config { failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::from_seed(RngAlgorithm::ChaCha, &bytes));
    let next = |_| match strategy.new_tree(&mut runner) {
        Ok(tree) => tree.current(),
        Err(reason) => unreachable!("no strategy here rejects what it made: {reason}"),
    };
    (0..count).map(next).collect()
}
