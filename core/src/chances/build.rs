//! The work of a run until the day of leaving: each task as long as its input has it, on the days that are dry.

use super::answer::What;
use super::inputs::{Drawn, Inputs};
use super::judging::Fate;
use crate::days::constants::{DRY_PERCENT, SLOTS_PER_HOUR};
use crate::days::schedule::{Durations, Placing, drawn_duration};
use crate::days::{DRY, SLOTS_PER_DAY, Work};
use crate::plan::{Estimate, Path, Plan};

/// The work that must be done before leaving, ready to be placed.
pub(super) struct Build {
    placing: Placing,
    durations: Vec<Duration>,
    /// The input, the chance that a day is dry, and how many days there are until leaving.
    dry: Option<(usize, f64, usize)>,
    /// The slot by which all must be done; nothing when something finds no place even in the likely run.
    leaves_slot: Option<usize>,
    slots: usize,
}

/// How many slots a task takes.
enum Duration {
    Sure(f64),
    Drawn(usize, Durations),
}

impl Build {
    pub fn new(plan: &Plan, work: &Work, inputs: &mut Inputs) -> Self {
        let input = &work.input;
        let duration = |(at, hours): (usize, &Estimate<f64>), inputs: &mut Inputs| {
            let of = |hours: f64| hours * f64::from(SLOTS_PER_HOUR);
            let range = Durations { low: of(hours.low()), likely: of(hours.likely()), high: of(hours.high()) };
            let task = work.task_of(plan, at).filter(|_| range.low < range.high);
            match task {
                Some(task) => {
                    let path = || Path::entry("tasks", task.id).child("hours");
                    Duration::Drawn(inputs.input(What::TaskHours, task.id, &path), range)
                }
                None => Duration::Sure(work.workload.activities.get(at).map_or(0.0, |of| f64::from(of.work_slots))),
            }
        };
        let leaves_slot = plan.calendar.leaves_on.map_or(0, |on| input.slot_of(on));
        let percent = plan.building.dry_percent.unwrap_or(DRY_PERCENT).clamp(0.0, 100.0);
        let is_outside = work.workload.activities.iter().any(|activity| activity.calendars.contains(&DRY));
        let dry = (is_outside && percent < 100.0).then(|| {
            let input = inputs.input(What::DryDays, 0, &|| Path::section("building").child("dry_percent"));
            (input, percent / 100.0, leaves_slot / SLOTS_PER_DAY)
        });
        Self {
            placing: Placing::new(&work.workload, &work.schedule, &[DRY], SLOTS_PER_DAY),
            durations: input.hours.iter().take(input.musts).enumerate().map(|one| duration(one, inputs)).collect(),
            dry,
            leaves_slot: work.finish_slot().map(|_| leaves_slot),
            slots: work.workload.slots,
        }
    }

    /// What a run takes, in the words of slots that are looked at.
    pub fn effort(&self) -> usize {
        self.placing.effort()
    }

    /// Whether the work is done in a run of eight before the day on which the van `leaves`.
    pub fn run(&mut self, drawn: &Drawn, lane: usize, leaves: u32, inputs: &mut Inputs) -> Fate {
        let run = drawn.first_run + lane as u64;
        if let Some((input, share, until)) = self.dry {
            let (mut chance, mut dry) = (inputs.chance(input, run), 0.0);
            self.placing.close_days(&mut |day| {
                let is_dry = chance.share() < share;
                dry += f64::from(u8::from(is_dry && day < until));
                !is_dry
            });
            inputs.note(input, dry);
        }
        let mut slots = Vec::with_capacity(self.durations.len());
        for duration in &self.durations {
            slots.push(match duration {
                Duration::Sure(slots) => *slots,
                Duration::Drawn(input, range) => {
                    let slots = drawn_duration(*range, &mut inputs.chance(*input, run));
                    inputs.note(*input, slots);
                    slots
                }
            });
        }
        let Some(leaves_slot) = self.leaves_slot else { return Fate::unhurt() };
        let finish = self.placing.place(&mut |at| slots.get(at).copied().unwrap_or(0.0)).unwrap_or(self.slots + 1);
        Fate { fails_on: (finish > leaves_slot).then_some(leaves), margin: leaves_slot as f64 - finish as f64, by: 0 }
    }
}
