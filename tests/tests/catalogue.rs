//! The catalogue of sentences: complete, without leftovers, without mistakes.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
use jiff::civil::{Date, date};
use kerbstead_core::days::{TASK_STARTERS, TOOL_STARTERS};
use kerbstead_core::explain::{Figure, Figures, Working};
use kerbstead_core::load::before_driving;
use kerbstead_core::money::FlowGroup;
use kerbstead_core::money::futures::compared;
use kerbstead_core::money::selling::{fates_of, offered, schedule};
use kerbstead_core::moves::{Found, tried};
use kerbstead_core::plan::field::SECTIONS;
use kerbstead_core::plan::{
    BeyondAllowance, Calendar, Charging, Climate, Cost, DataContract, DataTask, DataUse, Document, Door, Draw,
    Fastened, Gives, Group, Helper, Income, Item, Kind, Level, Money, NumberMarks, Offer, OpenedBox, Outlet, Panel,
    Placement, Plan, Problem, Quantity, Reading, Signal, Sleeper, Stay, Store, Tank, Task, TaskNeed, Tool, ToolSource,
    VanSide, Vehicle, WaterUse, Works, field, typed_value, validate,
};
use kerbstead_core::road_log::brief;
use kerbstead_core::run::Timeline;
use kerbstead_core::shop::{read_offer, report};
use kerbstead_core::space::Placed;
use kerbstead_core::words::{ENGLISH, Plain, Units, Words};
use kerbstead_core::{Again, Assessment, Say, Standing, assess, signal};
use kerbstead_tests::generate::{cases, documents, seeded};

/// Sentences that core names by a literal begin with one of these.
const OF_CORE: [&str; 24] = [
    "move-",
    "brief-",
    "days-",
    "space-",
    "load-",
    "leaving-",
    "money-",
    "power-",
    "water-",
    "signal-",
    "next-",
    "working-",
    "caution-",
    "problem-",
    "measure-",
    "unit-",
    "source-",
    "column-",
    "agenda-",
    "share-",
    "shop-",
    "value-",
    "receipts-",
    "typical-",
];

/// What the front end calls with the name of a sentence as its first argument.
const CALLS: [&str; 8] = ["t(", "t!(", "key!(", "tell(", "tell!(", "with(", "text(", "section("];

/// The names that are put together from parts, all of them: the parts come from the table of fields, from the rows of
/// the starter list, or from the lists that a balance can miss.
fn built() -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for field in SECTIONS.iter().flat_map(|section| section.fields) {
        names.insert(format!("field-{}", field.name.replace(['/', '_'], "-")));
        if let Kind::Choice(words) = field.kind {
            let last = field.name.rsplit('/').next().unwrap();
            names.extend(words.iter().map(|word| format!("choice-{last}-{word}").replace('_', "-")));
        }
    }
    names.extend(
        ["stays", "week", "water-uses", "data-uses", "tasks", "helpers", "placements", "corners"]
            .map(|list| format!("section-{list}")),
    );
    names.extend(TASK_STARTERS.iter().map(|starter| format!("task-{}", starter.key)));
    names.extend(TOOL_STARTERS.iter().map(|key| format!("tool-{key}")));
    let keys = keys();
    let rows = literals(Path::new("../core/src/plan/starter")).into_iter().map(|row| format!("starter-{}", row.text));
    names.extend(rows.filter(|name| keys.contains(name)));
    names
}

#[test]
fn the_catalogue_can_be_read_to_its_last_line() {
    if let Err((_, errors)) = FluentResource::try_new(ENGLISH.to_owned()) {
        panic!("{errors:?}");
    }
    let all: Vec<&str> = ENGLISH.lines().filter_map(key_of).collect();
    assert_eq!(all.len(), keys().len(), "a sentence is there twice");
}

#[test]
fn every_sentence_that_is_said_is_in_the_catalogue() {
    let keys = keys();
    let mut missing: Vec<String> = built().into_iter().filter(|name| !keys.contains(name)).collect();
    for folder in [
        "assessment.rs",
        "days",
        "explain.rs",
        "load",
        "money",
        "moves",
        "papers",
        "power",
        "road_log",
        "share",
        "shop",
        "signal",
        "space",
        "water",
        "words",
    ] {
        let said = literals(&Path::new("../core/src").join(folder)).into_iter().map(|literal| literal.text);
        missing.extend(said.filter(|text| is_name(text) && OF_CORE.iter().any(|start| text.starts_with(start))));
    }
    missing.extend(said_by_the_front_end());
    missing.retain(|name| !keys.contains(name));
    assert!(missing.is_empty(), "not in the catalogue: {missing:?}");
}

#[test]
fn every_sentence_of_the_catalogue_is_said_somewhere() {
    let mut said = built();
    for folder in ["../core/src", "../web/src"] {
        said.extend(literals(Path::new(folder)).into_iter().map(|literal| literal.text));
    }
    let unsaid: Vec<String> = keys().into_iter().filter(|key| !said.contains(key)).collect();
    assert!(unsaid.is_empty(), "nothing says: {unsaid:?}");
}

#[test]
fn every_row_of_the_starter_list_has_its_name() {
    let words = english();
    let keys = keys();
    let rows: Vec<&String> = keys.iter().filter(|key| key.starts_with("starter-")).collect();
    assert!(rows.len() >= 40, "{rows:?}");
    assert!(rows.iter().all(|row| !words.text(row).is_empty()));
}

/// What a sentence needs, those who say it give it: over thousands of plans, no figure is missing.
/// Hardly any plan by chance has all but the tool: one that nobody has, and one that went home before; and a task behind.
fn plans_without_a_tool() -> Vec<(Plan, Date)> {
    let of = |tool_source, there_until| Plan {
        calendar: Calendar { leaves_on: Some(date(2027, 4, 20)), ..Calendar::default() },
        helpers: vec![Helper { id: 1, workday_hours: Some(8.0), ..Helper::default() }],
        tools: vec![Tool { id: 2, tool_source, there_until, ..Tool::default() }],
        tasks: [3, 4].map(|id| Task { id, hours: Some(1.0.into()), ..Task::default() }).to_vec(),
        task_needs: vec![
            TaskNeed { id: 5, task: Some(3), tool: Some(2), ..TaskNeed::default() },
            TaskNeed { id: 6, task: Some(4), after: Some(3), ..TaskNeed::default() },
        ],
        ..Plan::default()
    };
    let day = date(2027, 4, 5);
    // What the first task needs is to be paid, and there is nothing to pay it with.
    let mut poor = of(ToolSource::Owned, None);
    poor.purse.opening_cash = Some(Money::whole(10));
    poor.kit = vec![Item { id: 7, unit_price: Some(Money::whole(50).into()), ..Item::default() }];
    poor.task_needs.push(TaskNeed { id: 8, task: Some(3), thing: Some(7), ..TaskNeed::default() });
    poor.stays = vec![Stay { id: 9, nights: 3, ..Stay::default() }];
    let missing = of(ToolSource::Missing, None);
    vec![(missing, day), (of(ToolSource::Borrowed, Some(date(2027, 4, 1))), day), (poor, day)]
}

/// What only a plan made for it has: a lid under a roof, a shelf over a head, too many things.
fn plans_with_a_room() -> Vec<(Plan, Date)> {
    let sized = |id, height_mm| Item {
        id,
        name: "Thing".into(),
        mass_kg: Some(4.0.into()),
        length_mm: Some(600.0),
        width_mm: Some(400.0),
        height_mm: Some(height_mm),
        ..Item::default()
    };
    let at = |id, thing, x_mm| Placement {
        id,
        thing: Some(thing),
        x_mm: Some(x_mm),
        y_mm: Some(0.0),
        ..Placement::default()
    };
    let lid = OpenedBox { height_mm: Some(9_000.0), ..OpenedBox::default() };
    let vehicle = Vehicle {
        inside_length_mm: Some(3_000.0),
        inside_width_mm: Some(1_700.0),
        inside_height_mm: Some(1_300.0),
        ..Vehicle::default()
    };
    let door = |id, side| Door { id, side, from_mm: 300.0, width_mm: 500.0, height_mm: 1_200.0, clear_mm: None };
    let plan = Plan {
        vehicle,
        kit: vec![sized(1, 300.0), Item { length_mm: Some(1_900.0), ..sized(2, 300.0) }, sized(3, 20.0)],
        placements: vec![
            Placement { opened: Some(lid), ..at(4, 1, 0.0) },
            Placement { sleeps: 1, ..at(5, 2, 1_000.0) },
            Placement { base_mm: 900.0, level: Level::Wall, fastened: Fastened::Strips, ..at(6, 3, 1_000.0) },
        ],
        doors: vec![door(7, VanSide::Right), door(8, VanSide::Rear), door(9, VanSide::Front)],
        sleepers: vec![Sleeper { id: 10, height_mm: Some(1_880.0), sitting_mm: Some(1_200.0), ..Sleeper::default() }],
        ..Plan::default()
    };
    let day = date(2027, 4, 5);
    let with = |change: fn(&mut Plan)| {
        let mut changed = plan.clone();
        change(&mut changed);
        (changed, day)
    };
    vec![
        with(|plan| plan.room.body_width_mm = Some(480.0)),
        with(|plan| plan.doors.truncate(1)),
        with(|plan| plan.doors.iter_mut().for_each(|door| door.clear_mm = Some(3_000.0))),
        with(|plan| plan.placements.resize(300, plan.placements[0])),
        with(|plan| plan.sleepers[0].height_mm = Some(1_950.0)),
        with(|plan| plan.room.strip_holds_kg = Some(0.1)),
    ]
}

/// What chance seldom brings together: sockets that give too little, a kettle and a heater at once, a floor, frost, and a
/// panel that nobody said the place of; and the same where the place is known.
fn plans_with_the_sun() -> Vec<(Plan, Date)> {
    let store = |id, store| Item { id, name: format!("Store {id}"), store: Some(store), ..Item::default() };
    let small = Store { usable_wh: 300.0, opening_percent: 50.0, mains_input_w: 20.0, ..Store::default() };
    let large = Store { usable_wh: 2_000.0, keeps_percent: Some(95.0), ..Store::default() };
    let draw = |id, power_w: f64, draw| {
        let draw = Draw { power_w: power_w.into(), ..draw };
        Item { id, name: format!("Draw {id}"), draw: Some(draw), ..Item::default() }
    };
    let in_the_evening =
        Draw { store: Some(2), from_hour: Some(18.0), hours_per_day: Some(1.0.into()), ..Draw::default() };
    let heating = Draw { works: Some(Works::Heating), heats_l: Some(0.7), ..in_the_evening };
    let cooling = Draw { works: Some(Works::Cooling), outlet: Outlet::Dc, store: Some(2), ..Draw::default() };
    let panel = Panel { peak_w: 100.0, charges: Some(2), ..Panel::default() };
    let day = date(2027, 4, 5);
    let plan = Plan {
        calendar: Calendar { leaves_on: Some(day), ..Calendar::default() },
        climate: Climate { low_c: Some(-12.0), high_c: Some(-6.0), ..Climate::default() },
        stays: vec![Stay {
            id: 20,
            nights: 2,
            offers: Offer { mains_hours: Some(3.0.into()), ..Offer::default() },
            ..Stay::default()
        }],
        kit: vec![
            store(1, small),
            store(2, large),
            draw(3, 40.0, Draw { outlet: Outlet::Dc, ..Draw::default() }),
            draw(4, 400.0, heating),
            draw(5, 300.0, in_the_evening),
            draw(6, 45.0, cooling),
            Item { id: 7, name: "Panel".into(), panel: Some(panel), ..Item::default() },
        ],
        charging: vec![Charging { id: 30, gives: Gives::Generator, in_use: true, ..Charging::default() }],
        ..Plan::default()
    };
    let mut placed = plan.clone();
    placed.climate = Climate { latitude_deg: Some(47.0), ..Climate::default() };
    vec![(plan, day), (placed, day)]
}

/// What chance seldom brings together: contracts of every kind, work at places of every signal, and nothing to power it.
fn plans_with_work() -> Vec<(Plan, Date)> {
    let day = date(2027, 4, 5);
    let stay = |id, signal| Stay {
        id,
        place: format!("Place {id}"),
        nights: 7,
        working_days_per_week: 5,
        offers: Offer { signal, ..Offer::default() },
        ..Stay::default()
    };
    let contract = |id, allowance_gb, price, beyond| DataContract {
        id,
        name: format!("Contract {id}"),
        allowance_gb: Some(allowance_gb),
        period_price: Some(Money::whole(price)),
        beyond,
        per_gb: Some(Money::whole(2)),
        slow_kbit_s: Some(128.0),
        in_use: id == 20,
        ..DataContract::default()
    };
    let uses = |id, data_task| DataUse { id, data_task, ..DataUse::default() };
    let plan = Plan {
        calendar: Calendar { leaves_on: Some(day), ..Calendar::default() },
        stays: vec![stay(1, Signal::Good), stay(2, Signal::Weak), stay(3, Signal::None), stay(4, Signal::Unknown)],
        data_uses: vec![uses(10, DataTask::FilmLow), uses(11, DataTask::MailIn)],
        data_contracts: vec![
            contract(20, 2.0, 30, BeyondAllowance::Stops),
            contract(21, 50.0, 20, BeyondAllowance::Stops),
        ],
        incomes: vec![Income {
            id: 30,
            amount: Some(Money::whole(900).into()),
            on: Some(date(2027, 4, 30)),
            ..Income::default()
        }],
        ..Plan::default()
    };
    let with = |change: fn(&mut Plan)| {
        let mut changed = plan.clone();
        changed.work.pay_per_hour = Some(Money::whole(20));
        changed.work.work_hours = Some(6.0);
        changed.purse.opening_cash = Some(Money::whole(5_000));
        change(&mut changed);
        (changed, day)
    };
    vec![
        with(|_| ()),
        with(|plan| plan.purse.opening_cash = Some(Money::whole(50))),
        with(|plan| plan.data_contracts.clear()),
        with(|plan| plan.data_contracts[0].beyond = BeyondAllowance::Slowed),
        with(|plan| (plan.data_contracts[0].beyond, plan.data_uses[0].id) = (BeyondAllowance::Costs, 12)),
        with(|plan| plan.data_contracts[0].allowance_gb = Some(12.0)),
        with(|plan| {
            plan.data_uses.remove(0);
            plan.data_uses[0].amount_per_day = 2_000.0.into();
            plan.data_contracts[0].beyond = BeyondAllowance::Slowed;
        }),
        with(|plan| {
            let laptop = Draw { power_w: 40.0.into(), ..Draw::default() };
            plan.kit.push(Item { id: 40, group: Group::Work, draw: Some(laptop), ..Item::default() });
        }),
    ]
}

/// Data and hours of work where it is freezing inside all the time.
fn in_frost(plan: &Plan, as_of: Date) -> signal::Report {
    let timeline = Timeline::new(plan, as_of);
    let inside_c = vec![-3.0; timeline.road().count() * 24];
    signal::report(plan, as_of, &timeline, &signal::Around { inside_c: &inside_c, served: &[] })
}

#[test]
fn every_finding_and_working_has_the_figures_its_sentence_needs() {
    let (words, bundle) = (english(), bundle());
    let mut reached = BTreeSet::new();
    let by_hand = plans_without_a_tool().into_iter().chain(plans_with_a_room()).chain(plans_with_the_sun());
    let by_hand = by_hand.chain(plans_with_work());
    for (plan, as_of) in seeded(&cases(), 3, 3_000).into_iter().chain(by_hand) {
        let Assessment { money, power, water, days, space, load, signal, .. } = assess(&plan, as_of);
        let mut said = of_standing(&money.standing);
        let month = money.month.iter().flat_map(|month| &month.working);
        said.extend(month.map(|working| (working.formula, working.figures.clone())));
        let home = money.going_home.iter().flat_map(|home| &home.working);
        said.extend(home.map(|working| (working.formula, working.figures.clone())));
        let loans = money.loans.iter().flat_map(|loan| &loan.working);
        said.extend(loans.map(|working| (working.formula, working.figures.clone())));
        said.extend(of_standing(&power.standing));
        said.extend(of_standing(&water.standing));
        said.extend(of_standing(&days.standing));
        said.extend(of_standing(&space.standing));
        said.extend(of_standing(&load.standing));
        said.extend(of_standing(&signal.standing));
        let frost = in_frost(&plan, as_of);
        said.extend(of_standing(&frost.standing));
        let checks = before_driving(&plan, &Placed::new(&plan));
        said.extend(checks.into_iter().map(|check| (check.key, check.figures)));
        let ways = days.ways.iter().flat_map(|ways| [Some(&ways.leave), ways.stay.as_ref()]).flatten();
        let endings = days.endings.stored.iter().map(|stored| &stored.working);
        let working = ways.map(|way| &way.working).chain(endings);
        said.extend(working.map(|working| (working.formula, working.figures.clone())));
        for (key, figures) in said {
            check_formats(&words, &bundle, key, &figures);
            reached.insert(key.to_owned());
        }
    }
    let is_of_a_balance = |key: &String| {
        let name = key.trim_start_matches("next-").trim_start_matches("working-");
        let is_balance = ["money-", "power-", "water-", "days-", "space-", "load-", "signal-", "leaving-"]
            .iter()
            .any(|balance| name.starts_with(balance));
        is_balance && literals_of_findings().contains(key)
    };
    let never: Vec<String> = keys().into_iter().filter(|key| is_of_a_balance(key) && !reached.contains(key)).collect();
    assert!(never.is_empty(), "no plan leads to: {never:?}");
}

/// The same for a thing on a shelf: a few offers, beside a thousand plans.
#[test]
fn everything_said_in_the_shop_has_the_figures_its_sentence_needs() {
    let (words, bundle) = (english(), bundle());
    let mut reached = BTreeSet::new();
    let other = [("other_price", "3"), ("other_pack", "1 kg")];
    let thing = [("mass_kg", "2"), ("length_mm", "1"), ("width_mm", "1"), ("height_mm", "1"), ("draw/power_w", "9")];
    let offers: [&[(&str, &str)]; 6] = [
        &[("unit_price", "40"), ("tax", "added"), ("pack", "2 l"), ("water/litres_per_day", "1")],
        &[("unit_price", "2"), ("tax", "included"), ("pack", "1 kg"), other[0], other[1]],
        &[("unit_price", "3"), ("pack", "1 kg"), other[0], other[1]],
        &[("unit_price", "4"), ("pack", "1 kg"), other[0], other[1]],
        &[("unit_price", "4"), ("pack", "1"), other[0], other[1], thing[0], thing[1], thing[2], thing[3], thing[4]],
        &[("unit_price", "0.01"), ("for", "")],
    ];
    for (plan, as_of) in seeded(&cases(), 5, 1_200) {
        let before = assess(&plan, as_of);
        let dearest = before.money.flows.iter().filter(|flow| matches!(flow.group, FlowGroup::Kit(_)));
        let dearest = dearest.min_by_key(|flow| flow.amount).map_or_else(String::new, |flow| flow.source.to_string());
        for texts in offers {
            let text = |name: &str| match texts.iter().find(|(of, _)| *of == name) {
                Some(("for", _)) => dearest.clone(),
                found => found.map_or_else(String::new, |(_, text)| (*text).to_owned()),
            };
            let Some(offer) = read_offer(&plan, &text, NumberMarks::default(), &|_| 1.0.into()).offer else { continue };
            let report = report(&plan, &before, &offer);
            let findings = report.findings.iter().map(|finding| (finding.key(), finding.figures()));
            let working = report.working.iter().map(|working| (working.formula, working.figures.clone()));
            for (key, figures) in findings.chain(working) {
                check_formats(&words, &bundle, key, &figures);
                reached.insert(key.to_owned());
            }
        }
    }
    let said = literals(Path::new("../core/src/shop")).into_iter().map(|literal| literal.text);
    let never: Vec<String> =
        said.filter(|text| is_name(text) && keys().contains(text) && !reached.contains(text)).collect();
    assert!(never.is_empty(), "no offer leads to: {never:?}");
}

/// The same for what is chosen before leaving.
#[test]
fn everything_worked_out_for_selling_and_building_has_the_figures_its_sentence_needs() {
    let (words, bundle) = (english(), bundle());
    let mut reached = BTreeSet::new();
    for (plan, as_of) in seeded(&cases(), 6, 300) {
        let money = assess(&plan, as_of).money;
        let mut said: Vec<Working> = offered(&plan, as_of).into_iter().map(|thing| thing.working).collect();
        said.extend(fates_of(&plan, as_of).into_iter().flat_map(|thing| thing.ways).map(|way| way.working));
        said.extend(schedule(&plan, as_of, &money).into_iter().flat_map(|schedule| schedule.working));
        let compared = compared(&plan, as_of, &money);
        said.extend(compared.working.into_iter().chain(compared.ways.into_iter().flat_map(|way| way.working)));
        for Working { formula, figures, .. } in said {
            check_formats(&words, &bundle, formula, &figures);
            reached.insert(formula.to_owned());
        }
    }
    let is_of_them = |key: &String| key.starts_with("working-selling-") || key.starts_with("working-futures-");
    let never: Vec<String> = keys().into_iter().filter(|key| is_of_them(key) && !reached.contains(key)).collect();
    assert!(never.is_empty(), "no plan leads to: {never:?}");
}

/// The same for what is suggested, and for what the next build needs.
#[test]
fn everything_suggested_and_briefed_has_the_figures_its_sentence_needs() {
    let (words, bundle) = (english(), bundle());
    let mut reached = BTreeSet::new();
    for (plan, as_of) in seeded(&cases(), 7, 250).into_iter().chain(plans_with_a_log()).chain(plans_with_work()) {
        let again = Again::new(&plan, as_of);
        let found = Found::new(&plan, as_of, again.before());
        let moves = found.candidates.iter().filter_map(|candidate| tried(&again, &plan, candidate));
        let mut said: Vec<(&str, Figures)> = moves.map(|(one, _)| one.said()).collect();
        for line in brief(&plan, as_of).lines {
            said.extend(line.working.into_iter().map(|working| (working.formula, working.figures)));
            said.push((line.key, line.figures));
        }
        for (key, figures) in said {
            check_formats(&words, &bundle, key, &figures);
            reached.insert(key.to_owned());
        }
    }
    let is_of_them = |key: &String| {
        let name = key.trim_start_matches("working-");
        name.starts_with("move-") || (name.starts_with("brief-") && literals_in("road_log/brief.rs").contains(key))
    };
    let never: Vec<String> = keys().into_iter().filter(|key| is_of_them(key) && !reached.contains(key)).collect();
    assert!(never.is_empty(), "no plan leads to: {never:?}");
}

fn literals_in(file: &str) -> BTreeSet<String> {
    literals(&Path::new("../core/src").join(file)).into_iter().map(|literal| literal.text).collect()
}

/// One that was on the road for a while, with all that the next build is briefed by, and two stores.
fn plans_with_a_log() -> Vec<(Plan, Date)> {
    let store = |id| Item { id, store: Some(Store { usable_wh: 300.0, ..Store::default() }), ..Item::default() };
    let draw = Draw { power_w: 60.0.into(), hours_per_day: Some(8.0.into()), ..Draw::default() };
    let day = date(2027, 4, 5);
    let reading = |id, day, cash| Reading {
        id,
        on: Some(day),
        measured_c: Some(3.0),
        cash: Some(Money::whole(cash)),
        ..Reading::default()
    };
    let plan = Plan {
        calendar: Calendar { leaves_on: Some(day), ..Calendar::default() },
        vehicle: Vehicle { empty_mass_kg: Some(1_900.0), gross_limit_kg: Some(3_000.0), ..Vehicle::default() },
        climate: Climate { latitude_deg: Some(46.0), ..Climate::default() },
        stays: vec![Stay { id: 10, nights: 20, ..Stay::default() }],
        kit: vec![
            store(1),
            store(2),
            Item { id: 3, draw: Some(draw), quantity: 2, ..Item::default() },
            Item { id: 4, tank: Some(Tank { capacity_l: 5.0, ..Tank::default() }), ..Item::default() },
        ],
        charging: vec![
            Charging { id: 5, in_use: true, ..Charging::default() },
            Charging { id: 6, ..Charging::default() },
        ],
        costs: vec![Cost { id: 7, amount: Some(Money::whole(90).into()), ..Cost::default() }],
        water_uses: vec![WaterUse { id: 8, litres_per_day: 6.0.into(), ..WaterUse::default() }],
        sleepers: vec![Sleeper { id: 9, height_mm: Some(1_700.0), ..Sleeper::default() }],
        readings: vec![reading(20, day, 500), reading(21, date(2027, 4, 7), 480)],
        ..Plan::default()
    };
    let unmeasured = Plan { readings: Vec::new(), ..plan.clone() };
    vec![(plan, date(2027, 4, 8)), (unmeasured, day)]
}

/// Hardly any plan by chance has one.
fn problem_of_a_circle() -> Vec<Problem> {
    let task = Task { id: 1, name: "Floor".to_owned(), ..Task::default() };
    let need = TaskNeed { id: 2, task: Some(1), after: Some(1), ..TaskNeed::default() };
    validate(&Plan { tasks: vec![task], task_needs: vec![need], ..Plan::default() })
}

#[test]
fn every_problem_has_the_figures_its_sentence_needs() {
    let words = english();
    let mut reached = BTreeSet::new();
    let files = seeded(&documents(), 4, 1_500);
    let of_files = files
        .iter()
        .flat_map(|text| Document::open(text).map_or_else(|problem| vec![problem], |opened| opened.problems));
    for problem in of_files.chain(problems_of_calculations()).chain(problem_of_a_circle()) {
        // What people call their tasks may be anything.
        let sentence = words.problem(&problem).replace("{$x}", "");
        assert!(!sentence.contains("{$") && !sentence.starts_with("problem-"), "{problem:?}: {sentence}");
        reached.insert(serde_json::to_value(&problem.wrong).unwrap()["kind"].to_string());
    }
    assert_eq!(reached.len(), keys().iter().filter(|key| key.starts_with("problem-")).count());
}

#[test]
fn every_quantity_has_its_unit_in_words() {
    use Quantity as Q;
    let all = [
        Q::MassKg,
        Q::LengthMm,
        Q::DistanceKm,
        Q::PowerW,
        Q::EnergyWh,
        Q::Volts,
        Q::Amperes,
        Q::VolumeL,
        Q::Hours,
        Q::HourOfDay,
        Q::Days,
        Q::Nights,
        Q::Months,
        Q::Percent,
        Q::Count,
        Q::DayOfMonth,
        Q::AreaM2,
        Q::Degrees,
        Q::ForceN,
        Q::TemperatureC,
        Q::AltitudeM,
    ];
    for units in [Units::Metric, Units::UsCustomary] {
        let words = Words::english(Plain, units, "EUR");
        for quantity in all {
            for value in [0.0, 1.0, 2.0, 12.34, -1.0] {
                let text = words.measure(value, quantity);
                assert!(!text.contains('{') && !text.starts_with("measure-"), "{quantity:?} {value}: {text}");
            }
            assert!(!words.unit_sign(quantity).starts_with("unit-"), "{quantity:?}");
        }
    }
}

/// Sentences that the front end says without figures need none.
#[test]
fn what_is_said_without_figures_needs_none() {
    let (words, bundle) = (english(), bundle());
    let web = literals(Path::new("../web/src"));
    let plain: BTreeSet<String> = web
        .into_iter()
        .filter(|literal| ["t(", "t!(", "key!("].contains(&literal.call.as_str()))
        .map(|literal| literal.text)
        .collect();
    for key in plain.into_iter().filter(|text| is_name(text)) {
        check_formats(&words, &bundle, &key, &Figures::new());
    }
    for key in built() {
        check_formats(&words, &bundle, &key, &Figures::new());
    }
}

/// What only a person who types can get wrong.
fn problems_of_calculations() -> impl Iterator<Item = Problem> {
    [("kit/1/mass_kg", "3 mm"), ("kit/1/unit_price", "3 kg"), ("kit/1/mass_kg", "3 kg + 1"), ("kit/1/mass_kg", "3 / 0")]
        .into_iter()
        .map(|(path, line)| {
            let path = kerbstead_core::plan::Path::from(path);
            let wrong = typed_value(field::at(&path).unwrap(), line, NumberMarks::default(), 1.0).unwrap_err();
            Problem { path, wrong }
        })
}

fn of_standing<F: Say>(standing: &Standing<F>) -> Vec<(&str, Figures)> {
    let findings = standing.findings.iter().map(|finding| (finding.key(), finding.figures()));
    let next = standing.findings.iter().filter_map(|finding| Some((finding.next_step()?, finding.figures())));
    let working = standing.working.iter().map(|working| (working.formula, working.figures.clone()));
    let cautions = standing.cautions.iter().map(|caution| (caution.key(), Figures::new()));
    findings.chain(next).chain(working).chain(cautions).collect()
}

fn literals_of_findings() -> BTreeSet<String> {
    let files = [
        "money/findings.rs",
        "power/findings.rs",
        "water/findings.rs",
        "money",
        "power",
        "water",
        "days",
        "space",
        "load",
        "signal",
    ];
    files.iter().flat_map(|file| literals(&Path::new("../core/src").join(file))).map(|literal| literal.text).collect()
}

/// Formats as the words do: a figure by its name, and its bare number with `_n` behind the name.
fn check_formats(words: &Words<Plain>, bundle: &FluentBundle<FluentResource>, key: &str, figures: &Figures) {
    let mut args = FluentArgs::new();
    for (name, figure) in figures {
        args.set(*name, FluentValue::from(words.figure(figure)));
        if let Figure::Measure { value, .. } = figure {
            args.set(format!("{name}_n"), FluentValue::from(*value));
        }
    }
    let Some(message) = bundle.get_message(key) else { panic!("{key} is not in the catalogue") };
    let mut errors = Vec::new();
    bundle.format_pattern(message.value().unwrap(), Some(&args), &mut errors);
    assert!(errors.is_empty(), "{key}: {errors:?}");
}

fn english() -> Words<Plain> {
    Words::english(Plain, Units::Metric, "EUR")
}

fn bundle() -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new(vec!["en".parse::<unic_langid::LanguageIdentifier>().unwrap()]);
    bundle.add_resource(FluentResource::try_new(ENGLISH.to_owned()).unwrap()).unwrap();
    bundle
}

fn keys() -> BTreeSet<String> {
    ENGLISH.lines().filter_map(key_of).map(str::to_owned).collect()
}

fn key_of(line: &str) -> Option<&str> {
    line.split_once(" =").map(|(key, _)| key).filter(|key| is_name(key) || *key == "moment")
}

fn is_name(text: &str) -> bool {
    let is_part = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
    text.contains('-') && text.split('-').all(is_part)
}

fn said_by_the_front_end() -> impl Iterator<Item = String> {
    let is_said = |literal: &Literal| CALLS.contains(&literal.call.as_str()) && is_name(&literal.text);
    literals(Path::new("../web/src")).into_iter().filter(is_said).map(|literal| literal.text)
}

/// A text between quotation marks in a source file, and the call it is the first argument of.
struct Literal {
    call: String,
    text: String,
}

/// All texts in a file, or in the files below a folder; comments are left out.
fn literals(path: &Path) -> Vec<Literal> {
    if path.is_dir() {
        let mut paths: Vec<_> = fs::read_dir(path).unwrap().map(|entry| entry.unwrap().path()).collect();
        paths.sort();
        return paths.iter().flat_map(|path| literals(path)).collect();
    }
    let source =
        if path.extension().is_some_and(|end| end == "rs") { fs::read_to_string(path).unwrap() } else { String::new() };
    source.lines().filter(|line| !line.trim_start().starts_with("//")).flat_map(literals_of).collect()
}

fn literals_of(line: &str) -> Vec<Literal> {
    let parts: Vec<&str> = line.split('"').collect();
    let texts = parts.iter().enumerate().skip(1).step_by(2);
    texts
        .map(|(at, text)| {
            let before = parts[at - 1].trim_end_matches('&');
            let name = before.trim_end_matches('(');
            let others = name.trim_end_matches(|c: char| c.is_ascii_alphanumeric() || c == '_' || c == '!');
            let call = before[others.len()..].to_owned();
            Literal { call, text: (*text).to_owned() }
        })
        .collect()
}
