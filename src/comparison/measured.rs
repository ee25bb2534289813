//! What a meter says.

use super::reason::Reason;
use super::settings::Settings;
use super::verdict::Verdict;
use crate::facts::MeterReading;
use crate::uncertain::{Uncertain, normal_cdf};
use crate::units::Watts;

/// The watts of a reading with their uncertainty; none for volt-amperes, which are not watts.
pub(super) fn watts(reading: MeterReading, settings: &Settings) -> Option<Uncertain<Watts>> {
    let value = match reading {
        MeterReading::Watts(watts) => watts,
        MeterReading::Factors { volts, amps, power_factor } => volts * amps * power_factor,
        MeterReading::VoltAmps { .. } => return None,
    };
    Some(Uncertain { value, u: settings.meter.u(value) })
}

/// The verdict of a reading on a claim (JCGM 106:2012, clause 7, both limits).
pub(super) fn decide(measured: Uncertain<Watts>, claim: Watts, settings: &Settings) -> Verdict {
    let above = |limit: Watts| normal_cdf((measured.value - limit) / measured.u);
    let p_low = above(settings.least(claim));
    let p_high = above(settings.most(claim));
    if settings.sure_not(p_low) {
        Verdict::Overstated
    } else if settings.sure(p_high) {
        Verdict::Understated
    } else if settings.sure(p_low) && settings.sure_not(p_high) {
        Verdict::BorneOut
    } else {
        Verdict::Unsettled
    }
}

/// Volts times amperes without a power factor is a ceiling on watts: it can convict, never bear out.
pub(super) fn decide_volt_amps(
    reading: MeterReading,
    claim: Option<Watts>,
    settings: &Settings,
) -> Option<(Verdict, Reason)> {
    let MeterReading::VoltAmps { volts, amps } = reading else { return None };
    let most = volts * amps;
    let convicts = claim.is_some_and(|claim| {
        let u = settings.meter.u(most);
        settings.sure_not(normal_cdf((most - settings.least(claim)) / u))
    });
    let verdict = if convicts { Verdict::Overstated } else { Verdict::Unsettled };
    Some((verdict, Reason::VoltAmpsOnly { most }))
}
