//! Kills the whole browser while somebody types, after one more span each time, and says how much of the last typing is
//! lost: browsers write what pages keep to the disk only after a while.

use anyhow::Result;
use kerbstead_tests::kills::kill_browser;
use std::time::Duration;

fn main() -> Result<()> {
    const APART: Duration = Duration::from_millis(250);
    for letters in [4, 12, 30, 60, 120, 240, 480] {
        let (kept, typed) = kill_browser(letters, APART)?;
        let lost = APART * u32::try_from(typed.saturating_sub(kept))?;
        println!(
            "after {:.0} s of typing: the last {:.1} s lost",
            (APART * u32::try_from(typed)?).as_secs_f64(),
            lost.as_secs_f64()
        );
    }
    Ok(())
}
