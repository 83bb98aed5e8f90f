//! Ids that no entry has yet.

use std::collections::BTreeSet;

use super::Id;

/// Gives ids that are not taken: the one after the highest, or, when there is none above, the lowest free one.
#[derive(Debug)]
pub(super) struct FreeIds {
    taken: BTreeSet<Id>,
    lowest: Id,
}

impl FreeIds {
    /// Ids besides those.
    pub fn beside(taken: impl IntoIterator<Item = Id>) -> Self {
        Self { taken: taken.into_iter().collect(), lowest: 1 }
    }

    /// One of them, which is taken from now on.
    pub fn take(&mut self) -> Id {
        let above = self.taken.last().map_or(Some(1), |highest| highest.checked_add(1));
        let id = above.unwrap_or_else(|| {
            while self.taken.contains(&self.lowest) {
                self.lowest = self.lowest.saturating_add(1);
            }
            self.lowest
        });
        self.taken.insert(id);
        id
    }
}
