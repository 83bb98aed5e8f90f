//! The runs, worked out in steps.

use jiff::civil::Date;
use serde_json::Value;

use super::amounts::Of;
use super::answer::{Input, Whole};
use super::build::Build;
use super::cash::Cash;
use super::constants::{MOST_INPUTS, RUNS};
use super::inputs::{Drawn, Inputs};
use super::judging::{Fate, Ledger, Line, Target};
use super::route::Route;
use super::stores::Stores;
use super::supply::Supply;
use crate::assessment::{Assessment, Balance, Say, Severity, Verdict, assess};
use crate::order;
use crate::plan::{Plain, Plan, days_between};
use crate::run::{Day, Timeline, dated, walk};
use crate::task::Task;
use crate::{days, load, money, power, run};

/// So many hours of stores by eight, or what takes as long, are a few milliseconds.
const EFFORT_A_STEP: usize = 20_000;
/// Inputs that are looked at in a step.
const INPUTS_A_STEP: usize = 8;

/// A [`Whole`] being worked out.
pub struct WholeTask {
    plan: Plan,
    as_of: Date,
    seed: u32,
    doing: Doing,
    whole: Whole,
}

/// What is being done.
enum Doing {
    Begin,
    Judged(Box<Assessment>),
    Runs(Box<Worlds>),
    Ranks { inputs: Box<Inputs>, target: Target, next: usize, found: Vec<Input> },
    Done,
}

impl WholeTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date, seed: u32) -> Self {
        Self { plan: plan.clone(), as_of, seed, doing: Doing::Begin, whole: Whole::default() }
    }

    /// What came of it, once all is done.
    pub fn whole(&self) -> &Whole {
        &self.whole
    }

    /// What comes next, and the share that is done.
    fn next(&mut self, doing: Doing) -> (Doing, f64) {
        /// The shares of the beginning and of the runs in all of it.
        const BEGIN: f64 = 0.05;
        const ALL_RUNS: f64 = 0.9;
        match doing {
            Doing::Begin => (Doing::Judged(Box::new(assess(&self.plan, self.as_of))), BEGIN / 2.0),
            Doing::Judged(assessment) => {
                let worlds = Worlds::new(&self.plan, self.as_of, self.seed, &assessment);
                (self.whole.from, self.whole.until) = (worlds.ledger.from, worlds.until);
                self.whole.balances = worlds.ledger.balances(&[]);
                if worlds.ledger.lines.iter().any(|line| line.is_known) {
                    (Doing::Runs(Box::new(worlds)), BEGIN)
                } else {
                    (Doing::Done, 1.0)
                }
            }
            Doing::Runs(mut worlds) => {
                let left = worlds.step();
                if left > 0 {
                    return (Doing::Runs(worlds), BEGIN + (1.0 - f64::from(left) / f64::from(RUNS)) * ALL_RUNS);
                }
                self.tell(&worlds.ledger);
                let target = worlds.ledger.target();
                (Doing::Ranks { inputs: Box::new(worlds.inputs), target, next: 0, found: Vec::new() }, BEGIN + ALL_RUNS)
            }
            Doing::Ranks { inputs, target, next, mut found } => {
                let until = (next + INPUTS_A_STEP).min(inputs.list.len());
                found.extend((next..until).filter_map(|at| target.of(&inputs, at)));
                if until < inputs.list.len() {
                    let share = until as f64 / inputs.list.len() as f64;
                    let share = BEGIN + ALL_RUNS + share * (1.0 - BEGIN - ALL_RUNS);
                    return (Doing::Ranks { inputs, target, next: until, found }, share);
                }
                self.whole.inputs = most_important(&found);
                (Doing::Done, 1.0)
            }
            Doing::Done => (Doing::Done, 1.0),
        }
    }

    fn tell(&mut self, ledger: &Ledger) {
        let first = ledger.first_by_run();
        self.whole.runs = RUNS;
        self.whole.all_hold = ledger.all_hold();
        self.whole.balances = ledger.balances(&first);
        self.whole.first = ledger.first(&first);
    }
}

impl Task for WholeTask {
    fn step(&mut self) -> f64 {
        let doing = std::mem::replace(&mut self.doing, Doing::Done);
        let (doing, share) = self.next(doing);
        self.doing = doing;
        share
    }

    fn answer(&self) -> Value {
        self.whole.to_plain()
    }
}

/// What the most hangs on, first; of equal ones that which was found first.
fn most_important(found: &[Input]) -> Vec<Input> {
    // A number from 0 to 1 has bits that rise with it.
    let mut inputs = order::by_key(found, |input| (1.0 - input.correlation.abs()).to_bits());
    inputs.truncate(MOST_INPUTS);
    inputs
}

/// All that a run draws, and what became of those so far.
struct Worlds {
    inputs: Inputs,
    ledger: Ledger,
    until: Date,
    done: u32,
    cash: Option<Cash>,
    stores: Stores,
    supply: Supply,
    build: Build,
    /// The day of leaving, and the first day ahead on the road, counted from the first day ahead.
    leaves: u32,
    road: u32,
    /// Balances that fail whatever is drawn, each on its day.
    sealed: [Option<u32>; 8],
}

/// The places of the balances among the lines, which are those of [`Assessment::verdicts`].
const MONEY: usize = Balance::Money as usize;
const POWER: usize = Balance::Power as usize;
const WATER: usize = Balance::Water as usize;
const DAYS: usize = Balance::Days as usize;
const SPACE: usize = Balance::Space as usize;
const LOAD: usize = Balance::Load as usize;
const WARMTH: usize = Balance::Warmth as usize;
const SIGNAL: usize = Balance::Signal as usize;

impl Worlds {
    fn new(plan: &Plan, as_of: Date, seed: u32, assessment: &Assessment) -> Self {
        let run::Dated { plan, work } = &dated(plan, as_of);
        let timeline = Timeline::new(plan, as_of);
        let walked = walk(plan, as_of, &timeline);
        let from = timeline.starts_on().max(as_of);
        let number = |on: Date| u32::try_from(days_between(from, on)).unwrap_or(0);
        let mut inputs = Inputs::new(seed.into());
        let route = Route::new(plan, &mut inputs);
        let ahead = money::ahead_of_dated(plan, as_of).ok();
        let awaited = awaited(plan, work);
        let of = Of { plan, asked_on: as_of, timeline: &timeline, route: &route, awaited: &awaited };
        let cash = ahead.map(|ahead| Cash::new(&of, &ahead, &mut inputs));
        let road: Vec<&Day> = timeline.road().collect();
        let highs_c = walked.hours.warmth.highs_c();
        let rest = power::rest(plan, as_of, &road, walked.hours.electrics, &walked.hours.power);
        let stores = Stores::new(plan, from, &rest, &route, &mut inputs);
        let supply = Supply::new(plan, as_of, from, &timeline, &highs_c, &mut inputs);
        let build = Build::new(plan, work, &mut inputs);
        let lines = assessment.verdicts().map(|(balance, verdict)| {
            let is_known = verdict != Verdict::Unknown && (balance != Balance::Money || cash.is_some());
            Line { balance, is_known, fates: Vec::new() }
        });
        let leaves = plan.calendar.leaves_on.map_or(0, number);
        let first_on_road = road.iter().find(|day| day.date >= as_of).map_or(leaves, |day| number(day.date));
        Self {
            ledger: Ledger { lines: lines.into(), from },
            until: timeline.ends_on(),
            done: 0,
            cash,
            stores,
            supply,
            build,
            leaves,
            road: first_on_road,
            sealed: sealed(assessment, leaves, first_on_road),
            inputs,
        }
    }

    /// Makes some more runs; gives how many are left.
    fn step(&mut self) -> u32 {
        let flows = self.cash.as_ref().map_or(0, Cash::effort);
        let effort = self.stores.hours() + self.build.effort() + self.supply.effort() + flows;
        for _ in 0..(EFFORT_A_STEP / effort.max(1)).clamp(1, 25) {
            self.eight();
            if self.done >= RUNS {
                break;
            }
        }
        RUNS.saturating_sub(self.done)
    }

    fn eight(&mut self) {
        let drawn = self.inputs.drawn(self.done.into());
        let power = self.stores.run(&drawn, &mut self.inputs);
        for (lane, power) in power.into_iter().enumerate().take((RUNS - self.done) as usize) {
            let fates = self.one(&drawn, lane, power);
            for ((line, fate), sealed) in self.ledger.lines.iter_mut().zip(fates).zip(self.sealed) {
                line.fates.push(sealed.map_or(fate, Fate::sealed));
            }
            self.done += 1;
        }
    }

    /// What becomes of each balance in one run.
    fn one(&mut self, drawn: &Drawn, lane: usize, power: Fate) -> [Fate; 8] {
        let mut fates = [Fate::unhurt(); 8];
        fates[POWER] = power;
        (fates[WATER], fates[LOAD]) = self.supply.run(drawn, lane, self.road);
        fates[DAYS] = self.build.run(drawn, lane, self.leaves, &mut self.inputs);
        if let Some(cash) = &mut self.cash {
            fates[MONEY] = cash.run(drawn, lane);
            // What open work waits for is not there.
            if fates[MONEY].fails_on.is_some_and(|day| cash.holds_up(day)) {
                fates[DAYS].fails_on = Some(self.leaves);
            }
        }
        fates
    }
}

/// Items that placed work needs.
fn awaited(plan: &Plan, work: &days::Work) -> Vec<u32> {
    let placed = (0..work.input.tasks.len()).filter(|activity| work.span_of(*activity).is_some());
    let tasks: Vec<u32> = placed.filter_map(|activity| work.task_of(plan, activity)).map(|task| task.id).collect();
    let of_tasks = plan.task_needs.iter().filter(|need| need.task.is_some_and(|task| tasks.contains(&task)));
    of_tasks.filter_map(|need| need.thing).collect()
}

/// What falls short whatever is drawn: what outlets do not bear, work that cannot be placed, what does not fit, what only
/// strips hold.
fn sealed(assessment: &Assessment, leaves: u32, road: u32) -> [Option<u32>; 8] {
    fn is_short<F: Say>(findings: &[F], hangs_on_draws: fn(&F) -> bool) -> bool {
        findings.iter().any(|finding| finding.severity() == Severity::Short && !hangs_on_draws(finding))
    }
    let power = is_short(&assessment.power.standing.findings, |finding| {
        matches!(finding, power::Finding::RunsOut { .. } | power::Finding::BelowFloor { .. })
    });
    let days = is_short(&assessment.days.standing.findings, |finding| {
        matches!(finding, days::Finding::NotReady { .. } | days::Finding::MoneyNotThere { .. })
    });
    let load =
        is_short(&assessment.load.standing.findings, |finding| !matches!(finding, load::Finding::StripsAlone { .. }));
    let mut sealed = [None; 8];
    sealed[POWER] = power.then_some(road);
    sealed[DAYS] = days.then_some(leaves);
    sealed[SPACE] = (assessment.space.standing.verdict == Verdict::FallsShort).then_some(leaves);
    sealed[LOAD] = load.then_some(road);
    // No draw changes these: they are as the likely run has them.
    sealed[WARMTH] = (assessment.warmth.standing.verdict == Verdict::FallsShort).then_some(road);
    sealed[SIGNAL] = (assessment.signal.standing.verdict == Verdict::FallsShort).then_some(road);
    sealed
}
