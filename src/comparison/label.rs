//! What a seller could honestly print instead.

use std::fmt::Write as _;

use super::assess::Assessment;
use super::reason::Reason;
use super::verdict::Evidence;
use crate::draw::Model;
use crate::reference::ClassId;
use crate::units::{Rounded, Watts};

/// A label that claims nothing new: with a reading, the reading; without, what the listing itself says where that convicts
/// its claim; else the count with its classes and the range that such lights are commonly run at. Absent where there is none
/// of these, or where the count may be incomplete.
#[must_use]
pub fn honest_label(assessment: &Assessment, model: &Model, lower_bound: bool) -> Option<String> {
    if let Some(measured) = assessment.measured {
        return Some(format!("draws {} at the wall (measured)", measured.value));
    }
    if let Some(label) = own_words(assessment) {
        return Some(label);
    }
    let draw = assessment.counted.draw.as_ref().filter(|_| !lower_bound)?;
    let mut counts: Vec<(ClassId, u64)> = Vec::new();
    for part in &draw.parts {
        let n = u64::from(part.count.number);
        match counts.iter_mut().find(|(class, _)| *class == part.class) {
            Some((_, sum)) => *sum += n,
            None => counts.push((part.class, n)),
        }
    }
    let mut label = String::new();
    for (place, (class, n)) in counts.iter().enumerate() {
        let nominal = Rounded(model.table().class(*class).nominal.0);
        let joint = match place {
            0 => "",
            _ if place + 1 == counts.len() => " and ",
            _ => ", ",
        };
        let _ = write!(label, "{joint}{n} x {nominal} W-class");
    }
    let (low, high) = (draw.common.0, draw.common.1.max(Watts(0.0)));
    let noun = if draw.parts.iter().map(|p| u64::from(p.count.number)).sum::<u64>() == 1 {
        "diode"
    } else {
        "diodes"
    };
    let _ = write!(label, " {noun}; likely {} to {high} at the wall, not measured", Rounded(low.0));
    Some(label)
}

/// What the listing's own words come to, where the verdict rests on them.
fn own_words(assessment: &Assessment) -> Option<String> {
    if assessment.evidence != Evidence::OwnWords {
        return None;
    }
    let convicting = assessment.findings.iter().filter(|finding| finding.verdict.convicts());
    convicting.map(|finding| finding.reason).find_map(|reason| match reason {
        Reason::AdmittedDraw { low, high } => {
            Some(format!("the listing itself gives {}; not measured", range(low, high)))
        }
        Reason::SupplyCeiling { most } => {
            Some(format!("the listing's own volts and amperes allow at most {most}; not measured"))
        }
        Reason::ImpliedDraw { low, high } => {
            Some(format!("the listing's own photon figures imply {}; not measured", range(low, high)))
        }
        _ => None,
    })
}

fn range(low: Watts, high: Watts) -> String {
    let (low, high) = (Rounded(low.0).to_string(), high.to_string());
    if high == format!("{low} W") { high } else { format!("{low} to {high}") }
}
