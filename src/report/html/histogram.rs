//! The picture of all listings: how draw over claim is distributed, and what the verdicts say of it.
//!
//! Two histograms back to back on one axis: up what is not called too high, down what is. Which is which is seen from the
//! place and from the words beside it; colour only repeats it.

use std::fmt::Write as _;

use maud::{Markup, PreEscaped, html};

use super::axis::n;
use crate::audit::{Histogram, STEPS, Side};
use crate::axis::Axis;

/// The frame: left, right, top, bottom. A step is 13 wide.
const FRAME: [f64; 4] = [34.0, 307.0, 22.0, 182.0];
const STEP: f64 = 13.0;

#[expect(clippy::cast_precision_loss, reason = "counts are far below 2^53")]
fn float(count: u64) -> f64 {
    count as f64
}

fn up(shares: &Histogram, step: usize) -> u64 {
    shares.of(step, Side::Stands) + shares.of(step, Side::Undecided)
}

/// The step in words.
fn name(step: usize) -> String {
    if step == STEPS { "200 % or more".to_owned() } else { format!("{} to {} %", step * 10, step * 10 + 10) }
}

fn words(shares: &Histogram) -> String {
    let mut words = String::from("How many listings draw what share of their claim. ");
    for step in 0..=STEPS {
        let (stands, undecided, high) =
            (shares.of(step, Side::Stands), shares.of(step, Side::Undecided), shares.of(step, Side::TooHigh));
        let parts: Vec<String> =
            [(high, "claimed too high"), (undecided, "unsettled"), (stands, "not called too high")]
                .into_iter()
                .filter(|(n, _)| *n > 0)
                .map(|(n, what)| format!("{n} {what}"))
                .collect();
        if !parts.is_empty() {
            let _ = write!(words, "{}: {}. ", name(step), parts.join(", "));
        }
    }
    words.trim_end().to_owned()
}

/// The picture; nothing where no listing has a share.
pub(super) fn histogram(shares: &Histogram) -> Markup {
    let most_up = (0..=STEPS).map(|step| up(shares, step)).max().unwrap_or(0);
    let most_down = (0..=STEPS).map(|step| shares.of(step, Side::TooHigh)).max().unwrap_or(0);
    if most_up + most_down == 0 {
        return html! { p { "No listing has a share: it takes a claim and a draw to hold it against." } };
    }
    // A side without listings keeps room for its words.
    let room = float((most_up + most_down).div_ceil(8).max(1));
    let (high, low) = (float(most_up).max(room), float(most_down).max(room));
    let axis = Axis::new(-low, high, FRAME[3], FRAME[2], 6.0);
    let zero = axis.at(0.0);
    let x = |step: usize| FRAME[0] + STEP * f64::from(u32::try_from(step).unwrap_or(0));
    let mut drawn = String::new();
    for (y, label) in axis.ticks().filter(|(_, label)| !label.contains('.')) {
        let _ = write!(drawn, "<path class=\"g\" d=\"M{} {}H{}\"/>", n(FRAME[0]), n(y), n(FRAME[1]));
        let label = label.trim_start_matches('-');
        let _ = write!(
            drawn,
            "<text class=\"e\" x=\"{}\" y=\"{}\">{label}</text>",
            n(FRAME[0] - 4.0),
            n(y + 4.0)
        );
    }
    for step in 0..=STEPS {
        let (stands, all) = (axis.at(float(shares.of(step, Side::Stands))), axis.at(float(up(shares, step))));
        let down = axis.at(-float(shares.of(step, Side::TooHigh)));
        for (class, from, to) in [("s", zero, stands), ("u", stands, all), ("h", zero, down)] {
            if (to - from).abs() > 0.0 {
                let _ = write!(
                    drawn,
                    "<path class=\"{class}\" d=\"M{} {}V{}h{}V{}z\"/>",
                    n(x(step) + 1.0),
                    n(from),
                    n(to),
                    n(STEP - 2.0),
                    n(from)
                );
            }
        }
    }
    let _ = write!(drawn, "<path class=\"l\" d=\"M{} {}H{}\"/>", n(FRAME[0]), n(zero), n(FRAME[1]));
    for (step, label) in [(0, "0"), (5, "50"), (10, "100"), (15, "150"), (20, "200 %")] {
        let _ = write!(drawn, "<text class=\"t\" x=\"{}\" y=\"198\">{label}</text>", n(x(step)));
    }
    let claim = x(10);
    let _ = write!(drawn, "<path class=\"m\" d=\"M{} 14V{}\"/>", n(claim), n(FRAME[3]));
    let _ = write!(drawn, "<text class=\"t\" x=\"{}\" y=\"11\">the claim</text>", n(claim));
    // Where few bars reach: a claim that stands is seldom far above the draw, and one that is too high never below it.
    let (left, right) = (n(FRAME[0] + 2.0), n(FRAME[1]));
    let _ =
        write!(drawn, "<text x=\"{left}\" y=\"{}\">\u{2191} not called too high</text>", n(FRAME[2] + 10.0));
    let _ = write!(
        drawn,
        "<text class=\"e\" x=\"{right}\" y=\"{}\">\u{2193} claimed too high</text>",
        n(FRAME[3] - 4.0)
    );
    html! {
        svg.histogram role="img" viewBox="0 0 320 204" { title { (words(shares)) } (PreEscaped(drawn)) }
    }
}
