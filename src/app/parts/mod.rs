//! Widgets that more than one screen uses.

pub mod chart;
pub mod choice;
pub mod fault;
pub mod field;
pub mod glass;
pub mod icon;
pub mod install;
pub mod number;
pub mod picture;
pub mod plant_view;
pub mod section;
pub mod shell;
pub mod small_plot;
pub mod take_back;
pub mod waterline;
