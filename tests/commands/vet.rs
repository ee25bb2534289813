//! `vet`: one light, in every form.

use serde_json::Value;

use crate::program::run;

const LIGHT: [&str; 7] = [
    "vet",
    "--claim",
    "300",
    "--class",
    "3W",
    "--tally",
    "60 deep-red + 20 royal-blue + 10 white + 6 uv-a + 4 far-red",
];

fn light(more: &[&str]) -> Vec<&'static str> {
    let more = more.iter().map(|m| -> &'static str { Box::leak((*m).to_owned().into_boxed_str()) });
    LIGHT.into_iter().chain(more).collect()
}

#[test]
fn a_counted_light_is_answered_with_its_cautions() {
    run(&LIGHT).printed("vet.txt", "");
}

#[test]
fn the_working_is_shown_where_it_is_asked_for() {
    run(&light(&["--working"])).printed("vet_working.txt", "");
}

#[test]
fn a_measured_light_is_shown_with_what_it_runs_at_and_the_budget() {
    run(&light(&["--measured", "120.4V 1.18A pf 0.97", "--working"])).printed("vet_measured.txt", "");
}

#[test]
fn every_kind_of_evidence_is_shown_with_its_own_verdict() {
    let more = ["--admits", "110-120W", "--supply", "120V 1.0A", "--ppf", "200", "--ppe", "1.5", "--working"];
    run(&light(&more)).printed("vet_own_words.txt", "");
}

#[test]
fn csv_has_every_column() {
    run(&light(&["--format", "csv"])).printed("vet.csv", "");
}

#[test]
fn markdown_is_a_section_for_a_page() {
    run(&light(&["--format", "markdown"])).printed("vet.md", "");
    run(&light(&["--format", "markdown", "--measured", "135"])).printed("vet_measured.md", "");
}

#[test]
fn json_gives_per_package_watts_that_multiply_and_add_up() {
    let ran = run(&light(&["--format", "json"]));
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let json: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["verdict"], "overstated");
    assert_eq!(json["evidence"], "counted");
    assert_eq!(json["basis"], "class-sum");
    assert_eq!(json["claim_w"], 300.0);
    assert_eq!(json["class_ma"], 700.0);
    let groups = json["groups"].as_array().unwrap();
    assert_eq!(groups.len(), 5);
    let number = |value: &Value| value.as_f64().unwrap();
    let mut led = 0.0;
    for group in groups {
        let each = number(&group["ma"]) / 1000.0 * number(&group["volts"]);
        assert!((each - number(&group["watts_each"])).abs() < 1e-9, "{group}");
        assert!((each * number(&group["count"]) - number(&group["watts"])).abs() < 1e-6, "{group}");
        led += number(&group["watts"]);
    }
    assert!((led - number(&json["led_w"]["value"])).abs() < 1e-6);
    assert!((number(&json["wall_w"]["value"]) / 300.0 - number(&json["share"])).abs() < 1e-12);
}

#[test]
fn the_budget_adds_up_to_the_uncertainty_of_the_wall_draw() {
    let ran = run(&light(&["--format", "json"]));
    let json: Value = serde_json::from_str(&ran.out).unwrap();
    let parts = json["budget"].as_array().unwrap();
    let watts: Vec<f64> = parts.iter().map(|part| part["u_w"].as_f64().unwrap()).collect();
    assert!(watts.is_sorted_by(|a, b| a >= b), "{watts:?}");
    let sum = watts.iter().map(|u| u * u).sum::<f64>().sqrt();
    let whole = json["wall_w"]["u"].as_f64().unwrap();
    assert!((sum - whole).abs() < 1e-9, "{sum} {whole}");
}

#[test]
fn what_is_not_known_is_null_and_never_zero() {
    let ran = run(&["vet", "--claim", "25", "--format", "json"]);
    let json: Value = serde_json::from_str(&ran.out).unwrap();
    let object = json.as_object().unwrap();
    let known = ["claim_w", "verdict", "evidence", "basis", "tolerance", "confidence", "table"];
    for (field, value) in object {
        match value {
            Value::Array(items) => assert!(items.is_empty() || field == "reasons", "{field}"),
            value => assert_eq!(known.contains(&field.as_str()), !value.is_null(), "{field}: {value}"),
        }
    }
    assert_eq!(json["verdict"], "unsettled");
    assert_eq!(json["evidence"], "none");
    assert_eq!(object.len(), 38);
}

#[test]
fn tolerance_and_confidence_move_the_verdict() {
    let verdict = |more: &[&str]| {
        let light = ["vet", "--claim", "90", "--class", "1W", "--tally", "64 red + 18 blue + 8 white"];
        let arguments: Vec<&str> = light.iter().chain(more).chain(&["--format", "json"]).copied().collect();
        let json: Value = serde_json::from_str(&run(&arguments).out).unwrap();
        json["verdict"].as_str().unwrap().to_owned()
    };
    assert_eq!(verdict(&[]), "unsettled");
    assert_eq!(verdict(&["--tolerance", "30"]), "within-reach");
    assert_eq!(verdict(&["--tolerance", "0"]), "overstated");
    assert_eq!(verdict(&["--tolerance", "0", "--confidence", "99.9"]), "unsettled");
}

#[test]
fn where_a_meter_bears_the_claim_out_nothing_is_said_of_what_would_make_it_true() {
    let light = ["vet", "--claim", "300", "--class", "3W", "--tally", "100 red", "--measured", "290W"];
    for more in [&[][..], &["--working"]] {
        let ran = run(&[&light[..], more].concat());
        assert!(ran.out.contains("Borne out") && ran.out.contains("by the count"), "{}", ran.out);
        assert!(!ran.out.contains("true with") && !ran.out.contains("wall draw  "), "{}", ran.out);
    }
}
