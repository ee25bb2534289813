//! Lights whose true draw is made up by chance, from the distributions that the estimate states (JCGM 101:2008).
//!
//! Written apart from the estimate that it is held against: it reads the two tables itself and has its own forward voltage,
//! driver formula and way of adding. Nothing here calls the crate.

use std::collections::HashMap;

use serde::Deserialize;

use crate::chance::Chance;

/// kB T / e at 298.15 K, in volts.
const THERMAL: f64 = 0.025_692_579;

#[derive(Debug, Clone, Deserialize)]
struct Die {
    #[serde(rename = "die")]
    kind: String,
    colour: String,
    test_ma: f64,
    vf_v: f64,
    u_vf_v: f64,
    ideality: f64,
    rs_ohm: f64,
    dvf_dt_mv_per_k: f64,
}

#[derive(Debug, Clone, Deserialize)]
pub struct Class {
    #[serde(rename = "class")]
    pub name: String,
    pub nominal_w: f64,
    die: String,
    series_dice: f64,
    parallel_dice: f64,
    die_ma: f64,
}

/// The two tables as they stand in the files.
pub struct Tables {
    dice: HashMap<(String, String), Die>,
    pub classes: Vec<Class>,
}

impl Tables {
    pub fn read() -> Self {
        let rows = csv::Reader::from_reader(include_str!("../../src/reference/diodes.csv").as_bytes());
        let dice = rows.into_deserialize().map(|row| {
            let row: Die = row.expect("a row of diodes.csv");
            ((row.kind.clone(), row.colour.clone()), row)
        });
        let rows = csv::Reader::from_reader(include_str!("../../src/reference/classes.csv").as_bytes());
        Self {
            dice: dice.collect(),
            classes: rows.into_deserialize().map(|row| row.expect("a row of classes.csv")).collect(),
        }
    }

    /// A group of `count` packages, each count off by up to `doubt` either way.
    pub fn group(&self, class: &Class, colour: &str, count: u32, doubt: u32) -> Group {
        let find = |colour: &str| self.dice.get(&(class.die.clone(), colour.to_owned()));
        let die = find(colour).or_else(|| find("unstated")).expect("every kind of die has an unstated row");
        Group {
            class: class.clone(),
            colour: colour.to_owned(),
            count,
            doubt,
            batch: format!("{} {colour}", class.die),
            die: die.clone(),
        }
    }
}

/// Packages of one class and colour.
#[derive(Debug, Clone)]
pub struct Group {
    pub class: Class,
    pub colour: String,
    pub count: u32,
    pub doubt: u32,
    batch: String,
    die: Die,
}

/// A light, with the number of the batch that each group's dice come from.
pub struct Light {
    pub groups: Vec<Group>,
    batches: Vec<usize>,
    errors: Vec<f64>,
}

impl Light {
    pub fn of(groups: Vec<Group>) -> Self {
        let mut names: Vec<String> = Vec::new();
        let batches = groups
            .iter()
            .map(|group| {
                names.iter().position(|name| *name == group.batch).unwrap_or_else(|| {
                    names.push(group.batch.clone());
                    names.len() - 1
                })
            })
            .collect();
        Self { groups, batches, errors: vec![0.0; names.len()] }
    }

    /// LED power and wall draw of one such light as it might truly be, in watts.
    ///
    /// Drive current +-5 % and junction temperature 75 +-20 degrees Celsius are the light's; the forward voltage's error is
    /// its batch's; each count in doubt has its own; the driver's efficiency lies between bounds, fans and controls between
    /// nothing and 6 % of the LED power. The lower bound of efficiency is that at the true LED power, unless `bound_at`
    /// holds it at the LED power given.
    pub fn true_draw(&mut self, chance: &mut Chance, bound_at: Option<f64>) -> (f64, f64) {
        let drive = 1.0 + chance.between(-0.05, 0.05);
        let warmer = 50.0 + chance.between(-20.0, 20.0);
        for error in &mut self.errors {
            *error = chance.normal();
        }
        let mut led = 0.0;
        for (group, batch) in self.groups.iter().zip(&self.batches) {
            let die = &group.die;
            let amps = group.class.die_ma / 1000.0 * drive;
            let test = die.test_ma / 1000.0;
            let fold = (amps / test).ln();
            let spread = (die.u_vf_v * die.u_vf_v + 0.01 * fold * fold).sqrt();
            let volts = die.vf_v
                + die.ideality * THERMAL * fold
                + die.rs_ohm * (amps - test)
                + die.dvf_dt_mv_per_k / 1000.0 * warmer
                + self.errors[*batch] * spread;
            let doubt = f64::from(group.doubt);
            let packages =
                f64::from(group.count) + if doubt > 0.0 { chance.between(-doubt, doubt) } else { 0.0 };
            led += packages * group.class.series_dice * group.class.parallel_dice * amps * volts;
        }
        let p = bound_at.unwrap_or(led).powf(0.81);
        let least = (p / (1.09 * p + 2.10)).min(0.85);
        (led, led / chance.between(least, 0.95) + chance.between(0.0, 0.06) * led)
    }
}
