//! Two days of a store, hour by hour: the charge, and above it when it is dark, when the van drives, when there is mains and
//! sun, each a row with its name. The lines below and the table say the same.

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Id, Quantity, add_days};
use kerbstead_core::power::Hour;
use kerbstead_core::words::Key;

use crate::el::{El, View, el, nothing, svg};
use crate::locale::{plain_sentence, say_day, words};
use crate::parts::{TableRow, line, table};
use crate::state::App;

/// How many hours are shown.
const HOURS: usize = 48;

// Units of the drawing.
const WIDTH: i32 = 4_200;
const LEFT: i32 = 700;
const STEP: i32 = 72;
const LANE: i32 = 190;
const TOP: i32 = 60;
const CURVE: i32 = 1_200;

/// A kind of hour, with its name and its class.
type Kind = (Key, &'static str, fn(&Hour) -> bool);

const KINDS: [Kind; 4] = [
    (key!("hour-dark"), "hours dark", |hour| hour.dark),
    (key!("hour-driving"), "hours driving", |hour| hour.driving),
    (key!("hour-mains"), "hours mains", |hour| hour.mains),
    (key!("hour-sun"), "hours sun", |hour| hour.sun),
];

/// What is shown: charges at the ends of hours, and what these are like.
struct Shown<'a> {
    from: Date,
    charge_wh: &'a [f64],
    hours: &'a [Hour],
    usable_wh: f64,
}

/// The day of the hour that is picked, and the next.
pub fn day(app: App, id: Id, picked: Option<usize>) -> View {
    let Some(picked) = picked else { return el("p").put(key!("power-day-hint")).done() };
    app.settled_assessment(|assessment| {
        let power = &assessment.power;
        let store = power.stores.iter().find(|store| store.item == id);
        let Some((store, begins)) = store.zip(power.from) else { return nothing() };
        let first = picked / 24 * 24;
        let until = (first + HOURS).min(store.charge_wh.len());
        let from = i32::try_from(first / 24).ok().and_then(|days| add_days(begins, days)).unwrap_or(begins);
        let charge_wh = store.charge_wh.get(first..until).unwrap_or_default();
        let hours = power.hours.get(first..until).unwrap_or_default();
        let shown = Shown { from, charge_wh, hours, usable_wh: store.usable_wh };
        el("div")
            .class("day")
            .attr("aria-live", "polite")
            .put(draw(&shown))
            .put(said(&shown))
            .put(as_table(&shown))
            .done()
    })
}

fn x(hour: usize) -> i32 {
    LEFT + STEP * i32::try_from(hour).unwrap_or(0)
}

fn draw(shown: &Shown) -> View {
    let lanes = i32::try_from(KINDS.len()).unwrap_or(0) * LANE;
    let bottom = TOP + lanes + 60 + CURVE;
    let mut drawing = svg("svg")
        .class("two-days")
        .attr("viewBox", format!("0 0 {WIDTH} {}", bottom + 160))
        .attr("role", "img")
        .attr("aria-label", said_lines(shown).join(" "));
    let mut y = TOP;
    for (name, class, is) in KINDS {
        drawing = drawing.put(label(0, y + 120, "start", &plain_sentence(name)));
        for (from, until) in spans(shown.hours, is) {
            drawing = drawing.put(rect(class, (x(from), y), (x(until) - x(from), LANE - 50)));
        }
        y += LANE;
    }
    for hour in (0..=shown.hours.len()).step_by(6) {
        let time = words(|words| words.measure((hour % 24) as f64, Quantity::HourOfDay));
        drawing =
            drawing.put(line(if hour % 24 == 0 { "month" } else { "grid" }, (x(hour), x(hour)), (TOP, bottom))).put(
                (hour % 12 == 0)
                    .then(|| label(x(hour), bottom + 130, if hour < HOURS { "middle" } else { "end" }, &time)),
            );
    }
    let level = |wh: f64| bottom - share(CURVE, wh / shown.usable_wh.max(1e-9));
    for wh in [shown.usable_wh, shown.usable_wh / 2.0, 0.0] {
        let text = words(|words| words.measure(wh, Quantity::EnergyWh));
        drawing = drawing.put(line("grid", (LEFT, x(shown.hours.len())), (level(wh), level(wh)))).put(label(
            LEFT - 50,
            level(wh) + 40,
            "end",
            &text,
        ));
    }
    let mut path = String::new();
    for (at, charge) in shown.charge_wh.iter().enumerate() {
        let command = if path.is_empty() { 'M' } else { 'L' };
        path += &format!("{command}{} {}", x(at + 1), level(*charge));
    }
    let title = [say_day(shown.from), add_days(shown.from, 1).map_or_else(String::new, say_day)].join(" – ");
    el("figure")
        .class("plot")
        .put(el("figcaption").put(title))
        .put(drawing.put(svg("path").class("course").attr("d", path)))
        .done()
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

/// Hours in a row that are of a kind.
fn spans(hours: &[Hour], is: fn(&Hour) -> bool) -> Vec<(usize, usize)> {
    let mut spans: Vec<(usize, usize)> = Vec::new();
    for at in hours.iter().enumerate().filter(|(_, hour)| is(hour)).map(|(at, _)| at) {
        match spans.last_mut().filter(|(_, until)| *until == at) {
            Some((_, until)) => *until = at + 1,
            None => spans.push((at, at + 1)),
        }
    }
    spans
}

fn time(hour: usize) -> String {
    words(|words| words.measure((hour % 24) as f64, Quantity::HourOfDay))
}

/// What the drawing shows, a line a row and one for the charge.
fn said_lines(shown: &Shown) -> Vec<String> {
    let lowest = shown.charge_wh.iter().copied().enumerate().min_by(|a, b| a.1.total_cmp(&b.1));
    let charge = lowest.map(|(at, wh)| {
        let figures = vec![
            ("lowest", Figure::of(wh, Quantity::EnergyWh)),
            ("at", Figure::Name(time(at + 1))),
            ("end", Figure::of(shown.charge_wh.last().copied().unwrap_or_default(), Quantity::EnergyWh)),
        ];
        tell!("power-day-charge", &figures)
    });
    let rows = KINDS.iter().filter_map(|(name, _, is)| {
        let spans = spans(shown.hours, *is);
        let said: Vec<String> = spans.iter().map(|(from, until)| [time(*from), time(*until)].join("–")).collect();
        (!said.is_empty()).then(|| [plain_sentence(*name), said.join(", ")].join(": ") + ".")
    });
    charge.into_iter().chain(rows).collect()
}

fn said(shown: &Shown) -> View {
    el("ul").class("lines").put_each(said_lines(shown).into_iter().map(|line| el("li").put(line).done())).done()
}

fn as_table(shown: &Shown) -> View {
    let row = |(at, (charge, hour)): (usize, (&f64, &Hour))| {
        let kinds: Vec<String> =
            KINDS.iter().filter(|(_, _, is)| is(hour)).map(|(name, ..)| plain_sentence(*name)).collect();
        let charge = words(|words| words.measure(*charge, Quantity::EnergyWh));
        TableRow(time(at + 1), vec![charge, kinds.join(", ")], None)
    };
    let rows = shown.charge_wh.iter().zip(shown.hours).enumerate().map(row).collect();
    let heads = [key!("hour-until"), key!("hour-charge"), key!("hour-what")];
    el("details")
        .class("table")
        .put(el("summary").put(key!("power-day-table")))
        .put(table(t!("power-day-table"), false, &heads, rows))
        .done()
}
