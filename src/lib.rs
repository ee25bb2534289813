//! plainwatt: what an LED grow light can draw, against the wattage it is sold by.

pub mod comparison;
pub mod draw;
pub mod facts;
pub mod reference;
pub mod sweep;
pub mod uncertain;
pub mod units;
