//! What other pages can call: the same core, without the app. `kerbstead.js` in the bundle exports all of it.

use jiff::civil::Date;
use kerbstead_core::plan::{self, Document, Opened, Plain};
use kerbstead_core::tree;
use wasm_bindgen::prelude::*;

use crate::{browser, json};

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
/** A plan as in its file: every field is optional. `plan.schema.json` beside this module describes all of them. */
export interface Plan { schema_version?: number; title?: string; currency?: string; people?: number; [section: string]: unknown }
/** Whether a balance holds. */
export type Verdict = "unknown" | "falls_short" | "tight" | "holds";
/** A day as YEAR-MONTH-DAY, and the minute of it (0 to 1439) where it is known. */
export interface Moment { on: string; minute?: number }
/** How much is to spare, in the balance's own unit; missing if negative. */
export type Margin = { money: string } | { hours: number } | { days: number } | { early: number } | { width: number } | { mass: number } | { warmer: number } | { data: number };
/** What a balance comes to. Findings and workings are data; `kind` names them. */
export interface Standing {
  verdict: Verdict;
  margin?: Margin;
  first_short?: Moment;
  missing?: string[];
  findings: { kind: string; [figure: string]: unknown }[];
  cautions: string[];
  working: { formula: string; figures: Record<string, unknown>; source: unknown }[];
}
/** What a plan comes to on one day. Amounts of money are decimal texts, never numbers. */
export interface Assessment {
  as_of: string;
  starts_on: string;
  leaves_on?: string;
  ends_on: string;
  money: { standing: Standing; days: { on: string; opening: string; inflow: string; outflow: string; closing: string; corrected: string }[]; [more: string]: unknown };
  power: { standing: Standing; from?: string; stores: { item: number; usable_wh: number; charge_wh: number[]; [more: string]: unknown }[] };
  water: { standing: Standing; days: { on: string; fresh_l: number; grey_l: number; [more: string]: unknown }[]; [more: string]: unknown };
  space: { standing: Standing; ways: { passes: boolean; widest_mm: number; [more: string]: unknown }[]; [more: string]: unknown };
  load: { standing: Standing; days: { on?: string; total_kg: number; [more: string]: unknown }[]; [more: string]: unknown };
  warmth: { standing: Standing; [more: string]: unknown };
  signal: { standing: Standing; [more: string]: unknown };
  days: { standing: Standing; finish?: Moment; tasks: { task: number; state: string; starts?: Moment; ends?: Moment; [more: string]: unknown }[]; [more: string]: unknown };
}
/** Something in a plan that cannot be used as it stands, and where. */
export interface Problem { path: string; wrong: { kind: string; [detail: string]: unknown } }
"#;

#[wasm_bindgen]
extern "C" {
    /// A plan, as JavaScript has it.
    #[wasm_bindgen(typescript_type = "Plan")]
    pub type JsPlan;
    /// An assessment, as JavaScript has it.
    #[wasm_bindgen(typescript_type = "Assessment")]
    pub type JsAssessment;
    /// Problems, as JavaScript has them.
    #[wasm_bindgen(typescript_type = "Problem[]")]
    pub type JsProblems;
}

/// Assesses a plan as it stands on a day (YEAR-MONTH-DAY), or today. Throws when `plan` is not an object or the day is
/// not a date.
#[wasm_bindgen]
pub fn assess(plan: JsPlan, as_of: Option<String>) -> Result<JsAssessment, JsError> {
    let opened = open(plan)?;
    Ok(json::to_js(&tree(&kerbstead_core::assess(&opened.plan, day(as_of)?))).unchecked_into())
}

/// Everything that is wrong with a plan, each with its path; empty when it is sound. Throws when it is not an object.
#[wasm_bindgen]
pub fn validate(plan: JsPlan) -> Result<JsProblems, JsError> {
    Ok(json::to_js(&tree(&open(plan)?.problems)).unchecked_into())
}

/// The invented example: the demo plan of the next season that begins after a day (YEAR-MONTH-DAY), or after today.
#[wasm_bindgen]
pub fn demo_plan(after: Option<String>) -> Result<JsPlan, JsError> {
    Ok(json::to_js(&plan::demo_plan_after(day(after)?).to_plain()).unchecked_into())
}

/// A number, as hexadecimal text, that is the same for the same plan and day on every machine: compare it to see that
/// two builds compute alike.
#[wasm_bindgen]
pub fn assessment_digest(plan: JsPlan, as_of: String) -> Result<String, JsError> {
    let opened = open(plan)?;
    let digest = kerbstead_core::assess(&opened.plan, day(Some(as_of))?).digest();
    Ok(format!("{digest:016x}"))
}

fn open(plan: JsPlan) -> Result<Opened, JsError> {
    let plan: JsValue = plan.into();
    let opened = json::from_js(&plan).and_then(|value| Document::from_value(value).ok());
    opened.ok_or_else(|| JsError::new("a plan is an object"))
}

fn day(text: Option<String>) -> Result<Date, JsError> {
    let Some(text) = text else { return Ok(browser::today()) };
    plan::read_date(&text).ok_or_else(|| JsError::new("a day is written YEAR-MONTH-DAY"))
}
