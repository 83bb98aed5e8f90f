//! Plans as files: of any version, with whatever else they hold.
//!
//! A document is kept as it was read. Writing a plan back changes only what changed since it was read, so that fields
//! and words which a newer version added come through an older one unharmed.

use serde_json::{Map, Value};

use super::{Path, Plain, Plan, Problem, SCHEMA_VERSION, Wrong, validate};
use crate::order;

/// The most bytes of a document that are read.
pub const MOST_BYTES: usize = 4 * 1024 * 1024;

/// A plan's file as it was read, beside which the plan is edited.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// What stands in the file, migrated to today's version.
    raw: Value,
    /// What the plan read from it looks like when written: what differs from this has been edited.
    base: Value,
}

/// What opening a document gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The document, for writing back.
    pub document: Document,
    /// The plan in it. Fields that could not be used are at their default here and untouched in the document.
    pub plan: Plan,
    /// Everything that could not be used, or can but should not be.
    pub problems: Vec<Problem>,
}

impl Document {
    /// A document for a plan that comes from no file.
    pub fn new(plan: &Plan) -> Self {
        let value = plan.to_plain();
        Self { raw: value.clone(), base: value }
    }

    /// Reads a document.
    ///
    /// ```
    /// use kerbstead_core::plan::Document;
    /// let text = r#"{"title": "North", "kit": [{"name": "Can", "colour": "blue"}]}"#;
    /// let mut opened = Document::open(text).unwrap();
    /// opened.plan.title = "South".into();
    /// let file = opened.document.write(&opened.plan);
    /// assert_eq!(file["title"], "South");
    /// assert_eq!(file["kit"][0]["colour"], "blue"); // unknown here, kept
    /// ```
    ///
    /// # Errors
    /// When the text is too long, is not JSON or is not an object. Everything less becomes one of
    /// [`Opened::problems`].
    pub fn open(text: &str) -> Result<Opened, Problem> {
        if text.len() > MOST_BYTES {
            return Err(whole(Wrong::TooLarge { most: MOST_BYTES }));
        }
        let raw: Value = serde_json::from_str(text)
            .map_err(|error| whole(Wrong::NotJson { line: error.line(), column: error.column() }))?;
        Self::from_value(raw)
    }

    /// Reads a document that has been parsed already.
    ///
    /// # Errors
    /// When it is not an object.
    pub fn from_value(raw: Value) -> Result<Opened, Problem> {
        let Value::Object(mut raw) = raw else { return Err(whole(Wrong::NotAPlan)) };
        let mut problems = Vec::new();
        migrate(&mut raw, &mut problems);
        let mut raw = Value::Object(raw);
        validate::number_entries(&mut raw, &mut problems);
        let mut usable = raw.clone();
        validate::keep_usable(&mut usable, &mut problems);
        let plan: Plan = Plan::from_plain(&usable).ok_or_else(|| whole(Wrong::NotAPlan))?;
        problems.extend(validate::across_fields(&plan));
        let base = plan.to_plain();
        Ok(Opened { document: Self { raw, base }, plan, problems })
    }

    /// The file for the plan as it is now.
    pub fn write(&self, plan: &Plan) -> Value {
        merge(&self.raw, &self.base, &plan.to_plain())
    }
}

/// A problem of the document as a whole.
fn whole(wrong: Wrong) -> Problem {
    Problem { path: Path::default(), wrong }
}

/// A step from one version of the model to the next.
type Step = fn(&mut Map<String, Value>);

/// The step at position `n` leads from version `n + 1` to version `n + 2`.
const STEPS: [Step; SCHEMA_VERSION as usize - 1] = [];

/// Brings an older document to today's version; says so when it comes from a newer one, whose number then stays.
fn migrate(raw: &mut Map<String, Value>, problems: &mut Vec<Problem>) {
    let found = raw.get("schema_version").and_then(Value::as_u64).unwrap_or(u64::from(SCHEMA_VERSION));
    if found > u64::from(SCHEMA_VERSION) {
        let wrong = Wrong::NewerVersion { found, known: SCHEMA_VERSION };
        problems.push(Problem { path: Path::section("schema_version"), wrong });
        return;
    }
    for step in STEPS.iter().skip(usize::try_from(found.max(1) - 1).unwrap_or(usize::MAX)) {
        step(raw);
    }
    raw.insert("schema_version".to_owned(), SCHEMA_VERSION.into());
}

/// `raw` with what differs between `base` and `now`.
fn merge(raw: &Value, base: &Value, now: &Value) -> Value {
    if base == now {
        return raw.clone();
    }
    match (raw, base, now) {
        (Value::Object(raw), Value::Object(base), Value::Object(now)) => Value::Object(merge_fields(raw, base, now)),
        (Value::Array(raw), Value::Array(base), Value::Array(now)) if now.iter().chain(base).all(has_id) => {
            Value::Array(merge_entries(raw, base, now))
        }
        _ => now.clone(),
    }
}

fn merge_fields(raw: &Map<String, Value>, base: &Map<String, Value>, now: &Map<String, Value>) -> Map<String, Value> {
    let mut merged = raw.clone();
    for name in base.keys().filter(|name| !now.contains_key(*name)) {
        merged.remove(name);
    }
    for (name, value) in now {
        let was = base.get(name).unwrap_or(&Value::Null);
        let written = raw
            .get(name)
            .map_or_else(|| if was == value { None } else { Some(value.clone()) }, |raw| Some(merge(raw, was, value)));
        if let Some(written) = written {
            merged.insert(name.clone(), written);
        }
    }
    merged
}

/// Entries in today's order, then those that could not be read.
fn merge_entries(raw: &[Value], base: &[Value], now: &[Value]) -> Vec<Value> {
    let (raw_by_id, base_by_id) = (ById::new(raw), ById::new(base));
    let merged = now.iter().map(|entry| merge(raw_by_id.same_as(entry), base_by_id.same_as(entry), entry));
    let unread = raw.iter().filter(|entry| base_by_id.same_as(entry).is_null());
    merged.chain(unread.cloned()).collect()
}

/// Entries by their id, so that none of ten thousand is searched for.
struct ById<'a> {
    entries: &'a [Value],
    ids: Vec<(u64, usize)>,
}

impl<'a> ById<'a> {
    fn new(entries: &'a [Value]) -> Self {
        // No entry has the id 0: those without any are found by none.
        Self { entries, ids: order::sorted(entries.iter().map(|entry| id_of(entry).unwrap_or(0))) }
    }

    /// The entry with the same id.
    fn same_as(&self, entry: &Value) -> &'a Value {
        let at = id_of(entry).filter(|id| *id > 0).and_then(|id| order::find(&self.ids, id));
        let (_, at) = at.and_then(|at| self.ids.get(at).copied()).unwrap_or((0, usize::MAX));
        self.entries.get(at).unwrap_or(&Value::Null)
    }
}

fn id_of(entry: &Value) -> Option<u64> {
    entry.get("id").and_then(Value::as_u64)
}

fn has_id(entry: &Value) -> bool {
    entry.get("id").is_some()
}
