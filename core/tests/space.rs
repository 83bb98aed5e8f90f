//! Room in the van: worked by hand, by brute force on fine grids, and what must hold for every van.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]
#![allow(clippy::float_cmp, reason = "what is square to the walls is exact")]
#![allow(clippy::type_complexity, reason = "tables of cases")]

use kerbstead_core::money::chance::Chance;
use kerbstead_core::space::arrange::{Freedom, Rule, Search, Side, Wish};
use kerbstead_core::space::carrying::{height_to_tip_mm, longest_round_corner_mm, passes_opening};
use kerbstead_core::space::fit::{Limit, Obstacle, Thing, fit};
use kerbstead_core::space::item::{Item, Layout, Level, Opened};
use kerbstead_core::space::rectangles::{Decision, Passage, Rectangle, Room, fits_rectangles};
use kerbstead_core::space::shape::{Door, DoorKind, Fault, Fixed, Part, RoofRow, Shape, Spot, WallRow};
use kerbstead_core::space::storage::{Bay, SoftGoods, storage};
use kerbstead_core::space::taping::{Inches, Marked, inches, taping};
use kerbstead_core::space::walkway::{Body, Place, Walkway, Way};

fn box_at(length_mm: i32, width_mm: i32, x_mm: i32, y_mm: i32) -> Item {
    Item { length_mm, width_mm, x_mm, y_mm, height_mm: 400, ..Item::default() }
}

fn layout(shape: Shape, items: Vec<Item>) -> Layout {
    Layout { shape, items, together: Vec::new() }
}

fn body(width_mm: i32) -> Body {
    Body { width_mm, from_mm: 0, to_mm: 1_900 }
}

fn way(layout: &Layout, from: Place, to: Place) -> Way {
    Walkway::new(layout, &body(450), &[]).way(from, to)
}

fn at(x_mm: i32, y_mm: i32) -> Place {
    Place::Spot(Spot { x_mm, y_mm })
}

fn outline(corners: &[(i32, i32)]) -> Shape {
    Shape {
        outline: corners.iter().map(|(x_mm, y_mm)| Spot { x_mm: *x_mm, y_mm: *y_mm }).collect(),
        ..Shape::default()
    }
}

#[test]
fn a_wrong_outline_is_told_with_its_place() {
    let crossing = |first, second, x_mm, y_mm| Fault::Crossing { first, second, at: Spot { x_mm, y_mm } };
    let cases: [(&[(i32, i32)], Vec<Fault>); 8] = [
        (&[], vec![Fault::TooFewCorners { count: 0 }]),
        (&[(0, 0), (10, 0)], vec![Fault::TooFewCorners { count: 2 }]),
        (&[(0, 0), (10, 0), (30, 0)], vec![Fault::NoArea]),
        (&[(0, 0), (0, 0), (0, 0)], vec![Fault::NoArea]),
        (&[(0, 0), (100, 100), (100, 0), (0, 100)], vec![crossing(0, 2, 50, 50)]),
        (&[(0, 0), (100, 0), (100, 100), (50, 0), (0, 100)], vec![crossing(0, 2, 50, 0), crossing(0, 3, 50, 0)]),
        (
            &[(0, 0), (100, 0), (100, 50), (100, 20), (0, 100)],
            vec![Fault::Spike { corner: 2 }, crossing(1, 3, 100, 20)],
        ),
        (&[(0, 0), (100_001, 0), (0, 50)], vec![Fault::OutOfRange { part: Part::Corner, number: 1 }]),
    ];
    for (corners, faults) in cases {
        let found = outline(corners).faults();
        assert!(faults.iter().all(|fault| found.contains(fault)), "{corners:?}: {found:?}");
        assert!(!found.is_empty());
    }
    for sound in [Shape::square(3_000, 1_700), outline(&[(0, 100), (0, 0), (300, 0)])] {
        assert_eq!(sound.faults(), []);
    }
}

#[test]
fn doors_walls_and_roofs_that_cannot_be_are_told() {
    let door = Door { wall: 0, from_mm: 2_500, width_mm: 800, height_mm: 1_500, ..Door::default() };
    let nowhere = Door { wall: 4, ..door };
    let row = |height_mm| WallRow { height_mm, low_side_in_mm: 0, high_side_in_mm: 0 };
    let roof = |x_mm| RoofRow { x_mm, height_mm: 1_800 };
    let shape = Shape {
        doors: vec![door, nowhere, Door { from_mm: 100, ..door }, Door { from_mm: 899, ..door }],
        walls: vec![row(0), row(500), row(500)],
        roof: vec![roof(10), roof(0)],
        fixed: vec![Fixed::default()],
        ..Shape::square(3_000, 1_700)
    };
    let found = shape.faults();
    assert_eq!(found[0], Fault::OutOfRange { part: Part::Fixed, number: 0 });
    let found = Shape { fixed: Vec::new(), ..shape }.faults();
    for fault in [
        Fault::DoorPastItsWall { door: 0 },
        Fault::DoorPastItsWall { door: 1 },
        Fault::DoorsOverlap { first: 2, second: 3 },
        Fault::OutOfOrder { part: Part::Wall, number: 2 },
        Fault::OutOfOrder { part: Part::Roof, number: 1 },
    ] {
        assert!(found.contains(&fault), "{fault:?} {found:?}");
    }
    assert_eq!(found.len(), 5);
}

/// Source: straight lines between the rows, by hand.
#[test]
fn walls_and_roof_are_straight_between_their_rows() {
    let row = |height_mm, in_mm| WallRow { height_mm, low_side_in_mm: in_mm, high_side_in_mm: 2 * in_mm };
    let roof = |x_mm, height_mm| RoofRow { x_mm, height_mm };
    let shape = Shape {
        walls: vec![row(0, 40), row(400, 0), row(1_200, 20), row(1_800, 150)],
        roof: vec![roof(0, 1_600), roof(1_000, 1_901)],
        ..Shape::square(3_000, 1_700)
    };
    let cases = [
        ((0, 400), (40, 80)),
        ((200, 300), (20, 40)),
        ((399, 401), (1, 1)),
        ((400, 1_500), (85, 170)),
        ((1_700, 9_999), (150, 300)),
    ];
    for ((from, to), walls_in) in cases {
        assert_eq!(shape.walls_in_mm(from, to), walls_in, "{from} to {to}");
    }
    for ((from, to), headroom) in
        [((0, 3_000), 1_600), ((500, 600), 1_750), ((1_000, 2_000), 1_901), ((-50, -20), 1_600)]
    {
        assert_eq!(shape.headroom_mm(from, to), Some(headroom));
    }
    assert_eq!(Shape::square(3_000, 1_700).headroom_mm(0, 10), None);
}

#[test]
fn what_touches_does_not_overlap_also_when_it_is_turned() {
    let square = Shape::square(5_000, 5_000);
    for turn_deg in [0.0, 90.0, 30.0, 12.5, 271.25, -45.0] {
        // Two boxes side by side, both turned about one corner.
        let first = Item { turn_deg, ..box_at(800, 300, 2_500, 2_500) };
        let beside = Item { turn_deg: turn_deg + 90.0, ..box_at(300, 500, 2_500, 2_500) };
        assert!(fit(&layout(square.clone(), vec![first, beside])).is_clear(), "{turn_deg}");
        let into = Item { turn_deg: turn_deg + 89.9, ..beside };
        assert_eq!(fit(&layout(square.clone(), vec![first, into])).overlaps.len(), 1, "{turn_deg}");
    }
    let on_top = Item { base_mm: 400, ..box_at(800, 300, 0, 0) };
    assert!(fit(&layout(square.clone(), vec![box_at(800, 300, 0, 0), on_top])).is_clear());
    let outside = Item { level: Level::Outside, ..box_at(800, 300, -900, 0) };
    assert!(fit(&layout(square, vec![outside])).is_clear());
}

#[test]
fn what_sticks_out_is_told_with_its_millimetres() {
    let row = |height_mm, in_mm| WallRow { height_mm, low_side_in_mm: in_mm, high_side_in_mm: 0 };
    let shape = Shape {
        walls: vec![row(0, 0), row(400, 40)],
        roof: vec![RoofRow { x_mm: 0, height_mm: 1_000 }],
        ..outline(&[(0, 0), (3_000, 0), (3_000, 1_000), (2_000, 1_000), (2_000, 1_700), (0, 1_700)])
    };
    let cases = [
        (box_at(500, 300, -7, 500), vec![(Limit::Outline, 7.0)]),
        (box_at(500, 300, 500, 39), vec![(Limit::LowSide, 1.0)]),
        (box_at(500, 300, 500, 40), vec![]),
        (Item { height_mm: 1_003, ..box_at(500, 300, 500, 500) }, vec![(Limit::Roof, 3.0)]),
        // Over the inner corner by 60 and 30: the corner is 30 deep in it.
        (box_at(560, 330, 1_500, 700), vec![(Limit::Outline, 30.0)]),
        (box_at(560, 300, 1_500, 700), vec![]),
    ];
    for (item, expected) in cases {
        let found = fit(&layout(shape.clone(), vec![item]));
        let found: Vec<_> = found.outside.iter().map(|out| (out.past, out.by_mm)).collect();
        assert_eq!(found, expected, "{item:?}");
    }
}

#[test]
fn a_drawer_is_told_what_it_cannot_open_against() {
    let opened = Opened { y_mm: -400, length_mm: 600, width_mm: 400, base_mm: 100, height_mm: 200, x_mm: 0 };
    let chest = Item { opened: Some(opened), ..box_at(600, 450, 500, 500) };
    let seat = box_at(700, 200, 900, 0);
    let van = |items, together| Layout { shape: Shape::square(3_000, 1_700), items, together };
    let stuck = |layout: &Layout| {
        fit(layout).stuck.iter().map(|stuck| (stuck.item, stuck.by, stuck.depth_mm)).collect::<Vec<_>>()
    };
    assert_eq!(stuck(&van(vec![chest, seat], vec![])), [(0, Obstacle::Thing(Thing::Item(1)), 100.0)]);
    // High enough to pull it over the seat.
    let low_seat = Item { height_mm: 100, ..seat };
    assert_eq!(stuck(&van(vec![chest, low_seat], vec![])), []);
    let at_the_wall = Item { y_mm: 350, ..chest };
    assert_eq!(stuck(&van(vec![at_the_wall], vec![])), [(0, Obstacle::Limit(Limit::Outline), 50.0)]);
    // Two that open towards one another: one after the other, but not both.
    let facing = Item { x_mm: 1_100, y_mm: 450, turn_deg: 180.0, ..chest };
    let far = Item { y_mm: 1_000, ..chest };
    assert_eq!(stuck(&van(vec![far, facing], vec![])), []);
    let both = stuck(&van(vec![far, facing], vec![(0, 1)]));
    let by = |item| Obstacle::Thing(Thing::Opened(item));
    assert_eq!(both, [(0, by(1), 250.0), (1, by(0), 250.0)]);
}

/// Source of the first two: reference values made with Shapely (free space shrunk by half the body); the others by hand.
#[test]
fn ways_are_as_wide_as_their_narrowest_place() {
    let van = |items| layout(Shape::square(3_000, 1_700), items);
    let narrow = van(vec![box_at(1_900, 700, 0, 0), box_at(1_000, 500, 1_200, 1_200)]);
    let found = way(&narrow, at(2_700, 850), at(300, 1_200));
    assert_eq!((found.passes, found.widest_mm), (true, 500.0));
    let place = found.narrowest.unwrap();
    assert_eq!((place.from.y, place.to.y, place.gap_mm), (700.0, 1_200.0, 500.0));
    // Diagonal, between two corners: 300 · √2.
    let diagonal = van(vec![box_at(1_000, 700, 0, 0), box_at(1_700, 700, 1_300, 1_000)]);
    let found = way(&diagonal, at(2_700, 500), at(500, 1_200));
    assert!((found.widest_mm - 424.264_068_7).abs() < 1e-6 && !found.passes, "{found:?}");
    // Nothing gets through what touches, whatever its shape.
    let wall = van(vec![box_at(500, 850, 1_000, 0), box_at(500, 850, 1_499, 850)]);
    assert_eq!(way(&wall, at(200, 400), at(2_800, 400)).widest_mm, 0.0);
    // What begins above the head or ends below the feet is in nobody's way.
    let above = van(vec![Item { base_mm: 1_900, ..box_at(500, 1_700, 1_000, 0) }]);
    assert!(way(&above, at(300, 850), at(2_700, 850)).passes);
}

#[test]
fn a_door_lets_through_what_it_is_wide_and_nobody_goes_round_outside() {
    let side = Door { wall: 0, from_mm: 2_000, width_mm: 800, height_mm: 1_500, ..Door::default() };
    let rear = Door { kind: DoorKind::Rear, wall: 3, from_mm: 500, width_mm: 700, height_mm: 1_500 };
    let shape = Shape { doors: vec![side, rear], ..Shape::square(3_000, 1_700) };
    let empty = layout(shape.clone(), vec![]);
    assert_eq!(way(&empty, Place::Door(0), Place::Door(1)).widest_mm, 700.0);
    let through = way(&empty, at(1_500, 900), Place::Door(0));
    assert_eq!((through.widest_mm, through.narrowest.unwrap().gap_mm), (800.0, 800.0));
    // A wall across the van: from door to door only outside, which does not count.
    let parted = layout(shape.clone(), vec![box_at(100, 1_700, 1_000, 0)]);
    assert_eq!(way(&parted, Place::Door(0), Place::Door(1)).widest_mm, 0.0);
    assert_eq!(way(&parted, Place::Door(1), Place::Door(0)).widest_mm, 0.0);
    // Two doors in one wall with a wall between them.
    let second = Door { from_mm: 200, ..side };
    let same_side = Shape { doors: vec![side, second], ..Shape::square(3_000, 1_700) };
    for (items, widest) in
        [(vec![], 800.0), (vec![box_at(100, 1_700, 1_500, 0)], 0.0), (vec![box_at(100, 1_100, 1_500, 0)], 600.0)]
    {
        let van = layout(same_side.clone(), items);
        for (from, to) in [(0, 1), (1, 0)] {
            assert_eq!(way(&van, Place::Door(from), Place::Door(to)).widest_mm, widest);
        }
    }
    // The outline the other way round is the same van.
    let mut reversed = shape;
    reversed.outline.reverse();
    reversed.doors = vec![Door { wall: 2, from_mm: 3_000 - 2_800, ..side }];
    assert_eq!(way(&layout(reversed, vec![]), Place::Door(0), at(2_400, 900)).widest_mm, 800.0);
    // A post in the doorway.
    let post = layout(Shape { doors: vec![side], ..Shape::square(3_000, 1_700) }, vec![box_at(100, 100, 2_250, 0)]);
    assert_eq!(way(&post, Place::Door(0), at(1_000, 1_000)).widest_mm, 450.0);
}

#[test]
fn one_stands_before_a_bed_and_gets_out_of_it_by_two_doors() {
    let side = Door { wall: 0, from_mm: 2_000, width_mm: 800, height_mm: 1_500, ..Door::default() };
    let rear = Door { kind: DoorKind::Rear, wall: 3, from_mm: 500, width_mm: 700, height_mm: 1_500 };
    let shape = Shape { doors: vec![side, rear], ..Shape::square(3_000, 1_700) };
    let bed = box_at(1_900, 800, 0, 900);
    let counter = box_at(1_500, 500, 0, 0);
    let van = layout(shape, vec![bed, counter]);
    let beside = |item, side| Place::Beside { item, side };
    assert_eq!(way(&van, Place::Door(0), beside(0, None)).widest_mm, 800.0);
    // Between the bed and the counter there are 400 mm.
    assert_eq!(way(&van, Place::Door(0), beside(1, Some(2))).widest_mm, 400.0);
    // Its back is at the wall.
    assert_eq!(way(&van, Place::Door(0), beside(0, Some(2))).widest_mm, 0.0);
    let walkway = Walkway::new(&van, &body(450), &[]);
    let out: Vec<_> = walkway.ways_out(0).into_iter().map(|out| (out.door, out.way.passes)).collect();
    assert_eq!(out, [(0, true), (1, true)]);
    let mut blocked = van;
    blocked.items.push(box_at(300, 1_700, 1_950, 0));
    let walkway = Walkway::new(&blocked, &body(450), &[]);
    assert!(!walkway.ways_out(0)[0].way.passes);
    assert!(walkway.ways_out(0)[1].way.passes);
}

#[test]
fn walls_that_come_in_narrow_the_way_but_not_the_door() {
    let side = Door { wall: 0, from_mm: 1_000, width_mm: 600, height_mm: 1_500, ..Door::default() };
    let row = |height_mm, in_mm| WallRow { height_mm, low_side_in_mm: in_mm, high_side_in_mm: in_mm };
    let shape = Shape { doors: vec![side], walls: vec![row(0, 0), row(1_900, 100)], ..Shape::square(3_000, 1_700) };
    let van = layout(shape, vec![box_at(1_000, 1_000, 2_000, 0)]);
    assert_eq!(way(&van, at(500, 800), at(2_500, 1_300)).widest_mm, 600.0);
    assert_eq!(way(&van, Place::Door(0), at(500, 800)).widest_mm, 600.0);
}

/// Brute force: the middle of the body on a grid of 10 mm, from place to place by the four neighbours. The grid can only
/// lose ways, by less than two steps of it.
#[test]
fn the_widest_way_is_that_of_a_fine_grid() {
    let mut chance = Chance::new(9);
    let mut compared = 0;
    for _ in 0..25 {
        let mut draw = |most: u32| chance.below(most).cast_signed();
        let (length, width) = (1_500 + draw(1_000), 1_000 + draw(600));
        let items: Vec<Item> = (0..=draw(5))
            .map(|_| {
                let turn_deg = if draw(2) == 0 { 0.0 } else { f64::from(draw(360)) };
                Item { turn_deg, ..box_at(100 + draw(700), 100 + draw(300), draw(2_000), draw(1_400)) }
            })
            .collect();
        let van = layout(Shape::square(length, width), items);
        let (from, to) = ((150, 150), (length / 10 * 10 - 150, width / 10 * 10 - 150));
        let widest = way(&van, at(from.0, from.1), at(to.0, to.1)).widest_mm;
        let on_grid = widest_on_grid(&van, (length, width), from, to);
        assert!(on_grid <= widest + 1.0 && on_grid >= widest - 30.0, "{van:?}: {widest} on the grid {on_grid}");
        compared += i32::from(widest > 30.0);
    }
    assert!(compared > 8, "{compared}");
}

/// Twice the greatest clearance on the best way over the grid (widest paths, as Dijkstra's shortest).
fn widest_on_grid(van: &Layout, (length, width): (i32, i32), from: (i32, i32), to: (i32, i32)) -> f64 {
    let (columns, rows) = (length / 10 + 1, width / 10 + 1);
    let clear = |column: i32, row: i32| {
        let (x, y) = (f64::from(column * 10), f64::from(row * 10));
        let walls = x.min(f64::from(length) - x).min(y).min(f64::from(width) - y);
        van.items.iter().map(|item| clearance(item, x, y)).fold(walls, f64::min)
    };
    let mut best = vec![-1.0_f64; usize::try_from(columns * rows).unwrap()];
    let number = |column: i32, row: i32| usize::try_from(column * rows + row).unwrap();
    let mut waiting = std::collections::BTreeSet::new();
    // Clearances are ordered as the bits of numbers above nothing are.
    let key = |clear: f64| (clear + 10_000.0).to_bits();
    let start = (from.0 / 10, from.1 / 10);
    best[number(start.0, start.1)] = clear(start.0, start.1);
    waiting.insert((key(best[number(start.0, start.1)]), start));
    while let Some((_, (column, row))) = waiting.pop_last() {
        let here = best[number(column, row)];
        if (column, row) == (to.0 / 10, to.1 / 10) {
            return (2.0 * here).max(0.0);
        }
        for (column, row) in [(column + 1, row), (column - 1, row), (column, row + 1), (column, row - 1)] {
            if (0..columns).contains(&column) && (0..rows).contains(&row) {
                let there = here.min(clear(column, row));
                if there > best[number(column, row)] {
                    best[number(column, row)] = there;
                    waiting.insert((key(there), (column, row)));
                }
            }
        }
    }
    0.0
}

/// How far a place is from a box; less than nothing within it.
fn clearance(item: &Item, x: f64, y: f64) -> f64 {
    let (sine, cosine) = libm::sincos(item.turn_deg.to_radians());
    let (x, y) = (x - f64::from(item.x_mm), y - f64::from(item.y_mm));
    let (own_x, own_y) = (x * cosine + y * sine, y * cosine - x * sine);
    let (length, width) = (f64::from(item.length_mm), f64::from(item.width_mm));
    let (out_x, out_y) = ((-own_x).max(own_x - length), (-own_y).max(own_y - width));
    if out_x <= 0.0 && out_y <= 0.0 { out_x.max(out_y) } else { libm::hypot(out_x.max(0.0), out_y.max(0.0)) }
}

/// Source: smallest rectangles of consecutive squares, Korf 2003 and 2004, OEIS A038666 and A081287; the squared rectangle
/// of Moroń, 1925; the rooms by CP-SAT (reference values).
#[test]
fn published_squares_fit_or_do_not() {
    let squares = |count: i32| (1..=count).map(|side| (side, side)).collect::<Vec<_>>();
    let moron = [18, 15, 14, 10, 9, 8, 7, 4, 1].map(|side| (side, side)).to_vec();
    let cases = [
        ((9, 11), squares(6), true),
        ((8, 12), squares(6), false),
        ((14, 15), squares(8), true),
        ((7, 8), squares(5), false),
        ((23, 29), squares(12), true),
        ((33, 32), moron, true),
        ((2_600, 1_700), vec![(1_900, 700), (900, 500), (600, 450), (1_000, 550), (700, 400)], true),
        ((2_600, 1_700), vec![(1_900, 900), (1_900, 800), (800, 800)], false),
    ];
    for ((length, width), sides, fits) in cases {
        let rectangle = |side: &(i32, i32)| Rectangle { length_mm: side.0, width_mm: side.1, may_turn: true };
        let rectangles: Vec<_> = sides.iter().map(rectangle).collect();
        let decision = fits_rectangles(&Room::empty(length, width), &rectangles, 20_000_000);
        assert_eq!(matches!(decision, Decision::Fits(_)), fits, "{sides:?}");
        assert_ne!(decision, Decision::Unknown);
    }
}

/// Brute force: every place and turn of up to four small rectangles in a small room, some of it taken.
#[test]
fn small_rooms_agree_with_every_place_tried() {
    let mut chance = Chance::new(4);
    let mut fitting = 0;
    for _ in 0..600 {
        let mut draw = |from: i32, to: i32| from + chance.below((to - from + 1).unsigned_abs()).cast_signed();
        let (length, width) = (draw(3, 7), draw(3, 6));
        let mut room = Room::empty(length, width);
        for _ in 0..draw(0, 2) {
            let (x_mm, y_mm) = (draw(0, length - 1), draw(0, width - 1));
            let (length_mm, width_mm) = (draw(1, 2), draw(1, 2));
            room.blocks.push(kerbstead_core::space::rectangles::Block { x_mm, y_mm, length_mm, width_mm });
        }
        let mut rectangles = Vec::new();
        for _ in 0..draw(1, 5) {
            rectangles.push(Rectangle { length_mm: draw(1, 4), width_mm: draw(1, 4), may_turn: draw(0, 3) > 0 });
        }
        let mut taken = vec![false; usize::try_from(length * width).unwrap()];
        for block in &room.blocks {
            for x in block.x_mm..(block.x_mm + block.length_mm).min(length) {
                for y in block.y_mm..(block.y_mm + block.width_mm).min(width) {
                    taken[usize::try_from(x * width + y).unwrap()] = true;
                }
            }
        }
        let expected = every_place((length, width), &mut taken, &rectangles);
        let decision = fits_rectangles(&room, &rectangles, 1_000_000);
        assert_eq!(matches!(decision, Decision::Fits(_)), expected, "{room:?} {rectangles:?}");
        assert_ne!(decision, Decision::Unknown);
        fitting += i32::from(expected);
    }
    assert!((120..480).contains(&fitting), "{fitting}");
}

fn mark(taken: &mut [bool], cells: &[usize], value: bool) {
    for cell in cells {
        taken[*cell] = value;
    }
}

fn every_place((length, width): (i32, i32), taken: &mut [bool], rectangles: &[Rectangle]) -> bool {
    let Some((first, rest)) = rectangles.split_first() else { return true };
    let turns = [(first.length_mm, first.width_mm), (first.width_mm, first.length_mm)];
    for (long, wide) in turns.into_iter().take(if first.may_turn { 2 } else { 1 }) {
        for x in 0..=length - long {
            for y in 0..=width - wide {
                let cells: Vec<usize> = (x..x + long)
                    .flat_map(|x| (y..y + wide).map(move |y| usize::try_from(x * width + y).unwrap()))
                    .collect();
                if cells.iter().any(|cell| taken[*cell]) {
                    continue;
                }
                mark(taken, &cells, true);
                let fits = every_place((length, width), taken, rest);
                mark(taken, &cells, false);
                if fits {
                    return true;
                }
            }
        }
    }
    false
}

/// A way must never be called for where an arrangement that has it exists: small rooms, each place tried, with a width that
/// is free at every cross-section of a stretch.
#[test]
fn a_passage_that_can_be_kept_is_never_refused() {
    let mut chance = Chance::new(31);
    let mut kept = 0;
    for _ in 0..1_500 {
        let mut draw = |from: i32, to: i32| from + chance.below((to - from + 1).unsigned_abs()).cast_signed();
        let (length, width) = (draw(3, 6), draw(3, 5));
        let (from_mm, width_mm) = (draw(0, length - 1), draw(1, 2));
        let passage = Passage { from_mm, to_mm: draw(from_mm + 1, length), width_mm };
        let count = draw(1, 4);
        let rectangles: Vec<_> = (0..count)
            .map(|_| Rectangle { length_mm: draw(1, 3), width_mm: draw(1, 3), may_turn: draw(0, 1) > 0 })
            .collect();
        // The lane at one height, which is one of the ways to keep it.
        for lane in 0..=width - width_mm {
            let mut taken = vec![false; usize::try_from(length * width).unwrap()];
            for x in passage.from_mm..passage.to_mm {
                for y in lane..lane + width_mm {
                    taken[usize::try_from(x * width + y).unwrap()] = true;
                }
            }
            if every_place((length, width), &mut taken, &rectangles) {
                let room = Room { ways_along: vec![passage], ..Room::empty(length, width) };
                let decision = fits_rectangles(&room, &rectangles, 1_000_000);
                assert!(matches!(decision, Decision::Fits(_)), "{room:?} {rectangles:?}");
                kept += 1;
            }
        }
    }
    assert!(kept > 300, "{kept}");
}

/// Source: reference values (the ladder problem of textbooks, Pythagoras); the board of some width against angles tried by
/// hundredths of a degree; Carver's condition at its edges.
#[test]
fn long_things_get_round_corners_upright_and_through_doors() {
    assert!((longest_round_corner_mm(1_000.0, 700.0, 0.0) - 2_391.59).abs() <= 0.01);
    assert!((height_to_tip_mm(1_700.0, 550.0) - 1_786.76).abs() <= 0.01);
    for (first, second, thick) in [(1_000.0, 700.0, 40.0), (600.0, 600.0, 300.0), (2_000.0, 500.0, 450.0)] {
        let tried = (1..9_000).map(|step| {
            let (sine, cosine) = libm::sincos(f64::from(step) * std::f64::consts::PI / 18_000.0);
            (first * cosine + second * sine - thick) / (sine * cosine)
        });
        let least = tried.fold(f64::INFINITY, f64::min);
        assert!((longest_round_corner_mm(first, second, thick) - least).abs() < 0.01, "{first} {second} {thick}");
    }
    assert_eq!(longest_round_corner_mm(500.0, 700.0, 500.0), 0.0);
    let cases =
        [(500.0, 300.0, true), (800.0, 600.0, true), (800.1, 600.0, false), (990.0, 1.0, true), (1_001.0, 1.0, false)];
    for (one, other, passes) in cases {
        assert_eq!(passes_opening(one, other, 600.0, 800.0), passes, "{one} {other}");
    }
}

/// Source: an inch is 25.4 mm (reference values).
#[test]
fn lengths_are_told_to_the_nearest_sixteenth() {
    let cases = [
        (1_000, 39, (3, 8)),
        (611, 24, (1, 16)),
        (38, 1, (1, 2)),
        (0, 0, (0, 1)),
        (254, 10, (0, 1)),
        (25, 1, (0, 1)),
        (1, 0, (1, 16)),
    ];
    for (mm, whole, (numerator, denominator)) in cases {
        assert_eq!(inches(f64::from(mm)), Inches { is_negative: false, whole, numerator, denominator }, "{mm}");
        assert_eq!(inches(-f64::from(mm)), Inches { is_negative: mm > 0, whole, numerator, denominator }, "{mm}");
    }
}

#[test]
fn tape_is_laid_from_one_corner_outwards() {
    let arch = Fixed { x_mm: 1_800, y_mm: 0, length_mm: 700, width_mm: 200, base_mm: 0, height_mm: 250 };
    let shape = Shape { fixed: vec![arch], ..Shape::square(3_000, 1_700) };
    let items = vec![box_at(300, 400, 0, 0), box_at(500, 600, 2_000, 1_000)];
    let marks = taping(&layout(shape, items), 2);
    let told: Vec<_> = marks.iter().map(|mark| (mark.of, mark.corner, mark.along_mm, mark.across_mm)).collect();
    assert_eq!(
        told[..4],
        [
            (Marked::Outline, 2, 0, 0),
            (Marked::Outline, 3, 3_000, 0),
            (Marked::Outline, 0, 3_000, 1_700),
            (Marked::Outline, 1, 0, 1_700)
        ]
    );
    assert_eq!(told[4], (Marked::Fixed(0), 2, 500, 1_500));
    assert_eq!(told[8], (Marked::Item(1), 2, 500, 100));
    assert_eq!(told[12], (Marked::Item(0), 2, 2_700, 1_300));
    assert_eq!((marks.len(), marks[2].straight_mm), (16, 3_448));
    assert_eq!(taping(&Layout::default(), 0), []);
}

#[test]
fn free_room_is_what_nothing_takes() {
    let arch = Fixed { x_mm: 0, y_mm: 0, length_mm: 500, width_mm: 200, base_mm: 0, height_mm: 250 };
    let shape = Shape { fixed: vec![arch], ..Shape::square(3_000, 1_700) };
    let crates = vec![
        box_at(300, 300, 500, 0),
        box_at(300, 300, 600, 100),
        Item { turn_deg: 45.0, ..box_at(200, 200, 1_300, 200) },
    ];
    let room = Item { height_mm: 500, ..box_at(1_900, 700, -100, 0) };
    let bay = |level| Bay { room, level, usable_percent: 50.0 };
    let report = storage(&layout(shape, crates), &[bay(Level::UnderBed), bay(Level::Floor)], &[]);
    // 1800 x 700 x 500, less the arch, the two crates (200 x 200 of them together) and the turned one.
    let whole = 1_800.0 * 700.0 * 500.0 / 1e6;
    let taken = (500.0 * 200.0 * 250.0 + (2.0 * 90_000.0 - 40_000.0 + 40_000.0) * 400.0) / 1e6;
    assert_eq!(report.levels.len(), 2);
    for level in &report.levels {
        assert!(
            (level.whole_l - whole).abs() < 1e-6
                && (level.free_l - (whole - taken)).abs() < 1e-6
                && level.usable_l == level.free_l / 2.0,
            "{level:?}"
        );
    }
    let goods = |litres, level| SoftGoods { litres, level };
    let van = layout(Shape::square(3_000, 1_700), vec![]);
    let bays = [Bay { room: box_at(1_000, 1_000, 0, 0), level: Level::Floor, usable_percent: 100.0 }];
    let fits = |goods: &[SoftGoods]| storage(&van, &bays, goods).fits;
    assert!(fits(&[goods(300.0, None), goods(100.0, Some(Level::Floor))]));
    assert!(!fits(&[goods(301.0, None), goods(100.0, Some(Level::Floor))]));
    assert!(!fits(&[goods(1.0, Some(Level::Roof))]));
}

/// Whatever numbers come in, an answer comes out.
#[test]
fn nothing_that_comes_in_makes_it_stop() {
    let wild = [i32::MIN, -100_001, -1, 0, 1, 100_001, i32::MAX];
    let mut chance = Chance::new(12);
    for _ in 0..300 {
        let mut any = || wild[chance.below(7) as usize];
        let opened =
            Opened { x_mm: any(), y_mm: any(), length_mm: any(), width_mm: any(), base_mm: any(), height_mm: any() };
        let item = |mut any: Box<dyn FnMut() -> i32 + '_>| Item {
            x_mm: any(),
            y_mm: any(),
            length_mm: any(),
            width_mm: any(),
            height_mm: any(),
            base_mm: any(),
            turn_deg: [f64::NAN, f64::INFINITY, -1e300, 33.0][any().unsigned_abs() as usize % 4],
            opened: Some(opened),
            ..Item::default()
        };
        let items = vec![item(Box::new(&mut any)), item(Box::new(&mut any))];
        let fixed =
            Fixed { x_mm: any(), y_mm: any(), length_mm: any(), width_mm: any(), base_mm: any(), height_mm: any() };
        let door = Door {
            wall: any().unsigned_abs() as usize,
            from_mm: any(),
            width_mm: any(),
            height_mm: any(),
            ..Door::default()
        };
        let near = Door { wall: 1, ..door };
        let row = WallRow { height_mm: any(), low_side_in_mm: any(), high_side_in_mm: any() };
        let roof = RoofRow { x_mm: any(), height_mm: any() };
        let outline = vec![
            Spot { x_mm: any(), y_mm: any() },
            Spot { x_mm: any(), y_mm: any() },
            Spot { x_mm: any(), y_mm: any() },
            Spot { x_mm: any(), y_mm: any() },
        ];
        let shape = Shape {
            outline,
            fixed: vec![fixed],
            doors: vec![door, near],
            walls: vec![row, row],
            roof: vec![roof, roof],
        };
        let layout = Layout { shape, items, together: vec![(0, 1), (1, 9)] };
        let _ = layout.shape.faults();
        let _ = fit(&layout);
        let _ = taping(&layout, 1);
        let body = Body { width_mm: any(), from_mm: any(), to_mm: any() };
        let walkway = Walkway::new(&layout, &body, &[0, 7]);
        let _ = walkway.way(Place::Door(0), Place::Beside { item: 0, side: Some(any().unsigned_abs() as usize) });
        let _ = walkway.way(Place::Door(9), Place::On(any().unsigned_abs() as usize));
        let _ = walkway.ways_out(0);
        let _ = storage(&layout, &[Bay { room: layout.items[0], level: Level::Roof, usable_percent: f64::NAN }], &[]);
        let depth_mm = any();
        let rules = vec![
            Rule::DoorClear { door: 0, depth_mm, height_mm: any() },
            Rule::Clear { of: Side { item: 0, side: Some(2) }, depth_mm },
        ];
        let ways = vec![(Place::Door(1), Place::Beside { item: 1, side: None })];
        let freedoms = vec![Freedom::Moves { may_turn: true }; 2];
        let mut search = Search::new(&Wish { layout, freedoms, rules, ways, body, wanted: 2 });
        for _ in 0..3 {
            search.step();
        }
        let rectangle = Rectangle { length_mm: any(), width_mm: any(), may_turn: true };
        let _ = fits_rectangles(&Room::empty(any(), any()), &[rectangle, rectangle], 1_000);
    }
}
