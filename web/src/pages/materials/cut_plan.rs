//! The cut plan: asked of the worker, shown as pictures with words, to be printed and to be bought.

use kerbstead_core::explain::Figure;
use kerbstead_core::materials::{CutOne, Cuts, Fault, JobCuts, PieceAt, Saw, flaws_mm, stock_to_buy};
use kerbstead_core::plan::{Plain, Plan, Quantity, StockKind};
use kerbstead_core::task::Subject;

use super::kit_button;
use super::picture::picture;
use super::stock::between;
use crate::browser;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::say_on_tape;
use crate::parts::{TableRow, button, named_in, table};
use crate::state::App;
use crate::worker::{Asked, ask_and_follow, ask_once, cancel};

/// No more pictures than these are drawn for a material.
const MOST_PICTURES: usize = 60;

/// All of it.
pub fn cut_plan(app: App) -> View {
    let asked = ask_and_follow(app, Subject::Materials);
    let is_stopped = Signal::new(false);
    live::follow(move || {
        app.settled_plan(|_| ());
        is_stopped.set(false);
    });
    let is_done = live::memo(move || asked.share.get() >= 1.0);
    let found = live::memo(move || asked.answer.with(|answer| Cuts::from_plain(answer.as_ref()?)));
    let is_any = live::memo(move || app.plan(|plan| !plan.cuts.is_empty()));
    let all = move || {
        let is_done = is_done.get();
        found.with(|found| {
            found.as_ref().map_or_else(nothing, |found| app.settled_plan(|plan| told(app, plan, found, is_done)))
        })
    };
    live::when(
        move || is_any.get(),
        move || {
            el("article")
                .class("sheet")
                .put(el("h2").put(key!("materials-plan")))
                .put(progress(app, asked, is_stopped))
                .put(live::view(all))
                .put(el("p").class("hint").put(key!("caution-power-tools-and-dust")))
                .put(button(key!("papers-print"), browser::print))
                .done()
        },
    )
}

/// How far it is, with a button to stop, or to begin again.
fn progress(app: App, asked: Asked, is_stopped: Signal<bool>) -> View {
    let stop = move || {
        is_stopped.set(true);
        cancel(asked);
    };
    let again = move || {
        is_stopped.set(false);
        ask_once(app, Subject::Materials, asked);
    };
    let text = move || match (asked.has_failed.get(), is_stopped.get(), asked.share.get()) {
        (true, ..) => t!("asked-failed"),
        (_, true, _) => t!("materials-stopped"),
        (.., share) if share >= 1.0 => String::new(),
        (.., share) => {
            let percent = Figure::of((share * 100.0).floor(), Quantity::Percent);
            tell!("asked-waiting", &vec![("share", percent)])
        }
    };
    let is_running = move || asked.share.get() < 1.0 && !is_stopped.get() && !asked.has_failed.get();
    fragment()
        .put(el("p").attr("role", "status").put(live::text(text)))
        .put(live::when(is_running, move || button(key!("asked-stop"), stop).done()))
        .put(live::when(move || is_stopped.get(), move || button(key!("materials-again"), again).done()))
        .done()
}

fn told(app: App, plan: &Plan, cuts: &Cuts, is_done: bool) -> View {
    let take = if is_done { kit_button(app, stock_to_buy(plan, cuts)) } else { None };
    let from_nothing = cuts.from_nothing.iter().map(|id| {
        el("p")
            .class("wrong")
            .put(tell!("materials-from-nothing", &vec![("name", Figure::Name(named_in(plan, *id)))]))
            .done()
    });
    fragment().put_each(from_nothing).put_each(cuts.jobs.iter().map(|job| of_job(plan, job, is_done))).put(take).done()
}

fn of_job(plan: &Plan, job: &JobCuts, is_done: bool) -> View {
    let title = el("h3").put(named_in(plan, job.stock));
    if let Some(fault) = job.fault {
        return fragment().put(title).put(el("p").class("wrong").put(fault_text(plan, job, fault))).done();
    }
    let missing = job.missing.iter().map(|left| {
        let count = Figure::of(f64::from(left.count), Quantity::Count);
        let figures = vec![("name", Figure::Name(named_in(plan, left.cut))), ("count", count)];
        el("p").class("wrong").put(tell!("materials-missing", &figures)).done()
    });
    let more = job.ones.len().saturating_sub(MOST_PICTURES);
    let more = (more > 0).then(|| el("p").put(tell!("materials-more", &vec![("count", Figure::count(more))])).done());
    fragment()
        .put(title)
        .put(el("p").put(el("strong").put(how_good(job, is_done))))
        .put_each(missing)
        .put_each(job.ones.iter().take(MOST_PICTURES).map(|one| of_one(plan, job, one)))
        .put(more)
        .done()
}

/// What it comes to, and whether anything could be better.
fn how_good(job: &JobCuts, is_done: bool) -> String {
    let figures = vec![
        ("count", Figure::of(f64::from(job.count), Quantity::Count)),
        ("bought", Figure::of(f64::from(job.bought), Quantity::Count)),
        ("cost", Figure::Money(job.cost)),
        ("waste", Figure::of(job.waste_percent, Quantity::Percent)),
        (
            "bound",
            if job.by_count {
                Figure::of(job.bound.to_plot().ceil(), Quantity::Count)
            } else {
                Figure::Money(job.bound)
            },
        ),
    ];
    match (job.is_proven, job.by_count) {
        (true, true) => tell!("materials-proven-fewest", &figures),
        (true, false) => tell!("materials-proven-cheapest", &figures),
        (false, _) if !job.missing.is_empty() || !is_done => tell!("materials-so-far", &figures),
        (false, true) => tell!("materials-bound-fewest", &figures),
        (false, false) => tell!("materials-bound-cheapest", &figures),
    }
}

fn fault_text(plan: &Plan, job: &JobCuts, fault: Fault) -> String {
    let name = job.wrong.map(|id| named_in(plan, id)).unwrap_or_default();
    let figures = vec![("name", Figure::Name(name)), ("most", Figure::of(f64::from(job.most), Quantity::Count))];
    match fault {
        Fault::PieceSize => tell!("materials-piece-size", &figures),
        Fault::PieceTooLarge => tell!("materials-piece-too-large", &figures),
        Fault::StockSize => tell!("materials-stock-size", &figures),
        Fault::Flaws => tell!("materials-flaws-wrong", &figures),
        Fault::StockPrice => tell!("materials-stock-price", &figures),
        Fault::Kerf => t!("materials-kerf-wrong"),
        Fault::Trim => t!("materials-trim-wrong"),
        Fault::TooManyPieces => tell!("materials-too-many-pieces", &figures),
        Fault::TooManyStock => tell!("materials-too-many-stock", &figures),
    }
}

/// A board or sheet: its picture, its pieces, its cuts in order.
fn of_one(plan: &Plan, job: &JobCuts, one: &CutOne) -> View {
    let is_sheet = job.kind == StockKind::Sheet;
    let by = |along_mm: f64, across_mm: f64| {
        if is_sheet {
            format!("{} × {}", say_on_tape(along_mm), say_on_tape(across_mm))
        } else {
            say_on_tape(along_mm)
        }
    };
    let alike = Figure::of(f64::from(one.alike), Quantity::Count);
    let figures = vec![
        ("count", alike),
        ("name", Figure::Name(named_in(plan, one.stock))),
        ("length", Figure::Name(by(one.length_mm, one.width_mm))),
    ];
    let row = |(at, piece): (usize, &PieceAt)| {
        let head = format!("{}: {}", at + 1, named_in(plan, piece.cut));
        TableRow(head, vec![by(piece.along_mm, piece.across_mm), by(piece.length_mm, piece.width_mm)], None)
    };
    let heads = if is_sheet {
        [key!("materials-piece"), key!("materials-piece-place"), key!("materials-piece-sides")]
    } else {
        [key!("materials-piece"), key!("materials-piece-along"), key!("materials-piece-length")]
    };
    let saws = one.saws.iter().map(|saw| el("li").put(saw_text(saw, is_sheet)).done());
    let left = if one.left_width_mm > 0.0 {
        by(one.left_length_mm, one.left_width_mm)
    } else {
        say_on_tape(one.left_length_mm)
    };
    let flaws = flaws_mm(plan, one.stock);
    let bad = flaws.iter().map(|ends| el("p").put(tell!("materials-bad-place", &between(*ends))).done());
    el("section")
        .class("cut-one")
        .put(el("h4").put(tell!("materials-one", &figures)))
        .put(picture(one, &flaws))
        .put_each(bad)
        .put(table(t!("materials-pieces"), true, &heads, one.pieces.iter().enumerate().map(row).collect()))
        .put(trimmed(plan, is_sheet))
        .put(el("p").put(key!("materials-cut-order")))
        .put(el("ol").put_each(saws))
        .put(el("p").put(tell!("materials-left", &vec![("size", Figure::Name(left))])))
        .done()
}

/// What is cut off before anything else.
fn trimmed(plan: &Plan, is_sheet: bool) -> Option<View> {
    let trim_mm = plan.cutting.trim_mm.filter(|trim_mm| *trim_mm > 0.0)?;
    let figures = vec![("trim", Figure::Name(say_on_tape(trim_mm)))];
    let text = if is_sheet { tell!("materials-trim-edges", &figures) } else { tell!("materials-trim-ends", &figures) };
    Some(el("p").put(text).done())
}

fn saw_text(saw: &Saw, is_sheet: bool) -> String {
    let name = |value: f64| Figure::Name(say_on_tape(value));
    let figures = vec![("at", name(saw.at_mm)), ("from", name(saw.from_mm)), ("to", name(saw.to_mm))];
    match (is_sheet, saw.is_across) {
        (false, _) => tell!("materials-saw", &figures),
        (true, true) => tell!("materials-saw-across", &figures),
        (true, false) => tell!("materials-saw-along", &figures),
    }
}
