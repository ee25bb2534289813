//! Heat, amperes and circuits against published figures, and through the program.

mod published;

use std::process::Command;

use plainwatt::circuit::{Circuit, amps, assumed_factor, assumed_volt_amperes, btu_per_hour};
use plainwatt::units::{Amps, Volts, Watts};

fn vet(args: &[&str]) -> (bool, String) {
    let out = Command::new(env!("CARGO_BIN_EXE_plainwatt")).arg("vet").args(args).output().expect("it runs");
    let text = if out.status.success() { out.stdout } else { out.stderr };
    (out.status.success(), String::from_utf8(text).expect("UTF-8"))
}

fn json(args: &[&str]) -> serde_json::Value {
    let (ok, text) = vet(&[args, &["--format", "json"]].concat());
    assert!(ok, "{text}");
    serde_json::from_str(&text).expect("JSON")
}

const LIGHT: [&str; 4] = ["--class", "3W", "--tally", "100 white"];

/// International Table Btu, 1055.05585262 J.
#[test]
fn heat_is_in_btu_of_the_international_table() {
    published::row("btu").agrees(btu_per_hour(Watts(1.0)));
    let value = json(&LIGHT);
    let high = value["wall_w"]["high"].as_f64().expect("watts");
    let heat = value["load"]["heat_btu_h"][1].as_f64().expect("heat");
    assert!((heat / high - published::rows("btu")[0].values()[0]).abs() < 1e-9, "all of the draw is heat");
}

/// NFPA 70 (NEC) 210.20(A): a continuous load takes 12 A of a 15 A breaker and 16 A of a 20 A one.
#[test]
fn a_circuit_carries_four_fifths_of_its_breaker() {
    for (id, breaker) in [("nec_15A", 15.0), ("nec_20A", 20.0)] {
        let circuit = Circuit { volts: Volts(120.0), breaker: Amps(breaker) };
        let row = published::row(id);
        let most = row.values()[0];
        assert!((circuit.continuous().0 - most).abs() < 1e-9, "{}", row.inputs);
        assert_eq!(circuit.lights(Amps(most)), 1, "exactly the limit");
        assert_eq!(circuit.lights(Amps(most * 1.001)), 0);
        assert_eq!(circuit.lights(Amps(most / 4.0)), 4);
    }
}

/// Regulation (EU) 2019/2020, Annex II Table 4: at least 0.9 over 25 W, 0.5 from 5 to 25 W.
#[test]
fn volt_amperes_count_not_watts() {
    assert!((assumed_factor(Watts(25.1)) - 0.9).abs() < 1e-12);
    assert!((assumed_factor(Watts(25.0)) - 0.5).abs() < 1e-12);
    assert!((amps(Watts(108.0), Volts(120.0), 0.9).0 - 1.0).abs() < 1e-12);
    let value = json(&[&LIGHT[..], &["--measured", "120V 1.5A pf 0.6", "--circuit", "120V 15A"]].concat());
    assert!(
        (value["load"]["power_factor"].as_f64().expect("a factor") - 0.6).abs() < 1e-12,
        "the measured one"
    );
    let amps = value["load"]["amps"][1].as_f64().expect("amperes");
    let high = 108.0 + 1.96 * value["measured_w"]["u"].as_f64().expect("u");
    assert!((amps - high / 0.6 / 120.0).abs() < 1e-9);
}

#[test]
fn without_a_voltage_there_are_no_amperes() {
    let load = &json(&LIGHT)["load"];
    assert!(load["amps"].is_null() && load["volts"].is_null() && load["lights"].is_null());
    assert!(!vet(&LIGHT).1.contains("amperes"));
    let titled = |volts: &str| json(&[&format!("300W LED 100 x 3W, {volts}")])["load"]["amps"].clone();
    assert!(titled("AC85-265V").is_null() && titled("DC24V").is_null(), "which mains is not known");
    assert!(titled("AC120V").is_array());
    let (_, text) = vet(&["--claim", "300", "--circuit", "120V 15A"]);
    assert!(text.contains("the draw is not known"), "{text}");
}

#[test]
fn amperes_on_the_type_plate_count_where_they_are_more() {
    let circuit = ["--circuit", "120V 15A"];
    let estimate = json(&[&LIGHT[..], &circuit].concat())["load"]["lights"].as_u64().expect("a number");
    let plate = [&LIGHT[..], &circuit, &["--supply", "115V 5A"]].concat();
    assert_eq!(json(&plate)["load"]["lights"], 2, "12 A over 5 A");
    assert!(estimate > 2);
    let elsewhere = [&LIGHT[..], &circuit, &["--supply", "240V 5A"]].concat();
    assert_eq!(json(&elsewhere)["load"]["lights"], estimate, "those are at another mains");
}

#[test]
fn a_circuit_names_its_rule_and_who_decides_once() {
    let (ok, text) = vet(&["--class", "3W", "--tally", "500 white", "--circuit", "120V 15A"]);
    assert!(ok);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in
        ["NEC 210.20(A)", "rule of the USA", "licensed electrician", "Btu/h", "A at 120 V", "0.9 assumed"]
    {
        assert_eq!(text.matches(part).count(), 1, "{part} in\n{text}");
    }
    for wrong in ["120V", "15A", "400V 16A", "0V 15A", "120 15"] {
        let (ok, text) = vet(&[&LIGHT[..], &["--circuit", wrong]].concat());
        assert!(!ok && text.contains("--circuit") && text.contains("120V 15A"), "{wrong}: {text}");
    }
}

/// At 25 W the power factor assumed jumps; as long as a light may draw no more than that, more diodes promise no more lights.
#[test]
fn a_light_about_25_w_is_counted_with_the_worse_power_factor() {
    let mut before = u64::MAX;
    for count in 8..40 {
        let tally = format!("{count} white");
        let value = json(&["--class", "1W", "--tally", &tally, "--circuit", "230V 16A"]);
        if value["load"]["heat_btu_h"][0].as_f64().expect("heat") > btu_per_hour(Watts(25.0)) {
            break;
        }
        let lights = value["load"]["lights"].as_u64().expect("a number");
        assert!(lights <= before, "{lights} of {count} diodes after {before}");
        before = lights;
    }
    assert!(before < 70, "it went past 25 W");
    let (least, most, factor) = assumed_volt_amperes(Watts(20.0), Watts(30.0));
    assert!((least.0 - 25.0 / 0.9).abs() < 1e-9 && (most.0 - 50.0).abs() < 1e-9 && factor < 0.6);
    let (_, most, factor) = assumed_volt_amperes(Watts(20.0), Watts(54.0));
    assert!((most.0 - 60.0).abs() < 1e-9 && factor > 0.8, "past 45 W the larger end is worse");
}

#[test]
fn no_light_at_all_is_called_none() {
    let (ok, text) = vet(&["--class", "3W", "--tally", "5000 white", "--circuit", "120V 15A"]);
    assert!(ok && text.contains("15 A: none") && !text.contains("0 such"), "{text}");
}
