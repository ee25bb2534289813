//! Per-colour diode counts with a class.

use smallvec::SmallVec;

use super::{Colour, StatedClass};

/// A number of diode packages; `half_width` is the doubt of somebody counting on a picture (`60±2`), absent if exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    /// How many.
    pub number: u32,
    /// Half the width of a rectangular distribution about `number`.
    pub half_width: Option<u32>,
}

impl Count {
    /// The most diodes that one light may have; more is a typing error.
    pub const MOST: u32 = 1_000_000;

    /// A count that is not in doubt.
    #[must_use]
    pub const fn exact(number: u32) -> Self {
        Self { number, half_width: None }
    }
}

/// Diodes of one colour and class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Group {
    /// The colour, `Unstated` where none is given.
    pub colour: Colour,
    /// How many packages.
    pub count: Count,
    /// The group's own class; without one the light's class applies.
    pub class: Option<StatedClass>,
}

/// What the counting module makes: the diodes of one light.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Tally {
    /// The groups, in the order given. The order never matters to a result.
    pub groups: SmallVec<[Group; 8]>,
    /// There may be more diodes than these (colours given without a total beside a COB or a board), so the tally is a
    /// lower bound and cannot convict.
    pub lower_bound: bool,
}

impl Tally {
    /// All packages together.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.groups.iter().map(|g| u64::from(g.count.number)).sum()
    }
}
