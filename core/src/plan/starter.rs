//! A list of generic things to start a kit from.
