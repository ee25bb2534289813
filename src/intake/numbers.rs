//! Numbers as people type them into cells and flags.

use crate::facts::Stated;

/// What a number may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Number {
    Plain,
    /// With a comma before every three digits.
    Grouped,
}

/// A number with its unit, if one is written, which must be `unit`: `300`, `300 W`, `1,200`, `28.5w`. `None` if the text
/// is anything else; a decimal comma is not read, since `1,200` would then have two meanings.
#[must_use]
pub fn quantity(text: &str, unit: &str) -> Option<f64> {
    printed(text, unit).map(|stated| stated.value)
}

/// As [`quantity`], with half a unit of the last digit printed.
#[must_use]
pub fn printed(text: &str, unit: &str) -> Option<Stated> {
    if let Some(value) = plain(text) {
        return Some(Stated { value, half_digit: 0.5 });
    }
    let text = text.trim();
    let cut = text.len().checked_sub(unit.len());
    let number = match cut {
        Some(cut)
            if !unit.is_empty() && text.is_char_boundary(cut) && text[cut..].eq_ignore_ascii_case(unit) =>
        {
            text[..cut].trim_end()
        }
        _ => text,
    };
    amount(number)
}

/// A bare number, above all without an exponent, a sign or a word such as `inf`.
#[must_use]
pub fn amount(number: &str) -> Option<Stated> {
    if let Some(value) = plain(number) {
        return Some(Stated { value, half_digit: 0.5 });
    }
    let kind = kind(number)?;
    let decimals = number.rfind('.').map_or(0, |point| number.len() - point - 1);
    let value: f64 = match kind {
        Number::Plain => number.parse().ok()?,
        Number::Grouped => number.replace(',', "").parse().ok()?,
    };
    let half_digit = 0.5 * 10.0_f64.powi(-i32::try_from(decimals).ok()?);
    Some(Stated { value, half_digit })
}

/// A short whole number without the general parser: most cells of a catalogue are one.
fn plain(number: &str) -> Option<f64> {
    short_whole(number).map(f64::from)
}

/// A whole number of one to nine digits and nothing else.
#[inline]
pub(super) fn short_whole(number: &str) -> Option<u32> {
    if number.is_empty() || number.len() > 9 {
        return None;
    }
    let mut value = 0_u32;
    for byte in number.bytes() {
        let digit = byte.wrapping_sub(b'0');
        if digit > 9 {
            return None;
        }
        value = value * 10 + u32::from(digit);
    }
    Some(value)
}

fn kind(number: &str) -> Option<Number> {
    let (whole, fraction) = match number.split_once('.') {
        Some((whole, fraction)) => (whole, Some(fraction)),
        None => (number, None),
    };
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    if fraction.is_some_and(|f| !digits(f)) {
        return None;
    }
    if digits(whole) {
        return Some(Number::Plain);
    }
    let mut groups = whole.split(',');
    let first = groups.next()?;
    let grouped = digits(first) && first.len() <= 3 && groups.all(|g| g.len() == 3 && digits(g));
    grouped.then_some(Number::Grouped)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_as_people_type_them() {
        for (text, unit, value, half) in [
            ("300", "W", 300.0, 0.5),
            (" 300 W ", "W", 300.0, 0.5),
            ("28.5w", "W", 28.5, 0.05),
            ("1,200", "W", 1200.0, 0.5),
            ("12,345,678.25", "", 12_345_678.25, 0.005),
            ("0.60", "A", 0.6, 0.005),
        ] {
            let stated = printed(text, unit).unwrap();
            assert!(
                (stated.value - value).abs() < 1e-12 && (stated.half_digit - half).abs() < 1e-12,
                "{text}"
            );
        }
    }

    #[test]
    fn what_is_not_surely_a_number_is_none() {
        for text in [
            "", "W", "-3", "+3", "1e3", "inf", "NaN", "28,5", "1,20", ",200", "1.", ".5", "3 W W", "３",
            "1 200",
        ] {
            assert_eq!(printed(text, "W"), None, "{text}");
        }
    }
}
