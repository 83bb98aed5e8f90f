//! When the calculator itself breaks, everything that was entered is still there to be had.

use anyhow::{Context, Result, ensure};
use kerbstead_tests::browser::{Browser, Scheme, Setup};
use serde_json::{Value, json};

/// The smallest module with a function, `trap`, that does what a panic does.
const TRAP: &str = "
    const trap = new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array([
        0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0,
        7, 8, 1, 4, 116, 114, 97, 112, 0, 0, 10, 5, 1, 3, 0, 0, 11,
    ]))).exports.trap;";

/// The calculator asks for the year whenever a plan is changed, and lets nothing that goes wrong there stop on its way.
const BREAK_AT_NEXT_CHANGE: &str = "Date.prototype.getFullYear = trap;";

const STOPPED: &str = "The calculator has stopped";

fn break_now(browser: &Browser) -> Result<()> {
    browser.script(&format!("{TRAP} setTimeout(trap)"), vec![])?;
    browser.wait_for_text(STOPPED)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_broken_page_says_so_and_is_accessible_on_a_phone_in_both_schemes() -> Result<()> {
    for scheme in Scheme::ALL {
        let browser = Browser::open(&Setup { scheme, ..Setup::phone() })?;
        break_now(&browser)?;
        ensure!(browser.focused()? == format!("heading {STOPPED}"), "the focus is on {}", browser.focused()?);
        browser.check_accessible()?;
        browser.check_fits_width()?;
    }
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_fault_while_a_plan_is_changed_loses_nothing_that_was_kept() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    browser.load("/kit")?;
    add(&browser, "Rain barrel")?;
    browser.wait_for_text("“Rain barrel” is in the kit.")?;
    browser.script(&format!("{TRAP} {BREAK_AT_NEXT_CHANGE}"), vec![])?;
    add(&browser, "Second barrel")?;
    browser.wait_for_text(STOPPED)?;
    browser.find("button", "Reload")?.click()?;
    browser.wait_ready()?;
    browser.wait_for_text("Rain barrel")
}

fn add(browser: &Browser, name: &str) -> Result<()> {
    browser.find("textbox", "What is it?")?.replace(name)?;
    browser.find("button", "Add")?.click()
}

const STORED: &str =
    "return Object.fromEntries(Object.entries(localStorage).map(([key, text]) => [key, JSON.parse(text)]))";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn everything_that_is_kept_comes_as_one_file() -> Result<()> {
    let browser = Browser::open(&Setup::phone())?;
    let folder = browser.downloads()?;
    break_now(&browser)?;
    browser.script("localStorage.setItem('not-ours', '1')", vec![])?;
    browser.find("button", "Save everything as a file")?.click()?;
    browser.wait_until("the file", |_| Ok(saved(folder.path()).is_some()))?;
    let (name, text) = saved(folder.path()).context("the file went away")?;
    ensure!(name.starts_with("kerbstead-kept-"), "the file is called {name}");
    let mut stored = browser.script(STORED, vec![])?;
    stored.as_object_mut().map(|all| all.remove("not-ours"));
    ensure!(stored.as_object().is_some_and(|all| all.len() >= 2), "next to nothing is kept: {stored}");
    let file: Value = serde_json::from_str(&text)?;
    ensure!(file == stored, "the file is not what is kept: {file}");
    Ok(())
}

/// The one whole file of a folder, by name and content.
fn saved(folder: &std::path::Path) -> Option<(String, String)> {
    let path = std::fs::read_dir(folder)
        .ok()?
        .flatten()
        .map(|entry| entry.path())
        .find(|path| path.extension().is_some_and(|kind| kind == "json"))?;
    let text = std::fs::read_to_string(&path).ok().filter(|text| text.ends_with('}'))?;
    Some((path.file_name()?.to_string_lossy().into_owned(), text))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_calculator_that_breaks_at_its_start_offers_the_data_too() -> Result<()> {
    let browser = Browser::open(&Setup::phone())?;
    let source = json!({ "source": format!("{TRAP} {BREAK_AT_NEXT_CHANGE}") });
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", source)?;
    browser.visit("about:blank")?;
    browser.visit(&browser.address())?;
    browser.wait_for_text(STOPPED)?;
    browser.find("button", "Save everything as a file").map(drop)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn where_nothing_can_be_kept_no_file_is_promised() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    let source = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('denied'); } })";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source }))?;
    browser.load("/kit")?;
    break_now(&browser)?;
    ensure!(browser.text()?.contains("is gone"), "the page says {}", browser.text()?);
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn an_error_of_something_else_does_not_stop_the_calculator() -> Result<()> {
    let browser = Browser::open(&Setup::phone())?;
    browser.script(
        "setTimeout(() => { throw new Error('of an extension') }); Promise.reject(new TypeError('of its own'))",
        vec![],
    )?;
    browser.script_async("setTimeout(arguments[0], 50)", vec![])?;
    ensure!(!browser.text()?.contains(STOPPED), "the calculator has stopped");
    Ok(())
}
