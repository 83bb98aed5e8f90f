//! `cargo xtask`: every chore of the project, one command each.

use anyhow::{Result, bail};
use pico_args::Arguments;
use std::process::ExitCode;
use xtask::{bench, bundle, check, fuzz, reference, serve, shots};

const HELP: &str = "\
cargo xtask COMMAND

  serve [--port N] [--host ADDR] [--open]   build the calculator and serve it (127.0.0.1, port 8080)
  build                                     the static bundle, in dist/
  test [--quick]                            every check and test; --quick leaves out bundle and browser
  shots                                     pictures of every page, in target/shots/
  bench                                     how long an assessment and a page take
  fuzz [--inputs N]                         read links and files as strangers could send them (100,000)
  reference [--check]                       make tests/data/ again from tests/reference/, or compare

What a command needs and the machine lacks, it installs first, into .tools/ where that is possible.";

fn main() -> ExitCode {
    match dispatch(Arguments::from_env()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\nxtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(mut args: Arguments) -> Result<()> {
    if args.contains(["-h", "--help"]) {
        println!("{HELP}");
        return Ok(());
    }
    match args.subcommand()?.as_deref() {
        Some("serve") => {
            let options = serve_options(&mut args)?;
            finish(args)?;
            serve::run(&options)
        }
        Some("build") => {
            finish(args)?;
            bundle::build()
        }
        Some("test") => {
            let quick = args.contains("--quick");
            finish(args)?;
            check::run(quick)
        }
        Some("shots") => {
            finish(args)?;
            shots::run()
        }
        Some("bench") => {
            finish(args)?;
            bench::run()
        }
        Some("fuzz") => {
            let inputs = args.opt_value_from_str("--inputs")?.unwrap_or(100_000);
            finish(args)?;
            fuzz::run(inputs)
        }
        Some("reference") => {
            let check = args.contains("--check");
            finish(args)?;
            reference::run(check)
        }
        Some(other) => bail!("there is no command '{other}'\n\n{HELP}"),
        None => bail!("say which command\n\n{HELP}"),
    }
}

fn serve_options(args: &mut Arguments) -> Result<serve::Options> {
    let defaults = serve::Options::default();
    Ok(serve::Options {
        port: args.opt_value_from_str("--port")?.unwrap_or(defaults.port),
        host: args.opt_value_from_str("--host")?.unwrap_or(defaults.host),
        open: args.contains("--open"),
    })
}

fn finish(args: Arguments) -> Result<()> {
    let rest = args.finish();
    if rest.is_empty() {
        return Ok(());
    }
    bail!("this command does not know {rest:?}\n\n{HELP}")
}
