//! Several courses over months in one drawing, told apart by their dashes and letters, with a table that says the same.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::words::Key;

use super::plot::{BOTTOM, HEIGHT, LEFT, Scale, TOP, WIDTH, label, level_line, line};
use super::table::{TableRow, row as table_row, scrolling};
use crate::el::{View, el, fragment, nothing, svg};
use crate::live::{self, Signal};
use crate::locale::{plain_sentence, say_figure, say_measure, words};

/// One of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// What it is called.
    pub name: String,
    /// Its amounts of money, by month from the first.
    pub values: Vec<f64>,
}

/// The dashes of the courses, in their order; without any it is a solid line.
pub(super) const DASHES: [&str; 6] = ["", "90 45", "25 35", "160 40 25 40", "60 20", "200 80"];
/// Their letters.
pub(super) const LETTERS: [&str; 6] = ["A", "B", "C", "D", "E", "F"];

/// The drawing with its legend, and the table; nothing without two months.
pub fn courses(title: Key, courses: &[Course]) -> View {
    let count = courses.iter().map(|course| course.values.len()).max().unwrap_or(0);
    if count < 2 {
        return nothing();
    }
    let all = || courses.iter().flat_map(|course| course.values.iter().copied());
    let scale = Scale::between(all().fold(0.0, f64::min), all().fold(0.0, f64::max), count);
    let lines = courses.iter().zip(DASHES).map(|(course, dash)| drawn(course, dash, &scale));
    let letters =
        courses.iter().zip(LETTERS).enumerate().map(|(at, (course, letter))| marked(at, course, letter, &scale));
    let drawing = svg("svg")
        .attr("viewBox", format!("0 0 {WIDTH} {HEIGHT}"))
        .attr("role", "img")
        .attr("aria-label", summary(courses))
        .put(grid(&scale, count))
        .put_each(lines)
        .put_each(letters);
    el("figure")
        .class("plot")
        .put(el("figcaption").put(title))
        .put(drawing)
        .put(el("ul").class("legend").put_each(courses.iter().zip(LETTERS.iter().zip(DASHES)).map(legend)))
        .put(table(title, courses, count))
        .done()
}

/// What each comes to.
fn summary(courses: &[Course]) -> String {
    courses.iter().map(comes_to).collect::<Vec<_>>().join("; ")
}

fn comes_to(course: &Course) -> String {
    format!("{}: {}", course.name, rough(course.values.last().copied().unwrap_or_default()))
}

fn rough(amount: f64) -> String {
    words(|words| words.rough_money(amount))
}

fn drawn(course: &Course, dash: &str, scale: &Scale) -> View {
    let mut path = String::new();
    for (index, value) in course.values.iter().enumerate() {
        let command = if path.is_empty() { 'M' } else { 'L' };
        path += &format!("{command}{} {}", scale.x(index), scale.y(*value));
    }
    svg("path").class("course").attr("d", path).attr("stroke-dasharray", dash).done()
}

/// The letter on its line, each a little further along, so that they do not cover one another.
fn marked(at: usize, course: &Course, letter: &str, scale: &Scale) -> View {
    let index = (course.values.len() - 1) * (at + 2) / (LETTERS.len() + 2);
    let value = course.values.get(index).copied().unwrap_or_default();
    let (x, y) = (scale.x(index), scale.y(value));
    fragment()
        .put(svg("circle").class("letter").attr("cx", x).attr("cy", y).attr("r", "110"))
        .put(label(x, y + 55, "middle", letter))
        .done()
}

fn legend((course, (letter, dash)): (&Course, (&&str, &str))) -> View {
    let sample = svg("svg")
        .attr("viewBox", "0 0 600 80")
        .attr("aria-hidden", "true")
        .put(svg("path").class("course").attr("d", "M0 40H600").attr("stroke-dasharray", dash));
    el("li").put(el("strong").put(*letter)).put(sample).put(comes_to(course)).done()
}

fn grid(scale: &Scale, count: usize) -> View {
    let mut grid = fragment();
    for level in scale.levels() {
        let y = scale.y(level);
        grid = grid.put(level_line("grid", y)).put(label(LEFT - 60, y + 40, "end", &rough(level)));
    }
    let every = [1, 3, 6, 12, 24, 60, 120].into_iter().find(|every| (count - 1) / every <= 6).unwrap_or(240);
    for month in (0..count).step_by(every) {
        let x = scale.x(month);
        let number = say_measure(month as f64, Quantity::Count);
        grid = grid.put(line("month", (x, x), (TOP, BOTTOM))).put(label(x, HEIGHT - 80, "middle", &number));
    }
    grid.done()
}

/// Every month with the amount of each; made only when it is opened.
fn table(title: Key, courses: &[Course], count: usize) -> View {
    let is_open = Signal::new(false);
    let courses = courses.to_vec();
    el("details")
        .class("table")
        .on_toggle(move |open| is_open.set(open))
        .put(el("summary").put(key!("plot-table")))
        .put(live::when(move || is_open.get(), move || rows(title, &courses, count)))
        .done()
}

fn rows(title: Key, courses: &[Course], count: usize) -> View {
    let head = courses.iter().map(|course| el("th").attr("scope", "col").put(course.name.as_str()).done());
    let row = |month: usize| {
        let after = say_figure(&Figure::of(month as f64, Quantity::Months));
        let cell = |course: &Course| course.values.get(month).map_or_else(String::new, |value| rough(*value));
        table_row(TableRow(after, courses.iter().map(cell).collect(), None))
    };
    let heads = el("tr").put(el("th").attr("scope", "col").put(key!("plot-after"))).put_each(head);
    scrolling(plain_sentence(title), false)
        .put(el("table").put(el("thead").put(heads)).put(el("tbody").put_each((0..count).map(row))))
        .done()
}
