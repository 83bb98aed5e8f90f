//! How long the room in a van takes: `cargo bench -p kerbstead-tests --bench space`.

use divan::{Bencher, black_box};
use kerbstead_core::space::arrange::Search;
use kerbstead_core::space::fit::fit;
use kerbstead_core::space::item::{Item, Layout, Level};
use kerbstead_core::space::rectangles::{Rectangle, Room, fits_rectangles};
use kerbstead_core::space::shape::{Door, DoorKind, Fixed, Shape, WallRow};
use kerbstead_core::space::storage::{Bay, SoftGoods, storage};
use kerbstead_core::space::walkway::{Body, Place, Walkway};
use kerbstead_core::space::{Placed, report as space_report};
use kerbstead_tests::vans::{furnished, van};

fn main() {
    divan::main();
}

const BODY: Body = Body { width_mm: 450, from_mm: 0, to_mm: 1_900 };

/// A van with so many items: a bed, a row along a wall, and boxes at all heights, some of them turned.
fn full_van(count: i32) -> Layout {
    let arch = Fixed { x_mm: 1_900, y_mm: 0, length_mm: 750, width_mm: 180, base_mm: 0, height_mm: 260 };
    let side = Door { kind: DoorKind::Side, wall: 0, from_mm: 2_700, width_mm: 1_000, height_mm: 1_500 };
    let rear = Door { kind: DoorKind::Rear, wall: 3, from_mm: 200, width_mm: 1_300, height_mm: 1_600 };
    let row = |height_mm, in_mm| WallRow { height_mm, low_side_in_mm: in_mm, high_side_in_mm: in_mm };
    let shape = Shape {
        fixed: vec![arch, Fixed { y_mm: 1_520, ..arch }],
        doors: vec![side, rear],
        walls: vec![row(0, 0), row(1_000, 10), row(1_900, 60)],
        ..Shape::square(4_000, 1_700)
    };
    let mut items =
        vec![Item { x_mm: 30, y_mm: 70, length_mm: 1_900, width_mm: 750, height_mm: 450, ..Item::default() }];
    for number in 1..count {
        let (column, row) = (number % 20, number / 20);
        let turn_deg = if number % 7 == 3 { 12.5 } else { 0.0 };
        items.push(Item {
            x_mm: 60 + column * 190,
            y_mm: 1_300 + row % 2 * 90,
            length_mm: 180,
            width_mm: 160,
            height_mm: 240,
            base_mm: row * 250,
            turn_deg,
            level: if row == 0 { Level::Floor } else { Level::Wall },
            opened: None,
        });
    }
    Layout { shape, items, together: Vec::new() }
}

/// All that a page shows of a layout at each key: what does not fit, two ways, the ways out at night, the storage.
fn report(layout: &Layout, bays: &[Bay]) -> f64 {
    let clear = fit(layout).is_clear();
    let walkway = Walkway::new(layout, &BODY, &[]);
    let bed = Place::Beside { item: 0, side: None };
    let widths = walkway.way(Place::Door(0), bed).widest_mm + walkway.way(Place::Door(0), Place::Door(1)).widest_mm;
    let out: f64 = walkway.ways_out(0).iter().map(|out| out.way.widest_mm).sum();
    let goods = [SoftGoods { litres: 60.0, level: None }, SoftGoods { litres: 40.0, level: Some(Level::UnderBed) }];
    let stored = storage(layout, bays, &goods);
    widths + out + stored.left_over_l + f64::from(clear)
}

#[divan::bench(args = [20, 80])]
fn report_of_a_van_with_so_many_items(bencher: Bencher, count: i32) {
    let layout = full_van(count);
    let room = |x_mm, base_mm| Item {
        x_mm,
        y_mm: 1_250,
        length_mm: 1_900,
        width_mm: 400,
        height_mm: 500,
        base_mm,
        ..Item::default()
    };
    let bay = |x_mm, base_mm, level| Bay { room: room(x_mm, base_mm), level, usable_percent: 80.0 };
    let bays = [
        bay(30, 0, Level::UnderBed),
        bay(1_900, 0, Level::Floor),
        bay(30, 700, Level::Wall),
        bay(1_900, 700, Level::Wall),
    ];
    bencher.bench(|| report(black_box(&layout), black_box(&bays)));
}

#[divan::bench(args = [20, 80])]
fn room_of_a_plan_with_so_many_things(bencher: Bencher, count: u32) {
    let plan = furnished(count);
    bencher.bench(|| {
        let placed = Placed::new(black_box(&plan));
        space_report(&plan, &placed)
    });
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn arranging_ten_vans_of_seeds_1_to_10(bencher: Bencher) {
    let vans: Vec<_> = (1..=10).map(van).collect();
    bencher.bench(|| {
        for van in &vans {
            let mut search = Search::new(black_box(van));
            while search.step() < 1.0 {}
            black_box(search.state());
        }
    });
}

#[divan::bench]
fn squares_of_1_to_12_into_their_smallest_rectangle(bencher: Bencher) {
    let squares: Vec<_> = (1..=12).map(|side| Rectangle { length_mm: side, width_mm: side, may_turn: false }).collect();
    bencher.bench(|| fits_rectangles(&Room::empty(29, 23), black_box(&squares), 10_000_000));
}
