//! Pay that the work on the road may not bring, beside the incomes that the plan counts on.

use jiff::civil::Date;

use super::findings::Finding;
use super::flows::{Flow, FlowGroup, FlowState};
use super::step::CashDay;
use crate::plan::{Money, Plan};

/// What the cash comes to where pay is not earned, by day, from the day asked on. Pay can be missing only of incomes that the plan
/// counts on, and not before they come: of what was not earned until an evening, so much is missing then as was to come in until
/// then. None where nothing is missing.
pub(super) fn pay_at_risk(
    plan: &Plan,
    as_of: Date,
    ahead: &[CashDay],
    flows: &[Flow],
    unearned: &[(Date, Money)],
) -> Option<Finding> {
    let (by, _) = *unearned.iter().rfind(|(on, _)| *on >= as_of)?;
    let is_income =
        |flow: &&Flow| flow.group == FlowGroup::Income && flow.state == FlowState::Planned && flow.on >= as_of;
    let mut incomes = flows.iter().filter(is_income).peekable();
    let mut lost = unearned.iter().filter(|(on, _)| *on >= as_of).peekable();
    let (mut income, mut unearned, mut missing) = (Money::ZERO, Money::ZERO, Money::ZERO);
    let mut lowest: Option<(Money, Date)> = None;
    for day in ahead {
        while let Some(flow) = incomes.next_if(|flow| flow.on <= day.on) {
            income += flow.amount.max(Money::ZERO);
        }
        while let Some((_, amount)) = lost.next_if(|(on, _)| *on <= day.on) {
            unearned += *amount;
        }
        missing = income.min(unearned);
        let left = day.closing - missing;
        if lowest.is_none_or(|(least, _)| left < least) {
            lowest = Some((left, day.on));
        }
    }
    let (lowest, lowest_on) = lowest.filter(|_| missing > Money::ZERO)?;
    let breaks_floor = lowest < plan.purse.floor;
    Some(Finding::PayAtRisk { amount: missing, by, lowest, lowest_on, breaks_floor })
}
