//! A plan assessed again and again with small changes: what a change cannot touch is not worked out anew.

use std::borrow::Cow;

use jiff::civil::Date;

use super::{Balance, Margin, Moment, Standing, Verdict, around};
use crate::days::Work;
use crate::plan::{Item, Money, Obtain, Plan};
use crate::power::KnownSkies;
use crate::run::{self, Day, Gone, Hourly, Timeline};
use crate::space::Placed;
use crate::{days, load, money, power, signal, space, warmth, water};

/// A plan, and what was worked out of it, for changes of it to be assessed quickly.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::plan::{Edit, demo_plan};
/// use kerbstead_core::{Again, Outcome, assess};
/// let plan = demo_plan();
/// let as_of = date(2027, 3, 10);
/// let again = Again::new(&plan, as_of);
/// let mut changed = plan.clone();
/// Edit::set("purse/opening_cash", "2000").apply(&mut changed).unwrap();
/// assert_eq!(again.outcome(&changed), Outcome::of(&assess(&changed, as_of)));
/// ```
pub struct Again {
    plan: Plan,
    as_of: Date,
    work: Work,
    skies: KnownSkies,
    hours: OfHours,
    space: Outlined,
    outcome: Outcome,
}

/// What an assessment comes to, balance by balance, without all that it rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// The balances in the order they are shown.
    pub balances: [Outlined; 8],
    /// Cash in the evening of each day from the day asked on.
    pub cash: Vec<(Date, Money)>,
    /// What an average day on the road costs.
    pub road_cost_per_day: Money,
}

/// What one balance comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outlined {
    /// Which.
    pub balance: Balance,
    /// Whether it holds.
    pub verdict: Verdict,
    /// How much is to spare, or missing if negative.
    pub margin: Option<Margin>,
    /// The first moment it runs out.
    pub first_short: Option<Moment>,
    /// How much of what is wrong there is: short findings and close ones, for what has no margin of its own.
    pub wrongs: (usize, usize),
}

impl Outlined {
    fn of<F: super::Say>(balance: Balance, standing: &Standing<F>) -> Self {
        let of = |severity| standing.findings.iter().filter(|finding| finding.severity() == severity).count();
        Self {
            balance,
            verdict: standing.verdict,
            margin: standing.margin,
            first_short: standing.first_short,
            wrongs: (of(super::Severity::Short), of(super::Severity::Close)),
        }
    }
}

impl Outcome {
    /// What an assessment comes to.
    pub fn of(assessment: &super::Assessment) -> Self {
        Self {
            balances: [
                Outlined::of(Balance::Money, &assessment.money.standing),
                Outlined::of(Balance::Power, &assessment.power.standing),
                Outlined::of(Balance::Water, &assessment.water.standing),
                Outlined::of(Balance::Days, &assessment.days.standing),
                Outlined::of(Balance::Space, &assessment.space.standing),
                Outlined::of(Balance::Load, &assessment.load.standing),
                Outlined::of(Balance::Warmth, &assessment.warmth.standing),
                Outlined::of(Balance::Signal, &assessment.signal.standing),
            ],
            cash: cash_ahead(&assessment.money, assessment.as_of),
            road_cost_per_day: assessment.money.road_cost_per_day,
        }
    }

    /// One of the balances.
    pub fn balance(&self, balance: Balance) -> Option<&Outlined> {
        self.balances.iter().find(|outlined| outlined.balance == balance)
    }

    /// Cash at the end of the plan.
    pub fn cash_at_end(&self) -> Money {
        self.cash.last().map_or(Money::ZERO, |(_, cash)| *cash)
    }

    /// Whether no balance falls short.
    pub fn holds(&self) -> bool {
        self.balances.iter().all(|outlined| outlined.verdict != Verdict::FallsShort)
    }
}

fn cash_ahead(money: &money::Report, as_of: Date) -> Vec<(Date, Money)> {
    money.days.iter().filter(|day| day.on >= as_of).map(|day| (day.on, day.closing)).collect()
}

impl Again {
    /// Works out all of a plan.
    pub fn new(plan: &Plan, as_of: Date) -> Self {
        let run::Dated { plan: dated, work } = &run::dated(plan, as_of);
        let timeline = Timeline::new(dated, as_of);
        let road: Vec<&Day> = timeline.road().collect();
        let skies = KnownSkies::new(dated, &road);
        let hourly = Hourly::new(dated, &road, &skies.over(dated, &road));
        let (walked, gone) = run::walk_hourly(dated, as_of, &timeline, hourly);
        let hours = of_hours(dated, as_of, &timeline, gone);
        let space = of_space(dated, &Placed::new(dated));
        let outcome = of_rest(dated, as_of, &timeline, walked, work, &hours, space);
        Self { plan: plan.clone(), as_of, work: work.clone(), skies, hours, space, outcome }
    }

    /// What the plan itself comes to.
    pub fn before(&self) -> &Outcome {
        &self.outcome
    }

    /// What a change of the plan comes to: the same as [`assess`](super::assess) says of it.
    pub fn outcome(&self, changed: &Plan) -> Outcome {
        let as_of = self.as_of;
        let known = is_same_work(&self.plan, changed).then_some(&self.work);
        let run::Dated { plan, work } = &run::dated_with(changed, as_of, known);
        let timeline = Timeline::new(plan, as_of);
        let (walked, hours) = if are_same_hours(&self.plan, changed) {
            (run::walk_days(plan, as_of, &timeline, &self.hours.highs_c, None), Cow::Borrowed(&self.hours))
        } else {
            let road: Vec<&Day> = timeline.road().collect();
            let hourly = Hourly::new(plan, &road, &self.skies.over(plan, &road));
            let (walked, gone) = run::walk_hourly(plan, as_of, &timeline, hourly);
            (walked, Cow::Owned(of_hours(plan, as_of, &timeline, gone)))
        };
        let space = if is_same_space(&self.plan, changed) { self.space } else { of_space(plan, &Placed::new(plan)) };
        of_rest(plan, as_of, &timeline, walked, work, &hours, space)
    }
}

/// What goes by the hour: power and warmth; and what else hangs on the hours.
#[derive(Clone)]
struct OfHours {
    power: Outlined,
    warmth: Outlined,
    frost: water::Frost,
    highs_c: Vec<f64>,
    /// The hours themselves: the work may need other things of the same.
    gone: Gone,
}

fn of_hours(plan: &Plan, as_of: Date, timeline: &Timeline, gone: Gone) -> OfHours {
    let power = power::report(plan, as_of, timeline, &gone.electrics, &gone.power);
    let warmth = warmth::report(plan, as_of, timeline, &gone.warmth, &gone.room);
    OfHours {
        power: Outlined::of(Balance::Power, &power.standing),
        warmth: Outlined::of(Balance::Warmth, &warmth.standing),
        frost: gone.frost(),
        highs_c: gone.warmth.highs_c(),
        gone,
    }
}

fn of_space(plan: &Plan, placed: &Placed) -> Outlined {
    Outlined::of(Balance::Space, &space::report(plan, placed).standing)
}

fn of_rest(
    plan: &Plan,
    as_of: Date,
    timeline: &Timeline,
    walked: run::Walked,
    work: &Work,
    hours: &OfHours,
    space: Outlined,
) -> Outcome {
    let (inside_c, served) = around::of(plan, &hours.gone);
    let signal = signal::report(plan, as_of, timeline, &signal::Around { inside_c: &inside_c, served: &served });
    let money = money::report(plan, as_of, timeline, walked.money, &signal.unearned());
    let load = load::report(plan, as_of, timeline, &Placed::new(plan), &walked.supply, &walked.water.days);
    let water = water::report(plan, as_of, timeline, &walked.supply, walked.water, &hours.frost);
    let days = days::report(plan, as_of, work, &run::for_days(plan, as_of, &money));
    Outcome {
        balances: [
            Outlined::of(Balance::Money, &money.standing),
            hours.power,
            Outlined::of(Balance::Water, &water.standing),
            Outlined::of(Balance::Days, &days.standing),
            space,
            Outlined::of(Balance::Load, &load.standing),
            hours.warmth,
            Outlined::of(Balance::Signal, &signal.standing),
        ],
        cash: cash_ahead(&money, as_of),
        road_cost_per_day: money.road_cost_per_day,
    }
}

/// Whether the work of both is placed alike: all that places it is the same.
fn is_same_work(a: &Plan, b: &Plan) -> bool {
    a.tasks == b.tasks
        && a.task_needs == b.task_needs
        && a.helpers == b.helpers
        && a.other_days == b.other_days
        && a.tools == b.tools
        && a.building == b.building
        && a.calendar == b.calendar
        && a.purchase == b.purchase
        && a.receipts == b.receipts
        && a.receipt_lines == b.receipt_lines
        && are_alike(a, b, |a, b| {
            (a.obtain, a.buy_on, a.needed_on, a.delivery_days, a.paid, a.returned)
                == (b.obtain, b.buy_on, b.needed_on, b.delivery_days, b.paid, b.returned)
        })
}

/// Whether the stores and the room of both take the same course.
fn are_same_hours(a: &Plan, b: &Plan) -> bool {
    a.calendar == b.calendar
        && a.vehicle == b.vehicle
        && a.stays == b.stays
        && a.week == b.week
        && a.charging == b.charging
        && a.climate == b.climate
        && a.years == b.years
        && a.readings == b.readings
        && a.shell == b.shell
        && a.layers == b.layers
        && a.work == b.work
        && a.corners == b.corners
        && a.doors == b.doors
        && a.roof_rows == b.roof_rows
        && are_alike(a, b, |a, b| {
            (a.draw, a.panel, a.need, a.burner, a.fan, a.mass_kg)
                == (b.draw, b.panel, b.need, b.burner, b.fan, b.mass_kg)
                && (a.store, a.tank) == (b.store, b.tank)
        })
}

/// Whether both vans are as full.
fn is_same_space(a: &Plan, b: &Plan) -> bool {
    a.vehicle == b.vehicle
        && a.room == b.room
        && a.corners == b.corners
        && a.built_ins == b.built_ins
        && a.doors == b.doors
        && a.wall_rows == b.wall_rows
        && a.roof_rows == b.roof_rows
        && a.placements == b.placements
        && a.sleepers == b.sleepers
        && a.distances == b.distances
        && are_alike(a, b, |a, b| {
            (a.holds_l, a.packed_l, a.mass_kg, a.group) == (b.holds_l, b.packed_l, b.mass_kg, b.group)
        })
}

/// Whether both kits are the same things, so many of them, as large, and alike in something else.
fn are_alike(a: &Plan, b: &Plan, in_this: fn(&Item, &Item) -> bool) -> bool {
    let is_left_out = |item: &Item| item.obtain == Obtain::LeftOut;
    let is_alike = |(a, b): (&Item, &Item)| {
        a.id == b.id
            && a.kept() == b.kept()
            && is_left_out(a) == is_left_out(b)
            && a.name == b.name
            && (a.length_mm, a.width_mm, a.height_mm) == (b.length_mm, b.width_mm, b.height_mm)
            && in_this(a, b)
    };
    a.people == b.people && a.kit.len() == b.kit.len() && a.kit.iter().zip(&b.kit).all(is_alike)
}
