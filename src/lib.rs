//! plainwatt: what an LED grow light can draw, against the wattage it is sold by.
#![warn(missing_docs)]

pub mod facts;
pub mod reading;
pub mod units;
