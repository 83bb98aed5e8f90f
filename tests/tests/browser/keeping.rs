//! Nothing that a person typed is lost: by a reload, by damage, by a storage that is full or refuses.

use anyhow::{Context, Result, ensure};
use kerbstead_tests::browser::{Browser, Setup};
use kerbstead_tests::kills::kill_tabs;
use serde_json::{Value, json};
use std::path::Path;

const CASH: &str = "Cash on the first day";

fn open_at(route: &str) -> Result<Browser> {
    Browser::open_at(&Setup::phone(), route)
}

fn cash(browser: &Browser) -> Result<String> {
    browser.find("textbox", CASH)?.value()
}

fn type_cash(browser: &Browser, text: &str) -> Result<()> {
    browser.find("textbox", CASH)?.replace(text)
}

/// Waits until what was done is kept whole and no journal is needed.
fn wait_kept(browser: &Browser) -> Result<()> {
    // What needs no journal, such as another plan being opened, is kept a moment after.
    browser.script_async("setTimeout(arguments[0], 200)", vec![])?;
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
    browser.load("/in-and-out")
}

fn names(browser: &Browser, start: &str) -> Result<Vec<String>> {
    let script = "return Object.keys(localStorage).filter((name) => name.startsWith(arguments[0])).sort()";
    let names = browser.script(script, vec![json!(start)])?;
    Ok(names.as_array().into_iter().flatten().filter_map(|name| name.as_str().map(str::to_owned)).collect())
}

/// The one whole file of a folder, once it is there.
pub fn saved(browser: &Browser, folder: &Path) -> Result<String> {
    let file = || {
        let mut paths = std::fs::read_dir(folder).ok()?.flatten().map(|entry| entry.path());
        let path = paths.find(|path| {
            path.extension().is_some_and(|kind| ["json", "txt", "csv"].iter().any(|known| kind == *known))
        })?;
        std::fs::read_to_string(path).ok().filter(|text| !text.is_empty())
    };
    browser.wait_until("the file", |_| Ok(file().is_some()))?;
    file().context("the file went away")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn undo_and_redo_go_on_after_a_reload() -> Result<()> {
    let browser = open_at("/in-and-out")?;
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
        let folder = browser.downloads()?;
        browser.find("button", "Save as a file: A plan (")?.click()?;
        ensure!(saved(&browser, folder.path())? == damaged, "the file is another one");
        // A change writes over nothing that was set aside.
        browser.load("/in-and-out")?;
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
    let browser = open_at("/in-and-out")?;
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
    let size = 1 << 20, text = localStorage.getItem('not-ours') ?? '';
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
    let browser = open_at("/in-and-out")?;
    type_cash(&browser, "501")?;
    wait_kept(&browser)?;
    let filled = browser.script(FILL, vec![])?;
    ensure!(filled.as_u64() > Some(1_000_000), "the storage took {filled}");
    // Earlier versions make room; after that there is none.
    type_cash(&browser, "50211")?;
    browser.wait_until("room", |page| Ok(names(page, "kerbstead.versions.")?.is_empty()))?;
    wait_kept(&browser)?;
    browser.script(FILL, vec![])?;
    type_cash(&browser, "502911")?;
    browser.wait_for_text("This browser has no more room for this page.")?;
    browser.check_accessible()?;
    browser.check_fits_width()?;
    // Other plans can be opened, and what was not kept is still there when the first is opened again.
    browser.script("location.hash = '/plans'", vec![])?;
    browser.find("button", "Copy “North with the harvest”")?.click()?;
    browser.wait_for_text("North with the harvest (copy)")?;
    browser.find("button", "Open “North with the harvest”")?.click()?;
    browser.script("location.hash = '/in-and-out'", vec![])?;
    browser.wait_until("what was typed", |page| Ok(cash(page)? == "502911"))?;
    let folder = browser.downloads()?;
    browser.find("button", "Save everything as a file")?.click()?;
    let file: Value = serde_json::from_str(&saved(&browser, folder.path())?)?;
    let titles: Vec<&Value> =
        file["plans"].as_array().context("no plans")?.iter().map(|plan| &plan["document"]["title"]).collect();
    ensure!(titles.len() == 2, "the file holds {titles:?}");
    ensure!(file["plans"][0]["document"]["purse"]["opening_cash"] == "502911", "the file is of before: {file}");
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
    let browser = open_at("/in-and-out")?;
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

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn nothing_that_was_typed_is_lost_when_the_tab_is_killed() -> Result<()> {
    let kills = kill_tabs(10, 0x5EED, true)?;
    ensure!(kills.tabs == 10 && kills.keys > 10, "next to nothing was typed: {kills:?}");
    ensure!(kills.lost == 0, "lost: {kills:?}");
    Ok(())
}

/// A clock that can be put forward, by minutes.
const CLOCK: &str = "
    const real = Date.now.bind(Date);
    Date.now = () => real() + 60_000 * (window.minutes ?? 0);";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn earlier_versions_are_made_while_one_works_and_lead_back() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": CLOCK }))?;
    browser.load("/in-and-out")?;
    for (minutes, text) in [(0, "501"), (6, "502"), (12, "503"), (20, "504")] {
        browser.script("window.minutes = arguments[0]", vec![json!(minutes)])?;
        type_cash(&browser, text)?;
        wait_kept(&browser)?;
    }
    browser.script("location.hash = '/plans'", vec![])?;
    browser.wait_for_text("Earlier versions")?;
    let back = browser.names("button")?.into_iter().filter(|name| name.starts_with("Go back to it")).count();
    ensure!(back == 3, "there are {back} versions");
    browser.wait_for_text("One thing was different.")?;
    browser.check_accessible()?;
    browser.check_fits_width()?;
    browser.find("button", "Go back to ")?.click()?;
    browser.wait_for_text("The plan is as it was on")?;
    browser.script("location.hash = '/in-and-out'", vec![])?;
    browser.wait_until("503", |page| Ok(cash(page)? == "503"))?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("504", |page| Ok(cash(page)? == "504"))?;
    browser.reload()?;
    browser.load("/plans")?;
    browser.find("button", "Put it beside: ")?.click()?;
    browser.load("/in-and-out")?;
    ensure!(cash(&browser)? == "503", "the field holds {}", cash(&browser)?);
    browser.check_console()
}

/// Lets a file fall onto the page.
const DROP: &str = "
    const data = new DataTransfer();
    data.items.add(new File([arguments[0]], 'backup.json', { type: 'application/json' }));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));";

fn drop_file(browser: &Browser, text: &str) -> Result<()> {
    browser.script(DROP, vec![json!(text)]).map(drop)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_backup_brings_everything_back_on_a_device_that_has_nothing() -> Result<()> {
    let browser = open_at("/in-and-out")?;
    type_cash(&browser, "12 or so")?;
    browser.load("/plans")?;
    browser.find("textbox", "Name of the plan")?.replace("Mine")?;
    browser.find("radio", "US customary units")?.click()?;
    browser.find("button", "Add the example again")?.click()?;
    wait_kept(&browser)?;
    browser.load("/plans")?;
    let folder = browser.downloads()?;
    browser.find("button", "Save it with earlier versions")?.click()?;
    let file = saved(&browser, folder.path())?;
    browser.script("localStorage.clear()", vec![])?;
    browser.load("/plans")?;
    ensure!(!browser.text()?.contains("Mine"), "the plan is still there");
    drop_file(&browser, &file)?;
    browser.wait_for_text("What is in the file")?;
    browser.wait_for_text("Not here yet.")?;
    browser.wait_until("the focus", |page| Ok(page.focused()? == "heading What is in the file"))?;
    browser.wait_for_text("Here already, the same.")?;
    browser.check_accessible()?;
    browser.check_fits_width()?;
    browser.find("button", "Do so")?.click()?;
    browser.wait_for_text("One plan was taken over.")?;
    browser.wait_until("the units", |page| page.find("radio", "US customary units")?.is_chosen())?;
    browser.find("button", "Open “Mine”")?.click()?;
    browser.load("/in-and-out")?;
    ensure!(cash(&browser)? == "12 or so", "the field holds {}", cash(&browser)?);
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_plan_of_a_file_replaces_the_one_here_and_can_be_taken_back() -> Result<()> {
    let browser = open_at("/in-and-out")?;
    let at_first = cash(&browser)?;
    browser.load("/plans")?;
    let folder = browser.downloads()?;
    browser.find("button", "Save as a file: “North with the harvest”")?.click()?;
    let mut file: Value = serde_json::from_str(&saved(&browser, folder.path())?)?;
    file["purse"]["opening_cash"] = json!("1234");
    file["from_later"] = json!({ "unknown": true });
    let changed = folder.path().join("changed.json");
    std::fs::write(&changed, file.to_string())?;
    browser.find_css("#restore-file")?.type_keys(changed.display().to_string())?;
    browser.wait_for_text("Here already; one thing is different.")?;
    browser.find_css("#restore-0")?.choose("Replace the one here")?;
    browser.find("button", "Do so")?.click()?;
    browser.wait_for_text("One plan was taken over.")?;
    wait_kept(&browser)?;
    browser.load("/in-and-out")?;
    ensure!(cash(&browser)? == "1234", "the field holds {}", cash(&browser)?);
    let plans = names(&browser, "kerbstead.plan.")?;
    let record = stored(&browser, &plans[0])?.unwrap_or_default();
    ensure!(record.contains("from_later"), "what is unknown is gone");
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("the plan of before", |page| Ok(cash(page)? == at_first))?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn files_that_are_no_plans_are_refused_in_words() -> Result<()> {
    let browser = open_at("/kit")?;
    let deep = format!("{{\"kit\":{}", "[".repeat(200_000));
    for text in ["", "nonsense", "{\"title\":", "[1, 2]", "{\"something\": \"else\"}", &deep] {
        browser.script("document.querySelector('.notice.shown .quiet')?.click()", vec![])?;
        drop_file(&browser, text)?;
        browser.wait_for_text("This is not a plan file, or not all of it.")?;
    }
    drop_file(&browser, &format!("{{\"title\": \"{}\"}}", "x".repeat(5_000_001)))?;
    browser.wait_for_text("This file is too large")?;
    drop_file(
        &browser,
        r#"{ "__proto__": { "polluted": 1 }, "title": "Strange <b>name</b>", "kit": [[[]], 7, null] }"#,
    )?;
    browser.wait_for_text("Strange <b>name</b>")?;
    browser.find("button", "Do so")?.click()?;
    browser.wait_for_text("One plan was taken over.")?;
    browser.find("button", "Open “Strange <b>name</b>”")?.click()?;
    ensure!(browser.script("return ({}).polluted ?? null", vec![])?.is_null(), "the page was changed");
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn what_another_tab_changes_is_taken_over_and_nothing_is_written_over() -> Result<()> {
    let browser = open_at("/in-and-out")?;
    type_cash(&browser, "501")?;
    wait_kept(&browser)?;
    browser.open_tab()?;
    browser.load("/in-and-out")?;
    type_cash(&browser, "502")?;
    wait_kept(&browser)?;
    browser.turn_to_tab(0)?;
    browser.wait_until("502", |page| Ok(cash(page)? == "502"))?;
    browser.wait_for_text("was changed in another tab")?;
    browser.find("textbox", "Keep untouched")?.replace("33")?;
    wait_kept(&browser)?;
    browser.turn_to_tab(1)?;
    browser.wait_until("33", |page| Ok(page.find("textbox", "Keep untouched")?.value()? == "33"))?;
    ensure!(cash(&browser)? == "502", "the field holds {}", cash(&browser)?);
    browser.check_console()
}

/// Keeps the page from hearing of other tabs, as when both write in the same moment.
const DEAF: &str = "addEventListener('storage', (event) => event.stopImmediatePropagation(), true);";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn two_tabs_that_write_at_once_come_to_one_plan_with_both_changes() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": DEAF }))?;
    browser.load("/in-and-out")?;
    type_cash(&browser, "501")?;
    wait_kept(&browser)?;
    browser.open_tab()?;
    browser.load("/in-and-out")?;
    type_cash(&browser, "502")?;
    browser.find("textbox", "Keep untouched")?.replace("33")?;
    wait_kept(&browser)?;
    // The first tab has heard of nothing, and writes another amount and a name of its own.
    browser.turn_to_tab(0)?;
    ensure!(cash(&browser)? == "501", "the first tab was not deaf: {}", cash(&browser)?);
    type_cash(&browser, "503")?;
    browser
        .wait_for_text("“Cash on the first day” was changed in two tabs at once: to 503, which counts, and to 502.")?;
    wait_kept(&browser)?;
    browser.reload()?;
    ensure!(cash(&browser)? == "503", "the field holds {}", cash(&browser)?);
    let floor = browser.find("textbox", "Keep untouched")?.value()?;
    ensure!(floor == "33", "what the other tab changed is lost: {floor}");
    browser.load("/plans")?;
    browser.wait_for_text("Earlier versions")?;
    browser.find("button", "Go back to ").map(drop)
}
