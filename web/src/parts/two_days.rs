//! Two days hour by hour: rows of hours that are of a kind, each with its name, and courses below them, told apart by their
//! dashes and letters. The lines below the drawing and the table say the same.

use jiff::civil::Date;
use kerbstead_core::order::in_a_row;
use kerbstead_core::plan::{Quantity, add_days};
use kerbstead_core::words::Key;

use super::courses::{DASHES, LETTERS};
use super::plot::line;
use super::table::{TableRow, named_table};
use crate::el::{El, View, el, fragment, svg};
use crate::live::{self, Signal};
use crate::locale::{plain_sentence, say_day, say_measure, t};

/// How many hours are shown.
pub const HOURS: usize = 48;

// Units of the drawing.
const WIDTH: i32 = 4_200;
const LEFT: i32 = 700;
const STEP: i32 = 72;
const LANE: i32 = 190;
const TOP: i32 = 60;
const CURVE: i32 = 1_200;

/// What is shown.
#[derive(Clone)]
pub struct TwoDays {
    /// The first day.
    pub from: Date,
    /// Rows of hours, the first on top.
    pub lanes: Vec<Lane>,
    /// Courses, as they are at the ends of the hours: the name of each, and its values.
    pub courses: Vec<(Key, Vec<f64>)>,
    /// What the courses measure.
    pub quantity: Quantity,
    /// Levels with a line: the lowest first, the highest last.
    pub levels: Vec<f64>,
    /// What the courses come to, in words.
    pub said: String,
    /// The title of the table in the catalogue.
    pub table: &'static str,
}

/// A row of hours.
#[derive(Clone)]
pub struct Lane {
    /// Its name.
    pub name: String,
    /// Its class in the drawing.
    pub class: &'static str,
    /// Whether each hour is so.
    pub is: Vec<bool>,
}

/// The hours of the day of one that is picked, and of the next, of so many; and the first day of them.
pub fn around(picked: usize, begins: Date, count: usize) -> (std::ops::Range<usize>, Date) {
    let first = (picked / 24 * 24).min(count);
    let from = i32::try_from(first / 24).ok().and_then(|days| add_days(begins, days)).unwrap_or(begins);
    (first..(first + HOURS).min(count), from)
}

impl TwoDays {
    /// The drawing, its lines and its table.
    pub fn show(self) -> View {
        el("div")
            .class("day")
            .attr("aria-live", "polite")
            .put(self.draw())
            .put(self.lines())
            .put(self.as_table())
            .done()
    }

    fn hours(&self) -> usize {
        self.courses.first().map_or(0, |(_, values)| values.len())
    }

    fn draw(&self) -> View {
        let lanes = i32::try_from(self.lanes.len()).unwrap_or(0) * LANE;
        let bottom = TOP + lanes + 60 + CURVE;
        let mut drawing = svg("svg")
            .class("two-days")
            .attr("viewBox", format!("0 0 {WIDTH} {}", bottom + 160))
            .attr("role", "img")
            .attr("aria-label", self.said_lines().join(" "));
        let mut y = TOP;
        for lane in &self.lanes {
            drawing = drawing.put(label(0, y + 120, "start", &lane.name));
            for (from, until) in in_a_row(lane.is.iter().copied()) {
                drawing = drawing.put(rect(lane.class, (x(from), y), (x(until) - x(from), LANE - 50)));
            }
            y += LANE;
        }
        for hour in (0..=self.hours()).step_by(6) {
            let class = if hour % 24 == 0 { "month" } else { "grid" };
            drawing = drawing
                .put(line(class, (x(hour), x(hour)), (TOP, bottom)))
                .put((hour % 12 == 0 && hour < HOURS).then(|| label(x(hour), bottom + 130, "middle", &time(hour))));
        }
        let (low, high) = (self.levels.first().copied().unwrap_or(0.0), self.levels.last().copied().unwrap_or(1.0));
        let level = |value: f64| bottom - share(CURVE, (value - low) / (high - low).max(1e-9));
        for value in &self.levels {
            let y = level(*value);
            drawing = drawing.put(line("grid", (LEFT, x(self.hours())), (y, y))).put(label(
                LEFT - 50,
                y + 40,
                "end",
                &self.measure(*value),
            ));
        }
        let is_alone = self.courses.len() == 1;
        for (at, ((_, values), (dash, letter))) in self.courses.iter().zip(DASHES.iter().zip(LETTERS)).enumerate() {
            let mut path = String::new();
            for (hour, value) in values.iter().enumerate() {
                let command = if path.is_empty() { 'M' } else { 'L' };
                path += &format!("{command}{} {}", x(hour + 1), level(*value));
            }
            drawing = drawing.put(svg("path").class("course").attr("d", path).attr("stroke-dasharray", *dash));
            let hour = values.len() * (at + 2) / (LETTERS.len() + 2);
            let mark = values.get(hour).filter(|_| !is_alone).map(|value| {
                fragment()
                    .put(
                        svg("circle")
                            .class("letter")
                            .attr("cx", x(hour + 1))
                            .attr("cy", level(*value))
                            .attr("r", "100"),
                    )
                    .put(label(x(hour + 1), level(*value) + 50, "middle", letter))
                    .done()
            });
            drawing = drawing.put(mark);
        }
        let title = [say_day(self.from), add_days(self.from, 1).map_or_else(String::new, say_day)].join(" – ");
        el("figure").class("plot").put(el("figcaption").put(title)).put(drawing).done()
    }

    fn measure(&self, value: f64) -> String {
        say_measure(value, self.quantity)
    }

    /// What the drawing shows: the courses, the letters of several, and a line a row.
    fn said_lines(&self) -> Vec<String> {
        let legend = || {
            let of = |((name, _), letter): (&(Key, Vec<f64>), &str)| [letter, &plain_sentence(*name)].join(": ");
            self.courses.iter().zip(LETTERS).map(of).collect::<Vec<_>>().join(", ") + "."
        };
        let legend = (self.courses.len() > 1).then(legend);
        let rows = self.lanes.iter().filter_map(|lane| {
            let said: Vec<String> = in_a_row(lane.is.iter().copied())
                .iter()
                .map(|(from, until)| [time(*from), time(*until)].join("–"))
                .collect();
            (!said.is_empty()).then(|| [lane.name.clone(), said.join(", ")].join(": ") + ".")
        });
        std::iter::once(self.said.clone()).chain(legend).chain(rows).collect()
    }

    fn lines(&self) -> View {
        el("ul").class("lines").put_each(self.said_lines().into_iter().map(|line| el("li").put(line).done())).done()
    }

    fn as_table(&self) -> View {
        let is_open = Signal::new(false);
        let this = self.clone();
        el("details")
            .class("table")
            .on_toggle(move |open| is_open.set(open))
            .put(el("summary").put(t(self.table)))
            .put(live::when(move || is_open.get(), move || this.rows()))
            .done()
    }

    fn rows(&self) -> View {
        let row = |hour: usize| {
            let is = |lane: &&Lane| lane.is.get(hour) == Some(&true);
            let kinds: Vec<&str> = self.lanes.iter().filter(is).map(|lane| lane.name.as_str()).collect();
            let values = self
                .courses
                .iter()
                .map(|(_, values)| values.get(hour).map_or_else(String::new, |value| self.measure(*value)));
            TableRow(time(hour + 1), values.chain([kinds.join(", ")]).collect(), None)
        };
        let mut heads = vec![plain_sentence(key!("hour-until"))];
        heads.extend(self.courses.iter().map(|(name, _)| plain_sentence(*name)));
        heads.push(plain_sentence(key!("hour-what")));
        named_table(t(self.table), false, heads, (0..self.hours()).map(row).collect())
    }
}

/// An hour of the day in words.
pub fn time(hour: usize) -> String {
    say_measure((hour % 24) as f64, Quantity::HourOfDay)
}

fn x(hour: usize) -> i32 {
    LEFT + STEP * i32::try_from(hour).unwrap_or(0)
}

#[allow(clippy::cast_possible_truncation)] // shares lie within the drawing
fn share(length: i32, share: f64) -> i32 {
    (f64::from(length) * share.clamp(0.0, 1.0)) as i32
}

fn rect(class: &str, (x, y): (i32, i32), (width, height): (i32, i32)) -> El {
    svg("rect").class(class).attr("x", x).attr("y", y).attr("width", width).attr("height", height)
}

fn label(x: i32, y: i32, anchor: &str, text: &str) -> El {
    svg("text").class("level").attr("x", x).attr("y", y).attr("text-anchor", anchor).put(text)
}
