//! The money page: what is free today, and each day in the drawing.

use anyhow::{Result, ensure};
use kerbstead_tests::browser::{Browser, Setup};

fn open() -> Result<Browser> {
    Browser::open_at(&Setup::phone(), "/money")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn what_is_free_today_stands_there_and_an_amount_is_answered_at_once() -> Result<()> {
    let browser = open()?;
    browser.wait_for_text("Nothing is free today: on May 10")?;
    browser.load("/in-and-out")?;
    browser.find("textbox", "Cash on the first day")?.replace("1500")?;
    browser.load("/money")?;
    browser.wait_for_text("is free today")?;
    let price = browser.find("textbox", "It costs")?;
    price.replace("2 x 10")?;
    browser.wait_for_text("Yes: ")?;
    price.replace("3000")?;
    browser.wait_for_text("Not today: ")?;
    price.replace("999999")?;
    browser.wait_for_text("no later day of the plan bears it")?;
    price.replace("-5")?;
    browser.wait_for_text("Not less than nothing.")?;
    price.replace("123456789012345678901234567890")?;
    browser.wait_for_text("At most")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn days_are_looked_at_by_a_tap_or_one_after_the_other() -> Result<()> {
    let browser = open()?;
    browser.find("button", "Lowest day")?.click()?;
    browser.wait_for_text("in the morning, ")?;
    let day = "return document.querySelector('.day h3')?.textContent ?? ''";
    let lowest = browser.script(day, vec![])?;
    ensure!(lowest.as_str().is_some_and(|day| day.contains("May 10")), "{lowest}");
    browser.find("button", "Later")?.click()?;
    browser.wait_until("a later day", |page| Ok(page.script(day, vec![])? != lowest))?;
    // A tap on the left edge of the drawing picks the first day, or a mark beside it.
    let tap = "const box = document.querySelector('.plot svg').getBoundingClientRect();
        const at = { clientX: box.x + box.width * 0.15, clientY: box.y + 20, bubbles: true };
        document.querySelector('.plot svg').dispatchEvent(new MouseEvent('click', at))";
    browser.script(tap, vec![])?;
    browser.wait_until("a day of March", |page| {
        Ok(page.script(day, vec![])?.as_str().is_some_and(|day| day.contains("Mar")))
    })?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_usual_cost_is_added_with_one_tap_and_undone() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/in-and-out")?;
    browser.script("document.querySelector('details.starters').open = true", vec![])?;
    browser.find("button", "A mail address")?.click()?;
    browser.wait_for_text("“A mail address” is in the plan.")?;
    browser.find("button", "Undo")?.click()?;
    let entries =
        "return [...document.querySelectorAll('.entries .name')].some((name) => name.textContent === 'A mail address')";
    browser.wait_until("the cost to be gone", |page| Ok(page.script(entries, vec![])? == false))?;
    browser.check_console()
}
