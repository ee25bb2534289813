//! What was read from a title, with the words it was read from.

use std::fmt::Write as _;

use super::sanitise::terminal;
use super::style::Style;
use crate::facts::{LampKind, Left, LeftWhy, Read, Span};
use crate::units::Rounded;

/// The text with the used words marked, then each fact with its words, then what looks like a figure and was not taken.
///
/// Where nothing may be coloured the words are marked by brackets.
#[must_use]
pub fn words(text: &str, read: &Read, width: usize, style: Style) -> String {
    let taken = taken(read);
    let mut out = marked_at(text, &taken, width, style);
    out.push('\n');
    let quote = |span| quote(text, span);
    if taken.is_empty() {
        out.push_str("nothing was read from the title\n");
    }
    for (what, span) in &taken {
        line(&mut out, &format!("{what}, from {}", quote(*span)), "+ ", width);
    }
    for left in &read.left {
        line(&mut out, &format!("{} not taken: {}", quote(left.span), why(left.why)), "- ", width);
    }
    out
}

/// The text with the used words marked.
pub(super) fn marked(text: &str, read: &Read, width: usize, style: Style) -> String {
    marked_at(text, &taken(read), width, style)
}

/// What was taken from which words, in a sentence; absent where nothing was.
pub(super) fn from_where(text: &str, read: &Read) -> Option<String> {
    let each = |(what, span): &(String, Span)| format!("{what} from {}", quote(text, *span));
    let all: Vec<String> = taken(read).iter().map(each).collect();
    (!all.is_empty()).then(|| format!("taken: {}", all.join(", ")))
}

/// What looks like a figure and was not taken, in a sentence.
pub(super) fn left_out(text: &str, read: &Read) -> String {
    let each = |left: &Left| format!("{} ({})", quote(text, left.span), why(left.why));
    format!("not taken: {}", read.left.iter().map(each).collect::<Vec<_>>().join(", "))
}

fn quote(text: &str, span: Span) -> String {
    format!("\"{}\"", terminal(text.get(span.start..span.end).unwrap_or("")))
}

fn line(out: &mut String, words: &str, bullet: &str, width: usize) {
    let options = textwrap::Options::new(width).initial_indent(bullet).subsequent_indent("  ");
    out.push_str(&textwrap::fill(words, options));
    out.push('\n');
}

fn range(low: f64, high: f64) -> String {
    if (high - low).abs() < f64::EPSILON {
        Rounded(low).to_string()
    } else {
        format!("{} to {}", Rounded(low), Rounded(high))
    }
}

/// Every fact in words, in the order of the text.
pub(super) fn taken(read: &Read) -> Vec<(String, Span)> {
    let mut all: Vec<(String, Span)> = Vec::new();
    let mut add = |what: Option<(String, Span)>| all.extend(what);
    add(read.advertised_w.map(|t| (format!("claim {} W", Rounded(t.value.value)), t.span)));
    add(read.diode_count.map(|t| (format!("{} diodes", t.value), t.span)));
    add(read.class.map(|t| (format!("class {}", t.value), t.span)));
    add(read.actual_w.map(|t| (format!("admitted draw {} W", range(t.value.low.0, t.value.high.0)), t.span)));
    add(read.replaces.map(|t| {
        let kind = match t.value.kind {
            Some(LampKind::Hps) => "an HPS lamp",
            Some(LampKind::Mh) => "a metal halide lamp",
            Some(LampKind::Hid) => "an HID lamp",
            Some(LampKind::Incandescent) => "an incandescent lamp",
            Some(LampKind::Fluorescent) => "a fluorescent lamp",
            None => "a lamp",
        };
        (format!("compared with {kind} of {}", t.value.watts), t.span)
    }));
    add(read.ppf.map(|t| (format!("photon flux {} umol/s", Rounded(t.value.value)), t.span)));
    let bound = if read.ppe_is_bound { " at best" } else { "" };
    add(read.ppe.map(|t| (format!("photon efficacy {} umol/J{bound}", Rounded(t.value.value)), t.span)));
    add(read.volts.map(|t| (format!("{} V", range(t.value.0.value, t.value.1.value)), t.span)));
    add(read.amps.map(|t| (format!("{} A", t.value.value), t.span)));
    add(read.drive.map(|t| (format!("drive current {}", t.value), t.span)));
    add(read.units_in_pack.map(|t| (format!("a pack of {}", t.value), t.span)));
    add(read.package.map(|t| (format!("package {}", t.value.word()), t.span)));
    for colour in &read.colours {
        add(Some((format!("{} {}", colour.value.count, colour.value.colour.name()), colour.span)));
    }
    all.sort_by_key(|(_, span)| *span);
    all
}

fn marked_at(text: &str, taken: &[(String, Span)], width: usize, style: Style) -> String {
    // Marks are private characters until the text has been made safe and wrapped: neither may break a mark. The text's own
    // are replaced by a character of the same length, so that spans still fit.
    let text = &text.replace(['\u{e000}', '\u{e001}'], "\u{fffd}");
    let mut out = String::new();
    let mut from = 0;
    for (_, span) in taken {
        // Facts may share words; what is marked already is not marked again.
        let start = span.start.max(from);
        let (Some(before), Some(words)) = (text.get(from..start), text.get(start..span.end)) else {
            continue;
        };
        if words.is_empty() {
            continue;
        }
        out.push_str(before);
        let _ = write!(out, "\u{e000}{words}\u{e001}");
        from = span.end;
    }
    out.push_str(text.get(from..).unwrap_or(""));
    let safe = terminal(&out);
    let mut on = false;
    let mut painted = String::new();
    for line in textwrap::wrap(&safe, width.saturating_sub(2)) {
        for part in line.split_inclusive(['\u{e000}', '\u{e001}']) {
            let opens = part.ends_with('\u{e000}');
            let closes = part.ends_with('\u{e001}');
            let words = part.trim_end_matches(['\u{e000}', '\u{e001}']);
            match (on && style.coloured, words.is_empty()) {
                (true, false) => painted.push_str(&style.marked(words)),
                _ => painted.push_str(words),
            }
            if opens || closes {
                on = opens;
                if !style.coloured {
                    painted.push(if opens { '[' } else { ']' });
                }
            }
        }
        painted.push('\n');
    }
    painted
}

pub(super) fn why(why: LeftWhy) -> &'static str {
    match why {
        LeftWhy::ModelNumber => "it is part of a model or item number",
        LeftWhy::Dimension => "it is a dimension",
        LeftWhy::OtherDevice => "it belongs to another device",
        LeftWhy::OtherLight => "it belongs to another light",
        LeftWhy::LoadLimit => "it is how much may be connected",
        LeftWhy::FluxDensity => "it is a flux density at a distance, not the light's flux",
        LeftWhy::Equivalence => "it belongs to a lamp that the light is compared with",
        LeftWhy::Denied => "the text denies it",
        LeftWhy::Rhetoric => "it is said as a comparison, not as a figure",
        LeftWhy::Variant => "it is one of several variants, none of them selected",
        LeftWhy::NotFullPower => "it is not at full power",
        LeftWhy::Ratio => "it is a ratio, not a count",
        LeftWhy::Part => "it is a part of the light",
        LeftWhy::PackTotal => "it is the total of a pack",
        LeftWhy::Repeat => "it repeats the claim",
        LeftWhy::PerArea => "it is watts per length or area",
        LeftWhy::Outranked => "another figure takes precedence",
        LeftWhy::Unclear => "nothing says what it is",
        LeftWhy::BeyondLimit => "the text is longer than what is read",
    }
}
