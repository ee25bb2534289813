//! Bench practice: common practice, no source. Single dice at 700 mA from a bench supply, a short run, about 25 degrees
//! Celsius; what the class names stand for; one red die swept.

#![expect(clippy::print_stdout, reason = "what was measured is shown with --nocapture")]

use plainwatt::draw::{BENCH, OperatingPoint};
use plainwatt::facts::{Colour, StatedClass};
use plainwatt::reference::{ClassRow, Die, Table};
use plainwatt::units::{Amps, Volts};
use serde::Deserialize;

const AT_700_MA: &str = include_str!("../fixtures/checks/bench_practice.csv");
const RED_SWEEP: &str = include_str!("../fixtures/checks/red_sweep.csv");

#[derive(Debug, Deserialize)]
struct AtBench {
    colour: String,
    volts: f64,
    watts: f64,
}

#[derive(Debug, Deserialize)]
struct Swept {
    colour: String,
    volts: f64,
    amps: f64,
}

fn read<T: serde::de::DeserializeOwned>(text: &str) -> Vec<T> {
    let rows = csv::Reader::from_reader(text.as_bytes()).into_deserialize();
    rows.map(|row| row.expect("the fixture is well formed")).collect()
}

fn class(table: &Table, watts: f64) -> &ClassRow {
    table.class(table.find(&StatedClass::plain(watts)).expect("a class with a row"))
}

/// Volts of the curve of a power die at `current`, and their standard uncertainty.
fn curve(table: &Table, colour: &str, current: Amps) -> (f64, f64) {
    let colour = Colour::from_name(colour).expect("a colour of the table");
    let (row, own) = table.diode(Die::Power, colour);
    assert!(own, "{} has a row of its own", colour.name());
    let point = OperatingPoint::at(class(table, 3.0), row, current, BENCH).expect("inside the curve");
    // Section "uncertainty": the spread between products in level and, away from the test current, in slope.
    let u = row.u_vf.0.hypot(0.10 * (current / row.test).ln());
    assert!((point.u_voltage.0 - u * current.0).abs() < 1e-12, "the model's own u is the stated one");
    (point.die_voltage.0, u)
}

#[test]
fn each_bench_reading_at_700_ma_lies_in_the_models_95_percent_interval() {
    let table = Table::built_in();
    let readings: Vec<AtBench> = read(AT_700_MA);
    assert_eq!(readings.len(), 6);
    println!("colour      bench V  bench W  model V   z");
    for AtBench { colour, volts, watts } in readings {
        let (model, u) = curve(&table, &colour, Amps(0.7));
        let z = (volts - model) / u;
        println!("{colour:11} {volts:7.2} {watts:8.2} {model:8.3} {z:6.2}");
        assert!(z.abs() <= 1.96, "{colour}: {z}");
        // A bench supply's volts times amperes is the power into the die, so the watts agree when the volts do.
        assert!(((Volts(volts) * Amps(0.7)).0 - watts).abs() < 1e-9);
        assert!((watts - model * 0.7).abs() <= 1.96 * u * 0.7);
    }
}

#[test]
fn a_class_name_stands_for_a_current_and_not_for_its_watts() {
    let table = Table::built_in();
    for (watts, ma) in [(1.0, 350.0), (3.0, 700.0), (5.0, 1000.0)] {
        let class = class(&table, watts);
        assert!((class.die_current.ma() - ma).abs() < 1e-9, "{watts} W class: {} mA", class.die_current.ma());
        assert_eq!((class.series, class.parallel), (1, 1));
    }
    // None of the single dice of the bench takes the 3 W of its class's name at the 700 mA that it stands for.
    let readings: Vec<AtBench> = read(AT_700_MA);
    assert!(readings.iter().all(|r| r.watts < 3.0 * 0.9));
}

/// A bench sweep of one red die: every point of it lies in the 95 % interval of the colour's curve at that current.
#[test]
fn the_swept_red_die_stays_inside_the_red_curves_interval() {
    let table = Table::built_in();
    let points: Vec<Swept> = read(RED_SWEEP);
    assert_eq!(points.len(), 6);
    println!("red sweep: mA, bench V, z");
    for point in &points {
        let (model, u) = curve(&table, &point.colour, Amps(point.amps));
        let z = (point.volts - model) / u;
        println!("{:5.0} {:6.2} {z:6.2}", point.amps * 1e3, point.volts);
        assert!(z.abs() <= 1.96, "{point:?}: {z}");
    }
    // 700 mA is in both fixtures, with the same volts.
    assert!(points.iter().any(|p| (p.amps - 0.7).abs() < 1e-9 && (p.volts - 2.2).abs() < 1e-9));
}
