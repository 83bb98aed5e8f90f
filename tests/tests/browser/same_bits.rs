//! The same plans give the same assessments natively and in the browser, to the bit.

use anyhow::{Result, ensure};
use jiff::civil::date;
use kerbstead_core::assess;
use kerbstead_tests::browser::{Browser, Setup};
use kerbstead_tests::generate::seeded_plans;
use serde_json::{Value, json};

/// Digests of a batch of plans, by the bundle itself.
const DIGESTS: &str = "
    const [plans, day, done] = arguments;
    import(new URL('kerbstead.js', document.baseURI).href)
        .then((kerbstead) => done(plans.map((plan) => kerbstead.assessment_digest(plan, day))))
        .catch((error) => done(String(error)));";

const SEED: u64 = 20_270_301;
const COUNT: usize = 1_000;
const BATCH: usize = 50;

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_thousand_plans_are_assessed_alike_natively_and_in_the_browser() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    let as_of = date(2027, 3, 1);
    for (batch, plans) in seeded_plans(SEED, COUNT).chunks(BATCH).enumerate() {
        let files = plans.iter().map(serde_json::to_value).collect::<Result<Vec<Value>, _>>()?;
        let here = plans.iter().map(|plan| json!(format!("{:016x}", assess(plan, as_of).digest())));
        let there = browser.script_async(DIGESTS, vec![Value::Array(files), json!("2027-03-01")])?;
        let here = Value::Array(here.collect());
        ensure!(here == there, "batch {batch} differs: natively {here}, in the browser {there}");
    }
    Ok(())
}
