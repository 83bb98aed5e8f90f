//! Everything that is wrong with a plan, each with its place and what would be right.

mod log;

use jiff::civil::Date;
use rust_decimal::Decimal;
use serde_json::{Map, Value};

use super::field::{Field, Kind, MOST_ENTRIES, SECTIONS, Section};
use super::money::is_currency;
use super::{FreeIds, Id, List, Money, Path, Plain, Plan, Problem, Quantity, TaskNeed, Wrong, days_between};
use crate::days::schedule::{Activity, Workload, circle};
use crate::order;
use crate::run::MOST_DAYS;
use crate::space::shape::Fault;

/// All problems of a plan, in the order of its fields; none when it is sound.
///
/// ```
/// use kerbstead_core::plan::{validate, Plan};
/// let problems = validate(&Plan { people: 0, ..Plan::default() });
/// assert_eq!(problems[0].path.as_str(), "people");
/// ```
pub fn validate(plan: &Plan) -> Vec<Problem> {
    let mut problems = Vec::new();
    keep_usable(&mut plan.to_plain(), &mut problems);
    problems.extend(across_fields(plan));
    problems
}

/// Gives every entry without an id one, and every second entry of an id a new one, which is a problem.
pub(super) fn number_entries(document: &mut Value, problems: &mut Vec<Problem>) {
    let mut taken = Vec::new();
    // What is counted keeps its id: a plan cannot know those of entries that are not.
    let counted_first =
        || [true, false].into_iter().flat_map(|counted| List::ALL.iter().map(move |list| (*list, counted)));
    for (list, are_counted) in counted_first() {
        taken.extend(entries(document, list, are_counted).filter_map(|entry| id_of(entry)));
    }
    let mut free = FreeIds::beside(taken);
    for (list, are_counted) in counted_first() {
        for entry in entries(document, list, are_counted) {
            let id = id_of(entry);
            if id.is_some_and(|id| free.claim(id)) {
                continue;
            }
            let new = free.take();
            entry.insert("id".to_owned(), new.into());
            if let Some(id) = id {
                problems.push(Problem { path: Path::entry(list.name(), new), wrong: Wrong::IdNotUnique { id } });
            }
        }
    }
}

/// The entries of a list up to the most that are counted, or those beyond.
fn entries(document: &mut Value, list: List, are_counted: bool) -> impl Iterator<Item = &mut Map<String, Value>> {
    let entries = document.get_mut(list.name()).and_then(Value::as_array_mut).into_iter().flatten();
    let entries = entries.enumerate().filter(move |(at, _)| (*at < MOST_ENTRIES) == are_counted);
    entries.filter_map(|(_, entry)| entry.as_object_mut())
}

fn id_of(entry: &Map<String, Value>) -> Option<Id> {
    entry.get("id").and_then(Value::as_u64).and_then(|id| Id::try_from(id).ok()).filter(|id| *id > 0)
}

/// Checks every field against the table, and takes out what has not even the right form, so that what is left can be
/// read as a [`Plan`]. Values outside their range stay: the person typed them, and every computation bears them.
pub(super) fn keep_usable(document: &mut Value, problems: &mut Vec<Problem>) {
    let Some(document) = document.as_object_mut() else { return };
    document.retain(|_, value| !value.is_null());
    let is_version = |version: &Value| version.as_u64().is_some_and(|number| u32::try_from(number).is_ok());
    if document.get("schema_version").is_some_and(|version| !is_version(version)) {
        document.remove("schema_version");
    }
    if document.get("guesses").is_some_and(|guesses| !is_list_of_text(guesses)) {
        document.remove("guesses");
        problems.push(Problem { path: Path::section("guesses"), wrong: Wrong::NotAList });
    }
    for section in SECTIONS {
        if section.name.is_empty() {
            check_entry(document, &Path::default(), section.fields, problems);
        } else if section.is_list {
            check_list(document, section, problems);
        } else {
            check_part(document, section, problems);
        }
    }
}

fn is_list_of_text(value: &Value) -> bool {
    value.as_array().is_some_and(|entries| entries.iter().all(Value::is_string))
}

fn check_part(document: &mut Map<String, Value>, section: &Section, problems: &mut Vec<Problem>) {
    let path = Path::section(section.name);
    match document.get_mut(section.name) {
        None => {}
        Some(Value::Object(part)) => check_entry(part, &path, section.fields, problems),
        Some(_) => {
            document.remove(section.name);
            problems.push(Problem { path, wrong: Wrong::NotAnEntry });
        }
    }
}

fn check_list(document: &mut Map<String, Value>, section: &Section, problems: &mut Vec<Problem>) {
    let path = Path::section(section.name);
    let Some(list) = document.get_mut(section.name) else { return };
    let Some(entries) = list.as_array_mut() else {
        document.remove(section.name);
        problems.push(Problem { path, wrong: Wrong::NotAList });
        return;
    };
    if entries.len() > MOST_ENTRIES {
        entries.truncate(MOST_ENTRIES);
        problems.push(Problem { path: path.clone(), wrong: Wrong::TooManyEntries { most: MOST_ENTRIES } });
    }
    let mut position = 0_usize;
    entries.retain_mut(|entry| {
        position += 1;
        let Some(entry) = entry.as_object_mut() else {
            let wrong = Wrong::NotAnEntry;
            problems.push(Problem { path: path.child(&format!("#{position}")), wrong });
            return false;
        };
        check_entry(entry, &Path::entry(section.name, id_of(entry).unwrap_or(0)), section.fields, problems);
        true
    });
}

fn check_entry(entry: &mut Map<String, Value>, path: &Path, fields: &[Field], problems: &mut Vec<Problem>) {
    for field in fields {
        check_nested(entry, path, field.name, field, problems);
    }
}

/// Walks down to the field and checks it; what stands in the way and is not an entry is taken out.
fn check_nested(entry: &mut Map<String, Value>, path: &Path, name: &str, field: &Field, problems: &mut Vec<Problem>) {
    let (first, rest) = name.split_once('/').unwrap_or((name, ""));
    let Some(value) = entry.get_mut(first) else { return };
    let here = path.child(first);
    if value.is_null() {
        entry.remove(first);
    } else if rest.is_empty() {
        let checked = check_value(&field.kind, value);
        if let Err(wrong) = checked {
            if !is_usable(&wrong) {
                entry.remove(first);
            }
            problems.push(Problem { path: here, wrong });
        }
    } else if let Some(inner) = value.as_object_mut() {
        check_nested(inner, &here, rest, field, problems);
    } else {
        entry.remove(first);
        problems.push(Problem { path: here, wrong: Wrong::NotAnEntry });
    }
}

/// Whether a value with that problem can still be read into the plan.
fn is_usable(wrong: &Wrong) -> bool {
    matches!(
        wrong,
        Wrong::OutOfRange { .. }
            | Wrong::NegativeMoney
            | Wrong::TooMuchMoney { .. }
            | Wrong::RangeReversed
            | Wrong::TextTooLong { .. }
            | Wrong::NotACurrency
    )
}

/// Checks one value against what its field accepts.
pub(super) fn check_value(kind: &Kind, value: &Value) -> Result<(), Wrong> {
    match *kind {
        Kind::Text { max_chars } => check_text(value, max_chars),
        Kind::Number { range, .. } | Kind::Money { range, .. } if value.is_object() => check_range(kind, value, range),
        Kind::Number { quantity, min, max, example, .. } => {
            let number = value.as_f64().ok_or(Wrong::NotANumber { example, quantity })?;
            in_range(number, min, max).then_some(()).ok_or(Wrong::OutOfRange { min, max, quantity })
        }
        Kind::Whole { quantity, min, max, example } => {
            let number =
                value.as_u64().and_then(|number| u32::try_from(number).ok()).ok_or(Wrong::NotWhole { example })?;
            let wrong = Wrong::OutOfRange { min: f64::from(min), max: f64::from(max), quantity };
            (min..=max).contains(&number).then_some(()).ok_or(wrong)
        }
        Kind::Money { negative, example, .. } => check_money(value, negative, example),
        Kind::Rate => check_rate(value),
        Kind::Date => value.as_str().and_then(super::read_date).map(drop).ok_or(Wrong::NotADate),
        Kind::Flag => value.as_bool().map(drop).ok_or(Wrong::NotAFlag),
        Kind::Choice(choices) => {
            let known = value.as_str().is_some_and(|word| choices.contains(&word));
            known.then_some(()).ok_or(Wrong::NotAChoice { choices })
        }
        Kind::StoreItem | Kind::Entry(_) => {
            let id = value.as_u64().and_then(|id| Id::try_from(id).ok());
            id.map(drop).ok_or(Wrong::NotWhole { example: 1 })
        }
        Kind::Currency => check_currency(value),
    }
}

fn in_range(number: f64, min: f64, max: f64) -> bool {
    (min..=max).contains(&number)
}

fn check_text(value: &Value, most: usize) -> Result<(), Wrong> {
    let text = value.as_str().ok_or(Wrong::NotText)?;
    (text.chars().count() <= most).then_some(()).ok_or(Wrong::TextTooLong { most })
}

fn check_currency(value: &Value) -> Result<(), Wrong> {
    let text = value.as_str().ok_or(Wrong::NotText)?;
    is_currency(text).then_some(()).ok_or(Wrong::NotACurrency)
}

fn check_money(value: &Value, negative: bool, example: i64) -> Result<(), Wrong> {
    let amount = Money::from_plain(value).ok_or(Wrong::NotMoney { example })?;
    if amount.is_negative() && !negative {
        return Err(Wrong::NegativeMoney);
    }
    let most = super::field::MOST_MONEY;
    (amount.decimal().abs() <= Kind::most_money()).then_some(()).ok_or(Wrong::TooMuchMoney { most })
}

fn check_rate(value: &Value) -> Result<(), Wrong> {
    let rate = Decimal::from_plain(value).ok_or(Wrong::NotARate)?;
    let wrong = Wrong::OutOfRange { min: 0.0, max: 100.0, quantity: Quantity::Percent };
    (Decimal::ZERO..=Decimal::ONE_HUNDRED).contains(&rate).then_some(()).ok_or(wrong)
}

/// Low, likely and high: each as the field has it, and in that order.
fn check_range(kind: &Kind, value: &Value, is_taken: bool) -> Result<(), Wrong> {
    if !is_taken {
        return Err(Wrong::RangeNotTaken);
    }
    let missing = || match *kind {
        Kind::Money { example, .. } => Wrong::NotMoney { example },
        Kind::Number { example, quantity, .. } => Wrong::NotANumber { example, quantity },
        _ => Wrong::RangeNotTaken,
    };
    let part = |name: &str| value.get(name).filter(|part| !part.is_object()).ok_or_else(missing);
    let parts = [part("low")?, part("likely")?, part("high")?];
    let mut usable_but_wrong = None;
    for part in parts {
        match check_value(kind, part) {
            Err(wrong) if !is_usable(&wrong) => return Err(wrong),
            Err(wrong) => usable_but_wrong = Some(wrong),
            Ok(()) => {}
        }
    }
    if let Some(wrong) = usable_but_wrong {
        return Err(wrong);
    }
    parts.is_sorted_by(|low, high| is_ordered(low, high)).then_some(()).ok_or(Wrong::RangeReversed)
}

/// Whether the second number or amount is no less than the first. Amounts are text, and compared exactly.
fn is_ordered(low: &Value, high: &Value) -> bool {
    match (low.as_f64(), high.as_f64()) {
        (Some(low), Some(high)) => low <= high,
        _ => Money::from_plain(low) <= Money::from_plain(high),
    }
}

/// What only several fields together can show.
pub(super) fn across_fields(plan: &Plan) -> Vec<Problem> {
    let mut problems = Vec::new();
    check_dates(plan, &mut problems);
    check_parts(plan, &mut problems);
    check_stores(plan, &mut problems);
    check_references(plan, &mut problems);
    check_tasks(plan, &mut problems);
    check_week(plan, &mut problems);
    check_years(plan, &mut problems);
    log::check_log(plan, &mut problems);
    check_room(plan, &mut problems);
    check_length(plan, &mut problems);
    problems
}

/// Days at home and days of the route together must not be more than a run covers.
fn check_length(plan: &Plan, problems: &mut Vec<Problem>) {
    let calendar = &plan.calendar;
    let days = |from: Option<Date>, to: Option<Date>| {
        from.zip(to).map_or(0, |(from, to)| i64::from(days_between(from, to)).max(0))
    };
    let at_home = days(calendar.starts_on, calendar.leaves_on);
    let nights: i64 = plan.stays.iter().map(|stay| i64::from(stay.nights)).sum();
    let in_weeks = days(calendar.leaves_on, calendar.ends_on);
    let at = |name| Path::section("calendar").child(name);
    let most = i64::from(MOST_DAYS);
    let before = if at_home > most { 0 } else { at_home };
    let lengths =
        [(at("starts_on"), at_home), (Path::section("stays"), before + nights), (at("ends_on"), before + in_weeks)];
    let too_long = lengths.into_iter().filter(|(_, days)| *days > most);
    problems.extend(too_long.map(|(path, _)| Problem { path, wrong: Wrong::RouteTooLong { most_days: MOST_DAYS } }));
}

fn check_dates(plan: &Plan, problems: &mut Vec<Problem>) {
    let calendar = &plan.calendar;
    let mut ordered = |first: Option<Date>, second: Option<Date>, path: Path| {
        if let (Some(first), Some(second)) = (first, second)
            && second < first
        {
            problems.push(Problem { path, wrong: Wrong::DatesReversed { first, second } });
        }
    };
    let at = |name| Path::section("calendar").child(name);
    ordered(calendar.starts_on, calendar.leaves_on, at("leaves_on"));
    ordered(calendar.leaves_on.or(calendar.starts_on), calendar.ends_on, at("ends_on"));
    for income in &plan.incomes {
        ordered(income.on, income.until, Path::entry("incomes", income.id).child("until"));
    }
    for belonging in &plan.belongings {
        ordered(belonging.listed_on, belonging.on, Path::entry("belongings", belonging.id).child("on"));
    }
    for cost in &plan.costs {
        ordered(cost.first_on, cost.last_on, Path::entry("costs", cost.id).child("last_on"));
    }
    ordered(calendar.starts_on, plan.selling.wanted_on, Path::section("selling").child("wanted_on"));
    for item in &plan.kit {
        ordered(item.buy_on, item.needed_on, Path::entry("kit", item.id).child("needed_on"));
    }
    for tool in &plan.tools {
        ordered(tool.there_from, tool.there_until, Path::entry("tools", tool.id).child("there_until"));
    }
    for helper in &plan.helpers {
        ordered(helper.comes_from, helper.comes_until, Path::entry("helpers", helper.id).child("comes_until"));
    }
    for day in &plan.other_days {
        ordered(day.first_day, day.last_day, Path::entry("other_days", day.id).child("last_day"));
    }
    let purchase = &plan.purchase;
    ordered(purchase.deposit_on, purchase.pay_on, Path::section("purchase").child("pay_on"));
    for loan in &plan.loans {
        let path = Path::entry("loans", loan.id);
        ordered(loan.drawn_on, loan.first_payment_on, path.child("first_payment_on"));
        ordered(loan.drawn_on, loan.paid_off_on, path.child("paid_off_on"));
    }
}

/// Parts that are more than what they are a part of.
fn check_parts(plan: &Plan, problems: &mut Vec<Problem>) {
    let mut within = |part: Option<Money>, whole: Option<Money>, path: Path| {
        if let (Some(part), Some(whole)) = (part, whole)
            && part > whole
        {
            problems.push(Problem { path, wrong: Wrong::MoreThanWhole { whole } });
        }
    };
    for belonging in &plan.belongings {
        let price = belonging.price.map(|price| price.high());
        within(belonging.lowest, price, Path::entry("belongings", belonging.id).child("lowest"));
    }
    let agreed = plan.purchase.agreed_price.map(|price| price.high());
    within(plan.purchase.deposit, agreed, Path::section("purchase").child("deposit"));
    for loan in &plan.loans {
        within(loan.fees, loan.amount, Path::entry("loans", loan.id).child("fees"));
    }
    for item in &plan.kit {
        if item.returned.is_some_and(|returned| returned.quantity > item.quantity) {
            let path = Path::entry("kit", item.id).child("returned/quantity");
            problems.push(Problem { path, wrong: Wrong::MoreThanThereAre { most: item.quantity } });
        }
    }
}

fn check_stores(plan: &Plan, problems: &mut Vec<Problem>) {
    let has_store = |id: Id| plan.item(id).is_some_and(|item| item.store.is_some());
    for item in &plan.kit {
        let path = Path::entry("kit", item.id);
        if let Some(id) = item.draw.and_then(|draw| draw.store).filter(|id| !has_store(*id)) {
            problems.push(Problem { path: path.child("draw/store"), wrong: Wrong::NoSuchStore { id } });
        }
        if let Some(id) = item.panel.and_then(|panel| panel.charges).filter(|id| !has_store(*id)) {
            problems.push(Problem { path: path.child("panel/charges"), wrong: Wrong::NoSuchStore { id } });
        }
        let Some(store) = item.store else { continue };
        if item.quantity > 1 {
            problems.push(Problem { path: path.child("quantity"), wrong: Wrong::StoreQuantity });
        }
        if store.ac_surge_w < store.ac_continuous_w {
            let wrong = Wrong::SurgeBelowContinuous { continuous_w: store.ac_continuous_w };
            problems.push(Problem { path: path.child("store/ac_surge_w"), wrong });
        }
    }
    for reading in &plan.readings {
        if let Some(id) = reading.store.filter(|id| !has_store(*id)) {
            let path = Path::entry("readings", reading.id).child("store");
            problems.push(Problem { path, wrong: Wrong::NoSuchStore { id } });
        }
    }
}

/// References to what is not there.
fn check_references(plan: &Plan, problems: &mut Vec<Problem>) {
    let known_of = |list: List| (list, order::sorted(list.ids(plan).into_iter().map(u64::from)));
    let known = [
        List::Receipts,
        List::Kit,
        List::Tasks,
        List::Tools,
        List::Belongings,
        List::Helpers,
        List::Stays,
        List::Years,
        List::Wishes,
    ]
    .map(known_of);
    let mut check = |of: List, id: Option<Id>, path: &dyn Fn() -> Path| {
        let is_known =
            |id: Id| known.iter().any(|(list, known)| *list == of && order::find(known, id.into()).is_some());
        if let Some(id) = id.filter(|id| !is_known(*id)) {
            problems.push(Problem { path: path(), wrong: Wrong::NoSuchEntry { id } });
        }
    };
    for line in &plan.receipt_lines {
        let at = |name| Path::entry("receipt_lines", line.id).child(name);
        check(List::Receipts, line.receipt, &|| at("receipt"));
        check(List::Kit, line.item, &|| at("item"));
    }
    for task in &plan.tasks {
        check(List::Kit, task.for_item, &|| Path::entry("tasks", task.id).child("for_item"));
    }
    for need in &plan.task_needs {
        let at = |name| Path::entry("task_needs", need.id).child(name);
        check(List::Tasks, need.task, &|| at("task"));
        check(List::Tasks, need.after, &|| at("after"));
        check(List::Tools, need.tool, &|| at("tool"));
        check(List::Kit, need.thing, &|| at("thing"));
        check(List::Belongings, need.at_home, &|| at("at_home"));
    }
    for placement in &plan.placements {
        check(List::Kit, placement.thing, &|| Path::entry("placements", placement.id).child("thing"));
    }
    for sleeper in &plan.sleepers {
        check(List::Kit, sleeper.bed, &|| Path::entry("sleepers", sleeper.id).child("bed"));
    }
    for distance in &plan.distances {
        let at = |name| Path::entry("distances", distance.id).child(name);
        check(List::Kit, distance.of, &|| at("of"));
        check(List::Kit, distance.other, &|| at("other"));
    }
    for place in &plan.charging {
        check(List::Stays, place.stay, &|| Path::entry("charging", place.id).child("stay"));
    }
    check(List::Years, plan.climate.year, &|| Path::from("climate/year"));
    for stay in &plan.stays {
        check(List::Years, stay.climate.year, &|| Path::entry("stays", stay.id).child("climate/year"));
    }
    for reading in &plan.readings {
        let at = |name| Path::entry("readings", reading.id).child(name);
        check(List::Wishes, reading.missed, &|| at("missed"));
        check(List::Kit, reading.used, &|| at("used"));
    }
    for wish in &plan.wishes {
        check(List::Kit, wish.thing, &|| Path::entry("wishes", wish.id).child("thing"));
    }
    for day in &plan.other_days {
        check(List::Helpers, day.helper, &|| Path::entry("other_days", day.id).child("helper"));
    }
}

/// Tasks that wait for one another in a circle: told once, at a need that closes it.
fn check_tasks(plan: &Plan, problems: &mut Vec<Problem>) {
    let ids: Vec<(u64, usize)> = order::sorted(plan.tasks.iter().map(|task| task.id.into()));
    let position = |id: Id| order::find(&ids, id.into()).and_then(|at| ids.get(at)).map(|(_, at)| *at);
    let ends = |need: &TaskNeed| Some((need.task.and_then(position)?, need.after.and_then(position)?));
    let mut activities = vec![Activity::default(); plan.tasks.len()];
    for (task, earlier) in plan.task_needs.iter().filter_map(ends) {
        activities[task].after.push((earlier, 0));
    }
    let Some(mut circle) = circle(&Workload { activities, ..Workload::default() }) else { return };
    // Told from the second on, so that what closes it is the need of that one for the first.
    circle.rotate_left(1);
    let closing = circle.first().copied().zip(circle.last().copied());
    let Some(need) = plan.task_needs.iter().find(|need| ends(need) == closing) else { return };
    circle.extend(circle.first().copied());
    let names: Vec<&str> = circle.iter().filter_map(|at| plan.tasks.get(*at)).map(|task| &*task.name).collect();
    let wrong = Wrong::TaskCircle { names: names.join(" → ") };
    problems.push(Problem { path: Path::entry("task_needs", need.id).child("after"), wrong });
}

/// An outline that cannot be one, and doors that are in no wall.
fn check_room(plan: &Plan, problems: &mut Vec<Problem>) {
    for fault in crate::space::shape_of(plan).faults() {
        let corner =
            |at: usize| Path::entry("corners", plan.corners.get(at).map_or(0, |corner| corner.id)).child("x_mm");
        let (path, wrong) = match fault {
            Fault::Crossing { first, second, .. } => (corner(second), Wrong::OutlineCrosses { corner: first + 1 }),
            Fault::Spike { corner: at } => (corner(at), Wrong::OutlineFlat),
            Fault::TooFewCorners { .. } | Fault::NoArea => (corner(0), Wrong::OutlineFlat),
            Fault::DoorPastItsWall { door } => {
                let id = plan.doors.get(door).map_or(0, |door| door.id);
                (Path::entry("doors", id).child("from_mm"), Wrong::DoorPastWall)
            }
            // Told at the field by its range, put in order, or harmless.
            Fault::OutOfRange { .. } | Fault::DoorsOverlap { .. } | Fault::OutOfOrder { .. } => continue,
        };
        problems.push(Problem { path, wrong });
    }
}

/// Typical years of which the hours cannot be read.
fn check_years(plan: &Plan, problems: &mut Vec<Problem>) {
    for year in plan.years.iter().filter(|year| crate::power::typical_year(year).is_none()) {
        let path = Path::entry("years", year.id).child("mean_days");
        problems.push(Problem { path, wrong: Wrong::NotAYear });
    }
}

fn check_week(plan: &Plan, problems: &mut Vec<Problem>) {
    for (position, day) in plan.week.iter().enumerate() {
        if plan.week[..position].iter().any(|earlier| earlier.weekday == day.weekday) {
            problems.push(Problem { path: Path::entry("week", day.id).child("weekday"), wrong: Wrong::WeekdayTwice });
        }
    }
}
