//! The power of a run: every day's clouds, driving, sockets and uses, each as its inputs have it.

use jiff::civil::Date;

use super::answer::What;
use super::inputs::{Drawn, Inputs, Number, Range};
use super::judging::Fate;
use super::route::Route;
use crate::draws::Chance;
use crate::energy::chance::Clouds;
use crate::energy::worlds::{LANES, Lane, Today, Worlds};
use crate::plan::{Draw, Estimate, Id, Item, Path, Plan, days_between};
use crate::power::{Hanging, Rest, uncertainty};

/// The power from the first hour ahead on, ready to be run.
pub(super) struct Stores {
    worlds: Worlds,
    days: Vec<Day>,
    /// Of each draw of the setup.
    uses: Vec<Uses>,
    clouds: Option<(usize, Clouds)>,
    /// The item that each store is.
    items: Vec<Id>,
    /// Days from the first one ahead to that of the first hour.
    first_day: u32,
    first_hour: usize,
    hours: usize,
}

/// How long something lasts on a day, of what it likely does.
struct Day {
    driving: Lasting,
    /// Of the sockets of that day, so many hours come with the stay, and so many are sure.
    mains: Lasting,
    sure_mains_hours: f64,
}

/// Hours that may be a range.
#[derive(Clone, Copy)]
struct Lasting {
    hours: Number,
    likely: f64,
}

/// How much a draw is used.
struct Uses {
    factor: Number,
    /// The input and the chance of its being used at all on a day.
    often: Option<(usize, f64)>,
}

impl Stores {
    /// Of the rest of the power; `from` is the first day that is ahead.
    pub fn new(plan: &Plan, from: Date, rest: &Rest, route: &Route, inputs: &mut Inputs) -> Self {
        let setup = &rest.input.setup;
        let uses: Vec<Uses> = rest
            .input
            .draws
            .iter()
            .zip(&setup.draws)
            .map(|(hanging, draw)| of_draw(plan, hanging, draw.chance, inputs))
            .collect();
        let varies: Vec<bool> = uses.iter().map(|uses| matches!(uses.factor, Number::Ranged(_))).collect();
        let clouds = uncertainty(plan, &rest.input);
        let clouds = Clouds::new(&clouds.cloud, clouds.cloud_stays);
        let has_panels = setup.stores.iter().any(|board| board.panel_w > 0.0);
        let clouds = (has_panels && !clouds.is_certain())
            .then(|| (inputs.input(What::Clouds, 0, &|| Path::section("climate")), clouds));
        Self {
            worlds: Worlds::from_hour(setup, rest.from_hour, &varies),
            days: rest.days.iter().map(|(date, source)| day(plan, *date, *source, route, inputs)).collect(),
            uses,
            clouds,
            items: rest.input.stores.clone(),
            first_day: rest.days.first().map_or(0, |(on, _)| u32::try_from(days_between(from, *on)).unwrap_or(0)),
            first_hour: rest.from_hour % 24,
            hours: setup.hour_count().saturating_sub(rest.from_hour),
        }
    }

    /// How many hours a run has.
    pub fn hours(&self) -> usize {
        self.hours
    }

    /// What becomes of the power in eight runs.
    pub fn run(&self, drawn: &Drawn, inputs: &mut Inputs) -> [Fate; LANES] {
        let mut sky = self.clouds.as_ref().map(|(input, clouds)| Sky::new(*input, clouds, drawn, inputs));
        let mut often: Vec<Often> = self.uses.iter().map(|uses| Often::new(uses, drawn, inputs)).collect();
        let outcomes = self.worlds.run(&mut |number, today| {
            if let Some(sky) = &mut sky {
                today.cloud = sky.next_day();
            }
            if let Some(day) = self.days.get(number) {
                day.fill(drawn, today);
            }
            for (often, uses) in often.iter_mut().zip(&mut today.uses) {
                *uses = often.next_day();
            }
        });
        if let Some(sky) = sky {
            sky.note(self.days.len(), inputs);
        }
        for often in often {
            often.note(inputs);
        }
        outcomes.map(|outcome| {
            let day = |hour: usize| self.first_day + u32::try_from((hour + self.first_hour) / 24).unwrap_or(u32::MAX);
            Fate {
                fails_on: outcome.first_short_hour.map(day),
                margin: outcome.spare_wh,
                by: self.items.get(outcome.store).copied().unwrap_or(0),
            }
        })
    }
}

/// Longer than this is no day.
const MOST_HOURS: f64 = 24.0;

impl Lasting {
    fn new(hours: Number, inputs: &Inputs) -> Self {
        Self { hours, likely: sound(inputs.likely(hours)) }
    }

    fn hours(self, drawn: &Drawn, lane: usize) -> f64 {
        sound(drawn.value(self.hours, lane))
    }

    fn is_ranged(self) -> bool {
        matches!(self.hours, Number::Ranged(_)) && self.likely > 0.0
    }
}

fn sound(hours: f64) -> f64 {
    if hours > 0.0 { hours.min(MOST_HOURS) } else { 0.0 }
}

impl Day {
    fn fill(&self, drawn: &Drawn, today: &mut Today) {
        let factor = |lasting: Lasting, sure: f64| -> Lane {
            if !lasting.is_ranged() {
                return [1.0; LANES];
            }
            std::array::from_fn(|lane| (lasting.hours(drawn, lane) + sure) / (lasting.likely + sure))
        };
        today.drive = factor(self.driving, 0.0);
        today.drive_hours = today.drive;
        today.mains = factor(self.mains, self.sure_mains_hours);
    }
}

/// A day of the route. Whoever stays at a socket longer than is likely charges as if the socket gave so much more in its hours;
/// those past midnight count for the day on which they are.
fn day(plan: &Plan, date: Date, source: Option<Id>, route: &Route, inputs: &Inputs) -> Day {
    let (driving, mains) = route.hours(source);
    let in_use = plan.charging.iter().filter(|place| place.in_use && place.is_there(date, source));
    Day {
        driving: Lasting::new(driving, inputs),
        mains: Lasting::new(mains, inputs),
        sure_mains_hours: in_use.map(|place| sound(place.hours())).sum(),
    }
}

fn of_draw(plan: &Plan, hanging: &Hanging, chance: f64, inputs: &mut Inputs) -> Uses {
    let (low, high) = hanging.range;
    let path = || Path::entry("kit", hanging.item).child("draw");
    let field = || {
        let draw = plan.item(hanging.item).and_then(|item: &Item| item.draw);
        path().child(draw.as_ref().map_or("power_w", uncertain_field))
    };
    if chance <= 0.0 {
        return Uses { factor: Number::Sure(0.0), often: None };
    }
    let factor = inputs.number(What::Use, hanging.item, &field, Estimate::Range { low, likely: 1.0, high });
    let often =
        (chance < 1.0).then(|| (inputs.input(What::Often, hanging.item, &|| path().child("used_percent")), chance));
    Uses { factor, often }
}

/// The first field of a draw that is a range.
fn uncertain_field(draw: &Draw) -> &'static str {
    let is_range = |estimate: Option<Estimate<f64>>| estimate.and_then(Range::of).is_some();
    match () {
        () if is_range(Some(draw.power_w)) => "power_w",
        () if is_range(draw.hours_per_day) => "hours_per_day",
        () => "duty_percent",
    }
}

/// The clouds of eight runs, day after day.
struct Sky<'a> {
    input: usize,
    clouds: &'a Clouds,
    chances: [Chance; LANES],
    today: [Option<f64>; LANES],
    sums: Lane,
}

impl<'a> Sky<'a> {
    fn new(input: usize, clouds: &'a Clouds, drawn: &Drawn, inputs: &Inputs) -> Self {
        let chances = std::array::from_fn(|lane| inputs.chance(input, drawn.first_run + lane as u64));
        Self { input, clouds, chances, today: [None; LANES], sums: [0.0; LANES] }
    }

    fn next_day(&mut self) -> Lane {
        std::array::from_fn(|lane| {
            let cloud = self.clouds.day_after(self.today[lane], &mut self.chances[lane]);
            self.today[lane] = Some(cloud);
            self.sums[lane] += cloud;
            cloud
        })
    }

    /// Notes how bright the days were on average.
    fn note(&self, days: usize, inputs: &mut Inputs) {
        for sum in self.sums {
            inputs.note(self.input, sum / days.max(1) as f64);
        }
    }
}

/// How much a draw is used in eight runs, day after day.
struct Often {
    factor: Lane,
    /// The input, the chance of a day, what chance has for each run, and on how many days it was used.
    days: Option<(usize, f64, [Chance; LANES], Lane)>,
}

impl Often {
    fn new(uses: &Uses, drawn: &Drawn, inputs: &Inputs) -> Self {
        let chance = |input: usize, lane: usize| inputs.chance(input, drawn.first_run + lane as u64);
        let days = uses
            .often
            .map(|(input, share)| (input, share, std::array::from_fn(|lane| chance(input, lane)), [0.0; LANES]));
        Self { factor: std::array::from_fn(|lane| drawn.value(uses.factor, lane).max(0.0)), days }
    }

    fn next_day(&mut self) -> Lane {
        let Some((_, share, chances, used)) = &mut self.days else { return self.factor };
        std::array::from_fn(|lane| {
            let is_used = chances[lane].share() < *share;
            used[lane] += f64::from(u8::from(is_used));
            if is_used { self.factor[lane] } else { 0.0 }
        })
    }

    fn note(self, inputs: &mut Inputs) {
        if let Some((input, .., used)) = self.days {
            for days in used {
                inputs.note(input, days);
            }
        }
    }
}
