//! Warmth, damp and air of a plan: what moves them, and what is said of it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::{Date, date};
use kerbstead_core::plan::{
    Burner, BurnerFuel, Cab, Calendar, Climate, Colour, Covers, Draw, DrawDays, Estimate, Fan, Group, Item, Layer,
    Like, List, Material, Obtain, Outlet, Plan, Shell, Stay, Store, Tank, Works, validate,
};
use kerbstead_core::warmth::answers::Answers;
use kerbstead_core::warmth::constants::STEEL;
use kerbstead_core::warmth::shell::usual;
use kerbstead_core::warmth::{Finding, Report};
use kerbstead_core::{Assessment, Caution, Say, Verdict, assess};

const DAY: Date = date(2027, 1, 10);

fn cold() -> Climate {
    Climate { low_c: Some(-4.0), high_c: Some(4.0), ..Climate::default() }
}

fn trip(nights: u32, climate: Climate, kit: Vec<Item>) -> Plan {
    Plan {
        people: 2,
        calendar: Calendar { leaves_on: Some(DAY), ..Calendar::default() },
        stays: vec![Stay { id: 900, nights, ..Stay::default() }],
        climate,
        kit,
        ..Plan::default()
    }
}

fn warmth(plan: &Plan) -> Report {
    assess(plan, DAY).warmth
}

fn coldest_c(plan: &Plan) -> f64 {
    let report = warmth(plan);
    report.hours[report.coldest.unwrap()].inside_c
}

fn says(report: &Report, key: &str) -> bool {
    report.standing.findings.iter().any(|finding| finding.key() == key)
}

fn layer(id: u32, covers: Covers, material: Material, thick_mm: f64) -> Layer {
    Layer { id, name: format!("Layer {id}"), covers, material, thick_mm: Some(thick_mm), ..Layer::default() }
}

fn store(id: u32, usable_wh: f64) -> Item {
    let store = Store { usable_wh, opening_percent: 100.0, ..Store::default() };
    Item { id, name: "Store".into(), obtain: Obtain::Owned, store: Some(store), ..Item::default() }
}

fn with_layers(layers: Vec<Layer>) -> Plan {
    Plan { layers, ..trip(3, cold(), vec![]) }
}

#[test]
fn without_a_climate_nothing_is_said_but_what_is_missing() {
    let report = warmth(&trip(3, Climate::default(), vec![]));
    assert_eq!(report.standing.verdict, Verdict::Unknown);
    assert_eq!(report.standing.missing[0].as_str(), "climate/like");
    assert!(report.hours.is_empty());
    let like = Climate { like: Some(Like::LongWinters), ..Climate::default() };
    assert_ne!(warmth(&trip(3, like, vec![])).standing.verdict, Verdict::Unknown);
}

#[test]
fn a_bare_van_in_frost_is_too_cold_and_wet() {
    let report = warmth(&trip(3, cold(), vec![]));
    assert_eq!(report.standing.verdict, Verdict::FallsShort);
    assert!(says(&report, "warmth-too-cold") && says(&report, "warmth-gets-wet"));
    assert!(report.standing.first_short.is_some());
    let nights = report.standing.findings.iter().find_map(|finding| match finding {
        Finding::TooCold { nights, .. } => Some(*nights),
        _ => None,
    });
    assert_eq!(nights, Some(3));
    assert!(report.standing.cautions.contains(&Caution::ColdInside));
}

#[test]
fn the_outside_is_warmest_at_three_in_the_afternoon() {
    let report = warmth(&trip(2, cold(), vec![]));
    let hottest = report.hours.iter().take(24).enumerate().max_by(|a, b| a.1.outside_c.total_cmp(&b.1.outside_c));
    assert!(matches!(hottest.map(|(hour, _)| hour), Some(14 | 15)));
}

/// Source: ISO 10456:2007, tabulated conductivities in W/(m K), by the project's table of reference values: steel and timber
/// read there, plywood and carpet by way of another library's table of the same standard. Within a hundredth, as it says.
#[test]
fn conductivities_are_those_that_are_tabulated() {
    let of = |material| usual(material)[1];
    let [_, steel] = STEEL;
    for (name, found, tabulated) in [
        ("plywood of 500 kg/m³", of(Material::Plywood), 0.13),
        ("timber", of(Material::Timber), 0.13),
        ("carpet", of(Material::Carpet), 0.06),
        ("steel", steel, 50.0),
    ] {
        assert!((found / tabulated - 1.0).abs() <= 0.01, "{name}: {found}");
    }
}

/// ISO 6946 by hand: 1/(0.10 + 0.03/0.034 + 0.0008/50 + 0.04), beside the ribs.
#[test]
fn the_roof_is_its_layers_between_the_airs_of_both_sides() {
    let mut plan = with_layers(vec![layer(1, Covers::Roof, Material::Xps, 30.0)]);
    plan.shell.rib_percent = Some(0.0);
    let report = warmth(&plan);
    let expected = 1.0 / (0.10 + 0.03 / 0.034 + 0.000_8 / 50.0 + 0.04);
    assert!((report.surfaces[0].u_w_m2k - expected).abs() < 1e-9);
    // With ribs on a tenth, of steel: that tenth lets as much through as bare steel.
    plan.shell.rib_percent = Some(10.0);
    let bare = 1.0 / (0.10 + 0.000_8 / 50.0 + 0.04);
    assert!((warmth(&plan).surfaces[0].u_w_m2k - (0.9 * expected + 0.1 * bare)).abs() < 1e-9);
}

#[test]
fn foam_on_all_sides_keeps_the_night_warmer() {
    let foam = [Covers::RoofAndSides, Covers::Doors, Covers::Floor];
    let layers = foam.iter().zip(1..).map(|(covers, id)| layer(id, *covers, Material::Xps, 30.0)).collect();
    let mut foamed = with_layers(layers);
    foamed.shell.cab = Some(Cab::Curtain);
    assert!(coldest_c(&foamed) > coldest_c(&trip(3, cold(), vec![])) + 2.0);
}

#[test]
fn foil_without_a_gap_gains_nothing_and_with_one_much() {
    let alone = with_layers(vec![layer(1, Covers::RoofAndSides, Material::Foil, 0.05)]);
    let bare = warmth(&trip(3, cold(), vec![]));
    let report = warmth(&alone);
    assert!(report.layers[0].is_idle_foil && report.layers[0].saves_w_k < 0.01);
    assert!((coldest_c(&alone) - bare.hours[bare.coldest.unwrap()].inside_c).abs() < 1e-3);
    assert!(says(&report, "warmth-idle-foil"));
    let gap = layer(2, Covers::RoofAndSides, Material::AirGap, 25.0);
    let with_gap = with_layers(vec![gap.clone(), alone.layers[0].clone()]);
    let of_gap = warmth(&with_layers(vec![gap])).layers[0].saves_w_k;
    let report = warmth(&with_gap);
    assert!(!report.layers[1].is_idle_foil && !says(&report, "warmth-idle-foil"));
    assert!(report.layers[1].saves_w_k > 0.2 * of_gap);
}

#[test]
fn a_layer_of_a_thing_that_is_left_out_is_not_there() {
    let thing = |obtain| Item { id: 7, name: "Foam boards".into(), obtain, group: Group::Warmth, ..Item::default() };
    let of = |obtain| {
        let foam = Layer { made_of: Some(7), ..layer(1, Covers::RoofAndSides, Material::Xps, 30.0) };
        Plan { layers: vec![foam], ..trip(3, cold(), vec![thing(obtain)]) }
    };
    let bare = coldest_c(&trip(3, cold(), vec![thing(Obtain::LeftOut)]));
    assert!((coldest_c(&of(Obtain::LeftOut)) - bare).abs() < 1e-12);
    assert!(coldest_c(&of(Obtain::Bought)) > bare);
    assert!(warmth(&of(Obtain::LeftOut)).layers.is_empty());
}

/// A blanket of 60 W moves the power, and what it takes warms the room a little.
#[test]
fn an_electric_blanket_moves_power_and_warms_a_little() {
    let draw = Draw {
        power_w: 60.0.into(),
        outlet: Outlet::Dc,
        hours_per_day: Some(8.0.into()),
        from_hour: Some(22.0),
        ..Draw::default()
    };
    let blanket = Item { id: 2, name: "Blanket".into(), draw: Some(draw), ..Item::default() };
    let without = assess(&trip(3, cold(), vec![store(1, 5_000.0)]), DAY);
    let with = assess(&trip(3, cold(), vec![store(1, 5_000.0), blanket]), DAY);
    // On the last of the three days only its two hours before midnight are on the road: 2 + 8 + 8 of them.
    assert!((with.power.draws[0].wh_per_day - 60.0 * (2.0 + 8.0 + 8.0) / 3.0).abs() < 1e-6);
    // At three in the second night.
    let at_three = |assessment: &Assessment| assessment.warmth.hours[26].inside_c;
    assert!(at_three(&with) > at_three(&without) + 0.1);
}

fn electric(power_w: f64) -> Item {
    let draw =
        Draw { power_w: Estimate::Plain(power_w), outlet: Outlet::Ac, works: Some(Works::Warming), ..Draw::default() };
    Item { id: 2, name: "Heater".into(), draw: Some(draw), ..Item::default() }
}

#[test]
fn an_electric_heater_takes_what_the_room_lacks_and_an_empty_store_heats_nothing() {
    let heated = |usable_wh| {
        let big = Store {
            usable_wh,
            opening_percent: 100.0,
            ac_continuous_w: 3_000.0,
            ac_surge_w: 6_000.0,
            ..Store::default()
        };
        let mut plan = trip(2, cold(), vec![Item { store: Some(big), ..store(1, 0.0) }, electric(2_500.0)]);
        plan.shell.wanted_asleep_c = Some(10.0);
        assess(&plan, DAY)
    };
    let much = heated(100_000.0);
    let coldest = much.warmth.hours[much.warmth.coldest.unwrap()];
    assert!((9.5..12.0).contains(&coldest.inside_c), "{}", coldest.inside_c);
    assert!(much.power.draws[0].wh_per_day > 3_000.0);
    let little = heated(1_000.0);
    assert!(little.warmth.hours[little.warmth.coldest.unwrap()].inside_c < 3.0);
    assert_eq!(little.power.standing.verdict, Verdict::FallsShort);
    assert!(says(&little.warmth, "warmth-heater-too-weak"));
}

fn burner(vents_out: bool, keeps_warm: bool) -> Item {
    let burner = Burner { heat_w: 2_000.0, fuel: BurnerFuel::Diesel, vents_out, keeps_warm, ..Burner::default() };
    Item { id: 2, name: "Stove".into(), burner: Some(burner), ..Item::default() }
}

#[test]
fn a_heater_with_a_pipe_keeps_the_room_and_says_what_it_burns() {
    let mut plan = trip(2, cold(), vec![burner(true, true)]);
    plan.shell.wanted_asleep_c = Some(9.0);
    let report = warmth(&plan);
    let coldest = report.hours[report.coldest.unwrap()].inside_c;
    assert!((coldest - 9.0).abs() < 0.3, "{coldest}");
    assert!(report.burner_wh > 1_000.0);
    assert!(report.standing.cautions.contains(&Caution::FlamesAndMonoxide));
    let heater = Answers::new(&plan, DAY, &report).heater.unwrap();
    // A litre of diesel gives 11,833 Wh/kg x 0.835 kg/l x 80 %.
    let litres = heater.heat_wh / (11_833.0 * 0.835 * 0.8);
    assert!((heater.fuel[0].amount - litres).abs() < 1e-9 * litres);
    assert!(heater.most_w > 0.0 && heater.without_c < 9.0);
}

#[test]
fn an_open_flame_to_heat_or_while_asleep_falls_short() {
    let mut plan = trip(2, cold(), vec![burner(false, true)]);
    plan.shell.wanted_asleep_c = Some(9.0);
    let report = warmth(&plan);
    assert!(says(&report, "warmth-open-flame-heats"));
    assert!(report.standing.cautions.contains(&Caution::CookingFlame));
    let mut kit = vec![burner(false, false)];
    kit[0].burner.as_mut().unwrap().burns_hours = Some(Estimate::Plain(1.0));
    kit[0].burner.as_mut().unwrap().lit_from_hour = Some(23.5);
    assert!(says(&warmth(&trip(2, cold(), kit.clone())), "warmth-flame-while-asleep"));
    kit[0].burner.as_mut().unwrap().lit_from_hour = Some(18.0);
    assert!(!says(&warmth(&trip(2, cold(), kit)), "warmth-flame-while-asleep"));
}

#[test]
fn sleepers_in_a_tight_van_breathe_more_than_is_allowed_at_work_until_more_is_open() {
    let with = |vent_cm2| {
        let mut plan = trip(3, cold(), vec![]);
        plan.people = 3;
        plan.shell = Shell { leak_cm2: Some(15.0), wind_m_s: Some(0.5), vent_cm2: Some(vent_cm2), ..Shell::default() };
        plan
    };
    let closed = warmth(&with(0.0));
    assert!(says(&closed, "warmth-bad-air"));
    assert_eq!(closed.standing.verdict, Verdict::FallsShort);
    let opening = Answers::new(&with(0.0), DAY, &closed).fresh.unwrap();
    let open = warmth(&with(opening.open_cm2.unwrap() * 1.3));
    assert!(!says(&open, "warmth-bad-air"));
}

#[test]
fn a_fan_in_its_hours_freshens_the_air_and_draws() {
    let fan = Item {
        id: 2,
        name: "Fan".into(),
        fan: Some(Fan { blows_m3_h: 60.0 }),
        draw: Some(Draw {
            power_w: 6.0.into(),
            outlet: Outlet::Dc,
            from_hour: Some(19.0),
            hours_per_day: Some(12.0.into()),
            days: DrawDays::Every,
            ..Draw::default()
        }),
        ..Item::default()
    };
    let most = |plan: &Plan| warmth(plan).hours.iter().map(|hour| hour.co2_ppm).fold(0.0, f64::max);
    let without = most(&trip(3, cold(), vec![store(1, 2_000.0)]));
    let with = most(&trip(3, cold(), vec![store(1, 2_000.0), fan]));
    assert!(with < without * 0.7, "{with} {without}");
}

#[test]
fn a_cold_room_keeps_the_store_from_charging() {
    let frost = Climate { low_c: Some(-12.0), high_c: Some(-6.0), ..Climate::default() };
    let mut plan = trip(3, frost, vec![store(1, 500.0)]);
    plan.kit[0].store.as_mut().unwrap().opening_percent = 20.0;
    plan.kit.push(Item {
        id: 3,
        draw: Some(Draw { power_w: 5.0.into(), outlet: Outlet::Dc, ..Draw::default() }),
        ..Item::default()
    });
    plan.stays[0].offers.mains_hours = Some(3.0.into());
    let cold_store = assess(&plan, DAY).power.stores[0].refused_hours;
    assert!(cold_store > 0);
    plan.kit.push(Item { id: 2, ..burner(true, true) });
    (plan.shell.wanted_c, plan.shell.wanted_asleep_c) = (Some(18.0), Some(18.0));
    plan.layers = vec![layer(40, Covers::RoofAndSides, Material::Xps, 40.0)];
    plan.work.work_hours = Some(8.0);
    plan.stays[0].working_days_per_week = 7;
    assert!(assess(&plan, DAY).power.stores[0].refused_hours < cold_store);
}

#[test]
fn a_dark_van_in_the_sun_gets_hotter_than_a_light_one_and_shade_helps() {
    let summer = Climate { latitude_deg: Some(44.0), low_c: Some(18.0), high_c: Some(33.0), ..Climate::default() };
    let mut plan = trip(2, summer, vec![]);
    plan.calendar.leaves_on = Some(date(2027, 7, 1));
    let report = assess(&plan, date(2027, 7, 1)).warmth;
    let answers = Answers::new(&plan, date(2027, 7, 1), &report);
    assert!((answers.hot_outside_c - 33.0).abs() < 0.2);
    let of = |colour, in_shade| {
        answers.hot.iter().find(|hot| hot.colour == colour && hot.in_shade == in_shade).unwrap().inside_c
    };
    let (light, dark, shaded) = (of(Colour::Light, false), of(Colour::Dark, false), of(Colour::Light, true));
    assert!(dark > light + 5.0 && shaded < light - 3.0 && light > 40.0, "{light} {dark} {shaded}");
    assert!(says(&report, "warmth-hot-inside"));
}

#[test]
fn what_cannot_be_is_told_at_its_field_and_nothing_breaks() {
    let mut plan = with_layers(vec![layer(1, Covers::Roof, Material::Xps, -5.0)]);
    plan.climate.low_c = Some(-300.0);
    plan.kit = vec![Item { id: 5, tank: Some(Tank { capacity_l: -3.0, ..Tank::default() }), ..Item::default() }];
    let paths: Vec<String> = validate(&plan).iter().map(|problem| problem.path.to_string()).collect();
    for path in ["layers/1/thick_mm", "climate/low_c", "kit/5/tank/capacity_l"] {
        assert!(paths.contains(&path.to_owned()), "{path} {paths:?}");
    }
    let report = warmth(&plan);
    assert!(report.hours.iter().all(|hour| hour.inside_c.is_finite() && hour.co2_ppm.is_finite()));
    assert_eq!(List::Layers.ids(&plan), [1]);
}
