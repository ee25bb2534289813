//! What the diode count says.

use smallvec::SmallVec;

use super::reason::Reason;
use super::settings::Settings;
use super::verdict::Verdict;
use crate::draw::{Draw, Model, Part, PointDraw};
use crate::facts::{Listing, StatedClass, Tally};
use crate::uncertain::Chance;
use crate::units::Watts;

/// Below this LED power the first-order interval is too narrow, because the driver's efficiency is least known there.
pub(super) const SMALL: Watts = Watts(15.0);

/// What was worked out from a count.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Counted {
    /// The estimate, where every diode has a class with a row.
    pub draw: Option<Draw>,
    /// The ceiling of the largest class of the package, where only a package is named.
    pub package_ceiling: Option<PointDraw>,
    /// The count times the names of the classes, where every diode has one.
    pub class_sum: Option<Watts>,
    /// Probability that the full draw reaches the claim less the tolerance.
    pub p_reach: Option<Chance>,
    /// Probability that the ceiling draw does.
    pub p_ceiling: Option<Chance>,
    /// The verdict of the count alone, where it has one.
    pub verdict: Option<Verdict>,
}

impl Counted {
    /// The draw at the published maximum, from the class or from the package alone.
    #[must_use]
    pub fn ceiling(&self) -> Option<&PointDraw> {
        self.draw.as_ref().map(|d| &d.ceiling).or(self.package_ceiling.as_ref())
    }
}

/// What the parts of a listing are.
#[derive(PartialEq)]
enum Resolved {
    /// Of the classes that are stated, which all have a row.
    Stated,
    /// Of the largest class of the package, which alone is stated.
    PackageOnly,
    /// None: a class is not stated or has no row.
    Nothing,
}

/// Fills `counted`, which should be empty.
pub(super) fn count(
    listing: &Listing<'_>,
    model: &Model,
    settings: &Settings,
    counted: &mut Counted,
    reasons: &mut SmallVec<[Reason; 4]>,
) {
    let Some(tally) = listing.tally.as_ref().filter(|t| t.total() > 0) else { return };
    counted.class_sum = class_sum(listing, tally);
    let mut parts = SmallVec::new();
    let resolved = resolve(listing, tally, model, &mut parts, reasons);
    if resolved == Resolved::Nothing {
        return;
    }
    match Draw::of_parts(model, parts, listing.drive) {
        Ok(draw) => counted.draw = Some(draw),
        Err(outside) => {
            reasons.push(Reason::DriveOutsideCurve(outside));
            return;
        }
    }
    let parts = counted.draw.iter().flat_map(|draw| &draw.parts);
    for part in parts.filter(|part| !model.has_row(part.class, part.colour)) {
        let reason = Reason::NoRowForColour { colour: part.colour, die: model.table().class(part.class).die };
        // Said once, however many groups of that colour there are.
        if !reasons.contains(&reason) {
            reasons.push(reason);
        }
    }
    if resolved == Resolved::PackageOnly {
        counted.package_ceiling = counted.draw.take().map(|draw| draw.ceiling);
    } else if let Some(drive) = listing.drive {
        reasons.push(Reason::DriveStated { drive });
    }
    if let Some(claim) = listing.claim {
        decide(counted, listing, model, claim, settings, reasons);
    } else {
        counted.verdict = Some(Verdict::Unsettled);
    }
}

fn decide(
    counted: &mut Counted,
    listing: &Listing<'_>,
    model: &Model,
    claim: Watts,
    settings: &Settings,
    reasons: &mut SmallVec<[Reason; 4]>,
) {
    let least = settings.least(claim);
    let p = |point: &PointDraw| Chance::above((point.wall.value - least) / point.wall.u);
    let large_enough =
        |point: &PointDraw| point.led.value.0 >= SMALL.0 || point.wall_upper_bound(settings.z()).0 < least.0;
    let lower_bound = listing.tally.as_ref().is_some_and(|t| t.lower_bound);

    let Some(draw) = &counted.draw else {
        let Some(ceiling) = &counted.package_ceiling else { return };
        let p_ceiling = p(ceiling);
        counted.p_ceiling = Some(p_ceiling);
        if settings.surely_not(p_ceiling) && !lower_bound && large_enough(ceiling) {
            counted.verdict = Some(Verdict::OutOfReach);
        }
        return;
    };
    let (p_reach, p_ceiling) = (p(&draw.full), p(&draw.ceiling));
    let verdict = if settings.surely(p_reach) {
        Verdict::WithinReach
    } else if !settings.surely_not(p_reach) {
        Verdict::Unsettled
    } else if lower_bound {
        reasons.push(Reason::LowerBound);
        Verdict::Unsettled
    } else if !large_enough(&draw.full) {
        reasons.push(Reason::SmallLight { led: draw.full.led.value });
        Verdict::Unsettled
    } else if settings.surely_not(p_ceiling) && large_enough(&draw.ceiling) {
        if draw.parts.iter().any(|p| model.table().class(p.class).from_memory()) {
            reasons.push(Reason::CeilingFromMemory);
            Verdict::Overstated
        } else {
            Verdict::OutOfReach
        }
    } else {
        Verdict::Overstated
    };
    counted.p_reach = Some(p_reach);
    counted.p_ceiling = Some(p_ceiling);
    counted.verdict = Some(verdict);
}

/// Appends the parts to `parts`, which should be empty.
fn resolve(
    listing: &Listing<'_>,
    tally: &Tally,
    model: &Model,
    parts: &mut SmallVec<[Part; 8]>,
    reasons: &mut SmallVec<[Reason; 4]>,
) -> Resolved {
    let mut unstated = false;
    // Most groups have the light's class, so it is looked up once.
    let of_light = listing.class.and_then(|class| model.table().find(&class));
    for group in tally.groups.iter().filter(|g| g.count.number > 0) {
        let Some(class) = group.class.or(listing.class) else {
            unstated = true;
            continue;
        };
        let found = if group.class.is_none() { of_light } else { model.table().find(&class) };
        let Some(class) = found else {
            reasons.push(Reason::ClassUnknown { class });
            return Resolved::Nothing;
        };
        parts.push(Part { class, colour: group.colour, count: group.count });
    }
    if !unstated {
        return Resolved::Stated;
    }
    // Some diodes have no class. A package word bounds what they can draw; without one the count says nothing of watts.
    if let (true, Some(package)) = (parts.is_empty(), listing.package)
        && let Some(class) = model.table().largest(package)
    {
        reasons.push(Reason::PackageOnly { package });
        let groups = tally.groups.iter().filter(|g| g.count.number > 0);
        parts.extend(groups.map(|g| Part { class, colour: g.colour, count: g.count }));
        return Resolved::PackageOnly;
    }
    reasons.push(Reason::ClassNotStated);
    Resolved::Nothing
}

/// Sum of N times the class's name. It needs no row: it is what a seller multiplies.
fn class_sum(listing: &Listing<'_>, tally: &Tally) -> Option<Watts> {
    let mut sum = Watts(0.0);
    for group in &tally.groups {
        let class: StatedClass = group.class.or(listing.class)?;
        sum = sum + class.watts * f64::from(group.count.number);
    }
    Some(sum)
}
