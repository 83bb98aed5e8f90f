//! What is kept of plans beside the plans themselves, so that nothing a person did is lost: the records of a device, what
//! can be taken back, the journal, earlier versions, two tabs as one, the backup.
//!
//! Nothing here stores anything; the page does, and says what time it is.

mod backup;
mod history;
mod journal;
mod merge;
mod record;
mod renaming;
#[cfg(feature = "schema")]
mod schema;
mod slip;
mod versions;

pub use backup::{BACKUP_VERSION, Backup, Fit, MOST_BACKUP_BYTES, Saved, count, is_too_deep};
pub use history::History;
pub use journal::{Journal, Sheet, Step, replayed};
pub use merge::{Clash, Merged, Side, merge};
use record::part;
pub use record::{Card, Drafts, Kept, Mark, Moment, Settings, Shelf, Slot, as_stored, title_of};
pub use renaming::Renaming;
#[cfg(feature = "schema")]
pub use schema::backup_schema;
pub use slip::{PastAnswer, Slip};
pub use versions::{APART_MS, MOST_VERSIONS, Version, Versions};
