//! What leaves core as a tree of JSON values.
//!
//! `serde_json` has a function for it too. The writer here does the same with less code: it puts each part straight into
//! its place, has no errors to hand on, and so every type of core takes a third of the room in what a phone has to load.

use std::fmt::{self, Display};

use serde::ser::{self, Serialize};
use serde_json::{Map, Value};

/// A value as JSON has it. A number that is infinite or not a number is `null`.
///
/// ```
/// use kerbstead_core::{plan::Path, tree};
/// assert_eq!(tree(&(Path::from("people"), Some(2))), serde_json::json!(["people", 2]));
/// ```
pub fn tree<T: Serialize + ?Sized>(value: &T) -> Value {
    let mut written = Value::Null;
    // What cannot be written, which no type of core has, stays empty.
    let _ = value.serialize(Place(&mut written));
    written
}

/// The place in the tree that a value goes to.
struct Place<'a>(&'a mut Value);

impl<'a> Place<'a> {
    fn list(self) -> Result<List<'a>, Unwritable> {
        *self.0 = Value::Array(Vec::new());
        self.0.as_array_mut().map(List).ok_or(Unwritable)
    }

    fn object(self) -> Result<Object<'a>, Unwritable> {
        *self.0 = Value::Object(Map::new());
        self.0.as_object_mut().map(Object).ok_or(Unwritable)
    }

    /// The place of the one field of an object.
    fn below(self, name: &str) -> Result<Self, Unwritable> {
        Ok(Place(self.object()?.0.entry(name).or_insert(Value::Null)))
    }
}

/// An array that grows.
struct List<'a>(&'a mut Vec<Value>);

impl List<'_> {
    fn next(&mut self) -> Place<'_> {
        Place(self.0.push_mut(Value::Null))
    }
}

/// An object that grows.
struct Object<'a>(&'a mut Map<String, Value>);

impl Object<'_> {
    fn field(&mut self, name: &str) -> Place<'_> {
        Place(self.0.entry(name).or_insert(Value::Null))
    }
}

/// An object whose names are values themselves.
struct Entries<'a> {
    object: Object<'a>,
    name: Value,
}

type Written = Result<(), Unwritable>;

/// Says that a value has no form in JSON.
#[derive(Debug)]
struct Unwritable;

impl Display for Unwritable {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a value has no form in JSON")
    }
}

impl std::error::Error for Unwritable {}

impl ser::Error for Unwritable {
    fn custom<T: Display>(_: T) -> Self {
        Self
    }
}

/// Plain values, by the name of the method and the type it takes.
macro_rules! plain_values {
    ($($method:ident: $type:ty),* $(,)?) => {
        $(fn $method(self, value: $type) -> Written {
            *self.0 = value.into();
            Ok(())
        })*
    };
}

impl<'a> ser::Serializer for Place<'a> {
    type Ok = ();
    type Error = Unwritable;
    type SerializeSeq = List<'a>;
    type SerializeTuple = List<'a>;
    type SerializeTupleStruct = List<'a>;
    type SerializeTupleVariant = List<'a>;
    type SerializeMap = Entries<'a>;
    type SerializeStruct = Object<'a>;
    type SerializeStructVariant = Object<'a>;

    plain_values! {
        serialize_bool: bool,
        serialize_i8: i8,
        serialize_i16: i16,
        serialize_i32: i32,
        serialize_i64: i64,
        serialize_u8: u8,
        serialize_u16: u16,
        serialize_u32: u32,
        serialize_u64: u64,
        serialize_f32: f32,
        serialize_f64: f64,
        serialize_str: &str,
        serialize_bytes: &[u8],
    }

    fn serialize_char(self, value: char) -> Written {
        *self.0 = String::from(value).into();
        Ok(())
    }

    fn serialize_none(self) -> Written {
        *self.0 = Value::Null;
        Ok(())
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Written {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Written {
        *self.0 = Value::Null;
        Ok(())
    }

    fn serialize_unit_struct(self, _: &'static str) -> Written {
        *self.0 = Value::Null;
        Ok(())
    }

    fn serialize_unit_variant(self, _: &'static str, _: u32, variant: &'static str) -> Written {
        *self.0 = variant.into();
        Ok(())
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(self, _: &'static str, value: &T) -> Written {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        value: &T,
    ) -> Written {
        value.serialize(self.below(variant)?)
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<List<'a>, Unwritable> {
        self.list()
    }

    fn serialize_tuple(self, _: usize) -> Result<List<'a>, Unwritable> {
        self.list()
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<List<'a>, Unwritable> {
        self.list()
    }

    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<List<'a>, Unwritable> {
        self.below(variant)?.list()
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Entries<'a>, Unwritable> {
        Ok(Entries { object: self.object()?, name: Value::Null })
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Object<'a>, Unwritable> {
        self.object()
    }

    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Object<'a>, Unwritable> {
        self.below(variant)?.object()
    }
}

/// The traits that write entry after entry: those of arrays, and those of objects with given names.
macro_rules! compounds {
    (lists: $($list:ident.$next:ident),*; objects: $($object:ident),*) => {
        $(impl ser::$list for List<'_> {
            type Ok = ();
            type Error = Unwritable;

            fn $next<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
                value.serialize(self.next())
            }

            fn end(self) -> Written {
                Ok(())
            }
        })*

        $(impl ser::$object for Object<'_> {
            type Ok = ();
            type Error = Unwritable;

            fn serialize_field<T: Serialize + ?Sized>(&mut self, name: &'static str, value: &T) -> Written {
                value.serialize(self.field(name))
            }

            fn end(self) -> Written {
                Ok(())
            }
        })*
    };
}

compounds! {
    lists: SerializeSeq.serialize_element, SerializeTuple.serialize_element, SerializeTupleStruct.serialize_field,
        SerializeTupleVariant.serialize_field;
    objects: SerializeStruct, SerializeStructVariant
}

impl ser::SerializeMap for Entries<'_> {
    type Ok = ();
    type Error = Unwritable;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, name: &T) -> Written {
        name.serialize(Place(&mut self.name))
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Written {
        value.serialize(self.object.field(self.name.as_str().ok_or(Unwritable)?))
    }

    fn end(self) -> Written {
        Ok(())
    }
}
