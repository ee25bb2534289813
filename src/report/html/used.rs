//! Which rows of the reference table a run rests on, and which cautions apply to its lights.

use std::collections::BTreeSet;

use crate::draw::Model;
use crate::facts::Colour;
use crate::reference::{ClassRow, Die, DiodeRow, Table};
use crate::report::{Light, cautions};

/// The rows and the cautions, each once.
#[derive(Debug, Default)]
pub(super) struct Used {
    /// By the place of the class in the table.
    classes: Vec<bool>,
    dice: BTreeSet<(Die, Colour)>,
    cautions: BTreeSet<&'static str>,
}

impl Used {
    /// Notes what a listing rests on.
    pub(super) fn see(&mut self, model: &Model, light: Light<'_>) {
        let table = model.table();
        for part in light.assessment.counted.draw.iter().flat_map(|draw| &draw.parts) {
            let place = usize::from(part.class.0);
            if self.classes.len() <= place {
                self.classes.resize(place + 1, false);
            }
            self.classes[place] = true;
            let row = table.diode(table.class(part.class).die, part.colour).0;
            self.dice.insert((row.die, row.colour));
        }
        self.cautions.extend(cautions::of(light));
    }

    pub(super) fn add(&mut self, other: Self) {
        if self.classes.len() < other.classes.len() {
            self.classes.resize(other.classes.len(), false);
        }
        for (own, others) in self.classes.iter_mut().zip(other.classes) {
            *own |= others;
        }
        self.dice.extend(other.dice);
        self.cautions.extend(other.cautions);
    }

    /// The class rows, in the order of the table.
    pub(super) fn classes<'t>(&self, table: &'t Table) -> impl Iterator<Item = &'t ClassRow> {
        table.classes().iter().zip(&self.classes).filter(|(_, used)| **used).map(|(row, _)| row)
    }

    /// The rows of dice, in the order of kind and colour.
    pub(super) fn dice<'t>(&self, table: &'t Table) -> impl Iterator<Item = &'t DiodeRow> {
        self.dice.iter().map(|(die, colour)| table.diode(*die, *colour).0)
    }

    /// The cautions, none that another one says too.
    pub(super) fn cautions(&self) -> impl Iterator<Item = &'static str> {
        self.cautions.iter().copied().filter(|caution| !cautions::is_said_by_another(caution, &self.cautions))
    }
}
