//! What a plan comes to: a verdict on each balance, with what it rests on.

mod again;
mod around;

use jiff::civil::Date;
use serde::Serialize;
use serde_json::Value;

pub use again::{Again, Outcome, Outlined};

use crate::explain::{Figure, Figures, Working};
use crate::plan::record::words;
use crate::plan::{Id, List, Path, Plain, Plan};
use crate::{days, load, money, power, run, signal, space, warmth, water};

/// The answer to "does the plan hold?", as seen on one day.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Assessment {
    /// The day it was asked.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub as_of: Date,
    /// The first day the run covers.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub starts_on: Date,
    /// The day the van leaves.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub leaves_on: Option<Date>,
    /// The last day the run covers.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub ends_on: Date,
    /// Can it be paid?
    pub money: money::Report,
    /// Does the battery last?
    pub power: power::Report,
    /// Does the water last?
    pub water: water::Report,
    /// Will it be built by the date?
    pub days: days::Report,
    /// Does it fit, and does one get through?
    pub space: space::Report,
    /// Does the van carry it?
    pub load: load::Report,
    /// Is it warm, dry and fit to breathe?
    pub warmth: warmth::Report,
    /// Can the work be done, and does the data last?
    pub signal: signal::Report,
}

/// Assesses a plan as it stands on `as_of`, along the likely run. What lies before that day counts as it was answered
/// or counted; what nobody answered is asked for, and money that nobody confirmed is not counted.
///
/// Pure: the same plan and day give the same assessment on every machine. It never panics, and no value in it is
/// infinite or not a number, whatever the plan holds.
pub fn assess(plan: &Plan, as_of: Date) -> Assessment {
    let run::Dated { plan, work } = &run::dated(plan, as_of);
    let timeline = run::Timeline::new(plan, as_of);
    let run = run::walk(plan, as_of, &timeline);
    let power = power::report(plan, as_of, &timeline, &run.hours.electrics, &run.hours.power);
    let (inside_c, served) = around::of(plan, &run.hours);
    let signal = signal::report(plan, as_of, &timeline, &signal::Around { inside_c: &inside_c, served: &served });
    let money = money::report(plan, as_of, &timeline, run.money, &signal.unearned());
    let placed = space::Placed::new(plan);
    let load = load::report(plan, as_of, &timeline, &placed, &run.supply, &run.water.days);
    Assessment {
        as_of,
        starts_on: timeline.starts_on(),
        leaves_on: plan.calendar.leaves_on,
        ends_on: timeline.ends_on(),
        days: days::report(plan, as_of, work, &run::for_days(plan, as_of, &money)),
        money,
        power,
        space: space::report(plan, &placed),
        water: water::report(plan, as_of, &timeline, &run.supply, run.water, &run.hours.frost()),
        load,
        warmth: warmth::report(plan, as_of, &timeline, &run.hours.warmth, &run.hours.room),
        signal,
    }
}

impl Assessment {
    /// Each balance with its verdict, in the order they are shown.
    pub fn verdicts(&self) -> [(Balance, Verdict); 8] {
        [
            (Balance::Money, self.money.standing.verdict),
            (Balance::Power, self.power.standing.verdict),
            (Balance::Water, self.water.standing.verdict),
            (Balance::Days, self.days.standing.verdict),
            (Balance::Space, self.space.standing.verdict),
            (Balance::Load, self.load.standing.verdict),
            (Balance::Warmth, self.warmth.standing.verdict),
            (Balance::Signal, self.signal.standing.verdict),
        ]
    }

    /// A number that is the same for the same assessment on every machine, and almost surely different otherwise:
    /// FNV-1a, 64 bits, over the tree of the assessment in its JSON form.
    pub fn digest(&self) -> u64 {
        let mut digest = Digest::new();
        digest.value(&crate::tree(self));
        digest.0
    }
}

/// A digest of what was fed to it. It reads values as they are and prints none of them, for the code that prints a
/// float is larger than all of this file.
struct Digest(u64);

impl Digest {
    const fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    fn bytes(&mut self, bytes: &[u8]) {
        const PRIME: u64 = 0x0000_0100_0000_01b3;
        self.0 = bytes.iter().fold(self.0, |digest, byte| (digest ^ u64::from(*byte)).wrapping_mul(PRIME));
    }

    /// What kind of value follows and a number that belongs to it: how long it is, or the value itself.
    fn tagged(&mut self, kind: u8, number: u64) {
        self.bytes(&[kind]);
        self.bytes(&number.to_le_bytes());
    }

    fn text(&mut self, text: &str) {
        self.tagged(b's', text.len() as u64);
        self.bytes(text.as_bytes());
    }

    fn value(&mut self, value: &Value) {
        match value {
            Value::Null => self.tagged(b'n', 0),
            Value::Bool(flag) => self.tagged(b'b', u64::from(*flag)),
            // Every number of an assessment fits into a float exactly, so that 12 and 12.0 are the same.
            Value::Number(number) => self.tagged(b'f', number.as_f64().unwrap_or(0.0).to_bits()),
            Value::String(text) => self.text(text),
            Value::Array(entries) => {
                self.tagged(b'a', entries.len() as u64);
                for entry in entries {
                    self.value(entry);
                }
            }
            Value::Object(fields) => {
                // Fields are added up, so that the order a map keeps them in does not matter.
                let sum = fields.iter().fold(0, |sum: u64, (name, value)| {
                    let mut field = Self::new();
                    field.text(name);
                    field.value(value);
                    sum.wrapping_add(field.0)
                });
                self.tagged(b'o', sum);
            }
        }
    }
}

/// One of the balances of a plan.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Balance {
    /// Cash by day.
    #[default]
    Money,
    /// Charge by hour.
    Power,
    /// Litres by day.
    Water,
    /// Work by day.
    Days,
    /// Millimetres.
    Space,
    /// Kilograms by day.
    Load,
    /// Degrees by hour.
    Warmth,
    /// Gigabytes by day, and hours of work.
    Signal,
}

words!(Balance {
    Money = "money", Power = "power", Water = "water", Days = "days", Space = "space", Load = "load",
    Warmth = "warmth", Signal = "signal",
});

/// Whether a balance holds. The order is from bad to good, with what is not known first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Something is missing: [`Standing::missing`] says what.
    #[default]
    Unknown,
    /// It runs out.
    FallsShort,
    /// It lasts, but with less to spare than is usual.
    Tight,
    /// It lasts.
    Holds,
}

words!(Verdict { Unknown = "unknown", FallsShort = "falls_short", Tight = "tight", Holds = "holds" });

impl Verdict {
    /// The verdict that the worst of the findings makes.
    pub fn by_worst<F: Say>(findings: &[F]) -> Self {
        match findings.iter().map(Say::severity).min() {
            Some(Severity::Short) => Self::FallsShort,
            Some(Severity::Close) => Self::Tight,
            Some(Severity::Note) | None => Self::Holds,
        }
    }
}

/// What one balance comes to; each balance adds its own series and totals.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Standing<F> {
    /// Whether it holds.
    pub verdict: Verdict,
    /// How much is to spare at the worst moment, or missing if negative, in the balance's own unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub margin: Option<Margin>,
    /// The first moment it runs out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_short: Option<Moment>,
    /// What must be known before there can be a verdict.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub missing: Vec<Path>,
    /// What is wrong or close.
    pub findings: Vec<F>,
    /// What to be careful of.
    pub cautions: Vec<Caution>,
    /// How the numbers came about.
    pub working: Vec<Working>,
}

impl<F> Standing<F> {
    /// No verdict, for want of these fields.
    pub fn unknown(missing: Vec<Path>) -> Self {
        Self {
            verdict: Verdict::Unknown,
            margin: None,
            first_short: None,
            missing,
            findings: Vec::new(),
            cautions: Vec::new(),
            working: Vec::new(),
        }
    }
}

/// How much is to spare.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Margin {
    /// An amount above the floor.
    Money(crate::plan::Money),
    /// Hours of reserve.
    Hours(f64),
    /// Days of reserve.
    Days(f64),
    /// Days from when all is done to the day of leaving.
    Early(f64),
    /// Millimetres beyond the width that is asked for, where one walks.
    Width(f64),
    /// Kilograms under a limit.
    Mass(f64),
    /// Degrees above what is bearable in the coldest night.
    Warmer(f64),
    /// Gigabytes of an allowance.
    Data(f64),
}

impl Default for Margin {
    fn default() -> Self {
        Self::Hours(0.0)
    }
}

/// As serde derives it: an object with the unit as its one field.
impl Plain for Margin {
    fn to_plain(&self) -> Value {
        let (unit, amount) = match self {
            Self::Money(amount) => ("money", amount.to_plain()),
            Self::Hours(hours) => ("hours", hours.to_plain()),
            Self::Days(days) => ("days", days.to_plain()),
            Self::Early(days) => ("early", days.to_plain()),
            Self::Width(mm) => ("width", mm.to_plain()),
            Self::Mass(kilograms) => ("mass", kilograms.to_plain()),
            Self::Warmer(degrees) => ("warmer", degrees.to_plain()),
            Self::Data(gigabytes) => ("data", gigabytes.to_plain()),
        };
        Value::Object([(unit.to_owned(), amount)].into_iter().collect())
    }

    fn read(&mut self, value: &Value) -> bool {
        let Some((unit, amount)) = value.as_object().and_then(|fields| fields.iter().next()) else { return false };
        let number = amount.as_f64();
        let read = match unit.as_str() {
            "money" => Plain::from_plain(amount).map(Self::Money),
            "hours" => number.map(Self::Hours),
            "days" => number.map(Self::Days),
            "early" => number.map(Self::Early),
            "width" => number.map(Self::Width),
            "mass" => number.map(Self::Mass),
            "warmer" => number.map(Self::Warmer),
            "data" => number.map(Self::Data),
            _ => None,
        };
        read.map(|read| *self = read).is_some()
    }
}

impl From<Margin> for Figure {
    fn from(margin: Margin) -> Self {
        use crate::plan::Quantity;
        match margin {
            Margin::Money(amount) => Self::Money(amount),
            Margin::Hours(hours) => Self::of(hours, Quantity::Hours),
            Margin::Width(mm) => Self::of(mm, Quantity::LengthMm),
            Margin::Days(days) | Margin::Early(days) => Self::of(days, Quantity::Days),
            Margin::Mass(kilograms) => Self::of(kilograms, Quantity::MassKg),
            Margin::Warmer(degrees) => Self::of(degrees, Quantity::WarmerK),
            Margin::Data(gigabytes) => Self::of(gigabytes, Quantity::DataGb),
        }
    }
}

/// A day, and the minute of it where that is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Moment {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// Minutes since the day began, 0 to 1439.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minute: Option<u16>,
}

impl Moment {
    /// A whole day.
    pub const fn day(on: Date) -> Self {
        Self { on, minute: None }
    }

    /// That many hours into a day; what is outside the day is moved to its ends.
    pub fn hours_into(on: Date, hours: f64) -> Self {
        // What rounding leaves a breath before a full minute is that minute.
        const BREATH_MINUTES: f64 = 1e-6;
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to a day just before
        let minute = (hours * 60.0 + BREATH_MINUTES).clamp(0.0, 1439.0) as u16;
        Self { on, minute: Some(minute) }
    }
}

/// Something that the catalogue has a sentence for.
pub trait Say {
    /// The sentence's name in the catalogue.
    fn key(&self) -> &'static str;
    /// The figures in it.
    fn figures(&self) -> Figures;
    /// The name of the sentence that suggests what to do.
    fn next_step(&self) -> Option<&'static str>;
    /// How bad it is.
    fn severity(&self) -> Severity;
    /// The entry it is about.
    fn subject(&self) -> Option<Id>;
    /// The list that entry is in.
    fn list(&self) -> List {
        List::Kit
    }
    /// A name that stays the same while the plan changes around it, for links and for "don't tell me again".
    fn id(&self) -> String {
        self.id_by_subject()
    }
    /// Its key, with the id of its subject if it has one.
    fn id_by_subject(&self) -> String {
        self.subject().map_or_else(|| self.key().to_owned(), |id| format!("{}-{id}", self.key()))
    }
}

/// How bad a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// The balance falls short because of it.
    Short,
    /// It is close.
    Close,
    /// Worth knowing.
    Note,
}

/// What to be careful of. Never a promise: what was computed and from what is in the working.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Caution {
    /// Lithium stores and heat or frost.
    StoreHeatAndFrost,
    /// Charging while nobody watches; covered vents.
    ChargingUnattended,
    /// Extension leads and adaptors in series.
    ExtensionLeads,
    /// Running the engine to charge while parked or asleep.
    EngineWhileParked,
    /// Water that stands for long; unknown taps.
    WaterQuality,
    /// Where used water may be emptied.
    GreyWaterRules,
    /// Nights at places where it is not known whether they are allowed.
    NightsNotCleared,
    /// Saws, drills and the dust they make.
    PowerToolsAndDust,
    /// Solvents, foam and glue in closed spaces.
    SolventsAndFoam,
    /// Lifting, and working alone and tired.
    LiftingAndTired,
    /// Cutting into the roof or the sides of the van.
    CuttingTheVan,
    /// Ways out that something stands in.
    BlockedExits,
    /// What hangs above somebody who sleeps.
    AboveAHead,
    /// Wires, fuel lines and what bears the van, behind panels and floors.
    WiresAndFuelLines,
    /// Weighing more than the van or an axle may.
    Overloading,
    /// Things that fly when the van brakes.
    LooseCargo,
    /// Seats, belts and airbags.
    BeltsAndAirbags,
    /// Adhesive strips where somebody sleeps.
    AdhesiveNearHeads,
    /// Panels on roofs: what the roof bears, holes, wind.
    PanelsOnRoofs,
    /// Generators and their fumes.
    GeneratorFumes,
    /// Flames and fuel heaters: carbon monoxide, fire.
    FlamesAndMonoxide,
    /// Never a cooking flame to heat where somebody sleeps.
    CookingFlame,
    /// Carbon dioxide and oxygen in a closed van.
    ClosedAir,
    /// Heat in a parked van: people and animals.
    HeatInside,
    /// Cold: hypothermia.
    ColdInside,
    /// Insulation and fire.
    InsulationFire,
    /// How long water may stand, what boiling and filters do not take out.
    WaterTreated,
    /// What is in a toilet.
    ToiletWaste,
    /// Fixed wiring, gas and roof work.
    LicensedTrades,
}

impl Caution {
    /// The sentence's name in the catalogue.
    pub const fn key(self) -> &'static str {
        match self {
            Self::StoreHeatAndFrost => "caution-store-heat-and-frost",
            Self::ChargingUnattended => "caution-charging-unattended",
            Self::ExtensionLeads => "caution-extension-leads",
            Self::EngineWhileParked => "caution-engine-while-parked",
            Self::WaterQuality => "caution-water-quality",
            Self::GreyWaterRules => "caution-grey-water-rules",
            Self::NightsNotCleared => "caution-nights-not-cleared",
            Self::PowerToolsAndDust => "caution-power-tools-and-dust",
            Self::SolventsAndFoam => "caution-solvents-and-foam",
            Self::LiftingAndTired => "caution-lifting-and-tired",
            Self::CuttingTheVan => "caution-cutting-the-van",
            Self::BlockedExits => "caution-blocked-exits",
            Self::AboveAHead => "caution-above-a-head",
            Self::WiresAndFuelLines => "caution-wires-and-fuel-lines",
            Self::Overloading => "caution-overloading",
            Self::LooseCargo => "caution-loose-cargo",
            Self::BeltsAndAirbags => "caution-belts-and-airbags",
            Self::AdhesiveNearHeads => "caution-adhesive-near-heads",
            Self::PanelsOnRoofs => "caution-panels-on-roofs",
            Self::GeneratorFumes => "caution-generator-fumes",
            Self::FlamesAndMonoxide => "caution-flames-and-monoxide",
            Self::CookingFlame => "caution-cooking-flame",
            Self::ClosedAir => "caution-closed-air",
            Self::HeatInside => "caution-heat-inside",
            Self::ColdInside => "caution-cold-inside",
            Self::InsulationFire => "caution-insulation-fire",
            Self::WaterTreated => "caution-water-treated",
            Self::ToiletWaste => "caution-toilet-waste",
            Self::LicensedTrades => "caution-licensed-trades",
        }
    }
}
