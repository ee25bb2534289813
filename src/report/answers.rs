//! One light on one screen of 80 x 24: what it draws, costs and replaces, and whether to believe it.
//!
//! The answer comes first. What has to be said is always there; what is good to know is added, the most useful first, as long
//! as all of it stays on the screen. The working ([`light`](super::light)) has everything.

use super::light::{Layout, paragraph};
use super::style::Style;
use super::{Light, Run, builder, cautions, figures, load, words, worth};
use crate::comparison::{Evidence, Figure, Reason, Settings, Verdict};
use crate::photons::Photons;
use crate::reference::Table;
use crate::units::{Rounded, Watts};

/// Lines of the screen, one of which the prompt takes.
const LINES: usize = 24 - 1;

/// A part of the answer; the lower its rank the sooner it is given room, and rank 0 is always there.
struct Part {
    rank: u8,
    text: String,
}

/// How a figure of the listing is answered.
type Claim = fn(&Figure, Style) -> String;

/// The answers without the working; where even what has to be said would leave the screen, the listing's other figures get
/// their verdicts alone.
pub(super) fn answers(run: Run<'_>, light: Light<'_>, layout: Layout) -> String {
    let text = with_claims(run, light, layout, figures::claim);
    if text.lines().count() <= LINES { text } else { with_claims(run, light, layout, figures::bare_claim) }
}

fn with_claims(run: Run<'_>, light: Light<'_>, layout: Layout, claim: Claim) -> String {
    let mut parts = vec![Part { rank: 0, text: verdict(light, layout, claim) }];
    numbers(&mut parts, run, light, layout);
    reasons(&mut parts, light, layout);
    let mut text = String::new();
    for caution in cautions::unsaid(light) {
        paragraph(&mut text, caution, "! ", layout);
    }
    parts.push(Part { rank: 0, text });
    title(&mut parts, light, layout);
    parts.push(Part { rank: 0, text: foot(run, light, layout) });
    fitted(parts)
}

/// What fits, in its order.
fn fitted(parts: Vec<Part>) -> String {
    let lines = |part: &Part| part.text.lines().count();
    let mut shown: Vec<bool> = parts.iter().map(|part| part.rank == 0).collect();
    let mut used: usize = parts.iter().filter(|part| part.rank == 0).map(lines).sum();
    let mut by_rank: Vec<usize> = (0..parts.len()).filter(|place| !shown[*place]).collect();
    by_rank.sort_by_key(|place| parts[*place].rank);
    for place in by_rank {
        let more = lines(&parts[place]);
        if used + more <= LINES {
            used += more;
            shown[place] = true;
        }
    }
    parts.into_iter().zip(shown).filter(|(_, shown)| *shown).map(|(part, _)| part.text).collect()
}

fn verdict(light: Light<'_>, layout: Layout, claim: Claim) -> String {
    let assessment = light.assessment;
    let mut text = super::light::verdict(light, layout);
    for figure in &assessment.figures {
        paragraph(&mut text, &claim(figure, layout.style), "- ", layout);
    }
    text
}

fn numbers(parts: &mut Vec<Part>, run: Run<'_>, light: Light<'_>, layout: Layout) {
    let assessment = light.assessment;
    let range = |low: Watts, high: Watts| format!("{} to {high}", Rounded(low.0));
    let mut lines: Vec<(u8, &str, String)> = Vec::new();
    if let Some(measured) = assessment.measured {
        lines.push((0, "measured", format!("{} \u{b1} {}", Rounded(measured.value.0), measured.half_95())));
    }
    if let Some(draw) = &assessment.counted.draw {
        let (low, high) = draw.full.wall_interval();
        let (full, common) = (range(low, high), range(draw.common.0, draw.common.1));
        let value = draw.full.wall.value;
        let name = super::light::draw_name(assessment);
        lines.push((0, name, format!("{value}, 95 % interval {full}; commonly run {common}")));
        lines.push((0, "photons", figures::photons(&Photons::of(run.model, draw), assessment.measured)));
    } else if assessment.measured.is_none() {
        lines.push((0, "wall draw", unknown(light)));
    }
    if let Some(lamp) = figures::lamp(run, light) {
        lines.push((1, "replaces", lamp));
    }
    lines.extend(builder::lines(run, light).into_iter().map(|(name, value)| {
        // What a supply carries was asked for.
        (if light.fit_supply.is_some() { 0 } else { 3 }, name, value)
    }));
    // A circuit was asked for; heat and amperes are there for whoever has room.
    for (name, value) in load::lines(light) {
        let rank = if light.circuit.is_some() && name != "heat" { 0 } else { 5 };
        lines.push((rank, name, value));
    }
    lines.extend(worth::lines(run, light).into_iter().map(|(name, value)| (0, name, value)));
    parts.push(Part { rank: 2, text: "\n".to_owned() });
    for (rank, name, value) in lines {
        let mut text = String::new();
        paragraph(&mut text, &value, &format!("{name:<13} "), layout);
        parts.push(Part { rank, text });
    }
}

/// Where nothing tells the draw: what the listing's own words say of it.
fn unknown(light: Light<'_>) -> String {
    let own = light.assessment.findings.iter().find_map(|finding| match finding.reason {
        Reason::AdmittedDraw { low, high } if low == high => {
            Some(format!("{low} by the listing's own words"))
        }
        Reason::AdmittedDraw { low, high } => {
            Some(format!("{} to {high} by the listing's own words", Rounded(low.0)))
        }
        Reason::SupplyCeiling { most } => Some(format!("at most {most} by the listing's volts and amperes")),
        Reason::ImpliedDraw { low, high } => {
            Some(format!("{} to {high} by the listing's photon flux and efficacy", Rounded(low.0)))
        }
        _ => None,
    });
    own.unwrap_or_else(|| "not known".to_owned())
}

/// What is missing matters most where nothing is settled.
fn reasons(parts: &mut Vec<Part>, light: Light<'_>, layout: Layout) {
    let assessment = light.assessment;
    let rank = if assessment.verdict == Verdict::Unsettled { 1 } else { 5 };
    // The sentence has said why in those words.
    let deciding = assessment
        .findings
        .iter()
        .find(|f| assessment.evidence == Evidence::OwnWords && f.evidence == Evidence::OwnWords)
        .map(|f| f.reason);
    for reason in &assessment.reasons {
        if matches!(reason, Reason::NeededOutsideCurve { .. }) || deciding == Some(*reason) {
            continue;
        }
        let mut text = String::new();
        paragraph(&mut text, &format!("{}: {}", reason.code(), reason.text()), "- ", layout);
        parts.push(Part { rank, text });
    }
}

fn title(parts: &mut Vec<Part>, light: Light<'_>, layout: Layout) {
    let Some(title) = &light.listing.title else { return };
    let Some(read) = light.read else { return };
    let mut text = "\n".to_owned();
    text.push_str(&words::marked(title, read, layout.width, layout.style));
    parts.push(Part { rank: 4, text });
    let left = (!read.left.is_empty()).then(|| (6, words::left_out(title, read)));
    let from_where = words::from_where(title, read).map(|words| (7, words));
    for (rank, words) in from_where.into_iter().chain(left) {
        let mut text = String::new();
        paragraph(&mut text, &words, "", layout);
        parts.push(Part { rank, text });
    }
}

fn foot(run: Run<'_>, light: Light<'_>, layout: Layout) -> String {
    let word = light.assessment.verdict.word();
    let more = format!("--working shows how; 'plainwatt meaning {word}' explains the verdict");
    let unusual =
        *run.settings != Settings::default() || run.model.table().name() != Table::built_in().name();
    let settings = unusual.then(|| super::light::settings(run));
    let mut text = String::new();
    for words in settings.iter().chain([&more]) {
        for line in textwrap::wrap(words, layout.width) {
            text.push_str(&layout.style.faint(&line));
            text.push('\n');
        }
    }
    text
}
