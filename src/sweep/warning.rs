//! What is odd about readings that can still be used.

use std::fmt;

use super::curve::{Curve, Point};
use super::fit::{Fit, Origin};
use super::row::photon_nm;
use crate::draw::Shockley;
use crate::facts::Colour;
use crate::reference::{Die, Table};
use crate::units::{Amps, Volts};

/// h*c/e, volts times nanometres: the energy of a photon of 1 nm, in electronvolts. h, c and e are exact: SI Brochure, 9th
/// edition (2019).
const PHOTON_V_NM: f64 = 6.626_070_15e-34 * 299_792_458.0 / 1.602_176_634e-19 * 1e9;

/// A die lights up visibly below the voltage of its photons, but hardly below this share of it.
const PHOTON_SHARE: f64 = 0.75;

/// A sweep whose highest current is less than so many times its lowest shows hardly more than a point of the curve.
const LEAST_SPAN: f64 = 2.0;

/// An rms residual above this, volts, is more than a steady hand leaves: the sweeps of the trade that were at hand keep
/// under 0.02 V, and half a bin is 0.05 V or more (both from memory).
const POOR_RMS: f64 = 0.05;

/// A warning. Where several readings ask for the same one, it names the worst and counts them.
#[derive(Debug, Clone, PartialEq)]
pub enum Warning {
    /// The table has no row for this kind of die and colour.
    NoRow {
        /// Kind of die.
        die: Die,
        /// Colour.
        colour: Colour,
    },
    /// Currents outside the range in which the equation holds; these readings are left out.
    OutsideCurve {
        /// Line of the first.
        line: u64,
        /// How many readings.
        readings: usize,
        /// Lowest current that is used.
        lowest: Amps,
        /// Highest current that is used.
        highest: Amps,
    },
    /// Currents above the published maximum.
    AboveMaximum {
        /// Line of the highest.
        line: u64,
        /// How many readings.
        readings: usize,
        /// The highest current.
        current: Amps,
        /// The published maximum.
        maximum: Amps,
    },
    /// Voltages under three quarters of the photon's energy.
    BelowPhoton {
        /// Line of the lowest.
        line: u64,
        /// How many readings.
        readings: usize,
        /// The lowest voltage.
        volts: Volts,
        /// Three quarters of h*c/(e*lambda).
        least: Volts,
        /// The wavelength, nm.
        nm: f64,
    },
    /// Enough readings for a fit, but at too few different currents.
    FewCurrents {
        /// How many readings.
        readings: usize,
        /// How many currents.
        currents: usize,
    },
    /// V0 outside what makers publish.
    OutsidePublished {
        /// V0.
        v0: Volts,
        /// Published minimum.
        least: Volts,
        /// Published maximum.
        most: Volts,
    },
    /// The curve misses the readings.
    PoorFit {
        /// rms residual.
        rms: Volts,
        /// Line of the reading that lies farthest off.
        line: u64,
        /// How far it lies off, above the curve positive.
        off: Volts,
    },
    /// A slope fitted to currents that lie close together.
    NarrowSweep {
        /// Lowest current used.
        lowest: Amps,
        /// Highest current used.
        highest: Amps,
    },
}

/// Every warning that the readings and the fit ask for.
pub(super) fn of(fit: &Fit, table: &Table) -> Vec<Warning> {
    let (curve, row) = (&fit.curve, &fit.row);
    let mut warnings = Vec::new();
    if !table.diode(curve.die, curve.colour).1 {
        warnings.push(Warning::NoRow { die: curve.die, colour: curve.colour });
    }
    let shockley = Shockley::of(row);
    if let Some(first) = fit.left_out.first() {
        let (lowest, highest) = shockley.range();
        let readings = fit.left_out.len();
        warnings.push(Warning::OutsideCurve { line: first.line, readings, lowest, highest });
    }
    let over: Vec<&Point> = curve.points.iter().filter(|p| p.amps.0 > row.max.0 * (1.0 + 1e-9)).collect();
    if let Some(worst) = over.iter().max_by(|a, b| a.amps.0.total_cmp(&b.amps.0)) {
        warnings.push(Warning::AboveMaximum {
            line: worst.line,
            readings: over.len(),
            current: worst.amps,
            maximum: row.max,
        });
    }
    warnings.extend(below_photon(fit, table));
    let currents = Curve::currents(&fit.used);
    if fit.used.len() > 3 && fit.ideality.origin == Origin::Table {
        warnings.push(Warning::FewCurrents { readings: fit.used.len(), currents });
    }
    let v0 = fit.v0.value;
    if !(row.vf_min.0..=row.vf_max.0).contains(&v0.0) {
        warnings.push(Warning::OutsidePublished { v0, least: row.vf_min, most: row.vf_max });
    }
    warnings.extend(poor_fit(fit));
    let lowest = fit.used.iter().map(|p| p.amps).fold(Amps(f64::MAX), Amps::min);
    let highest = fit.used.iter().map(|p| p.amps).fold(Amps(0.0), Amps::max);
    if fit.ideality.origin != Origin::Table && highest / lowest < LEAST_SPAN {
        warnings.push(Warning::NarrowSweep { lowest, highest });
    }
    warnings
}

fn below_photon(fit: &Fit, table: &Table) -> Option<Warning> {
    let nm = photon_nm(&fit.row, table)?;
    let least = Volts(PHOTON_SHARE * PHOTON_V_NM / nm);
    let under: Vec<&Point> = fit.curve.points.iter().filter(|p| p.volts.0 < least.0).collect();
    let worst = under.iter().min_by(|a, b| a.volts.0.total_cmp(&b.volts.0))?;
    Some(Warning::BelowPhoton { line: worst.line, readings: under.len(), volts: worst.volts, least, nm })
}

fn poor_fit(fit: &Fit) -> Option<Warning> {
    let rms = fit.rms.filter(|rms| rms.0 > POOR_RMS)?;
    let curve = Shockley {
        v0: fit.v0.value,
        ideality: fit.ideality.value,
        rs: fit.rs.value,
        ..Shockley::of(&fit.row)
    };
    let off = |p: &Point| Some(p.volts - curve.voltage(p.amps, p.temperature).ok()?);
    let farthest = fit.used.iter().filter_map(|p| Some((p.line, off(p)?)));
    let (line, off) = farthest.max_by(|a, b| a.1.0.abs().total_cmp(&b.1.0.abs()))?;
    Some(Warning::PoorFit { rms, line, off })
}

/// `line 4`, or `line 4 and 2 more`: the worst and how many beside it.
fn place(line: u64, readings: usize) -> String {
    match readings {
        1 => format!("line {line}"),
        n => format!("line {line} and {} more", n - 1),
    }
}

impl fmt::Display for Warning {
    /// What was seen, why it matters, what to do.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NoRow { die, colour } => write!(
                f,
                "the table has no {} {} die: what a sweep does not show is taken from its row for dice of unstated colour; \
                 put limits and efficiencies of your own into the new row if you know them",
                die.name(),
                colour.name()
            ),
            Self::OutsideCurve { line, readings, lowest, highest } => {
                let which = if readings == 1 {
                    format!("line {line} is")
                } else {
                    format!("line {line} and {} more are", readings - 1)
                };
                write!(
                    f,
                    "{which} outside {:.1} to {:.0} mA, where the curve holds, and left out; sweep within that range",
                    lowest.ma(),
                    highest.ma()
                )
            }
            Self::AboveMaximum { line, readings, current, maximum } => write!(
                f,
                "{}: {:.0} mA is above the published maximum of {:.0} mA; heat lowers the voltage and can kill the die; \
                 keep to the maximum or see that the colour and the die are right",
                place(line, readings),
                current.ma(),
                maximum.ma()
            ),
            Self::BelowPhoton { line, readings, volts, least, nm } => write!(
                f,
                "{}: {} V is under {:.2} V, three quarters of the energy of a {nm:.0} nm photon; a die of this colour hardly \
                 lights there; see that the colour is right and that the meter sits at the die",
                place(line, readings),
                volts.0,
                least.0
            ),
            Self::FewCurrents { readings, currents } => write!(
                f,
                "{readings} readings at {currents} {} cannot show the slope, so n and Rs are the table's; sweep at three \
                 currents or more",
                if currents == 1 { "current" } else { "currents" }
            ),
            Self::OutsidePublished { v0, least, most } => write!(
                f,
                "V0 of {:.2} V is outside {} to {} V, which makers publish; see that the colour is right and that there is \
                 one die, not several in series",
                v0.0, least.0, most.0
            ),
            Self::PoorFit { rms, line, off } => write!(
                f,
                "the curve misses the readings by {:.0} mV rms, line {line} most ({:+.0} mV); a reading is wrong or the die \
                 warmed up on the way; measure that one again, in short runs",
                rms.0 * 1000.0,
                off.0 * 1000.0
            ),
            Self::NarrowSweep { lowest, highest } => write!(
                f,
                "a sweep from {:.0} to {:.0} mA says little of the curve beyond; sweep over at least a factor of {LEAST_SPAN:.0} \
                 in current, the one that lights are driven at among them",
                lowest.ma(),
                highest.ma()
            ),
        }
    }
}
