//! Numbers for machines that read CSV: six significant digits, no trailing zeros, and an exponent only where plain digits
//! would run to a long row of zeros.

/// The most significant digits written.
const DIGITS: usize = 6;

const TENS: [f64; 13] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12];

/// `00` to `99`, each as two characters.
const PAIRS: [u16; 100] = {
    let mut pairs = [0; 100];
    let mut n = 0;
    while n < 100 {
        #[expect(clippy::cast_possible_truncation, reason = "a digit")]
        let (tens, ones) = ((n / 10) as u8, (n % 10) as u8);
        pairs[n] = u16::from_le_bytes([b'0' + tens, b'0' + ones]);
        n += 1;
    }
    pairs
};

/// 2^-17, the last power of two below 1e-5.
const FIRST: f64 = 7.629_394_531_25e-6;

/// For each power of two from [`FIRST`] up to 2^16, the last below 1e5: the decimals that make six significant digits from
/// there on, and the power of ten above it, from which on there is one decimal fewer. Between a power of two and the next
/// there is at most one.
const OCTAVES: [(usize, f64); 34] = {
    let limits = [1e-4, 1e-3, 1e-2, 1e-1, 1e0, 1e1, 1e2, 1e3, 1e4, 1e5];
    let mut octaves = [(0, 0.0); 34];
    let (mut n, mut below, mut power) = (0, 0, FIRST);
    while n < octaves.len() {
        if power >= limits[below] {
            below += 1;
        }
        octaves[n] = (10 - below, limits[below]);
        power *= 2.0;
        n += 1;
    }
    octaves
};

/// Appends `value` to `out`; a value under 1e-5 or from 1e12 up is written with an exponent: a
/// probability of 1e-200 would be two hundred zeros.
pub(super) fn six_digits(out: &mut Vec<u8>, value: f64) {
    if !(1e-5..1e5).contains(&value) {
        return outlying(out, value);
    }
    // Above bit 51 a positive double has its power of two (IEEE 754, binary64).
    #[expect(clippy::cast_possible_truncation, reason = "at most 33")]
    let octave = ((value.to_bits() >> 52) - (FIRST.to_bits() >> 52)) as usize;
    let (decimals, limit) = OCTAVES[octave];
    let mut decimals = decimals - usize::from(value >= limit);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "positive, at most 1000000")]
    let mut digits = (value * TENS[decimals] + 0.5) as u32;
    if digits == 1_000_000 {
        // Rounded up to the next power of ten.
        digits = 100_000;
        decimals -= 1;
    }
    place_point(out, six(digits), decimals);
}

/// What is not between 1e-5 and 1e5.
fn outlying(out: &mut Vec<u8>, value: f64) {
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
    if size < 1e5 {
        return six_digits(out, size);
    }
    // No fewer whole digits than significant ones: the rest are zeros.
    let spare = TENS[TENS.iter().filter(|ten| size >= **ten).count() - DIGITS];
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "positive and below 1e12")]
    let rounded = ((size / spare).round() * spare) as u64;
    out.extend_from_slice(itoa::Buffer::new().format(rounded).as_bytes());
}

/// Six digits as characters, the first in the lowest byte.
fn six(digits: u32) -> u64 {
    let pair = |n: u32| u64::from(PAIRS[n as usize % 100]);
    pair(digits / 10_000) | pair(digits / 100) << 16 | pair(digits) << 32
}

/// Appends six digits of which the last `decimals` (up to 10, more than six with zeros before the first) are behind the
/// point, without the zeros at their end.
fn place_point(out: &mut Vec<u8>, six: u64, decimals: usize) {
    const POINT: u64 = b'.' as u64;
    const ZERO_POINT: u64 = u16::from_le_bytes(*b"0.") as u64;
    // What differs from `0` is no zero.
    let zeros = ((six ^ 0x3030_3030_3030) << 16).leading_zeros() as usize / 8;
    let digits = DIGITS - zeros.min(decimals);
    let (text, length) = match DIGITS.checked_sub(decimals) {
        Some(whole @ 1..) => {
            let before = six & ((1 << (8 * whole)) - 1);
            let behind = six >> (8 * whole) << (8 * whole + 8);
            (before | POINT << (8 * whole) | behind, if digits > whole { digits + 1 } else { whole })
        }
        Some(0) => (ZERO_POINT | six << 16, digits + 2),
        None => {
            out.extend_from_slice(&b"0.0000"[..decimals - DIGITS + 2]);
            (six, digits)
        }
    };
    // All eight bytes at once, and those too many cut off: faster than a copy of so many as are needed.
    let length = out.len() + length;
    out.extend_from_slice(&text.to_le_bytes());
    out.truncate(length);
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
            (0.099_999_96, "0.1"),
            (1e-5, "0.00001"),
            (99_999.96, "100000"),
            (123_456.7, "123457"),
            (100.0, "100"),
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

        /// Which holds of the shortest digits that give a number.
        #[test]
        fn nothing_is_written_that_could_be_left_out(exponent in -5_i32..12, mantissa in 1.0..10.0_f64, digits in 0..7_i32) {
            // Rounded before, so that many end in zeros.
            let mantissa = (mantissa * 10.0_f64.powi(digits)).round() / 10.0_f64.powi(digits);
            let value = mantissa * 10.0_f64.powi(exponent);
            // A mantissa may round up to 10, and from there on an exponent is written.
            prop_assume!(value < 1e12);
            let written = text(value);
            prop_assert_eq!(written.parse::<f64>().unwrap().to_string(), written);
        }
    }
}
