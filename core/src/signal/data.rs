//! What work and evenings take of an allowance. What a phone itself counts wins.
//!
//! ```
//! use kerbstead_core::signal::data::{TASKS, Unit, megabytes, stream_mb, total};
//! // Two hours of 1.5 Mbit/s on twenty days.
//! assert_eq!(stream_mb(1.5, 2.0 * 20.0), 27_000.0);
//! assert_eq!(megabytes(1.0, Unit::Gib), 1_073.741_824);
//! let call = TASKS.iter().find(|task| task.key == "call-standard").unwrap();
//! assert!((total(&[(*call, 10.0)]).both_mb().likely() - 8_100.0).abs() < 1e-9);
//! ```

use super::constants::{
    BITS_PER_BYTE, BYTES_PER_GB, BYTES_PER_GIB, BYTES_PER_MB, BYTES_PER_MIB, MB_PER_MBIT_S_HOUR, MOST_HOURS, MOST_MB,
    MOST_MBIT_S,
};
use super::sound;
use crate::explain::Source;
use crate::plan::{DataTask, DataUse, Estimate};

/// A unit of data. Source: IEC 80000-13.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// 10^6 bytes.
    Mb,
    /// 2^20 bytes, which many programs write as MB.
    Mib,
    /// 10^9 bytes, as contracts count.
    Gb,
    /// 2^30 bytes, which many programs write as GB.
    Gib,
}

impl Unit {
    const fn bytes(self) -> f64 {
        match self {
            Self::Mb => BYTES_PER_MB,
            Self::Mib => BYTES_PER_MIB,
            Self::Gb => BYTES_PER_GB,
            Self::Gib => BYTES_PER_GIB,
        }
    }
}

/// An amount of data in MB.
pub fn megabytes(amount: f64, unit: Unit) -> f64 {
    sound(sound(amount, MOST_MB as f64) * unit.bytes() / BYTES_PER_MB, MOST_MB as f64)
}

/// An amount in MB in another unit.
///
/// ```
/// use kerbstead_core::signal::data::{Unit, in_unit};
/// assert!((in_unit(1_000.0, Unit::Gib) - 0.931_323).abs() < 1e-6);
/// ```
pub fn in_unit(megabytes: f64, unit: Unit) -> f64 {
    sound(megabytes, MOST_MB as f64) * BYTES_PER_MB / unit.bytes()
}

/// Bits of an amount in MB.
pub fn bits(megabytes: f64) -> f64 {
    sound(megabytes, MOST_MB as f64) * BYTES_PER_MB * BITS_PER_BYTE
}

/// What a steady stream makes in some hours, in MB: rate times time, without overhead.
pub fn stream_mb(rate_mbit_s: f64, hours: f64) -> f64 {
    sound(sound(rate_mbit_s, MOST_MBIT_S) * sound(hours, MOST_HOURS) * MB_PER_MBIT_S_HOUR, MOST_MB as f64)
}

/// Something that takes data.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Task {
    /// Its name, for the catalogue; never changes.
    pub key: &'static str,
    /// Whether its data is that of an hour or of a piece.
    pub by: By,
    /// What comes in, in MB.
    pub down_mb: Estimate<f64>,
    /// What goes out, in MB.
    pub up_mb: Estimate<f64>,
    /// Whose numbers they are.
    pub source: Source,
}

/// What a task is counted by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Hours.
    Hour,
    /// Pieces: a mail, a photo, a minute of film.
    Piece,
}

/// The usual tasks, all by common practice, without a source. Calls and films by their rates: low is a small picture, standard
/// about 480 lines, high 720 to 1,080.
pub const TASKS: [Task; 16] = [
    stream("call-voice", [0.04, 0.08, 0.12], [0.04, 0.08, 0.12]),
    stream("call-low", [0.3, 0.4, 0.6], [0.3, 0.4, 0.6]),
    stream("call-standard", [0.6, 1.0, 1.5], [0.5, 0.8, 1.2]),
    stream("call-high", [1.2, 2.6, 4.0], [1.2, 1.8, 3.0]),
    stream("music", [0.1, 0.16, 0.32], NO_RATE),
    stream("film-low", [0.4, 0.7, 1.1], NO_RATE),
    stream("film-standard", [1.0, 2.0, 3.0], NO_RATE),
    stream("film-high", [3.0, 5.0, 8.0], NO_RATE),
    task("web", By::Hour, [20.0, 60.0, 150.0], [1.0, 4.0, 10.0]),
    task("maps", By::Hour, [1.0, 5.0, 20.0], [0.1, 0.5, 1.0]),
    task("shared-documents", By::Hour, [5.0, 20.0, 60.0], [2.0, 10.0, 40.0]),
    task("mail-in", By::Piece, [0.02, 0.1, 2.0], [0.0, 0.01, 0.02]),
    task("mail-out", By::Piece, [0.0, 0.01, 0.02], [0.02, 0.1, 2.0]),
    task("photo-out", By::Piece, [0.0, 0.02, 0.1], [2.0, 4.0, 10.0]),
    task("film-minute-out", By::Piece, [0.0, 1.0, 4.0], [60.0, 130.0, 400.0]),
    task("update-in", By::Piece, [50.0, 400.0, 3_000.0], [0.0, 2.0, 10.0]),
];

/// The usual figures of a kind of use; none for anything else.
pub fn usual(task: DataTask) -> Option<&'static Task> {
    TASKS.get(task as usize).filter(|_| task != DataTask::Other)
}

/// What an hour or a piece of a use takes, down and up together, in MB: as it was stated, or else as is usual for its kind.
///
/// ```
/// use kerbstead_core::plan::{DataTask, DataUse};
/// use kerbstead_core::signal::data::each_mb;
/// let call = DataUse { data_task: DataTask::CallStandard, ..DataUse::default() };
/// assert!((each_mb(&call).likely() - 810.0).abs() < 1e-9);
/// ```
pub fn each_mb(data_use: &DataUse) -> Estimate<f64> {
    let usual = || usual(data_use.data_task).map_or(Estimate::Plain(0.0), |task| total(&[(*task, 1.0)]).both_mb());
    data_use.each_mb.unwrap_or_else(usual)
}

/// The steady rate that an hour of a use needs, in kbit/s: its data over the hour. None for what is counted in pieces, which
/// comes through at any rate.
pub fn needs_kbit_s(data_use: &DataUse) -> Option<f64> {
    usual(data_use.data_task).filter(|task| task.by == By::Hour)?;
    Some(sound(each_mb(data_use).likely(), MOST_MB as f64) / MB_PER_MBIT_S_HOUR * 1_000.0)
}

/// What a use takes on one of its days, in MB: low, likely, high.
pub fn of_a_day_mb(data_use: &DataUse) -> [f64; 3] {
    let [each, amount] = [each_mb(data_use), data_use.uses_per_day].map(|value| three(value, MOST_MB as f64));
    let product = |at: usize| match (each.get(at), amount.get(at)) {
        (Some(each), Some(amount)) => sound(each * amount, MOST_MB as f64),
        _ => 0.0,
    };
    [product(0), product(1), product(2)]
}

const NO_RATE: [f64; 3] = [0.005, 0.01, 0.03];

const fn task(key: &'static str, by: By, down_mb: [f64; 3], up_mb: [f64; 3]) -> Task {
    Task { key, by, down_mb: range(down_mb), up_mb: range(up_mb), source: Source::CommonPractice }
}

/// By rates in Mbit/s; an hour of them.
const fn stream(key: &'static str, down_mbit_s: [f64; 3], up_mbit_s: [f64; 3]) -> Task {
    task(key, By::Hour, an_hour_mb(down_mbit_s), an_hour_mb(up_mbit_s))
}

const fn an_hour_mb([low, likely, high]: [f64; 3]) -> [f64; 3] {
    [low * MB_PER_MBIT_S_HOUR, likely * MB_PER_MBIT_S_HOUR, high * MB_PER_MBIT_S_HOUR]
}

/// What tasks take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Data {
    /// What comes in, in MB.
    pub down_mb: Estimate<f64>,
    /// What goes out, in MB.
    pub up_mb: Estimate<f64>,
}

impl Data {
    /// Both, which is what contracts count.
    pub fn both_mb(&self) -> Estimate<f64> {
        let of = |amount: fn(&Estimate<f64>) -> f64| amount(&self.down_mb) + amount(&self.up_mb);
        range([of(Estimate::low), of(Estimate::likely), of(Estimate::high)])
    }
}

/// What tasks take together, each for so many hours or pieces. Low is all lows together, high all highs.
pub fn total(tasks: &[(Task, f64)]) -> Data {
    let mut data = [[0.0; 3]; 2];
    for (task, times) in tasks {
        let times = sound(*times, MOST_HOURS);
        for (sums, mb) in data.iter_mut().zip([task.down_mb, task.up_mb]) {
            for (sum, mb) in sums.iter_mut().zip(three(mb, MOST_MB as f64)) {
                *sum += mb * times;
            }
        }
    }
    let [down_mb, up_mb] = data.map(range);
    Data { down_mb, up_mb }
}

const fn range([low, likely, high]: [f64; 3]) -> Estimate<f64> {
    Estimate::Range { low, likely, high }
}

/// Low, likely and high, made sound and put in order.
pub(super) fn three(value: Estimate<f64>, most: f64) -> [f64; 3] {
    let likely = sound(value.likely(), most);
    [sound(value.low(), likely), likely, sound(value.high(), most).max(likely)]
}
