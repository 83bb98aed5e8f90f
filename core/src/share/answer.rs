//! What a friend answers: which things they can lend, which they can do.

use crate::plan::record::{record, words};
use crate::plan::{Id, Item, Obtain, Plan};

/// An answer to a plan that was shared.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answer {
    /// Who answers.
    pub from: String,
    /// The title of the plan it answers.
    pub title: String,
    /// What they can lend or do.
    pub marks: Vec<Mark>,
}

record!(Answer { from, title, marks });

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
    /// The plan as it would be with all that is offered: what can be lent is borrowed from them, and what else they
    /// say stands in its note. Things go by their id and name, or by their name alone; what is no longer there is left
    /// out.
    ///
    /// ```
    /// use kerbstead_core::plan::{Item, Obtain, Plan};
    /// use kerbstead_core::share::{Answer, Help, Mark};
    /// let mut plan = Plan::default();
    /// plan.kit.push(Item { id: 3, name: "Drill".into(), ..Item::default() });
    /// let mark = Mark { id: 3, name: "Drill".into(), help: Help::Lend, says: String::new() };
    /// let answer = Answer { from: "Runa".into(), title: String::new(), marks: vec![mark] };
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
        plan
    }

    /// The marks of things that the plan does not have any more.
    pub fn of_nothing<'a>(&'a self, plan: &Plan) -> Vec<&'a Mark> {
        let mut kit = plan.kit.clone();
        self.marks.iter().filter(|mark| named(&mut kit, mark).is_none()).collect()
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
