//! One listing: the facts of one light, wherever they came from.

use std::borrow::Cow;

use smallvec::SmallVec;

use super::{Note, Package, StatedClass, Tally};
use crate::units::{Amps, Volts, Watts};

/// A number as printed, with half a unit of its last digit: `0.6` stands for anything from 0.55 to 0.65.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stated {
    /// The number.
    pub value: f64,
    /// Half a unit of the last digit printed.
    pub half_digit: f64,
}

/// The tolerance that a seller prints beside a draw.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tolerance {
    /// A share of the figure: 0.05 for `±5 %`.
    Share(f64),
    /// Watts: `±2W`.
    Watts(Watts),
}

/// A draw that the listing itself admits; `low` equals `high` where one figure is given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Admitted {
    /// The lower figure.
    pub low: Watts,
    /// The upper figure.
    pub high: Watts,
    /// A tolerance printed beside it.
    pub tolerance: Option<Tolerance>,
}

/// Mains (or adapter) volts and amperes as stated: their product is a ceiling on watts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supply {
    /// The voltage that goes with the current: the paired one, else the highest stated.
    pub volts: Stated,
    /// The current.
    pub amps: Stated,
}

/// A reading from a meter at the wall outlet, at full brightness with all switches on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MeterReading {
    /// Watts, read directly.
    Watts(Watts),
    /// Volts, amperes and power factor, which make watts.
    Factors {
        /// Volts.
        volts: Volts,
        /// Amperes.
        amps: Amps,
        /// Power factor, above 0 up to 1.
        power_factor: f64,
    },
    /// Volts and amperes alone: volt-amperes, a ceiling on watts but not a measurement of them.
    VoltAmps {
        /// Volts.
        volts: Volts,
        /// Amperes.
        amps: Amps,
    },
}

/// The kind of lamp a light is said to replace.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LampKind {
    /// High-pressure sodium.
    Hps,
    /// Metal halide, ceramic ones included.
    Mh,
    /// High-intensity discharge, either of the two.
    Hid,
    /// Incandescent, halogen included.
    Incandescent,
    /// Fluorescent tubes and compact lamps.
    Fluorescent,
}

impl LampKind {
    /// The key used in exports.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Hps => "hps",
            Self::Mh => "mh",
            Self::Hid => "hid",
            Self::Incandescent => "incandescent",
            Self::Fluorescent => "fluorescent",
        }
    }
}

/// The lamp that the light is said to replace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Replaced {
    /// Its watts.
    pub watts: Watts,
    /// Its kind, absent for a bare "equivalent".
    pub kind: Option<LampKind>,
}

/// Everything known about one light. `None` is "not given"; it is never read as zero.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Listing<'a> {
    /// The listing's own name or number.
    pub name: Option<Cow<'a, str>>,
    /// Who sells it.
    pub supplier: Option<Cow<'a, str>>,
    /// The title as pasted.
    pub title: Option<Cow<'a, str>>,
    /// The description, read after the title.
    pub description: Option<Cow<'a, str>>,
    /// The figure under test, per light.
    pub claim: Option<Watts>,
    /// The class that holds for every group without its own.
    pub class: Option<StatedClass>,
    /// A package word.
    pub package: Option<Package>,
    /// The diodes.
    pub tally: Option<Tally>,
    /// A stated drive current through each package.
    pub drive: Option<Amps>,
    /// A meter reading.
    pub reading: Option<MeterReading>,
    /// A draw that the listing admits.
    pub admitted: Option<Admitted>,
    /// Its volts and amperes.
    pub supply: Option<Supply>,
    /// The lowest voltage, where the amperes are stated for a range up to that of `supply`.
    pub supply_from: Option<Volts>,
    /// Photosynthetic photon flux, umol/s.
    pub ppf: Option<Stated>,
    /// Photon efficacy of the whole light, umol/J; absent where worded "up to" or as the diodes' own.
    pub ppe: Option<Stated>,
    /// The lamp it is said to replace.
    pub replaces: Option<Replaced>,
    /// What it costs, in whatever currency the list is in.
    pub price: Option<f64>,
    /// How many lights the listing sells together.
    pub units_in_pack: Option<u32>,
    /// What was seen on the way to these facts that a reader of the result should know.
    pub notes: SmallVec<[Note; 2]>,
}
