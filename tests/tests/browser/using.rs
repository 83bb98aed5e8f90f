//! Using the app as a person would.

use anyhow::{Result, ensure};
use kerbstead_tests::browser::{Browser, Key, ROUTES, Setup};
use serde_json::json;

/// The amount that is missing on the worst day of the example, as its money page says it.
const MISSING_AT_FIRST: &str = "€49.00 is missing at worst";

fn open_at(route: &str) -> Result<Browser> {
    Browser::open_at(&Setup::phone(), route)
}

/// Adds an item by its name and price alone.
fn add_item(browser: &Browser, name: &str, price: &str) -> Result<()> {
    browser.load("/kit")?;
    browser.find("textbox", "What is it?")?.replace(name)?;
    browser.find("textbox", "Price of one")?.replace(price)?;
    browser.find("button", "Add")?.click()?;
    browser.wait_for_text(&format!("“{name}” is in the kit."))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn an_item_with_a_name_and_a_price_changes_the_verdict_and_is_there_after_a_reload() -> Result<()> {
    let browser = open_at("/money")?;
    browser.wait_for_text(MISSING_AT_FIRST)?;
    add_item(&browser, "Rain barrel", "120")?;
    browser.load("/money")?;
    browser.wait_for_text("€169.00 is missing at worst")?;
    browser.load("/kit")?;
    browser.reload()?;
    browser.wait_for_text("Rain barrel")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn what_was_done_can_be_undone_and_done_again() -> Result<()> {
    let browser = open_at("/kit")?;
    add_item(&browser, "Rain barrel", "120")?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("the item to be gone", |page| Ok(!page.text()?.contains("Rain barrel")))?;
    browser.find("button", "Redo")?.click()?;
    browser.wait_for_text("Rain barrel")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn half_typed_text_is_told_of_and_kept_over_a_reload() -> Result<()> {
    let browser = open_at("/in-and-out")?;
    browser.find("textbox", "Cash on the first day")?.replace("12 or so")?;
    browser.wait_for_text("An amount belongs here")?;
    browser.reload()?;
    browser.wait_for_text("An amount belongs here")?;
    let kept = browser.find("textbox", "Cash on the first day")?.value()?;
    ensure!(kept == "12 or so", "the field holds {kept:?}");
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_value_out_of_range_is_told_its_range_and_the_old_one_counts() -> Result<()> {
    let browser = open_at("/power")?;
    browser.find("textbox", "Fuse of the socket")?.replace("900")?;
    browser.wait_for_text("From 1 A to 200 A. Until then, 10 counts.")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn five_questions_may_all_be_skipped_and_give_a_first_plan() -> Result<()> {
    let browser = open_at("/start")?;
    browser.find("button", "Show me where I stand")?.click()?;
    browser.wait_for_text("values are guesses of this tool")?;
    ensure!(browser.url()?.ends_with("#/overview"), "the plan is not shown: {}", browser.url()?);
    browser.reload()?;
    browser.wait_for_text("values are guesses of this tool")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_deleted_plan_comes_back_with_undo() -> Result<()> {
    let browser = open_at("/plans")?;
    browser.find("button", "Copy “North with the harvest”")?.click()?;
    browser.wait_for_text("North with the harvest (copy)")?;
    browser.find("button", "Delete “North with the harvest (copy)”")?.click()?;
    browser.wait_for_text("“North with the harvest (copy)” is deleted.")?;
    browser.find_css(".notice button")?.click()?;
    browser.find("button", "Delete “North with the harvest (copy)”").map(drop)?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn without_storage_the_person_is_told_and_can_go_on() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    let source = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('denied'); } })";
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source }))?;
    browser.load("/kit")?;
    browser.wait_for_text("does not let the page keep anything")?;
    add_item_here(&browser)?;
    browser.wait_for_text("Rain barrel")
}

/// Adds an item on the page that is open: without storage, loading anew would begin anew.
fn add_item_here(browser: &Browser) -> Result<()> {
    browser.find("textbox", "What is it?")?.replace("Rain barrel")?;
    browser.find("button", "Add")?.click()
}

/// Numbers everything that can take the focus and is not hidden or folded away, and says how many there are.
const NUMBER_FOCUSABLE: &str = "
    const all = [...document.querySelectorAll('a[href], button, input:not([type=radio]:not(:checked)), select, summary, [tabindex=\"0\"]')];
    const seen = all.filter((e) => !e.disabled && e.checkVisibility({ visibilityProperty: true }));
    seen.forEach((e, i) => e.dataset.stop = i);
    return seen.length;";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn every_page_can_be_walked_by_the_keyboard_alone() -> Result<()> {
    let browser = Browser::start(&Setup::default())?;
    for route in ROUTES {
        browser.load(route)?;
        let count = browser.script(NUMBER_FOCUSABLE, vec![])?.as_u64().unwrap_or_default();
        let mut reached = std::collections::BTreeSet::new();
        // A date has a stop for each of its parts, so there are more presses than stops.
        for _ in 0..2 * count + 20 {
            if reached.len() as u64 == count {
                break;
            }
            browser.press(Key::Tab)?;
            let stop = browser.script("return document.activeElement?.dataset?.stop ?? null", vec![])?;
            reached.extend(stop.as_str().map(str::to_owned));
        }
        ensure!(reached.len() as u64 == count, "{route}: Tab reaches {} of {count}", reached.len());
    }
    Ok(())
}
