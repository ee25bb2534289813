//! The row of a reference table that a fit comes to, and how far it may be trusted.

use super::curve::Curve;
use super::fit::{Fit, Origin};
use crate::facts::Colour;
use crate::reference::{Die, DiodeRow, Table};
use crate::uncertain::Distribution;
use crate::units::Volts;

/// How far the mean of a batch may lie from the one sample that was swept, volts, rectangular.
///
/// Makers sort diodes into forward-voltage bins 0.1 to 0.2 V wide (from memory), and a reel is of one bin. The sample
/// may stand anywhere in the bin and the mean of the batch is near its middle: half of the wider bin. One sample cannot
/// show this however well it is swept, so no fitted row has less.
pub const BIN_HALF_WIDTH: Volts = Volts(0.1);

/// The row that the fit starts from: the colour's own, else the kind's `unstated` row with the peak of the colour.
pub(super) fn base(curve: &Curve, table: &Table) -> DiodeRow {
    let (row, own) = table.diode(curve.die, curve.colour);
    let mut base = row.clone();
    if !own {
        base.colour = curve.colour;
        base.peak_nm = peak_nm(curve.colour, table);
    }
    base
}

/// Peak wavelength of a colour's power die, nm: the same materials serve in every size.
fn peak_nm(colour: Colour, table: &Table) -> Option<f64> {
    let (row, own) = table.diode(Die::Power, colour);
    if own { row.peak_nm } else { None }
}

/// The wavelength whose photons the die itself makes, nm: its own, or for a phosphor the royal blue of the die beneath.
pub(super) fn photon_nm(row: &DiodeRow, table: &Table) -> Option<f64> {
    match row.colour {
        Colour::White | Colour::Pink => peak_nm(Colour::RoyalBlue, table),
        _ => row.peak_nm,
    }
}

/// The row with what was fitted. Whatever a sweep does not show (limits, efficiency, temperature coefficient) stays.
pub(super) fn fitted(fit: &Fit, file: &str) -> DiodeRow {
    let v0 = fit.v0.value;
    DiodeRow {
        vf: v0,
        vf_min: fit.row.vf_min.min(v0),
        vf_max: fit.row.vf_max.max(v0),
        u_vf: spread(fit),
        ideality: fit.ideality.value,
        rs: fit.rs.value,
        grade: "own sweep".to_owned(),
        source: source(fit, file),
        ..fit.row.clone()
    }
}

/// The standard uncertainty of V0 for the diodes of the batch that the sample is from: what the sweep itself leaves open,
/// and the bin.
///
/// The sweep's part is the largest of u(V0), the scatter about the curve (a misfit does not shrink with more readings) and
/// the rounding of the voltages (GUM F.2.2.1; all that a single reading shows).
fn spread(fit: &Fit) -> Volts {
    let rounding = Distribution::Rectangular { half_width: fit.curve.half_digit.0 }.u();
    let known = [fit.v0.u, fit.scatter];
    let sweep = known.into_iter().flatten().map(|u| u.0).fold(rounding, f64::max);
    let bin = Distribution::Rectangular { half_width: BIN_HALF_WIDTH.0 }.u();
    Volts(sweep.hypot(bin))
}

fn source(fit: &Fit, file: &str) -> String {
    // A name may hold anything; a control character in a table would reach whoever prints it.
    let file: String = file.chars().map(|c| if c.is_control() { '?' } else { c }).collect();
    let readings = match fit.used.len() {
        1 => "1 reading".to_owned(),
        n => format!("{n} readings"),
    };
    let rms = fit.rms.map_or_else(String::new, |rms| format!(", rms residual {:.1} mV", rms.0 * 1000.0));
    let kept: Vec<&str> = [("n", fit.ideality.origin), ("Rs", fit.rs.origin)]
        .into_iter()
        .filter(|(_, origin)| *origin == Origin::Table)
        .map(|(name, _)| name)
        .collect();
    let kept =
        if kept.is_empty() { String::new() } else { format!("; {} kept from the table", kept.join(" and ")) };
    format!(
        "fitted from {file}: {readings} of one sample{rms}{kept}; u_vf: the sweep and a bin of \u{b1}{} V (from memory); \
         the rest as the row before: {}",
        BIN_HALF_WIDTH.0, fit.row.source
    )
}

/// The rows of all fits, for [`crate::reference::diodes_as_csv`].
#[must_use]
pub fn rows(fits: &[Fit]) -> Vec<DiodeRow> {
    fits.iter().map(|fit| fit.row.clone()).collect()
}
