//! Nothing that a person typed is lost: by a reload, by damage, by a storage that is full or refuses.

use anyhow::{Context, Result, ensure};
use kerbstead_tests::browser::{Browser, Setup};
use serde_json::{Value, json};
use std::path::Path;

const CASH: &str = "Cash on the first day";

fn open_at(route: &str) -> Result<Browser> {
    let browser = Browser::start(&Setup::phone())?;
    browser.load(route)?;
    Ok(browser)
}

fn cash(browser: &Browser) -> Result<String> {
    browser.find("textbox", CASH)?.value()
}

fn type_cash(browser: &Browser, text: &str) -> Result<()> {
    browser.find("textbox", CASH)?.replace(text)
}

/// Waits until what was done is kept whole and no journal is needed.
fn wait_kept(browser: &Browser) -> Result<()> {
    let journals = "return Object.keys(localStorage).filter((name) => name.startsWith('kerbstead.journal.')).length";
    browser.wait_until("the plan to be kept", |page| Ok(page.script(journals, vec![])? == 0))
}

fn stored(browser: &Browser, name: &str) -> Result<Option<String>> {
    let text = browser.script("return localStorage.getItem(arguments[0])", vec![json!(name)])?;
    Ok(text.as_str().map(str::to_owned))
}

/// Puts a text into the storage behind the page's back and loads the page again.
fn put(browser: &Browser, name: &str, text: &str) -> Result<()> {
    browser.script("localStorage.setItem(arguments[0], arguments[1])", vec![json!(name), json!(text)])?;
    browser.load("/money")
}

fn names(browser: &Browser, start: &str) -> Result<Vec<String>> {
    let script = "return Object.keys(localStorage).filter((name) => name.startsWith(arguments[0])).sort()";
    let names = browser.script(script, vec![json!(start)])?;
    Ok(names.as_array().into_iter().flatten().filter_map(|name| name.as_str().map(str::to_owned)).collect())
}

/// A folder that the browser saves files in.
fn downloads(browser: &Browser) -> Result<tempfile::TempDir> {
    let folder = tempfile::tempdir()?;
    let behavior = json!({ "behavior": "allow", "downloadPath": folder.path() });
    browser.devtools("Browser.setDownloadBehavior", behavior)?;
    Ok(folder)
}

/// The one whole file of a folder, once it is there.
fn saved(browser: &Browser, folder: &Path) -> Result<String> {
    let file = || {
        let mut paths = std::fs::read_dir(folder).ok()?.flatten().map(|entry| entry.path());
        let path = paths.find(|path| path.extension().is_some_and(|kind| kind == "json" || kind == "txt"))?;
        std::fs::read_to_string(path).ok().filter(|text| !text.is_empty())
    };
    browser.wait_until("the file", |_| Ok(file().is_some()))?;
    file().context("the file went away")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn undo_and_redo_go_on_after_a_reload() -> Result<()> {
    let browser = open_at("/money")?;
    let at_first = cash(&browser)?;
    for text in ["501", "502"] {
        type_cash(&browser, text)?;
        browser.script("document.activeElement.blur()", vec![])?;
    }
    browser.find("button", "Undo")?.click()?;
    wait_kept(&browser)?;
    browser.reload()?;
    ensure!(cash(&browser)? == "501", "the field holds {}", cash(&browser)?);
    browser.find("button", "Redo")?.click()?;
    browser.wait_until("502", |page| Ok(cash(page)? == "502"))?;
    browser.reload()?;
    for expected in ["501", &at_first] {
        browser.find("button", "Undo")?.click()?;
        browser.wait_until(expected, |page| Ok(cash(page)? == expected))?;
    }
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_plan_that_cannot_be_read_is_set_aside_and_the_others_load() -> Result<()> {
    for damaged in ["{\"document\": {\"title\": \"Nor", "[]", "7", "{\"document\": \"gone\"}"] {
        let browser = open_at("/plans")?;
        browser.find("button", "Copy “North with the harvest”")?.click()?;
        wait_kept(&browser)?;
        let shelf: Value = serde_json::from_str(&stored(&browser, "kerbstead.shelf")?.context("no shelf")?)?;
        let open = format!("kerbstead.plan.{}", shelf["open"]);
        put(&browser, &open, damaged)?;
        browser.wait_for_text("It is not lost: it was set aside")?;
        browser.wait_for_text("North with the harvest")?;
        ensure!(stored(&browser, &open)?.is_none(), "the damaged plan is still in its place");
        browser.load("/plans")?;
        browser.check_accessible()?;
        browser.check_fits_width()?;
        let folder = downloads(&browser)?;
        browser.find("button", "Save as a file: A plan (")?.click()?;
        ensure!(saved(&browser, folder.path())? == damaged, "the file is another one");
        // A change writes over nothing that was set aside.
        browser.load("/money")?;
        type_cash(&browser, "777")?;
        wait_kept(&browser)?;
        let aside = names(&browser, "kerbstead.aside.")?;
        ensure!(aside.len() == 1 && stored(&browser, &aside[0])?.as_deref() == Some(damaged), "aside: {aside:?}");
        browser.load("/plans")?;
        browser.find("button", "Throw away: A plan (")?.click()?;
        browser.wait_for_text("What could not be read is thrown away.")?;
        browser.find_css(".notice.shown button")?.click()?;
        browser.find("button", "Throw away: A plan (").map(drop)?;
        browser.check_console()?;
    }
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_damaged_list_of_plans_is_made_again_from_the_plans() -> Result<()> {
    let browser = open_at("/plans")?;
    browser.find("button", "Copy “North with the harvest”")?.click()?;
    wait_kept(&browser)?;
    put(&browser, "kerbstead.shelf", "{\"cards\": [{\"slo")?;
    browser.wait_for_text("It is not lost: it was set aside")?;
    browser.load("/plans")?;
    browser.find("button", "Delete “North with the harvest (copy)”").map(drop)?;
    browser.find("button", "Delete “North with the harvest”").map(drop)?;
    browser.find("button", "Save as a file: The list of plans").map(drop)?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn damaged_settings_are_set_aside_and_the_usual_ones_count() -> Result<()> {
    let browser = open_at("/money")?;
    type_cash(&browser, "777")?;
    wait_kept(&browser)?;
    put(&browser, "kerbstead.settings", "us_customary")?;
    browser.wait_for_text("It is not lost: it was set aside")?;
    ensure!(cash(&browser)? == "777", "the plan is another one");
    browser.load("/plans")?;
    browser.find("button", "Save as a file: The settings").map(drop)?;
    browser.check_console()
}

/// Fills the storage to its last character.
const FILL: &str = "
    let size = 1 << 20, text = '';
    while (size >= 1) {
        try {
            localStorage.setItem('not-ours', text + 'x'.repeat(size));
            text += 'x'.repeat(size);
        } catch {
            size = Math.floor(size / 2);
        }
    }
    return text.length;";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn in_a_full_storage_the_person_is_told_and_gets_all_that_is_on_the_screen_as_a_file() -> Result<()> {
    let browser = open_at("/money")?;
    type_cash(&browser, "501")?;
    wait_kept(&browser)?;
    let filled = browser.script(FILL, vec![])?;
    ensure!(filled.as_u64() > Some(1_000_000), "the storage took {filled}");
    type_cash(&browser, "5029")?;
    browser.wait_for_text("This browser has no more room for this page.")?;
    browser.check_accessible()?;
    browser.check_fits_width()?;
    // Other plans can be opened, and what was not kept is still there when the first is opened again.
    browser.script("location.hash = '/plans'", vec![])?;
    browser.find("button", "Copy “North with the harvest”")?.click()?;
    browser.wait_for_text("North with the harvest (copy)")?;
    browser.find("button", "Open “North with the harvest”")?.click()?;
    browser.script("location.hash = '/money'", vec![])?;
    browser.wait_until("what was typed", |page| Ok(cash(page)? == "5029"))?;
    let folder = downloads(&browser)?;
    browser.find("button", "Save everything as a file")?.click()?;
    let file: Value = serde_json::from_str(&saved(&browser, folder.path())?)?;
    let titles: Vec<&Value> =
        file["plans"].as_array().context("no plans")?.iter().map(|plan| &plan["document"]["title"]).collect();
    ensure!(titles.len() == 2, "the file holds {titles:?}");
    ensure!(file["plans"][0]["document"]["purse"]["opening_cash"] == "5029", "the file is of before: {file}");
    // With room again everything is kept.
    browser.script("localStorage.removeItem('not-ours')", vec![])?;
    type_cash(&browser, "503")?;
    browser.wait_until("room", |page| Ok(!page.text()?.contains("no more room")))?;
    wait_kept(&browser)?;
    browser.reload()?;
    ensure!(cash(&browser)? == "503", "the field holds {}", cash(&browser)?);
    browser.load("/plans")?;
    browser.find("button", "Delete “North with the harvest (copy)”").map(drop)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_page_that_starts_with_a_full_storage_shows_what_was_kept() -> Result<()> {
    let browser = open_at("/money")?;
    type_cash(&browser, "501")?;
    wait_kept(&browser)?;
    browser.script(FILL, vec![])?;
    browser.reload()?;
    ensure!(cash(&browser)? == "501", "the field holds {}", cash(&browser)?);
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_browser_is_asked_once_to_keep_everything_and_its_answer_is_shown() -> Result<()> {
    let source = "window.asked = 0;
        const storage = navigator.storage ?? {};
        storage.persist = async () => { window.asked += 1; return true; };
        storage.persisted = async () => window.asked > 0;";
    let browser = Browser::start(&Setup::phone())?;
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source }))?;
    browser.load("/plans")?;
    browser.wait_for_text("has not promised to keep your plans")?;
    ensure!(browser.script("return window.asked", vec![])? == 0, "it was asked before anything was changed");
    browser.find("textbox", "Name of the plan")?.replace("Mine")?;
    browser.wait_for_text("has promised not to clear your plans")?;
    browser.find("textbox", "Name of the plan")?.replace("Mine too")?;
    wait_kept(&browser)?;
    ensure!(browser.script("return window.asked", vec![])? == 1, "it was asked again");
    browser.reload()?;
    browser.find("textbox", "Name of the plan")?.replace("Still mine")?;
    wait_kept(&browser)?;
    ensure!(browser.script("return window.asked", vec![])? == 0, "it was asked at the next visit");
    browser.check_console()
}
