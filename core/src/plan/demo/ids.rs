//! Ids for a plan that was written down without any.

use crate::plan::{Id, Plan};

/// Numbers all entries in the order of the lists, from 1.
pub(in crate::plan) fn number(plan: &mut Plan) {
    let kit = plan.kit.iter_mut().map(|entry| &mut entry.id);
    let belongings = plan.belongings.iter_mut().map(|entry| &mut entry.id);
    let incomes = plan.incomes.iter_mut().map(|entry| &mut entry.id);
    let costs = plan.costs.iter_mut().map(|entry| &mut entry.id);
    let loans = plan.loans.iter_mut().map(|entry| &mut entry.id);
    let builds = plan.builds.iter_mut().map(|entry| &mut entry.id);
    let stays = plan.stays.iter_mut().map(|entry| &mut entry.id);
    let week = plan.week.iter_mut().map(|entry| &mut entry.id);
    let water_uses = plan.water_uses.iter_mut().map(|entry| &mut entry.id);
    let tasks = plan.tasks.iter_mut().map(|entry| &mut entry.id);
    let task_needs = plan.task_needs.iter_mut().map(|entry| &mut entry.id);
    let tools = plan.tools.iter_mut().map(|entry| &mut entry.id);
    let helpers = plan.helpers.iter_mut().map(|entry| &mut entry.id);
    let other_days = plan.other_days.iter_mut().map(|entry| &mut entry.id);
    let corners = plan.corners.iter_mut().map(|entry| &mut entry.id);
    let built_ins = plan.built_ins.iter_mut().map(|entry| &mut entry.id);
    let doors = plan.doors.iter_mut().map(|entry| &mut entry.id);
    let wall_rows = plan.wall_rows.iter_mut().map(|entry| &mut entry.id);
    let roof_rows = plan.roof_rows.iter_mut().map(|entry| &mut entry.id);
    let placements = plan.placements.iter_mut().map(|entry| &mut entry.id);
    let sleepers = plan.sleepers.iter_mut().map(|entry| &mut entry.id);
    let distances = plan.distances.iter_mut().map(|entry| &mut entry.id);
    let years = plan.years.iter_mut().map(|entry| &mut entry.id);
    let charging = plan.charging.iter_mut().map(|entry| &mut entry.id);
    let water_stops = plan.water_stops.iter_mut().map(|entry| &mut entry.id);
    let layers = plan.layers.iter_mut().map(|entry| &mut entry.id);
    let data_uses = plan.data_uses.iter_mut().map(|entry| &mut entry.id);
    let data_contracts = plan.data_contracts.iter_mut().map(|entry| &mut entry.id);
    let stock = plan.stock.iter_mut().map(|entry| &mut entry.id);
    let cuts = plan.cuts.iter_mut().map(|entry| &mut entry.id);
    let coverings = plan.coverings.iter_mut().map(|entry| &mut entry.id);
    let material_packs = plan.material_packs.iter_mut().map(|entry| &mut entry.id);
    let flaws = plan.flaws.iter_mut().map(|entry| &mut entry.id);
    let wishes = plan.wishes.iter_mut().map(|entry| &mut entry.id);
    let all = kit
        .chain(belongings)
        .chain(incomes)
        .chain(costs)
        .chain(stays)
        .chain(week)
        .chain(water_uses)
        .chain(loans)
        .chain(builds)
        .chain(tasks)
        .chain(tools)
        .chain(helpers)
        .chain(other_days)
        .chain(task_needs)
        .chain(corners)
        .chain(built_ins)
        .chain(doors)
        .chain(wall_rows)
        .chain(roof_rows)
        .chain(placements)
        .chain(sleepers)
        .chain(distances)
        .chain(years)
        .chain(charging)
        .chain(wishes)
        .chain(water_stops)
        .chain(layers)
        .chain(data_uses)
        .chain(data_contracts)
        .chain(stock)
        .chain(cuts)
        .chain(coverings)
        .chain(material_packs)
        .chain(flaws);
    for (id, next) in all.zip(1 as Id..) {
        *id = next;
    }
}
