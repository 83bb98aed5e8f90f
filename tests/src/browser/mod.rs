//! The bundle in a real browser: a headless Chromium, opened and driven over `WebDriver`.
//!
//! A [`Browser`] has its own file server, driver, profile and browser process, and ends all of them when it
//! is dropped, also by a panic. Its methods wait and return errors that say what the page showed.
// Every method fails only by the browser or the page, and the error says how.
#![allow(clippy::missing_errors_doc)]

mod audit;
mod driver;
mod find;
mod kill;
mod net_log;
mod offline;
mod page;
mod session;

pub use find::Found;
pub use kill::kill;
pub use session::Browser;
pub use thirtyfour::{Key, TypingData};

/// A script that makes a worker of the bundle, ready to be asked; what it breaks off with goes to `done`.
pub const HIRED: &str = "
    const of = (selector, name) => document.querySelector(selector)[name];
    const worker = new Worker(of('meta[name=worker]', 'content'), { type: 'module' });
    worker.onerror = (event) => done(String(event.message));
    worker.postMessage([of('link[rel=modulepreload]', 'href'), of(\"link[type='application/wasm']\", 'href')]);";

/// The address of every page, behind the `#` of the start page. A new page is added here, and is then
/// checked and pictured like the others.
pub const ROUTES: [&str; 38] = [
    "/",
    "/overview",
    "/kit",
    "/route",
    "/balances",
    "/warmth",
    "/signal",
    "/materials",
    "/log",
    "/brief",
    "/changes",
    "/likely",
    "/money",
    "/in-and-out",
    "/selling",
    "/futures",
    "/buying",
    "/power",
    "/tonight",
    "/sky",
    "/aisle",
    "/water",
    "/days",
    "/space",
    "/inside",
    "/load",
    "/work",
    "/clearing",
    "/shop",
    "/plans",
    "/beside",
    "/papers",
    "/receipts",
    "/share",
    "/open",
    // The example as a friend sees it, and what one answers to it.
    include_str!("../../data/share/route-of-a-plan.txt"),
    include_str!("../../data/share/route-of-an-answer.txt"),
    "/start",
];

/// What the device prefers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scheme {
    /// Dark text on a light ground.
    Light,
    /// Light text on a dark ground.
    Dark,
}

impl Scheme {
    /// Both, for checks that must hold in each.
    pub const ALL: [Self; 2] = [Self::Light, Self::Dark];

    /// The value of the media feature `prefers-color-scheme`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }
}

/// How a browser is opened.
#[derive(Clone, Copy, Debug)]
pub struct Setup {
    /// The page's width in CSS pixels.
    pub width: u32,
    /// The page's height in CSS pixels.
    pub height: u32,
    /// What the device prefers.
    pub scheme: Scheme,
    /// The path that the bundle is served under, with a slash at both ends.
    pub folder: &'static str,
}

impl Default for Setup {
    fn default() -> Self {
        Self { width: 1280, height: 900, scheme: Scheme::Light, folder: "/" }
    }
}

impl Setup {
    /// The smallest phone that must work.
    pub fn phone() -> Self {
        Self { width: 320, height: 640, ..Self::default() }
    }
}
