//! What the room takes of the plan: the inside of the van, and what stands in it.

use super::constants::{MOST_CORNERS, MOST_PLACED, usual_inside_mm};
use super::geometry::mm;
use super::item::{Item, Layout, Opened};
use super::shape::{Door, DoorKind, Fixed, RoofRow, Shape, Spot, WallRow};
use crate::plan::{self, Fastened, Head, Id, Placement, Plan, Stands, VanSide};

/// What stands in the van, as the plan has it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Placed {
    /// The van with its things, each at the number of its entry below.
    pub layout: Layout,
    /// What is known of each.
    pub things: Vec<Thing>,
    /// Placements without a place, or whose item has not all its sizes.
    pub waiting: Vec<Id>,
    /// Placements beyond the most that are counted.
    pub uncounted: usize,
}

/// One thing at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Thing {
    /// The placement.
    pub id: Id,
    /// The item of the kit.
    pub item: Id,
    /// What it is called.
    pub name: String,
    /// How many sleep on it.
    pub sleeps: u32,
    /// Where the heads are.
    pub head: Head,
    /// Whether one must get to it on foot.
    pub reached: bool,
    /// Whether it stays when all is arranged anew.
    pub pinned: bool,
    /// What keeps it in its place.
    pub fastened: Fastened,
    /// Free height under it, in millimetres.
    pub clear_under_mm: i32,
    /// Its mass, where it is known, in kilograms.
    pub mass_kg: Option<f64>,
}

/// The inside of the van: its outline, or a rectangle of the inside's length and width, or of what is usual for its size.
///
/// ```
/// use kerbstead_core::plan::{Plan, Vehicle};
/// use kerbstead_core::space::shape_of;
/// let vehicle = Vehicle { inside_length_mm: Some(2_500.0), inside_width_mm: Some(1_600.0), ..Vehicle::default() };
/// assert_eq!(shape_of(&Plan { vehicle, ..Plan::default() }).floor_area_mm2(), 4_000_000.0);
/// ```
pub fn shape_of(plan: &Plan) -> Shape {
    let vehicle = &plan.vehicle;
    let [usual_length, usual_width, usual_height] = usual_inside_mm(vehicle.size);
    let or = |own: Option<f64>, usual: f64| mm(own.unwrap_or(usual)).max(1);
    let mut shape = if plan.corners.is_empty() {
        Shape::square(or(vehicle.inside_length_mm, usual_length), or(vehicle.inside_width_mm, usual_width))
    } else {
        let corners = plan.corners.iter().take(MOST_CORNERS);
        let outline = corners.map(|corner| Spot { x_mm: mm(corner.x_mm), y_mm: mm(corner.y_mm) });
        Shape { outline: outline.collect(), ..Shape::default() }
    };
    let few = MOST_CORNERS;
    shape.fixed = plan.built_ins.iter().take(few).map(fixed).collect();
    shape.doors = plan.doors.iter().take(few).map(|door| door_in(&shape.outline, door)).collect();
    let mut walls: Vec<WallRow> = plan.wall_rows.iter().take(few).map(wall).collect();
    walls.sort_by_key(|row| row.height_mm);
    walls.dedup_by_key(|row| row.height_mm);
    let mut roof: Vec<RoofRow> = plan.roof_rows.iter().take(few).map(roof_row).collect();
    roof.sort_by_key(|row| row.x_mm);
    roof.dedup_by_key(|row| row.x_mm);
    if roof.is_empty() {
        roof.push(RoofRow { x_mm: 0, height_mm: or(vehicle.inside_height_mm, usual_height) });
    }
    Shape { walls, roof, ..shape }
}

impl Placed {
    /// What the plan says.
    pub fn new(plan: &Plan) -> Self {
        let mut placed = Self { layout: Layout { shape: shape_of(plan), ..Layout::default() }, ..Self::default() };
        placed.uncounted = plan.placements.len().saturating_sub(MOST_PLACED);
        let mut open_together = Vec::new();
        for placement in plan.placements.iter().take(MOST_PLACED) {
            let Some(item) = placement.thing.and_then(|id| plan.item(id)) else { continue };
            if item.obtain == plan::Obtain::LeftOut {
                continue;
            }
            let Some(boxed) = boxed(item, placement) else {
                placed.waiting.push(placement.id);
                continue;
            };
            if placement.opened.is_some_and(|opened| opened.with_others) {
                open_together.push(placed.things.len());
            }
            placed.layout.items.push(boxed);
            placed.things.push(Thing {
                id: placement.id,
                item: item.id,
                name: item.name.clone(),
                sleeps: placement.sleeps,
                head: placement.head,
                reached: placement.reached,
                pinned: placement.pinned,
                fastened: placement.fastened,
                clear_under_mm: placement.clear_under_mm.map_or(0, mm).max(0),
                mass_kg: item.mass_kg.map(|mass| mass.likely()).filter(|mass| *mass >= 0.0),
            });
        }
        let pairs = open_together.iter().enumerate();
        placed.layout.together =
            pairs.flat_map(|(at, first)| open_together.iter().skip(at + 1).map(|second| (*first, *second))).collect();
        placed
    }

    /// The number of a placement in the layout.
    pub fn number_of(&self, id: Id) -> Option<usize> {
        self.things.iter().position(|thing| thing.id == id)
    }

    /// The numbers of what somebody sleeps on.
    pub fn beds(&self) -> impl Iterator<Item = usize> {
        (0..self.things.len()).filter(|at| self.things[*at].sleeps > 0 && self.layout.items[*at].is_inside())
    }

    /// The number of the bed of an item; without one, the first bed there is.
    pub fn bed_of(&self, item: Option<Id>) -> Option<usize> {
        self.beds().find(|at| item.is_none_or(|item| self.things[*at].item == item))
    }
}

/// The sizes of a thing as it stands: along it, across it, upwards.
pub fn stood_mm(item: &plan::Item, stands: Stands) -> Option<[f64; 3]> {
    let [length, width, height] = [item.length_mm?, item.width_mm?, item.height_mm?];
    let sizes = match stands {
        Stands::Flat => [length, width, height],
        Stands::OnEdge => [length, height, width],
        Stands::OnEnd => [height, width, length],
    };
    sizes.iter().all(|size| *size > 0.0 && size.is_finite()).then_some(sizes)
}

/// The box of a placement; nothing while it has no place or its item no sizes.
fn boxed(item: &plan::Item, placement: &Placement) -> Option<Item> {
    let [length, width, height] = stood_mm(item, placement.stands)?.map(mm);
    let (x_mm, y_mm) = (mm(placement.x_mm?), mm(placement.y_mm?));
    let (base_mm, under_mm) = (mm(placement.base_mm).max(0), placement.clear_under_mm.map_or(0, mm));
    let under_mm = under_mm.clamp(0, (height - 1).max(0));
    let opened = placement.opened.map(|opened| Opened {
        x_mm: mm(opened.x_mm),
        y_mm: mm(opened.y_mm),
        length_mm: opened.length_mm.map_or(length, mm),
        width_mm: opened.width_mm.map_or(width, mm),
        base_mm: opened.base_mm.map_or(base_mm + under_mm, mm),
        height_mm: opened.height_mm.map_or(height - under_mm, mm),
    });
    let turn_deg = if placement.turn_deg.is_finite() { placement.turn_deg + 0.0 } else { 0.0 };
    let (base_mm, height_mm) = (base_mm + under_mm, height - under_mm);
    let level = placement.level;
    Some(Item { x_mm, y_mm, length_mm: length, width_mm: width, height_mm, base_mm, turn_deg, level, opened })
}

fn fixed(part: &plan::BuiltIn) -> Fixed {
    Fixed {
        x_mm: mm(part.x_mm),
        y_mm: mm(part.y_mm),
        length_mm: mm(part.length_mm),
        width_mm: mm(part.width_mm),
        base_mm: mm(part.base_mm),
        height_mm: mm(part.height_mm),
    }
}

fn wall(row: &plan::WallRow) -> WallRow {
    WallRow { height_mm: mm(row.height_mm), low_side_in_mm: mm(row.left_in_mm), high_side_in_mm: mm(row.right_in_mm) }
}

fn roof_row(row: &plan::RoofRow) -> RoofRow {
    RoofRow { x_mm: mm(row.x_mm), height_mm: mm(row.height_mm) }
}

/// The door in the stretch of the outline that runs along its side where it is; in none when there is none.
fn door_in(outline: &[Spot], door: &plan::Door) -> Door {
    let along = |spot: Spot| if matches!(door.side, VanSide::Left | VanSide::Right) { spot.x_mm } else { spot.y_mm };
    let across = |spot: Spot| if matches!(door.side, VanSide::Left | VanSide::Right) { spot.y_mm } else { spot.x_mm };
    let outward = if matches!(door.side, VanSide::Right | VanSide::Rear) { 1_i64 } else { -1 };
    let (begin, width) = (mm(door.from_mm), mm(door.width_mm));
    let middle = begin.saturating_add(width / 2);
    let stretches = (0..outline.len()).filter_map(|wall| {
        let (from, to) = (outline[wall], outline[(wall + 1) % outline.len()]);
        let (low, high) = (along(from).min(along(to)), along(from).max(along(to)));
        let is_steep = (across(to) - across(from)).abs() > high - low;
        (low <= middle && middle <= high && low < high && !is_steep).then_some((wall, from, to))
    });
    let farthest = stretches.max_by_key(|(wall, from, to)| {
        (outward * (i64::from(across(*from)) + i64::from(across(*to))), std::cmp::Reverse(*wall))
    });
    let kind = match door.side {
        VanSide::Left | VanSide::Right => DoorKind::Side,
        VanSide::Rear => DoorKind::Rear,
        VanSide::Front => DoorKind::Cab,
    };
    let there = farthest.map(|(wall, from, to)| {
        let forward = along(to) > along(from);
        (wall, if forward { begin - along(from) } else { along(from) - begin - width })
    });
    let (wall, from_mm) = there.filter(|(_, from_mm)| *from_mm >= 0).unwrap_or((usize::MAX, 0));
    Door { kind, wall, from_mm, width_mm: width, height_mm: mm(door.height_mm) }
}
