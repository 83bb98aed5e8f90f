//! The room of a plan: what it is judged by, how things are moved, arranged and laid out with tape.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]
#![allow(clippy::float_cmp, reason = "whole millimetres are exact")]

use jiff::civil::date;
use kerbstead_core::plan::{
    BoxSide, BuiltIn, Corner, Distance, Door, Edit, Group, Head, Item, Keeps, Level, OpenedBox, Placement, Plain, Plan,
    RoofRow, SizeClass, Sleeper, VanSide, Vehicle, WallRow, Wrong, validate,
};
use kerbstead_core::space::{
    ArrangeTask, Arranged, Ending, Finding, Goal, Moving, Placed, Report, drawing, four_corners, place, report, taped,
    turned, usual_inside, without_place,
};
use kerbstead_core::task::Task;
use kerbstead_core::{Margin, Say, Severity, Verdict, assess};

/// A van of 3,000 by 1,700 by 1,900 mm with a side door, rear doors, a bed across the rear and a box in front of it.
fn van() -> Plan {
    Plan {
        vehicle: Vehicle {
            inside_length_mm: Some(3_000.0),
            inside_width_mm: Some(1_700.0),
            inside_height_mm: Some(1_900.0),
            ..Vehicle::default()
        },
        doors: vec![
            Door {
                id: 21,
                side: VanSide::Right,
                from_mm: 300.0,
                width_mm: 1_000.0,
                height_mm: 1_700.0,
                clear_mm: None,
            },
            Door { id: 22, side: VanSide::Rear, from_mm: 100.0, width_mm: 1_500.0, height_mm: 1_750.0, clear_mm: None },
        ],
        kit: vec![sized(1, "Bed", [1_900.0, 700.0, 400.0]), sized(2, "Box", [600.0, 400.0, 300.0])],
        placements: vec![
            Placement { sleeps: 1, x_mm: Some(1_050.0), y_mm: Some(0.0), ..placed(11, 1) },
            Placement { x_mm: Some(0.0), y_mm: Some(0.0), ..placed(12, 2) },
        ],
        sleepers: vec![Sleeper { id: 31, name: "Ane".into(), height_mm: Some(1_750.0), ..Sleeper::default() }],
        ..Plan::default()
    }
}

fn sized(id: u32, name: &str, [length, width, height]: [f64; 3]) -> Item {
    Item {
        id,
        name: name.into(),
        group: Group::Structure,
        length_mm: Some(length),
        width_mm: Some(width),
        height_mm: Some(height),
        ..Item::default()
    }
}

fn placed(id: u32, thing: u32) -> Placement {
    Placement { id, thing: Some(thing), ..Placement::default() }
}

fn judged(plan: &Plan) -> Report {
    report(plan, &Placed::new(plan))
}

fn keys(plan: &Plan) -> Vec<&'static str> {
    judged(plan).standing.findings.iter().map(Say::key).collect()
}

fn with(change: impl FnOnce(&mut Plan)) -> Plan {
    let mut plan = van();
    change(&mut plan);
    plan
}

#[test]
fn a_van_in_which_all_fits_holds() {
    let report = judged(&van());
    assert_eq!(report.standing.findings, vec![]);
    assert_eq!(report.standing.verdict, Verdict::Holds);
    // 1,700 mm beside the bed of 700 mm, and 400 mm that were asked for.
    assert_eq!(report.standing.margin, Some(Margin::Width(600.0)));
    assert_eq!(report.floor_m2, 5.1);
    let ways: Vec<(bool, f64)> = report.ways.iter().map(|way| (way.passes, way.widest_mm)).collect();
    assert!(ways.iter().all(|(passes, _)| *passes), "{ways:?}");
    assert_eq!(report.ways.iter().filter(|way| matches!(way.to, Goal::Out { .. })).count(), 2);
    assert_eq!(report.sleepers[0].spare_mm, Some(150.0));
}

/// Each finding in a plan that has it, and what is changed so that it just has it not.
#[test]
fn every_finding_is_told_when_it_is_so_and_not_just_before() {
    let cases: Vec<(&str, Plan, Plan)> = vec![
        (
            "space-larger-than-van",
            with(|plan| plan.kit[1].length_mm = Some(3_600.0)),
            with(|plan| plan.kit[1].length_mm = Some(3_000.0)),
        ),
        (
            "space-sticks-out",
            with(|plan| plan.placements[1].x_mm = Some(-1.0)),
            with(|plan| plan.placements[1].x_mm = Some(1.0)),
        ),
        ("space-sticks-out-left", with(|plan| leaning(plan, 400.0)), with(|plan| leaning(plan, 0.0))),
        (
            "space-sticks-out-roof",
            with(|plan| plan.placements[1].base_mm = 1_601.0),
            with(|plan| plan.placements[1].base_mm = 1_600.0),
        ),
        (
            "space-overlaps",
            with(|plan| plan.placements[1].x_mm = Some(451.0)),
            with(|plan| plan.placements[1].x_mm = Some(450.0)),
        ),
        ("space-cannot-open", with(|plan| opens(plan, 460.0)), with(|plan| opens(plan, 450.0))),
        ("space-cannot-open-wall", with(|plan| opens_across(plan, 1_701.0)), with(|plan| opens_across(plan, 1_700.0))),
        (
            "space-way-too-narrow",
            with(|plan| plan.room.body_width_mm = Some(1_001.0)),
            with(|plan| plan.room.body_width_mm = Some(1_000.0)),
        ),
        (
            "space-way-close",
            with(|plan| plan.room.body_width_mm = Some(971.0)),
            with(|plan| plan.room.body_width_mm = Some(970.0)),
        ),
        ("space-cab-too-narrow", with(|plan| plan.doors.push(cab(399.0))), with(|plan| plan.doors.push(cab(430.0)))),
        ("space-one-way-out", with(|plan| plan.doors[1].width_mm = 399.0), with(|plan| plan.doors[1].width_mm = 400.0)),
        (
            "space-no-way-out",
            with(|plan| plan.doors.iter_mut().for_each(|door| door.width_mm = 399.0)),
            with(|plan| plan.doors[0].width_mm = 400.0),
        ),
        (
            "space-bed-too-short",
            with(|plan| plan.sleepers[0].height_mm = Some(1_901.0)),
            with(|plan| plan.sleepers[0].height_mm = Some(1_900.0)),
        ),
        (
            "space-bed-close",
            with(|plan| plan.sleepers[0].height_mm = Some(1_851.0)),
            with(|plan| plan.sleepers[0].height_mm = Some(1_850.0)),
        ),
        (
            "space-cannot-sit",
            with(|plan| plan.sleepers[0].sitting_mm = Some(1_501.0)),
            with(|plan| plan.sleepers[0].sitting_mm = Some(1_500.0)),
        ),
        ("space-over-a-head", with(|plan| shelf(plan, 1_449.0)), with(|plan| shelf(plan, 1_450.0))),
        ("space-not-apart", with(|plan| keep(plan, Keeps::Apart, 451.0)), with(|plan| keep(plan, Keeps::Apart, 450.0))),
        ("space-not-near", with(|plan| keep(plan, Keeps::Near, 449.0)), with(|plan| keep(plan, Keeps::Near, 450.0))),
        ("space-not-clear", with(|plan| keep(plan, Keeps::Clear, 451.0)), with(|plan| keep(plan, Keeps::Clear, 450.0))),
        (
            "space-side-door-not-clear",
            with(|plan| plan.doors[0].clear_mm = Some(1_001.0)),
            with(|plan| plan.doors[0].clear_mm = Some(1_000.0)),
        ),
        ("space-not-stowed", with(|plan| stowed(plan, 81.0)), with(|plan| stowed(plan, 80.0))),
        (
            "space-nothing-to-stow-in",
            with(|plan| plan.kit.push(sized(3, "Bag", [400.0, 300.0, 200.0]))),
            with(|plan| stowed(plan, 10.0)),
        ),
        ("space-waiting", with(|plan| plan.placements[1].x_mm = None), van()),
        ("space-no-doors", with(|plan| plan.doors.clear()), van()),
        ("space-no-bed", with(|plan| plan.placements[0].sleeps = 0), van()),
        ("space-nobody-sleeps", with(|plan| plan.sleepers.clear()), van()),
        (
            "space-roof-below-body",
            with(|plan| plan.room.body_height_mm = Some(1_901.0)),
            with(|plan| plan.room.body_height_mm = Some(1_900.0)),
        ),
        (
            "space-uncounted",
            with(|plan| plan.placements.resize(251, placed(99, 1))),
            with(|plan| plan.placements.resize(250, placed(99, 1))),
        ),
    ];
    for (key, has, has_not) in cases {
        assert!(keys(&has).contains(&key), "{key} is not told: {:?}", keys(&has));
        assert!(!keys(&has_not).contains(&key), "{key} is told: {:?}", judged(&has_not).standing.findings);
    }
}

fn leaning(plan: &mut Plan, left_in_mm: f64) {
    plan.wall_rows = vec![
        WallRow { id: 41, height_mm: 0.0, ..WallRow::default() },
        WallRow { id: 42, height_mm: 300.0, left_in_mm, right_in_mm: 0.0 },
    ];
}

/// The box has a lid of its own length that opens towards the bed.
fn opens(plan: &mut Plan, length_mm: f64) {
    let opened = OpenedBox { x_mm: 600.0, length_mm: Some(length_mm), ..OpenedBox::default() };
    plan.placements[1].opened = Some(opened);
}

fn opens_across(plan: &mut Plan, width_mm: f64) {
    plan.placements[1].opened = Some(OpenedBox { width_mm: Some(width_mm), ..OpenedBox::default() });
}

fn cab(width_mm: f64) -> Door {
    Door { id: 23, side: VanSide::Front, from_mm: 800.0, width_mm, height_mm: 1_600.0, clear_mm: None }
}

/// A board on the wall above the bed, whose heads are at the front.
fn shelf(plan: &mut Plan, x_mm: f64) {
    plan.placements[0].head = Head::Start;
    plan.kit.push(sized(3, "Board", [600.0, 200.0, 30.0]));
    let board = Placement { level: Level::Wall, x_mm: Some(x_mm), y_mm: Some(0.0), base_mm: 1_300.0, ..placed(13, 3) };
    plan.placements.push(board);
}

/// Between the box and the bed there are 450 mm.
fn keep(plan: &mut Plan, keeps: Keeps, distance_mm: f64) {
    plan.distances = vec![Distance {
        id: 51,
        of: Some(2),
        of_side: if keeps == Keeps::Clear { BoxSide::End } else { BoxSide::Whole },
        keeps,
        other: Some(1),
        other_side: BoxSide::Whole,
        distance_mm: Some(distance_mm),
    }];
}

/// A box that holds 100 litres, of which 80 can be filled, and a bag to be put in.
fn stowed(plan: &mut Plan, packed_l: f64) {
    plan.kit[1].holds_l = Some(100.0);
    plan.kit.push(Item { packed_l: Some(packed_l), ..sized(3, "Bag", [400.0, 300.0, 200.0]) });
}

#[test]
fn room_under_a_bed_on_legs_is_room_to_put_things() {
    let plan = with(|plan| {
        plan.placements[0].clear_under_mm = Some(300.0);
        plan.kit.push(sized(3, "Crate", [600.0, 400.0, 250.0]));
        plan.placements.push(Placement {
            level: Level::UnderBed,
            x_mm: Some(1_100.0),
            y_mm: Some(0.0),
            ..placed(13, 3)
        });
    });
    let report = judged(&plan);
    assert_eq!(report.standing.findings, vec![]);
    let level = report.levels[0];
    assert_eq!(level.level, Level::UnderBed);
    // 1.9 m × 0.7 m × 0.3 m, less the crate's 60 litres.
    assert_eq!((level.whole_l, level.free_l), (399.0, 339.0));
}

#[test]
fn a_bed_takes_the_one_who_lies_on_it_and_nothing_on_it_is_in_the_way() {
    let plan = with(|plan| {
        plan.placements[0].sleeps = 0;
        plan.kit.push(Item { group: Group::Sleeping, ..sized(3, "Mattress", [1_900.0, 700.0, 120.0]) });
        plan.kit.push(sized(4, "Pillow", [500.0, 400.0, 150.0]));
        let on = |id, thing, base_mm| Placement {
            level: Level::Counter,
            x_mm: Some(1_050.0),
            y_mm: Some(0.0),
            base_mm,
            ..placed(id, thing)
        };
        plan.placements.push(Placement { sleeps: 1, ..on(13, 3, 400.0) });
        plan.placements.push(on(14, 4, 520.0));
    });
    let report = judged(&plan);
    assert_eq!(report.standing.findings, vec![]);
    assert!(report.ways.iter().all(|way| way.passes), "{:?}", report.ways);
    // Under a roof of 1,900 mm, on 520 mm, one of 1,750 mm sits 910 mm high (52 %).
    assert_eq!(report.sleepers[0].sitting_spare_mm, Some(470.0));
}

#[test]
fn an_outline_that_cannot_be_one_is_told_where_it_is_and_nothing_is_judged() {
    let corner = |id, x_mm, y_mm| Corner { id, x_mm, y_mm };
    let crossing = with(|plan| {
        plan.corners = vec![
            corner(61, 0.0, 0.0),
            corner(62, 3_000.0, 1_700.0),
            corner(63, 3_000.0, 0.0),
            corner(64, 0.0, 1_700.0),
        ];
    });
    let problems = validate(&crossing);
    let told = problems.iter().find(|problem| matches!(problem.wrong, Wrong::OutlineCrosses { .. })).unwrap();
    assert_eq!(told.path.as_str(), "corners/63/x_mm");
    assert_eq!(told.wrong, Wrong::OutlineCrosses { corner: 1 });
    assert_eq!(judged(&crossing).standing.verdict, Verdict::Unknown);
    let flat = with(|plan| plan.corners = vec![corner(61, 0.0, 0.0), corner(62, 3_000.0, 0.0)]);
    assert!(validate(&flat).iter().any(|problem| problem.wrong == Wrong::OutlineFlat));
    let door = with(|plan| plan.doors[0].from_mm = 2_500.0);
    let problems = validate(&door);
    assert_eq!((problems[0].path.as_str(), &problems[0].wrong), ("doors/21/from_mm", &Wrong::DoorPastWall));
    assert!(validate(&van()).is_empty());
}

#[test]
fn sizes_of_nothing_or_less_are_refused_where_they_are_typed() {
    for (path, value) in [("kit/1/length_mm", 0.0), ("built_ins/71/width_mm", -5.0), ("room/body_width_mm", 0.0)] {
        let mut plan = with(|plan| plan.built_ins = vec![BuiltIn { id: 71, ..arch() }]);
        Edit::set(path, value).apply(&mut plan).unwrap();
        let problems = validate(&plan);
        assert!(problems.iter().any(|problem| problem.path.as_str() == path), "{path}: {problems:?}");
        // And whatever stands there, an answer comes.
        assert!(assess(&plan, date(2027, 1, 1)).space.floor_m2 >= 0.0);
    }
}

fn arch() -> BuiltIn {
    BuiltIn { x_mm: 1_000.0, length_mm: 700.0, width_mm: 200.0, height_mm: 300.0, ..BuiltIn::default() }
}

#[test]
fn a_door_is_found_in_its_wall_on_any_floor() {
    let corners = [(0.0, 200.0), (400.0, 0.0), (3_000.0, 0.0), (3_000.0, 1_700.0), (400.0, 1_700.0), (0.0, 1_500.0)];
    for reversed in [false, true] {
        let plan = with(|plan| {
            plan.corners = corners
                .iter()
                .enumerate()
                .map(|(at, (x_mm, y_mm))| Corner { id: 61 + u32::try_from(at).unwrap(), x_mm: *x_mm, y_mm: *y_mm })
                .collect();
            if reversed {
                plan.corners.reverse();
            }
            plan.doors[0].from_mm = 500.0;
            plan.doors.push(Door { id: 24, side: VanSide::Left, ..plan.doors[0] });
        });
        assert!(validate(&plan).is_empty(), "{:?}", validate(&plan));
        let doors = drawing(&plan).doors;
        let places: Vec<[f64; 4]> = doors
            .iter()
            .map(|(_, from, to)| {
                [from.x.min(to.x), from.x.max(to.x), from.y.min(to.y), from.y.max(to.y)].map(libm::round)
            })
            .collect();
        assert_eq!(
            places,
            [[500.0, 1_500.0, 1_700.0, 1_700.0], [3_000.0, 3_000.0, 100.0, 1_600.0], [500.0, 1_500.0, 0.0, 0.0],]
        );
    }
}

#[test]
fn a_thing_that_is_moved_snaps_to_what_is_close_and_says_what_it_meets() {
    let plan = van();
    let moving = Moving::new(&plan, 12).unwrap();
    let at = |x, y, snap| moving.to(x, y, snap).corner_mm;
    assert_eq!(at(8.0, 1_290.0, 20.0), [0, 1_300]); // front and right wall
    assert_eq!(at(455.0, 100.0, 20.0), [450, 100]); // its end to the bed
    assert_eq!(at(455.0, 100.0, 5.0), [455, 100]);
    assert_eq!(moving.to(500.0, 100.0, 0.0).meets, vec![11]);
    assert!(!moving.to(-1.0, 0.0, 0.0).is_inside);
    let mut moved = plan.clone();
    let back = moving.edit(&moving.to(300.0, 900.0, 0.0)).apply(&mut moved).unwrap();
    assert_eq!((moved.placements[1].x_mm, moved.placements[1].y_mm), (Some(300.0), Some(900.0)));
    back.apply(&mut moved).unwrap();
    assert_eq!(moved, plan);
}

#[test]
fn four_quarter_turns_bring_a_thing_back() {
    let mut plan = van();
    let middle = |plan: &Plan| {
        let corners = drawing(plan).things.into_iter().find(|drawn| drawn.id == 12).unwrap().closed.corners;
        (
            corners.iter().map(|corner| corner.x).sum::<f64>() / 4.0,
            corners.iter().map(|corner| corner.y).sum::<f64>() / 4.0,
        )
    };
    let before = middle(&plan);
    for _ in 0..4 {
        turned(&plan, 12).unwrap().apply(&mut plan).unwrap();
        assert_eq!(middle(&plan), before);
    }
    assert_eq!(plan, van());
}

#[test]
fn a_usual_van_of_every_size_has_no_problems_and_is_all_guesses() {
    for size in [SizeClass::Small, SizeClass::Medium, SizeClass::HighRoof, SizeClass::LongHighRoof] {
        let mut plan = Plan { vehicle: Vehicle { size, ..Vehicle::default() }, ..Plan::default() };
        let before = plan.clone();
        let back = usual_inside(&plan, &|key| key.to_owned()).apply(&mut plan).unwrap();
        assert!(validate(&plan).is_empty(), "{size:?}: {:?}", validate(&plan));
        assert!(plan.guesses.iter().count() > 20);
        assert_eq!((plan.doors.len(), plan.built_ins.len()), (2, 2));
        back.apply(&mut plan).unwrap();
        assert_eq!(plan, before);
    }
    let mut own = van();
    usual_inside(&own, &|key| key.to_owned()).apply(&mut own).unwrap();
    assert_eq!(own.vehicle.inside_length_mm, Some(3_000.0));
    assert!(validate(&own).is_empty());
}

#[test]
fn a_thing_gets_the_first_free_place_and_a_mattress_lies_on_its_frame() {
    let mut plan = van();
    plan.placements.clear();
    plan.kit.push(Item { group: Group::Sleeping, ..sized(3, "Mattress", [1_900.0, 700.0, 120.0]) });
    assert_eq!(without_place(&plan), vec![1, 3, 2]);
    for item in [1, 3, 2] {
        place(&plan, item).unwrap().apply(&mut plan).unwrap();
    }
    assert_eq!(without_place(&plan), Vec::<u32>::new());
    let [frame, mattress, crate_] = [plan.placements[0], plan.placements[1], plan.placements[2]];
    assert_eq!((frame.x_mm, frame.y_mm, frame.clear_under_mm), (Some(1_100.0), Some(0.0), Some(360.0)));
    assert_eq!((mattress.x_mm, mattress.base_mm, mattress.sleeps), (frame.x_mm, 400.0, 1));
    assert_eq!((crate_.x_mm, crate_.y_mm, crate_.level), (Some(2_400.0), Some(0.0), Level::UnderBed));
    assert!(judged(&plan).standing.findings.iter().all(|finding| !matches!(finding, Finding::Overlaps { .. })));
    assert!(plan.guesses.iter().any(|path| path.as_str().contains("clear_under_mm")));
}

fn arranged(plan: &Plan) -> Arranged {
    let mut task = ArrangeTask::new(plan);
    while task.step() < 1.0 {}
    Arranged::from_plain(&task.answer()).unwrap()
}

#[test]
fn arranging_gives_vans_in_which_all_fits_and_leaves_what_is_pinned() {
    let mut plan = van();
    plan.kit.push(sized(3, "Cupboard", [500.0, 400.0, 900.0]));
    plan.kit.push(sized(4, "Lamp", [100.0, 100.0, 300.0]));
    // All in one corner, with a lamp on the cupboard.
    plan.placements[1] = Placement { reached: true, ..plan.placements[1] };
    plan.placements.push(Placement { reached: true, x_mm: Some(0.0), y_mm: Some(0.0), ..placed(13, 3) });
    let lamp =
        Placement { level: Level::Counter, x_mm: Some(350.0), y_mm: Some(50.0), base_mm: 900.0, ..placed(14, 4) };
    plan.placements.push(lamp);
    plan.placements[0].pinned = true;
    plan.doors.push(cab(500.0));
    assert!(keys(&plan).contains(&"space-overlaps"));
    let found = arranged(&plan);
    assert_eq!(found.ending, Ending::Found);
    assert!(found.arrangements.len() >= 2, "{found:?}");
    for arrangement in &found.arrangements {
        let mut after = plan.clone();
        let back = arrangement.edit().apply(&mut after).unwrap();
        assert!(judged(&after).standing.findings.iter().all(|finding| finding.severity() != Severity::Short));
        assert_eq!(after.placements[0], plan.placements[0]);
        let drawn = drawing(&after).things;
        let middle = |id: u32| {
            let corners = &drawn.iter().find(|drawn| drawn.id == id).unwrap().closed.corners;
            [corners.iter().map(|at| at.x).sum::<f64>() / 4.0, corners.iter().map(|at| at.y).sum::<f64>() / 4.0]
        };
        let ([x, y], [lamp_x, lamp_y]) = (middle(13), middle(14));
        // The middle of the lamp was (400, 100) and that of the cupboard (250, 200), so they stay 180.3 mm apart.
        let apart = libm::hypot(x - lamp_x, y - lamp_y);
        assert!((apart - 180.277).abs() < 0.01, "{apart}");
        back.apply(&mut after).unwrap();
        assert_eq!(after, plan);
    }
    assert_eq!(arranged(&plan), found);
}

#[test]
fn arranging_says_what_is_impossible_and_when_there_is_nothing_to_move() {
    let crowded = with(|plan| {
        plan.kit.push(sized(3, "Second bed", [1_900.0, 1_100.0, 400.0]));
        plan.placements.push(placed(13, 3));
    });
    assert_eq!(arranged(&crowded).ending, Ending::Impossible);
    let pinned = with(|plan| plan.placements.iter_mut().for_each(|placement| placement.pinned = true));
    assert_eq!(arranged(&pinned).ending, Ending::NothingToMove);
}

#[test]
fn what_has_no_place_yet_is_arranged_too() {
    let plan = with(|plan| plan.placements[1].x_mm = None);
    let found = arranged(&plan);
    assert_eq!(found.ending, Ending::Found);
    let mut after = plan.clone();
    found.arrangements[0].edit().apply(&mut after).unwrap();
    assert!(after.placements[1].x_mm.is_some());
    assert_eq!(judged(&after).standing.findings, vec![]);
}

#[test]
fn the_taping_sheet_begins_with_the_floor_and_goes_on_with_what_is_nearest() {
    let plan = with(|plan| plan.built_ins = vec![BuiltIn { id: 71, name: "Arch".into(), y_mm: 1_500.0, ..arch() }]);
    let things = taped(&plan, 0);
    let names: Vec<&str> = things.iter().map(|thing| &*thing.name).collect();
    assert_eq!(names, ["", "Arch", "Box", "Bed"]);
    let square = things[2].square().unwrap();
    assert_eq!((square.along_mm, square.across_mm, square.straight_mm), ([0, 600], [0, 400], 721));
    let box_ = things[2].marks[2];
    assert_eq!((box_.along_mm, box_.across_mm, box_.straight_mm), (600, 400, 721));
    // From the corner at the rear right, everything is measured towards the front left.
    let from_rear = taped(&plan, 2);
    let bed = from_rear.iter().find(|thing| thing.name == "Bed").unwrap().marks[0];
    assert_eq!((bed.along_mm, bed.across_mm), (50, 1_000));
}

#[test]
fn the_four_corners_can_be_changed_one_by_one() {
    let mut plan = van();
    four_corners(&plan).apply(&mut plan).unwrap();
    assert_eq!(plan.corners.len(), 4);
    assert_eq!(judged(&plan).floor_m2, 5.1);
    plan.corners[1].x_mm = 2_900.0;
    assert!(validate(&plan).is_empty());
}

#[test]
fn the_roof_is_where_it_is_told() {
    let low = with(|plan| {
        plan.roof_rows = vec![
            RoofRow { id: 81, x_mm: 0.0, height_mm: 1_900.0 },
            RoofRow { id: 82, x_mm: 3_000.0, height_mm: 300.0 },
        ];
    });
    assert!(keys(&low).contains(&"space-sticks-out-roof"));
}
