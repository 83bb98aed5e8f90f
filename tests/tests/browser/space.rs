//! Space and load: a van measured, filled, moved about in, arranged, laid out with tape, and looked over before driving off.

use anyhow::{Context, Result, ensure};
use kerbstead_tests::browser::{Browser, Setup};
use serde_json::{Value, json};

/// The middle of the thing of that name on the screen, and its id in the page.
const MIDDLE: &str = "
    const thing = [...document.querySelectorAll('#plan-view g.thing')].find((g) => g.getAttribute('aria-label').startsWith(arguments[0]));
    thing.scrollIntoView({ block: 'center' });
    const place = thing.querySelector('.closed').getBoundingClientRect();
    return [place.x + place.width / 2, place.y + place.height / 2, thing.id, thing.getAttribute('aria-label')];";

struct Seen {
    x: f64,
    y: f64,
    says: String,
}

fn seen(browser: &Browser, name: &str) -> Result<Seen> {
    let found = browser.script(MIDDLE, vec![json!(name)])?;
    let number = |at: usize| found[at].as_f64().with_context(|| format!("{name} is not drawn"));
    Ok(Seen { x: number(0)?, y: number(1)?, says: found[3].as_str().unwrap_or_default().to_owned() })
}

fn mouse(browser: &Browser, kind: &str, x: f64, y: f64) -> Result<Value> {
    let buttons = i32::from(kind != "mouseReleased");
    let parameters = json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": buttons, "clickCount": 1 });
    browser.devtools("Input.dispatchMouseEvent", parameters)
}

fn touch(browser: &Browser, kind: &str, points: &[(f64, f64)]) -> Result<Value> {
    let points: Vec<Value> = points.iter().map(|(x, y)| json!({ "x": x, "y": y })).collect();
    browser.devtools("Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points }))
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_thing_is_dragged_by_the_mouse_and_put_back() -> Result<()> {
    let browser = Browser::open_at(&Setup::default(), "/space")?;
    let before = seen(&browser, "Cool box")?;
    mouse(&browser, "mousePressed", before.x, before.y)?;
    mouse(&browser, "mouseMoved", before.x + 20.0, before.y + 20.0)?;
    mouse(&browser, "mouseMoved", before.x + 40.0, before.y + 60.0)?;
    mouse(&browser, "mouseReleased", before.x + 40.0, before.y + 60.0)?;
    browser.wait_until("another place", |page| Ok(seen(page, "Cool box")?.says != before.says))?;
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("the place before", |page| Ok(seen(page, "Cool box")?.says == before.says))?;
    browser.check_accessible()?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_finger_that_goes_over_the_drawing_moves_only_what_was_chosen() -> Result<()> {
    let browser = Browser::open_at(&Setup::phone(), "/space")?;
    browser.wait_for_text("Tap a thing to move it")?;
    let before = seen(&browser, "Cool box")?;
    let drag = |from: &Seen| -> Result<()> {
        touch(&browser, "touchStart", &[(from.x, from.y)])?;
        for step in 1..=5 {
            touch(&browser, "touchMove", &[(from.x, from.y + 8.0 * f64::from(step))])?;
        }
        touch(&browser, "touchEnd", &[]).map(drop)
    };
    drag(&before)?;
    browser.wait_until("it is chosen", |page| Ok(!page.text()?.contains("Tap a thing to move it")))?;
    ensure!(seen(&browser, "Cool box")?.says == before.says, "it was moved");
    let chosen = seen(&browser, "Cool box")?;
    drag(&chosen)?;
    browser.wait_until("another place", |page| Ok(seen(page, "Cool box")?.says != before.says))?;
    browser.check_fits_width()?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn arrow_keys_move_and_r_turns() -> Result<()> {
    let browser = Browser::open_at(&Setup::default(), "/space")?;
    let before = seen(&browser, "Cool box")?;
    let focus = "[...document.querySelectorAll('#plan-view g.thing')].find((g) => g.getAttribute('aria-label').startsWith('Cool box')).focus()";
    browser.script(focus, vec![])?;
    browser.press("\u{e015}")?; // arrow down
    browser.wait_until("it moved", |page| Ok(seen(page, "Cool box")?.says != before.says))?;
    browser.press("\u{e013}")?; // arrow up
    browser.wait_until("it is back", |page| Ok(seen(page, "Cool box")?.says == before.says))?;
    browser.press("r")?;
    browser.wait_until("it turned", |page| Ok(seen(page, "Cool box")?.says != before.says))?;
    ensure!(browser.focused()?.contains("Cool box"), "the focus is at {}", browser.focused()?);
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_van_is_arranged_and_the_arrangement_taken() -> Result<()> {
    let things = ["Bed platform of boards", "Mattress cut to fit", "Cool box", "Kitchen crate", "Power store"];
    let browser = Browser::open_at(&Setup::default(), "/space")?;
    browser.find("button", "Look for arrangements")?.click()?;
    browser.wait_until("an arrangement", |page| Ok(page.text()?.contains("Take this one")))?;
    let places = |page: &Browser| -> Result<Vec<String>> {
        things.iter().map(|thing| seen(page, thing).map(|seen| seen.says)).collect()
    };
    let before = places(&browser)?;
    browser.find("button", "Take this one")?.click()?;
    browser.wait_for_text("All is arranged anew.")?;
    let text = browser.text()?;
    ensure!(!text.contains("are in one place"), "something overlaps: {text}");
    ensure!(places(&browser)? != before, "nothing moved");
    browser.find("button", "Undo")?.click()?;
    browser.wait_until("as before", |page| Ok(places(page)? == before))?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_floor_that_crosses_itself_is_told_and_nothing_typed_is_lost() -> Result<()> {
    let browser = Browser::open(&Setup::default())?;
    browser.load("/inside")?;
    browser.find("button", "Begin with four corners")?.click()?;
    browser.wait_for_text("Corner 4")?;
    // The second and third corner change places.
    let open = "[...document.querySelectorAll('.entry summary')].filter((line) => /Corner [23]/.test(line.textContent)).forEach((line) => line.click())";
    browser.script(open, vec![])?;
    let fields = "return [...document.querySelectorAll('input[id^=corners-][id$=y_mm]')].map((field) => field.id)";
    let ids = browser.script(fields, vec![])?;
    for (at, text) in [(0, "1740 mm"), (1, "0 mm")] {
        let id = ids[at].as_str().context("a field of a corner")?;
        browser.find_css(&format!("#{id}"))?.replace(text)?;
    }
    browser.wait_for_text("The outline crosses or touches itself here")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn the_taping_sheet_speaks_the_tapes_language() -> Result<()> {
    let browser = Browser::open_at(&Setup::default(), "/space")?;
    browser.script("location.hash = '/papers'", vec![])?;
    browser.wait_for_text("Taping sheet")?;
    browser.find("button", "Taping sheet")?.click()?;
    browser.wait_for_text("Wheel arch, left")?;
    // 3,120 mm are 122.83 inches.
    browser.wait_for_text("122 13/16")?;
    browser.script("location.hash = '/plans'", vec![])?;
    browser.wait_for_text("metric units")?;
    browser.find("radio", "metric units")?.click()?;
    browser.script("location.hash = '/papers'", vec![])?;
    browser.wait_for_text("Taping sheet")?;
    browser.find("button", "Taping sheet")?.click()?;
    browser.wait_for_text("0 – 3,120")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn before_driving_off_every_point_can_be_ticked() -> Result<()> {
    let browser = Browser::open_at(&Setup::default(), "/space")?;
    browser.script("location.hash = '/load'", vec![])?;
    browser.wait_for_text("are left to look at.")?;
    let tick = "document.querySelectorAll('input[id^=check-]').forEach((box) => box.click())";
    browser.script(tick, vec![])?;
    browser.wait_for_text("All of it is ticked.")?;
    browser.find("button", "Begin again")?.click()?;
    browser.wait_for_text("are left to look at.")?;
    browser.check_accessible()?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_usual_van_and_a_thing_put_in_can_be_taken_back() -> Result<()> {
    let browser = Browser::open_at(&Setup::default(), "/inside")?;
    browser.find("button", "Begin with a usual van")?.click()?;
    browser.wait_for_text("The inside is that of a usual van.")?;
    browser.script("location.hash = '/space'", vec![])?;
    browser.wait_for_text("Put a thing of the kit in")?;
    browser.find("combobox", "Thing")?.choose("Dry food")?;
    browser.find("button", "Put it in")?.click()?;
    browser.wait_for_text("Dry food has a place.")?;
    browser.find("button", "Take it out")?.click()?;
    browser.wait_for_text("Dry food has no place in the van any more.")?;
    browser.check_console()
}
