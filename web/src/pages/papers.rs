//! What goes out on paper or to other programs: sheets to print, tables, a calendar file.

use kerbstead_core::Assessment;
use kerbstead_core::explain::Figure;
use kerbstead_core::papers::{Loan, Marks, ToBuy, agenda, cash_table, kit_table, to_borrow, to_buy};
use kerbstead_core::plan::{Mode, Money, Plan, Quantity, add_days};

use super::days::day_sheet;
use super::load::leaving_sheet;
use super::space::taping_sheet;
use super::{BALANCES, balance_title, section, standing};
use crate::browser;
use crate::el::{View, el, fragment, nothing};
use crate::live::{self, Signal};
use crate::locale::{number_marks, say_figure, t, words};
use crate::parts::{button, verdict_badge};
use crate::state::App;

/// Draws a sheet.
type Sheet = fn(App) -> View;

/// The sheets there are.
const SHEETS: [(&str, Sheet); 6] = [
    ("sheet-plan", plan_sheet),
    ("sheet-days", day_sheet),
    ("sheet-taping", taping_sheet),
    ("sheet-leaving", leaving_sheet),
    ("sheet-shopping", shopping_sheet),
    ("sheet-borrowing", borrowing_sheet),
];

/// The page.
pub fn papers() -> View {
    let app = App::here();
    let shown = Signal::new(0_usize);
    let choices = SHEETS.iter().enumerate().map(|(at, (title, _))| {
        el("button")
            .attr("type", "button")
            .live("aria-pressed", move || Some((shown.get() == at).to_string()))
            .on_click(move || shown.set(at))
            .put(t(title))
            .done()
    });
    let sheet = move || SHEETS.get(shown.get()).map_or_else(nothing, |(_, draw)| draw(app));
    fragment()
        .put(el("h1").class("screen-only").put(key!("page-papers")))
        .put(
            el("div")
                .class("screen-only")
                .put(el("div").class("buttons").put_each(choices))
                .put(button(key!("papers-print"), browser::print).class("primary")),
        )
        .put(el("article").class("sheet").put(live::view(sheet)))
        .put(el("div").class("screen-only").put(section(key!("papers-files"), files())))
        .done()
}

/// Files for other programs, made when they are asked for.
fn files() -> View {
    let app = App::here();
    let kit = move || {
        let table = app.plan(|plan| words(|words| kit_table(plan, words, marks())));
        browser::save_file("kerbstead-kit.csv", &table);
    };
    let cash = move || {
        let table = app.assessment(|assessment| words(|words| cash_table(&assessment.money, words, marks())));
        browser::save_file("kerbstead-cash.csv", &table);
    };
    let days = move || browser::save_file("kerbstead.ics", &app.plan(|plan| app.assessment(|now| dates(plan, now))));
    fragment()
        .put(el("p").put(key!("papers-files-hint")))
        .put(el("div").class("buttons").put_each([
            button(key!("papers-kit"), kit),
            button(key!("papers-cash"), cash),
            button(key!("papers-agenda"), days),
        ]))
        .done()
}

fn dates(plan: &Plan, assessment: &Assessment) -> String {
    words(|words| agenda(plan, assessment, browser::today(), words))
}

fn marks() -> Marks {
    Marks { decimal: number_marks().decimal }
}

/// The plan on one page.
fn plan_sheet(app: App) -> View {
    let verdicts = BALANCES.map(|balance| {
        let standing = standing(app, balance);
        let title = el("strong").put(balance_title(balance));
        el("p").put(title).put(" ").put(verdict_badge(standing.verdict)).put(" ").put(standing.line).done()
    });
    fragment()
        .put(el("h2").put(app.plan(|plan| plan.title.clone())))
        .put(super::overview::dates_line())
        .put_each(verdicts)
        .put(app.plan(route))
        .done()
}

/// The route under its heading.
fn route(plan: &Plan) -> Option<View> {
    stays(plan).map(|stays| fragment().put(el("h3").put(key!("page-route"))).put(stays).done())
}

/// The stays of the route with their days.
pub(super) fn stays(plan: &Plan) -> Option<View> {
    if plan.calendar.mode != Mode::Stays || plan.stays.is_empty() {
        return None;
    }
    let mut arrives = plan.calendar.leaves_on;
    let rows = plan.stays.iter().map(|stay| {
        let date = arrives.map(|date| say_figure(&Figure::Date(date))).unwrap_or_default();
        let nights = i32::try_from(stay.nights).unwrap_or(i32::MAX);
        arrives = arrives.and_then(|date| add_days(date, nights));
        row(&stay.place, &[date, say_figure(&Figure::of(f64::from(stay.nights), Quantity::Nights))])
    });
    let rows: Vec<View> = rows.collect();
    Some(el("table").put(el("tbody").put_each(rows)).done())
}

/// What is still to be bought.
fn shopping_sheet(app: App) -> View {
    fragment().put(el("h2").put(key!("sheet-shopping"))).put(app.plan(shopping_list)).done()
}

/// What is still to be bought, and what it comes to where there are prices.
pub(super) fn shopping_list(plan: &Plan) -> View {
    let lines = to_buy(plan);
    if lines.is_empty() {
        return nothing_on_list();
    }
    let total = lines.iter().any(|line| line.price.is_some()).then(|| {
        let total: Money = lines.iter().filter_map(|line| line.price).sum();
        el("tfoot").put(row(&t!("sheet-total"), &[String::new(), say_figure(&Figure::Money(total))])).done()
    });
    let rows: Vec<View> = lines.iter().map(shopping_row).collect();
    el("table").put(el("tbody").put_each(rows)).put(total).done()
}

fn nothing_on_list() -> View {
    el("p").put(key!("sheet-nothing")).done()
}

fn shopping_row(line: &ToBuy) -> View {
    let day = line.needed_on.map(|date| say_figure(&Figure::Date(date))).unwrap_or_default();
    let price = line.price.map(|price| say_figure(&Figure::Money(price))).unwrap_or_default();
    row(&box_to_tick(&line.name, line.quantity), &[day, price])
}

/// What to borrow, from whom.
fn borrowing_sheet(app: App) -> View {
    fragment().put(el("h2").put(key!("sheet-borrowing"))).put(app.plan(borrowing_list)).done()
}

/// What to borrow, by who lends it.
pub(super) fn borrowing_list(plan: &Plan) -> View {
    let loans = to_borrow(plan);
    if loans.is_empty() { nothing_on_list() } else { fragment().put_each(loans.iter().map(loan)).done() }
}

fn loan(loan: &Loan) -> View {
    let lender = if loan.lender.is_empty() { t!("sheet-no-lender") } else { loan.lender.clone() };
    let thing = |(name, quantity): &(String, u32)| el("li").put(box_to_tick(name, *quantity)).done();
    let things: Vec<View> = loan.things.iter().map(thing).collect();
    fragment().put(el("h3").put(lender)).put(el("ul").class("ticks").put_each(things)).done()
}

/// A name with an empty box before it, for a pencil.
pub(super) fn box_to_tick(name: &str, quantity: u32) -> String {
    if quantity == 1 {
        format!("☐ {name}")
    } else {
        format!("☐ {name} × {}", say_figure(&Figure::of(f64::from(quantity), Quantity::Count)))
    }
}

/// A row of a table: its name, and what stands beside it.
pub(super) fn row(name: &str, cells: &[String]) -> View {
    let cells: Vec<View> = cells.iter().map(|cell| el("td").put(cell.clone()).done()).collect();
    el("tr").put(el("th").attr("scope", "row").put(name.to_owned())).put_each(cells).done()
}
