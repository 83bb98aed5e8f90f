//! Takes a picture of every page at two widths in both colour schemes: `cargo xtask shots`.

use anyhow::{Context, Result};
use kerbstead_tests::browser::{Browser, ROUTES, Scheme, Setup};

fn main() -> Result<()> {
    let folder = xtask::workspace::root().join("target/shots");
    std::fs::create_dir_all(&folder).with_context(|| format!("making {}", folder.display()))?;
    for (width, height) in [(360, 740), (1280, 900)] {
        for scheme in Scheme::ALL {
            let browser = Browser::start(&Setup { width, height, scheme, ..Setup::default() })?;
            for route in ROUTES {
                // A page that does not start is worth a look too.
                if let Err(error) = browser.load(route) {
                    println!("{error:#}");
                }
                let path = folder.join(format!("{}-{width}-{}.png", file_name(route), scheme.name()));
                browser.full_picture(&path)?;
                println!("{}", path.display());
            }
        }
    }
    Ok(())
}

/// "/costs/food" as "costs-food", and what comes without a word as "first". Links are cut off.
fn file_name(route: &str) -> String {
    let name = route.trim_matches('/').replace('/', "-");
    if name.is_empty() { "first".to_owned() } else { name.chars().take(24).collect() }
}
