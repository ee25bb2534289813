//! One cell: a number in the unit that its column stands for, or what is wrong with it.
//!
//! The limits tell one unit from another, not a good reading from a bad one: they are wider than any die of the table
//! can be.

use crate::facts::{Fault, Stated};
use crate::units::{Amps, Celsius, Volts};

/// Lowest and highest voltage of one die, volts. The table's dice drop 1.0 to 4.0 V at their test current, and at a
/// twentieth of it no more than half a volt less.
const VOLTS: (f64, f64) = (0.5, 6.0);

/// Highest current through one die, amperes: twice what the curve of the largest die of the table is good for
/// (5 times 500 mA).
const MOST_AMPS: f64 = 5.0;

/// Lowest and highest temperature of a die, degrees Celsius. Silicone and solder set the upper end (from memory).
const CELSIUS: (f64, f64) = (-40.0, 150.0);

/// The voltage of one die, and half a unit of its last digit.
///
/// # Errors
/// If it is no number above 0, in another unit, or not the voltage of one die.
pub(super) fn volts(text: &str) -> Result<(Volts, Volts), Fault> {
    let (low, high) = VOLTS;
    let Stated { value, half_digit } = positive("volts", text, "volts")?;
    if value < low {
        let accepted =
            format!("the volts of one die, {low} to {high}; see that volts and amps are not swapped");
        return Err(Fault::new("volts", text, accepted));
    }
    if (low * 1000.0..=high * 1000.0).contains(&value) {
        let accepted =
            format!("the volts of one die, {low} to {high}; for {value} mV write {}", value / 1000.0);
        return Err(Fault::new("volts", text, accepted));
    }
    if value > high {
        let accepted = format!(
            "the volts of one die, {low} to {high}; for dice in series write the volts divided by their number"
        );
        return Err(Fault::new("volts", text, accepted));
    }
    Ok((Volts(value), Volts(half_digit)))
}

/// The current through one die.
///
/// # Errors
/// If it is no number above 0, or in another unit.
pub(super) fn amps(text: &str) -> Result<Amps, Fault> {
    let value = positive("amps", text, "amperes")?.value;
    if value > MOST_AMPS {
        let hint = if value <= MOST_AMPS * 1000.0 {
            format!("for {value} mA write {}", value / 1000.0)
        } else {
            "for dice in parallel write the amperes divided by their number".to_owned()
        };
        let accepted = format!("the amperes through one die, above 0 and at most {MOST_AMPS}; {hint}");
        return Err(Fault::new("amps", text, accepted));
    }
    Ok(Amps(value))
}

/// The temperature of the die.
///
/// # Errors
/// If it is no number, in kelvins, or one that no die survives.
pub(super) fn celsius(text: &str) -> Result<Celsius, Fault> {
    let (low, high) = CELSIUS;
    let value = text.parse::<f64>().unwrap_or(f64::NAN);
    if (low..=high).contains(&value) {
        return Ok(Celsius(value));
    }
    let hint = if (low + 273.15..=high + 273.15).contains(&value) {
        format!("for {value} K write {:.2}", value - 273.15)
    } else {
        "leave it empty for 25".to_owned()
    };
    let accepted = format!("degrees Celsius, {low} to {high}; {hint}");
    Err(Fault::new("temperature_c", text, accepted))
}

fn positive(column: &str, text: &str, unit: &str) -> Result<Stated, Fault> {
    let accepted = || format!("a bare number of {unit} above 0, with a decimal point");
    let value: f64 = text.parse().map_err(|_| Fault::new(column, text, accepted()))?;
    if !(value.is_finite() && value > 0.0) {
        return Err(Fault::new(column, text, accepted()));
    }
    Ok(Stated { value, half_digit: half_digit(text) })
}

/// Half a unit of the last digit of a number that is known to be one: 0.05 for `2.2`, 0.5 for `2`, 0.00005 for `2.2e-3`.
fn half_digit(text: &str) -> f64 {
    let (digits, exponent) = text.split_once(['e', 'E']).unwrap_or((text, "0"));
    let decimals = digits.split_once('.').map_or(0, |(_, after)| after.len());
    let exponent: i32 = exponent.parse().unwrap_or(0);
    0.5 * 10.0_f64.powi(exponent.saturating_sub(i32::try_from(decimals).unwrap_or(i32::MAX)))
}

#[cfg(test)]
mod tests {
    use super::half_digit;

    #[test]
    fn half_a_digit_follows_the_decimals_and_the_exponent() {
        for (text, half) in
            [("2.2", 0.05), ("2", 0.5), ("2.20", 0.005), ("2.2e-3", 0.000_05), ("22e-1", 0.05)]
        {
            assert!((half_digit(text) / half - 1.0).abs() < 1e-12, "{text}");
        }
    }
}
