//! Every floating-point number of a plan, to be replaced in place.

use kerbstead_core::plan::{Climate, Draw, Estimate, Item, Offer, Panel, Plan, Shell};
use proptest::prelude::*;

/// Numbers that no file can hold, or that no person types.
pub fn odd() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::MAX,
        f64::MIN,
        f64::MIN_POSITIVE,
        5e-324,
        -0.0,
        -1.0,
        1e-300,
        1e-12,
        1e18,
    ])
}

/// Every number that is set, in the order of the plan.
pub fn numbers(plan: &mut Plan) -> Vec<&mut f64> {
    let vehicle = &mut plan.vehicle;
    let mut numbers = vec![&mut vehicle.socket_volts, &mut vehicle.socket_fuse_a];
    numbers.extend(vehicle.inside_length_mm.as_mut());
    numbers.extend(vehicle.inside_width_mm.as_mut());
    numbers.extend(vehicle.inside_height_mm.as_mut());
    numbers.extend(vehicle.empty_mass_kg.as_mut());
    numbers.extend(vehicle.gross_limit_kg.as_mut());
    of_estimates([vehicle.fuel_l_per_100_km.as_mut()], &mut numbers);
    plan.kit.iter_mut().for_each(|item| of_item(item, &mut numbers));
    for belonging in &mut plan.belongings {
        numbers.extend(belonging.half_sold_days.as_mut());
        let Some(kept) = &mut belonging.kept else { continue };
        let sizes = [&mut kept.mass_kg, &mut kept.floor_m2, &mut kept.fitted_mass_kg, &mut kept.fitted_floor_m2];
        numbers.extend(sizes.into_iter().flatten());
    }
    let trial = &mut plan.trial;
    let shares = [&mut trial.unsuited_percent, &mut trial.finds_out_months, &mut trial.kept_percent];
    of_estimates(shares.map(Option::as_mut), &mut numbers);
    for build in &mut plan.builds {
        of_estimates([build.build_months.as_mut()], &mut numbers);
    }
    for stay in &mut plan.stays {
        of_estimates([stay.drive_hours.as_mut(), stay.drive_km.as_mut()], &mut numbers);
        of_offer(&mut stay.offers, &mut numbers);
        of_climate(&mut stay.climate, &mut numbers);
    }
    of_climate(&mut plan.climate, &mut numbers);
    for year in &mut plan.years {
        let place = [&mut year.latitude_deg, &mut year.longitude_deg, &mut year.altitude_m, &mut year.clock_ahead_h];
        numbers.extend(place);
    }
    for place in &mut plan.charging {
        numbers.extend([&mut place.from_hour, &mut place.charging_hours, &mut place.gives_w].into_iter().flatten());
    }
    for day in &mut plan.week {
        of_estimates([day.drive_hours.as_mut(), day.drive_km.as_mut()], &mut numbers);
        of_offer(&mut day.offers, &mut numbers);
    }
    for water_use in &mut plan.water_uses {
        of_estimates([Some(&mut water_use.litres_per_day)], &mut numbers);
        numbers.push(&mut water_use.to_grey_percent);
    }
    of_shell(&mut plan.shell, &mut numbers);
    for layer in &mut plan.layers {
        let of_layer = [&mut layer.thick_mm, &mut layer.conducts_w_mk, &mut layer.square_metre_kg];
        numbers.extend(of_layer.into_iter().flatten());
    }
    let work = &mut plan.work;
    let of_work = [&mut work.work_hours, &mut work.begins_hour, &mut work.too_cold_c, &mut work.too_hot_c];
    numbers.extend(of_work.into_iter().flatten());
    for data_use in &mut plan.data_uses {
        of_estimates([Some(&mut data_use.uses_per_day), data_use.each_mb.as_mut()], &mut numbers);
    }
    for contract in &mut plan.data_contracts {
        numbers.extend([&mut contract.allowance_gb, &mut contract.slow_kbit_s].into_iter().flatten());
    }
    for stock in &mut plan.stock {
        let of_stock = [&mut stock.length_mm, &mut stock.width_mm, &mut stock.thick_mm, &mut stock.one_kg];
        numbers.extend(of_stock.into_iter().flatten());
    }
    for flaw in &mut plan.flaws {
        numbers.extend([&mut flaw.flaw_from_mm, &mut flaw.flaw_to_mm].into_iter().flatten());
    }
    for cut in &mut plan.cuts {
        numbers.extend([&mut cut.length_mm, &mut cut.width_mm].into_iter().flatten());
    }
    numbers.extend([&mut plan.cutting.kerf_mm, &mut plan.cutting.trim_mm].into_iter().flatten());
    for covering in &mut plan.coverings {
        let of_covering = [
            &mut covering.own_m2,
            &mut covering.waste_percent,
            &mut covering.unit_covers_m2,
            &mut covering.each_m2_takes,
            &mut covering.rest_used_percent,
        ];
        numbers.extend(of_covering.into_iter().flatten());
    }
    for pack in &mut plan.material_packs {
        let of_pack = [&mut pack.pack_m2, &mut pack.pack_l, &mut pack.pack_kg, &mut pack.pack_mm, &mut pack.one_kg];
        numbers.extend(of_pack.into_iter().flatten());
        numbers.extend([&mut pack.length_mm, &mut pack.width_mm, &mut pack.height_mm].into_iter().flatten());
    }
    for reading in &mut plan.readings {
        let counted = [
            &mut reading.charge_percent,
            &mut reading.fresh_l,
            &mut reading.grey_l,
            &mut reading.odometer_km,
            &mut reading.measured_c,
        ];
        numbers.extend(counted.into_iter().flatten());
    }
    numbers
}

fn of_shell<'a>(shell: &'a mut Shell, numbers: &mut Vec<&'a mut f64>) {
    let of_shell = [
        &mut shell.window_m2,
        &mut shell.rib_percent,
        &mut shell.leak_cm2,
        &mut shell.vent_cm2,
        &mut shell.vent_rise_mm,
        &mut shell.open_cm2,
        &mut shell.wanted_c,
        &mut shell.wanted_asleep_c,
        &mut shell.least_asleep_c,
        &mut shell.asleep_from_hour,
        &mut shell.asleep_until_hour,
        &mut shell.damp_percent,
        &mut shell.wind_m_s,
    ];
    numbers.extend(of_shell.into_iter().flatten());
}

fn of_item<'a>(item: &'a mut Item, numbers: &mut Vec<&'a mut f64>) {
    of_estimates([item.mass_kg.as_mut()], numbers);
    numbers.extend([&mut item.length_mm, &mut item.width_mm, &mut item.height_mm].into_iter().flatten());
    if let Some(draw) = &mut item.draw {
        of_draw(draw, numbers);
    }
    if let Some(panel) = &mut item.panel {
        of_panel(panel, numbers);
    }
    if let Some(water) = &mut item.water {
        of_estimates([Some(&mut water.litres_per_day)], numbers);
        numbers.push(&mut water.to_grey_percent);
    }
    if let Some(store) = &mut item.store {
        numbers.extend([
            &mut store.usable_wh,
            &mut store.opening_percent,
            &mut store.inverter_efficiency_percent,
            &mut store.inverter_idle_w,
            &mut store.charge_efficiency_percent,
            &mut store.ac_continuous_w,
            &mut store.ac_surge_w,
            &mut store.dc_continuous_w,
            &mut store.vehicle_input_w,
            &mut store.mains_input_w,
            &mut store.taper_from_percent,
        ]);
        let stated = [
            &mut store.total_input_w,
            &mut store.rated_wh,
            &mut store.discharge_efficiency_percent,
            &mut store.inverter_low_percent,
            &mut store.inverter_full_percent,
            &mut store.dc_surge_w,
            &mut store.panel_input_w,
            &mut store.charges_above_c,
            &mut store.charges_below_c,
            &mut store.loses_percent,
            &mut store.cycles_done,
            &mut store.cycles_stated,
            &mut store.cycles_left_percent,
            &mut store.keeps_percent,
        ];
        numbers.extend(stated.into_iter().flatten());
    }
    if let Some(tank) = &mut item.tank {
        numbers.push(&mut tank.capacity_l);
        numbers.extend(tank.opening_percent.as_mut());
    }
    numbers.extend(item.toilet.as_mut().and_then(|toilet| toilet.waste_l.as_mut()));
    numbers.extend(item.filters_l.as_mut());
    numbers.extend(item.fan.as_mut().map(|fan| &mut fan.blows_m3_h));
    if let Some(burner) = &mut item.burner {
        of_estimates([burner.burns_hours.as_mut()], numbers);
        numbers.push(&mut burner.heat_w);
        numbers.extend([&mut burner.lit_from_hour, &mut burner.heat_percent].into_iter().flatten());
    }
}

fn of_draw<'a>(draw: &'a mut Draw, numbers: &mut Vec<&'a mut f64>) {
    of_estimates([Some(&mut draw.power_w), draw.hours_per_day.as_mut(), draw.duty_percent.as_mut()], numbers);
    let stated = [
        &mut draw.surge_w,
        &mut draw.from_hour,
        &mut draw.again_after_hours,
        &mut draw.used_percent,
        &mut draw.loss_percent,
        &mut draw.heats_l,
        &mut draw.heats_from_c,
        &mut draw.heats_to_c,
        &mut draw.vessel_kg,
        &mut draw.boiled_away_l,
        &mut draw.heat_percent,
        &mut draw.label_wh,
        &mut draw.label_air_c,
        &mut draw.inside_c,
        &mut draw.wall_mm,
    ];
    numbers.extend(stated.into_iter().flatten());
}

fn of_panel<'a>(panel: &'a mut Panel, numbers: &mut Vec<&'a mut f64>) {
    numbers.push(&mut panel.peak_w);
    let stated = [
        &mut panel.tilt_deg,
        &mut panel.azimuth_deg,
        &mut panel.sun_from_hour,
        &mut panel.sun_until_hour,
        &mut panel.shade_percent,
        &mut panel.dirt_percent,
        &mut panel.per_degree_percent,
        &mut panel.controller_percent,
    ];
    numbers.extend(stated.into_iter().flatten());
}

fn of_climate<'a>(climate: &'a mut Climate, numbers: &mut Vec<&'a mut f64>) {
    let stated = [
        &mut climate.latitude_deg,
        &mut climate.longitude_deg,
        &mut climate.altitude_m,
        &mut climate.clock_ahead_h,
        &mut climate.low_c,
        &mut climate.high_c,
        &mut climate.clearness_percent,
    ];
    numbers.extend(stated.into_iter().flatten());
}

fn of_offer<'a>(offer: &'a mut Offer, numbers: &mut Vec<&'a mut f64>) {
    of_estimates([offer.mains_hours.as_mut()], numbers);
    numbers.extend([&mut offer.mains_from_hour, &mut offer.mains_w, &mut offer.fallback_km].into_iter().flatten());
}

fn of_estimates<'a, const N: usize>(estimates: [Option<&'a mut Estimate<f64>>; N], numbers: &mut Vec<&'a mut f64>) {
    for estimate in estimates.into_iter().flatten() {
        match estimate {
            Estimate::Plain(value) => numbers.push(value),
            Estimate::Range { low, likely, high } => numbers.extend([low, likely, high]),
        }
    }
}
