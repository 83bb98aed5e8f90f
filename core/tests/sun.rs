//! The sun against published values and values of independent code, as the project's reference values have them. What is
//! "by pvlib" was computed with pvlib 0.16.1; `tests/tests/sun_reference.rs` has many more of these.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::date;
use kerbstead_core::sun::air::temperature_c;
use kerbstead_core::sun::clouds::{Clouds, diffuse_share, split, under_clouds};
use kerbstead_core::sun::month::{Asked, Sky, ThirtyDays, fill};
use kerbstead_core::sun::panel::{Controller, Fixing, Panel, cell_by_noct_c, cell_c, dc_w};
use kerbstead_core::sun::plane::{Plane, Setup, incidence_deg, on_plane};
use kerbstead_core::sun::series::days_of_clearness;
use kerbstead_core::sun::sky::{
    ClearSky, absolute_air_mass, air_mass, extraterrestrial_day_wh_m2, extraterrestrial_w_m2,
};
use kerbstead_core::sun::{Air, Irradiance, Place, Utc, daylight, position};

fn near(found: f64, expected: f64, off: f64, what: &str) {
    assert!((found - expected).abs() <= off, "{what}: {found} instead of {expected}");
}

fn place(latitude_deg: f64, longitude_deg: f64) -> Place {
    Place { latitude_deg, longitude_deg, altitude_m: 0.0 }
}

/// Source: Reda and Andreas, NREL/TP-560-34302, the report's own example (from memory, and by pvlib).
#[test]
fn the_sun_stands_where_the_report_of_the_algorithm_has_it() {
    let place = Place { altitude_m: 1_830.14, ..place(39.742_476, -105.178_6) };
    let utc = Utc::new(2003, 10, 17, 19.0 + 30.5 / 60.0).unwrap();
    let sun = position(utc, place, Air { pressure_hpa: 820.0, temperature_c: 11.0 });
    near(sun.apparent_zenith_deg, 50.111_62, 1e-4, "zenith");
    near(sun.azimuth_deg, 194.340_24, 1e-4, "azimuth");
}

/// Source: by pvlib, `nrel_numpy`.
#[test]
fn the_sun_stands_where_pvlib_has_it() {
    let cases = [
        ((2026, 3, 20, 20.0), (44.62, -124.05), [44.841, 44.824_2, 171.639_6]),
        ((2026, 6, 21, 16.0), (36.0, -112.1), [46.765_8, 46.748, 90.474_9]),
        ((2026, 12, 21, 11.0), (47.6, 8.0), [71.280_7, 71.232, 173.693_3]),
        ((2026, 1, 15, 0.0), (-36.9, 174.8), [17.037_2, 17.032, 24.562_8]),
    ];
    for ((year, month, day, hour), (latitude, longitude), [zenith, apparent, azimuth]) in cases {
        let air = Air { pressure_hpa: 1_013.25, temperature_c: 12.0 };
        let sun = position(Utc::new(year, month, day, hour).unwrap(), place(latitude, longitude), air);
        near(sun.zenith_deg, zenith, 2e-4, "zenith");
        near(sun.apparent_zenith_deg, apparent, 2e-4, "apparent zenith");
        near(sun.azimuth_deg, azimuth, 2e-4, "azimuth");
    }
}

/// Source: by pvlib, `sun_rise_set_transit_spa`; clock of eight hours behind universal time. Its sunset, on the next day of
/// universal time, is 13 and 30 s early: in June its own position has the sun at -0.804 degrees then.
#[test]
fn the_sun_rises_and_sets_within_seconds_of_pvlib() {
    let clock = |hours: f64, minutes: f64, seconds: f64| hours + minutes / 60.0 + seconds / 3_600.0 + 8.0;
    let cases = [
        (date(2026, 6, 21), clock(4.0, 31.0, 1.0), clock(12.0, 18.0, 5.0), clock(20.0, 4.0, 56.0), 15.565_2),
        (date(2026, 12, 21), clock(7.0, 50.0, 2.0), clock(12.0, 14.0, 26.0), clock(16.0, 38.0, 20.0), 8.805_1),
    ];
    for (day, rise, noon, set, length) in cases {
        let light = daylight(day, place(44.62, -124.05));
        let off = 40.0 / 3_600.0;
        near(light.sunrise_utc_h.unwrap(), rise, off, "sunrise");
        near(light.noon_utc_h, noon, off, "noon");
        near(light.sunset_utc_h.unwrap(), set, off, "sunset");
        near(light.length_h, length, off, "length");
    }
}

/// The middle of the sun is 0.8333 degrees below the horizon, seen from the middle of the earth; 0.0024 more from here.
#[test]
fn the_sun_rises_and_sets_where_the_whole_algorithm_has_it_low() {
    for latitude in [-54.8, -33.9, 0.0, 28.5, 47.6, 62.0] {
        for (longitude, month) in [(-170.0, 1), (-68.0, 3), (18.4, 6), (151.2, 8), (179.9, 11)] {
            let day = date(1_987 + i16::from(month), month, 20);
            let light = daylight(day, place(latitude, longitude));
            for hour in [light.sunrise_utc_h.unwrap(), light.sunset_utc_h.unwrap()] {
                let air = Air::at_altitude(0.0);
                let sun = position(Utc { date: day, hour }, place(latitude, longitude), air);
                near(sun.zenith_deg, 90.835_7, 0.005, "zenith");
            }
        }
    }
}

#[test]
fn in_the_far_north_the_sun_stays_up_and_down() {
    let north = place(69.6, 19.0);
    let (summer, winter) = (daylight(date(2027, 6, 10), north), daylight(date(2027, 12, 20), north));
    assert_eq!((summer.sunrise_utc_h, summer.sunset_utc_h, winter.sunrise_utc_h), (None, None, None));
    near(summer.length_h, 24.0, 0.0, "summer");
    near(winter.length_h, 0.0, 0.0, "winter");
}

#[test]
fn strange_numbers_give_a_position_all_the_same() {
    let strange = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e300, 0.0];
    for (at, one) in strange.into_iter().enumerate() {
        let other = strange.into_iter().cycle().nth(at + 2).unwrap();
        let place = Place { latitude_deg: one, longitude_deg: other, altitude_m: one };
        for year in [-9_999, 1_969, 9_999] {
            let utc = Utc::new(year, 2, 28, other).unwrap();
            let sun = position(utc, place, Air { pressure_hpa: one, temperature_c: other });
            assert!((0.0..=180.0).contains(&sun.zenith_deg) && (0.0..=360.0).contains(&sun.azimuth_deg), "{sun:?}");
            assert!(sun.apparent_zenith_deg.is_finite(), "{sun:?}");
            let light = daylight(utc.date, place);
            assert!((0.0..=24.1).contains(&light.length_h) && light.noon_utc_h.is_finite(), "{light:?}");
        }
    }
}

/// Source: by pvlib, `clearsky.ineichen` for a Linke turbidity of 3, and `get_extra_radiation`.
#[test]
fn a_clear_sky_gives_what_pvlib_has() {
    near(extraterrestrial_w_m2(date(2026, 1, 3)), 1_414.02, 0.05, "above the air");
    let cases = [
        (date(2026, 3, 20), 44.824_2, [720.24, 884.23, 93.08]),
        (date(2026, 6, 21), 46.748, [663.68, 840.76, 87.58]),
        (date(2026, 12, 21), 71.232, [275.82, 670.75, 60.02]),
        (date(2026, 1, 15), 17.032, [1_038.64, 968.1, 113.01]),
    ];
    for (day, zenith, [global, beam, diffuse]) in cases {
        let mass = absolute_air_mass(air_mass(zenith), 1_013.25);
        let sky = ClearSky::new(3.0, 0.0).at(zenith, mass, extraterrestrial_w_m2(day));
        near(sky.global_w_m2, global, global * 0.001, "global");
        near(sky.beam_w_m2, beam, beam * 0.001, "beam");
        near(sky.diffuse_w_m2, diffuse, diffuse * 0.002, "diffuse");
    }
}

/// Source: by pvlib, `irradiance.get_total_irradiance` with `haydavies`, albedo 0.2.
#[test]
fn a_tilted_panel_gets_what_pvlib_has() {
    let cases = [
        ([30.0, 180.0], [44.824_2, 171.639_6], [884.23, 720.24, 93.08, 1_377.69], [15.641, 973.35]),
        ([0.0, 180.0], [46.748, 90.474_9], [840.76, 663.68, 87.58, 1_321.62], [46.748, 663.68]),
        ([60.0, 170.0], [71.232, 173.693_3], [670.75, 275.82, 60.02, 1_412.71], [11.722, 780.91]),
        ([20.0, 0.0], [17.032, 24.562_8], [968.1, 1_038.64, 113.01, 1_412.98], [8.273, 1_078.93]),
    ];
    for ([tilt_deg, facing], [zenith, azimuth], [beam_w_m2, global_w_m2, diffuse_w_m2, extra], [angle, total]) in cases
    {
        let (plane, sky) =
            (Plane { tilt_deg, azimuth_deg: facing }, Irradiance { global_w_m2, beam_w_m2, diffuse_w_m2 });
        near(incidence_deg(plane, zenith, azimuth), angle, 0.001, "angle of incidence");
        near(on_plane(sky, plane, zenith, azimuth, extra, 0.2).total_w_m2(), total, 0.02, "total");
    }
}

/// Source: by pvlib, `temperature.ross`, `temperature.sapm_cell`, `pvsystem.pvwatts_dc`.
#[test]
fn cells_and_panels_are_as_pvlib_has_them() {
    near(cell_by_noct_c(800.0, 20.0, 45.0), 45.0, 1e-9, "by the data sheet's number");
    near(cell_c(Fixing::Open, 800.0, 20.0, 1.0), 43.507, 0.001, "on a stand");
    near(dc_w(Panel { rated_w: 100.0, per_c: -0.004 }, 800.0, 45.0), 73.6, 1e-9, "warm");
    near(dc_w(Panel { rated_w: 120.0, per_c: -0.003_5 }, 1_000.0, 25.0), 120.0, 1e-9, "as rated");
    near(Controller::Switching { store_v: 13.5, panel_v: 18.0 }.out_w(100.0), 75.0, 1e-9, "switched");
}

/// Worked by hand from the formula: 1 - 0.75 (n/8)^3.4.
#[test]
fn words_for_clouds_leave_less_and_less() {
    for (word, share) in Clouds::ALL.into_iter().zip([1.0, 0.955, 0.718, 0.25]) {
        near(word.clear_share(), share, 0.001, "share");
    }
}

#[test]
fn the_split_of_global_irradiance_adds_up_and_has_no_jump_at_its_ends() {
    for hundredths in 0..=120 {
        let global = 13.0 * f64::from(hundredths);
        for zenith in [0.0, 40.0, 86.9, 88.0, 120.0, f64::NAN] {
            let sky = split(global, zenith, 1_367.0);
            let level = if zenith < 87.0 { sky.beam_w_m2 * libm::cos(zenith.to_radians()) } else { 0.0 };
            near(level + sky.diffuse_w_m2, global, 1e-9, "sum");
        }
    }
    near(diffuse_share(0.22), diffuse_share(0.220_001), 0.002, "at 0.22");
    near(diffuse_share(0.8), diffuse_share(0.800_001), 0.002, "at 0.8");
}

#[test]
fn a_months_days_have_its_mean_and_runs() {
    for mean in [0.1, 0.25, 0.4, 0.55, 0.65] {
        for seed in 0..40 {
            let days = days_of_clearness(mean, 0.74, 30, seed);
            near(days.iter().sum::<f64>() / 30.0, mean, 0.004, "mean");
            assert!(days.iter().all(|day| (0.05..=0.74).contains(day)), "{days:?}");
        }
    }
    // A day resembles the one before as much as is asked for, a little less because there are few.
    let (mut product, mut square) = (0.0, 0.0);
    for seed in 0..400 {
        let days: Vec<f64> = days_of_clearness(0.4, 0.74, 30, seed).iter().map(|day| day - 0.4).collect();
        product += days.windows(2).map(|pair| pair[0] * pair[1]).sum::<f64>() / 29.0;
        square += days.iter().map(|day| day * day).sum::<f64>() / 30.0;
    }
    near(product / square, 0.25, 0.06, "autocorrelation");
    for (mean, expected) in [(0.0, 0.05), (f64::NAN, 0.05), (0.9, 0.74)] {
        assert!(days_of_clearness(mean, 0.74, 30, 1).iter().all(|day| (day - expected).abs() < 0.03), "{mean}");
    }
    assert!(days_of_clearness(0.4, 0.74, 0, 1).is_empty());
}

#[test]
fn the_air_goes_from_low_to_high_and_is_warmest_at_three() {
    let course: Vec<f64> = (0..2_400).map(|at| temperature_c(-3.0, 11.0, f64::from(at) / 100.0)).collect();
    near(course.iter().copied().fold(f64::MAX, f64::min), -3.0, 0.01, "low");
    near(course.iter().copied().fold(f64::MIN, f64::max), 11.0, 0.01, "high");
    near(temperature_c(-3.0, 11.0, 3.0), 11.0, 1e-12, "at 15 h");
    near(temperature_c(-3.0, 11.0, -3.0), 4.0, 1e-12, "between");
    assert!(course.windows(2).all(|pair| (pair[0] - pair[1]).abs() < 0.05));
}

fn asked(sky: Sky) -> Asked {
    Asked { utc_offset_h: -8.0, ..Asked::new(place(44.62, -124.05), date(2027, 3, 1), sky) }
}

fn filled(asked: &Asked) -> ThirtyDays {
    let mut hours = ThirtyDays::default();
    fill(asked, &mut hours);
    hours
}

#[test]
fn thirty_days_are_as_the_single_functions_have_them() {
    let setup = Setup::Tilted(Plane { tilt_deg: 35.0, azimuth_deg: 200.0 });
    let words = [Clouds::Clear, Clouds::Some, Clouds::Overcast];
    let asked = Asked { setup, soiling: 0.0, ..asked(Sky::Words(&words)) };
    let hours = filled(&asked);
    for day in 0..30_usize {
        let noon_h = 8.0 + 24.0 * f64::from(u8::try_from(day).unwrap());
        for hour in 0..24_u8 {
            let utc = Utc { date: asked.first_day, hour: noon_h + f64::from(hour) + 0.5 };
            let sun = position(utc, asked.place, Air::at_altitude(0.0));
            let extra = extraterrestrial_w_m2(asked.first_day + jiff_days(day));
            let mass = absolute_air_mass(air_mass(sun.apparent_zenith_deg), 1_013.25);
            let clear = ClearSky::new(3.0, 0.0).at(sun.apparent_zenith_deg, mass, extra);
            let sky = under_clouds(clear, words[day % 3].clear_share(), sun.apparent_zenith_deg, extra);
            let Setup::Tilted(plane) = setup else { unreachable!() };
            let total = on_plane(sky, plane, sun.apparent_zenith_deg, sun.azimuth_deg, extra, 0.2).total_w_m2();
            near(hours.plane_w_m2[day * 24 + usize::from(hour)], total, 0.3, "on the panel");
        }
    }
}

fn jiff_days(day: usize) -> jiff::Span {
    jiff::Span::new().days(i64::try_from(day).unwrap())
}

#[test]
fn a_month_has_the_clearness_that_was_asked_for_whatever_the_seed() {
    for (seed, clearness) in [(1, 0.2), (2, 0.4), (3, 0.6), (4, 0.4)] {
        let asked = Asked { soiling: 0.0, ..asked(Sky::Month { clearness, seed }) };
        let sum: f64 = filled(&asked).plane_w_m2.iter().sum();
        let above: f64 = (0..30)
            .map(|day| extraterrestrial_day_wh_m2(asked.first_day + jiff_days(day), asked.place.latitude_deg))
            .sum();
        near(sum / above, clearness, 0.012, "clearness");
    }
}

#[test]
fn turning_a_panel_gives_more_each_time_and_shade_takes_its_hours() {
    let total = |setup| filled(&Asked { setup, ..asked(Sky::Words(&[])) }).plane_w_m2.iter().sum::<f64>();
    let turned = |times| total(Setup::Turned { times });
    let sums = [total(Setup::Flat), turned(1), turned(2), turned(4), turned(12)];
    assert!(sums.windows(2).all(|pair| pair[0] < pair[1]), "{sums:?}");
    let mut unshaded = [1.0; 24];
    unshaded[12] = 0.25;
    let (light, shade) = (filled(&asked(Sky::Words(&[]))), filled(&Asked { unshaded, ..asked(Sky::Words(&[])) }));
    for (at, (light, shade)) in light.plane_w_m2.iter().zip(shade.plane_w_m2).enumerate() {
        near(shade, if at % 24 == 12 { light / 4.0 } else { *light }, 1e-9, "hour");
    }
    assert!(light.air_c.iter().all(|air| (10.0..=20.0).contains(air)));
}

#[test]
fn strange_months_are_filled_with_numbers() {
    let strange = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1.0, 0.0];
    for one in strange {
        for (year, other) in [(-9_999, 1.0), (9_999, one), (2_027, -one)] {
            let place = Place { latitude_deg: one, longitude_deg: other, altitude_m: one };
            let asked = Asked {
                utc_offset_h: one,
                turbidity: other,
                low_c: one,
                high_c: other,
                setup: Setup::Tilted(Plane { tilt_deg: one, azimuth_deg: other }),
                albedo: one,
                unshaded: [other; 24],
                soiling: one,
                ..Asked::new(place, date(year, 12, 31), Sky::Month { clearness: one, seed: 0 })
            };
            for setup in [asked.setup, Setup::Flat, Setup::Turned { times: 0 }, Setup::Turned { times: 255 }] {
                let hours = filled(&Asked { setup, ..asked });
                assert!(hours.plane_w_m2.iter().all(|light| (0.0..5_000.0).contains(light)), "{asked:?}");
                assert!(hours.air_c.iter().all(|air| (-90.0..=70.0).contains(air)), "{asked:?}");
            }
        }
    }
}
