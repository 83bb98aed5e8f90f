//! What to change, how likely, the road log and what it teaches, and the next build.

use anyhow::{Result, ensure};
use jiff::civil::Date;
use kerbstead_core::plan::{Money, Plan, Reading, add_days, demo_plan_after, read_date};
use kerbstead_tests::browser::{Browser, Setup};
use serde_json::Value;

fn today(browser: &Browser) -> Result<Date> {
    let script = "const day = new Date(), two = (number) => String(number).padStart(2, '0');
        return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;";
    let day = browser.script(script, vec![])?;
    day.as_str().and_then(read_date).ok_or_else(|| anyhow::anyhow!("no day: {day}"))
}

/// The example, on the road for twelve days: three litres and forty of money went a day.
fn on_the_road(today: Date) -> Result<Plan> {
    let day = |back: i32| add_days(today, back).ok_or_else(|| anyhow::anyhow!("no such day"));
    let mut plan = demo_plan_after(today);
    plan.title = "On the road".into();
    plan.calendar.leaves_on = Some(day(-12)?);
    for stay in &mut plan.stays {
        stay.offers.water = false;
    }
    plan.readings = (0..12_u32)
        .map(|number| {
            Ok(Reading {
                id: plan.next_id() + number,
                on: Some(day(i32::try_from(number)? - 12)?),
                hour: 20,
                fresh_l: Some(44.0 - 3.0 * f64::from(number)),
                cash: Some(Money::whole(900 - 40 * i64::from(number))),
                ..Reading::default()
            })
        })
        .collect::<Result<_>>()?;
    Ok(plan)
}

/// The example falls short of money and, beside a meadow, of power: the cheapest set mends both, and is taken back as one.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_cheapest_set_of_changes_is_made_and_taken_back_with_one_tap_each() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/overview")?;
    browser.wait_for_text("What would mend it")?;
    browser.find("link", "All changes, and the cheapest set")?.click()?;
    browser.wait_for_text("With these together, nothing falls short.")?;
    browser.audit()?;
    browser.find("button", "Make these changes")?.click()?;
    browser.wait_for_text("Changed. You can take it back.")?;
    browser.wait_until("that nothing falls short", |page| {
        let text = page.text()?;
        Ok(!text.contains("The cheapest set") && !text.contains("Falls short"))
    })?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_for_text("With these together, nothing falls short.")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_single_change_is_made_and_the_others_are_tried_again() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/changes")?;
    browser.wait_for_text("Borrow it: Cool box")?;
    browser.wait_for_text("With these together, nothing falls short.")?;
    browser.find("button", "Make this change")?.click()?;
    browser.wait_for_text("Changed. You can take it back.")?;
    browser.wait_until("other changes", |page| {
        let text = page.text()?;
        Ok(text.contains("With these together, nothing falls short.") && !text.contains("Borrow it: Cool box"))
    })
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_chance_that_all_holds_is_told_with_what_it_hangs_on() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/likely")?;
    browser.wait_for_text("All of it holds:")?;
    browser.wait_for_text("What fails first most often is")?;
    browser.wait_for_text("in its lower half")?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn what_is_missed_becomes_a_wish_and_a_count_is_kept() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/log")?;
    browser.find("button", "Count now")?.click()?;
    browser.find("textbox", "Cash in hand")?.type_keys("321")?;
    browser.find("button", "Slept badly")?.click()?;
    for _ in 0..2 {
        browser.find("combobox", "What you missed, in a word")?.type_keys("Hot shower")?;
        browser.find("button", "I missed it today")?.click()?;
        browser.wait_for_text("Hot shower: missed on 1 day of 1 day logged")?;
    }
    browser.wait_for_text("321")?;
    browser.reload()?;
    browser.wait_for_text("Hot shower: missed on 1 day of 1 day logged")?;
    browser.find("button", "Undo")?.click()?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("that no wish is left", |page| Ok(!page.text()?.contains("Hot shower")))?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_log_corrects_the_plan_and_briefs_the_next_build() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/plans")?;
    let plan = on_the_road(today(&browser)?)?;
    browser.open_file_of(&plan)?;
    browser.load("/log")?;
    browser.wait_for_text("Water, a day")?;
    browser.wait_for_text("from 11 stretches")?;
    browser.wait_for_text("That contradicts the plan")?;
    browser.audit()?;
    browser.find("button", "Correct the plan by this")?.click()?;
    browser.wait_for_text("The plan is corrected. You can take it back.")?;
    browser.find("button", "Undo")?.click()?;
    browser.find("link", "The next build")?.click()?;
    browser.wait_for_text("counted")?;
    browser.wait_for_text("licensed trades")?;
    browser.audit()
}

/// Typing is as quick beside a log of ten thousand entries; here only that it works, for the time see the benches.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_log_of_ten_thousand_entries_is_shown_and_typed_beside() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/plans")?;
    let mut plan = on_the_road(today(&browser)?)?;
    let first = plan.readings[0].clone();
    let more = (0..9_900_u32).map(|number| Reading {
        id: 10_000 + number,
        hour: number % 24,
        on: first.on.and_then(|on| add_days(on, i32::try_from(number / 24 % 12).unwrap_or(0))),
        ..first.clone()
    });
    plan.readings.extend(more);
    browser.open_file_of(&plan)?;
    browser.load("/log")?;
    browser.wait_for_text("Show more")?;
    let shown = browser.script("return document.querySelectorAll('.entries > li').length", vec![])?;
    ensure!(shown.as_u64().is_some_and(|shown| shown < 60), "{shown} entries are drawn");
    browser.load("/in-and-out")?;
    browser.find("textbox", "Cash on the first day")?.replace("4321")?;
    browser.load("/money")?;
    browser.load("/in-and-out")?;
    let value: Value = browser.find("textbox", "Cash on the first day")?.value()?.into();
    ensure!(value == "4321", "{value} is there");
    browser.check_console()
}
