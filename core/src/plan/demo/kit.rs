//! What they take along, one row an item.

use super::Year;
use super::row::{Row, bought, cycling, draw, left_out, lent, made, only, owned};
use crate::plan::Group::{
    Clothing, Hygiene, Kitchen, Other, Power, Safety, Sleeping, Structure, Tools, Vehicle, Warmth, Water, Work,
};
use crate::plan::Need::{Experiment, Must, Want};
use crate::plan::Outlet::{Ac, Dc};
use crate::plan::TankKind::{Fresh, Grey};
use crate::plan::{DrawDays, Item, Store};

/// All items, heading by heading.
pub(super) fn items(year: Year) -> Vec<Item> {
    let rows = [
        sleeping(year),
        kitchen(year),
        power(year),
        water_and_washing(year),
        structure_and_warmth(year),
        work_and_clothing(),
        safety_and_tools(year),
    ];
    rows.into_iter().flatten().map(|Row(item)| *item).collect()
}

fn sleeping(year: Year) -> Vec<Row> {
    vec![
        made("Bed platform of boards", Structure, Must, 68)
            .by(year.on(4, 3))
            .kg_about(18.0, 24.0, 32.0)
            .mm(1_900.0, 1_250.0, 320.0),
        owned("Mattress cut to fit", Sleeping, Must).kg(11.0).mm(1_900.0, 1_250.0, 120.0),
        owned("Quilt for two", Sleeping, Must).kg(2.4).mm(600.0, 400.0, 250.0),
        owned("Two sets of sheets", Sleeping, Want).kg(1.6).mm(400.0, 300.0, 120.0),
        owned("Pillow", Sleeping, Want).times(2).kg(0.7).mm(600.0, 400.0, 150.0),
        lent("Winter sleeping bag", Sleeping, Want, "Aunt Bera").times(2).kg(1.9).mm(420.0, 260.0, 260.0),
        lent("Hammock", Sleeping, Experiment, "Neighbour Pim").kg(0.9).mm(300.0, 150.0, 150.0),
    ]
}

fn kitchen(year: Year) -> Vec<Row> {
    vec![
        bought("Top-opening cool box", Kitchen, Want, 219)
            .by(year.on(4, 10))
            .kg(11.5)
            .mm(580.0, 360.0, 400.0)
            .draws(cycling(42.0, 90.0, 15.0, 20.0, 32.0))
            .resold(80, 110, 140, year.on(9, 16)),
        owned("Small rice cooker", Kitchen, Want)
            .kg(1.8)
            .mm(240.0, 240.0, 220.0)
            .draws(only(DrawDays::Working, draw(350.0, Ac, 0.5, 19.0)))
            .note("After a day of picking nobody stands at a stove. On free days the camp stove does."),
        bought("Camp stove", Kitchen, Must, 24).by(year.on(4, 10)).kg(1.5).mm(340.0, 280.0, 110.0),
        bought("Stove cartridge", Kitchen, Must, 3).times(6).by(year.on(4, 17)).kg(0.4).mm(90.0, 90.0, 190.0),
        owned("Pot, pan and kettle", Kitchen, Must).kg(3.1).mm(320.0, 280.0, 220.0),
        owned("Plates and cutlery", Kitchen, Must).kg(2.6).mm(350.0, 250.0, 180.0),
        owned("Knives and a board", Kitchen, Must).kg(1.1).mm(360.0, 220.0, 50.0),
        made("Kitchen crate with a lid", Kitchen, Want, 12).by(year.on(4, 5)).kg(4.5).mm(600.0, 400.0, 320.0),
        owned("Dry food for the first weeks", Kitchen, Must).kg_about(12.0, 16.0, 22.0).mm(400.0, 300.0, 300.0),
        left_out("Electric hob", Kitchen, Experiment, 36)
            .kg(2.2)
            .mm(290.0, 360.0, 60.0)
            .draws(draw(1_200.0, Ac, 0.7, 18.0))
            .note("More than the store gives: left at home."),
    ]
}

fn power(year: Year) -> Vec<Row> {
    vec![
        bought("Power store", Power, Must, 389)
            .price_about(349, 389, 429)
            .by(year.on(3, 28))
            .kg(8.6)
            .mm(300.0, 210.0, 230.0)
            .stores(Store { usable_wh: 700.0, total_input_w: Some(240.0), ..Store::default() }),
        lent("Folding solar panel", Power, Experiment, "Cousin Runa")
            .kg(4.6)
            .mm(620.0, 540.0, 50.0)
            .note("100 W. Must be back in October."),
        owned("Phone", Power, Must).times(2).kg(0.2).mm(160.0, 80.0, 12.0).draws(draw(7.5, Dc, 2.5, 20.0)),
        owned("Radio", Power, Want).kg(0.8).mm(240.0, 80.0, 140.0).draws(draw(4.0, Dc, 5.0, 6.0)),
        bought("Lamp with a clamp", Power, Must, 14)
            .by(year.on(4, 12))
            .kg(0.4)
            .mm(200.0, 120.0, 120.0)
            .draws(draw(5.0, Dc, 3.5, 20.0)),
        bought("Charging lead for the van’s socket", Power, Must, 17).by(year.on(3, 28)).kg(0.3).mm(200.0, 150.0, 50.0),
        owned("Outdoor extension lead", Power, Must).kg(2.3).mm(300.0, 300.0, 100.0),
    ]
}

fn water_and_washing(year: Year) -> Vec<Row> {
    vec![
        bought("Water can", Water, Must, 13)
            .times(2)
            .by(year.on(4, 12))
            .kg(0.9)
            .mm(300.0, 180.0, 380.0)
            .holds(Fresh, 15.0),
        owned("Water can from the allotment", Water, Must).kg(1.1).mm(300.0, 180.0, 380.0).holds(Fresh, 15.0),
        owned("Can for used water", Water, Must).kg(0.9).mm(300.0, 180.0, 380.0).holds(Grey, 15.0),
        owned("Washing-up bowl", Water, Must).kg(0.6).mm(340.0, 340.0, 140.0).uses(1.5, 90.0),
        bought("Funnel and a short hose", Water, Want, 9).by(year.on(4, 17)).kg(0.7).mm(300.0, 200.0, 100.0),
        bought("Bucket toilet with a lid", Hygiene, Must, 22).by(year.on(4, 12)).kg(1.9).mm(320.0, 320.0, 350.0),
        owned("Towel", Hygiene, Must).times(4).kg(0.4).mm(300.0, 200.0, 60.0),
        owned("Wash bag", Hygiene, Must).times(2).kg(0.9).mm(260.0, 140.0, 120.0),
        owned("Washing line and pegs", Hygiene, Want).kg(0.5).mm(200.0, 150.0, 80.0),
    ]
}

fn structure_and_warmth(year: Year) -> Vec<Row> {
    vec![
        lent("Stacking crate", Structure, Want, "The packing shed").times(4).kg(2.0).mm(600.0, 400.0, 240.0),
        made("Shelf with an edge", Structure, Want, 26)
            .price_about(20, 26, 38)
            .by(year.on(4, 5))
            .kg_about(5.0, 7.0, 10.0),
        bought("Lashing strap", Structure, Must, 6).times(4).by(year.on(4, 8)).kg(0.4),
        owned("Offcut of carpet", Structure, Want).kg(6.5).mm(1_700.0, 300.0, 300.0),
        made("Window covers of blanket and foil", Warmth, Want, 19).by(year.on(4, 14)).kg(2.2),
        owned("Wool blanket", Warmth, Want).times(2).kg(1.8).mm(500.0, 400.0, 100.0),
        owned("Hot-water bottle", Warmth, Experiment).times(2).kg(0.4),
    ]
}

fn work_and_clothing() -> Vec<Row> {
    vec![
        owned("Picking harness", Work, Must).times(2).kg(1.3).mm(400.0, 300.0, 200.0),
        owned("Secateurs", Work, Must).times(2).kg(0.3),
        owned("Work boots", Work, Must).times(2).kg(1.6).mm(320.0, 240.0, 150.0),
        owned("Rain gear", Clothing, Must).times(2).kg(1.2).mm(350.0, 250.0, 100.0),
        owned("Bag of clothes", Clothing, Must).times(2).kg_about(7.0, 9.0, 13.0).mm(600.0, 350.0, 300.0),
        owned("Folding chair", Other, Want).times(2).kg(2.7).mm(900.0, 150.0, 150.0),
        lent("Folding table", Other, Want, "Aunt Bera").kg(4.2).mm(700.0, 500.0, 70.0),
        owned("Box of books and games", Other, Want).kg(5.0).mm(400.0, 300.0, 200.0),
    ]
}

fn safety_and_tools(year: Year) -> Vec<Row> {
    vec![
        bought("Carbon monoxide alarm", Safety, Must, 27).by(year.on(4, 10)).kg(0.2).mm(120.0, 70.0, 40.0),
        bought("Smoke alarm", Safety, Must, 9).by(year.on(4, 10)).kg(0.2).mm(100.0, 100.0, 40.0),
        bought("Fire extinguisher", Safety, Must, 21).by(year.on(4, 10)).kg(1.7).mm(320.0, 100.0, 100.0),
        owned("First-aid kit", Safety, Must).kg(0.8).mm(250.0, 180.0, 90.0),
        owned("Tool bag", Tools, Must).kg(6.5).mm(450.0, 250.0, 250.0),
        lent("Cordless drill", Tools, Want, "Neighbour Pim").kg(1.9).mm(300.0, 250.0, 100.0),
        owned("Spare wheel and jack", Vehicle, Must).kg(24.0).mm(680.0, 680.0, 220.0),
        bought("Brake pads and a used exhaust", Vehicle, Must, 145)
            .price_about(120, 145, 190)
            .untaxed()
            .by(year.on(3, 17))
            .kg(0.0)
            .note("Fitted by a neighbour. Replaces what is there, so it adds no mass."),
    ]
}
