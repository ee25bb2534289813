//! Amperes at a voltage: a claim with a verdict of its own, never a conviction, since a plate states a rating.

use std::process::Command;

use plainwatt::circuit::{amps, phases};
use plainwatt::comparison::{Claimed, Evidence, Figure, Settings, Verdict, assess};
use plainwatt::draw::Model;
use plainwatt::facts::{Colour, Count, Group, Listing, MeterReading, Stated, StatedClass, Supply, Tally};
use plainwatt::reference::Table;
use plainwatt::units::{Amps, Volts, Watts};

fn model() -> Model {
    Model::new(Table::built_in()).expect("the built-in table fits its curves")
}

fn supply(volts: f64, amps: f64) -> Supply {
    let stated = |value| Stated { value, half_digit: 0.005 };
    Supply { volts: stated(volts), amps: stated(amps) }
}

/// 100 red, blue and white diodes of the 3 W class.
fn panel(supply: Supply) -> Listing<'static> {
    let group = |colour, n| Group { colour, count: Count::exact(n), class: None };
    let groups = [group(Colour::DeepRed, 60), group(Colour::RoyalBlue, 20), group(Colour::White, 20)];
    Listing {
        class: Some(StatedClass::plain(3.0)),
        tally: Some(Tally { groups: groups.into_iter().collect(), lower_bound: false }),
        supply: Some(supply),
        ..Listing::default()
    }
}

fn figure(listing: &Listing<'_>, model: &Model) -> Figure {
    let figures = assess(listing, model, &Settings::default()).figures;
    assert_eq!(figures.len(), 1, "{figures:?}");
    assert!(matches!(figures[0].claimed, Claimed::Amperes { .. }));
    figures[0]
}

fn graded(listing: &Listing<'_>, model: &Model) -> (Verdict, Evidence, &'static str) {
    let figure = figure(listing, model);
    (figure.verdict, figure.evidence, figure.reason.code())
}

#[test]
fn a_count_reaches_a_current_or_leaves_it_open() {
    let model = model();
    let wall = assess(&panel(supply(120.0, 1.0)), &model, &Settings::default()).counted.draw.expect("a draw");
    let full = wall.full.wall.value.0 / 120.0 * 0.95;
    let at = |amps: f64| graded(&panel(supply(120.0, amps)), &model);
    assert_eq!(at(full), (Verdict::WithinReach, Evidence::Counted, "amperes-estimated"));
    assert_eq!(at(full * 0.4), (Verdict::Unsettled, Evidence::Counted, "amperes-exceeded"));
    assert_eq!(at(full * 4.0), (Verdict::Unsettled, Evidence::Counted, "amperes-rating"));
}

/// Type plates state the most that a light takes (common practice, no source), so a large figure is no fault; and a count
/// does not know how hard the diodes are run, so it calls no figure too low.
#[test]
fn no_current_whatever_its_size_is_convicted() {
    let model = model();
    let read = [
        None,
        Some(MeterReading::Watts(Watts(135.0))),
        Some(MeterReading::Factors { volts: Volts(120.0), amps: Amps(1.2), power_factor: 0.95 }),
        Some(MeterReading::VoltAmps { volts: Volts(118.0), amps: Amps(1.2) }),
    ];
    for reading in read {
        for volts in [12.0, 24.0, 100.0, 120.0, 230.0, 265.0, 400.0] {
            for step in 1..80 {
                let amps = 0.02 * 1.15_f64.powi(step);
                let light = Listing { reading, ..panel(supply(volts, amps)) };
                let (verdict, evidence, code) = graded(&light, &model);
                assert!(!verdict.convicts(), "{amps} A at {volts} V, {reading:?}");
                let by_count = evidence == Evidence::Counted;
                assert!(!(by_count && verdict == Verdict::Understated), "{amps} A at {volts} V: {code}");
            }
        }
    }
}

/// JCGM 106:2012, clause 7, both limits, on the amperes themselves.
#[test]
fn a_meter_decides_about_the_current_it_read() {
    let model = model();
    let read = |volts: f64, amps: f64| {
        Some(MeterReading::Factors { volts: Volts(volts), amps: Amps(amps), power_factor: 0.9 })
    };
    let at = |amps: f64, reading| graded(&Listing { reading, ..panel(supply(120.0, amps)) }, &model);
    let measured = Evidence::Measured;
    assert_eq!(at(1.5, read(118.0, 1.5)), (Verdict::BorneOut, measured, "amperes-measured"));
    assert_eq!(at(1.0, read(118.0, 1.5)), (Verdict::Understated, measured, "amperes-measured"));
    assert_eq!(at(1.36, read(118.0, 1.5)), (Verdict::Unsettled, measured, "amperes-measured"));
    assert_eq!(at(3.0, read(118.0, 1.5)), (Verdict::Unsettled, measured, "amperes-rating"));
    // At another mains the current is another, so only the watts count there.
    assert_eq!(at(1.5, read(230.0, 0.8)).2, "amperes-estimated");
}

/// Watts are never more than volt-amperes: what was read takes at least W/V.
#[test]
fn watts_read_make_a_current_too_low_only_at_a_power_factor_of_one() {
    let model = model();
    let reading = Some(MeterReading::Watts(Watts(120.0)));
    let at = |amps: f64| graded(&Listing { reading, ..panel(supply(120.0, amps)) }, &model);
    assert_eq!(at(0.8), (Verdict::Understated, Evidence::Measured, "amperes-estimated"));
    assert_eq!(at(0.95).0, Verdict::Unsettled, "at a power factor of 1 it is as stated");
    assert_eq!(at(1.1).0, Verdict::Unsettled, "without the power factor nothing is borne out");
    assert_eq!(at(2.0), (Verdict::Unsettled, Evidence::Measured, "amperes-rating"));
}

#[test]
fn what_nothing_bears_on_is_left_open() {
    let model = model();
    let bare = Listing { supply: Some(supply(120.0, 0.6)), claim: Some(Watts(300.0)), ..Listing::default() };
    assert_eq!(graded(&bare, &model), (Verdict::Unsettled, Evidence::None, "nothing-counted"));
    // The watts are what too few amperes speak against.
    assert_eq!(assess(&bare, &model, &Settings::default()).verdict, Verdict::Overstated);
    let adapter = figure(&panel(supply(24.0, 5.0)), &model);
    assert_eq!((adapter.verdict, adapter.reason.code()), (Verdict::Unsettled, "amperes-of-adapter"));
}

/// Where a text pairs no voltage with the current, it may be meant for any that it gives.
#[test]
fn a_range_of_voltages_gives_its_benefit_to_the_claim() {
    let model = model();
    let at = |amps: f64, from: Option<f64>| {
        graded(&Listing { supply_from: from.map(Volts), ..panel(supply(265.0, amps)) }, &model)
    };
    assert_eq!(at(0.4, None).2, "amperes-exceeded");
    assert_eq!(at(0.4, Some(85.0)).2, "amperes-exceeded", "at any of those voltages");
    assert_eq!(at(1.2, None).2, "amperes-rating");
    assert_eq!(at(1.2, Some(85.0)).2, "amperes-estimated", "it may be the current at 85 V");
    assert_eq!(at(9.0, Some(85.0)).2, "amperes-rating");
    let title = "300W LED 100 x 3W, AC85-265V 3A";
    let mut listing = Listing { title: Some(title.into()), ..Listing::default() };
    plainwatt::intake::complete(&mut listing, &plainwatt::reading::read(title));
    assert_eq!(listing.supply_from, Some(Volts(85.0)));
}

/// Three phases share the current: S = sqrt(3) V I.
#[test]
fn from_three_hundred_and_eighty_volts_the_current_is_that_of_each_conductor() {
    assert!((phases(Volts(379.0)) - 1.0).abs() < 1e-12);
    let each = amps(Watts(1000.0), Volts(400.0), 0.9).0;
    assert!((each * 400.0 * 3.0_f64.sqrt() * 0.9 - 1000.0).abs() < 1e-9);
}

#[test]
fn a_title_a_flag_and_a_column_give_the_same_row() {
    let program = |args: &[&str], input: &str| {
        use std::io::Write as _;
        let mut child = Command::new(env!("CARGO_BIN_EXE_plainwatt"))
            .args(args)
            .stdin(std::process::Stdio::piped())
            .stdout(std::process::Stdio::piped())
            .stderr(std::process::Stdio::null())
            .spawn()
            .expect("the program starts");
        child.stdin.take().expect("an input").write_all(input.as_bytes()).expect("written");
        let out = child.wait_with_output().expect("it ends").stdout;
        String::from_utf8(out).expect("UTF-8")
    };
    let claims = |json: &str| {
        let value: serde_json::Value = serde_json::from_str(json).expect("JSON");
        value["claims"].clone()
    };
    let titled = claims(&program(&["vet", "300W LED 100 x 3W, 120V 1.7A", "--format", "json"], ""));
    let flagged = ["vet", "--claim", "300", "--class", "3W", "--tally", "100", "--supply", "120V 1.7A"];
    let flagged = claims(&program(&[&flagged[..], &["--format", "json"]].concat(), ""));
    let rows = "claim_w,class,tally,supply_v,supply_a\n300,3W,100,120,1.7\n";
    let graded = claims(&program(&["grade", "-", "--format", "json"], rows));
    assert_eq!((&titled, &flagged), (&flagged, &graded));
    assert_eq!((&titled[0]["what"], &titled[0]["unit"]), (&"amps".into(), &"A".into()));
    assert_eq!(titled[0]["claimed"].as_f64(), Some(1.7));
    assert_eq!(titled[0]["volts"], serde_json::json!([120.0, 120.0]));
    let wide = program(&["grade", "-", "--format", "csv", "--wide"], rows);
    let mut reader = csv::Reader::from_reader(wide.as_bytes());
    let at = reader.headers().expect("headers").iter().position(|h| h == "amps_verdict").expect("a column");
    let row = reader.records().next().expect("a row").expect("a row");
    assert_eq!(row[at], *titled[0]["verdict"].as_str().expect("a verdict"));
}

#[test]
fn an_adapters_volts_give_no_amperes_of_the_mains() {
    let model = model();
    let light = panel(supply(24.0, 5.0));
    assert!(light.supply.is_some());
    let out = Command::new(env!("CARGO_BIN_EXE_plainwatt"))
        .args(["vet", "--class", "3W", "--tally", "100", "--supply", "24V 5A", "--format", "json"])
        .output()
        .expect("the program starts");
    let value: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
    assert!(value["load"]["amps"].is_null(), "the voltage of the mains is not known");
    assert_eq!(figure(&light, &model).evidence, Evidence::None);
}
