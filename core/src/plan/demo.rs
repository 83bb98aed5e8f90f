//! The demo plan: invented people, things, places and prices.

use jiff::civil::Date;

use super::Plan;

/// The demo plan of 2027.
pub fn demo_plan() -> Plan {
    Plan::default()
}

/// The demo plan of the first year whose preparations begin after `today`.
pub fn demo_plan_after(_today: Date) -> Plan {
    demo_plan()
}
