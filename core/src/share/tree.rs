//! A plan's file to symbols and back.
//!
//! Nothing here knows a field: names are told once and are numbers from then on, in the order in which they were first
//! told. A plan made for the purpose is read before every other (see `prime.rs`), so that the fields there were at the
//! time have their numbers, usual values are expected, and usual words are cheap. A field that came later is told by
//! its name.

use jiff::civil::Date;
use serde_json::{Map, Value};

use super::codec::{Codec, Stop, Walk, all, hash};
use super::likely::Told;
use super::place::{Form, Place};
use crate::plan::field::SECTIONS;
use crate::plan::{Path, Paths};

/// What was told so far, as far as it helps to tell the rest.
#[derive(Clone)]
pub(super) struct Tree {
    pub(super) codec: Codec,
    /// Names of fields, by the place of the object they are in. A field's number is its position among those.
    names: Vec<(u32, String)>,
    /// Texts that were told, by place.
    pub(super) texts: Vec<(u32, String)>,
    /// How many objects in a row had no new field.
    quiet: u32,
    pub(super) row: Row,
    /// Dates of this document that were told, by place.
    pub(super) dates: Vec<(u32, Date)>,
    /// The value told last at a place: by the first bits of the place, as much as is needed to help.
    last: Vec<u32>,
    /// Paths of guesses not met yet; `None` where nothing is a guess.
    guesses: Option<Paths>,
    was_guess: u32,
    /// The path of the value being told.
    path: String,
    /// How many values may still be told.
    left: usize,
}

/// The most values that one walk tells. An ordinary plan of fifty items has some 1,500.
const MOST_VALUES: usize = 20_000;

/// The values told last.
#[derive(Clone, Copy, Default)]
pub(super) struct Row {
    /// The last two, the latest first.
    pub(super) values: [u32; 2],
    /// The last one that was a word told before, as those of choices are.
    pub(super) word: u32,
    /// The last date of this entry.
    pub(super) date: Option<Date>,
    /// The last date of all.
    pub(super) any_date: Option<Date>,
    /// The last id.
    pub(super) id: i64,
}

impl Tree {
    pub(super) fn new(codec: Codec) -> Self {
        Self {
            codec,
            names: Vec::new(),
            texts: Vec::new(),
            quiet: 0,
            row: Row::default(),
            dates: Vec::new(),
            last: vec![0; 4096],
            guesses: None,
            was_guess: 0,
            path: String::new(),
            left: MOST_VALUES,
        }
    }

    /// A plan's file, in which guesses are told beside the values they are of.
    pub(super) fn plan(&mut self, known: Option<&Value>) -> Walk<Value> {
        self.row = Row::default();
        self.left = MOST_VALUES;
        self.dates.clear();
        self.last.fill(0);
        self.path.clear();
        let mut known = known.cloned();
        let guesses = known.as_mut().map(take_guesses);
        let has_guesses = self.codec.flag(guesses.as_ref().map(Option::is_some), &[hash("guesses")])?;
        self.guesses = has_guesses.then(|| guesses.flatten().unwrap_or_default());
        let mut plan = self.value(Place::PLAN, known.as_ref())?;
        if let (Some(guesses), Some(plan)) = (self.guesses.take(), plan.as_object_mut()) {
            self.rest_of_guesses(guesses, plan, known.is_some())?;
        }
        Ok(plan)
    }

    /// Guesses of nothing that is there are told as they are.
    fn rest_of_guesses(&mut self, met: Paths, plan: &mut Map<String, Value>, is_known: bool) -> Walk<()> {
        let list = |paths: &Paths| paths.iter().map(|path| Value::from(path.as_str())).collect::<Vec<_>>();
        let known = is_known.then(|| Value::Array(list(&met)));
        let rest = self.value(Place::GUESSES, known.as_ref())?;
        let mut paths = met;
        paths.extend(rest.as_array().into_iter().flatten().filter_map(Value::as_str).map(Path::from));
        plan.insert("guesses".to_owned(), Value::Array(list(&paths)));
        Ok(())
    }

    /// A value of any form.
    pub(super) fn value(&mut self, at: Place, known: Option<&Value>) -> Walk<Value> {
        self.left = self.left.checked_sub(1).filter(|_| !at.is_too_deep()).ok_or(Stop)?;
        let form = known.map(|known| self.form_of(at, known));
        let contexts = [
            all([1, at.path]),
            all([2, at.path, self.last(at)]),
            all([3, at.path, self.row.values[0]]),
            all([4, at.unit]),
        ];
        let form = self.codec.symbol(form.map(|form| form as u32), Told::Form, 4, &contexts)?;
        match Form::ALL.get(form as usize).ok_or(Stop)? {
            Form::List => self.list(at, known.and_then(Value::as_array)).map(Value::Array),
            Form::Object => self.object(at, known.and_then(Value::as_object)).map(Value::Object),
            form => self.scalar(*form, at, known),
        }
    }

    fn list(&mut self, at: Place, known: Option<&Vec<Value>>) -> Walk<Vec<Value>> {
        let mut entries = Vec::new();
        let mut known = known.map(|known| known.iter());
        loop {
            let next = known.as_mut().map(Iterator::next);
            let contexts = [all([5, at.path]), all([6, at.path, u32::from(entries.is_empty())])];
            if !self.codec.flag(next.map(|next| next.is_some()), &contexts)? {
                return Ok(entries);
            }
            self.row.date = None;
            entries.push(self.value(at.entry(), next.flatten())?);
        }
    }

    fn object(&mut self, at: Place, known: Option<&Map<String, Value>>) -> Walk<Map<String, Value>> {
        let mut object = Map::new();
        let mut shape = 1;
        let path = self.path.len();
        if path > 0 {
            self.path.push('/');
        }
        for name in self.names_at(at) {
            let place = at.child(&name);
            let was_there = self.last(place.presence());
            let contexts = [
                all([11, place.path]),
                all([12, place.path, shape]),
                all([13, place.path, was_there]),
                all([14, place.path, self.row.word]),
                all([15, place.path, shape, was_there]),
            ];
            let is_there = self.codec.flag(known.map(|known| known.contains_key(&name)), &contexts)?;
            self.set_last(place.presence(), (was_there << 1 | u32::from(is_there)) & 7 | 8);
            shape = all([shape, u32::from(is_there)]);
            if is_there {
                self.member(place, &name, known.and_then(|known| known.get(&name)), &mut object)?;
            }
        }
        self.new_members(at, known, &mut object)?;
        self.path.truncate(path);
        Ok(object)
    }

    /// Fields that no object had at this place before, by their names.
    fn new_members(
        &mut self,
        at: Place,
        known: Option<&Map<String, Value>>,
        object: &mut Map<String, Value>,
    ) -> Walk<()> {
        let mut new: Vec<&String> = known.into_iter().flat_map(Map::keys).collect();
        new.retain(|name| !object.contains_key(*name));
        new.sort_by(|name, other| rank(name).cmp(&rank(other)).then_with(|| name.cmp(other)));
        let mut new = new.into_iter();
        loop {
            let next = new.next();
            let is_more = self.codec.flag(known.map(|_| next.is_some()), &[all([18, self.quiet])])?;
            self.quiet = if is_more { 0 } else { (self.quiet + 1).min(30) };
            if !is_more {
                return Ok(());
            }
            let name = self.text(Place::NAME, next.map(String::as_str))?;
            self.names.push((at.path, name.clone()));
            let value = known.zip(next).and_then(|(known, name)| known.get(name));
            self.member(at.child(&name), &name, value, object)?;
        }
    }

    fn member(&mut self, at: Place, name: &str, known: Option<&Value>, object: &mut Map<String, Value>) -> Walk<()> {
        let path = self.path.len();
        self.path += name;
        let value = self.value(at, known)?;
        if !at.is_of_range() {
            self.guess(at, known.is_some())?;
        }
        self.path.truncate(path);
        // What follows is a part of the entry of that id.
        if let Some(id) = value.as_i64().filter(|_| name == "id") {
            self.path += &format!("{id}/");
        }
        object.insert(name.to_owned(), value);
        Ok(())
    }

    /// Whether the value told just now is a guess.
    fn guess(&mut self, at: Place, is_known: bool) -> Walk<()> {
        let Some(guesses) = &mut self.guesses else { return Ok(()) };
        let path = Path::from(self.path.as_str());
        let known = is_known.then(|| guesses.contains(&path));
        if is_known {
            guesses.remove(&path);
        }
        let contexts = [all([21, at.path]), all([22, self.was_guess]), all([23, at.path, self.was_guess])];
        let is_guess = self.codec.flag(known, &contexts)?;
        self.was_guess = (self.was_guess << 1 | u32::from(is_guess)) & 7;
        if is_guess && !is_known {
            guesses.insert(path);
        }
        Ok(())
    }

    fn names_at(&self, at: Place) -> Vec<String> {
        self.names.iter().filter(|(path, _)| *path == at.path).map(|(_, name)| name.clone()).collect()
    }

    /// The value told last at a place.
    pub(super) fn last(&self, at: Place) -> u32 {
        self.last[at.slot()]
    }

    pub(super) fn set_last(&mut self, at: Place, value: u32) {
        self.last[at.slot()] = value;
    }

    /// The names and numbers of the fields that can be told so far, by place: for tests.
    pub(super) fn numbered(&self) -> &[(u32, String)] {
        &self.names
    }
}

/// Where a name that was never told stands among others: as in the table of fields, ids first.
fn rank(name: &str) -> usize {
    let names = SECTIONS.iter().flat_map(|section| {
        std::iter::once(section.name).chain(section.fields.iter().flat_map(|field| field.name.split('/')))
    });
    std::iter::once("id").chain(names).position(|known| known == name).unwrap_or(usize::MAX)
}

/// Takes the guesses out of a plan's file, if they stand in order and none is there twice, as this tool writes them.
fn take_guesses(plan: &mut Value) -> Option<Paths> {
    let list = plan.get("guesses")?.as_array()?;
    let paths: Vec<&str> = list.iter().filter_map(Value::as_str).collect();
    if paths.is_empty() || paths.len() < list.len() || !paths.is_sorted_by(|before, after| before < after) {
        return None;
    }
    let paths = paths.into_iter().map(Path::from).collect();
    plan.as_object_mut()?.remove("guesses");
    Some(paths)
}
