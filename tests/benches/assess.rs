//! How long the calculator thinks: `cargo bench -p kerbstead-tests`.

use divan::{Bencher, black_box};
use jiff::civil::{Date, date};
use kerbstead_core::assess;
use kerbstead_core::plan::{Document, Edit, Mode, Plan, Stay, demo_plan, validate};

fn main() {
    divan::main();
}

const AS_OF: Date = date(2027, 3, 1);

/// The demo plan, with its route cut to so many nights.
fn demo_of(nights: u32) -> Plan {
    let mut plan = demo_plan();
    let mut left = nights;
    for stay in &mut plan.stays {
        stay.nights = stay.nights.min(left);
        left -= stay.nights;
    }
    plan
}

/// The demo plan with its stays again and again, for a year.
fn year_long() -> Plan {
    let mut plan = demo_plan();
    plan.calendar.mode = Mode::Stays;
    let mut nights: u32 = plan.stays.iter().map(|stay| stay.nights).sum();
    for stay in plan.stays.clone().iter().cycle() {
        if nights >= 365 {
            break;
        }
        let nights_more = stay.nights.clamp(1, 365 - nights);
        nights += nights_more;
        plan.stays.push(Stay { id: plan.next_id(), nights: nights_more, ..stay.clone() });
    }
    plan
}

fn text_of(plan: &Plan) -> String {
    Document::new(plan).write(plan).to_string()
}

#[divan::bench]
fn assess_demo_of_30_days(bencher: Bencher) {
    let plan = demo_of(30);
    bencher.bench(|| assess(black_box(&plan), AS_OF));
}

#[divan::bench]
fn assess_demo(bencher: Bencher) {
    let plan = demo_plan();
    bencher.bench(|| assess(black_box(&plan), AS_OF));
}

#[divan::bench]
fn assess_year(bencher: Bencher) {
    let plan = year_long();
    bencher.bench(|| assess(black_box(&plan), AS_OF));
}

#[divan::bench]
fn digest_of_an_assessment(bencher: Bencher) {
    let assessment = assess(&demo_plan(), AS_OF);
    bencher.bench(|| black_box(&assessment).digest());
}

#[divan::bench]
fn validate_demo(bencher: Bencher) {
    let plan = demo_plan();
    bencher.bench(|| validate(black_box(&plan)));
}

#[divan::bench]
fn open_demo(bencher: Bencher) {
    let text = text_of(&demo_plan());
    bencher.bench(|| Document::open(black_box(&text)));
}

#[divan::bench]
fn write_demo_after_an_edit(bencher: Bencher) {
    let mut plan = demo_plan();
    let document = Document::new(&plan);
    "Another".clone_into(&mut plan.title);
    bencher.bench(|| document.write(black_box(&plan)));
}

#[divan::bench]
fn edit_one_field(bencher: Bencher) {
    let plan = demo_plan();
    let path = format!("kit/{}/mass_kg", plan.kit.last().map_or(1, |item| item.id));
    bencher.with_inputs(|| plan.clone()).bench_refs(|plan| Edit::set(path.as_str(), 3.5).apply(plan));
}
