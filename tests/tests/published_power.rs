//! Power against published and hand-worked values, each through the whole assessment where it can be.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    clippy::disallowed_methods,
    reason = "a test stops at what it did not expect, means exact values, and works out what it expects on its own"
)]

use jiff::civil::{Date, date};
use kerbstead_core::energy::draw::{Draw as EngineDraw, Need};
use kerbstead_core::energy::run::{HourOf, run};
use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
use kerbstead_core::energy::store::{Curve, Taper, TaperOf, TaperWithin};
use kerbstead_core::energy::store::{Inverter, InverterOn, Limits, Store as Engine};
use kerbstead_core::plan::{Calendar, Draw, Item, Offer, Outlet, Plan, Stay, Store, Vehicle};
use kerbstead_core::power::Finding;
use kerbstead_core::{Assessment, Moment, Verdict, assess};

const DAY: Date = date(2027, 3, 1);

fn trip(nights: u32, kit: Vec<Item>) -> Plan {
    Plan {
        calendar: Calendar { starts_on: Some(DAY), leaves_on: Some(DAY), ..Calendar::default() },
        stays: vec![Stay { id: 900, nights, ..Stay::default() }],
        kit,
        ..Plan::default()
    }
}

fn store(store: &Store) -> Item {
    Item { id: 1, name: "Store".into(), store: Some(*store), ..Item::default() }
}

fn draw(id: u32, power_w: f64, outlet: Outlet) -> Item {
    Item { id, draw: Some(Draw { power_w: power_w.into(), outlet, ..Draw::default() }), ..Item::default() }
}

/// Hours of a store without losses of so many Wh that tapers from a share on: from a charge, with so much coming in at the
/// cells and going out of them, in W.
fn hours_of(usable_wh: f64, taper_from: f64, charge_wh: f64, (in_w, out_w): (f64, f64), hours: usize) -> Vec<HourOf> {
    let taper = Taper { from_state: taper_from, of: TaperOf::Every, within: TaperWithin::Exact };
    let store = Engine { taper, ..Engine::ideal(usable_wh) };
    let setup = Setup {
        stores: vec![OnBoard { opening_state: charge_wh / usable_wh, ..OnBoard::full(store) }],
        draws: vec![EngineDraw { power_w: out_w, need: Need::Duty(1.0), ..EngineDraw::default() }],
        hours: vec![Given { mains_w: in_w, ..Given::default() }; hours],
        cloud_by_day: Vec::new(),
    };
    run(&setup).stores[0].hours.clone()
}

/// One such hour.
fn hour_of(usable_wh: f64, taper_from: f64, charge_wh: f64, in_w: f64, out_w: f64) -> HourOf {
    hours_of(usable_wh, taper_from, charge_wh, (in_w, out_w), 1)[0]
}

fn close(found: f64, expected: f64, relative: f64) {
    assert!((found - expected).abs() <= expected.abs() * relative, "{found} is not {expected}");
}

/// `runtime-1000`: usable / (ac / efficiency + idle + dc) = 1000 / (60 / 0.88 + 9 + 12) = 11.213 h.
/// Source: energy balance by hand (computed).
const RUNTIME_H: f64 = 1_000.0 / (60.0 / 0.88 + 9.0 + 12.0);

fn runtime_store() -> Store {
    Store { usable_wh: 1_000.0, inverter_efficiency_percent: 88.0, inverter_idle_w: 9.0, ..Store::default() }
}

#[test]
fn a_steady_load_through_the_inverter_lasts_11_213_hours_hour_by_hour() {
    close(RUNTIME_H, 11.213, 1e-4);
    let inverter = Inverter {
        efficiency: Curve::flat(0.88),
        standby_w: 9.0,
        limits: Limits { continuous_w: 500.0, surge_w: 1_000.0 },
        on: InverterOn::WhileDrawing,
    };
    let steady = |power_w, outlet| EngineDraw { power_w, outlet, need: Need::Duty(1.0), ..EngineDraw::default() };
    let setup = Setup {
        stores: vec![OnBoard::full(Engine { inverter: Some(inverter), ..Engine::ideal(1_000.0) })],
        draws: vec![steady(60.0, Outlet::Ac), steady(12.0, Outlet::Dc)],
        hours: vec![Given::default(); 12],
        cloud_by_day: Vec::new(),
    };
    let out_w = 60.0 / 0.88 + 9.0 + 12.0;
    let hours = &run(&setup).stores[0].hours;
    for (number, hour) in hours[..11].iter().enumerate() {
        assert_eq!(hour.short_wh, 0.0);
        close(hour.charge_wh, 1_000.0 - out_w * (number as f64 + 1.0), 1e-9);
    }
    let last = hours[11];
    assert_eq!(last.charge_wh, 0.0);
    close(11.0 + 1.0 - last.short_wh / out_w, RUNTIME_H, 1e-6);
    close(last.taken_out_wh + last.short_wh, out_w, 1e-9);
}

#[test]
fn a_steady_load_through_the_inverter_lasts_11_213_hours_in_an_assessment() {
    let kit = vec![store(&runtime_store()), draw(2, 60.0, Outlet::Ac), draw(3, 12.0, Outlet::Dc)];
    let Assessment { power, .. } = assess(&trip(2, kit), DAY);
    assert_eq!(power.standing.verdict, Verdict::FallsShort);
    // 11.213 h after midnight: 11:12 and some seconds.
    assert_eq!(power.standing.first_short, Some(Moment { on: DAY, minute: Some(672) }));
    let report = &power.stores[0];
    close(48.0 - report.short_hours, RUNTIME_H, 1e-6);
    close(report.average_w, 60.0 / 0.88 + 9.0 + 12.0, 1e-9);
    close(report.taken_out_wh, 1_000.0, 1e-9);
    close(report.unserved_wh, 48.0 * report.average_w - 1_000.0, 1e-9);
}

/// Every load that empties a store on a full minute is said to do so on that minute, not the one before.
#[test]
fn the_minute_a_store_is_empty_is_exact() {
    for minutes in 1..1_440_u16 {
        let usable_wh = f64::from(minutes) * 0.7;
        let full = Store { usable_wh, dc_continuous_w: 100.0, ..Store::default() };
        let report = assess(&trip(2, vec![store(&full), draw(2, 42.0, Outlet::Dc)]), DAY).power;
        let stated = report.standing.first_short.unwrap();
        assert_eq!((stated.on, stated.minute), (DAY, Some(minutes)));
    }
}

/// `taper-1000`: 200 W into 1000 Wh from 20 % at constant power to the knee at 80 %, then in proportion to what is
/// missing, P = P0 (1 - s) / (1 - knee): 3.0 h to the knee, 5.3026 h to 98 %. Source: closed form of ds/dt = P(s)/E
/// (computed).
#[test]
fn charging_with_a_taper_takes_as_long_as_its_closed_form() {
    let hours = hours_of(1_000.0, 0.8, 200.0, (200.0, 0.0), 8);
    let charges: Vec<f64> = [200.0].into_iter().chain(hours.iter().map(|hour| hour.charge_wh)).collect();
    close(charges[3], 800.0, 1e-9);
    let last = charges.iter().rposition(|charge| *charge < 980.0).unwrap();
    // Within the last hour the charge nears the full one exponentially, with a time constant of one hour here.
    let into_hour = ((1_000.0 - charges[last]) / 20.0).ln();
    close(last as f64 + into_hour, 5.302_6, 0.002);
    close(into_hour + last as f64, 3.0 + 10.0_f64.ln(), 1e-9);
}

/// The same through an assessment: mains from midnight, no losses.
#[test]
fn a_store_charges_in_an_assessment_as_its_closed_form_says() {
    let empty = Store {
        usable_wh: 1_000.0,
        opening_percent: 20.0,
        taper_from_percent: 80.0,
        charge_efficiency_percent: 100.0,
        mains_input_w: 200.0,
        ..Store::default()
    };
    let mut plan = trip(1, vec![store(&empty), draw(2, 0.0, Outlet::Dc)]);
    plan.stays[0].offers = Offer { mains_hours: Some(24.0.into()), mains_from_hour: Some(0.0), ..Offer::default() };
    let report = assess(&plan, DAY).power;
    for (hour, charge) in report.stores[0].charge_wh.iter().enumerate() {
        let after = hour as f64 + 1.0;
        let expected = if after <= 3.0 { 200.0 + 200.0 * after } else { 1_000.0 - 200.0 * (3.0 - after).exp() };
        close(*charge, expected, 0.002);
        close(*charge, expected, 1e-9);
    }
}

/// 15 A x 12 V = 180 W at the very most, 80 % of it for long. Common practice, no source.
#[test]
fn a_vehicle_socket_gives_its_volts_by_the_amperes_its_fuse_bears() {
    for (fuse_a, vehicle_input_w, expected_w) in
        [(10.0, 500.0, 96.0), (15.0, 500.0, 144.0), (20.0, 500.0, 192.0), (15.0, 100.0, 100.0)]
    {
        let empty = Store {
            usable_wh: 10_000.0,
            opening_percent: 0.0,
            charge_efficiency_percent: 100.0,
            vehicle_input_w,
            ..Store::default()
        };
        let mut plan = trip(1, vec![store(&empty), draw(2, 0.0, Outlet::Dc)]);
        plan.vehicle = Vehicle { socket_volts: 12.0, socket_fuse_a: fuse_a, ..Vehicle::default() };
        plan.stays[0].drive_hours = Some(2.5.into());
        let report = assess(&plan, DAY).power;
        close(report.stores[0].put_in_wh, expected_w * 2.5, 1e-9);
    }
}

/// Source: conservation of energy. 240 W at 90 % for 3 h, with 30 W drawn at low voltage through it.
#[test]
fn what_reaches_the_cells_is_what_goes_in_less_the_losses() {
    let half = Store { usable_wh: 2_000.0, opening_percent: 50.0, mains_input_w: 240.0, ..Store::default() };
    let mut plan = trip(1, vec![store(&half), draw(2, 30.0, Outlet::Dc)]);
    plan.stays[0].offers = Offer { mains_hours: Some(3.0.into()), ..Offer::default() };
    let report = &assess(&plan, DAY).power.stores[0];
    close(report.put_in_wh, 240.0 * 0.9 * 3.0, 1e-9);
    close(report.taken_out_wh, 30.0 * 24.0, 1e-9);
    close(*report.charge_wh.last().unwrap(), 1_000.0 + 648.0 - 720.0, 1e-9);
}

/// Source: arithmetic. 45 W for 4 h at 50 % duty through 88 %, and 9 W idle for those 4 h.
#[test]
fn a_day_of_one_appliance_takes_its_watt_hours() {
    let mut kit = vec![store(&Store { usable_wh: 630.0, ..Store::default() }), draw(2, 45.0, Outlet::Ac)];
    let draw = kit[1].draw.as_mut().unwrap();
    (draw.hours_per_day, draw.duty_percent, draw.from_hour) = (Some(4.0.into()), Some(50.0.into()), Some(18.5));
    let report = &assess(&trip(1, kit), DAY).power.stores[0];
    close(report.taken_out_wh, 45.0 * 4.0 * 0.5 / 0.88 + 9.0 * 4.0, 1e-9);
    assert_eq!(report.charge_wh[17], 630.0);
    close(report.charge_wh[18], 630.0 - 0.5 * (45.0 * 0.5 / 0.88 + 9.0), 1e-9);
}

/// A store that is full passes on what is drawn from it; it neither overflows nor loses.
#[test]
fn a_full_store_stays_full_while_more_comes_in_than_goes_out() {
    for taper_from in [0.0, 0.5, 0.85, 1.0] {
        let flow = hour_of(500.0, taper_from, 500.0, 100.0, 0.0);
        assert_eq!((flow.charge_wh, flow.put_in_wh, flow.taken_out_wh), (500.0, 0.0, 0.0));
    }
    let flow = hour_of(500.0, 1.0, 500.0, 100.0, 40.0);
    assert_eq!((flow.charge_wh, flow.put_in_wh, flow.taken_out_wh, flow.short_wh), (500.0, 40.0, 40.0, 0.0));
}

/// A trickle that hardly counts changes nothing much: no rounding of it may reach the charge.
#[test]
fn a_trickle_above_the_knee_is_a_trickle() {
    for in_w in [1e-3, 1e-6, 1e-9, 1e-12, 1e-100, 1e-300, 1e-307, f64::MIN_POSITIVE, 5e-324] {
        let flow = hour_of(1_000.0, 0.85, 950.0, in_w, 60.0);
        close(flow.charge_wh, 890.0, 1e-5);
        close(flow.taken_out_wh, 60.0, 1e-12);
        assert!(flow.put_in_wh <= in_w + 1e-10, "{in_w}: {flow:?}");
        let flow = hour_of(1_000.0, 0.85, 880.0, in_w, 60.0);
        close(flow.charge_wh, 820.0, 1e-5);
    }
}

#[test]
fn a_draw_above_its_outlet_is_found_whatever_the_charge() {
    let limits = Store {
        usable_wh: 1e5,
        ac_continuous_w: 500.0,
        ac_surge_w: 1_000.0,
        dc_continuous_w: 120.0,
        ..Store::default()
    };
    let is_found = |item: Item, wanted: fn(&Finding) -> bool| {
        let power = assess(&trip(1, vec![store(&limits), item]), DAY).power;
        power.standing.findings.iter().any(wanted) && power.standing.verdict == Verdict::FallsShort
    };
    assert!(is_found(draw(2, 501.0, Outlet::Ac), |finding| matches!(finding, Finding::AboveOutlet { .. })));
    assert!(!is_found(draw(2, 500.0, Outlet::Ac), |finding| matches!(finding, Finding::AboveOutlet { .. })));
    assert!(is_found(draw(2, 121.0, Outlet::Dc), |finding| matches!(finding, Finding::AboveOutlet { .. })));
    let mut pump = draw(2, 300.0, Outlet::Ac);
    pump.draw.as_mut().unwrap().surge_w = Some(1_001.0);
    assert!(is_found(pump.clone(), |finding| matches!(finding, Finding::AboveSurge { .. })));
    pump.draw.as_mut().unwrap().surge_w = Some(1_000.0);
    assert!(!is_found(pump, |finding| matches!(finding, Finding::AboveSurge { .. })));
}
