//! Receipts: put in with one hand, split, beside their total, and from files of other programs.

use std::fs;

use anyhow::{Result, ensure};
use kerbstead_tests::browser::{Browser, Key, Scheme, Setup};

use super::keeping::saved;
use super::shop::wait_until_it_is_no_choice;

fn with_receipts() -> Result<Browser> {
    Browser::open_at(&Setup::phone(), "/receipts")
}

/// A new receipt with what it says in all.
fn add(browser: &Browser, total: &str) -> Result<()> {
    browser.find("button", "Add a receipt")?.click()?;
    browser.wait_until("the focus", |page| Ok(page.focused()? == "textbox In all it says"))?;
    browser.press(total)
}

/// The camp stove of the example is planned for 24, the lamp for 14.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_receipt_is_an_amount_and_a_thing_of_the_kit() -> Result<()> {
    let browser = with_receipts()?;
    add(&browser, "25.50")?;
    browser.find("combobox", "It is for")?.choose("Camp stove")?;
    browser.wait_for_text("What the total leaves: €25.50")?;
    browser.wait_for_text("Camp stove\t€24.00\t€25.50\t€1.50")?;
    browser.reload()?;
    browser.wait_for_text("Camp stove\t€24.00\t€25.50\t€1.50")?;
    browser.load("/shop")?;
    wait_until_it_is_no_choice(&browser, "Camp stove")?;
    browser.check_console()
}

/// By hand: 27.80 and 14.50 are 42.30. Of 43.20 the digits may be swapped: 42.30 is 0.90 less.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn lines_that_do_not_come_to_their_total_are_told_with_what_could_explain_it() -> Result<()> {
    let browser = with_receipts()?;
    add(&browser, "43.20")?;
    browser.find("textbox", "Amount")?.replace("27.80")?;
    browser.find("button", "Add a line")?.click()?;
    browser.wait_until("the focus", |page| Ok(page.focused()? == "combobox It is for"))?;
    browser.press(Key::Tab + "14.50")?;
    browser.wait_for_text("The lines come to €42.30, €0.90 less than the receipt says.")?;
    browser.wait_for_text("The total may be €42.30, with two digits swapped.")?;
    browser.wait_for_text("A line of €0.90 may be missing.")?;
    browser.wait_for_text("differs by €0.90")?;
    for scheme in Scheme::ALL {
        browser.set_scheme(scheme)?;
        browser.check_accessible()?;
    }
    browser.check_fits_width()?;
    browser.find("textbox", "In all it says")?.replace("42.30")?;
    browser.wait_until("no difference", |page| Ok(!page.text()?.contains("differs by")))?;
    browser.find("button", "Take this receipt out")?.click()?;
    browser.wait_for_text("The receipt is taken out with its lines.")?;
    browser.find_css(".notice button")?.click()?;
    browser
        .wait_until("both lines", |page| Ok(page.names("textbox")?.iter().filter(|it| *it == "Amount").count() == 2))?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn what_cannot_be_an_amount_is_told_at_its_field_and_kept() -> Result<()> {
    let browser = with_receipts()?;
    add(&browser, &"9".repeat(30))?;
    browser.wait_for_text("At most €1,000,000,000.00.")?;
    browser.find("textbox", "Amount")?.replace("12 or so")?;
    browser.wait_for_text("An amount belongs here")?;
    browser.reload()?;
    browser.find_css(".entry > summary")?.click()?;
    ensure!(browser.find("textbox", "In all it says")?.value()? == "9".repeat(30));
    ensure!(browser.find("textbox", "Amount")?.value()? == "12 or so");
    browser.check_console()
}

const BANK: &str = "Datum;Laden;Artikel;Betrag\n24.03.2027;Baumarkt;Seil;1.012,50\n25.03.2027;Hof;Eier;7,-\n\
                    am Ende;?;;\n26.03.2027;Hof;Heu;12,5x\n";

fn look_at(browser: &Browser, text: &str) -> Result<()> {
    let put = "const field = document.querySelector('#receipts-pasted'); field.closest('details').open = true; field.value = arguments[0]; \
               field.dispatchEvent(new Event('input'))";
    browser.script(put, vec![text.into()])?;
    browser.find("button", "Look at it")?.click()?;
    browser.wait_until("the focus", |page| Ok(page.focused()? == "heading What is in it"))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn rows_of_a_table_are_looked_at_before_they_are_put_in() -> Result<()> {
    let browser = with_receipts()?;
    let folder = browser.downloads()?;
    look_at(&browser, BANK)?;
    browser
        .wait_for_text("24 Mar 2027 · Baumarkt · Seil · €1,012.50")
        .or_else(|_| browser.wait_for_text("Mar 24, 2027 · Baumarkt · Seil · €1,012.50"))?;
    browser.wait_for_text("2 rows were not read and stay aside.")?;
    browser.wait_for_text("Line 5: “Betrag” is no amount like the others.")?;
    for scheme in Scheme::ALL {
        browser.set_scheme(scheme)?;
        browser.check_accessible()?;
    }
    browser.check_fits_width()?;
    browser.find("button", "Save what was not read")?.click()?;
    let kept = saved(&browser, folder.path())?;
    ensure!(kept == "Datum;Laden;Artikel;Betrag\r\nam Ende;?;;\r\n26.03.2027;Hof;Heu;12,5x\r\n", "{kept:?}");
    browser.find("button", "Put 2 receipts in")?.click()?;
    browser.wait_for_text("2 receipts are put in.")?;
    look_at(&browser, BANK)?;
    browser.wait_for_text("here already: same day, same amount")?;
    ensure!(browser.find("button", "Put 0 receipts in")?.attribute("disabled")?.is_some());
    browser.find("button", "Do nothing")?.click()?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("no receipt", |page| Ok(!page.text()?.contains("Baumarkt")))?;
    browser.check_console()
}

/// Letters as older programs write them: an `ö` is the byte 246 of Windows-1252 (from memory).
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_file_of_an_older_program_is_read_and_corrected() -> Result<()> {
    let browser = with_receipts()?;
    let folder = tempfile::tempdir()?;
    let path = folder.path().join("bank.csv");
    fs::write(&path, b"Date,Name,Amount\n03/04/2027,M\xf6bel,12.50\n05/04/2027,Rope,4.00\n")?;
    browser.find_css("#receipts-file")?.type_keys(path.to_string_lossy().into_owned())?;
    browser.wait_for_text("“03/04/2027”: which number is the day?")?;
    browser.wait_for_text("It waits for your answer above.")?;
    browser.find("combobox", "In dates")?.choose("the day comes first")?;
    browser.find("button", "Put 2 receipts in")?.click()?;
    browser.wait_for_text("Möbel")?;
    browser.check_console()
}
