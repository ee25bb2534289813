//! The drive class as a listing states it: a number of watts, and the package it stands beside, if any.

use std::fmt;

use crate::units::Watts;

/// A package word. It names a size of housing, not a power; the same watts in another package mean another die.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Package {
    /// "SMD" without a size.
    Smd,
    /// 2.8 mm x 3.5 mm.
    P2835,
    /// 3.0 mm x 1.4 mm.
    P3014,
    /// 3.0 mm x 3.0 mm.
    P3030,
    /// 3.5 mm x 2.8 mm.
    P3528,
    /// 5.0 mm x 5.0 mm.
    P5050,
    /// 5.6 mm x 3.0 mm.
    P5630,
    /// 5.7 mm x 3.0 mm.
    P5730,
    /// Chip on board: many dice under one phosphor.
    Cob,
}

impl Package {
    /// Every package word.
    pub const ALL: [Self; 9] = [
        Self::Smd,
        Self::P2835,
        Self::P3014,
        Self::P3030,
        Self::P3528,
        Self::P5050,
        Self::P5630,
        Self::P5730,
        Self::Cob,
    ];

    /// The word, in lower case.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Smd => "smd",
            Self::P2835 => "2835",
            Self::P3014 => "3014",
            Self::P3030 => "3030",
            Self::P3528 => "3528",
            Self::P5050 => "5050",
            Self::P5630 => "5630",
            Self::P5730 => "5730",
            Self::Cob => "cob",
        }
    }

    /// The package of that word, in any case.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|p| p.word().eq_ignore_ascii_case(word))
    }
}

/// A class as stated: `3W` is a name that stands for a current, not a power that is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StatedClass {
    /// The watts in the class's name.
    pub watts: Watts,
    /// The package it stands beside.
    pub package: Option<Package>,
}

impl StatedClass {
    /// A class without a package word.
    #[must_use]
    pub const fn plain(watts: f64) -> Self {
        Self { watts: Watts(watts), package: None }
    }
}

impl fmt::Display for StatedClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.package {
            Some(package) => write!(f, "{}-{}W", package.word(), self.watts.0),
            None => write!(f, "{}W", self.watts.0),
        }
    }
}
