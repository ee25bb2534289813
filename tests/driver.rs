//! The least driver efficiency against Regulation (EU) 2019/2020, Annex II Table 3.

mod published;

use plainwatt::reference::driver::{ETA_HIGH, ETA_LOW_MOST, eta_low, least_efficiency};
use plainwatt::units::Watts;

#[test]
fn the_formula_gives_the_regulations_least_efficiency() {
    published::row("eta_25").agrees(least_efficiency(Watts(25.0)));
    published::row("eta_100").agrees(least_efficiency(Watts(100.0)));
    published::row("eta_200").agrees(least_efficiency(Watts(200.0)));
}

#[test]
fn the_lower_bound_never_falls_with_power_and_stays_under_the_upper() {
    const { assert!(ETA_LOW_MOST < ETA_HIGH) };
    let mut before = 0.0;
    for power in 1..=10_000 {
        let low = eta_low(Watts(f64::from(power) / 10.0));
        assert!(low >= before, "falls at {power} tenths of a watt");
        assert!(low > 0.0 && low <= ETA_LOW_MOST);
        before = low;
    }
    assert!((before - ETA_LOW_MOST).abs() < 1e-12, "a large light has the plateau");
}
