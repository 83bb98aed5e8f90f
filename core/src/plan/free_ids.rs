//! Ids that no entry has yet.

use super::Id;
use crate::order;

/// Gives ids that are not taken: the one after the highest, or, when there is none above, the lowest free one.
#[derive(Debug)]
pub(super) struct FreeIds {
    /// Ids that entries have, in order.
    taken: Vec<(u64, usize)>,
    /// Which of them were claimed, each once.
    claimed: Vec<bool>,
    highest: Id,
    lowest: Id,
}

impl FreeIds {
    /// Ids besides those.
    pub fn beside(taken: impl IntoIterator<Item = Id>) -> Self {
        let mut highest = 0;
        let taken = order::sorted(taken.into_iter().map(|id| {
            highest = highest.max(id);
            u64::from(id)
        }));
        Self { claimed: vec![false; taken.len()], taken, highest, lowest: 1 }
    }

    /// One of them, which is taken from now on.
    pub fn take(&mut self) -> Id {
        if let Some(above) = self.highest.checked_add(1) {
            self.highest = above;
            return above;
        }
        while order::find(&self.taken, self.lowest.into()).is_some() {
            self.lowest = self.lowest.saturating_add(1);
        }
        let id = self.lowest;
        self.lowest = id.saturating_add(1);
        id
    }

    /// Whether an id that is taken is claimed for the first time.
    pub fn claim(&mut self, id: Id) -> bool {
        let claimed = order::find(&self.taken, id.into()).and_then(|at| self.claimed.get_mut(at));
        claimed.is_some_and(|claimed| !std::mem::replace(claimed, true))
    }
}
