//! The records that a device keeps: the shelf, the plans on it, the person's settings.

use serde_json::{Number, Value};

use super::{History, Renaming};
use crate::plan::record::object;
use crate::plan::{Document, Path, Plain, Plan};

/// The number of a plan's place in the storage.
pub type Slot = u32;

/// A point in time, in milliseconds since 1970 began in UTC.
pub type Moment = u64;

/// The plans there are.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shelf {
    /// In the order they are listed.
    pub cards: Vec<Card>,
    /// The plan that is open.
    pub open: Slot,
}

/// A plan on the shelf.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Card {
    /// Where it is kept.
    pub slot: Slot,
    /// Its title.
    pub title: String,
    /// Whether it is the invented example.
    pub is_demo: bool,
}

/// A plan as it is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// The file.
    pub document: Value,
    /// Text that no field could take yet, by the field's path.
    pub drafts: Drafts,
    /// What can be taken back.
    pub history: History,
    /// Which of the states of this plan it is.
    pub mark: Mark,
    /// The state it was made from.
    pub after: Mark,
    /// When it was kept.
    pub at: Moment,
}

/// The name of one state of a plan: of two, the later one is the greater.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mark {
    /// How many states there were before.
    pub revision: u32,
    /// The tab that made it.
    pub tab: u32,
}

/// Text by the path of its field. There are never more than a few.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Drafts(Vec<(Path, String)>);

/// What the person chose for themselves rather than for a plan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// Whether values are shown in US customary units; `None` follows the region.
    pub us_customary: Option<bool>,
    /// Whether the browser was asked not to clear what is kept.
    pub asked_to_stay: bool,
}

impl Shelf {
    /// The card of a slot.
    pub fn card(&self, slot: Slot) -> Option<&Card> {
        self.cards.iter().find(|card| card.slot == slot)
    }
}

impl Kept {
    /// A plan that comes from no file.
    pub fn of(plan: &Plan) -> Self {
        Self { document: as_stored(Document::new(plan).write(plan)), ..Self::default() }
    }

    /// Gives it another title.
    pub fn put_title(&mut self, title: String) {
        if let Some(document) = self.document.as_object_mut() {
            document.insert("title".to_owned(), title.into());
        }
    }

    /// Its title, as it stands in the file.
    pub fn title(&self) -> &str {
        title_of(&self.document)
    }
}

/// The title of a plan, as it stands in its file.
pub fn title_of(document: &Value) -> &str {
    document.get("title").and_then(Value::as_str).unwrap_or_default()
}

impl Drafts {
    /// The text of a field.
    pub fn get(&self, path: &Path) -> Option<&String> {
        self.0.iter().find(|(of, _)| of == path).map(|(_, text)| text)
    }

    /// Keeps a text, in place of the one there was for its field.
    pub fn insert(&mut self, path: Path, text: String) {
        self.remove(&path);
        self.0.push((path, text));
    }

    /// All texts, in the order in which they were typed.
    pub fn all(&self) -> impl Iterator<Item = &str> {
        self.0.iter().map(|(_, text)| text.as_str())
    }

    /// Forgets the text of a field.
    pub fn remove(&mut self, path: &Path) {
        self.0.retain(|(of, _)| of != path);
    }

    /// The same texts when an entry has been given another id.
    #[must_use]
    pub fn renamed(self, renaming: &Renaming) -> Self {
        let rename = |path: Path| path.renamed(renaming.list, renaming.from, renaming.to);
        Self(self.0.into_iter().map(|(path, text)| (rename(path), text)).collect())
    }
}

impl Plain for Shelf {
    fn to_plain(&self) -> Value {
        object(vec![("cards", self.cards.to_plain()), ("open", self.open.to_plain())])
    }

    fn read(&mut self, value: &Value) -> bool {
        self.open = part(value, "open");
        value.get("cards").is_some_and(|cards| self.cards.read(cards))
    }
}

impl Plain for Card {
    fn to_plain(&self) -> Value {
        object(vec![
            ("slot", self.slot.to_plain()),
            ("title", self.title.to_plain()),
            ("is_demo", self.is_demo.to_plain()),
        ])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { slot: part(value, "slot"), title: part(value, "title"), is_demo: part(value, "is_demo") };
        value.get("slot").is_some_and(Value::is_u64)
    }
}

impl Plain for Kept {
    fn to_plain(&self) -> Value {
        object(vec![
            ("document", self.document.clone()),
            ("drafts", self.drafts.to_plain()),
            ("history", self.history.to_plain()),
            ("mark", self.mark.to_plain()),
            ("after", self.after.to_plain()),
            ("at", self.at.to_plain()),
        ])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self {
            document: part(value, "document"),
            drafts: part(value, "drafts"),
            history: part(value, "history"),
            mark: part(value, "mark"),
            after: part(value, "after"),
            at: part(value, "at"),
        };
        self.document.is_object()
    }
}

impl Plain for Mark {
    fn to_plain(&self) -> Value {
        object(vec![("revision", self.revision.to_plain()), ("tab", self.tab.to_plain())])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { revision: part(value, "revision"), tab: part(value, "tab") };
        value.is_object()
    }
}

impl Plain for Drafts {
    fn to_plain(&self) -> Value {
        object(self.0.iter().map(|(path, text)| (path.as_str(), text.to_plain())).collect())
    }

    fn read(&mut self, value: &Value) -> bool {
        self.0.clear();
        for (path, text) in value.as_object().into_iter().flatten() {
            if let Some(text) = text.as_str() {
                self.insert(Path::from(path.as_str()), text.to_owned());
            }
        }
        value.is_object()
    }
}

impl Plain for Settings {
    fn to_plain(&self) -> Value {
        object(vec![("us_customary", self.us_customary.to_plain()), ("asked_to_stay", self.asked_to_stay.to_plain())])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { us_customary: part(value, "us_customary"), asked_to_stay: part(value, "asked_to_stay") };
        value.is_object()
    }
}

/// A file as it comes back from text, where a whole number has no point: so that files can be compared.
///
/// ```
/// use kerbstead_core::keeping::as_stored;
/// use serde_json::json;
/// assert_eq!(as_stored(json!({ "mass_kg": 3.0, "hours": [0.5] })), json!({ "mass_kg": 3, "hours": [0.5] }));
/// ```
pub fn as_stored(value: Value) -> Value {
    match value {
        Value::Number(number) => whole(&number).map_or(Value::Number(number), Value::from),
        Value::Array(entries) => Value::Array(entries.into_iter().map(as_stored).collect()),
        Value::Object(mut fields) => {
            for value in fields.values_mut() {
                *value = as_stored(value.take());
            }
            Value::Object(fields)
        }
        other => other,
    }
}

fn whole(number: &Number) -> Option<i64> {
    const MOST_EXACT: f64 = 9_007_199_254_740_991.0;
    let float =
        number.as_f64().filter(|float| float.trunc().to_bits() == float.to_bits() && float.abs() <= MOST_EXACT)?;
    #[allow(clippy::cast_possible_truncation)] // whole and within the range just before
    let whole = float as i64;
    Some(whole)
}

/// A field of an object; its default where it is missing or not of its kind.
pub(super) fn part<T: Plain + Default>(value: &Value, name: &str) -> T {
    value.get(name).and_then(T::from_plain).unwrap_or_default()
}
