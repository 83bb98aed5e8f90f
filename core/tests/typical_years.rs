//! Typical years as short text, climates by month, and what is said of a file that was not read. The means of the two years
//! are those of `tests/data/sun.json`, computed with pvlib 0.16.1.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::draws::Chance;
use kerbstead_core::sun::climates::Climate;
use kerbstead_core::sun::sky::extraterrestrial_day_wh_m2;
use kerbstead_core::sun::typical::{Fault, MOST_LINES, TypicalHour, TypicalMonth, TypicalYear, Unreadable};
use kerbstead_core::sun::{Irradiance, Place};
use kerbstead_core::words::{Plain, Units, Words};
use serde_json::Value;

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

fn table() -> Value {
    serde_json::from_str(include_str!("../../tests/data/sun.json")).unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

/// The two years of the table. It has no warmest hour: the mean high and 5 degrees stand for it.
fn years() -> Vec<TypicalYear> {
    let table = table();
    table["years"].as_array().unwrap().iter().map(year).collect()
}

fn year(value: &Value) -> TypicalYear {
    let place = &value["place"];
    let place =
        Place { latitude_deg: number(&place[0]), longitude_deg: number(&place[1]), altitude_m: number(&place[2]) };
    let months: Vec<_> = value["months"].as_array().unwrap().iter().map(month).collect();
    TypicalYear { place, utc_offset_h: number(&value["utc_offset_h"]), months: months.try_into().unwrap() }
}

fn month(value: &Value) -> TypicalMonth {
    let hours: Vec<_> = value["hours"].as_array().unwrap().iter().map(hour).collect();
    let high_c = number(&value["high_c"]);
    TypicalMonth {
        hours: hours.try_into().unwrap(),
        low_c: number(&value["low_c"]),
        high_c,
        coldest_c: number(&value["coldest_c"]),
        warmest_c: high_c + 5.0,
        days: u32::try_from(value["days"].as_u64().unwrap()).unwrap(),
    }
}

fn hour(value: &Value) -> TypicalHour {
    let [global_w_m2, beam_w_m2, diffuse_w_m2, air_c] = [0, 1, 2, 3].map(|at| number(&value[at]));
    TypicalHour { sky: Irradiance { global_w_m2, beam_w_m2, diffuse_w_m2 }, air_c }
}

fn back(text: &str, of: &TypicalYear) -> Option<TypicalYear> {
    TypicalYear::of_text(text, of.place, of.utc_offset_h)
}

fn numbers(year: &TypicalYear) -> Vec<f64> {
    let of_month = |month: &TypicalMonth| {
        let ends = [month.low_c, month.high_c, month.coldest_c, month.warmest_c, f64::from(month.days)];
        let hours = month.hours.iter().flat_map(|hour| {
            let sky = hour.sky;
            [sky.global_w_m2, sky.beam_w_m2, sky.diffuse_w_m2, hour.air_c * 10.0]
        });
        ends.map(|degrees| degrees * 10.0).into_iter().chain(hours).collect::<Vec<_>>()
    };
    year.months.iter().flat_map(of_month).collect()
}

#[test]
fn a_year_as_text_comes_back_to_the_watt_and_the_tenth_of_a_degree() {
    for year in years() {
        let text = year.to_text();
        println!("{} characters", text.len());
        assert!(text.len() < 1_700, "{}", text.len());
        assert!(text.bytes().all(|letter| LETTERS.contains(&letter)));
        let kept = back(&text, &year).unwrap();
        for (found, expected) in numbers(&kept).into_iter().zip(numbers(&year)) {
            assert!((found - expected).abs() <= 0.500_001, "{found} {expected}");
        }
        // Once rounded it is the same for ever.
        assert_eq!(kept.to_text(), text);
        assert_eq!(back(&kept.to_text(), &year), Some(kept));
    }
}

#[test]
fn a_text_that_is_no_whole_year_is_none() {
    for year in years() {
        let text = year.to_text();
        for end in 0..text.len() {
            assert_eq!(back(&text[..end], &year), None, "{end}");
        }
        for other in ["A", "_", "-", " ", "é", "\0", "\n"] {
            assert_eq!(back(&format!("{text}{other}"), &year), None, "{other:?}");
        }
        assert_eq!(back(&format!("2{}", &text[1..]), &year), None);
        assert_eq!(back(&format!(" {text}"), &year), None);
    }
}

#[test]
fn damaged_texts_never_break_the_reader() {
    let mut chance = Chance::new(17);
    for year in years() {
        let text = year.to_text();
        let mut read = 0;
        for _ in 0..20_000 {
            let mut letters: Vec<char> = text.chars().collect();
            for _ in 0..=chance.below(4) {
                let at = 1 + chance.below(u32::try_from(letters.len()).unwrap() - 1) as usize;
                let letter = match chance.below(70) {
                    number @ 0..64 => char::from(LETTERS[number as usize]),
                    number => ['é', ' ', '+', '\0', '"', '💧'][number as usize - 64],
                };
                match chance.below(4) {
                    0 => letters.insert(at, letter),
                    1 => drop(letters.remove(at)),
                    _ => letters[at] = letter,
                }
            }
            let text: String = letters.into_iter().collect();
            if let Some(year) = back(&text, &year) {
                read += 1;
                assert_sound(&year);
                assert_eq!(back(&year.to_text(), &year), Some(year));
            }
        }
        assert!(read > 100, "{read}");
    }
    for letter in ["A", "_", "f", "5"] {
        for count in [0, 1, 100, 1_000, 10_000] {
            let text = format!("1{}", letter.repeat(count));
            let nowhere = Place { latitude_deg: f64::NAN, longitude_deg: f64::INFINITY, altitude_m: -1e300 };
            assert!(TypicalYear::of_text(&text, nowhere, f64::NAN).is_none_or(|year| year.place.latitude_deg == 0.0));
        }
    }
}

fn assert_sound(year: &TypicalYear) {
    for month in &year.months {
        assert!(month.days <= 31);
        for hour in month.hours {
            let sky = hour.sky;
            for light in [sky.global_w_m2, sky.beam_w_m2, sky.diffuse_w_m2] {
                assert!((0.0..=2_000.0).contains(&light));
            }
            assert!((-90.0..=70.0).contains(&hour.air_c));
        }
    }
}

/// Also one of nothing but the least and the most that there is, turn by turn.
#[test]
fn strange_numbers_are_written_as_the_nearest_that_are_not() {
    let mut year = years().remove(0);
    for (at, month) in year.months.iter_mut().enumerate() {
        let strange = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e300, -0.4];
        let any = |number: usize| strange[number % strange.len()];
        for (number, hour) in month.hours.iter_mut().enumerate() {
            let [global_w_m2, beam_w_m2, diffuse_w_m2, air_c] = [0, 1, 2, 3].map(|more| any(at + number + more));
            *hour = TypicalHour { sky: Irradiance { global_w_m2, beam_w_m2, diffuse_w_m2 }, air_c };
        }
        (month.low_c, month.high_c, month.coldest_c, month.warmest_c) =
            (any(at), any(at + 1), any(at + 2), any(at + 3));
        month.days = u32::MAX;
    }
    let kept = back(&year.to_text(), &year).unwrap();
    assert_sound(&kept);
    assert_eq!(back(&kept.to_text(), &year), Some(kept));
}

/// Hundredths and half degrees of the means that pvlib has of the two files.
#[test]
fn two_climates_are_those_of_the_files_that_pvlib_ships() {
    let climates = [(0, Climate::WetSummers), (1, Climate::ColdCoast)];
    for (at, climate) in climates {
        let year = years().remove(at);
        assert!((climate.latitude_deg() - year.place.latitude_deg).abs() < 0.05);
        for (number, month) in (1..).zip(&year.months) {
            let means = climate.month(number, year.place.latitude_deg);
            let clearness = month.clearness(number, year.place.latitude_deg);
            assert!((means.clearness - clearness).abs() <= 0.005, "{climate:?} {number}: {means:?} {clearness}");
            assert!((means.low_c - month.low_c).abs() <= 0.25, "{climate:?} {number}: {means:?} {}", month.low_c);
            assert!((means.high_c - month.high_c).abs() <= 0.25, "{climate:?} {number}: {means:?} {}", month.high_c);
        }
    }
}

/// Daily global irradiation in watt-hours per square metre. Sources: the two statistics files of TMY3 that come with
/// `EnergyPlus`; monthly kilowatt-hours of the Finnish Meteorological Institute (from memory).
#[test]
fn the_clearness_of_climates_is_what_their_irradiation_comes_to() {
    let desert = [3_287, 4_162, 5_336, 7_086, 7_844, 8_318, 7_616, 7_127, 6_340, 4_823, 3_773, 3_070];
    let dry = [1_861, 3_188, 4_705, 6_537, 7_347, 8_177, 7_836, 7_343, 5_725, 4_358, 2_731, 1_921];
    let dark = [290, 893, 2_226, 4_033, 5_581, 5_933, 5_645, 4_194, 2_533, 1_065, 367, 161];
    let places =
        [(Climate::DryHeat, 33.45, desert), (Climate::DrySummers, 36.77, dry), (Climate::LongWinters, 60.2, dark)];
    for (climate, latitude_deg, days) in places {
        for (month, day_wh_m2) in (1..).zip(days) {
            let above = extraterrestrial_day_wh_m2(jiff::civil::date(2023, month, 16), latitude_deg);
            let (found, expected) = (climate.month(month, latitude_deg).clearness, f64::from(day_wh_m2) / above);
            assert!((found - expected).abs() <= 0.005, "{climate:?} {month}: {found} {expected}");
        }
    }
}

#[test]
fn climates_have_words_and_sources_and_the_south_its_summer_in_january() {
    for climate in Climate::ALL {
        assert!(!climate.source().is_empty());
        for month in 1..=12 {
            let means = climate.month(month, 1.0);
            assert!((0.2..0.8).contains(&means.clearness) && means.low_c < means.high_c, "{climate:?} {means:?}");
            assert_eq!(means, climate.month((month + 5) % 12 + 1, -1.0));
        }
        assert!(climate.month(1, -40.0).high_c > climate.month(7, -40.0).high_c);
        for month in [i8::MIN, -1, 0, 13, i8::MAX] {
            assert!(climate.month(month, f64::NAN).clearness > 0.0);
        }
    }
    assert!(Climate::ALL.windows(2).all(|pair| pair[0].latitude_deg() > pair[1].latitude_deg()));
}

#[test]
fn every_fault_of_a_file_is_said_with_its_line() {
    let words = Words::english(Plain, Units::Metric, "EUR");
    let text = |text: &str| text.to_owned();
    let cases = [
        (
            Fault::NeitherFormat,
            "Line 7: This begins neither as a TMY3 file nor as an EPW file does. Choose a file of one of these, as it came.",
        ),
        (
            Fault::NoColumn("DNI (W/m^2)"),
            "Line 7: There is no heading “DNI (W/m^2)”, as a TMY3 file has. Choose the file as it came.",
        ),
        (
            Fault::TooShort("global"),
            "Line 7 ends before “global”. Choose the file as it came; this one may be cut off.",
        ),
        (Fault::NotANumber("beam", text("x0")), "Line 7: “x0” stands for “beam” and is no number such as 12.5."),
        (Fault::OutOfRange("latitude", 96.1, [-90.0, 90.0]), "Line 7: 96.1 stands for “latitude”, which is -90 to 90."),
        (
            Fault::NotADay(text("13/01/2001")),
            "Line 7: “13/01/2001” is no day: a month of 1 to 12, a stroke, and a day of 1 to 31.",
        ),
        (Fault::NotAnHour(text("25:00")), "Line 7: “25:00” is no hour of 1 to 24."),
        (Fault::TooManyLines, "Line 7: No more than 105500 lines are read. Choose a file with a line an hour."),
        (
            Fault::Nothing { column: "global", month: 2, hour: 1 },
            "Line 7 is the last, and no day of month 2 has “global” for hour 1. A whole year has each hour of each month.",
        ),
    ];
    assert_eq!(MOST_LINES, 105_500);
    for (fault, said) in cases {
        assert_eq!(words.unreadable_year(&Unreadable { line: 7, fault }), said);
    }
}
