//! Vans to be arranged, made by chance from a seed.

use kerbstead_core::money::chance::Chance;
use kerbstead_core::plan::{
    BuiltIn, Distance, Door as PlanDoor, Item as PlanItem, Keeps, OpenedBox, Placement, Plan, Room, VanSide, Vehicle,
};
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

/// The plan of a van with so many things at their places: a bed, a row along a wall, and boxes at all heights, some of them
/// turned.
pub fn furnished(count: u32) -> Plan {
    let sized = |id: u32, [length, width, height]: [f64; 3]| PlanItem {
        id,
        name: format!("Thing {id}"),
        quantity: 1,
        mass_kg: Some(1.5.into()),
        length_mm: Some(length),
        width_mm: Some(width),
        height_mm: Some(height),
        ..PlanItem::default()
    };
    let at = |id: u32, thing: u32, x: u32, y: u32| Placement {
        id,
        thing: Some(thing),
        x_mm: Some(f64::from(x)),
        y_mm: Some(f64::from(y)),
        ..Placement::default()
    };
    let mut plan = Plan {
        title: "Furnished".to_owned(),
        vehicle: Vehicle {
            inside_length_mm: Some(4_000.0),
            inside_width_mm: Some(1_700.0),
            inside_height_mm: Some(1_900.0),
            empty_mass_kg: Some(2_000.0),
            gross_limit_kg: Some(3_500.0),
            ..Vehicle::default()
        },
        doors: vec![
            PlanDoor {
                id: 1,
                side: VanSide::Right,
                from_mm: 300.0,
                width_mm: 1_000.0,
                height_mm: 1_500.0,
                clear_mm: None,
            },
            PlanDoor {
                id: 2,
                side: VanSide::Rear,
                from_mm: 200.0,
                width_mm: 1_300.0,
                height_mm: 1_600.0,
                clear_mm: None,
            },
        ],
        ..Plan::default()
    };
    for number in 0..count {
        let (item, place) = (10 + number, 10_000 + number);
        if number == 0 {
            plan.kit.push(sized(item, [1_900.0, 750.0, 450.0]));
            plan.placements.push(Placement { sleeps: 1, ..at(place, item, 2_050, 0) });
            continue;
        }
        let (column, row) = (number % 20, number / 20);
        plan.kit.push(sized(item, [180.0, 160.0, 240.0]));
        plan.placements.push(Placement {
            turn_deg: if number % 7 == 3 { 12.5 } else { 0.0 },
            base_mm: f64::from(row * 250),
            level: if row == 0 { Level::Floor } else { Level::Wall },
            ..at(place, item, 60 + column * 190, 1_300 + row % 2 * 90)
        });
    }
    plan
}

/// The plan of a van made by chance, front and rear changed about, so that its rear doors are at the rear.
pub fn plan_of(wish: &Wish) -> Plan {
    let shape = &wish.layout.shape;
    let length = shape.outline.iter().map(|spot| spot.x_mm).max().unwrap_or(0);
    let width = shape.outline.iter().map(|spot| spot.y_mm).max().unwrap_or(0);
    let mm = f64::from;
    let mut plan = Plan {
        vehicle: Vehicle {
            inside_length_mm: Some(mm(length)),
            inside_width_mm: Some(mm(width)),
            inside_height_mm: Some(1_900.0),
            ..Vehicle::default()
        },
        room: Room { body_width_mm: Some(mm(wish.body.width_mm)), ..Room::default() },
        ..Plan::default()
    };
    for (id, part) in (1..).zip(&shape.fixed) {
        plan.built_ins.push(BuiltIn {
            id,
            x_mm: mm(length - part.x_mm - part.length_mm),
            y_mm: mm(part.y_mm),
            length_mm: mm(part.length_mm),
            width_mm: mm(part.width_mm),
            height_mm: mm(part.height_mm),
            ..BuiltIn::default()
        });
    }
    for (id, door) in (11..).zip(&shape.doors) {
        let (side, from_mm) = match door.kind {
            DoorKind::Rear => (VanSide::Rear, width - door.from_mm - door.width_mm),
            _ => (VanSide::Left, length - door.from_mm - door.width_mm),
        };
        let (width_mm, height_mm) = (mm(door.width_mm), mm(door.height_mm));
        let number = usize::try_from(id - 11).unwrap_or(0);
        let clear = wish.rules.iter().find_map(|rule| match rule {
            Rule::DoorClear { door, depth_mm, .. } if *door == number => Some(mm(*depth_mm)),
            _ => None,
        });
        plan.doors.push(PlanDoor { id, side, from_mm: mm(from_mm), width_mm, height_mm, clear_mm: clear });
    }
    let freedoms = wish.freedoms.iter();
    for ((number, item), freedom) in (0_u32..).zip(&wish.layout.items).zip(freedoms) {
        let (id, at) = (100 + number, usize::try_from(number).unwrap_or(0));
        let sizes = [item.length_mm, item.width_mm, item.height_mm].map(|size| Some(mm(size)));
        let [length_mm, width_mm, height_mm] = sizes;
        plan.kit.push(PlanItem {
            id,
            name: format!("Thing {id}"),
            length_mm,
            width_mm,
            height_mm,
            ..PlanItem::default()
        });
        let is_goal = |place: &Place| matches!(place, Place::Beside { item, .. } if *item == at);
        let opened = item.opened.map(|open| OpenedBox {
            x_mm: mm(open.x_mm),
            y_mm: mm(open.y_mm),
            length_mm: Some(mm(open.length_mm)),
            width_mm: Some(mm(open.width_mm)),
            base_mm: Some(mm(open.base_mm)),
            height_mm: Some(mm(open.height_mm)),
            with_others: false,
        });
        plan.placements.push(Placement {
            id: 200 + number,
            thing: Some(id),
            level: item.level,
            x_mm: Some(mm(length - item.x_mm - item.length_mm)),
            y_mm: Some(mm(item.y_mm)),
            base_mm: mm(item.base_mm),
            pinned: *freedom == Freedom::Pinned,
            reached: wish.ways.iter().any(|(_, to)| is_goal(to)),
            sleeps: u32::from(number == 0),
            opened,
            ..Placement::default()
        });
    }
    let item = |side: &Side| u32::try_from(side.item).ok().map(|number| 100 + number);
    for (id, rule) in (300..).zip(&wish.rules) {
        let (keeps, first, second, most_mm) = match rule {
            Rule::Apart { first, second, least_mm } => (Keeps::Apart, first, second, least_mm),
            Rule::Near { first, second, most_mm } => (Keeps::Near, first, second, most_mm),
            Rule::Clear { .. } | Rule::DoorClear { .. } => continue,
        };
        let distance_mm = Some(mm(*most_mm));
        plan.distances.push(Distance {
            id,
            of: item(first),
            keeps,
            other: item(second),
            distance_mm,
            ..Distance::default()
        });
    }
    plan
}
