//! The readings of one die, and whether they can be readings of a diode at all.

use crate::draw::{Shockley, T_REF_K};
use crate::facts::{Colour, Fault};
use crate::reference::Die;
use crate::units::{Amps, Celsius, Ohms, Volts};

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Line of the file, from 1.
    pub line: u64,
    /// Voltage across the die.
    pub volts: Volts,
    /// Current through the die.
    pub amps: Amps,
    /// Temperature of the die, 25 degrees Celsius where the file gives none.
    pub temperature: Celsius,
}

/// The readings of one kind of die and colour, in the order of the file.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Kind of die.
    pub die: Die,
    /// Colour, never `Unstated`.
    pub colour: Colour,
    /// The readings, at least one.
    pub points: Vec<Point>,
    /// Half a unit of the last digit of the voltages, by the reading with most decimals: a spreadsheet drops the zero
    /// of 2.0.
    pub half_digit: Volts,
}

impl Curve {
    /// How many different currents there are.
    pub(super) fn currents(points: &[Point]) -> usize {
        let mut amps: Vec<f64> = points.iter().map(|p| p.amps.0).collect();
        amps.sort_by(f64::total_cmp);
        amps.dedup();
        amps.len()
    }

    /// Refuses readings whose voltage does not rise with the current.
    ///
    /// Readings at one current may differ (a repeat shows the scatter). Readings at different temperatures are not held
    /// against each other, since a warm die drops less. Equal volts at two currents pass where the rounding of the meter
    /// can hide the least rise that physics allows, `V_T` * ln(I2/I1) (ideality 1, no resistance).
    ///
    /// # Errors
    /// The later in the file of the first two readings, by current, that contradict each other.
    pub(super) fn check_rising(&self) -> Result<(), Fault> {
        let mut sorted: Vec<&Point> = self.points.iter().collect();
        sorted
            .sort_by(|a, b| a.temperature.0.total_cmp(&b.temperature.0).then(a.amps.0.total_cmp(&b.amps.0)));
        for same in sorted.chunk_by(|a, b| a.temperature == b.temperature) {
            let mut highest: Option<&Point> = None;
            for level in same.chunk_by(|a, b| a.amps == b.amps) {
                if let Some(below) = highest
                    && let Some(point) = level.iter().find(|p| !self.rises(below, p))
                {
                    return Err(self.contradiction(below, point));
                }
                let top = level.iter().copied().max_by(|a, b| a.volts.0.total_cmp(&b.volts.0));
                highest = match (highest, top) {
                    (Some(old), Some(new)) if new.volts.0 < old.volts.0 => Some(old),
                    (old, new) => new.or(old),
                };
            }
        }
        Ok(())
    }

    fn rises(&self, low: &Point, high: &Point) -> bool {
        let ideal = Shockley {
            v0: low.volts,
            i0: low.amps,
            ideality: 1.0,
            rs: Ohms(0.0),
            dvf_dt: 0.0,
            t_ref_k: T_REF_K,
        };
        let least = ideal.slope() * (high.amps / low.amps).ln();
        high.volts.0 > low.volts.0
            || (high.volts == low.volts && least.0 <= 2.0 * self.half_digit.0 * (1.0 + 1e-9))
    }

    fn contradiction(&self, low: &Point, high: &Point) -> Fault {
        let (earlier, later) = if low.line < high.line { (low, high) } else { (high, low) };
        Fault {
            line: Some(later.line),
            byte: None,
            column: Some("volts".to_owned()),
            cell: None,
            found: format!("{} V at {} A", later.volts.0, later.amps.0),
            accepted: format!(
                "volts that rise with amps: line {} has {} V at {} A; measure the {} die again, one die at a time",
                earlier.line,
                earlier.volts.0,
                earlier.amps.0,
                self.colour.name()
            ),
        }
    }
}
