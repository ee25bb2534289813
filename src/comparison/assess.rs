//! One listing in, its assessment out.

use smallvec::SmallVec;

use super::basis::basis;
use super::counted::{Counted, count};
use super::figures::{Figure, figures};
use super::measured;
use super::own_words::{self, OwnWord};
use super::reason::Reason;
use super::settings::Settings;
use super::verdict::{Basis, Evidence, Verdict};
use crate::draw::Model;
use crate::facts::{Listing, Note};
use crate::photons::{Photons, best_of_any};
use crate::uncertain::Uncertain;
use crate::units::{Amps, PhotonEfficacy, Watts};

/// One piece of evidence with its own verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finding {
    /// What it rests on.
    pub evidence: Evidence,
    /// What it says by itself.
    pub verdict: Verdict,
    /// What was seen.
    pub reason: Reason,
}

/// Currents solved backwards from watts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Backwards {
    /// The factor on all currents, 1 being full draw.
    pub scale: f64,
    /// Its standard uncertainty, where it comes from a reading.
    pub scale_u: Option<f64>,
    /// The current through each die; absent where the classes are mixed.
    pub current: Option<Amps>,
    /// Its standard uncertainty.
    pub current_u: Option<Amps>,
}

/// Everything that was worked out about one listing.
#[derive(Debug, Clone, PartialEq)]
pub struct Assessment {
    /// The grade of the claim.
    pub verdict: Verdict,
    /// What it rests on.
    pub evidence: Evidence,
    /// How the claim seems to have been made; absent without a claim.
    pub basis: Option<Basis>,
    /// Measured draw over claim if there is a reading, else full draw over claim.
    pub share: Option<f64>,
    /// What the count says.
    pub counted: Counted,
    /// The current of the class, per die; absent where the classes are mixed.
    pub class_current: Option<Amps>,
    /// What the claim would need; without a claim, what the class's name would.
    pub needed: Option<Backwards>,
    /// What the reading says the diodes run at.
    pub running: Option<Backwards>,
    /// The reading in watts.
    pub measured: Option<Uncertain<Watts>>,
    /// The ceiling that stated volts and amperes put on watts.
    pub volt_amps: Option<Watts>,
    /// The watts that PPF over PPE imply.
    pub implied: Option<Watts>,
    /// Every piece of evidence, strongest first.
    pub findings: SmallVec<[Finding; 3]>,
    /// What is claimed beside watts, each with its own verdict; none from [`assess_watts`].
    pub figures: SmallVec<[Figure; 2]>,
    /// What a reader should know.
    pub reasons: SmallVec<[Reason; 4]>,
}

impl Default for Assessment {
    /// Of nothing, before anything was worked out.
    fn default() -> Self {
        Self {
            verdict: Verdict::Unsettled,
            evidence: Evidence::None,
            basis: None,
            share: None,
            counted: Counted::default(),
            class_current: None,
            needed: None,
            running: None,
            measured: None,
            volt_amps: None,
            implied: None,
            findings: SmallVec::new(),
            figures: SmallVec::new(),
            reasons: SmallVec::new(),
        }
    }
}

/// Assesses a listing, with everything that it claims. The same function serves one light and a catalogue.
#[must_use]
pub fn assess(listing: &Listing<'_>, model: &Model, settings: &Settings) -> Assessment {
    let mut assessment = assess_watts(listing, model, settings);
    assessment.add_figures(listing, model, settings);
    assessment
}

/// Assesses its watts alone, for a catalogue whose rows have no place for the other figures.
#[must_use]
pub fn assess_watts(listing: &Listing<'_>, model: &Model, settings: &Settings) -> Assessment {
    let mut assessment = Assessment::default();
    assessment.add_watts(listing, model, settings);
    assessment
}

impl Assessment {
    /// The second part of [`assess`]: adds the other figures to what [`add_watts`](Self::add_watts) worked out.
    pub fn add_figures(&mut self, listing: &Listing<'_>, model: &Model, settings: &Settings) {
        self.figures = figures(listing, model, &self.counted, self.measured, settings);
    }

    /// [`assess_watts`] into an assessment of nothing: filled where it lies, it need not be moved.
    pub fn add_watts(&mut self, listing: &Listing<'_>, model: &Model, settings: &Settings) {
        add_watts(self, listing, model, settings);
    }
}

fn add_watts(assessment: &mut Assessment, listing: &Listing<'_>, model: &Model, settings: &Settings) {
    assessment.measured = listing.reading.and_then(|reading| measured::watts(reading, settings));
    assessment.volt_amps = listing.supply.as_ref().map(own_words::volt_amps);
    assessment.implied = listing.ppf.zip(listing.ppe).map(|(ppf, ppe)| Watts(ppf.value / ppe.value));
    let Assessment { measured, counted, findings, reasons, .. } = assessment;
    let measured = *measured;
    reasons.extend(listing.notes.iter().map(|note| Reason::Noted(*note)));

    if let Some(reading) = measured {
        let verdict =
            listing.claim.map_or(Verdict::Unsettled, |claim| measured::decide(reading, claim, settings));
        findings.push(Finding {
            evidence: Evidence::Measured,
            verdict,
            reason: Reason::Measured { watts: reading.value },
        });
        reasons.push(Reason::FullBrightness);
    }
    if let Some((verdict, reason)) =
        listing.reading.and_then(|reading| measured::decide_volt_amps(reading, listing.claim, settings))
    {
        findings.push(Finding { evidence: Evidence::Measured, verdict, reason });
        reasons.push(reason);
    }

    count(listing, model, settings, counted, reasons);
    if let Some(verdict) = counted.verdict
        && let Some(point) = counted.draw.as_ref().map(|d| &d.full).or(counted.package_ceiling.as_ref())
    {
        let (low, high) = point.wall_interval();
        let reason = if counted.draw.is_some() {
            Reason::CountedDraw { low, high }
        } else {
            Reason::CountedCeiling { low, high }
        };
        findings.push(Finding { evidence: Evidence::Counted, verdict, reason });
    }

    let mut own = SmallVec::new();
    own_words::find(listing, || best_packages(listing, model, counted), settings, &mut own);
    for (verdict, reason) in &own {
        let doubt = matches!(reason, Reason::ImpliedByDoubtful { .. });
        if !doubt {
            findings.push(Finding { evidence: Evidence::OwnWords, verdict: *verdict, reason: *reason });
        }
        if doubt || *verdict != Verdict::Unsettled {
            reasons.push(*reason);
        }
    }
    // Without a claim the listing's other numbers have nothing to speak to.
    let words = if listing.claim.is_some() { own.as_slice() } else { &[] };
    let (verdict, evidence) = overall(measured.is_some(), findings, counted.verdict, words, reasons);
    if evidence == Evidence::None {
        if listing.claim.is_some() || measured.is_some() {
            reasons.push(Reason::NothingBesideTheClaim);
        } else if !listing.notes.contains(&Note::OtherDevice) {
            reasons.push(Reason::NothingToGoOn);
        }
    } else if listing.claim.is_none() {
        reasons.push(Reason::NoClaim);
    }

    assessment.verdict = verdict;
    assessment.evidence = evidence;
    if let Some(claim) = listing.claim {
        let counted = &assessment.counted;
        assessment.basis = Some(basis(listing, claim, measured, counted, settings));
        let draw = measured.map(|m| m.value).or(counted.draw.as_ref().map(|d| d.full.wall.value));
        assessment.share = draw.map(|draw| draw / claim);
    }
    solve_backwards(assessment, listing, model);
}

/// The efficacy of the best packages: of the mix, or of any colour where it is not known.
fn best_packages(listing: &Listing<'_>, model: &Model, counted: &Counted) -> PhotonEfficacy {
    let complete = !listing.tally.as_ref().is_some_and(|tally| tally.lower_bound);
    match counted.draw.as_ref().filter(|_| complete) {
        Some(draw) => Photons::of(model, draw).best_packages,
        None => best_of_any(model.table().diodes()),
    }
}

/// A measurement decides alone. Without one the worse of the count and the listing's own words decides if it convicts;
/// own words that point low never overrule a count that allows the claim.
fn overall(
    measured: bool,
    findings: &[Finding],
    counted: Option<Verdict>,
    own: &[OwnWord],
    reasons: &mut SmallVec<[Reason; 4]>,
) -> (Verdict, Evidence) {
    if let Some(first) = findings.first().filter(|f| f.evidence == Evidence::Measured)
        && (measured || first.verdict.convicts())
    {
        return (first.verdict, Evidence::Measured);
    }
    let own = own_words::together(own);
    match (counted, own) {
        (Some(count), Some(own)) if own.convicts() && own > count => (own, Evidence::OwnWords),
        (Some(count), Some(Verdict::Understated)) if !count.convicts() => {
            reasons.push(Reason::OwnWordsAgainstCount);
            (Verdict::Unsettled, Evidence::OwnWords)
        }
        (Some(count), _) => (count, Evidence::Counted),
        (None, Some(own)) => (own, Evidence::OwnWords),
        // Volt-amperes that allow the claim are still something that was measured.
        (None, None) if findings.first().is_some_and(|f| f.evidence == Evidence::Measured) => {
            (Verdict::Unsettled, Evidence::Measured)
        }
        (None, None) => (Verdict::Unsettled, Evidence::None),
    }
}

fn solve_backwards(assessment: &mut Assessment, listing: &Listing<'_>, model: &Model) {
    let Some(draw) = &assessment.counted.draw else { return };
    let first = draw.parts[0].class;
    let one_class = draw.parts.iter().all(|part| part.class == first);
    let full_current = one_class.then(|| draw.full_die_current(model, first));
    assessment.class_current = one_class.then(|| model.table().class(first).die_current);

    if let Some(sought) = listing.claim.or(assessment.counted.class_sum) {
        let scale = draw.scale_for(sought);
        assessment.needed = scale.map(|scale| Backwards {
            scale,
            scale_u: None,
            current: full_current.map(|i| i * scale),
            current_u: None,
        });
        if scale.is_none() {
            assessment.reasons.push(Reason::NeededOutsideCurve { sought });
        }
    }
    if let Some(reading) = assessment.measured {
        assessment.running = draw.scale_for(reading.value).map(|scale| {
            let scale_u = draw.scale_u(model, scale, reading.u).ok();
            Backwards {
                scale,
                scale_u,
                current: full_current.map(|i| i * scale),
                current_u: full_current.zip(scale_u).map(|(i, u)| i * u),
            }
        });
        if reading.value.0 > draw.ceiling.wall.value.0 {
            assessment.reasons.push(Reason::ReadingBeyondCeiling { ceiling: draw.ceiling.wall.value });
        }
        // Half of what is commonly the least: nobody builds a light to run its diodes that low.
        if let Ok(least) = draw.wall_at_share_of_common_low(model, 0.5)
            && reading.value.0 < least.0
        {
            assessment.reasons.push(Reason::ReadingUnderCommon { least });
        }
    }
    if let Some(admitted) = &listing.admitted
        && own_words::admitted_bounds(admitted).0.0 > draw.ceiling.wall_interval().1.0
        && !listing.tally.as_ref().is_some_and(|t| t.lower_bound)
    {
        assessment
            .reasons
            .push(Reason::AdmittedBeyondCeiling { admitted: admitted.low, ceiling: draw.ceiling.wall.value });
    }
}
