//! What there is to say about warmth, damp and air.

use serde::Serialize;

use crate::assessment::{Moment, Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, List, Quantity};

/// Something wrong, close or worth knowing about warmth, damp or air.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// Nights are colder than the bedding is for.
    TooCold {
        /// When it is coldest.
        at: Moment,
        /// Inside then, in °C.
        inside_c: f64,
        /// What the bedding is for, in °C.
        least_c: f64,
        /// Nights that are too cold.
        nights: usize,
    },
    /// The coldest night is near that.
    NearlyTooCold {
        /// When it is coldest.
        at: Moment,
        /// Inside then, in °C.
        inside_c: f64,
        /// What the bedding is for, in °C.
        least_c: f64,
    },
    /// A heater does not reach what is wanted of it.
    HeaterTooWeak {
        /// When it is furthest from it.
        at: Moment,
        /// Inside then, in °C.
        inside_c: f64,
        /// What is wanted, in °C.
        wanted_c: f64,
    },
    /// A temperature is wanted, and nothing heats.
    NothingHeats {
        /// What is wanted, in °C.
        wanted_c: f64,
    },
    /// Water settles on faces inside.
    GetsWet {
        /// When it first does.
        at: Moment,
        /// Hours in which it does somewhere.
        hours: usize,
        /// Faces on which it does.
        faces: usize,
        /// Most that lies on all of them, in g.
        most_g: f64,
    },
    /// The air is stale.
    StaleAir {
        /// When it is worst.
        at: Moment,
        /// Carbon dioxide then, in ppm.
        most_ppm: f64,
    },
    /// There is more carbon dioxide than is allowed at work.
    BadAir {
        /// When that begins.
        at: Moment,
        /// Carbon dioxide at worst, in ppm.
        most_ppm: f64,
        /// The limit, in ppm.
        limit_ppm: f64,
    },
    /// An open flame is to heat the room.
    OpenFlameHeats {
        /// The item.
        item: Id,
        /// Its name.
        name: String,
    },
    /// An open flame burns while all sleep.
    FlameWhileAsleep {
        /// The item.
        item: Id,
        /// Its name.
        name: String,
    },
    /// Foil without a gap beside it.
    IdleFoil {
        /// The layer.
        layer: Id,
        /// Its name.
        name: String,
    },
    /// It gets hot inside.
    HotInside {
        /// When it is hottest.
        at: Moment,
        /// Inside then, in °C.
        inside_c: f64,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::TooCold { .. } => "warmth-too-cold",
            Self::NearlyTooCold { .. } => "warmth-nearly-too-cold",
            Self::HeaterTooWeak { .. } => "warmth-heater-too-weak",
            Self::NothingHeats { .. } => "warmth-nothing-heats",
            Self::GetsWet { .. } => "warmth-gets-wet",
            Self::StaleAir { .. } => "warmth-stale-air",
            Self::BadAir { .. } => "warmth-bad-air",
            Self::OpenFlameHeats { .. } => "warmth-open-flame-heats",
            Self::FlameWhileAsleep { .. } => "warmth-flame-while-asleep",
            Self::IdleFoil { .. } => "warmth-idle-foil",
            Self::HotInside { .. } => "warmth-hot-inside",
        }
    }

    fn figures(&self) -> Figures {
        let moment = |at: &Moment| ("at", Figure::Moment(*at));
        let degrees = |name, value: &f64| (name, Figure::of(*value, Quantity::TemperatureC));
        let ppm = |name, value: &f64| (name, Figure::of(*value, Quantity::Ppm));
        match self {
            Self::TooCold { at, inside_c, least_c, nights } => vec![
                moment(at),
                degrees("inside", inside_c),
                degrees("least", least_c),
                ("nights", Figure::count(*nights)),
            ],
            Self::NearlyTooCold { at, inside_c, least_c } => {
                vec![moment(at), degrees("inside", inside_c), degrees("least", least_c)]
            }
            Self::HeaterTooWeak { at, inside_c, wanted_c } => {
                vec![moment(at), degrees("inside", inside_c), degrees("wanted", wanted_c)]
            }
            Self::NothingHeats { wanted_c } => vec![degrees("wanted", wanted_c)],
            Self::GetsWet { at, hours, faces, most_g } => vec![
                moment(at),
                ("hours", Figure::count(*hours)),
                ("faces", Figure::count(*faces)),
                ("most", Figure::of(*most_g, Quantity::MassG)),
            ],
            Self::StaleAir { at, most_ppm } => vec![moment(at), ppm("most", most_ppm)],
            Self::BadAir { at, most_ppm, limit_ppm } => {
                vec![moment(at), ppm("most", most_ppm), ppm("limit", limit_ppm)]
            }
            Self::OpenFlameHeats { name, .. } | Self::FlameWhileAsleep { name, .. } | Self::IdleFoil { name, .. } => {
                vec![("name", Figure::Name(name.clone()))]
            }
            Self::HotInside { at, inside_c } => vec![moment(at), degrees("inside", inside_c)],
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        match self {
            Self::TooCold { .. } | Self::NearlyTooCold { .. } => Some("next-warmth-too-cold"),
            Self::HeaterTooWeak { .. } => Some("next-warmth-heater-too-weak"),
            Self::NothingHeats { .. } => Some("next-warmth-nothing-heats"),
            Self::GetsWet { .. } => Some("next-warmth-gets-wet"),
            Self::StaleAir { .. } | Self::BadAir { .. } => Some("next-warmth-air"),
            Self::OpenFlameHeats { .. } | Self::FlameWhileAsleep { .. } => Some("next-warmth-flame"),
            Self::IdleFoil { .. } => Some("next-warmth-idle-foil"),
            Self::HotInside { .. } => Some("next-warmth-hot-inside"),
        }
    }

    fn severity(&self) -> Severity {
        match self {
            Self::TooCold { .. }
            | Self::BadAir { .. }
            | Self::OpenFlameHeats { .. }
            | Self::FlameWhileAsleep { .. } => Severity::Short,
            Self::NearlyTooCold { .. } | Self::HeaterTooWeak { .. } | Self::GetsWet { .. } => Severity::Close,
            Self::NothingHeats { .. } | Self::StaleAir { .. } | Self::IdleFoil { .. } | Self::HotInside { .. } => {
                Severity::Note
            }
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::OpenFlameHeats { item, .. } | Self::FlameWhileAsleep { item, .. } => Some(*item),
            Self::IdleFoil { layer, .. } => Some(*layer),
            _ => None,
        }
    }

    fn list(&self) -> List {
        if matches!(self, Self::IdleFoil { .. }) { List::Layers } else { List::Kit }
    }
}
