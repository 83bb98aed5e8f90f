//! What travels in a link.

use serde_json::Value;

use super::answer::Answer;
use super::bits::Bits;
use super::codec::{Stop, Walk, all};
use super::likely::Told;
use super::place::Place;
use super::prime::{Version, primed};
use super::scope::{Scope, Tells};
use super::text;
use super::tree::Tree;
use super::unreadable::Unreadable;
use crate::plan::{Id, Plain};

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

/// The number of an answer, among those of scopes.
const ANSWER: u32 = 8;

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
        Self::told_to(file, Tells { scope, with_money: with_money && scope != Scope::Helper }, None)
    }

    /// What concerns one helper of a plan: the dates of the build, the tasks that are not done with what they need, and
    /// the helper's own entry with their other days. Never money.
    ///
    /// ```
    /// use kerbstead_core::plan::{Document, demo_plan};
    /// use kerbstead_core::share::Parcel;
    /// let plan = demo_plan();
    /// let helper = plan.helpers[1].id;
    /// let Parcel::Plan { file, .. } = Parcel::for_helper(&Document::new(&plan).write(&plan), helper) else {
    ///     unreachable!("a plan gives a plan")
    /// };
    /// assert_eq!(file["helpers"].as_array().unwrap().len(), 1);
    /// assert!(file["costs"].is_null());
    /// ```
    pub fn for_helper(file: &Value, helper: Id) -> Self {
        Self::told_to(file, Tells { scope: Scope::Helper, with_money: false }, Some(helper))
    }

    fn told_to(file: &Value, tells: Tells, helper: Option<Id>) -> Self {
        let file = if tells.all() { file.clone() } else { tells.part(file, helper) };
        Self::Plan { scope: tells.scope, with_money: tells.with_money, file }
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
    seal_as(Version::default(), parcel)
}

/// A parcel as text of one version: for tests of links that were made before.
#[doc(hidden)]
pub fn seal_as(version: Version, parcel: &Parcel) -> Result<String, Unreadable> {
    let mut tree = primed(version, Bits::writing());
    Parcel::walk(&mut tree, Some(parcel)).map_err(|Stop| Unreadable::TooMuch)?;
    let text = text::short(version, &tree.codec.into_bits().finish());
    if text.len() > text::MOST_CHARS {
        return Err(Unreadable::TooLong { most: text::MOST_CHARS });
    }
    Ok(text)
}

/// The parcel in a text that [`seal`] or [`split`](super::split) made, in this version of links or one before. Takes
/// bounded time and memory, whatever the text: at most [`MOST_CHARS`](super::MOST_CHARS) characters are read, and at
/// most [`MOST_BITS`](super::MOST_BITS) bits are made of them.
///
/// # Errors
/// Why it cannot be opened. Numbers in a parcel come back to the bit; whole ones are written as such, `12` for `12.0`.
pub fn open(text: &str) -> Result<Parcel, Unreadable> {
    let (version, bytes) = text::bytes(text)?;
    let mut tree = primed(version, Bits::reading(&bytes));
    Parcel::walk(&mut tree, None).map_err(|Stop| Unreadable::TooMuch)
}
