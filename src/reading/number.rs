//! Numbers as listings print them: `1,200` `1.200` `1'000` `28,5` `0,12` `１０００`, no-break spaces and zero-width signs.
//!
//! A comma, full stop or apostrophe before exactly three digits groups thousands, unless a zero stands alone before it;
//! before any other number of digits it is a decimal sign. `1.250` is therefore 1250, but the unit may know better (nobody
//! sells 2750 umol/J), so a single grouping full stop is marked and [`Printed::as_decimal`] undoes it.

use super::fold::{Fold, Mark, next, past_skips};
use super::words::{before_first, eight};

/// A number as printed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Printed {
    /// Its value.
    pub value: f64,
    /// Half a unit of the last digit.
    pub half: f64,
    /// How many digits before the decimal sign.
    pub digits: u8,
    /// One full stop or comma before three digits: thousands, or a decimal sign after all.
    pub doubtful: bool,
    /// Has decimals.
    pub decimal: bool,
}

impl Printed {
    /// The same digits with the doubtful sign read as a decimal sign.
    pub(super) fn as_decimal(self) -> Self {
        if self.doubtful {
            Self {
                value: self.value / 1000.0,
                half: self.half / 1000.0,
                doubtful: false,
                decimal: true,
                ..self
            }
        } else {
            self
        }
    }
}

/// Reads digits from `at` on, up to the first character that is none: their value, number and the byte after them.
#[inline]
fn group(text: &str, mut at: usize) -> (f64, u32, usize) {
    let bytes = text.as_bytes();
    let (mut small, mut count) = (0u32, 0u32);
    while count < 9 && at < bytes.len() && bytes[at].is_ascii_digit() {
        small = small * 10 + u32::from(bytes[at] - b'0');
        count += 1;
        at += 1;
    }
    let mut value = f64::from(small);
    let mut end = at;
    while at < bytes.len() {
        let b = bytes[at];
        if b.is_ascii_digit() {
            value = value * 10.0 + f64::from(b - b'0');
            count += 1;
            at += 1;
            end = at;
        } else if b < 0x80 && b != b'&' {
            break;
        } else {
            match next(text, at) {
                Some((Fold::Digit(d), length)) => {
                    value = value * 10.0 + f64::from(d);
                    count += 1;
                    at += length;
                    end = at;
                }
                Some((Fold::Skip, length)) => at += length,
                _ => break,
            }
        }
    }
    (value, count, end)
}

/// Reads the number that starts at `start`, where a digit is; returns the byte after its last digit too.
#[inline]
pub(super) fn read(text: &str, start: usize) -> (Printed, usize) {
    let bytes = text.as_bytes();
    let (value, digits) = short(eight(bytes, start));
    let end = start + digits;
    let ends =
        bytes.get(end).is_none_or(|&b| b < 0x80 && !matches!(b, b'0'..=b'9' | b',' | b'.' | b'\'' | b'&'));
    if digits > 0 && ends {
        #[expect(clippy::cast_possible_truncation, reason = "at most eight")]
        let digits = digits as u8;
        return (
            Printed { value: f64::from(value), half: 0.5, digits, doubtful: false, decimal: false },
            end,
        );
    }
    long(text, start)
}

/// The value of the ASCII digits at the start of eight bytes, all worked out at once, and how many there are.
#[inline]
fn short(eight: u64) -> (u32, usize) {
    const EACH: u64 = u64::MAX / 0xff;
    let digits = eight ^ (EACH * 0x30);
    // A byte above 9 gets its top bit set; its carry reaches only bytes after it.
    let other = (digits.wrapping_add(EACH * (0x80 - 10)) | digits) & (EACH * 0x80);
    let count = other.trailing_zeros() / 8;
    // To the top, zeros before them; then pairs, fours and all eight.
    let ones = (digits & before_first(other)).wrapping_shl(64 - 8 * count);
    let pairs = (ones.wrapping_mul(10) + (ones >> 8)) & 0x00ff_00ff_00ff_00ff;
    let fours = (pairs.wrapping_mul(100) + (pairs >> 16)) & 0x0000_ffff_0000_ffff;
    let value = (fours.wrapping_mul(10_000) + (fours >> 32)) & 0xffff_ffff;
    (value as u32, count as usize)
}

/// A number with separators, decimals, more than eight digits or digits that are not ASCII.
#[inline(never)]
fn long(text: &str, start: usize) -> (Printed, usize) {
    let bytes = text.as_bytes();
    let (mut value, first, mut end) = group(text, start);
    let mut number = Printed { value, half: 0.5, digits: digits(first), doubtful: false, decimal: false };
    let (mut groups, mut grouped_by) = (0, None);
    loop {
        let at = past_skips(text, end);
        let sign = match bytes.get(at) {
            Some(b',') => (Fold::Mark(Mark::Comma), 1),
            Some(b'.') => (Fold::Mark(Mark::Stop), 1),
            Some(b'\'') => (Fold::Mark(Mark::Foot), 1),
            Some(0x80..) => match next(text, at) {
                Some((
                    sign @ (Fold::Mark(Mark::Comma | Mark::Stop | Mark::Foot) | Fold::Space { joins: true }),
                    n,
                )) => (sign, n),
                _ => break,
            },
            Some(b'&') => match next(text, at) {
                Some((sign @ (Fold::Space { joins: true } | Fold::Mark(Mark::Foot)), n)) => (sign, n),
                _ => break,
            },
            _ => break,
        };
        let after = at + sign.1;
        let (more, length, stop) = group(text, after);
        if length == 0 {
            break;
        }
        let points = matches!(sign.0, Fold::Mark(Mark::Comma | Mark::Stop));
        let same = grouped_by.is_none_or(|s| s == sign.0);
        if length == 3 && first <= 3 && value > 0.0 && same {
            value = value * 1000.0 + more;
            groups += 1;
            grouped_by = Some(sign.0);
            end = stop;
            number.doubtful = points && groups == 1;
            number.digits = number.digits.saturating_add(3);
        } else if points && (groups == 0 || !same) {
            let scale = 10f64.powi(i32::try_from(length.min(300)).unwrap_or(300));
            value += more / scale;
            number.half = 0.5 / scale;
            number.doubtful = false;
            number.decimal = true;
            end = stop;
            break;
        } else {
            break;
        }
    }
    (Printed { value, ..number }, end)
}

fn digits(count: u32) -> u8 {
    u8::try_from(count).unwrap_or(u8::MAX)
}
