//! A friend's plan, to look at and to answer. Nothing here touches the person's own plans until they keep it.

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::Kept;
use kerbstead_core::plan::{Document, Item, Obtain, Plan};
use kerbstead_core::share::{Help, Scope};
use kerbstead_core::{Assessment, Balance, assess};
use serde_json::Value;

use super::kit::obtain_key;
use super::reply::Reply;
use super::{BALANCES, balance_title, helping, open, papers, section};
use crate::browser;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{self, t, words};
use crate::parts::{button, named, standing_details_once, verdict_badge};
use crate::route::{self, Page};
use crate::state::App;

/// The plan in a text; or why its file is none.
pub fn visitor(text: &str, scope: Scope, with_money: bool, file: Value) -> Result<View, String> {
    let opened = Document::from_value(file).map_err(|problem| words(|words| words.problem(&problem)))?;
    let plan = opened.plan;
    // Another person's plan may be in another currency than one's own.
    let shown = locale::in_currency(&plan.currency, || {
        fragment()
            .put((scope == Scope::Whole).then(|| verdicts(&plan, with_money)))
            .put(lists(&plan, scope))
            .put((scope == Scope::Helper).then(|| helping::work(&plan)))
            .put(section(
                key!("visitor-answer"),
                match scope {
                    Scope::Helper => helping::answering(text, &plan),
                    _ => answering(text, &plan),
                },
            ))
            .done()
    });
    Ok(fragment()
        .put(el("h1").put(key!("page-open")))
        .put(el("p").class("plan-title").put(named(plan.title.clone())))
        .put(el("p").put(key!("visitor-hint")))
        .put(parts_left_out(scope, with_money).map(|key| el("p").put(t(key)).done()))
        .put(what_next(text, opened.document.write(&plan)))
        .put(shown)
        .done())
}

/// Why not everything is there.
const fn parts_left_out(scope: Scope, with_money: bool) -> Option<&'static str> {
    match (scope, with_money) {
        (Scope::Whole, true) => None,
        (Scope::Whole, false) => Some("visitor-no-money"),
        _ => Some("visitor-part"),
    }
}

/// To keep it, or to compare it with one's own.
fn what_next(text: &str, file: Value) -> View {
    let app = App::here();
    let keep = move || {
        app.add(Kept { document: file.clone(), ..Kept::default() }, false);
        route::go(Page::Overview);
    };
    let own = app.desk.plan.with_untracked(|plan| named(plan.title.clone()));
    let compare = tell!("visitor-compare", &vec![("title", Figure::Name(own))]);
    el("div")
        .class("buttons")
        .put(button(key!("visitor-keep"), keep))
        .put(el("a").class("button").attr("href", open::compare_link(text)).put(compare))
        .done()
}

fn verdicts(plan: &Plan, with_money: bool) -> View {
    let now = assess(plan, browser::today());
    let shown = BALANCES.into_iter().filter(|balance| with_money || *balance != Balance::Money);
    let cards: Vec<View> = shown.map(|balance| verdict(&now, balance)).collect();
    section(key!("visitor-verdicts"), el("div").class("cards").put_each(cards).done())
}

fn verdict(now: &Assessment, balance: Balance) -> View {
    let standing = super::standing_of(now, balance).of_another();
    el("article")
        .class("card")
        .put(el("h3").put(balance_title(balance)))
        .put(el("p").put(verdict_badge(standing.verdict)))
        .put(el("p").class("line").put(standing.line.as_str()))
        .put(standing_details_once(&standing, &super::grounds_of(now, balance)))
        .done()
}

/// Its lists, each where it was sent: folded where there is more, so that what can be answered is not far below.
fn lists(plan: &Plan, scope: Scope) -> View {
    let is_sent = |list: Scope| matches!(scope, Scope::Whole | Scope::Kit) || scope == list;
    let folded = |title, content: View| {
        let summary = el("summary").put(t(title));
        el("details").class("sheet").flag("open", scope != Scope::Whole).put(summary).put(content).done()
    };
    let list = |title, list: fn(&Plan) -> View| folded(title, list(plan));
    fragment()
        .put(papers::stays(plan).map(|stays| folded("page-route", stays)))
        .put(is_sent(Scope::Shopping).then(|| list("sheet-shopping", papers::shopping_list)))
        .put(is_sent(Scope::Borrowing).then(|| list("sheet-borrowing", papers::borrowing_list)))
        .done()
}

/// The kit with what can be said to each thing, and the answer that comes of it.
fn answering(text: &str, plan: &Plan) -> View {
    let reply = Reply::to(text, &plan.title);
    let lines = |is_there: bool| -> Vec<View> {
        let things = plan.carried().filter(|item| (item.obtain == Obtain::Owned) == is_there);
        things.map(|item| thing(item, reply)).collect()
    };
    let (wanted, there) = (lines(false), lines(true));
    let is_any_there = !there.is_empty();
    let is_open = plan.carried().any(|item| item.obtain == Obtain::Owned && reply.help_now(item.id).is_some());
    fragment()
        .put(el("p").put(key!("visitor-answer-hint")))
        .put(el("ul").class("marks").put_each(wanted))
        .put(is_any_there.then(|| {
            el("details")
                .flag("open", is_open)
                .put(el("summary").put(key!("visitor-there")))
                .put(el("ul").class("marks").put_each(there))
                .done()
        }))
        .put(reply.sending())
        .done()
}

/// A thing, with what can be had of it.
fn thing(item: &Item, reply: Reply) -> View {
    let id = item.id;
    let name = named(item.name.clone());
    let field = format!("mark-{id}");
    let choices = [("", "mark-nothing"), ("lend", "mark-lend"), ("do", "mark-do")].map(|(word, text)| {
        let chosen = match reply.help_now(id) {
            None => "",
            Some(Help::Lend) => "lend",
            Some(Help::Do) => "do",
        };
        el("option").attr("value", word).flag("selected", word == chosen).put(t(text)).done()
    });
    let mark = {
        let name = item.name.clone();
        move |word: String| {
            let help = match word.as_str() {
                "lend" => Some(Help::Lend),
                "do" => Some(Help::Do),
                _ => None,
            };
            reply.mark(id, &name, help);
        }
    };
    let label = name.clone();
    el("li")
        .put(
            el("div")
                .class("field")
                .put(el("label").attr("for", field.as_str()).put(el("span").class("name").put(name)).put(details(item)))
                .put(el("select").attr("id", field).on_change(mark).put_each(choices)),
        )
        .put((!item.note.is_empty()).then(|| el("p").class("note").put(item.note.as_str()).done()))
        .put(live::when(move || reply.help(id).is_some(), move || says(reply, id, &label)))
        .done()
}

/// How many, and how it is to be had.
fn details(item: &Item) -> View {
    let count = if item.quantity == 1 { String::new() } else { format!(" × {}", item.quantity) };
    fragment().put(count).put(" ").put(el("small").put(t(obtain_key(item.obtain)))).done()
}

/// What is said to a thing that was marked.
fn says(reply: Reply, id: u32, name: &str) -> View {
    let field = format!("says-{id}");
    let label = tell!("mark-says", &vec![("name", Figure::Name(name.to_owned()))]);
    el("div")
        .class("field wide")
        .put(el("label").attr("for", field.as_str()).put(label))
        .put(
            el("input")
                .attr("type", "text")
                .attr("id", field)
                .attr("maxlength", "300")
                .attr("autocomplete", "off")
                .attr("value", reply.says(id))
                .on_input(move |text| reply.say(id, text)),
        )
        .done()
}
