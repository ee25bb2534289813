//! Amperes at a voltage, as a listing or a type plate states them, against what the light takes there.
//!
//! A stated current differs from every other claim in one way: it is mostly a rating, the most that the light (or its
//! adapter) may take, which a plate has to give for the sake of the circuit. A maker who states more than the light takes
//! overstates nothing, so what would be `overstated` for watts is `unsettled` here, whatever the evidence. That a current is
//! too low for the claimed watts is said of the watts, by [`own_words`](super::own_words): watts are never more than
//! volt-amperes.
//!
//! A current that is too low can overload a circuit. A meter shows it (`understated`); a count only warns, since diodes may be
//! run below the current of their class.
//!
//! The power factor is anything from the least that Regulation (EU) 2019/2020, Annex II Table 4 allows to 1, and where the
//! current is stated for a range of voltages, the voltage is any of them. The decision takes the ends that speak for the claim.

use super::figure_reason::{Current, FigureReason};
use super::settings::Settings;
use super::verdict::{Evidence, Verdict};
use crate::circuit::{amps, assumed_factor, is_mains};
use crate::draw::Draw;
use crate::facts::{Listing, MeterReading, Supply};
use crate::uncertain::{Uncertain, normal_cdf};
use crate::units::{Amps, Volts, Watts};

/// How far a reading's voltage may be from the stated one for its amperes to count there, as a share: common practice (115
/// and 120 V, 220 and 240 V name the same mains), no source.
const SAME_MAINS: f64 = 0.1;

/// The verdict on a stated current: what it is, what it rests on and why.
pub(super) fn amperes(
    listing: &Listing<'_>,
    supply: &Supply,
    measured: Option<Uncertain<Watts>>,
    draw: Option<&Draw>,
    settings: &Settings,
) -> (Verdict, Evidence, FigureReason) {
    let high = Volts(supply.volts.value);
    let volts = (listing.supply_from.unwrap_or(high), high);
    if !is_mains(high) {
        return (Verdict::Unsettled, Evidence::None, FigureReason::AmperesOfAdapter);
    }
    let limits = Limits {
        least: supply.amps.value * (1.0 - settings.tolerance),
        most: (supply.amps.value + supply.amps.half_digit) * (1.0 + settings.tolerance),
        settings,
    };
    if let Some(read) = listing.reading.and_then(|reading| current_read(reading, volts, settings)) {
        let (verdict, reason) = limits.measured(read);
        return (verdict, Evidence::Measured, reason);
    }
    let (wall, evidence) = match (measured, draw) {
        (Some(measured), _) => (measured, Evidence::Measured),
        (None, Some(draw)) => (draw.full.wall, Evidence::Counted),
        (None, None) => return (Verdict::Unsettled, Evidence::None, FigureReason::NothingCounted),
    };
    let (verdict, reason) = limits.estimated(wall, volts, evidence == Evidence::Measured);
    (verdict, evidence, reason)
}

/// The current that a meter read at that mains, with its uncertainty: as much, as a share, as the meter's watts have.
fn current_read(
    reading: MeterReading,
    stated: (Volts, Volts),
    settings: &Settings,
) -> Option<Uncertain<Amps>> {
    let (volts, read) = match reading {
        MeterReading::Watts(_) => return None,
        MeterReading::Factors { volts, amps, .. } | MeterReading::VoltAmps { volts, amps } => (volts, amps),
    };
    let volt_amperes = volts * read;
    let u = read * (settings.meter.u(volt_amperes) / volt_amperes);
    let there = stated.0.0 <= volts.0 * (1.0 + SAME_MAINS) && stated.1.0 >= volts.0 * (1.0 - SAME_MAINS);
    there.then_some(Uncertain { value: read, u })
}

/// What is consistent with the stated current, in amperes.
struct Limits<'a> {
    least: f64,
    most: f64,
    settings: &'a Settings,
}

impl Limits<'_> {
    /// JCGM 106:2012, clause 7, both limits.
    fn measured(&self, read: Uncertain<Amps>) -> (Verdict, FigureReason) {
        let above = |limit: f64| normal_cdf((read.value.0 - limit) / read.u.0);
        let reason = FigureReason::AmperesMeasured { amps: read.value };
        if self.settings.sure(above(self.most)) {
            (Verdict::Understated, reason)
        } else if self.settings.sure_not(above(self.least)) {
            let (low, high) = read.interval_95();
            (
                Verdict::Unsettled,
                FigureReason::AmperesRating(Current { low, high, factor: None, measured: true }),
            )
        } else if self.settings.sure(above(self.least)) && self.settings.sure_not(above(self.most)) {
            (Verdict::BorneOut, reason)
        } else {
            (Verdict::Unsettled, reason)
        }
    }

    /// From a wall draw whose power factor is not known.
    fn estimated(
        &self,
        wall: Uncertain<Watts>,
        volts: (Volts, Volts),
        measured: bool,
    ) -> (Verdict, FigureReason) {
        let factor = assumed_factor(wall.value);
        let least = |wall: Watts| amps(wall, volts.1, 1.0);
        let most = |wall: Watts| amps(wall, volts.0, factor);
        let above = |limit: f64, current: &dyn Fn(Watts) -> Amps| {
            normal_cdf((current(wall.value).0 - limit) / current(wall.u).0)
        };
        let (low, high) = wall.interval_95();
        let current = Current { low: least(low), high: most(high), factor: Some(factor), measured };
        if self.settings.sure(above(self.most, &least)) {
            return if measured {
                (Verdict::Understated, FigureReason::Amperes(current))
            } else {
                (Verdict::Unsettled, FigureReason::AmperesExceeded(current))
            };
        }
        if self.settings.sure_not(above(self.least, &most)) {
            return (Verdict::Unsettled, FigureReason::AmperesRating(current));
        }
        let reaches = !measured && self.settings.sure(above(self.least, &least));
        (if reaches { Verdict::WithinReach } else { Verdict::Unsettled }, FigureReason::Amperes(current))
    }
}
