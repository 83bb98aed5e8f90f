//! The frame of every page: the name of the plan, undo, the navigation, notices.

use leptos::ev;
use leptos::prelude::*;

use crate::browser;
use crate::locale::t;
use crate::pages;
use crate::parts::{Icon, Shape};
use crate::route::{self, Page};
use crate::state::{App as AppState, DeskStoreFields};

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let app = AppState::open();
    provide_context(app);
    let page = route::current_page();
    listen_for_undo(app);
    // Other units or another currency change every word there is, so everything is drawn again.
    move || {
        app.desk.edition().track();
        view! {
            <a class="skip" href="#content" on:click=|event| { event.prevent_default(); browser::focus_soon("content") }>
                {t("skip-to-content")}
            </a>
            <Header page=page />
            <Navigation page=page />
            <main id="content" tabindex="-1">
                <StorageWarning />
                {move || show(page.get())}
            </main>
            <NoticeBar />
        }
        .into_any()
    }
}

/// Undo and redo by the usual keys, except while typing in a field, which has its own.
fn listen_for_undo(app: AppState) {
    let handle = window_event_listener(ev::keydown, move |event| {
        let is_typing = event.target().is_some_and(|target| browser::is_text_input(&target));
        if is_typing || !(event.ctrl_key() || event.meta_key()) {
            return;
        }
        match (event.key().to_lowercase().as_str(), event.shift_key()) {
            ("z", false) => app.undo(),
            ("z", true) | ("y", false) => app.redo(),
            _ => return,
        }
        event.prevent_default();
    });
    on_cleanup(move || handle.remove());
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

#[component]
fn Header(page: ReadSignal<Page>) -> impl IntoView {
    let app = AppState::here();
    let title = Memo::new(move |_| app.plan(|plan| plan.title.clone()));
    let nothing_to_undo = move || app.desk.undo().with(Vec::is_empty);
    let nothing_to_redo = move || app.desk.redo().with(Vec::is_empty);
    view! {
        <header>
            <p class="plan-name">
                <a href=Page::Plans.link()>{move || title.get()}</a>
            </p>
            <div class="history">
                <button type="button" disabled=nothing_to_undo on:click=move |_| app.undo()>{t("undo")}</button>
                <button type="button" disabled=nothing_to_redo on:click=move |_| app.redo()>{t("redo")}</button>
            </div>
            <p class="visually-hidden" aria-live="polite">{move || live_verdict(app, page.get())}</p>
        </header>
    }
}

/// Tells people who hear the page how a change came out.
fn live_verdict(app: AppState, _page: Page) -> String {
    app.assessment(|assessment| {
        let parts = assessment.verdicts().map(|(balance, verdict)| {
            format!("{}: {}", t(pages::balance_title(balance)), crate::parts::verdict_word(verdict))
        });
        parts.join(". ")
    })
}

#[component]
fn Navigation(page: ReadSignal<Page>) -> impl IntoView {
    let main = [
        (Page::Overview, Shape::Signpost),
        (Page::Kit, Shape::Crate),
        (Page::Route, Shape::Road),
        (Page::Balances, Shape::Level),
        (Page::Plans, Shape::Maps),
    ];
    let below_balances = [Page::Money, Page::Power, Page::Water];
    let link = move |to: Page, icon: Option<Shape>| {
        let is_here = move || page.get() == to;
        view! {
            <a href=to.link() aria-current=move || is_here().then_some("page")>
                {icon.map(|shape| view! { <Icon shape=shape /> })}
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
        let class = move || (to == Page::Balances && is_below()).then_some("holds-current");
        view! { <li class=class>{link(to, Some(shape))} {below}</li> }.into_any()
    });
    view! { <nav aria-label=t("navigation")><ul>{Vec::from(items)}</ul></nav> }
}

#[component]
fn StorageWarning() -> impl IntoView {
    let app = AppState::here();
    view! {
        <Show when=move || !app.desk.is_kept().get()>
            <p class="warning" role="alert">{t("storage-unavailable")}</p>
        </Show>
    }
}

/// What was just done, with a way back.
#[component]
fn NoticeBar() -> impl IntoView {
    let app = AppState::here();
    let text = move || app.desk.notice().with(|notice| notice.as_ref().map(|notice| notice.text.clone()));
    let is_there = move || app.desk.notice().with(Option::is_some);
    view! {
        <div class="notice" class:shown=is_there>
            <p role="status">{text}</p>
            <Show when=is_there>
                <button type="button" on:click=move |_| app.take_back()>{t("take-back")}</button>
                <button type="button" class="quiet" on:click=move |_| app.desk.notice().set(None)>{t("dismiss")}</button>
            </Show>
        </div>
    }
}
