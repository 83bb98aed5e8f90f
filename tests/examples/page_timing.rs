//! How long the page takes in a browser, at the machine's speed and slowed as a cheap phone is:
//! `cargo xtask bench`.

use anyhow::{Context, Result};
use kerbstead_tests::browser::{Browser, ROUTES, Setup};

/// How many times each thing is timed; the middle one counts.
const TIMES: usize = 7;

/// How many times slower a cheap phone is taken to be.
const PHONE: u32 = 4;

/// A thing to time: what it is called, and how to get its milliseconds from a browser.
struct Timing {
    name: &'static str,
    measure: fn(&Browser) -> Result<f64>,
}

/// Everything that is timed. A new timing is added here.
const TIMINGS: [Timing; 1] = [Timing { name: "start page, from request to ready", measure: start_page }];

fn main() -> Result<()> {
    for slower in [1, PHONE] {
        let browser = Browser::start(&Setup { width: 360, height: 740, ..Setup::default() })?;
        browser.slow_processor(slower)?;
        for timing in &TIMINGS {
            let mut times = (0..TIMES).map(|_| (timing.measure)(&browser)).collect::<Result<Vec<_>>>()?;
            times.sort_by(f64::total_cmp);
            println!(
                "{}, processor {slower} times slower: {:.0} ms ({:.0} to {:.0})",
                timing.name,
                times[TIMES / 2],
                times[0],
                times[TIMES - 1]
            );
        }
    }
    Ok(())
}

/// The page's own clock, from the start of its navigation to the moment it marked itself ready.
fn start_page(browser: &Browser) -> Result<f64> {
    let record = "new MutationObserver((_, self) => {
        if (!document.documentElement?.hasAttribute('data-ready')) return;
        window.readyAfter = performance.now();
        self.disconnect();
    }).observe(document, { subtree: true, childList: true, attributes: true })";
    let script = serde_json::json!({ "source": record });
    let added = browser.devtools("Page.addScriptToEvaluateOnNewDocument", script)?;
    browser.load(ROUTES[0])?;
    browser.devtools("Page.removeScriptToEvaluateOnNewDocument", added)?;
    browser.script("return window.readyAfter", vec![])?.as_f64().context("the page never became ready")
}
