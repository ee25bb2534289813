//! One row of classes.csv: the current that a class name stands for, and how the dice are wired inside.

use serde::Deserialize;

use super::Die;
use crate::facts::{Package, StatedClass};
use crate::units::{Amps, Watts};

/// A drive class.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassRow {
    /// The name: `3W`, `smd-3W`, `3030-1W`, `cob-50W`.
    pub name: String,
    /// The watts in the name.
    pub nominal: Watts,
    /// The kind of die inside.
    pub die: Die,
    /// Dice in series in one package.
    pub series: u32,
    /// Strings in parallel in one package.
    pub parallel: u32,
    /// The current each die takes when the class is driven as its name stands for.
    pub die_current: Amps,
    /// Published maximum current of a die in this class.
    pub max_die_current: Amps,
    /// Lowest share of the class current that such lights are commonly run at.
    pub common_low: f64,
    /// Highest such share.
    pub common_high: f64,
    /// How far to trust the row; `memory` rows never support `out-of-reach`.
    pub grade: String,
    /// Where each figure comes from.
    pub source: String,
}

impl ClassRow {
    /// Dice in one package.
    #[must_use]
    pub fn dice(&self) -> f64 {
        f64::from(self.series) * f64::from(self.parallel)
    }

    /// Whether the row rests on memory alone.
    #[must_use]
    pub fn from_memory(&self) -> bool {
        self.grade == "memory"
    }

    /// The class that a listing would state to mean this row.
    pub(super) fn stated(&self) -> StatedClass {
        let package = self.name.split_once('-').and_then(|(word, _)| Package::from_word(word));
        StatedClass { watts: self.nominal, package }
    }
}

/// The row as the file writes it.
#[derive(Debug, Deserialize)]
pub(super) struct Record {
    class: String,
    nominal_w: f64,
    die: Die,
    series_dice: u32,
    parallel_dice: u32,
    die_ma: f64,
    max_die_ma: f64,
    common_low: f64,
    common_high: f64,
    grade: String,
    source: String,
}

impl Record {
    /// The row with its units, or what is wrong with it.
    pub(super) fn row(self) -> Result<ClassRow, String> {
        let name = self.class;
        if !(self.nominal_w.is_finite() && self.nominal_w > 0.0) {
            return Err(format!("nominal_w of '{name}' is {}, which should be above 0", self.nominal_w));
        }
        if self.series_dice == 0 || self.parallel_dice == 0 {
            return Err(format!("'{name}' should have at least one die in series and in parallel"));
        }
        if !(self.die_ma.is_finite() && self.die_ma > 0.0 && self.die_ma <= self.max_die_ma) {
            return Err(format!("'{name}' has die_ma {} and max_die_ma {}", self.die_ma, self.max_die_ma));
        }
        if !(0.0 < self.common_low && self.common_low <= self.common_high && self.common_high <= 1.0) {
            return Err(format!(
                "'{name}' has a common range of {} to {}",
                self.common_low, self.common_high
            ));
        }
        if self.grade.is_empty() || self.source.is_empty() {
            return Err(format!("grade and source of '{name}' should be filled"));
        }
        Ok(ClassRow {
            name,
            nominal: Watts(self.nominal_w),
            die: self.die,
            series: self.series_dice,
            parallel: self.parallel_dice,
            die_current: Amps::from_ma(self.die_ma),
            max_die_current: Amps::from_ma(self.max_die_ma),
            common_low: self.common_low,
            common_high: self.common_high,
            grade: self.grade,
            source: self.source,
        })
    }
}
