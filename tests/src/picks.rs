//! The choices that `tests/reference/picks.py` made.

use kerbstead_core::moves::pick::Choice;
use serde_json::Value;

/// A choice with the least cost that a solver has proven; none where there is no set.
pub struct Case {
    /// What it is like.
    pub name: String,
    /// The choice.
    pub choice: Choice,
    /// The least cost.
    pub cost: Option<u64>,
}

/// All of them.
pub fn cases() -> Vec<Case> {
    let whole: Value = serde_json::from_str(include_str!("../data/picks.json")).unwrap_or_default();
    list(&whole["cases"]).map(case).collect()
}

fn case(value: &Value) -> Case {
    let costs: Vec<u64> = list(&value["costs"]).filter_map(Value::as_u64).collect();
    let row = |pairs: &Value| {
        let mut row = vec![0; costs.len()];
        for pair in list(pairs) {
            row[index(&pair[0])] = pair[1].as_i64().unwrap_or_default();
        }
        row
    };
    let sets = |name: &str| list(&value[name]).map(|set| list(set).map(index).collect()).collect();
    Case {
        name: value["name"].as_str().unwrap_or_default().to_owned(),
        choice: Choice {
            effects: list(&value["effects"]).map(row).collect(),
            needs: list(&value["needs"]).filter_map(Value::as_i64).collect(),
            groups: sets("groups"),
            refused: sets("refused"),
            costs,
        },
        cost: value["cost"].as_u64(),
    }
}

fn list(value: &Value) -> impl Iterator<Item = &Value> {
    value.as_array().into_iter().flatten()
}

fn index(value: &Value) -> usize {
    value.as_u64().and_then(|at| usize::try_from(at).ok()).unwrap_or_default()
}
