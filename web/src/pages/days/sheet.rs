//! The days as a plain list: what is done, with whom, with which tool, what to bring.

use kerbstead_core::days::{DayPlan, WorkLine};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Edit, Id, Path, Plan, Quantity, add_days, date_text};
use serde_json::{Value, json};

use crate::browser;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{say_day, tell};
use crate::parts::{button, named_in};
use crate::state::App;

/// So many days are shown at once; the rest is unfolded.
const FIRST: usize = 5;

/// The next day on which somebody works, with what can be said of each of its tasks.
pub fn next() -> View {
    let app = App::here();
    let day = live::memo(move || app.settled_assessment(|assessment| assessment.days.days.first().cloned()));
    live::view(move || day.with(|day| day.as_ref().map_or_else(none, |day| one(app, day, true))))
}

fn none() -> View {
    el("p").put(key!("days-none")).done()
}

/// All days after the next one.
pub fn ahead() -> View {
    let app = App::here();
    let days = live::memo(move || {
        app.settled_assessment(|assessment| assessment.days.days.get(1..).unwrap_or_default().to_vec())
    });
    let is_open = Signal::new(false);
    let first = move || days.with(|days| all(days.iter().take(FIRST).map(|day| one(app, day, false))));
    let rest = move || days.with(|days| all(days.iter().skip(FIRST).map(|day| one(app, day, false))));
    let count = move || days.with(|days| days.len().saturating_sub(FIRST));
    let folded = el("details")
        .on_toggle(move |open| is_open.set(open))
        .live_flag("hidden", move || count() == 0)
        .put(el("summary").put(live::text(move || tell!("days-more", &vec![("count", Figure::count(count()))]))))
        .put(live::view(move || if is_open.get() { rest() } else { nothing() }));
    fragment().put(live::when(move || days.with(Vec::is_empty), none)).put(live::view(first)).put(folded).done()
}

fn one(app: App, day: &DayPlan, with_buttons: bool) -> View {
    app.desk.plan.with_untracked(|plan| {
        let late = day.is_late.then(|| el("p").class("late").put(key!("days-after-leaving")).done());
        let lines = day.work.iter().map(|line| work_line(app, plan, day, line, with_buttons));
        let names = |ids: &[Id]| ids.iter().map(|id| named_in(plan, *id)).collect::<Vec<_>>().join(", ");
        let with = |key: &'static str, ids: &[Id]| {
            (!ids.is_empty()).then(|| el("p").class("side").put(tell(key, &vec![("names", Figure::Name(names(ids)))])))
        };
        el("article")
            .class("work-day")
            .put(el("h3").put(say_day(day.on)))
            .put(late)
            .put(el("ul").class("work").put_each(lines))
            .put(with("days-tools", &day.tools))
            .put(with("days-bring", &day.items))
            .done()
    })
}

fn work_line(app: App, plan: &Plan, day: &DayPlan, line: &WorkLine, with_buttons: bool) -> View {
    let text = line_text(plan, line);
    el("li").put(el("p").put(text)).put(with_buttons.then(|| buttons(app, line.task, day))).done()
}

/// When it begins, the task, how long, and who does it.
pub fn line_text(plan: &Plan, line: &WorkLine) -> String {
    let who = line.who.iter().map(|id| named_in(plan, *id)).collect::<Vec<_>>().join(", ");
    let figures = vec![
        ("name", Figure::Name(named_in(plan, line.task))),
        ("from", Figure::of(f64::from(line.from.minute.unwrap_or(0)) / 60.0, Quantity::HourOfDay)),
        ("hours", Figure::of(line.hours, Quantity::Hours)),
        ("who", Figure::Name(who)),
    ];
    if line.ends { tell!("days-line-ends", &figures) } else { tell!("days-line", &figures) }
}

/// To tick a task off, to note an hour on it, to put it off by a day.
fn buttons(app: App, task: Id, day: &DayPlan) -> View {
    let path = Path::entry("tasks", task);
    let name = app.desk.plan.with_untracked(|plan| named_in(plan, task));
    let told = move |key: &'static str| tell(key, &vec![("name", Figure::Name(name.clone()))]);
    let set = move |field: &str, value: Value, text: String| {
        app.edit_and_tell(Edit::Set { path: path.child(field), value }, text);
    };
    let tomorrow = add_days(day.on, 1).map(date_text);
    let (done, hour, later) = (set.clone(), set.clone(), set);
    let (told_done, told_hour, told_later) = (told.clone(), told.clone(), told);
    let spent = move || {
        app.desk.plan.with_untracked(|plan| {
            plan.tasks.iter().find(|entry| entry.id == task).and_then(|entry| entry.spent_hours).unwrap_or(0.0)
        })
    };
    el("div")
        .class("buttons")
        .put(button(key!("days-tick"), move || {
            done("done_on", date_text(browser::today()).into(), told_done("days-ticked"));
        }))
        .put(button(key!("days-hour"), move || hour("spent_hours", json!(spent() + 1.0), told_hour("days-hour-noted"))))
        .put(button(key!("days-put-off"), move || {
            if let Some(tomorrow) = &tomorrow {
                later("not_before", tomorrow.clone().into(), told_later("days-was-put-off"));
            }
        }))
        .done()
}
