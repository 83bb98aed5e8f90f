//! What a person can change, and the cheapest set of changes that reaches what is wanted.

pub mod pick;
