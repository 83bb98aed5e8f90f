//! Plans compared one assessment after the other, for the worker.

use jiff::civil::Date;
use serde_json::Value;

use super::assumptions::{Assumption, assumed};
use super::only::only;
use super::rows::rows;
use super::under::{Kept, under};
use super::{Compared, MOST_PLANS};
use crate::assessment::{Assessment, assess};
use crate::plan::{Plain, Plan};
use crate::task::Task;

/// A [`Compared`] being worked out.
pub struct CompareTask {
    plans: Vec<Plan>,
    as_of: Date,
    /// As planned, as far as it is worked out.
    plain: Vec<Assessment>,
    /// Under each assumption, the plans so far.
    kept: Vec<(Assumption, Vec<Kept>)>,
    compared: Compared,
    /// How many assumptions were told of.
    told: usize,
}

impl CompareTask {
    /// Begins. Of more than [`MOST_PLANS`] plans, the first are compared.
    pub fn new(plans: &[Plan], as_of: Date) -> Self {
        let plans: Vec<Plan> = plans.iter().take(MOST_PLANS).cloned().collect();
        let compared = Compared {
            plans: plans.len(),
            as_of,
            same_currency: plans.windows(2).all(|pair| pair[0].currency == pair[1].currency),
            ..Compared::default()
        };
        Self { plans, as_of, plain: Vec::new(), kept: Vec::new(), compared, told: 0 }
    }

    /// What came of it so far: lines and things once every plan was assessed, assumptions once all plans were under
    /// them.
    pub fn compared(&self) -> Compared {
        self.compared.clone()
    }

    /// The assumption and the plan that come next.
    fn next(&self) -> Option<(Assumption, usize)> {
        let count = self.plans.len();
        let done = self.kept.last().map_or(count, |(_, kept)| kept.len());
        let (assumption, plan) = if done < count { (self.kept.len() - 1, done) } else { (self.kept.len(), 0) };
        Assumption::ALL.get(assumption).filter(|_| count > 0).map(|assumption| (*assumption, plan))
    }

    /// Assesses a plan under an assumption; where that changes nothing, it is as planned.
    fn assess(&mut self, assumption: Assumption, at: usize) -> Option<Kept> {
        let plan = self.plans.get(at)?;
        let Some(as_planned) = self.plain.get(at) else {
            let assessment = assess(plan, self.as_of);
            let kept = Kept::new(&assessment, false);
            self.plain.push(assessment);
            return Some(kept);
        };
        let changed = assumed(plan, assumption, self.as_of, &as_planned.money.flows);
        if changed == *plan {
            return Some(Kept::new(as_planned, false));
        }
        Some(Kept::new(&assess(&changed, self.as_of), true))
    }

    /// All plans were under one more assumption.
    fn tell(&mut self) {
        let same_currency = self.compared.same_currency;
        if self.kept.len() == 1 {
            self.compared.rows = rows(&self.plain, same_currency);
            self.compared.only = only(&self.plans);
        }
        self.compared.under = under(&self.kept, same_currency);
    }
}

impl Task for CompareTask {
    fn step(&mut self) -> f64 {
        let Some((assumption, plan)) = self.next() else { return 1.0 };
        let Some(kept) = self.assess(assumption, plan) else { return 1.0 };
        if plan == 0 {
            self.kept.push((assumption, Vec::new()));
        }
        if let Some((_, of_plans)) = self.kept.last_mut() {
            of_plans.push(kept);
        }
        if plan + 1 == self.plans.len() {
            self.tell();
        }
        let done = (self.kept.len().saturating_sub(1) * self.plans.len() + plan + 1) as f64;
        let all = (Assumption::ALL.len() * self.plans.len()) as f64;
        if self.next().is_some() { (done / all).min(0.99) } else { 1.0 }
    }

    fn so_far(&mut self) -> Option<Value> {
        let told = std::mem::replace(&mut self.told, self.compared.under.len());
        (told < self.told).then(|| self.answer())
    }

    fn answer(&self) -> Value {
        self.compared.to_plain()
    }
}
