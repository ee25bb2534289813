//! The bases.

use super::Meaning;

pub(super) const BASES: &[Meaning] = &[
    Meaning {
        word: "class-sum",
        gist: "the count times the watts in the class's name",
        means: "The claim is the number of diodes times the watts in their class's name, as in 100 x 3 W \
            = 300 W. The name stands for a current, and the product is usually more than the draw.",
        decided_by: "The claim is within 1 % of that product, or equal to it in two digits; and it is \
            neither the replaced lamp's watts nor within the tolerance of a draw that is measured, \
            admitted or implied. --tolerance sets that.",
        rests_on: "Common practice of the trade, no source. The 1 % and the two digits are our choice.",
        cannot_see: "How the seller really came by the figure: a claim may equal the product by chance, \
            and it may still be drawn.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\"",
    },
    Meaning {
        word: "draw",
        gist: "the claim looks like a draw in watts",
        means: "The claim agrees with what the light draws, or with what its diodes are commonly run at.",
        decided_by: "The claim is within the tolerance of a measured draw, an admitted one, or the \
            photon flux over the efficacy; else it lies between the low end of the common draw and the \
            full draw. --tolerance sets the first part.",
        rests_on: "The reading or the listing's own numbers; else the common range in the reference \
            table, which rests on a few published and measured lights and on memory.",
        cannot_see: "Whether the figure was measured at all. A basis never changes a verdict.",
        example: "plainwatt vet --claim 135 --measured 131W",
    },
    Meaning {
        word: "replacement",
        gist: "the watts of the lamp it is said to replace",
        means: "The claim is the wattage of another lamp that the light is said to replace, and not its own.",
        decided_by: "The claim is within 1 % of the stated watts of the replaced lamp. It is looked at \
            first, and no setting changes it.",
        rests_on: "The listing's own words. The 1 % is our choice. Regulation (EU) 2019/2015, Annex V, \
            lets a lamp be called equivalent by its luminous flux only.",
        cannot_see: "Whether the light does replace that lamp. That takes photons, not watts.",
        example: "plainwatt vet --claim 600 --replaces 600 --class 3W --tally \"100 red\"",
    },
    Meaning {
        word: "unexplained",
        gist: "no rule shows where the figure comes from",
        means: "The claim fits none of the ways that figures are commonly made. It is not a charge: it \
            may well be true.",
        decided_by: "What is left when replacement, draw and class-sum do not fit. --tolerance sets how \
            near a known draw has to be.",
        rests_on: "Nothing beyond those three rules.",
        cannot_see: "Model names, sizes and series numbers that happen to be followed by a W.",
        example: "plainwatt vet --claim 1000",
    },
];
