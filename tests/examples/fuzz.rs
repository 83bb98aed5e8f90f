//! Reads links and files made by chance, as strangers could send them: `cargo xtask fuzz --inputs N`.
//!
//! Of every hundred inputs, fifty are files of plans (sound, faulty, cut, changed) and fifty are links: forty texts with
//! characters changed, which their check mostly stops, and ten bytes behind a check that is right.

use anyhow::{Context, Result, bail, ensure};
use kerbstead_core::plan::{Document, Plain, demo_plan};
use kerbstead_core::share::{Parcel, Reader, Scope, joined, open, part_of, seal, split};
use kerbstead_tests::generate::{documents, seeded};
use kerbstead_tests::links::{Chance, mutated};

fn main() -> Result<()> {
    let mut arguments = std::env::args().skip(1);
    let inputs: u64 = match (arguments.next().as_deref(), arguments.next()) {
        (Some("--inputs"), Some(count)) => count.replace('_', "").parse().context("how many inputs, as a number")?,
        (None, None) => 100_000,
        _ => bail!("use it with --inputs N"),
    };
    let mut tally = Tally::default();
    let reader = Reader::default();
    let mut links = mutated(inputs);
    let mut chance = Chance::new(inputs);
    let texts = texts()?;
    let files: Vec<String> = seeded(&documents(), inputs, 400).into_iter().filter(|file| file.len() < 20_000).collect();
    for input in 0..inputs {
        match input % 100 {
            0..50 => file(&mut chance, &files, &mut tally),
            50..60 => bytes(&reader, &links.next().unwrap_or_default(), &mut tally)?,
            _ => text(&mut chance, &texts, &mut tally),
        }
        if input % 1_000_000 == 999_999 {
            println!("{} inputs", input + 1);
        }
    }
    println!("{inputs} inputs, none of which did any harm: {tally:?}");
    Ok(())
}

/// What became of the inputs.
#[derive(Debug, Default)]
struct Tally {
    files_opened: u64,
    files_refused: u64,
    links_opened: u64,
    links_refused: u64,
    texts_opened: u64,
    texts_refused: u64,
}

fn file(chance: &mut Chance, files: &[String], tally: &mut Tally) {
    let sound = chance.one_of(files);
    let text = chance.changed(sound.as_bytes());
    match Document::open(&String::from_utf8_lossy(&text)) {
        Ok(opened) => {
            let written = opened.document.write(&opened.plan);
            assert!(written.is_object(), "a plan is written as an object");
            tally.files_opened += 1;
        }
        Err(_) => tally.files_refused += 1,
    }
}

fn bytes(reader: &Reader, bytes: &[u8], tally: &mut Tally) -> Result<()> {
    match reader.open_bytes(bytes) {
        Ok(Parcel::Plan { file, .. }) => {
            if let Ok(opened) = Document::from_value(file) {
                ensure!(opened.document.write(&opened.plan).is_object(), "a plan is written as an object");
            }
            tally.links_opened += 1;
        }
        Ok(Parcel::Answer(answer)) => {
            let _ = answer.applied(&demo_plan());
            tally.links_opened += 1;
        }
        Err(_) => tally.links_refused += 1,
    }
    Ok(())
}

fn text(chance: &mut Chance, texts: &[String], tally: &mut Tally) {
    let sound = chance.one_of(texts);
    let text = chance.changed(sound.as_bytes());
    let text = String::from_utf8_lossy(&text);
    if let Some(part) = part_of(&text) {
        let _ = joined(&[part]);
    }
    match open(&text) {
        Ok(_) => tally.texts_opened += 1,
        Err(_) => tally.texts_refused += 1,
    }
}

/// Sound texts: whole ones, ones in capitals, and parts.
fn texts() -> Result<Vec<String>> {
    let mut texts = Vec::new();
    for scope in Scope::ALL {
        let text = seal(&Parcel::of(&demo_plan().to_plain(), scope, true)).ok().context("the demo plan fits")?;
        texts.extend(split(&text, usize::MAX));
        texts.extend(split(&text, 300));
        texts.push(text);
    }
    Ok(texts)
}
