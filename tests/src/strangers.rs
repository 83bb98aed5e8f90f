//! Links and files as strangers could send them, made by chance and read.
//!
//! Of every hundred inputs, fifty are files of plans (sound, faulty, cut, changed) and fifty are links: forty-eight texts
//! with characters changed, which their check mostly stops, and two bytes behind a check that is right, which take a
//! hundred times as long.

use kerbstead_core::keeping::Backup;
use kerbstead_core::plan::{Document, Plain, demo_plan};
use kerbstead_core::share::{Parcel, Scope, Version, joined, open, part_of, seal_as, split};

use crate::generate::{documents, seeded};
use crate::links::{Chance, Readers, mutated};

/// What reads them, and what became of them.
pub struct Strangers {
    readers: Readers,
    links: Box<dyn Iterator<Item = (Version, Vec<u8>)>>,
    chance: Chance,
    texts: Vec<String>,
    files: Vec<String>,
    next: u64,
    tally: Tally,
}

impl Strangers {
    /// Another seed makes other inputs.
    pub fn new(seed: u64) -> Self {
        let short = |file: &String| file.len() < 20_000;
        Self {
            readers: Readers::default(),
            links: Box::new(mutated(seed)),
            chance: Chance::new(seed),
            texts: texts(),
            files: seeded(&documents(), seed, 400).into_iter().filter(short).collect(),
            next: 0,
            tally: Tally::default(),
        }
    }

    /// Reads one more input.
    ///
    /// # Panics
    /// When it does harm.
    pub fn read_one(&mut self) {
        match self.next % 100 {
            0..50 => self.file(),
            50..52 => self.bytes(),
            _ => self.text(),
        }
        self.next += 1;
    }

    /// What became of those that were read.
    pub fn tally(&self) -> &Tally {
        &self.tally
    }

    fn file(&mut self) {
        let sound = self.chance.one_of(&self.files);
        let text = self.chance.changed(sound.as_bytes());
        let text = String::from_utf8_lossy(&text);
        // A file that is brought in may be a plan or a backup.
        let _ = Backup::open(&text);
        match Document::open(&text) {
            Ok(opened) => {
                let written = opened.document.write(&opened.plan);
                assert!(written.is_object(), "a plan is written as an object");
                self.tally.files_opened += 1;
            }
            Err(_) => self.tally.files_refused += 1,
        }
    }

    fn bytes(&mut self) {
        let (version, bytes) = self.links.next().unwrap_or_default();
        match self.readers.open(version, &bytes) {
            Ok(Parcel::Plan { file, .. }) => {
                if let Ok(opened) = Document::from_value(file) {
                    assert!(opened.document.write(&opened.plan).is_object(), "a plan is written as an object");
                }
                self.tally.links_opened += 1;
            }
            Ok(Parcel::Answer(answer)) => {
                let _ = answer.applied(&demo_plan());
                self.tally.links_opened += 1;
            }
            Err(_) => self.tally.links_refused += 1,
        }
    }

    fn text(&mut self) {
        let sound = self.chance.one_of(&self.texts);
        let text = self.chance.changed(sound.as_bytes());
        let text = String::from_utf8_lossy(&text);
        if let Some(part) = part_of(&text) {
            let _ = joined(&[part]);
        }
        match open(&text) {
            Ok(_) => self.tally.texts_opened += 1,
            Err(_) => self.tally.texts_refused += 1,
        }
    }
}

/// What became of the inputs.
#[derive(Debug, Default)]
pub struct Tally {
    /// Files that are plans.
    pub files_opened: u64,
    /// Files that are none.
    pub files_refused: u64,
    /// Bytes behind a right check that are a parcel.
    pub links_opened: u64,
    /// Those that are none.
    pub links_refused: u64,
    /// Texts that are still links.
    pub texts_opened: u64,
    /// Texts that are none any more.
    pub texts_refused: u64,
}

/// Sound texts of every version: whole ones, ones in capitals, and parts.
fn texts() -> Vec<String> {
    let parcels = Scope::ALL.map(|scope| Parcel::of(&demo_plan().to_plain(), scope, true));
    let of = |version| parcels.iter().filter_map(move |parcel| seal_as(version, parcel).ok());
    let mut texts = Vec::new();
    for text in Version::ALL.into_iter().flat_map(of) {
        texts.extend(split(&text, usize::MAX));
        texts.extend(split(&text, 300));
        texts.push(text);
    }
    texts
}
