//! The ways of building that a plan has, compared; what it does not state is taken from the rest of it.

use jiff::civil::Date;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::{
    BreakEven, Build, Case, Future, Held, Lever, Question, Swing, Way, break_even, cheapest, futures, sensitivity,
};
use crate::explain::{Figure, Figures, Source, Working};
use crate::money::constants::{DAYS_PER_MONTH, FINDS_OUT_MONTHS, KEPT_PERCENT, TRIAL_MONTHS, UNSUITED_PERCENT};
use crate::money::month::lines;
use crate::money::{MOST_MONTHS, Report, purchase_price, still_to_buy};
use crate::order;
use crate::plan::{Estimate, Id, Item, Money, Plan, Quantity, VanBuild, days_between, decimal};
use crate::run::Timeline;

/// So many ways of building are compared, the first ones: more lines are not to be told apart.
pub const MOST_BUILDS: usize = 5;

/// The ways, and how they compare.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// What they have in common, with all that the plan does not state filled in.
    pub question: Question,
    /// The ways: those of the plan, or the plan as it stands if it has none; then staying at home.
    pub ways: Vec<NamedWay>,
    /// What each costs.
    pub futures: Vec<Future>,
    /// The one that costs least on average at the end.
    pub cheapest: usize,
    /// How it stands against each of the others, the next cheapest first.
    pub against: Vec<Against>,
    /// What the difference between it and the next cheapest depends on, the widest swing first.
    pub depends: Vec<Depends>,
    /// What was taken for what.
    pub working: Vec<Working>,
}

/// A way with its name.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedWay {
    /// What it is called.
    pub name: WayName,
    /// The way.
    pub way: Way,
    /// How its cost at the end came about.
    pub working: Vec<Working>,
}

/// What a way is called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WayName {
    /// Staying at home.
    Stay,
    /// Building as the plan has it.
    AsPlanned,
    /// As the person calls it.
    Own(Id, String),
}

/// What the difference depends on.
#[derive(Clone, Debug, PartialEq)]
pub struct Depends {
    /// The input, and how far it moves the difference.
    pub swing: Swing,
    /// Its low value.
    pub low: Figure,
    /// Its high value.
    pub high: Figure,
}

/// The cheapest way beside another one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Against {
    /// The position of the other.
    pub other: usize,
    /// What the other costs more on average at the end.
    pub dearer: Money,
    /// The chance at which both cost the same; none where the cheapest is so at any chance.
    pub even: Option<BreakEven>,
}

/// The ways of a plan beside one another.
///
/// What a month costs is that of the plan's running costs, without loans: what a loan costs is part of the build it pays
/// for. Going back costs the deposit of a room. Of the plan as it stands, removable is what is still to be bought and
/// has a sale planned, and the van if it is still to be bought and would bring something again; fixed is all else that
/// is still to be bought, and what loans cost. What is still not known is as in [`constants`](crate::money::constants).
pub fn compared(plan: &Plan, as_of: Date, report: &Report) -> Compared {
    let question = question(plan, as_of);
    let mut ways: Vec<(WayName, Way)> = plan.builds.iter().take(MOST_BUILDS).map(own).collect();
    if ways.is_empty() && plan.calendar.leaves_on.is_some() {
        ways.push((WayName::AsPlanned, Way::Leave(as_planned(plan, as_of, report))));
    }
    ways.push((WayName::Stay, Way::Stay));
    let only: Vec<Way> = ways.iter().map(|(_, way)| way.clone()).collect();
    let futures = futures(&question, &only);
    let cheapest = cheapest(&futures).unwrap_or(0);
    let against = against(&question, &only, &futures, cheapest);
    let depends = |next: &Against| {
        let pair = [&only[cheapest], &only[next.other]];
        let swings = sensitivity(&question, pair[0], pair[1]);
        swings.into_iter().map(|swing| depends(&question, pair, swing)).collect()
    };
    let depends = against.first().map_or_else(Vec::new, depends);
    let named = ways.into_iter().map(|(name, way)| NamedWay { working: way_working(&question, &way), name, way });
    Compared { working: vec![taken(&question)], ways: named.collect(), question, futures, cheapest, against, depends }
}

impl VanBuild {
    /// The plan as it stands, as a way of building that can be changed. `id` is its id, `name` its name.
    pub fn as_planned(plan: &Plan, as_of: Date, report: &Report, id: Id, name: String) -> Self {
        let build = as_planned(plan, as_of, report);
        let months = f64::from(build.months.likely());
        Self {
            id,
            name,
            build_months: Some(months.into()),
            removable: Some(build.removable),
            fixed: Some(build.fixed),
            redone: None,
            extra_kg: None,
        }
    }
}

fn own(build: &VanBuild) -> (WayName, Way) {
    let way = Build {
        months: build.build_months.map_or(Estimate::Plain(0), |months| each(&months, whole_months)),
        removable: build.removable.unwrap_or_default(),
        fixed: build.fixed.unwrap_or_default(),
        redone: build.redone.unwrap_or_default(),
    };
    (WayName::Own(build.id, build.name.clone()), Way::Leave(way))
}

fn question(plan: &Plan, as_of: Date) -> Question {
    let trial = &plan.trial;
    let (home, road) = monthly(plan, as_of);
    let usual = |[low, likely, high]: [f64; 3]| Estimate::Range { low, likely, high };
    let share = |percent: Estimate<f64>| each(&percent, decimal::of_measure);
    let finds_out = trial.finds_out_months.unwrap_or(usual(FINDS_OUT_MONTHS));
    Question {
        months: trial.trial_months.unwrap_or(TRIAL_MONTHS),
        digits: plan.minor_digits(),
        home_monthly: trial.home_monthly.unwrap_or(home),
        road_monthly: trial.road_monthly.unwrap_or(road),
        unsuited_percent: share(trial.unsuited_percent.unwrap_or(usual(UNSUITED_PERCENT))),
        finds_out_months: each(&finds_out, whole_months),
        going_back: trial.going_back.unwrap_or(Estimate::Plain(plan.purse.room_deposit.unwrap_or(Money::ZERO))),
        kept_percent: trial
            .kept_percent
            .map(share)
            .or_else(|| kept_percent(plan))
            .unwrap_or_else(|| share(usual(KEPT_PERCENT))),
    }
}

/// A value of an estimate.
#[derive(Clone, Copy)]
enum End {
    Low,
    Likely,
    High,
}

impl End {
    fn of<T: Copy>(self, estimate: &Estimate<T>) -> T {
        match self {
            Self::Low => estimate.low(),
            Self::Likely => estimate.likely(),
            Self::High => estimate.high(),
        }
    }
}

/// What something comes to at each end; one value where they are all the same.
fn at_ends(of: &dyn Fn(End) -> Money) -> Estimate<Money> {
    let (low, likely, high) = (of(End::Low), of(End::Likely), of(End::High));
    if low == high { Estimate::Plain(likely) } else { Estimate::Range { low, likely, high } }
}

fn each<A: Copy, B>(estimate: &Estimate<A>, of: fn(A) -> B) -> Estimate<B> {
    match *estimate {
        Estimate::Plain(value) => Estimate::Plain(of(value)),
        Estimate::Range { low, likely, high } => Estimate::Range { low: of(low), likely: of(likely), high: of(high) },
    }
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped; what is no number is none
fn whole_months(months: f64) -> u32 {
    months.clamp(0.0, f64::from(MOST_MONTHS)).round() as u32
}

/// A month at home and one on the road, by the plan's running costs.
fn monthly(plan: &Plan, as_of: Date) -> (Estimate<Money>, Estimate<Money>) {
    let timeline = Timeline::new(plan, as_of);
    let at = |end: End| {
        let mut at_end = Plan { costs: plan.costs.clone(), vehicle: plan.vehicle, ..Plan::default() };
        at_end.currency.clone_from(&plan.currency);
        for cost in &mut at_end.costs {
            cost.amount = cost.amount.map(|amount| Estimate::Plain(end.of(&amount)));
        }
        let vehicle = &mut at_end.vehicle;
        vehicle.fuel_price_per_l = vehicle.fuel_price_per_l.map(|price| Estimate::Plain(end.of(&price)));
        lines(&at_end, &timeline, &[])
    };
    let home = |end: End| at(end).iter().map(|line| line.home).sum();
    let road = |end: End| at(end).iter().map(|line| line.road).sum();
    (at_ends(&home), at_ends(&road))
}

fn is_sold_again(item: &Item) -> bool {
    item.sale.is_some_and(|sale| sale.outcome.is_none() && sale.price.is_some())
}

fn price_at(plan: &Plan, item: &Item, end: End) -> Money {
    let unit_price = item.unit_price.map(|price| Estimate::Plain(end.of(&price)));
    let at_end = Item { unit_price, name: String::new(), note: String::new(), lender: String::new(), ..item.clone() };
    purchase_price(&at_end, &plan.purse, plan.minor_digits()).map_or(Money::ZERO, |price| price.total)
}

/// The price of the van, if it is still to be bought.
fn van_price(plan: &Plan) -> Option<Estimate<Money>> {
    plan.purchase.agreed_price.filter(|_| plan.purchase.paid.is_none())
}

fn as_planned(plan: &Plan, as_of: Date, report: &Report) -> Build {
    let is_van_sold = plan.vehicle.resale.is_some();
    let van = |end: End, is_removable: bool| {
        let price = van_price(plan).filter(|_| is_van_sold == is_removable);
        price.map_or(Money::ZERO, |price| end.of(&price))
    };
    let to_buy = still_to_buy(plan);
    let kit = |end: End, is_removable: bool| -> Money {
        to_buy.iter().filter(|item| is_sold_again(item) == is_removable).map(|item| price_at(plan, item, end)).sum()
    };
    let fees = || {
        let of_van = [plan.purchase.seller_fees, plan.purchase.registration];
        let of_van = of_van.into_iter().flatten().filter(|_| van_price(plan).is_some());
        let of_loans = plan.loans.iter().filter_map(|loan| loan.fees);
        of_van.chain(of_loans).chain(report.loans.iter().map(|loan| loan.interest)).sum::<Money>()
    };
    Build {
        months: Estimate::Plain(months_at_home(plan, as_of)),
        removable: at_ends(&|end| kit(end, true) + van(end, true)),
        fixed: at_ends(&|end| kit(end, false) + van(end, false) + fees()),
        redone: Estimate::default(),
    }
}

/// Months from the first day to that of leaving, to the nearest.
fn months_at_home(plan: &Plan, as_of: Date) -> u32 {
    let starts_on = plan.calendar.starts_on.unwrap_or(as_of);
    let days = plan.calendar.leaves_on.map_or(0, |leaves_on| days_between(starts_on, leaves_on));
    let months = decimal::over(Decimal::from(days.max(0)), DAYS_PER_MONTH).and_then(|months| months.round().to_u32());
    months.unwrap_or(0).min(MOST_MONTHS)
}

/// What the planned sales of things to buy, and of the van, bring of their price, in percent.
fn kept_percent(plan: &Plan) -> Option<Estimate<Decimal>> {
    let to_buy = still_to_buy(plan);
    let sold_again = || to_buy.iter().filter(|item| is_sold_again(item));
    let sold = |end: End| -> Money {
        let sale = |item: &&Item| item.sale.and_then(|sale| sale.price).map_or(Money::ZERO, |price| end.of(&price));
        let kit: Money = sold_again().map(sale).sum();
        kit + plan.vehicle.resale.filter(|_| van_price(plan).is_some()).map_or(Money::ZERO, |van| end.of(&van))
    };
    let kit: Money = sold_again().map(|item| price_at(plan, item, End::Likely)).sum();
    let van = van_price(plan).filter(|_| plan.vehicle.resale.is_some()).map_or(Money::ZERO, |van| van.likely());
    let paid = (kit + van).decimal();
    let share =
        |end: End| Money::new(decimal::over(sold(end).times(100).decimal(), paid).unwrap_or_default()).rounded(1);
    (paid > Decimal::ZERO).then(|| each(&at_ends(&share), Money::decimal))
}

/// The cheapest way against each other one, the next cheapest first.
fn against(question: &Question, ways: &[Way], futures: &[Future], cheapest: usize) -> Vec<Against> {
    let end = |at: usize| futures[at].expected.last().copied().unwrap_or_default();
    let others = (0..ways.len()).filter(|at| *at != cheapest);
    let against = |other| Against {
        other,
        dearer: end(other) - end(cheapest),
        even: break_even(question, &ways[cheapest], &ways[other]),
    };
    let against: Vec<Against> = others.map(against).collect();
    order::by_key(&against, |one| against.iter().filter(|other| other.dearer < one.dearer).count() as u64)
}

/// A swing with the values it is between.
fn depends(question: &Question, pair: [&Way; 2], swing: Swing) -> Depends {
    let build = |at: usize| match pair.get(at) {
        Some(Way::Leave(build)) => Some(build),
        _ => None,
    };
    let money = |amount: Money| Figure::Money(amount);
    let of = |at: usize, part: fn(&Build) -> &Estimate<Money>| build(at).map(|build| ends(part(build), money));
    let ends = match swing.lever {
        Lever::HomeMonthly => Some(ends(&question.home_monthly, money)),
        Lever::RoadMonthly => Some(ends(&question.road_monthly, money)),
        Lever::GoingBack => Some(ends(&question.going_back, money)),
        Lever::UnsuitedPercent => Some(ends(&question.unsuited_percent, percent)),
        Lever::KeptPercent => Some(ends(&question.kept_percent, percent)),
        Lever::FindsOutMonths => Some(ends(&question.finds_out_months, months)),
        Lever::BuildMonths(at) => build(at).map(|build| ends(&build.months, months)),
        Lever::Removable(at) => of(at, |build| &build.removable),
        Lever::Fixed(at) => of(at, |build| &build.fixed),
        Lever::Redone(at) => of(at, |build| &build.redone),
    };
    // A lever of a build is there only with its build.
    let (low, high) = ends.unwrap_or((Figure::Money(Money::ZERO), Figure::Money(Money::ZERO)));
    Depends { swing, low, high }
}

fn ends<T: Copy>(estimate: &Estimate<T>, figure: fn(T) -> Figure) -> (Figure, Figure) {
    (figure(estimate.low()), figure(estimate.high()))
}

fn months(months: u32) -> Figure {
    Figure::of(f64::from(months), Quantity::Months)
}

fn percent(share: Decimal) -> Figure {
    Figure::of(decimal::to_float(share), Quantity::Percent)
}

/// What is taken for what the ways have in common.
fn taken(question: &Question) -> Working {
    let figures = vec![
        ("months", months(question.months)),
        ("home", Figure::Money(question.home_monthly.likely())),
        ("road", Figure::Money(question.road_monthly.likely())),
        ("unsuited", percent(question.unsuited_percent.likely())),
        ("finds_out", months(question.finds_out_months.likely())),
        ("kept", percent(question.kept_percent.likely())),
        ("back", Figure::Money(question.going_back.likely())),
    ];
    Working { formula: "working-futures-taken", figures, source: Source::CommonPractice }
}

/// How the cost of a way at the end came about: if the life suits, if not, and on average.
fn way_working(question: &Question, way: &Way) -> Vec<Working> {
    let case = Case::new(question, way, 0, Held::LIKELY);
    let end = question.months.clamp(1, MOST_MONTHS);
    let line = |formula, figures: Figures| Working { formula, figures, source: Source::Arithmetic };
    let living = |on_the_road: u32, suits: bool| {
        vec![
            ("months", months(end - on_the_road)),
            ("home", Figure::Money(case.home)),
            ("on_road", months(on_the_road)),
            ("road", Figure::Money(case.road)),
            ("total", Figure::Money(case.cost(end, suits))),
        ]
    };
    let Some(build) = &case.build else { return vec![line("working-futures-stay", living(0, true))] };
    let away = end.saturating_sub(build.months);
    let knows = end >= build.months.saturating_add(build.finds_out);
    let then = |amount: Money| Figure::Money(if knows { amount } else { Money::ZERO });
    let spent = Figure::Money(build.spent(end, question.digits));
    let mut suited = living(away, true);
    suited.extend([("build", spent.clone()), ("redone", then(build.redone))]);
    let mut unsuited = living(away.min(build.finds_out), false);
    unsuited.extend([("build", spent), ("returning", then(build.returning))]);
    let average = vec![
        ("suited", Figure::Money(case.cost(end, true))),
        ("suits", percent(Decimal::ONE_HUNDRED - case.unsuited_percent)),
        ("unsuited", Figure::Money(case.cost(end, false))),
        ("percent", percent(case.unsuited_percent)),
        ("total", Figure::Money(case.expected(end).rounded(question.digits))),
    ];
    vec![
        line("working-futures-suited", suited),
        line("working-futures-unsuited", unsuited),
        line("working-futures-average", average),
    ]
}
