//! Numbered steps with headings and times, so that a long run shows where it is and a failed one where it was.

use anyhow::{Context, Result};
use std::time::{Duration, Instant};

/// One step: what it is called and what it does.
pub struct Step {
    /// The name in headings and in the message of a failure.
    pub name: &'static str,
    /// The work.
    pub work: fn() -> Result<()>,
}

/// Runs the steps in order and stops at the first that fails.
pub fn run(steps: &[Step]) -> Result<()> {
    let mut times = Vec::new();
    for (index, step) in steps.iter().enumerate() {
        let place = format!("step {} of {}", index + 1, steps.len());
        println!("\n=== {place}: {} ===", step.name);
        let start = Instant::now();
        (step.work)().with_context(|| format!("stopped at {place}, \"{}\"", step.name))?;
        println!("=== {} passed in {} ===", step.name, seconds(start.elapsed()));
        times.push((step.name, start.elapsed()));
    }
    summary(&times);
    Ok(())
}

fn summary(times: &[(&str, Duration)]) {
    println!("\nAll {} steps passed:", times.len());
    for (name, time) in times {
        println!("{:>10}  {name}", seconds(*time));
    }
    let total = times.iter().map(|(_, time)| *time).sum();
    println!("{:>10}  in all", seconds(total));
}

fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f64())
}
