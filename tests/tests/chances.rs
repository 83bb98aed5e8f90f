//! Runs by chance against closed forms, whole enumerations and exact averages; their bounds; that they repeat.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::money::chance::{
    CertainFlow, Chance, Chances, MOST_MINOR, MOST_PATHS, MOST_UNCERTAIN, Outlook, Refused, Runs, UncertainFlow,
};

const PATHS: u32 = 40_000;
/// Nothing that is drawn rightly lies further off than so many standard errors, in hundreds of checks.
const ERRORS: f64 = 4.5;

fn run(outlook: &Outlook, seed: u64) -> Chances {
    let mut runs = Runs::new(outlook, seed, PATHS).unwrap();
    assert_eq!(runs.step(PATHS), 0);
    runs.chances()
}

fn sale(price: i64, day: u32, chance_ppm: u32) -> UncertainFlow {
    UncertainFlow { chance_ppm, ..UncertainFlow::fixed(price, day) }
}

fn assert_share(kept: u32, chance: f64, what: &str) {
    let share = f64::from(kept) / f64::from(PATHS);
    let error = ((chance * (1.0 - chance)).max(0.0) / f64::from(PATHS)).sqrt();
    assert!((share - chance).abs() <= ERRORS * error + 1e-9, "{what}: {share} drawn, {chance} exact");
}

/// A number from `from` to below `to`.
fn between(chance: &mut Chance, from: i32, to: i32) -> i64 {
    i64::from(from) + i64::from(chance.below(from.abs_diff(to)))
}

/// A small plan by chance: eight days, up to six sales of one price on one day.
fn small(chance: &mut Chance) -> Outlook {
    let certain = (0..8).map(|day| CertainFlow { day, amount: between(chance, -400, 150) }).collect();
    let flows = (0..=chance.below(6)).map(|_| {
        let price = between(chance, -300, 900);
        sale(price, chance.below(8), chance.below(21) * 50_000)
    });
    let uncertain = flows.collect();
    Outlook { opening: between(chance, 0, 900), floor: between(chance, -200, 200), days: 8, certain, uncertain }
}

/// The chance that the floor holds, over every one of the 2^n ways in which it can turn out.
fn enumerated(outlook: &Outlook) -> f64 {
    let ways = 0..1_u32 << outlook.uncertain.len();
    ways.filter_map(|way| {
        let happens = |at: usize| way >> at & 1 == 1;
        let flows = outlook.uncertain.iter().enumerate();
        let weight: f64 = flows
            .clone()
            .map(|(at, flow)| {
                let chance = f64::from(flow.chance_ppm) / 1e6;
                if happens(at) { chance } else { 1.0 - chance }
            })
            .product();
        let mut cash = outlook.opening;
        let holds = (0..outlook.days).all(|day| {
            let certain = outlook.certain.iter().filter(|flow| flow.day == day).map(|flow| flow.amount);
            let sold = flows.clone().filter(|(at, flow)| happens(*at) && flow.first_day == day);
            cash += certain.sum::<i64>() + sold.map(|(_, flow)| flow.likely).sum::<i64>();
            cash >= outlook.floor
        });
        holds.then_some(weight)
    })
    .sum()
}

#[test]
fn the_chance_is_that_of_every_way_it_can_turn_out() {
    let mut chance = Chance::new(11);
    let mut between_certainties = 0;
    for number in 0..150 {
        let outlook = small(&mut chance);
        let exact = enumerated(&outlook);
        between_certainties += u32::from(exact > 0.02 && exact < 0.98);
        assert_share(run(&outlook, number).kept, exact, &format!("plan {number}"));
    }
    assert!(between_certainties >= 40, "{between_certainties}");
}

#[test]
fn equal_sales_on_one_day_are_binomial() {
    let (count, chance) = (12_u32, 0.35);
    let uncertain = vec![sale(5_000, 3, 350_000); 12];
    let mut tail = 0.0;
    for most_missing in 0..=count {
        // At least so many sales: what is asked is paid on their day.
        let sold = count - most_missing;
        tail += binomial(count, sold) * libm::pow(chance, sold.into()) * libm::pow(1.0 - chance, most_missing.into());
        let outlook = Outlook { days: 6, uncertain: uncertain.clone(), ..Outlook::default() };
        let kept = run(&outlook.paying(5_000 * i64::from(sold), 3), 7).kept;
        assert_share(kept, tail, &format!("{sold} of {count}"));
    }
}

fn binomial(count: u32, of: u32) -> f64 {
    (0..of).fold(1.0, |ways, at| ways * f64::from(count - at) / f64::from(at + 1))
}

fn square(number: f64) -> f64 {
    number * number
}

fn mean(amounts: &[i64]) -> f64 {
    amounts.iter().map(|amount| *amount as f64).sum::<f64>() / amounts.len() as f64
}

fn variance(amounts: &[i64]) -> f64 {
    let mean = mean(amounts);
    amounts.iter().map(|amount| square(*amount as f64 - mean)).sum::<f64>() / amounts.len() as f64
}

#[test]
fn prices_have_the_mean_the_variance_and_the_percentiles_of_their_triangle() {
    let triangles = [(1_000, 4_000, 5_000), (0, 0, 90_000), (-7_000, -100, -100), (20_000, 50_000, 900_000_000_000)];
    for (low, likely, high) in triangles {
        let flow = UncertainFlow { low, likely, high, ..UncertainFlow::fixed(0, 0) };
        let outlook = Outlook { days: 1, uncertain: vec![flow], ..Outlook::default() };
        let end = run(&outlook, 3).end;
        let (a, c, b) = (low as f64, likely as f64, high as f64);
        let exact = (a * a + b * b + c * c - a * b - a * c - b * c) / 18.0;
        let name = format!("{low} {likely} {high}");
        let (mean, variance) = (mean(end.amounts()), variance(end.amounts()));
        assert!((mean - (a + b + c) / 3.0).abs() < ERRORS * (exact / f64::from(PATHS)).sqrt(), "{name}: {mean}");
        assert!((variance / exact - 1.0).abs() < 0.03, "{name}: {variance} for {exact}");
        let below = |amount: f64| match amount {
            amount if amount < c => square(amount - a) / ((b - a) * (c - a)),
            amount => 1.0 - square(b - amount) / ((b - a) * (b - c)),
        };
        for percent in [1, 10, 25, 50, 80, 99] {
            let share = below(end.percentile(percent) as f64);
            assert!((share - f64::from(percent) / 100.0).abs() < 0.012, "{name}, {percent} %: {share}");
        }
    }
}

#[test]
fn days_are_spread_evenly() {
    let flow = UncertainFlow { first_day: 2, last_day: 6, ..sale(1_000, 0, 800_000) };
    for until in 2..=6 {
        // The floor holds if it was sold by that day.
        let outlook = Outlook { days: 9, uncertain: vec![flow], ..Outlook::default() }.paying(1_000, until);
        assert_share(run(&outlook, 5).kept, 0.8 * f64::from(until - 1) / 5.0, &format!("by day {until}"));
    }
}

#[test]
fn the_average_of_the_courses_is_the_expected_cash() {
    let mut chance = Chance::new(23);
    for number in 0..40 {
        let mut outlook = small(&mut chance);
        for flow in &mut outlook.uncertain {
            (flow.low, flow.high) = (flow.low - between(&mut chance, 0, 200), flow.high + between(&mut chance, 0, 300));
            flow.last_day = flow.first_day + chance.below(8 - flow.first_day);
        }
        let expected = outlook.expected_by_day().unwrap();
        for days in 1..=8 {
            // What happens after the last day asked for is left out, so that the end is that day's evening.
            let mut cut = outlook.clone();
            cut.certain.retain(|flow| flow.day < days);
            cut.uncertain.retain(|flow| flow.last_day < days);
            if cut.uncertain.len() < outlook.uncertain.iter().filter(|flow| flow.first_day < days).count() {
                continue;
            }
            cut.days = days;
            let end = run(&cut, number).end;
            let (mean, exact) = (mean(end.amounts()), expected[days as usize - 1] as f64);
            let error = ERRORS * (variance(end.amounts()) / f64::from(PATHS)).sqrt() + 1.0;
            assert!((mean - exact).abs() < error, "plan {number}, day {days}: {mean} drawn, {exact} exact");
        }
    }
}

#[test]
fn the_band_is_that_of_the_courses() {
    let uncertain = vec![sale(40_000, 10, 300_000), UncertainFlow { low: 0, ..sale(90_000, 20, 1_000_000) }];
    let chances = run(&Outlook { opening: 1_000, days: 30, uncertain, ..Outlook::default() }.paying(500, 15), 2);
    assert_eq!(chances.band.len(), 30);
    let at = |day: usize| (chances.band[day].low, chances.band[day].middle, chances.band[day].high);
    assert_eq!((at(0), at(9)), ((1_000, 1_000, 1_000), (1_000, 1_000, 1_000)));
    assert_eq!((at(10), at(14)), ((1_000, 1_000, 41_000), (1_000, 1_000, 41_000)));
    assert_eq!(at(15), (500, 500, 40_500));
    // The band rests on the first courses, the end on all of them.
    let near = |band: i64, percent| (band - chances.end.percentile(percent)).abs() < 8_000;
    assert!(near(at(29).0, 10) && near(at(29).1, 50) && near(at(29).2, 90), "{:?}", at(29));
}

#[test]
fn slices_make_no_difference_and_a_seed_does() {
    let outlook = small(&mut Chance::new(4));
    let whole = run(&outlook, 9);
    let mut runs = Runs::new(&outlook, 9, PATHS).unwrap();
    let mut slice = 1;
    while runs.step(slice) > 0 {
        slice = slice * 3 % 4_001;
        assert_eq!(runs.chances().paths + runs.left(), PATHS);
        if runs.left() < PATHS / 2 {
            slice = PATHS;
        }
    }
    assert_eq!(runs.chances(), whole);
    assert_eq!((runs.step(5), runs.chances().paths), (0, PATHS));
    assert_ne!(run(&outlook, 10), whole);
}

#[test]
fn what_is_added_behind_leaves_the_draws_of_the_others() {
    let outlook = small(&mut Chance::new(31));
    let mut longer = outlook.clone();
    longer.uncertain.push(sale(100, 7, 0));
    assert_eq!((run(&longer, 1).end, run(&longer, 1).lowest), (run(&outlook, 1).end, run(&outlook, 1).lowest));
}

/// The same numbers on every machine: a few lines of Python, written apart from core, gave them.
#[test]
fn a_known_seed_gives_known_numbers() {
    let lamp = UncertainFlow { low: 1_000, likely: 2_500, high: 6_000, chance_ppm: 700_000, first_day: 1, last_day: 9 };
    let bed =
        UncertainFlow { low: 9_000, likely: 20_000, high: 21_000, chance_ppm: 450_000, first_day: 4, last_day: 4 };
    let outlook = Outlook { opening: 4_000, floor: 500, days: 12, uncertain: vec![lamp, bed], ..Outlook::default() };
    let mut runs = Runs::new(&outlook.paying(6_000, 6), 2_027, 1_000).unwrap();
    runs.step(1_000);
    let chances = runs.chances();
    let numbers = [
        chances.lowest.percentile(20),
        chances.lowest.percentile(60),
        chances.end.percentile(50),
        chances.end.percentile(80),
    ];
    assert_eq!((chances.kept, numbers), KNOWN);
}

const KNOWN: (u32, [i64; 4]) = (638, [-2_000, 4_000, 2_837, 17_784]);

type Change = fn(&mut Outlook);

#[test]
fn what_is_out_of_bounds_is_refused_with_its_place() {
    let fine = Outlook { days: 10, uncertain: vec![sale(5, 3, 1), sale(5, 3, 1)], ..Outlook::default() }.paying(3, 9);
    assert_eq!(fine.check(), Ok(()));
    let changed = |change: Change| {
        let mut outlook = fine.clone();
        change(&mut outlook);
        outlook.check()
    };
    let cases: [(Change, Refused); 13] = [
        (|outlook| outlook.days = 0, Refused::Days),
        (|outlook| outlook.days = 1_101, Refused::Days),
        (|outlook| outlook.opening = MOST_MINOR + 1, Refused::Purse),
        (|outlook| outlook.floor = i64::MIN, Refused::Purse),
        (|outlook| outlook.certain[0].day = 10, Refused::Certain(0)),
        (|outlook| outlook.certain[0].amount = i64::MIN, Refused::Certain(0)),
        (|outlook| outlook.uncertain = vec![sale(1, 1, 1); MOST_UNCERTAIN + 1], Refused::TooMany),
        (|outlook| outlook.uncertain[1].low = 6, Refused::Amount(1)),
        (|outlook| outlook.uncertain[1].high = 4, Refused::Amount(1)),
        (|outlook| outlook.uncertain[0].low = i64::MIN, Refused::Amount(0)),
        (|outlook| outlook.uncertain[1].chance_ppm = 1_000_001, Refused::Chance(1)),
        (|outlook| outlook.uncertain[1].last_day = 2, Refused::Day(1)),
        (|outlook| outlook.uncertain[0].last_day = u32::MAX, Refused::Day(0)),
    ];
    for (change, refused) in cases {
        assert_eq!(changed(change), Err(refused));
    }
    let refusal = |paths| Runs::new(&fine, 1, paths).err();
    assert_eq!((refusal(0), refusal(MOST_PATHS + 1), refusal(1)), (Some(Refused::Paths), Some(Refused::Paths), None));
}

#[test]
fn the_largest_amounts_do_not_overflow() {
    for most in [MOST_MINOR, -MOST_MINOR] {
        let wide = UncertainFlow { low: -MOST_MINOR, likely: most, high: MOST_MINOR, ..UncertainFlow::fixed(0, 0) };
        let uncertain = vec![UncertainFlow { last_day: 1_099, ..wide }; MOST_UNCERTAIN];
        let certain = vec![CertainFlow { day: 500, amount: most }; 100_000];
        let outlook = Outlook { opening: most, floor: most, days: 1_100, certain, uncertain };
        let mut runs = Runs::new(&outlook, u64::MAX, 20).unwrap();
        runs.step(20);
        assert!(runs.chances().end.percentile(33).abs() > MOST_MINOR * 90_000);
        assert!(outlook.expected_by_day().unwrap()[1_099].abs() > MOST_MINOR * 90_000);
    }
}

#[test]
fn what_must_hold_holds_for_ten_thousand_plans() {
    let mut chance = Chance::new(77);
    for number in 0..10_000 {
        let mut outlook = small(&mut chance);
        let count = |outlook: &Outlook| {
            let mut runs = Runs::new(outlook, number, 16).unwrap();
            runs.step(16);
            runs.chances()
        };
        let chances = count(&outlook);
        assert!(chances.lowest.amounts().is_sorted() && chances.end.amounts().is_sorted());
        assert!(chances.lowest.amounts().iter().zip(chances.end.amounts()).all(|(lowest, end)| lowest <= end));
        assert!(chances.band.iter().all(|day| day.low <= day.middle && day.middle <= day.high));
        let below = chances.lowest.amounts().iter().filter(|lowest| **lowest < outlook.floor).count();
        assert_eq!(chances.kept as usize + below, 16);
        outlook.opening += 1_000;
        assert!(count(&outlook).kept >= chances.kept);
    }
}
