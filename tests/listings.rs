//! Every labelled listing is read; the table says field by field how many were read right.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use plainwatt::facts::{LampKind, Read};
use plainwatt::reading::Reader;
use serde::Deserialize;
use serde_json::{Value, json};

#[derive(Deserialize)]
struct Listing {
    id: String,
    text: String,
    labels: BTreeMap<String, Value>,
}

/// One field over all texts.
#[derive(Default)]
struct Score {
    right: u32,
    wrong: u32,
    /// Labelled, but read as not stated.
    missed: u32,
}

fn listings(file: &str) -> Vec<Listing> {
    let path = format!("{}/fixtures/{file}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap().lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

/// What was read, in the shape of the labels.
fn as_labels(read: &Read) -> BTreeMap<&'static str, Value> {
    let mut colours: BTreeMap<&str, u32> = BTreeMap::new();
    for c in &read.colours {
        *colours.entry(c.value.word.key()).or_default() += c.value.count;
    }
    let actual = read
        .actual_w
        .map(|a| a.value)
        .map(|a| if a.low == a.high { json!(a.high.0) } else { json!([a.low.0, a.high.0]) });
    BTreeMap::from([
        ("advertised_w", json!(read.advertised_w.map(|t| t.value.value))),
        ("diode_count", json!(read.diode_count.map(|t| t.value))),
        ("class_w", json!(read.class.map(|t| t.value.watts.0))),
        ("actual_w", json!(actual)),
        ("replaces_w", json!(read.replaces.map(|t| t.value.watts.0))),
        ("replaces_kind", json!(read.replaces.and_then(|t| t.value.kind).map(LampKind::key))),
        ("ppf", json!(read.ppf.map(|t| t.value.value))),
        ("ppe", json!(read.ppe.map(|t| t.value.value))),
        ("volts", json!(read.volts.map(|t| [t.value.0.value, t.value.1.value]))),
        ("amps", json!(read.amps.map(|t| t.value.value))),
        ("units_in_pack", json!(read.units_in_pack.map_or(1, |t| t.value))),
        ("colours", if colours.is_empty() { Value::Null } else { json!(colours) }),
    ])
}

fn same(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => (a.as_f64().unwrap() - b.as_f64().unwrap()).abs() < 1e-6,
        (Value::Array(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b)),
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len() && a.iter().all(|(k, v)| b.get(k).is_some_and(|w| same(v, w)))
        }
        // A single draw may be labelled as a pair.
        (Value::Number(_), Value::Array(pair)) | (Value::Array(pair), Value::Number(_)) => {
            let one = if a.is_number() { a } else { b };
            pair.iter().all(|p| same(p, one))
        }
        _ => a == b,
    }
}

/// Reads a file of listings; returns the scores, and the table with every miss.
fn score(file: &str) -> (BTreeMap<String, Score>, String) {
    let mut scores: BTreeMap<String, Score> = BTreeMap::new();
    let mut misses = String::new();
    let mut reader = Reader::new();
    for listing in listings(file) {
        let found = as_labels(reader.read(&listing.text));
        for (field, label) in &listing.labels {
            let got = &found[field.as_str()];
            let score = scores.entry(field.clone()).or_default();
            if same(got, label) {
                score.right += 1;
                continue;
            }
            if got.is_null() {
                score.missed += 1;
            } else {
                score.wrong += 1;
            }
            writeln!(misses, "{} {field}: read {got}, labelled {label}", listing.id).unwrap();
            if std::env::var_os("PLAINWATT_SHOW_TEXT").is_some() {
                writeln!(misses, "      {}", listing.text.replace('\n', " ⏎ ")).unwrap();
            }
        }
    }
    let mut table = format!("{file}\n{:<16}{:>7}{:>7}{:>7}\n", "field", "right", "wrong", "null");
    for (field, s) in &scores {
        writeln!(table, "{field:<16}{:>7}{:>7}{:>7}", s.right, s.wrong, s.missed).unwrap();
    }
    let (right, all) =
        scores.values().fold((0, 0), |(r, a), s| (r + s.right, a + s.right + s.wrong + s.missed));
    writeln!(
        table,
        "all fields      {:>6.2} % of {all}\n{misses}",
        100.0 * f64::from(right) / f64::from(all)
    )
    .unwrap();
    (scores, table)
}

/// At least 98 % of all fields right, and `advertised_w` right or absent on at least 99 %.
#[expect(clippy::print_stdout, reason = "the table is what this test shows")]
fn assert_bars(file: &str) {
    let (scores, table) = score(file);
    println!("{table}");
    let (right, all) =
        scores.values().fold((0, 0), |(r, a), s| (r + s.right, a + s.right + s.wrong + s.missed));
    assert!(right * 100 >= all * 98, "only {right} of {all} fields are right\n{table}");
    let claim = &scores["advertised_w"];
    let texts = claim.right + claim.wrong + claim.missed;
    assert!(claim.wrong * 100 <= texts, "advertised_w is wrong on {} of {texts}\n{table}", claim.wrong);
}

#[test]
fn the_labelled_listings_are_read_right() {
    assert_bars("listings.jsonl");
}

#[test]
fn further_listings_in_other_words_are_read_right() {
    assert_bars("listings-more.jsonl");
}

#[test]
fn listings_worded_afresh_are_read_right() {
    assert_bars("listings-afresh.jsonl");
}
