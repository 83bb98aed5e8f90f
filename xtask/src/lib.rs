//! The chores of the project as functions, and the small file server that both `cargo xtask serve` and the
//! browser tests use.
// Every function here fails only by its child process or the file system, and the error says which.
#![allow(clippy::missing_errors_doc)]

pub mod bench;
pub mod bundle;
pub mod check;
pub mod command;
pub mod fuzz;
pub mod hash;
pub mod reference;
pub mod serve;
pub mod server;
pub mod shots;
pub mod steps;
pub mod tools;
pub mod workspace;
