//! Data by day, contracts and uses, the work, what it lacks and where, and whether a file gets through.

mod at_risk;
mod contracts;
mod course;
mod places;
mod send;
mod uses;

use kerbstead_core::Balance;
use kerbstead_core::plan::Path;

use super::{balance_head, section};
use crate::el::{View, fragment};
use crate::parts::fields;
use crate::state::App;

/// The page.
pub fn signal() -> View {
    let app = App::here();
    fragment()
        .put(balance_head(Balance::Signal))
        .put(course::courses(app))
        .put(section(key!("signal-at-risk"), at_risk::at_risk(app)))
        .put(section(key!("signal-send"), send::send(app)))
        .put(section(key!("signal-uses"), uses::uses()))
        .put(section(key!("signal-contracts"), contracts::contracts(app)))
        .put(section(key!("signal-work"), fields(&Path::section("work"), WORK)))
        .put(section(key!("signal-places"), places::places(app)))
        .done()
}

const WORK: &[&str] = &[
    "work_hours",
    "begins_hour",
    "pay_per_hour",
    "works_with",
    "too_cold_c",
    "too_hot_c",
    "good_mbit_s",
    "weak_mbit_s",
    "weak_is_enough",
    "offline",
];
