//! Lines of arithmetic in a field, against values worked out by hand, published factors and generated sums.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::{NumberMarks, Path, Quantity, Wrong, field, is_calculation, typed_value};
use kerbstead_core::words::{Units, unit};
use proptest::prelude::*;
use serde_json::Value;

const POINT: NumberMarks = NumberMarks { decimal: '.', group: ',' };
const COMMA: NumberMarks = NumberMarks { decimal: ',', group: '.' };
const SPACE: NumberMarks = NumberMarks { decimal: ',', group: '\u{202f}' };

fn typed(path: &str, text: &str, marks: NumberMarks, factor: f64) -> Result<Value, Wrong> {
    typed_value(field::at(&Path::from(path)).unwrap(), text, marks, factor)
}

/// As read for cash, which may be negative.
fn money(text: &str) -> Result<String, Wrong> {
    typed("purse/opening_cash", text, POINT, 1.0).map(|value| value.as_str().unwrap().to_owned())
}

#[test]
fn amounts_are_worked_out_as_on_a_shop_calculator() {
    for (text, expected) in [
        ("3*12.50", "37.50"),
        ("3*12.50+8%", "40.5000"),
        ("3 x 12.50 + 8 %", "40.5000"),
        ("2×4÷5", "1.6"),
        ("80-20%", "64.00"),
        ("80 \u{2212} 20%", "64.00"),
        // Each on what stands before: 100, 110, 121.
        ("100+10%+10%", "121.0000"),
        // Of the bracket, not of the whole.
        ("100+(50+10%)", "155.00"),
        ("200*5%", "10.00"),
        ("200/5%", "4000"),
        // A product of a percentage is no share: 100 + 50 × 0.08.
        ("100+50*8%", "104.00"),
        ("8%", "0.08"),
        ("2+3*4", "14"),
        ("(2+3)*4", "20"),
        ("10-2-3", "5"),
        ("24/4/2", "3"),
        ("24/(4/2)", "12"),
        ("1/(1/4+1/4)", "2"),
        ("-5+8", "3"),
        ("3*-2", "-6"),
        ("7--2", "9"),
        ("1,234.50+1", "1235.50"),
        ("1 234.50+1", "1235.50"),
        ("1 1/2", "1.5"),
        ("10/3", "3.333333"),
        ("-20/3", "-6.666667"),
        ("€12.50", "12.50"),
        ("12.50 €", "12.50"),
        ("$3*2", "6"),
        ("0.1+0.2", "0.3"),
    ] {
        let worked = money(text);
        let is_right = worked.as_ref().is_ok_and(|worked| {
            let [worked, expected] = [worked, expected].map(|text| text.parse::<rust_decimal::Decimal>().unwrap());
            worked == expected
        });
        assert!(is_right, "{text}: {worked:?}, not {expected}");
    }
}

#[test]
fn numbers_in_a_line_are_written_as_where_the_person_lives() {
    for (text, marks, expected) in [
        ("3*12,50+8%", COMMA, "40.5"),
        ("1.234,50+1", COMMA, "1235.5"),
        ("1.234*2", COMMA, "2468"),
        ("1.5*2", COMMA, "3"),
        ("1\u{202f}234,5*2", SPACE, "2469"),
        ("1 234,5*2", SPACE, "2469"),
        ("1,234*2", POINT, "2468"),
        ("1'234.5*2", POINT, "2469"),
    ] {
        let worked = typed("purse/opening_cash", text, marks, 1.0).unwrap();
        let worked: rust_decimal::Decimal = worked.as_str().unwrap().parse().unwrap();
        assert_eq!(worked, expected.parse().unwrap(), "{text} {marks:?}");
    }
}

#[test]
fn units_are_turned_into_the_fields_own() {
    // Factors: NIST Handbook 44, appendix C, and NIST SP 811, appendix B.8; exact (from memory).
    for (path, text, expected) in [
        ("kit/1/length_mm", "4 ft 8 in", 4.0 * 304.8 + 8.0 * 25.4),
        ("kit/1/length_mm", "4'8\"", 1_422.4),
        ("kit/1/length_mm", "4ft8in", 1_422.4),
        ("kit/1/length_mm", "2 x 6 m", 12_000.0),
        ("kit/1/length_mm", "2x6m", 12_000.0),
        ("kit/1/length_mm", "3/4 in", 19.05),
        ("kit/1/length_mm", "2 3/4 in", 69.85),
        ("kit/1/length_mm", "4 ft 8 1/2 in.", 1_435.1),
        ("kit/1/length_mm", "2 yd - 1 ft", 1_524.0),
        ("kit/1/length_mm", "60 CM", 600.0),
        ("kit/1/length_mm", "(1 m - 40 cm) / 2", 300.0),
        ("kit/1/length_mm", "1 m + 10%", 1_100.0),
        ("kit/1/mass_kg", "1.5 kg", 1.5),
        ("kit/1/mass_kg", "1.2 t", 1_200.0),
        ("kit/1/mass_kg", "500 g + 500 g", 1.0),
        ("kit/1/mass_kg", "12 oz", 0.340_194_277_5),
        ("kit/1/mass_kg", "2 lb 3 oz", 2.0 * 0.453_592_37 + 3.0 * 0.028_349_523_125),
        ("kit/1/tank/capacity_l", "500 ml", 0.5),
        ("kit/1/tank/capacity_l", "6 x 1.5 l", 9.0),
        ("kit/1/tank/capacity_l", "75cl", 0.75),
        ("kit/1/tank/capacity_l", "2 gal", 7.570_823_568),
        ("kit/1/tank/capacity_l", "1 qt", 0.946_352_946),
        ("kit/1/tank/capacity_l", "1 pt", 0.473_176_473),
        ("kit/1/tank/capacity_l", "1 cup", 0.236_588_236_5),
        ("kit/1/tank/capacity_l", "128 fl oz", 3.785_411_784),
        ("kit/1/tank/capacity_l", "16 fl. oz.", 0.473_176_473),
        ("kit/1/store/usable_wh", "1.2 kWh", 1_200.0),
        ("kit/1/draw/power_w", "2 kW", 2_000.0),
        ("kit/1/draw/hours_per_day", "20 min", 1.0 / 3.0),
        ("kit/1/draw/hours_per_day", "1 h 30 min", 1.5),
        ("kit/1/draw/hours_per_day", "3 x 90 s", 0.075),
        ("kit/1/draw/from_hour", "18 h 30 min", 18.5),
        ("kit/1/draw/duty_percent", "20% + 8%", 28.0),
        ("kit/1/draw/duty_percent", "3/4 %", 0.75),
        ("stays/1/drive_km", "100 mi", 160.934_4),
        ("stays/1/drive_km", "1500 m", 1.5),
        ("stays/1/nights", "2 weeks", 14.0),
        ("vehicle/socket_fuse_a", "7500 mA", 7.5),
        ("belongings/1/kept/floor_m2", "3500 cm²", 0.35),
        ("belongings/1/kept/floor_m2", "2 ft²", 0.185_806_08),
        ("belongings/1/kept/floor_m2", "0.6 x 0.4 sqm", 0.24),
    ] {
        let worked = typed(path, text, POINT, 1.0).map(|value| value.as_f64().unwrap());
        let is_right = worked.as_ref().is_ok_and(|worked| (worked - expected).abs() <= expected * 1e-14);
        assert!(is_right, "{path} {text}: {worked:?}, not {expected}");
    }
}

/// The units that are typed and those that are shown agree.
#[test]
fn one_of_each_unit_shown_is_what_it_is_shown_by() {
    for (path, text, quantity) in [
        ("kit/1/mass_kg", "1 lb", Quantity::MassKg),
        ("kit/1/length_mm", "1 in", Quantity::LengthMm),
        ("stays/1/drive_km", "1 mi", Quantity::DistanceKm),
        ("kit/1/tank/capacity_l", "1 gal", Quantity::VolumeL),
        ("belongings/1/kept/floor_m2", "1 ft²", Quantity::AreaM2),
    ] {
        assert_eq!(typed(path, text, POINT, 1.0).unwrap(), unit(quantity, Units::UsCustomary).factor, "{text}");
    }
}

/// A bare number is in the unit that stands beside the field, one with a unit is not converted again.
#[test]
fn only_bare_numbers_are_in_the_unit_beside_the_field() {
    let inch = 25.4;
    assert_eq!(typed("kit/1/length_mm", "2*3", POINT, inch).unwrap(), 6.0 * inch);
    assert_eq!(typed("kit/1/length_mm", "10 cm", POINT, inch).unwrap(), 100.0);
}

#[test]
fn what_does_not_come_out_is_refused_with_what_would_be_right() {
    use Wrong as W;
    type IsRight = fn(&Wrong) -> bool;
    let refused: [(&str, &str, IsRight); 25] = [
        (
            "kit/1/length_mm",
            "3 kg",
            |wrong| matches!(wrong, W::OtherUnit { unit, units } if unit == "kg" && units.contains("mm")),
        ),
        ("kit/1/mass_kg", "3 apples", |wrong| matches!(wrong, W::OtherUnit { .. })),
        ("kit/1/unit_price", "3 kg", |wrong| matches!(wrong, W::NoUnit { .. })),
        ("kit/1/quantity", "3 boxes", |wrong| matches!(wrong, W::NoUnit { .. })),
        ("kit/1/length_mm", "2 m + 3", |wrong| matches!(wrong, W::UnitsMixed)),
        ("kit/1/length_mm", "2 m * 3 m", |wrong| matches!(wrong, W::UnitsMixed)),
        ("kit/1/length_mm", "2 m / 3 m", |wrong| matches!(wrong, W::UnitsMixed)),
        ("kit/1/length_mm", "2 / (3 m)", |wrong| matches!(wrong, W::UnitsMixed)),
        ("kit/1/unit_price", "3/0", |wrong| matches!(wrong, W::DividedByNothing)),
        ("kit/1/unit_price", "3/(2-2)", |wrong| matches!(wrong, W::DividedByNothing)),
        ("kit/1/length_mm", "3/0 in", |wrong| matches!(wrong, W::DividedByNothing)),
        ("kit/1/unit_price", "3*", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "*3", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "(3", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "3)", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "3 + + 4 5", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "()", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "2 (3)", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/unit_price", "1.2.3+1", |wrong| matches!(wrong, W::NotMoney { .. })),
        ("kit/1/length_mm", "5'8", |wrong| matches!(wrong, W::NotANumber { .. })),
        ("kit/1/length_mm", "4 ft 8", |wrong| matches!(wrong, W::NotANumber { .. })),
        ("kit/1/unit_price", "99999999999999*99999999999999*9999", |wrong| matches!(wrong, W::TooMuchMoney { .. })),
        ("kit/1/unit_price", "3-5", |wrong| matches!(wrong, W::NegativeMoney)),
        ("kit/1/mass_kg", "1000*1000", |wrong| matches!(wrong, W::OutOfRange { .. })),
        ("kit/1/quantity", "5/2", |wrong| matches!(wrong, W::NotWhole { .. })),
    ];
    for (path, text, is_right) in refused {
        let read = typed(path, text, POINT, 1.0);
        assert!(read.as_ref().is_err_and(is_right), "{path} {text}: {read:?}");
    }
}

#[test]
fn counts_and_rates_are_worked_out_too() {
    assert_eq!(typed("kit/1/quantity", "3*4", POINT, 1.0).unwrap(), 12);
    assert_eq!(typed("kit/1/quantity", "10/2.5", POINT, 1.0).unwrap(), 4);
    assert_eq!(typed("purse/tax_percent", "7 + 1.25", POINT, 1.0).unwrap(), "8.25");
    assert_eq!(typed("purse/tax_percent", "8.25%", POINT, 1.0).unwrap(), "8.25");
    assert!(matches!(typed("purse/tax_percent", "60*2", POINT, 1.0), Err(Wrong::OutOfRange { .. })));
}

#[test]
fn a_plain_number_is_no_calculation() {
    let kind = field::at(&Path::from("kit/1/unit_price")).unwrap().kind;
    for (text, expected) in
        [("12.50", false), (" 1,234 ", false), ("-5", false), ("", false), ("3*4", true), ("€5", true)]
    {
        assert_eq!(is_calculation(&kind, text, POINT), expected, "{text}");
    }
    let name = field::at(&Path::from("kit/1/name")).unwrap().kind;
    assert!(!is_calculation(&name, "3*4", POINT));
}

#[test]
fn what_is_nested_too_deep_or_too_long_is_refused() {
    let nested = |depth: usize| format!("{}1{}", "(".repeat(depth), ")".repeat(depth));
    assert_eq!(money(&nested(16)).unwrap(), "1");
    assert!(matches!(money(&nested(17)), Err(Wrong::NotMoney { .. })));
    assert!(matches!(money(&"(".repeat(100_000)), Err(Wrong::NotMoney { .. })));
    assert!(matches!(money(&format!("1{}", "+1".repeat(100))), Err(Wrong::NotMoney { .. })));
    assert_eq!(money(&format!("1{}", "+1".repeat(99))).unwrap(), "100");
}

/// A line and what it comes to as a fraction of whole numbers, known from how it was made.
#[derive(Clone, Debug)]
struct Line {
    text: String,
    over: i128,
    under: i128,
    /// Whether it needs brackets inside a sum or product: 0 for a number, 1 for a product, 2 for a sum.
    rank: u8,
}

impl Line {
    fn within(&self, rank: u8) -> String {
        if self.rank > rank { format!("({})", self.text) } else { self.text.clone() }
    }

    fn joined(&self, sign: char, other: &Self) -> Self {
        let (a, b, c, d) = (self.over, self.under, other.over, other.under);
        let (over, under, rank) = match sign {
            '+' => (a * d + c * b, b * d, 2),
            '-' => (a * d - c * b, b * d, 2),
            '*' => (a * c, b * d, 1),
            _ => (a * d, b * c, 1),
        };
        let text = format!("{}{sign}{}", self.within(rank), other.within(rank - 1));
        Self { text, over, under, rank }.reduced()
    }

    /// That much more or less of a hundred.
    fn with_share(&self, percent: i128) -> Self {
        let text = format!("{}{}{}%", self.within(2), if percent < 0 { '-' } else { '+' }, percent.abs());
        Self { text, over: self.over * (100 + percent), under: self.under * 100, rank: 2 }.reduced()
    }

    /// With the least numbers that are the same fraction; one over nought stays over nought.
    fn reduced(self) -> Self {
        let (mut divisor, mut rest) = (self.over, self.under);
        while rest != 0 {
            (divisor, rest) = (rest, divisor % rest);
        }
        if self.under == 0 { self } else { Self { over: self.over / divisor, under: self.under / divisor, ..self } }
    }
}

fn numbers() -> impl Strategy<Value = Line> {
    (0_i128..1_000, 0_u32..3).prop_map(|(digits, decimals)| {
        let under = 10_i128.pow(decimals);
        let fraction = format!(".{:0width$}", digits % under, width = decimals as usize);
        let text = format!("{}{}", digits / under, if decimals == 0 { "" } else { &fraction });
        Line { text, over: digits, under, rank: 0 }
    })
}

/// Nothing is divided by more than a number: what only rounding keeps from being nought is no divisor.
fn lines() -> impl Strategy<Value = Line> {
    numbers().prop_recursive(4, 10, 2, |inner| {
        let share = (inner.clone(), -90_i128..90).prop_map(|(line, percent)| line.with_share(percent));
        let divided = (inner.clone(), numbers()).prop_map(|(line, other)| line.joined('/', &other));
        let joined = (inner.clone(), prop::sample::select(vec!['+', '-', '*']), inner)
            .prop_map(|(line, sign, other)| line.joined(sign, &other));
        prop_oneof![1 => share, 1 => divided, 3 => joined]
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn lines_come_to_what_they_were_made_for(line in lines(), has_comma in any::<bool>()) {
        let (text, marks) = if has_comma { (line.text.replace('.', ","), COMMA) } else { (line.text.clone(), POINT) };
        // The field takes energy from 0 to 200,000.
        let read = typed("kit/1/store/usable_wh", &text, marks, 1.0);
        if line.under == 0 {
            prop_assert!(matches!(read, Err(Wrong::DividedByNothing)), "{}: {:?}", line.text, read);
            return Ok(());
        }
        let expected = line.over as f64 / line.under as f64;
        let is_out = matches!(read, Err(Wrong::OutOfRange { .. }));
        if is_out || !(0.0..=200_000.0).contains(&expected) {
            let is_at_the_edge = expected.abs() < 1e-12 || (expected - 200_000.0).abs() < 1e-6;
            prop_assert!(is_out && !(0.0..=200_000.0).contains(&expected) || is_at_the_edge, "{}: {:?}", line.text, read);
            return Ok(());
        }
        let worked = read.unwrap().as_f64().unwrap();
        prop_assert!((worked - expected).abs() <= expected * 1e-12 + 1e-15, "{}: {} {}", line.text, worked, expected);
    }

    #[test]
    fn nothing_typed_breaks_it(text in "[-0-9 .,+*/x%()a-z'\"€×÷]{0,40}", comma in any::<bool>()) {
        let marks = if comma { COMMA } else { POINT };
        for path in ["kit/1/unit_price", "kit/1/length_mm", "kit/1/quantity", "purse/tax_percent", "kit/1/draw/hours_per_day"] {
            let read = typed(path, &text, marks, 1.0);
            if let Ok(value) = &read {
                prop_assert!(value.as_f64().is_none_or(f64::is_finite), "{}: {:?}", text, read);
            }
        }
    }

    #[test]
    fn nothing_pasted_breaks_it(text in "\\PC{0,60}") {
        for path in ["kit/1/unit_price", "kit/1/length_mm", "purse/tax_percent"] {
            let _ = typed(path, &text, POINT, 1.0);
        }
    }
}
