//! Changes that may mend the warmth, the damp and the air.

use super::constants::{LEAST_ASLEEP_C, TIGHT_K};
use super::input::has_electric_heater;
use crate::energy::within;
use crate::moves::{Change, Found};
use crate::plan::{Cab, Edit, Item, Path, Plain};

/// What is left open at night where nothing is, in cm²; otherwise twice as much is tried. Common practice, no source: a roof vent
/// ajar and a window on its latch.
const OPENING_CM2: f64 = 250.0;

/// Adds the changes that may mend it: the cab divided off by a curtain, a heater that is left on at night, more left open.
pub fn moves(found: &mut Found) {
    let shell = &found.plan.shell;
    let field = |name: &str| Path::section("shell").child(name);
    let by_pipe = |item: &Item| item.burner.is_some_and(|burner| burner.keeps_warm && burner.vents_out);
    let heats = found.plan.carried().any(by_pipe) || has_electric_heater(found.plan);
    let least_c = within(shell.least_asleep_c.unwrap_or(LEAST_ASLEEP_C) + TIGHT_K, -20.0, 35.0);
    if heats && shell.wanted_asleep_c.is_none_or(|wanted_c| wanted_c < least_c) {
        found.add(Change::HeatAtNight, 0, Edit::set(field("wanted_asleep_c"), least_c));
    }
    if shell.cab.unwrap_or_default() == Cab::Open {
        found.add(Change::CloseCab, 0, Edit::set(field("cab"), Cab::Curtain.to_plain()));
    }
    let open_cm2 = within(2.0 * shell.vent_cm2.unwrap_or(0.0), OPENING_CM2, 20_000.0);
    found.add(Change::OpenMore, 0, Edit::set(field("vent_cm2"), open_cm2));
}
