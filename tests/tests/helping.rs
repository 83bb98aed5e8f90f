//! The link for one who helps, and the answer that comes back: what they are told and what not, and what they can change.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::plan::{
    Difference, DifferenceKind, Document, Edit, Helper, Id, List, Money, OtherDay, Plain, Plan, Tool, ToolDays,
    ToolSource, differences,
};
use kerbstead_core::share::{Answer, Parcel, Scope, open, seal, told};
use kerbstead_tests::links::as_told;
use serde_json::Value;

fn file_of(parcel: Parcel) -> Value {
    match parcel {
        Parcel::Plan { file, .. } => file,
        Parcel::Answer(answer) => panic!("an answer: {answer:?}"),
    }
}

fn id_of(plan: &Plan, list: List, name: &str) -> Id {
    let is_named = |id: &Id| plan.name_of(*id) == Some(name);
    list.ids(plan).into_iter().find(is_named).unwrap()
}

/// A plan with much work in it, as a link tells it.
fn with_work() -> Plan {
    Plan::from_plain(&file_of(open(include_str!("../data/share/plan-with-work.txt").trim_end()).unwrap())).unwrap()
}

/// That plan, with a task that is done, one that is left out, and amounts that no link without money may tell.
fn plan() -> Plan {
    let mut plan = with_work();
    let task = |plan: &mut Plan, name: &str| plan.tasks.iter().position(|task| task.name == name).unwrap();
    let (done, left_out) = (task(&mut plan, "Charge and try the power store"), task(&mut plan, "Put up the shelf"));
    plan.tasks[done].done_on = Some(date(2027, 3, 20));
    plan.tasks[left_out].left_out = true;
    let amount: Money = "4711.17".parse().unwrap();
    plan.tools[1].tool_source = ToolSource::Hired;
    plan.tools[1].price_per_day = Some(amount);
    plan.building.day_longer = Some(amount);
    plan.building.road_day = Some(amount);
    plan.building.arrives_on = Some(date(2027, 3, 28));
    plan
}

fn tavi() -> (Plan, Helper) {
    let plan = plan();
    let helper = plan.helpers.iter().find(|helper| helper.name == "Tavi").unwrap().clone();
    (plan, helper)
}

fn for_tavi() -> Value {
    let (plan, helper) = tavi();
    let text = seal(&Parcel::for_helper(&plan.to_plain(), helper.id)).unwrap();
    println!("for one helper: {} characters", text.len());
    file_of(open(&text).unwrap())
}

fn names(file: &Value, list: &str) -> Vec<String> {
    let entries = file[list].as_array().into_iter().flatten();
    entries.map(|entry| entry["name"].as_str().unwrap_or_default().to_owned()).collect()
}

#[test]
fn a_helper_is_told_what_is_to_be_done_and_their_own_hours() {
    let (file, (plan, helper)) = (for_tavi(), tavi());
    let open_tasks: Vec<String> = plan
        .tasks
        .iter()
        .filter(|task| task.done_on.is_none() && !task.left_out)
        .map(|task| task.name.clone())
        .collect();
    assert_eq!(names(&file, "tasks"), open_tasks);
    assert_eq!(names(&file, "helpers"), ["Tavi"]);
    assert_eq!(names(&file, "tools"), ["Tape measure", "Jigsaw", "Drill of Neighbour Pim", "Yard of the packing shed"]);
    let days = file["other_days"].as_array().unwrap();
    assert!(!days.is_empty() && days.iter().all(|day| day["helper"] == helper.id));
    let opened = Document::from_value(file).unwrap().plan;
    assert_eq!(opened.helpers, [helper]);
    assert_eq!(opened.calendar.leaves_on, plan.calendar.leaves_on);
    assert_eq!(opened.building.arrives_on, plan.building.arrives_on);
    assert_eq!(opened.tasks[0].hours, plan.tasks[0].hours);
}

#[test]
fn a_helper_is_told_nothing_of_money_of_others_hours_or_of_what_is_at_home() {
    let file = for_tavi();
    let sections: Vec<&str> = file.as_object().unwrap().keys().map(String::as_str).collect();
    let known =
        ["title", "calendar", "building", "kit", "tasks", "task_needs", "tools", "helpers", "other_days", "guesses"];
    assert!(sections.iter().all(|section| known.contains(section)), "{sections:?}");
    let text = file.to_string();
    for hidden in
        ["Jorun", "4711", "Sewing machine", "at_home", "price", "day_longer", "Power store", "Shelf", "done_on"]
    {
        assert!(!text.contains(hidden), "{hidden} is in {text}");
    }
    for item in file["kit"].as_array().unwrap() {
        let fields: Vec<&str> = item.as_object().unwrap().keys().map(String::as_str).collect();
        assert_eq!(fields, ["id", "name"]);
    }
    assert_eq!(names(&file, "kit").len(), 6, "what the tasks need, and nothing else: {:?}", names(&file, "kit"));
}

/// Whoever shares it reads before what it tells: above all that there are names of people in it.
#[test]
fn what_a_helper_is_told_is_said_before() {
    let (plan, helper) = tavi();
    let said: Vec<(&str, usize)> =
        told(&Parcel::for_helper(&plan.to_plain(), helper.id)).iter().map(|told| (told.key, told.count)).collect();
    for wanted in [
        ("share-tells-title", 1),
        ("share-tells-thing-names", 6),
        ("share-tells-tasks", 13),
        ("share-tells-tools", 4),
        ("share-tells-helpers", 1),
        ("share-tells-other-days", 1),
        ("share-tells-lenders", 3),
        ("share-tells-no-money", 1),
    ] {
        assert!(said.contains(&wanted), "{wanted:?} in {said:?}");
    }
}

#[test]
fn links_without_money_tell_no_hire_and_no_day_longer_and_lists_of_things_tell_no_tasks() {
    let file = plan().to_plain();
    for scope in Scope::ALL {
        let text = file_of(Parcel::of(&file, scope, false)).to_string();
        for hidden in ["4711", "price_per_day", "day_longer", "road_day", "at_home", "Sewing machine"] {
            assert!(!text.contains(hidden), "{scope:?}: {hidden}");
        }
    }
    for scope in [Scope::Kit, Scope::Shopping, Scope::Borrowing] {
        let told = file_of(Parcel::of(&file, scope, true));
        for section in ["tasks", "task_needs", "tools", "helpers", "other_days", "building"] {
            assert!(told.get(section).is_none(), "{scope:?}: {section}");
        }
    }
    let whole = file_of(Parcel::of(&file, Scope::Whole, false));
    assert_eq!(whole["tasks"].as_array().unwrap().len(), plan().tasks.len(), "the rest of the work is in it");
}

/// What a helper says: other hours, a day off changed, one new, a tool of the plan and one that nobody had thought of.
fn answer() -> Answer {
    let (plan, helper) = tavi();
    let day = plan.other_days.iter().find(|day| day.helper == Some(helper.id)).unwrap();
    let jigsaw = id_of(&plan, List::Tools, "Jigsaw");
    let mut answer = Answer {
        from: "Tavi".into(),
        title: plan.title.clone(),
        helper: Some(Helper { sunday_hours: Some(5.0), comes_until: Some(date(2027, 4, 18)), ..helper.clone() }),
        ..Answer::default()
    };
    answer.put_day(OtherDay { hours_then: Some(3.0), ..*day });
    let id = answer.new_id();
    answer.put_day(OtherDay { id, first_day: Some(date(2027, 4, 3)), ..OtherDay::default() });
    let lent = Tool { id: jigsaw, name: "Jigsaw".into(), on_days: ToolDays::Workdays, ..Tool::default() };
    let id = answer.new_id();
    answer.tools =
        vec![lent, Tool { id, name: "Heat gun".into(), there_from: Some(date(2027, 4, 1)), ..Tool::default() }];
    answer
}

fn taken(plan: &mut Plan, differences: Vec<Difference>) {
    let edits = differences.into_iter().map(|difference| difference.edit).collect();
    Edit::All { edits }.apply(plan).unwrap();
}

#[test]
fn what_a_helper_answers_is_a_difference_each_to_take_or_to_leave() {
    let (mut plan, helper) = tavi();
    let Ok(Parcel::Answer(answer)) = open(&seal(&Parcel::Answer(answer())).unwrap()) else { panic!("no answer") };
    let found = differences(&plan, &Parcel::Answer(answer.clone()).laid_over(&plan));
    let paths: Vec<String> =
        found.iter().map(|difference| format!("{:?} {}", difference.kind, difference.path)).collect();
    let (jigsaw, own) = (id_of(&plan, List::Tools, "Jigsaw"), helper.id);
    let day = plan.other_days.iter().find(|day| day.helper == Some(own)).unwrap().id;
    let (heat_gun, new_day) = (plan.next_id() + 1, plan.next_id());
    let mut wanted = [
        format!("Changed tools/{jigsaw}/tool_source"),
        format!("Changed tools/{jigsaw}/lender"),
        format!("Changed tools/{jigsaw}/on_days"),
        format!("Added tools/{heat_gun}"),
        format!("Changed helpers/{own}/sunday_hours"),
        format!("Changed helpers/{own}/comes_until"),
        format!("Changed other_days/{day}/hours_then"),
        format!("Added other_days/{new_day}"),
    ];
    let mut paths = paths;
    paths.sort();
    wanted.sort();
    assert_eq!(paths, wanted);
    taken(&mut plan, found);
    let lent = plan.tools.iter().find(|tool| tool.id == jigsaw).unwrap();
    assert_eq!((lent.tool_source, lent.lender.as_str()), (ToolSource::Borrowed, "Tavi"));
    let heat_gun = plan.tools.iter().find(|tool| tool.name == "Heat gun").unwrap();
    assert_eq!((heat_gun.tool_source, heat_gun.lender.as_str()), (ToolSource::Borrowed, "Tavi"));
    // What was taken is taken.
    assert_eq!(answer.applied(&plan), plan);
}

#[test]
fn an_answer_changes_neither_names_nor_skill_nor_the_days_of_others() {
    let (plan, helper) = tavi();
    let jorun = plan.helpers.iter().find(|other| other.id != helper.id).unwrap().id;
    let of_jorun = plan.other_days.iter().find(|day| day.helper == Some(jorun)).unwrap();
    let mut answer = answer();
    answer.helper = Some(Helper { is_skilled: true, ..helper.clone() });
    answer.tools.clear();
    answer.other_days = vec![OtherDay { first_day: None, ..*of_jorun }];
    assert_eq!(answer.applied(&plan), plan);
    // One that names nobody of the plan changes nobody, and says so.
    answer.helper = Some(Helper { name: "Runa".into(), sunday_hours: Some(24.0), ..helper });
    assert_eq!(answer.applied(&plan), plan);
    assert_eq!(answer.of_nothing(&plan), ["Runa"]);
}

#[test]
fn a_day_that_is_taken_back_is_gone() {
    let (plan, helper) = tavi();
    let day = *plan.other_days.iter().find(|day| day.helper == Some(helper.id)).unwrap();
    let mut answer = Answer { helper: Some(helper), ..Answer::default() };
    answer.put_day(OtherDay { first_day: None, ..day });
    let found = differences(&plan, &answer.applied(&plan));
    assert!(matches!(found.as_slice(), [one] if one.kind == DifferenceKind::Removed), "{found:?}");
}

/// Whoever keeps the link as a plan of their own and changes it there can send that back as well.
#[test]
fn a_helpers_own_copy_comes_back_without_touching_what_it_does_not_tell() {
    let (plan, helper) = tavi();
    let mut copy = Document::from_value(for_tavi()).unwrap().plan;
    copy.helpers[0].saturday_hours = Some(9.0);
    let back = Parcel::for_helper(&Document::new(&copy).write(&copy), helper.id);
    let found = differences(&plan, &back.laid_over(&plan));
    let paths: Vec<&str> = found.iter().map(|difference| difference.path.as_str()).collect();
    assert_eq!(paths, [format!("helpers/{}/saturday_hours", helper.id)]);
}

/// The texts that `data/share/links-1.txt` has of these, once they were made.
#[test]
fn an_answer_of_a_helper_comes_back() {
    let (text, answer) = (seal(&Parcel::Answer(answer())).unwrap(), answer());
    println!("answer of a helper: {} characters\n{}\n{text}", text.len(), answer.to_plain());
    let Ok(Parcel::Answer(back)) = open(&text) else { panic!("no answer") };
    assert_eq!(as_told(&back.to_plain()), as_told(&answer.to_plain()));
    let tells: Vec<&str> = told(&Parcel::Answer(answer)).iter().map(|told| told.key).collect();
    for wanted in ["share-tells-own-hours", "share-tells-own-days", "share-tells-lent", "share-tells-nothing-of-yours"]
    {
        assert!(tells.contains(&wanted), "{tells:?}");
    }
}
