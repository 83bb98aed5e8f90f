//! Where the person is in the app: the part of the address after `#`, so that any static host under any path will do
//! and a reload comes back to the same page.

use leptos::prelude::window;

use crate::browser;
use crate::live::Signal;

/// A page of the app.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Page {
    /// Where the plan stands.
    Overview,
    /// The one list.
    Kit,
    /// When and where.
    Route,
    /// All balances, to choose from.
    Balances,
    /// Cash by day.
    Money,
    /// Charge by hour.
    Power,
    /// Litres by day.
    Water,
    /// What one thing in a shop would do.
    Shop,
    /// Sheets to print and files for other programs.
    Papers,
    /// All plans, and settings.
    Plans,
    /// Five questions to a first plan.
    Start,
}

impl Page {
    /// Every page, in the order of the navigation.
    pub const ALL: [Self; 11] = [
        Self::Overview,
        Self::Kit,
        Self::Route,
        Self::Balances,
        Self::Money,
        Self::Power,
        Self::Water,
        Self::Shop,
        Self::Papers,
        Self::Plans,
        Self::Start,
    ];

    /// Its word in the address.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Overview => "overview",
            Self::Kit => "kit",
            Self::Route => "route",
            Self::Balances => "balances",
            Self::Money => "money",
            Self::Power => "power",
            Self::Water => "water",
            Self::Shop => "shop",
            Self::Papers => "papers",
            Self::Plans => "plans",
            Self::Start => "start",
        }
    }

    /// The link to it.
    pub fn link(self) -> String {
        format!("#/{}", self.word())
    }

    /// The name of its title in the catalogue.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Overview => "page-overview",
            Self::Kit => "page-kit",
            Self::Route => "page-route",
            Self::Balances => "page-balances",
            Self::Money => "page-money",
            Self::Power => "page-power",
            Self::Water => "page-water",
            Self::Shop => "page-shop",
            Self::Papers => "page-papers",
            Self::Plans => "page-plans",
            Self::Start => "page-start",
        }
    }

    fn from_hash(hash: &str) -> Self {
        let word = hash.trim_start_matches('#').trim_matches('/');
        let word = word.split('/').next().unwrap_or("");
        Self::ALL.into_iter().find(|page| page.word() == word).unwrap_or(Self::Overview)
    }
}

/// The page the address names, following it as it changes.
pub fn current_page() -> Signal<Page> {
    let here = || Page::from_hash(&window().location().hash().unwrap_or_default());
    let page = Signal::new(here());
    let follow = move || {
        if page.get_untracked() != here() {
            page.set(here());
        }
    };
    browser::listen(&window(), "hashchange", Box::new(move |_| follow()));
    page
}

/// The entry the address names after the page, as in `#/kit/12`.
pub fn entry_in_address() -> Option<kerbstead_core::plan::Id> {
    let hash = window().location().hash().unwrap_or_default();
    hash.rsplit('/').next()?.parse().ok()
}

/// Goes to a page.
pub fn go(page: Page) {
    // Setting the part after `#` cannot leave the page and so is never refused.
    let _ = window().location().set_hash(&format!("/{}", page.word()));
}
