//! A first plan from five questions.
