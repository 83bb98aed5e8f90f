//! Two versions of a plan that both come from a third, as one: what either of them changed is in it.
//!
//! It works on files, so that also what this version does not know is merged.

use serde_json::{Map, Value};

use super::Drafts;
use super::renaming::{Renaming, give_new_ids, give_way};
use crate::order;
use crate::plan::{Path, Plain};

/// A plan's file with what is half typed.
#[derive(Clone, Copy, Debug)]
pub struct Side<'a> {
    /// The file.
    pub document: &'a Value,
    /// Text that no field could take yet.
    pub drafts: &'a Drafts,
}

/// Two versions of a plan as one.
#[derive(Clone, Debug, PartialEq)]
pub struct Merged {
    /// The file.
    pub document: Value,
    /// What is half typed.
    pub drafts: Drafts,
    /// Where both sides changed the same and not alike; the later side's is in the file.
    pub clashes: Vec<Clash>,
    /// Entries of the earlier side that were given other ids, since the later side has new ones of the same id.
    pub renamings: Vec<Renaming>,
}

/// Something that both sides changed, each in its way.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The field, or the entry that one side took out.
    pub path: Path,
    /// What the later side has, which counts; `Null` when it has nothing there.
    pub later: Value,
    /// What the earlier side has.
    pub earlier: Value,
}

/// Merges what two sides made of the same plan. What only one of them changed is taken over, field by field and entry
/// by entry; where both changed a field, the later side counts and the clash is told. An entry that one side took out
/// and the other changed stays, unless the later side took it out and gave its id to something else. The rule does not ask which side is one's own, so two that merge the same come to the
/// same.
///
/// ```
/// use kerbstead_core::keeping::{Drafts, Side, merge};
/// use serde_json::json;
/// let drafts = Drafts::default();
/// let side = |document| Side { document, drafts: &drafts };
/// let base = json!({ "title": "North", "people": 1 });
/// let (later, earlier) = (json!({ "title": "South", "people": 1 }), json!({ "title": "North", "people": 2 }));
/// let merged = merge(side(&base), side(&later), side(&earlier));
/// assert_eq!(merged.document, json!({ "title": "South", "people": 2 }));
/// assert_eq!(merged.clashes, []);
/// ```
pub fn merge(base: Side, later: Side, earlier: Side) -> Merged {
    let (mut theirs, mut drafts) = (earlier.document.clone(), earlier.drafts.clone());
    let renamings = give_new_ids(base.document, later.document, &mut theirs);
    for renaming in &renamings {
        drafts = drafts.renamed(renaming);
    }
    let mut clashes = Vec::new();
    give_way(base.document, later.document, &mut theirs, &mut clashes);
    let files = Three { base: base.document, later: later.document, earlier: &theirs };
    let document = files.merged(&Path::default(), &mut clashes);
    let texts = [base.drafts, later.drafts, &drafts].map(Plain::to_plain);
    let text = Three { base: &texts[0], later: &texts[1], earlier: &texts[2] }.merged(&Path::default(), &mut clashes);
    Merged { document, drafts: Drafts::from_plain(&text).unwrap_or_default(), clashes, renamings }
}

const NOTHING: &Value = &Value::Null;

/// A value as it stands in all three; `Null` where there is none.
#[derive(Clone, Copy)]
struct Three<'a> {
    base: &'a Value,
    later: &'a Value,
    earlier: &'a Value,
}

impl<'a> Three<'a> {
    fn merged(self, path: &Path, clashes: &mut Vec<Clash>) -> Value {
        let Self { base, later, earlier } = self;
        if later == earlier || base == earlier {
            return later.clone();
        }
        if base == later {
            return earlier.clone();
        }
        match (later, earlier) {
            (Value::Null, Value::Array(list)) | (Value::Array(list), Value::Null) if is_of_entries(list, base) => {
                let or_empty = |value: &'a Value| if value.is_null() { &EMPTY } else { value };
                let merged = Three { base, later: or_empty(later), earlier: or_empty(earlier) }.merged(path, clashes);
                if merged == EMPTY { Value::Null } else { merged }
            }
            (Value::Object(one), Value::Object(other)) if !is_range(later) && !is_range(earlier) => {
                Value::Object(self.fields(one, other, path, clashes))
            }
            (Value::Array(one), Value::Array(other)) if one.iter().chain(other).all(Value::is_string) => {
                Value::Array(as_sets(entries(base), one, other))
            }
            (Value::Array(one), Value::Array(other)) if has_ids(one) && has_ids(other) => {
                let [base, later, earlier] = [entries(base), one, other].map(ById::new);
                Lists { base, later, earlier }.merged(path, clashes)
            }
            _ => {
                clashes.push(Clash { path: path.clone(), later: later.clone(), earlier: earlier.clone() });
                // What one side took out and the other changed stays.
                if later.is_null() { earlier.clone() } else { later.clone() }
            }
        }
    }

    fn fields(
        self,
        one: &Map<String, Value>,
        other: &Map<String, Value>,
        path: &Path,
        clashes: &mut Vec<Clash>,
    ) -> Map<String, Value> {
        let mut merged = Map::new();
        for name in one.keys().chain(other.keys()) {
            if merged.contains_key(name) {
                continue;
            }
            let value = self.at(|value| value.get(name)).merged(&path.child(name), clashes);
            // A field that was taken out is not there, which is not the same as nothing in every kind of field.
            if !value.is_null() || one.get(name).is_some_and(Value::is_null) {
                merged.insert(name.clone(), value);
            }
        }
        merged
    }

    fn at(self, part: impl Fn(&'a Value) -> Option<&'a Value>) -> Self {
        let get = |value| part(value).unwrap_or(NOTHING);
        Self { base: get(self.base), later: get(self.later), earlier: get(self.earlier) }
    }
}

/// What a list is that a file leaves out, as it does with that of guesses.
static EMPTY: Value = Value::Array(Vec::new());

/// Whether a list that one side left out is merged entry by entry.
fn is_of_entries(list: &[Value], base: &Value) -> bool {
    let all = || list.iter().chain(entries(base));
    base.is_array() && (all().all(Value::is_string) || has_ids(list) && has_ids(entries(base)))
}

/// A range is one value: its low end of one side and its high end of the other need not be in order.
fn is_range(value: &Value) -> bool {
    value.get("likely").is_some()
}

fn entries(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn id_of(entry: &Value) -> u64 {
    entry.get("id").and_then(Value::as_u64).unwrap_or(0)
}

fn has_ids(entries: &[Value]) -> bool {
    entries.iter().any(|entry| id_of(entry) > 0) || entries.is_empty()
}

/// Texts in any order, such as the paths of guesses: those of both sides, save what one of them took out.
fn as_sets(base: &[Value], later: &[Value], earlier: &[Value]) -> Vec<Value> {
    let is_kept = |text: &&Value| (later.contains(text) && earlier.contains(text)) || !base.contains(text);
    let new = earlier.iter().filter(|text| !later.contains(text));
    later.iter().chain(new).filter(is_kept).cloned().collect()
}

/// A list with entries that have ids, as it stands in all three.
struct Lists<'a> {
    base: ById<'a>,
    later: ById<'a>,
    earlier: ById<'a>,
}

impl Lists<'_> {
    fn merged(&self, path: &Path, clashes: &mut Vec<Clash>) -> Value {
        let (first, second) = self.in_order(path, clashes);
        let mut merged: Vec<Value> = Vec::new();
        for entry in first.entries {
            merged.extend(self.entry(entry, path, clashes));
        }
        // What only the other side has comes behind what it stands behind there.
        let mut before = 0;
        for entry in second.entries {
            if !first.same_as(entry).is_null() {
                let place = merged.iter().position(|there| is_same(there, entry));
                before = place.map_or(before, |at| at + 1);
            } else if let Some(entry) = self.entry(entry, path, clashes) {
                merged.insert(before.min(merged.len()), entry);
                before += 1;
            }
        }
        Value::Array(merged)
    }

    /// The side whose order counts, and the other one: the side that changed it, or the later one.
    fn in_order(&self, path: &Path, clashes: &mut Vec<Clash>) -> (&ById<'_>, &ById<'_>) {
        let sides = [&self.base, &self.later, &self.earlier];
        let in_all = |entry: &&Value| sides.iter().all(|side| !side.same_as(entry).is_null());
        let order = |side: &ById| side.entries.iter().filter(in_all).map(id_of).collect::<Vec<u64>>();
        let [was, later, earlier] = sides.map(order);
        if later == was && earlier != was {
            return (&self.earlier, &self.later);
        }
        if later != earlier && earlier != was {
            let ids = |ids: Vec<u64>| Value::Array(ids.into_iter().map(Value::from).collect());
            clashes.push(Clash { path: path.clone(), later: ids(later), earlier: ids(earlier) });
        }
        (&self.later, &self.earlier)
    }

    /// An entry of either side as it is in the merged list; none when it is taken out.
    fn entry(&self, entry: &Value, path: &Path, clashes: &mut Vec<Clash>) -> Option<Value> {
        let [base, later, earlier] = [&self.base, &self.later, &self.earlier].map(|side| side.same_as(entry));
        let merged = Three { base, later, earlier }.merged(&path.child(&id_of(entry).to_string()), clashes);
        (!merged.is_null()).then_some(merged)
    }
}

fn is_same(one: &Value, other: &Value) -> bool {
    if id_of(one) > 0 { id_of(one) == id_of(other) } else { one == other }
}

/// Entries by their id, so that none of ten thousand is searched for. Those without an id are the same when they are
/// equal.
struct ById<'a> {
    entries: &'a [Value],
    ids: Vec<(u64, usize)>,
}

impl<'a> ById<'a> {
    fn new(entries: &'a [Value]) -> Self {
        Self { entries, ids: order::sorted(entries.iter().map(id_of)) }
    }

    fn same_as(&self, entry: &Value) -> &'a Value {
        let found = match id_of(entry) {
            0 => self.entries.iter().find(|there| *there == entry),
            id => order::find(&self.ids, id).and_then(|at| self.entries.get(self.ids.get(at)?.1)),
        };
        found.unwrap_or(NOTHING)
    }
}
