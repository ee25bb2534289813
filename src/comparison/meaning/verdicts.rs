//! The verdicts, and what stands in their place where a row could not be read.

use super::Meaning;

pub(super) const VERDICTS: &[Meaning] = &[
    Meaning {
        word: "borne-out",
        gist: "a meter agrees with the claim",
        means: "A meter at the wall outlet read a draw that is consistent with the claim. It is the best \
            that a claim can earn.",
        decided_by: "Two probabilities, from the reading and the meter's accuracy: that the draw is at \
            least the claim less the tolerance must be at least the confidence, and that it is at least \
            the claim plus the tolerance at most 1 minus the confidence. --tolerance, --confidence and \
            --meter set them.",
        rests_on: "JCGM 106:2012, clause 7 (conformance probability). The 10 % is as wide as any \
            published lighting tolerance on a quantity that buyers want high: Regulation (EU) 2019/2020, \
            Annex IV Table 6, luminous flux; a yardstick here, not a legal limit. The default accuracy \
            of the meter, 2 % + 0.5 W, is from memory.",
        cannot_see: "Whether the light was at full brightness with all switches on, whether the unit on \
            sale is like the one measured, and how much light the watts make.",
        example: "plainwatt vet --claim 135 --measured 131W",
    },
    Meaning {
        word: "within-reach",
        gist: "the diodes can draw the claimed watts",
        means: "Run at the current that their class stands for, or at the stated one, the diodes can \
            draw what is claimed. Nobody has measured that they do.",
        decided_by: "The probability that the full draw reaches the claim less the tolerance is at least \
            the confidence. Full draw is the diodes' volts times amperes, over the driver's efficiency, \
            plus fans and controls. --tolerance and --confidence set the limits.",
        rests_on: "JCGM 106:2012, clause 7; uncertainty by JCGM 100:2008. The reference table, which \
            'plainwatt diodes' shows with a source a row. The class currents are mostly trade pages and \
            common practice.",
        cannot_see: "What current the driver really sends: many lights run their diodes below it. Only a \
            plug-in meter shows that.",
        example: "plainwatt vet --claim 200 --class 3W --tally \"100 white\"",
    },
    Meaning {
        word: "understated",
        gist: "the light draws more than it claims",
        means: "The light draws more than it is sold by. That is no fault towards a buyer who wants \
            light, but it matters for the circuit, the heat and the bill.",
        decided_by: "By a meter: the probability that the draw is at least the claim plus the tolerance \
            is at least the confidence. By the listing's own numbers: the lowest draw that they allow is \
            over the claim plus the tolerance. --tolerance, --confidence and --meter set the limits.",
        rests_on: "JCGM 106:2012, clause 7, for a reading. Own numbers are taken at their word, with \
            their rounding.",
        cannot_see: "Whether a seller meant the smaller figure for something else, such as the lamp it \
            compares itself with.",
        example: "plainwatt vet --claim 100 --measured 131W",
    },
    Meaning {
        word: "unsettled",
        gist: "what is known does not decide",
        means: "The evidence is too little, too close to the limit or at odds with itself. It says \
            nothing against the claim, and nothing for it.",
        decided_by: "No other verdict's rule is met at the confidence asked for; or there is no claim; \
            or the listing's own numbers point to more than the claim while the count allows it; or only \
            a seller's own numbers agree with it. --tolerance and --confidence set the limits.",
        rests_on: "JCGM 106:2012, clause 7: between the two limits of probability neither side is decided.",
        cannot_see: "The answer. The reasons say what is missing; a plug-in meter at the outlet usually \
            settles it.",
        example: "plainwatt vet --claim 100 --measured 91W",
    },
    Meaning {
        word: "overstated",
        gist: "the light draws less than it claims",
        means: "By the evidence named beside it the light draws less than the claim, even with the \
            tolerance. It does not say why, and says nothing about intent.",
        decided_by: "The probability that the draw reaches the claim less the tolerance is at most 1 \
            minus the confidence: by a meter, or by the count at full draw. Or the most that the \
            listing's own numbers allow is under the claim less the tolerance. --tolerance, --confidence \
            and --meter set the limits.",
        rests_on: "JCGM 106:2012, clause 7. The tolerance of 10 % follows Regulation (EU) 2019/2020, \
            Annex IV Table 6, as a yardstick. The count rests on the reference table ('plainwatt \
            diodes').",
        cannot_see: "A drive current above the class's own that the listing does not state: a light \
            driven harder should say so. By a count, what one unit draws on a meter.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\"",
    },
    Meaning {
        word: "out-of-reach",
        gist: "too much even at the diodes' published maximum",
        means: "Even with every diode at its published maximum current the light would draw less than \
            the claim, with the tolerance.",
        decided_by: "The rule of overstated by a count, and besides the probability that the ceiling \
            draw reaches the claim less the tolerance is at most 1 minus the confidence. Where only a \
            package is named, the ceiling of its largest class alone decides. No class of the count may \
            be one from memory. --tolerance and --confidence set the limits.",
        rests_on: "Maximum currents, the lower of the colour's and the class's: 'plainwatt diodes' gives \
            the source of each and says which are from memory. JCGM 106:2012, clause 7.",
        cannot_see: "Diodes that the listing does not count, a class stated wrongly, or a part rated \
            higher than any in the table.",
        example: "plainwatt vet --claim 1000 --class 3W --tally \"100 red\"",
    },
    Meaning {
        word: "unreadable",
        gist: "the row could not be read; nothing is said of it",
        means: "A row of the file could not be read, so it is not graded. The rest of the file is.",
        decided_by: "A row has too few or too many fields, a quote that never closes, or a cell that is \
            not what its column takes. The line, the column, what was found and what is accepted are \
            shown with it, and stand in the JSON fault and in the file of --rejects. No setting changes \
            it.",
        rests_on: "The rules of the input: 'plainwatt help grade' lists the fields. An absent cell is \
            never taken for a zero.",
        cannot_see: "Whether the rest of the row is right: the first fault ends the reading of a row.",
        example: "plainwatt grade fixtures/meaning/unreadable.csv",
    },
];
