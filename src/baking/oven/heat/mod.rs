//! Heat flow in a batter that bakes, by finite volumes. SI units inside; nothing of recipes or pages.

pub mod bake;
pub mod flow;
pub mod mesh;
pub mod stages;
pub mod stuff;
