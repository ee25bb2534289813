//! The verdict in a plain sentence or two, for a person.

use super::assess::Assessment;
use super::reason::Reason;
use super::verdict::{Evidence, Verdict};
use crate::facts::{Listing, Note};
use crate::units::{Rounded, Watts};

/// Says what the verdict is, at which current, and what would change it. Never more certain than the verdict.
#[must_use]
pub fn sentence(listing: &Listing<'_>, assessment: &Assessment) -> String {
    let Some(claim) = listing.claim else { return without_claim(listing, assessment) };
    match assessment.evidence {
        Evidence::Measured => measured(assessment, claim),
        Evidence::Counted => counted(listing, assessment, claim),
        Evidence::OwnWords => own_words(assessment, claim),
        Evidence::None => {
            format!("Unsettled: there is nothing to check {claim} against.")
        }
    }
}

fn interval(assessment: &Assessment) -> Option<String> {
    let (low, high) = assessment.counted.draw.as_ref()?.full.wall_interval();
    Some(format!("{} to {high}", Rounded(low.0)))
}

/// "at the 700 mA that its class stands for", or what applies instead.
fn at_which_current(assessment: &Assessment) -> String {
    let drive = assessment.counted.draw.as_ref().and_then(|d| d.drive);
    match (drive, assessment.class_current) {
        (Some(drive), _) => format!("at the stated {drive}"),
        (None, Some(current)) => format!("at the {current} that its class stands for"),
        (None, None) => "at the currents that its classes stand for".to_owned(),
    }
}

fn needs(assessment: &Assessment, claim: Watts) -> String {
    let Some(needed) = assessment.needed else {
        return format!("No current on the published curves makes them draw {claim}.");
    };
    match (
        needed.current,
        assessment.counted.draw.as_ref().filter(|d| d.drive.is_none()).map(|d| d.ceiling_die_current),
    ) {
        (Some(current), Some(most)) => {
            format!("{claim} would need {current} through each die; the published maximum is {most}.")
        }
        _ => format!("{claim} would need {:.0} % of those currents.", needed.scale * 100.0),
    }
}

/// What the listing says of its own draw: the draw, or that it is silent about a current that could explain the claim.
fn draw_stated(listing: &Listing<'_>, claim: Watts) -> String {
    match listing.admitted {
        Some(draw) if draw.high.0 < claim.0 => format!("The listing itself gives {} as the draw.", draw.high),
        _ => "A light that is driven harder should say its drive current.".to_owned(),
    }
}

fn counted(listing: &Listing<'_>, assessment: &Assessment, claim: Watts) -> String {
    let Some(interval) = interval(assessment) else {
        let most = assessment.counted.package_ceiling.as_ref().map(|p| p.wall_interval().1);
        return most.map_or_else(
            || format!("Unsettled: the count does not decide about {claim}."),
            |most| {
                format!(
                    "Out of reach: even at the published maximum of the largest class of their package these \
                     diodes draw at most {most} at the wall, not {claim}."
                )
            },
        );
    };
    let at = at_which_current(assessment);
    match assessment.verdict {
        Verdict::WithinReach => format!(
            "Within reach: {at}, these diodes draw {interval} at the wall, so they can draw {claim}. Only a meter \
             shows that they do."
        ),
        Verdict::Overstated => format!(
            "Overstated: {at}, these diodes draw {interval} at the wall, not {claim}. {} {}",
            needs(assessment, claim),
            draw_stated(listing, claim)
        ),
        Verdict::OutOfReach => {
            let most = assessment.counted.ceiling().map_or(Watts(0.0), |p| p.wall_interval().1);
            format!(
                "Out of reach: {at}, these diodes draw {interval} at the wall, and at most {most} at their \
                 published maximum, not {claim}. {}",
                needs(assessment, claim)
            )
        }
        _ => format!(
            "Unsettled: {at}, these diodes draw {interval} at the wall, against {claim}: too close or too uncertain to \
             call. A plug-in meter would settle it."
        ),
    }
}

fn measured(assessment: &Assessment, claim: Watts) -> String {
    let Some(reading) = assessment.measured else {
        let most = assessment.findings.iter().find_map(|f| match f.reason {
            Reason::VoltAmpsOnly { most } => Some(most),
            _ => None,
        });
        let most = most.unwrap_or(Watts(0.0));
        if !assessment.verdict.convicts() {
            return format!(
                "Unsettled: the meter's volts and amperes allow up to {} VA against {claim}, and only its watts or \
                 power factor would tell how much of that is drawn.",
                Rounded(most.0)
            );
        }
        return format!(
            "Overstated: the meter's volts and amperes allow at most {} VA, and watts are never more, so not {claim}.",
            Rounded(most.0)
        );
    };
    let reading = reading.value;
    match assessment.verdict {
        Verdict::BorneOut => {
            format!("Borne out: a meter read {reading}, consistent with the claim of {claim}.")
        }
        Verdict::Overstated => format!("Overstated: a meter read {reading}, not {claim}."),
        Verdict::Understated => {
            format!("Understated: a meter read {reading}, more than the claimed {claim}.")
        }
        _ => format!(
            "Unsettled: a meter read {reading} against {claim}, too close to the tolerance for that meter to tell."
        ),
    }
}

fn own_words(assessment: &Assessment, claim: Watts) -> String {
    let deciding = assessment
        .findings
        .iter()
        .find(|f| f.evidence == Evidence::OwnWords && f.verdict == assessment.verdict)
        .map_or_else(String::new, |f| f.reason.text());
    let against_count = assessment.reasons.iter().any(|r| matches!(r, Reason::OwnWordsAgainstCount));
    let doubtful = assessment.reasons.iter().any(|r| matches!(r, Reason::ImpliedByDoubtful { .. }));
    match assessment.verdict {
        Verdict::Overstated => format!("Overstated by its own words: {claim} is claimed, but {deciding}."),
        Verdict::Understated => {
            format!("Understated by its own words: only {claim} is claimed, but {deciding}.")
        }
        _ if doubtful => format!(
            "Unsettled: the efficacy that the listing states is above the best packages', so with its photon flux it \
             says nothing of {claim}. A plug-in meter would settle it."
        ),
        _ if against_count => format!(
            "Unsettled: these diodes can draw {claim}, while the listing's other numbers point to more. A plug-in meter \
             would settle it."
        ),
        _ => format!(
            "Unsettled: the listing's own numbers agree with {claim}; only a plug-in meter can confirm them."
        ),
    }
}

fn without_claim(listing: &Listing<'_>, assessment: &Assessment) -> String {
    if let Some(measured) = assessment.measured {
        return format!("No wattage is claimed. A meter read {}.", measured.value);
    }
    match (interval(assessment), assessment.counted.class_sum) {
        (Some(interval), Some(sum)) => format!(
            "No wattage is claimed. {}, these diodes draw {interval} at the wall. {}",
            capitalised(&at_which_current(assessment)),
            needs(assessment, sum)
        ),
        (Some(interval), None) => format!("No wattage is claimed. These diodes draw {interval} at the wall."),
        _ if listing.notes.contains(&Note::OtherDevice) => {
            "No light's wattage is claimed: the text seems to be about another device.".to_owned()
        }
        _ => "No wattage is claimed, and nothing is known that would tell what the light draws.".to_owned(),
    }
}

fn capitalised(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().collect::<String>() + chars.as_str())
}
