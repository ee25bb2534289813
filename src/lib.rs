//! plainwatt: what an LED grow light can draw, against the wattage it is sold by.

pub mod audit;
pub mod circuit;
pub mod cli;
pub mod commands;
pub mod comparison;
pub mod cost;
pub mod counting;
pub mod draw;
pub mod facts;
pub mod intake;
pub mod photons;
pub mod reading;
pub mod reference;
pub mod report;
pub mod stream;
pub mod sweep;
pub mod uncertain;
pub mod units;
pub mod workbook;
