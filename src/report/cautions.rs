//! The usual cautions, short, and only where they apply.

use std::collections::BTreeSet;

use super::Light;
use crate::facts::Colour;
use crate::units::Watts;

/// From this wall draw on, how many lights a circuit carries becomes a question: half of what a 15 A, 120 V circuit
/// carries continuously (NFPA 70 (NEC) 210.20(A): 80 % of 1800 W).
const CIRCUIT_FROM: Watts = Watts(720.0);

const BLUE: &str = "eyes: do not look into the blue diodes (IEC 62471)";
const UV: &str = "eyes and skin: UV harms both and gives no glare to warn you (IEC 62471)";
const BLUE_AND_UV: &str = "eyes, skin: UV harms both, unseen; do not look into blue or UV (IEC 62471)";

/// Whether `all`, the cautions of several lights, say with another one what this one says.
pub(super) fn is_said_by_another(caution: &str, all: &BTreeSet<&'static str>) -> bool {
    [BLUE, UV].contains(&caution) && all.contains(BLUE_AND_UV)
}

/// The cautions for a light: for its diodes, and for ultraviolet that its text names without a count.
#[must_use]
pub fn of(light: Light<'_>) -> Vec<&'static str> {
    let Light { listing, read, assessment, .. } = light;
    let mut cautions = Vec::new();
    let named_uv = read.is_some_and(|read| read.ultraviolet);
    let has = |colour| {
        listing
            .tally
            .as_ref()
            .is_some_and(|t| t.groups.iter().any(|g| g.colour == colour && g.count.number > 0))
    };
    match (has(Colour::RoyalBlue) || has(Colour::Blue), has(Colour::UvA) || named_uv) {
        (true, true) => cautions.push(BLUE_AND_UV),
        (true, false) => cautions.push(BLUE),
        (false, true) => cautions.push(UV),
        (false, false) => {}
    }
    if has(Colour::FarRed) || has(Colour::Infrared) {
        cautions.push("far red and infrared look dim and are hot");
    }
    let draw = assessment.counted.draw.as_ref().map(|d| d.full.wall.value);
    if assessment.measured.map(|m| m.value).or(draw).is_some_and(|w| w.0 >= CIRCUIT_FROM.0) {
        cautions.push("circuits: it is a continuous load; ask local code and a licensed electrician");
    }
    cautions.push("mains: measure with a plug-in meter at the outlet; never open the light");
    cautions
}

/// Those that no other line of a light's answer has said: the line about a circuit has its own.
pub(super) fn unsaid(light: Light<'_>) -> impl Iterator<Item = &'static str> {
    let all = of(light).into_iter();
    all.filter(move |caution| light.circuit.is_none() || !caution.starts_with("circuits:"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::comparison::{Settings, assess};
    use crate::draw::Model;
    use crate::facts::{Count, Group, Listing, StatedClass, Tally};
    use crate::reference::Table;

    fn cautions_of(colours: &[Colour], count: u32, named_uv: bool) -> Vec<&'static str> {
        let group = |colour: &Colour| Group { colour: *colour, count: Count::exact(count), class: None };
        let groups = colours.iter().map(group).collect();
        let listing = Listing {
            class: Some(StatedClass::plain(3.0)),
            tally: Some(Tally { groups, lower_bound: false }),
            ..Listing::default()
        };
        let model = Model::new(Table::built_in()).unwrap();
        let assessment = assess(&listing, &model, &Settings::default());
        let read = crate::facts::Read { ultraviolet: named_uv, ..crate::facts::Read::default() };
        of(Light {
            listing: &listing,
            read: Some(&read),
            assessment: &assessment,
            money: None,
            circuit: None,
            fit_supply: None,
        })
    }

    fn cautions(colours: &[Colour], count: u32) -> Vec<&'static str> {
        cautions_of(colours, count, false)
    }

    #[test]
    fn ultraviolet_that_only_the_text_names_has_its_caution() {
        assert!(cautions_of(&[Colour::Red], 10, true).contains(&UV));
        assert!(cautions_of(&[Colour::Blue], 10, true).contains(&BLUE_AND_UV));
        assert_eq!(cautions_of(&[Colour::UvA], 10, true), cautions(&[Colour::UvA], 10));
    }

    #[test]
    fn each_is_said_once_in_a_line_and_only_where_it_applies() {
        let all = cautions(&Colour::ALL, 100);
        for subject in ["eyes", "far red", "circuits", "mains"] {
            assert_eq!(all.iter().filter(|c| c.starts_with(subject)).count(), 1, "{subject}: {all:?}");
        }
        assert_eq!(all.len(), 4, "{all:?}");
        let each = Colour::ALL.map(|colour| cautions(&[colour], 10));
        for caution in all.iter().chain(each.iter().flatten()) {
            assert!(caution.len() <= 78, "{} columns with its bullet: {caution}", caution.len() + 2);
        }
        assert_eq!(cautions(&[Colour::Red], 10).len(), 1, "red light needs no more than the mains");
    }
}
