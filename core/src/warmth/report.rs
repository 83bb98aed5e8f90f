//! What warmth, damp and air come to.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::LEAST_ASLEEP_C;
use super::findings::Finding;
use super::input::Input;
use super::judging::judge;
use super::shell::{Kind, Sizes, layer, lies_on, linings, square_metre_kg, surfaces};
use crate::assessment::{Caution, Standing};
use crate::energy::within;
use crate::order::in_a_row;
use crate::plan::{Covers, Id, Material, Money, Path, Plan};
use crate::run::{Span, Timeline, missing_road};
use crate::thermal::run::{Course, Part};
use crate::thermal::shell::Surface;
use crate::thermal::vents::w_k;

/// The warmth of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// The verdict and what it rests on.
    pub standing: Standing<Finding>,
    /// The first day of the hourly series.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub from: Option<Date>,
    /// Hour by hour on the road; empty where the air outside is not known.
    pub hours: Vec<Hour>,
    /// The surfaces of the shell.
    pub surfaces: Vec<SurfaceReport>,
    /// Their inner faces along the road.
    pub faces: Vec<FaceReport>,
    /// Heat that fresh air takes in an average hour of sleep, in W/K.
    pub air_w_k: f64,
    /// What each layer does.
    pub layers: Vec<LayerReport>,
    /// The coldest that the bedding is for, in °C.
    pub least_c: f64,
    /// The coldest and the hottest that what is heavy inside gets ahead, such as the cells of a store, in °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heavy_c: Option<[f64; 2]>,
    /// Given by what burns with a thermostat along the road, in Wh.
    pub burner_wh: f64,
    /// The coldest hour of sleep ahead, counted from the first on the road.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub coldest: Option<usize>,
    /// The hour of sleep ahead in which a face lies furthest below the dew point.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wettest: Option<usize>,
}

/// An hour.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Hour {
    /// Outside, in °C.
    pub outside_c: f64,
    /// Inside at its end, in °C.
    pub inside_c: f64,
    /// Dew point inside, in °C.
    pub dew_point_c: f64,
    /// Relative humidity inside, in percent.
    pub humidity_percent: f64,
    /// Carbon dioxide on average, in ppm.
    pub co2_ppm: f64,
    /// How many faces are below the dew point.
    pub wet_faces: u32,
    /// Whether all sleep.
    pub asleep: bool,
}

/// A surface.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SurfaceReport {
    /// Which.
    pub kind: Kind,
    /// With its windows, in m².
    pub area_m2: f64,
    /// Its windows, in m².
    pub window_m2: f64,
    /// Heat through its wall with the ribs, in W/(m² K).
    pub u_w_m2k: f64,
    /// Heat through all of it, in W/K.
    pub w_k: f64,
}

/// An inner face along the road.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FaceReport {
    /// Of which surface.
    pub kind: Kind,
    /// What of it: `wall`, `ribs` or `window`.
    pub part: FacePart,
    /// In m².
    pub area_m2: f64,
    /// The coldest that it gets ahead, in °C.
    pub coldest_c: f64,
    /// Hours ahead at whose end it is below the dew point, as hours in a row: from one until before another.
    pub wet: Vec<(usize, usize)>,
    /// Most water that lay on it, in g.
    pub most_g: f64,
}

/// What of a surface a face is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum FacePart {
    Wall,
    Ribs,
    Window,
}

/// What a layer does.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LayerReport {
    /// The layer.
    pub layer: Id,
    /// What it saves, in W/K: what the shell would lose more without it.
    pub saves_w_k: f64,
    /// What it lies on, in m².
    pub area_m2: f64,
    /// Width that it takes of the room, in mm.
    pub width_mm: f64,
    /// What all of it weighs, in kg.
    pub mass_kg: f64,
    /// What all of it costs, as stated or as the thing of the kit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<Money>,
    /// Whether it is foil that no gap lies beside, so that it saves next to nothing.
    pub is_idle_foil: bool,
}

/// Judges the warmth from `as_of` on.
pub fn report(plan: &Plan, as_of: Date, timeline: &Timeline, input: &Input, room: &Course) -> Report {
    let from = timeline.road().next().map(|day| day.date);
    let span = from.map(|from| Span::new(from, as_of));
    let first_hour = span.map_or(0, |span| span.first_hour);
    let mut missing = missing_road(plan, as_of, timeline);
    if missing.is_empty() && !input.is_air_known {
        missing = vec![Path::section("climate").child("like")];
    }
    let sizes = Sizes::new(plan);
    let shell = surfaces(plan, &sizes, None);
    let asleep = || input.asleep.iter().enumerate().skip(first_hour).filter(|(_, asleep)| **asleep);
    let inside_c = |hour: usize| room.hours.get(hour).map(|done| done.inside_c);
    let coldest = asleep().filter_map(|(hour, _)| Some((hour, inside_c(hour)?))).min_by(|a, b| a.1.total_cmp(&b.1));
    let below_k = |hour: usize| {
        let dew_c = room.hours.get(hour)?.dew_point_c;
        let face_c = room.faces_at(hour).iter().copied().reduce(f64::min)?;
        Some((hour, dew_c - face_c)).filter(|(_, below_k)| *below_k > 0.0)
    };
    let wettest = asleep().filter_map(|(hour, _)| below_k(hour)).max_by(|a, b| a.1.total_cmp(&b.1));
    let mut report = Report {
        standing: Standing::unknown(missing),
        from,
        hours: hours(input, room),
        surfaces: shell.iter().map(|(kind, surface)| of_surface(*kind, surface)).collect(),
        faces: faces(input, room, first_hour),
        air_w_k: air_w_k(input, room),
        layers: layers(plan, &sizes, &shell),
        // Zero has no sign, which JavaScript would not keep.
        least_c: within(plan.shell.least_asleep_c.unwrap_or(LEAST_ASLEEP_C), -100.0, 100.0) + 0.0,
        heavy_c: heavy_c(room, first_hour),
        burner_wh: room.heater_wh() + 0.0,
        coldest: coldest.map(|(hour, _)| hour),
        wettest: wettest.map(|(hour, _)| hour),
    };
    if let Some(span) = span.filter(|_| report.standing.missing.is_empty()) {
        report.standing = judge(plan, input, room, &report, span);
    }
    report.standing.cautions = cautions(plan);
    report
}

fn hours(input: &Input, room: &Course) -> Vec<Hour> {
    let of = |(at, done): (usize, &crate::thermal::run::Done)| Hour {
        outside_c: input.hours.get(at).map_or(0.0, |hour| hour.air_c),
        inside_c: done.inside_c,
        dew_point_c: done.dew_point_c,
        humidity_percent: done.relative_humidity * 100.0,
        co2_ppm: done.mean_ppm,
        wet_faces: (0..room.faces.len()).map(|face| u32::from(room.is_below_dew(face, at))).sum(),
        asleep: input.asleep.get(at).copied().unwrap_or(false),
    };
    room.hours.iter().enumerate().map(of).collect()
}

fn of_surface(kind: Kind, surface: &Surface) -> SurfaceReport {
    SurfaceReport {
        kind,
        area_m2: surface.area_m2,
        window_m2: surface.window_m2(),
        u_w_m2k: surface.wall.u_w_m2k(),
        w_k: surface.ua_w_k(),
    }
}

fn faces(input: &Input, room: &Course, first_hour: usize) -> Vec<FaceReport> {
    let of = |(at, face): (usize, &crate::thermal::run::Face)| {
        let hours = 0..room.hours.len();
        let wet = in_a_row(hours.clone().map(|hour| hour >= first_hour && room.is_below_dew(at, hour)));
        let ahead_c = hours.skip(first_hour).filter_map(|hour| room.faces_at(hour).get(at).copied());
        FaceReport {
            kind: input.kinds.get(face.surface).copied().unwrap_or(Kind::Sides),
            part: match face.part {
                Part::Wall => FacePart::Wall,
                Part::Bridge => FacePart::Ribs,
                Part::Window => FacePart::Window,
            },
            area_m2: face.area_m2,
            coldest_c: ahead_c.reduce(f64::min).unwrap_or(0.0),
            wet,
            most_g: room.wetness.get(at).map_or(0.0, |wetness| wetness.most_g),
        }
    };
    room.faces.iter().enumerate().map(of).collect()
}

fn heavy_c(room: &Course, first_hour: usize) -> Option<[f64; 2]> {
    let ahead = || room.hours.iter().skip(first_hour).map(|done| done.mass_c);
    Some([ahead().reduce(f64::min)?, ahead().reduce(f64::max)?])
}

/// What fresh air takes on average while all sleep.
fn air_w_k(input: &Input, room: &Course) -> f64 {
    let asleep = room.hours.iter().zip(&input.asleep).filter(|(_, asleep)| **asleep);
    let (sum, count) = asleep.fold((0.0, 0.0), |(sum, count), (done, _)| (sum + w_k(done.air_m3_h), count + 1.0));
    if count > 0.0 { sum / count } else { 0.0 }
}

fn layers(plan: &Plan, sizes: &Sizes, shell: &[(Kind, Surface)]) -> Vec<LayerReport> {
    let total_w_k = |shell: &[(Kind, Surface)]| -> f64 { shell.iter().map(|(_, surface)| surface.ua_w_k()).sum() };
    let with_w_k = total_w_k(shell);
    let of = |lining: &crate::plan::Layer| {
        let bare = surfaces(plan, sizes, Some(lining.id));
        let changed = |(with, without): &(&(Kind, Surface), &(Kind, Surface))| with.1 != without.1;
        let here: Vec<_> = shell.iter().zip(&bare).filter(changed).collect();
        let is_window = lining.covers == Covers::Windows;
        let area_m2: f64 =
            here.iter().map(|(with, _)| if is_window { with.1.window_m2() } else { with.1.wall_m2() }).sum();
        let saves_w_k = total_w_k(&bare) - with_w_k;
        let thing = lining.made_of.and_then(|id| plan.item(id));
        let of_thing = thing.and_then(|thing| Some(thing.unit_price?.likely().times(thing.quantity)));
        LayerReport {
            layer: lining.id,
            saves_w_k,
            area_m2: area_m2 + 0.0,
            width_mm: layer(lining).thickness_m() * 1e3 + 0.0,
            mass_kg: square_metre_kg(lining) * area_m2 + 0.0,
            price: lining.layer_price.or(of_thing),
            is_idle_foil: is_idle_foil(plan, lining),
        }
    };
    linings(plan).map(of).collect()
}

/// Whether foil has no closed air beside it on any surface that it lies on.
fn is_idle_foil(plan: &Plan, lining: &crate::plan::Layer) -> bool {
    const KINDS: [Kind; 5] = [Kind::Roof, Kind::Sides, Kind::Doors, Kind::Floor, Kind::Divider];
    if lining.material != Material::Foil {
        return false;
    }
    let has_gap = |beside: &dyn Fn(&crate::plan::Layer) -> bool| {
        let here: Vec<&crate::plan::Layer> = linings(plan).filter(|other| beside(other)).collect();
        let at = here.iter().position(|other| other.id == lining.id);
        let neighbours = at.map(|at| [at.checked_sub(1), Some(at + 1)]).into_iter().flatten().flatten();
        neighbours.filter_map(|at| here.get(at)).any(|other| other.material == Material::AirGap)
    };
    let on_kind = |kind: Kind| lies_on(lining.covers, kind) && has_gap(&|other| lies_on(other.covers, kind));
    let on_windows = lining.covers == Covers::Windows && has_gap(&|other| other.covers == Covers::Windows);
    !KINDS.into_iter().any(on_kind) && !on_windows
}

fn cautions(plan: &Plan) -> Vec<Caution> {
    let mut cautions = Vec::new();
    let burners = || plan.carried().filter_map(|item| item.burner);
    if burners().next().is_some() {
        cautions.push(Caution::FlamesAndMonoxide);
    }
    if burners().any(|burner| !burner.vents_out) {
        cautions.push(Caution::CookingFlame);
    }
    cautions.extend([Caution::ClosedAir, Caution::ColdInside, Caution::HeatInside]);
    if !plan.layers.is_empty() {
        cautions.push(Caution::InsulationFire);
    }
    cautions
}
