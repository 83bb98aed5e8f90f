//! Getting the calculator to run, or saying why it does not.

use anyhow::Result;
use kerbstead_tests::browser::{Browser, Setup};

/// Opens the start page under a path and checks that it came up without a word of trouble.
fn comes_up_quietly(folder: &'static str) -> Result<()> {
    let browser = Browser::open(&Setup { folder, ..Setup::default() })?;
    browser.check_console()?;
    browser.check_requests()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_runs_at_the_root_of_a_host() -> Result<()> {
    comes_up_quietly("/")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_runs_under_a_path_of_a_host() -> Result<()> {
    comes_up_quietly("/some/where/")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_loading_text_goes_when_the_calculator_runs() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.wait_until("the end of the loading text", |page| Ok(!page.text()?.contains("is loading")))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_browser_without_webassembly_is_told_what_to_do() -> Result<()> {
    let browser = Browser::start(&Setup::default())?;
    before_every_page(&browser, "delete globalThis.WebAssembly")?;
    browser.visit(&browser.address())?;
    browser.wait_for_text("it has no WebAssembly")?;
    browser.wait_for_text("up-to-date browser")?;
    browser.check_accessible()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_part_that_cannot_be_fetched_is_named() -> Result<()> {
    let browser = Browser::start(&Setup::default())?;
    browser.devtools("Network.enable", serde_json::json!({}))?;
    browser.devtools("Network.setBlockedURLs", serde_json::json!({ "urls": ["*.wasm"] }))?;
    browser.visit(&browser.address())?;
    browser.wait_for_text("could not be fetched")?;
    browser.find("button", "Reload").map(drop)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn without_javascript_the_page_says_so() -> Result<()> {
    let browser = Browser::start(&Setup::default())?;
    browser.devtools("Emulation.setScriptExecutionDisabled", serde_json::json!({ "value": true }))?;
    browser.visit(&browser.address())?;
    browser.find("heading", "Kerbstead")?;
    browser.wait_for_text("JavaScript is switched off")
}

fn before_every_page(browser: &Browser, script: &str) -> Result<()> {
    let source = serde_json::json!({ "source": script });
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", source).map(drop)
}
