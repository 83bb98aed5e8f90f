//! Allowances day by day: what each day takes of them, and what becomes of the rest.
//!
//! ```
//! use kerbstead_core::signal::course::{After, Meter, course};
//! // 3 GB that begin anew on day 4; 400 MB a day.
//! let meter = Meter { allowance_mb: Some(3_000), renews_on: vec![0, 4] };
//! let gone = course(&[meter], &After::default(), &[800, 800, 800, 800, 800]);
//! assert_eq!((gone.days[3].used_mb, gone.days[3].missing_mb, gone.days[4].left_mb), (600, 200, Some(2_200)));
//! ```

/// The allowance of a contract.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meter {
    /// What a period includes, in MB; none for as much as one likes.
    pub allowance_mb: Option<u64>,
    /// The days on which a period begins, ascending, from 0.
    pub renews_on: Vec<usize>,
}

/// What comes after the allowances.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct After {
    /// What comes through slowly on a day, in MB: it costs nothing, so that it is used first.
    pub slow_mb: u64,
    /// Whether any amount can be paid for.
    pub is_paid: bool,
}

/// A day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct DayOf {
    /// What allowances give, in MB.
    pub used_mb: u64,
    /// What comes through slowly, in MB.
    pub slow_mb: u64,
    /// What is paid for, in MB.
    pub paid_mb: u64,
    /// What there is no way for, in MB.
    pub missing_mb: u64,
    /// What is left of the allowances in the evening, in MB; none for as much as one likes.
    pub left_mb: Option<u64>,
    /// Whether a period begins.
    pub renews: bool,
}

/// A period of a contract.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Period {
    /// The contract, by its place among all.
    pub meter: usize,
    /// The first day.
    pub from_day: usize,
    /// What it gave, in MB.
    pub used_mb: u64,
}

/// Days, and the periods in them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Course {
    /// Day by day.
    pub days: Vec<DayOf>,
    /// By their first day.
    pub periods: Vec<Period>,
}

/// What becomes of each day's data. What can be used without end comes first, then what begins anew soonest, since what is left
/// of it then is gone; so no other order leaves less beyond the allowances.
pub fn course(meters: &[Meter], after: &After, mb_by_day: &[u64]) -> Course {
    let mut running: Vec<Running> = meters.iter().map(Running::new).collect();
    let mut course = Course::default();
    for (day, mb) in mb_by_day.iter().enumerate() {
        let mut of = DayOf::default();
        for (at, meter) in running.iter_mut().enumerate() {
            if meter.renew(day) {
                of.renews = true;
                meter.period = course.periods.len();
                course.periods.push(Period { meter: at, from_day: day, used_mb: 0 });
            }
        }
        let mut rest_mb = *mb;
        while let Some(meter) = soonest(&mut running, rest_mb) {
            let taken_mb = meter.take(rest_mb);
            rest_mb -= taken_mb;
            if let Some(period) = course.periods.get_mut(meter.period) {
                period.used_mb = period.used_mb.saturating_add(taken_mb);
            }
        }
        of.used_mb = mb - rest_mb;
        of.slow_mb = rest_mb.min(after.slow_mb);
        let beyond_mb = rest_mb - of.slow_mb;
        (of.paid_mb, of.missing_mb) = if after.is_paid { (beyond_mb, 0) } else { (0, beyond_mb) };
        of.left_mb = running.iter().try_fold(0_u64, |sum, meter| Some(sum.saturating_add(meter.left_mb?)));
        course.days.push(of);
    }
    course
}

/// The meter to take from, of those that have something.
fn soonest<'a, 'b>(running: &'a mut [Running<'b>], wanted_mb: u64) -> Option<&'a mut Running<'b>> {
    let some = running.iter_mut().filter(|meter| wanted_mb > 0 && meter.left_mb != Some(0));
    some.min_by_key(|meter| (meter.left_mb.is_some(), meter.ends_on()))
}

/// A meter on a day.
struct Running<'a> {
    meter: &'a Meter,
    left_mb: Option<u64>,
    begun: usize,
    period: usize,
}

impl<'a> Running<'a> {
    fn new(meter: &'a Meter) -> Self {
        Self { meter, left_mb: Some(0), begun: 0, period: usize::MAX }
    }

    fn ends_on(&self) -> usize {
        self.meter.renews_on.get(self.begun).copied().unwrap_or(usize::MAX)
    }

    fn renew(&mut self, day: usize) -> bool {
        let begins = self.ends_on() == day;
        if begins {
            self.begun += 1;
            self.left_mb = self.meter.allowance_mb;
        }
        begins
    }

    fn take(&mut self, wanted_mb: u64) -> u64 {
        let Some(left_mb) = &mut self.left_mb else { return wanted_mb };
        let taken_mb = wanted_mb.min(*left_mb);
        *left_mb -= taken_mb;
        taken_mb
    }
}
