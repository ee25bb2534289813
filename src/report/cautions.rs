//! The usual cautions, short, and only where they apply.

use crate::comparison::Assessment;
use crate::facts::{Colour, Listing};
use crate::units::Watts;

/// From this wall draw on, how many lights a circuit carries becomes a question: half of what a 15 A, 120 V circuit
/// carries continuously (NFPA 70 (NEC) 210.20(A): 80 % of 1800 W).
const CIRCUIT_FROM: Watts = Watts(720.0);

/// The cautions for a light.
#[must_use]
pub fn of(listing: &Listing<'_>, assessment: &Assessment) -> Vec<&'static str> {
    let mut cautions = Vec::new();
    let has = |colour| {
        listing
            .tally
            .as_ref()
            .is_some_and(|t| t.groups.iter().any(|g| g.colour == colour && g.count.number > 0))
    };
    match (has(Colour::RoyalBlue) || has(Colour::Blue), has(Colour::UvA)) {
        (true, true) => cautions.push(
            "eyes: do not look into the blue or ultraviolet diodes; UV-A also harms skin and gives no glare to warn of \
             it (IEC 62471)",
        ),
        (true, false) => cautions.push("eyes: do not look into the blue diodes (IEC 62471)"),
        (false, true) => cautions.push(
            "eyes and skin: UV-A harms both and gives no glare to warn of it; do not look into it (IEC 62471)",
        ),
        (false, false) => {}
    }
    if has(Colour::FarRed) || has(Colour::Infrared) {
        cautions.push("far red and infrared look dim and are hot");
    }
    let draw = assessment.counted.draw.as_ref().map(|d| d.full.wall.value);
    if assessment.measured.map(|m| m.value).or(draw).is_some_and(|w| w.0 >= CIRCUIT_FROM.0) {
        cautions.push(
            "circuits: a light that runs for hours is a continuous load; how much a circuit carries is for the local \
             code and a licensed electrician",
        );
    }
    cautions.push("mains: measure with a plug-in meter at the outlet; never open a mains-powered light");
    cautions
}
