//! A van to begin with, and a first place for a thing.
//!
//! Doors, arches and walls by size class are common practice, no source: nobody's van is exactly so, and a tape wins.

use super::constants::{MOST_MM, usual_inside_mm};
use super::fit::meets;
use super::input::{Placed, shape_of, stood_mm};
use super::item::Solid;
use super::moving::Moving;
use crate::plan::{
    BuiltIn, Corner, Door, Edit, Group, Id, Level, List, Path, Placement, Plain, Plan, RoofRow, SizeClass, Stands,
    VanSide, WallRow,
};

/// How far apart places are that are tried for a thing, in millimetres.
const TRIED_EVERY_MM: f64 = 50.0;

/// How thick the top of a frame usually is, in millimetres. Common practice, no source.
const FRAME_MM: f64 = 40.0;
/// Sizes that differ by no more are taken for the same, in millimetres.
const AS_LARGE_MM: f64 = 100.0;

/// What is usual in a van of one class, in millimetres.
struct UsualVan {
    /// Side door on the right: from the front, width, height.
    side: [f64; 3],
    /// Rear doors: width, height.
    rear: [f64; 2],
    /// Wheel arches: from the front, length, width, height.
    arch: [f64; 4],
    /// Walls come in so far at those heights.
    walls: &'static [(f64, f64)],
}

const fn usual_van(size: SizeClass) -> UsualVan {
    match size {
        SizeClass::Small => UsualVan {
            side: [250.0, 620.0, 1_050.0],
            rear: [1_150.0, 1_080.0],
            arch: [950.0, 600.0, 130.0, 250.0],
            walls: &[(0.0, 0.0), (700.0, 30.0), (1_200.0, 120.0)],
        },
        SizeClass::Medium => UsualVan {
            side: [300.0, 950.0, 1_260.0],
            rear: [1_380.0, 1_280.0],
            arch: [1_350.0, 750.0, 190.0, 280.0],
            walls: &[(0.0, 0.0), (800.0, 30.0), (1_380.0, 110.0)],
        },
        SizeClass::HighRoof => UsualVan {
            side: [300.0, 1_100.0, 1_700.0],
            rear: [1_500.0, 1_740.0],
            arch: [1_750.0, 800.0, 200.0, 300.0],
            walls: &[(0.0, 0.0), (900.0, 20.0), (1_880.0, 120.0)],
        },
        SizeClass::LongHighRoof => UsualVan {
            side: [350.0, 1_200.0, 1_720.0],
            rear: [1_540.0, 1_760.0],
            arch: [2_350.0, 850.0, 200.0, 300.0],
            walls: &[(0.0, 0.0), (900.0, 20.0), (1_900.0, 120.0)],
        },
    }
}

/// The change that gives the plan the inside of a usual van of its class, in place of what is told of doors, arches, walls,
/// roof and corners; all of it is marked as a guess. Measures of the inside that are there stay. `name` has the words
/// of the catalogue.
pub fn usual_inside(plan: &Plan, name: &dyn Fn(&'static str) -> String) -> Edit {
    let size = plan.vehicle.size;
    let (van, usual) = (usual_van(size), usual_inside_mm(size));
    let own = [plan.vehicle.inside_length_mm, plan.vehicle.inside_width_mm, plan.vehicle.inside_height_mm];
    let [length_mm, width_mm, height_mm] = [0, 1, 2].map(|at: usize| own[at].unwrap_or(usual[at]));
    let scale = length_mm / usual[0];
    let mut edits = Vec::new();
    for list in [List::Corners, List::BuiltIns, List::Doors, List::WallRows, List::RoofRows] {
        edits.extend(list.ids(plan).into_iter().map(|id| Edit::Remove { list, id }));
    }
    let mut guesses = Vec::new();
    for (at, field) in ["inside_length_mm", "inside_width_mm", "inside_height_mm"].into_iter().enumerate() {
        if own[at].is_none() {
            let path = Path::section("vehicle").child(field);
            edits.push(Edit::Set { path: path.clone(), value: usual[at].into() });
            guesses.push(path);
        }
    }
    let mut ids = plan.next_ids(5 + van.walls.len()).into_iter();
    let mut insert = |list: List, at: usize, entry: &dyn Fn(Id) -> serde_json::Value, fields: &[&str]| {
        let id = ids.next().unwrap_or(1);
        guesses.extend(fields.iter().map(|field| Path::entry(list.name(), id).child(field)));
        edits.push(Edit::Insert { list, at, entry: entry(id) });
    };
    let [from, arch_length, arch_width, arch_height] = van.arch;
    let arch = |y_mm: f64, key: &'static str| BuiltIn {
        name: name(key),
        x_mm: libm::round(from * scale),
        y_mm,
        length_mm: arch_length,
        width_mm: arch_width,
        height_mm: arch_height,
        ..BuiltIn::default()
    };
    let sizes = ["x_mm", "y_mm", "length_mm", "width_mm", "height_mm"];
    let arches = [arch(0.0, "inside-arch-left"), arch(width_mm - arch_width, "inside-arch-right")];
    for (at, arch) in arches.into_iter().enumerate() {
        insert(List::BuiltIns, at, &|id| BuiltIn { id, ..arch.clone() }.to_plain(), &sizes);
    }
    let [door_from, door_width, door_height] = van.side;
    let [rear_width, rear_height] = van.rear.map(|mm| mm.min(width_mm));
    let doors = [
        (VanSide::Right, libm::round(door_from * scale), door_width, door_height),
        (VanSide::Rear, libm::round((width_mm - rear_width) / 2.0), rear_width, rear_height),
    ];
    for (at, (side, from_mm, width_mm, height_mm)) in doors.into_iter().enumerate() {
        let height_mm = height_mm.min(self::own(height_mm, own[2]));
        let door = |id| Door { id, side, from_mm, width_mm, height_mm, clear_mm: None }.to_plain();
        insert(List::Doors, at, &door, &["from_mm", "width_mm", "height_mm"]);
    }
    for (at, (height_mm, in_mm)) in van.walls.iter().copied().enumerate() {
        let wall = |id| WallRow { id, height_mm, left_in_mm: in_mm, right_in_mm: in_mm }.to_plain();
        insert(List::WallRows, at, &wall, &["height_mm", "left_in_mm", "right_in_mm"]);
    }
    insert(List::RoofRows, 0, &|id| RoofRow { id, x_mm: 0.0, height_mm }.to_plain(), &["height_mm"]);
    edits.push(Edit::Guess { paths: guesses, guessed: true });
    Edit::all(edits)
}

/// No more than the height that was measured.
fn own(usual: f64, measured: Option<f64>) -> f64 {
    measured.map_or(usual, |measured| usual.min(measured))
}

/// The change that gives a thing of the kit a place: what one sleeps on lies on a thing that is as large and has its place,
/// all else is put to the first free place on the floor, from the rear left on, or has none yet. A large frame counts as
/// hollow, which is marked as a guess.
pub fn place(plan: &Plan, item: Id) -> Option<Edit> {
    let of = plan.item(item)?;
    let id = plan.next_id();
    let size = stood_mm(of, Stands::Flat);
    let is = |least_length: f64, least_width: f64| {
        size.is_some_and(|[length, width, _]| length >= least_length && width >= least_width)
    };
    let is_bed = of.group == Group::Sleeping && is(1_500.0, 500.0);
    let is_frame = of.group == Group::Structure && is(1_500.0, 500.0);
    let mut placement = Placement {
        id,
        thing: Some(item),
        reached: of.group == Group::Kitchen && is(400.0, 300.0),
        sleeps: if !is_bed {
            0
        } else if is(0.0, 1_100.0) {
            plan.people.clamp(1, 2)
        } else {
            1
        },
        clear_under_mm: size.filter(|_| is_frame).map(|[_, _, height]| (height - FRAME_MM).max(0.0)),
        ..Placement::default()
    };
    if let Some(below) = is_bed.then(|| as_large(plan, size?)).flatten() {
        let under = plan.placements.iter().find(|other| other.id == below.0)?;
        placement = Placement {
            level: Level::Counter,
            x_mm: under.x_mm,
            y_mm: under.y_mm,
            turn_deg: under.turn_deg,
            base_mm: below.1,
            ..placement
        };
    } else if let Some([x, y]) = free_place(plan, placement) {
        (placement.x_mm, placement.y_mm) = (Some(x), Some(y));
        if is_under_something(plan, placement) {
            placement.level = Level::UnderBed;
        }
    }
    let insert = Edit::Insert { list: List::Placements, at: plan.placements.len(), entry: placement.to_plain() };
    let guess = Path::entry("placements", id).child("clear_under_mm");
    let guessed = placement.clear_under_mm.map(|_| Edit::Guess { paths: vec![guess], guessed: true });
    Some(Edit::all([insert].into_iter().chain(guessed)))
}

/// Whether something reaches over it.
fn is_under_something(plan: &Plan, placement: Placement) -> bool {
    let mut plan = plan.clone();
    plan.placements.push(placement);
    let placed = Placed::new(&plan);
    let Some(own) = placed.number_of(placement.id).map(|at| placed.layout.items[at].solid()) else { return false };
    let column = Solid { from_mm: own.to_mm, to_mm: MOST_MM, ..own };
    placed.layout.items.iter().any(|other| other.is_inside() && meets(&other.solid(), &column))
}

/// A thing at its place that is as long and as wide, with the height at which it ends.
fn as_large(plan: &Plan, [length, width, _]: [f64; 3]) -> Option<(Id, f64)> {
    let placed = Placed::new(plan);
    let mut things = placed.things.iter().zip(&placed.layout.items);
    let is_near = |own: i32, other: f64| (f64::from(own) - other).abs() <= AS_LARGE_MM;
    let found = things.find(|(thing, item)| {
        thing.sleeps == 0 && item.is_inside() && is_near(item.length_mm, length) && is_near(item.width_mm, width)
    });
    found.map(|(thing, item)| (thing.id, f64::from(item.base_mm.saturating_add(item.height_mm))))
}

/// Items of the kit with all their sizes, of which there are more than have a place: the largest on the floor first.
pub fn without_place(plan: &Plan) -> Vec<Id> {
    let has = |id: Id| plan.placements.iter().filter(|placement| placement.thing == Some(id)).count();
    let free = plan.carried().filter(|item| usize::try_from(item.kept()).is_ok_and(|kept| has(item.id) < kept));
    let sized =
        free.filter_map(|item| stood_mm(item, Stands::Flat).map(|[length, width, _]| (item.id, length * width)));
    let mut sized: Vec<(Id, f64)> = sized.collect();
    sized.sort_by(|one, other| other.1.total_cmp(&one.1));
    sized.into_iter().map(|(id, _)| id).collect()
}

/// The change that puts the four corners of the floor as it is now on the list, to be changed.
pub fn four_corners(plan: &Plan) -> Edit {
    let outline = shape_of(&Plan { corners: Vec::new(), ..plan.clone() }).outline;
    let ids = plan.next_ids(outline.len());
    Edit::all(outline.into_iter().zip(ids).enumerate().map(|(at, (spot, id))| {
        let corner = Corner { id, x_mm: f64::from(spot.x_mm), y_mm: f64::from(spot.y_mm) };
        Edit::Insert { list: List::Corners, at, entry: corner.to_plain() }
    }))
}

/// The first place where a thing meets nothing.
fn free_place(plan: &Plan, placement: Placement) -> Option<[f64; 2]> {
    let mut plan = plan.clone();
    plan.placements.push(Placement { x_mm: Some(0.0), y_mm: Some(0.0), ..placement });
    let [(from_x, to_x), (from_y, to_y)] = shape_of(&plan).floor_solid().bounds();
    let moving = Moving::new(&plan, placement.id)?;
    let places = |from: f64, to: f64| {
        (0..2_000_u32).map(move |step| from + f64::from(step) * TRIED_EVERY_MM).take_while(move |at| *at < to)
    };
    let [long, _, _] = stood_mm(plan.item(placement.thing?)?, placement.stands)?;
    for x in places(from_x, to_x).map(|x| to_x - long - (x - from_x)) {
        for y in places(from_y, to_y) {
            let moved = moving.to(x, y, 0.0);
            if moved.meets.is_empty() && moved.is_inside {
                return Some(moved.corner_mm.map(f64::from));
            }
        }
    }
    None
}
