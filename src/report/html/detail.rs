//! One listing in full: what was counted, what it draws, the verdict in a sentence, and what a reader should know.

use std::borrow::Cow;
use std::fmt::Write as _;

use maud::{Markup, html};

use super::axis::{Draws, large};
use super::row::shortened_fault;
use super::wide::wide;
use super::{cut, safe};
use crate::comparison::{Reason, honest_label, sentence};
use crate::facts::{Colour, Count, Listing};
use crate::photons::Photons;
use crate::report::style::Style;
use crate::report::{Light, Run, UNREADABLE, Unreadable, builder, figures, load, words, worth};
use crate::units::Rounded;

/// The most bytes of a title that are shown, as markup.
const MOST_TITLE: usize = 240;

/// The details of a listing.
#[derive(Debug)]
pub(super) struct Detail {
    /// The name and the verdict's word, for the heading.
    pub(super) heading: Markup,
    /// For a page of few listings: with a picture of its own scale and everything that was found.
    pub(super) full: Option<Markup>,
    /// For a page of many, where a kilobyte a listing is what there is: the same figures in one line.
    pub(super) short: Markup,
}

/// The details of a light; `full` asks for both forms, `whole` for what does not rest on its claim too.
pub(super) fn light(run: Run<'_>, light: Light<'_>, draws: &Draws, full: bool, whole: bool) -> Detail {
    let (listing, assessment) = (light.listing, light.assessment);
    let name = listing.name.as_deref().or(if whole { None } else { listing.title.as_deref() });
    let title = listing.title.as_deref().filter(|_| listing.name.is_some());
    let heading = html! {
        (name.map_or_else(|| Cow::Borrowed("The light"), |name| Cow::Owned(super::name(name))))
        ": " (assessment.verdict.word())
    };
    let full = full.then(|| {
        html! {
            div.pair {
                div {
                    @if let Some(title) = title { q { (cut(title, MOST_TITLE)) } }
                    p { (sentence(listing, assessment)) }
                    (found(light))
                    @if let Some(label) = label(run, light) { p { "Honest label: " (label) } }
                }
                div {
                    (large(draws))
                    dl {
                        @for (name, value) in lines(run, light, whole) {
                            @if !name.is_empty() { dt { (name) } }
                            dd { (value) }
                        }
                    }
                }
            }
            @if whole { (read(light)) (diodes(run, light)) }
        }
    });
    let figures: Vec<String> =
        lines(run, light, false).into_iter().map(|(name, value)| format!("{name} {value}")).collect();
    let short = html! {
        @if let Some(title) = title { q { (cut(title, MOST_TITLE)) } }
        p { (sentence(listing, assessment)) }
        @if !figures.is_empty() { small { (figures.join("; ")) } }
        @if !assessment.figures.is_empty() || !assessment.reasons.is_empty() {
            ul {
                @for figure in &assessment.figures { li { (safe(&figures::claim(figure, Style::PLAIN))) } }
                @for reason in &assessment.reasons {
                    // What holds for every reading is said once, with the method.
                    li { (reason.code()) @if *reason != Reason::FullBrightness { ": " (safe(&reason.text())) } }
                }
            }
        }
    };
    Detail { heading, full, short }
}

/// The details of a row that could not be read.
pub(super) fn unreadable(row: Unreadable<'_>) -> Detail {
    let name = row.name.filter(|name| !name.is_empty()).map_or_else(|| "A row".to_owned(), super::name);
    Detail {
        heading: html! { (name) ": " (UNREADABLE) },
        full: None,
        short: html! { p { (shortened_fault(row)) } },
    }
}

fn label(run: Run<'_>, light: Light<'_>) -> Option<String> {
    let lower_bound = light.listing.tally.as_ref().is_some_and(|tally| tally.lower_bound);
    honest_label(light.assessment, run.model, lower_bound)
}

/// The other figures of the listing, every piece of evidence, and the reasons.
fn found(light: Light<'_>) -> Markup {
    let assessment = light.assessment;
    let several = assessment.findings.len() > 1;
    html! {
        @if !assessment.figures.is_empty() || several || !assessment.reasons.is_empty() {
            ul {
                @for figure in &assessment.figures { li { (safe(&figures::claim(figure, Style::PLAIN))) } }
                @if several {
                    @for found in &assessment.findings {
                        li { (found.evidence.word()) ": " (found.verdict.word()) ": " (found.reason.text()) }
                    }
                }
                @for reason in &assessment.reasons { li { (reason.code()) ": " (safe(&reason.text())) } }
            }
        }
    }
}

/// The figures by name.
fn lines(run: Run<'_>, light: Light<'_>, whole: bool) -> Vec<(&'static str, String)> {
    let (listing, assessment) = (light.listing, light.assessment);
    let mut lines = Vec::new();
    if let Some(counted) = counted(listing) {
        lines.push(("counted", counted));
    }
    if let Some(measured) = assessment.measured {
        lines.push(("measured", format!("{} \u{b1} {}", Rounded(measured.value.0), measured.half_95())));
    }
    if let Some(draw) = &assessment.counted.draw {
        let full = &draw.full;
        let (low, high) = full.wall_interval();
        lines.push(("LED power", format!("{} \u{b1} {}", Rounded(full.led.value.0), full.led.half_95())));
        lines.push(("wall draw", format!("{} ({} to {high})", full.wall.value, Rounded(low.0))));
        lines.push(("commonly", format!("{} to {}", Rounded(draw.common.0.0), draw.common.1)));
    }
    if let Some(ceiling) = assessment.counted.ceiling() {
        let (low, high) = ceiling.wall_interval();
        lines.push(("at most", format!("{} to {high}", Rounded(low.0))));
    }
    let scaled = |scale: f64, current: Option<crate::units::Amps>| match current {
        Some(current) => format!("{current} a die, {:.0} % of full draw", scale * 100.0),
        None => format!("{:.0} % of full currents", scale * 100.0),
    };
    if let Some(needed) = assessment.needed {
        let what = if listing.claim.is_some() { "claim needs" } else { "name needs" };
        lines.push((what, scaled(needed.scale, needed.current)));
    }
    if let Some(running) = assessment.running {
        lines.push(("runs at", scaled(running.scale, running.current)));
    }
    if let Some(basis) = assessment.basis {
        lines.push(("basis", basis.word().to_owned()));
    }
    if whole {
        if let Some(draw) = &assessment.counted.draw {
            lines.push(("photons", figures::photons(&Photons::of(run.model, draw), assessment.measured)));
        }
        lines.extend(builder::lines(run, light));
        lines.extend(load::lines(light));
        lines.extend(worth::lines(run, light).into_iter().map(|(name, text)| (name.trim(), text)));
    }
    lines
}

/// How many, with the doubt of whoever counted.
fn number(count: Count) -> String {
    let half = count.half_width.map(|half| format!("\u{b1}{half}")).unwrap_or_default();
    format!("{}{half}", count.number)
}

fn colour(colour: Colour) -> &'static str {
    if colour == Colour::Unstated { "of unstated colour" } else { colour.name() }
}

/// What was counted, in the listing's own classes.
fn counted(listing: &Listing<'_>) -> Option<String> {
    let tally = listing.tally.as_ref().filter(|tally| !tally.groups.is_empty())?;
    let mut text = String::new();
    for (place, group) in tally.groups.iter().enumerate() {
        let own = group.class.filter(|own| Some(*own) != listing.class);
        let class = own.map(|class| format!(" {class}")).unwrap_or_default();
        let joint = if place == 0 { "" } else { " + " };
        let _ = write!(text, "{joint}{} {}{class}", number(group.count), colour(group.colour));
    }
    if let Some(class) = listing.class {
        let _ = write!(text, ", class {class}");
    }
    if let Some(drive) = listing.drive {
        let _ = write!(text, ", driven at {drive}");
    }
    if tally.lower_bound {
        text.push_str(", perhaps more");
    }
    Some(text)
}

/// The diodes with their volts and watts, and the uncertainty budget.
fn diodes(run: Run<'_>, light: Light<'_>) -> Markup {
    let Some(draw) = &light.assessment.counted.draw else { return html! {} };
    let diodes: Vec<Vec<String>> = draw
        .parts
        .iter()
        .map(|part| {
            let class = run.model.table().class(part.class);
            let point = draw.package_at_full(run.model, part);
            vec![
                part.colour.name().to_owned(),
                class.name.clone(),
                number(part.count),
                format!("{:.0}", point.die_current.ma() * f64::from(class.parallel)),
                format!("{:.2}", point.die_voltage.0 * f64::from(class.series)),
                format!("{:.2}", point.watts.0),
                format!("{:.1}", point.watts.0 * f64::from(part.count.number)),
            ]
        })
        .collect();
    let budget = draw.budget(run.model);
    let all = ("all, in quadrature", draw.full.wall.u.0);
    let budget: Vec<Vec<String>> = budget
        .iter()
        .map(|line| (&*line.source, line.u_w))
        .chain([all])
        .map(|(source, u)| vec![source.to_owned(), format!("{u:.2}")])
        .collect();
    html! {
        h3 { "Diodes at full draw" }
        (wide("diodes", &["colour", "class", "count", "mA", "V", "W each", "W"], &diodes))
        h3 { "Uncertainty budget of the wall draw" }
        (wide("uncertainty budget", &["source", "standard uncertainty, W"], &budget))
    }
}

/// What was read from the title, with its words.
fn read(light: Light<'_>) -> Markup {
    let (Some(title), Some(read)) = (light.listing.title.as_deref(), light.read) else { return html! {} };
    let quote = |start: usize, end: usize| safe(title.get(start..end).unwrap_or("")).into_owned();
    html! {
        p { "Read from the title: \u{201c}" (cut(title, MOST_TITLE)) "\u{201d}" }
        ul {
            @for (what, span) in words::taken(read) {
                li { (what) ", from \u{201c}" (quote(span.start, span.end)) "\u{201d}" }
            }
            @for left in &read.left {
                li {
                    "not taken: \u{201c}" (quote(left.span.start, left.span.end)) "\u{201d}, " (words::why(left.why))
                }
            }
        }
    }
}
