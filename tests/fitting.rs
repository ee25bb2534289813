//! How many diodes would make a claim true, and how many a supply carries: against the estimate itself and the curve.

use std::process::Command;

use plainwatt::draw::{Draw, JUNCTION, Model, NoFit, Part, STEP, Shockley};
use plainwatt::facts::{Colour, Count, StatedClass};
use plainwatt::reference::{Die, Table};
use plainwatt::units::Watts;

fn model() -> Model {
    Model::new(Table::built_in()).expect("the built-in table fits its curves")
}

fn parts(model: &Model, groups: &[(f64, Colour, u32)]) -> Vec<Part> {
    let part = |(watts, colour, n): &(f64, Colour, u32)| Part {
        class: model.table().find(&StatedClass::plain(*watts)).expect("a class of the table"),
        colour: *colour,
        count: Count::exact(*n),
    };
    groups.iter().map(part).collect()
}

fn draw(model: &Model, groups: &[(f64, Colour, u32)]) -> Draw {
    Draw::of(model, &parts(model, groups), None).expect("inside the curves")
}

const MIX: [(f64, Colour, u32); 2] = [(3.0, Colour::DeepRed, 60), (3.0, Colour::RoyalBlue, 20)];

#[test]
fn that_many_diodes_draw_the_claim() {
    let model = model();
    let counted = draw(&model, &MIX);
    for claim in [20.0, 300.0, 1000.0] {
        let times = counted.packages_for(Watts(claim)) / 80.0;
        // The same mix a thousand times over, so that rounding to whole diodes does not show.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "some thousands")]
        let n = |part: u32| (f64::from(part) * times * 1000.0).round() as u32;
        let many = draw(&model, &[(3.0, Colour::DeepRed, n(60)), (3.0, Colour::RoyalBlue, n(20))]);
        let led = many.full.led.value / 1000.0;
        let wall = led.0 * (claim / counted_led(&counted, claim));
        assert!((wall / claim - 1.0).abs() < 1e-3, "{wall} W for {claim} W");
    }
    let same = counted.packages_for(counted.full.wall.value);
    assert!((same - 80.0).abs() < 1e-6, "its own draw needs its own diodes: {same}");
}

/// LED power behind a wall draw, by the driver's bounds alone (Regulation (EU) 2019/2020, Annex II Table 3).
fn counted_led(counted: &Draw, claim: f64) -> f64 {
    let (mut low, mut high) = (0.0, claim);
    for _ in 0..80 {
        let middle = f64::midpoint(low, high);
        let mean = f64::midpoint(
            plainwatt::reference::driver::eta_low(Watts(middle)),
            plainwatt::reference::driver::ETA_HIGH,
        );
        let wall = middle / mean + middle * plainwatt::reference::driver::AUX_MOST / 2.0;
        if wall < claim { low = middle } else { high = middle }
    }
    assert!(counted.full.led.value.0 > 0.0);
    low
}

#[test]
fn a_supply_is_never_overloaded_and_never_idle_by_more_than_one_of_each() {
    let model = model();
    let counted = draw(&model, &MIX);
    for supply in [20.0, 60.0, 100.0, 480.0] {
        let fit = counted.fit(&model, Watts(supply)).expect("it fits");
        assert!((fit.current.ma() - 700.0).abs() < 1e-9, "the class's current");
        assert!(fit.reach.0 > fit.running.0, "cold dice take more voltage");
        let taken = (fit.reach * fit.current).0;
        assert!(taken <= supply * (1.0 + 1e-9), "{taken} W of {supply}");
        let one_of_each: f64 = 2.0 * 4.0 * fit.current.0;
        assert!(taken > supply - one_of_each, "{taken} W of {supply}");
        assert!(fit.packages[0] >= 2 * fit.packages[1], "the mix is kept: {:?}", fit.packages);
    }
}

#[test]
fn what_cannot_be_fitted_says_why() {
    let model = model();
    let mixed = draw(&model, &[(3.0, Colour::White, 10), (1.0, Colour::Red, 10)]);
    assert_eq!(mixed.fit(&model, Watts(100.0)), Err(NoFit::MixedCurrents));
    let small = draw(&model, &MIX).fit(&model, Watts(2.0));
    let Err(NoFit::TooSmall { least }) = small else { panic!("{small:?}") };
    assert!(least.0 > 2.0 && draw(&model, &MIX).fit(&model, least * 1.001).is_ok(), "{least} is enough");
}

#[test]
fn a_tenth_of_a_volt_is_what_the_curve_says() {
    let model = model();
    let fit = draw(&model, &[(3.0, Colour::DeepRed, 10)]).fit(&model, Watts(100.0)).expect("it fits");
    let curve = Shockley::of(model.table().diode(Die::Power, Colour::DeepRed).0);
    let more = fit.steep.more.expect("inside the curve");
    let volts = |i| curve.voltage(i, JUNCTION).expect("inside").0;
    assert!((volts(fit.steep.current) - fit.steep.volts.0).abs() < 1e-9);
    assert!((volts(more) - (fit.steep.volts + STEP).0).abs() < 1e-9);
    // dI/dV of the equation is one over n V_T / I + Rs.
    let slope = curve.relative_slope(fit.steep.current).0;
    let first_order = fit.steep.current.0 * (1.0 + STEP.0 / slope);
    assert!((more.0 / first_order - 1.0).abs() < 0.1, "{more} against {first_order} A");
    assert!(more.0 > 1.1 * fit.steep.current.0, "a tenth of a volt is much");
}

#[test]
fn vet_tells_a_shopper_the_count_and_a_builder_the_supply() {
    let vet = |args: &[&str]| {
        let out =
            Command::new(env!("CARGO_BIN_EXE_plainwatt")).arg("vet").args(args).output().expect("it runs");
        String::from_utf8(if out.status.success() { out.stdout } else { out.stderr }).expect("UTF-8")
    };
    let light = ["--claim", "300", "--class", "3W", "--tally", "60 deep-red + 20 royal-blue"];
    let text = vet(&light);
    assert!(text.contains("diodes of this mix at full draw, not 80"), "{text}");
    assert!(!text.contains("supply"), "{text}");
    let text = vet(&[&light[..], &["--fit-supply", "100W"]].concat());
    for part in
        ["100 W DC carries", "constant current", "to reach", "not safe to touch", "licensed electrician"]
    {
        assert_eq!(text.matches(part).count(), 1, "{part} in\n{text}");
    }
    let honest = vet(&["--claim", "60", "--class", "3W", "--tally", "60 deep-red + 20 royal-blue"]);
    assert!(!honest.contains("diodes of this mix"), "{honest}");
    let json = vet(&[&light[..], &["--fit-supply", "100W", "--format", "json"]].concat());
    let value: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(value["build"]["packages"].as_array().map(Vec::len), Some(2));
    assert!(value["build"]["diodes_for_claim"].as_f64().is_some_and(|n| n > 80.0));
    let refused = vet(&[&light[..], &["--fit-supply", "0W"]].concat());
    assert!(refused.contains("--fit-supply"), "{refused}");
}
