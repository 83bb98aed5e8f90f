//! What the room comes to: the ways through the van, and the room to put things.

use kerbstead_core::explain::Figure;
use kerbstead_core::plan::Quantity;
use kerbstead_core::space::shape::DoorKind;
use kerbstead_core::space::{Goal, WayTo};

use super::with_name;
use crate::el::{View, el, fragment};
use crate::live;
use crate::locale::{say_figure, tell};
use crate::state::App;

/// Each way with its greatest width.
pub fn ways(app: App) -> View {
    live::view(move || {
        app.settled_assessment(|assessment| {
            let ways = &assessment.space.ways;
            if ways.is_empty() {
                return el("p").put(key!("space-ways-none")).done();
            }
            el("ul").class("lines").put_each(ways.iter().map(way_line)).done()
        })
    })
}

fn way_line(way: &WayTo) -> View {
    let door = match way.door_kind {
        DoorKind::Side => t!("space-way-door-side"),
        DoorKind::Rear => t!("space-way-door-rear"),
        DoorKind::Cab => t!("space-way-door-cab"),
    };
    let says = if way.passes { t!("space-way-passes") } else { t!("space-way-fails") };
    let mut figures = vec![
        ("door", Figure::Name(door)),
        ("widest", Figure::of(way.widest_mm, Quantity::LengthMm)),
        ("says", Figure::Name(says)),
    ];
    let text = match &way.to {
        Goal::Out { name, .. } => {
            figures.push(("name", Figure::Name(name.clone())));
            tell("space-way-out", &figures)
        }
        Goal::Thing { name, .. } => {
            figures.push(("to", Figure::Name(with_name("space-way-thing", name.clone()))));
            tell("space-way-row", &figures)
        }
        Goal::Cab => {
            figures.push(("to", Figure::Name(t!("space-way-cab"))));
            tell("space-way-row", &figures)
        }
    };
    el("li").class(if way.passes { "" } else { "short" }).put(text).done()
}

/// The room to put things by level, and what is to be put away.
pub fn storage(app: App) -> View {
    let litres = |value: f64| Figure::of(value, Quantity::VolumeL);
    live::view(move || {
        app.settled_assessment(|assessment| {
            let space = &assessment.space;
            let rows = space.levels.iter().map(|room| {
                let level = crate::locale::t(&format!("choice-level-{}", super::level_class(room.level)));
                let figures = vec![
                    ("level", Figure::Name(level)),
                    ("free", litres(room.free_l)),
                    ("usable", litres(room.usable_l)),
                ];
                el("li").put(tell("space-storage-row", &figures)).done()
            });
            let rows: Vec<View> = rows.collect();
            let table = if rows.is_empty() {
                el("p").put(key!("space-storage-none")).done()
            } else {
                el("ul").class("lines").put_each(rows).done()
            };
            let goods = say_figure(&litres(space.goods_l));
            let unknown = (space.unknown_goods > 0).then(|| {
                let count = vec![("count", Figure::count(space.unknown_goods))];
                el("p").put(tell("space-storage-unknown", &count)).done()
            });
            fragment()
                .put(table)
                .put(el("p").put(tell("space-storage-goods", &vec![("goods", Figure::Name(goods))])))
                .put(unknown)
                .done()
        })
    })
}
