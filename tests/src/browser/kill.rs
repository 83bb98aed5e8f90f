//! What a device that is short of memory does: it ends the process of a page, or the whole browser, without a word.

use super::Browser;
use anyhow::{Context, Result};
use std::process::Command;

/// Keeps the processor busy, so that the process that does so can be told from others.
const BUSY: &str = "const end = performance.now() + 150; while (performance.now() < end);";

impl Browser {
    /// The process that shows the present page.
    pub fn page_process(&self) -> Result<u32> {
        let own = u32::try_from(self.process_id.context("the browser's process is not known")?)?;
        let before: Vec<(u32, u64)> = pages(own)?.into_iter().map(|id| (id, ticks(id))).collect();
        self.script(BUSY, vec![])?;
        let busiest = before.into_iter().max_by_key(|(id, before)| ticks(*id).saturating_sub(*before));
        Ok(busiest.context("no process shows a page")?.0)
    }
}

/// Ends a process at once.
pub fn kill(process: u32) -> Result<()> {
    Command::new("kill").args(["-9", &process.to_string()]).status().map(drop).context("kill")
}

/// The processes that a browser has started to show pages.
fn pages(browser: u32) -> Result<Vec<u32>> {
    let is_page = |id: &u32| {
        let arguments = std::fs::read(format!("/proc/{id}/cmdline")).unwrap_or_default();
        String::from_utf8_lossy(&arguments).contains("--type=renderer")
    };
    Ok(descendants(browser)?.into_iter().filter(is_page).collect())
}

/// What `/proc` says of a process after its name: the parent is the second, the time in the processor the twelfth.
fn stat(process: u32, at: usize) -> Option<u64> {
    let stat = std::fs::read_to_string(format!("/proc/{process}/stat")).ok()?;
    stat.rsplit_once(')')?.1.split_whitespace().nth(at)?.parse().ok()
}

fn ticks(process: u32) -> u64 {
    stat(process, 11).unwrap_or(0)
}

/// All processes that a process has started, and those that they have.
fn descendants(of: u32) -> Result<Vec<u32>> {
    let mut parents = Vec::new();
    for entry in std::fs::read_dir("/proc")? {
        let Some(id) = entry?.file_name().to_str().and_then(|name| name.parse::<u32>().ok()) else { continue };
        parents.extend(stat(id, 1).map(|parent| (id, parent)));
    }
    let mut found = vec![of];
    let mut at = 0;
    while let Some(parent) = found.get(at).copied() {
        found.extend(parents.iter().filter(|(_, of)| *of == u64::from(parent)).map(|(id, _)| *id));
        at += 1;
    }
    found.remove(0);
    Ok(found)
}
