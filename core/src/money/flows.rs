//! What moves money, and when: the plan as dated flows.

use jiff::civil::Date;
use serde::Serialize;

use super::booking::{Booking, OnReceipts, bookings, on_receipts};
use super::debt::Debt;
use super::due::{due_days, occurrences};
use super::price::{goods_span, purchase_span};
use super::sales::{chance_ppm, is_counted_on};
use super::span::Span;
use crate::order;
use crate::plan::civil::day_key;
use crate::plan::{
    Belonging, Cost, CostEvery, Group, Id, Income, Item, Loan, Money, Obtain, Outcome, Plan, Sale, Vehicle, decimal,
};
use crate::run::{Phase, Timeline};
use crate::signal;

/// What the money balance takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// Cash before the first day's flows.
    pub opening: Money,
    /// Every flow within the timeline, by date.
    pub flows: Vec<Flow>,
    /// Items that are bought or made but have no price yet.
    pub unpriced: Vec<Id>,
    /// The loans, as far as they are agreed.
    pub debts: Vec<Debt>,
    /// The sales that are less likely than not. They are not among the flows.
    pub unlikely: Vec<Flow>,
}

/// Money that moves on one day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Flow {
    /// The day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub on: Date,
    /// What comes in; negative for what goes out.
    pub amount: Money,
    /// Where it is counted.
    pub group: FlowGroup,
    /// The entry it comes from; 0 for the van and its fuel. Of a receipt's line for an item, the item.
    pub source: Id,
    /// Whether it has happened.
    pub state: FlowState,
    /// What it may come to instead.
    #[serde(skip)]
    pub range: FlowRange,
}

/// What a flow may come to. The flows are those of the likely run, so this does not leave core with them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FlowRange {
    /// The least; of what goes out the dearest price, which is negative.
    pub low: Money,
    /// The most.
    pub high: Money,
    /// The chance that it happens at all, in millionths: 0 to 1,000,000.
    pub chance_ppm: u32,
}

/// Where a flow is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FlowGroup {
    /// Sales of belongings and of items.
    Sales,
    /// Other income.
    Income,
    /// Purchases for the kit, by its headings.
    Kit(Group),
    /// What receipts have that is for nothing in the kit.
    Receipts,
    /// What must be paid again and again.
    Costs,
    /// Nights that are paid for.
    Nights,
    /// Places to charge at that are in use.
    Charging,
    /// Stops for water that are in use.
    WaterStops,
    /// Contracts for data in use, and what is used beyond their allowances.
    Data,
    /// The van itself.
    Vehicle,
    /// Loans, drawn and paid back.
    Loans,
    /// Fuel for the distances of the route.
    Fuel,
}

/// Whether a flow has happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FlowState {
    /// Its day has not come.
    Planned,
    /// The person said that it happened.
    Confirmed,
    /// Its day has passed and nobody said what came of it. Such payments count, such receipts do not.
    Unanswered,
}

impl FlowGroup {
    /// Whether it is paid day by day on the road.
    pub(crate) const fn is_running(self) -> bool {
        matches!(self, Self::Costs | Self::Nights | Self::Charging | Self::WaterStops | Self::Data | Self::Fuel)
    }
}

impl Flow {
    /// Whether the run counts it: money that nobody confirmed is not counted as received.
    pub fn counts(&self) -> bool {
        self.state != FlowState::Unanswered || self.amount.is_negative()
    }
}

impl Input {
    /// The plan's flows within the timeline.
    pub fn new(plan: &Plan, as_of: Date, timeline: &Timeline) -> Self {
        let mut collector = Collector { plan, as_of, timeline, flows: Vec::new(), unlikely: Vec::new() };
        let bookings = bookings(plan);
        let said = on_receipts(plan, &bookings);
        let mut unpriced = Vec::new();
        for (item, on_receipts) in plan.kit.iter().zip(said).filter(|(item, _)| item.obtain != Obtain::LeftOut) {
            let is_known = item.unit_price.is_some()
                || item.paid.is_some_and(|paid| paid.amount.is_some())
                || on_receipts.is_some_and(|said| said.is_all);
            if item.obtain.is_paid() && !is_known {
                unpriced.push(item.id);
            }
            collector.purchase(item, on_receipts);
            collector.refund(item);
            collector.item_sale(item);
        }
        let sold = plan.belongings.iter().filter(|belonging| belonging.is_for_sale());
        sold.for_each(|belonging| collector.belonging(belonging));
        plan.incomes.iter().for_each(|income| collector.income(income));
        plan.costs.iter().for_each(|cost| collector.cost(cost));
        collector.nights();
        collector.charging();
        collector.water_stops();
        collector.data();
        collector.fuel();
        collector.vehicle();
        collector.receipts(&bookings);
        let debts: Vec<Debt> = plan.loans.iter().filter_map(|loan| Debt::new(plan, loan)).collect();
        plan.loans.iter().for_each(|loan| collector.loan(loan, &debts));
        let flows = order::by_key(&collector.flows, |flow| day_key(flow.on));
        Self {
            opening: plan.purse.opening_cash.unwrap_or(Money::ZERO),
            flows,
            unpriced,
            debts,
            unlikely: collector.unlikely,
        }
    }
}

/// A flow before it is known on which day of the timeline it falls.
struct Planned {
    amount: Span,
    on: Option<Date>,
    outcome: Option<Outcome>,
    group: FlowGroup,
    source: Id,
}

/// It happens, in millionths.
const SURE: u32 = 1_000_000;

struct Collector<'a> {
    plan: &'a Plan,
    as_of: Date,
    timeline: &'a Timeline<'a>,
    flows: Vec<Flow>,
    unlikely: Vec<Flow>,
}

impl Collector<'_> {
    /// What is paid for an item beside its receipts. Their lines are flows of their own, so only what is said to be
    /// paid beyond them counts here; or, where they say that more follows, what the price has beyond them.
    fn purchase(&mut self, item: &Item, on_receipts: Option<OnReceipts>) {
        if !item.obtain.is_paid() {
            return;
        }
        let price = purchase_span(item, &self.plan.purse, self.plan.minor_digits());
        let price = price.filter(|_| on_receipts.is_none_or(|said| !said.is_all));
        let Some(price) = price_or(item.paid, price) else { return };
        let (on, outcome) = (item.buy_on.or(item.needed_on), item.paid);
        let beyond = |said: OnReceipts| price.each(&|price| (price - said.paid).max(Money::ZERO));
        let amount = on_receipts.map_or(price, beyond).negated();
        self.once(&Planned { amount, on, outcome, group: FlowGroup::Kit(item.group), source: item.id });
    }

    /// What was paid by receipts: their lines for items, and all the rest of each. One without a day counts on the first
    /// day, so that every count of the cash has it in it.
    fn receipts(&mut self, bookings: &[Booking]) {
        let digits = self.plan.minor_digits();
        let known = order::sorted(self.plan.kit.iter().map(|item| item.id.into()));
        for Booking { id, receipt, .. } in bookings {
            let on = receipt.on.unwrap_or(self.timeline.starts_on());
            let mut rest = receipt.stated.map(|stated| stated.rounded(digits));
            let mut sum = Money::ZERO;
            for line in &receipt.lines {
                let amount = line.amount.rounded(digits);
                let at = line.item.and_then(|id| order::find(&known, id.into())).and_then(|at| known.get(at));
                match at.and_then(|(_, at)| self.plan.kit.get(*at)) {
                    Some(item) => {
                        rest = rest.map(|rest| rest - amount);
                        self.push(on, Span::sure(-amount), FlowGroup::Kit(item.group), item.id, FlowState::Confirmed);
                    }
                    None => sum += amount,
                }
            }
            let rest = Span::sure(-rest.unwrap_or(sum));
            self.push(on, rest, FlowGroup::Receipts, id.unwrap_or(0), FlowState::Confirmed);
        }
    }

    /// What comes back for unused goods.
    fn refund(&mut self, item: &Item) {
        let Some(returned) = item.returned.filter(|_| item.obtain.is_paid()) else { return };
        let quantity = returned.quantity.min(item.quantity);
        let price = goods_span(item, quantity, &self.plan.purse, self.plan.minor_digits());
        let Some(amount) = price_or(returned.outcome, price) else { return };
        let (on, outcome) = (returned.on, returned.outcome);
        self.once(&Planned { amount, on, outcome, group: FlowGroup::Kit(item.group), source: item.id });
    }

    fn item_sale(&mut self, item: &Item) {
        if item.obtain == Obtain::Borrowed {
            return;
        }
        let Some(Sale { price, on, outcome }) = item.sale else { return };
        let Some(amount) = price_or(outcome, price.map(Span::of)) else { return };
        self.once(&Planned { amount, on, outcome, group: FlowGroup::Sales, source: item.id });
    }

    /// A sale less what it costs. It may go down to the lowest price, where there is one, and else to the least that is
    /// believable.
    fn belonging(&mut self, belonging: &Belonging) {
        let price = belonging.price.map(Span::of);
        let price = price.map(|price| Span { low: belonging.lowest.unwrap_or(price.low), ..price });
        let Some(price) = price_or(belonging.outcome, price) else { return };
        let cost = belonging.selling_cost.unwrap_or(Money::ZERO);
        let amount = price.each(&|price| price - cost);
        let (on, outcome) = (belonging.on, belonging.outcome);
        let sale = Planned { amount, on, outcome, group: FlowGroup::Sales, source: belonging.id };
        let Some(mut flow) = self.one(&sale) else { return };
        let is_open = flow.state == FlowState::Planned;
        if is_open {
            flow.range.chance_ppm = chance_ppm(belonging);
        }
        if is_open && !is_counted_on(belonging) { self.unlikely.push(flow) } else { self.flows.push(flow) }
    }

    /// A flow of one day. Without a date it falls on the day of leaving. A payment planned for before the first day is
    /// still to be made on it; a receipt from before it is in the opening cash already, as is all that was confirmed.
    fn one(&self, planned: &Planned) -> Option<Flow> {
        let outcome = planned.outcome;
        if outcome.is_some_and(|outcome| !outcome.happened) {
            return None;
        }
        let on = outcome.and_then(|outcome| outcome.on).or(planned.on).or(self.plan.calendar.leaves_on);
        let starts_on = self.timeline.starts_on();
        let on = on.unwrap_or_else(|| self.timeline.ends_on());
        let is_open_payment = outcome.is_none() && planned.amount.likely.is_negative();
        let on = if on < starts_on && is_open_payment { starts_on } else { on };
        let state = match outcome {
            Some(_) => FlowState::Confirmed,
            None if on < self.as_of => FlowState::Unanswered,
            None => FlowState::Planned,
        };
        self.flow(on, planned.amount, planned.group, planned.source, state)
    }

    fn once(&mut self, planned: &Planned) {
        let flow = self.one(planned);
        self.flows.extend(flow);
    }

    /// A flow within the timeline. What has happened is not a range any more.
    fn flow(&self, on: Date, amount: Span, group: FlowGroup, source: Id, state: FlowState) -> Option<Flow> {
        let amount = if state == FlowState::Planned { amount } else { Span::sure(amount.likely) };
        if self.timeline.index_of(on).is_none() || amount == Span::NOTHING {
            return None;
        }
        let Span { low, likely, high } = amount.rounded(self.plan.minor_digits());
        Some(Flow { on, amount: likely, group, source, state, range: FlowRange { low, high, chance_ppm: SURE } })
    }

    fn push(&mut self, on: Date, amount: Span, group: FlowGroup, source: Id, state: FlowState) {
        let flow = self.flow(on, amount, group, source, state);
        self.flows.extend(flow);
    }

    fn income(&mut self, income: &Income) {
        let (Some(amount), Some(first)) = (income.amount, income.on) else { return };
        let last = income.until.map_or(self.timeline.ends_on(), |until| until.min(self.timeline.ends_on()));
        for on in occurrences(first, income.repeat, self.timeline.starts_on(), last) {
            let is_received = income.received_until.is_some_and(|until| on <= until);
            let state = match () {
                () if is_received => FlowState::Confirmed,
                () if on < self.as_of => FlowState::Unanswered,
                () => FlowState::Planned,
            };
            self.push(on, Span::of(amount), FlowGroup::Income, income.id, state);
        }
    }

    /// A cost on its days in its part of the plan. Those of days past count as paid: a rent is rarely forgotten, and a
    /// count of the cash corrects it.
    fn cost(&mut self, cost: &Cost) {
        let Some(amount) = cost.amount.map(Span::of) else { return };
        if cost.every == CostEvery::HundredKm {
            self.by_distance(amount, FlowGroup::Costs, cost.id);
            return;
        }
        for on in due_days(cost, self.plan.calendar.leaves_on, self.timeline) {
            self.settled(Some(on), amount.negated(), FlowGroup::Costs, cost.id);
        }
    }

    /// Fuel on the days it is burnt.
    fn fuel(&mut self) {
        if let Some(price) = fuel_span(&self.plan.vehicle) {
            self.by_distance(price, FlowGroup::Fuel, 0);
        }
    }

    /// What is paid for every hundred kilometres, on the days they are driven.
    fn by_distance(&mut self, for_100_km: Span, group: FlowGroup, source: Id) {
        let timeline = self.timeline;
        for day in timeline.days.iter().filter(|day| day.drive_km > 0.0) {
            let km = decimal::of_measure(day.drive_km);
            self.settled(Some(day.date), for_100_km.each(&|price| price.percent(km)).negated(), group, source);
        }
    }

    /// The van: the deposit, what is left of the price less the present car and with the seller's fees, and the
    /// registration. If it is not bought after all, only a deposit that was paid is gone.
    fn vehicle(&mut self) {
        let bought = &self.plan.purchase;
        let or_nothing = |amount: Option<Money>| amount.unwrap_or(Money::ZERO);
        let is_off = bought.paid.is_some_and(|paid| !paid.happened);
        let paid_on = bought.paid.and_then(|paid| paid.on).or(bought.pay_on).or(self.plan.calendar.leaves_on);
        let deposit = or_nothing(bought.deposit);
        let deposit_on = bought.deposit_on.or(paid_on);
        if !is_off || deposit_on.is_some_and(|on| on < self.as_of) {
            self.settled(deposit_on, Span::sure(-deposit), FlowGroup::Vehicle, 0);
        }
        if is_off {
            return;
        }
        let sure = Span::sure(or_nothing(bought.seller_fees) - deposit);
        let rest = Span::of_any(bought.agreed_price).plus(Span::of_any(bought.part_exchange).negated()).plus(sure);
        let amount = price_or(bought.paid, Some(rest)).unwrap_or(rest).negated();
        let (on, outcome) = (bought.pay_on, bought.paid);
        self.once(&Planned { amount, on, outcome, group: FlowGroup::Vehicle, source: 0 });
        let registration = or_nothing(bought.registration);
        self.settled(bought.registration_on.or(paid_on), Span::sure(-registration), FlowGroup::Vehicle, 0);
    }

    /// The money of a loan on its day, and every payment.
    fn loan(&mut self, loan: &Loan, debts: &[Debt]) {
        let Some(debt) = debts.iter().find(|debt| debt.loan == loan.id) else { return };
        let terms = &debt.terms;
        let state = match loan.drawn {
            Some(_) => FlowState::Confirmed,
            None if terms.drawn_on < self.as_of => FlowState::Unanswered,
            None => FlowState::Planned,
        };
        self.push(terms.drawn_on, Span::sure(terms.principal - terms.fees), FlowGroup::Loans, loan.id, state);
        for payment in &debt.payments {
            self.settled(Some(payment.on), Span::sure(-payment.payment), FlowGroup::Loans, loan.id);
        }
    }

    /// A flow that nobody is asked about: once its day has passed it has happened, and a count of the cash corrects it.
    fn settled(&mut self, on: Option<Date>, amount: Span, group: FlowGroup, source: Id) {
        let on = on.unwrap_or_else(|| self.timeline.ends_on());
        let state = if on < self.as_of { FlowState::Confirmed } else { FlowState::Planned };
        self.push(on, amount, group, source, state);
    }

    fn nights(&mut self) {
        let timeline = self.timeline;
        for day in timeline.days.iter().filter(|day| day.phase == Phase::Road) {
            let Some(price) = day.offer.and_then(|offer| offer.price_per_night) else { continue };
            self.settled(Some(day.date), Span::of(price).negated(), FlowGroup::Nights, day.source.unwrap_or(0));
        }
    }

    /// Each day at each place to charge at that is in use.
    fn charging(&mut self) {
        let (timeline, plan) = (self.timeline, self.plan);
        for place in plan.charging.iter().filter(|place| place.in_use) {
            let price = place.price(place.hours());
            let days = timeline.road().filter(|day| price > Money::ZERO && place.is_there(day.date, day.source));
            for day in days {
                self.settled(Some(day.date), Span::sure(-price), FlowGroup::Charging, place.id);
            }
        }
    }

    /// Each stop for water that is in use, on its days.
    fn water_stops(&mut self) {
        let (timeline, plan) = (self.timeline, self.plan);
        for (stop, from) in plan.water_stops_in_use() {
            let Some(price) = stop.stop_price.filter(|price| *price > Money::ZERO) else { continue };
            for day in timeline.road().filter(|day| stop.is_there(day.date, day.source, from)) {
                self.settled(Some(day.date), Span::sure(-price), FlowGroup::WaterStops, stop.id);
            }
        }
    }

    /// Each period of each contract for data in use, and what the likely use takes beyond the allowances.
    fn data(&mut self) {
        let (timeline, plan) = (self.timeline, self.plan);
        let Some(first) = timeline.road().next().map(|day| day.date) else { return };
        for contract in plan.data_contracts.iter().filter(|contract| contract.in_use) {
            let Some(price) = contract.period_price else { continue };
            for on in contract.periods(first, timeline.ends_on()) {
                self.settled(Some(on), Span::sure(-price), FlowGroup::Data, contract.id);
            }
        }
        for (on, contract, amount) in beyond_allowances(plan, timeline) {
            self.settled(Some(on), Span::sure(-amount), FlowGroup::Data, contract);
        }
    }
}

/// What is paid by day beyond allowances for data, and to which contract.
pub(super) fn beyond_allowances(plan: &Plan, timeline: &Timeline) -> Vec<(Date, Id, Money)> {
    if plan.data_uses.is_empty() || !plan.data_contracts.iter().any(|contract| contract.in_use) {
        return Vec::new();
    }
    let input = signal::Input::new(plan, timeline);
    input.paid_beyond(&input.course(signal::Which::Likely), plan.minor_digits())
}

/// What was paid or received in the end, or else what is planned.
fn price_or(outcome: Option<Outcome>, planned: Option<Span>) -> Option<Span> {
    outcome.and_then(|outcome| outcome.amount).map(Span::sure).or(planned)
}

/// What the fuel for 100 km costs, if both its price and how much is burnt are known.
pub(super) fn fuel_for_100_km(vehicle: &Vehicle) -> Option<Money> {
    fuel_span(vehicle).map(|price| price.likely)
}

/// The same, from the least burnt at the lowest price to the most at the highest.
fn fuel_span(vehicle: &Vehicle) -> Option<Span> {
    let (litres, price) = (vehicle.fuel_l_per_100_km?, vehicle.fuel_price_per_l?);
    let of = |litres: f64, price: Money| price.scaled(decimal::of_measure(litres));
    Some(Span {
        low: of(litres.low(), price.low()),
        likely: of(litres.likely(), price.likely()),
        high: of(litres.high(), price.high()),
    })
}
