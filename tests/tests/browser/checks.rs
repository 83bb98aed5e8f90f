//! The checks themselves: one that never fails would be worth nothing.

use anyhow::{Result, ensure};
use kerbstead_tests::browser::{Browser, Setup};

/// A picture from elsewhere, without a text in its place.
const PICTURE: &str = "document.body.insertAdjacentHTML('beforeend', '<img src=\"https://elsewhere.invalid/x.png\">')";

/// A box wider than a phone; its style is set from the script, for the page's own rules forbid it in the markup.
const WIDE: &str = "
    const box = document.body.appendChild(document.createElement('div'));
    box.style.minWidth = '500px';
    box.textContent = 'wide';";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn they_notice_a_page_that_is_wrong() -> Result<()> {
    let browser = Browser::open(&Setup::phone())?;
    browser.script(PICTURE, vec![])?;
    ensure!(browser.check_accessible().is_err(), "a picture without a text");
    ensure!(browser.check_requests().is_err(), "a request to elsewhere");
    browser.script(WIDE, vec![])?;
    ensure!(browser.check_fits_width().is_err(), "a wide box");
    browser.script("console.warn('a warning')", vec![])?;
    ensure!(browser.check_console().is_err(), "a warning");
    Ok(())
}
