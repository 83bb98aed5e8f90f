//! Structs and enums of the plan as objects and words: a line for each says which fields or words it has.

use serde_json::{Map, Value};

use super::Plain;

/// An object of those fields; what is not set is left out.
pub(crate) fn written(names: &[&str], fields: &[&dyn Plain]) -> Value {
    object(names.iter().zip(fields).map(|(name, field)| (*name, field.to_plain())).collect())
}

/// An object of those values; what is not set is left out.
pub(crate) fn object(fields: Vec<(&str, Value)>) -> Value {
    let mut object = Map::new();
    for (name, value) in fields {
        if !value.is_null() {
            object.insert(name.to_owned(), value);
        }
    }
    Value::Object(object)
}

/// The object without those of its fields that are empty.
pub(crate) fn without_empty(mut value: Value, names: &[&str]) -> Value {
    let is_empty = |value: &Value| match value {
        Value::String(text) => text.is_empty(),
        Value::Array(entries) => entries.is_empty(),
        Value::Object(fields) => fields.is_empty(),
        Value::Bool(is_so) => !is_so,
        _ => false,
    };
    for name in names {
        if let Value::Object(object) = &mut value
            && object.get(*name).is_some_and(is_empty)
        {
            object.remove(*name);
        }
    }
    value
}

/// Reads the fields of an object; those it lacks stay as they are. False when one is not of its kind.
pub(crate) fn read(value: &Value, names: &[&str], fields: &mut [&mut dyn Plain]) -> bool {
    let Value::Object(object) = value else { return false };
    names.iter().zip(fields).all(|(name, field)| match object.get(*name) {
        None | Some(Value::Null) => true,
        Some(value) => field.read(value),
    })
}

/// The position of a word.
pub(crate) fn position(value: &Value, words: &[&str]) -> Option<usize> {
    let word = value.as_str()?;
    words.iter().position(|known| *known == word)
}

/// Makes serde take the way through [`Plain`], for whoever reads or writes values of the plan natively.
macro_rules! serde_by_plain {
    ($type:ty $(, $parameter:ident)?) => {
        impl$(<$parameter: $crate::plan::Plain + Default>)? serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serde::Serialize::serialize(&$crate::plan::Plain::to_plain(self), serializer)
            }
        }

        impl<'de $(, $parameter: $crate::plan::Plain + Default)?> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let value: serde_json::Value = serde::Deserialize::deserialize(deserializer)?;
                <Self as $crate::plan::Plain>::from_plain(&value)
                    .ok_or_else(|| serde::de::Error::custom("a value is not of its field's kind"))
            }
        }
    };
}

/// The form in the file of a struct: an object of its fields. What the object lacks is as in the struct's default. The
/// fields after `unless empty` are left out when they are empty, or not so.
macro_rules! record {
    ($type:ident { $($field:ident),* $(,)? } $(unless empty { $($short:ident),* })?) => {
        impl $crate::plan::Plain for $type {
            fn to_plain(&self) -> serde_json::Value {
                let value = $crate::plan::record::written(&[$(stringify!($field)),*], &[$(&self.$field),*]);
                $(let value = $crate::plan::record::without_empty(value, &[$(stringify!($short)),*]);)?
                value
            }

            fn read(&mut self, value: &serde_json::Value) -> bool {
                // What is not in the file is as in an empty entry, whatever stood here.
                *self = Self::default();
                $crate::plan::record::read(value, &[$(stringify!($field)),*], &mut [$(&mut self.$field),*])
            }
        }

        $crate::plan::record::serde_by_plain!($type);
    };
}

/// The form in the file of an enum without contents: a word for each.
macro_rules! words {
    ($type:ident { $($variant:ident = $word:literal),* $(,)? }) => {
        impl $crate::plan::Plain for $type {
            fn to_plain(&self) -> serde_json::Value {
                (match self { $(Self::$variant => $word),* }).into()
            }

            fn read(&mut self, value: &serde_json::Value) -> bool {
                let read = $crate::plan::record::position(value, &[$($word),*]);
                match read.and_then(|at| [$(Self::$variant),*].get(at).copied()) {
                    Some(read) => {
                        *self = read;
                        true
                    }
                    None => false,
                }
            }
        }

        $crate::plan::record::serde_by_plain!($type);
    };
}

pub(crate) use {record, serde_by_plain, words};
