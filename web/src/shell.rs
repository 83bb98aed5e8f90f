//! The frame of every page: the name of the plan, undo, the navigation, notices.

use kerbstead_core::keeping::History;

use leptos::prelude::{Owner, window};
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlElement, KeyboardEvent};

use crate::browser;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{plain_sentence, t};
use crate::pages;
use crate::parts::{Shape, button, icon};
use crate::route::{self, Page};
use crate::state::{App, Keeping, WayBack, found};

/// Finds what is kept, opens it and shows the whole app: each in a task of its own, so that a slow phone answers in
/// between.
pub fn show_in(place: HtmlElement) {
    let owner = Owner::current().unwrap_or_default();
    let found = Box::new(found());
    let open = move || {
        let app = owner.with(|| App::open(*found));
        let show = move || {
            // The place is an element, which takes every view.
            let _ = place.append_child(owner.with(|| whole(app)).node());
            browser::mark_ready();
            browser::announce("kerbstead-drawn");
        };
        browser::soon(Box::new(show));
    };
    browser::soon(Box::new(open));
}

fn whole(app: App) -> View {
    let page = route::current_page();
    listen_for_undo(app);
    listen_for_leaving(app);
    app.listen_to_tabs();
    browser::listen_for_files(Box::new(move |file| app.open_file(&file)));
    let is_update_ready = Signal::new(false);
    // `offline.js` tells when a newer version is on the device.
    browser::listen(&window(), "kerbstead-update", Box::new(move |_| is_update_ready.set(true)));
    // Other units or another currency change every word there is, so everything is drawn again.
    live::view(move || {
        app.desk.edition.get();
        fragment()
            .put(
                el("a")
                    .class("skip")
                    .attr("href", "#content")
                    .on_click(|| browser::focus_soon("content".to_owned()))
                    .put(key!("skip-to-content")),
            )
            .put(header(app))
            .put(navigation(page))
            .put(
                el("main")
                    .attr("id", "content")
                    .attr("tabindex", "-1")
                    .put(storage_warning(app))
                    .put(aside_warning(app))
                    .put(live::view(move || show(page.get()))),
            )
            .put(el("div").class("notices").put(update_bar(app, is_update_ready)).put(notice_bar(app)))
            .done()
    })
}

/// Undo and redo by the usual keys, except while typing in a field, which has its own.
fn listen_for_undo(app: App) {
    let press = move |event: &KeyboardEvent| {
        let is_typing = event.target().is_some_and(|target| browser::is_text_input(&target));
        if is_typing || !(event.ctrl_key() || event.meta_key()) {
            return;
        }
        match (event.key().to_ascii_lowercase().as_str(), event.shift_key()) {
            ("z", false) => app.undo(),
            ("z", true) | ("y", false) => app.redo(),
            _ => return,
        }
        event.prevent_default();
    };
    browser::listen(&window(), "keydown", Box::new(move |event: Event| press(event.unchecked_ref())));
}

/// What was just typed is kept before the page goes away, is put into the background or is thrown out of memory.
fn listen_for_leaving(app: App) {
    for name in ["pagehide", "visibilitychange"] {
        browser::listen(&window(), name, Box::new(move |_| app.finish()));
    }
    browser::ask_before_closing(Box::new(move || app.would_lose()));
}

fn show(page: Page) -> View {
    browser::set_title(&format!("{} · Kerbstead", plain_sentence(page.title())));
    match page {
        Page::Overview => pages::overview(),
        Page::Kit => pages::kit(),
        Page::Route => pages::route(),
        Page::Balances => pages::balances(),
        Page::Changes => pages::changes(),
        Page::Likely => pages::likely(),
        Page::Money => pages::money(),
        Page::InAndOut => pages::in_and_out(),
        Page::Selling => pages::selling(),
        Page::Futures => pages::futures(),
        Page::Buying => pages::buying(),
        Page::Power => pages::power(),
        Page::Tonight => pages::tonight(),
        Page::Sky => pages::sky(),
        Page::Aisle => pages::aisle(),
        Page::Water => pages::water(),
        Page::Days => pages::days(),
        Page::Space => pages::space(),
        Page::Inside => pages::inside(),
        Page::Load => pages::load(),
        Page::Warmth => pages::warmth(),
        Page::Signal => pages::signal(),
        Page::Materials => pages::materials(),
        Page::Work => pages::work(),
        Page::Clearing => pages::clearing(),
        Page::Shop => pages::shop(),
        Page::Log => pages::log(),
        Page::Brief => pages::brief(),
        Page::Receipts => pages::receipts(),
        Page::Papers => pages::papers(),
        Page::Plans => pages::plans(),
        Page::Beside => pages::beside(),
        Page::Share => pages::share(),
        Page::Open => pages::open(),
        Page::Start => pages::start(),
    }
}

fn header(app: App) -> View {
    let nothing_to_undo = move || !app.desk.history.with(History::can_undo);
    let verdicts = live::memo(move || verdicts_in_words(app));
    let nothing_to_redo = move || !app.desk.history.with(History::can_redo);
    el("header")
        .put(
            el("p").class("plan-name").put(
                el("a").attr("href", Page::Plans.link()).put(live::text(move || app.plan(|plan| plan.title.clone()))),
            ),
        )
        .put(
            el("div")
                .class("history")
                .put(
                    el("button")
                        .attr("type", "button")
                        .live_flag("disabled", nothing_to_undo)
                        .on_click(move || app.undo())
                        .put(key!("undo")),
                )
                .put(
                    el("button")
                        .attr("type", "button")
                        .live_flag("disabled", nothing_to_redo)
                        .on_click(move || app.redo())
                        .put(key!("redo")),
                ),
        )
        .put(el("p").class("visually-hidden").attr("aria-live", "polite").put(live::text(move || verdicts.get())))
        .done()
}

/// Tells people who hear the page how a change came out.
fn verdicts_in_words(app: App) -> String {
    app.assessment(|assessment| {
        let parts = assessment.verdicts().map(|(balance, verdict)| {
            format!("{}: {}", plain_sentence(pages::balance_title(balance)), crate::parts::verdict_word(verdict))
        });
        parts.join(". ")
    })
}

fn navigation(page: Signal<Page>) -> View {
    let main = [
        (Page::Overview, Shape::Signpost),
        (Page::Kit, Shape::Crate),
        (Page::Balances, Shape::Level),
        (Page::Shop, Shape::PriceTag),
        (Page::Plans, Shape::Maps),
    ];
    let below_balances = [
        Page::Route,
        Page::Money,
        Page::Days,
        Page::Power,
        Page::Water,
        Page::Warmth,
        Page::Space,
        Page::Load,
        Page::Signal,
        Page::Materials,
    ];
    let link = move |to: Page, shape: Option<Shape>| {
        let current = move || (page.get() == to).then(|| "page".to_owned());
        el("a")
            .attr("href", to.link())
            .live("aria-current", current)
            .put(shape.map(icon))
            .put(el("span").put(to.title()))
            .done()
    };
    let further = [
        Page::Changes,
        Page::Likely,
        Page::InAndOut,
        Page::Selling,
        Page::Futures,
        Page::Work,
        Page::Clearing,
        Page::Inside,
    ];
    let is_below = move || below_balances.contains(&page.get()) || further.contains(&page.get());
    let items = main.map(|(to, shape)| {
        let below = (to == Page::Balances).then(|| {
            let links = below_balances.map(|to| el("li").put(link(to, None)).done());
            el("ul").class("below").put_each(links).done()
        });
        let class = move || (to == Page::Balances && is_below()).then(|| "holds-current".to_owned());
        el("li").live("class", class).put(link(to, Some(shape))).put(below).done()
    });
    el("nav").attr("aria-label", t!("navigation")).put(el("ul").put_each(items)).done()
}

fn storage_warning(app: App) -> View {
    live::view(move || {
        let text = match app.desk.keeping.get() {
            Keeping::Kept => return nothing(),
            Keeping::Refused => "storage-unavailable",
            Keeping::Full => "storage-full",
        };
        let save = button(key!("backup-save"), move || app.save_all(false));
        el("div").class("warning").attr("role", "alert").put(el("p").put(t(text))).put(save).done()
    })
}

/// Something was there that could not be read.
fn aside_warning(app: App) -> View {
    let is_some = move || !app.desk.asides.with(Vec::is_empty);
    live::when(is_some, move || {
        let link = el("a").attr("href", Page::Plans.link()).put(key!("aside-show"));
        el("div").class("warning").attr("role", "alert").put(el("p").put(key!("aside-found"))).put(link).done()
    })
}

/// A newer version begins only when the person asks for it, and what was typed is kept first.
fn update_bar(app: App, is_ready: Signal<bool>) -> View {
    let begin = move || {
        app.finish();
        browser::announce("kerbstead-update-taken");
    };
    let text = move || if is_ready.get() { t!("update-ready") } else { String::new() };
    bar(text, move || {
        fragment()
            .put(button(key!("update-begin"), begin))
            .put(
                el("button")
                    .attr("type", "button")
                    .class("quiet")
                    .on_click(move || is_ready.set(false))
                    .put(key!("update-later")),
            )
            .done()
    })
}

/// What was just done, with a way back.
fn notice_bar(app: App) -> View {
    let text =
        move || app.desk.notice.with(|notice| notice.as_ref().map(|notice| notice.text.clone())).unwrap_or_default();
    bar(text, move || {
        let can_take_back =
            app.desk.notice.with(|notice| notice.as_ref().is_some_and(|notice| notice.way_back != WayBack::None));
        fragment()
            .put(can_take_back.then(|| button(key!("take-back"), move || app.take_back()).done()))
            .put(
                el("button")
                    .attr("type", "button")
                    .class("quiet")
                    .on_click(move || app.desk.notice.set(None))
                    .put(key!("dismiss")),
            )
            .done()
    })
}

/// A line with buttons that lies over the page while there is a text for it.
fn bar(text: impl Fn() -> String + Copy + Send + Sync + 'static, buttons: impl Fn() -> View + 'static) -> View {
    let is_there = move || !text().is_empty();
    el("div")
        .live("class", move || Some(if is_there() { "notice shown" } else { "notice" }.to_owned()))
        .put(el("p").attr("role", "status").put(live::text(text)))
        .put(live::when(is_there, buttons))
        .done()
}
