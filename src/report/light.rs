//! One light, worked out line by line, for a terminal.

use std::fmt::Write as _;

use comfy_table::presets::NOTHING;
use comfy_table::{CellAlignment, Table};

use super::cautions;
use super::sanitise::terminal;
use super::style::Style;
use super::words::words;
use super::{Light, Run};
use crate::comparison::{Assessment, honest_label, sentence};
use crate::draw::Draw;
use crate::photons::Photons;
use crate::units::{Rounded, Watts};

/// How the working is shown.
#[derive(Debug, Clone, Copy)]
pub struct Layout {
    /// Columns of the terminal.
    pub width: usize,
    /// Escape sequences or none.
    pub style: Style,
    /// All of the working, else the answers on one screen.
    pub working: bool,
}

/// The answers, or the verdict with all of its working.
#[must_use]
pub fn light(run: Run<'_>, light: Light<'_>, layout: Layout) -> String {
    if !layout.working {
        return super::answers::answers(run, light, layout);
    }
    let (listing, assessment) = (light.listing, light.assessment);
    let mut text = String::new();
    match (&listing.title, light.read) {
        (Some(title), Some(read)) => {
            text.push_str(&words(title, read, layout.width, layout.style));
            text.push('\n');
        }
        (Some(title), None) => {
            paragraph(&mut text, &terminal(title), "", layout);
            text.push('\n');
        }
        (None, _) => {}
    }
    if let Some(draw) = &assessment.counted.draw {
        text.push_str(&diodes(run, draw));
        text.push('\n');
        text.push_str(&powers(run, light, draw, layout));
    }
    let mut lines = super::builder::lines(run, light);
    lines.extend(super::load::lines(light));
    lines.extend(super::worth::lines(run, light));
    for (name, value) in &lines {
        named(&mut text, name, value, layout);
    }
    if assessment.counted.draw.is_some() || !lines.is_empty() {
        text.push('\n');
    }
    text.push_str(&verdict(light, layout));
    if !assessment.figures.is_empty() {
        text.push('\n');
        for figure in &assessment.figures {
            paragraph(&mut text, &super::figures::coded_claim(figure, layout.style), "- ", layout);
        }
    }
    if assessment.findings.len() > 1 {
        text.push_str("\nfound:\n");
        for finding in &assessment.findings {
            let line = format!(
                "{}: {} - {}",
                finding.evidence.word(),
                finding.verdict.word(),
                finding.reason.text()
            );
            paragraph(&mut text, &line, "- ", layout);
        }
    }
    if !assessment.reasons.is_empty() {
        text.push_str("\nreasons:\n");
        for reason in &assessment.reasons {
            paragraph(&mut text, &format!("{}: {}", reason.code(), reason.text()), "- ", layout);
        }
    }
    if let Some(draw) = &assessment.counted.draw {
        text.push('\n');
        text.push_str(&budget(run, draw));
    }
    let lower_bound = listing.tally.as_ref().is_some_and(|t| t.lower_bound);
    if let Some(label) = honest_label(assessment, run.model, lower_bound) {
        text.push('\n');
        paragraph(&mut text, &format!("honest label: {label}"), "", layout);
    }
    text.push('\n');
    for caution in cautions::unsaid(light) {
        paragraph(&mut text, caution, "! ", layout);
    }
    let foot = format!(
        "{}; 'plainwatt diodes' shows its sources, 'plainwatt meaning WORD' explains a verdict or a reason",
        settings(run)
    );
    text.push('\n');
    for line in textwrap::wrap(&foot, layout.width) {
        let _ = writeln!(text, "{}", layout.style.faint(&line));
    }
    text
}

/// The verdict and its sentence.
pub(super) fn verdict(light: Light<'_>, layout: Layout) -> String {
    let assessment = light.assessment;
    let word = layout.style.verdict(assessment.verdict);
    let basis = assessment.basis.map(|b| format!(", basis {}", b.word())).unwrap_or_default();
    let mut text = format!("verdict: {word} (evidence {}{basis})\n", assessment.evidence.word());
    paragraph(&mut text, &sentence(light.listing, assessment), "", layout);
    text
}

/// What the verdict depends on.
pub(super) fn settings(run: Run<'_>) -> String {
    format!(
        "tolerance {:.4} %, confidence {:.4} %, reference table: {}",
        Rounded(run.settings.tolerance * 100.0),
        Rounded(run.settings.confidence() * 100.0),
        terminal(run.model.table().name()),
    )
}

/// What the draw of the count is called: beside a reading it is not what the light draws.
pub(super) fn draw_name(assessment: &Assessment) -> &'static str {
    if assessment.measured.is_some() { "by the count" } else { "wall draw" }
}

/// One named value, wrapped under itself.
fn named(text: &mut String, name: &str, value: &str, layout: Layout) {
    let name = format!("{name:<13} ");
    let indent = " ".repeat(name.len());
    let options = textwrap::Options::new(layout.width).initial_indent(&name).subsequent_indent(&indent);
    text.push_str(&textwrap::fill(value, options));
    text.push('\n');
}

/// Words, wrapped under their bullet.
pub(super) fn paragraph(text: &mut String, words: &str, bullet: &str, layout: Layout) {
    let indent = " ".repeat(bullet.len());
    let options = textwrap::Options::new(layout.width).initial_indent(bullet).subsequent_indent(&indent);
    text.push_str(&textwrap::fill(words, options));
    text.push('\n');
}

fn diodes(run: Run<'_>, draw: &Draw) -> String {
    let mut table = Table::new();
    table.load_style(NOTHING).set_header(["colour", "class", "count", "mA", "V", "W each", "W"]);
    let mut count = 0_u64;
    for part in &draw.parts {
        let class = run.model.table().class(part.class);
        let point = draw.package_at_full(run.model, part);
        let half = part.count.half_width.map(|h| format!("\u{b1}{h}")).unwrap_or_default();
        count += u64::from(part.count.number);
        table.add_row([
            part.colour.name().to_owned(),
            class.name.clone(),
            format!("{}{half}", part.count.number),
            format!("{:.0}", point.die_current.ma() * f64::from(class.parallel)),
            format!("{:.2}", point.die_voltage.0 * f64::from(class.series)),
            format!("{:.2}", point.watts.0),
            format!("{:.1}", point.watts.0 * f64::from(part.count.number)),
        ]);
    }
    table.add_row([
        "all".to_owned(),
        String::new(),
        count.to_string(),
        String::new(),
        String::new(),
        String::new(),
        format!("{:.1}", draw.full.led.value.0),
    ]);
    for index in 2..7 {
        if let Some(column) = table.column_mut(index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table.trim_fmt() + "\n"
}

fn powers(run: Run<'_>, light: Light<'_>, draw: &Draw, layout: Layout) -> String {
    let assessment = light.assessment;
    let range = |low: Watts, high: Watts| format!("{} to {high}", Rounded(low.0));
    let mut lines: Vec<(&str, String)> = Vec::new();
    if let Some(claim) = light.listing.claim {
        lines.push(("claimed", claim.to_string()));
    }
    let full = &draw.full;
    lines.push(("LED power", format!("{} \u{b1} {}", Rounded(full.led.value.0), full.led.half_95())));
    let (low, high) = full.wall_interval();
    lines.push((draw_name(assessment), format!("{}, 95 % interval {}", full.wall.value, range(low, high))));
    lines.push((
        "driver, fans",
        format!(
            "{:.0} to {:.0} % efficient, and 0 to 6 % of the LED power",
            full.efficiency.low * 100.0,
            full.efficiency.high * 100.0
        ),
    ));
    lines.push(("commonly run", range(draw.common.0, draw.common.1)));
    let (low, high) = draw.ceiling.wall_interval();
    lines.push(("at most", format!("{} at the published maximum", range(low, high))));
    lines.push(("photons", super::figures::photons(&Photons::of(run.model, draw), assessment.measured)));
    if let Some(measured) = assessment.measured {
        lines.push(("measured", format!("{} \u{b1} {}", Rounded(measured.value.0), measured.half_95())));
    }
    if let Some(current) = assessment.class_current {
        let most = light_most(assessment).map(|i| format!("; published maximum {i}")).unwrap_or_default();
        lines.push(("class current", format!("{current} a die{most}")));
    }
    if let Some(needed) = assessment.needed {
        let what = if light.listing.claim.is_some() { "claim needs" } else { "name needs" };
        lines.push((
            what,
            match needed.current {
                Some(current) => {
                    format!("{current} a die, {:.0} % of full draw", needed.scale * 100.0)
                }
                None => format!("{:.0} % of full currents", needed.scale * 100.0),
            },
        ));
    }
    if let Some(running) = assessment.running {
        let share = match running.scale_u {
            Some(u) => format!("{:.0} % \u{b1} {:.0} % of full draw", running.scale * 100.0, u * 196.0),
            None => format!("{:.0} % of full draw", running.scale * 100.0),
        };
        lines.push((
            "runs at",
            match running.current {
                Some(current) => format!("{current} a die, {share}"),
                None => share,
            },
        ));
    }
    let mut text = String::new();
    for (name, value) in lines {
        named(&mut text, name, &value, layout);
    }
    text
}

/// The highest current of any die at the ceiling: what the published maximum allows.
fn light_most(assessment: &crate::comparison::Assessment) -> Option<crate::units::Amps> {
    assessment.counted.draw.as_ref().filter(|d| d.drive.is_none()).map(|d| d.ceiling_die_current)
}

fn budget(run: Run<'_>, draw: &Draw) -> String {
    let mut text = String::from("uncertainty budget of the wall draw, standard uncertainties in W:\n");
    for line in draw.budget(run.model) {
        let _ = writeln!(text, "{:>8.2}  {}", line.u_w, line.source);
    }
    let _ = writeln!(
        text,
        "{:>8.2}  all, in quadrature; 95 % interval \u{b1}1.96 times that",
        draw.full.wall.u.0
    );
    text
}
