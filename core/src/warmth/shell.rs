//! The van's surfaces by its dimensions, with their layers.

use serde::Serialize;

use super::constants::{CAB, CAB_GAP_M, CURTAIN, MATERIALS, MOST_WINDOW, RIB_PERCENT, SIDE_DOOR_M2, STEEL};
use crate::energy::sound;
use crate::plan::{Cab, Covers, Id, Layer as Lining, Material, Obtain, Plan};
use crate::space::shape::DoorKind;
use crate::space::shape_of;
use crate::thermal::layers::{Flow, Layer, Wall};
use crate::thermal::shell::{Surface, Window};

/// No square metre of a layer is heavier, in kg.
const MOST_KG_M2: f64 = 1e4;

/// A surface of the van.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// The roof.
    Roof,
    /// Both sides, without their doors.
    Sides,
    /// The doors of the load space.
    Doors,
    /// The floor.
    Floor,
    /// The cab around its seats, where nothing divides it off.
    Cab,
    /// What divides the cab off.
    Divider,
}

/// The van's sizes that matter for warmth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    /// Inside, in m.
    pub length_m: f64,
    /// Inside, in m.
    pub width_m: f64,
    /// Inside, in m: the mean along the van.
    pub height_m: f64,
    /// Doors of the load space, in m².
    pub doors_m2: f64,
}

impl Sizes {
    /// Of a plan; what is not measured is as usual for the van's class.
    pub fn new(plan: &Plan) -> Self {
        let shape = shape_of(plan);
        let (length_mm, width_mm) = shape.sizes_mm();
        let heights = shape.roof.iter().map(|row| f64::from(row.height_mm));
        let metres = |mm: f64| (mm / 1_000.0).clamp(0.1, 20.0);
        let height_m = metres(heights.sum::<f64>() / shape.roof.len().max(1) as f64);
        let width_m = metres(f64::from(width_mm));
        let drawn = shape.doors.iter().filter(|door| door.kind != DoorKind::Cab);
        let drawn_m2: f64 = drawn.map(|door| f64::from(door.width_mm) * f64::from(door.height_mm) / 1e6).sum();
        let usual_m2 = width_m * height_m + SIDE_DOOR_M2;
        Self {
            length_m: metres(f64::from(length_mm)),
            width_m,
            height_m,
            // The rear is doors, or as thin as they are.
            doors_m2: if drawn_m2 > 0.0 { drawn_m2.max(width_m * height_m) } else { usual_m2 },
        }
    }

    /// Floor, in m².
    pub fn floor_m2(&self) -> f64 {
        self.length_m * self.width_m
    }

    /// Air of the load space, in m³.
    pub fn volume_m3(&self) -> f64 {
        self.floor_m2() * self.height_m
    }

    /// Both sides and the rear, without the doors, in m².
    fn sides_m2(&self) -> f64 {
        let around_m2 = (2.0 * self.length_m + self.width_m) * self.height_m;
        (around_m2 - self.doors_m2).max(0.1)
    }

    fn front_m2(&self) -> f64 {
        self.width_m * self.height_m
    }
}

/// A layer as the engine takes it, with how thick it is.
pub fn layer(lining: &Lining) -> Layer {
    let [usual_mm, usual_w_mk, _] = usual(lining.material);
    let thickness_m = lining.thick_mm.unwrap_or(usual_mm) / 1_000.0;
    let conductivity_w_mk = lining.conducts_w_mk.unwrap_or(usual_w_mk);
    match lining.material {
        Material::AirGap => Layer::Gap { thickness_m },
        Material::Foil => match Layer::FOIL {
            Layer::Foil { emissivity, .. } => Layer::Foil { thickness_m, conductivity_w_mk, emissivity },
            other => other,
        },
        _ => Layer::Solid { thickness_m, conductivity_w_mk },
    }
}

/// Mass of a square metre of a layer, in kg.
pub fn square_metre_kg(lining: &Lining) -> f64 {
    let [usual_mm, _, density] = usual(lining.material);
    sound(lining.square_metre_kg.unwrap_or(lining.thick_mm.unwrap_or(usual_mm) / 1_000.0 * density), MOST_KG_M2)
}

/// Thickness in mm, conductivity in W/(m K) and density in kg/m³.
pub fn usual(material: Material) -> [f64; 3] {
    MATERIALS.get(material as usize).copied().unwrap_or(MATERIALS[12])
}

/// Whether it lies over the ribs too; foam and gaps end at them.
const fn covers_ribs(material: Material) -> bool {
    matches!(
        material,
        Material::Plywood | Material::Timber | Material::Carpet | Material::Cloth | Material::Cork | Material::Foil
    )
}

/// The layers that are there: not those of which the thing is left out.
pub fn linings(plan: &Plan) -> impl Iterator<Item = &Lining> {
    plan.layers.iter().filter(|lining| {
        let thing = lining.made_of.and_then(|id| plan.item(id));
        thing.is_none_or(|thing| thing.obtain != Obtain::LeftOut)
    })
}

/// Whether a layer lies on a surface.
pub const fn lies_on(covers: Covers, kind: Kind) -> bool {
    matches!(
        (covers, kind),
        (Covers::RoofAndSides, Kind::Roof | Kind::Sides)
            | (Covers::Roof, Kind::Roof)
            | (Covers::Sides, Kind::Sides)
            | (Covers::Doors, Kind::Doors)
            | (Covers::Floor, Kind::Floor)
            | (Covers::Divider, Kind::Divider)
    )
}

/// The surfaces of a plan, without one of its layers where that is asked.
pub fn surfaces(plan: &Plan, sizes: &Sizes, without: Option<Id>) -> Vec<(Kind, Surface)> {
    let layers = |kind: Kind, over_ribs: bool| -> Vec<Layer> {
        let here = linings(plan).filter(|lining| Some(lining.id) != without && lies_on(lining.covers, kind));
        let here = here.filter(|lining| !over_ribs || covers_ribs(lining.material));
        let mut layers: Vec<Layer> = here.map(layer).collect();
        layers.reverse();
        layers
    };
    let steel = Layer::Solid { thickness_m: STEEL[0], conductivity_w_mk: STEEL[1] };
    let ribs = plan.shell.rib_percent.unwrap_or(RIB_PERCENT) / 100.0;
    let wall = |kind: Kind, flow: Flow| {
        let of = |over_ribs: bool| layers(kind, over_ribs).into_iter().chain([steel]).collect::<Vec<_>>();
        let wall = Wall::new(flow, of(false));
        if kind == Kind::Floor || ribs <= 0.0 { wall } else { wall.bridged(ribs, of(true)) }
    };
    let colour = plan.shell.colour.unwrap_or_default();
    let panes = panes(plan, without);
    let [in_doors_m2, in_sides_m2] = windows_m2(plan, sizes);
    let glazed = |surface: Surface, area_m2: f64| {
        if area_m2 > 0.0 { surface.with_window(Window { area_m2, ..panes }) } else { surface }
    };
    let upright = |kind: Kind, area_m2: f64| Surface::side(area_m2, wall(kind, Flow::Sideways), 0.0).coloured(colour);
    vec![
        (Kind::Roof, Surface::roof(sizes.floor_m2(), wall(Kind::Roof, Flow::Up)).coloured(colour)),
        (Kind::Sides, glazed(upright(Kind::Sides, sizes.sides_m2()), in_sides_m2)),
        (Kind::Doors, glazed(upright(Kind::Doors, sizes.doors_m2), in_doors_m2)),
        (Kind::Floor, Surface::floor(sizes.floor_m2(), wall(Kind::Floor, Flow::Down))),
        front(plan, sizes, layers(Kind::Divider, false), steel),
    ]
}

/// Window panes in the doors, and what is left of them in the sides, in m².
fn windows_m2(plan: &Plan, sizes: &Sizes) -> [f64; 2] {
    let window_m2 = plan.shell.window_m2.unwrap_or(0.0).max(0.0);
    let in_doors_m2 = window_m2.min(sizes.doors_m2 * MOST_WINDOW);
    [in_doors_m2, (window_m2 - in_doors_m2).min(sizes.sides_m2() * MOST_WINDOW)]
}

/// What can be lined of a surface, in m²: without doors and windows. Nothing of what is not the load space's own.
pub fn lined_m2(plan: &Plan, sizes: &Sizes, kind: Kind) -> f64 {
    let [in_doors_m2, in_sides_m2] = windows_m2(plan, sizes);
    match kind {
        Kind::Roof | Kind::Floor => sizes.floor_m2(),
        Kind::Sides => sizes.sides_m2() - in_sides_m2,
        Kind::Doors => sizes.doors_m2 - in_doors_m2,
        Kind::Cab | Kind::Divider => 0.0,
    }
}

/// A single pane with what covers it at night; the sun comes through it by day, when nothing does.
fn panes(plan: &Plan, without: Option<Id>) -> Window {
    let pane = Window::single_glass(0.0);
    let covers = linings(plan).filter(|lining| Some(lining.id) != without && lining.covers == Covers::Windows);
    let mut layers: Vec<Layer> = covers.map(layer).collect();
    if layers.is_empty() {
        return pane;
    }
    layers.reverse();
    let bare_m2k_w = Wall::new(Flow::Sideways, vec![]).plain_m2k_w();
    let covered_m2k_w = Wall::new(Flow::Sideways, layers).plain_m2k_w() - bare_m2k_w;
    let u_w_m2k = 1.0 / (1.0 / pane.pane_u_w_m2k + covered_m2k_w);
    Window { pane_u_w_m2k: u_w_m2k, frame_u_w_m2k: u_w_m2k, ..pane }
}

/// The cab itself, or what divides it off with the cab behind it.
fn front(plan: &Plan, sizes: &Sizes, layers: Vec<Layer>, steel: Layer) -> (Kind, Surface) {
    let [cab_m2, glass_m2, _] = CAB;
    let bare = Wall::new(Flow::Sideways, vec![steel]);
    let around = Surface::side(cab_m2, bare, 0.0).with_window(Window::single_glass(glass_m2));
    let divider = match plan.shell.cab.unwrap_or_default() {
        Cab::Open => return (Kind::Cab, around.coloured(plan.shell.colour.unwrap_or_default())),
        Cab::Curtain => Layer::Solid { thickness_m: CURTAIN[0], conductivity_w_mk: CURTAIN[1] },
        Cab::Wall => steel,
    };
    // The cab behind it, as a resistance for each square metre of the divider.
    let cab_m2k_w = sizes.front_m2() / around.ua_w_k();
    let cab = Layer::Solid { thickness_m: cab_m2k_w / 10.0, conductivity_w_mk: 0.1 };
    let layers = layers.into_iter().chain([divider, Layer::Gap { thickness_m: CAB_GAP_M }, cab]).collect();
    let surface =
        Surface { absorptance: 0.0, ..Surface::side(sizes.front_m2(), Wall::new(Flow::Sideways, layers), 0.0) };
    (Kind::Divider, surface)
}

/// Air inside, in m³: with the cab's where nothing divides it off.
pub fn volume_m3(plan: &Plan, sizes: &Sizes) -> f64 {
    let cab_m3 = if plan.shell.cab.unwrap_or_default() == Cab::Open { CAB[2] } else { 0.0 };
    sizes.volume_m3() + cab_m3
}
