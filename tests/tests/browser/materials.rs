//! The page of materials: a cut plan, what cannot be cut, and what is bought.

use anyhow::Result;
use kerbstead_core::plan::{Cut, Money, Plan, Stock, demo_plan};
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
