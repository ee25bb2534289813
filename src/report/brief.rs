//! One light on one screen of 80 x 24: what it draws, costs and replaces, and whether to believe it.

use super::light::Layout;
use super::{Light, Run, builder, cautions, figures, load, worth};
use crate::comparison::sentence;
use crate::photons::Photons;
use crate::units::{Rounded, Watts};

/// Whether a caution is still to be said: the line about a circuit has its own.
pub(super) fn unsaid(light: Light<'_>, caution: &str) -> bool {
    light.circuit.is_none() || !caution.starts_with("circuits:")
}

/// The answers without the working: no table of diodes, no list of what was found.
pub(super) fn brief(run: Run<'_>, light: Light<'_>, layout: Layout) -> String {
    let assessment = light.assessment;
    let word = layout.style.verdict(assessment.verdict);
    let mut text = format!("verdict: {word} (evidence {})\n", assessment.evidence.word());
    paragraph(&mut text, &sentence(light.listing, assessment), "", layout);
    for figure in &assessment.figures {
        paragraph(&mut text, &figures::claim(figure, layout.style), "- ", layout);
    }
    text.push('\n');
    let range = |low: Watts, high: Watts| format!("{} to {high}", Rounded(low.0));
    let mut lines: Vec<(&str, String)> = Vec::new();
    if let Some(draw) = &assessment.counted.draw {
        let (low, high) = draw.full.wall_interval();
        lines.push(("wall draw", format!("{}, 95 % interval {}", draw.full.wall.value, range(low, high))));
        lines.push(("commonly run", range(draw.common.0, draw.common.1)));
        lines.push(("photons", figures::photons(&Photons::of(run.model, draw))));
    }
    if let Some(measured) = assessment.measured {
        lines.push(("measured", format!("{} \u{b1} {}", Rounded(measured.value.0), measured.half_95())));
    }
    lines.extend(builder::lines(run, light));
    if light.circuit.is_some() {
        lines.extend(load::lines(light));
    }
    lines.extend(worth::lines(run, light));
    for (name, value) in &lines {
        paragraph(&mut text, value, &format!("{name:<13} "), layout);
    }
    for caution in cautions::of(light.listing, assessment).into_iter().filter(|c| unsaid(light, c)) {
        paragraph(&mut text, caution, "! ", layout);
    }
    text
}

fn paragraph(text: &mut String, words: &str, first: &str, layout: Layout) {
    let indent = " ".repeat(first.len());
    let options = textwrap::Options::new(layout.width).initial_indent(first).subsequent_indent(&indent);
    text.push_str(&textwrap::fill(words, options));
    text.push('\n');
}
