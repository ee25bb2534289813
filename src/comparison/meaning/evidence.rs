//! The kinds of evidence.

use super::Meaning;

pub(super) const EVIDENCE: &[Meaning] = &[
    Meaning {
        word: "measured",
        gist: "a meter reading at the wall outlet",
        means: "The verdict rests on a plug-in meter. It decides alone, whatever the count or the \
            listing says. The same word is the code of the finding that gives the reading.",
        decided_by: "Watts are read, or volts, amperes and a power factor make them. Volts and amperes \
            alone are volt-amperes: they can show that a claim is too high, never that it is true. \
            --meter sets the accuracy.",
        rests_on: "Your meter. Its accuracy is taken as equally likely anywhere within its bounds (JCGM \
            100:2008, 4.3.7); the default 2 % + 0.5 W is from memory.",
        cannot_see: "A dimmed light, a switch left off, a light not yet warm, or another unit than the \
            one on sale. Measure at the outlet; never open a light that runs on mains.",
        example: "plainwatt vet --claim 300 --measured 135W",
    },
    Meaning {
        word: "counted",
        gist: "the diode count with its class",
        means: "The verdict rests on the number of diodes by colour and the class that they are stated \
            to be.",
        decided_by: "Count times volts times amperes at the class's current, or at the stated one, over \
            the driver's efficiency, plus fans and controls. --drive-ma replaces the current; \
            --reference replaces rows of the table.",
        rests_on: "The reference table ('plainwatt diodes'); driver efficiency from Regulation (EU) \
            2019/2020, Annexes II and VI, and Kusuma et al. 2020; fans and controls, 0 to 6 %, from \
            memory; junction at 75 +-20 C, for which no survey was found.",
        cannot_see: "The current that really flows. It convicts only with a class that the listing or \
            you state, and never bears a claim out.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\"",
    },
    Meaning {
        word: "own-words",
        gist: "the listing's other numbers",
        means: "The verdict rests on what the listing says elsewhere: an admitted draw, volts and \
            amperes, or photon flux over efficacy.",
        decided_by: "Each figure is taken with its rounding and printed tolerance. All of it under the \
            claim less the tolerance: overstated. All of it over the claim plus the tolerance: \
            understated, save for volts and amperes, which are only a ceiling. --tolerance sets the \
            limits.",
        rests_on: "The seller's word, and physics: watts are never more than volt-amperes; umol/s over \
            umol/J is watts.",
        cannot_see: "Which of two figures of one listing is right. They cannot confirm one another; a \
            meter can.",
        example: "plainwatt vet --claim 300 --admits 110-120W",
    },
    Meaning {
        word: "none",
        gist: "nothing that the claim could be held against",
        means: "No reading, no count with a class and no other figure was found, so the claim is neither \
            upheld nor doubted.",
        decided_by: "None of the other three kinds of evidence is there. No setting changes it.",
        rests_on: "What is absent: an absent figure is never taken for a zero.",
        cannot_see: "What stands in the pictures, in the manual or on the type plate.",
        example: "plainwatt vet --claim 1000",
    },
];
