//! Data and hours of work of plans, each through the whole assessment.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops at what it did not expect, and means exact values where it says so"
)]

use jiff::civil::{Date, date};
use kerbstead_core::money::{self, FlowGroup};
use kerbstead_core::moves::{Change, Found, tried};
use kerbstead_core::plan::{
    BeyondAllowance, Calendar, DataContract, DataTask, DataUse, Draw, DrawDays, Estimate, Group, Income, Item, Mode,
    Money, Offer, Outlet, Plan, Signal, Stay, Store, WeekDay, WeekdayKind,
};
use kerbstead_core::run::{Timeline, walk};
use kerbstead_core::signal::hours::Cause;
use kerbstead_core::signal::{self, Around, Finding, Report};
use kerbstead_core::{Again, Margin, Moment, Outcome, Say, Severity, Verdict, assess};

/// A Monday.
const DAY: Date = date(2027, 3, 1);

fn asked(plan: &Plan) -> Report {
    assess(plan, DAY).signal
}

/// Ninety nights where the signal is good; nothing else.
fn trip() -> Plan {
    Plan {
        calendar: Calendar { starts_on: Some(DAY), leaves_on: Some(DAY), ..Calendar::default() },
        stays: vec![stay(900, 90, Signal::Good)],
        ..Plan::default()
    }
}

fn stay(id: u32, nights: u32, signal: Signal) -> Stay {
    Stay {
        id,
        place: format!("Place {id}"),
        nights,
        working_days_per_week: 5,
        offers: Offer { signal, ..Offer::default() },
        ..Stay::default()
    }
}

/// So many pieces a day, of 100 MB each.
fn pieces(id: u32, amount: f64) -> DataUse {
    DataUse {
        id,
        name: format!("Use {id}"),
        data_task: DataTask::Other,
        uses_per_day: amount.into(),
        each_mb: Some(100.0.into()),
        ..DataUse::default()
    }
}

fn contract(id: u32, allowance_gb: f64, price: i64) -> DataContract {
    DataContract {
        id,
        name: format!("Contract {id}"),
        allowance_gb: Some(allowance_gb),
        period_price: Some(Money::whole(price)),
        in_use: true,
        ..DataContract::default()
    }
}

fn with_data(amount: f64, contracts: Vec<DataContract>) -> Plan {
    Plan { data_uses: vec![pieces(1, amount)], data_contracts: contracts, ..trip() }
}

/// Six hours from nine on working days, at 20 an hour.
fn with_work(stays: Vec<Stay>) -> Plan {
    let mut plan = Plan { stays, ..trip() };
    plan.work.work_hours = Some(6.0);
    plan.work.pay_per_hour = Some(Money::whole(20));
    plan
}

fn keys(report: &Report) -> Vec<&'static str> {
    report.standing.findings.iter().map(Say::key).collect()
}

#[test]
fn there_is_no_verdict_without_data_and_work_or_without_a_road() {
    let nothing = asked(&trip()).standing;
    let missing: Vec<&str> = nothing.missing.iter().map(kerbstead_core::plan::Path::as_str).collect();
    assert_eq!((nothing.verdict, missing), (Verdict::Unknown, vec!["data_uses", "work/work_hours"]));
    let mut at_home = with_data(1.0, vec![contract(10, 5.0, 9)]);
    at_home.stays.clear();
    assert_eq!(asked(&at_home).standing.missing, ["stays".into()]);
    assert_eq!(asked(&with_data(1.0, vec![contract(10, 50.0, 9)])).standing.verdict, Verdict::Holds);
    assert_eq!(asked(&with_work(trip().stays)).standing.verdict, Verdict::Holds);
}

/// 31 days of March at 100 MB are 3.1 GB.
#[test]
fn an_allowance_that_lasts_has_left_what_is_left_in_its_tightest_month() {
    let report = asked(&with_data(1.0, vec![contract(10, 4.0, 9)]));
    assert_eq!(report.standing.margin, Some(Margin::Data(0.9)));
    assert_eq!((report.standing.verdict, report.standing.first_short), (Verdict::Holds, None));
    let told: Vec<_> = report.periods.iter().map(|period| (period.from, period.used_gb)).collect();
    assert_eq!(told, [(DAY, 3.1), (date(2027, 4, 1), 3.0), (date(2027, 5, 1), 2.9)]);
    let month = report.busiest.unwrap();
    assert_eq!((month.from, month.days, month.gb), (DAY, 31, [3.1, 3.1, 3.1]));
}

/// 3 GB at 100 MB a day: used up on the evening of the 30th; the 31st lacks 100 MB, in April nothing is missing.
#[test]
fn data_runs_out_on_its_day_and_comes_again_with_the_next_period() {
    let report = asked(&with_data(1.0, vec![contract(10, 3.0, 9)]));
    let expected = Finding::RunsOut { on: date(2027, 3, 31), missing_gb: 0.1 };
    assert_eq!(report.standing.findings, [expected]);
    assert_eq!((report.standing.verdict, report.standing.margin), (Verdict::FallsShort, Some(Margin::Data(-0.1))));
    assert_eq!(report.standing.first_short, Some(Moment::day(date(2027, 3, 31))));
    assert_eq!(
        (report.days[29].left_gb, report.days[30].missing_gb, report.days[31].left_gb),
        (Some(0.0), 0.1, Some(2.9))
    );
    // What is over on the day asked is not judged.
    let plan = with_data(1.0, vec![contract(10, 3.0, 9)]);
    assert_eq!(assess(&plan, date(2027, 4, 1)).signal.standing.verdict, Verdict::Holds);
}

/// A card of ten days, of a GB: ten days of 100 MB just fit.
#[test]
fn a_card_is_bought_again_every_so_many_days() {
    let card = DataContract { period_days: Some(10), ..contract(10, 1.0, 5) };
    let assessment = assess(&with_data(1.0, vec![card]), DAY);
    assert_eq!(assessment.signal.standing.margin, Some(Margin::Data(0.0)));
    assert_eq!(assessment.signal.periods.len(), 9);
    let paid: Vec<_> = assessment.money.flows.iter().filter(|flow| flow.group == FlowGroup::Data).collect();
    assert_eq!((paid.len(), paid[1].on, paid[1].amount), (9, date(2027, 3, 11), Money::whole(-5)));
    // 5 for ten days is 15.22 in an average month of 30.436875.
    let line = assessment.money.month.unwrap().lines.into_iter().find(|line| line.group == FlowGroup::Data).unwrap();
    assert_eq!((line.source, line.home, line.road), (10, Money::ZERO, "15.22".parse().unwrap()));
}

#[test]
fn a_contract_that_is_not_in_use_neither_costs_nor_gives() {
    let mut plan = with_data(1.0, vec![DataContract { in_use: false, ..contract(10, 50.0, 9) }]);
    let assessment = assess(&plan, DAY);
    assert_eq!(keys(&assessment.signal), ["signal-no-contract"]);
    assert_eq!(assessment.signal.standing.verdict, Verdict::FallsShort);
    assert_eq!(
        (assessment.signal.standing.margin, assessment.signal.standing.first_short),
        (Some(Margin::Data(-9.0)), Some(Moment::day(DAY)))
    );
    assert!(assessment.money.flows.is_empty());
    plan.data_contracts[0].in_use = true;
    assert_eq!(assess(&plan, DAY).money.flows.len(), 3);
}

#[test]
fn contracts_cost_from_the_day_of_leaving_to_the_end_of_the_route() {
    let mut plan = with_data(1.0, vec![contract(10, 50.0, 12)]);
    plan.calendar.leaves_on = Some(date(2027, 3, 31));
    let flows = assess(&plan, DAY).money.flows;
    let days: Vec<Date> = flows.iter().map(|flow| flow.on).collect();
    // From the 31st: the last of each month that is shorter, and no month after the route.
    assert_eq!(days, [date(2027, 3, 31), date(2027, 4, 30), date(2027, 5, 31)]);
}

/// 2 GB, then 2 a GB at 100 MB a day: from the 21st of March on 20 cents a day.
#[test]
fn data_beyond_is_paid_by_the_day_and_the_money_knows_it() {
    let beyond = BeyondAllowance::Costs;
    let dear = DataContract { beyond, per_gb: Some(Money::whole(2)), ..contract(10, 2.0, 9) };
    let assessment = assess(&with_data(1.0, vec![dear]), DAY);
    let [Finding::PaidBeyond { on, amount, a_day, contract }] = assessment.signal.standing.findings[..] else {
        unreachable!("{:?}", assessment.signal.standing.findings)
    };
    // 1.1, 1.0 and 0.9 GB beyond.
    assert_eq!((on, contract), (date(2027, 3, 21), 10));
    assert_eq!((amount, a_day), (Money::whole(6), "0.20".parse().unwrap()));
    assert_eq!(
        (assessment.signal.standing.verdict, assessment.signal.standing.margin),
        (Verdict::Tight, Some(Margin::Data(0.0)))
    );
    let paid: Money = assessment.money.flows.iter().map(|flow| flow.amount).sum();
    assert_eq!(paid, Money::whole(-(3 * 9 + 6)));
    let month = assessment.money.month.unwrap();
    // 9 and 6 over 90 days.
    assert_eq!(month.road, "11.03".parse().unwrap());
}

#[test]
fn cents_of_data_beyond_add_up_however_small_the_days_are() {
    let beyond = BeyondAllowance::Costs;
    let dear = DataContract { beyond, per_gb: Some("0.33".parse().unwrap()), ..contract(10, 0.0, 0) };
    let flows = assess(&with_data(0.1, vec![dear]), DAY).money.flows;
    // 90 days of 10 MB are 0.9 GB: 0.297, which is 0.30.
    assert_eq!(flows.iter().map(|flow| flow.amount).sum::<Money>(), "-0.30".parse().unwrap());
}

/// 128 kbit/s are 57.6 MB an hour: enough for voice (72 MB an hour) never, for what comes in pieces always.
#[test]
fn a_slow_rate_counts_as_far_as_it_is_of_use() {
    let slowed =
        |kbit_s| DataContract { beyond: BeyondAllowance::Slowed, slow_kbit_s: Some(kbit_s), ..contract(10, 2.0, 9) };
    let all = asked(&with_data(1.0, vec![slowed(128.0)]));
    assert_eq!((keys(&all), all.standing.verdict), (vec!["signal-slow-for-all"], Verdict::Tight));
    let voice = DataUse { id: 2, data_task: DataTask::CallVoice, ..DataUse::default() };
    let mut some = with_data(1.0, vec![slowed(128.0)]);
    some.data_uses.push(voice.clone());
    let found = asked(&some).standing.findings;
    assert!(matches!(found[0], Finding::SlowBeyond { serves: 1, of: 2, kbit_s: 128.0, .. }), "{found:?}");
    // Where it is enough for nothing, data runs out.
    let none = asked(&Plan { data_uses: vec![voice], data_contracts: vec![slowed(128.0)], ..trip() });
    assert_eq!((keys(&none), none.standing.verdict), (vec!["signal-runs-out"], Verdict::FallsShort));
    // And what does not come through in a day is missing all the same: 16 hours of 1 kbit/s are 7 MB.
    let crawling = asked(&with_data(1.0, vec![slowed(1.0)]));
    assert!(keys(&crawling).contains(&"signal-runs-out"));
}

#[test]
fn the_most_that_may_be_used_is_told_apart() {
    let mut plan = with_data(1.0, vec![contract(10, 4.0, 9)]);
    plan.data_uses[0].uses_per_day = Estimate::Range { low: 0.5, likely: 1.0, high: 2.0 };
    let report = asked(&plan);
    assert_eq!(keys(&report), ["signal-may-run-out"]);
    assert_eq!((report.standing.verdict, report.standing.first_short), (Verdict::Tight, None));
    assert_eq!(report.busiest.unwrap().gb, [1.55, 3.1, 6.2]);
}

#[test]
fn data_is_used_on_its_days() {
    let mut plan = with_data(1.0, vec![contract(10, 50.0, 9)]);
    for (days, gb) in
        [(DrawDays::Working, 2.3), (DrawDays::Free, 0.9), (DrawDays::Driving, 0.1), (DrawDays::Standing, 3.0)]
    {
        plan.data_uses[0].data_days = days;
        plan.stays[0].drive_hours = Some(2.0.into());
        assert_eq!(asked(&plan).busiest.unwrap().gb[1], gb, "{days:?}");
    }
}

#[test]
fn the_usual_figures_stand_where_nobody_stated_any() {
    let call = DataUse { id: 1, data_task: DataTask::CallStandard, ..DataUse::default() };
    let report = asked(&Plan { data_uses: vec![call], data_contracts: vec![contract(10, 900.0, 9)], ..trip() });
    // 1.8 Mbit/s both ways for an hour are 810 MB.
    assert_eq!(report.days[0].likely_gb, 0.81);
    assert_eq!(report.busiest.unwrap().gb[1], 25.11);
}

#[test]
fn a_cheaper_set_of_the_list_is_found_for_the_busiest_month() {
    let other = |id, gb, price| DataContract { in_use: false, ..contract(id, gb, price) };
    let plan = with_data(1.0, vec![contract(10, 20.0, 25), other(11, 2.0, 6), other(12, 2.0, 7), other(13, 3.0, 14)]);
    let report = asked(&plan);
    let cheapest = report.cheapest.unwrap();
    assert_eq!(
        (cheapest.contracts, cheapest.price, cheapest.in_use),
        (vec![11, 12], Money::whole(13), Some(Money::whole(25)))
    );
    let expected =
        Finding::CheaperSet { saves: Money::whole(12), contract: 11, names: "Contract 11, Contract 12".into() };
    assert_eq!(report.standing.findings, [expected]);
    assert_eq!(report.standing.verdict, Verdict::Holds);
}

#[test]
fn unlimited_data_leaves_nothing_to_count() {
    let unlimited = DataContract { allowance_gb: None, ..contract(10, 0.0, 40) };
    let standing = asked(&with_data(50.0, vec![unlimited])).standing;
    assert_eq!((standing.verdict, standing.margin, standing.findings.len()), (Verdict::Holds, None, 0));
}

/// Five working days of six hours at each of the places.
#[test]
fn hours_lack_what_the_places_lack() {
    let weeks = [Signal::Good, Signal::None, Signal::Weak, Signal::Unknown];
    let stays = weeks.into_iter().zip(1..).map(|(signal, id)| stay(id, 7, signal)).collect();
    let report = asked(&with_work(stays));
    let work = report.work.as_ref().unwrap();
    assert_eq!((work.wanted_hours, work.sure_hours, work.lost_hours()), (120.0, 30.0, 60.0));
    assert_eq!((work.certain, work.unknown), (Money::whole(1_200), Money::whole(600)));
    assert_eq!(
        (work.hours(Cause::NoSignal), work.hours(Cause::WeakSignal), work.hours(Cause::Unknown)),
        (30.0, 30.0, 30.0)
    );
    let places: Vec<u32> = work.places.iter().map(|of| of.place).collect();
    assert_eq!((places, work.days.len()), (vec![2, 3, 4], 15));
    assert_eq!(
        keys(&report),
        ["signal-hours-without-signal", "signal-hours-weak", "signal-hours-unknown", "signal-nothing-powered"]
    );
    // The Monday of the second week, at nine.
    assert_eq!(report.standing.first_short, Some(Moment::hours_into(date(2027, 3, 8), 9.0)));
    assert_eq!((report.standing.verdict, report.standing.margin), (Verdict::FallsShort, None));
}

#[test]
fn a_weak_signal_may_be_enough_and_some_work_needs_none() {
    let mut plan = with_work(vec![stay(1, 7, Signal::Weak)]);
    plan.work.weak_is_enough = true;
    assert_eq!(asked(&plan).standing.verdict, Verdict::Holds);
    plan.stays[0].offers.signal = Signal::None;
    assert_eq!(asked(&plan).standing.verdict, Verdict::FallsShort);
    plan.work.offline = true;
    assert_eq!(asked(&plan).standing.verdict, Verdict::Holds);
}

#[test]
fn places_of_which_nobody_knows_the_signal_put_pay_at_risk_and_no_verdict_falls() {
    let report = asked(&with_work(vec![stay(1, 7, Signal::Unknown), stay(2, 7, Signal::Unknown)]));
    let found = &report.standing.findings[0];
    assert!(
        matches!(found, Finding::HoursUnknown { hours: 60.0, places: 2, place: 1, is_stay: true, .. }),
        "{found:?}"
    );
    assert_eq!((report.standing.verdict, report.standing.first_short), (Verdict::Tight, None));
}

#[test]
fn the_days_of_a_repeating_week_are_places_too() {
    let monday = WeekDay { id: 5, kind: WeekdayKind::Working, ..WeekDay::default() };
    let mut plan = with_work(Vec::new());
    plan.calendar = Calendar { mode: Mode::Week, ends_on: Some(date(2027, 3, 15)), ..plan.calendar };
    plan.week = vec![WeekDay { offers: Offer { signal: Signal::None, ..Offer::default() }, ..monday }];
    let report = asked(&plan);
    let found = &report.standing.findings[0];
    assert!(matches!(found, Finding::HoursLost { hours: 12.0, place: 5, is_stay: false, .. }), "{found:?}");
}

fn laptop(power_w: f64) -> Item {
    let draw = Draw { power_w: power_w.into(), outlet: Outlet::Dc, ..Draw::default() };
    Item { id: 50, name: "Laptop".into(), group: Group::Work, draw: Some(draw), ..Item::default() }
}

fn store(usable_wh: f64) -> Item {
    Item { id: 51, name: "Store".into(), store: Some(Store { usable_wh, ..Store::default() }), ..Item::default() }
}

/// 50 W all the time from a store of 600 Wh that nothing charges: empty at noon of the first day, or a little before, for the
/// outlet loses some.
#[test]
fn hours_lack_power_once_the_store_is_empty() {
    let mut plan = with_work(vec![stay(1, 2, Signal::Good)]);
    plan.kit = vec![store(600.0), laptop(50.0)];
    let report = asked(&plan);
    let work = report.work.unwrap();
    assert_eq!(work.wanted_hours, 12.0);
    let lost = work.hours(Cause::NoPower);
    assert!((9.0..=10.0).contains(&lost), "{lost}");
    assert!(report.standing.first_short.unwrap() >= Moment::hours_into(DAY, 11.0));
    // A larger one lasts; and what is not for the work may go without.
    plan.kit[0] = store(6_000.0);
    assert_eq!(asked(&plan).standing.verdict, Verdict::Holds);
    plan.kit = vec![store(600.0), Item { group: Group::Kitchen, ..laptop(50.0) }];
    assert_eq!(keys(&asked(&plan)), ["signal-nothing-powered"]);
    // Unless the work is said to be done with it.
    plan.work.works_with = Some(50);
    assert_eq!(asked(&plan).work.unwrap().hours(Cause::NoPower), lost);
}

#[test]
fn what_has_no_store_and_what_no_outlet_bears_has_no_power_at_all() {
    let mut plan = with_work(vec![stay(1, 2, Signal::Good)]);
    plan.kit = vec![laptop(50.0)];
    assert_eq!(asked(&plan).work.unwrap().hours(Cause::NoPower), 12.0);
    plan.kit = vec![store(6_000.0), laptop(9_000.0)];
    assert_eq!(asked(&plan).work.unwrap().hours(Cause::NoPower), 12.0);
}

#[test]
fn what_is_around_the_work_comes_from_outside() {
    let plan = with_work(vec![stay(1, 2, Signal::Good)]);
    let timeline = Timeline::new(&plan, DAY);
    // Cold until eleven, and what is beyond the list is not known.
    let inside_c: Vec<f64> = (0..36).map(|hour| if hour % 24 < 11 { 4.0 } else { 20.0 }).collect();
    let around = Around { inside_c: &inside_c, served: &[] };
    let work = signal::report(&plan, DAY, &timeline, &around).work.unwrap();
    assert!(work.is_warmth_known);
    assert_eq!((work.hours(Cause::Unbearable), work.hours(Cause::Unknown)), (4.0, 3.0));
    let mut hardy = plan.clone();
    hardy.work.too_cold_c = Some(4.0);
    let work = signal::report(&hardy, DAY, &timeline, &around).work.unwrap();
    assert_eq!(work.hours(Cause::Unbearable), 0.0);
    assert!(!asked(&plan).work.unwrap().is_warmth_known);
}

/// Thirty hours at 20 are lost in the first week; the wages of the plan come at its end.
fn with_wages(opening: i64) -> Plan {
    let mut plan = with_work(vec![stay(1, 7, Signal::None), stay(2, 14, Signal::Good)]);
    plan.purse.opening_cash = Some(Money::whole(opening));
    let wages =
        Income { id: 60, amount: Some(Money::whole(800).into()), on: Some(date(2027, 3, 12)), ..Income::default() };
    plan.incomes = vec![wages];
    plan
}

#[test]
fn pay_at_risk_is_told_by_the_money_and_never_before_the_wages_come() {
    let report = assess(&with_wages(500), DAY).money;
    let at_risk = report.standing.findings.iter().find(|finding| finding.key() == "money-pay-at-risk").unwrap();
    let money::Finding::PayAtRisk { amount, by, lowest, lowest_on, .. } = at_risk else { unreachable!() };
    assert_eq!((*amount, *by), (Money::whole(600), date(2027, 3, 5)));
    // The wages come with 200 instead of 800; before them nothing is missing.
    assert_eq!((*lowest, *lowest_on), (Money::whole(500), DAY));
    assert_eq!((report.standing.verdict, at_risk.severity()), (Verdict::Holds, Severity::Note));
}

#[test]
fn the_money_is_tight_where_its_floor_hangs_on_pay_at_risk() {
    let mut plan = with_wages(500);
    // On the 15th a thing for 1,000 is bought: 300 are left of all, and without the pay 300 are missing.
    let price = Some(Money::whole(1_000).into());
    plan.kit = vec![Item { id: 70, unit_price: price, buy_on: Some(date(2027, 3, 15)), ..Item::default() }];
    let report = assess(&plan, DAY).money;
    let at_risk = report.standing.findings.iter().find(|finding| finding.key() == "money-pay-breaks-floor").unwrap();
    let money::Finding::PayAtRisk { lowest, lowest_on, .. } = at_risk else { unreachable!() };
    assert_eq!((*lowest, *lowest_on), (Money::whole(-300), date(2027, 3, 15)));
    assert_eq!((report.standing.verdict, at_risk.severity()), (Verdict::Tight, Severity::Close));
    assert_eq!(report.standing.margin, Some(Margin::Money(Money::whole(300))));
    // Nothing can be missing of wages that the plan does not count on.
    plan.incomes.clear();
    plan.purse.opening_cash = Some(Money::whole(1_300));
    let keys: Vec<_> = assess(&plan, DAY).money.standing.findings.iter().map(Say::key).collect();
    assert!(!keys.iter().any(|key| key.starts_with("money-pay")), "{keys:?}");
}

#[test]
fn the_changes_that_are_found_mend_what_falls_short() {
    let other = DataContract { in_use: false, ..contract(11, 20.0, 14) };
    let plan = with_data(1.0, vec![contract(10, 1.0, 6), other]);
    let again = Again::new(&plan, DAY);
    let found = Found::new(&plan, DAY, again.before());
    let mends = |change: Change| {
        let candidate = found.candidates.iter().find(|candidate| candidate.change == change).unwrap();
        tried(&again, &plan, candidate).unwrap().0
    };
    assert_eq!((mends(Change::TakeContract).mends, mends(Change::TakeContract).id), (1.0, 11));
    assert_eq!(mends(Change::TakeContract).money, Money::whole(-42));
    let less = mends(Change::LessData);
    assert!(less.mends > 0.0 && less.mends < 1.0, "{}", less.mends);
    // To do without what gives too little would mend nothing.
    let ends = plan.data_contracts[0].id;
    assert!(!found.candidates.iter().any(|candidate| candidate.id == ends));
    let mut poor = with_data(1.0, vec![contract(10, 20.0, 6)]);
    poor.purse.opening_cash = Some(Money::whole(10));
    let again = Again::new(&poor, DAY);
    let found = Found::new(&poor, DAY, again.before());
    let ends = found.candidates.iter().find(|candidate| candidate.change == Change::EndContract).unwrap();
    let ends = tried(&again, &poor, ends).unwrap().0;
    assert_eq!((ends.money, ends.mends), (Money::whole(18), 0.0));
}

/// The store takes the same course, and another thing is worked with.
#[test]
fn assessed_again_the_work_is_judged_by_what_it_needs_now() {
    let mut plan = with_work(vec![stay(1, 5, Signal::Good)]);
    let lamp = Item { id: 52, group: Group::Kitchen, ..laptop(5.0) };
    plan.kit = vec![store(6_000.0), laptop(50.0), lamp, Item { id: 53, ..store(20.0) }];
    plan.kit[2].draw.as_mut().unwrap().store = Some(53);
    let again = Again::new(&plan, DAY);
    for works_with in [None, Some(50), Some(52), Some(51)] {
        let mut changed = plan.clone();
        changed.work.works_with = works_with;
        assert_eq!(again.outcome(&changed), Outcome::of(&assess(&changed, DAY)), "{works_with:?}");
    }
    assert_ne!(walk(&plan, DAY, &Timeline::new(&plan, DAY)).hours.power.stores.len(), 0);
}
