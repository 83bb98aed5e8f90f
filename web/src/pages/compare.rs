//! What came back from a friend, held against the open plan: each difference to take or to leave.

use std::sync::Arc;

use kerbstead_core::explain::Figure;
use kerbstead_core::keeping::title_of;
use kerbstead_core::plan::field::{self, SECTIONS};
use kerbstead_core::plan::{Difference, DifferenceKind, Edit, Path, Plan, differences, value_in};
use kerbstead_core::share::{Answer, Help, Mark, Parcel};
use serde_json::Value;

use super::overview::{part_label, place_name};
use super::section;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{t, tell, words};
use crate::parts::{button, named};
use crate::state::App;

/// A difference in words, with the change that takes it.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    key: String,
    what: String,
    change: String,
    edit: Edit,
}

/// The page.
pub fn compare(parcel: Parcel) -> View {
    let app = App::here();
    let parcel = Arc::new(parcel);
    let lines = {
        let parcel = parcel.clone();
        live::memo(move || app.plan(|plan| lines(plan, &parcel.laid_over(plan))))
    };
    let (title, offers) = match &*parcel {
        Parcel::Answer(answer) => (answer_title(answer), Some(offers(answer))),
        Parcel::Plan { .. } => (t!("compare-title"), None),
    };
    fragment().put(el("h1").put(title)).put(choice_of_plan(sent_title(&parcel))).put(offers).put(taking(lines)).done()
}

fn answer_title(answer: &Answer) -> String {
    let from = if answer.from.is_empty() { t!("compare-somebody") } else { answer.from.clone() };
    tell!("compare-answer-from", &vec![("from", Figure::Name(from))])
}

/// The title of the plan that it is about.
fn sent_title(parcel: &Parcel) -> String {
    match parcel {
        Parcel::Answer(answer) => answer.title.clone(),
        Parcel::Plan { file, .. } => title_of(file).to_owned(),
    }
}

/// Which plan it is held against: the open one, and a way to open another.
fn choice_of_plan(sent: String) -> View {
    let app = App::here();
    let (cards, open) = app.desk.shelf.with_untracked(|shelf| (shelf.cards.clone(), shelf.open));
    let options = cards.into_iter().map(|card| {
        let title = named(card.title);
        el("option").attr("value", card.slot.to_string()).flag("selected", card.slot == open).put(title).done()
    });
    let turn = move |slot: String| {
        if let Ok(slot) = slot.parse() {
            app.turn_to(slot);
        }
    };
    let of_another = move || {
        let is_same = app.plan(|plan| plan.title == sent);
        if is_same { String::new() } else { tell!("compare-other-title", &vec![("title", Figure::Name(sent.clone()))]) }
    };
    el("div")
        .class("field")
        .put(el("label").attr("for", "compare-with").put(key!("compare-with")))
        .put(el("select").attr("id", "compare-with").on_change(turn).put_each(options))
        .put(el("p").put(live::text(of_another)))
        .done()
}

/// All that a friend offers, and what of it is for things that are not there any more.
fn offers(answer: &Answer) -> View {
    let app = App::here();
    let lines = answer.marks.iter().map(|mark| el("li").put(offer(mark)).done());
    let is_helping = answer.marks.is_empty();
    let answer = answer.clone();
    let list = el("ul").class("offers").put_each(lines).done();
    let gone = move || {
        let gone: Vec<String> = app.plan(|plan| answer.of_nothing(plan).into_iter().map(str::to_owned).collect());
        if gone.is_empty() {
            return String::new();
        }
        let figures = vec![("count", Figure::count(gone.len())), ("names", Figure::Name(gone.join(", ")))];
        tell!("compare-of-nothing", &figures)
    };
    let gone = el("p").put(live::text(gone)).done();
    // What a helper says of their hours and tools is among the differences.
    if is_helping { gone } else { section(key!("compare-offers"), fragment().put(list).put(gone).done()) }
}

fn offer(mark: &Mark) -> String {
    let key = match (mark.help, mark.says.is_empty()) {
        (Help::Lend, true) => "offer-lend",
        (Help::Lend, false) => "offer-lend-says",
        (Help::Do, true) => "offer-do",
        (Help::Do, false) => "offer-do-says",
    };
    tell(key, &vec![("name", Figure::Name(mark.name.clone())), ("says", Figure::Name(mark.says.clone()))])
}

/// The differences, each with a box to tick; what is ticked is taken as one change.
fn taking(lines: Memo<Vec<Line>>) -> View {
    let app = App::here();
    let (chosen, is_refused) = (Signal::new(Vec::<String>::new()), Signal::new(false));
    let count = move || {
        lines.with(|lines| chosen.with(|chosen| lines.iter().filter(|line| chosen.contains(&line.key)).count()))
    };
    let take = move || {
        let edits: Vec<Edit> = lines.with(|lines| {
            chosen.with_untracked(|chosen| {
                lines.iter().filter(|line| chosen.contains(&line.key)).map(|line| line.edit.clone()).collect()
            })
        });
        let text = tell!("compare-taken", &vec![("count", Figure::count(edits.len()))]);
        let is_taken = app.edit_and_tell(Edit::All { edits }, text);
        is_refused.set(!is_taken);
        if is_taken {
            chosen.set(Vec::new());
        }
    };
    let choose_all = move || chosen.set(lines.with(|lines| lines.iter().map(|line| line.key.clone()).collect()));
    let list = move || {
        lines.with(|lines| el("ul").class("differences").put_each(lines.iter().map(|line| row(line, chosen))).done())
    };
    let refused = move || if is_refused.get() { t!("compare-not-possible") } else { String::new() };
    let buttons = move || {
        el("div")
            .class("buttons")
            .put(
                el("button")
                    .attr("type", "button")
                    .attr("id", "compare-take")
                    .class("primary")
                    .live_flag("disabled", move || count() == 0)
                    .on_click(take)
                    .put(live::text(move || tell!("compare-take", &vec![("count", Figure::count(count()))]))),
            )
            .put(button(key!("compare-all"), choose_all).attr("id", "compare-all"))
            .put(button(key!("compare-none"), move || chosen.set(Vec::new())).attr("id", "compare-none"))
            .done()
    };
    let any = move || lines.with(|lines| !lines.is_empty());
    let same = move || el("p").attr("role", "status").put(key!("compare-same")).done();
    let content = fragment()
        .put(live::when(any, || el("p").put(key!("compare-hint")).done()))
        .put(live::view(list))
        .put(el("p").class("wrong").attr("role", "alert").put(live::text(refused)))
        .put(live::view(move || if any() { buttons() } else { same() }));
    section(key!("compare-differences"), content.done())
}

fn row(line: &Line, chosen: Signal<Vec<String>>) -> View {
    let (is_chosen, key) = (line.key.clone(), line.key.clone());
    let tick = move |is_on: bool| {
        chosen.update(|chosen| {
            chosen.retain(|other| *other != key);
            chosen.extend(is_on.then(|| key.clone()));
        });
    };
    let id = format!("take-{}", line.key.replace(['/', ' '], "-"));
    let change =
        if line.change.is_empty() { nothing() } else { el("span").class("change").put(line.change.as_str()).done() };
    el("li")
        .put(
            el("label")
                .class("choice")
                .put(
                    el("input")
                        .attr("type", "checkbox")
                        .attr("id", id)
                        .on_or_off("checked", move || chosen.with(|chosen| chosen.contains(&is_chosen)))
                        .on_tick(tick),
                )
                .put(el("span").put(el("span").class("name").put(line.what.as_str())).put(" ").put(change)),
        )
        .done()
}

fn lines(here: &Plan, there: &Plan) -> Vec<Line> {
    differences(here, there).into_iter().map(|difference| line(here, there, difference)).collect()
}

fn line(here: &Plan, there: &Plan, difference: Difference) -> Line {
    let path = &difference.path;
    let named = |key: &str, name: String| tell(key, &vec![("name", Figure::Name(name))]);
    let (what, change) = match difference.kind {
        DifferenceKind::Changed => (place_name(here, path), changed(here, there, &difference)),
        DifferenceKind::Added => (named("compare-added", entry_name(&difference.there)), summary(there, &difference)),
        DifferenceKind::Removed => (named("compare-removed", entry_name(&difference.here)), list_name(path)),
        DifferenceKind::Reordered => (named("compare-order", list_name(path)), String::new()),
        DifferenceKind::Guesses => (t!("compare-guesses"), String::new()),
    };
    Line { key: format!("{:?} {path}", difference.kind), what, change, edit: difference.edit }
}

fn changed(here: &Plan, there: &Plan, difference: &Difference) -> String {
    let field = field::at(&difference.path);
    let value = |plan: &Plan, value: &Value| Figure::Name(words(|words| words.value(plan, field, value)));
    tell!("compare-change", &vec![("here", value(here, &difference.here)), ("there", value(there, &difference.there))])
}

/// What matters of an entry that is new: the list it stands in, and its first values.
fn summary(there: &Plan, difference: &Difference) -> String {
    const MOST: usize = 5;
    let section = SECTIONS.iter().find(|section| section.name == difference.path.split_first().0);
    let fields = section.into_iter().flat_map(|section| section.fields).filter(|field| !NAMES.contains(&field.name));
    let set = fields.filter_map(|field| {
        let value = value_in(&difference.there, field.name)?;
        let is_set = !value.is_null() && value.as_str() != Some("");
        let path = difference.path.child(field.name);
        is_set.then(|| format!("{}: {}", part_label(&path), words(|words| words.value(there, Some(field), value))))
    });
    std::iter::once(list_name(&difference.path)).chain(set.take(MOST)).collect::<Vec<_>>().join(" · ")
}

/// What an entry goes by, the first of them that it has.
const NAMES: [&str; 2] = ["name", "place"];

fn entry_name(entry: &Value) -> String {
    let name = NAMES.iter().find_map(|name| entry.get(name)?.as_str()).filter(|name| !name.is_empty());
    let weekday = || Some(t(&format!("choice-weekday-{}", entry.get("weekday")?.as_str()?)));
    name.map(str::to_owned).or_else(weekday).unwrap_or_else(|| t!("entry-unnamed"))
}

/// The heading of the list that a path leads into.
fn list_name(path: &Path) -> String {
    match path.split_first().0 {
        "kit" => t!("page-kit"),
        "belongings" => t!("money-belongings"),
        "incomes" => t!("money-incomes"),
        "costs" => t!("money-costs"),
        "loans" => t!("money-loans"),
        "tasks" | "task_needs" => t!("work-tasks"),
        "tools" => t!("work-tools"),
        "helpers" => t!("work-helpers"),
        "other_days" => t!("work-other-days"),
        "builds" => t!("futures-ways"),
        "stays" => t!("route-stays"),
        "week" => t!("route-week"),
        "water_uses" => t!("water-uses"),
        "readings" => t!("money-readings"),
        "receipts" | "receipt_lines" => t!("page-receipts"),
        other => other.to_owned(),
    }
}
