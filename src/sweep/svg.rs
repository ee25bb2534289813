//! A picture of a fit: its readings and the curve through them.
//!
//! One self-contained SVG with a title and a description for those who hear it. It follows the reader's light or dark
//! scheme; the two colours are of the palette of Okabe and Ito (2008, from memory), which the usual kinds of colour blindness tell
//! apart, and shape (line, ring, cross) tells the same without colour.

use std::fmt::Write;

use super::curve::Point;
use super::fit::{Fit, Origin};
use crate::axis::Axis;
use crate::draw::Shockley;
use crate::units::{Amps, Celsius, Volts};

const WIDTH: f64 = 480.0;
const HEIGHT: f64 = 320.0;
/// The frame of the plot: left, right, top, bottom.
const FRAME: [f64; 4] = [64.0, 464.0, 48.0, 264.0];
/// Straight pieces that the curve is drawn with.
const PIECES: u32 = 96;
/// About how many ticks an axis gets.
const TICKS: f64 = 6.0;

const STYLE: &str = "\
.sheet{fill:#fff}.ink{fill:#1a1a1a}.frame{fill:none;stroke:#1a1a1a}.grid{stroke:#d9d9d9}\
.curve{fill:none;stroke:#0072b2;stroke-width:2}.used{fill:none;stroke:#d55e00;stroke-width:2}\
.left{fill:none;stroke:#595959;stroke-width:2}text{font:12px system-ui,sans-serif}\
@media(prefers-color-scheme:dark){.sheet{fill:#16181c}.ink{fill:#ececec}.frame{stroke:#ececec}.grid{stroke:#3a3d42}\
.curve{stroke:#56b4e9}.used{stroke:#e69f00}.left{stroke:#b0b0b0}}";

/// Current in milliamperes across, forward voltage at 25 degrees Celsius up.
#[must_use]
pub fn svg(fit: &Fit) -> String {
    let curve = Shockley::of(&fit.row);
    let (lowest, highest) = curve.range();
    let points = || fit.curve.points.iter();
    let at_25 = |p: &Point| Volts(p.volts.0 - curve.dvf_dt * (p.temperature.0 - 25.0));

    let last = points().map(|p| p.amps).fold(curve.i0, Amps::max);
    let end = (1.05 * last).min(highest);
    let drawn: Vec<(Amps, Volts)> = (0..=PIECES)
        .map(|piece| {
            // Closer together at the low end, where the logarithm bends.
            let share = f64::from(piece) / f64::from(PIECES);
            lowest + (end - lowest) * (share * share)
        })
        .filter_map(|amps| Some((amps, curve.voltage(amps, Celsius(25.0)).ok()?)))
        .collect();
    let volts = || drawn.iter().map(|&(_, v)| v.0).chain(points().map(|p| at_25(p).0));
    let across = Axis::new(0.0, (1.05 * last).ma(), FRAME[0], FRAME[1], TICKS);
    let up = Axis::new(
        volts().fold(f64::MAX, f64::min),
        volts().fold(f64::MIN, f64::max),
        FRAME[3],
        FRAME[2],
        TICKS,
    );
    let place = |amps: Amps, volts: Volts| (across.at(amps.ma()), up.at(volts.0));

    let id = format!("sweep-{}-{}", fit.curve.die.name(), fit.curve.colour.name());
    let mut out = String::new();
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" \
         aria-labelledby=\"{id}-title {id}-desc\">\n<title id=\"{id}-title\">{}</title>\n<desc id=\"{id}-desc\">{}</desc>\n\
         <style>{STYLE}</style>\n<rect class=\"sheet\" width=\"{WIDTH}\" height=\"{HEIGHT}\"/>\n",
        escape(&title(fit)),
        escape(&description(fit)),
    );
    axes(&mut out, &across, &up);
    text(&mut out, FRAME[0], 20.0, "start", &title(fit));

    let path: Vec<String> = drawn
        .iter()
        .map(|&(i, v)| {
            let (x, y) = place(i, v);
            format!("{x:.1},{y:.1}")
        })
        .collect();
    let _ = writeln!(out, "<polyline class=\"curve\" points=\"{}\"/>", path.join(" "));
    for point in &fit.used {
        let (x, y) = place(point.amps, at_25(point));
        ring(&mut out, x, y);
    }
    for point in &fit.left_out {
        let (x, y) = place(point.amps, at_25(point));
        cross(&mut out, x, y);
    }
    legend(&mut out, !fit.left_out.is_empty());
    out.push_str("</svg>\n");
    out
}

fn title(fit: &Fit) -> String {
    format!("Forward voltage of a {} die ({}) on the bench", fit.curve.colour.name(), fit.curve.die.name())
}

fn description(fit: &Fit) -> String {
    let left = match fit.left_out.len() {
        0 => String::new(),
        n => format!("{n} left out. "),
    };
    let rms = fit.rms.map_or_else(String::new, |rms| format!(" Rms residual {:.1} mV.", rms.0 * 1000.0));
    let kept = if fit.ideality.origin == Origin::Table { " n and Rs are the table's." } else { "" };
    let readings = match fit.used.len() {
        1 => "1 reading".to_owned(),
        n => format!("{n} readings"),
    };
    let spots: Vec<String> =
        fit.used.iter().map(|p| format!("{} V at {:.0} mA", p.volts.0, p.amps.ma())).collect();
    format!(
        "{readings} used: {}. {left}Curve: V0 {:.3} V at {:.0} mA and 25 \u{b0}C, n {:.3}, Rs {:.3} ohm.{kept}{rms}",
        spots.join(", "),
        fit.v0.value.0,
        fit.row.test.ma(),
        fit.ideality.value,
        fit.rs.value.0
    )
}

fn axes(out: &mut String, across: &Axis, up: &Axis) {
    let [left, right, top, bottom] = FRAME;
    for (x, label) in across.ticks() {
        let _ = writeln!(out, "<path class=\"grid\" d=\"M{x:.1} {top}V{bottom}\"/>");
        text(out, x, bottom + 18.0, "middle", &label);
    }
    for (y, label) in up.ticks() {
        let _ = writeln!(out, "<path class=\"grid\" d=\"M{left} {y:.1}H{right}\"/>");
        text(out, left - 8.0, y + 4.0, "end", &label);
    }
    let _ = writeln!(
        out,
        "<rect class=\"frame\" x=\"{left}\" y=\"{top}\" width=\"{}\" height=\"{}\"/>",
        right - left,
        bottom - top
    );
    text(out, f64::midpoint(left, right), bottom + 40.0, "middle", "Current, mA");
    let middle = f64::midpoint(top, bottom);
    let _ = writeln!(
        out,
        "<text class=\"ink\" text-anchor=\"middle\" transform=\"translate(16 {middle}) rotate(-90)\">{}</text>",
        escape("Forward voltage at 25 \u{b0}C, V")
    );
}

/// In the lower right, where a rising curve leaves room.
fn legend(out: &mut String, left_out: bool) {
    let (x, y) = (FRAME[1] - 120.0, FRAME[3] - 44.0);
    let _ = writeln!(out, "<path class=\"curve\" d=\"M{} {y}h16\"/>", x - 8.0);
    text(out, x + 16.0, y + 4.0, "start", "curve");
    ring(out, x, y + 16.0);
    text(out, x + 16.0, y + 20.0, "start", "reading");
    if left_out {
        cross(out, x, y + 32.0);
        text(out, x + 16.0, y + 36.0, "start", "reading left out");
    }
}

fn ring(out: &mut String, x: f64, y: f64) {
    let _ = writeln!(out, "<circle class=\"used\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"4\"/>");
}

fn cross(out: &mut String, x: f64, y: f64) {
    let _ = writeln!(out, "<path class=\"left\" d=\"M{:.1} {:.1}l8 8m0 -8l-8 8\"/>", x - 4.0, y - 4.0);
}

fn text(out: &mut String, x: f64, y: f64, anchor: &str, words: &str) {
    let _ = writeln!(
        out,
        "<text class=\"ink\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\">{}</text>",
        escape(words)
    );
}

/// Text as it may stand between tags or in a quoted attribute.
fn escape(words: &str) -> String {
    let mut safe = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            // XML 1.0 has no place for control characters, not even escaped.
            c if c.is_control() => safe.push('\u{fffd}'),
            c => safe.push(c),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::escape;

    #[test]
    fn nothing_in_a_text_can_close_its_tag_or_its_quotes() {
        assert_eq!(escape("<a b='c' d=\"e\">&\u{7}"), "&lt;a b=&#39;c&#39; d=&quot;e&quot;&gt;&amp;\u{fffd}");
    }
}
