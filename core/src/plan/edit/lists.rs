//! The lists of a plan, and what every one of them can do.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{Edit, NotPossible};
use crate::plan::{
    Belonging, BuiltIn, Charging, Corner, Cost, Covering, Cut, DataContract, DataUse, Distance, Door, Flaw, Helper, Id,
    Income, Item, Layer, Loan, MaterialPack, OtherDay, Path, Placement, Plain, Plan, Reading, Receipt, ReceiptLine,
    RoofRow, Sleeper, Stay, Stock, Task, TaskNeed, Tool, VanBuild, WallRow, WaterStop, WaterUse, WeekDay, Wish, Year,
};

/// An entry of a list of the plan.
trait Entry: Plain + Default {
    /// Its id.
    fn id(&self) -> Id;
}

/// A list, whatever its entries are: what is done to lists is written once for all of them. Each of these functions is in
/// the bundle once for every list, so there are no more than are needed.
trait Entries {
    /// The id of the entry at a position.
    fn id_at(&self, at: usize) -> Option<Id>;
    /// The entry at a position, as it stands in the file.
    fn plain_at(&self, at: usize) -> Value;
    /// Puts an entry in, at the end if there are fewer. False when it is not of the list's kind.
    fn insert(&mut self, at: usize, entry: &Value) -> bool;
    /// Takes the entry at a position out.
    fn remove(&mut self, at: usize);
}

impl<T: Entry> Entries for Vec<T> {
    fn id_at(&self, at: usize) -> Option<Id> {
        self.get(at).map(Entry::id)
    }

    fn plain_at(&self, at: usize) -> Value {
        self.get(at).map_or(Value::Null, Plain::to_plain)
    }

    fn insert(&mut self, at: usize, entry: &Value) -> bool {
        let at = at.min(self.len());
        T::from_plain(entry).map(|entry| self.insert(at, entry)).is_some()
    }

    fn remove(&mut self, at: usize) {
        if at < self.len() {
            self.remove(at);
        }
    }
}

macro_rules! lists {
    ($($variant:ident $field:ident $entry:ty, $doc:literal;)*) => {
        /// A list of the plan.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum List {
            $(#[doc = $doc] $variant,)*
        }

        impl List {
            /// All lists.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// Its name in paths.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => stringify!($field),)* }
            }

            fn of(self, plan: &Plan) -> &dyn Entries {
                match self { $(Self::$variant => &plan.$field,)* }
            }

            fn of_mut(self, plan: &mut Plan) -> &mut dyn Entries {
                match self { $(Self::$variant => &mut plan.$field,)* }
            }
        }

        $(impl Entry for $entry { fn id(&self) -> Id { self.id } })*
    };
}

lists! {
    Kit kit Item, "The kit.";
    Belongings belongings Belonging, "Things at home to sell.";
    Incomes incomes Income, "Money that comes in.";
    Costs costs Cost, "Running costs.";
    Stays stays Stay, "The route as stays.";
    Week week WeekDay, "The route as a repeating week.";
    WaterUses water_uses WaterUse, "Uses of water.";
    Readings readings Reading, "What was counted.";
    Loans loans Loan, "Loans.";
    Builds builds VanBuild, "Ways of building.";
    Receipts receipts Receipt, "Receipts.";
    ReceiptLines receipt_lines ReceiptLine, "Lines of receipts.";
    Tasks tasks Task, "The work until the day of leaving.";
    TaskNeeds task_needs TaskNeed, "What tasks need.";
    Tools tools Tool, "Tools and places to work at.";
    Helpers helpers Helper, "Who works on the van.";
    OtherDays other_days OtherDay, "Days on which it is not as on others.";
    Corners corners Corner, "The outline of the floor.";
    BuiltIns built_ins BuiltIn, "Wheel arches and what else is built in.";
    Doors doors Door, "The doors.";
    WallRows wall_rows WallRow, "How far the walls come in by height.";
    RoofRows roof_rows RoofRow, "How high it is inside along the van.";
    Placements placements Placement, "What stands where.";
    Sleepers sleepers Sleeper, "Who sleeps in the van.";
    Distances distances Distance, "What is to be near to what, or away from it.";
    Years years Year, "Typical years that were read in.";
    Charging charging Charging, "Where stores could be charged.";
    WaterStops water_stops WaterStop, "Where water is taken on and left.";
    Layers layers Layer, "What the van is lined with.";
    DataUses data_uses DataUse, "What takes data.";
    DataContracts data_contracts DataContract, "Contracts for data.";
    Stock stock Stock, "Boards and sheets.";
    Cuts cuts Cut, "What is cut of them.";
    Coverings coverings Covering, "What surfaces are covered with.";
    MaterialPacks material_packs MaterialPack, "Packs that could be bought for them.";
    Flaws flaws Flaw, "What of boards cannot be used.";
    Wishes wishes Wish, "What was missed, or might be.";
}

impl List {
    /// The list of that name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|list| list.name() == name)
    }

    /// The ids of its entries, in order.
    pub fn ids(self, plan: &Plan) -> Vec<Id> {
        let entries = self.of(plan);
        (0..).map_while(|at| entries.id_at(at)).collect()
    }

    /// One of its entries, as it stands in the file.
    pub fn entry(self, plan: &Plan, id: Id) -> Option<Value> {
        self.position(plan, id).ok().map(|at| self.of(plan).plain_at(at))
    }

    fn position(self, plan: &Plan, id: Id) -> Result<usize, NotPossible> {
        let entries = self.of(plan);
        (0..)
            .map_while(|at| entries.id_at(at))
            .position(|found| found == id)
            .ok_or_else(|| NotPossible::NoSuchEntry { path: Path::entry(self.name(), id) })
    }

    pub(super) fn insert(self, plan: &mut Plan, at: usize, entry: &Value) -> Result<(), NotPossible> {
        let wrong = || NotPossible::WrongValue { path: Path::section(self.name()) };
        self.of_mut(plan).insert(at, entry).then_some(()).ok_or_else(wrong)
    }

    pub(super) fn remove(self, plan: &mut Plan, id: Id) -> Result<Edit, NotPossible> {
        let at = self.position(plan, id)?;
        let entries = self.of_mut(plan);
        let entry = entries.plain_at(at);
        entries.remove(at);
        Ok(Edit::Insert { list: self, at, entry })
    }

    pub(super) fn shift(self, plan: &mut Plan, id: Id, to: usize) -> Result<Edit, NotPossible> {
        let from = self.position(plan, id)?;
        let last = self.ids(plan).len().saturating_sub(1);
        let entries = self.of_mut(plan);
        let entry = entries.plain_at(from);
        entries.remove(from);
        entries.insert(to.min(last), &entry);
        Ok(Edit::Move { list: self, id, to: from })
    }

    /// Puts another entry in place of one. False when it is not of the list's kind.
    pub(super) fn replace(self, plan: &mut Plan, id: Id, entry: &Value) -> bool {
        self.position(plan, id).is_ok_and(|at| {
            let entries = self.of_mut(plan);
            let is_taken = entries.insert(at, entry);
            if is_taken {
                entries.remove(at + 1);
            }
            is_taken
        })
    }
}
