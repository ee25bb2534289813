//! Values typed as flags -> facts. Each error names the flag, what was found and what is accepted.

use anyhow::{Result, anyhow};

use crate::circuit::Circuit;
use crate::comparison::MeterAccuracy;
use crate::counting;
use crate::facts::{
    Admitted, LampKind, MeterReading, Replaced, Stated, StatedClass, Supply, Tally, Tolerance,
};
use crate::intake::{printed, quantity};
use crate::report::sanitise::terminal;
use crate::units::{Amps, Volts, Watts};

fn refused(flag: &str, text: &str, accepted: &str) -> anyhow::Error {
    anyhow!("--{flag}: found '{}', accepted: {accepted}", terminal(text))
}

fn above_zero(flag: &str, text: &str, unit: &str, accepted: &str) -> Result<Stated> {
    printed(text, unit)
        .filter(|s| s.value > 0.0 && s.value.is_finite())
        .ok_or_else(|| refused(flag, text, accepted))
}

/// Watts above 0.
pub(super) fn watts(flag: &str, text: &str) -> Result<Watts> {
    Ok(Watts(above_zero(flag, text, "W", "watts above 0, such as 300 or 28.5W")?.value))
}

/// Hours a day, above 0 up to 24.
pub(super) fn hours(text: &str) -> Result<f64> {
    quantity(text, "h")
        .filter(|h| *h > 0.0 && *h <= 24.0)
        .ok_or_else(|| refused("hours", text, "hours a day above 0 and at most 24, such as 12"))
}

/// A currency's name or sign: no digits, which would run into the amounts.
pub(super) fn currency(text: &str) -> Result<String> {
    let text = text.trim();
    let plain = |c: char| !c.is_ascii_digit() && !c.is_whitespace() && !c.is_control();
    if text.chars().count() <= 8 && text.chars().all(plain) {
        return Ok(text.to_owned());
    }
    Err(refused("currency", text, "a short name or sign, such as EUR"))
}

/// `600W HPS`, or watts alone.
pub(super) fn replaced(text: &str) -> Result<Replaced> {
    let accepted =
        "watts and the kind of lamp (HPS, MH, CMH, HID, incandescent, fluorescent), such as \"600W HPS\"";
    let wrong = || refused("replaces", text, accepted);
    let letters = |c: char| c.is_alphabetic();
    let word = text.trim().rsplit([' ', '-']).next().filter(|w| w.len() > 1 && w.chars().all(letters));
    let (number, kind) = match word {
        None => (text, None),
        Some(word) => {
            let kind = match word.to_lowercase().as_str() {
                "hps" => LampKind::Hps,
                "mh" | "cmh" => LampKind::Mh,
                "hid" => LampKind::Hid,
                "incandescent" => LampKind::Incandescent,
                "fluorescent" => LampKind::Fluorescent,
                _ => return Err(wrong()),
            };
            (text.trim()[..text.trim().len() - word.len()].trim_end_matches([' ', '-']), Some(kind))
        }
    };
    let watts = above_zero("replaces", number, "W", accepted).map_err(|_| wrong())?;
    Ok(Replaced { watts: Watts(watts.value), kind })
}

/// Milliamperes above 0.
pub(super) fn drive(flag: &str, text: &str) -> Result<Amps> {
    Ok(Amps::from_ma(
        above_zero(flag, text, "mA", "milliamperes above 0 through each diode, such as 700")?.value,
    ))
}

/// A number above 0 with its printed precision.
pub(super) fn figure(flag: &str, text: &str, accepted: &str) -> Result<Stated> {
    above_zero(flag, text, "", accepted)
}

/// An amount of money above 0; `.3` is read too.
pub(super) fn money(flag: &str, text: &str, accepted: &str) -> Result<Stated> {
    let text = text.trim();
    let whole = if text.starts_with('.') { format!("0{text}") } else { text.to_owned() };
    above_zero(flag, &whole, "", accepted).map_err(|_| {
        if text.contains(',') {
            refused(flag, text, &format!("{accepted}, with a point and not a comma before the decimals"))
        } else {
            refused(flag, text, accepted)
        }
    })
}

/// Diodes in the counting notation; the error shows the place under the text.
pub(super) fn tally(text: &str) -> Result<Tally> {
    counting::tally(text).map_err(|error| anyhow!("--tally: {error}\n\n{}", indented(&error.pointer(text))))
}

/// A class.
pub(super) fn class(text: &str) -> Result<StatedClass> {
    counting::class(text).map_err(|error| anyhow!("--class: {error}\n\n{}", indented(&error.pointer(text))))
}

fn indented(text: &str) -> String {
    text.lines().map(|line| format!("  {line}")).collect::<Vec<_>>().join("\n")
}

/// `135W`, or `120.4V 1.18A pf 0.97` in any order, or volts and amperes alone.
pub(super) fn reading(text: &str) -> Result<MeterReading> {
    let accepted =
        "watts such as 135W, or \"120.4V 1.18A pf 0.97\" with a power factor above 0 and at most 1";
    let wrong = || refused("measured", text, accepted);
    let words = spaced(text);
    let (mut volts, mut amps, mut factor, mut plain) = (None, None, None, None);
    let mut words = words.iter().map(String::as_str);
    while let Some(word) = words.next() {
        let lower = word.to_lowercase();
        if lower == "pf" {
            let value = words.next().and_then(|next| quantity(next, "")).ok_or_else(wrong)?;
            set(&mut factor, value).ok_or_else(wrong)?;
        } else if let Some(rest) = lower.strip_prefix("pf") {
            let value = quantity(rest.trim_start_matches(['=', ':']), "").ok_or_else(wrong)?;
            set(&mut factor, value).ok_or_else(wrong)?;
        } else if lower.ends_with('v') {
            set(&mut volts, quantity(word, "V").ok_or_else(wrong)?).ok_or_else(wrong)?;
        } else if lower.ends_with('a') {
            set(&mut amps, quantity(word, "A").ok_or_else(wrong)?).ok_or_else(wrong)?;
        } else {
            set(&mut plain, quantity(word, "W").ok_or_else(wrong)?).ok_or_else(wrong)?;
        }
    }
    let positive = |v: &f64| *v > 0.0 && v.is_finite();
    match (plain, volts, amps, factor) {
        (Some(watts), None, None, None) if positive(&watts) => Ok(MeterReading::Watts(Watts(watts))),
        (None, Some(volts), Some(amps), Some(power_factor))
            if positive(&volts) && positive(&amps) && power_factor > 0.0 && power_factor <= 1.0 =>
        {
            Ok(MeterReading::Factors { volts: Volts(volts), amps: Amps(amps), power_factor })
        }
        (None, Some(volts), Some(amps), None) if positive(&volts) && positive(&amps) => {
            Ok(MeterReading::VoltAmps { volts: Volts(volts), amps: Amps(amps) })
        }
        _ => Err(wrong()),
    }
}

fn set<T>(place: &mut Option<T>, value: T) -> Option<()> {
    place.is_none().then(|| *place = Some(value))
}

/// Words with a number and its unit drawn together: `120.4 V` is one word.
fn spaced(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split([' ', ',', ';', '\t']).filter(|w| !w.is_empty()) {
        match words.last_mut() {
            Some(last)
                if ["v", "a", "w", "va"].contains(&word.to_lowercase().as_str())
                    && last.ends_with(|c: char| c.is_ascii_digit()) =>
            {
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

/// `2% + 0.5W`, either part alone, in either order.
pub(super) fn meter(text: &str) -> Result<MeterAccuracy> {
    let accepted = "a share and a fixed part, such as \"1% + 0.2W\", \"1%\" or \"0.5W\", not both 0";
    let wrong = || refused("meter", text, accepted);
    let (mut share, mut fixed) = (None, None);
    for part in text.split('+').map(str::trim) {
        if part.ends_with('%') {
            set(&mut share, quantity(part, "%").ok_or_else(wrong)? / 100.0).ok_or_else(wrong)?;
        } else {
            set(&mut fixed, quantity(part, "W").ok_or_else(wrong)?).ok_or_else(wrong)?;
        }
    }
    let (share, fixed) = (share.unwrap_or(0.0), fixed.unwrap_or(0.0));
    // A meter without any error would make an uncertainty of zero out of one that is not known.
    if share >= 1.0 || (share <= 0.0 && fixed <= 0.0) {
        return Err(wrong());
    }
    Ok(MeterAccuracy { share, fixed: Watts(fixed) })
}

/// `185W`, `110-120W`, `185W±5%`, `65W ± 2W`.
pub(super) fn admitted(text: &str) -> Result<Admitted> {
    let accepted = "watts above 0, such as 185W, a range such as 110-120W with the lower first, or 185W±5%";
    let wrong = || refused("admits", text, accepted);
    let text_plain = text.replace("+/-", "\u{b1}").replace("+-", "\u{b1}");
    let (figure, tolerance) = match text_plain.split_once('\u{b1}') {
        None => (text_plain.as_str(), None),
        Some((figure, tolerance)) => {
            let tolerance = tolerance.trim();
            let tolerance = if tolerance.ends_with('%') {
                let share = quantity(tolerance, "%").ok_or_else(wrong)? / 100.0;
                (share < 1.0).then_some(Tolerance::Share(share))
            } else {
                quantity(tolerance, "W").map(|w| Tolerance::Watts(Watts(w)))
            };
            (figure, Some(tolerance.ok_or_else(wrong)?))
        }
    };
    let figure = figure.replace(['\u{2013}', '~'], "-");
    let (low, high) = match figure.split_once('-') {
        None => (figure.as_str(), figure.as_str()),
        Some((low, high)) => (low, high),
    };
    let watts = |text: &str| quantity(text, "W").filter(|w| *w > 0.0 && w.is_finite()).ok_or_else(wrong);
    let (low, high) = (watts(low)?, watts(high)?);
    if low > high {
        return Err(wrong());
    }
    Ok(Admitted { low: Watts(low), high: Watts(high), tolerance })
}

/// `120V 15A`: a circuit of one phase.
pub(super) fn circuit(text: &str) -> Result<Circuit> {
    let accepted = "volts up to 300 (one phase) and the breaker's amperes, such as \"120V 15A\"";
    let wrong = || refused("circuit", text, accepted);
    let supply = supply(text).map_err(|_| wrong())?;
    if supply.volts.value > 300.0 {
        return Err(wrong());
    }
    Ok(Circuit { volts: Volts(supply.volts.value), breaker: Amps(supply.amps.value) })
}

/// `120V 0.6A`, in either order; the printed precision is kept, since rounding is allowed for.
pub(super) fn supply(text: &str) -> Result<Supply> {
    let accepted = "volts and amperes above 0, such as \"120V 0.6A\"";
    let wrong = || refused("supply", text, accepted);
    let (mut volts, mut amps) = (None, None);
    for word in spaced(&text.replace(['@', '/'], " ")) {
        if word.ends_with(['v', 'V']) {
            set(&mut volts, above_zero("supply", &word, "V", accepted).map_err(|_| wrong())?)
                .ok_or_else(wrong)?;
        } else {
            if !word.ends_with(['a', 'A']) {
                return Err(wrong());
            }
            set(&mut amps, above_zero("supply", &word, "A", accepted).map_err(|_| wrong())?)
                .ok_or_else(wrong)?;
        }
    }
    match (volts, amps) {
        (Some(volts), Some(amps)) => Ok(Supply { volts, amps }),
        _ => Err(wrong()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_is_watts_or_its_factors() {
        assert_eq!(reading("135W").unwrap(), MeterReading::Watts(Watts(135.0)));
        assert_eq!(reading("135").unwrap(), MeterReading::Watts(Watts(135.0)));
        let factors = MeterReading::Factors { volts: Volts(120.4), amps: Amps(1.18), power_factor: 0.97 };
        for text in ["120.4V 1.18A pf 0.97", "1.18 A, 120.4 V, PF=0.97", "pf0.97 120.4v 1.18a"] {
            assert_eq!(reading(text).unwrap(), factors, "{text}");
        }
        assert_eq!(
            reading("230V 0.6A").unwrap(),
            MeterReading::VoltAmps { volts: Volts(230.0), amps: Amps(0.6) }
        );
        for text in
            ["", "-5W", "0W", "NaN", "120V", "120V 1A pf 1.2", "120V 1A pf 0", "135W 120V", "120V 110V 1A"]
        {
            assert!(reading(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_replaced_lamp_is_watts_with_or_without_a_kind() {
        let hps = Replaced { watts: Watts(600.0), kind: Some(LampKind::Hps) };
        for text in ["600W HPS", "600 hps", "600 W HPS", "600W-HPS"] {
            assert_eq!(replaced(text).unwrap(), hps, "{text}");
        }
        assert_eq!(replaced("600").unwrap(), Replaced { kind: None, ..hps });
        assert_eq!(replaced("600 W").unwrap(), Replaced { kind: None, ..hps });
        for text in ["", "HPS", "600 suns", "-600 HPS", "0W HPS"] {
            assert!(replaced(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_meter_has_a_share_a_fixed_part_or_both() {
        assert_eq!(meter("1% + 0.2W").unwrap(), MeterAccuracy { share: 0.01, fixed: Watts(0.2) });
        assert_eq!(meter("0.5 W").unwrap(), MeterAccuracy { share: 0.0, fixed: Watts(0.5) });
        for text in ["", "0%", "0% + 0W", "-1%", "1% + 2%", "100%"] {
            assert!(meter(text).is_err(), "{text}");
        }
    }

    #[test]
    fn an_admitted_draw_is_a_figure_a_range_or_one_with_a_tolerance() {
        let range = admitted("110-120W").unwrap();
        assert_eq!((range.low, range.high, range.tolerance), (Watts(110.0), Watts(120.0), None));
        assert_eq!(admitted("185W +-5%").unwrap().tolerance, Some(Tolerance::Share(0.05)));
        assert_eq!(admitted("65W ± 2W").unwrap().tolerance, Some(Tolerance::Watts(Watts(2.0))));
        for text in ["120-110W", "-5W", "0", "185W±", "185W±200%", "a lot"] {
            assert!(admitted(text).is_err(), "{text}");
        }
    }
}
