//! Vans to be arranged, made by chance from a seed.

use kerbstead_core::money::chance::Chance;
use kerbstead_core::space::arrange::{Freedom, Rule, Side, Wish};
use kerbstead_core::space::item::{Item, Layout, Level, Opened};
use kerbstead_core::space::shape::{Door, DoorKind, Fixed, Shape};
use kerbstead_core::space::walkway::{Body, Place};

/// Usual things of a van: their least and greatest length and width, and their height, in millimetres.
const THINGS: [([i32; 2], [i32; 2], i32); 9] = [
    ([700, 1_300], [400, 600], 880),
    ([450, 650], [400, 600], 850),
    ([350, 450], [350, 450], 450),
    ([500, 1_200], [300, 500], 1_700),
    ([400, 800], [300, 450], 450),
    ([300, 600], [200, 400], 350),
    ([600, 1_000], [250, 400], 700),
    ([300, 400], [300, 400], 400),
    ([500, 900], [350, 500], 600),
];

/// A van with a bed, three to seven other things, wheel arches, doors and somebody who wants to get to the bed.
///
/// Lengths are multiples of 10 mm. Some vans are too full, some have room enough, and nobody knows which.
pub fn van(seed: u64) -> Wish {
    let mut chance = Chance::new(seed);
    let mut draw = |from: i32, to: i32| from + 10 * chance.below(((to - from) / 10 + 1).unsigned_abs()).cast_signed();
    let (length, width) = (draw(2_400, 3_800), draw(1_500, 1_850));
    let mut shape = Shape::square(length, width);
    let (arch, at) = (draw(120, 220), draw(400, length - 1_400));
    for y_mm in [0, width - arch] {
        shape.fixed.push(Fixed { x_mm: at, y_mm, length_mm: 700, width_mm: arch, base_mm: 0, height_mm: 250 });
    }
    let door_width = draw(800, 1_200);
    let from_mm = draw(at.min(length - door_width) + 100, length - door_width).max(0);
    let side = Door { kind: DoorKind::Side, wall: 0, from_mm, width_mm: door_width, height_mm: 1_500 };
    let rear = Door { kind: DoorKind::Rear, wall: 3, from_mm: 150, width_mm: width - 300, height_mm: 1_600 };
    shape.doors = vec![Door { from_mm: (at + 700).min(length - door_width).max(0), ..side }, rear];
    let bed = Item { length_mm: draw(1_800, 1_950), width_mm: draw(650, 1_200), height_mm: 450, ..Item::default() };
    let mut items = vec![bed];
    for _ in 0..draw(30, 70) / 10 {
        let (long, wide, height_mm) = THINGS[usize::try_from(draw(0, 80) / 10).unwrap_or(0)];
        items.push(Item { length_mm: draw(long[0], long[1]), width_mm: draw(wide[0], wide[1]), height_mm, ..bed });
    }
    let mut freedoms = vec![Freedom::Moves { may_turn: true }; items.len()];
    let mut rules = vec![Rule::DoorClear { door: 0, depth_mm: draw(300, 500), height_mm: 1_500 }];
    let body = Body { width_mm: draw(350, 550), from_mm: 0, to_mm: 1_900 };
    let mut ways = vec![(Place::Door(0), Place::Beside { item: 0, side: None })];
    let whole = |item| Side { item, side: None };
    if draw(0, 90) < 50 {
        ways.push((Place::Door(0), Place::Beside { item: 1, side: Some(0) }));
    }
    if draw(0, 90) < 40 {
        rules.push(Rule::Apart { first: whole(1), second: Side { item: 0, side: Some(1) }, least_mm: draw(200, 600) });
    }
    if draw(0, 90) < 30 {
        rules.push(Rule::Near { first: whole(2), second: whole(1), most_mm: draw(0, 300) });
    }
    if draw(0, 90) < 30 {
        let drawer =
            Opened { y_mm: -400, width_mm: 400, length_mm: items[1].length_mm, base_mm: 100, height_mm: 300, x_mm: 0 };
        items[1].opened = Some(drawer);
    }
    if draw(0, 90) < 40 {
        // Something that stays in the corner it is in.
        let (last, low) = (items.len() - 1, draw(0, 10) == 0);
        items[last].y_mm = if low { 0 } else { width - items[last].width_mm };
        if items[last].length_mm <= at {
            freedoms[last] = Freedom::Pinned;
        }
    }
    if draw(0, 90) < 30 {
        items.push(Item {
            length_mm: draw(600, 1_200),
            width_mm: 300,
            height_mm: 350,
            base_mm: 1_300,
            level: Level::Wall,
            ..bed
        });
        freedoms.push(Freedom::Moves { may_turn: true });
    }
    Wish { layout: Layout { shape, items, together: Vec::new() }, freedoms, rules, ways, body, wanted: 1 }
}
