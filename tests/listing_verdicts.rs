//! A misread number must never accuse anyone: on no labelled text may the reader's figures convict where the labels' do not.
//!
//! The texts are invented (fixtures/README.md); the labels were made by two people independently.

use plainwatt::comparison::{Reason, Settings, Verdict, assess};
use plainwatt::draw::Model;
use plainwatt::facts::{Listing, Read, Span, Stated, StatedClass, Taken};
use plainwatt::reference::Table;
use plainwatt::units::Watts;
use plainwatt::{intake, reading};
use serde_json::Value;

const SOMEWHERE: Span = Span { start: 0, end: 0 };

fn verdict(read: &Read, model: &Model) -> Verdict {
    let mut listing = Listing::default();
    intake::complete(&mut listing, read);
    assess(&listing, model, &Settings::default()).verdict
}

/// What was read, with the three figures that can accuse replaced by the labels'.
fn as_labelled(read: &Read, labels: &Value) -> Read {
    let mut read = read.clone();
    let number = |key: &str| labels[key].as_f64();
    read.advertised_w = number("advertised_w")
        .map(|value| Taken { value: Stated { value, half_digit: 0.5 }, span: SOMEWHERE });
    read.diode_count =
        labels["diode_count"].as_u64().map(|n| Taken { value: u32::try_from(n).unwrap(), span: SOMEWHERE });
    let package = read.class.and_then(|t| t.value.package);
    read.class = number("class_w")
        .map(|watts| Taken { value: StatedClass { watts: Watts(watts), package }, span: SOMEWHERE });
    read
}

#[test]
fn no_misread_figure_convicts() {
    let model = Model::new(Table::built_in()).unwrap();
    let mut accused = Vec::new();
    let texts = concat!(
        include_str!("../fixtures/listings.jsonl"),
        include_str!("../fixtures/listings-more.jsonl"),
        include_str!("../fixtures/listings-afresh.jsonl"),
    );
    for line in texts.lines() {
        let case: Value = serde_json::from_str(line).unwrap();
        let read = reading::read(case["text"].as_str().unwrap());
        let ours = verdict(&read, &model);
        let labelled = verdict(&as_labelled(&read, &case["labels"]), &model);
        if ours.convicts() && !labelled.convicts() {
            accused.push(format!("{}: {} where the labels say {}", case["id"], ours.word(), labelled.word()));
        }
    }
    assert!(accused.is_empty(), "accused on a misread figure:\n{}", accused.join("\n"));
}

#[test]
fn a_wrong_headline_would_be_caught() {
    let model = Model::new(Table::built_in()).unwrap();
    let read = reading::read("Honest panel 200W LED grow light, 100x3W");
    assert!(!verdict(&read, &model).convicts());
    let mut wrong = read;
    wrong.advertised_w = Some(Taken { value: Stated { value: 2000.0, half_digit: 0.5 }, span: SOMEWHERE });
    assert!(verdict(&wrong, &model).convicts());
}

#[test]
fn a_light_of_cobs_and_diodes_is_not_accused_by_either_alone() {
    let model = Model::new(Table::built_in()).unwrap();
    for title in [
        "500W LED grow light 4 x 50W COB + 100 x 3W",
        "400W LED grow light 4x50W COB and 60 x 3W diodes",
        "Grow light 600W: 6 COB + 120 x 3W LEDs",
        "LED grow light 300W 60 pcs 3W + 40 pcs 5W",
    ] {
        assert!(!verdict(&reading::read(title), &model).convicts(), "{title}");
    }
}

/// Two spec sheets of the trade that contradict themselves: photon flux over efficacy makes fewer watts than they claim.
#[test]
fn a_spec_sheet_that_contradicts_itself_is_convicted_by_its_own_words() {
    let model = Model::new(Table::built_in()).unwrap();
    for (sheet, implied) in [
        ("240W LED grow light, PPF 300.82 umol/s, PPE 1.5 umol/J", 200.5),
        ("150W LED grow light, PPF 200.31 umol/s, PPE 1.54 umol/J", 130.1),
    ] {
        let mut listing = Listing::default();
        intake::complete(&mut listing, &reading::read(sheet));
        let result = assess(&listing, &model, &Settings::default());
        assert!((result.implied.unwrap().0 - implied).abs() < 0.05, "{sheet}: {:?}", result.implied);
        assert_eq!((result.verdict, result.evidence.word()), (Verdict::Overstated, "own-words"), "{sheet}");
    }
}

/// Kusuma, Pattison & Bugbee 2020, Horticulture Research 7:56: the best white packages have 2.9 umol/J.
#[test]
fn an_efficacy_that_is_itself_doubted_convicts_no_watts() {
    let model = Model::new(Table::built_in()).unwrap();
    let verdict = |text: &str| {
        let mut listing = Listing::default();
        intake::complete(&mut listing, &reading::read(text));
        let result = assess(&listing, &model, &Settings::default());
        let codes: Vec<_> = result.reasons.iter().map(Reason::code).collect();
        (result.verdict, codes.contains(&"implied-by-doubtful"))
    };
    let counted = "300W LED grow light 100x3W 100 white, PPF 900 umol/s";
    assert_eq!(verdict(&format!("{counted}, PPE 4.0 umol/J")), (Verdict::Unsettled, true));
    let bare = "300W LED grow light, PPF 900 umol/s";
    assert_eq!(verdict(&format!("{bare}, PPE 4.0 umol/J")), (Verdict::Overstated, false), "deep red has 4.5");
    assert_eq!(verdict(&format!("{bare}, PPE 4.8 umol/J")), (Verdict::Unsettled, true));
}
