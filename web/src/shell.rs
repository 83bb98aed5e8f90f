//! The frame of every page: the name of the plan, undo, the navigation, notices.

use leptos::ev;
use leptos::prelude::*;

use crate::browser;
use crate::live;
use crate::locale::t;
use crate::pages;
use crate::parts::{Shape, icon};
use crate::route::{self, Page};
use crate::state::{App as AppState, DeskStoreFields};

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let app = AppState::open();
    provide_context(app);
    let page = route::current_page();
    listen_for_undo(app);
    listen_for_leaving(app);
    // Other units or another currency change every word there is, so everything is drawn again.
    live::view(move || {
        app.desk.edition().track();
        view! {
            <a class="skip" href="#content" on:click=|event| skip(&event)>{t("skip-to-content")}</a>
            {header(app)}
            {navigation(page)}
            <main id="content" tabindex="-1">
                {storage_warning(app)}
                {live::view(move || show(page.get()))}
            </main>
            {notice_bar(app)}
        }
        .into_any()
    })
}

/// The part after `#` is the page's name, so the link that skips to the content must not change it.
fn skip(event: &ev::MouseEvent) {
    event.prevent_default();
    browser::focus_soon("content".to_owned());
}

/// Undo and redo by the usual keys, except while typing in a field, which has its own.
fn listen_for_undo(app: AppState) {
    let handle = window_event_listener(ev::keydown, move |event| {
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
    });
    on_cleanup(move || handle.remove());
}

/// What was just typed is kept before the page goes away, is put into the background or is thrown out of memory.
fn listen_for_leaving(app: AppState) {
    let leaving = window_event_listener_untyped("pagehide", move |_| app.finish());
    let hiding = window_event_listener_untyped("visibilitychange", move |_| app.finish());
    on_cleanup(move || {
        leaving.remove();
        hiding.remove();
    });
}

fn show(page: Page) -> AnyView {
    browser::set_title(&format!("{} · Kerbstead", t(page.title())));
    match page {
        Page::Overview => pages::overview(),
        Page::Kit => pages::kit(),
        Page::Route => pages::route(),
        Page::Balances => pages::balances(),
        Page::Money => pages::money(),
        Page::Power => pages::power(),
        Page::Water => pages::water(),
        Page::Plans => pages::plans(),
        Page::Start => pages::start(),
    }
}

fn header(app: AppState) -> AnyView {
    let nothing_to_undo = live::flag(move || app.desk.undo().with(Vec::is_empty));
    let verdicts = live::memo(move || verdicts_in_words(app));
    let nothing_to_redo = live::flag(move || app.desk.redo().with(Vec::is_empty));
    view! {
        <header>
            <p class="plan-name">
                <a href=Page::Plans.link()>{live::text(move || app.plan(|plan| plan.title.clone()))}</a>
            </p>
            <div class="history">
                <button type="button" disabled=nothing_to_undo on:click=live::tap(move || app.undo())>{t("undo")}</button>
                <button type="button" disabled=nothing_to_redo on:click=live::tap(move || app.redo())>{t("redo")}</button>
            </div>
            <p class="visually-hidden" aria-live="polite">{live::text(move || verdicts.get())}</p>
        </header>
    }
    .into_any()
}

/// Tells people who hear the page how a change came out.
fn verdicts_in_words(app: AppState) -> String {
    app.assessment(|assessment| {
        let parts = assessment.verdicts().map(|(balance, verdict)| {
            format!("{}: {}", t(pages::balance_title(balance)), crate::parts::verdict_word(verdict))
        });
        parts.join(". ")
    })
}

fn navigation(page: ReadSignal<Page>) -> AnyView {
    let main = [
        (Page::Overview, Shape::Signpost),
        (Page::Kit, Shape::Crate),
        (Page::Route, Shape::Road),
        (Page::Balances, Shape::Level),
        (Page::Plans, Shape::Maps),
    ];
    let below_balances = [Page::Money, Page::Power, Page::Water];
    let link = move |to: Page, shape: Option<Shape>| {
        let current = Signal::derive(move || (page.get() == to).then(|| "page".to_owned()));
        view! {
            <a href=to.link() aria-current=current>
                {shape.map(icon)}
                <span>{t(to.title())}</span>
            </a>
        }
        .into_any()
    };
    let is_below = move || below_balances.contains(&page.get());
    let items = main.map(|(to, shape)| {
        let below = (to == Page::Balances).then(|| {
            let links = below_balances.map(|to| view! { <li>{link(to, None)}</li> }.into_any());
            view! { <ul class="below">{Vec::from(links)}</ul> }
        });
        let class = Signal::derive(move || (to == Page::Balances && is_below()).then(|| "holds-current".to_owned()));
        view! { <li class=class>{link(to, Some(shape))} {below}</li> }.into_any()
    });
    view! { <nav aria-label=t("navigation")><ul>{Vec::from(items)}</ul></nav> }.into_any()
}

fn storage_warning(app: AppState) -> AnyView {
    live::when(
        move || !app.desk.is_kept().get(),
        || view! { <p class="warning" role="alert">{t("storage-unavailable")}</p> }.into_any(),
    )
}

/// What was just done, with a way back.
fn notice_bar(app: AppState) -> AnyView {
    let text =
        move || app.desk.notice().with(|notice| notice.as_ref().map(|notice| notice.text.clone())).unwrap_or_default();
    let is_there = move || app.desk.notice().with(Option::is_some);
    let buttons = move || {
        view! {
            <button type="button" on:click=live::tap(move || app.take_back())>{t("take-back")}</button>
            <button type="button" class="quiet" on:click=live::tap(move || app.desk.notice().set(None))>
                {t("dismiss")}
            </button>
        }
        .into_any()
    };
    view! {
        <div class="notice" class:shown=live::flag(is_there)>
            <p role="status">{live::text(text)}</p>
            {live::when(is_there, buttons)}
        </div>
    }
    .into_any()
}
