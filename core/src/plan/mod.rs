//! The model: what a person plans, as one value.
//!
//! A [`Plan`] is serialised as JSON, the open file format. Every field has one address, its [`Path`], which problems,
//! edits, drafts and guesses all use; what a field accepts stands once, in [`field`]. Changes are [`Edit`] values with
//! an inverse. Files of other versions come in and go out through [`Document`].

mod calendar;
mod charging;
pub(crate) mod civil;
mod climate;
pub(crate) mod decimal;
mod demo;
mod differences;
mod document;
mod edit;
mod estimate;
pub mod field;
mod free_ids;
mod item;
mod loan;
mod log;
mod materials;
mod money;
mod path;
mod paths;
mod plain;
mod problem;
mod purchase;
mod purse;
mod receipt;
pub(crate) mod record;
mod room;
mod rough;
#[cfg(feature = "schema")]
mod schema;
mod selling;
mod shell;
mod signal;
mod starter;
mod task;
mod trial;
mod typed;
mod validate;
mod vehicle;
mod water_use;

use jiff::civil::Date;
use serde_json::Value;

pub use calendar::{Calendar, Mode, Night, Offer, Signal, Stay, WeekDay, Weekday, WeekdayKind};
pub use charging::{Charging, Gives};
pub use civil::{add_days, add_months, date_text, days_between, read_date, weekday};
pub use climate::{Climate, Clouds, Like, Year};
pub use demo::{demo_plan, demo_plan_after};
pub use differences::{Difference, DifferenceKind, differences, made_like};
pub use document::{Document, Opened};
pub(crate) use edit::rename_entry;
pub use edit::{Edit, List, NotPossible};
pub use estimate::Estimate;
pub use field::{Field, Kind, Quantity};
use free_ids::FreeIds;
pub use item::{
    Burner, BurnerFuel, Chemistry, Controller, Draw, DrawDays, Fan, Fixing, Group, Item, ItemWater, Need, Obtain,
    Outcome, Outlet, Panel, PanelSetup, Return, Sale, Store, Tank, TankKind, Toilet, ToiletWay, Works,
};
pub use loan::Loan;
pub use log::{Reading, Slept, Wish};
pub use materials::{Covering, Cut, CutFor, Cutting, Flaw, MaterialPack, Nominal, Stock, StockKind, Surface};
pub use money::{Money, is_currency, minor_digits};
pub use path::{Path, value_in};
pub use paths::Paths;
pub use plain::Plain;
pub use problem::{Problem, Wrong};
pub use purchase::Purchase;
pub use purse::{Belonging, BelongingEnd, Cost, CostEvery, CostPhase, Income, Purse, Repeat};
pub use receipt::{Receipt, ReceiptLine};
use record::record;
pub use room::{
    BoxSide, BuiltIn, Corner, Distance, Door, Fastened, Head, Keeps, Level, OpenedBox, Placement, RoofRow, Room,
    Sleeper, Stands, VanSide, WallRow,
};
pub use rough::{Answers, COST_STARTERS, CostStarter, Place, rough_plan, starter_cost};
#[cfg(feature = "schema")]
pub use schema::json_schema;
pub use selling::{Kept, SalesWish};
pub use shell::{Cab, Colour, Covers, Layer, Material, Shell};
pub use signal::{BeyondAllowance, DataContract, DataTask, DataUse, Work};
pub(crate) use starter::has_rough_prices;
pub use starter::{STARTERS, Sourced, Starter, StarterDraw, StarterSource, StarterStore, matching, starter_item};
pub use task::{Building, Hands, Helper, OtherDay, Task, TaskNeed, Tool, ToolDays, ToolKind, ToolSource, Wait};
pub use trial::{Trial, VanBuild};
pub use typed::{NumberMarks, Scale, is_calculation, typed_amount, typed_value};
pub use validate::validate;
pub use vehicle::{Fuel, SizeClass, Vehicle};
pub use water_use::{Effort, Per, Treated, WaterStop, WaterUse};

/// The version of the model that this code writes. Raise it with every change that an older reader would get wrong,
/// add the step to `document.rs`, and keep a test document of the version before.
pub const SCHEMA_VERSION: u32 = 1;

/// The identity of an entry of any list of the plan: unique in the whole plan, never changed, so that entries can be
/// reordered, linked to and merged.
pub type Id = u32;

/// Everything a person plans: one kit list and one route that all balances run along.
///
/// Every field is optional in the file; what is missing is taken as its default, and a balance that cannot be computed
/// without it says which field it misses.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Plan {
    /// The version of the model the file was written with.
    pub schema_version: u32,
    /// What the person calls the plan.
    pub title: String,
    /// ISO 4217 code of the one currency all money is in.
    pub currency: String,
    /// How many people travel.
    pub people: u32,
    /// When the days at home begin, when the van leaves, and which kind of route follows.
    pub calendar: Calendar,
    /// The van.
    pub vehicle: Vehicle,
    /// Cash in hand and how prices are meant.
    pub purse: Purse,
    /// What is carried, drawn, drunk and paid for: the one list.
    pub kit: Vec<Item>,
    /// Things at home that are to be turned into money.
    pub belongings: Vec<Belonging>,
    /// Money that comes in otherwise.
    pub incomes: Vec<Income>,
    /// What must be paid again and again, or by the distance.
    pub costs: Vec<Cost>,
    /// The route as stays in order.
    pub stays: Vec<Stay>,
    /// The route as a repeating week, while nothing is planned yet.
    pub week: Vec<WeekDay>,
    /// Fresh water used by people rather than by things.
    pub water_uses: Vec<WaterUse>,
    /// What was counted on the way: it corrects the run from its moment on.
    pub readings: Vec<Reading>,
    /// What is paid for the van, when it is still to be bought.
    pub purchase: Purchase,
    /// Money that is lent, and paid back month by month.
    pub loans: Vec<Loan>,
    /// What the sales of belongings are to bring together.
    pub selling: SalesWish,
    /// What the ways of building are compared over.
    pub trial: Trial,
    /// The ways of building that are compared.
    pub builds: Vec<VanBuild>,
    /// What was paid, receipt by receipt.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub receipts: Vec<Receipt>,
    /// The lines of the receipts.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub receipt_lines: Vec<ReceiptLine>,
    /// The work until the day of leaving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub tasks: Vec<Task>,
    /// What tasks need.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub task_needs: Vec<TaskNeed>,
    /// Tools and places to work at.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub tools: Vec<Tool>,
    /// Who works on the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub helpers: Vec<Helper>,
    /// Days on which somebody works longer, shorter or not at all.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub other_days: Vec<OtherDay>,
    /// When and under what sky the van is built.
    pub building: Building,
    /// Who walks through the van, and what things are fastened with.
    pub room: Room,
    /// The outline of the floor, where it is not a rectangle.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub corners: Vec<Corner>,
    /// Wheel arches and what else is built in.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub built_ins: Vec<BuiltIn>,
    /// The doors.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub doors: Vec<Door>,
    /// How far the walls come in by height.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub wall_rows: Vec<WallRow>,
    /// How high it is inside along the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub roof_rows: Vec<RoofRow>,
    /// What stands where.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub placements: Vec<Placement>,
    /// Who sleeps in the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub sleepers: Vec<Sleeper>,
    /// What is to be near to what, or away from it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub distances: Vec<Distance>,
    /// The sky and the air of places that say nothing of their own.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Climate::is_empty"))]
    pub climate: Climate,
    /// Typical years that were read in.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub years: Vec<Year>,
    /// Where stores could be charged.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub charging: Vec<Charging>,
    /// Where water is taken on and left, besides what the stays offer.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub water_stops: Vec<WaterStop>,
    /// How the van keeps warmth and air.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Shell::is_empty"))]
    pub shell: Shell,
    /// What the van is lined with.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub layers: Vec<Layer>,
    /// The work that earns money on the road.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Work::is_empty"))]
    pub work: Work,
    /// What takes data on the road.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub data_uses: Vec<DataUse>,
    /// Contracts for data.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub data_contracts: Vec<DataContract>,
    /// Boards and sheets that can be had, or that are there.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub stock: Vec<Stock>,
    /// What is cut of them.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub cuts: Vec<Cut>,
    /// How all is cut.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Cutting::is_empty"))]
    pub cutting: Cutting,
    /// What surfaces are covered with.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub coverings: Vec<Covering>,
    /// Packs that could be bought for them.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub material_packs: Vec<MaterialPack>,
    /// What of boards cannot be used.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub flaws: Vec<Flaw>,
    /// What was missed on the road, or might be.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Vec::is_empty"))]
    pub wishes: Vec<Wish>,
    /// Paths of values that are guesses of this tool, until the person confirms or corrects them.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Paths::is_empty"))]
    pub guesses: Paths,
}

record!(Plan {
    schema_version, title, currency, people, calendar, vehicle, purse, kit, belongings, incomes, costs, stays, week,
    water_uses, readings, purchase, loans, selling, trial, builds, receipts, receipt_lines, tasks, task_needs,
    tools, helpers, other_days, building, room, corners, built_ins, doors, wall_rows, roof_rows, placements, sleepers,
    distances, climate, years, charging, water_stops, shell, layers, work, data_uses, data_contracts, stock, cuts,
    cutting, coverings, material_packs, flaws, wishes, guesses,
} unless empty {
    receipts, receipt_lines, tasks, task_needs, tools, helpers, other_days, corners, built_ins, doors, wall_rows,
    roof_rows, placements, sleepers, distances, years, charging, water_stops, layers, data_uses, data_contracts, stock,
    cuts, cutting, shell, work, coverings, material_packs, flaws, wishes, guesses
});

impl Default for Plan {
    fn default() -> Self {
        Self {
            schema_version: SCHEMA_VERSION,
            title: String::new(),
            currency: String::from("EUR"),
            people: 1,
            calendar: Calendar::default(),
            vehicle: Vehicle::default(),
            purse: Purse::default(),
            kit: Vec::new(),
            belongings: Vec::new(),
            incomes: Vec::new(),
            costs: Vec::new(),
            stays: Vec::new(),
            week: Vec::new(),
            water_uses: Vec::new(),
            readings: Vec::new(),
            purchase: Purchase::default(),
            loans: Vec::new(),
            selling: SalesWish::default(),
            trial: Trial::default(),
            builds: Vec::new(),
            receipts: Vec::new(),
            receipt_lines: Vec::new(),
            tasks: Vec::new(),
            task_needs: Vec::new(),
            tools: Vec::new(),
            helpers: Vec::new(),
            other_days: Vec::new(),
            building: Building::default(),
            room: Room::default(),
            corners: Vec::new(),
            built_ins: Vec::new(),
            doors: Vec::new(),
            wall_rows: Vec::new(),
            roof_rows: Vec::new(),
            placements: Vec::new(),
            sleepers: Vec::new(),
            distances: Vec::new(),
            climate: Climate::default(),
            years: Vec::new(),
            charging: Vec::new(),
            water_stops: Vec::new(),
            shell: Shell::default(),
            layers: Vec::new(),
            work: Work::default(),
            data_uses: Vec::new(),
            data_contracts: Vec::new(),
            stock: Vec::new(),
            cuts: Vec::new(),
            cutting: Cutting::default(),
            coverings: Vec::new(),
            material_packs: Vec::new(),
            flaws: Vec::new(),
            wishes: Vec::new(),
            guesses: Paths::default(),
        }
    }
}

impl Plan {
    /// Digits after the point of the plan's currency.
    pub fn minor_digits(&self) -> u32 {
        minor_digits(&self.currency)
    }

    /// The item of that id.
    pub fn item(&self, id: Id) -> Option<&Item> {
        self.kit.iter().find(|item| item.id == id)
    }

    /// What the person calls the item, belonging, income, cost, loan, task, tool, helper, sleeper, built-in thing, year, place to
    /// charge at, use of water, stop for water, layer, use of data, contract, board, cut, covering, pack or wish of that id, or the item that is placed by it; `None` for an id of anything else.
    pub fn name_of(&self, id: Id) -> Option<&str> {
        fn named<T>(entries: &[T], is_it: impl Fn(&T) -> bool, name: fn(&T) -> &str) -> Option<&str> {
            entries.iter().find(|entry| is_it(entry)).map(name)
        }
        named(&self.kit, |entry| entry.id == id, |entry| &entry.name)
            .or_else(|| named(&self.belongings, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.incomes, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.costs, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.loans, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.tasks, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.tools, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.helpers, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.sleepers, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.built_ins, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.years, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.charging, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.wishes, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.water_uses, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.water_stops, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.layers, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.data_uses, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.data_contracts, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.stock, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.cuts, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.coverings, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| named(&self.material_packs, |entry| entry.id == id, |entry| &entry.name))
            .or_else(|| {
                let placement = self.placements.iter().find(|entry| entry.id == id)?;
                named(&self.kit, |entry| Some(entry.id) == placement.thing, |entry| &entry.name)
            })
    }

    /// Items that are part of the plan: all but those left out.
    pub fn carried(&self) -> impl Iterator<Item = &Item> {
        self.kit.iter().filter(|item| item.obtain != Obtain::LeftOut)
    }

    /// Of them those of which something is left: not all goes back to the seller.
    pub fn kept(&self) -> impl Iterator<Item = &Item> {
        self.carried().filter(|item| item.kept() > 0)
    }

    /// The first day of a stay, or without one of the route; `None` while that is not known.
    ///
    /// ```
    /// use jiff::civil::date;
    /// use kerbstead_core::plan::{Calendar, Plan, Stay};
    /// let calendar = Calendar { leaves_on: Some(date(2027, 5, 1)), ..Calendar::default() };
    /// let stays = vec![Stay { id: 3, nights: 4, ..Stay::default() }, Stay { id: 4, nights: 2, ..Stay::default() }];
    /// let plan = Plan { calendar, stays, ..Plan::default() };
    /// assert_eq!(plan.begins_on(Some(4)), Some(date(2027, 5, 5)));
    /// ```
    pub fn begins_on(&self, stay: Option<Id>) -> Option<Date> {
        let leaves_on = self.calendar.leaves_on?;
        let Some(id) = stay else { return Some(leaves_on) };
        let at = self.stays.iter().position(|stay| stay.id == id)?;
        let nights = self.stays.iter().take(at).fold(0_u32, |sum, stay| sum.saturating_add(stay.nights));
        add_days(leaves_on, i32::try_from(nights).ok()?)
    }

    /// The stops for water that are in use, each with the day from which its intervals are counted.
    pub fn water_stops_in_use(&self) -> impl Iterator<Item = (&WaterStop, Date)> {
        let in_use = self.water_stops.iter().filter(|stop| stop.in_use);
        in_use.filter_map(|stop| Some((stop, self.begins_on(stop.stay)?)))
    }

    /// The value at a path as it stands in the file; `Null` where nothing is set or nothing can be.
    ///
    /// ```
    /// use kerbstead_core::plan::{Path, Plan};
    /// let plan = Plan { title: "North".into(), ..Plan::default() };
    /// assert_eq!(plan.value(&Path::from("title")), "North");
    /// ```
    pub fn value(&self, path: &Path) -> Value {
        let (first, rest) = path.split_first();
        let (part, rest) = match List::named(first) {
            Some(list) => {
                let (id, rest) = rest.split_once('/').unwrap_or((rest, ""));
                (id.parse().ok().and_then(|id| list.entry(self, id)), rest)
            }
            None => (self.part(first), rest),
        };
        rest.split('/')
            .filter(|name| !name.is_empty())
            .fold(part.unwrap_or_default(), |value, name| value.get(name).cloned().unwrap_or_default())
    }

    fn part(&self, name: &str) -> Option<Value> {
        match name {
            "title" => Some(self.title.clone().into()),
            "currency" => Some(self.currency.clone().into()),
            "people" => Some(self.people.into()),
            "calendar" => Some(self.calendar.to_plain()),
            "vehicle" => Some(self.vehicle.to_plain()),
            "purse" => Some(self.purse.to_plain()),
            "purchase" => Some(self.purchase.to_plain()),
            "selling" => Some(self.selling.to_plain()),
            "trial" => Some(self.trial.to_plain()),
            "building" => Some(self.building.to_plain()),
            "room" => Some(self.room.to_plain()),
            "climate" => Some(self.climate.to_plain()),
            "shell" => Some(self.shell.to_plain()),
            "work" => Some(self.work.to_plain()),
            "cutting" => Some(self.cutting.to_plain()),
            _ => None,
        }
    }

    /// An id that no entry of the plan has.
    ///
    /// ```
    /// use kerbstead_core::plan::{Item, Plan};
    /// let mut plan = Plan::default();
    /// plan.kit.push(Item { id: 7, ..Item::default() });
    /// assert_eq!(plan.next_id(), 8);
    /// ```
    pub fn next_id(&self) -> Id {
        FreeIds::beside(List::ALL.iter().flat_map(|list| list.ids(self))).take()
    }

    /// So many ids that no entry of the plan has.
    pub(crate) fn next_ids(&self, count: usize) -> Vec<Id> {
        let mut free = FreeIds::beside(List::ALL.iter().flat_map(|list| list.ids(self)));
        (0..count).map(|_| free.take()).collect()
    }
}
