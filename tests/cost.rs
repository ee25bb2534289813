//! What a light costs, by hand calculation and through the program. The prices are invented.

use std::io::Write as _;
use std::process::{Command, Stdio};

use plainwatt::cost::{Draws, Prices, cost};
use plainwatt::units::{PhotonFlux, Watts};

fn close(a: f64, b: f64) {
    assert!((a - b).abs() <= 1e-9 * b.abs(), "{a} instead of {b}");
}

fn program(args: &[&str], input: &str) -> (bool, String) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_plainwatt"))
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    child.stdin.take().expect("an input").write_all(input.as_bytes()).expect("written");
    let ended = child.wait_with_output().expect("it ends");
    let text = if ended.status.success() { ended.stdout } else { ended.stderr };
    (ended.status.success(), String::from_utf8(text).expect("UTF-8"))
}

const LIGHT: [&str; 7] = ["vet", "--claim", "300", "--class", "3W", "--tally", "80 deep-red + 20 royal-blue"];

/// A kilowatt hour is 1000 W for an hour (SI Brochure, 9th edition: 3.6 MJ); the rest is done by hand.
#[test]
fn the_arithmetic_is_that_of_watts_hours_and_prices() {
    let prices = Prices { price: Some(90.0), tariff: Some(0.30), hours: 12.0 };
    let draws = Draws {
        common: Some((Watts(100.0), Watts(180.0))),
        full: (Watts(150.0), Watts(225.0)),
        flux: Some((PhotonFlux(200.0), PhotonFlux(450.0))),
    };
    let cost = cost(&prices, &draws);
    let per_watt = cost.per_watt.expect("a price");
    close(per_watt.low, 0.4);
    close(per_watt.high, 0.9);
    let per_flux = cost.per_flux.expect("a price");
    close(per_flux.low, 0.2);
    close(per_flux.high, 0.45);
    let day = cost.day.expect("a tariff");
    close(day.common.expect("common").low, 0.36);
    close(day.common.expect("common").high, 0.648);
    close(day.full.low, 0.54);
    close(day.full.high, 0.81);
    let year = cost.year.expect("a tariff");
    close(year.full.high, 0.81 * 365.0);
    close(cost.month.expect("a tariff").full.high * 12.0, year.full.high);
}

#[test]
fn what_is_not_known_is_absent() {
    let draws = Draws { common: None, full: (Watts(0.0), Watts(10.0)), flux: None };
    let none = cost(&Prices { price: Some(10.0), tariff: None, hours: 12.0 }, &draws);
    assert_eq!(
        (none.per_watt, none.per_flux, none.day),
        (None, None, None),
        "a draw of 0 has no price a watt"
    );
    let (ok, text) = program(&["vet", "--claim", "300", "--price", "89.99"], "");
    assert!(ok && text.contains("the draw is not known"), "{text}");
    let (_, text) = program(&["vet", "--claim", "300", "--price", "89.99", "--format", "json"], "");
    let value: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    assert!(value["cost"].is_null());
}

#[test]
fn vet_shows_price_and_running_cost_with_their_ranges() {
    let money = ["--price", "89.99", "--currency", "EUR", "--tariff", "0.31", "--hours", "18"];
    let (ok, text) = program(&[&LIGHT[..], &money[..]].concat(), "");
    assert!(ok, "{text}");
    for part in
        ["89.99 EUR", "a watt drawn", "a umol/s", "a day", "a month", "a year", "18 h a day at 0.31 EUR/kWh"]
    {
        assert!(text.contains(part), "{part} in\n{text}");
    }
    let (_, json) = program(&[&LIGHT[..], &money[..], &["--format", "json"]].concat(), "");
    let value: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    let number = |path: &str| value.pointer(path).and_then(serde_json::Value::as_f64).expect(path);
    close(number("/cost/price_per_w/low"), 89.99 / number("/wall_w/high"));
    close(number("/cost/price_per_w/high"), 89.99 / number("/common_wall_w/low"));
    close(number("/cost/day/common/low"), number("/common_wall_w/low") * 18.0 * 0.31 / 1000.0);
    close(number("/cost/year/full/high"), number("/wall_w/high") * 18.0 * 0.31 / 1000.0 * 365.0);
    let (_, plain) = program(&LIGHT, "");
    assert!(!plain.contains("a day"), "nothing was asked about money");
}

#[test]
fn a_reading_takes_the_place_of_the_estimate() {
    let args = ["--measured", "135W", "--price", "100", "--tariff", "0.2", "--format", "json"];
    let (_, json) = program(&[&LIGHT[..], &args[..]].concat(), "");
    let value: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert!(value["cost"]["day"]["common"].is_null(), "how it is run is known");
    let number = |path: &str| value.pointer(path).and_then(serde_json::Value::as_f64).expect(path);
    let half = 1.96 * number("/measured_w/u");
    close(number("/cost/price_per_w/low"), 100.0 / (135.0 + half));
}

#[test]
fn grade_sorts_by_the_price_of_a_watt_the_cheapest_first() {
    let rows = "listing,claim_w,class,tally,price,units_in_pack\n\
                dear,300,3W,100 white,200,\nunknown,300,3W,100 white,,\n\
                pack,300,3W,100 white,120,2\ncheap,300,3W,200 white,150,\n";
    let (ok, text) = program(&["grade", "-", "--sort", "price-per-watt"], rows);
    assert!(ok && text.contains("price"), "{text}");
    let place = |name: &str| text.find(name).unwrap_or_else(|| panic!("{name} in\n{text}"));
    assert!(place("pack") < place("cheap") && place("cheap") < place("dear"), "{text}");
    assert!(place("dear") < place("unknown"), "no price, no rank\n{text}");
    let (_, plain) = program(&["grade", "-", "--sort", "share"], rows);
    assert!(!plain.contains("price"));
    let (_, csv) = program(&["grade", "-", "--sort", "price-per-watt", "--format", "csv", "--wide"], rows);
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let at = reader.headers().expect("headers").iter().position(|h| h == "price_per_w").expect("a column");
    let prices: Vec<String> = reader.records().map(|r| r.expect("a row")[at].to_owned()).collect();
    let numbers: Vec<f64> = prices[..3].iter().map(|p| p.parse().expect("a number")).collect();
    assert!(numbers.is_sorted() && prices[3].is_empty(), "{prices:?}");
}

#[test]
fn a_wrong_amount_is_refused_with_what_is_accepted() {
    for (flag, value, accepted) in [
        ("--price", "-5", "89.99"),
        ("--price", "89,99", "89.99"),
        ("--tariff", "0", "0.31"),
        ("--hours", "25", "at most 24"),
        ("--currency", "1 EUR", "such as EUR"),
    ] {
        let (ok, text) = program(&[&LIGHT[..], &[flag, value]].concat(), "");
        assert!(!ok && text.contains(flag) && text.contains(accepted), "{flag} {value}: {text}");
    }
}

/// A terminal of 80 x 24: what it draws, what it costs, what it replaces and whether to believe it.
#[test]
fn a_pasted_title_with_a_price_is_answered_on_one_screen() {
    let title = "300W LED grow light, 100 x 3W, 70 red 20 blue 10 white, PPF 600, replaces 400W HPS";
    let money = ["--price", "89.99", "--currency", "EUR", "--tariff", "0.31", "--brief"];
    let (ok, text) = program(&[&["vet", title][..], &money[..]].concat(), "");
    assert!(ok, "{text}");
    for part in ["verdict: ", "wall draw", "replaces 400 W HPS: ", "a watt drawn", "a year"] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    assert!(text.lines().count() < 24, "{} lines and the prompt\n{text}", text.lines().count());
}
