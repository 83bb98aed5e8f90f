//! Masses and their moments: what each axle and each side bears. Statics, nothing to cite.

use jiff::civil::Date;
use serde::Serialize;

use crate::space::constants::MOST_MM;

/// Masses taken together: how much they are, and their moments about the middle of the front axle.
///
/// ```
/// use kerbstead_core::load::Weight;
/// // A hundred kilograms, a third of the way from the front axle to the rear axle.
/// let (front_kg, rear_kg) = Weight::at(100.0, 1_200.0, 0.0).axles_kg(3_600.0).unwrap();
/// assert!((front_kg - 66.667).abs() < 0.001 && (rear_kg - 33.333).abs() < 0.001);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Weight {
    /// Kilograms in all.
    pub kg: f64,
    /// The sum of masses times their distances behind the front axle, in kg mm.
    pub behind_kg_mm: f64,
    /// The sum of masses times their distances to the right of the middle, in kg mm.
    pub right_kg_mm: f64,
}

impl Weight {
    /// A mass at a place: so far behind the front axle, so far to the right of the middle. Less than nothing is before and
    /// to the left.
    pub fn at(kg: f64, behind_mm: f64, right_mm: f64) -> Self {
        Self { kg, behind_kg_mm: kg * behind_mm, right_kg_mm: kg * right_mm }
    }

    /// Both together.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self {
            kg: self.kg + other.kg,
            behind_kg_mm: self.behind_kg_mm + other.behind_kg_mm,
            right_kg_mm: self.right_kg_mm + other.right_kg_mm,
        }
    }

    /// So many times as much at the same place.
    #[must_use]
    pub fn times(self, times: f64) -> Self {
        Self { kg: self.kg * times, behind_kg_mm: self.behind_kg_mm * times, right_kg_mm: self.right_kg_mm * times }
    }

    /// What the front axle and the rear axle bear, by moments about the front axle. What lies behind the rear axle lifts
    /// the front. Nothing without a wheelbase.
    pub fn axles_kg(&self, wheelbase_mm: f64) -> Option<(f64, f64)> {
        let rear = is_length(wheelbase_mm).then(|| self.behind_kg_mm / wheelbase_mm)?;
        Some((self.kg - rear, rear))
    }

    /// What the left and the right wheels bear, by moments about the left ones. Nothing without a track.
    ///
    /// ```
    /// use kerbstead_core::load::Weight;
    /// assert_eq!(Weight::at(100.0, 0.0, -425.0).sides_kg(1_700.0), Some((75.0, 25.0)));
    /// ```
    pub fn sides_kg(&self, track_mm: f64) -> Option<(f64, f64)> {
        let right = is_length(track_mm).then(|| self.kg / 2.0 + self.right_kg_mm / track_mm)?;
        Some((self.kg - right, right))
    }
}

/// Whether a distance between wheels is one that can be reckoned with.
pub(super) fn is_length(mm: f64) -> bool {
    (1.0..=f64::from(MOST_MM)).contains(&mm)
}

/// What the van weighs on one day, at the moment of it when it weighs most.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LoadDay {
    /// The day; without one, it is with all tanks full.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "crate::plan::civil::optional::serialize")]
    pub on: Option<Date>,
    /// With everything in it.
    pub total_kg: f64,
    /// Of it, water, fresh and used.
    pub water_kg: f64,
    /// What the front axle bears.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub front_kg: Option<f64>,
    /// What the rear axle bears.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rear_kg: Option<f64>,
    /// What the left wheels bear.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_kg: Option<f64>,
    /// What the right wheels bear.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right_kg: Option<f64>,
}

impl LoadDay {
    /// What of the whole the front axle bears, in percent.
    pub fn front_percent(&self) -> Option<f64> {
        part_percent(self.front_kg?, self.total_kg)
    }

    /// By how much the heavier side is heavier than the other, in percent of the whole.
    pub fn sides_percent(&self) -> Option<f64> {
        part_percent((self.left_kg? - self.right_kg?).abs(), self.total_kg)
    }
}

fn part_percent(part_kg: f64, total_kg: f64) -> Option<f64> {
    // Of next to nothing, parts say nothing.
    (total_kg >= 1.0).then(|| part_kg / total_kg * 100.0)
}
