//! What the room comes to: whether all of it fits, whether one gets through, and whether one can lie, sit and store.

use serde::Serialize;

use super::arrange::Rule;
use super::constants::{
    BED_SPARE_MM, BEDDING_OVER_MM, HEAD_ZONE_MM, MOST_MM, SITTING_SHARE, TIGHT_WAY_MM, USABLE_PERCENT,
};
use super::findings::{Finding, Hindrance};
use super::fit::{FitReport, Obstacle, Thing as Part, fit, meets};
use super::geometry::{Point, area, mm, shared_area, whole};
use super::input::Placed;
use super::item::{Item, Layout, Level, Solid};
use super::rules_of::rules_of;
use super::shape::DoorKind;
use super::storage::{Bay, LevelRoom, SoftGoods, StorageReport, storage};
use super::walkway::{Body, Place, Walkway, Way};
use crate::assessment::{Caution, Margin, Say, Standing, Verdict};
use crate::explain::{Figure, Source, Working};
use crate::plan::{Head, Id, Path, Plan, Quantity, Sleeper};

/// The room of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// How many things are at their places.
    pub placed: usize,
    /// Placements without a place, or whose item has not all its sizes.
    pub waiting: Vec<Id>,
    /// The ways through the van.
    pub ways: Vec<WayTo>,
    /// Who sleeps there, and how that fits.
    pub sleepers: Vec<Lying>,
    /// The room to put things, by level.
    pub levels: Vec<LevelRoom>,
    /// What is to be put away, in litres: things of the kit without a place of their own.
    pub goods_l: f64,
    /// What of that finds no room, in litres.
    pub left_over_l: f64,
    /// Things of the kit of which nobody knows how much room they take.
    pub unknown_goods: usize,
    /// The floor without what is built in, in square metres.
    pub floor_m2: f64,
}

/// A way through the van, from a door.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayTo {
    /// Where it leads.
    pub to: Goal,
    /// The door it begins at.
    pub door: Id,
    /// Which door that is.
    pub door_kind: DoorKind,
    /// Whether the body gets through.
    pub passes: bool,
    /// The greatest width that does, in millimetres.
    pub widest_mm: f64,
    /// Where it is narrowest: both ends, along and across the van, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub narrowest: Option<[Point; 2]>,
}

/// Where a way leads.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Goal {
    /// To a thing.
    Thing {
        /// The placement.
        id: Id,
        /// What it is called.
        name: String,
    },
    /// To the cab.
    Cab,
    /// Out, from a bed.
    Out {
        /// The bed.
        id: Id,
        /// What it is called.
        name: String,
    },
}

/// Somebody in their bed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Lying {
    /// The sleeper.
    pub id: Id,
    /// What they are called.
    pub name: String,
    /// The placement of the bed.
    pub bed: Id,
    /// How long the bed is, in millimetres.
    pub bed_mm: f64,
    /// What is left of that beyond how tall they are, in millimetres; less than nothing: it is too short.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spare_mm: Option<f64>,
    /// What is left above their head when they sit on it, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sitting_spare_mm: Option<f64>,
}

/// Judges the room.
pub fn report(plan: &Plan, placed: &Placed) -> Report {
    let layout = &placed.layout;
    let stored = stored(plan, placed);
    let mut report = Report {
        standing: Standing::unknown(missing(plan, placed)),
        placed: placed.things.len(),
        waiting: placed.waiting.clone(),
        ways: Vec::new(),
        sleepers: Vec::new(),
        levels: stored.0.levels,
        goods_l: stored.1,
        left_over_l: stored.0.left_over_l,
        unknown_goods: stored.2,
        floor_m2: layout.shape.floor_area_mm2() / 1e6,
    };
    report.standing.cautions = cautions(plan);
    if !report.standing.missing.is_empty() {
        return report;
    }
    report.ways = ways(plan, placed);
    report.sleepers = plan.sleepers.iter().filter_map(|sleeper| lying(placed, sleeper)).collect();
    let findings = findings(plan, placed, &report, &fit(layout));
    let verdict = Verdict::by_worst(&findings);
    let narrowest = report.ways.iter().filter(|way| !matches!(way.to, Goal::Out { .. }));
    let narrowest = narrowest.min_by(|one, other| one.widest_mm.total_cmp(&other.widest_mm));
    let margin = narrowest.map(|way| Margin::Width(way.widest_mm - plan.room.body_width_mm()));
    let working = working(plan, &report, narrowest);
    report.standing = Standing { verdict, margin, findings, working, ..report.standing };
    report
}

/// Without anything at its place, or with an outline that is none, nothing can be said.
fn missing(plan: &Plan, placed: &Placed) -> Vec<Path> {
    let is_outline_wrong = placed.layout.shape.outline_faults() > 0;
    if is_outline_wrong {
        return vec![
            plan.corners.first().map_or_else(|| Path::section("corners"), |corner| Path::entry("corners", corner.id)),
        ];
    }
    if placed.things.is_empty() { vec![Path::section("placements")] } else { Vec::new() }
}

fn cautions(plan: &Plan) -> Vec<Caution> {
    if plan.placements.is_empty() {
        return Vec::new();
    }
    let mut cautions = vec![Caution::BlockedExits, Caution::LooseCargo];
    if plan.placements.iter().any(|placement| placement.sleeps > 0) {
        cautions.push(Caution::AboveAHead);
    }
    cautions.extend([Caution::BeltsAndAirbags, Caution::WiresAndFuelLines]);
    cautions.extend([Caution::PowerToolsAndDust, Caution::SolventsAndFoam]);
    cautions
}

/// The one who walks through.
pub(super) fn body(plan: &Plan) -> Body {
    let size = |length: f64| if length.is_finite() { mm(length).max(1) } else { 1 };
    Body { width_mm: size(plan.room.body_width_mm()), from_mm: 0, to_mm: size(plan.room.body_height_mm()) }
}

/// The layout as one walks through it: what lies on, over or under a bed within its outline is in nobody's way, for the bed
/// is there already.
pub(super) fn walked(placed: &Placed) -> Layout {
    let mut layout = placed.layout.clone();
    let beds: Vec<(usize, Solid)> = placed.beds().map(|bed| (bed, placed.layout.items[bed].solid())).collect();
    for (number, item) in layout.items.iter_mut().enumerate() {
        let solid = item.solid();
        if beds.iter().any(|(bed, outline)| *bed != number && is_within(&solid, outline)) {
            item.level = Level::Outside;
        }
    }
    layout
}

/// Whether one outline lies within another, to a tenth of it.
pub(super) fn is_within(inner: &Solid, outer: &Solid) -> bool {
    const MOST_OUTSIDE: f64 = 0.1;
    let whole = area(&inner.corners);
    whole > 0.0 && whole - shared_area(&outer.corners, &inner.corners) <= whole * MOST_OUTSIDE
}

fn ways(plan: &Plan, placed: &Placed) -> Vec<WayTo> {
    let layout = walked(placed);
    let walkway = Walkway::new(&layout, &body(plan), &[]);
    let doors = &layout.shape.doors;
    let outer: Vec<usize> = (0..doors.len()).filter(|door| doors[*door].kind != DoorKind::Cab).collect();
    let way_to = |to: Goal, door: usize, way: Way| WayTo {
        to,
        door: plan.doors.get(door).map_or(0, |door| door.id),
        door_kind: doors[door].kind,
        passes: way.passes,
        widest_mm: way.widest_mm,
        narrowest: way.narrowest.map(|narrow| [narrow.from, narrow.to]),
    };
    let best_to = |goal: Place| {
        let ways = outer.iter().map(|door| (*door, walkway.way(Place::Door(*door), goal)));
        ways.max_by(|one, other| one.1.widest_mm.total_cmp(&other.1.widest_mm).then(other.0.cmp(&one.0)))
    };
    let mut ways = Vec::new();
    for (number, thing) in placed.things.iter().enumerate() {
        if (thing.sleeps > 0 || thing.reached) && layout.items[number].is_inside() {
            let best = best_to(Place::Beside { item: number, side: None });
            let goal = || Goal::Thing { id: thing.id, name: thing.name.clone() };
            ways.extend(best.map(|(door, way)| way_to(goal(), door, way)));
        }
    }
    if let Some(cab) = (0..doors.len()).find(|door| doors[*door].kind == DoorKind::Cab) {
        ways.extend(best_to(Place::Door(cab)).map(|(door, way)| way_to(Goal::Cab, door, way)));
    }
    for bed in placed.beds() {
        let thing = &placed.things[bed];
        for out in walkway.ways_out(bed) {
            let goal = Goal::Out { id: thing.id, name: thing.name.clone() };
            ways.push(way_to(goal, out.door, out.way));
        }
    }
    ways
}

fn lying(placed: &Placed, sleeper: &Sleeper) -> Option<Lying> {
    let bed = placed.bed_of(sleeper.bed)?;
    let (item, thing) = (&placed.layout.items[bed], &placed.things[bed]);
    let bed_mm = f64::from(item.length_mm);
    let solid = item.solid();
    let [(from_x, to_x), _] = solid.bounds();
    let height = sleeper.height_mm.filter(|height| *height > 0.0 && height.is_finite());
    let sitting = sleeper.sitting_mm.filter(|mm| *mm > 0.0 && mm.is_finite());
    let sitting = sitting.or_else(|| height.map(|height| height * SITTING_SHARE));
    let roof = placed.layout.shape.headroom_mm(whole(libm::floor(from_x)), whole(libm::ceil(to_x)));
    let above = placed.layout.items.iter().enumerate().filter(|(number, other)| {
        *number != bed && other.is_inside() && other.base_mm >= solid.to_mm + BEDDING_OVER_MM && {
            let over = other.solid();
            shared_area(&solid.corners, &over.corners) > 0.0
        }
    });
    let lowest = above.map(|(_, other)| other.base_mm).chain(roof).min();
    Some(Lying {
        id: sleeper.id,
        name: sleeper.name.clone(),
        bed: thing.id,
        bed_mm,
        spare_mm: height.map(|height| bed_mm - height),
        sitting_spare_mm: sitting.zip(lowest).map(|(sitting, lowest)| f64::from(lowest - solid.to_mm) - sitting),
    })
}

/// The part of a bed where the heads are.
pub(super) fn head_zone(bed: &Item, head: Head) -> Solid {
    let length_mm = whole(HEAD_ZONE_MM).min(bed.length_mm);
    let begin = if head == Head::Start { 0 } else { bed.length_mm - length_mm };
    let open = super::item::Opened {
        x_mm: begin,
        y_mm: 0,
        length_mm,
        width_mm: bed.width_mm,
        base_mm: bed.base_mm.saturating_add(bed.height_mm),
        height_mm: MOST_MM,
    };
    Item { opened: Some(open), ..*bed }.opened_solid().unwrap_or_default()
}

fn findings(plan: &Plan, placed: &Placed, report: &Report, fits: &FitReport) -> Vec<Finding> {
    let mut findings = of_fit(plan, placed, fits);
    findings.extend(of_ways(plan, placed, report));
    for lying in &report.sleepers {
        let (sleeper, name) = (lying.id, lying.name.clone());
        match lying.spare_mm {
            Some(spare) if spare < 0.0 => {
                findings.push(Finding::BedTooShort { sleeper, name: name.clone(), by_mm: -spare });
            }
            Some(spare) if spare < BED_SPARE_MM => {
                findings.push(Finding::BedClose { sleeper, name: name.clone(), spare_mm: spare });
            }
            _ => {}
        }
        if let Some(spare) = lying.sitting_spare_mm.filter(|spare| *spare < 0.0) {
            findings.push(Finding::CannotSit { sleeper, name, by_mm: -spare });
        }
    }
    findings.extend(over_heads(placed));
    findings.extend(of_rules(plan, placed));
    if report.levels.is_empty() && report.goods_l > 0.0 {
        findings.push(Finding::NothingToStowIn { goods_l: report.goods_l });
    } else if report.left_over_l > 0.5 {
        findings.push(Finding::NotStowed { left_over_l: report.left_over_l, goods_l: report.goods_l });
    }
    let notes = [
        (!report.waiting.is_empty()).then_some(Finding::Waiting { count: report.waiting.len() }),
        plan.doors.is_empty().then_some(Finding::NoDoors),
        (plan.sleepers.is_empty() && placed.beds().next().is_some()).then_some(Finding::NobodySleeps),
        placed.beds().next().is_none().then_some(Finding::NoBed),
        (placed.uncounted > 0).then_some(Finding::Uncounted { count: placed.uncounted }),
        is_low(plan, placed).then_some(Finding::RoofBelowBody { mm: plan.room.body_height_mm() }),
    ];
    findings.extend(notes.into_iter().flatten());
    findings
}

/// What is not as it was wished, each wish once.
fn of_rules(plan: &Plan, placed: &Placed) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    for (id, rule) in rules_of(plan, placed) {
        if rule.is_kept(&placed.layout) || findings.iter().any(|known| known.subject() == Some(id)) {
            continue;
        }
        let name = |id: Option<Id>| id.and_then(|id| plan.name_of(id)).unwrap_or_default().to_owned();
        if let Some(entry) = plan.distances.iter().find(|entry| entry.id == id) {
            let mm = entry.distance_mm.unwrap_or(0.0);
            let (of, other) = (name(entry.of), name(entry.other));
            findings.push(Finding::DistanceNotKept { distance: id, keeps: entry.keeps, name: of, other, mm });
        } else if let Rule::DoorClear { door, depth_mm, .. } = rule {
            let door_kind = placed.layout.shape.doors.get(door).map(|door| door.kind).unwrap_or_default();
            findings.push(Finding::DoorNotClear { door: id, door_kind, mm: f64::from(depth_mm) });
        }
    }
    findings
}

/// Whether the roof is nowhere as high as the one who walks through.
fn is_low(plan: &Plan, placed: &Placed) -> bool {
    let highest = placed.layout.shape.roof.iter().map(|row| row.height_mm).max();
    highest.is_some_and(|highest| f64::from(highest) < plan.room.body_height_mm())
}

fn of_fit(plan: &Plan, placed: &Placed, fits: &FitReport) -> Vec<Finding> {
    let name_of = |part: Part| match part {
        Part::Item(at) | Part::Opened(at) => placed.things.get(at).map(|thing| thing.name.clone()).unwrap_or_default(),
        Part::Fixed(at) => plan.built_ins.get(at).map(|part| part.name.clone()).unwrap_or_default(),
    };
    let id_of = |part: Part| match part {
        Part::Item(at) | Part::Opened(at) => placed.things.get(at).map_or(0, |thing| thing.id),
        Part::Fixed(at) => plan.built_ins.get(at).map_or(0, |part| part.id),
    };
    let mut findings = Vec::new();
    for (number, thing) in placed.things.iter().enumerate() {
        if let Some(by_mm) = too_large(placed, number) {
            findings.push(Finding::LargerThanVan { placement: thing.id, name: thing.name.clone(), by_mm });
        }
    }
    let is_too_large = |findings: &[Finding], id: Id| {
        findings.iter().any(|known| matches!(known, Finding::LargerThanVan { placement, .. } if *placement == id))
    };
    for out in &fits.outside {
        let placement = id_of(out.thing);
        if !is_too_large(&findings, placement) {
            findings.push(Finding::SticksOut { placement, name: name_of(out.thing), past: out.past, by_mm: out.by_mm });
        }
    }
    for overlap in &fits.overlaps {
        findings.push(Finding::Overlaps {
            placement: id_of(overlap.first),
            name: name_of(overlap.first),
            other: id_of(overlap.second),
            other_name: name_of(overlap.second),
            is_built_in: matches!(overlap.second, Part::Fixed(_)),
            depth_mm: overlap.depth_mm,
        });
    }
    for stuck in &fits.stuck {
        let by = match stuck.by {
            Obstacle::Thing(part) => Hindrance::Thing { id: id_of(part), name: name_of(part) },
            Obstacle::Limit(limit) => Hindrance::Van { past: limit },
        };
        let thing = Part::Item(stuck.item);
        let (placement, name) = (id_of(thing), name_of(thing));
        findings.push(Finding::CannotOpen { placement, name, by, depth_mm: stuck.depth_mm });
    }
    findings
}

/// By how much a thing is larger than the van, whichever way it is turned on the floor.
fn too_large(placed: &Placed, number: usize) -> Option<f64> {
    let item = placed.layout.items[number];
    if !item.is_inside() {
        return None;
    }
    let (length, width) = placed.layout.shape.sizes_mm();
    let roof = placed.layout.shape.roof.iter().map(|row| row.height_mm).max().unwrap_or(MOST_MM);
    let over = |long: i32, wide: i32| (long - length).max(wide - width).max(item.height_mm - roof);
    let by = over(item.length_mm, item.width_mm).min(over(item.width_mm, item.length_mm));
    // At a slant something longer than both sides still fits, up to the diagonal.
    let diagonal = libm::hypot(f64::from(length), f64::from(width));
    let fits_at_a_slant = f64::from(item.length_mm.max(item.width_mm)) < diagonal && item.height_mm <= roof;
    (by > 0 && !fits_at_a_slant).then_some(f64::from(by))
}

fn of_ways(plan: &Plan, placed: &Placed, report: &Report) -> Vec<Finding> {
    let wanted_mm = plan.room.body_width_mm();
    let mut findings = Vec::new();
    for way in &report.ways {
        let widest_mm = way.widest_mm;
        let (placement, name) = match &way.to {
            Goal::Thing { id, name } => (Some(*id), name.clone()),
            Goal::Cab => (None, String::new()),
            Goal::Out { .. } => continue,
        };
        if !way.passes {
            findings.push(Finding::WayTooNarrow { placement, name, widest_mm, wanted_mm });
        } else if widest_mm - wanted_mm < TIGHT_WAY_MM {
            findings.push(Finding::WayClose { placement, name, widest_mm, wanted_mm });
        }
    }
    for bed in placed.beds().map(|bed| &placed.things[bed]) {
        let out = report.ways.iter().filter(|way| matches!(&way.to, Goal::Out { id, .. } if *id == bed.id));
        let (all, open) = (out.clone().count(), out.filter(|way| way.passes).count());
        if all > 0 && open == 0 {
            findings.push(Finding::NoWayOut { placement: bed.id, name: bed.name.clone() });
        } else if all > 0 && open == 1 {
            findings.push(Finding::OneWayOut { placement: bed.id, name: bed.name.clone() });
        }
    }
    findings
}

/// What hangs or stands above where somebody's head lies.
fn over_heads(placed: &Placed) -> Vec<Finding> {
    let mut findings = Vec::new();
    for bed in placed.beds() {
        let zone = head_zone(&placed.layout.items[bed], placed.things[bed].head);
        let over = Solid { from_mm: zone.from_mm.saturating_add(BEDDING_OVER_MM), ..zone };
        for (number, item) in placed.layout.items.iter().enumerate() {
            if number != bed && item.is_inside() && item.base_mm >= over.from_mm && meets(&item.solid(), &over) {
                let (thing, bed) = (&placed.things[number], &placed.things[bed]);
                findings.push(Finding::OverAHead {
                    placement: thing.id,
                    name: thing.name.clone(),
                    bed: bed.name.clone(),
                });
            }
        }
    }
    findings
}

/// The room to put things, with the litres that are to be put away and how many things nobody knows them of.
fn stored(plan: &Plan, placed: &Placed) -> (StorageReport, f64, usize) {
    let mut bays: Vec<Bay> = Vec::new();
    for (item, thing) in placed.layout.items.iter().zip(&placed.things) {
        if thing.clear_under_mm > 0 && item.is_inside() {
            let level = if thing.sleeps > 0 || is_under_a_bed(placed, item) { Level::UnderBed } else { Level::Floor };
            let base_mm = item.base_mm - thing.clear_under_mm;
            let room = Item { base_mm, height_mm: thing.clear_under_mm, level, opened: None, ..*item };
            bays.push(Bay { room, level, usable_percent: USABLE_PERCENT });
        }
    }
    let (mut goods_l, mut unknown) = (0.0, 0);
    let mut inside: Vec<(Level, f64)> = Vec::new();
    for item in plan.carried() {
        let own = placed.things.iter().zip(&placed.layout.items).filter(|(thing, _)| thing.item == item.id);
        let levels: Vec<Level> = own.map(|(_, boxed)| boxed.level).collect();
        let holds_l = item.holds_l.filter(|litres| *litres > 0.0).map_or(0.0, |litres| litres.min(1e6));
        inside.extend(levels.iter().filter(|_| holds_l > 0.0).map(|level| (*level, holds_l)));
        let loose = f64::from(item.kept()) - levels.len() as f64;
        if loose > 0.0 {
            match packed_l(item) {
                Some(litres) => goods_l += litres * loose,
                None => unknown += 1,
            }
        }
    }
    let mut report = storage(&placed.layout, &bays, &[]);
    for (level, litres) in inside {
        report.add(LevelRoom {
            level,
            whole_l: litres,
            free_l: litres,
            usable_l: litres * USABLE_PERCENT / 100.0,
            asked_l: 0.0,
        });
    }
    (report.shared_out(&[SoftGoods { litres: goods_l, level: None }]), goods_l, unknown)
}

/// Whether something that can be lain on lies above it.
fn is_under_a_bed(placed: &Placed, item: &Item) -> bool {
    let solid = item.solid();
    placed.beds().any(|bed| {
        let bed = &placed.layout.items[bed];
        bed.base_mm >= item.base_mm && is_within(&solid, &bed.solid())
    })
}

/// What one of a thing takes up when it is put away, in litres.
fn packed_l(item: &crate::plan::Item) -> Option<f64> {
    let soft = item.packed_l.filter(|litres| *litres >= 0.0);
    let boxed = || {
        let [length, width, height] = super::stood_mm(item, crate::plan::Stands::Flat)?;
        Some(length * width * height / 1e6)
    };
    soft.or_else(boxed).map(|litres| litres.min(1e6))
}

fn working(plan: &Plan, report: &Report, narrowest: Option<&WayTo>) -> Vec<Working> {
    let mm = |length: f64| Figure::of(length, Quantity::LengthMm);
    let mut working = Vec::new();
    if let Some(way) = narrowest {
        let wanted = plan.room.body_width_mm();
        working.push(Working {
            formula: "working-space-way",
            figures: vec![("widest", mm(way.widest_mm)), ("wanted", mm(wanted)), ("spare", mm(way.widest_mm - wanted))],
            source: Source::Arithmetic,
        });
    }
    let usable: f64 = report.levels.iter().map(|level| level.usable_l).sum();
    let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
    working.push(Working {
        formula: "working-space-storage",
        figures: vec![
            ("usable", litres(usable)),
            ("goods", litres(report.goods_l)),
            ("percent", Figure::of(USABLE_PERCENT, Quantity::Percent)),
        ],
        source: Source::CommonPractice,
    });
    working
}
