//! What the work does to a plan, against plans worked out by hand. All values are of this test. Weekdays by the Gregorian
//! calendar: 3 April 2027 is a Saturday.
#![allow(clippy::expect_used, reason = "a test stops at what it did not expect")]
#![allow(clippy::needless_pass_by_value, reason = "parts of plans are written where they are used")]

use jiff::civil::{Date, date};
use kerbstead_core::days::{Block, Finding, Outlook, TaskState};
use kerbstead_core::plan::{Document, Plain, Plan, Wrong, validate};
use kerbstead_core::task::{Question, Subject};
use kerbstead_core::{Assessment, Margin, Verdict, assess};
use kerbstead_tests::worked::{money, plan};
use serde_json::{Value, json};

/// A Monday.
const DAY: Date = date(2027, 4, 5);

/// Somebody who works six hours on every Saturday from nine; less than three weeks until leaving.
fn work(parts: Value) -> Plan {
    let mut whole = json!({
        "calendar": { "starts_on": "2027-04-05", "leaves_on": "2027-04-24" },
        "purse": { "opening_cash": "500" },
        "stays": [{ "id": 20, "nights": 60 }],
        "helpers": [{ "id": 1, "name": "Ann", "saturday_hours": 6 }],
    });
    for (name, part) in parts.as_object().into_iter().flatten() {
        whole[name] = part.clone();
    }
    // Some of these plans are wrong on purpose.
    Document::open(&whole.to_string()).expect("a plan").plan
}

fn starts(assessment: &Assessment, task: u32) -> Option<(Date, f64)> {
    let line = assessment.days.tasks.iter().find(|line| line.task == task)?;
    line.starts.map(|moment| (moment.on, f64::from(moment.minute.unwrap_or(0)) / 60.0))
}

#[test]
fn tasks_are_done_one_after_another_in_the_hours_that_there_are() {
    let plan = work(json!({
        "tasks": [{ "id": 2, "hours": 4 }, { "id": 3, "hours": 4, "wait_hours": 24 }, { "id": 4, "hours": 1 }],
        "task_needs": [{ "id": 5, "task": 3, "after": 2 }, { "id": 6, "task": 4, "after": 3 }],
    }));
    let assessment = assess(&plan, DAY);
    // Four hours and two on 10 April; two on the 17th, which end at eleven; a day later it is the 18th, a Sunday.
    assert_eq!(starts(&assessment, 2), Some((date(2027, 4, 10), 9.0)));
    assert_eq!(starts(&assessment, 3), Some((date(2027, 4, 10), 13.0)));
    assert_eq!(starts(&assessment, 4), Some((date(2027, 4, 24), 9.0)));
    assert_eq!(assessment.days.standing.verdict, Verdict::FallsShort);
    let late: Vec<TaskState> = assessment.days.tasks.iter().map(|line| line.state).collect();
    assert_eq!(late, [TaskState::InTime, TaskState::InTime, TaskState::Late]);
    // Done at ten on the day of leaving, and the flat is to be left when that day begins.
    assert_eq!(assessment.days.standing.margin, Some(Margin::Early(-10.0 / 24.0)));
}

#[test]
fn a_purchase_is_needed_when_its_task_begins_and_ordered_before() {
    let parts = json!({
        "kit": [{ "id": 9, "name": "Boards", "unit_price": "60", "delivery_days": 4 }],
        "tasks": [{ "id": 2, "hours": 2, "not_before": "2027-04-16" }],
        "task_needs": [{ "id": 3, "task": 2, "thing": 9 }],
    });
    let assessment = assess(&work(parts.clone()), DAY);
    let paid = assessment.money.flows.iter().find(|flow| flow.source == 9).map(|flow| flow.on);
    assert_eq!(paid, Some(date(2027, 4, 13)), "four days before Saturday the 17th");
    let mut without = parts;
    without["task_needs"] = json!([]);
    let paid = assess(&work(without), DAY).money.flows.iter().find(|flow| flow.source == 9).map(|flow| flow.on);
    assert_eq!(paid, Some(date(2027, 4, 24)), "without a task it is needed on the day of leaving");
}

#[test]
fn a_thing_is_sold_after_its_last_use_and_a_hired_tool_costs_on_the_days_it_is_used() {
    let plan = work(json!({
        "belongings": [{ "id": 9, "name": "Table", "price": "40", "on": "2027-04-07" }],
        "tools": [{ "id": 8, "name": "Saw", "tool_source": "hired", "price_per_day": "15" }],
        "tasks": [{ "id": 2, "hours": 9 }],
        "task_needs": [{ "id": 3, "task": 2, "at_home": 9 }, { "id": 4, "task": 2, "tool": 8 }],
    }));
    let assessment = assess(&plan, DAY);
    let flow =
        |id: u32| assessment.money.flows.iter().find(|flow| flow.source == id).map(|flow| (flow.on, flow.amount));
    // Six hours on the 10th, three on the 17th.
    assert_eq!(flow(9), Some((date(2027, 4, 17), money("40"))));
    assert_eq!(flow(8), Some((date(2027, 4, 10), money("-30"))));
}

#[test]
fn what_cannot_be_done_says_why() {
    let task = json!([{ "id": 2, "name": "Floor", "hours": 2 }]);
    let tool = |tool: Value| json!([{ "id": 8, "name": "Saw", "tool_source": "borrowed", "there_until": tool }]);
    let needs_tool = json!([{ "id": 3, "task": 2, "tool": 8 }]);
    for (parts, block) in [
        (
            json!({ "tools": [{ "id": 8, "tool_source": "missing" }], "task_needs": needs_tool }),
            Block::NobodyHas { tool: 8 },
        ),
        (json!({ "tools": tool(json!("2027-04-04")), "task_needs": needs_tool }), Block::ToolGone { tool: 8 }),
        // There until Friday, and hands are there on Saturdays.
        (json!({ "tools": tool(json!("2027-04-09")), "task_needs": needs_tool }), Block::NeverTogether),
        (json!({ "tasks": [{ "id": 2, "hours": 2, "hands": "two" }] }), Block::TooFewHands { hands: 2 }),
        (
            json!({ "kit": [{ "id": 9, "obtain": "left_out" }], "task_needs": [{ "id": 3, "task": 2, "thing": 9 }] }),
            Block::ItemLeftOut { item: 9 },
        ),
        (json!({ "tasks": [{ "id": 2, "hours": 7, "in_one_go": true }] }), Block::TooLong),
        (json!({ "task_needs": [{ "id": 3, "task": 2, "after": 2 }] }), Block::Circle),
    ] {
        let mut whole = json!({ "tasks": task });
        for (name, part) in parts.as_object().into_iter().flatten() {
            whole[name] = part.clone();
        }
        let assessment = assess(&work(whole), DAY);
        assert_eq!(assessment.days.tasks[0].block, Some(block));
        assert_eq!(assessment.days.standing.verdict, Verdict::FallsShort, "{block:?}");
        let is_told = |finding: &Finding| matches!(finding, Finding::Blocked { block: told, .. } if *told == block);
        assert!(assessment.days.standing.findings.iter().any(is_told), "{block:?}");
    }
}

#[test]
fn a_circle_is_named_at_the_need_that_closes_it() {
    let plan = work(json!({
        "tasks": [{ "id": 2, "name": "Floor" }, { "id": 3, "name": "Bed" }, { "id": 4, "name": "Walls" }],
        "task_needs": [
            { "id": 5, "task": 2, "after": 4 }, { "id": 6, "task": 3, "after": 2 }, { "id": 7, "task": 4, "after": 3 },
        ],
    }));
    let problems = validate(&plan);
    let circle = problems.iter().find_map(|problem| match &problem.wrong {
        Wrong::TaskCircle { names } => Some((problem.path.as_str(), names.as_str())),
        _ => None,
    });
    assert_eq!(circle, Some(("task_needs/6/after", "Bed → Walls → Floor → Bed")));
}

#[test]
fn what_was_spent_and_done_moves_what_follows() {
    let parts = |task: Value| {
        work(json!({
            "tasks": [task, { "id": 3, "hours": 2 }],
            "task_needs": [{ "id": 5, "task": 3, "after": 2 }],
        }))
    };
    let second = |task: Value| starts(&assess(&parts(task), DAY), 3);
    assert_eq!(second(json!({ "id": 2, "hours": 5 })), Some((date(2027, 4, 10), 14.0)));
    assert_eq!(second(json!({ "id": 2, "hours": 5, "spent_hours": 3 })), Some((date(2027, 4, 10), 11.0)));
    assert_eq!(second(json!({ "id": 2, "hours": 5, "done_on": "2027-04-04" })), Some((date(2027, 4, 10), 9.0)));
    // Put off to the 17th: it ends at two, and the second begins then.
    assert_eq!(second(json!({ "id": 2, "hours": 5, "not_before": "2027-04-12" })), Some((date(2027, 4, 17), 14.0)));
    // Done on Friday, and a wait of forty hours from its end is over on Sunday.
    let waits = json!({ "id": 2, "hours": 5, "done_on": "2027-04-09", "wait_hours": 40 });
    assert_eq!(starts(&assess(&parts(waits), date(2027, 4, 10)), 3), Some((date(2027, 4, 17), 9.0)));
}

#[test]
fn hours_follow_the_calendar_over_a_leap_day_and_days_off() {
    // 26 February 2028 is a Saturday; 29 February a Tuesday.
    let plan = plan(&json!({
        "calendar": { "starts_on": "2028-02-26", "leaves_on": "2028-03-20" },
        "helpers": [{ "id": 1, "workday_hours": 2, "workday_from_hour": 18, "saturday_hours": 2, "sunday_hours": 2 }],
        "other_days": [
            { "id": 7, "helper": 1, "first_day": "2028-02-27", "last_day": "2028-02-28" },
            { "id": 8, "first_day": "2028-02-29", "hours_then": 4, "from_hour": 12 },
        ],
        "tasks": [{ "id": 2, "hours": 7 }],
    }));
    let days: Vec<(Date, f64)> =
        assess(&plan, date(2028, 2, 26)).days.days.iter().map(|day| (day.on, day.work[0].hours)).collect();
    assert_eq!(days, [(date(2028, 2, 26), 2.0), (date(2028, 2, 29), 4.0), (date(2028, 3, 1), 1.0)]);
}

#[test]
fn both_ways_of_not_being_ready_cost_what_they_cost() {
    let plan = work(json!({
        "costs": [
            { "id": 21, "amount": "48699", "phase": "home" },
            { "id": 22, "amount": "24349.5", "phase": "road" },
        ],
        "tasks": [{ "id": 2, "hours": 20 }],
        "building": { "road_extra_percent": 50, "road_day": "5" },
    }));
    let ways = assess(&plan, DAY).days.ways.expect("twenty hours do not fit into two Saturdays");
    // The hours fit into 10, 17, 24 April and 1 May. A month has 365.2425 / 12 days: 1,600 a day at home, 800 on the road.
    let stay = ways.stay.expect("it can be done");
    assert_eq!((stay.done_on, stay.days, stay.cost), (Some(date(2027, 5, 1)), 8, money("12800")));
    // Thirty hours at 6 / 7 an hour a day are 35 days, each 800 on the road and 5 for the bench.
    assert_eq!((ways.leave.hours, ways.leave.days, ways.leave.cost), (30.0, 35, money("28175")));
}

#[test]
fn everything_at_home_ends_somewhere() {
    let plan = work(json!({
        "belongings": [
            { "id": 2, "name": "Sofa" },
            { "id": 3, "name": "Lamp", "price": "10" },
            { "id": 4, "name": "Mirror", "end": "thrown", "end_fee": "12", "on": "2027-04-20" },
            { "id": 5, "name": "Cello", "end": "stored", "price": "300",
              "kept": { "storage_monthly": "8", "replaces": "500" } },
            { "id": 6, "name": "Plant", "end": "given", "price": "5", "ended_on": "2027-04-06" },
        ],
    }));
    let assessment = assess(&plan, DAY);
    let endings = &assessment.days.endings;
    assert_eq!((endings.open, endings.gone, endings.days_left), (1, 1, Some(19)));
    let flows: Vec<(u32, Date)> = assessment.money.flows.iter().map(|flow| (flow.source, flow.on)).collect();
    assert!(flows.contains(&(3, date(2027, 4, 24))), "what has a price is sold");
    assert!(flows.contains(&(4, date(2027, 4, 20))), "throwing away costs");
    assert!(flows.iter().filter(|(id, _)| *id == 5).count() == 2, "two months of storage: {flows:?}");
    assert!(flows.iter().all(|(id, _)| *id != 6), "what is given away brings nothing");
    // Two months at 8 against 500 less 300.
    let stored = &endings.stored[0];
    assert_eq!((stored.rent, stored.again, stored.is_storing_cheaper), (money("16"), money("200"), true));
    assert_eq!(stored.even_after_months, Some(25.0));
}

fn outlook(plan: &Plan) -> Outlook {
    let question = Question { subject: Subject::Days, plan: plan.clone(), as_of: DAY, seed: 1, ..Question::default() };
    let mut task = question.begin();
    while task.step() < 1.0 {}
    Outlook::from_plain(&task.answer()).expect("an outlook")
}

#[test]
fn chances_and_savings_are_those_of_the_plan() {
    let plan = work(json!({
        "tools": [{ "id": 8, "name": "Saw", "tool_source": "borrowed", "there_from": "2027-04-17", "price_per_day": "9" }],
        "tasks": [{ "id": 2, "hours": 6 }, { "id": 3, "hours": { "low": 2, "likely": 2, "high": 2 } }],
        "task_needs": [{ "id": 5, "task": 3, "tool": 8 }, { "id": 6, "task": 3, "after": 2 }],
    }));
    let found = outlook(&plan);
    assert_eq!(found, outlook(&plan), "the same plan and seed give the same answer");
    assert_eq!((found.finish, found.is_proven), (Some(date(2027, 4, 17)), true));
    // Nothing is a range, so every run is the likely one.
    assert_eq!((found.runs, found.on_time), (1_000, Some(1_000)));
    // Without the first task nothing is earlier, as the saw comes on the 17th; with one more pair of hands neither.
    assert!(found.savings.iter().all(|saving| saving.id == 3), "{:?}", found.savings);
}

#[test]
fn a_thousand_tasks_are_answered() {
    let tasks: Vec<Value> = (0..1_000).map(|at| json!({ "id": 10_000 + at, "hours": 1 })).collect();
    let needs: Vec<Value> =
        (1..1_000).map(|at| json!({ "id": 20_000 + at, "task": 10_000 + at, "after": 9_999 + at })).collect();
    let plan = work(json!({ "tasks": tasks, "task_needs": needs }));
    let days = assess(&plan, DAY).days;
    assert_eq!(days.standing.verdict, Verdict::FallsShort);
    assert_eq!(days.tasks.len(), 1_000);
}
