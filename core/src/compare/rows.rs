//! What plans come to, line by line.

use std::cmp::Ordering;

use super::cell::{Cell, Line};
use crate::assessment::{Assessment, Balance, Standing, Verdict};
use crate::explain::Figure;
use crate::plan::record::record;

/// One line of several plans.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Row {
    /// Which.
    pub line: Line,
    /// The balance that it is of, for the lines that each balance has.
    pub balance: Option<Balance>,
    /// What each plan has.
    pub cells: Vec<Cell>,
    /// Whether they differ; never so for money of different currencies.
    pub differs: bool,
    /// Whether a plan is better than another one on this line and none is better than it. All false where all are
    /// alike, where one does not know it, or where more is neither better nor worse.
    pub best: Vec<bool>,
}

record!(Row { line, balance, cells, differs, best });

impl Row {
    /// What a plan has, as a figure; none of verdicts, of what never happens and of what is not known.
    pub fn figure(&self, plan: usize) -> Option<Figure> {
        self.cells.get(plan)?.figure(self.line, self.balance)
    }
}

/// All lines, those that differ first.
pub(super) fn rows(assessments: &[Assessment], same_currency: bool) -> Vec<Row> {
    let mut columns: Vec<Vec<(Line, Option<Balance>, Cell)>> = assessments.iter().map(lines).collect();
    let Some(first) = columns.first_mut() else { return Vec::new() };
    let names: Vec<_> = first.iter().map(|(line, balance, _)| (*line, *balance)).collect();
    let mut rows = Vec::new();
    for (at, (line, balance)) in names.into_iter().enumerate() {
        let cells = columns.iter().filter_map(|column| column.get(at)).map(|(.., cell)| *cell).collect();
        rows.push(row(line, balance, cells, same_currency));
    }
    let (mut sorted, alike): (Vec<Row>, Vec<Row>) = rows.into_iter().partition(|row| row.differs);
    sorted.extend(alike);
    sorted
}

fn row(line: Line, balance: Option<Balance>, cells: Vec<Cell>, same_currency: bool) -> Row {
    let is_compared = same_currency || !line.is_money(balance);
    let differs = is_compared && cells.windows(2).any(|pair| pair[0] != pair[1]);
    let best = match line.is_more_better().filter(|_| differs) {
        Some(more) => best(&cells, more),
        None => vec![false; cells.len()],
    };
    Row { line, balance, cells, differs, best }
}

/// Those that none is better than, if one is worse.
fn best(cells: &[Cell], more: bool) -> Vec<bool> {
    let worse = if more { Ordering::Less } else { Ordering::Greater };
    let none = vec![false; cells.len()];
    let mut best = Vec::new();
    for cell in cells {
        let against: Option<Vec<Ordering>> = cells.iter().map(|other| cell.compared(other)).collect();
        let Some(against) = against else { return none };
        best.push(!against.contains(&worse));
    }
    if best.iter().all(|is_best| *is_best) { none } else { best }
}

/// What one assessment has on each line: the same lines for every assessment.
fn lines(assessment: &Assessment) -> Vec<(Line, Option<Balance>, Cell)> {
    let mut lines = Vec::new();
    of_standing(&mut lines, Balance::Money, &assessment.money.standing);
    of_standing(&mut lines, Balance::Power, &assessment.power.standing);
    of_standing(&mut lines, Balance::Water, &assessment.water.standing);
    of_standing(&mut lines, Balance::Days, &assessment.days.standing);
    of_standing(&mut lines, Balance::Space, &assessment.space.standing);
    of_standing(&mut lines, Balance::Load, &assessment.load.standing);
    of_standing(&mut lines, Balance::Warmth, &assessment.warmth.standing);
    of_standing(&mut lines, Balance::Signal, &assessment.signal.standing);
    let mut own = of_money(assessment);
    own.extend(of_days(assessment));
    own.extend(of_load(assessment));
    own.extend(of_supplies(assessment));
    own.extend(of_space(assessment));
    lines.extend(own.into_iter().map(|(line, cell)| (line, None, cell.unwrap_or_default())));
    lines
}

fn of_standing<F>(lines: &mut Vec<(Line, Option<Balance>, Cell)>, balance: Balance, standing: &Standing<F>) {
    // What falls short without a day does so all along.
    let lasts = matches!(standing.verdict, Verdict::Holds | Verdict::Tight);
    let no_day = if lasts { Cell::never() } else { Cell::default() };
    let margin = standing.margin.map(Cell::of_margin).unwrap_or_default();
    lines.push((Line::Verdict, Some(balance), Cell::of_verdict(standing.verdict)));
    lines.push((Line::Margin, Some(balance), margin));
    // Room is the same every day.
    if balance != Balance::Space {
        lines.push((Line::FirstShort, Some(balance), standing.first_short.map_or(no_day, Cell::of_moment)));
    }
}

type Own = Vec<(Line, Option<Cell>)>;

/// Cash is known where there is a verdict; the rest stands by itself.
fn of_money(assessment: &Assessment) -> Own {
    let money = &assessment.money;
    let is_known = money.standing.verdict != Verdict::Unknown;
    let last = money.days.last().filter(|_| is_known);
    let month = money.month.as_ref();
    vec![
        (Line::CashAtEnd, last.map(|day| Cell::of_amount(day.closing))),
        (Line::LowestCash, money.lowest.filter(|_| is_known).map(|day| Cell::of_amount(day.closing))),
        (Line::KitToPay, Some(Cell::of_amount(money.still_to_pay))),
        (Line::MonthOnRoad, month.map(|month| Cell::of_amount(month.road))),
        (Line::MonthAtHome, month.map(|month| Cell::of_amount(month.home))),
        (Line::DayOnRoad, month.map(|_| Cell::of_amount(money.road_cost_per_day))),
        (Line::PaidBack, month.map(|month| month.paid_back_on.map_or(Cell::never(), Cell::of_day))),
    ]
}

fn of_days(assessment: &Assessment) -> Own {
    let days = &assessment.days;
    let is_known = days.standing.verdict != Verdict::Unknown;
    vec![
        (Line::Leaves, assessment.leaves_on.map(Cell::of_day)),
        (Line::Ends, assessment.leaves_on.map(|_| Cell::of_day(assessment.ends_on))),
        (Line::Done, days.finish.map(Cell::of_moment)),
        (Line::HoursLeft, is_known.then(|| Cell::of_value(days.hours_left))),
    ]
}

fn of_load(assessment: &Assessment) -> Own {
    let load = &assessment.load;
    let parts = load.parts.as_ref();
    let whole = parts.map(|parts| parts.empty_kg + parts.people_kg + parts.fuel_kg + parts.things_kg + parts.water_kg);
    vec![
        (Line::EmptyMass, parts.map(|parts| Cell::of_value(parts.empty_kg))),
        (Line::KitMass, parts.map(|parts| Cell::of_value(parts.things_kg))),
        (Line::MostMass, whole.map(Cell::of_value)),
        (Line::SpareMass, load.spare_kg.map(Cell::of_value)),
    ]
}

fn of_supplies(assessment: &Assessment) -> Own {
    let (water, power) = (&assessment.water, &assessment.power);
    let is_water_known = water.standing.verdict != Verdict::Unknown;
    let litres = |litres: f64| is_water_known.then(|| Cell::of_value(litres));
    let has_stores = !power.stores.is_empty();
    let energy = |energy_wh: f64| has_stores.then(|| Cell::of_value(energy_wh));
    vec![
        (Line::FreshLitres, litres(water.fresh_capacity_l)),
        (Line::LitresADay, litres(water.use_l_per_day)),
        (Line::LowestLitres, water.lowest.and_then(|day| litres(day.fresh_l))),
        (Line::StoresHold, energy(power.stores.iter().map(|store| store.usable_wh).sum())),
        (Line::DrawnADay, energy(power.draws.iter().map(|draw| draw.wh_per_day).sum())),
        (Line::SunADay, energy(power.stores.iter().map(|store| store.from_sun_wh).sum())),
    ]
}

fn of_space(assessment: &Assessment) -> Own {
    let space = &assessment.space;
    let is_known = space.standing.verdict != Verdict::Unknown;
    let litres = |litres: f64| is_known.then(|| Cell::of_value(litres));
    vec![(Line::Goods, litres(space.goods_l)), (Line::LeftOver, litres(space.left_over_l))]
}
