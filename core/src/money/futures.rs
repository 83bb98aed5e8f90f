//! Try it or build it in full? What it costs to leave soon with a simple build, to wait and build fully, or to stay, when
//! nobody knows yet whether the life suits.
//!
//! The model, which is our own arithmetic (common practice, no source): each way out is some months of building at home,
//! with its cost spread evenly over them, and then the road. With the chance asked about, the life does not suit; that
//! is found out after some months on the road. Then what can be taken out again is sold for a share of its cost, and
//! life at home is paid for from there on, with what it takes to move back in. If the life suits, what a simple build
//! lacks is redone in that same month. Who stays pays for the life at home alone. What would come after the months that
//! are looked at is not counted, nor what things are worth then.
//!
//! Inputs are [`Estimate`]s; costs are of their likely values. Everything is taken as it is typed but for shares, which
//! are held between 0 and 100 percent, and months, at most [`MOST_MONTHS`].

mod of_plan;
mod sensitivity;

use rust_decimal::Decimal;

pub use of_plan::{Against, Compared, Depends, MOST_BUILDS, NamedWay, WayName, compared};
pub use sensitivity::{Lever, Swing, sensitivity};

use super::sales::ppm;
use super::{MOST_MONTHS, Odds};
use crate::plan::{Estimate, Money, decimal};
use sensitivity::Held;

/// What the ways out are compared over, and what they have in common.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// How many months are looked at, 1 to 600.
    pub months: u32,
    /// Decimal digits of the currency's minor unit.
    pub digits: u32,
    /// What a month at home costs: rent and all else there.
    pub home_monthly: Estimate<Money>,
    /// What a month on the road costs.
    pub road_monthly: Estimate<Money>,
    /// The chance that the life does not suit, in percent.
    pub unsuited_percent: Estimate<Decimal>,
    /// After how many months on the road one finds out.
    pub finds_out_months: Estimate<u32>,
    /// What is paid once to live at home again: deposit, furniture, the move. Rents are in the months at home.
    pub going_back: Estimate<Money>,
    /// What of the cost of removable things their sale brings, in percent.
    pub kept_percent: Estimate<Decimal>,
}

/// One of the futures.
#[derive(Clone, Debug, PartialEq)]
pub enum Way {
    /// Staying at home.
    Stay,
    /// Building and leaving.
    Leave(Build),
}

/// A build.
#[derive(Clone, Debug, PartialEq)]
pub struct Build {
    /// Months of building, lived at home.
    pub months: Estimate<u32>,
    /// What is paid for things that can be taken out and sold.
    pub removable: Estimate<Money>,
    /// What is paid for what stays in the van and is lost with it; also what the van itself loses, if it is to count.
    pub fixed: Estimate<Money>,
    /// What is paid later for what was made simply at first, if the life suits.
    pub redone: Estimate<Money>,
}

/// What a future costs. Amounts are cumulative; the first of a list is what is paid before the first month.
#[derive(Clone, Debug, PartialEq)]
pub struct Future {
    /// By month, if the life suits.
    pub suited: Vec<Money>,
    /// By month, if it does not.
    pub unsuited: Vec<Money>,
    /// By month, each weighted with its chance, rounded to the minor unit.
    pub expected: Vec<Money>,
}

/// Where two futures cost the same on average.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BreakEven {
    /// The chance that the life does not suit, in percent from 0 to 100, unrounded.
    pub unsuited_percent: Decimal,
    /// Whether the first of the two is the cheaper one where the chance is smaller.
    pub first_is_cheaper_below: bool,
}

impl BreakEven {
    /// The chance as people say it; a chance that turns something is never said to be none or certain.
    pub fn odds(self) -> Odds {
        const ALL: u32 = 1_000_000;
        Odds::of(ppm(self.unsuited_percent).clamp(1, ALL - 1), ALL)
    }
}

/// What each way costs by month.
///
/// ```
/// use kerbstead_core::money::futures::{Build, Question, Way, break_even, futures};
/// use kerbstead_core::plan::{Estimate, Money};
/// let money = |units| Estimate::Plain(Money::whole(units));
/// let question = Question {
///     months: 24, digits: 2, home_monthly: money(900), road_monthly: money(500),
///     unsuited_percent: Estimate::Plain(30.into()), finds_out_months: Estimate::Plain(3),
///     going_back: money(1_500), kept_percent: Estimate::Plain(60.into()),
/// };
/// let build = |months, removable, fixed, redone| Way::Leave(Build {
///     months: Estimate::Plain(months), removable: money(removable), fixed: money(fixed), redone: money(redone),
/// });
/// let ways = [build(1, 1_000, 200, 5_000), build(6, 3_000, 6_000, 0), Way::Stay];
/// let ahead = futures(&question, &ways);
/// // Staying: 24 times 900. Soon and suited: a month at home, 23 on the road, both builds.
/// assert_eq!(ahead[2].expected[24], Money::whole(21_600));
/// assert_eq!(ahead[0].suited[24], Money::whole(900 + 23 * 500 + 1_200 + 5_000));
/// assert!(break_even(&question, &ways[0], &ways[1]).is_none()); // here the simple build is cheaper at any chance
/// ```
pub fn futures(question: &Question, ways: &[Way]) -> Vec<Future> {
    let months = question.months.clamp(1, MOST_MONTHS);
    let of = |way: &Way| {
        let case = Case::new(question, way, 0, Held::LIKELY);
        let by_month = |suits: bool| (0..=months).map(|month| case.cost(month, suits)).collect();
        let expected = |month: u32| case.expected(month).rounded(question.digits);
        Future { suited: by_month(true), unsuited: by_month(false), expected: (0..=months).map(expected).collect() }
    };
    ways.iter().map(of).collect()
}

/// The position of the way that costs least on average at the end; the first of equal ones, none of none.
pub fn cheapest(futures: &[Future]) -> Option<usize> {
    let end = |future: &Future| future.expected.last().copied().unwrap_or_default();
    (0..futures.len()).min_by_key(|at| futures.get(*at).map(end))
}

/// The chance at which two ways cost the same on average at the end. What each costs is a line over the chance, so they
/// meet at `d / (d - e)`, with `d` the difference of their costs if the life suits and `e` if it does not. None where
/// they do not cross between 0 and 100 percent, and none where they are one line.
///
/// ```
/// # use kerbstead_core::money::futures::{Build, Question, Way, break_even};
/// # use kerbstead_core::plan::{Estimate, Money};
/// # let money = |units| Estimate::Plain(Money::whole(units));
/// let question = Question {
///     months: 12, digits: 2, home_monthly: money(800), road_monthly: money(500),
///     unsuited_percent: Estimate::Plain(0.into()), finds_out_months: Estimate::Plain(2),
///     going_back: money(0), kept_percent: Estimate::Plain(50.into()),
/// };
/// let build = Build { months: Estimate::Plain(0), removable: money(2_000), fixed: money(400), redone: money(0) };
/// // Suited: 2,400 and 12 times 500, 1,200 less than staying. Not suited: 1,400 lost, 600 saved in two months.
/// let even = break_even(&question, &Way::Leave(build), &Way::Stay).unwrap();
/// assert_eq!(even.unsuited_percent, 60.into());
/// assert!(even.first_is_cheaper_below);
/// ```
pub fn break_even(question: &Question, first: &Way, second: &Way) -> Option<BreakEven> {
    let case = |way| Case::new(question, way, 0, Held::LIKELY);
    let (first, second, end) = (case(first), case(second), question.months.clamp(1, MOST_MONTHS));
    let if_suited = first.cost(end, true) - second.cost(end, true);
    let if_not = first.cost(end, false) - second.cost(end, false);
    let share = decimal::over(if_suited.decimal(), (if_suited - if_not).decimal())?;
    let unsuited_percent = decimal::times(share, Decimal::ONE_HUNDRED)?;
    let is_within = (Decimal::ZERO..=Decimal::ONE_HUNDRED).contains(&unsuited_percent);
    is_within.then_some(BreakEven { unsuited_percent, first_is_cheaper_below: if_suited < if_not })
}

/// One way with every input at one of its values.
struct Case {
    digits: u32,
    home: Money,
    road: Money,
    unsuited_percent: Decimal,
    /// None for who stays.
    build: Option<BuildCase>,
}

struct BuildCase {
    months: u32,
    finds_out: u32,
    cost: Money,
    redone: Money,
    /// What going back home costs in that month: moving in, less the sale of what was taken out.
    returning: Money,
}

impl Case {
    /// `at` is the way's position, by which levers tell builds apart.
    fn new(question: &Question, way: &Way, at: usize, held: Held) -> Self {
        let build = |build: &Build| {
            let removable = held.of(Lever::Removable(at), &build.removable);
            let kept = removable.percent(percent(held.of(Lever::KeptPercent, &question.kept_percent)));
            BuildCase {
                months: held.of(Lever::BuildMonths(at), &build.months).min(MOST_MONTHS),
                finds_out: held.of(Lever::FindsOutMonths, &question.finds_out_months).min(MOST_MONTHS),
                cost: removable + held.of(Lever::Fixed(at), &build.fixed),
                redone: held.of(Lever::Redone(at), &build.redone),
                returning: held.of(Lever::GoingBack, &question.going_back) - kept.rounded(question.digits),
            }
        };
        Self {
            digits: question.digits,
            home: held.of(Lever::HomeMonthly, &question.home_monthly),
            road: held.of(Lever::RoadMonthly, &question.road_monthly),
            unsuited_percent: percent(held.of(Lever::UnsuitedPercent, &question.unsuited_percent)),
            build: match way {
                Way::Stay => None,
                Way::Leave(of) => Some(build(of)),
            },
        }
    }

    /// All that is paid by the end of a month.
    fn cost(&self, month: u32, suits: bool) -> Money {
        let Some(build) = &self.build else { return self.home.times(month) };
        let away = month.saturating_sub(build.months);
        let on_the_road = if suits { away } else { away.min(build.finds_out) };
        let living = self.home.times(month - on_the_road) + self.road.times(on_the_road);
        let knows = month >= build.months.saturating_add(build.finds_out);
        let then = if suits { build.redone } else { build.returning };
        living + build.spent(month, self.digits) + if knows { then } else { Money::ZERO }
    }

    /// Both cases, each with its chance, unrounded.
    fn expected(&self, month: u32) -> Money {
        let suited = Decimal::ONE_HUNDRED - self.unsuited_percent;
        self.cost(month, true).percent(suited) + self.cost(month, false).percent(self.unsuited_percent)
    }
}

impl BuildCase {
    /// What of the build is paid by the end of a month: an even share, all of it with the last month.
    fn spent(&self, month: u32, digits: u32) -> Money {
        if month >= self.months {
            return self.cost;
        }
        let share = decimal::over(self.cost.times(month).decimal(), Decimal::from(self.months));
        share.map_or(self.cost, |share| Money::new(share).rounded(digits))
    }
}

fn percent(share: Decimal) -> Decimal {
    share.clamp(Decimal::ZERO, Decimal::ONE_HUNDRED)
}
