//! Walls against ISO 6946 worked by hand, as the project's table of reference values has it.

use kerbstead_core::thermal::answers::layer_change;
use kerbstead_core::thermal::constants::OUTSIDE_M2K_W;
use kerbstead_core::thermal::layers::{Flow, Layer, Wall, between_faces, gap_m2k_w};
use kerbstead_core::thermal::shell::Surface;

use crate::{STEEL, assert_near, lined, solid};

#[test]
fn surface_resistances_are_those_of_the_table() {
    let inside = [Flow::Up, Flow::Sideways, Flow::Down].map(Flow::inside_m2k_w);
    assert_eq!((inside, OUTSIDE_M2K_W), ([0.10, 0.13, 0.17], 0.04));
}

#[test]
fn walls_let_through_what_the_hand_has() {
    let floor = Wall::new(Flow::Down, vec![solid(0.012, 0.13), solid(0.025, 0.037), STEEL]);
    let bare = Wall::new(Flow::Sideways, vec![STEEL]);
    for (wall, total, u, face_c) in
        [(lined(0.03), 1.0985, 0.9103, 15.278), (floor, 0.978, 1.0225, 14.002), (bare, 0.170_016, 5.8818, 0.413)]
    {
        assert_near(wall.plain_m2k_w(), total, 1e-3 * total, "resistance");
        assert_near(wall.u_w_m2k(), u, 1e-3 * u, "U");
        assert_near(wall.temperatures_c(18.0, -5.0)[0], face_c, 0.002, "inside face");
    }
}

/// Source: ISO 6946, table 8, from memory.
#[test]
fn gaps_resist_as_the_table_has_it() {
    for (mm, row) in [(5.0, [0.11, 0.11, 0.11]), (10.0, [0.15, 0.15, 0.15]), (25.0, [0.16, 0.18, 0.19])] {
        for (flow, expected) in [Flow::Up, Flow::Sideways, Flow::Down].into_iter().zip(row) {
            assert_near(gap_m2k_w(mm / 1e3, flow, [0.9, 0.9], 10.0), expected, 0.005, "gap");
        }
    }
}

#[test]
fn a_gap_is_convection_and_radiation_side_by_side() {
    // 283.15 K: 4 σ T³ is 5.1488; E of 0.9 and 0.9 is 0.8182, of 0.05 and 0.9 is 0.0497.
    let black = 4.0 * 5.670_374_419e-8 * 283.15 * 283.15 * 283.15;
    assert_near(black, 5.149, 1e-3, "4 sigma T cubed");
    assert_near(between_faces([0.9, 0.9]), 0.818_18, 1e-5, "ordinary");
    for (thickness_m, convection) in [(0.01, 2.5), (0.02, 1.25), (0.1, 1.25)] {
        let by_hand = 1.0 / (convection + black / (1.0 / 0.05 + 1.0 / 0.9 - 1.0));
        assert_near(gap_m2k_w(thickness_m, Flow::Sideways, [0.05, 0.9], 10.0), by_hand, 1e-12, "gap");
    }
}

#[test]
fn foil_gains_beside_a_gap_and_nowhere_else() {
    let gap = Layer::Gap { thickness_m: 0.02 };
    let u = |layers: &[Layer]| Wall::new(Flow::Sideways, layers.to_vec()).u_w_m2k();
    let (ply, foam) = (solid(0.006, 0.13), solid(0.02, 0.034));
    assert_near(u(&[ply, Layer::FOIL, foam, STEEL]), u(&[ply, foam, STEEL]), 1e-5, "pressed between solids");
    assert_near(u(&[Layer::FOIL, ply, foam, STEEL]), u(&[ply, foam, STEEL]), 1e-5, "towards the room");
    let plain = 1.0 / u(&[ply, gap, STEEL]);
    for bright in [&[ply, Layer::FOIL, gap, STEEL], &[ply, gap, Layer::FOIL, STEEL]] {
        let more = 1.0 / u(bright) - plain;
        let by_hand =
            gap_m2k_w(0.02, Flow::Sideways, [0.05, 0.9], 10.0) - gap_m2k_w(0.02, Flow::Sideways, [0.9, 0.9], 10.0);
        assert_near(more, by_hand, 1e-5, "beside a gap");
        assert!(more > 0.4);
    }
}

#[test]
fn battens_lie_between_both_limits() {
    let wall = Wall::new(Flow::Sideways, vec![solid(0.009, 0.13), solid(0.04, 0.034)])
        .bridged(0.1, vec![solid(0.009, 0.13), solid(0.04, 0.13)]);
    let (upper, lower) = wall.limits_m2k_w().unwrap();
    assert_near(upper, 1.2216, 1e-3, "upper");
    assert_near(lower, 1.1567, 1e-3, "lower");
    assert_near(f64::midpoint(upper, lower), 1.1892, 1e-3, "mean");
    assert_near(wall.u_w_m2k(), 1.0 / upper, 1e-12, "side by side");
}

#[test]
fn ribs_of_steel_are_a_share_of_the_area() {
    let wall = lined(0.03).bridged(0.05, vec![solid(0.006, 0.13), STEEL]);
    let at_ribs = 1.0 / (0.13 + 0.006 / 0.13 + 0.0008 / 50.0 + 0.04);
    assert_near(wall.u_w_m2k(), 0.95 * lined(0.03).u_w_m2k() + 0.05 * at_ribs, 1e-12, "U");
    assert_near(wall.bridge_temperatures_c(18.0, -5.0)[0], 18.0 - 23.0 * 0.13 * at_ribs, 1e-12, "inside of a rib");
    // A layer over all covers the ribs too; one between them does not.
    let (over, between) = (wall.with(0, solid(0.01, 0.035)), wall.with(2, solid(0.01, 0.035)));
    assert!(over.u_w_m2k() < between.u_w_m2k() && between.u_w_m2k() < wall.u_w_m2k());
    assert_eq!(between.bridge_m2k_w(), wall.bridge_m2k_w());
}

#[test]
fn temperatures_fall_in_proportion_to_resistance() {
    let faces = lined(0.03).temperatures_c(18.0, -5.0);
    let flow = 23.0 * lined(0.03).u_w_m2k();
    assert_eq!(faces.len(), 4);
    for (pair, resistance) in faces.windows(2).zip([0.006 / 0.13, 0.03 / 0.034, 0.0008 / 50.0]) {
        assert_near(pair[0] - pair[1], flow * resistance, 1e-12, "layer");
    }
    assert_near(faces[3] + 5.0, flow * 0.04, 1e-12, "outside face");
}

#[test]
fn a_layer_is_weighed_against_money_mass_and_width() {
    let surface = Surface::side(6.0, lined(0.03), 0.0);
    let change = layer_change(&surface, 1, solid(0.02, 0.034), 24.0, 3.0);
    let saved = 6.0 * (lined(0.03).u_w_m2k() - 1.0 / (lined(0.03).plain_m2k_w() + 0.02 / 0.034));
    assert_near(change.saves_w_k, saved, 1e-12, "saved");
    assert_near(change.w_k_per_money.unwrap(), saved / 24.0, 1e-12, "money");
    assert_near(change.w_k_per_kg.unwrap(), saved / 3.0, 1e-12, "mass");
    assert_near(change.w_k_per_mm.unwrap(), saved / 20.0, 1e-12, "width");
    assert_eq!(layer_change(&surface, 1, solid(0.02, 0.034), 0.0, 0.0).w_k_per_money, None);
}
