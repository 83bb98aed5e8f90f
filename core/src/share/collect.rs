//! Parts that come one by one, as codes are photographed.

use super::text::{MOST_PARTS, Part, joined, part};

/// The most parts that are kept while others are waited for.
const MOST_KEPT: usize = 2 * MOST_PARTS as usize;

/// What came of a part that was put to those before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Collected {
    /// It was the last one: this is the whole text.
    Whole(String),
    /// Others are missing.
    Waiting {
        /// How many there are in all.
        count: u32,
        /// Which are missing, from 0.
        missing: Vec<u32>,
    },
    /// All are there and make no text: one of them was changed on its way.
    Damaged,
}

/// Puts the text of a part to those that are kept, and puts its set together if it was the last. Then nothing of the set
/// is kept any more. None when it is no part.
///
/// ```
/// use kerbstead_core::share::{Collected, Parcel, Scope, collect, seal, split};
/// let text = seal(&Parcel::of(&serde_json::json!({ "title": "North" }), Scope::Whole, true)).unwrap();
/// let parts = split(&text, 20);
/// let mut kept = Vec::new();
/// for part in &parts[1..] {
///     assert!(matches!(collect(&mut kept, part), Some(Collected::Waiting { missing, .. }) if missing.contains(&0)));
/// }
/// assert_eq!(collect(&mut kept, &parts[0]), Some(Collected::Whole(text)));
/// assert!(kept.is_empty());
/// ```
pub fn collect(kept: &mut Vec<String>, text: &str) -> Option<Collected> {
    let new = part(text)?;
    if !kept.iter().any(|other| other == text) {
        kept.push(text.to_owned());
    }
    kept.drain(..kept.len().saturating_sub(MOST_KEPT));
    let is_of_set = |text: &String| part(text).is_some_and(|part| part.set == new.set && part.count == new.count);
    let set: Vec<Part> = kept.iter().filter(|text| is_of_set(text)).filter_map(|text| part(text)).collect();
    let outcome = match joined(&set) {
        Ok(text) => Collected::Whole(text),
        Err(missing) if missing.is_empty() => Collected::Damaged,
        Err(missing) => return Some(Collected::Waiting { count: new.count, missing }),
    };
    kept.retain(|text| !is_of_set(text));
    Some(outcome)
}
