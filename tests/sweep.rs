//! Bench readings to fitted parameters, against readings of the trade, known curves and an independent least squares.

use std::fmt::Write;

use plainwatt::draw::{BENCH, OperatingPoint, forward_voltage};
use plainwatt::facts::{Colour, StatedClass};
use plainwatt::reference::{Die, Table, diodes_as_csv};
use plainwatt::sweep::{self, Curve, Fit, Origin};
use plainwatt::units::{Amps, Celsius};
use proptest::prelude::*;

const RED: &str = include_str!("../fixtures/sweeps/red.csv");
const SINGLE: &str = include_str!("../fixtures/sweeps/single_700_ma.csv");
const BOUNDED: &str = include_str!("../fixtures/sweeps/bounded_fits.csv");

fn curves(text: &str) -> Vec<Curve> {
    sweep::read(text).unwrap_or_else(|fault| panic!("{fault:?}"))
}

fn fit(text: &str) -> Fit {
    let curves = curves(text);
    assert_eq!(curves.len(), 1);
    sweep::fit(&curves[0], &Table::built_in(), "bench.csv").unwrap_or_else(|fault| panic!("{fault:?}"))
}

fn rows_of(text: &str) -> csv::Reader<&[u8]> {
    csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes())
}

fn close(found: f64, expected: f64, relative: f64, what: &str) {
    assert!(
        (found - expected).abs() <= relative * expected.abs().max(1e-9),
        "{what}: {found} for {expected}"
    );
}

/// Common practice, no source: a red die from 1.8 V to 2.3 V.
#[test]
fn the_red_sweep_is_met_within_20_millivolts() {
    let fit = fit(RED);
    let rms = fit.rms.expect("six readings show a residual").0;
    assert!(rms < 0.020, "{rms}");
    // The residuals are those of the row that is written, not of the solver's own sums.
    let squares: f64 = fit
        .used
        .iter()
        .map(|p| (forward_voltage(&fit.row, p.amps, p.temperature).expect("in range").0 - p.volts.0).powi(2))
        .sum();
    close(rms, (squares / 6.0).sqrt(), 1e-9, "rms");
    assert_eq!((fit.ideality.value, fit.ideality.origin, fit.ideality.u), (1.0, Origin::Bound, None));
}

/// Common practice, no source: single dice at 700 mA, 25 degrees Celsius.
#[test]
fn single_points_reproduce_their_watts_through_the_written_table() {
    let fits: Vec<Fit> = curves(SINGLE)
        .iter()
        .map(|curve| sweep::fit(curve, &Table::built_in(), "single.csv").expect("in range"))
        .collect();
    assert_eq!(fits.len(), 6);
    let written = diodes_as_csv(&sweep::rows(&fits)).expect("rows can be written");
    let table = Table::with_diodes("own", &written).expect("what is written can be read");
    let class = table.class(table.find(&StatedClass::plain(3.0)).expect("a 3 W class"));
    for record in rows_of(SINGLE).records() {
        let record = record.expect("a row");
        let (row, own) = table.diode(Die::Power, Colour::from_name(&record[0]).expect("a colour"));
        let watts: f64 = record[3].parse().expect("watts");
        let point = OperatingPoint::at(class, row, Amps(0.7), BENCH).expect("in range");
        assert!(own && row.grade == "own sweep");
        assert!((point.watts.0 - watts).abs() < 1e-12, "{}: {} for {watts}", &record[0], point.watts.0);
    }
    for fit in &fits {
        assert_eq!((fit.rms, fit.scatter, fit.v0.u), (None, None, None), "one reading shows no scatter");
        assert_eq!((fit.ideality.origin, fit.rs.origin), (Origin::Table, Origin::Table));
    }
}

/// scipy's bounded-variable least squares, named in the fixture.
#[test]
fn the_fit_is_that_of_an_independent_bounded_least_squares() {
    let mut seen = 0;
    for record in rows_of(BOUNDED).records() {
        let record = record.expect("a row");
        let (case, colour) = (&record[0], &record[1]);
        let mut text = "colour,volts,amps,temperature_c\n".to_owned();
        let [volts, amps, celsius] = [4, 5, 6].map(|column| record[column].split(' '));
        for ((v, i), t) in volts.zip(amps).zip(celsius) {
            writeln!(text, "{colour},{v},{i},{t}").expect("a string takes it");
        }
        let fit = fit(&text);
        let number = |column: usize| record[column].parse::<f64>().ok();
        assert_eq!(Some(fit.row.test.0), number(2), "{case}: made for another test current");
        close(fit.row.dvf_dt, number(3).expect("k"), 1e-12, "made for another temperature coefficient");
        let found = [fit.v0.value.0, fit.ideality.value, fit.rs.value.0];
        let u = [fit.v0.u.map(|u| u.0), fit.ideality.u, fit.rs.u.map(|u| u.0)];
        for parameter in 0..3 {
            let expected = number(7 + parameter).expect("a value");
            close(found[parameter], expected, 1e-8, &format!("{case}, parameter {parameter}"));
            match (u[parameter], number(10 + parameter)) {
                (Some(u), Some(expected)) => {
                    close(u, expected, 1e-7, &format!("{case}, u of parameter {parameter}"));
                }
                (found, expected) => assert_eq!(found, expected, "{case}, u of parameter {parameter}"),
            }
        }
        close(fit.rms.expect("rms").0, number(13).expect("rms"), 1e-7, case);
        seen += 1;
    }
    assert_eq!(seen, 7);
}

#[test]
fn two_or_three_readings_move_the_voltage_to_their_mean() {
    let table = Table::built_in();
    let row = table.diode(Die::Power, Colour::Red).0;
    let at = |ma: f64| forward_voltage(row, Amps::from_ma(ma), BENCH).expect("in range").0;
    let text = format!("colour,volts,amps\nred,{},0.2\nred,{},0.5\n", at(200.0) + 0.03, at(500.0) + 0.05);
    let fit = fit(&text);
    assert!((fit.v0.value.0 - (row.vf.0 + 0.04)).abs() < 1e-12);
    // Two deviations of 10 mV: rms sqrt(2*0.01^2/2), s sqrt(2*0.01^2/1), u(mean) s/sqrt(2).
    close(fit.rms.expect("rms").0, 0.010, 1e-9, "rms");
    close(fit.scatter.expect("scatter").0, 0.010 * 2.0_f64.sqrt(), 1e-9, "scatter");
    close(fit.v0.u.expect("u").0, 0.010, 1e-9, "u(V0)");
    assert_eq!((fit.row.ideality, fit.row.rs), (row.ideality, row.rs));
}

#[test]
fn a_warm_reading_is_brought_to_25_degrees() {
    let cold = fit("colour,volts,amps\nroyal-blue,3.1,0.7\n");
    let warm = fit("colour,volts,amps,temperature_c\nroyal-blue,3.0,0.7,75\n");
    // -2.0 mV/K over 50 K.
    assert!((cold.v0.value.0 - warm.v0.value.0).abs() < 1e-12);
    let back = forward_voltage(&warm.row, Amps(0.7), Celsius(75.0)).expect("in range").0;
    assert!((back - 3.0).abs() < 1e-12);
}

#[test]
fn the_spread_never_falls_under_what_one_sample_can_show() {
    let bin = sweep::BIN_HALF_WIDTH.0 / 3.0_f64.sqrt();
    let rounding = |half: f64| half / 3.0_f64.sqrt();
    // A reading of many digits leaves the bin alone; one of 0.1 V its rounding too.
    close(fit("colour,volts,amps\nred,2.200000,0.7\n").row.u_vf.0, bin, 1e-9, "six decimals");
    let coarse = fit("colour,volts,amps\nred,2.2,0.7\n").row.u_vf.0;
    close(coarse, bin.hypot(rounding(0.05)), 1e-12, "one decimal");
    // Scatter that is wider than the rounding takes its place.
    let scattered = fit("colour,volts,amps\nred,2.10,0.7\nred,2.30,0.7\n");
    close(scattered.row.u_vf.0, bin.hypot(0.2 / 2.0_f64.sqrt()), 1e-12, "two repeats");
    // A sweep far from the test current leaves V0 itself in doubt.
    let far = fit("colour,volts,amps\nred,2.301,0.70\nred,2.309,0.71\nred,2.311,0.72\nred,2.322,0.73\n");
    let u = far.v0.u.expect("u").0;
    assert!(u > far.scatter.expect("scatter").0);
    close(far.row.u_vf.0, bin.hypot(u), 1e-12, "far from the test current");
}

/// Voltages of a curve at the given currents, with as many digits as a double has.
fn exact(colour: Colour, (v0, n, rs): (f64, f64, f64), amps: &[f64]) -> String {
    let mut row = Table::built_in().diode(Die::Power, colour).0.clone();
    (row.vf.0, row.ideality, row.rs.0) = (v0, n, rs);
    let mut text = "colour,volts,amps\n".to_owned();
    for &i in amps {
        let v = forward_voltage(&row, Amps(i), BENCH).expect("in range").0;
        writeln!(text, "{},{v},{i}", colour.name()).expect("a string takes it");
    }
    text
}

fn squares(fit: &Fit, v0: f64, n: f64, rs: f64) -> f64 {
    let mut row = fit.row.clone();
    (row.vf.0, row.ideality, row.rs.0) = (v0, n, rs);
    let of = |i, t| forward_voltage(&row, i, t).expect("in range").0;
    fit.used.iter().map(|p| (of(p.amps, p.temperature) - p.volts.0).powi(2)).sum()
}

proptest! {
    #[test]
    fn a_known_curve_is_recovered(v0 in 1.9_f64..3.3, n in 1.0_f64..6.0, rs in 0.0_f64..1.0) {
        let fit = fit(&exact(Colour::DeepRed, (v0, n, rs), &[0.02, 0.06, 0.15, 0.35, 0.7, 1.2]));
        prop_assert!((fit.v0.value.0 - v0).abs() < 1e-9);
        prop_assert!((fit.ideality.value - n).abs() < 1e-7);
        prop_assert!((fit.rs.value.0 - rs).abs() < 1e-8);
    }

    /// By trying: no other allowed curve near by has a smaller sum of squares.
    #[test]
    fn no_other_allowed_curve_lies_closer(
        n in 1.0_f64..4.0,
        rs in 0.0_f64..0.6,
        noise in prop::collection::vec(-0.02_f64..0.02, 6),
        steps in prop::collection::vec((-1.0_f64..1.0, -1.0_f64..1.0, -1.0_f64..1.0), 50),
    ) {
        let amps = [0.03, 0.08, 0.2, 0.35, 0.6, 1.0];
        let clean = curves(&exact(Colour::White, (3.0, n, rs), &amps));
        let mut curve = clean[0].clone();
        for (point, error) in curve.points.iter_mut().zip(noise) {
            point.volts.0 += error;
        }
        let fit = sweep::fit(&curve, &Table::built_in(), "noise").expect("in range");
        let best = squares(&fit, fit.v0.value.0, fit.ideality.value, fit.rs.value.0);
        prop_assert!(fit.ideality.value >= 1.0 && fit.rs.value.0 >= 0.0);
        for (a, b, c) in steps {
            let n = (fit.ideality.value + b).max(1.0);
            let rs = (fit.rs.value.0 + 0.1 * c).max(0.0);
            prop_assert!(squares(&fit, fit.v0.value.0 + 0.02 * a, n, rs) >= best - 1e-15);
        }
    }
}
