//! The starter list, a row a thing: size in mm, mass in kg, price in euro (second-hand to new), and what it draws,
//! holds, stores or uses. Ranges are low, likely, high.

use super::Starter;
use super::row::{ac, cooling, dc, heating, starter, when_working};
use crate::plan::{Group, Need, PanelSetup};

/// Standardised crates stack with one another.
const CRATE: &str = "ISO 3394:2012, module 600 mm × 400 mm";
/// What a charging port gives a phone: 5 V × 1.5 A.
const USB: &str = "USB Battery Charging 1.2";

/// Generic things for a start, by heading. No brands: a name says what a thing is.
#[rustfmt::skip] // one row a thing
pub const STARTERS: &[Starter] = &[
    starter!("mattress-double", Sleeping, Must).mm(1_900.0, 1_300.0, 100.0).kg(6.0, 9.0, 14.0).eur(40, 90, 180),
    starter!("mattress-single", Sleeping, Must).mm(1_900.0, 700.0, 80.0).kg(3.0, 4.5, 7.0).eur(25, 55, 110),
    starter!("bed-platform", Structure, Must).mm(1_900.0, 1_300.0, 320.0).kg(16.0, 24.0, 35.0).eur(30, 70, 140),
    starter!("quilt", Sleeping, Must).mm(500.0, 400.0, 250.0).kg(1.2, 2.0, 3.0).eur(15, 35, 70),
    starter!("sleeping-bag", Sleeping, Want).mm(400.0, 250.0, 250.0).kg(1.2, 1.7, 2.5).eur(25, 60, 140),
    starter!("pillow", Sleeping, Want).mm(500.0, 400.0, 150.0).kg(0.4, 0.7, 1.0).eur(5, 12, 30),

    starter!("cool-box", Kitchen, Want).mm(580.0, 360.0, 400.0).kg(9.0, 12.0, 16.0).eur(130, 230, 380)
        .draws(cooling([35.0, 45.0, 60.0], 270.0)),
    starter!("ice-box", Kitchen, Want).mm(420.0, 300.0, 380.0).kg(2.0, 3.0, 5.0).eur(15, 35, 80),
    starter!("gas-stove", Kitchen, Must).mm(340.0, 280.0, 110.0).kg(1.2, 1.5, 2.0).eur(15, 28, 60),
    starter!("gas-cartridge", Kitchen, Must).mm(90.0, 90.0, 190.0).kg(0.3, 0.4, 0.5).eur(2, 3, 6),
    starter!("rice-cooker", Kitchen, Want).mm(240.0, 240.0, 220.0).kg(1.4, 1.8, 2.4).eur(15, 28, 50)
        .draws(ac([250.0, 350.0, 450.0], 0.5, 18.0)),
    starter!("kettle", Kitchen, Want).mm(200.0, 150.0, 200.0).kg(0.6, 0.8, 1.1).eur(12, 22, 35)
        .draws(heating([300.0, 400.0, 600.0], 0.7, 7.0)),
    starter!("induction-hob", Kitchen, Experiment).mm(350.0, 280.0, 60.0).kg(2.0, 2.4, 3.0).eur(35, 55, 90)
        .draws(heating([800.0, 1_200.0, 1_800.0], 1.5, 18.0)),
    starter!("pots", Kitchen, Must).mm(320.0, 280.0, 200.0).kg(1.5, 2.5, 4.0).eur(10, 25, 60),
    starter!("dishes", Kitchen, Must).mm(350.0, 250.0, 180.0).kg(1.0, 2.0, 3.0).eur(5, 15, 30),
    starter!("washing-up-bowl", Water, Must).mm(340.0, 340.0, 140.0).kg(0.4, 0.6, 0.9).eur(3, 7, 15)
        .uses_l(1.0, 1.5, 4.0, 90.0),

    starter!("store-small", Power, Must).mm(230.0, 150.0, 170.0).kg(3.2, 3.8, 5.0).eur(140, 210, 300)
        .stores(280.0, 300.0, 120.0),
    starter!("store-medium", Power, Must).mm(300.0, 210.0, 230.0).kg(6.5, 8.0, 10.0).eur(280, 420, 600)
        .stores(600.0, 500.0, 200.0),
    starter!("store-large", Power, Want).mm(390.0, 230.0, 280.0).kg(11.0, 13.0, 16.0).eur(480, 720, 1_000)
        .stores(1_000.0, 1_200.0, 500.0),
    starter!("panel-folding", Power, Want).mm(580.0, 560.0, 60.0).kg(3.5, 5.0, 7.0).eur(80, 150, 260)
        .panel_w(100.0, PanelSetup::Beside),
    starter!("panel-flat", Power, Want).mm(1_200.0, 540.0, 35.0).kg(6.0, 8.0, 11.0).eur(60, 100, 180)
        .panel_w(120.0, PanelSetup::Flat),
    starter!("vehicle-lead", Power, Must).mm(200.0, 150.0, 50.0).kg(0.2, 0.3, 0.5).eur(8, 15, 30),
    starter!("extension-lead", Power, Want).mm(300.0, 300.0, 100.0).kg(1.5, 2.3, 4.0).eur(15, 30, 60),
    starter!("lamp", Power, Must).mm(200.0, 120.0, 120.0).kg(0.2, 0.4, 0.7).eur(6, 14, 30)
        .draws(dc([3.0, 5.0, 8.0], 3.5, 19.0)),
    starter!("phone", Power, Must).mm(160.0, 80.0, 12.0).kg(0.15, 0.2, 0.25).eur(60, 150, 300)
        .draws_by(dc([7.5, 7.5, 7.5], 2.5, 20.0), USB),
    starter!("laptop", Work, Want).mm(360.0, 250.0, 40.0).kg(1.3, 1.9, 2.8).eur(150, 350, 800)
        .draws(when_working(dc([30.0, 45.0, 65.0], 4.0, 9.0))),
    starter!("router", Work, Want).mm(140.0, 80.0, 30.0).kg(0.15, 0.25, 0.4).eur(30, 60, 120)
        .draws(dc([3.0, 6.0, 11.0], 10.0, 8.0)),
    starter!("radio", Power, Want).mm(240.0, 80.0, 140.0).kg(0.4, 0.8, 1.3).eur(10, 25, 60)
        .draws(dc([2.0, 4.0, 8.0], 3.0, 7.0)),
    starter!("fan", Power, Want).mm(250.0, 250.0, 120.0).kg(0.5, 0.9, 1.5).eur(12, 25, 50)
        .draws(dc([5.0, 12.0, 25.0], 6.0, 18.0)),
    starter!("heated-blanket", Warmth, Want).mm(400.0, 300.0, 100.0).kg(0.8, 1.2, 1.8).eur(20, 35, 60)
        .draws(dc([40.0, 55.0, 65.0], 1.0, 21.0)),

    starter!("can-10", Water, Must).mm(280.0, 170.0, 300.0).kg(0.4, 0.6, 0.9).eur(5, 10, 18).fresh_l(10.0),
    starter!("can-15", Water, Must).mm(300.0, 180.0, 380.0).kg(0.6, 0.9, 1.3).eur(8, 13, 22).fresh_l(15.0),
    starter!("grey-can-10", Water, Must).mm(280.0, 170.0, 300.0).kg(0.4, 0.6, 0.9).eur(5, 10, 18).grey_l(10.0),
    starter!("pressure-shower", Hygiene, Experiment).mm(220.0, 220.0, 450.0).kg(1.0, 1.4, 2.0).eur(15, 30, 70)
        .uses_l(2.0, 4.0, 8.0, 90.0),
    starter!("bucket-toilet", Hygiene, Must).mm(320.0, 320.0, 350.0).kg(1.2, 1.9, 3.0).eur(10, 25, 50),
    starter!("wash-bag", Hygiene, Must).mm(260.0, 140.0, 120.0).kg(0.5, 0.9, 1.5).eur(5, 15, 30),

    starter!("crate", Structure, Want).mm_by(600.0, 400.0, 320.0, CRATE).kg(1.5, 2.3, 3.0).eur(5, 14, 25),
    starter!("lashing-strap", Structure, Must).mm(150.0, 120.0, 80.0).kg(0.2, 0.4, 0.9).eur(4, 7, 15),
    starter!("folding-table", Other, Want).mm(700.0, 500.0, 70.0).kg(2.5, 4.2, 7.0).eur(15, 35, 70),
    starter!("folding-chair", Other, Want).mm(900.0, 150.0, 150.0).kg(1.5, 2.7, 4.0).eur(8, 22, 50),
    starter!("window-covers", Warmth, Want).mm(1_000.0, 300.0, 150.0).kg(1.2, 2.2, 3.5).eur(12, 30, 80),
    starter!("hot-water-bottle", Warmth, Want).mm(330.0, 200.0, 40.0).kg(0.3, 0.4, 0.5).eur(5, 10, 18),

    starter!("carbon-monoxide-alarm", Safety, Must).mm(120.0, 70.0, 40.0).kg(0.1, 0.2, 0.3).eur(18, 27, 45),
    starter!("smoke-alarm", Safety, Must).mm(100.0, 100.0, 40.0).kg(0.1, 0.2, 0.3).eur(5, 10, 25),
    starter!("fire-extinguisher", Safety, Must).mm(320.0, 100.0, 100.0).kg(1.5, 1.7, 2.2).eur(14, 22, 40),
    starter!("first-aid-kit", Safety, Must).mm(250.0, 180.0, 90.0).kg(0.4, 0.8, 1.2).eur(8, 15, 35),
    starter!("tool-bag", Tools, Must).mm(450.0, 250.0, 250.0).kg(4.0, 6.5, 10.0).eur(25, 60, 120),
    starter!("clothes-bag", Clothing, Must).mm(600.0, 350.0, 300.0).kg(6.0, 9.0, 14.0).eur(10, 20, 40),
];
