//! The reference table made ready for counting: every class and colour at its operating points, computed once.

use super::forward_voltage::OutsideCurve;
use super::package::PackageDraw;
use crate::facts::Colour;
use crate::reference::{ClassId, Table};
use crate::units::{Amps, Celsius};

/// Junction temperature of a running light. No published survey; makers bin at 85 degrees Celsius.
pub const JUNCTION: Celsius = Celsius(75.0);

/// Half the width of what the junction temperature may be, kelvins, rectangular.
pub(super) const JUNCTION_HALF_WIDTH: f64 = 20.0;

/// Junction temperature of a single die in a short run on a bench.
pub const BENCH: Celsius = Celsius(25.0);

/// A table and its packages at [`JUNCTION`].
#[derive(Debug, Clone)]
pub struct Model {
    table: Table,
    packages: Vec<[PackageDraw; Colour::ALL.len()]>,
    /// By class and colour: whether the table has a row for that colour in that kind of die.
    has_row: Vec<[bool; Colour::ALL.len()]>,
}

impl Model {
    /// Prepares a table.
    ///
    /// # Errors
    /// If a class's own currents are outside the curve of one of its dice.
    pub fn new(table: Table) -> Result<Self, OutsideCurve> {
        let mut packages = Vec::with_capacity(table.classes().len());
        for class in table.classes() {
            let of = |colour| PackageDraw::new(class, table.diode(class.die, colour).0, None, JUNCTION);
            let mut colours = [of(Colour::Unstated)?; Colour::ALL.len()];
            for colour in Colour::ALL {
                colours[colour as usize] = of(colour)?;
            }
            packages.push(colours);
        }
        let has_row = table.classes().iter().map(|class| Colour::ALL.map(|c| table.diode(class.die, c).1));
        Ok(Self { has_row: has_row.collect(), table, packages })
    }

    /// The table it was made from.
    #[must_use]
    pub fn table(&self) -> &Table {
        &self.table
    }

    /// One package of that class and colour at its class current.
    #[must_use]
    pub fn package(&self, class: ClassId, colour: Colour) -> &PackageDraw {
        &self.packages[usize::from(class.0)][colour as usize]
    }

    /// Whether the table has a row of its own for that colour in the class's kind of die; else the kind's `unstated` row
    /// stands for it.
    #[must_use]
    pub fn has_row(&self, class: ClassId, colour: Colour) -> bool {
        self.has_row[usize::from(class.0)][colour as usize]
    }

    /// One package of that class and colour at a stated current through the package.
    ///
    /// # Errors
    /// If that current is outside the die's curve.
    pub fn driven(&self, class: ClassId, colour: Colour, drive: Amps) -> Result<PackageDraw, OutsideCurve> {
        let class = self.table.class(class);
        PackageDraw::new(class, self.table.diode(class.die, colour).0, Some(drive), JUNCTION)
    }
}
