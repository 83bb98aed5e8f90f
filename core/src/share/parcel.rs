//! What travels in a link.

use serde_json::{Map, Value};

use super::answer::Answer;
use super::bits::Bits;
use super::codec::{Stop, Walk, all};
use super::likely::Told;
use super::place::Place;
use super::prime::primed;
use super::text;
use super::tree::Tree;
use super::unreadable::Unreadable;
use crate::plan::field::{self, Field, SECTIONS, Section};
use crate::plan::{Item, Kind, Obtain, Outcome, Path, Plain};

/// A plan or a part of one on its way to a friend, or the answer on its way back.
#[derive(Clone, Debug, PartialEq)]
pub enum Parcel {
    /// A plan, or a part of it.
    Plan {
        /// How much of it.
        scope: Scope,
        /// Whether amounts of money are in it.
        with_money: bool,
        /// The plan's file, as far as it travels. Open it with [`Document::from_value`](crate::plan::Document).
        file: Value,
    },
    /// An answer to one.
    Answer(Answer),
}

/// How much of a plan is shared.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Scope {
    /// All of it.
    #[default]
    Whole,
    /// The kit.
    Kit,
    /// What is still to be bought.
    Shopping,
    /// What is to be borrowed, and from whom.
    Borrowing,
}

impl Scope {
    /// All of them, each at its number.
    pub const ALL: [Self; 4] = [Self::Whole, Self::Kit, Self::Shopping, Self::Borrowing];
}

/// The number of an answer, among those of scopes.
const ANSWER: u32 = 8;

/// Sections that are about nothing but money.
const MONEY_SECTIONS: [&str; 4] = ["purse", "belongings", "incomes", "costs"];

/// What a shopping list tells of a thing.
const SHOPPING: &[&str] = &[
    "name",
    "group",
    "need",
    "obtain",
    "quantity",
    "unit_price",
    "tax_percent",
    "needed_on",
    "mass_kg",
    "length_mm",
    "width_mm",
    "height_mm",
    "note",
];

/// What a list of things to borrow tells of each.
const BORROWING: &[&str] =
    &["name", "group", "obtain", "quantity", "needed_on", "lender", "length_mm", "width_mm", "height_mm", "note"];

impl Parcel {
    /// So much of a plan's file, with or without money. Without it, and in a part, only what this version knows
    /// travels: of fields added later nobody can say what they tell.
    ///
    /// ```
    /// use kerbstead_core::plan::{Document, demo_plan};
    /// use kerbstead_core::share::{Parcel, Scope};
    /// let plan = demo_plan();
    /// let Parcel::Plan { file, .. } = Parcel::of(&Document::new(&plan).write(&plan), Scope::Borrowing, false) else {
    ///     unreachable!("a plan gives a plan")
    /// };
    /// assert_eq!(file["kit"][0]["lender"], "Aunt Bera");
    /// assert!(file["purse"].is_null());
    /// ```
    pub fn of(file: &Value, scope: Scope, with_money: bool) -> Self {
        let file = if scope == Scope::Whole && with_money { file.clone() } else { part(file, scope, with_money) };
        Self::Plan { scope, with_money, file }
    }

    /// Tells a parcel, or is told one.
    pub(super) fn walk(tree: &mut Tree, known: Option<&Self>) -> Walk<Self> {
        let (number, money, file) = match known {
            Some(Self::Plan { scope, with_money, file }) => (Some(*scope as u32), Some(*with_money), Some(file)),
            Some(Self::Answer(_)) => (Some(ANSWER), Some(false), None),
            None => (None, None, None),
        };
        let number = tree.codec.symbol(number, Told::Byte, 4, &[all([91])])?;
        let with_money = tree.codec.flag(money, &[all([92])])?;
        if number == ANSWER {
            let answer = match known {
                Some(Self::Answer(answer)) => Some(answer.to_plain()),
                _ => None,
            };
            let told = tree.value(Place::ANSWER, answer.as_ref())?;
            return Answer::from_plain(&told).map(Self::Answer).ok_or(Stop);
        }
        let scope = usize::try_from(number).ok().and_then(|number| Scope::ALL.get(number).copied()).ok_or(Stop)?;
        Ok(Self::Plan { scope, with_money, file: tree.plan(file)? })
    }
}

/// A parcel as text that a link can carry: letters, digits, `-` and `_`.
///
/// ```
/// use kerbstead_core::share::{Parcel, Scope, open, seal};
/// let parcel = Parcel::of(&serde_json::json!({ "title": "North with the harvest" }), Scope::Whole, true);
/// let text = seal(&parcel).unwrap();
/// assert_eq!(open(&text), Ok(parcel));
/// ```
///
/// # Errors
/// [`Unreadable::TooMuch`] or [`Unreadable::TooLong`] when nobody could open it: it holds more than a link can.
pub fn seal(parcel: &Parcel) -> Result<String, Unreadable> {
    let mut tree = primed(Bits::writing());
    Parcel::walk(&mut tree, Some(parcel)).map_err(|Stop| Unreadable::TooMuch)?;
    let text = text::short(&tree.codec.into_bits().finish());
    if text.len() > text::MOST_CHARS {
        return Err(Unreadable::TooLong { most: text::MOST_CHARS });
    }
    Ok(text)
}

/// The parcel in a text that [`seal`] or [`split`](super::split) made. Takes bounded time and memory, whatever the
/// text: at most [`MOST_CHARS`](super::MOST_CHARS) characters are read, and at most [`MOST_BITS`](super::MOST_BITS) bits
/// are made of them.
///
/// # Errors
/// Why it cannot be opened. Numbers in a parcel come back to the bit; whole ones are written as such, `12` for `12.0`.
pub fn open(text: &str) -> Result<Parcel, Unreadable> {
    let mut tree = primed(Bits::reading(&text::bytes(text)?));
    Parcel::walk(&mut tree, None).map_err(|Stop| Unreadable::TooMuch)
}

/// A part of a plan's file: what the table of fields knows, less what does not travel.
fn part(file: &Value, scope: Scope, with_money: bool) -> Value {
    let mut part = Map::new();
    for name in ["schema_version", "guesses"].into_iter().filter(|_| scope == Scope::Whole) {
        part.extend(file.get(name).map(|value| (name.to_owned(), value.clone())));
    }
    let tells = |section: &Section, field: &Field| {
        let is_money = matches!(field.kind, Kind::Money { .. } | Kind::Rate);
        let is_told = match (section.name, scope) {
            ("kit", Scope::Shopping) => SHOPPING.contains(&field.name),
            ("kit", Scope::Borrowing) => BORROWING.contains(&field.name),
            _ => true,
        };
        is_told && (with_money || !is_money && !field.name.starts_with("sale/"))
    };
    for section in SECTIONS.iter().filter(|section| travels(section, scope, with_money)) {
        let copied = |entry: &Value| copied(entry, section, &tells);
        if section.name.is_empty() {
            part.append(&mut copied(file));
        } else if let Some(Value::Array(entries)) = file.get(section.name) {
            let entries = entries.iter().filter(|entry| is_in(section, entry, scope));
            let entries = entries.map(|entry| Value::Object(copied(entry))).collect();
            part.insert(section.name.to_owned(), Value::Array(entries));
        } else if let Some(whole) = file.get(section.name) {
            part.insert(section.name.to_owned(), Value::Object(copied(whole)));
        }
    }
    if let Some(guesses) = part.get_mut("guesses").and_then(Value::as_array_mut) {
        let is_told = |path: &str| {
            let section = SECTIONS.iter().find(|section| section.name == Path::from(path).split_first().0);
            let section = section.or(SECTIONS.first()).filter(|section| travels(section, scope, with_money));
            section.zip(field::at(&path.into())).is_some_and(|(section, field)| tells(section, field))
        };
        guesses.retain(|guess| guess.as_str().is_some_and(is_told));
    }
    Value::Object(part)
}

fn travels(section: &Section, scope: Scope, with_money: bool) -> bool {
    let is_money = MONEY_SECTIONS.contains(&section.name);
    match scope {
        Scope::Whole => with_money || !is_money,
        Scope::Kit | Scope::Shopping | Scope::Borrowing => matches!(section.name, "" | "kit"),
    }
}

/// Whether an entry is in a part of the plan.
fn is_in(section: &Section, entry: &Value, scope: Scope) -> bool {
    if section.name != "kit" {
        return true;
    }
    let item = |name: &str| entry.get(name);
    let obtain = item("obtain").map_or(Some(Item::default().obtain), Obtain::from_plain);
    let is_paid = item("paid").and_then(Outcome::from_plain).is_some_and(|paid| paid.happened);
    match scope {
        Scope::Whole | Scope::Kit => true,
        Scope::Shopping => obtain.is_some_and(Obtain::is_paid) && !is_paid,
        Scope::Borrowing => obtain == Some(Obtain::Borrowed),
    }
}

/// The fields of an entry that are told.
fn copied(entry: &Value, section: &Section, tells: &dyn Fn(&Section, &Field) -> bool) -> Map<String, Value> {
    let mut copy = Map::new();
    copy.extend(entry.get("id").filter(|_| section.is_list).map(|id| ("id".to_owned(), id.clone())));
    for field in section.fields.iter().filter(|field| tells(section, field)) {
        let mut names = field.name.split('/');
        let value = names.try_fold(entry, |value, name| value.get(name));
        if let Some(value) = value {
            put(&mut copy, field.name, value);
        }
    }
    copy
}

fn put(object: &mut Map<String, Value>, name: &str, value: &Value) {
    let Some((first, rest)) = name.split_once('/') else {
        object.insert(name.to_owned(), value.clone());
        return;
    };
    let inner = object.entry(first).or_insert_with(|| Value::Object(Map::new()));
    if let Value::Object(inner) = inner {
        put(inner, rest, value);
    }
}
