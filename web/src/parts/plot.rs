//! A course over days as a drawing, with a sentence and a table that say the same.

use jiff::civil::Date;
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{Quantity, add_days, days_between};

use crate::el::{El, View, el, fragment, nothing, svg};
use crate::live::{self, Memo, Signal};
use crate::locale::{say_figure, t, tell, words};

use super::table::TableRow;

/// What to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct PlotData {
    /// The catalogue's title.
    pub title: &'static str,
    /// The first day.
    pub from: Date,
    /// Values in order, evenly spaced.
    pub values: Vec<f64>,
    /// How many of them make a day.
    pub per_day: usize,
    /// What the values are: a quantity, or money if none.
    pub quantity: Option<Quantity>,
    /// The level below which the plan falls short.
    pub floor: f64,
    /// The level that cannot be passed, if there is one.
    pub ceiling: Option<f64>,
    /// Whether the lowest value is the one to look at; otherwise it is the highest.
    pub low_matters: bool,
    /// Today, to be marked if it lies within.
    pub today: Date,
    /// What else is marked, by its place among the values.
    pub marks: Vec<(usize, Mark)>,
    /// Where else the course may lie.
    pub band: Option<Band>,
}

impl PlotData {
    /// A value a day, of which the highest is the one to look at: money, unless a quantity is said.
    pub const fn by_day(title: &'static str, from: Date, today: Date, values: Vec<f64>) -> Self {
        Self {
            title,
            from,
            values,
            per_day: 1,
            quantity: None,
            floor: 0.0,
            ceiling: None,
            low_matters: false,
            today,
            marks: Vec::new(),
            band: None,
        }
    }
}

/// Where the course lies in eight of ten cases, as evenly spaced as its values.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// The first day.
    pub from: Date,
    /// So many of the day's values come before its first.
    pub skips: usize,
    /// In one of ten cases it is lower.
    pub low: Vec<f64>,
    /// In one of ten cases it is higher.
    pub high: Vec<f64>,
}

impl Band {
    /// Both ends on a day of so many values.
    fn on(&self, date: Date, per_day: usize) -> Option<[f64; 2]> {
        let day = usize::try_from(days_between(self.from, date)).ok()?;
        let from = (day * per_day).saturating_sub(self.skips);
        let until = ((day + 1) * per_day).saturating_sub(self.skips);
        let low = self.low.get(from..until.min(self.low.len()))?.iter().copied().reduce(f64::min)?;
        let high = self.high.get(from..until.min(self.high.len()))?.iter().copied().reduce(f64::max)?;
        Some([low, high])
    }
}

/// What a mark in the drawing tells, by its shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Something comes in: a triangle that points up.
    In,
    /// Something is sold: a diamond.
    Sale,
    /// Something is paid for: a triangle that points down.
    Out,
}

impl Mark {
    /// Its shape around the point that it marks, in tenths.
    const fn path(self) -> &'static str {
        match self {
            Self::In => "m0-50l43 78h-86z",
            Self::Sale => "m0-54l46 54-46 54-46-54z",
            Self::Out => "m0 50l43-78h-86z",
        }
    }

    /// It as a small drawing, to explain it in a line of text.
    pub fn icon(self) -> View {
        let shape = svg("path").class("mark").attr("d", format!("M60 60{}", self.path()));
        svg("svg").class("icon").attr("viewBox", "0 0 120 120").attr("aria-hidden", "true").put(shape).done()
    }
}

/// The place among the values that is picked, if one is.
pub type Picked = Signal<Option<usize>>;

// Near the width of a phone, so that letters are of a readable size there; on a wide page the style sheet makes them
// smaller against the drawing. Places are whole tenths of a unit: there is no code for printing fractions.
pub(super) const WIDTH: i32 = 4_200;
pub(super) const HEIGHT: i32 = 2_200;
pub(super) const LEFT: i32 = 620;
const RIGHT: i32 = WIDTH - 80;
pub(super) const BOTTOM: i32 = HEIGHT - 240;
pub(super) const TOP: i32 = 80;
/// More points than this are not to be told apart on any screen.
const MOST_POINTS: usize = 640;

/// A mark within so many tenths of a place that was tapped is what was meant: half a finger on a phone.
const FINGER: i32 = 270;

/// The drawing, its sentence and its table; nothing without data.
pub fn plot(data: Memo<Option<PlotData>>) -> View {
    drawn(data, None)
}

/// The same, of which places can be picked by a tap.
pub fn plot_to_pick(data: Memo<Option<PlotData>>, picked: Picked) -> View {
    drawn(data, Some(picked))
}

fn drawn(data: Memo<Option<PlotData>>, picked: Option<Picked>) -> View {
    let is_drawable = live::memo(move || data.with(|data| data.as_ref().map(|data| data.values.len() > 1)));
    live::view(move || match is_drawable.get() {
        None => nothing(),
        Some(false) => el("p").put(key!("plot-empty")).done(),
        Some(true) => figure_of(data, picked),
    })
}

fn figure_of(data: Memo<Option<PlotData>>, picked: Option<Picked>) -> View {
    let title = move || data.with(|data| data.as_ref().map_or_else(String::new, |data| t(data.title)));
    el("figure")
        .class("plot")
        .put(el("figcaption").put(live::text(title)))
        .put(live::view(move || data.with(|data| data.as_ref().map_or_else(nothing, |data| drawing(data, picked)))))
        .put(table(data))
        .done()
}

fn drawing(data: &PlotData, picked: Option<Picked>) -> View {
    let scale = Scale::of(data);
    let summary = summary(data);
    let drawing = svg("svg")
        .attr("viewBox", format!("0 0 {WIDTH} {HEIGHT}"))
        .attr("role", "img")
        .attr("aria-label", summary.as_str())
        .put(grid(data, &scale))
        .put(data.band.as_ref().map(|band| svg("path").class("band").attr("d", area_of_band(data, band, &scale))))
        .put(svg("path").class("below").attr("d", area_below(data, &scale)))
        .put(svg("path").class("course").attr("d", course(data, &scale)))
        .put(marks(data, &scale))
        .put(picked.map(|picked| picking(&scale, picked)));
    let drawing = match picked {
        Some(picked) => {
            let marks: Vec<usize> = data.marks.iter().map(|(index, _)| *index).collect();
            drawing.on_tap(move |across| picked.set(Some(tapped(&scale, &marks, across))))
        }
        None => drawing,
    };
    let band = data.band.as_ref().map(|_| el("p").class("summary").put(key!("plot-band")).done());
    fragment().put(drawing).put(el("p").class("summary").put(summary)).put(band).done()
}

/// The line through what is picked.
fn picking(scale: &Scale, picked: Picked) -> View {
    let scale = *scale;
    live::view(move || picked.get().map_or_else(nothing, |index| day_line("picked", scale.x(index)).done()))
}

/// The place that was tapped so far across the drawing, or the nearest mark within a finger of it.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // it lies between 0 and the last place
fn tapped(scale: &Scale, marks: &[usize], across: f64) -> usize {
    let x = place(WIDTH, across);
    let share = f64::from(x - LEFT) / f64::from(RIGHT - LEFT);
    let index = (share.clamp(0.0, 1.0) * scale.count + 0.5) as usize;
    let distance = |mark: &&usize| scale.x(**mark).abs_diff(x);
    let near = marks.iter().min_by_key(distance).filter(|mark| distance(mark) <= FINGER.unsigned_abs());
    near.copied().unwrap_or(index)
}

/// From values to places in the drawing.
#[derive(Clone, Copy)]
pub(super) struct Scale {
    low: f64,
    high: f64,
    step: f64,
    count: f64,
}

impl Scale {
    fn of(data: &PlotData) -> Self {
        let ends = |end: fn(&Band) -> &Vec<f64>| data.band.iter().flat_map(move |band| end(band).iter());
        let low = data.values.iter().chain(ends(|band| &band.low)).copied().fold(data.floor.min(0.0), f64::min);
        let high = data.values.iter().chain(ends(|band| &band.high)).copied();
        let high = high.fold(data.ceiling.unwrap_or(0.0).max(data.floor), f64::max);
        Self::between(low, high, data.values.len())
    }

    /// For so many values between two levels.
    pub(super) fn between(low: f64, high: f64, count: usize) -> Self {
        let step = round_step((high - low).max(1e-9) / 4.0);
        let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
        Self { low, high: high.max(low + step), step, count: (count - 1) as f64 }
    }

    pub(super) fn x(&self, index: usize) -> i32 {
        LEFT + place(RIGHT - LEFT, index as f64 / self.count)
    }

    pub(super) fn y(&self, value: f64) -> i32 {
        TOP + place(BOTTOM - TOP, (self.high - value) / (self.high - self.low))
    }

    pub(super) fn levels(&self) -> impl Iterator<Item = f64> {
        (0..12).map(|n| self.low + f64::from(n) * self.step).take_while(|level| *level <= self.high + self.step / 2.0)
    }
}

/// That share of a length.
#[allow(clippy::cast_possible_truncation)] // shares lie within the drawing
fn place(length: i32, share: f64) -> i32 {
    (f64::from(length) * share) as i32
}

/// The next larger of 1, 2 and 5 times a power of ten: a step between lines that people can count.
fn round_step(step: f64) -> f64 {
    let mut size = 1e-9;
    loop {
        for factor in [1.0, 2.0, 5.0] {
            if size * factor >= step || size > 1e12 {
                return size * factor;
            }
        }
        size *= 10.0;
    }
}

/// Points of the course: all of them, or the lowest and highest of each stretch where they are too many.
fn points(data: &PlotData) -> Vec<(usize, f64)> {
    let stretch = data.values.len().div_ceil(MOST_POINTS / 2).max(1);
    if stretch < 3 {
        return data.values.iter().copied().enumerate().collect();
    }
    let chunks = data.values.chunks(stretch).enumerate();
    chunks
        .flat_map(|(chunk, values)| {
            let indexed = || values.iter().copied().enumerate().map(|(at, value)| (chunk * stretch + at, value));
            let low = indexed().min_by(|a, b| a.1.total_cmp(&b.1));
            let high = indexed().max_by(|a, b| a.1.total_cmp(&b.1));
            let in_order = low.map(|point| point.0) <= high.map(|point| point.0);
            let (first, second) = if in_order { (low, high) } else { (high, low) };
            first.into_iter().chain(second)
        })
        .collect()
}

fn course(data: &PlotData, scale: &Scale) -> String {
    let mut path = String::new();
    for (index, value) in points(data) {
        let command = if path.is_empty() { 'M' } else { 'L' };
        path += &format!("{command}{} {}", scale.x(index), scale.y(value));
    }
    path
}

/// The area between the floor and the course where the course lies below it.
fn area_below(data: &PlotData, scale: &Scale) -> String {
    let mut path = String::new();
    let floor = scale.y(data.floor);
    for (index, value) in points(data) {
        let (x, y) = (scale.x(index), scale.y(value.min(data.floor)));
        path += &format!("{}{x} {y}", if path.is_empty() { 'M' } else { 'L' });
    }
    format!("{path}L{RIGHT} {floor}L{LEFT} {floor}Z")
}

/// The area between both ends of the band: of many values, the least and the most of each stretch.
fn area_of_band(data: &PlotData, band: &Band, scale: &Scale) -> String {
    let first = usize::try_from(days_between(data.from, band.from)).unwrap_or(0) * data.per_day + band.skips;
    let stretch = band.low.len().div_ceil(MOST_POINTS / 2).max(1);
    let ends = |values: &[f64], pick: fn(f64, f64) -> f64| {
        let chunks = values.chunks(stretch).enumerate();
        chunks.filter_map(|(at, values)| Some((at * stretch, values.iter().copied().reduce(pick)?))).collect::<Vec<_>>()
    };
    let (low, high) = (ends(&band.low, f64::min), ends(&band.high, f64::max));
    let mut path = String::new();
    for (at, value) in low.iter().chain(high.iter().rev()) {
        let command = if path.is_empty() { 'M' } else { 'L' };
        path += &format!("{command}{} {}", scale.x(first + at), scale.y(*value));
    }
    path + "Z"
}

fn grid(data: &PlotData, scale: &Scale) -> View {
    let mut grid = fragment();
    for level in scale.levels() {
        let y = scale.y(level);
        grid = grid.put(level_line("grid", y)).put(label(LEFT - 60, y + 40, "end", &short(data, level)));
    }
    for (index, date) in months(data) {
        let x = scale.x(index);
        let month = words(|words| words.month(date));
        grid = grid.put(day_line("month", x)).put(label(x, HEIGHT - 80, "middle", &month));
    }
    let limit = if data.low_matters { data.floor } else { data.ceiling.unwrap_or(data.floor) };
    grid.put(level_line("floor", scale.y(limit))).done()
}

/// A line across the drawing.
pub(super) fn level_line(class: &str, y: i32) -> El {
    line(class, (LEFT, RIGHT), (y, y))
}

/// A line up and down the drawing.
fn day_line(class: &str, x: i32) -> El {
    line(class, (x, x), (TOP, BOTTOM))
}

/// A line of a drawing, from one place to another.
pub fn line(class: &str, x: (i32, i32), y: (i32, i32)) -> El {
    svg("line").class(class).attr("x1", x.0).attr("x2", x.1).attr("y1", y.0).attr("y2", y.1)
}

pub(super) fn label(x: i32, y: i32, anchor: &str, text: &str) -> El {
    svg("text").class("level").attr("x", x).attr("y", y).attr("text-anchor", anchor).put(text)
}

/// The first day of each month, or of every second or third month when they are many.
fn months(data: &PlotData) -> Vec<(usize, Date)> {
    let firsts: Vec<(usize, Date)> = dates(data).enumerate().filter(|(_, date)| date.day() == 1).collect();
    let every = firsts.len().div_ceil(6).max(1);
    firsts.into_iter().step_by(every).map(|(day, date)| (day * data.per_day, date)).collect()
}

fn dates(data: &PlotData) -> impl Iterator<Item = Date> {
    let days = data.values.len().div_ceil(data.per_day.max(1));
    std::iter::successors(Some(data.from), |date| add_days(*date, 1)).take(days)
}

/// The lowest point, and today.
fn marks(data: &PlotData, scale: &Scale) -> View {
    let today = dates(data).position(|date| date == data.today);
    let today = today.map(|day| day_line("today", scale.x(day * data.per_day)));
    let lowest = lowest(data).filter(|_| data.low_matters).map(|(index, value)| {
        svg("circle").class("lowest").attr("cx", scale.x(index)).attr("cy", scale.y(value)).attr("r", "50")
    });
    let others = data.marks.iter().filter_map(|(index, mark)| {
        let y = scale.y(*data.values.get(*index)?);
        Some(svg("path").class("mark").attr("d", format!("M{} {y}{}", scale.x(*index), mark.path())))
    });
    fragment().put(today).put(lowest).put_each(others).done()
}

fn lowest(data: &PlotData) -> Option<(usize, f64)> {
    data.values.iter().copied().enumerate().min_by(|a, b| a.1.total_cmp(&b.1))
}

fn highest(data: &PlotData) -> Option<(usize, f64)> {
    data.values.iter().copied().enumerate().max_by(|a, b| a.1.total_cmp(&b.1))
}

fn date_of(data: &PlotData, index: usize) -> Date {
    dates(data).nth(index / data.per_day.max(1)).unwrap_or(data.from)
}

fn summary(data: &PlotData) -> String {
    let end = data.values.last().copied().unwrap_or_default();
    let (index, low) = if data.low_matters { lowest(data) } else { highest(data) }.unwrap_or_default();
    tell(
        if data.low_matters { "plot-summary" } else { "plot-summary-highest" },
        &vec![
            ("start", figure(data, data.values[0])),
            ("from", Figure::Date(data.from)),
            ("extreme", figure(data, low)),
            ("on", Figure::Date(date_of(data, index))),
            ("end", figure(data, end)),
            ("until", Figure::Date(date_of(data, data.values.len() - 1))),
        ],
    )
}

fn figure(data: &PlotData, value: f64) -> Figure {
    match data.quantity {
        Some(quantity) => Figure::of(value, quantity),
        None => Figure::Name(words(|words| words.rough_money(value))),
    }
}

fn short(data: &PlotData, value: f64) -> String {
    say_figure(&figure(data, value))
}

/// Every day with the lowest and the last value of it; made only when it is opened.
fn table(data: Memo<Option<PlotData>>) -> View {
    let is_open = Signal::new(false);
    el("details")
        .class("table")
        .on_toggle(move |open| is_open.set(open))
        .put(el("summary").put(key!("plot-table")))
        .put(live::when(
            move || is_open.get(),
            move || live::view(move || data.with(|data| data.as_ref().map_or_else(nothing, rows))),
        ))
        .done()
}

fn rows(data: &PlotData) -> View {
    let has_hours = data.per_day > 1;
    let row = |(date, values): (Date, &[f64])| {
        let low = values.iter().copied().fold(f64::INFINITY, f64::min);
        let last = values.last().copied().unwrap_or_default();
        let class = (low < data.floor || (has_hours && low <= 0.0)).then_some("short");
        let lowest = has_hours.then(|| short(data, low));
        let mut cells: Vec<String> = lowest.into_iter().chain([short(data, last)]).collect();
        let ends = data.band.as_ref().and_then(|band| band.on(date, data.per_day)).into_iter().flatten();
        cells.extend(ends.map(|end| short(data, end)));
        TableRow(say_figure(&Figure::Date(date)), cells, class)
    };
    let rows = dates(data).zip(data.values.chunks(data.per_day.max(1))).map(row).collect();
    let mut heads = vec![key!("plot-day")];
    heads.extend(has_hours.then_some(key!("plot-lowest")));
    heads.push(key!("plot-evening"));
    if data.band.is_some() {
        heads.extend([key!("plot-band-low"), key!("plot-band-high")]);
    }
    super::table::table(t(data.title), false, &heads, rows)
}
