//! The page of materials: a cut plan, what cannot be cut, and what is bought.

use anyhow::Result;
use kerbstead_core::plan::{Cut, Flaw, Money, Plan, Stock, StockKind, demo_plan};
use kerbstead_tests::browser::{Browser, Setup};

/// A length of board, and pieces of it.
fn with_pieces(length_mm: f64) -> Plan {
    let mut plan = demo_plan();
    "Cutting".clone_into(&mut plan.title);
    plan.stock = vec![Stock {
        id: 9_001,
        name: "Batten".into(),
        length_mm: Some(2_400.0),
        width_mm: Some(60.0),
        thick_mm: Some(20.0),
        stock_price: Some(Money::whole(4)),
        ..Stock::default()
    }];
    let cut_from = Some(9_001);
    plan.cuts =
        vec![Cut { id: 9_002, name: "Leg".into(), cut_from, length_mm: Some(length_mm), pieces: 4, ..Cut::default() }];
    plan
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_cut_plan_is_proven_and_bought_with_a_tap_that_can_be_taken_back() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/materials")?;
    browser.open_file_of(&with_pieces(700.0))?;
    browser.load("/materials")?;
    browser.wait_for_text("Nothing is cheaper: that is proven.")?;
    browser.find_css(".cut-picture")?;
    browser.find("button", "Put it into the kit")?.click()?;
    browser.wait_for_text("It is in the kit, with its price, weight and size.")?;
    browser.load("/kit")?;
    browser.wait_for_text("Batten")?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("no batten", |page| Ok(!page.text()?.contains("Batten")))?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_piece_longer_than_every_board_is_named() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/materials")?;
    browser.open_file_of(&with_pieces(2_500.0))?;
    browser.load("/materials")?;
    browser.wait_for_text("“Leg” is larger than everything it could be cut from")?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_bad_place_is_crossed_out_and_cut_around() -> Result<()> {
    let mut plan = with_pieces(700.0);
    plan.flaws = vec![Flaw { id: 9_003, flawed: Some(9_001), flaw_from_mm: Some(1_000.0), flaw_to_mm: Some(1_100.0) }];
    let browser = Browser::open_at(&Setup::phone(), "/materials")?;
    browser.open_file_of(&plan)?;
    browser.load("/materials")?;
    // Two of the four pieces on each board: one before the bad place, one behind it.
    browser.wait_for_text("Not used, crossed out: 39\u{a0}3/8\u{a0}in to 43\u{a0}5/16\u{a0}in.")?;
    browser.find_css(".cut-picture .flaw")?;
    browser.wait_for_text("At 43\u{a0}3/16\u{a0}in")?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn ten_thousand_parts_of_a_sheet_are_refused_at_once_and_nothing_is_lost() -> Result<()> {
    let mut plan = with_pieces(700.0);
    let stock = Stock { stock_kind: StockKind::Sheet, width_mm: Some(1_220.0), ..plan.stock.remove(0) };
    plan.stock.push(stock);
    plan.cuts[0].width_mm = Some(300.0);
    plan.cuts[0].pieces = 10_000;
    let browser = Browser::open_at(&Setup::phone(), "/materials")?;
    browser.open_file_of(&plan)?;
    browser.load("/materials")?;
    browser.wait_for_text("More pieces than can be looked at: 1,000 at most. Nothing is lost")?;
    browser.wait_for_text("10,000 of")?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn rolls_are_counted_by_strips_and_what_is_typed_stays() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/materials")?;
    for (label, text) in [
        ("Length of a roll", "10 m"),
        ("Width of a roll", "1 m"),
        ("Length of the surface, along the strips", "2.5 m"),
        ("Width of the surface", "4.6 m"),
        ("Each strip lies on the one before by", "10 cm"),
    ] {
        browser.find("textbox", label)?.replace(text)?;
    }
    browser.wait_for_text("Strips side by side: 5, from each roll: 4. Rolls to buy: 2.")?;
    browser.reload()?;
    browser.wait_for_text("Rolls to buy: 2.")
}
