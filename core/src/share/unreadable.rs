//! Why a link could not be read.

use crate::explain::{Figure, Figures};

/// Why a text that came by link is not opened. Nothing was changed by trying.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// It does not begin as a link of this project does.
    NotALink,
    /// It is longer than is read.
    TooLong {
        /// The most characters.
        most: usize,
    },
    /// It was made by a later version of this project.
    Newer,
    /// It is not as it was when it was made: a piece is missing, or a character was changed.
    Damaged,
    /// It would become more than any plan is.
    TooMuch,
}

impl Unreadable {
    /// Its sentence in the catalogue.
    pub const fn key(self) -> &'static str {
        match self {
            Self::NotALink => "share-not-a-link",
            Self::TooLong { .. } => "share-too-long",
            Self::Newer => "share-newer",
            Self::Damaged => "share-damaged",
            Self::TooMuch => "share-too-much",
        }
    }

    /// The figures in it.
    pub fn figures(self) -> Figures {
        match self {
            Self::TooLong { most } => vec![("most", Figure::count(most))],
            _ => Vec::new(),
        }
    }
}
