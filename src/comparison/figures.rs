//! What a listing claims beside watts, each with its own verdict: photon flux, photon efficacy, the lamp it replaces,
//! amperes at a voltage ([`amperes`](super::amperes)).
//!
//! A claim of photons is held against what the same diodes can emit at the same draw, with the decision rule of the watts.
//! What is found on the market is no bound, since packages improve: only the best published package with no further loss,
//! and the energy of photons, convict.

use smallvec::SmallVec;

use super::amperes::amperes;
use super::counted::{Counted, SMALL};
use super::figure_reason::FigureReason;
use super::settings::Settings;
use super::verdict::{Evidence, Verdict};
use crate::draw::Model;
use crate::facts::{Colour, LampKind, Listing, Replaced, Supply};
use crate::photons::{LIMIT_PAR, Photons};
use crate::reference::lamp::{LampFlux, lamp_flux};
use crate::uncertain::{Uncertain, normal_cdf};
use crate::units::{PhotonEfficacy, PhotonFlux, Volts, Watts};

/// What is claimed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Claimed {
    /// A photon flux (PPF).
    Flux(PhotonFlux),
    /// A photon efficacy of the whole light (PPE).
    Efficacy(PhotonEfficacy),
    /// A lamp it is said to replace.
    Replaces(Replaced),
    /// The current that it takes at a voltage, or over a range of them.
    Amperes {
        /// The current, and the highest voltage.
        supply: Supply,
        /// The lowest voltage; absent where there is one.
        from: Option<Volts>,
    },
}

/// One claim with its verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// The claim.
    pub claimed: Claimed,
    /// Its grade.
    pub verdict: Verdict,
    /// What the grade rests on.
    pub evidence: Evidence,
    /// What was seen.
    pub reason: FigureReason,
    /// What the replaced lamp gives.
    pub lamp: Option<LampFlux>,
}

/// The verdicts on what is claimed beside watts; none for a listing that claims nothing more.
pub(super) fn figures(
    listing: &Listing<'_>,
    model: &Model,
    counted: &Counted,
    measured: Option<Uncertain<Watts>>,
    settings: &Settings,
) -> SmallVec<[Figure; 2]> {
    let mut all = SmallVec::new();
    if listing.ppf.is_some() || listing.ppe.is_some() || listing.replaces.is_some() {
        of_photons(&mut all, listing, model, counted, measured, settings);
    }
    if let Some(supply) = &listing.supply {
        let (verdict, evidence, reason) = amperes(listing, supply, measured, counted.draw.as_ref(), settings);
        let claimed = Claimed::Amperes { supply: *supply, from: listing.supply_from };
        all.push(Figure { claimed, verdict, evidence, reason, lamp: None });
    }
    all
}

/// The light as claims of photons are held against it.
struct Known<'a> {
    photons: Option<Photons>,
    counted: &'a Counted,
    measured: Option<Uncertain<Watts>>,
    lower_bound: bool,
    from_memory: bool,
    all_white: bool,
    settings: &'a Settings,
}

/// Appends the verdicts on what is claimed of photons.
fn of_photons(
    all: &mut SmallVec<[Figure; 2]>,
    listing: &Listing<'_>,
    model: &Model,
    counted: &Counted,
    measured: Option<Uncertain<Watts>>,
    settings: &Settings,
) {
    let draw = counted.draw.as_ref();
    let known = Known {
        photons: draw.map(|draw| Photons::of(model, draw)),
        counted,
        measured,
        lower_bound: listing.tally.as_ref().is_some_and(|t| t.lower_bound),
        from_memory: draw.is_some_and(|d| d.parts.iter().any(|p| model.table().class(p.class).from_memory())),
        all_white: draw.is_some_and(|d| d.parts.iter().all(|p| p.colour == Colour::White)),
        settings,
    };
    if let Some(ppf) = listing.ppf {
        let flux = PhotonFlux(ppf.value);
        all.push(known.figure(Claimed::Flux(flux), known.flux(flux), None));
    }
    if let Some(ppe) = listing.ppe {
        let efficacy = PhotonEfficacy(ppe.value);
        all.push(known.figure(Claimed::Efficacy(efficacy), known.efficacy(efficacy), None));
    }
    if let Some(lamp) = listing.replaces {
        let flux = lamp_flux(&lamp);
        all.push(known.figure(Claimed::Replaces(lamp), known.replaces(&lamp, flux), flux));
    }
}

type Decided = (Verdict, Option<Evidence>, FigureReason);

impl Known<'_> {
    fn figure(&self, claimed: Claimed, decided: Decided, lamp: Option<LampFlux>) -> Figure {
        let (verdict, evidence, reason) = decided;
        let usual = match (&self.photons, self.measured) {
            (Some(_), Some(_)) => Evidence::Measured,
            (Some(_), None) => Evidence::Counted,
            (None, _) => Evidence::None,
        };
        Figure { claimed, verdict, evidence: evidence.unwrap_or(usual), reason, lamp }
    }

    /// The PPF at the measured draw where there is one, else at full draw.
    fn par(&self, photons: &Photons) -> Uncertain<PhotonFlux> {
        match self.measured {
            None => photons.par,
            Some(wall) => {
                let value = photons.at_wall(wall.value);
                let efficacy = photons.efficacy;
                let u = (efficacy.u.0 * wall.value.0).hypot(efficacy.value.0 * wall.u.0);
                Uncertain { value, u: PhotonFlux(u) }
            }
        }
    }

    fn flux(&self, claim: PhotonFlux) -> Decided {
        let (Some(photons), Some(draw)) = (&self.photons, &self.counted.draw) else {
            return (Verdict::Unsettled, None, FigureReason::NothingCounted);
        };
        let least = claim * (1.0 - self.settings.tolerance);
        let reaches = |value: f64, u: f64| normal_cdf((value - least.0) / u);
        let par = self.par(photons);
        let (low, high) = par.interval_95();
        let estimate = FigureReason::Flux { low, high };
        if self.settings.sure(reaches(par.value.0, par.u.0)) {
            return (Verdict::WithinReach, None, estimate);
        }
        if self.lower_bound || draw.full.led.value.0 < SMALL.0 {
            return (Verdict::Unsettled, None, estimate);
        }
        // A reading bounds what goes into the LEDs; without one the count does, at its class current and at the most.
        let (full, ceiling) = self.measured.map_or((draw.full.led, draw.ceiling.led), |wall| (wall, wall));
        let best = photons.best_packages;
        if !self.settings.sure_not(reaches((best * full.value).0, (best * full.u).0)) {
            return (Verdict::Unsettled, None, estimate);
        }
        let limit = photons.limit;
        let at_limit = reaches((limit * ceiling.value).0, (limit * ceiling.u).0);
        if self.settings.sure_not(at_limit) && !self.from_memory {
            let most = limit * (ceiling.value + ceiling.half_95());
            return (Verdict::OutOfReach, None, FigureReason::FluxLimit { most });
        }
        let most = best * (full.value + full.half_95());
        (Verdict::Overstated, None, FigureReason::FluxOfBestPackages { most })
    }

    fn efficacy(&self, claim: PhotonEfficacy) -> Decided {
        let least = claim * (1.0 - self.settings.tolerance);
        let Some(photons) = self.photons.as_ref().filter(|_| !self.lower_bound) else {
            if least.0 > LIMIT_PAR.0 {
                let reason = FigureReason::EfficacyLimit { limit: LIMIT_PAR, of_mix: false };
                return (Verdict::OutOfReach, Some(Evidence::OwnWords), reason);
            }
            return (Verdict::Unsettled, None, FigureReason::NothingCounted);
        };
        if least.0 > photons.limit.0 {
            let reason = FigureReason::EfficacyLimit { limit: photons.limit, of_mix: true };
            return (Verdict::OutOfReach, Some(Evidence::Counted), reason);
        }
        let counted = Some(Evidence::Counted);
        if claim.0 > photons.best_packages.0 {
            let reason = FigureReason::EfficacyAboveBestPackages { best: photons.best_packages };
            return (Verdict::Unsettled, counted, reason);
        }
        let (low, high) = photons.efficacy_interval();
        let p = normal_cdf((photons.efficacy.value - least).0 / photons.efficacy.u.0);
        let verdict = if self.settings.sure(p) { Verdict::WithinReach } else { Verdict::Unsettled };
        (verdict, counted, FigureReason::Efficacy { low, high })
    }

    fn replaces(&self, lamp: &Replaced, flux: Option<LampFlux>) -> Decided {
        let none = Some(Evidence::None);
        if lamp.kind.is_none() {
            return (Verdict::Unsettled, none, FigureReason::LampKindNotStated);
        }
        let Some(flux) = flux else {
            return (Verdict::Unsettled, none, FigureReason::LampNotPublished);
        };
        if lamp.kind == Some(LampKind::Incandescent) && self.photons.is_some() && !self.all_white {
            return (Verdict::Unsettled, none, FigureReason::LumensOfColours);
        }
        self.flux(flux.flux)
    }
}
