//! The tasks as bars along the calendar, for a wide screen. The list of days says the same in words.

use jiff::civil::Date;
use kerbstead_core::Moment;
use kerbstead_core::days::{TaskLine, TaskState};
use kerbstead_core::plan::{add_days, days_between};

use super::super::section;
use crate::el::{View, el, svg};
use crate::live;
use crate::locale::say_day;
use crate::parts::{line, named_in};
use crate::state::App;

/// Units of the drawing.
const WIDTH: i32 = 1_000;
const NAMES: i32 = 260;
const ROW: i32 = 30;
const HEAD: i32 = 34;

/// The bars; hidden where there is no room for them.
pub fn bars() -> View {
    let app = App::here();
    let drawing = move || {
        app.settled_assessment(|assessment| {
            let lines: Vec<&TaskLine> = assessment.days.tasks.iter().filter(|line| line.starts.is_some()).collect();
            let scale = Scale::new(&lines, assessment.leaves_on);
            draw(app, &lines, &scale)
        })
    };
    let has_any = move || app.settled_assessment(|assessment| !assessment.days.days.is_empty());
    live::when(has_any, move || {
        el("div").class("wide-only").put(section(key!("days-bars"), live::view(drawing))).done()
    })
}

struct Scale {
    from: Date,
    days: i32,
    leaves_on: Option<Date>,
}

impl Scale {
    fn new(lines: &[&TaskLine], leaves_on: Option<Date>) -> Self {
        let from = lines.iter().filter_map(|line| line.starts).map(|moment| moment.on).min().unwrap_or(Date::ZERO);
        let ends = lines.iter().filter_map(|line| line.ready.or(line.ends)).map(|moment| moment.on);
        let last = ends.chain(leaves_on).max().unwrap_or(from);
        Self { from, days: (days_between(from, last) + 1).max(1), leaves_on }
    }

    fn x(&self, moment: Moment) -> i32 {
        const MINUTES: i64 = 1_440;
        let minutes = i64::from(days_between(self.from, moment.on)) * MINUTES + i64::from(moment.minute.unwrap_or(0));
        let share = minutes * i64::from(WIDTH - NAMES) / (i64::from(self.days) * MINUTES);
        NAMES + i32::try_from(share).unwrap_or(0)
    }
}

fn draw(app: App, lines: &[&TaskLine], scale: &Scale) -> View {
    let height = lines.iter().fold(HEAD, |height, _| height + ROW);
    let mut drawing = svg("svg")
        .class("bars")
        .attr("viewBox", format!("0 0 {WIDTH} {height}"))
        .attr("role", "img")
        .attr("aria-label", t!("days-bars-label"));
    let every = [1, 2, 7, 14, 28].into_iter().find(|every| scale.days / every <= 7).unwrap_or(56);
    let mut at = 0;
    while at < scale.days {
        let Some(on) = add_days(scale.from, at) else { break };
        let x = scale.x(Moment::day(on));
        drawing = drawing.put(line("grid", (x, x), (HEAD, height))).put(text(x + 3, 20, &say_day(on)));
        at += every;
    }
    let mut y = HEAD;
    for task in lines {
        let name = app.desk.plan.with_untracked(|plan| named_in(plan, task.task));
        drawing = drawing.put(text(0, y + 20, &short(&name)));
        if let Some((starts, ends)) = task.starts.zip(task.ends) {
            let (from, to) = (scale.x(starts), scale.x(ends));
            let class = match (task.state, task.slack_days) {
                (TaskState::Late, _) => "span late",
                (_, Some(slack)) if slack <= 0.0 => "span makes-date",
                _ => "span",
            };
            drawing = drawing.put(bar(class, from, y + 7, (to - from).max(3)));
            if let Some(ready) = task.ready {
                drawing = drawing.put(line("wait", (to, scale.x(ready)), (y + 15, y + 15)));
            }
        }
        y += ROW;
    }
    if let Some(leaves_on) = scale.leaves_on {
        let x = scale.x(Moment::day(leaves_on));
        drawing = drawing.put(line("leaving", (x, x), (0, height)));
    }
    el("figure").put(drawing).put(el("figcaption").put(key!("days-bars-legend"))).done()
}

/// As much of a name as there is room for.
fn short(name: &str) -> String {
    const MOST: usize = 30;
    if name.chars().count() <= MOST { name.to_owned() } else { name.chars().take(MOST - 1).chain(['…']).collect() }
}

fn text(x: i32, y: i32, text: &str) -> View {
    svg("text").attr("x", x).attr("y", y).put(text).done()
}

/// A bar from its upper corner at the start.
fn bar(class: &str, x: i32, y: i32, width: i32) -> View {
    svg("rect").class(class).attr("x", x).attr("y", y).attr("width", width).attr("height", ROW - 14).done()
}
