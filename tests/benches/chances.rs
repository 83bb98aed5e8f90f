//! How long chances and orders take: `cargo bench -p kerbstead-tests --bench chances`.

use divan::{Bencher, black_box};
use jiff::civil::date;
use kerbstead_core::chances::WholeTask;
use kerbstead_core::money::buying::{Priority, Purchase, Wallet, order_of_buying};
use kerbstead_core::money::chance::{CertainFlow, Outlook, Runs, UncertainFlow};
use kerbstead_core::money::selling::{Demand, Thing, Wish, plan_sales};
use kerbstead_core::plan::demo_plan;
use kerbstead_core::task::Task;

fn main() {
    divan::main();
}

const PATHS: u32 = 10_000;

/// Half a year with 25 uncertain sales, each on one day or on one of `days`.
fn half_a_year(days: u32) -> Outlook {
    let daily = (0..180).map(|day| CertainFlow { day, amount: -2_900 });
    let monthly = (1..=6).map(|month| CertainFlow { day: month * 30 - 1, amount: -64_000 });
    let uncertain = (0..25).map(|number: u32| {
        let likely = i64::from(9_000 + number * 7_919 % 80_000);
        let (first_day, chance_ppm) = (5 + number * 27 / 4, 500_000 + number * 37_000 % 450_000);
        let last_day = first_day + days - 1;
        UncertainFlow { low: likely * 3 / 5, likely, high: likely * 5 / 4, chance_ppm, first_day, last_day }
    });
    Outlook {
        opening: 210_000,
        floor: 0,
        days: 180,
        certain: daily.chain(monthly).collect(),
        uncertain: uncertain.collect(),
    }
}

fn whole(outlook: &Outlook) -> u32 {
    let Ok(mut runs) = Runs::new(outlook, 4_001, PATHS) else { return 0 };
    while runs.step(1_000) > 0 {}
    let chances = runs.chances();
    black_box(&chances);
    chances.kept
}

#[divan::bench]
fn runs_of_half_a_year_with_25_sales(bencher: Bencher) {
    let outlook = half_a_year(1);
    bencher.bench(|| whole(black_box(&outlook)));
}

#[divan::bench]
fn runs_of_half_a_year_with_25_sales_of_uncertain_days(bencher: Bencher) {
    let outlook = half_a_year(12);
    bencher.bench(|| whole(black_box(&outlook)));
}

#[divan::bench]
fn expected_cash_of_half_a_year(bencher: Bencher) {
    let outlook = half_a_year(12);
    bencher.bench(|| black_box(&outlook).expected_by_day());
}

/// So many purchases over a year in which there is a little more every day.
fn order_of(bencher: Bencher, count: u32) {
    let wallet = Wallet { cash: (0..365).map(|day| day * 400).collect(), floor: 10_000 };
    let purchases = (0..count).map(|number| {
        let (earliest, priority) = (number * 37 % 90, [Priority::Must, Priority::Should, Priority::Could]);
        let (amount, needed_by) = (i64::from(1_000 + number * 7_919 % 20_000), earliest + 60 + number * 53 % 200);
        Purchase { amount, earliest, needed_by, priority: priority[number as usize % 3] }
    });
    let purchases: Vec<_> = purchases.collect();
    bencher.bench(|| order_of_buying(black_box(&wallet), black_box(&purchases)));
}

#[divan::bench]
fn order_of_twenty_purchases(bencher: Bencher) {
    order_of(bencher, 20);
}

#[divan::bench]
fn order_of_five_hundred_purchases(bencher: Bencher) {
    order_of(bencher, 500);
}

/// So many things at falling prices, which are to bring half of what they usually do.
fn sales_of(bencher: Bencher, count: i64, days: u32) {
    let things = (0..count).map(|number| {
        let usual_price = 3_000 + number * 7_919 % 40_000;
        let demand = Demand { usual_price, half_sold_days: 10.0 + (number % 7) as f64 * 5.0, steepness: 3.0 };
        Thing { demand, lowest: usual_price / 2, cost: 0 }
    });
    let things: Vec<_> = things.collect();
    let sum = things.iter().map(|thing| thing.demand.usual_price).sum::<i64>() / 2;
    let wish = Wish { sum, chance: 0.9, days, days_per_price: 7, price_step: 100 };
    bencher.bench(|| plan_sales(black_box(&things), black_box(&wish)));
}

#[divan::bench]
fn falling_prices_of_25_things_for_half_a_year(bencher: Bencher) {
    sales_of(bencher, 25, 180);
}

#[divan::bench]
fn falling_prices_of_the_most_things_for_the_longest(bencher: Bencher) {
    sales_of(bencher, 60, 420);
}

/// All balances of the example together, with what they hang on.
#[divan::bench]
fn thousand_runs_of_the_whole_example(bencher: Bencher) {
    let plan = demo_plan();
    bencher.bench(|| {
        let mut task = WholeTask::new(black_box(&plan), date(2027, 3, 10), 1);
        while task.step() < 1.0 {}
        task.answer()
    });
}
