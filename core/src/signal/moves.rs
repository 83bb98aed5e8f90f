//! Changes that may mend data and hours of work.

use crate::moves::constants::LESS_DATA_PERCENT;
use crate::moves::{Change, Found};
use crate::plan::{Edit, Estimate, Id, List, Path, Plain};

/// Adds the changes that may mend it: a contract of the list put in use, and less of a use of data.
pub fn moves(found: &mut Found) {
    for contract in found.plan.data_contracts.iter().filter(|contract| !contract.in_use) {
        found.add(Change::TakeContract, contract.id, put_in_use(contract.id, true));
    }
    for data_use in &found.plan.data_uses {
        let amount = data_use.uses_per_day;
        let little =
            if amount.low() < amount.likely() { amount.low() } else { amount.likely() * LESS_DATA_PERCENT / 100.0 };
        let path = Path::entry(List::DataUses.name(), data_use.id).child("uses_per_day");
        found.add(Change::LessData, data_use.id, Edit::set(path, Estimate::Plain(little).to_plain()));
    }
}

/// Adds what may mend the money: contracts in use that are used no longer.
pub fn moves_of_money(found: &mut Found) {
    for contract in found.plan.data_contracts.iter().filter(|contract| contract.in_use) {
        found.add(Change::EndContract, contract.id, put_in_use(contract.id, false));
    }
}

fn put_in_use(contract: Id, in_use: bool) -> Edit {
    Edit::set(Path::entry(List::DataContracts.name(), contract).child("in_use"), in_use)
}
