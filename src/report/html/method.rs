//! How the figures were made, so that a reader can check them: equations in words, settings, the rows used, sources.

use maud::{Markup, html};

use super::used::Used;
use super::wide::wide;
use super::{About, safe};
use crate::comparison::Settings;
use crate::draw::JUNCTION;
use crate::reference::Table;
use crate::reference::driver::{AUX_MOST, ETA_HIGH, ETA_LOW_MOST};
use crate::report::Run;
use crate::units::Rounded;

/// The section.
pub(super) fn method(run: Run<'_>, used: &Used, about: &About) -> Markup {
    let settings = run.settings;
    html! {
        section id="method" aria-labelledby="method-head" {
            h2 id="method-head" { "Method, settings and sources" }
            p {
                "Tolerance " (percent(settings.tolerance)) ", confidence " (percent(settings.confidence()))
                ", reference table: " (safe(run.model.table().name())) ", plainwatt " (env!("CARGO_PKG_VERSION")) "."
            }
            h3 { "From a count to a verdict" }
            (steps(run.settings))
            (classes(run.model.table(), used))
            (dice(run.model.table(), used))
            h3 { "Sources" }
            ul { @for source in SOURCES { li { (source) } } }
            h3 { "What this cannot know" }
            p {
                "The real current: a count shows what the diodes could draw, and a driver may run them lower, or harder \
                 than the class name says. Counts and classes are taken as given. A reading counts only at full \
                 brightness with all switches on: a dimmed light draws less than it can."
            }
            @if used.cautions().next().is_some() {
                h3 { "Cautions" }
                ul { @for caution in used.cautions() { li { (caution) } } }
            }
            @if let Some(command) = &about.command {
                h3 { "All rows" }
                p {
                    @if let Some(beside) = &about.beside {
                        a href=(beside) { "Every row as CSV" } ". It is written by "
                    } @else {
                        "Every row as CSV, for a spreadsheet: "
                    }
                    (super::command(command))
                }
            }
        }
    }
}

const SOURCES: [&str; 6] = [
    "Uncertainty: JCGM 100:2008, Guide to the expression of uncertainty in measurement; addition within a batch as in \
     its 5.2.2.",
    "Decision: JCGM 106:2012, The role of measurement uncertainty in conformity assessment, clause 7.",
    "Tolerance of 10 %, where it is used: as wide as any published lighting tolerance on a quantity that buyers want \
     high, Regulation (EU) 2019/2020, Annex IV Table 6 (luminous flux). A yardstick here, not the law.",
    "Driver: Regulation (EU) 2019/2020, Annex VI and Annex II Table 3; Kusuma, Pattison and Bugbee 2020, Horticulture \
     Research 7:56.",
    "Lamps that are compared with, by their photons: Nelson and Bugbee 2014.",
    "Colours of the pictures: after the palette of Okabe and Ito (2008, from memory), which the usual kinds of colour \
     blindness tell apart. Place, shape and words say the same without colour.",
];

/// The equations and the rule of decision, in words.
fn steps(settings: &Settings) -> Markup {
    html! {
        ol {
            li {
                "The forward voltage of a die at its current: the voltage at the datasheet's test current, plus the \
                 ideality factor times the thermal voltage times the logarithm of the current over the test current, \
                 plus the series resistance times the difference of the two currents, plus the temperature coefficient \
                 times the junction temperature above 25 \u{b0}C. The junction is taken to be at " (Rounded(JUNCTION.0))
                " \u{b0}C (no published survey; makers bin at 85 \u{b0}C)."
            }
            li { "LED power: current times voltage, summed over all dice." }
            li {
                "Wall draw: LED power over the driver's efficiency, plus fans and controls. The efficiency is between "
                (percent(ETA_LOW_MOST)) " (less for small lights) and " (percent(ETA_HIGH))
                ", fans and controls take between nothing and " (percent(AUX_MOST)) " of the LED power (from memory)."
            }
            li {
                "Full draw is with every diode at the current that its class name stands for, or at the stated drive \
                 current. The common draw spans the currents that such lights are commonly run at (thin and mixed \
                 sources, mostly from memory). The most is with every diode at its published maximum."
            }
            li {
                "Uncertainty: that of the forward voltage adds linearly within a kind of die and colour, since the diodes \
                 of a light come from one batch, and in quadrature otherwise; current, temperature, driver and an \
                 uncertain count are further contributions. An interval is 1.96 standard uncertainties either way."
            }
            li { "Share: the measured draw over the claim, or, without a reading, the full draw over the claim." }
            li {
                "Decision: a count calls a claim too high only if the probability that the draw reaches the claim less "
                (percent(settings.tolerance)) " is at most " (percent(1.0 - settings.confidence()))
                ", and within reach only if it is at least " (percent(settings.confidence()))
                "; in between it is unsettled. Out of reach is what even the most does not reach. A meter reading decides \
                 alone; the meter's accuracy is taken as " (percent(settings.meter.share)) " + " (settings.meter.fixed)
                ". Without one, the worse of the count and the listing's other numbers decides if it says that the \
                 claim is too high."
            }
        }
    }
}

fn classes(table: &Table, used: &Used) -> Markup {
    let cells: Vec<Vec<String>> = used
        .classes(table)
        .map(|row| {
            vec![
                row.name.clone(),
                format!("{:.0}", row.die_current.ma()),
                format!("{:.0}", row.max_die_current.ma()),
                format!("{} to {}", Rounded(row.common_low * 100.0), percent(row.common_high)),
                row.grade.clone(),
                row.source.clone(),
            ]
        })
        .collect();
    html! {
        @if !cells.is_empty() {
            h3 { "Classes in these listings" }
            (wide("classes", &["class", "mA a die", "most mA", "commonly", "grade", "source"], &cells))
        }
    }
}

fn dice(table: &Table, used: &Used) -> Markup {
    let cells: Vec<Vec<String>> = used
        .dice(table)
        .map(|row| {
            vec![
                format!("{} {}", row.die.name(), row.colour.name()),
                format!("{:.2} \u{b1} {:.2}", row.vf.0, row.u_vf.0),
                format!("{:.0}", row.test.ma()),
                row.grade.clone(),
                row.source.clone(),
            ]
        })
        .collect();
    html! {
        @if !cells.is_empty() {
            h3 { "Dice in these listings" }
            (wide("dice", &["die", "V at 25 \u{b0}C (standard uncertainty)", "at mA", "grade", "source"], &cells))
            p { "'plainwatt diodes' shows every row of the table." }
        }
    }
}

/// With a blank that no line is broken at.
fn percent(share: f64) -> String {
    format!("{}\u{a0}%", Rounded(share * 100.0))
}
