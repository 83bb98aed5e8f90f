//! Changes that may mend data and hours of work.

use crate::moves::constants::LESS_DATA_PERCENT;
use crate::moves::{Change, Found};
use crate::plan::{Edit, Estimate, List, Path, Plain};

/// Adds the changes that may mend it: a contract of the list put in use or out of use, and less of a use of data.
pub fn moves(found: &mut Found) {
    for contract in &found.plan.data_contracts {
        let change = if contract.in_use { Change::EndContract } else { Change::TakeContract };
        let path = Path::entry(List::DataContracts.name(), contract.id).child("in_use");
        found.add(change, contract.id, Edit::set(path, !contract.in_use));
    }
    for data_use in &found.plan.data_uses {
        let amount = data_use.uses_per_day;
        let little =
            if amount.low() < amount.likely() { amount.low() } else { amount.likely() * LESS_DATA_PERCENT / 100.0 };
        let path = Path::entry(List::DataUses.name(), data_use.id).child("uses_per_day");
        found.add(Change::LessData, data_use.id, Edit::set(path, Estimate::Plain(little).to_plain()));
    }
}
