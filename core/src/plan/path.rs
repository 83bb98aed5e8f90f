//! The address of a field in a plan.

use std::fmt;

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{Id, List};

/// Where a value stands in a plan: `purse/opening_cash`, `kit/12/draw/power_w`. Entries of lists go by their id, so a
/// path stays true when lists are reordered.
///
/// ```
/// use kerbstead_core::plan::Path;
/// let price = Path::entry("kit", 12).child("unit_price");
/// assert_eq!(price.as_str(), "kit/12/unit_price");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Path(String);

impl Path {
    /// The path of a section such as `purse`, or of a field of the plan itself.
    pub fn section(name: &str) -> Self {
        Self(name.to_owned())
    }

    /// The path of the entry of a list.
    pub fn entry(list: &str, id: Id) -> Self {
        Self(format!("{list}/{id}"))
    }

    /// The path of a field, or of a nested field `draw/power_w`, below this one.
    #[must_use]
    pub fn child(&self, name: &str) -> Self {
        if self.0.is_empty() { Self(name.to_owned()) } else { Self(format!("{}/{name}", self.0)) }
    }

    /// The path as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The first part, and what follows it.
    pub fn split_first(&self) -> (&str, &str) {
        self.0.split_once('/').unwrap_or((&self.0, ""))
    }

    /// The name of the field the path ends in.
    pub fn last(&self) -> &str {
        self.0.rsplit('/').next().unwrap_or("")
    }

    /// The same path when the entry `from` of the list has the id `to`.
    #[must_use]
    pub fn renamed(self, list: List, from: Id, to: Id) -> Self {
        let old = Self::entry(list.name(), from);
        match self.0.strip_prefix(old.as_str()) {
            Some(rest) if self.is_within(&old) => Self(format!("{}/{to}{rest}", list.name())),
            _ => self,
        }
    }

    /// Whether this path is `other` or lies below it.
    pub fn is_within(&self, other: &Self) -> bool {
        self.0.strip_prefix(other.as_str()).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
    }
}

impl fmt::Display for Path {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.0)
    }
}

impl From<&str> for Path {
    fn from(text: &str) -> Self {
        Self(text.to_owned())
    }
}

/// The value of a field in an entry as it stands in the file; the name may lead into parts, as `draw/power_w` does.
///
/// ```
/// use kerbstead_core::plan::value_in;
/// let entry = serde_json::json!({ "draw": { "power_w": 40 } });
/// assert_eq!(value_in(&entry, "draw/power_w"), Some(&40.into()));
/// assert_eq!(value_in(&entry, "mass_kg"), None);
/// ```
pub fn value_in<'a>(entry: &'a Value, name: &str) -> Option<&'a Value> {
    name.split('/').try_fold(entry, |value, part| value.get(part))
}
