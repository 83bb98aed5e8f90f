//! An hour of heat: the air with what warms with it, and the mass behind it, in closed form.
//!
//! `x' = A x + b` with x the two temperatures, A and b steady within the hour. With φ(z) = (e^z - 1 - z) / z², the mean over the
//! hour is `x + φ(A)(A x + b)`, and the end is what that mean leaves: `x + A mean + b`. So heat is conserved by construction.
//! A has two real eigenvalues, none above 0, apart from one another; φ(A) is the line through φ at both.

use super::{decay_reach, sound};

/// What takes heat.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lump {
    /// What a watt warms the air with what warms with it in an hour, in K.
    per_w: f64,
    /// What a kelvin between both warms the air and the mass in an hour, in K.
    between: Option<Between>,
}

#[derive(Clone, Copy, Debug)]
struct Between {
    air: f64,
    mass: f64,
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
        let per_w = 1.0 / sound(setup.light_wh_k, 1.0, 1e5);
        let between = setup.mass.map(|mass| {
            let to_air_w_k = sound(mass.to_air_w_k, 0.1, 1e4);
            Between { air: to_air_w_k * per_w, mass: to_air_w_k / sound(mass.holds_wh_k, 1.0, 1e5) }
        });
        Self { per_w, between }
    }

    /// Temperatures through an hour with so much heat going out a degree (`out_w_k`) and so much coming in (`pull_w`, what
    /// comes at 0 °C inside), and what each watt of a heater adds to them.
    pub fn hour(&self, from_c: Pair, out_w_k: f64, pull_w: f64) -> (Course, Course) {
        match self.between {
            Some(between) => self.both(from_c, out_w_k, pull_w, between),
            None => self.alone(from_c, out_w_k, pull_w),
        }
    }

    fn alone(&self, from_c: Pair, out_w_k: f64, pull_w: f64) -> (Course, Course) {
        let per_w = self.per_w;
        let rate = out_w_k * per_w;
        let reach = decay_reach(rate);
        let course = |from: f64, gain: f64| {
            let mean = from + reach * (gain - rate * from);
            Course { mean_c: [mean; 2], end_c: [from + gain - rate * mean; 2] }
        };
        (course(from_c[0], pull_w * per_w), course(0.0, per_w))
    }

    fn both(&self, from_c: Pair, out_w_k: f64, pull_w: f64, between: Between) -> (Course, Course) {
        let per_w = self.per_w;
        let out = out_w_k * per_w;
        let a = [[-out - between.air, between.air], [between.mass, -between.mass]];
        // The product of both decays, without the difference that would lose it.
        let (near, slope) = line(a, out * between.mass);
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
    let slope = (at_slow - at_fast) * (0.5 / apart);
    (at_slow + slope * slow, slope)
}

fn times(a: [[f64; 2]; 2], x: Pair) -> Pair {
    [a[0][0] * x[0] + a[0][1] * x[1], a[1][0] * x[0] + a[1][1] * x[1]]
}

fn sum(a: Pair, b: Pair) -> Pair {
    [a[0] + b[0], a[1] + b[1]]
}
