//! What a plan can start from: the demo plan, the starter list, the rough plan from a few questions.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it did not expect")]

use std::collections::BTreeSet;

use jiff::civil::{Date, date};
use kerbstead_core::plan::{
    Answers, Item, Money, Need, Obtain, Path, Place, Plan, Repeat, STARTERS, SizeClass, StarterSource, demo_plan,
    demo_plan_after, field, matching, rough_plan, starter_item, validate,
};
use kerbstead_core::words::{Plain, Units, Words};
use kerbstead_core::{Margin, Moment, Verdict, assess, money, power};

fn english() -> Words<Plain> {
    Words::english(Plain, Units::Metric, "EUR")
}

/// The demo plans that begin in 2026 to 2032, leap years among them, each with days before it begins.
fn demos() -> Vec<(Plan, Date)> {
    let plans = (2025..=2031).map(|year| demo_plan_after(date(year, 12, 31)));
    let asked_on = |plan: Plan| {
        let starts_on = plan.calendar.starts_on.unwrap();
        let year = starts_on.year();
        let days = [date(year - 1, 7, 1), date(year, 2, 1), starts_on.yesterday().unwrap(), starts_on];
        days.map(|as_of| (plan.clone(), as_of))
    };
    plans.flat_map(asked_on).collect()
}

#[test]
fn the_demo_plans_money_falls_just_short_on_one_stretch_of_days() {
    for (plan, as_of) in demos() {
        let money = assess(&plan, as_of).money;
        assert_eq!(money.standing.verdict, Verdict::FallsShort, "asked on {as_of}");
        let Some(Margin::Money(margin)) = money.standing.margin else { panic!("no amount") };
        assert!((Money::whole(-80)..=Money::whole(-20)).contains(&margin), "{margin} asked on {as_of}");
        let short: Vec<Date> =
            money.days.iter().filter(|day| day.closing < plan.purse.floor).map(|day| day.on).collect();
        assert!(short.windows(2).all(|pair| pair[0].tomorrow().unwrap() == pair[1]), "{short:?}");
        assert!(short.len() <= 10 && short[0] > plan.calendar.leaves_on.unwrap(), "{short:?}");
        let findings = money.standing.findings;
        assert!(
            matches!(findings[..], [money::Finding::BelowFloor { .. }, money::Finding::LargestBefore { .. }]),
            "{findings:?}"
        );
    }
}

#[test]
fn the_demo_plans_power_runs_out_after_idle_days_without_mains() {
    for (plan, as_of) in demos() {
        let standing = assess(&plan, as_of).power.standing;
        assert_eq!(standing.verdict, Verdict::FallsShort);
        assert!(
            matches!(standing.findings[..], [power::Finding::RunsOut { .. }, power::Finding::InputLimits { .. }]),
            "{:?}",
            standing.findings
        );
        let (stay, nights_behind) = stay_at(&plan, standing.first_short.unwrap());
        assert!(plan.stays[stay].offers.mains_hours.is_none());
        assert_eq!(plan.stays[stay].working_days_per_week, 0);
        assert!(nights_behind >= 2, "{nights_behind} nights into the stay");
    }
}

/// The stay a moment falls into, and how many of its nights lie behind.
fn stay_at(plan: &Plan, moment: Moment) -> (usize, u32) {
    let mut left = plan.calendar.leaves_on.unwrap().until(moment.on).unwrap().get_days().unsigned_abs();
    for (position, stay) in plan.stays.iter().enumerate() {
        if left < stay.nights {
            return (position, left);
        }
        left -= stay.nights;
    }
    panic!("{moment:?} is after the last stay")
}

#[test]
fn the_demo_plans_water_holds() {
    for (plan, as_of) in demos() {
        let standing = assess(&plan, as_of).water.standing;
        assert_eq!(standing.verdict, Verdict::Holds);
        assert_eq!(standing.findings, []);
    }
}

#[test]
fn the_demo_plan_comes_to_the_same_every_year() {
    let first = assess(&demo_plan(), date(2027, 2, 1));
    for (plan, as_of) in demos() {
        let other = assess(&plan, as_of);
        assert_eq!(other.money.standing.margin, first.money.standing.margin);
        assert_eq!(other.water.standing.margin, first.water.standing.margin);
    }
}

#[test]
fn the_demo_plan_is_sound_and_lies_ahead_of_any_day() {
    let days = [
        Date::MIN,
        date(-1, 12, 31),
        date(2026, 2, 28),
        date(2026, 3, 1),
        date(2028, 2, 29),
        date(2031, 12, 31),
        date(9998, 12, 31),
        Date::MAX,
    ];
    for today in days {
        let plan = demo_plan_after(today);
        assert_eq!(validate(&plan), [], "{today}");
        let starts_on = plan.calendar.starts_on.unwrap();
        assert!(starts_on > today || today >= date(9999, 3, 1), "{today}");
        assert!(starts_on.year() <= today.year() + 1);
        assess(&plan, today);
    }
    assert_eq!(demo_plan(), demo_plan_after(date(2027, 2, 28)));
}

#[test]
fn the_demo_plan_shows_every_way_to_come_by_things() {
    let plan = demo_plan();
    assert!(plan.kit.len() >= 50, "{} items", plan.kit.len());
    assert_eq!(plan.belongings.len(), 12);
    let has_item = |wanted: &dyn Fn(&Item) -> bool| plan.kit.iter().any(wanted);
    for obtain in [Obtain::Owned, Obtain::Borrowed, Obtain::Bought, Obtain::Made, Obtain::LeftOut] {
        assert!(has_item(&|item| item.obtain == obtain), "{obtain:?}");
    }
    for need in [Need::Must, Need::Want, Need::Experiment] {
        assert!(has_item(&|item| item.need == need), "{need:?}");
    }
    assert!(plan.kit.iter().all(|item| (item.obtain == Obtain::Borrowed) != item.lender.is_empty()));
    assert!(plan.incomes.iter().any(|income| income.repeat == Repeat::Weekly));
    let nights: u32 = plan.stays.iter().map(|stay| stay.nights).sum();
    assert!((145..=155).contains(&nights), "{nights} nights");
    let ids = plan.kit.iter().map(|item| item.id).chain(plan.stays.iter().map(|stay| stay.id));
    assert_eq!(ids.collect::<BTreeSet<u32>>().len(), plan.kit.len() + plan.stays.len());
}

#[test]
fn every_starter_has_a_name_and_a_key_of_its_own() {
    let words = english();
    let keys: BTreeSet<&str> = STARTERS.iter().map(|starter| starter.key).collect();
    assert_eq!(keys.len(), STARTERS.len());
    for starter in STARTERS {
        assert_eq!(starter.name_key, format!("starter-{}", starter.key));
        assert!(words.has(starter.name_key), "{}", starter.name_key);
    }
}

#[test]
fn every_starter_makes_a_sound_item_whose_values_are_all_guesses() {
    for starter in STARTERS {
        let (item, guesses) = starter_item(starter, 12, starter.key.to_owned(), "EUR");
        let has = |name: &str| guesses.contains(&Path::entry("kit", 12).child(name));
        assert!(has("unit_price") && has("mass_kg") && has("length_mm"), "{}: {guesses:?}", starter.key);
        assert_eq!(has("draw/power_w"), item.draw.is_some());
        assert_eq!(has("store/usable_wh") && has("store/inverter_idle_w"), item.store.is_some());
        assert_eq!(has("tank/capacity_l"), item.tank.is_some());
        assert_eq!(has("water/litres_per_day"), item.water.is_some());
        assert!(guesses.iter().all(field::is_known), "{guesses:?}");
        assert!(!has("name") && !has("group"));
        let plan = Plan { kit: vec![item], ..Plan::default() };
        assert_eq!(validate(&plan), [], "{}", starter.key);
    }
}

#[test]
fn a_starter_has_a_price_only_in_currencies_near_the_euro() {
    for (currency, has_price) in [("EUR", true), ("USD", true), ("GBP", true), ("CHF", true), ("JPY", false)] {
        let (item, guesses) = starter_item(&STARTERS[0], 1, String::new(), currency);
        assert_eq!(item.unit_price.is_some(), has_price, "{currency}");
        assert_eq!(guesses.contains(&"kit/1/unit_price".into()), has_price, "{currency}");
    }
}

#[test]
fn published_starter_values_name_their_source() {
    let starter = |key: &str| STARTERS.iter().find(|starter| starter.key == key).unwrap();
    let size = starter("crate").size_mm.unwrap();
    assert_eq!(size.value[..2], [600.0, 400.0]);
    assert!(matches!(size.source, StarterSource::Published(source) if source.contains("ISO 3394")));
    let draw = starter("phone").draw.unwrap();
    assert!(matches!(draw.source, StarterSource::Published(source) if source.contains("USB")));
}

#[test]
fn a_starter_is_found_by_any_of_its_words() {
    let words = english();
    let names: Vec<String> = STARTERS.iter().map(|starter| words.text(starter.name_key).to_lowercase()).collect();
    let first = |typed: &str| matching(&names, typed).first().map(|index| STARTERS[*index].key);
    assert_eq!(first("lamp"), Some("lamp"));
    assert_eq!(first("store 600"), Some("store-medium"));
    assert_eq!(first("no such thing"), None);
    assert_eq!(matching(&names, "  ").len(), STARTERS.len());
}

const TODAY: Date = date(2027, 2, 1);

fn rough(answers: &Answers, currency: &str) -> Plan {
    rough_plan(answers, TODAY, currency, &str::to_owned)
}

/// Every place with every date and number of people, sensible or not; nights and cash take turns.
fn mixed_answers() -> Vec<Answers> {
    let places = Place::ALL.map(Some).into_iter().chain([None]);
    let dates = [None, Some(date(2027, 3, 10)), Some(date(1999, 1, 1)), Some(date(2040, 1, 1)), Some(Date::MAX)];
    let people = [None, Some(0), Some(1), Some(2), Some(u32::MAX)];
    let nights = [None, Some(0), Some(120), Some(1_000_000_000)];
    let cash = [None, Some(Money::whole(900)), Some(Money::whole(i64::MIN))];
    let mut all = Vec::new();
    for place in places {
        for leaves_on in dates {
            for people in people {
                let turn = all.len();
                let size = (turn % 2 == 0).then_some(SizeClass::HighRoof);
                let (nights, cash) = (nights[turn % nights.len()], cash[turn % cash.len()]);
                all.push(Answers { leaves_on, cash, size, place, nights, people });
            }
        }
    }
    all
}

#[test]
fn a_rough_plan_is_sound_and_has_verdicts_whatever_was_answered() {
    for answers in mixed_answers() {
        let plan = rough(&answers, "EUR");
        assert_eq!(validate(&plan), [], "{answers:?}");
        let assessment = assess(&plan, TODAY);
        assert_ne!(assessment.power.standing.verdict, Verdict::Unknown, "{answers:?}");
        assert_ne!(assessment.water.standing.verdict, Verdict::Unknown, "{answers:?}");
        let is_known = assessment.money.standing.verdict != Verdict::Unknown;
        assert_eq!(is_known, answers.cash.is_some(), "{answers:?}");
    }
}

#[test]
fn every_guess_of_a_rough_plan_leads_to_a_field() {
    for answers in mixed_answers() {
        for path in rough(&answers, "EUR").guesses {
            assert!(field::at(&path).is_some() && field::is_known(&path), "{path} for {answers:?}");
        }
    }
}

#[test]
fn answers_are_no_guesses_and_everything_else_is() {
    let asked = ["people", "vehicle/size", "calendar/leaves_on", "calendar/ends_on"].map(Path::from);
    let skipped = rough(&Answers::default(), "EUR");
    assert!(asked.iter().all(|path| skipped.guesses.contains(path)), "{:?}", skipped.guesses);
    let answers = Answers {
        leaves_on: Some(date(2027, 3, 10)),
        cash: Some(Money::whole(900)),
        size: Some(SizeClass::Small),
        place: Some(Place::Moving),
        nights: Some(60),
        people: Some(2),
    };
    let plan = rough(&answers, "EUR");
    assert!(asked.iter().all(|path| !plan.guesses.contains(path)), "{:?}", plan.guesses);
    assert!(!plan.guesses.contains(&"purse/opening_cash".into()));
    assert_eq!((plan.people, plan.week.len()), (2, 7));
    assert_eq!(plan.calendar.leaves_on, Some(date(2027, 3, 10)));
    assert_eq!(plan.calendar.ends_on, Some(date(2027, 5, 9)));
    for path in surely_guessed(&plan) {
        assert!(plan.guesses.contains(&path), "{path}");
    }
}

/// Values nobody is asked for, found without the code under test.
fn surely_guessed(plan: &Plan) -> Vec<Path> {
    let whole = ["vehicle/inside_length_mm", "vehicle/gross_limit_kg", "purse/floor", "calendar/starts_on"];
    let mut paths = whole.map(Path::from).to_vec();
    paths.extend(plan.costs.iter().map(|cost| Path::entry("costs", cost.id).child("amount")));
    paths.extend(plan.water_uses.iter().map(|water| Path::entry("water_uses", water.id).child("litres_per_day")));
    for item in &plan.kit {
        let path = Path::entry("kit", item.id);
        paths.extend(item.mass_kg.map(|_| path.child("mass_kg")));
        paths.extend(item.unit_price.map(|_| path.child("unit_price")));
        paths.extend(item.store.map(|_| path.child("store/usable_wh")));
        paths.extend(item.tank.map(|_| path.child("tank/capacity_l")));
        paths.extend(item.draw.map(|_| path.child("draw/power_w")));
    }
    for day in &plan.week {
        let path = Path::entry("week", day.id).child("offers");
        paths.extend(day.offers.water.then(|| path.child("water")));
        paths.extend(day.offers.price_per_night.map(|_| path.child("price_per_night")));
    }
    paths
}

#[test]
fn an_answer_out_of_range_is_moved_into_it_and_is_a_guess() {
    let plan = rough(&Answers { people: Some(0), nights: Some(u32::MAX), ..Answers::default() }, "EUR");
    assert_eq!(plan.people, 1);
    assert!(plan.guesses.contains(&"people".into()) && plan.guesses.contains(&"calendar/ends_on".into()));
    let plan = rough(&Answers { leaves_on: Some(date(2020, 1, 1)), ..Answers::default() }, "EUR");
    assert_eq!(plan.calendar.leaves_on, Some(TODAY));
    assert!(plan.guesses.contains(&"calendar/leaves_on".into()));
}

#[test]
fn a_rough_plan_has_no_prices_in_a_currency_it_knows_none_for() {
    let plan = rough(&Answers::default(), "SEK");
    assert_eq!(plan.currency, "SEK");
    assert!(plan.kit.iter().all(|item| item.unit_price.is_none()));
    assert!(plan.costs.iter().all(|cost| cost.amount.is_none()));
    assert!(plan.week.iter().all(|day| day.offers.price_per_night.is_none()));
    assert_eq!(plan.purse.floor, Money::ZERO);
    assert_eq!(validate(&plan), []);
    assert_eq!(rough(&Answers::default(), "euro").currency, "EUR");
}

#[test]
fn every_name_of_a_rough_plan_is_in_the_catalogue() {
    let words = english();
    rough_plan(&Answers::default(), TODAY, "EUR", &|key| {
        assert!(words.has(key), "{key}");
        words.text(key)
    });
    for place in Place::ALL {
        assert!(words.has(place.key()), "{}", place.key());
    }
}

#[test]
fn a_rough_plan_for_one_or_two_holds_for_power_and_water_at_first() {
    for place in Place::ALL {
        for people in [1, 2] {
            let answers = Answers { place: Some(place), people: Some(people), ..Answers::default() };
            let assessment = assess(&rough(&answers, "EUR"), TODAY);
            assert_eq!(assessment.power.standing.verdict, Verdict::Holds, "{place:?}, {people}");
            assert_eq!(assessment.water.standing.verdict, Verdict::Holds, "{place:?}, {people}");
        }
    }
}
