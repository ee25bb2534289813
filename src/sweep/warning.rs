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

/// How much products of one colour differ in slope, volts per e-fold of current: a slope less sure than that says less
/// than the table does.
const U_SLOPE: f64 = 0.10;

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
    /// The slope is less sure than the table's own.
    SlopeUnsure {
        /// Standard uncertainty of n*`V_T`, volts per e-fold.
        u: Volts,
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
    let u_slope = fit.ideality.u.map(|u| Shockley { ideality: u, ..shockley }.slope());
    if let Some(u) = u_slope.filter(|u| u.0 > U_SLOPE) {
        warnings.push(Warning::SlopeUnsure { u });
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

/// `line 4`, or `3 readings, line 4 most`.
fn place(line: u64, readings: usize) -> String {
    if readings == 1 { format!("line {line}") } else { format!("{readings} readings, line {line} most") }
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
                    format!("{readings} readings, line {line} first, are")
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
            Self::SlopeUnsure { u } => write!(
                f,
                "the slope is unsure by {:.2} V an e-fold, more than products of a colour differ; sweep over a wider range of \
                 currents or read more digits",
                u.0
            ),
        }
    }
}
