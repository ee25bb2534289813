//! The reference rows against datasheets (`fixtures/checks/points.csv`): each row's numbers are its source's, and each curve
//! meets the forward voltages published for other parts, currents and temperatures of its colour.
//!
//! The distance is counted in the standard uncertainty of the curve at that current, z = (published - curve) / `u_V`. Shown
//! with `cargo test --test datasheets -- --nocapture`.

#![expect(clippy::print_stdout, reason = "what was measured is shown with --nocapture")]

use plainwatt::draw::forward_voltage;
use plainwatt::facts::Colour;
use plainwatt::reference::{Die, Table};
use plainwatt::units::{Amps, Celsius};
use serde::Deserialize;

const POINTS: &str = include_str!("../fixtures/checks/points.csv");

#[derive(Debug, Deserialize)]
struct Point {
    colour: String,
    part: String,
    ma: f64,
    tj_c: Option<f64>,
    vf_min_v: Option<f64>,
    vf_typ_v: f64,
    vf_max_v: Option<f64>,
}

fn points() -> Vec<Point> {
    let rows = csv::Reader::from_reader(POINTS.as_bytes()).into_deserialize();
    rows.map(|row| row.expect("the fixture is well formed")).collect()
}

/// Which rows a published colour is held against; none where the table has no row that it could stand for.
///
/// Parts of 400 and 410 nm are sold as ultraviolet, and a listing that gives their wavelength is looked up as royal blue:
/// both rows must stand for them. Likewise 460 nm lies on the border of royal blue and blue.
fn rows_for(colour: &str) -> &'static [Colour] {
    match colour {
        "far_red" => &[Colour::FarRed],
        "deep_red" => &[Colour::DeepRed],
        "red" | "red (older die)" => &[Colour::Red],
        "red_orange" | "red_orange (older die)" => &[Colour::RedOrange],
        "amber" | "amber (older die)" => &[Colour::Amber],
        "green" | "green_525" => &[Colour::Green],
        "cyan" => &[Colour::Cyan],
        "blue" => &[Colour::Blue],
        "blue_460" => &[Colour::Blue, Colour::RoyalBlue],
        "royal_blue" | "deep_blue" => &[Colour::RoyalBlue],
        "white" | "white_warm" => &[Colour::White],
        "uva_380" | "uva_390" => &[Colour::UvA],
        "uva_400" | "uva_410" => &[Colour::UvA, Colour::RoyalBlue],
        "ir_850" | "ir_850_870" | "ir_940" => &[Colour::Infrared],
        // A blue die under a phosphor, of neither the white nor the pink kind: not in the table.
        "pc_amber" | "lime (Tj 85C)" => &[],
        other => panic!("points.csv has a colour '{other}' that this test does not know"),
    }
}

/// The kind of die that a part is, or none where no row can stand for it.
fn die_of(part: &str) -> Option<Die> {
    match part {
        // Two dice in series behind one lens: twice the voltage of the row's one die.
        "SFH 4715S double-stack 1 mm2" => None,
        // 0.3 mm by 0.3 mm: what the table calls small.
        "SFH 4545 (0.09 mm2, NOT high-power)" => Some(Die::Small),
        // The 2 mm2 parts (UV FC2, OSLON Square) stay: a listing does not tell the area of its dice, so the row must
        // stand for them too.
        _ => Some(Die::Power),
    }
}

struct Held {
    what: String,
    z: f64,
    line: String,
}

/// Every point against every row that stands for it, and the parts that no row stands for.
fn held() -> (Vec<Held>, Vec<String>) {
    let table = Table::built_in();
    let (mut held, mut not_covered) = (Vec::new(), Vec::new());
    for point in points() {
        let rows = rows_for(&point.colour);
        let die = die_of(&point.part);
        if rows.is_empty() || die.is_none() {
            not_covered.push(point.part);
            continue;
        }
        for &colour in rows {
            let (row, own) = table.diode(die.expect("asked above"), colour);
            assert!(own, "{} has a row of its own", colour.name());
            let current = Amps::from_ma(point.ma);
            let junction = Celsius(point.tj_c.unwrap_or(25.0));
            let volts = forward_voltage(row, current, junction).expect("inside the curve").0;
            let u = row.u_vf.0.hypot(0.10 * (current / row.test).ln());
            let z = (point.vf_typ_v - volts) / u;
            let line = format!(
                "{z:6.2}  {:10} {:58} {:5} mA {:3} C: {:5.3} V, curve {volts:.3}, u {u:.3}",
                colour.name(),
                point.part,
                point.ma,
                junction.0,
                point.vf_typ_v
            );
            held.push(Held { what: format!("{} {} mA as {}", point.part, point.ma, colour.name()), z, line });
        }
    }
    (held, not_covered)
}

/// Beyond 3 u: older dice that the table does not claim to stand for.
///
/// - LXML-PD01, LXML-PH01, LXML-PL01: the older `AlInGaP` dice of red, red-orange and amber, 2.9 V typical where every newer
///   part has 2.1 V. A light that really holds them draws up to two fifths more on those colours than is worked out here.
/// - ELJ-460-628: an early blue die (2007), 3.5 V at 500 mA. Its 460 nm lies on the border: 3.2 u from the blue row, 2.8 u
///   from the royal-blue one.
const BEYOND_3: [&str; 4] = [
    "ELJ-460-628 (3.5 W, 2007) 500 mA as blue",
    "LXML-PD01 350 mA as red",
    "LXML-PH01 350 mA as red-orange",
    "LXML-PL01 350 mA as amber",
];

/// Between 2 and 3 u.
///
/// - OSLON Square GH CSSRM4.24: a die of twice the area of the row's (2 mm2), so half the current density and a lower
///   voltage at the same current. The row's 1400 mA maximum is from this part. With such dice the estimate is some 13 %
///   too high on a light's deep-red part: it errs in favour of the claim.
/// - ELJ-460-628 as royal blue: see above.
const BEYOND_2: [&str; 3] = [
    "ELJ-460-628 (3.5 W, 2007) 500 mA as royal-blue",
    "OSLON Square GH CSSRM4.24 (2 mm2 class) 350 mA as deep-red",
    "OSLON Square GH CSSRM4.24 (2 mm2 class) 700 mA as deep-red",
];

fn named(held: &[Held], over: f64, up_to: f64) -> Vec<&str> {
    let mut names: Vec<&str> =
        held.iter().filter(|h| h.z.abs() > over && h.z.abs() <= up_to).map(|h| h.what.as_str()).collect();
    names.sort_unstable();
    names
}

#[test]
fn the_curves_meet_every_published_point_but_the_named_ones() {
    let (held, _) = held();
    for comparison in &held {
        println!("{}", comparison.line);
    }
    let rms = (held.iter().map(|h| h.z.powi(2)).filter(|z2| *z2 <= 9.0).sum::<f64>()
        / f64::from(u32::try_from(held.iter().filter(|h| h.z.abs() <= 3.0).count()).expect("few")))
    .sqrt();
    println!("{} comparisons; rms z of those within 3: {rms:.2}", held.len());
    assert_eq!(named(&held, 3.0, f64::INFINITY), BEYOND_3);
    assert_eq!(named(&held, 2.0, 3.0), BEYOND_2);
    // A stated uncertainty may be too wide as well as too narrow. Rows were set from some of these points, whose z is 0.
    assert!((0.5..1.2).contains(&rms), "rms z {rms}");
}

#[test]
fn parts_without_a_row_are_named_as_not_covered() {
    let (_, not_covered) = held();
    // Phosphor amber twice, lime, two stacked infrared dice.
    assert_eq!(not_covered, ["LXM2-PL01", "LXML-PX02", "L1C1-PCA", "SFH 4715S double-stack 1 mm2"]);
}

/// The part that each high-power row says it is taken from, where it is one part: its test point, minimum and maximum.
const TAKEN_FROM: [(Colour, &str, f64); 11] = [
    (Colour::FarRed, "LXML-PF01", 350.0),
    (Colour::DeepRed, "LXM3-PD01", 350.0),
    (Colour::Red, "LXM2-PD01", 350.0),
    (Colour::RedOrange, "LXM2-PH01", 350.0),
    (Colour::Amber, "LXM5-PL01", 350.0),
    (Colour::Green, "LXML-PM01", 350.0),
    (Colour::Cyan, "LXML-PE01", 350.0),
    (Colour::Blue, "LXML-PB01", 350.0),
    (Colour::RoyalBlue, "LXML-PR01", 350.0),
    (Colour::UvA, "UV FC1 (1 mm2)", 500.0),
    (Colour::Infrared, "1 W-class 850 nm emitter", 350.0),
];

#[test]
fn each_row_states_what_its_datasheet_states() {
    let table = Table::built_in();
    let points = points();
    for (colour, part, ma) in TAKEN_FROM {
        let (row, _) = table.diode(Die::Power, colour);
        let point = points.iter().find(|p| p.part == part && p.ma.total_cmp(&ma).is_eq()).expect(part);
        assert_eq!(point.tj_c, Some(25.0), "{part}");
        let published = [Some(point.ma), point.vf_min_v, Some(point.vf_typ_v), point.vf_max_v];
        let ours = [row.test.ma(), row.vf_min.0, row.vf.0, row.vf_max.0];
        for (published, ours) in published.into_iter().zip(ours) {
            assert!(
                (published.expect(part) - ours).abs() < 1e-9,
                "{} and {part}: {published:?} {ours}",
                colour.name()
            );
        }
        assert!(row.vf_min.0 <= row.vf.0 && row.vf.0 <= row.vf_max.0, "{part}");
    }
}

/// Published minimum and maximum are bins of one part; the typical voltage of every row lies between its own.
#[test]
fn every_typical_lies_inside_its_published_minimum_and_maximum() {
    for row in Table::built_in().diodes() {
        let typical =
            forward_voltage(row, row.test, Celsius(25.0)).expect("the test current is inside the curve");
        assert!((typical - row.vf).0.abs() < 1e-12, "the curve goes through its test point");
        assert!(
            row.vf_min.0 <= typical.0 && typical.0 <= row.vf_max.0,
            "{} {}: {} outside {} to {}",
            row.die.name(),
            row.colour.name(),
            typical.0,
            row.vf_min.0,
            row.vf_max.0
        );
    }
}
