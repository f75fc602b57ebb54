//! Lengths in JSON.

use serde::Serialize;
use serde::Serializer;
use serde_json::value::RawValue;

use crate::quantities::Length;

/// Millimetres as a number printed from the exact nanometres.
#[derive(Clone, Copy)]
pub(super) struct Millimetres(pub(super) Length);

impl Serialize for Millimetres {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match RawValue::from_string(self.0.millimetre_digits()) {
            Ok(raw) => raw.serialize(serializer),
            Err(error) => Err(serde::ser::Error::custom(error)),
        }
    }
}
