//! An hour of heat: the air with what warms with it, and the mass behind it, in closed form.
//!
//! `x' = A x + b` with x the two temperatures, A and b steady within the hour. With φ(z) = (e^z - 1 - z) / z², the mean over the
//! hour is `x + φ(A)(A x + b)`, and the end is what that mean leaves: `x + A mean + b`. So heat is conserved by construction.
//! A has two real eigenvalues, none above 0, apart from one another; φ(A) is the line through φ at both.

use super::{decay_reach, sound};

/// What takes heat.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lump {
    light_wh_k: f64,
    mass: Option<(f64, f64)>,
}

/// Two temperatures, in °C: of the air, of the mass.
pub(super) type Pair = [f64; 2];

/// An hour's mean and end.
#[derive(Clone, Copy, Debug)]
pub(super) struct Course {
    pub mean_c: Pair,
    pub end_c: Pair,
}

impl Lump {
    pub fn new(setup: &super::setup::Setup) -> Self {
        let mass = setup.mass.map(|mass| (sound(mass.holds_wh_k, 1.0, 1e5), sound(mass.to_air_w_k, 0.1, 1e4)));
        Self { light_wh_k: sound(setup.light_wh_k, 1.0, 1e5), mass }
    }

    /// Temperatures through an hour with so much heat going out a degree (`out_w_k`) and so much coming in (`pull_w`, what
    /// comes at 0 °C inside), and what each watt of a heater adds to them.
    pub fn hour(&self, from_c: Pair, out_w_k: f64, pull_w: f64) -> (Course, Course) {
        match self.mass {
            Some((mass_wh_k, between_w_k)) => self.both(from_c, out_w_k, pull_w, mass_wh_k, between_w_k),
            None => self.alone(from_c, out_w_k, pull_w),
        }
    }

    fn alone(&self, from_c: Pair, out_w_k: f64, pull_w: f64) -> (Course, Course) {
        let (rate, per_w) = (out_w_k / self.light_wh_k, 1.0 / self.light_wh_k);
        let reach = decay_reach(rate);
        let course = |from: f64, gain: f64| {
            let mean = from + reach * (gain - rate * from);
            Course { mean_c: [mean; 2], end_c: [from + gain - rate * mean; 2] }
        };
        (course(from_c[0], pull_w * per_w), course(0.0, per_w))
    }

    fn both(&self, from_c: Pair, out_w_k: f64, pull_w: f64, mass_wh_k: f64, between_w_k: f64) -> (Course, Course) {
        let per_w = 1.0 / self.light_wh_k;
        let (to_mass, to_air) = (between_w_k * per_w, between_w_k / mass_wh_k);
        let a = [[-out_w_k * per_w - to_mass, to_mass], [to_air, -to_air]];
        // The product of both decays, without the difference that would lose it.
        let (near, slope) = line(a, out_w_k * per_w * to_air);
        let course = |from: Pair, gain: f64| {
            let rate = sum(times(a, from), [gain, 0.0]);
            let turned = times(a, rate);
            let mean: Pair = std::array::from_fn(|at| from[at] + near * rate[at] + slope * turned[at]);
            Course { mean_c: mean, end_c: sum(from, sum(times(a, mean), [gain, 0.0])) }
        };
        (course(from_c, pull_w * per_w), course([0.0; 2], per_w))
    }
}

/// φ(A) = near + slope A, from φ at both eigenvalues.
fn line(a: [[f64; 2]; 2], product: f64) -> (f64, f64) {
    let half = f64::midpoint(a[0][0], a[1][1]);
    let differ = (a[0][0] - a[1][1]) / 2.0;
    let apart = libm::sqrt(differ * differ + a[0][1] * a[1][0]);
    let fast = apart - half;
    let slow = product / fast;
    let (at_slow, at_fast) = (decay_reach(slow), decay_reach(fast));
    let slope = (at_slow - at_fast) / (2.0 * apart);
    (at_slow + slope * slow, slope)
}

fn times(a: [[f64; 2]; 2], x: Pair) -> Pair {
    [a[0][0] * x[0] + a[0][1] * x[1], a[1][0] * x[0] + a[1][1] * x[1]]
}

fn sum(a: Pair, b: Pair) -> Pair {
    [a[0] + b[0], a[1] + b[1]]
}
