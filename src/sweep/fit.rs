//! From the readings of a curve to the parameters of the forward-voltage equation.

use super::curve::{Curve, Point};
use super::least_squares::{LeastSquares, least_squares};
use super::number;
use super::row;
use super::warning::{self, Warning};
use crate::draw::{BENCH, Shockley};
use crate::facts::Fault;
use crate::reference::{DiodeRow, Table};
use crate::units::{Amps, Ohms, Volts};

/// Readings from which V0, n and Rs are all fitted; with fewer the table's n and Rs are kept.
const ENOUGH_READINGS: usize = 4;

/// As many different currents as there are parameters: with fewer they cannot be told apart.
const ENOUGH_CURRENTS: usize = 3;

/// Where a parameter comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// From the readings.
    Fitted,
    /// The readings ask for less than physics allows (n under 1, Rs under 0), so it stands at that bound.
    Bound,
    /// Kept from the reference table.
    Table,
}

/// A parameter of the curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameter<Q> {
    /// Its value.
    pub value: Q,
    /// Its standard uncertainty from the scatter of the readings (type A); absent where they do not show it.
    pub u: Option<Q>,
    /// Where it comes from.
    pub origin: Origin,
}

/// What the readings of one die come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// All the readings.
    pub curve: Curve,
    /// The readings that the parameters rest on.
    pub used: Vec<Point>,
    /// The readings at currents where the equation does not hold.
    pub left_out: Vec<Point>,
    /// V0, volts at the row's test current and 25 degrees Celsius.
    pub v0: Parameter<Volts>,
    /// n, ideality factor, 1 or more.
    pub ideality: Parameter<f64>,
    /// Rs, ohms, 0 or more.
    pub rs: Parameter<Ohms>,
    /// sqrt(SSR/N) of the readings used; absent for a single one, which the curve always meets.
    pub rms: Option<Volts>,
    /// Standard deviation of a single reading about the curve, sqrt(SSR/(N - p)), p parameters being fitted; absent
    /// where rms is.
    pub scatter: Option<Volts>,
    /// The row for a reference table.
    pub row: DiodeRow,
    /// What is odd about the readings.
    pub warnings: Vec<Warning>,
}

/// Fits a curve. `file` is what the row's source calls the readings by.
///
/// The equation is `V = V0 + n*V_T*ln(I/I0) + Rs*(I - I0) + k*(T - 25)`, with I0 and k of the table's row. From
/// four readings at three or more currents V0, n and Rs are those of least squares under n >= 1 and Rs >= 0; with fewer
/// n and Rs are the row's, and V0 is the mean of what each reading asks for.
///
/// # Errors
/// If no reading lies at a current where the equation holds (0.05 to 5 times the row's test current), or the curve falls
/// below 0 V within that range.
pub fn fit(curve: &Curve, table: &Table, file: &str) -> Result<Fit, Fault> {
    let base = row::base(curve, table);
    let shockley = Shockley::of(&base);
    let (used, left_out): (Vec<Point>, Vec<Point>) =
        curve.points.iter().partition(|p| shockley.voltage(p.amps, p.temperature).is_ok());
    let Some(solution) = solve(&used, &shockley) else {
        return Err(out_of_range(curve, &shockley));
    };
    check_positive(curve, &shockley, &solution)?;
    let mut fit = Fit {
        curve: curve.clone(),
        v0: solution.v0,
        ideality: solution.ideality,
        rs: solution.rs,
        rms: solution.scatter.map(|_| Volts((solution.ssr / number(used.len())).sqrt())),
        scatter: solution.scatter,
        used,
        left_out,
        row: base,
        warnings: Vec::new(),
    };
    fit.warnings = warning::of(&fit, table);
    fit.row = row::fitted(&fit, file);
    Ok(fit)
}

struct Solution {
    v0: Parameter<Volts>,
    ideality: Parameter<f64>,
    rs: Parameter<Ohms>,
    ssr: f64,
    scatter: Option<Volts>,
}

/// `None` without a reading.
fn solve(points: &[Point], row: &Shockley) -> Option<Solution> {
    let enough = points.len() >= ENOUGH_READINGS && Curve::currents(points) >= ENOUGH_CURRENTS;
    let system = System::new(points, row);
    if !enough {
        return system.face(Held::At(row.ideality, Origin::Table), Held::At(row.rs.0, Origin::Table));
    }
    // The least sum of squares under bounds is the free least of one face of the allowed region: both parameters free,
    // one at its bound, or both. With two bounds there are four faces, so all are tried.
    let (least_n, least_rs) = (Held::At(1.0, Origin::Bound), Held::At(0.0, Origin::Bound));
    [(Held::Free, Held::Free), (least_n, Held::Free), (Held::Free, least_rs), (least_n, least_rs)]
        .into_iter()
        .filter_map(|(n, rs)| system.face(n, rs))
        .filter(|s| s.ideality.value >= 1.0 && s.rs.value.0 >= 0.0)
        .min_by(|a, b| a.ssr.total_cmp(&b.ssr))
}

#[derive(Clone, Copy)]
enum Held {
    Free,
    At(f64, Origin),
}

impl Held {
    /// What is taken off the readings for a parameter that is held.
    fn value(self) -> f64 {
        match self {
            Self::Free => 0.0,
            Self::At(value, _) => value,
        }
    }

    /// The parameter, `free` being its place among the coefficients and `unit` what a coefficient of 1 stands for.
    fn parameter(self, solution: &LeastSquares, free: usize, unit: f64) -> Parameter<f64> {
        match self {
            Self::At(value, origin) => Parameter { value, u: None, origin },
            Self::Free => Parameter {
                value: solution.coefficients[free] / unit,
                u: solution.u(free).map(|u| u / unit),
                origin: Origin::Fitted,
            },
        }
    }
}

/// The readings as equations, linear in V0, n*`V_T` and Rs.
struct System {
    /// Volts at 25 degrees Celsius.
    volts: Vec<f64>,
    /// ln(I/I0).
    log: Vec<f64>,
    /// I - I0, amperes.
    excess: Vec<f64>,
    /// `V_T`, volts.
    thermal: f64,
}

impl System {
    fn new(points: &[Point], row: &Shockley) -> Self {
        Self {
            volts: points.iter().map(|p| p.volts.0 - row.dvf_dt * (p.temperature.0 - 25.0)).collect(),
            log: points.iter().map(|p| (p.amps / row.i0).ln()).collect(),
            excess: points.iter().map(|p| (p.amps - row.i0).0).collect(),
            thermal: Shockley { ideality: 1.0, ..*row }.slope().0,
        }
    }

    /// The least squares with n and Rs free or held. `None` if the readings do not tell the free ones apart.
    fn face(&self, n: Held, rs: Held) -> Option<Solution> {
        let mut columns = vec![vec![1.0; self.volts.len()]];
        if matches!(n, Held::Free) {
            columns.push(self.log.clone());
        }
        let rs_place = columns.len();
        if matches!(rs, Held::Free) {
            columns.push(self.excess.clone());
        }
        let (slope, ohms) = (n.value() * self.thermal, rs.value());
        let rest = self.volts.iter().zip(self.log.iter().zip(&self.excess));
        let rest: Vec<f64> = rest.map(|(v, (log, excess))| v - slope * log - ohms * excess).collect();
        let solution = least_squares(&columns, &rest)?;
        let v0 = Held::Free.parameter(&solution, 0, 1.0);
        let ohms = rs.parameter(&solution, rs_place, 1.0);
        Some(Solution {
            v0: Parameter { value: Volts(v0.value), u: v0.u.map(Volts), origin: v0.origin },
            ideality: n.parameter(&solution, 1, self.thermal),
            rs: Parameter { value: Ohms(ohms.value), u: ohms.u.map(Ohms), origin: ohms.origin },
            ssr: solution.ssr,
            scatter: solution.scatter().map(Volts),
        })
    }
}

/// A curve that is above 0 V at its lowest current is so everywhere, since n and Rs are not negative.
fn check_positive(curve: &Curve, row: &Shockley, solution: &Solution) -> Result<(), Fault> {
    let fitted =
        Shockley { v0: solution.v0.value, ideality: solution.ideality.value, rs: solution.rs.value, ..*row };
    let (lowest, _) = row.range();
    match fitted.voltage(lowest, BENCH) {
        Ok(volts) if volts.0 <= 0.0 => Err(Fault {
            line: curve.points.first().map(|p| p.line),
            byte: None,
            column: Some("volts".to_owned()),
            cell: None,
            found: format!("a curve that would be at {:.2} V at {} A", volts.0, micro(lowest)),
            accepted: format!(
                "readings of a diode, which is above 0 V there; see that volts and amps of the {} die are in volts and \
                 amperes, and measure again",
                curve.colour.name()
            ),
        }),
        _ => Ok(()),
    }
}

/// Amperes to the microampere, so that 0.05 * 0.35 A reads 0.0175.
fn micro(current: Amps) -> f64 {
    (current.0 * 1e6).round() / 1e6
}

fn out_of_range(curve: &Curve, row: &Shockley) -> Fault {
    let (lowest, highest) = row.range();
    let first = curve.points.first();
    Fault {
        line: first.map(|p| p.line),
        byte: None,
        column: Some("amps".to_owned()),
        cell: None,
        found: first.map_or_else(|| "no reading".to_owned(), |p| format!("{} A", p.amps.0)),
        accepted: format!(
            "at least one reading of a {} {} die from {} to {} A, where its curve holds; if the currents are right, see \
             that column die names the right kind",
            curve.die.name(),
            curve.colour.name(),
            micro(lowest),
            micro(highest)
        ),
    }
}
