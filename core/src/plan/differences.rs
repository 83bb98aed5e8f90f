//! What differs between two plans, each difference with the change that takes it over.

use serde_json::Value;

use super::field::{SECTIONS, Section};
use super::{Edit, Id, List, Path, Plain, Plan, value_in};

/// One thing in which another plan differs from this one.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The field or entry it is about.
    pub path: Path,
    /// What kind of difference it is.
    pub kind: DifferenceKind,
    /// What stands here; `Null` where there is nothing.
    pub here: Value,
    /// What stands there; `Null` where there is nothing.
    pub there: Value,
    /// The change that makes it as it is there. It can be undone like any other.
    pub edit: Edit,
}

/// A kind of difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DifferenceKind {
    /// A field has another value there.
    Changed,
    /// An entry is there and not here.
    Added,
    /// An entry is here and not there.
    Removed,
    /// The entries of a list stand in another order there.
    Reordered,
    /// Other values are guesses there.
    Guesses,
}

/// All differences between a plan and another one, by the order of the table of fields. Entries of a list are the same
/// when they have the same id. Each can be taken alone, save an entry whose id stands in another list here, which must
/// be removed there first; whoever takes all of them, in this order, has the other plan.
///
/// ```
/// use kerbstead_core::plan::{Plan, differences};
/// let here = Plan { title: "North".into(), ..Plan::default() };
/// let there = Plan { title: "South".into(), ..Plan::default() };
/// let found = differences(&here, &there);
/// assert_eq!((found.len(), found[0].path.as_str()), (1, "title"));
/// let mut plan = here.clone();
/// let undo = found[0].edit.clone().apply(&mut plan).unwrap();
/// assert_eq!(plan, there);
/// undo.apply(&mut plan).unwrap();
/// assert_eq!(plan, here);
/// ```
pub fn differences(here: &Plan, there: &Plan) -> Vec<Difference> {
    let mut found = Found { here, there, differences: Vec::new() };
    // Entries go first, so that an id is free again before an entry of another list takes it.
    for list in List::ALL {
        found.removed(*list);
    }
    let plans = [here.to_plain(), there.to_plain()];
    for section in SECTIONS {
        let path = Path::section(section.name);
        match List::named(section.name) {
            Some(list) => found.of_list(section, list),
            None if section.name.is_empty() => found.of_fields(section, &path, [&plans[0], &plans[1]]),
            None => {
                let [here, there] = [0, 1].map(|plan| plans[plan].get(section.name).unwrap_or(&Value::Null));
                found.of_fields(section, &path, [here, there]);
            }
        }
    }
    found.of_guesses();
    found.differences
}

/// The change that makes a plan like another one.
pub fn made_like(here: &Plan, there: &Plan) -> Edit {
    Edit::All { edits: differences(here, there).into_iter().map(|difference| difference.edit).collect() }
}

struct Found<'a> {
    here: &'a Plan,
    there: &'a Plan,
    differences: Vec<Difference>,
}

impl Found<'_> {
    /// Notes a difference. What is a guess there becomes one here with its value.
    fn push(&mut self, path: Path, kind: DifferenceKind, [here, there]: [Value; 2], edit: Edit) {
        let within = |plan: &Plan| -> Vec<Path> {
            plan.guesses.iter().filter(|guess| guess.is_within(&path)).cloned().collect()
        };
        // An entry that is added may find guesses of one that once had its id.
        let old = if kind == DifferenceKind::Added { within(self.here) } else { Vec::new() };
        let new = if kind == DifferenceKind::Reordered { Vec::new() } else { within(self.there) };
        let before = Some(old).filter(|paths| !paths.is_empty()).map(|paths| Edit::Guess { paths, guessed: false });
        let after = Some(new).filter(|paths| !paths.is_empty()).map(|paths| Edit::Guess { paths, guessed: true });
        let edit = if before.is_none() && after.is_none() {
            edit
        } else {
            Edit::All { edits: before.into_iter().chain([edit]).chain(after).collect() }
        };
        self.differences.push(Difference { path, kind, here, there, edit });
    }

    fn removed(&mut self, list: List) {
        let kept = list.ids(self.there);
        for id in list.ids(self.here).into_iter().filter(|id| !kept.contains(id)) {
            let entry = list.entry(self.here, id).unwrap_or_default();
            let path = Path::entry(list.name(), id);
            self.push(path, DifferenceKind::Removed, [entry, Value::Null], Edit::Remove { list, id });
        }
    }

    fn of_list(&mut self, section: &Section, list: List) {
        let (own, others) = (list.ids(self.here), list.ids(self.there));
        self.order(list, &common(&own, &others), &common(&others, &own));
        for (at, id) in others.into_iter().enumerate() {
            let path = Path::entry(list.name(), id);
            let entry = list.entry(self.there, id).unwrap_or_default();
            if let Some(own) = list.entry(self.here, id) {
                self.of_fields(section, &path, [&own, &entry]);
            } else {
                let edit = Edit::Insert { list, at, entry: entry.clone() };
                self.push(path, DifferenceKind::Added, [Value::Null, entry], edit);
            }
        }
    }

    fn order(&mut self, list: List, here: &[Id], there: &[Id]) {
        if here == there {
            return;
        }
        // Before anything is added: from the first place on, each goes where it is to stand.
        let edits = there.iter().enumerate().map(|(to, id)| Edit::Move { list, id: *id, to }).collect();
        let values = [here, there].map(|ids| Value::Array(ids.iter().map(|id| (*id).into()).collect()));
        self.push(Path::section(list.name()), DifferenceKind::Reordered, values, Edit::All { edits });
    }

    /// The fields in which two entries differ. A part such as `draw` that only one of them has is one difference.
    fn of_fields(&mut self, section: &Section, path: &Path, entries: [&Value; 2]) {
        let mut names: Vec<&str> = section.fields.iter().filter_map(|field| differing(field.name, entries)).collect();
        names.dedup();
        for name in names {
            let values = entries.map(|entry| value_in(entry, name).cloned().unwrap_or_default());
            let path = path.child(name);
            let edit = Edit::Set { path: path.clone(), value: values[1].clone() };
            self.push(path, DifferenceKind::Changed, values, edit);
        }
    }

    /// Guesses of values that are the same here and there.
    fn of_guesses(&mut self) {
        let is_told = |guess: &Path| {
            let mut told = self.differences.iter().filter(|difference| difference.kind != DifferenceKind::Reordered);
            told.any(|difference| guess.is_within(&difference.path))
        };
        let only = |these: &Plan, others: &Plan| -> Vec<Path> {
            let paths = these.guesses.iter().filter(|path| !others.guesses.contains(path) && !is_told(path));
            paths.cloned().collect()
        };
        let (gone, new) = (only(self.here, self.there), only(self.there, self.here));
        if gone.is_empty() && new.is_empty() {
            return;
        }
        let values = [&gone, &new].map(|paths| Value::Array(paths.iter().map(Plain::to_plain).collect()));
        let gone = Edit::Guess { paths: gone, guessed: false };
        let new = Edit::Guess { paths: new, guessed: true };
        self.push(Path::section("guesses"), DifferenceKind::Guesses, values, Edit::All { edits: vec![gone, new] });
    }
}

fn common(ids: &[Id], others: &[Id]) -> Vec<Id> {
    ids.iter().copied().filter(|id| others.contains(id)).collect()
}

/// How much of a field's name leads to what differs: all of it, or as far as both entries go.
fn differing<'a>(name: &'a str, entries: [&Value; 2]) -> Option<&'a str> {
    let ends = name.match_indices('/').map(|(end, _)| end).chain([name.len()]);
    for end in ends {
        let name = name.get(..end)?;
        match entries.map(|entry| value_in(entry, name)) {
            [here, there] if here == there => return None,
            [Some(Value::Object(_)), Some(Value::Object(_))] => {}
            _ => return Some(name),
        }
    }
    Some(name)
}
