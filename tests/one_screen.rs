//! A pasted title with a price is answered on one screen of 80 x 24: what the light draws, what it costs, what it replaces
//! and whether to believe it. The titles and prices are invented.

#![expect(clippy::print_stderr, reason = "a skipped test says so")]

use std::process::{Command, Stdio};

use plainwatt::comparison::{Settings, assess};
use plainwatt::draw::Model;
use plainwatt::facts::Listing;
use plainwatt::reference::Table;
use plainwatt::report::{Light, Run, light, style::Style, worth};
use plainwatt::{intake, reading};
use serde_json::Value;
use unicode_width::UnicodeWidthStr as _;

/// The prompt takes the last line of a screen.
const LINES: usize = 23;
const COLUMNS: usize = 80;

const TITLES: [&str; 7] = [
    "300W LED grow light, 100 x 3W, 70 red 20 blue 10 white, PPF 600, replaces 400W HPS",
    "Halfpenny 1000W LED Grow Light, 100 x 5W chips, actual power 205W±5%, replaces 600W HPS, AC85-265V",
    "LED grow light 450W 150pcs 3W full spectrum with UV IR, 100 red 30 blue 10 white 5 UV 5 IR, PPF 900umol/s, PPE 2.8 \
     umol/J, replaces 600W HPS, AC 120V 2.5A, 24 x 12 inch, model GL-600W",
    "植物ライト ３００Ｗ ＬＥＤ １００個 ３Ｗ フルスペクトル 育成ライト 600W HPS相当 赤70 青20 白10",
    "Grow light bar 45W, 225 LED panel red blue, 75 x 0.2W",
    "Zarnleaf 1500W plant lamp, double chip 150 x 10W, 120V 1.9A, veg and bloom switch, daisy chain up to 8",
    "300W grow light (100x3W) 60 red 20 blue 10 white 6 UV 4 IR, PPF 850 umol/s, PPE 4.1 umol/J, replaces 600W HPS, 120V \
     2.5A, actual power 135W",
];

const MONEY: [&str; 6] = ["--price", "89.99", "--currency", "EUR", "--tariff", "0.31"];

/// The text without what only paints it.
fn unpainted(text: &str) -> String {
    let mut plain = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("\u{1b}[") {
        plain.push_str(&rest[..at]);
        let end = rest[at..].find('m').expect("a sequence that colours");
        rest = &rest[at + end + 1..];
    }
    plain + rest
}

#[track_caller]
fn fits(text: &str) {
    let lines = text.lines().count();
    assert!(lines <= LINES, "{lines} lines and the prompt\n{text}");
    for line in text.lines() {
        assert!(line.width() <= COLUMNS, "{} columns: {line}\n{text}", line.width());
    }
}

/// Believe it, draws, costs, replaces: in that order.
#[track_caller]
fn answers(text: &str) {
    let place = |part: &str| text.find(part).unwrap_or_else(|| panic!("no '{part}' in\n{text}"));
    assert_eq!(place("verdict: "), 0, "{text}");
    let draws = place("\nwall draw  ");
    assert!(place("\nprice  ") > draws && place("\nto run  ") > draws, "{text}");
    place("a watt drawn");
    place("a year");
    let lamp =
        ["replaces      HPS ", "replaces      at best HPS ", "replaces      less than HPS ", "- replaces "];
    assert!(lamp.iter().any(|lamp| text.contains(lamp)), "{text}");
    place("--working shows how");
}

#[test]
fn a_pasted_title_with_a_price_is_answered_on_one_screen() {
    for title in TITLES {
        let out = Command::new(env!("CARGO_BIN_EXE_plainwatt"))
            .args(["vet", title])
            .args(MONEY)
            .stdin(Stdio::null())
            .output()
            .expect("the program starts");
        assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
        let text = String::from_utf8(out.stdout).expect("UTF-8");
        assert!(!text.contains('\u{1b}'), "no colour in a pipe");
        fits(&text);
        answers(&text);
    }
}

/// `script` gives the program a pseudo-terminal; without it the test says that it is skipped.
#[test]
fn a_terminal_of_eighty_columns_shows_the_same_in_colour() {
    for title in TITLES {
        for no_color in ["", "1"] {
            let program = env!("CARGO_BIN_EXE_plainwatt");
            let money = MONEY.join(" ");
            let done = Command::new("script")
                .args([
                    "-qec",
                    &format!("stty cols 80 rows 24; '{program}' vet \"$TITLE\" {money}"),
                    "/dev/null",
                ])
                .env("TERM", "xterm")
                .env("NO_COLOR", no_color)
                .env("TITLE", title)
                .stdin(Stdio::null())
                .output();
            let Some(done) = done.ok().filter(|done| done.status.success()) else {
                eprintln!("skipped: no pseudo-terminal from the command 'script'");
                return;
            };
            let shown = String::from_utf8(done.stdout).expect("UTF-8").replace("\r\n", "\n");
            assert_eq!(shown.contains('\u{1b}'), no_color.is_empty(), "{shown}");
            let plain = unpainted(&shown);
            fits(&plain);
            answers(&plain);
        }
    }
}

/// The labelled texts (fixtures/README.md) are long and full of figures: 607 of them.
#[test]
fn no_text_of_a_listing_runs_off_the_screen() {
    let model = Model::new(Table::built_in()).expect("the built-in table fits its curves");
    let settings = Settings::default();
    let run = Run { model: &model, settings: &settings };
    let money = worth::Money { tariff: Some(0.31), hours: 12.0, currency: "EUR".to_owned() };
    let texts =
        concat!(include_str!("../fixtures/listings.jsonl"), include_str!("../fixtures/listings-more.jsonl"));
    for line in texts.lines() {
        let case: Value = serde_json::from_str(line).expect("JSON");
        let title = case["text"].as_str().expect("a text");
        let read = reading::read(title);
        let mut listing = Listing { title: Some(title.into()), price: Some(89.99), ..Listing::default() };
        intake::complete(&mut listing, &read);
        let assessment = assess(&listing, &model, &settings);
        let light = Light {
            listing: &listing,
            read: Some(&read),
            assessment: &assessment,
            money: Some(&money),
            circuit: None,
            fit_supply: None,
        };
        for coloured in [false, true] {
            let layout = light::Layout { width: COLUMNS, style: Style { coloured }, working: false };
            fits(&unpainted(&light::light(run, light, layout)));
        }
    }
}

#[test]
fn the_working_has_everything_that_the_screen_leaves_out() {
    let title = TITLES[2];
    let of = |more: &[&str]| {
        let out = Command::new(env!("CARGO_BIN_EXE_plainwatt"))
            .args(["vet", title])
            .args(more)
            .output()
            .expect("the program starts");
        String::from_utf8(out.stdout).expect("UTF-8")
    };
    let (screen, working) = (of(&[]), of(&["--working"]));
    assert!(screen.lines().count() < working.lines().count());
    for part in ["from \"450W\"", "not taken: it is part of a model", "uncertainty budget", "honest label"] {
        assert!(working.contains(part), "{part} in\n{working}");
        assert!(!screen.contains(part), "{part} in\n{screen}");
    }
    for figure in ["- photon flux 900 umol/s: ", "- photon efficacy 2.8 umol/J: ", "- 2.5 A at 120 V: "] {
        assert!(screen.contains(figure) && working.contains(figure), "{figure}");
    }
}
