//! Tabs killed while somebody types, and what is left of what was typed.

use crate::browser::{Browser, Setup, kill};
use crate::links::Chance;
use anyhow::{Context, Result, ensure};
use serde_json::json;
use std::time::Duration;

const FIELD: &str = "Cash on the first day";

const NAME: &str = "Name of the plan";

/// As many digits as an amount may have.
const MOST_KEYS: usize = 9;

/// Before a tab is killed, at least one key and up to so many are taken, so that a slow machine types something too.
const UNHARMED_KEYS: usize = 6;

/// Keeps the page from keeping its journal, to see what is lost without.
const WITHOUT_JOURNAL: &str = "
    const keep = Storage.prototype.setItem;
    Storage.prototype.setItem = function (name, text) {
        if (!name.startsWith('kerbstead.journal.')) keep.call(this, name, text);
    };";

/// What came of killing.
#[derive(Clone, Copy, Debug, Default)]
pub struct Kills {
    /// How many tabs were killed.
    pub tabs: usize,
    /// Keys that the page had taken before.
    pub keys: usize,
    /// Keys of these that were not there afterwards.
    pub lost: usize,
}

/// Kills a tab so many times, each at another moment while digits are typed, and counts those that were lost. Without the
/// journal it shows that the counting counts.
///
/// # Errors
/// When the browser does not do as it is told.
pub fn kill_tabs(times: usize, seed: u64, with_journal: bool) -> Result<Kills> {
    let browser = Browser::start(&Setup::phone())?;
    let first = browser.tab()?;
    let (mut chance, mut kills) = (Chance::new(seed), Kills::default());
    for _ in 0..times {
        browser.open_tab().context("a tab")?;
        if !with_journal {
            browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WITHOUT_JOURNAL }))?;
        }
        browser.load("/in-and-out").context("loading")?;
        let mut typed = String::new();
        browser.find("textbox", FIELD).context("field")?.replace("").context("emptying")?;
        let (process, unharmed) = (browser.page_process()?, chance.below(UNHARMED_KEYS));
        let life = Duration::from_millis(chance.below(100) as u64);
        let mut killer = None;
        let mut lasts = true;
        while lasts && typed.len() < MOST_KEYS {
            if killer.is_none() && typed.len() > unharmed {
                killer = Some(std::thread::spawn(move || {
                    std::thread::sleep(life);
                    kill(process)
                }));
            }
            let digit = char::from(b'1' + u8::try_from(chance.below(9))?);
            lasts = browser.press(digit.to_string()).is_ok();
            if lasts {
                typed.push(digit);
            }
        }
        let killer = killer.context("the tab ended before it was killed")?;
        killer.join().map_err(|_| anyhow::anyhow!("the killer has failed"))??;
        browser.close_tab(&first).context("leaving the killed tab")?;
        browser.open_tab().context("a new tab")?;
        browser.load("/in-and-out").context("looking")?;
        let kept = browser.find("textbox", FIELD)?.value()?;
        kills.tabs += 1;
        kills.keys += typed.len();
        let is_more = kept.len() <= typed.len() + 1;
        ensure!(is_more && (kept.starts_with(&typed) || typed.starts_with(&kept)), "typed {typed:?}, found {kept:?}");
        kills.lost += typed.len().saturating_sub(kept.len());
        browser.close_tab(&first)?;
    }
    Ok(kills)
}

/// What is left of what was typed when the whole browser is killed: how many letters of how many.
///
/// # Errors
/// When the browser does not do as it is told.
pub fn kill_browser(letters: usize, apart: Duration) -> Result<(usize, usize)> {
    let setup = Setup::phone();
    let mut browser = Browser::start(&setup)?;
    browser.load("/plans")?;
    browser.find("textbox", NAME)?.replace("N")?;
    for _ in 0..letters {
        std::thread::sleep(apart);
        browser.press("n")?;
    }
    browser.kill_and_open(&setup)?;
    browser.load("/plans")?;
    let kept = browser.find("textbox", NAME)?.value()?;
    Ok((kept.chars().filter(|letter| *letter == 'n').count(), letters))
}
