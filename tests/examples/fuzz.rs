//! Reads links and files made by chance, as strangers could send them: `cargo xtask fuzz --inputs N`.

use anyhow::{Context, Result, bail};
use kerbstead_tests::strangers::Strangers;

fn main() -> Result<()> {
    let mut arguments = std::env::args().skip(1);
    let inputs: u64 = match (arguments.next().as_deref(), arguments.next()) {
        (Some("--inputs"), Some(count)) => count.replace('_', "").parse().context("how many inputs, as a number")?,
        (None, None) => 100_000,
        _ => bail!("use it with --inputs N"),
    };
    let mut strangers = Strangers::new(inputs);
    for input in 1..=inputs {
        strangers.read_one();
        if input % 1_000_000 == 0 {
            println!("{input} inputs");
        }
    }
    println!("{inputs} inputs, none of which did any harm: {:?}", strangers.tally());
    Ok(())
}
