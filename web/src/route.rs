//! Where the person is in the app: the part of the address after `#`, so that any static host under any path will do
//! and a reload comes back to the same page.

use kerbstead_core::words::Key;
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
    /// What would mend what falls short.
    Changes,
    /// How likely all of it holds.
    Likely,
    /// Cash by day.
    Money,
    /// What comes in and goes out apart from the kit.
    InAndOut,
    /// What to sell, when and for how much; what to keep.
    Selling,
    /// Ways of building, compared.
    Futures,
    /// What to buy when.
    Buying,
    /// Charge by hour.
    Power,
    /// How long it lasts from a reading on.
    Tonight,
    /// Where places are, their sky and air.
    Sky,
    /// Power in the aisle.
    Aisle,
    /// Litres by day.
    Water,
    /// Work by day.
    Days,
    /// Millimetres.
    Space,
    /// The inside of the van.
    Inside,
    /// Kilograms.
    Load,
    /// Degrees by hour.
    Warmth,
    /// Gigabytes, and hours of work.
    Signal,
    /// What surfaces take, and how boards are cut.
    Materials,
    /// Tasks, people and tools.
    Work,
    /// Where everything at home ends.
    Clearing,
    /// What one thing in a shop would do.
    Shop,
    /// What was counted and missed on the road.
    Log,
    /// What the next build needs.
    Brief,
    /// What was paid.
    Receipts,
    /// Sheets to print and files for other programs.
    Papers,
    /// All plans, and settings.
    Plans,
    /// Plans side by side.
    Beside,
    /// The plan as a link for a friend.
    Share,
    /// What came by a link.
    Open,
    /// Five questions to a first plan.
    Start,
}

impl Page {
    /// Every page, in the order of the navigation.
    pub const ALL: [Self; 35] = [
        Self::Overview,
        Self::Kit,
        Self::Route,
        Self::Balances,
        Self::Changes,
        Self::Likely,
        Self::Money,
        Self::InAndOut,
        Self::Selling,
        Self::Futures,
        Self::Buying,
        Self::Power,
        Self::Tonight,
        Self::Sky,
        Self::Aisle,
        Self::Water,
        Self::Days,
        Self::Space,
        Self::Load,
        Self::Warmth,
        Self::Signal,
        Self::Materials,
        Self::Work,
        Self::Clearing,
        Self::Inside,
        Self::Shop,
        Self::Log,
        Self::Brief,
        Self::Receipts,
        Self::Papers,
        Self::Plans,
        Self::Beside,
        Self::Share,
        Self::Open,
        Self::Start,
    ];

    /// Its word in the address.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Overview => "overview",
            Self::Kit => "kit",
            Self::Route => "route",
            Self::Balances => "balances",
            Self::Changes => "changes",
            Self::Likely => "likely",
            Self::Money => "money",
            Self::InAndOut => "in-and-out",
            Self::Selling => "selling",
            Self::Futures => "futures",
            Self::Buying => "buying",
            Self::Power => "power",
            Self::Tonight => "tonight",
            Self::Sky => "sky",
            Self::Aisle => "aisle",
            Self::Water => "water",
            Self::Days => "days",
            Self::Space => "space",
            Self::Inside => "inside",
            Self::Load => "load",
            Self::Warmth => "warmth",
            Self::Signal => "signal",
            Self::Materials => "materials",
            Self::Work => "work",
            Self::Clearing => "clearing",
            Self::Shop => "shop",
            Self::Log => "log",
            Self::Brief => "brief",
            Self::Receipts => "receipts",
            Self::Papers => "papers",
            Self::Plans => "plans",
            Self::Beside => "beside",
            Self::Share => "share",
            Self::Open => "open",
            Self::Start => "start",
        }
    }

    /// The link to it.
    pub fn link(self) -> String {
        format!("#/{}", self.word())
    }

    /// Its title in the catalogue.
    pub const fn title(self) -> Key {
        match self {
            Self::Overview => key!("page-overview"),
            Self::Kit => key!("page-kit"),
            Self::Route => key!("page-route"),
            Self::Balances => key!("page-balances"),
            Self::Changes => key!("page-changes"),
            Self::Likely => key!("page-likely"),
            Self::Money => key!("page-money"),
            Self::InAndOut => key!("page-in-and-out"),
            Self::Selling => key!("page-selling"),
            Self::Futures => key!("page-futures"),
            Self::Buying => key!("page-buying"),
            Self::Power => key!("page-power"),
            Self::Tonight => key!("page-tonight"),
            Self::Sky => key!("page-sky"),
            Self::Aisle => key!("page-aisle"),
            Self::Water => key!("page-water"),
            Self::Days => key!("page-days"),
            Self::Space => key!("page-space"),
            Self::Inside => key!("page-inside"),
            Self::Load => key!("page-load"),
            Self::Warmth => key!("page-warmth"),
            Self::Signal => key!("page-signal"),
            Self::Materials => key!("page-materials"),
            Self::Work => key!("page-work"),
            Self::Clearing => key!("page-clearing"),
            Self::Shop => key!("page-shop"),
            Self::Log => key!("page-log"),
            Self::Brief => key!("page-brief"),
            Self::Receipts => key!("page-receipts"),
            Self::Papers => key!("page-papers"),
            Self::Plans => key!("page-plans"),
            Self::Beside => key!("page-beside"),
            Self::Share => key!("page-share"),
            Self::Open => key!("page-open"),
            Self::Start => key!("page-start"),
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
        // What is opened or shown stands behind the page's word, so such a page is drawn anew for each.
        if page.get_untracked() != here() || matches!(here(), Page::Open | Page::Space) {
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

/// What the address says after the page's word and its slash.
pub fn rest_of_address() -> String {
    let hash = window().location().hash().unwrap_or_default();
    hash.splitn(3, '/').nth(2).unwrap_or_default().to_owned()
}

/// Goes to a link within the app, in place of the present page in the history.
pub fn replace(link: &str) {
    // As with `go_to`.
    let _ = window().location().replace(link);
}

/// Goes to a page.
pub fn go(page: Page) {
    go_to(&page.link());
}

/// Goes to a link within the app.
pub fn go_to(link: &str) {
    // Setting the part after `#` cannot leave the page and so is never refused.
    let _ = window().location().set_hash(link);
}
