//! The picture of one listing: its claim as a mark against what its diodes can draw, on one axis.
//!
//! In the table every picture has the same axis, from nothing to twice the claim, so that the claims stand one under
//! another and the eye compares how far off each is. Beside the details the axis is in watts. Each range has a place and a
//! shape of its own; colour only repeats them.

use std::fmt::Write as _;

use maud::{Markup, PreEscaped, html};

use crate::axis::Axis;
use crate::report::Light;
use crate::units::{Rounded, Watts};

/// Where the axis of the table ends, as a multiple of the claim.
pub const END: f64 = 2.0;

/// The width of that axis in the units of its picture; the claim is in the middle.
const WIDTH: f64 = 200.0;

/// What is drawn of a listing, in watts at the wall.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Draws {
    claim: Option<f64>,
    common: Option<(f64, f64)>,
    full: Option<(f64, f64)>,
    ceiling: Option<(f64, f64)>,
    measured: Option<(f64, f64)>,
    admitted: Option<(f64, f64)>,
}

impl Draws {
    pub(super) fn of(light: Light<'_>) -> Self {
        let (listing, assessment) = (light.listing, light.assessment);
        let bare = |(low, high): (Watts, Watts)| (low.0, high.0);
        let draw = assessment.counted.draw.as_ref();
        Self {
            claim: listing.claim.map(|w| w.0),
            common: draw.map(|d| bare(d.common)),
            full: draw.map(|d| bare(d.full.wall_interval())),
            ceiling: assessment.counted.ceiling().map(|c| bare(c.wall_interval())),
            measured: assessment.measured.map(|m| bare(m.interval_95())),
            admitted: listing.admitted.map(|a| (a.low.0, a.high.0)),
        }
    }

    fn ranges(&self) -> impl Iterator<Item = (f64, f64)> {
        [self.common, self.full, self.ceiling, self.measured, self.admitted].into_iter().flatten()
    }

    fn most(&self) -> f64 {
        self.ranges().map(|(_, high)| high).fold(self.claim.unwrap_or(0.0), f64::max)
    }

    /// The same in words, for those who hear the picture.
    fn words(&self) -> String {
        let mut words =
            self.claim.map_or_else(|| "no claim".to_owned(), |w| format!("claim {} W", Rounded(w)));
        for (what, range) in [
            ("meter reads", self.measured),
            ("listing admits", self.admitted),
            ("commonly", self.common),
            ("full draw", self.full),
            ("at most", self.ceiling),
        ] {
            if let Some((low, high)) = range {
                let (low, high) = (Rounded(low).to_string(), Rounded(high).to_string());
                let _ = if low == high {
                    write!(words, "; {what} {high} W")
                } else {
                    write!(words, "; {what} {low} to {high} W")
                };
            }
        }
        words
    }
}

/// A number of a picture: a tenth of a unit is finer than a screen shows.
pub(super) fn n(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0").map_or_else(|| text.clone(), str::to_owned)
}

/// The picture for the table; nothing where there is nothing to hold the claim against.
pub(super) fn small(draws: &Draws) -> Markup {
    if draws.ranges().next().is_none() {
        return html! { "nothing to hold it against" };
    }
    let end = draws.claim.map_or(draws.most() * 1.05, |claim| claim * END);
    let at = |watts: f64| n((watts / end * WIDTH).min(WIDTH));
    let within = |range: Option<(f64, f64)>| range.filter(|(low, _)| *low < end);
    let mut shapes = String::new();
    if let Some((low, high)) = within(draws.common) {
        let _ = write!(shapes, "<path class=c d=\"M{0} 2v6m0-3H{1}m0-3v6\"/>", at(low), at(high));
    }
    if let Some((low, high)) = within(draws.full) {
        let _ = write!(shapes, "<path class=f d=\"M{} 10.5v7H{}v-7z\"/>", at(low), at(high));
    }
    if let Some((low, high)) = within(draws.ceiling) {
        let _ = write!(shapes, "<path class=k d=\"M{} 20v5H{}v-5z\"/>", at(low), at(high));
    }
    if draws.claim.is_some() {
        let _ = write!(shapes, "<path class=m d=\"M{} 0v28\"/>", n(WIDTH / END));
    }
    let middle = |range: Option<(f64, f64)>| range.map(|(low, high)| f64::midpoint(low, high));
    let (admitted, measured) = (middle(draws.admitted), middle(draws.measured));
    if let Some(admitted) = admitted.filter(|watts| *watts <= end) {
        let _ = write!(shapes, "<path class=a d=\"M{} 19l4.5 8h-9z\"/>", at(admitted));
    }
    if let Some(measured) = measured.filter(|watts| *watts <= end) {
        let _ = write!(shapes, "<circle class=r cx=\"{}\" cy=\"14\" r=\"5\"/>", at(measured));
    }
    // What ends beyond the axis points there, each in its own lane.
    let highest = |range: Option<(f64, f64)>| range.map_or(0.0, |(_, high)| high);
    for (y, high) in [
        ("1.5", highest(draws.common)),
        ("10", highest(draws.full).max(measured.unwrap_or(0.0))),
        ("18.5", highest(draws.ceiling).max(admitted.unwrap_or(0.0))),
    ] {
        if high > end {
            let _ = write!(shapes, "<path class=o d=\"M201 {y}l6 4-6 4z\"/>");
        }
    }
    html! {
        svg role="img" viewBox="-2 0 210 28" { title { (draws.words()) } (PreEscaped(shapes)) }
        @if draws.claim.is_none() { small { "no claim: 0 to " (Rounded(end)) " W" } }
    }
}

/// A lane of the large picture: its name, its range, and how it is drawn.
type Lane = (&'static str, (f64, f64), fn(&Axis, f64, (f64, f64)) -> String);

/// The picture for the details, with an axis in watts; nothing where there is nothing to draw.
pub(super) fn large(draws: &Draws) -> Markup {
    let lanes: [Option<Lane>; 5] = [
        draws.measured.map(|r| ("meter", r, ring as fn(&Axis, f64, (f64, f64)) -> String)),
        draws.admitted.map(|r| ("admitted", r, triangle as _)),
        draws.common.map(|r| ("commonly", r, thin as _)),
        draws.full.map(|r| ("full draw", r, thick as _)),
        draws.ceiling.map(|r| ("at most", r, hollow as _)),
    ];
    let lanes: Vec<Lane> = lanes.into_iter().flatten().collect();
    if lanes.is_empty() {
        return html! {};
    }
    let axis = Axis::new(0.0, draws.most() * 1.02, 68.0, 308.0, 5.0);
    let (mut y, mut shapes) = (26.0, String::new());
    let foot = y + 22.0 * f64::from(u32::try_from(lanes.len()).unwrap_or(5)) - 6.0;
    for (x, label) in axis.ticks() {
        let _ = write!(shapes, "<path class=g d=\"M{} 18V{}\"/>", n(x), n(foot));
        let _ = write!(shapes, "<text class=t x=\"{}\" y=\"{}\">{label}</text>", n(x), n(foot + 14.0));
    }
    for (name, range, draw) in lanes {
        let _ = write!(shapes, "<text x=\"0\" y=\"{}\">{name}</text>", n(y + 4.0));
        shapes.push_str(&draw(&axis, y, range));
        y += 22.0;
    }
    if let Some(claim) = draws.claim {
        let x = axis.at(claim);
        let anchor = if x > 250.0 { "e" } else { "t" };
        let shift = if x > 250.0 { 4.0 } else { 0.0 };
        let _ = write!(shapes, "<path class=m d=\"M{} 14V{}\"/>", n(x), n(foot));
        let _ = write!(
            shapes,
            "<text class=\"{anchor}\" x=\"{}\" y=\"11\">claim {} W</text>",
            n(x + shift),
            Rounded(claim)
        );
    }
    let _ = write!(shapes, "<text x=\"0\" y=\"{}\">watts</text>", n(foot + 14.0));
    html! {
        svg.large role="img" viewBox=(format!("0 0 320 {}", n(foot + 18.0))) {
            title { (draws.words()) }
            (PreEscaped(shapes))
        }
    }
}

fn thin(axis: &Axis, y: f64, (low, high): (f64, f64)) -> String {
    format!("<path class=c d=\"M{} {}v8m0-4H{}m0-4v8\"/>", n(axis.at(low)), n(y - 4.0), n(axis.at(high)))
}

fn thick(axis: &Axis, y: f64, (low, high): (f64, f64)) -> String {
    format!("<path class=f d=\"M{} {}v7H{}v-7z\"/>", n(axis.at(low)), n(y - 3.5), n(axis.at(high)))
}

fn hollow(axis: &Axis, y: f64, (low, high): (f64, f64)) -> String {
    format!("<path class=k d=\"M{} {}v8H{}v-8z\"/>", n(axis.at(low)), n(y - 4.0), n(axis.at(high)))
}

fn ring(axis: &Axis, y: f64, (low, high): (f64, f64)) -> String {
    format!("<circle class=r cx=\"{}\" cy=\"{}\" r=\"5\"/>", n(axis.at(f64::midpoint(low, high))), n(y))
}

fn triangle(axis: &Axis, y: f64, (low, high): (f64, f64)) -> String {
    format!("<path class=a d=\"M{} {}l5 9h-10z\"/>", n(axis.at(f64::midpoint(low, high))), n(y - 5.0))
}

/// What each mark of the pictures stands for, each drawn once.
pub(super) fn key() -> Markup {
    let shapes = [
        ("<path class=m d=\"M15 0v14\"/>", "the claim"),
        ("<path class=c d=\"M3 4v6m0-3H27m0-3v6\"/>", "what such lights commonly draw"),
        (
            "<path class=f d=\"M3 3.5v7H27v-7z\"/>",
            "full draw, every diode at the current of its class (95 % interval)",
        ),
        (
            "<path class=k d=\"M3 4.5v5H27v-5z\"/>",
            "at most, every diode at its published maximum (95 % interval)",
        ),
        ("<circle class=r cx=\"15\" cy=\"7\" r=\"5\"/>", "a meter reading"),
        ("<path class=a d=\"M15 2l5 9h-10z\"/>", "a draw that the listing itself admits"),
        ("<path class=o d=\"M12 3l6 4-6 4z\"/>", "goes on beyond twice the claim"),
    ];
    html! {
        ul.key {
            @for (shape, words) in shapes {
                li { svg aria-hidden="true" viewBox="0 0 30 14" { (PreEscaped(shape)) } (words) }
            }
        }
    }
}
