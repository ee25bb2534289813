//! The photons of a whole light.

use super::spectrum::{Band, per_joule};
use crate::draw::{Draw, Model};
use crate::facts::Colour;
use crate::uncertain::{COVERAGE_95, Distribution, Uncertain, combined};
use crate::units::{PhotonEfficacy, PhotonFlux, Watts};

/// A light's photons per joule of wall draw over its packages' per joule of theirs, typical: Kusuma, Pattison & Bugbee
/// 2020, Horticulture Research 7:56. Droop with current and heat, the driver and the optics are all in it.
pub const LIGHT_LOW: f64 = 0.67;

/// The same for the best light (same source).
pub const LIGHT_HIGH: f64 = 0.93;

/// What a light emits at full draw, and what bounds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Photons {
    /// 400-700 nm: the PPF.
    pub par: Uncertain<PhotonFlux>,
    /// 700-800 nm; absent without such diodes.
    pub far_red: Option<Uncertain<PhotonFlux>>,
    /// Ultraviolet and infrared; absent without such diodes.
    pub beyond: Option<Uncertain<PhotonFlux>>,
    /// PPF over wall draw: the PPE.
    pub efficacy: Uncertain<PhotonEfficacy>,
    /// No light of this mix can have more photons of any band per joule: all its power turned into radiation.
    pub limit: PhotonEfficacy,
    /// What this mix would have if every package were the best that the table has, with no loss beyond the package.
    pub best_packages: PhotonEfficacy,
}

/// One band's flux and what it is sensitive to, before the losses of the light.
#[derive(Default)]
struct Sums {
    flux: f64,
    /// From the packages' efficiency: one maker buys them all, good or poor, so it adds linearly.
    efficiency: f64,
    /// From the spectrum, linearly too.
    spectrum: f64,
    any: bool,
}

impl Sums {
    /// Relative standard uncertainty of the band's photons per LED watt, the light's losses left out.
    fn relative_u(&self) -> f64 {
        combined(&[self.efficiency, self.spectrum], |_, _| 0.0) / self.flux
    }
}

/// The middle of two bounds and the standard uncertainty of a rectangular distribution between them.
fn rectangular(low: f64, high: f64) -> (f64, f64) {
    (f64::midpoint(low, high), Distribution::Rectangular { half_width: (high - low) / 2.0 }.u())
}

impl Photons {
    /// The photons of a light at full draw.
    ///
    /// Per colour P_led x efficiency x photons per joule, times what the light keeps. The published share (0.67 to 0.93)
    /// is of the wall draw and has the driver in it (0.85 and 0.95, as in [`Efficiency`](crate::draw::Efficiency)), so it
    /// is divided by the driver's before it is applied to LED power: counted once, not twice.
    ///
    /// Red's upper bounds are those of deep red, whether or not its wavelength was stated, which a tally does not keep: a
    /// listing's "red" is often 660 nm (common practice, no source).
    #[must_use]
    #[expect(clippy::doc_markdown, reason = "P_led is a symbol of a formula")]
    pub fn of(model: &Model, draw: &Draw) -> Self {
        let mut bands = [Sums::default(), Sums::default(), Sums::default()];
        let (mut most, mut best, mut led) = (0.0, 0.0, 0.0);
        for part in &draw.parts {
            let class = model.table().class(part.class);
            let row = model.table().diode(class.die, part.colour).0;
            let watts = draw.package_at_full(model, part).watts.0 * f64::from(part.count.number);
            let spectrum = per_joule(row);
            // Sellers call 660 nm red too, so plain red may be as good as deep red, and no upper bound may be lower than its.
            let deep_red = model.table().diode(class.die, Colour::DeepRed).0;
            let at_most = if part.colour == Colour::Red { deep_red } else { row };
            let eff_high = row.eff_high.max(at_most.eff_high);
            let high = spectrum.high.max(per_joule(at_most).high);
            let (efficiency, u_efficiency) = rectangular(row.eff_low, eff_high);
            let (photons, u_photons) = rectangular(spectrum.low.0, high.0);
            let band = &mut bands[Band::of(part.colour) as usize];
            band.flux += watts * efficiency * photons;
            band.efficiency += watts * u_efficiency * photons;
            band.spectrum += watts * efficiency * u_photons;
            band.any = true;
            led += watts;
            most += watts * high.0;
            // The best white is a cool one: its efficiency goes with its spectrum, not with the warmest.
            // A diode of unstated colour might be the best there is in 400-700 nm: a deep-red one.
            let own =
                row.eff_high * if row.colour == Colour::White { spectrum.low.0 } else { spectrum.mean().0 };
            best += watts
                * match row.colour {
                    Colour::Unstated | Colour::Red => {
                        own.max(deep_red.eff_high * per_joule(deep_red).mean().0)
                    }
                    _ => own,
                };
        }
        let full = &draw.full;
        let (kept, u_kept) = rectangular(LIGHT_LOW / full.efficiency.low, LIGHT_HIGH / full.efficiency.high);
        let u_light = u_kept / kept;
        let u_led = full.led.u / full.led.value;
        let flux = |band: &Sums| {
            let value = band.flux * kept;
            Uncertain {
                value: PhotonFlux(value),
                u: PhotonFlux(value * combined(&[band.relative_u(), u_light, u_led], |_, _| 0.0)),
            }
        };
        let par = if bands[0].any {
            flux(&bands[0])
        } else {
            // Nothing in the band: none is what was counted, not what is unknown.
            Uncertain { value: PhotonFlux(0.0), u: PhotonFlux(0.0) }
        };
        let efficacy = par.value.0 / full.wall.value.0;
        // LED power is in both and cancels; the wall's own part is what is left of its uncertainty.
        let beyond_led = ((full.wall.u / full.wall.value).powi(2) - u_led.powi(2)).max(0.0).sqrt();
        let relative = if bands[0].any { bands[0].relative_u() } else { 0.0 };
        let u_efficacy = efficacy * combined(&[relative, u_light, beyond_led], |_, _| 0.0);
        Self {
            par,
            far_red: bands[1].any.then(|| flux(&bands[1])),
            beyond: bands[2].any.then(|| flux(&bands[2])),
            efficacy: Uncertain { value: PhotonEfficacy(efficacy), u: PhotonEfficacy(u_efficacy) },
            limit: PhotonEfficacy(most / led),
            best_packages: PhotonEfficacy(best / led),
        }
    }

    /// The 95 % interval of the PPF, never below 0.
    #[must_use]
    pub fn par_interval(&self) -> (PhotonFlux, PhotonFlux) {
        let half = self.par.u * COVERAGE_95;
        ((self.par.value - half).max(PhotonFlux(0.0)), self.par.value + half)
    }

    /// The 95 % interval of the PPE, never below 0.
    #[must_use]
    pub fn efficacy_interval(&self) -> (PhotonEfficacy, PhotonEfficacy) {
        let half = self.efficacy.u * COVERAGE_95;
        ((self.efficacy.value - half).max(PhotonEfficacy(0.0)), self.efficacy.value + half)
    }

    /// The PPF at another wall draw of the same light, at the PPE of full draw.
    #[must_use]
    pub fn at_wall(&self, wall: Watts) -> PhotonFlux {
        self.efficacy.value * wall
    }
}
