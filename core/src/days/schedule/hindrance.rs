//! What keeps activities from being placed.

use super::Workload;
use super::ground::Ground;

/// Why an activity is not placed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Hindrance {
    /// It comes after itself, by way of these: each comes after the one before it, the first after the last.
    Circle(Vec<usize>),
    /// At no time could it be done, whatever else there is.
    NeverOpen {
        /// The activity.
        activity: usize,
        /// What it lacks.
        lacks: Lack,
    },
    /// It could be done, but not by the last slot, after what it comes after and beside what is placed.
    BeyondHorizon {
        /// The activity.
        activity: usize,
    },
    /// It comes after one that is not placed.
    Behind {
        /// The activity.
        activity: usize,
        /// The one that is not placed.
        of: usize,
    },
}

/// What an activity never has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lack {
    /// This calendar is never open.
    Calendar(usize),
    /// There is never so much of this resource.
    Resource(usize),
    /// Its calendars and resources are never open together.
    Together,
    /// It is open at times, but never for so many slots: in one go, or in all.
    Length,
}

/// A circle among what comes after what: each comes after the one before it, the first after the last. None when every
/// activity can have its turn.
///
/// ```
/// use kerbstead_core::days::schedule::{Activity, Workload, circle};
/// let after = |of| Activity { after: vec![(of, 0)], ..Activity::default() };
/// let workload = Workload { activities: vec![after(2), after(0), after(1), after(0)], ..Workload::default() };
/// assert_eq!(circle(&workload), Some(vec![0, 1, 2]));
/// ```
pub fn circle(workload: &Workload) -> Option<Vec<usize>> {
    let mut hindered = Ground::new(workload).hindered.into_iter().flatten();
    hindered.find_map(|hindrance| if let Hindrance::Circle(circle) = hindrance { Some(circle) } else { None })
}

/// What hinders those that are missing in a topological order: a circle, or one that is missing too.
pub(super) fn behind_circles(after: &[Vec<(usize, usize)>], order: &[usize]) -> Vec<Option<Hindrance>> {
    let mut missing = vec![true; after.len()];
    for at in order {
        missing[*at] = false;
    }
    // Each missing one comes after another missing one. Going back from one to the other ends in a circle.
    let back: Vec<usize> = after.iter().map(|arcs| first_missing(arcs, &missing)).collect();
    let mut hindered: Vec<Option<Hindrance>> = vec![None; after.len()];
    let mut seen_from = vec![usize::MAX; after.len()];
    for from in 0..after.len() {
        let mut at = from;
        while missing[at] && seen_from[at] == usize::MAX {
            seen_from[at] = from;
            hindered[at] = Some(Hindrance::Behind { activity: at, of: back[at] });
            at = back[at];
        }
        if missing[at] && seen_from[at] == from && !matches!(hindered[at], Some(Hindrance::Circle(_))) {
            tell_circle(&mut hindered, &back, at);
        }
    }
    hindered
}

fn first_missing(arcs: &[(usize, usize)], missing: &[bool]) -> usize {
    arcs.iter().map(|(of, _)| *of).find(|of| missing[*of]).unwrap_or(0)
}

/// The circle that begins with its first activity, told of each of its activities.
fn tell_circle(hindered: &mut [Option<Hindrance>], back: &[usize], at: usize) {
    let mut circle = vec![at];
    while back[circle[circle.len() - 1]] != at {
        circle.push(back[circle[circle.len() - 1]]);
    }
    circle.reverse();
    let first = circle.iter().enumerate().min_by_key(|(_, at)| **at).map_or(0, |(place, _)| place);
    circle.rotate_left(first);
    for at in &circle {
        hindered[*at] = Some(Hindrance::Circle(circle.clone()));
    }
}

/// What an activity lacks that is never open for as long as it takes.
pub(super) fn lack(workload: &Workload, ground: &Ground, at: usize) -> Hindrance {
    let activity = &workload.activities[at];
    let calendar = activity.calendars.iter().copied().find(|calendar| {
        let known = workload.calendars.get(*calendar);
        known.is_some_and(|open| !open.iter().take(ground.slots).any(|open| *open))
    });
    let lanes = ground.acts[at].lanes.iter();
    let lane = lanes.copied().find(|lane| ground.fits[lane * ground.words..][..ground.words].iter().all(|it| *it == 0));
    let lacks = match (calendar, lane) {
        (Some(calendar), _) => Lack::Calendar(calendar),
        (None, Some(lane)) => Lack::Resource(ground.lanes[lane].resource),
        (None, None) if ground.open_before(&ground.acts[at], ground.slots) > 0 => Lack::Length,
        (None, None) => Lack::Together,
    };
    Hindrance::NeverOpen { activity: at, lacks }
}

/// Why each activity that has no place is not placed.
pub(super) fn told(ground: &Ground, is_placed: impl Fn(usize) -> bool) -> Vec<(usize, Hindrance)> {
    let mut told = Vec::new();
    for at in (0..ground.acts.len()).filter(|at| !is_placed(*at)) {
        let behind = ground.after[at].iter().map(|(of, _)| *of).find(|of| !is_placed(*of));
        let hindrance = match (&ground.hindered[at], behind) {
            (Some(known), _) => known.clone(),
            (None, Some(of)) => Hindrance::Behind { activity: at, of },
            (None, None) => Hindrance::BeyondHorizon { activity: at },
        };
        told.push((at, hindrance));
    }
    told
}
