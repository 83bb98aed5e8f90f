//! Kerbstead in the browser. Components show what core computes and collect what core needs; they hold no rules.
//!
//! - [`state`]: the one store: the open plan, its assessment, what is half typed, undo;
//! - [`storage`], [`browser`], [`route`], [`locale`]: one small module for each browser API;
//! - [`el`], [`live`]: elements, and what follows the plan, with one copy of their code in the bundle;
//! - [`send`], [`post`]: how links leave, and what came by link and waits;
//! - [`worker`]: what takes long, beside the page;
//! - [`json`]: values of core to and from JavaScript;
//! - [`parts`]: fields bound to paths, lists of entries, verdicts, plots;
//! - [`pages`]: one file a page;
//! - [`embed`]: what other pages can call.

#![forbid(unsafe_code)]

#[macro_use]
mod locale;

mod browser;
mod call;
mod el;
mod embed;
mod json;
mod live;
mod pages;
mod parts;
mod post;
mod route;
mod send;
mod shell;
mod state;
mod storage;
mod worker;

fn main() {
    std::panic::set_hook(Box::new(|panic| browser::report(&panic.to_string())));
    // Other pages may load this module only for the functions of `embed`, and a worker for those of `worker`: then there is
    // no place to show the app in.
    if let Some(place) = browser::place_of_the_app() {
        leptos::mount::mount_to(place.clone(), move || shell::show_in(place)).forget();
    }
}
