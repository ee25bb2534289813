//! Whole lights as guides, sellers and a forum member's meter saw them (`fixtures/checks/seen_lights.csv`). Thin, mixed
//! evidence: it shows the range that the estimate must cover, it does not calibrate.

#![expect(clippy::print_stdout, reason = "what was measured is shown with --nocapture")]

use plainwatt::comparison::{Assessment, Settings, Verdict, assess};
use plainwatt::draw::{Draw, Model};
use plainwatt::facts::{Colour, Count, Group, Listing, StatedClass, Tally};
use plainwatt::reference::Table;
use plainwatt::units::Watts;
use serde::Deserialize;

const SEEN: &str = include_str!("../fixtures/checks/seen_lights.csv");

#[derive(Debug, Deserialize)]
struct Seen {
    light: String,
    diodes: u32,
    class_w: f64,
    label_w: f64,
    #[serde(rename = "seen_low_w")]
    low_w: f64,
    #[serde(rename = "seen_high_w")]
    high_w: f64,
}

fn model() -> Model {
    Model::new(Table::built_in()).expect("the built-in table fits its curves")
}

fn seen(diodes: u32) -> Seen {
    let rows = csv::Reader::from_reader(SEEN.as_bytes()).into_deserialize();
    let rows: Vec<Seen> = rows.map(|row| row.expect("the fixture is well formed")).collect();
    rows.into_iter().find(|row| row.diodes == diodes).expect("a light of that many diodes")
}

/// The light with its colours unstated, claimed at `claim`.
fn assessed(light: &Seen, claim: f64) -> Assessment {
    let group = Group {
        colour: Colour::Unstated,
        count: Count::exact(light.diodes),
        class: Some(StatedClass::plain(light.class_w)),
    };
    let listing = Listing {
        claim: Some(Watts(claim)),
        tally: Some(Tally { groups: [group].into_iter().collect(), lower_bound: false }),
        ..Listing::default()
    };
    assess(&listing, &model(), &Settings::default())
}

fn draw(assessment: &Assessment) -> &Draw {
    assessment.counted.draw.as_ref().expect("a class with a row")
}

#[test]
fn ninety_diodes_of_the_1_w_class_draw_70_to_90_w() {
    let light = seen(90);
    let assessment = assessed(&light, light.label_w);
    let full = draw(&assessment).full.wall;
    println!("{}: full draw {:.1} W, u {:.1} W; seen {} W", light.light, full.value.0, full.u.0, light.low_w);
    assert!((70.0..=90.0).contains(&full.value.0), "full draw {}", full.value.0);
    assert!((full.value.0 - light.low_w).abs() < 1.96 * full.u.0, "the seller's own figure is inside");
    assert!(!assessment.verdict.convicts(), "a light that draws nine tenths of its name is not convicted");
}

#[test]
fn a_hundred_diodes_of_the_3_w_class_commonly_draw_120_to_150_w() {
    let light = seen(100);
    let assessment = assessed(&light, light.label_w);
    let (low, high) = draw(&assessment).common;
    println!("{}: common range {:.0} to {:.0} W", light.light, low.0, high.0);
    assert!(low.0 <= light.low_w && light.high_w <= high.0, "{low:?} to {high:?}");
    assert!(assessment.verdict.convicts(), "sold as {} W", light.label_w);
    // What it is seen to draw is within what it can draw.
    let honest = assessed(&light, light.high_w);
    assert_eq!(honest.counted.verdict, Some(Verdict::WithinReach));
}

/// The seller's 480 W for 200 diodes "3 W": over what the class current makes with mean efficiencies, inside its interval.
#[test]
fn two_hundred_diodes_of_the_3_w_class_can_draw_the_sellers_own_figure() {
    let light = seen(200);
    let assessment = assessed(&light, light.high_w);
    let (low, high) = draw(&assessment).full.wall_interval();
    println!(
        "{}: full draw {:.0} to {:.0} W; seller's figure {} W",
        light.light, low.0, high.0, light.high_w
    );
    assert!(low.0 <= light.high_w && light.high_w <= high.0);
    assert!(!assessment.verdict.convicts());
    assert!(assessed(&light, light.label_w).verdict.convicts(), "sold as {} W", light.label_w);
}

#[test]
fn the_684_diode_light_needs_a_plausible_current_for_what_its_meter_read() {
    let light = seen(684);
    let assessment = assessed(&light, light.low_w);
    let needed = assessment.needed.expect("on the curve");
    let current = needed.current.expect("one class").ma();
    println!("{}: {} W needs {current:.0} mA a die", light.light, light.low_w);
    // Between the lowest that such lights are commonly run at (0.4 x 150 mA) and the class current.
    assert!((60.0..=150.0).contains(&current), "{current} mA");
    assert_eq!(assessment.counted.verdict, Some(Verdict::WithinReach));
}
