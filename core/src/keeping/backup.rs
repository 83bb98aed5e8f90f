//! All plans as one file, and what a file brings back.

use serde_json::Value;

use super::{Drafts, Kept, Settings, Slot, Versions, part, title_of};
use crate::plan::record::object;
use crate::plan::{Document, Path, Plain, Plan, Problem, Wrong, differences, made_like};

/// The version of the backup that this code writes. A reader takes what it knows of a later one; the plans in it have a
/// version of their own.
pub const BACKUP_VERSION: u32 = 1;

/// The most bytes of a file that are read.
pub const MOST_BACKUP_BYTES: usize = 5_000_000;

/// The name that tells a backup from other files, and holds its version.
const SIGN: &str = "kerbstead_backup";

/// What the records of plans are called in the storage, and so in the file that a page writes which has stopped.
const RECORD: &str = "kerbstead.plan.";

/// All that a device keeps, as one file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Backup {
    /// The plans, in the order of the shelf.
    pub plans: Vec<Saved>,
    /// What the person chose for themselves.
    pub settings: Option<Settings>,
    /// How many plans of the file cannot be read.
    pub unreadable: usize,
}

/// A plan in a backup.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Saved {
    /// Its file.
    pub document: Value,
    /// Text that no field could take yet.
    pub drafts: Drafts,
    /// Whether it is the invented example.
    pub is_demo: bool,
    /// As it was earlier.
    pub earlier: Versions,
}

/// How a plan of a file and the plans of a device go together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// No plan here has its name.
    New,
    /// It is here as it is there.
    Same,
    /// A plan of its name is here, and is not the same.
    Changed {
        /// Where that plan is.
        slot: Slot,
        /// In how many things they differ.
        count: usize,
    },
}

impl Backup {
    /// Reads the text of a file: a backup, a single plan, or what a page that has stopped saved.
    ///
    /// ```
    /// use kerbstead_core::keeping::Backup;
    /// use kerbstead_core::plan::Plain;
    /// let one = Backup::open(r#"{ "title": "North", "kit": [] }"#).unwrap();
    /// let again = Backup::open(&one.to_plain().to_string()).unwrap();
    /// assert_eq!(again.plans[0].document["title"], "North");
    /// assert!(Backup::open(r#"{ "something": "else" }"#).is_err());
    /// ```
    ///
    /// # Errors
    /// When the text is too long, is not JSON, or holds no plan.
    pub fn open(text: &str) -> Result<Self, Problem> {
        if text.len() > MOST_BACKUP_BYTES {
            return Err(whole(Wrong::TooLarge { most: MOST_BACKUP_BYTES }));
        }
        let value: Value = serde_json::from_str(text)
            .map_err(|error| whole(Wrong::NotJson { line: error.line(), column: error.column() }))?;
        Self::from_value(&value)
    }

    /// Reads a file that has been parsed already.
    ///
    /// # Errors
    /// When it holds no plan.
    pub fn from_value(value: &Value) -> Result<Self, Problem> {
        let backup = Self::of(value);
        if backup.plans.is_empty() { Err(whole(Wrong::NotAPlan)) } else { Ok(backup) }
    }

    fn of(value: &Value) -> Self {
        if value.get(SIGN).is_some() {
            let plans = value.get("plans").and_then(Value::as_array).map(Vec::as_slice).unwrap_or_default();
            let settings = value.get("settings").and_then(Settings::from_plain);
            let read: Vec<Saved> = plans.iter().filter_map(Saved::from_plain).collect();
            return Self { unreadable: plans.len() - read.len(), plans: read, settings };
        }
        let mut plans = Vec::new();
        for (name, record) in value.as_object().into_iter().flatten() {
            if let Some(kept) = name.strip_prefix(RECORD).and_then(|_| Kept::from_plain(record)) {
                plans.push(Saved { document: kept.document, drafts: kept.drafts, ..Saved::default() });
            }
        }
        if plans.is_empty() && is_plan(value) {
            plans.push(Saved { document: value.clone(), ..Saved::default() });
        }
        Self { plans, ..Self::default() }
    }
}

fn whole(wrong: Wrong) -> Problem {
    Problem { path: Path::default(), wrong }
}

/// Whether a text, read as JSON, is deeper than any file of ours by far. Readers go a level deeper for each bracket, and a
/// stranger's file must not exhaust them.
pub fn is_too_deep(text: &str) -> bool {
    const MOST_LEVELS: usize = 100;
    let (mut level, mut deepest, mut is_text, mut is_escaped) = (0_usize, 0, false, false);
    for byte in text.bytes() {
        match byte {
            _ if is_escaped => is_escaped = false,
            b'\\' if is_text => is_escaped = true,
            b'"' => is_text = !is_text,
            b'[' | b'{' if !is_text => level += 1,
            b']' | b'}' if !is_text => level = level.saturating_sub(1),
            _ => {}
        }
        deepest = deepest.max(level);
    }
    deepest > MOST_LEVELS
}

/// Whether an object has at least one part of a plan: any object could be read as one, with nothing in it.
fn is_plan(value: &Value) -> bool {
    let plan = Plan::default().to_plain();
    let known = plan.as_object().into_iter().flatten().map(|(name, _)| name);
    known.into_iter().any(|name| value.get(name).is_some())
}

impl Saved {
    /// How it goes together with the plans there are.
    pub fn fit(&self, here: &[(Slot, Kept)]) -> Fit {
        let title = self.title();
        let mut fit = Fit::New;
        for (slot, kept) in here.iter().filter(|(_, kept)| kept.title() == title) {
            if kept.document == self.document {
                return Fit::Same;
            }
            if fit == Fit::New {
                fit = Fit::Changed { slot: *slot, count: count(&kept.document, &self.document) };
            }
        }
        fit
    }

    /// A kept plan with this one in its place, as a change that can be taken back.
    pub fn in_place_of(&self, mut kept: Kept) -> Kept {
        let mut before = plan(&kept.document);
        if let Ok(inverse) = made_like(&before, &plan(&self.document)).apply(&mut before) {
            kept.history.done(inverse);
        }
        Kept { document: self.document.clone(), drafts: self.drafts.clone(), ..kept }
    }

    /// Its title, as it stands in the file.
    pub fn title(&self) -> &str {
        title_of(&self.document)
    }
}

/// In how many things two files differ; at least in one, which may be something that is unknown here.
pub fn count(here: &Value, there: &Value) -> usize {
    differences(&plan(here), &plan(there)).len().max(1)
}

fn plan(document: &Value) -> Plan {
    Document::from_value(document.clone()).map(|opened| opened.plan).unwrap_or_default()
}

impl Plain for Saved {
    fn to_plain(&self) -> Value {
        object(vec![
            ("document", self.document.clone()),
            ("drafts", self.drafts.to_plain()),
            ("is_demo", self.is_demo.to_plain()),
            ("earlier", self.earlier.to_plain()),
        ])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self {
            document: part(value, "document"),
            drafts: part(value, "drafts"),
            is_demo: part(value, "is_demo"),
            earlier: part(value, "earlier"),
        };
        self.document.is_object()
    }
}

impl Plain for Backup {
    fn to_plain(&self) -> Value {
        let settings = self.settings.as_ref().map(Plain::to_plain).unwrap_or_default();
        object(vec![(SIGN, BACKUP_VERSION.into()), ("plans", self.plans.to_plain()), ("settings", settings)])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self::of(value);
        !self.plans.is_empty()
    }
}
