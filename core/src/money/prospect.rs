//! What may become of the money: the chance that the floor holds, the average beside the likely end, and the reserve.

use jiff::civil::Date;
use serde_json::Value;

use super::chance::{Chances, Runs};
use super::outlook::{Ahead, NotAhead, ahead};
use super::reserve::KeptApart;
use crate::plan::record::record;
use crate::plan::{Money, Plain, Plan};
use crate::task::Task;

/// So many courses are drawn: they place a chance within one percent, 19 times in 20.
const PATHS: u32 = 10_000;
/// So many at a time: with a few hundred uncertain flows, some milliseconds on a phone.
const PATHS_A_STEP: u32 = 100;

/// What may become of the money from the day asked on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prospect {
    /// Why there is none. All that follows is empty then.
    pub refused: Option<NotAhead>,
    /// The first day.
    pub from: Date,
    /// The last day.
    pub until: Date,
    /// How many flows are uncertain.
    pub uncertain: u32,
    /// How many courses were drawn.
    pub paths: u32,
    /// In how many of them the cash never fell below the floor.
    pub kept: u32,
    /// The cash at the end if all goes as is likely.
    pub likely_end: Money,
    /// The cash at the end on average: exact, but nobody ever gets an average.
    pub expected_end: Money,
    /// Less than that is there at the end in one of ten courses.
    pub low_end: Money,
    /// More than that is there at the end in one of ten courses.
    pub high_end: Money,
    /// In one of ten courses the lowest evening has less than that.
    pub low_lowest: Money,
    /// For drawing: less than that is there in one of ten courses, day by day.
    pub low: Vec<f64>,
    /// For drawing: more than that is there in one of ten courses, day by day.
    pub high: Vec<f64>,
    /// What is to be kept apart.
    pub reserve: KeptApart,
}

record!(Prospect {
    refused,
    from,
    until,
    uncertain,
    paths,
    kept,
    likely_end,
    expected_end,
    low_end,
    high_end,
    low_lowest,
    low,
    high,
    reserve,
});

/// A chance as people say it. No decimals: so many courses do not know the chance better, and the ranges behind them were
/// guessed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Odds {
    /// In none of the courses.
    Never,
    /// In fewer than one of a hundred.
    AlmostNever,
    /// In about so many of ten, or of a hundred where ten are too coarse.
    About {
        /// So many.
        count: u32,
        /// Of so many.
        of: u32,
    },
    /// In more than 99 of a hundred.
    AlmostAlways,
    /// In all of the courses.
    Always,
}

impl Odds {
    /// So many courses of so many.
    ///
    /// ```
    /// use kerbstead_core::money::Odds;
    /// assert_eq!(Odds::of(8_930, 10_000), Odds::About { count: 9, of: 10 });
    /// assert_eq!(Odds::of(9_730, 10_000), Odds::About { count: 97, of: 100 });
    /// assert_eq!([Odds::of(9_999, 10_000), Odds::of(0, 10_000)], [Odds::AlmostAlways, Odds::Never]);
    /// ```
    pub fn of(kept: u32, paths: u32) -> Self {
        let share = |of: u32| {
            let of = u64::from(of);
            // At most `of`.
            u32::try_from((u64::from(kept) * of + u64::from(paths) / 2).checked_div(paths.into()).unwrap_or(0))
                .unwrap_or(0)
        };
        match share(1_000) {
            _ if kept == 0 => Self::Never,
            _ if kept >= paths => Self::Always,
            0..10 => Self::AlmostNever,
            991.. => Self::AlmostAlways,
            50..=950 => Self::About { count: share(10).clamp(1, 9), of: 10 },
            _ => Self::About { count: share(100), of: 100 },
        }
    }
}

/// A [`Prospect`] being worked out.
pub struct ProspectTask {
    under_way: Result<(Ahead, Runs), NotAhead>,
    plan: Plan,
    seed: u32,
}

impl ProspectTask {
    /// Begins.
    pub fn new(plan: &Plan, as_of: Date, seed: u32) -> Self {
        let begin = || {
            let ahead = ahead(plan, as_of)?;
            let runs = Runs::new(&ahead.outlook, seed.into(), PATHS)?;
            Ok((ahead, runs))
        };
        Self { under_way: begin(), plan: plan.clone(), seed }
    }

    /// What came of it so far.
    pub fn prospect(&self) -> Prospect {
        match &self.under_way {
            Ok((ahead, runs)) => self.prospect_of(ahead, &runs.chances()),
            Err(refused) => Err(*refused),
        }
        .unwrap_or_else(|refused| Prospect { refused: Some(refused), ..Prospect::default() })
    }

    fn prospect_of(&self, ahead: &Ahead, chances: &Chances) -> Result<Prospect, NotAhead> {
        let money = |minor: i64| Money::from_minor(minor, ahead.digits);
        let last = ahead.days.last().ok_or(NotAhead::Over)?;
        let expected = ahead.outlook.expected_by_day()?;
        Ok(Prospect {
            refused: None,
            from: ahead.from,
            until: last.on,
            // At most ten thousand.
            uncertain: u32::try_from(ahead.outlook.uncertain.len()).unwrap_or(u32::MAX),
            paths: chances.paths,
            kept: chances.kept,
            likely_end: last.closing,
            expected_end: money(expected.last().copied().unwrap_or(0)),
            low_end: money(chances.end.percentile(10)),
            high_end: money(chances.end.percentile(90)),
            low_lowest: money(chances.lowest.percentile(10)),
            low: chances.band.iter().map(|day| money(day.low).to_plot()).collect(),
            high: chances.band.iter().map(|day| money(day.high).to_plot()).collect(),
            reserve: KeptApart::new(&self.plan, ahead, self.seed)?,
        })
    }
}

impl Task for ProspectTask {
    fn step(&mut self) -> f64 {
        let Ok((_, runs)) = &mut self.under_way else { return 1.0 };
        f64::from(PATHS - runs.step(PATHS_A_STEP)) / f64::from(PATHS)
    }

    fn answer(&self) -> Value {
        self.prospect().to_plain()
    }
}
