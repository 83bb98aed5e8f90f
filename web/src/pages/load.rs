//! Load: placeholder until merged.
