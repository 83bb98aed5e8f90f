//! Assesses a plan from standard input: `cargo run -p kerbstead-core --example assess < plan.json`.
//!
//! - `--demo` prints the demo plan;
//! - `--schema` prints the JSON Schema of plans (build with `--features schema`);
//! - `--backup-schema` prints that of backups;
//! - `--as-of DATE` sets the day of asking; otherwise it is the plan's first day;
//! - `--words` prints sentences instead of JSON.
//!
//! Problems go to standard error, one a line with its path; the exit code is 1 when the input is no plan at all.

use std::io::Read;
use std::process::ExitCode;

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Document, Opened, demo_plan, read_date};
use kerbstead_core::words::{Plain, Units, Words};
use kerbstead_core::{Assessment, Say, Standing, assess};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let has = |flag: &str| arguments.iter().any(|argument| argument == flag);
    let outcome = match () {
        () if has("--schema") => schema(false),
        () if has("--backup-schema") => schema(true),
        () if has("--demo") => pretty(&demo_plan()),
        () => assess_input(&arguments, has("--words")),
    };
    match outcome {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

#[cfg(feature = "schema")]
fn schema(of_backups: bool) -> Result<String, String> {
    if of_backups {
        return pretty(&kerbstead_core::keeping::backup_schema());
    }
    pretty(&kerbstead_core::plan::json_schema())
}

#[cfg(not(feature = "schema"))]
fn schema(_: bool) -> Result<String, String> {
    Err("the schema needs the feature: cargo run -p kerbstead-core --features schema --example assess -- --schema"
        .into())
}

fn assess_input(arguments: &[String], in_words: bool) -> Result<String, String> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).map_err(|error| format!("standard input cannot be read: {error}"))?;
    let opened = Document::open(&text).map_err(|problem| words("EUR").problem(&problem))?;
    let words = words(&opened.plan.currency);
    for problem in &opened.problems {
        eprintln!("{}: {}", problem.path, words.problem(problem));
    }
    let assessment = assess(&opened.plan, as_of(arguments, &opened)?);
    if in_words { Ok(sentences(&assessment, &words)) } else { pretty(&assessment) }
}

fn words(currency: &str) -> Words<Plain> {
    Words::english(Plain, Units::Metric, currency)
}

fn as_of(arguments: &[String], opened: &Opened) -> Result<Date, String> {
    let Some(position) = arguments.iter().position(|argument| argument == "--as-of") else {
        let calendar = &opened.plan.calendar;
        let first = calendar.starts_on.or(calendar.leaves_on);
        return first.ok_or_else(|| "the plan has no first day: say --as-of YEAR-MONTH-DAY".to_owned());
    };
    let date = arguments.get(position + 1).and_then(|text| read_date(text));
    date.ok_or_else(|| "--as-of needs a date, written year-month-day".to_owned())
}

fn pretty(value: &impl serde::Serialize) -> Result<String, String> {
    serde_json::to_string_pretty(value).map_err(|error| error.to_string())
}

fn sentences(assessment: &Assessment, words: &Words<Plain>) -> String {
    [
        balance("money", &assessment.money.standing, words),
        balance("power", &assessment.power.standing, words),
        balance("water", &assessment.water.standing, words),
        balance("days", &assessment.days.standing, words),
        balance("space", &assessment.space.standing, words),
        balance("load", &assessment.load.standing, words),
        balance("warmth", &assessment.warmth.standing, words),
        balance("signal", &assessment.signal.standing, words),
    ]
    .concat()
}

fn balance<F: Say>(name: &str, standing: &Standing<F>, words: &Words<Plain>) -> String {
    let mut lines = format!("{name}: {:?}", standing.verdict);
    if let Some(margin) = standing.margin {
        lines += &format!(", {}", words.margin(margin));
    }
    if let Some(moment) = standing.first_short {
        lines += &format!(", first short {}", words.figure(&Figure::Moment(moment)));
    }
    lines += "\n";
    for finding in &standing.findings {
        lines += &format!("  {}\n", words.say(finding));
        lines += &words.next_step(finding).map_or_else(String::new, |step| format!("    {step}\n"));
    }
    for working in &standing.working {
        lines += &format!("  {} ({})\n", words.working(working), words.source(working.source));
    }
    lines
}
