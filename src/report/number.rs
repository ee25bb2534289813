//! Numbers for machines that read CSV: six significant digits, no trailing zeros, and an exponent only where plain digits
//! would run to a long row of zeros.

/// The most significant digits written.
const DIGITS: usize = 6;

const TENS: [f64; 13] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12];

/// Room for the longest number in plain digits: `0.`, four zeros and six digits, or twelve digits.
const LONGEST: usize = 16;

/// Appends `value` to `out`; a value under 1e-5 or from 1e12 up is written with an exponent: a
/// probability of 1e-200 would be two hundred zeros.
pub(super) fn six_digits(out: &mut Vec<u8>, value: f64) {
    let size = value.abs();
    if size == 0.0 {
        out.push(b'0');
        return;
    }
    if !(1e-5..1e12).contains(&size) {
        let rounded = format!("{value:.5e}").parse().unwrap_or(value);
        out.extend_from_slice(format!("{rounded:e}").as_bytes());
        return;
    }
    if value < 0.0 {
        out.push(b'-');
    }
    if size >= TENS[DIGITS] {
        // More whole digits than significant ones: the rest are zeros.
        let spare = TENS[TENS.iter().filter(|ten| size >= **ten).count() - DIGITS];
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "positive and below 1e12"
        )]
        let rounded = ((size / spare).round() * spare) as u64;
        out.extend_from_slice(itoa::Buffer::new().format(rounded).as_bytes());
        return;
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "positive, below 1000000")]
    let whole = size as u32;
    if size.to_bits() == f64::from(whole).to_bits() {
        out.extend_from_slice(itoa::Buffer::new().format(whole).as_bytes());
        return;
    }
    // Decimals that make six significant digits: 0.0123456 has its first digit in the second decimal.
    let over = |limit: f64| usize::from(size >= limit);
    let mut decimals = if size >= 1.0 {
        5 - (over(1e1) + over(1e2) + over(1e3) + over(1e4) + over(1e5))
    } else {
        10 - (over(1e-1) + over(1e-2) + over(1e-3) + over(1e-4))
    };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "positive, at most 1000000")]
    let mut digits = (size * TENS[decimals] + 0.5) as u32;
    while decimals > 0 && digits.is_multiple_of(10) {
        digits /= 10;
        decimals -= 1;
    }
    let mut buffer = itoa::Buffer::new();
    let digits = buffer.format(digits).as_bytes();
    if decimals == 0 {
        out.extend_from_slice(digits);
        return;
    }
    let mut text = [b'0'; LONGEST];
    let length = if digits.len() > decimals {
        let point = digits.len() - decimals;
        text[..point].copy_from_slice(&digits[..point]);
        text[point] = b'.';
        text[point + 1..=digits.len()].copy_from_slice(&digits[point..]);
        digits.len() + 1
    } else {
        text[1] = b'.';
        let length = 2 + decimals;
        text[length - digits.len()..length].copy_from_slice(digits);
        length
    };
    out.extend_from_slice(&text[..length]);
}

#[cfg(test)]
mod tests {
    use super::six_digits;
    use proptest::prelude::*;

    fn text(value: f64) -> String {
        let mut out = Vec::new();
        six_digits(&mut out, value);
        String::from_utf8(out).unwrap()
    }

    #[test]
    fn six_digits_without_trailing_zeros() {
        for (value, expected) in [
            (0.0, "0"),
            (300.0, "300"),
            (0.669, "0.669"),
            (200.612_345, "200.612"),
            (1_234_567.0, "1234570"),
            (999_999.6, "1000000"),
            (0.000_123_456_7, "0.000123457"),
            (0.1, "0.1"),
            (12.0005, "12.0005"),
            (-3.25, "-3.25"),
            (9.999_999_9, "10"),
            (5.949_690_181e-9, "5.94969e-9"),
            (1e-200, "1e-200"),
            (2.5e15, "2.5e15"),
        ] {
            assert_eq!(text(value), expected);
        }
    }

    proptest! {
        #[test]
        fn what_is_written_is_within_half_a_unit_of_the_sixth_digit(exponent in -20_i32..20, mantissa in 1.0..10.0_f64) {
            let value = mantissa * 10.0_f64.powi(exponent);
            let written: f64 = text(value).parse().unwrap();
            prop_assert!((written - value).abs() <= value * 5.01e-6 / mantissa);
        }
    }
}
