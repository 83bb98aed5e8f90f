//! The digest of an assessment: the same for the same, another for anything else.

use jiff::civil::date;
use kerbstead_core::plan::{Estimate, demo_plan};
use kerbstead_core::{Assessment, assess};

fn demo() -> Assessment {
    assess(&demo_plan(), date(2027, 2, 1))
}

#[test]
fn the_same_assessment_has_the_same_digest() {
    assert_eq!(demo().digest(), demo().digest());
}

#[test]
fn whatever_differs_shows_in_the_digest() {
    let digest = demo().digest();
    let mut later = demo();
    later.as_of = date(2027, 2, 2);
    let mut fuller = demo();
    fuller.power.stores[0].charge_wh[0] += 1e-9;
    let mut shorter = demo();
    shorter.money.days.pop();
    for other in [&later, &fuller, &shorter] {
        assert_ne!(other.digest(), digest);
    }
    let mut plan = demo_plan();
    plan.stays[0].drive_hours = Some(Estimate::Plain(0.1));
    assert_ne!(assess(&plan, date(2027, 2, 1)).digest(), digest);
}
