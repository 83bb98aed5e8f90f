//! What there is to say about the load.

use jiff::civil::Date;
use serde::Serialize;

use crate::assessment::{Say, Severity};
use crate::explain::{Figure, Figures};
use crate::plan::{Id, List, Path, Quantity};

/// Something wrong, close or worth knowing about the load.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Finding {
    /// The van weighs more than it may.
    OverGross {
        /// The day when it weighs most; without one, it is with all tanks full.
        #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
        on: Option<Date>,
        /// By how much.
        by_kg: f64,
        /// What it may weigh.
        gross_kg: f64,
    },
    /// The van may weigh what it weighs, but what is to be kept free is not.
    LuggageOver {
        /// How much of it is not there.
        by_kg: f64,
        /// What is to be kept free.
        luggage_kg: f64,
    },
    /// Little is left of what the van may weigh.
    CloseToGross {
        /// What is left.
        spare_kg: f64,
        /// What it may weigh.
        gross_kg: f64,
    },
    /// The front axle bears more than it may.
    FrontOver {
        /// The day when it bears most, if there is one.
        #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
        on: Option<Date>,
        /// By how much.
        by_kg: f64,
        /// What it may bear.
        limit_kg: f64,
    },
    /// The rear axle bears more than it may.
    RearOver {
        /// The day when it bears most, if there is one.
        #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
        on: Option<Date>,
        /// By how much.
        by_kg: f64,
        /// What it may bear.
        limit_kg: f64,
    },
    /// The front axle bears little of the whole.
    FrontLight {
        /// What of the whole it bears at the least, in percent.
        percent: f64,
    },
    /// One side is much heavier than the other.
    Uneven {
        /// What the left wheels bear.
        left_kg: f64,
        /// What the right wheels bear.
        right_kg: f64,
    },
    /// The van would weigh more than it may if things are as heavy as they can be.
    HighestMass {
        /// What it weighs then.
        high_kg: f64,
        /// By how much that is too much.
        by_kg: f64,
    },
    /// The mass of the empty van was not read off a scale.
    NotWeighed {
        /// What is stated.
        empty_kg: f64,
    },
    /// Things whose mass nobody stated.
    MassUnknown {
        /// How many items of the kit.
        count: usize,
    },
    /// What the axles bear cannot be worked out.
    AxlesUnknown {
        /// What is missing for it.
        missing: Vec<Path>,
    },
    /// It is not known what the fuel tank holds, so the fuel counts as it was when the van's mass was taken.
    FuelUnknown {
        /// How full it was then, in percent.
        percent: f64,
    },
    /// The floor would reach beyond the end of the van.
    FloorBeyondVan {
        /// How far, in millimetres.
        by_mm: f64,
    },
    /// Heavy things that nothing keeps in their places: the heaviest, and how many others.
    Unfastened {
        /// The placement of the heaviest.
        placement: Id,
        /// What it is called.
        name: String,
        /// Its mass, with what a can holds.
        mass_kg: f64,
        /// How many others there are.
        others: usize,
    },
    /// A thing that only strips or adhesive hooks hold, above or beside a bed.
    StripsAlone {
        /// The placement.
        placement: Id,
        /// What it is called.
        name: String,
        /// What the bed is called.
        bed: String,
    },
    /// A thing that takes very many strips.
    StripsTooMany {
        /// The placement.
        placement: Id,
        /// What it is called.
        name: String,
        /// How many strips.
        strips: u32,
    },
    /// Strips hold something, and nobody stated what one of them holds.
    StripsNotRated {
        /// How many things.
        count: usize,
    },
}

impl Say for Finding {
    fn key(&self) -> &'static str {
        match self {
            Self::OverGross { on: Some(_), .. } => "load-over-gross",
            Self::OverGross { on: None, .. } => "load-over-gross-full",
            Self::LuggageOver { .. } => "load-luggage-over",
            Self::CloseToGross { .. } => "load-close-to-gross",
            Self::FrontOver { .. } => "load-front-over",
            Self::RearOver { .. } => "load-rear-over",
            Self::FrontLight { .. } => "load-front-light",
            Self::Uneven { .. } => "load-uneven",
            Self::HighestMass { .. } => "load-highest-mass",
            Self::NotWeighed { .. } => "load-not-weighed",
            Self::MassUnknown { .. } => "load-mass-unknown",
            Self::AxlesUnknown { .. } => "load-axles-unknown",
            Self::FloorBeyondVan { .. } => "load-floor-beyond-van",
            Self::FuelUnknown { .. } => "load-fuel-unknown",
            Self::Unfastened { others: 0, .. } => "load-unfastened",
            Self::Unfastened { .. } => "load-unfastened-others",
            Self::StripsAlone { .. } => "load-strips-alone",
            Self::StripsTooMany { .. } => "load-strips-too-many",
            Self::StripsNotRated { .. } => "load-strips-not-rated",
        }
    }

    fn figures(&self) -> Figures {
        let mass = |value: f64| Figure::of(value, Quantity::MassKg);
        let percent = |value: f64| Figure::of(value, Quantity::Percent);
        let name = |name: &str| Figure::Name(name.to_owned());
        match self {
            Self::OverGross { on, by_kg, gross_kg } => {
                let on = on.map(|on| ("on", Figure::Date(on)));
                on.into_iter().chain([("by", mass(*by_kg)), ("gross", mass(*gross_kg))]).collect()
            }
            Self::LuggageOver { by_kg, luggage_kg } => vec![("by", mass(*by_kg)), ("luggage", mass(*luggage_kg))],
            Self::CloseToGross { spare_kg, gross_kg } => vec![("spare", mass(*spare_kg)), ("gross", mass(*gross_kg))],
            Self::FrontOver { by_kg, limit_kg, .. } | Self::RearOver { by_kg, limit_kg, .. } => {
                vec![("by", mass(*by_kg)), ("limit", mass(*limit_kg))]
            }
            Self::FrontLight { percent: value } | Self::FuelUnknown { percent: value } => {
                vec![("percent", percent(*value))]
            }
            Self::Uneven { left_kg, right_kg } => vec![("left", mass(*left_kg)), ("right", mass(*right_kg))],
            Self::HighestMass { high_kg, by_kg } => vec![("high", mass(*high_kg)), ("by", mass(*by_kg))],
            Self::NotWeighed { empty_kg } => vec![("empty", mass(*empty_kg))],
            Self::MassUnknown { count } | Self::StripsNotRated { count } => vec![("count", Figure::count(*count))],
            Self::FloorBeyondVan { by_mm } => vec![("by", Figure::of(*by_mm, Quantity::LengthMm))],
            Self::AxlesUnknown { missing } => vec![("count", Figure::count(missing.len()))],
            Self::Unfastened { name: called, mass_kg, others, .. } => {
                vec![("name", name(called)), ("mass", mass(*mass_kg)), ("count", Figure::count(*others))]
            }
            Self::StripsAlone { name: called, bed, .. } => vec![("name", name(called)), ("bed", name(bed))],
            Self::StripsTooMany { name: called, strips, .. } => {
                vec![("name", name(called)), ("strips", Figure::of(f64::from(*strips), Quantity::Count))]
            }
        }
    }

    fn next_step(&self) -> Option<&'static str> {
        Some(match self {
            Self::OverGross { .. } | Self::CloseToGross { .. } => "next-load-over-gross",
            Self::LuggageOver { .. } => "next-load-luggage-over",
            Self::FrontOver { .. } => "next-load-front-over",
            Self::RearOver { .. } | Self::FrontLight { .. } => "next-load-rear-over",
            Self::Uneven { .. } => "next-load-uneven",
            Self::HighestMass { .. } | Self::MassUnknown { .. } => "next-load-mass-unknown",
            Self::NotWeighed { .. } => "next-load-not-weighed",
            Self::AxlesUnknown { .. } => "next-load-axles-unknown",
            Self::FloorBeyondVan { .. } => "next-load-floor-beyond-van",
            Self::FuelUnknown { .. } => "next-load-fuel-unknown",
            Self::Unfastened { .. } => "next-load-unfastened",
            Self::StripsAlone { .. } | Self::StripsTooMany { .. } => "next-load-strips-alone",
            Self::StripsNotRated { .. } => "next-load-strips-not-rated",
        })
    }

    fn severity(&self) -> Severity {
        match self {
            Self::OverGross { .. }
            | Self::LuggageOver { .. }
            | Self::FrontOver { .. }
            | Self::RearOver { .. }
            | Self::StripsAlone { .. } => Severity::Short,
            Self::CloseToGross { .. }
            | Self::FrontLight { .. }
            | Self::Uneven { .. }
            | Self::Unfastened { .. }
            | Self::StripsTooMany { .. } => Severity::Close,
            Self::HighestMass { .. }
            | Self::NotWeighed { .. }
            | Self::MassUnknown { .. }
            | Self::AxlesUnknown { .. }
            | Self::FloorBeyondVan { .. }
            | Self::FuelUnknown { .. }
            | Self::StripsNotRated { .. } => Severity::Note,
        }
    }

    fn subject(&self) -> Option<Id> {
        match self {
            Self::Unfastened { placement, .. }
            | Self::StripsAlone { placement, .. }
            | Self::StripsTooMany { placement, .. } => Some(*placement),
            _ => None,
        }
    }

    fn list(&self) -> List {
        List::Placements
    }

    fn id(&self) -> String {
        match self {
            // The same with and without a route.
            Self::OverGross { .. } => "load-over-gross".to_owned(),
            // The same whichever is the heaviest.
            Self::Unfastened { .. } => "load-unfastened".to_owned(),
            _ => self.id_by_subject(),
        }
    }
}
