//! The process that drives the browser.

use anyhow::{Context, Result};
use std::io::{BufRead, BufReader};
use std::process::{Child, ChildStdout, Command, Stdio};

/// A running chromedriver; dropping it ends it.
pub struct Driver {
    process: Child,
    port: u16,
}

impl Driver {
    /// Starts it on a port of its own choice.
    pub fn start() -> Result<Self> {
        let program = xtask::tools::chromedriver()?;
        let mut process = Command::new(&program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .with_context(|| format!("could not start {}", program.display()))?;
        let output = process.stdout.take();
        // Made before the port is known, so that the process ends if it never says one.
        let mut driver = Self { process, port: 0 };
        driver.port = output.and_then(announced_port).context("chromedriver ended without naming its port")?;
        Ok(driver)
    }

    /// Where it takes commands.
    pub fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Either fails only when it has ended already.
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

fn announced_port(output: ChildStdout) -> Option<u16> {
    let mut lines = BufReader::new(output).lines();
    let port = lines.by_ref().map_while(Result::ok).find_map(|line| port_in(&line));
    // What it writes later must go somewhere, or it would wait for a reader.
    std::thread::spawn(move || lines.for_each(drop));
    port
}

/// The port in "`ChromeDriver` was started successfully on port 41789."
fn port_in(line: &str) -> Option<u16> {
    line.split_once("successfully on port ")?.1.trim_end_matches('.').parse().ok()
}

#[cfg(test)]
mod tests {
    use super::port_in;

    #[test]
    fn the_port_is_read_from_the_announcement() {
        assert_eq!(port_in("ChromeDriver was started successfully on port 41789."), Some(41789));
        assert_eq!(port_in("Starting ChromeDriver on port 0"), None);
    }
}
