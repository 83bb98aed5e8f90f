//! A starter in one row. A value is common practice unless the row says whose it is.

use super::{Sourced, Starter, StarterDraw, StarterSource, StarterStore};
use crate::plan::{DrawDays, Group, Need, Outlet, PanelSetup, TankKind, Works};

/// A starter of that key, with its key in the catalogue.
macro_rules! starter {
    ($key:literal, $group:ident, $need:ident) => {
        Starter::new($key, concat!("starter-", $key), Group::$group, Need::$need)
    };
}
pub(super) use starter;

const fn usual<T: Copy>(value: T) -> Sourced<T> {
    Sourced { value, source: StarterSource::CommonPractice }
}

const fn published<T: Copy>(value: T, source: &'static str) -> Sourced<T> {
    Sourced { value, source: StarterSource::Published(source) }
}

impl Starter {
    pub(super) const fn new(key: &'static str, name_key: &'static str, group: Group, need: Need) -> Self {
        Self {
            key,
            name_key,
            group,
            need,
            size_mm: None,
            mass_kg: None,
            price_eur: None,
            draw: None,
            tank: None,
            store: None,
            panel: None,
            water: None,
        }
    }

    pub(super) const fn mm(mut self, length: f64, width: f64, height: f64) -> Self {
        self.size_mm = Some(usual([length, width, height]));
        self
    }

    pub(super) const fn mm_by(mut self, length: f64, width: f64, height: f64, source: &'static str) -> Self {
        self.size_mm = Some(published([length, width, height], source));
        self
    }

    pub(super) const fn kg(mut self, low: f64, likely: f64, high: f64) -> Self {
        self.mass_kg = Some(usual([low, likely, high]));
        self
    }

    pub(super) const fn eur(mut self, low: i64, likely: i64, high: i64) -> Self {
        self.price_eur = Some(usual([low, likely, high]));
        self
    }

    pub(super) const fn draws(mut self, draw: StarterDraw) -> Self {
        self.draw = Some(usual(draw));
        self
    }

    pub(super) const fn draws_by(mut self, draw: StarterDraw, source: &'static str) -> Self {
        self.draw = Some(published(draw, source));
        self
    }

    pub(super) const fn fresh_l(mut self, litres: f64) -> Self {
        self.tank = Some(usual((TankKind::Fresh, litres)));
        self
    }

    pub(super) const fn grey_l(mut self, litres: f64) -> Self {
        self.tank = Some(usual((TankKind::Grey, litres)));
        self
    }

    pub(super) const fn stores(mut self, usable_wh: f64, ac_continuous_w: f64, mains_input_w: f64) -> Self {
        self.store = Some(usual(StarterStore { usable_wh, ac_continuous_w, mains_input_w }));
        self
    }

    pub(super) const fn panel_w(mut self, peak_w: f64, setup: PanelSetup) -> Self {
        self.panel = Some(usual((peak_w, setup)));
        self
    }

    pub(super) const fn uses_l(mut self, low: f64, likely: f64, high: f64, to_grey_percent: f64) -> Self {
        self.water = Some(usual(([low, likely, high], to_grey_percent)));
        self
    }
}

/// Mains voltage: power in W (low, likely, high), hours a day, from an hour on.
pub(super) const fn ac(power_w: [f64; 3], hours_per_day: f64, from_hour: f64) -> StarterDraw {
    draw(power_w, Outlet::Ac, hours_per_day, from_hour)
}

/// 12 V or USB, likewise.
pub(super) const fn dc(power_w: [f64; 3], hours_per_day: f64, from_hour: f64) -> StarterDraw {
    draw(power_w, Outlet::Dc, hours_per_day, from_hour)
}

const fn draw(power_w: [f64; 3], outlet: Outlet, hours_per_day: f64, from_hour: f64) -> StarterDraw {
    StarterDraw {
        power_w,
        outlet,
        hours_per_day: Some(hours_per_day),
        from_hour: Some(from_hour),
        duty_percent: None,
        days: DrawDays::Every,
        works: Works::ByClock,
        heats_l: None,
        label_wh: None,
    }
}

/// Mains voltage: heats so many litres to the boil at an hour of the day.
pub(super) const fn heating(power_w: [f64; 3], litres: f64, from_hour: f64) -> StarterDraw {
    let mut draw = draw(power_w, Outlet::Ac, 0.0, from_hour);
    (draw.hours_per_day, draw.works, draw.heats_l) = (None, Works::Heating, Some(litres));
    draw
}

/// 12 V: keeps cold, by what a label says it takes a day.
pub(super) const fn cooling(power_w: [f64; 3], label_wh: f64) -> StarterDraw {
    StarterDraw {
        power_w,
        outlet: Outlet::Dc,
        hours_per_day: None,
        from_hour: None,
        duty_percent: None,
        days: DrawDays::Every,
        works: Works::Cooling,
        heats_l: None,
        label_wh: Some(label_wh),
    }
}

/// The same draw on working days only.
pub(super) const fn when_working(mut draw: StarterDraw) -> StarterDraw {
    draw.days = DrawDays::Working;
    draw
}
