//! The slip of the shop: it belongs to the device and to no plan.

use super::Drafts;
use crate::plan::record::record;

/// What is typed in the shop, and what was worked out there before.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Slip {
    /// What is typed, by the name of the field.
    pub texts: Drafts,
    /// The newest first.
    pub past: Vec<PastAnswer>,
    /// What is typed where power, what is sent and what cans hold is worked out, by the name of the question and its field.
    pub power: Drafts,
}

record!(Slip { texts, past, power });

/// Something that was worked out in a shop.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PastAnswer {
    /// What it came to, in words.
    pub line: String,
    /// What was typed.
    pub texts: Drafts,
}

record!(PastAnswer { line, texts });
