//! Results for people and machines: one renderer a format, each a function from results to text.
//!
//! Listing text is untrusted: every sink has its own guard ([`sanitise`]). People read rounded values, machines get full
//! precision (JSON) or six significant digits (CSV).

mod answers;
pub mod audit;
mod builder;
pub mod cautions;
pub mod changes;
pub mod csv;
pub mod diodes;
pub mod faults;
mod figures;
pub mod html;
pub mod json;
pub mod light;
mod load;
pub mod markdown;
pub mod meaning;
mod number;
pub mod sanitise;
pub mod style;
pub mod summary;
pub mod table;
pub mod words;
pub mod worth;

use crate::circuit::Circuit;
use crate::comparison::{Assessment, Settings};
use crate::draw::Model;
use crate::facts::{Fault, Listing, Read};
use crate::units::Watts;

/// What every row of one run shares.
#[derive(Debug, Clone, Copy)]
pub struct Run<'a> {
    /// The reference table, made ready.
    pub model: &'a Model,
    /// Tolerance, confidence, meter.
    pub settings: &'a Settings,
}

/// A listing with its assessment.
#[derive(Debug, Clone, Copy)]
pub struct Light<'a> {
    /// The facts.
    pub listing: &'a Listing<'a>,
    /// What its text was read to state, if it was read.
    pub read: Option<&'a Read>,
    /// The result.
    pub assessment: &'a Assessment,
    /// What was asked about money, if anything.
    pub money: Option<&'a worth::Money>,
    /// The circuit it is to hang on, if one was named.
    pub circuit: Option<Circuit>,
    /// A builder's power supply, if one was named.
    pub fit_supply: Option<Watts>,
}

/// A row that could not be read, with as much of it as names it.
#[derive(Debug, Clone, Copy)]
pub struct Unreadable<'a> {
    /// The listing's name.
    pub name: Option<&'a str>,
    /// Who sells it.
    pub supplier: Option<&'a str>,
    /// Why.
    pub fault: &'a Fault,
}

/// The verdict column of a row that could not be read.
pub const UNREADABLE: &str = "unreadable";
