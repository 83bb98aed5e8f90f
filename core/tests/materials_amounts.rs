//! Areas to packs, offers in other packs, and lumber, worked by hand.
#![allow(clippy::unwrap_used, clippy::float_cmp, reason = "a test stops at what it did not expect")]

use kerbstead_core::materials::coverage::{Roll, by_rate, packs_for, paint_m2, screws_in_row, strips, with_waste};
use kerbstead_core::materials::lumber::{Species, actual, board_feet, density_kg_m3, mass, panel_thickness_in};
use kerbstead_core::materials::offers::{PackOffer, Wanted, buy_in_turn, compare};
use kerbstead_core::plan::Quantity;
use kerbstead_core::shop::Pack;
use rust_decimal::Decimal;

fn decimal(text: &str) -> Decimal {
    text.parse().unwrap()
}

#[test]
fn what_just_fits_takes_no_pack_more() {
    for (amount, per_pack, packs, left) in [
        ("0", "3", 0, "0"),
        ("9", "3", 3, "0"),
        ("9.000000001", "3", 4, "2.999999999"),
        ("1", "0.1", 10, "0"),
        ("0.3", "0.1", 3, "0"),
        ("7", "0.7", 10, "0"),
        ("10", "3.333333333333", 4, "3.333333333332"),
        ("2.9768", "2.9768", 1, "0"),
    ] {
        assert_eq!(
            packs_for(decimal(amount), decimal(per_pack)),
            Some((packs, decimal(left))),
            "{amount} by {per_pack}"
        );
    }
    assert_eq!(packs_for(decimal("1"), Decimal::ZERO), None);
    assert_eq!(packs_for(decimal("-1"), Decimal::ONE), None);
    assert_eq!(packs_for(Decimal::MAX, decimal("0.0001")), None);
}

#[test]
fn waste_comes_on_top() {
    // Walls of 2.4 x 1.9 m, two of them, less a window of 0.6 x 0.4 m.
    assert_eq!(with_waste(decimal("8.88"), decimal("12.5")), Some(decimal("9.99")));
    assert_eq!(with_waste(decimal("8.88"), decimal("-1")), None);
    assert_eq!(with_waste(decimal("-8.88"), decimal("1")), None);
}

/// Source: the project's table of reference values, by arithmetic: an exact fit buys no pack more.
#[test]
fn an_area_less_openings_with_waste_takes_as_many_packs_as_by_hand() {
    let needed = with_waste(decimal("11.4") - decimal("1.35"), decimal("10")).unwrap();
    assert_eq!(packs_for(needed, decimal("2.88")), Some((4, decimal("0.465"))));
}

/// Source: the project's table of reference values, by division: 3.79 for 0.946 L against 12.98 for 3.785 L.
#[test]
fn the_larger_pack_is_cheaper_by_the_litre() {
    let offer = |amount: &str, price: &str| PackOffer {
        pack: Pack { amount: decimal(amount), quantity: Quantity::VolumeL },
        price: price.parse().unwrap(),
        tax_percent: Decimal::ZERO,
        includes_tax: true,
    };
    let wanted = Wanted { amount: decimal("0.9"), quantity: Quantity::VolumeL, of_use_percent: Decimal::ZERO };
    let found = compare(&[offer("0.946", "3.79"), offer("3.785", "12.98")], wanted, 2);
    let each = found.offers.iter().map(|offer| offer.unwrap().unit_price.price.decimal());
    let by_hand = [decimal("4.0063"), decimal("3.4293")];
    assert!(each.zip(by_hand).all(|(found, by_hand)| (found - by_hand).abs() < decimal("0.001")));
    assert_eq!((found.cheapest, found.cheapest_by_unit), (Some(0), Some(1)));
}

#[test]
fn paint_glue_and_screws_are_counted_by_hand() {
    // Two coats of 8.88 m² are 17.76 m²; a can of 0.75 L at 12 m² a litre covers 9.
    assert_eq!(packs_for(paint_m2(decimal("8.88"), 2).unwrap(), decimal("9")), Some((2, decimal("0.24"))));
    // A litre that covers 9 m², three coats of 6 m²: two litres just do, though neither third is a decimal.
    assert_eq!(packs_for(paint_m2(decimal("6"), 3).unwrap(), decimal("9")), Some((2, Decimal::ZERO)));
    assert_eq!(by_rate(decimal("8.88"), decimal("0.25")), Some(decimal("2.22")));
    for (row, edge, spacing, count) in [
        (600.0, 0.0, 150.0, Some(5)),
        (600.1, 0.0, 150.0, Some(6)),
        (40.0, 20.0, 150.0, Some(1)),
        (0.0, 0.0, 9.0, None),
        (9.0, 0.0, 0.0, None),
    ] {
        assert_eq!(screws_in_row(row, edge, spacing), count, "{row} {edge} {spacing}");
    }
}

#[test]
fn rolls_are_counted_in_strips() {
    let roll = Roll { length_mm: 10_000.0, width_mm: 1_000.0, overlap_mm: 100.0 };
    let rolls =
        |run: f64, side: f64| strips(roll, run, side, 0.0).map(|found| (found.strips, found.per_roll, found.rolls));
    assert_eq!(rolls(2_500.0, 1_000.0), Some((1, 4, 1)));
    assert_eq!(rolls(2_500.0, 1_900.0), Some((2, 4, 1)));
    assert_eq!(rolls(2_500.0, 4_600.0), Some((5, 4, 2)));
    assert_eq!(rolls(2_500.1, 4_600.0), Some((5, 3, 2)));
    assert_eq!(rolls(10_000.1, 1_000.0), None);
    assert_eq!(strips(Roll { overlap_mm: 1_000.0, ..roll }, 100.0, 100.0, 0.0), None);
}

#[test]
fn what_is_left_over_goes_to_the_next_area() {
    let pack = PackOffer {
        pack: Pack { amount: decimal("2.5"), quantity: Quantity::VolumeL },
        price: "20".parse().unwrap(),
        tax_percent: decimal("10"),
        includes_tax: false,
    };
    let bought = buy_in_turn(&[decimal("6"), decimal("1.2"), decimal("2.8")], &pack, decimal("0.5"), 2).unwrap();
    let told = bought.iter().map(|one| (one.from_left_over, one.packs, one.price.total.to_string(), one.left_over));
    let by_hand = [("0.5", 3, "66.00", "2"), ("1.2", 0, "0.00", "0.8"), ("0.8", 1, "22.00", "0.5")];
    for (told, by_hand) in told.zip(by_hand) {
        assert_eq!((told.0, told.1, told.3), (decimal(by_hand.0), by_hand.1, decimal(by_hand.3)));
        assert_eq!(decimal(&told.2), decimal(by_hand.2));
    }
    assert_eq!(buy_in_turn(&[decimal("-1")], &pack, Decimal::ZERO, 2), None);
}

#[test]
fn the_cheapest_offer_depends_on_what_is_needed_and_what_the_rest_is_worth() {
    let offer = |amount: &str, price: &str, includes_tax: bool| PackOffer {
        pack: Pack { amount: decimal(amount), quantity: Quantity::VolumeL },
        price: price.parse().unwrap(),
        tax_percent: decimal("20"),
        includes_tax,
    };
    let wanted = |amount: &str, of_use: &str| Wanted {
        amount: decimal(amount),
        quantity: Quantity::VolumeL,
        of_use_percent: decimal(of_use),
    };
    // 0.75 L for 12, 2.5 L for 30, 10 L for 75 without the tax, which makes 90: 16, 12 and 9 a litre.
    let offers = [offer("0.75", "12", true), offer("2.5", "30", true), offer("10", "75", false)];
    let cheapest = |amount: &str, of_use: &str| compare(&offers, wanted(amount, of_use), 2).cheapest;
    assert_eq!([cheapest("0.75", "0"), cheapest("2.5", "0"), cheapest("9", "0")], [Some(0), Some(1), Some(2)]);
    // All of the rest of use: the least by the litre.
    assert_eq!([cheapest("0.75", "100"), cheapest("2.5", "100")], [Some(2), Some(2)]);
    let found = compare(&offers, wanted("2.5", "50"), 2);
    assert_eq!(found.cheapest_by_unit, Some(2));
    let large = found.offers[2].unwrap();
    // 7.5 L are left, worth 67.50, half of which is of use.
    assert_eq!(
        (large.packs, large.left_over, large.price.total, large.counted),
        (1, decimal("7.5"), "90".parse().unwrap(), "56.25".parse().unwrap())
    );
    let weighed = PackOffer { pack: Pack { amount: Decimal::ONE, quantity: Quantity::MassKg }, ..offers[0] };
    let none = compare(&[weighed, offer("0", "1", true)], wanted("1", "0"), 2);
    assert_eq!((none.cheapest, none.offers), (None, vec![None, None]));
}

/// Source: PS 20, and the definition of the board foot.
#[test]
fn nominal_sizes_are_what_the_standard_has() {
    for (nominal, inches, mm) in [
        ("1x4", (0.75, 3.5), (19.0, 89.0)),
        ("2x4", (1.5, 3.5), (38.0, 89.0)),
        ("2 x 6", (1.5, 5.5), (38.0, 140.0)),
        ("1x2", (0.75, 1.5), (19.0, 38.0)),
        ("2×12", (1.5, 11.25), (38.0, 286.0)),
        ("4X4", (3.5, 3.5), (89.0, 89.0)),
        ("1.25x6", (1.0, 5.5), (25.0, 140.0)),
    ] {
        let size = actual(nominal).unwrap();
        assert_eq!(((size.thickness_in, size.width_in), (size.thickness_mm, size.width_mm)), (inches, mm), "{nominal}");
        // Whole millimetres are those nearest to the inches.
        assert!(
            (size.width_in * 25.4 - size.width_mm).abs() <= 0.5
                && (size.thickness_in * 25.4 - size.thickness_mm).abs() <= 0.5
        );
    }
    for wrong in ["", "2", "2x", "x4", "2x4x8", "0x4", "-2x4", "2x9", "NaNx4", "infx4"] {
        assert_eq!(actual(wrong), None, "{wrong}");
    }
    assert_eq!(panel_thickness_in(0.5), Some(15.0 / 32.0));
    assert_eq!(panel_thickness_in(0.6), None);
    assert_eq!(board_feet("2x4", 8.0, 6), Some(32.0));
    assert_eq!(board_feet("1x12", 1.0, 1), Some(1.0));
    assert_eq!(board_feet("0.75x12", 1.0, 1), Some(1.0));
    assert_eq!(board_feet("2x4", f64::NAN, 6), None);
}

#[test]
fn wood_weighs_what_its_gravity_and_its_water_say() {
    // Without water nothing is swollen; at 12 % of water 0.42 becomes 0.42 / 1.04536 * 1.12.
    assert_eq!(density_kg_m3(0.5, 0.0), 500.0);
    assert!((density_kg_m3(0.42, 12.0) - 449.99).abs() < 0.1);
    // A 2x4 of 2440 mm is 0.0381 * 0.0889 * 2.44 m³.
    let range = mass(Species::SprucePineFir, "2x4", 2_440.0, 1).unwrap();
    assert!((range.likely_kg - 0.0381 * 0.0889 * 2.44 * 449.99).abs() < 0.01);
    for species in Species::ALL {
        let range = mass(species, "2x4", 2_440.0, 10).unwrap();
        assert!(
            range.low_kg < range.likely_kg && range.likely_kg < range.high_kg && range.high_kg < 1.3 * range.likely_kg
        );
    }
    assert_eq!(mass(Species::HemFir, "2x4", f64::INFINITY, 1), None);
    assert_eq!(mass(Species::HemFir, "2x4", -1.0, 1), None);
}
