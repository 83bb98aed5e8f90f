//! The bundle in a real browser. `cargo xtask test` builds the bundle and runs these too.

mod asking;
mod broken;
mod checks;
mod choices;
mod comfort;
mod days;
mod every_page;
mod keeping;
mod living;
mod loading;
mod materials;
mod money;
mod offline;
mod power;
mod receipts;
mod road;
mod same_bits;
mod sharing;
mod shop;
mod space;
mod using;
