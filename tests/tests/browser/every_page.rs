//! What must hold of every page.

use anyhow::{Result, ensure};
use kerbstead_tests::browser::{Browser, ROUTES, Scheme, Setup};

/// Checks every page in one browser and says of which pages the failures were.
pub fn on_every_page(setup: &Setup, check: impl Fn(&Browser) -> Result<()>) -> Result<()> {
    let browser = Browser::start(setup)?;
    let failures: Vec<String> = ROUTES
        .iter()
        .filter_map(|route| {
            let outcome = browser.load(route).and_then(|()| check(&browser));
            outcome.err().map(|error| format!("{route}: {error:#}"))
        })
        .collect();
    ensure!(failures.is_empty(), "with {setup:?}\n{}", failures.join("\n"));
    browser.check_console()?;
    browser.check_requests()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_is_accessible_in_both_schemes() -> Result<()> {
    for scheme in Scheme::ALL {
        on_every_page(&Setup { scheme, ..Setup::default() }, Browser::check_accessible)?;
    }
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_is_accessible_on_a_phone() -> Result<()> {
    on_every_page(&Setup::phone(), Browser::check_accessible)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_never_scrolls_sideways() -> Result<()> {
    for width in [320, 360, 768, 1280] {
        on_every_page(&Setup { width, ..Setup::default() }, Browser::check_fits_width)?;
    }
    Ok(())
}

/// Where every link of a page to another page of the calculator leads, without what follows the page's word.
const LINKS: &str = "
    const links = [...document.querySelectorAll('a[href^=\"#/\"]')];
    return links.map(link => '/' + link.getAttribute('href').split('/')[1]);";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn every_page_that_is_linked_is_checked() -> Result<()> {
    on_every_page(&Setup::default(), |browser| {
        let links = browser.script(LINKS, vec![])?;
        let linked = links.as_array().into_iter().flatten().filter_map(|link| link.as_str());
        for word in linked {
            ensure!(ROUTES.contains(&word), "{word} is linked but not in ROUTES");
        }
        Ok(())
    })
}
