//! What the listing's other numbers say of its claim. Each may convict or point low; none can bear a claim out.

use smallvec::SmallVec;

use super::reason::Reason;
use super::settings::Settings;
use super::verdict::Verdict;
use crate::circuit::phases;
use crate::facts::{Admitted, Listing, Stated, Supply, Tolerance};
use crate::units::{PhotonEfficacy, Volts, Watts};

/// One finding: its verdict (absent without a claim) and what was seen.
pub(super) type OwnWord = (Verdict, Reason);

/// The lowest and highest draw that the listing admits, its printed tolerance included.
pub(super) fn admitted_bounds(admitted: &Admitted) -> (Watts, Watts) {
    match admitted.tolerance {
        None => (admitted.low, admitted.high),
        Some(Tolerance::Share(share)) => (admitted.low * (1.0 - share), admitted.high * (1.0 + share)),
        Some(Tolerance::Watts(watts)) => ((admitted.low - watts).max(Watts(0.0)), admitted.high + watts),
    }
}

/// Volts times amperes, each up by half a unit of its last printed digit: a ceiling on watts.
pub(super) fn volt_amps(supply: &Supply) -> Watts {
    let up = |s: Stated| s.value + s.half_digit;
    Watts(up(supply.volts) * up(supply.amps) * phases(Volts(supply.volts.value)))
}

/// PPF over PPE is watts: the interval that the rounding of both allows. Absent where the efficacy rounds to nothing.
pub(super) fn implied(ppf: Stated, ppe: Stated) -> Option<(Watts, Watts)> {
    let least_ppe = ppe.value - ppe.half_digit;
    if least_ppe <= 0.0 {
        return None;
    }
    let low = (ppf.value - ppf.half_digit).max(0.0) / (ppe.value + ppe.half_digit);
    Some((Watts(low), Watts((ppf.value + ppf.half_digit) / least_ppe)))
}

/// Fills `found`, which should be empty. `best` gives the efficacy of the best packages, and is asked only where one is
/// stated beside a flux.
pub(super) fn find(
    listing: &Listing<'_>,
    best: impl FnOnce() -> PhotonEfficacy,
    settings: &Settings,
    found: &mut SmallVec<[OwnWord; 4]>,
) {
    let against = |low: Watts, high: Watts| match listing.claim {
        Some(claim) if high.0 < settings.least(claim).0 => Verdict::Overstated,
        Some(claim) if low.0 > settings.most(claim).0 => Verdict::Understated,
        _ => Verdict::Unsettled,
    };
    if let Some(admitted) = &listing.admitted {
        let (low, high) = admitted_bounds(admitted);
        found.push((against(low, high), Reason::AdmittedDraw { low: admitted.low, high: admitted.high }));
    }
    if let Some(supply) = &listing.supply {
        // A ceiling can only be too low for the claim.
        let most = volt_amps(supply);
        found.push((against(Watts(0.0), most), Reason::SupplyCeiling { most }));
    }
    if let (Some(ppf), Some(ppe)) = (listing.ppf, listing.ppe)
        && let Some((low, high)) = implied(ppf, ppe)
    {
        let (stated, best) = (PhotonEfficacy(ppe.value), best());
        // What is itself doubted convicts nobody.
        if stated > best {
            found.push((Verdict::Unsettled, Reason::ImpliedDraw { low, high }));
            found.push((Verdict::Unsettled, Reason::ImpliedByDoubtful { stated, best }));
        } else {
            found.push((against(low, high), Reason::ImpliedDraw { low, high }));
        }
    }
}

/// What own words say together: a conviction outweighs an understatement, which outweighs silence.
pub(super) fn together(found: &[OwnWord]) -> Option<Verdict> {
    found.iter().map(|(verdict, _)| *verdict).max_by_key(|verdict| match verdict {
        Verdict::Overstated | Verdict::OutOfReach => 2,
        Verdict::Understated => 1,
        _ => 0,
    })
}
