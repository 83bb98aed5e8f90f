//! Materials of a plan: areas, packs, cut plans, and what of it goes into the kit.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at what it did not expect"
)]

use jiff::civil::date;
use kerbstead_core::assess;
use kerbstead_core::explain::Figure;
use kerbstead_core::materials::{Covered, Cuts, Fault, covered, into_kit, packs_to_buy, stock_to_buy, surface_m2};
use kerbstead_core::plan::{
    Calendar, Covering, Cut, CutFor, Cutting, Flaw, Material, MaterialPack, Money, Nominal, Plain, Plan, Quantity,
    Shell, Stay, Stock, StockKind, Surface, Vehicle,
};
use kerbstead_core::task::{Question, Subject};
use kerbstead_core::words::{Plain as Written, Units, Words};

/// A box of a van: 3 m long, 1.7 m wide, 1.8 m high inside.
fn van() -> Plan {
    let vehicle = Vehicle {
        inside_length_mm: Some(3_000.0),
        inside_width_mm: Some(1_700.0),
        inside_height_mm: Some(1_800.0),
        ..Vehicle::default()
    };
    Plan { vehicle, ..Plan::default() }
}

fn board(id: u32, length_mm: f64, price: i64) -> Stock {
    Stock {
        id,
        name: format!("Board {id}"),
        length_mm: Some(length_mm),
        width_mm: Some(90.0),
        thick_mm: Some(20.0),
        stock_price: Some(Money::whole(price)),
        ..Stock::default()
    }
}

fn piece(id: u32, cut_from: u32, length_mm: f64, pieces: u32) -> Cut {
    Cut {
        id,
        name: format!("Piece {id}"),
        cut_from: Some(cut_from),
        length_mm: Some(length_mm),
        pieces,
        ..Cut::default()
    }
}

/// Through the question, as the page asks it.
fn cut(plan: &Plan) -> Cuts {
    let mut task = Question { subject: Subject::Materials, plan: plan.clone(), ..Question::default() }.begin();
    while task.step() < 1.0 {}
    Cuts::from_plain(&task.answer()).unwrap()
}

#[test]
fn surfaces_go_by_the_sizes_of_the_van_less_doors_and_windows() {
    let mut plan = van();
    let of = |plan: &Plan, surface| surface_m2(plan, &Covering { surface, own_m2: Some(2.5), ..Covering::default() });
    assert!((of(&plan, Surface::Floor) - 5.1).abs() < 1e-9);
    assert!((of(&plan, Surface::Roof) - 5.1).abs() < 1e-9);
    assert!((of(&plan, Surface::Own) - 2.5).abs() < 1e-9);
    // Sides and rear are (2 × 3 + 1.7) × 1.8 m² with their doors.
    let around = of(&plan, Surface::Sides) + of(&plan, Surface::Doors);
    assert!((around - 7.7 * 1.8).abs() < 1e-9);
    plan.shell = Shell { window_m2: Some(0.9), ..Shell::default() };
    let with_windows = of(&plan, Surface::Sides) + of(&plan, Surface::Doors);
    assert!((around - with_windows - 0.9).abs() < 1e-9);
}

#[test]
fn what_is_left_over_of_one_covering_goes_to_the_next_of_the_same_material() {
    let wall = Covering { id: 1, own_m2: Some(5.0), waste_percent: Some(10.0), ..Covering::default() };
    let lid = Covering { id: 2, own_m2: Some(0.4), same_as: Some(1), ..Covering::default() };
    let price = Some(Money::whole(12));
    let pack =
        MaterialPack { id: 3, covering: Some(1), pack_m2: Some(2.0), pack_price: price, ..MaterialPack::default() };
    let plan = Plan { coverings: vec![wall, lid], material_packs: vec![pack], ..Plan::default() };
    let found = covered(&plan);
    // 5.5 m² are three packs with 0.5 m² over, of which the lid takes 0.4.
    let (first, second) = (found[0].bought.unwrap(), found[1].bought.unwrap());
    assert_eq!((first.packs, first.left_over.to_string().as_str()), (3, "0.5"));
    assert_eq!((second.packs, second.left_over.to_string().as_str()), (0, "0.1"));
    let bought = packs_to_buy(&plan, &found);
    assert_eq!((bought.len(), bought[0].count), (1, 3));
}

#[test]
fn packs_in_other_units_are_compared_with_tax_and_what_is_left_over() {
    // 6 m² twice with paint, 9 m² a litre: 12 m² of one coat, one and a third litres.
    let paint = Covering { id: 1, own_m2: Some(6.0), coats: Some(2), unit_covers_m2: Some(9.0), ..Covering::default() };
    let tin = |id, pack_l, price| MaterialPack {
        id,
        covering: Some(1),
        pack_l: Some(pack_l),
        pack_price: Some(Money::whole(price)),
        ..MaterialPack::default()
    };
    let by_area = MaterialPack { pack_l: None, pack_m2: Some(13.0), ..tin(4, 1.0, 20) };
    let mut plan = Plan {
        coverings: vec![paint],
        material_packs: vec![tin(2, 0.75, 11), tin(3, 5.0, 40), by_area],
        ..Plan::default()
    };
    let found = covered(&plan).remove(0);
    assert_eq!((found.cheapest, found.cheapest_by_unit, found.bought.unwrap().packs), (Some(4), Some(3), 1));
    plan.coverings[0].rest_used_percent = Some(100.0);
    assert_eq!(covered(&plan)[0].cheapest, Some(3));
    plan.coverings[0].from_pack = Some(2);
    assert_eq!(covered(&plan)[0].bought.unwrap().packs, 2);
}

#[test]
fn what_is_counted_in_metres_is_told_in_metres() {
    let strip = Covering { id: 1, own_m2: Some(3.0), each_m2_takes: Some(2.5), ..Covering::default() };
    let price = Some(Money::whole(6));
    let roll =
        MaterialPack { id: 2, covering: Some(1), pack_mm: Some(4_000.0), pack_price: price, ..MaterialPack::default() };
    let plan = Plan { coverings: vec![strip], material_packs: vec![roll], ..Plan::default() };
    let found = covered(&plan).remove(0);
    let need = found.packs[0].comes_to.unwrap();
    assert_eq!((need.packs, found.figure(7.5)), (2, Figure::of(7_500.0, Quantity::LengthMm)));
    let each = found.each(need.unit_price.price);
    assert_eq!(Words::english(Written, Units::Metric, "EUR").figure(&each), "1.50 EUR per m");
    let foam = Covered { unit: None, ..found };
    assert_eq!(Words::english(Written, Units::Metric, "EUR").figure(&foam.each(Money::whole(8))), "8.00 EUR per m²");
    assert_eq!(
        Words::english(Written, Units::UsCustomary, "USD").figure(&foam.each(Money::whole(100))),
        "9.29 USD per ft²"
    );
}

#[test]
fn kilograms_are_not_held_against_what_a_litre_covers() {
    let paint = Covering { id: 1, own_m2: Some(6.0), unit_covers_m2: Some(9.0), ..Covering::default() };
    let price = Some(Money::whole(3));
    let tin =
        MaterialPack { id: 2, covering: Some(1), pack_l: Some(1.0), pack_price: price, ..MaterialPack::default() };
    let bag = MaterialPack { id: 3, pack_l: None, pack_kg: Some(9.0), ..tin.clone() };
    let both = MaterialPack { id: 4, pack_kg: Some(1.4), ..tin.clone() };
    let plan = Plan { coverings: vec![paint], material_packs: vec![tin, bag, both], ..Plan::default() };
    let known: Vec<bool> = covered(&plan)[0].packs.iter().map(|pack| pack.comes_to.is_some()).collect();
    assert_eq!(known, [true, false, true]);
}

#[test]
fn screws_are_counted_by_what_a_square_metre_takes() {
    let screws = Covering { id: 1, own_m2: Some(3.0), each_m2_takes: Some(9.0), ..Covering::default() };
    let price = Some(Money::whole(3));
    let pack =
        MaterialPack { id: 2, covering: Some(1), pack_pieces: Some(27), pack_price: price, ..MaterialPack::default() };
    let plan = Plan { coverings: vec![screws], material_packs: vec![pack], ..Plan::default() };
    assert_eq!(covered(&plan)[0].bought.unwrap().packs, 1);
}

#[test]
fn a_circle_of_coverings_ends() {
    let covering = |id, same_as| Covering { id, same_as: Some(same_as), own_m2: Some(1.0), ..Covering::default() };
    let plan = Plan { coverings: vec![covering(1, 2), covering(2, 1)], ..Plan::default() };
    assert_eq!(covered(&plan).len(), 2);
}

#[test]
fn boards_are_cut_from_scrap_first_and_from_the_cheapest_lengths() {
    let scrap = Stock { at_hand: true, stock_price: None, ..board(3, 900.0, 0) };
    let stock = vec![board(1, 2_400.0, 6), board(2, 3_600.0, 8), scrap];
    let cuts = vec![piece(10, 1, 880.0, 5)];
    let mut plan = Plan { stock, cuts, ..Plan::default() };
    // One of the scrap, four of a long one.
    let job = &cut(&plan).jobs[0];
    assert_eq!((job.count, job.bought, job.cost, job.is_proven), (2, 1, Money::whole(8), true));
    let pieces: u32 = job.ones.iter().map(|one| one.alike * u32::try_from(one.pieces.len()).unwrap()).sum();
    assert_eq!((pieces, job.bound), (5, Money::whole(8)));
    plan.stock[1].stock_price = Some(Money::whole(20));
    plan.cutting = Cutting { cut_for: Some(CutFor::Fewest), ..Cutting::default() };
    let job = &cut(&plan).jobs[0];
    assert_eq!((job.bought, job.cost, job.is_proven), (1, Money::whole(20), true));
}

#[test]
fn nothing_is_cut_from_the_bad_places_of_a_board() {
    let flaw = |id, from_mm, to_mm| Flaw { id, flawed: Some(1), flaw_from_mm: Some(from_mm), flaw_to_mm: Some(to_mm) };
    let stock = vec![Stock { at_hand: true, stock_price: None, ..board(1, 2_400.0, 0) }, board(2, 2_400.0, 6)];
    let cuts = vec![piece(10, 1, 1_150.0, 2)];
    let mut plan = Plan { stock, cuts, ..Plan::default() };
    assert_eq!(cut(&plan).jobs[0].bought, 0);
    // One piece on each side of a knot still goes, but not with a split at the end too.
    plan.flaws = vec![flaw(20, 1_160.0, 1_190.0)];
    let job = &cut(&plan).jobs[0];
    let saws: Vec<f64> = job.ones[0].saws.iter().map(|saw| saw.at_mm).collect();
    assert_eq!((job.bought, saws), (0, vec![1_150.0, 1_187.0, 2_340.0]));
    assert!((job.ones[0].pieces[1].along_mm - 1_190.0).abs() < 1e-9);
    plan.flaws.push(flaw(21, 2_300.0, 2_400.0));
    let job = &cut(&plan).jobs[0];
    assert_eq!((job.bought, job.is_proven), (1, true));
    // Half a flaw is not there yet; one that ends before it begins is named by its board.
    plan.flaws[1].flaw_to_mm = None;
    assert_eq!(cut(&plan).jobs[0].bought, 0);
    plan.flaws[1].flaw_to_mm = Some(2_000.0);
    let job = &cut(&plan).jobs[0];
    assert_eq!((job.fault, job.wrong), (Some(Fault::Flaws), Some(1)));
}

#[test]
fn a_cut_plan_is_told_as_it_is_paid() {
    let mut plan = Plan { stock: vec![board(1, 2_400.0, 6)], cuts: vec![piece(2, 1, 1_150.0, 3)], ..Plan::default() };
    (plan.purse.prices_include_tax, plan.purse.tax_percent) = (false, 25.into());
    let job = &cut(&plan).jobs[0];
    assert_eq!((job.bought, job.cost, job.bound, job.is_proven), (2, Money::whole(15), Money::whole(15), true));
}

#[test]
fn sheets_keep_the_grain_where_it_is_asked() {
    let sheet = Stock { stock_kind: StockKind::Sheet, material: Material::Plywood, ..board(1, 2_440.0, 30) };
    let sheet = Stock { width_mm: Some(1_220.0), thick_mm: Some(9.0), ..sheet };
    let part = Cut { width_mm: Some(2_000.0), ..piece(2, 1, 1_000.0, 1) };
    let mut plan = Plan { stock: vec![sheet], cuts: vec![part], ..Plan::default() };
    let job = cut(&plan).jobs.remove(0);
    assert_eq!((job.fault, job.bought, job.ones[0].pieces[0].is_turned), (None, 1, true));
    assert!(!job.ones[0].saws.is_empty());
    plan.cuts[0].keeps_grain = true;
    let job = cut(&plan).jobs.remove(0);
    assert_eq!((job.fault, job.wrong), (Some(Fault::PieceTooLarge), Some(2)));
}

#[test]
fn what_cannot_be_cut_is_named() {
    let plan = |stock: Stock, cut: Cut| Plan { stock: vec![stock], cuts: vec![cut], ..Plan::default() };
    let fault = |plan: &Plan| {
        let job = cut(plan).jobs.remove(0);
        (job.fault, job.wrong)
    };
    let ok = board(1, 2_400.0, 6);
    assert_eq!(fault(&plan(ok.clone(), piece(2, 1, 2_401.0, 1))), (Some(Fault::PieceTooLarge), Some(2)));
    assert_eq!(fault(&plan(ok.clone(), piece(2, 1, 0.0, 1))), (Some(Fault::PieceSize), Some(2)));
    assert_eq!(fault(&plan(ok.clone(), piece(2, 1, -4.0, 1))), (Some(Fault::PieceSize), Some(2)));
    assert_eq!(fault(&plan(board(1, 0.0, 6), piece(2, 1, 10.0, 1))), (Some(Fault::StockSize), Some(1)));
    let unpriced = Stock { stock_price: None, ..ok.clone() };
    assert_eq!(fault(&plan(unpriced, piece(2, 1, 10.0, 1))), (Some(Fault::StockPrice), Some(1)));
    let mut wrong = plan(ok.clone(), piece(2, 1, 10.0, 1));
    wrong.cutting.kerf_mm = Some(-1.0);
    assert_eq!(fault(&wrong), (Some(Fault::Kerf), None));
    let nothing = plan(ok, Cut { cut_from: None, ..piece(2, 1, 10.0, 1) });
    assert_eq!(cut(&nothing).from_nothing, [2]);
}

#[test]
fn ten_thousand_pieces_are_cut_or_refused_at_once() {
    let boards = Plan { stock: vec![board(1, 2_400.0, 6)], cuts: vec![piece(2, 1, 610.0, 10_000)], ..Plan::default() };
    let job = cut(&boards).jobs.remove(0);
    assert_eq!((job.fault, job.bought, job.is_proven), (None, 3_334, true));
    let sheet = Stock { stock_kind: StockKind::Sheet, ..board(1, 2_440.0, 30) };
    let part = Cut { width_mm: Some(50.0), ..piece(2, 1, 100.0, 10_000) };
    let job = cut(&Plan { stock: vec![sheet], cuts: vec![part], ..Plan::default() }).jobs.remove(0);
    assert_eq!((job.fault, job.most), (Some(Fault::TooManyPieces), 1_000));
}

#[test]
fn too_few_boards_say_what_is_missing() {
    let stock = Stock { how_many: Some(1), ..board(1, 2_400.0, 6) };
    let plan = Plan { stock: vec![stock], cuts: vec![piece(2, 1, 1_000.0, 3)], ..Plan::default() };
    let job = cut(&plan).jobs.remove(0);
    assert_eq!((job.missing[0].cut, job.missing[0].count), (2, 1));
}

#[test]
fn a_nominal_size_is_as_thick_and_wide_as_the_standard_says() {
    let stock = |nominal| Stock { nominal: Some(nominal), ..board(1, 2_400.0, 6) };
    assert_eq!(stock(Nominal::By1x4).section_mm(), (Some(19.0), Some(89.0)));
    assert_eq!(stock(Nominal::By2x6).section_mm(), (Some(38.0), Some(140.0)));
    let (thick_mm, width_mm) = stock(Nominal::PanelHalf).section_mm();
    assert!((thick_mm.unwrap() - 11.906).abs() < 0.001);
    assert_eq!(width_mm, Some(90.0));
}

#[test]
fn what_is_bought_is_in_the_kit_and_the_money_by_one_change_and_taken_back_by_one() {
    let mut plan = Plan {
        calendar: Calendar { leaves_on: Some(date(2027, 5, 1)), ..Calendar::default() },
        stays: vec![Stay { id: 90, nights: 1, ..Stay::default() }],
        stock: vec![board(1, 2_400.0, 6)],
        cuts: vec![piece(2, 1, 1_150.0, 4)],
        ..van()
    };
    plan.purse.opening_cash = Some(Money::whole(100));
    let before = plan.clone();
    let bought = stock_to_buy(&plan, &cut(&plan));
    let undo = into_kit(&plan, &bought).apply(&mut plan).unwrap();
    let item = &plan.kit[0];
    assert_eq!(
        (item.quantity, item.length_mm, item.width_mm, item.height_mm),
        (2, Some(2_400.0), Some(90.0), Some(20.0))
    );
    assert!(item.mass_kg.unwrap().likely() > 1.0);
    assert_eq!(plan.stock[0].bought_as, Some(item.id));
    let as_of = date(2027, 3, 1);
    let paid =
        |plan: &Plan| assess(plan, as_of).money.flows.iter().map(|flow| flow.amount).fold(Money::ZERO, |a, b| a + b);
    assert_eq!(paid(&before) - paid(&plan), Money::whole(12));
    // Once more brings the same entry up to date.
    plan.cuts[0].pieces = 5;
    let more = into_kit(&plan, &stock_to_buy(&plan, &cut(&plan)));
    more.apply(&mut plan).unwrap();
    assert_eq!((plan.kit.len(), plan.kit[0].quantity), (1, 3));
    plan.cuts[0].pieces = 4;
    into_kit(&plan, &stock_to_buy(&plan, &cut(&plan))).apply(&mut plan).unwrap();
    undo.apply(&mut plan).unwrap();
    assert_eq!(plan, before);
}

#[test]
fn a_plan_with_materials_is_the_same_after_its_file() {
    let plan = Plan {
        stock: vec![Stock { nominal: Some(Nominal::PanelHalf), at_hand: true, ..board(1, 2_400.0, 6) }],
        flaws: vec![Flaw { id: 5, flawed: Some(1), flaw_from_mm: Some(320.5), flaw_to_mm: Some(400.0) }],
        cuts: vec![piece(2, 1, 640.0, 4)],
        cutting: Cutting { kerf_mm: Some(2.2), trim_mm: Some(8.0), cut_for: Some(CutFor::Fewest) },
        coverings: vec![Covering { id: 3, surface: Surface::Roof, coats: Some(2), ..Covering::default() }],
        material_packs: vec![MaterialPack {
            id: 4,
            covering: Some(3),
            pack_mm: Some(9_000.0),
            ..MaterialPack::default()
        }],
        ..Plan::default()
    };
    assert_eq!(Plan::from_plain(&plan.to_plain()).unwrap(), plan);
}
