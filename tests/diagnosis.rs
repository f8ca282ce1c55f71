//! Why a cake failed: textbooks' failed cakes against the causes that are found, sound cakes against false blame, laws over any
//! text and any signs, every row of the tables.

#[path = "diagnosis/bench.rs"]
mod bench;
#[path = "diagnosis/cases.rs"]
mod cases;
#[path = "diagnosis/laws.rs"]
mod laws;
#[path = "diagnosis/sheet.rs"]
mod sheet;
#[path = "diagnosis/table.rs"]
mod table;
