//! The guides' own worked examples, through the same code that works out a light: JCGM 100:2008 (GUM), JCGM 101:2008,
//! JCGM 106:2012, and normal quantiles of the NIST/SEMATECH e-Handbook.

mod chance;
mod published;

use chance::Chance;
use plainwatt::comparison::{MeterAccuracy, Settings, Verdict, assess};
use plainwatt::draw::Model;
use plainwatt::facts::{Listing, MeterReading};
use plainwatt::reference::Table;
use plainwatt::uncertain::{COVERAGE_95, Distribution, combined, normal_cdf, normal_quantile};
use plainwatt::units::Watts;

/// GUM 5.2.2: ten resistors, each calibrated against the same standard. Their errors are one error.
#[test]
fn ten_resistors_of_one_calibration_add_linearly() {
    published::row("gum_5_2_2").agrees(combined(&[0.1; 10], |_, _| 1.0));
    let in_quadrature = combined(&[0.1; 10], |_, _| 0.0);
    assert!((in_quadrature - 0.1 * 10.0_f64.sqrt()).abs() < 1e-12, "without correlation: {in_quadrature}");
}

/// GUM H.2, raw rows: V in volts, I in milliamperes, phase in radians.
const H2: [[f64; 3]; 5] = [
    [5.007, 19.663, 1.0456],
    [4.994, 19.639, 1.0438],
    [5.005, 19.640, 1.0468],
    [4.990, 19.685, 1.0428],
    [4.999, 19.678, 1.0433],
];

#[test]
fn resistance_and_reactance_come_out_with_their_correlated_uncertainty() {
    let mean: [f64; 3] = std::array::from_fn(|i| H2.iter().map(|row| row[i]).sum::<f64>() / 5.0);
    // Covariance of two means of five (GUM equation 17).
    let covariance = |i: usize, j: usize| {
        H2.iter().map(|row| (row[i] - mean[i]) * (row[j] - mean[j])).sum::<f64>() / (5.0 * 4.0)
    };
    let u: [f64; 3] = std::array::from_fn(|i| covariance(i, i).sqrt());
    let r = |i: usize, j: usize| covariance(i, j) / (u[i] * u[j]);
    let [volts, amps, phase] = [mean[0], mean[1] / 1000.0, mean[2]];
    let u_amps = u[1] / 1000.0;

    let z = volts / amps;
    let (resistance, reactance) = (z * phase.cos(), z * phase.sin());
    let contributions = |of: f64, by_phase: f64| [of / volts * u[0], -of / amps * u_amps, by_phase * u[2]];

    published::row("gum_h2_R").agrees(resistance);
    published::row("gum_h2_uR").agrees(combined(&contributions(resistance, -reactance), r));
    published::row("gum_h2_X").agrees(reactance);
    published::row("gum_h2_uX").agrees(combined(&contributions(reactance, resistance), r));
    published::row("gum_h2_Z").agrees(z);
    published::row("gum_h2_uZ").agrees(combined(&contributions(z, 0.0), r));

    // What the example warns of: the correlation ignored.
    let ignored = combined(&contributions(resistance, -reactance), |_, _| 0.0);
    assert!((ignored - 0.195).abs() < 5e-4, "u(R) without correlation: {ignored}");
}

#[test]
fn the_normal_distribution_is_that_of_the_tables() {
    published::row("z_95").agrees(normal_quantile(0.95));
    published::row("z_99").agrees(normal_quantile(0.99));
    for p in [1e-9, 0.001, 0.05, 0.31, 0.5, 0.8, 0.975, 0.999] {
        assert!((normal_cdf(normal_quantile(p)) - p).abs() < 1e-9, "there and back at {p}");
    }
}

/// Half the 95 % interval of `trials` sums of four draws, by sorting.
fn half_width(trials: usize, mut draw: impl FnMut() -> f64) -> f64 {
    let mut sums: Vec<f64> = (0..trials).map(|_| draw() + draw() + draw() + draw()).collect();
    sums.sort_unstable_by(f64::total_cmp);
    (sums[trials * 39 / 40] - sums[trials / 40]) / 2.0
}

/// JCGM 101 9.2.2: for four normal quantities the law of propagation is exact.
#[test]
fn four_normal_quantities_have_the_published_interval() {
    published::row("s1_9_2_2")
        .agrees(COVERAGE_95 * combined(&[Distribution::Normal { sd: 1.0 }.u(); 4], |_, _| 0.0));
    let mut chance = Chance::seeded(922);
    published::row("s1_9_2_2").agrees(half_width(1_000_000, || chance.normal()));
}

/// JCGM 101 9.2.3: for four rectangular ones it is 1 % too wide, never too narrow.
#[test]
fn four_rectangular_quantities_have_the_published_interval() {
    let half = 3.0_f64.sqrt();
    let mut chance = Chance::seeded(923);
    published::row("s1_9_2_3").agrees(half_width(1_000_000, || chance.between(-half, half)));
    let first_order =
        COVERAGE_95 * combined(&[Distribution::Rectangular { half_width: half }.u(); 4], |_, _| 0.0);
    published::row("s1_9_2_2").agrees(first_order);
}

/// JCGM 106 8.3.2: accepted only from 2 u inside the limit, a light at that acceptance limit is wrongly accepted with 2.3 %.
#[test]
fn a_guard_band_of_two_standard_uncertainties_leaves_the_published_risk() {
    published::row("guard_2u").agrees(normal_cdf(-2.0));

    // The same as a decision: with confidence 1 - 2.275 % a reading bears the claim out from 2 u inside the limit on.
    let meter = MeterAccuracy { share: 0.0, fixed: Watts(3.0_f64.sqrt()) };
    let settings = Settings::new(0.10, 1.0 - normal_cdf(-2.0), meter).expect("sensible settings");
    let model = Model::new(Table::built_in()).expect("the built-in table fits its curves");
    let verdict = |reading: f64| {
        let listing = Listing {
            claim: Some(Watts(100.0)),
            reading: Some(MeterReading::Watts(Watts(reading))),
            ..Listing::default()
        };
        assess(&listing, &model, &settings).verdict
    };
    // Limit 90 W, u = 1 W.
    assert_eq!(verdict(92.01), Verdict::BorneOut);
    assert_eq!(verdict(91.99), Verdict::Unsettled);
    assert_eq!(verdict(88.01), Verdict::Unsettled);
    assert_eq!(verdict(87.99), Verdict::Overstated);
}
