//! One file a page.

mod balances;
mod beside;
mod brief;
mod buying;
mod changes;
mod compare;
mod days;
mod futures;
mod helping;
mod keeping;
mod kit;
mod likely;
mod load;
mod log;
mod materials;
mod money;
mod open;
mod overview;
mod papers;
mod plans;
mod power;
mod receipts;
mod reply;
mod restore;
mod route;
mod selling;
mod share;
mod shop;
mod signal;
mod space;
mod start;
mod versions;
mod visitor;
mod warmth;
mod water;

use kerbstead_core::words::Key;
use kerbstead_core::{Assessment, Balance};

pub use balances::balances;
pub use beside::beside;
pub use brief::brief;
pub use buying::buying;
pub use changes::changes;
pub use days::{clearing, days, work};
pub use futures::futures;
pub use kit::kit;
pub use likely::likely;
pub use load::load;
pub use log::log;
pub use materials::materials;
pub use money::{in_and_out, money};
pub use open::open;
pub use overview::overview;
pub use papers::papers;
pub use plans::plans;
pub use power::{aisle, power, sky, tonight};
pub use receipts::receipts;
pub use route::route;
pub use selling::selling;
pub use share::share;
pub use shop::shop;
pub use signal::signal;
pub use space::{inside, space};
pub use start::start;
pub use warmth::warmth;
pub use water::water;

use crate::el::{View, el, fragment};
use crate::live::{self, Memo};
use crate::locale::plain_sentence;
use crate::parts::{Grounds, StandingView, standing_details, verdict_badge};
use crate::route::Page;
use crate::state::App;

/// All balances, in the order in which pages show them.
pub const BALANCES: [Balance; 8] = [
    Balance::Money,
    Balance::Days,
    Balance::Power,
    Balance::Water,
    Balance::Warmth,
    Balance::Space,
    Balance::Load,
    Balance::Signal,
];

/// The page of a balance.
pub const fn balance_page(balance: Balance) -> Page {
    match balance {
        Balance::Money => Page::Money,
        Balance::Power => Page::Power,
        Balance::Water => Page::Water,
        Balance::Days => Page::Days,
        Balance::Space => Page::Space,
        Balance::Load => Page::Load,
        Balance::Warmth => Page::Warmth,
        Balance::Signal => Page::Signal,
    }
}

/// The name of a balance in the catalogue.
pub const fn balance_title(balance: Balance) -> Key {
    match balance {
        Balance::Money => key!("page-money"),
        Balance::Power => key!("page-power"),
        Balance::Water => key!("page-water"),
        Balance::Days => key!("page-days"),
        Balance::Space => key!("page-space"),
        Balance::Load => key!("page-load"),
        Balance::Warmth => key!("page-warmth"),
        Balance::Signal => key!("page-signal"),
    }
}

/// The standing of a balance in words.
fn standing(app: App, balance: Balance) -> StandingView {
    app.assessment(|assessment| standing_of(assessment, balance))
}

/// The standing of a balance of any assessment in words.
fn standing_of(assessment: &Assessment, balance: Balance) -> StandingView {
    match balance {
        Balance::Money => StandingView::of(&assessment.money.standing),
        Balance::Power => StandingView::of(&assessment.power.standing),
        Balance::Water => StandingView::of(&assessment.water.standing),
        Balance::Days => StandingView::of(&assessment.days.standing),
        Balance::Space => StandingView::of(&assessment.space.standing),
        Balance::Load => StandingView::of(&assessment.load.standing),
        Balance::Warmth => StandingView::of(&assessment.warmth.standing),
        Balance::Signal => StandingView::of(&assessment.signal.standing),
    }
}

/// What the standing of a balance rests on.
fn grounds(app: App, balance: Balance) -> Grounds {
    app.assessment(|assessment| grounds_of(assessment, balance))
}

/// What the standing of a balance of any assessment rests on.
fn grounds_of(assessment: &Assessment, balance: Balance) -> Grounds {
    match balance {
        Balance::Money => Grounds::of(&assessment.money.standing),
        Balance::Power => Grounds::of(&assessment.power.standing),
        Balance::Water => Grounds::of(&assessment.water.standing),
        Balance::Days => Grounds::of(&assessment.days.standing),
        Balance::Space => Grounds::of(&assessment.space.standing),
        Balance::Load => Grounds::of(&assessment.load.standing),
        Balance::Warmth => Grounds::of(&assessment.warmth.standing),
        Balance::Signal => Grounds::of(&assessment.signal.standing),
    }
}

/// The head of a balance's page: its verdict, followed as the plan changes.
fn balance_head(balance: Balance) -> View {
    balance_head_with(balance, fragment().done())
}

/// The same with something between the verdict and what it rests on.
fn balance_head_with(balance: Balance, between: View) -> View {
    let app = App::here();
    let view = live::memo(move || standing(app, balance));
    let grounds = live::memo(move || grounds(app, balance));
    fragment()
        .put(el("h1").put(balance_title(balance)))
        .put(verdict_line(view))
        .put(between)
        .put(standing_details(view, grounds))
        .done()
}

/// The verdict of a standing, and one sentence on it.
fn verdict_line(view: Memo<StandingView>) -> View {
    let badge = move || verdict_badge(view.with(|standing| standing.verdict));
    let line = move || view.with(|standing| standing.line.clone());
    el("p").class("verdict-line").put(live::view(badge)).put(" ").put(el("span").put(live::text(line))).done()
}

/// A part of a page under a heading.
fn section(title: Key, content: View) -> View {
    el("section").attr("aria-label", plain_sentence(title)).put(el("h2").put(title)).put(content).done()
}
