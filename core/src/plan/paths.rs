//! A set of paths.

use serde_json::Value;

use super::record::serde_by_plain;
use super::{Path, Plain};

/// Paths, each of them once, in order.
///
/// A sorted list: there are at most some hundreds, and a search tree would be sixteen kilobytes more for a phone to load.
///
/// ```
/// use kerbstead_core::plan::{Path, Paths};
/// let mut paths: Paths = ["people", "kit/1/mass_kg", "people"].map(Path::from).into_iter().collect();
/// assert!(paths.contains(&"people".into()));
/// paths.remove(&"people".into());
/// assert_eq!(paths.iter().map(Path::as_str).collect::<Vec<_>>(), ["kit/1/mass_kg"]);
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(transparent))]
pub struct Paths(#[cfg_attr(feature = "schema", schemars(with = "std::collections::BTreeSet<Path>"))] Vec<Path>);

impl Paths {
    /// Whether a path is one of them.
    pub fn contains(&self, path: &Path) -> bool {
        self.0.binary_search(path).is_ok()
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Puts a path in, unless it is there.
    pub fn insert(&mut self, path: Path) {
        if let Err(at) = self.0.binary_search(&path) {
            self.0.insert(at, path);
        }
    }

    /// Takes a path out, if it is there.
    pub fn remove(&mut self, path: &Path) {
        if let Ok(at) = self.0.binary_search(path) {
            self.0.remove(at);
        }
    }

    /// Takes out all paths but those that `keep` says yes to.
    pub fn retain(&mut self, keep: impl FnMut(&Path) -> bool) {
        self.0.retain(keep);
    }

    /// The paths, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, Path> {
        self.0.iter()
    }
}

impl Extend<Path> for Paths {
    fn extend<I: IntoIterator<Item = Path>>(&mut self, paths: I) {
        for path in paths {
            self.insert(path);
        }
    }
}

impl FromIterator<Path> for Paths {
    fn from_iter<I: IntoIterator<Item = Path>>(paths: I) -> Self {
        let mut collected = Self::default();
        collected.extend(paths);
        collected
    }
}

impl IntoIterator for Paths {
    type Item = Path;
    type IntoIter = std::vec::IntoIter<Path>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a> IntoIterator for &'a Paths {
    type Item = &'a Path;
    type IntoIter = std::slice::Iter<'a, Path>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl Plain for Paths {
    fn to_plain(&self) -> Value {
        self.0.to_plain()
    }

    fn read(&mut self, value: &Value) -> bool {
        let Some(paths) = Vec::from_plain(value) else { return false };
        *self = paths.into_iter().collect();
        true
    }
}

serde_by_plain!(Paths);
