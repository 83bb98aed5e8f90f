//! What a person or a device asks of every page: larger text, less movement, another direction of writing, sound
//! instead of sight, paper.

use anyhow::{Context, Result, ensure};
use base64::Engine;
use kerbstead_tests::browser::{Browser, ROUTES, Setup};
use lopdf::Document;
use serde_json::json;

use crate::every_page::on_every_page;

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn text_twice_as_large_fits() -> Result<()> {
    for width in [360, 1280] {
        on_every_page(&Setup { width, ..Setup::default() }, |browser| {
            // As a person sets it in the browser.
            browser.devtools("Page.setFontSizes", json!({ "fontSizes": { "standard": 32, "fixed": 26 } }))?;
            let size = browser.script("return getComputedStyle(document.documentElement).fontSize", vec![])?;
            ensure!(size == "32px", "the text is {size}");
            browser.check_fits_width()
        })?;
    }
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_can_be_read_from_right_to_left() -> Result<()> {
    for width in [320, 1280] {
        on_every_page(&Setup { width, ..Setup::default() }, |browser| {
            browser.script("document.documentElement.dir = 'rtl'", vec![])?;
            browser.check_fits_width()?;
            // On a wide page the navigation is at the side where a line begins.
            let at = "return document.querySelector('nav').getBoundingClientRect().right >= innerWidth - 1";
            ensure!(browser.script(at, vec![])? == true, "the navigation is on the left");
            browser.check_accessible()
        })?;
    }
    Ok(())
}

/// What still moves: elements and what stands before and after them, with a transition or an animation.
const MOVING: &str = "
    const moves = (style) => [style.transitionDuration, style.animationDuration].some(text => parseFloat(text) > 0);
    return [...document.querySelectorAll('*')].filter(element => ['', '::before', '::after'].some(part =>
        moves(getComputedStyle(element, part)))).map(element => element.outerHTML.slice(0, 80));";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn nothing_moves_where_the_device_asks_for_rest() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    browser.set_media("", &[("prefers-reduced-motion", "reduce")])?;
    for route in ROUTES {
        browser.load(route)?;
        let moving = browser.script(MOVING, vec![])?;
        ensure!(moving == json!([]), "{route}: {moving}");
    }
    browser.set_media("", &[("prefers-reduced-motion", "no-preference")])?;
    ensure!(browser.script(MOVING, vec![])? != json!([]), "nothing ever moves: the check is blind");
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_changed_verdict_is_told_to_those_who_hear_the_page() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/in-and-out")?;
    let told = "return [...document.querySelectorAll('[aria-live=polite]')].map(region => region.textContent)
        .find(text => text.includes('Money: '))";
    let hears = |text: &str| {
        browser.wait_until(&format!("{text:?} to be told"), |page| {
            Ok(page.script(told, vec![])?.as_str().is_some_and(|region| region.contains(text)))
        })
    };
    hears("Money: Falls short")?;
    browser.find("textbox", "Cash on the first day")?.replace("90000")?;
    hears("Money: Holds")?;
    browser.find("button", "Undo")?.click()?;
    hears("Money: Falls short")
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn every_page_has_one_main_part_one_heading_of_the_first_rank_and_its_name_in_the_title() -> Result<()> {
    on_every_page(&Setup::phone(), |browser| {
        let parts = "return [document.querySelectorAll('main').length, document.querySelectorAll('h1').length,
            document.querySelectorAll('nav').length]";
        ensure!(browser.script(parts, vec![])? == json!([1, 1, 1]), "{}", browser.script(parts, vec![])?);
        let named = "return document.title.startsWith(document.querySelector('h1').textContent)
            || document.title.length > ' · Kerbstead'.length";
        ensure!(browser.script(named, vec![])? == true, "the title names no page");
        Ok(())
    })
}

/// The present page on paper, as the browser prints it.
fn printed(browser: &Browser) -> Result<Document> {
    let paper = json!({ "paperWidth": 8.27, "paperHeight": 11.69, "preferCSSPageSize": true });
    let printed = browser.devtools("Page.printToPDF", paper)?;
    let data = printed["data"].as_str().context("no PDF")?;
    let bytes = base64::engine::general_purpose::STANDARD.decode(data)?;
    Ok(Document::load_mem(&bytes)?)
}

fn words_of(paper: &Document) -> Result<String> {
    let pages: Vec<u32> = paper.get_pages().into_keys().collect();
    Ok(paper.extract_text(&pages)?.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_plan_is_printed_on_one_sheet_without_the_frame() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/papers")?;
    let paper = printed(&browser)?;
    ensure!(paper.get_pages().len() == 1, "{} pages", paper.get_pages().len());
    let words = words_of(&paper)?;
    for word in ["North with the harvest", "Money", "Power", "Water"] {
        ensure!(words.contains(word), "{word} is not on the sheet: {words}");
    }
    ensure!(!words.contains("Skip to content") && !words.contains("Undo"), "the frame is printed: {words}");
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn lists_for_the_shop_and_for_friends_are_printed_whole() -> Result<()> {
    let browser = Browser::start(&Setup::phone())?;
    for (sheet, words_on_it) in
        [("Shopping list", ["Camp stove", "Stove cartridge"]), ("What to borrow", ["Aunt Bera", "Hammock"])]
    {
        browser.load("/papers")?;
        browser.find("button", sheet)?.click()?;
        let words = words_of(&printed(&browser)?)?;
        for word in words_on_it {
            ensure!(words.contains(word), "{word} is not on {sheet}: {words}");
        }
    }
    Ok(())
}
