//! Plans side by side: small ones worked out by hand, and the example against itself and a changed copy.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::compare::{Assumption, By, Cell, CompareTask, Compared, Had, Line, Row, Under, assumed, compare};
use kerbstead_core::explain::Figure;
use kerbstead_core::plan::{
    Belonging, Calendar, Climate, Cost, CostPhase, Draw, Estimate, Group, Item, Money, Obtain, Outlet, Panel, Per,
    Plain, Plan, Purse, Quantity, Stay, Store, Tank, Vehicle, WaterUse, demo_plan,
};
use kerbstead_core::task::Task;
use kerbstead_core::{Balance, Verdict, assess};

const AS_OF: Date = date(2027, 3, 1);

fn money(text: &str) -> Money {
    text.parse().unwrap()
}

fn range(low: &str, likely: &str, high: &str) -> Estimate<Money> {
    Estimate::Range { low: money(low), likely: money(likely), high: money(high) }
}

/// A month at home with a rent of 300 on the 10th, then ten nights with 100 for food on the 5th, after a way of 100 km
/// for 16. A bed for 200, at most 300, on the 20th of March; a sofa that brings 50 on the 15th, or not.
fn plain() -> Plan {
    let bed = Item {
        id: 1,
        name: "Bed".into(),
        group: Group::Sleeping,
        needed_on: Some(date(2027, 3, 20)),
        ..Item::default()
    };
    let sofa = Belonging {
        id: 10,
        name: "Sofa".into(),
        price: Some(money("50").into()),
        on: Some(date(2027, 3, 15)),
        chance_percent: Some(60.into()),
        ..Belonging::default()
    };
    let cost = |id, amount: &str, day, phase| Cost {
        id,
        amount: Some(money(amount).into()),
        day_of_month: Some(day),
        phase,
        ..Cost::default()
    };
    Plan {
        calendar: Calendar { starts_on: Some(AS_OF), leaves_on: Some(date(2027, 4, 1)), ..Calendar::default() },
        purse: Purse { opening_cash: Some(money("1000")), ..Purse::default() },
        vehicle: Vehicle {
            fuel_l_per_100_km: Some(8.0.into()),
            fuel_price_per_l: Some(money("2").into()),
            ..Vehicle::default()
        },
        kit: vec![Item { unit_price: Some(range("200", "200", "300")), ..bed }],
        belongings: vec![sofa],
        costs: vec![cost(20, "300", 10, CostPhase::Home), cost(21, "100", 5, CostPhase::Road)],
        stays: vec![Stay { id: 30, nights: 10, drive_km: Some(100.0.into()), ..Stay::default() }],
        ..Plan::default()
    }
}

/// The same with a bed for 230 and a sofa that is sold for certain.
fn certain() -> Plan {
    let mut plan = plain();
    plan.kit[0].unit_price = Some(money("230").into());
    plan.belongings[0].chance_percent = None;
    plan
}

fn row(compared: &Compared, line: Line, balance: Option<Balance>) -> &Row {
    compared.rows.iter().find(|row| row.line == line && row.balance == balance).unwrap()
}

fn under(compared: &Compared, assumption: Assumption) -> &Under {
    compared.under.iter().find(|under| under.assumption == assumption).unwrap()
}

fn amounts(row: &Row) -> Vec<Money> {
    row.cells.iter().map(|cell| cell.amount.unwrap()).collect()
}

#[test]
fn lines_are_those_of_the_assessments_and_say_which_is_better() {
    let compared = compare(&[plain(), certain()], AS_OF);
    assert_eq!((compared.plans, compared.as_of, compared.same_currency), (2, AS_OF, true));
    // 1000 less rent, bed, fuel and food, and the sofa's 50 more.
    let cash = row(&compared, Line::CashAtEnd, None);
    assert_eq!(amounts(cash), [money("434"), money("404")]);
    assert_eq!((cash.differs, cash.best.as_slice()), (true, &[true, false][..]));
    assert_eq!(cash.figure(1), Some(Figure::Money(money("404"))));
    let to_pay = row(&compared, Line::KitToPay, None);
    assert_eq!((amounts(to_pay), to_pay.best.as_slice()), (vec![money("200"), money("230")], &[true, false][..]));
    // A month at home costs both 300, and the last day of both is the 10th of April.
    let home = row(&compared, Line::MonthAtHome, None);
    assert_eq!((amounts(home), home.differs), (vec![money("300"), money("300")], false));
    assert!(home.best.iter().all(|best| !best));
    assert_eq!(row(&compared, Line::Ends, None).figure(0), Some(Figure::Date(date(2027, 4, 10))));
    // Neither falls below the floor.
    let first_short = row(&compared, Line::FirstShort, Some(Balance::Money));
    assert!(first_short.cells.iter().all(|cell| cell.is_never) && !first_short.differs);
    // Those that differ come first.
    let differs: Vec<bool> = compared.rows.iter().map(|row| row.differs).collect();
    assert!(differs.is_sorted_by(|one, other| one >= other) && differs[0] && !differs[differs.len() - 1]);
}

#[test]
fn every_line_says_what_the_assessment_says() {
    let (plan, as_of) = (demo_plan(), date(2027, 3, 10));
    let (compared, assessment) = (compare(&[plan.clone(), plan], as_of), assess(&demo_plan(), as_of));
    let margins = [
        (Balance::Money, assessment.money.standing.margin),
        (Balance::Power, assessment.power.standing.margin),
        (Balance::Water, assessment.water.standing.margin),
        (Balance::Days, assessment.days.standing.margin),
        (Balance::Space, assessment.space.standing.margin),
        (Balance::Load, assessment.load.standing.margin),
    ];
    for (balance, margin) in margins {
        assert_eq!(row(&compared, Line::Margin, Some(balance)).figure(0), margin.map(Figure::from), "{balance:?}");
    }
    for (balance, verdict) in assessment.verdicts() {
        assert_eq!(row(&compared, Line::Verdict, Some(balance)).cells[0].verdict, Some(verdict));
    }
    let measures = [
        (Line::KitMass, assessment.load.parts.unwrap().things_kg, Quantity::MassKg),
        (Line::SpareMass, assessment.load.spare_kg.unwrap(), Quantity::MassKg),
        (Line::FreshLitres, 45.0, Quantity::VolumeL),
        (Line::StoresHold, 700.0, Quantity::EnergyWh),
        (Line::HoursLeft, assessment.days.hours_left, Quantity::Hours),
        (Line::LeftOver, assessment.space.left_over_l, Quantity::VolumeL),
    ];
    for (line, value, quantity) in measures {
        assert_eq!(row(&compared, line, None).figure(0), Some(Figure::of(value, quantity)), "{line:?}");
    }
    let done = assessment.days.finish.unwrap();
    assert_eq!(row(&compared, Line::Done, None).figure(1), Some(Figure::Moment(done)));
}

#[test]
fn each_assumption_is_worked_out_and_says_whether_it_turns_the_plain_case() {
    let compared = compare(&[plain(), certain()], AS_OF);
    let order: Vec<Assumption> = compared.under.iter().map(|under| under.assumption).collect();
    assert_eq!(order, Assumption::ALL);
    let cases = [
        // The first is better by 30, until its bed is dear or its sofa stays.
        (Assumption::AsPlanned, ["434", "404"], [false, false], [true, false], false),
        (Assumption::DearPurchases, ["334", "404"], [true, false], [false, true], true),
        (Assumption::SalesFail, ["384", "404"], [true, false], [false, true], true),
        (Assumption::MuchUsed, ["434", "404"], [false, false], [true, false], false),
        (Assumption::DullerSky, ["434", "404"], [false, false], [true, false], false),
        // A fifth of 116 more.
        (Assumption::DearRunning, ["410.80", "380.80"], [true, true], [true, false], false),
        // From the 15th to the 24th of April: a second rent, and no food on the 5th.
        (Assumption::LeavingLater, ["234", "204"], [true, true], [true, false], false),
    ];
    for (assumption, cash, changed, best, turns) in cases {
        let under = under(&compared, assumption);
        let at_end: Vec<_> = under.outcomes.iter().map(|outcome| outcome.cash_at_end.unwrap()).collect();
        assert_eq!(at_end, cash.map(money), "{assumption:?}");
        assert_eq!(
            under.outcomes.iter().map(|outcome| outcome.is_changed).collect::<Vec<_>>(),
            changed,
            "{assumption:?}"
        );
        assert_eq!((under.best.as_slice(), under.turns, under.by), (&best[..], turns, By::Cash), "{assumption:?}");
    }
}

#[test]
fn a_balance_that_falls_short_counts_more_than_cash() {
    // With 600, 34 are there at the end; with a floor of 100 that is too little. The other has less cash and no floor.
    let mut short = plain();
    short.purse.opening_cash = Some(money("600"));
    short.purse.floor = money("100");
    let mut poor = plain();
    poor.purse.opening_cash = Some(money("590"));
    let compared = compare(&[short, poor], AS_OF);
    let verdict = row(&compared, Line::Verdict, Some(Balance::Money));
    assert_eq!(verdict.cells[0].verdict, Some(Verdict::FallsShort));
    assert_eq!((verdict.best.as_slice(), verdict.figure(0)), (&[false, true][..], None));
    let first_short = row(&compared, Line::FirstShort, Some(Balance::Money));
    assert_eq!((first_short.cells[0].on, first_short.cells[1].is_never), (Some(date(2027, 4, 5)), true));
    assert_eq!(first_short.best, [false, true]);
    let plain = under(&compared, Assumption::AsPlanned);
    assert_eq!((plain.by, plain.best.as_slice()), (By::Short, &[false, true][..]));
    assert_eq!(plain.outcomes[0].short, plain.outcomes[1].short + 1);
    // If the sofa stays, the other falls short too, and the cash decides.
    let failed = under(&compared, Assumption::SalesFail);
    assert_eq!((failed.by, failed.best.as_slice(), failed.turns), (By::Cash, &[true, false][..], true));
}

#[test]
fn where_one_plan_does_not_know_a_line_nothing_is_better() {
    let mut unknown = plain();
    unknown.purse.opening_cash = None;
    let compared = compare(&[plain(), unknown, certain()], AS_OF);
    let cash = row(&compared, Line::CashAtEnd, None);
    assert_eq!((cash.cells[1], cash.differs, cash.best.as_slice()), (Cell::default(), true, &[false; 3][..]));
    // What the kit costs is known all the same; two are alike, and better than the third.
    assert_eq!(row(&compared, Line::KitToPay, None).best, [true, true, false]);
    // The balances that all know are alike, and cash is not known of all.
    assert!(compared.under.iter().all(|under| under.by == By::Nothing && under.best == [false; 3]));
}

#[test]
fn money_of_different_currencies_is_not_compared() {
    let foreign = Plan { currency: "USD".into(), ..certain() };
    let compared = compare(&[plain(), foreign], AS_OF);
    assert!(!compared.same_currency);
    for row in compared.rows.iter().filter(|row| row.line.is_money(row.balance)) {
        assert!(!row.differs && row.best == [false, false], "{row:?}");
        assert_eq!(row.cells.len(), 2);
    }
    assert!(compared.under.iter().all(|under| under.by != By::Cash));
}

#[test]
fn what_is_dearer_is_so_from_the_day_asked_on() {
    // On the 3rd of April the way is driven, and nobody said what came of the sofa, which so does not count.
    let compared = compare(&[plain(), certain()], date(2027, 4, 3));
    let cash = |assumption| under(&compared, assumption).outcomes[0].cash_at_end.unwrap();
    assert_eq!(cash(Assumption::AsPlanned), money("384"));
    assert_eq!(cash(Assumption::DearRunning), money("364"));
    assert!(!under(&compared, Assumption::LeavingLater).outcomes[0].is_changed, "the van has left");
}

#[test]
fn much_use_and_a_duller_sky_change_what_they_say() {
    let use_of = |estimate| WaterUse { id: 40, litres_per_day: estimate, per: Per::Van, ..WaterUse::default() };
    let can = Item {
        id: 2,
        obtain: Obtain::Owned,
        tank: Some(Tank { capacity_l: 100.0, opening_percent: Some(100.0), ..Tank::default() }),
        ..Item::default()
    };
    let mut plan = plain();
    plan.kit.push(can);
    // Eight litres a day are 80 in ten days; twelve would be 120.
    plan.water_uses = vec![use_of(Estimate::Range { low: 6.0, likely: 8.0, high: 12.0 })];
    let compared = compare(&[plan.clone(), plan.clone()], AS_OF);
    let litres = row(&compared, Line::LitresADay, None);
    assert_eq!(litres.figure(0), Some(Figure::of(8.0, Quantity::VolumeL)));
    let short = |assumption| under(&compared, assumption).outcomes[0].short;
    assert_eq!(short(Assumption::MuchUsed), short(Assumption::AsPlanned) + 1);

    let lamp = Draw { power_w: 5.0.into(), outlet: Outlet::Dc, hours_per_day: Some(4.0.into()), ..Draw::default() };
    let owned = |id| Item { id, obtain: Obtain::Owned, ..Item::default() };
    plan.kit.push(Item { store: Some(Store { usable_wh: 500.0, ..Store::default() }), ..owned(3) });
    plan.kit.push(Item { panel: Some(Panel { peak_w: 100.0, ..Panel::default() }), ..owned(4) });
    plan.kit.push(Item { draw: Some(lamp), ..owned(5) });
    plan.climate = Climate { latitude_deg: Some(45.0), ..Climate::default() };
    let sun = |plan: &Plan| assess(plan, AS_OF).power.panels[0].wh_per_day;
    let share = sun(&assumed(&plan, Assumption::DullerSky, AS_OF, &[])) / sun(&plan);
    assert!((share - 0.8).abs() < 0.02, "{share}"); // cells are a little cooler in less light
}

#[test]
fn things_are_matched_by_id_between_kin_and_by_name_between_strangers() {
    let thing = |id, name: &str, quantity| Item {
        id,
        name: name.into(),
        quantity,
        unit_price: Some(money("7.50").into()),
        ..Item::default()
    };
    let here = Plan {
        kit: vec![thing(1, "Can", 2), thing(2, "Bowl", 1), thing(3, "Lamp", 1), thing(4, "Rope", 1)],
        ..Plan::default()
    };
    // A copy: the bowl has another name, the lamp is left out, there is one can more, and a chair is new.
    let mut copy = here.clone();
    copy.kit[0].quantity = 3;
    copy.kit[1].name = "Dish".into();
    copy.kit[2].obtain = Obtain::LeftOut;
    copy.kit[3].obtain = Obtain::Borrowed;
    copy.kit.push(thing(9, "Chair", 1));
    let names = |compared: &Compared| compared.only.iter().map(|row| row.name.clone()).collect::<Vec<_>>();
    let compared = compare(&[here.clone(), copy], AS_OF);
    assert_eq!(names(&compared), ["Can", "Lamp", "Chair"]);
    let had = |quantity, price: &str| Had { quantity, price: Some(money(price)) };
    assert_eq!(compared.only[0].had, [had(2, "15"), had(3, "22.50")]);
    assert_eq!(compared.only[2].had, [Had::default(), had(1, "7.50")]);
    // A stranger's: the same ids are other things, and a bowl is a bowl whatever its id.
    let other_group = Item { group: Group::Tools, ..thing(4, "Rope", 1) };
    let stranger = Plan {
        kit: vec![thing(1, "Kettle", 1), thing(2, "Lamp", 1), thing(3, " bowl", 1), other_group],
        ..Plan::default()
    };
    let compared = compare(&[here, stranger], AS_OF);
    assert_eq!(names(&compared), ["Can", "Rope", "Kettle", "Rope"]);
}

#[test]
fn the_example_beside_itself_differs_in_nothing() {
    let as_of = date(2027, 3, 10);
    let compared = compare(&[demo_plan(), demo_plan(), demo_plan()], as_of);
    assert!(compared.rows.iter().all(|row| !row.differs && !row.best.contains(&true)));
    assert!(compared.only.is_empty() && compared.same_currency);
    for under in &compared.under {
        assert_eq!((under.by, under.turns, under.best.as_slice()), (By::Nothing, false, &[false; 3][..]));
        assert!(under.outcomes.windows(2).all(|pair| pair[0] == pair[1]));
        assert_eq!(under.outcomes[0].is_changed, under.assumption != Assumption::AsPlanned, "{:?}", under.assumption);
    }
}

#[test]
fn the_example_beside_a_copy_without_its_cool_box() {
    let as_of = date(2027, 3, 10);
    let (here, mut there) = (demo_plan(), demo_plan());
    let cool_box = there.kit.iter_mut().find(|item| item.name == "Cool box").unwrap();
    cool_box.obtain = Obtain::LeftOut;
    let compared = compare(&[here, there], as_of);
    assert_eq!(compared.only.len(), 1);
    assert_eq!((compared.only[0].name.as_str(), compared.only[0].had[1]), ("Cool box", Had::default()));
    // 219 with 20 percent of tax in it are not paid; the 110 of its sale in September do not come.
    let to_pay = row(&compared, Line::KitToPay, None);
    assert_eq!(to_pay.cells[0].amount.unwrap() - to_pay.cells[1].amount.unwrap(), money("219"));
    let cash = row(&compared, Line::CashAtEnd, None);
    assert_eq!(cash.cells[1].amount.unwrap() - cash.cells[0].amount.unwrap(), money("109"));
    let mass = row(&compared, Line::SpareMass, None);
    assert!((mass.cells[1].value.unwrap() - mass.cells[0].value.unwrap() - 11.5).abs() < 1e-9);
    assert!(compared.rows[0].differs && row(&compared, Line::DrawnADay, None).differs);
    assert!(!row(&compared, Line::Leaves, None).differs);
}

#[test]
fn it_comes_step_by_step_and_goes_as_a_plain_value() {
    let mut task = CompareTask::new(&[plain(), certain()], AS_OF);
    let (mut shares, mut told) = (vec![task.step()], 0);
    while shares[shares.len() - 1] < 1.0 {
        told += usize::from(task.so_far().is_some());
        shares.push(task.step());
    }
    assert_eq!((shares.len(), told), (14, 6)); // seven assumptions of two plans; the last is the answer
    assert!(shares.is_sorted());
    let compared = compare(&[plain(), certain()], AS_OF);
    assert_eq!(Compared::from_plain(&task.answer()).unwrap(), compared);
}

#[test]
fn one_plan_none_and_too_many_are_borne() {
    assert_eq!(compare(&[], AS_OF), Compared { as_of: AS_OF, same_currency: true, ..Compared::default() });
    let alone = compare(&[plain()], AS_OF);
    assert!(alone.rows.iter().all(|row| !row.differs) && alone.under.len() == Assumption::ALL.len());
    assert_eq!(compare(&vec![plain(); 6], AS_OF).plans, 4);
    let empty = compare(&[Plan::default(), Plan::default()], AS_OF);
    assert!(empty.rows.iter().all(|row| !row.differs));
}
