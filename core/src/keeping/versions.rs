//! Earlier versions of a plan: a few of the last minutes, fewer of the days before.

use serde_json::Value;

use super::{Moment, part};
use crate::plan::Plain;
use crate::plan::record::object;

/// The most versions of a plan that are kept.
pub const MOST_VERSIONS: usize = 10;

/// How far apart versions are at least, in milliseconds.
pub const APART_MS: Moment = 5 * 60 * 1000;

/// A plan as it once was.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Version {
    /// When it was so.
    pub at: Moment,
    /// The file it was.
    pub document: Value,
}

/// The earlier versions of a plan, the oldest first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Versions(pub Vec<Version>);

impl Versions {
    /// Whether the last version is old enough for the next one.
    pub fn are_due(&self, now: Moment) -> bool {
        // A clock that was set back must not keep versions from being made.
        self.0.last().is_none_or(|last| last.at > now || now - last.at >= APART_MS)
    }

    /// Adds a version, unless the last one is the same; old ones are thinned out.
    pub fn add(&mut self, version: Version) {
        if self.0.last().is_some_and(|last| last.document == version.document) {
            return;
        }
        self.0.push(version);
        while self.0.len() > MOST_VERSIONS {
            self.0.remove(least_missed(&self.0));
        }
    }
}

/// The version that is missed least, never the newest: the one whose neighbours are closest to one another, for their
/// age. So the spans between those that stay grow with their age, from minutes to weeks.
fn least_missed(versions: &[Version]) -> usize {
    let newest = versions.last().map_or(0, |last| last.at);
    let age = |at: usize| versions.get(at).map_or(0, |version| newest.saturating_sub(version.at));
    let mut least = (0, f64::INFINITY);
    for at in 0..versions.len().saturating_sub(1) {
        // The oldest has no older neighbour; it goes when all the others are spread out.
        let older = if at == 0 { age(0).saturating_mul(4) } else { age(at - 1) };
        let gap = older.saturating_sub(age(at + 1)) as f64 / (age(at) + APART_MS) as f64;
        if gap < least.1 {
            least = (at, gap);
        }
    }
    least.0
}

impl Plain for Version {
    fn to_plain(&self) -> Value {
        object(vec![("at", self.at.to_plain()), ("document", self.document.clone())])
    }

    fn read(&mut self, value: &Value) -> bool {
        *self = Self { at: part(value, "at"), document: part(value, "document") };
        self.document.is_object()
    }
}

impl Plain for Versions {
    fn to_plain(&self) -> Value {
        self.0.to_plain()
    }

    /// What cannot be read is left out: the others are still worth having.
    fn read(&mut self, value: &Value) -> bool {
        let read = value.as_array().map(|entries| entries.iter().filter_map(Version::from_plain).collect());
        read.map(|read| self.0 = read).is_some()
    }
}
