//! How the claimed figure seems to have been made.

use super::counted::Counted;
use super::own_words::{admitted_bounds, implied};
use super::settings::Settings;
use super::verdict::Basis;
use crate::facts::Listing;
use crate::uncertain::Uncertain;
use crate::units::Watts;

/// How close a claim must be to a product or to a replaced lamp to be taken as made from it, as a share.
const CLOSE: f64 = 0.01;

/// The first basis that fits, from the most telling to the least.
pub(super) fn basis(
    listing: &Listing<'_>,
    claim: Watts,
    measured: Option<Uncertain<Watts>>,
    counted: &Counted,
    settings: &Settings,
) -> Basis {
    let near = |figure: Watts| (claim - figure).0.abs() <= CLOSE * figure.0;
    let consistent =
        |low: Watts, high: Watts| high.0 >= settings.least(claim).0 && low.0 <= settings.most(claim).0;
    if listing.replaces.is_some_and(|lamp| near(lamp.watts)) {
        return Basis::Replacement;
    }
    let implied = listing.ppf.zip(listing.ppe).and_then(|(ppf, ppe)| implied(ppf, ppe));
    let draws =
        [measured.map(|m| (m.value, m.value)), listing.admitted.as_ref().map(admitted_bounds), implied];
    if draws.into_iter().flatten().any(|(low, high)| consistent(low, high)) {
        return Basis::Draw;
    }
    if counted.class_sum.is_some_and(|sum| near(sum) || same_two_digits(sum.0, claim.0)) {
        return Basis::ClassSum;
    }
    if let Some(draw) = &counted.draw
        && draw.common.0.0 <= claim.0
        && claim.0 <= draw.full.wall.value.0
    {
        return Basis::Draw;
    }
    Basis::Unexplained
}

/// Whether two values are equal in two significant digits, which none are that differ by a fifth.
fn same_two_digits(one: f64, other: f64) -> bool {
    (0.8..1.25).contains(&(one / other)) && two_digits(one) == two_digits(other)
}

/// The value to two significant digits, with its power of ten.
fn two_digits(value: f64) -> (i64, i32) {
    if value <= 0.0 {
        return (0, 0);
    }
    #[expect(
        clippy::cast_possible_truncation,
        reason = "the logarithm of any f64 fits an i32, two digits an i64"
    )]
    let exponent = value.log10().floor() as i32 - 1;
    #[expect(clippy::cast_possible_truncation, reason = "two digits")]
    let digits = (value / 10.0_f64.powi(exponent)).round() as i64;
    if digits == 100 { (10, exponent + 1) } else { (digits, exponent) }
}

#[cfg(test)]
mod tests {
    use super::{same_two_digits, two_digits};
    use proptest::prelude::*;

    #[test]
    fn two_digits_are_kept_with_their_power_of_ten() {
        assert_eq!(two_digits(2040.0), two_digits(2000.0));
        assert_eq!(two_digits(996.0), two_digits(1000.0));
        assert_ne!(two_digits(300.0), two_digits(3000.0));
        assert_ne!(two_digits(1080.0), two_digits(900.0));
        assert_eq!(two_digits(0.201), two_digits(0.2));
    }

    proptest! {
        #[test]
        fn values_that_differ_by_a_fifth_are_not_equal_in_two_digits(value in 0.001..1e6_f64, ratio in 0.5..2.0_f64) {
            let other = value * ratio;
            prop_assert_eq!(same_two_digits(value, other), two_digits(value) == two_digits(other));
        }
    }
}
