//! Edits as values of a file: for the journal, for what can be taken back after a reload.

use serde_json::{Map, Value};

use super::{Edit, List};
use crate::plan::{Id, Path, Plain};

impl Default for Edit {
    /// The change that changes nothing.
    fn default() -> Self {
        Self::All { edits: Vec::new() }
    }
}

impl Plain for List {
    fn to_plain(&self) -> Value {
        self.name().into()
    }

    fn read(&mut self, value: &Value) -> bool {
        value.as_str().and_then(Self::named).map(|list| *self = list).is_some()
    }
}

/// As serde derives it: an object with the kind of the edit as `do`.
impl Plain for Edit {
    fn to_plain(&self) -> Value {
        match self {
            Self::Set { path, value } => object("set", &[("path", path), ("value", value)]),
            Self::Insert { list, at, entry } => object("insert", &[("list", list), ("at", at), ("entry", entry)]),
            Self::Remove { list, id } => object("remove", &[("list", list), ("id", id)]),
            Self::Move { list, id, to } => object("move", &[("list", list), ("id", id), ("to", to)]),
            Self::Guess { paths, guessed } => object("guess", &[("paths", paths), ("guessed", guessed)]),
            Self::All { edits } => object("all", &[("edits", edits)]),
        }
    }

    fn read(&mut self, value: &Value) -> bool {
        from_object(value).map(|edit| *self = edit).is_some()
    }
}

fn object(kind: &str, fields: &[(&str, &dyn Plain)]) -> Value {
    let mut object = Map::new();
    object.insert("do".to_owned(), kind.into());
    for (name, field) in fields {
        object.insert((*name).to_owned(), field.to_plain());
    }
    Value::Object(object)
}

fn from_object(value: &Value) -> Option<Edit> {
    let field = |name: &str| value.get(name);
    let list = || field("list")?.as_str().and_then(List::named);
    let place = |name: &str| field(name)?.as_u64().and_then(|at| usize::try_from(at).ok());
    Some(match field("do")?.as_str()? {
        "set" => Edit::Set { path: Path::from_plain(field("path")?)?, value: field("value")?.clone() },
        "insert" => Edit::Insert { list: list()?, at: place("at")?, entry: field("entry")?.clone() },
        "remove" => Edit::Remove { list: list()?, id: Id::from_plain(field("id")?)? },
        "move" => Edit::Move { list: list()?, id: Id::from_plain(field("id")?)?, to: place("to")? },
        "guess" => {
            Edit::Guess { paths: Vec::from_plain(field("paths")?)?, guessed: bool::from_plain(field("guessed")?)? }
        }
        "all" => Edit::All { edits: Vec::from_plain(field("edits")?)? },
        _ => return None,
    })
}
