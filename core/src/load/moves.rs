//! Changes that may mend the load.

use super::input::sound;
use crate::moves::constants::{LIGHTER_PERCENT, MOST_OF_A_KIND};
use crate::moves::{Change, Found, of_item};
use crate::plan::{Edit, Estimate, Item, Plain};

/// Adds the changes that may mend the load: the heaviest things that are no must left out or taken lighter, and things moved to
/// the other side or the other end.
pub fn moves(found: &mut Found) {
    let mass = |item: &Item| sound(item.mass_kg.map_or(0.0, |mass| mass.likely()) * f64::from(item.kept()));
    let mut heaviest: Vec<&Item> =
        found.wants().into_iter().map(|(item, _)| item).filter(|it| mass(it) > 0.0).collect();
    heaviest.sort_by(|a, b| mass(b).total_cmp(&mass(a)));
    heaviest.truncate(MOST_OF_A_KIND);
    found.leave_out(heaviest.iter().copied());
    for item in heaviest {
        let Some(mass) = item.mass_kg else { continue };
        let lighter = mass.likely() * LIGHTER_PERCENT / 100.0;
        found.add(
            Change::Lighter,
            item.id,
            Edit::set(of_item(item.id, "mass_kg"), Estimate::Plain(lighter).to_plain()),
        );
    }
    crate::space::mirrored(found);
}
