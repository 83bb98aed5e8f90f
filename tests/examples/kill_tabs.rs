//! Kills a tab many times while somebody types, and counts what was lost: `cargo run -p kerbstead-tests --example kill_tabs`.
//! How often stands in its argument; it is 200 times without one. With `without-journal` behind it, the page keeps none.

use anyhow::{Result, ensure};
use kerbstead_tests::kills::kill_tabs;

fn main() -> Result<()> {
    let times = std::env::args().nth(1).map_or(Ok(200), |times| times.parse())?;
    let with_journal = std::env::args().nth(2).is_none_or(|word| word != "without-journal");
    let kills = kill_tabs(times, 0x5EED, with_journal)?;
    println!("{} tabs killed after {} keys in all; {} keys lost", kills.tabs, kills.keys, kills.lost);
    ensure!(kills.lost == 0 || !with_journal, "something was lost");
    Ok(())
}
