//! The sun against independent code: what `tests/reference/sun.py` made with pvlib.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::sun::clouds::split;
use kerbstead_core::sun::panel::{Fixing, Panel, cell_c, dc_w};
use kerbstead_core::sun::plane::{Plane, incidence_deg, on_plane};
use kerbstead_core::sun::sky::{ClearSky, absolute_air_mass, air_mass, extraterrestrial_w_m2};
use kerbstead_core::sun::typical::{Fault, TypicalMonth, TypicalYear, read};
use kerbstead_core::sun::{Air, Irradiance, Place, Utc, position};
use serde_json::Value;

fn table() -> Value {
    serde_json::from_str(include_str!("../data/sun.json")).unwrap()
}

fn list(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect()
}

fn number(case: &Value, key: &str) -> f64 {
    case[key].as_f64().unwrap()
}

fn near(found: f64, expected: f64, off: f64, what: &str, case: &Value) {
    assert!((found - expected).abs() <= off, "{what}: {found} instead of {expected}\n{case}");
}

fn place(value: &Value) -> Place {
    let numbers = list(value);
    Place { latitude_deg: numbers[0], longitude_deg: numbers[1], altitude_m: numbers[2] }
}

/// Day and hour.
fn utc(case: &Value) -> Utc {
    let day: Vec<i16> =
        case["date"].as_array().unwrap().iter().map(|part| i16::try_from(part.as_i64().unwrap()).unwrap()).collect();
    let small = |at: usize| i8::try_from(day[at]).unwrap();
    Utc { date: date(day[0], small(1), small(2)), hour: number(case, "hour") }
}

fn clear(case: &Value) -> Irradiance {
    let numbers = list(&case["clear"]);
    Irradiance { global_w_m2: numbers[0], beam_w_m2: numbers[1], diffuse_w_m2: numbers[2] }
}

fn plane(case: &Value) -> Plane {
    let numbers = list(&case["plane"]);
    Plane { tilt_deg: numbers[0], azimuth_deg: numbers[1] }
}

/// Source: pvlib, `spa_python`, from 1950 to 2049. What the turning of the earth will have lost by then is estimated
/// differently: 2e-4 degrees in 2041.
#[test]
fn the_sun_stands_where_pvlib_has_it() {
    for case in table()["places"].as_array().unwrap() {
        let air = Air { pressure_hpa: number(case, "pressure_hpa"), temperature_c: number(case, "air_c") };
        let sun = position(utc(case), place(&case["place"]), air);
        near(sun.zenith_deg, number(case, "zenith_deg"), 1e-4, "zenith", case);
        near(sun.apparent_zenith_deg, number(case, "apparent_zenith_deg"), 1e-4, "apparent zenith", case);
        near(sun.azimuth_deg, number(case, "azimuth_deg"), 4e-4, "azimuth", case);
    }
}

/// Source: pvlib, `get_extra_radiation`, `get_absolute_airmass`, `ineichen`, and `erbs` for 60 % of the global irradiance.
#[test]
fn the_sky_gives_what_pvlib_has() {
    for case in table()["places"].as_array().unwrap() {
        let extra = extraterrestrial_w_m2(utc(case).date);
        near(extra, number(case, "extraterrestrial_w_m2"), 1e-3, "above the air", case);
        let zenith = number(case, "apparent_zenith_deg");
        let mass = absolute_air_mass(air_mass(zenith), number(case, "pressure_hpa"));
        near(mass, number(case, "air_mass"), 1e-4, "air mass", case);
        let expected = clear(case);
        let sky = ClearSky::new(number(case, "turbidity"), place(&case["place"]).altitude_m).at(zenith, mass, extra);
        near(sky.global_w_m2, expected.global_w_m2, 0.01, "global", case);
        near(sky.beam_w_m2, expected.beam_w_m2, 0.02, "beam", case);
        near(sky.diffuse_w_m2, expected.diffuse_w_m2, 0.02, "diffuse", case);
        let cloudy = split(0.6 * expected.global_w_m2, zenith, extra);
        let parts = list(&case["split"]);
        near(cloudy.beam_w_m2, parts[0], 0.02, "beam through clouds", case);
        near(cloudy.diffuse_w_m2, parts[1], 0.02, "diffuse under clouds", case);
    }
}

/// Source: pvlib, `get_total_irradiance` with `haydavies`, `sapm_cell`, `pvwatts_dc`.
#[test]
fn panels_give_what_pvlib_has() {
    let table = table();
    let panel = Panel { rated_w: number(&table["panel"], "rated_w"), per_c: number(&table["panel"], "per_c") };
    for case in table["places"].as_array().unwrap() {
        let (zenith, azimuth) = (number(case, "apparent_zenith_deg"), number(case, "azimuth_deg"));
        near(incidence_deg(plane(case), zenith, azimuth), number(case, "incidence_deg"), 1e-3, "incidence", case);
        let (extra, albedo) = (number(case, "extraterrestrial_w_m2"), number(&table["panel"], "albedo"));
        let light = on_plane(clear(case), plane(case), zenith, azimuth, extra, albedo).total_w_m2();
        near(light, number(case, "plane_w_m2"), 0.01, "on the panel", case);
        let fixing = match case["fixing"].as_str().unwrap() {
            "Open" => Fixing::Open,
            "Close" => Fixing::Close,
            _ => Fixing::Glued,
        };
        let cells = cell_c(fixing, light, number(case, "air_c"), number(case, "wind_m_s"));
        near(cells, number(case, "cell_c"), 1e-3, "cells", case);
        near(dc_w(panel, light, cells), number(case, "dc_w"), 1e-3, "power", case);
    }
}

fn assert_month(month: &TypicalMonth, expected: &Value) {
    let days = number(expected, "days");
    near(f64::from(month.days), days, 0.0, "days", expected);
    let sums = list(&expected["kwh_m2"]);
    let sum =
        |part: fn(&Irradiance) -> f64| month.hours.iter().map(|hour| part(&hour.sky)).sum::<f64>() * days / 1_000.0;
    near(sum(|sky| sky.global_w_m2), sums[0], 1e-3, "global", expected);
    near(sum(|sky| sky.beam_w_m2), sums[1], 1e-3, "beam", expected);
    near(sum(|sky| sky.diffuse_w_m2), sums[2], 1e-3, "diffuse", expected);
    near(month.mean_c(), number(expected, "mean_c"), 1e-3, "mean", expected);
    for (hour, means) in month.hours.iter().zip(expected["hours"].as_array().unwrap()) {
        let sky = hour.sky;
        for (found, mean) in [sky.global_w_m2, sky.beam_w_m2, sky.diffuse_w_m2, hour.air_c].iter().zip(list(means)) {
            near(*found, mean, 1e-3, "hour", means);
        }
    }
}

fn assert_place(year: &TypicalYear, expected: &Value) {
    let place = place(&expected["place"]);
    assert_eq!((year.place, year.utc_offset_h), (place, number(expected, "utc_offset_h")));
}

/// A file of a year in which every day is the mean day of its month, in the one format or the other.
fn file_of(year: &Value, is_epw: bool) -> String {
    let (at, offset) = (list(&year["place"]), number(year, "utc_offset_h"));
    let mut text = if is_epw {
        let words = ["DESIGN CONDITIONS,0", "GROUND TEMPERATURES,0", "COMMENTS 1,\"a, b\"", "DATA PERIODS,1,1"];
        format!("LOCATION,Nowhere,-,-,-,0,{},{},{offset},{}\r\n{}\r\n", at[0], at[1], at[2], words.join("\r\n"))
    } else {
        let columns = "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),Dry-bulb (C)";
        format!("1,\"NOWHERE, AT ALL\",NN,{offset},{},{},{}\n{columns}\n", at[0], at[1], at[2])
    };
    for month in year["months"].as_array().unwrap() {
        let number = month["month"].as_u64().unwrap();
        for day in 1..=month["days"].as_u64().unwrap() {
            for (hour, means) in (1..).zip(month["hours"].as_array().unwrap()) {
                let values = list(means);
                let (global, beam, diffuse, air) = (values[0], values[1], values[2], values[3]);
                text.push_str(&if is_epw {
                    format!(
                        "2001,{number},{day},{hour},0,A7A7,{air},5,80,101000,0,0,300,{global},{beam},{diffuse},9999\r\n"
                    )
                } else {
                    format!("{number:02}/{day:02}/2001,{hour:02}:00,{global},1,{beam},{diffuse},{air}\n")
                });
            }
        }
    }
    text
}

#[test]
fn files_of_either_format_are_read_into_their_months() {
    for year in table()["years"].as_array().unwrap() {
        for is_epw in [false, true] {
            let found = read(&file_of(year, is_epw)).unwrap();
            assert_place(&found, year);
            for (month, expected) in found.months.iter().zip(year["months"].as_array().unwrap()) {
                // The sums of rounded means are off by their rounding.
                near(
                    month.global_wh_m2() * number(expected, "days") / 1_000.0,
                    list(&expected["kwh_m2"])[0],
                    0.001,
                    "sum",
                    expected,
                );
                assert_month(month, expected);
            }
        }
    }
}

/// The files themselves, where `cargo xtask reference` has installed the package that has them; elsewhere nothing is tested
/// here. Source: pvlib, `read_tmy3`.
#[test]
fn the_files_that_pvlib_ships_are_read_as_it_reads_them() {
    let libraries = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../.tools/venv/lib");
    let folders: Vec<_> = std::fs::read_dir(libraries).into_iter().flatten().flatten().collect();
    for folder in folders {
        for year in table()["years"].as_array().unwrap() {
            let name = year["file"].as_str().unwrap();
            let path = folder.path().join("site-packages/pvlib/data").join(name);
            let Ok(bytes) = std::fs::read(path) else { continue };
            let found = read(&String::from_utf8_lossy(&bytes)).unwrap();
            assert_place(&found, year);
            for (month, expected) in found.months.iter().zip(year["months"].as_array().unwrap()) {
                assert_month(month, expected);
                near(month.low_c, number(expected, "low_c"), 1e-3, "low", expected);
                near(month.high_c, number(expected, "high_c"), 1e-3, "high", expected);
                near(month.coldest_c, number(expected, "coldest_c"), 1e-9, "coldest", expected);
            }
            println!("read {name}");
        }
    }
}

#[test]
fn what_cannot_be_meant_is_told_with_its_line() {
    let table = table();
    let (tmy3, epw) = (file_of(&table["years"][0], false), file_of(&table["years"][0], true));
    let with = |text: &str, line: usize, from: &str, to: &str| -> String {
        let change =
            |(at, text): (usize, &str)| if at + 1 == line { text.replacen(from, to, 1) } else { text.to_owned() };
        text.lines().enumerate().map(|line| change(line) + "\n").collect()
    };
    let until =
        |text: &str, lines: usize| text.lines().take(lines).map(|line| line.to_owned() + "\n").collect::<String>();
    let cases = [
        (String::new(), 1, Fault::NeitherFormat),
        ("\u{feff}name,price\n".to_owned(), 1, Fault::NeitherFormat),
        (with(&tmy3, 1, "36.1", "96.1"), 1, Fault::OutOfRange("latitude", 96.1, [-90.0, 90.0])),
        (with(&tmy3, 2, "DNI", "DNA"), 2, Fault::NoColumn("DNI (W/m^2)")),
        (until(&tmy3, 1), 2, Fault::NoColumn("Date (MM/DD/YYYY)")),
        (with(&tmy3, 9, "01/01", "13/01"), 9, Fault::NotADay("13/01/2001".to_owned())),
        (with(&tmy3, 9, ",07:", ",25:"), 9, Fault::NotAnHour("25:00".to_owned())),
        (with(&tmy3, 3, ",1,", ",1,x"), 3, Fault::NotANumber("beam", "x0".to_owned())),
        (until(&tmy3, 700), 700, Fault::Nothing { column: "global", month: 2, hour: 1 }),
        (with(&epw, 1, ",36.1", ",north"), 1, Fault::NotANumber("latitude", "north".to_owned())),
        (with(&epw, 6, "2001,1,1,1,", "2001,1,32,1,"), 6, Fault::NotADay("1/32".to_owned())),
        (until(&epw, 6) + "2001,1,1,2,0,A7,3.5\n", 7, Fault::TooShort("global")),
        (with(&epw, 6, ",A7A7,", ",A7A7,1e999,"), 6, Fault::NotANumber("dry bulb", "1e999".to_owned())),
        (until(&epw, 5), 5, Fault::Nothing { column: "global", month: 1, hour: 1 }),
        ("LOCATION,,,,,,1,1,1,1\n".to_owned() + &"\n".repeat(200_000), 105_501, Fault::TooManyLines),
    ];
    for (text, line, fault) in cases {
        let unreadable = read(&text).unwrap_err();
        assert_eq!((unreadable.line, unreadable.fault), (line, fault));
    }
}

/// Files cut off and with bytes changed, as they could come from anywhere: each is read or refused.
#[test]
fn damaged_files_never_break_the_reader() {
    let table = table();
    let mut chance = kerbstead_core::draws::Chance::new(11);
    for is_epw in [false, true] {
        let whole = file_of(&table["years"][0], is_epw);
        let begin: Vec<u8> = whole.bytes().take(2_000).collect();
        for _ in 0..2_000 {
            let mut bytes = begin.clone();
            for _ in 0..=chance.below(6) {
                let at = chance.below(2_000) as usize;
                bytes[at] = *b"\",\n\r:/-9eE.\xffN \0".get(chance.below(15) as usize).unwrap();
            }
            bytes.truncate(chance.below(2_001) as usize);
            assert!(read(&String::from_utf8_lossy(&bytes)).is_err());
        }
    }
    for text in [
        "\"",
        "LOCATION,\"",
        "LOCATION,é,\"\"\"",
        "LOCATION",
        "Österreich",
        &",".repeat(3_000_000),
        &"\"".repeat(3_000_000),
    ] {
        assert!(read(text).is_err());
    }
}
