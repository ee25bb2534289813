//! Markdown, for a page or an issue.

use std::fmt::Write as _;

use super::sanitise::markdown;
use super::style::Style;
use super::{Light, Run, UNREADABLE, Unreadable};
use crate::comparison::{honest_label, sentence};
use crate::units::Rounded;

/// The header of the verdict table.
pub const HEADER: &str = "| listing | supplier | claim W | wall draw W (95 %) | share | verdict | evidence | basis |\n\
                          |---|---|---:|---:|---:|---|---|---|\n";

/// Appends the table row of a light.
pub fn row(out: &mut Vec<u8>, light: Light<'_>) {
    let (listing, assessment) = (light.listing, light.assessment);
    let draws = match (assessment.measured, &assessment.counted.draw) {
        (Some(measured), _) => format!("{} measured", Rounded(measured.value.0)),
        (None, Some(draw)) => {
            let (low, high) = draw.full.wall_interval();
            format!("{} to {}", Rounded(low.0), Rounded(high.0))
        }
        (None, None) => String::new(),
    };
    let row = format!(
        "| {} | {} | {} | {draws} | {} | {} | {} | {} |\n",
        markdown(listing.name.as_deref().or(listing.title.as_deref()).unwrap_or("")),
        markdown(listing.supplier.as_deref().unwrap_or("")),
        listing.claim.map(|w| Rounded(w.0).to_string()).unwrap_or_default(),
        assessment.share.map(|s| format!("{:.0} %", s * 100.0)).unwrap_or_default(),
        assessment.verdict.word(),
        assessment.evidence.word(),
        assessment.basis.map_or("", |b| b.word()),
    );
    out.extend_from_slice(row.as_bytes());
}

/// Appends the table row of a listing that could not be read.
pub fn unreadable(out: &mut Vec<u8>, row: Unreadable<'_>) {
    let column = row.fault.column.as_deref().unwrap_or("row");
    let text = format!(
        "| {} | {} |  |  |  | {UNREADABLE} | {}: found {} |  |\n",
        markdown(row.name.unwrap_or("")),
        markdown(row.supplier.unwrap_or("")),
        markdown(column),
        markdown(&row.fault.found),
    );
    out.extend_from_slice(text.as_bytes());
}

/// One light as a short section.
#[must_use]
pub fn light(run: Run<'_>, light: Light<'_>) -> String {
    let (listing, assessment) = (light.listing, light.assessment);
    let mut text = String::new();
    if let Some(title) = &listing.title {
        let _ = writeln!(text, "**{}**\n", markdown(title));
    }
    let _ = writeln!(text, "{}\n", markdown(&sentence(listing, assessment)));
    if let Some(draw) = &assessment.counted.draw {
        text.push_str(
            "| colour | class | count | mA | V | W each | W |\n|---|---|---:|---:|---:|---:|---:|\n",
        );
        for part in &draw.parts {
            let class = run.model.table().class(part.class);
            let point = draw.package_at_full(run.model, part);
            let _ = writeln!(
                text,
                "| {} | {} | {} | {:.0} | {:.2} | {:.2} | {:.1} |",
                part.colour.name(),
                class.name,
                part.count.number,
                point.die_current.ma() * f64::from(class.parallel),
                point.die_voltage.0 * f64::from(class.series),
                point.watts.0,
                point.watts.0 * f64::from(part.count.number)
            );
        }
        text.push('\n');
    }
    let mut named = super::worth::lines(run, light);
    if light.circuit.is_some() {
        named.extend(super::load::lines(light));
    }
    for (name, value) in &named {
        let colon = if name.is_empty() { "" } else { ": " };
        let _ = writeln!(text, "- {}{colon}{}", name.trim(), markdown(value));
    }
    for figure in &assessment.figures {
        let _ = writeln!(text, "- {}", markdown(&super::figures::coded_claim(figure, Style::PLAIN)));
    }
    for reason in &assessment.reasons {
        let _ = writeln!(text, "- {}: {}", reason.code(), markdown(&reason.text()));
    }
    if !(named.is_empty() && assessment.figures.is_empty() && assessment.reasons.is_empty()) {
        text.push('\n');
    }
    let lower_bound = listing.tally.as_ref().is_some_and(|t| t.lower_bound);
    if let Some(label) = honest_label(assessment, run.model, lower_bound) {
        let _ = writeln!(text, "Honest label: {}\n", markdown(&label));
    }
    let _ = writeln!(
        text,
        "Tolerance {} %, confidence {} %, reference table: {}.",
        Rounded(run.settings.tolerance * 100.0),
        Rounded(run.settings.confidence() * 100.0),
        markdown(run.model.table().name())
    );
    text
}
