//! The one list: what is carried, drawn, drunk and paid for.

use kerbstead_core::explain::Figure;
use kerbstead_core::money::{are_paid, purchase_price};
use kerbstead_core::plan::{
    Edit, Field, Group, Id, Item, List, Need, Obtain, Path, Plain, Plan, STARTERS, Wrong, field, matching,
    starter_item, typed_value,
};
use serde_json::json;

use super::money::group_key;
use crate::browser::small_letters;
use crate::el::{View, all, el, fragment, nothing};
use crate::live::{self, Memo, Signal};
use crate::locale::{self, say_money, t, words};
use crate::parts::{Entries, comes_to, entry_line, fields, optional};
use crate::route;
use crate::state::App;

/// The page.
pub fn kit() -> View {
    let filter = Filter { text: Signal::new(String::new()), show: Signal::new(Show::All), by: Signal::new(By::Group) };
    fragment().put(el("h1").put(key!("page-kit"))).put(adding()).put(filter.controls()).put(list(filter)).done()
}

/// A name and a price are enough; a thing of the starter list brings its usual values along.
fn adding() -> View {
    let app = App::here();
    let name = Signal::new(String::new());
    let price = Signal::new(String::new());
    let names: Vec<String> = STARTERS.iter().map(|starter| small_letters(&t(starter.name_key))).collect();
    let found = {
        let names = names.clone();
        live::memo(move || matching(&names, &small_letters(&name.get())).into_iter().take(6).collect::<Vec<_>>())
    };
    let wrong_price =
        move || price_value(&price.get()).err().map_or_else(String::new, |wrong| words(|words| words.wrong(&wrong)));
    let price_comes_to = move || price_field().and_then(|field| comes_to(field, &price.get())).unwrap_or_default();
    let add_named = move || {
        let Ok(price_value) = price_value(&price.get_untracked()) else { return };
        let text = name.get_untracked().trim().to_owned();
        if text.is_empty() {
            crate::browser::focus_soon("new-name".to_owned());
            return;
        }
        let id = app.plan(Plan::next_id);
        let mut entry = json!({ "id": id, "name": text });
        if !price_value.is_null() {
            entry["unit_price"] = price_value;
        }
        put_in(app, entry, vec![], &text);
        name.set(String::new());
        price.set(String::new());
    };
    let suggestions = move || {
        let shown = found.get();
        let show = !name.get().trim().is_empty() && !shown.is_empty();
        if show { starter_buttons(app, &shown, name) } else { nothing() }
    };
    let all = (0..STARTERS.len()).collect::<Vec<_>>();
    fragment()
        .put(
            el("form")
                .class("adding")
                .on_submit(add_named)
                .put(
                    el("div").class("field").put(el("label").attr("for", "new-name").put(key!("kit-new-name"))).put(
                        el("input")
                            .attr("id", "new-name")
                            .attr("type", "text")
                            .attr("autocomplete", "off")
                            .value(move || name.get())
                            .on_input(move |text| name.set(text)),
                    ),
                )
                .put(
                    el("div")
                        .class("field")
                        .put(el("label").attr("for", "new-price").put(key!("kit-new-price")))
                        .put(
                            el("div")
                                .class("control")
                                .put(
                                    el("input")
                                        .attr("id", "new-price")
                                        .attr("type", "text")
                                        .attr("inputmode", "decimal")
                                        .attr("autocomplete", "off")
                                        .attr("aria-describedby", "new-price-message")
                                        .value(move || price.get())
                                        .on_input(move |text| price.set(text)),
                                )
                                .put(el("span").class("unit").put(words(|words| words.currency().to_owned()))),
                        )
                        .put(el("output").class("outcome").put(live::text(price_comes_to)))
                        .put(
                            el("p")
                                .class("wrong")
                                .attr("id", "new-price-message")
                                .attr("aria-live", "polite")
                                .put(live::text(wrong_price)),
                        ),
                )
                .put(el("button").attr("type", "submit").class("primary").put(key!("kit-add"))),
        )
        .put(live::view(suggestions))
        .put(
            el("details")
                .class("starters")
                .put(el("summary").put(key!("kit-starters")))
                .put(el("p").put(key!("kit-starters-hint")))
                .put(starter_buttons(app, &all, name)),
        )
        .done()
}

fn price_value(text: &str) -> Result<serde_json::Value, Wrong> {
    let Some(field) = price_field() else { return Ok(serde_json::Value::Null) };
    typed_value(field, text, locale::number_marks(), 1.0)
}

fn price_field() -> Option<&'static Field> {
    field::at(&Path::from("kit/1/unit_price"))
}

fn starter_buttons(app: App, shown: &[usize], typed: Signal<String>) -> View {
    let buttons = shown.iter().filter_map(|index| STARTERS.get(*index)).map(|starter| {
        let name = t(starter.name_key);
        let add = {
            let name = name.clone();
            move || {
                let id = app.plan(Plan::next_id);
                let currency = app.plan(|plan| plan.currency.clone());
                let (item, guesses) = starter_item(starter, id, name.clone(), &currency);
                put_in(app, item.to_plain(), guesses, &name);
                typed.set(String::new());
            }
        };
        el("li").put(el("button").attr("type", "button").on_click(add).put(name)).done()
    });
    el("ul").class("starter-list").put_each(buttons).done()
}

/// Puts an item at the end of the kit and tells of it.
fn put_in(app: App, entry: serde_json::Value, guesses: Vec<Path>, name: &str) {
    let insert = Edit::Insert { list: List::Kit, at: usize::MAX, entry };
    let edit = Edit::All { edits: vec![insert, Edit::Guess { paths: guesses, guessed: true }] };
    app.edit_and_tell(edit, tell!("kit-added", &vec![("name", Figure::Name(name.to_owned()))]));
}

/// Which items are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Show {
    All,
    ToPay,
    WithoutPrice,
    Borrowed,
    Musts,
    LeftOut,
}

impl Show {
    const ALL: [(Self, &'static str); 6] = [
        (Self::All, "show-all"),
        (Self::ToPay, "show-to-pay"),
        (Self::WithoutPrice, "show-without-price"),
        (Self::Borrowed, "show-borrowed"),
        (Self::Musts, "show-musts"),
        (Self::LeftOut, "show-left-out"),
    ];

    fn has(self, item: &Item) -> bool {
        match self {
            Self::All => true,
            Self::ToPay => item.obtain.is_paid(),
            Self::WithoutPrice => item.obtain.is_paid() && item.unit_price.is_none(),
            Self::Borrowed => item.obtain == Obtain::Borrowed,
            Self::Musts => item.need == Need::Must,
            Self::LeftOut => item.obtain == Obtain::LeftOut,
        }
    }
}

/// What items are grouped by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum By {
    Group,
    Obtain,
    Need,
    Nothing,
}

impl By {
    const ALL: [(Self, &'static str); 4] = [
        (Self::Group, "by-group"),
        (Self::Obtain, "by-obtain"),
        (Self::Need, "by-need"),
        (Self::Nothing, "by-nothing"),
    ];

    /// The name of the group an item falls into, in the catalogue.
    fn of(self, item: &Item) -> &'static str {
        match self {
            Self::Group => group_key(item.group),
            Self::Obtain => obtain_key(item.obtain),
            Self::Need => match item.need {
                Need::Must => "choice-need-must",
                Need::Want => "choice-need-want",
                Need::Experiment => "choice-need-experiment",
            },
            Self::Nothing => "page-kit",
        }
    }
}

/// How a thing is obtained, in the catalogue.
pub const fn obtain_key(obtain: Obtain) -> &'static str {
    match obtain {
        Obtain::Owned => "choice-obtain-owned",
        Obtain::Borrowed => "choice-obtain-borrowed",
        Obtain::Bought => "choice-obtain-bought",
        Obtain::Made => "choice-obtain-made",
        Obtain::LeftOut => "choice-obtain-left-out",
    }
}

#[derive(Clone, Copy)]
struct Filter {
    text: Signal<String>,
    show: Signal<Show>,
    by: Signal<By>,
}

impl Filter {
    fn controls(self) -> View {
        let choose = |options: Vec<(&'static str, bool)>| {
            let options = options
                .into_iter()
                .map(|(key, selected)| el("option").attr("value", key).flag("selected", selected).put(t(key)).done());
            options.collect::<Vec<_>>()
        };
        let shows = choose(Show::ALL.map(|(show, key)| (key, show == self.show.get_untracked())).to_vec());
        let groupings = choose(By::ALL.map(|(by, key)| (key, by == self.by.get_untracked())).to_vec());
        let pick_show = move |key: String| {
            Show::ALL.into_iter().filter(|(_, word)| *word == key).for_each(|(show, _)| self.show.set(show));
        };
        let pick_by = move |key: String| {
            By::ALL.into_iter().filter(|(_, word)| *word == key).for_each(|(by, _)| self.by.set(by));
        };
        el("div")
            .class("filters")
            .attr("role", "search")
            .attr("aria-label", t!("kit-filter"))
            .put(
                el("div").class("field").put(el("label").attr("for", "find").put(key!("kit-find"))).put(
                    el("input")
                        .attr("id", "find")
                        .attr("type", "search")
                        .attr("autocomplete", "off")
                        .on_input(move |text| self.text.set(text)),
                ),
            )
            .put(
                el("div")
                    .class("field")
                    .put(el("label").attr("for", "show").put(key!("kit-show")))
                    .put(el("select").attr("id", "show").on_change(pick_show).put_each(shows)),
            )
            .put(
                el("div")
                    .class("field")
                    .put(el("label").attr("for", "by").put(key!("kit-by")))
                    .put(el("select").attr("id", "by").on_change(pick_by).put_each(groupings)),
            )
            .done()
    }

    /// The groups with their items, in the order of the list.
    fn groups(self, plan: &Plan) -> Vec<(&'static str, Vec<Id>)> {
        let wanted = small_letters(&self.text.get());
        let (show, by) = (self.show.get(), self.by.get());
        let mut groups: Vec<(&'static str, Vec<Id>)> = Vec::new();
        let is_paid = if show == Show::ToPay { are_paid(plan) } else { Vec::new() };
        let is_shown = |at: usize, item: &Item| {
            show.has(item) && is_paid.get(at) != Some(&true) && small_letters(&item.name).contains(&wanted)
        };
        for (_, item) in plan.kit.iter().enumerate().filter(|(at, item)| is_shown(*at, item)) {
            let key = by.of(item);
            match groups.iter_mut().find(|(group, _)| *group == key) {
                Some((_, ids)) => ids.push(item.id),
                None => groups.push((key, vec![item.id])),
            }
        }
        groups
    }
}

fn list(filter: Filter) -> View {
    let app = App::here();
    let groups = live::memo(move || app.plan(|plan| filter.groups(plan)));
    let count = move || {
        let shown = groups.get().iter().map(|(_, ids)| ids.len()).sum();
        let all = app.plan(|plan| plan.kit.len());
        tell!("kit-count", &vec![("shown", Figure::count(shown)), ("all", Figure::count(all))])
    };
    let keys = live::memo(move || groups.get().into_iter().map(|(key, _)| key).collect::<Vec<_>>());
    let opened = route::entry_in_address();
    if let Some(id) = opened {
        crate::browser::focus_soon(entry_line(id));
    }
    fragment()
        .put(el("p").attr("role", "status").put(live::text(count)))
        .put(live::rows(keys, move |key| group(key, groups, opened)))
        .done()
}

fn group(key: &'static str, groups: Memo<Vec<(&'static str, Vec<Id>)>>, opened: Option<Id>) -> View {
    let ids = live::memo(move || {
        groups.get().into_iter().find(|(group, _)| *group == key).map(|(_, ids)| ids).unwrap_or_default()
    });
    el("section")
        .attr("aria-label", t(key))
        .put(el("h2").put(t(key)))
        .put(el("ul").class("entries").put(live::rows(ids, move |id| KIT.entry(id, opened == Some(id)))))
        .done()
}

const KIT: Entries = Entries { list: List::Kit, line, body, fresh: || json!({}), add: key!("kit-add") };

/// The line of an item: its name, and its price or how else it comes.
fn line(plan: &Plan, id: Id) -> (String, String) {
    let Some(item) = plan.item(id) else { return Default::default() };
    let name = match item.quantity {
        1 => item.name.clone(),
        count => format!("{} × {count}", item.name),
    };
    let value = match item.obtain {
        Obtain::Bought | Obtain::Made => purchase_price(item, &plan.purse, plan.minor_digits())
            .map_or_else(|| t!("no-amount"), |price| say_money(price.total)),
        other => t(obtain_key(other)),
    };
    (name, value)
}

const BASICS: &[&str] = &[
    "name",
    "group",
    "need",
    "obtain",
    "quantity",
    "unit_price",
    "tax_percent",
    "discount_percent",
    "delivery",
    "needed_on",
    "delivery_days",
    "buy_on",
    "lender",
];
const SIZE: &[&str] = &["mass_kg", "length_mm", "width_mm", "height_mm"];
const RETURNED: &[&str] = &[
    "returned/quantity",
    "returned/on",
    "returned/outcome/happened",
    "returned/outcome/on",
    "returned/outcome/amount",
];
const PAID: &[&str] = &["paid/happened", "paid/on", "paid/amount"];
const DRAW: &[&str] = &[
    "draw/works",
    "draw/power_w",
    "draw/outlet",
    "draw/hours_per_day",
    "draw/from_hour",
    "draw/duty_percent",
    "draw/surge_w",
    "draw/days",
    "draw/store",
    "draw/importance",
];
const MORE_DRAW: &[&str] = &[
    "draw/times_per_day",
    "draw/again_after_hours",
    "draw/used_percent",
    "draw/loss_percent",
    "draw/may_move",
    "draw/heats_l",
    "draw/heats_from_c",
    "draw/heats_to_c",
    "draw/vessel_kg",
    "draw/boiled_away_l",
    "draw/heat_percent",
    "draw/label_wh",
    "draw/label_air_c",
    "draw/inside_c",
    "draw/wall_mm",
];
const STORE: &[&str] = &[
    "store/usable_wh",
    "store/opening_percent",
    "store/ac_continuous_w",
    "store/ac_surge_w",
    "store/dc_continuous_w",
    "store/vehicle_input_w",
    "store/mains_input_w",
    "store/total_input_w",
    "store/inverter_efficiency_percent",
    "store/inverter_idle_w",
    "store/charge_efficiency_percent",
    "store/taper_from_percent",
];
const MORE_STORE: &[&str] = &[
    "store/chemistry",
    "store/rated_wh",
    "store/keeps_percent",
    "store/panel_input_w",
    "store/dc_surge_w",
    "store/discharge_efficiency_percent",
    "store/inverter_low_percent",
    "store/inverter_full_percent",
    "store/inverter_stays_on",
    "store/charges_above_c",
    "store/charges_below_c",
    "store/loses_percent",
    "store/cycles_done",
    "store/cycles_stated",
    "store/cycles_left_percent",
];
const PANEL: &[&str] = &[
    "panel/peak_w",
    "panel/setup",
    "panel/tilt_deg",
    "panel/azimuth_deg",
    "panel/turned_times",
    "panel/sun_from_hour",
    "panel/sun_until_hour",
    "panel/charges",
];
const MORE_PANEL: &[&str] = &[
    "panel/shade_percent",
    "panel/dirt_percent",
    "panel/fixing",
    "panel/per_degree_percent",
    "panel/controller",
    "panel/controller_percent",
];
const BURNER: &[&str] = &["burner/heat_w", "burner/fuel", "burner/vents_out", "burner/keeps_warm"];
const MORE_BURNER: &[&str] =
    &["burner/burns_hours", "burner/lit_from_hour", "burner/heat_percent", "burner/fuel_price"];
const FAN: &[&str] = &["fan/blows_m3_h"];
const TANK: &[&str] = &["tank/holds", "tank/capacity_l", "tank/opening_percent"];
const TOILET: &[&str] = &["toilet/way", "toilet/waste_l", "toilet/lasts_months", "toilet/each_time"];
const WATER: &[&str] = &["water/litres_per_day", "water/to_grey_percent"];
const SALE: &[&str] = &["sale/price", "sale/on", "sale/outcome/happened", "sale/outcome/on", "sale/outcome/amount"];

/// What a water filter is good for, among what is for water and wherever it is stated.
fn filter(id: Id) -> View {
    let app = App::here();
    let may_filter = move || {
        app.plan(|plan| plan.item(id).is_some_and(|item| item.group == Group::Water || item.filters_l.is_some()))
    };
    live::when(may_filter, move || fields(&Path::entry("kit", id), &["filters_l"]))
}

/// Everything about an item; what most items lack stays folded away.
fn body(id: Id) -> View {
    let item = Path::entry("kit", id);
    let parts = [
        fields(&item, BASICS),
        fields(&item, SIZE),
        optional(&item, "draw", [DRAW, MORE_DRAW], "part-draw"),
        optional(&item, "store", [STORE, MORE_STORE], "part-store"),
        optional(&item, "panel", [PANEL, MORE_PANEL], "part-panel"),
        optional(&item, "tank", [TANK, &[]], "part-tank"),
        optional(&item, "burner", [BURNER, MORE_BURNER], "part-burner"),
        optional(&item, "fan", [FAN, &[]], "part-fan"),
        optional(&item, "toilet", [TOILET, &[]], "part-toilet"),
        optional(&item, "water", [WATER, &[]], "part-water"),
        filter(id),
        optional(&item, "paid", [PAID, &[]], "part-paid"),
        optional(&item, "returned", [RETURNED, &[]], "part-returned"),
        optional(&item, "sale", [SALE, &[]], "part-sale"),
        fields(&item, &["note"]),
    ];
    all(parts)
}
