//! What goes to other programs, read back by independent readers: `csv` for RFC 4180, `icalendar`'s parser for RFC 5545.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use icalendar::parser::{Component, read_calendar, unfold};
use icalendar::{CalendarDateTime, DatePerhapsTime};
use jiff::civil::date;
use kerbstead_core::assess;
use kerbstead_core::papers::{Marks, agenda, cash_table, kit_table};
use kerbstead_core::plan::{
    Belonging, Calendar, Helper, Item, Money, Plan, Task, TaskNeed, Tool, ToolKind, ToolSource, date_text, demo_plan,
    read_date,
};
use kerbstead_core::words::{Plain, Units, Words};
use rust_decimal::Decimal;

const POINT: Marks = Marks { decimal: '.' };
const COMMA: Marks = Marks { decimal: ',' };

fn words() -> Words<Plain> {
    Words::english(Plain, Units::Metric, "EUR")
}

/// The rows, the first with the headings.
fn rows(text: &str, separator: u8) -> Vec<Vec<String>> {
    let text = text.strip_prefix('\u{feff}').unwrap();
    let mut reader = csv::ReaderBuilder::new().has_headers(false).delimiter(separator).from_reader(text.as_bytes());
    reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect()
}

#[test]
fn the_kit_comes_back_from_its_table() {
    let plan = demo_plan();
    let rows = rows(&kit_table(&plan, &words(), POINT), b',');
    let column = |name: &str| rows[0].iter().position(|heading| heading == name).unwrap();
    assert_eq!(rows.len(), plan.kit.len() + 1);
    for (row, item) in rows.iter().skip(1).zip(&plan.kit) {
        assert_eq!(row[column("Name")], item.name);
        let price = item.unit_price.map(|price| price.likely());
        assert_eq!(row[column("Price of one (EUR)")].parse::<Money>().ok(), price);
        assert_eq!(read_date(&row[column("Needed by")]), item.needed_on);
        let mass = item.mass_kg.map(|mass| mass.likely());
        assert_eq!(row[column("Mass of one (kg)")].parse::<f64>().ok(), mass);
    }
}

#[test]
fn the_cash_days_add_up_in_the_table() {
    let assessment = assess(&demo_plan(), date(2027, 2, 1));
    let rows = rows(&cash_table(&assessment.money, &words(), POINT), b',');
    assert_eq!(rows.len(), assessment.money.days.len() + 1);
    for row in rows.iter().skip(1) {
        let amounts: Vec<Decimal> = row[1..].iter().map(|cell| cell.parse().unwrap()).collect();
        assert_eq!(amounts[0] + amounts[1] - amounts[2], amounts[3], "{row:?}");
        assert!(read_date(&row[0]).is_some());
    }
}

#[test]
fn where_the_comma_is_the_decimal_mark_semicolons_part_the_cells() {
    let plan = Plan { kit: vec![item("Lamp", "12.50")], ..Plan::default() };
    let rows = rows(&kit_table(&plan, &words(), COMMA), b';');
    assert!(rows[1].contains(&"12,50".to_owned()), "{rows:?}");
}

/// Source: RFC 4180, section 2, rules 5 to 7; the apostrophe before what looks like a formula is common practice.
#[test]
fn names_that_would_break_a_table_do_not() {
    for name in ["a \"b\", c; d", "two\r\nlines", "=1+1", "+49", "-3", "@x"] {
        let plan = Plan { kit: vec![item(name, "1")], ..Plan::default() };
        let cell = rows(&kit_table(&plan, &words(), POINT), b',')[1][0].clone();
        let is_guarded = cell.strip_prefix('\'') == Some(name) && name.starts_with(['=', '+', '-', '@']);
        assert!(cell == name || is_guarded, "{cell:?}");
        assert!(!cell.starts_with(['=', '+', '-', '@']));
    }
}

fn item(name: &str, price: &str) -> Item {
    let price: Money = price.parse().unwrap();
    Item { id: 1, name: name.into(), unit_price: Some(price.into()), ..Item::default() }
}

#[test]
fn the_agenda_is_read_by_an_independent_parser() {
    let plan = demo_plan();
    let as_of = date(2027, 2, 1);
    let text = agenda(&plan, &assess(&plan, as_of), as_of, &words());
    assert!(text.split("\r\n").all(|line| line.len() <= 75), "RFC 5545, section 3.1");
    let unfolded = unfold(&text);
    let calendar = read_calendar(&unfolded).unwrap();
    assert!(calendar.components.len() > 20);
    let mut identities: Vec<String> = Vec::new();
    for event in &calendar.components {
        assert_eq!(event.name.as_str(), "VEVENT");
        let value = |name: &str| event.find_prop(name).map(|property| property.val.to_string()).unwrap();
        assert!(value("DTSTART") < value("DTEND"));
        assert!(!value("SUMMARY").is_empty());
        identities.push(value("UID"));
    }
    identities.sort();
    let count = identities.len();
    identities.dedup();
    assert_eq!(identities.len(), count, "no two events are one");
}

/// Source: RFC 5545, sections 3.1 (folding by octets) and 3.3.11 (escaped text).
#[test]
fn long_and_odd_names_stay_whole_in_the_agenda() {
    let name = "Grüße; aus, dem\\Norden\u{7} 🚐 ".repeat(9);
    let belonging =
        Belonging { id: 1, name: name.clone(), price: Some(Money::whole(5).into()), ..Belonging::default() };
    let as_of = date(2030, 5, 1);
    let plan = Plan { belongings: vec![Belonging { on: Some(as_of), ..belonging }], ..Plan::default() };
    let text = agenda(&plan, &assess(&plan, as_of), as_of, &words());
    assert!(text.split("\r\n").all(|line| line.len() <= 75));
    let unfolded = unfold(&text);
    let calendar = read_calendar(&unfolded).unwrap();
    let summary = calendar.components[0].find_prop("SUMMARY").unwrap().val.to_string();
    let summary = summary.replace("\\;", ";").replace("\\,", ",").replace("\\\\", "\\");
    assert!(summary.contains(&name.replace('\u{7}', "")), "{summary}");
}

/// A week of a small build: a task of two Saturdays with a wait, and tools that go back.
fn build() -> Plan {
    let need = |id, tool, thing| TaskNeed { id, task: Some(1), tool, thing, ..TaskNeed::default() };
    let tool = |id, name: &str, lender: &str, tool_source, there_until| Tool {
        id,
        name: name.into(),
        lender: lender.into(),
        tool_source,
        there_until,
        ..Tool::default()
    };
    let lent_until = Some(date(2027, 4, 18));
    Plan {
        calendar: Calendar { leaves_on: Some(date(2027, 5, 1)), ..Calendar::default() },
        kit: vec![item("Board", "1"), item("Screws; box", "1")].into_iter().zip(20..).map(with_id).collect(),
        tasks: vec![Task {
            id: 1,
            name: "Build, and oil, the bed".into(),
            hours: Some(9.0.into()),
            wait_hours: Some(24.0.into()),
            ..Task::default()
        }],
        task_needs: vec![
            need(2, Some(10), None),
            need(3, Some(12), None),
            need(4, None, Some(20)),
            need(5, None, Some(21)),
        ],
        helpers: vec![Helper {
            id: 6,
            name: "Runa".into(),
            saturday_hours: Some(6.0),
            weekend_from_hour: Some(8.5),
            ..Helper::default()
        }],
        tools: vec![
            tool(10, "Saw", "Aunt Bera", ToolSource::Borrowed, lent_until),
            tool(11, "Sander", "", ToolSource::Hired, lent_until),
            Tool { tool_kind: ToolKind::Place, ..tool(12, "Barn", "Odd", ToolSource::Borrowed, lent_until) },
            tool(13, "Hammer", "", ToolSource::Owned, lent_until),
            tool(14, "Ladder", "Odd", ToolSource::Borrowed, None),
        ],
        ..Plan::default()
    }
}

fn with_id((item, id): (Item, u32)) -> Item {
    Item { id, ..item }
}

/// The text of a property as the parser gives it, with the marks of section 3.3.11 taken off.
fn text_of(event: &Component, name: &str) -> String {
    let raw = event.find_prop(name).map(|property| property.val.to_string()).unwrap_or_default();
    raw.replace("\\n", "\n").replace("\\;", ";").replace("\\,", ",").replace("\\\\", "\\")
}

/// When it is, read by the parser: `2027-04-10 08:30` without any zone, or `2027-04-18` for a whole day.
fn when(event: &Component, name: &str) -> String {
    match DatePerhapsTime::try_from(event.find_prop(name).unwrap()).unwrap() {
        DatePerhapsTime::DateTime(CalendarDateTime::Floating(at)) => at.format("%Y-%m-%d %H:%M").to_string(),
        DatePerhapsTime::Date(on) => on.to_string(),
        other @ DatePerhapsTime::DateTime(_) => panic!("a time zone: {other:?}"),
    }
}

/// Identity, begin, end, summary and description of every event.
fn events(plan: &Plan) -> Vec<[String; 5]> {
    let as_of = date(2027, 4, 5);
    let text = agenda(plan, &assess(plan, as_of), as_of, &words());
    let unfolded = unfold(&text);
    let calendar = read_calendar(&unfolded).unwrap();
    let event = |event: &Component| {
        let (from, until) = (when(event, "DTSTART"), when(event, "DTEND"));
        [text_of(event, "UID"), from, until, text_of(event, "SUMMARY"), text_of(event, "DESCRIPTION")]
    };
    calendar.components.iter().map(event).collect()
}

/// Source: RFC 5545, section 3.3.5, form 1: local time goes without a zone.
#[test]
fn the_work_of_each_day_is_an_event_of_its_hours_and_a_wait_is_none() {
    let work: Vec<_> = events(&build()).into_iter().filter(|event| event[0].starts_with("agenda-work-")).collect();
    let [first, second] = work.as_slice() else { panic!("{work:?}") };
    assert_eq!(first[1..3], ["2027-04-10 08:30", "2027-04-10 14:30"]);
    assert_eq!(second[1..3], ["2027-04-17 08:30", "2027-04-17 11:30"]);
    assert_eq!(first[3], "Build, and oil, the bed");
    assert_eq!(first[4], "With: Runa\nTools and places: Saw, Barn\nBring: Board, Screws; box");
    assert_eq!(second[4], "With: Runa\nTools and places: Saw, Barn", "what is there already is not brought again");
}

#[test]
fn what_is_borrowed_or_hired_goes_back_on_a_day_of_the_calendar() {
    let back = events(&build()).into_iter().filter(|event| event[0].starts_with("agenda-tool-back-"));
    let back: Vec<[String; 3]> = back.map(|[_, from, until, summary, _]| [from, until, summary]).collect();
    let on = |summary: &str| ["2027-04-18", "2027-04-19", summary].map(str::to_owned);
    let wanted = [on("“Saw” goes back to Aunt Bera"), on("“Sander” goes back"), on("Last day at “Barn”")];
    assert_eq!(back, wanted);
    let mut past = build();
    past.tools[0].there_until = Some(date(2027, 4, 4));
    assert!(events(&past).iter().all(|event| !event[3].contains("Saw")), "it went back before the day of asking");
}

/// A calendar that takes the file again moves its events by their identities.
#[test]
fn work_that_moves_to_another_day_keeps_its_identity() {
    let mut later = build();
    later.tasks[0].not_before = Some(date(2027, 4, 12));
    later.tools.iter_mut().for_each(|tool| tool.there_until = None);
    let identities = |plan: &Plan| -> Vec<(String, String)> {
        let work = events(plan).into_iter().filter(|event| event[0].starts_with("agenda-work-"));
        work.map(|[identity, from, ..]| (identity, from)).collect()
    };
    let (before, after) = (identities(&build()), identities(&later));
    assert_eq!(before.len(), 2);
    assert!(before.iter().zip(&after).all(|((one, from), (other, moved_to))| one == other && from < moved_to));
}

/// Nothing of the days of work in the report is missing in the calendar.
#[test]
fn every_task_of_every_day_of_the_report_is_in_the_calendar() {
    let (plan, as_of) = (demo_plan(), date(2027, 4, 5));
    let work: Vec<_> = events(&plan).into_iter().filter(|event| event[0].starts_with("agenda-work-")).collect();
    let days = assess(&plan, as_of).days.days;
    let lines: Vec<_> = days.iter().flat_map(|day| day.work.iter().map(|line| (day.on, line))).collect();
    assert_eq!(work.len(), lines.len());
    for (event, (on, line)) in work.iter().zip(lines) {
        assert!(event[1].starts_with(&date_text(on)) && event[1] < event[2], "{event:?}");
        assert_eq!(event[3], plan.name_of(line.task).unwrap());
    }
}
