//! A cell as text.
//!
//! - A number is written as people type it, to 15 significant digits, which is the most that a spreadsheet shows (common
//!   practice, no source): the stored 0.30000000000000004 is 0.3. How the cell shows it (a currency, two decimals, per
//!   cent) is left aside: 35 % is 0.35.
//! - A date is `2026-03-05`, with a time `2026-03-05 14:30:00`, a time alone or a duration `14:30:00`: nothing that could be
//!   taken for a number.
//! - `TRUE` and `FALSE`, and errors such as `#N/A`, stand as spreadsheets show them.
//! - Of a formula the value counts that was last worked out. One that never was is no empty cell: it stands as an error.

use std::fmt::Write as _;

use calamine::{DataRef, ExcelDateTime};

/// What stands for a formula whose value was never worked out, as where a program has written the workbook.
pub const NEVER_CALCULATED: &str = "#formula never calculated";

/// Appends the text of a cell; nothing for an empty one.
pub(super) fn write(value: &DataRef<'_>, out: &mut String) {
    // Into memory: this cannot fail.
    let _ = match value {
        DataRef::Empty => Ok(()),
        DataRef::String(text) | DataRef::DateTimeIso(text) | DataRef::DurationIso(text) => {
            out.write_str(text)
        }
        DataRef::SharedString(text) => out.write_str(text),
        DataRef::Int(value) => write!(out, "{value}"),
        DataRef::Float(value) => {
            number(*value, out);
            Ok(())
        }
        DataRef::Bool(value) => out.write_str(if *value { "TRUE" } else { "FALSE" }),
        DataRef::DateTime(when) => {
            date(*when, out);
            Ok(())
        }
        DataRef::Error(error) => write!(out, "{error}"),
    };
}

/// Above this not every whole number is one of its own.
const WHOLE: f64 = 1e15;

fn number(value: f64, out: &mut String) {
    if value.abs() < WHOLE && value.fract() == 0.0 {
        #[expect(clippy::cast_possible_truncation, reason = "whole, and below 10^15")]
        out.push_str(itoa::Buffer::new().format(value as i64));
        return;
    }
    let begun = out.len();
    let _ = write!(out, "{value}");
    // A short text has no digit too many.
    if out.len() - begun > 16 {
        let rounded = format!("{value:.14e}").parse().unwrap_or(value);
        out.truncate(begun);
        let _ = write!(out, "{rounded}");
    }
}

fn date(when: ExcelDateTime, out: &mut String) {
    let days = when.as_f64();
    let _ = if when.is_duration() || days < 1.0 {
        let sign = if days < 0.0 { "-" } else { "" };
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "above 0; a cast saturates"
        )]
        let seconds = (days.abs() * 86_400.0).round() as u64;
        write!(out, "{sign}{:02}:{:02}:{:02}", seconds / 3600, seconds / 60 % 60, seconds % 60)
    } else {
        let (year, month, day, hour, minute, second, _) = when.to_ymd_hms_milli();
        let written = write!(out, "{year:04}-{month:02}-{day:02}");
        if days.fract() == 0.0 { written } else { write!(out, " {hour:02}:{minute:02}:{second:02}") }
    };
}

#[cfg(test)]
mod tests {
    use super::*;
    use calamine::{CellErrorType, ExcelDateTimeType};

    fn text(value: &DataRef<'_>) -> String {
        let mut out = String::new();
        write(value, &mut out);
        out
    }

    #[test]
    fn numbers_are_written_as_people_type_them() {
        for (value, expected) in [
            (300.0, "300"),
            (0.1 + 0.2, "0.3"),
            (28.5, "28.5"),
            (28.499_999_999_999_996, "28.5"),
            (1.0 / 3.0, "0.333333333333333"),
            (-0.0, "0"),
            (-12.25, "-12.25"),
            (4_012_345_678_901.0, "4012345678901"),
            (1e21, "1000000000000000000000"),
            (1e-7, "0.0000001"),
            (f64::INFINITY, "inf"),
        ] {
            assert_eq!(text(&DataRef::Float(value)), expected);
        }
    }

    #[test]
    fn dates_cannot_be_taken_for_numbers() {
        let when = |days, kind| text(&DataRef::DateTime(ExcelDateTime::new(days, kind, false)));
        assert_eq!(when(46_086.0, ExcelDateTimeType::DateTime), "2026-03-05");
        assert_eq!(when(46_086.5, ExcelDateTimeType::DateTime), "2026-03-05 12:00:00");
        assert_eq!(when(0.25, ExcelDateTimeType::DateTime), "06:00:00");
        assert_eq!(when(1.5, ExcelDateTimeType::TimeDelta), "36:00:00");
        assert_eq!(when(f64::NAN, ExcelDateTimeType::TimeDelta), "00:00:00");
    }

    #[test]
    fn what_is_no_number_stands_as_it_is_shown() {
        assert_eq!(text(&DataRef::Bool(true)), "TRUE");
        assert_eq!(text(&DataRef::Error(CellErrorType::NA)), "#N/A");
        assert_eq!(text(&DataRef::SharedString("24\" panel, \"new\"\nline")), "24\" panel, \"new\"\nline");
        assert_eq!(text(&DataRef::Empty), "");
    }
}
