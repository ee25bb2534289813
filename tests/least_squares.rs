//! The least squares of the sweeps against the NIST Statistical Reference Datasets for linear regression (data and
//! certified values from memory; the fixtures say how the two confirm each other).

use plainwatt::sweep::least_squares;

/// Reads the data, and solves for powers of x up to the number of certified coefficients less one.
fn agrees(text: &str, certified: &[(f64, f64)], scatter: f64) {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let data: Vec<(f64, f64)> = reader.deserialize().map(|row| row.expect("y and x")).collect();
    let y: Vec<f64> = data.iter().map(|(y, _)| *y).collect();
    let powers = 0..i32::try_from(certified.len()).expect("few");
    let columns: Vec<Vec<f64>> =
        powers.map(|power| data.iter().map(|(_, x)| x.powi(power)).collect()).collect();
    let solution = least_squares(&columns, &y).expect("the columns are independent");
    let mut worst = (solution.scatter().expect("freedom") / scatter - 1.0).abs();
    for (k, (value, u)) in certified.iter().enumerate() {
        worst = worst.max((solution.coefficients[k] / value - 1.0).abs());
        worst = worst.max((solution.u(k).expect("freedom") / u - 1.0).abs());
    }
    assert!(worst < 1e-9, "{worst:e}");
}

#[test]
fn norris_a_straight_line() {
    let certified =
        [(-0.262_323_073_774_029, 0.232_818_234_301_152), (1.002_116_818_020_45, 0.429_796_848_199_937e-3)];
    agrees(include_str!("../fixtures/nist/norris.csv"), &certified, 0.884_796_396_144_373);
}

#[test]
fn pontius_a_parabola_as_ill_conditioned_as_a_narrow_sweep() {
    let certified = [
        (0.673_565_789_473_684e-3, 0.107_938_612_033_077e-3),
        (0.732_059_160_401_003e-6, 0.157_817_399_981_659e-9),
        (-0.316_081_871_345_029e-14, 0.486_652_849_992_036e-16),
    ];
    agrees(include_str!("../fixtures/nist/pontius.csv"), &certified, 0.205_177_424_076_185e-3);
}

#[test]
fn columns_that_depend_on_one_another_are_refused() {
    let one = vec![1.0; 4];
    let x = vec![1.0, 2.0, 3.0, 4.0];
    let both: Vec<f64> = x.iter().map(|x| 3.0 * x - 2.0).collect();
    assert!(least_squares(&[one.clone(), x.clone()], &[1.0, 2.0, 2.0, 3.0]).is_some());
    assert!(least_squares(&[one.clone(), x.clone(), both], &[1.0, 2.0, 2.0, 3.0]).is_none());
    assert!(least_squares(&[one, x], &[1.0]).is_none());
    assert!(least_squares(&[vec![f64::NAN; 4]], &[1.0, 2.0, 2.0, 3.0]).is_none());
}

#[test]
fn as_many_coefficients_as_observations_leave_no_uncertainty_to_quote() {
    let line = least_squares(&[vec![1.0, 1.0], vec![0.0, 2.0]], &[1.0, 5.0]).expect("solvable");
    assert_eq!((line.scatter(), line.u(0)), (None, None));
    assert!((line.coefficients[1] - 2.0).abs() < 1e-15);
}
