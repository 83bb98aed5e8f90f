//! Money: what is free to be spent, cash by day, what is ahead, and what it all comes to.

mod afford;
mod ahead;
mod chances;
mod course;
mod entries;
mod going_home;
mod groups;
mod loans;
mod month;
mod names;
mod unanswered;

use kerbstead_core::Balance;

pub(super) use chances::{odds, refused, waiting};
pub use entries::in_and_out;
pub use names::group_key;

use super::{balance_head_with, section};
use crate::el::{View, el, fragment};
use crate::route::Page;
use crate::state::App;

/// The page.
pub fn money() -> View {
    let chances = chances::Chances::of(App::here());
    fragment()
        .put(balance_head_with(Balance::Money, section(key!("money-afford"), afford::afford())))
        .put(unanswered::unanswered())
        .put(section(key!("money-course"), course::course(chances)))
        .put(section(key!("money-chances"), chances.told()))
        .put(section(key!("money-reserve"), chances.reserve()))
        .put(section(key!("money-ahead"), ahead::ahead()))
        .put(section(key!("money-more"), more()))
        .put(section(key!("money-groups"), groups::groups()))
        .put(month::month())
        .put(loans::loans())
        .put(going_home::going_home())
        .done()
}

/// The pages that belong to it.
fn more() -> View {
    let pages = [Page::InAndOut, Page::Receipts, Page::Buying, Page::Selling, Page::Futures, Page::Kit];
    let line = |page: &Page| el("li").put(el("a").attr("href", page.link()).put(page.title())).done();
    el("ul").class("more").put_each(pages.iter().map(line)).done()
}
