//! The published numbers of `fixtures/checks/checks.csv`, and agreement with them to the tolerance stated there.

use serde::Deserialize;

const CHECKS: &str = include_str!("../../fixtures/checks/checks.csv");

/// One published number, or several that belong together, separated by semicolons.
#[derive(Debug, Deserialize)]
pub struct Published {
    pub id: String,
    pub inputs: String,
    value: String,
    tolerance: String,
    source: String,
}

/// The rows whose id starts so; never none, so that a mistyped id cannot pass as agreement.
pub fn rows(prefix: &str) -> Vec<Published> {
    let mut reader = csv::Reader::from_reader(CHECKS.as_bytes());
    let rows: Vec<Published> =
        reader.deserialize().map(|row| row.expect("the fixture is well formed")).collect();
    let rows: Vec<Published> = rows.into_iter().filter(|row| row.id.starts_with(prefix)).collect();
    assert!(!rows.is_empty(), "checks.csv has no row {prefix}");
    rows
}

/// The row of exactly that id.
pub fn row(id: &str) -> Published {
    rows(id).into_iter().find(|row| row.id == id).unwrap_or_else(|| panic!("checks.csv has no row {id}"))
}

impl Published {
    /// The numbers.
    pub fn values(&self) -> Vec<f64> {
        self.value.split(';').map(|v| v.parse().expect("a number")).collect()
    }

    /// Fails unless `computed` is the published number to its tolerance.
    pub fn agrees(&self, computed: f64) {
        let value = self.values()[0];
        let within = match self.tolerance.strip_suffix(" rel") {
            Some(share) => share.parse::<f64>().expect("a number") * value.abs(),
            None => self.tolerance.parse().expect("a number"),
        };
        assert!(
            (computed - value).abs() <= within,
            "{}: {computed} instead of {value} within {within}\n  inputs: {}\n  source: {}",
            self.id,
            self.inputs,
            self.source
        );
    }
}
