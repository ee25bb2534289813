//! One row of diodes.csv: a die of one kind and colour.

use serde::{Deserialize, Serialize};

use crate::facts::Colour;
use crate::units::{Amps, Ohms, Volts};

/// The kind of die: how large it is, and so which current it is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[repr(u8)]
pub enum Die {
    /// High-power, about 1 mm2, tested at 350 mA (ultraviolet at 500 mA).
    Power,
    /// Mid-power, tested at 120 mA.
    Mid,
    /// Small, tested at 60 mA.
    Small,
}

impl Die {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::Power, Self::Mid, Self::Small];

    /// The name in the table.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Power => "power",
            Self::Mid => "mid",
            Self::Small => "small",
        }
    }
}

/// A die's forward voltage at its test point, the slope about it, and its limits.
#[derive(Debug, Clone, PartialEq)]
pub struct DiodeRow {
    /// Kind of die.
    pub die: Die,
    /// Colour.
    pub colour: Colour,
    /// Peak wavelength, nm; absent for phosphor colours and `unstated`.
    pub peak_nm: Option<f64>,
    /// Test current I0.
    pub test: Amps,
    /// Typical forward voltage V0 at the test current and 25 degrees C.
    pub vf: Volts,
    /// Published minimum.
    pub vf_min: Volts,
    /// Published maximum.
    pub vf_max: Volts,
    /// Standard uncertainty of V0 between products of the colour.
    pub u_vf: Volts,
    /// Ideality factor n.
    pub ideality: f64,
    /// Series resistance Rs.
    pub rs: Ohms,
    /// Change of forward voltage with junction temperature, V/K (negative).
    pub dvf_dt: f64,
    /// Published maximum current.
    pub max: Amps,
    /// Radiant efficiency (W/W) as found on the market.
    pub eff_low: f64,
    /// Radiant efficiency (W/W) of the best published package.
    pub eff_high: f64,
    /// How far to trust the row.
    pub grade: String,
    /// Where each figure comes from.
    pub source: String,
}

/// The row as the file writes it.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub(super) struct Record {
    die: Die,
    colour: String,
    peak_nm: Option<f64>,
    test_ma: f64,
    vf_v: f64,
    vf_min_v: f64,
    vf_max_v: f64,
    u_vf_v: f64,
    ideality: f64,
    rs_ohm: f64,
    dvf_dt_mv_per_k: f64,
    max_ma: f64,
    eff_low: f64,
    eff_high: f64,
    grade: String,
    source: String,
}

impl Record {
    /// The row with its units, or what is wrong with it.
    pub(super) fn row(self) -> Result<DiodeRow, String> {
        let colour = Colour::from_name(&self.colour)
            .ok_or_else(|| format!("no colour is called '{}'", self.colour))?;
        let positive = [
            ("test_ma", self.test_ma),
            ("vf_v", self.vf_v),
            ("vf_min_v", self.vf_min_v),
            ("vf_max_v", self.vf_max_v),
            ("u_vf_v", self.u_vf_v),
            ("max_ma", self.max_ma),
        ];
        if let Some((name, value)) = positive.iter().find(|(_, v)| !(v.is_finite() && *v > 0.0)) {
            return Err(format!("{name} is {value}, which should be above 0"));
        }
        if !(self.ideality.is_finite() && self.ideality >= 1.0) {
            return Err(format!("ideality is {}, which should be 1 or more", self.ideality));
        }
        if !(self.rs_ohm.is_finite() && self.rs_ohm >= 0.0) {
            return Err(format!("rs_ohm is {}, which should be 0 or more", self.rs_ohm));
        }
        if !(-10.0..=0.0).contains(&self.dvf_dt_mv_per_k) {
            return Err(format!("dvf_dt_mv_per_k is {}, which should be -10 to 0", self.dvf_dt_mv_per_k));
        }
        if !(self.vf_min_v <= self.vf_v && self.vf_v <= self.vf_max_v) {
            return Err(format!("vf_v {} is outside {} to {}", self.vf_v, self.vf_min_v, self.vf_max_v));
        }
        if !(0.0 < self.eff_low && self.eff_low <= self.eff_high && self.eff_high < 1.0) {
            return Err(format!(
                "efficiencies {} to {} should rise within 0 to 1",
                self.eff_low, self.eff_high
            ));
        }
        if self.grade.is_empty() || self.source.is_empty() {
            return Err("grade and source should be filled".to_owned());
        }
        Ok(DiodeRow {
            die: self.die,
            colour,
            peak_nm: self.peak_nm,
            test: Amps::from_ma(self.test_ma),
            vf: Volts(self.vf_v),
            vf_min: Volts(self.vf_min_v),
            vf_max: Volts(self.vf_max_v),
            u_vf: Volts(self.u_vf_v),
            ideality: self.ideality,
            rs: Ohms(self.rs_ohm),
            dvf_dt: self.dvf_dt_mv_per_k / 1000.0,
            max: Amps::from_ma(self.max_ma),
            eff_low: self.eff_low,
            eff_high: self.eff_high,
            grade: self.grade,
            source: self.source,
        })
    }
}

impl From<&DiodeRow> for Record {
    fn from(row: &DiodeRow) -> Self {
        Self {
            die: row.die,
            colour: row.colour.name().to_owned(),
            peak_nm: row.peak_nm,
            test_ma: row.test.ma(),
            vf_v: row.vf.0,
            vf_min_v: row.vf_min.0,
            vf_max_v: row.vf_max.0,
            u_vf_v: row.u_vf.0,
            ideality: row.ideality,
            rs_ohm: row.rs.0,
            dvf_dt_mv_per_k: row.dvf_dt * 1000.0,
            max_ma: row.max.ma(),
            eff_low: row.eff_low,
            eff_high: row.eff_high,
            grade: row.grade.clone(),
            source: row.source.clone(),
        }
    }
}
