//! The swaps that the trade knows: every row of their table, and swaps with the amounts that books, bulletins and mills
//! give.

#[path = "swaps/egg.rs"]
mod egg;
#[path = "swaps/examples.rs"]
mod examples;
#[path = "swaps/planned.rs"]
mod planned;
#[path = "swaps/table.rs"]
mod table;
