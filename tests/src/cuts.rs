//! The boards to be cut that `tests/reference/cuts.py` made.

use kerbstead_core::materials::cutting::{Board, CutJob, Piece};
use kerbstead_core::plan::Money;
use serde_json::Value;

/// A job with the least cost that a solver has proven.
pub struct Case {
    /// What it is like.
    pub name: String,
    /// The job.
    pub job: CutJob,
    /// The least cost, whole.
    pub cost: i64,
}

/// All of them.
pub fn cases() -> Vec<Case> {
    let whole: Value = serde_json::from_str(include_str!("../data/cuts.json")).unwrap_or_default();
    list(&whole["cases"]).map(case).collect()
}

fn case(value: &Value) -> Case {
    let number = |value: &Value| value.as_f64().unwrap_or_default();
    let count = |value: &Value| value.as_u64().and_then(|count| u32::try_from(count).ok());
    let board = |entry: &Value| Board {
        length_mm: number(&entry[0]),
        price: Money::whole(entry[1].as_i64().unwrap_or_default()),
        available: count(&entry[2]),
        defects_mm: Vec::new(),
    };
    let piece = |entry: &Value| Piece { length_mm: number(&entry[0]), count: count(&entry[1]).unwrap_or_default() };
    Case {
        name: value["name"].as_str().unwrap_or_default().to_owned(),
        job: CutJob {
            pieces: list(&value["pieces"]).map(piece).collect(),
            boards: list(&value["boards"]).map(board).collect(),
            kerf_mm: number(&value["kerf"]),
            ..CutJob::default()
        },
        cost: value["cost"].as_i64().unwrap_or_default(),
    }
}

fn list(value: &Value) -> impl Iterator<Item = &Value> {
    value.as_array().into_iter().flatten()
}
