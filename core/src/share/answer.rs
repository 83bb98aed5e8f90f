//! What a friend answers: which things they can lend, which they can do, and when they can help.

use super::helping::{helper_of, take};
use crate::plan::record::{record, words};
use crate::plan::{Helper, Id, Item, Obtain, OtherDay, Plan, Tool};

/// An answer to a plan that was shared.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// Who answers.
    pub from: String,
    /// The title of the plan it answers.
    pub title: String,
    /// What they can lend or do.
    pub marks: Vec<Mark>,
    /// The entry of the plan that is theirs, with the hours and days they can.
    pub helper: Option<Helper>,
    /// Days on which it is otherwise with them: those that the plan has by their ids, others as new. One of the plan's
    /// without a first day is as always after all.
    pub other_days: Vec<OtherDay>,
    /// Tools they can lend, each with the days on which it is there.
    pub tools: Vec<Tool>,
}

record!(Answer { from, title, marks, helper, other_days, tools } unless empty { other_days, tools });

/// What can be had of one thing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mark {
    /// The id of the thing in the plan that was shared.
    pub id: Id,
    /// Its name there.
    pub name: String,
    /// What is offered.
    pub help: Help,
    /// What they say to it.
    pub says: String,
}

record!(Mark { id, name, help, says } unless empty { says });

/// What a friend offers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Help {
    /// To lend it.
    #[default]
    Lend,
    /// To do it: make it, fit it, fetch it.
    Do,
}

words!(Help { Lend = "lend", Do = "do" });

impl Answer {
    /// The plan as it would be with all that is offered: what can be lent is borrowed from them, what else they
    /// say stands in its note, and their hours are as they say. Things, tools and helpers go by their id and name, or by
    /// their name alone; a thing or helper that is no longer there is left out, a tool that is not there is new.
    ///
    /// ```
    /// use kerbstead_core::plan::{Item, Obtain, Plan};
    /// use kerbstead_core::share::{Answer, Help, Mark};
    /// let mut plan = Plan::default();
    /// plan.kit.push(Item { id: 3, name: "Drill".into(), ..Item::default() });
    /// let mark = Mark { id: 3, name: "Drill".into(), help: Help::Lend, says: String::new() };
    /// let answer = Answer { from: "Runa".into(), marks: vec![mark], ..Answer::default() };
    /// let offered = answer.applied(&plan);
    /// assert_eq!((offered.kit[0].obtain, offered.kit[0].lender.as_str()), (Obtain::Borrowed, "Runa"));
    /// ```
    pub fn applied(&self, plan: &Plan) -> Plan {
        let mut plan = plan.clone();
        for mark in &self.marks {
            if let Some(item) = named(&mut plan.kit, mark) {
                self.take(mark, item);
            }
        }
        take(self, &mut plan);
        plan
    }

    /// The names of things and of the helper that the plan does not have any more.
    pub fn of_nothing<'a>(&'a self, plan: &Plan) -> Vec<&'a str> {
        let mut kit = plan.kit.clone();
        let things = self.marks.iter().filter(|mark| named(&mut kit, mark).is_none()).map(|mark| mark.name.as_str());
        let helper = self.helper.iter().filter(|told| helper_of(plan, told).is_none());
        let helper: Vec<&str> = helper.map(|helper| helper.name.as_str()).collect();
        things.chain(helper).collect()
    }

    /// Whether anything is offered or said in it.
    pub const fn offers_something(&self) -> bool {
        !self.marks.is_empty() || self.helper.is_some() || !self.other_days.is_empty() || !self.tools.is_empty()
    }

    /// Puts a day among those that are otherwise, in the place of one with the same id. A new one without a first day is
    /// none.
    pub fn put_day(&mut self, day: OtherDay) {
        self.other_days.retain(|other| other.id != day.id);
        if day.first_day.is_some() || !Self::is_new(day.id) {
            self.other_days.push(day);
        }
    }

    /// An id for a day or tool that the plan does not have. It gets another one when it is taken.
    ///
    /// ```
    /// use kerbstead_core::share::Answer;
    /// assert!(Answer::is_new(Answer::default().new_id()));
    /// ```
    pub fn new_id(&self) -> Id {
        let ids = self.other_days.iter().map(|day| day.id).chain(self.tools.iter().map(|tool| tool.id));
        ids.filter(|id| Self::is_new(*id)).min().unwrap_or(Id::MAX).saturating_sub(1)
    }

    /// Whether an id is one of [`Answer::new_id`]: they are counted from the top, where no plan comes to.
    pub const fn is_new(id: Id) -> bool {
        id > Id::MAX / 2
    }

    fn take(&self, mark: &Mark, item: &mut Item) {
        if mark.help == Help::Lend {
            item.obtain = Obtain::Borrowed;
            item.lender.clone_from(&self.from);
        }
        let said = [self.from.as_str(), ": ", &mark.says].concat();
        // Whoever takes it a second time has it once.
        if !mark.says.is_empty() && !item.note.contains(&said) {
            let before = if item.note.is_empty() { "" } else { "\n" };
            item.note = [&item.note, before, &said].concat();
        }
    }
}

fn named<'a>(kit: &'a mut [Item], mark: &Mark) -> Option<&'a mut Item> {
    let at = kit.iter().position(|item| item.id == mark.id && item.name == mark.name);
    let at = at.or_else(|| kit.iter().position(|item| item.name == mark.name))?;
    kit.get_mut(at)
}
