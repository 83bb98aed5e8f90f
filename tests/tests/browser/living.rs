//! Water, warmth and signal: what is typed moves what hangs on it.

use anyhow::Result;
use kerbstead_core::plan::{Covers, DataContract, DataUse, Draw, Item, Layer, Material, Outlet, Plan, demo_plan};
use kerbstead_tests::browser::{Browser, Setup};

fn with(change: fn(&mut Plan)) -> Plan {
    let mut plan = demo_plan();
    "Changed".clone_into(&mut plan.title);
    change(&mut plan);
    plan
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_coldest_night_is_drawn_and_says_what_gets_wet() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/warmth")?;
    browser.wait_for_text("Tap the drawing, or choose a day")?;
    browser.find("button", "Coldest night")?.click()?;
    browser.wait_for_text("Coldest inside ")?;
    browser.wait_for_text("A: Inside, B: Outside, C: Dew point.")?;
    browser.wait_for_text("Roof: ")?;
    browser.wait_for_text("Parked on a hot day")?;
    browser.audit()
}

/// An opening that is typed is at once in the answers, and undone with one tap.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn more_left_open_at_night_freshens_the_air_at_once() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/warmth")?;
    browser.wait_for_text("The air gets stale")?;
    browser.find("textbox", "Left open at night")?.replace("300")?;
    browser.wait_until("fresh air", |page| Ok(!page.text()?.contains("The air gets stale")))?;
    browser.find("textbox", "Left open at night")?.replace("a lot")?;
    browser.wait_for_text("The air gets stale")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn foil_without_a_gap_is_told_and_a_layer_says_what_it_saves() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/warmth")?;
    browser.open_file_of(&with(|plan| {
        let layer = |id, material, name: &str| Layer {
            id,
            name: name.into(),
            material,
            covers: Covers::RoofAndSides,
            ..Layer::default()
        };
        plan.layers = vec![layer(9_001, Material::Foil, "Bright foil"), layer(9_002, Material::Xps, "Foam boards")];
    }))?;
    browser.load("/warmth")?;
    browser.wait_for_text("Bright foil: foil saves next to nothing where no closed air lies beside it.")?;
    browser.wait_for_text("A kilogram")?;
    browser.audit()
}

/// An electric blanket, in the kit: power moves.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn an_electric_blanket_moves_power() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/power")?;
    browser.wait_for_text("37.4 h without power")?;
    browser.open_file_of(&with(|plan| {
        let draw = Draw {
            power_w: 60.0.into(),
            outlet: Outlet::Dc,
            hours_per_day: Some(8.0.into()),
            from_hour: Some(22.0),
            ..Draw::default()
        };
        plan.kit.push(Item { id: 9_003, name: "Blanket".into(), draw: Some(draw), ..Item::default() });
    }))?;
    browser.load("/power")?;
    browser.wait_for_text("Blanket")?;
    browser.wait_until("more without power", |page| Ok(!page.text()?.contains("37.4 h without power")))?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_usual_use_of_water_is_added_with_a_tap_and_taken_back() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/water")?;
    browser.wait_for_text("1.6 days to spare")?;
    browser.find_text("Usual uses")?.click()?;
    browser.find("button", "Washing up")?.click()?;
    browser.wait_until("less to spare", |page| Ok(!page.text()?.contains("1.6 days to spare")))?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_for_text("1.6 days to spare")?;
    browser.audit()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn data_runs_out_and_a_file_gets_through_or_not() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/signal")?;
    browser.open_file_of(&with(|plan| {
        plan.data_uses =
            vec![DataUse { id: 9_004, name: "Web".into(), uses_per_day: 6.0.into(), ..DataUse::default() }];
        plan.data_contracts = vec![DataContract {
            id: 9_005,
            name: "Card".into(),
            allowance_gb: Some(5.0),
            in_use: true,
            ..DataContract::default()
        }];
    }))?;
    browser.load("/signal")?;
    browser.wait_for_text("Data runs out on")?;
    browser.find("textbox", "The file has")?.replace("700 MiB")?;
    browser.find("textbox", "I must leave in")?.replace("1")?;
    browser.find("textbox", "It goes out at")?.replace("12")?;
    browser
        .wait_until("an answer", |page| Ok(!page.text()?.contains("Type the numbers, and the answer stands here.")))?;
    browser.audit()
}
