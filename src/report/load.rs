//! Heat, amperes and the circuit, for people and machines.

use serde::Serialize;

use super::Light;
use crate::circuit::{Circuit, amps, assumed_factor, assumed_volt_amperes, btu_per_hour, is_mains};
use crate::facts::MeterReading;
use crate::units::{Amps, Rounded, Volts, Watts};

/// How far a stated voltage may be from the circuit's for its amperes to count there, as a share: common practice (115 and
/// 120 V, 220 and 240 V name the same mains), no source.
const SAME_MAINS: f64 = 0.1;

/// What the light loads a supply with.
pub(super) struct Load {
    /// From common draw, or from the lower end of a reading, to the upper end of the interval.
    wall: (Watts, Watts),
    supply: Option<Supplied>,
    circuit: Option<(Circuit, Option<u32>)>,
}

/// At a known voltage.
#[derive(Clone, Copy)]
struct Supplied {
    volts: Volts,
    amps: (Amps, Amps),
    factor: f64,
    factor_measured: bool,
    /// The amperes are the listing's own, being more than the estimate.
    stated: bool,
}

impl Load {
    /// Absent where the draw is not known.
    pub(super) fn of(light: Light<'_>) -> Option<Self> {
        let assessment = light.assessment;
        let wall = if let Some(read) = assessment.measured {
            read.interval_95()
        } else {
            let draw = assessment.counted.draw.as_ref()?;
            let (low, high) = draw.full.wall_interval();
            (draw.common.0.min(low), high)
        };
        let stated = light.listing.supply;
        // An adapter's volts say nothing of the wall, and a wide range does not say where the light hangs.
        let titled =
            light.read.and_then(|read| read.volts).map(|t| (Volts(t.value.0.value), t.value.1.value));
        let mains = stated
            .map(|s| (light.listing.supply_from, s.volts.value))
            .or(titled.map(|(low, high)| (Some(low), high)))
            .filter(|(low, high)| low.is_none_or(|low| low.0 >= high * (1.0 - SAME_MAINS)))
            .map(|(_, high)| Volts(high))
            .filter(|volts| is_mains(*volts));
        let volts = light.circuit.map(|c| c.volts).or(mains);
        let measured = match light.listing.reading {
            Some(MeterReading::Factors { power_factor, .. }) => Some(power_factor),
            _ => None,
        };
        let supply = volts.map(|volts| {
            let (least, most, factor) = measured.map_or_else(
                || assumed_volt_amperes(wall.0, wall.1),
                |factor| (wall.0 / factor, wall.1 / factor, factor),
            );
            let estimate = (amps(least, volts, 1.0), amps(most, volts, 1.0));
            let plate = stated
                .filter(|s| (s.volts.value / volts.0 - 1.0).abs() <= SAME_MAINS)
                .map(|s| Amps(s.amps.value))
                .filter(|a| a.0 > estimate.1.0);
            Supplied {
                volts,
                amps: (estimate.0, plate.unwrap_or(estimate.1)),
                factor,
                factor_measured: measured.is_some(),
                stated: plate.is_some(),
            }
        });
        // A count that may be incomplete, where nothing was measured, would promise too many lights.
        let lower_bound = light.listing.tally.as_ref().is_some_and(|t| t.lower_bound);
        let known = !lower_bound || assessment.measured.is_some();
        let circuit = light
            .circuit
            .map(|circuit| (circuit, supply.filter(|_| known).map(|s| circuit.lights(s.amps.1))));
        Some(Self { wall, supply, circuit })
    }
}

/// The lines of the working: name and text.
pub(super) fn lines(light: Light<'_>) -> Vec<(&'static str, String)> {
    let Some(load) = Load::of(light) else {
        return match light.circuit {
            Some(_) => {
                vec![("circuit", "the draw is not known, so neither is how many it carries".to_owned())]
            }
            None => Vec::new(),
        };
    };
    let (low, high) = load.wall;
    let heat = |w: Watts| Rounded(btu_per_hour(w));
    let mut lines = vec![(
        "heat",
        format!("all of it: {} to {high}, {} to {} Btu/h", Rounded(low.0), heat(low), heat(high)),
    )];
    if let Some(supply) = load.supply {
        let how = match (supply.stated, supply.factor_measured) {
            (true, _) => "the upper as stated".to_owned(),
            (false, true) => format!("power factor {} measured", supply.factor),
            (false, false) => {
                let size =
                    if supply.factor < assumed_factor(Watts(f64::INFINITY)) { "up to" } else { "over" };
                format!("power factor {} assumed, the least {size} 25 W by EU 2019/2020", supply.factor)
            }
        };
        let (least, most) = (Rounded(supply.amps.0.0), Rounded(supply.amps.1.0));
        lines.push(("amperes", format!("{least} to {most} A at {} V ({how})", supply.volts.0)));
    }
    if let Some((circuit, lights)) = load.circuit {
        let what = format!("{} V, {} A", circuit.volts.0, circuit.breaker.0);
        let carries = match lights {
            Some(0) => format!("none, at {} A for hours", Rounded(circuit.continuous().0)),
            Some(lights) => {
                format!(
                    "{lights} such lights and nothing else, at {} A for hours",
                    Rounded(circuit.continuous().0)
                )
            }
            None => "no number, since diodes may be missing from the count".to_owned(),
        };
        lines.push((
            "circuit",
            format!(
                "{what}: {carries} (80 %, NEC 210.20(A), a rule of the USA). Amperes on the type plate, local code and \
                 a licensed electrician come before this estimate."
            ),
        ));
    }
    lines
}

/// The load. `heat_btu_h` and `amps` are lower and upper ends.
#[derive(Serialize)]
pub(super) struct LoadObject {
    heat_btu_h: [f64; 2],
    volts: Option<f64>,
    amps: Option<[f64; 2]>,
    power_factor: Option<f64>,
    breaker_a: Option<f64>,
    continuous_a: Option<f64>,
    lights: Option<u32>,
}

impl LoadObject {
    /// The object; absent where the draw is not known.
    pub(super) fn of(light: Light<'_>) -> Option<Self> {
        let load = Load::of(light)?;
        Some(Self {
            heat_btu_h: [btu_per_hour(load.wall.0), btu_per_hour(load.wall.1)],
            volts: load.supply.map(|s| s.volts.0),
            amps: load.supply.map(|s| [s.amps.0.0, s.amps.1.0]),
            power_factor: load.supply.map(|s| s.factor),
            breaker_a: load.circuit.map(|(circuit, _)| circuit.breaker.0),
            continuous_a: load.circuit.map(|(circuit, _)| circuit.continuous().0),
            lights: load.circuit.and_then(|(_, lights)| lights),
        })
    }
}
