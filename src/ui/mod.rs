//! The page: a thin layer of signals and plain elements over [`baking`](crate::baking).
//!
//! Inputs are signals ([`state`]), the worksheet is one memo of them, and parts show pieces of it.
//! Nothing here adds, rounds or judges; sentences and figures come from the worksheet.

pub mod app;
mod device;
mod dom;
pub mod early;
mod history;
mod pages;
mod parts;
pub mod pictures;
pub mod route;
mod shown;
pub mod state;
pub mod storage;

pub use app::start;
