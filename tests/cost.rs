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
    // What refuses its arguments may not read its input.
    let _ = child.stdin.take().expect("an input").write_all(input.as_bytes());
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
fn a_page_has_the_costs_and_the_other_claims_too() {
    let more = ["--price", "89.99", "--tariff", "0.31", "--ppf", "300", "--format", "markdown"];
    let (ok, text) = program(&[&LIGHT[..], &more[..]].concat(), "");
    assert!(ok, "{text}");
    for part in ["- price: 89.99: ", "- to run: ", "- at full: ", "- photon flux 300 umol/s: "] {
        assert_eq!(text.matches(part).count(), 1, "{part} in\n{text}");
    }
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

/// Invented: the same 100 diodes, the same diodes measured lower, twice as many, half of them far red.
const LIGHTS: &str = "listing,claim_w,class,tally,measured_w,price\n\
                      plain,300,3W,100 white,,200\nlow,300,3W,100 white,90,150\n\
                      many,600,3W,200 white,,210\nfarred,300,3W,50 white + 50 far-red,,110\n\
                      unpriced,300,3W,90 white,,\nunknown,300,,,,60\n";

/// Names in the order of the table, and the column that it is sorted by.
fn sorted(by: &str, more: &[&str]) -> (Vec<String>, Vec<Option<f64>>) {
    let args = [&["grade", "-", "--sort", by, "--format", "csv", "--wide"][..], more].concat();
    let (ok, csv) = program(&args, LIGHTS);
    assert!(ok, "{csv}");
    let column = match by {
        "price-per-watt" => "price_per_w",
        "price-per-flux" => "price_per_umol_s",
        "day-cost" => "day_cost",
        "month-cost" => "month_cost",
        "year-cost" => "year_cost",
        other => panic!("{other}"),
    };
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let at = reader.headers().expect("headers").iter().position(|h| h == column).expect("a column");
    reader
        .records()
        .map(|row| row.expect("a row"))
        .map(|row| (row[0].to_owned(), row[at].parse().ok()))
        .unzip()
}

#[test]
fn grade_sorts_by_every_cost_the_cheapest_first_and_what_has_none_last() {
    let tariff = ["--tariff", "0.25", "--hours", "10"];
    for (by, more, order) in [
        ("price-per-watt", &[][..], "many farred plain low unpriced unknown"),
        ("price-per-flux", &[], "many plain farred low unpriced unknown"),
        ("day-cost", &tariff, "low farred unpriced plain many unknown"),
        ("month-cost", &tariff, "low farred unpriced plain many unknown"),
        ("year-cost", &tariff, "low farred unpriced plain many unknown"),
    ] {
        let (names, keys) = sorted(by, more);
        assert_eq!(names.join(" "), order, "{by}: {keys:?}");
        let known: Vec<f64> = keys.iter().map_while(|key| *key).collect();
        assert!(known.is_sorted(), "{by}: {keys:?}");
        assert_eq!(keys.iter().flatten().count(), known.len(), "what has none is last: {by}: {keys:?}");
        let (ok, table) = program(&[&["grade", "-", "--sort", by][..], more].concat(), LIGHTS);
        let head = if by.starts_with("price") { "price" } else { "cost a" };
        assert!(ok && table.lines().next().is_some_and(|first| first.contains(head)), "{table}");
        assert!(table.lines().all(|line| line.chars().count() <= 80), "{table}");
    }
    // A reading of 90 W for 10 h at 0.25 a kWh, by hand.
    close(sorted("day-cost", &tariff).1[0].expect("a cost"), 0.225);
}

#[test]
fn running_costs_want_a_tariff_and_prices_a_price() {
    for by in ["day-cost", "month-cost", "year-cost"] {
        let (ok, text) = program(&["grade", "-", "--sort", by], LIGHTS);
        assert!(!ok && text.contains(&format!("--sort {by}: found no tariff")) && text.contains("--tariff"));
    }
    let out = Command::new(env!("CARGO_BIN_EXE_plainwatt"))
        .args(["grade", "demo-data/README.md", "--header", "title", "--sort", "price-per-watt"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("it ends");
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(said.contains("not sorted by price-per-watt: no listing has a price"), "{said}");
}

#[test]
fn json_and_wide_csv_carry_the_costs_with_their_ranges() {
    let (_, json) = program(&["grade", "-", "--format", "json", "--tariff", "0.25"], LIGHTS);
    let rows: Vec<serde_json::Value> =
        json.lines().map(|line| serde_json::from_str(line).expect("JSON")).collect();
    let costs: Vec<&str> = rows.iter().map(|r| r["cost"]["evidence"].as_str().unwrap_or("none")).collect();
    assert_eq!(costs, ["counted", "measured", "counted", "counted", "counted", "none"]);
    let (_, csv) = program(&["grade", "-", "--format", "csv", "--wide", "--tariff", "0.25"], LIGHTS);
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let heads = reader.headers().expect("headers").clone();
    let table: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    for (head, path) in [
        ("price_per_w_low", "/cost/price_per_w/low"),
        ("price_per_umol_s_high", "/cost/price_per_umol_s/high"),
        ("year_common_low", "/cost/year/common/low"),
        ("year_full_high", "/cost/year/full/high"),
        ("photons_umol_s", "/photons/ppf/value"),
        ("far_red_umol_s", "/photons/far_red/value"),
        ("efficacy_umol_j", "/photons/ppe/value"),
    ] {
        let at = heads.iter().position(|h| h == head).expect(head);
        for (row, object) in table.iter().zip(&rows) {
            match (row[at].parse::<f64>(), object.pointer(path).and_then(serde_json::Value::as_f64)) {
                (Ok(cell), Some(full)) => assert!((cell / full - 1.0).abs() < 1e-5, "{head}: {cell} {full}"),
                (Err(_), None) => {}
                other => panic!("{head}: {other:?}"),
            }
        }
    }
    let (_, lean) = program(&["grade", "-", "--format", "csv", "--tariff", "0.25"], LIGHTS);
    let head = lean.lines().next().expect("a header");
    assert!(!head.contains("cost") && !head.contains("price") && !head.contains("umol"), "{head}");
}

/// What a seller admits is the best that is known of some lights; it is said to be the seller's.
#[test]
fn without_a_count_the_listings_own_draw_is_priced_and_named_so() {
    let light =
        ["vet", "300W panel, actual power 100W", "--price", "50", "--tariff", "0.25", "--hours", "10"];
    let (ok, text) = program(&light, "");
    assert!(ok && text.contains("0.50 a watt by its own words") && text.contains("0.25 a day"), "{text}");
    let (_, json) = program(&[&light[..], &["--format", "json"]].concat(), "");
    let value: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(value["cost"]["evidence"], "own-words");
}
