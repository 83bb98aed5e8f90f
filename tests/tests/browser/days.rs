//! Days: the list of what is done, ticking off, what cannot be done, where things end.

use anyhow::Result;
use kerbstead_tests::browser::{Browser, Setup};

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_task_is_ticked_off_and_what_follows_moves_up() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.load("/days")?;
    browser.wait_for_text("Clean the van, 2 h")?;
    browser.find("button", "Done")?.click()?;
    browser.wait_for_text("“Clean the van” is done.")?;
    browser.wait_for_text("Seal the roof, 2 h, then done.")?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_for_text("Clean the van, 2 h")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_chance_of_being_ready_and_what_saves_days_are_told() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.load("/days")?;
    browser.wait_for_text("No order is earlier: that is proven.")?;
    browser.wait_for_text("runs with hours and weather by chance")?;
    browser.wait_for_text("Without “Pack”: ")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn usual_tasks_ask_who_has_the_tools() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.load("/work")?;
    browser.find("button", "Add the usual tasks")?.click()?;
    browser.wait_for_text("The usual tasks are on the list.")?;
    browser.load("/days")?;
    browser.wait_for_text("needs “Saw”, and nobody has it yet.")?;
    browser.find("button", "Undo")?.click()?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_thing_that_left_the_flat_is_counted() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.load("/clearing")?;
    browser.wait_for_text("0 have left the flat")?;
    let open = "[...document.querySelectorAll('.entry summary')].find((line) => line.textContent.includes('Television')).click()";
    browser.script(open, vec![])?;
    browser.find("button", "It left the flat today")?.click()?;
    browser.wait_for_text("1 have left the flat")?;
    browser.check_console()
}
