//! A change that may mend something.

use jiff::civil::Date;

use crate::assessment::{Outcome, Outlined, Verdict};
use crate::plan::record::words;
use crate::plan::{Edit, Id, Item, List, Money, Need, Obtain, Path, Plain, Plan};
use crate::{Balance, money};

/// A change of the plan that may mend something, before it is known what it does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Candidate {
    /// What kind of change it is.
    pub change: Change,
    /// The entry that it is about; 0 for the plan itself.
    pub id: Id,
    /// The change.
    pub edit: Edit,
    /// Days that it moves something by, or that it takes.
    pub days: f64,
    /// The day that it is about, where there is one.
    pub on: Option<Date>,
    /// The amount that it is about: a price paid or asked.
    pub amount: Option<Money>,
}

/// What kind of change.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Change {
    /// A thing stays at home.
    #[default]
    LeaveOut,
    /// One fewer of a thing.
    Fewer,
    /// A thing is lent by somebody.
    Borrow,
    /// A thing is bought used.
    BuyUsed,
    /// A thing is bought on a later day.
    BuyLater,
    /// Something at home is sold that was not to be.
    Sell,
    /// Something is offered for less, so that it is gone by a day.
    AskLess,
    /// The day of leaving is another.
    Leave,
    /// Stores are charged at a place.
    Stop,
    /// Stores are charged longer at a place.
    ChargeLonger,
    /// Something that draws is used less.
    UseLess,
    /// Something that draws hangs on another store.
    HangElsewhere,
    /// One more can, or tank for used water.
    MoreCans,
    /// Less water is used for something.
    LessWater,
    /// One stops for water, to empty tanks or the toilet.
    WaterStop,
    /// A lighter one is taken.
    Lighter,
    /// A smaller one is taken.
    Smaller,
    /// A thing stands elsewhere.
    MoveIt,
    /// A task is done later, on the road.
    TaskLater,
    /// A task is not done.
    LeaveTaskOut,
    /// A tool that nobody has is hired.
    HireTool,
    /// A heater is left on at night.
    HeatAtNight,
    /// A curtain divides the cab off.
    CloseCab,
    /// More is left open at night.
    OpenMore,
    /// A contract of the list is put in use.
    TakeContract,
    /// A contract is used no longer.
    EndContract,
    /// Less data is used for something.
    LessData,
}

words!(Change {
    LeaveOut = "leave_out", Fewer = "fewer", Borrow = "borrow", BuyUsed = "buy_used", BuyLater = "buy_later",
    Sell = "sell", AskLess = "ask_less", Leave = "leave", Stop = "stop", ChargeLonger = "charge_longer",
    UseLess = "use_less", HangElsewhere = "hang_elsewhere", MoreCans = "more_cans", LessWater = "less_water", WaterStop = "water_stop",
    Lighter = "lighter", Smaller = "smaller", MoveIt = "move_it", TaskLater = "task_later",
    LeaveTaskOut = "leave_task_out", HireTool = "hire_tool", HeatAtNight = "heat_at_night", CloseCab = "close_cab",
    OpenMore = "open_more",
    TakeContract = "take_contract", EndContract = "end_contract",
    LessData = "less_data",
});

/// The changes that are found for a plan.
pub struct Found<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The day it is asked.
    pub as_of: Date,
    /// What it comes to without them.
    pub before: &'a Outcome,
    /// Of each item of the kit, whether it is paid.
    pub paid: Vec<bool>,
    /// What was found.
    pub candidates: Vec<Candidate>,
}

impl<'a> Found<'a> {
    /// What may mend the balances that fall short, or where none does those that are tight.
    pub fn new(plan: &'a Plan, as_of: Date, before: &'a Outcome) -> Self {
        let mut found = Self { plan, as_of, before, paid: money::are_paid(plan), candidates: Vec::new() };
        for balance in wanting(before) {
            match balance.balance {
                Balance::Money => {
                    money::moves(&mut found, balance);
                    crate::signal::moves_of_money(&mut found);
                }
                Balance::Power => crate::power::moves(&mut found, balance),
                Balance::Water => crate::water::moves(&mut found, balance),
                Balance::Days => crate::days::moves(&mut found),
                Balance::Space => crate::space::moves(&mut found),
                Balance::Load => crate::load::moves(&mut found),
                Balance::Warmth => crate::warmth::moves(&mut found),
                Balance::Signal => crate::signal::moves(&mut found),
            }
        }
        found.candidates.truncate(super::constants::MOST_TRIED);
        found
    }

    /// Adds a change of an entry.
    pub fn add(&mut self, change: Change, id: Id, edit: Edit) {
        self.add_whole(Candidate { change, id, edit, ..Candidate::default() });
    }

    /// Adds one that moves something by so many days, or is about a day.
    pub fn add_of_days(&mut self, change: Change, id: Id, edit: Edit, days: f64, on: Option<Date>) {
        self.add_whole(Candidate { change, id, edit, days, on, ..Candidate::default() });
    }

    /// Adds a change, unless it is there already.
    pub fn add_whole(&mut self, candidate: Candidate) {
        if !self.candidates.iter().any(|known| known.edit == candidate.edit) {
            self.candidates.push(candidate);
        }
    }

    /// The things that are carried and are no must, each with whether it is paid.
    pub fn wants(&self) -> Vec<(&'a Item, bool)> {
        let items = self.plan.kit.iter().zip(self.paid.iter().copied());
        items.filter(|(item, _)| item.need != Need::Must && item.obtain != Obtain::LeftOut).collect()
    }

    /// Leaves out these things.
    pub fn leave_out<'b>(&mut self, things: impl IntoIterator<Item = &'b Item>) {
        for item in things.into_iter().take(super::constants::MOST_OF_A_KIND) {
            self.add(Change::LeaveOut, item.id, Edit::set(of_item(item.id, "obtain"), Obtain::LeftOut.to_plain()));
            if item.quantity > 1 && item.returned.is_none() {
                self.add(Change::Fewer, item.id, Edit::set(of_item(item.id, "quantity"), item.quantity - 1));
            }
        }
    }
}

/// The balances to be mended: those that fall short, or where none does those that are tight.
pub fn wanting(before: &Outcome) -> Vec<Outlined> {
    let of = |verdict: Verdict| before.balances.iter().filter(|balance| balance.verdict == verdict).copied().collect();
    let short: Vec<Outlined> = of(Verdict::FallsShort);
    if short.is_empty() { of(Verdict::Tight) } else { short }
}

/// A field of an item of the kit.
pub fn of_item(id: Id, field: &str) -> Path {
    Path::entry(List::Kit.name(), id).child(field)
}
