//! What goes to other programs, read back by independent readers: `csv` for RFC 4180, `icalendar`'s parser for RFC 5545.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use icalendar::parser::{read_calendar, unfold};
use jiff::civil::date;
use kerbstead_core::assess;
use kerbstead_core::papers::{Marks, agenda, cash_table, kit_table};
use kerbstead_core::plan::{Belonging, Item, Money, Plan, demo_plan, read_date};
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
