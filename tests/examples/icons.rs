//! Draws the icons of the installed app from `web/icon.svg`, after a change of it:
//! `cargo run -p kerbstead-tests --example icons`, with the bundle built.
//!
//! Devices cut an icon to shapes of their own, so the ground fills the square; the drawing itself stays within the
//! middle 80 %, which every shape leaves whole.

use anyhow::{Context, Result};
use kerbstead_tests::browser::{Browser, Setup};
use serde_json::json;

/// Names and sizes in pixels.
const ICONS: [(&str, u32); 3] = [("icon-192", 192), ("icon-512", 512), ("apple-touch-icon", 180)];

/// Puts a drawing into an empty page, as large as the page.
const DRAW: &str = "
    document.body.style.margin = 0;
    document.body.innerHTML = arguments[0];
    const drawing = document.body.firstElementChild;
    drawing.style.display = 'block';
    drawing.style.width = '100vw';";

fn main() -> Result<()> {
    let web = xtask::workspace::root().join("web");
    let drawing = std::fs::read_to_string(web.join("icon.svg")).context("reading icon.svg")?;
    let browser = Browser::start(&Setup::default())?;
    let drawing = drawing.replace("rx=\"6\"", "");
    for (name, size) in ICONS {
        browser.set_size(size, size)?;
        browser.visit("about:blank")?;
        browser.script(DRAW, vec![json!(drawing)])?;
        browser.picture(&web.join(format!("icons/{name}.png")))?;
    }
    Ok(())
}
