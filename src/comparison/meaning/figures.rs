//! Reasons from readings, from the listing's other numbers, and from what is missing.

use super::Meaning;

pub(super) const FIGURES: &[Meaning] = &[
    Meaning {
        word: "full-brightness",
        gist: "a reading counts at full brightness only",
        means: "The meter reading is taken to be at full brightness with all switches on. A dimmed light \
            draws less than it can.",
        decided_by: "It stands beside every reading that gives watts.",
        rests_on: "Common practice, no source: a claim is about the light at its full setting.",
        cannot_see: "How the light was set. If it was dimmed, measure it again.",
        example: "plainwatt vet --claim 300 --measured 135W",
    },
    Meaning {
        word: "volt-amps-only",
        gist: "volts times amperes are not watts",
        means: "The meter gave volts and amperes without a power factor. Their product is a ceiling on \
            the watts and no measurement of them.",
        decided_by: "It is overstated if the probability that the product reaches the claim less the \
            tolerance is at most 1 minus the confidence; else unsettled. --tolerance, --confidence and \
            --meter set the limits.",
        rests_on: "Watts are volt-amperes times a power factor that is never above 1.",
        cannot_see: "The power factor. Read it, or the watts, from the meter.",
        example: "plainwatt vet --claim 300 --measured \"230V 0.6A\"",
    },
    Meaning {
        word: "admitted-draw",
        gist: "the listing itself gives a draw",
        means: "The listing says elsewhere what the light draws, as in 'actual power 110-120 W'.",
        decided_by: "It is given by --admits, by the columns admits_low_w and admits_high_w, or by the \
            text. Overstated if its upper end, a printed tolerance included, is under the claim less the \
            tolerance; understated if its lower end is over the claim plus it. --tolerance sets the \
            limits.",
        rests_on: "The seller's word.",
        cannot_see: "Whether it was measured, and at which setting.",
        example: "plainwatt vet --claim 300 --admits 110-120W --working",
    },
    Meaning {
        word: "supply-ceiling",
        gist: "stated volts and amperes allow no more",
        means: "The volts and amperes that the listing states put a ceiling on its watts.",
        decided_by: "Volts times amperes, each raised by half a unit of its last digit, times the square \
            root of 3 from 380 V up; overstated if that is under the claim less the tolerance. \
            --tolerance sets the limit.",
        rests_on: "Watts are never more than volt-amperes. That supplies from 380 V up have three phases \
            is common practice, no source.",
        cannot_see: "Whether the amperes are for this voltage. The paired voltage is used, else the \
            highest stated, which allows the most.",
        example: "plainwatt vet --claim 300 --supply \"120V 0.6A\" --working",
    },
    Meaning {
        word: "implied-draw",
        gist: "photon flux over efficacy makes other watts",
        means: "The photon flux (PPF) and the efficacy (PPE) that the listing states make a draw in \
            watts, which is held against the claim.",
        decided_by: "PPF in umol/s over PPE in umol/J is watts, with half a unit of the last digit of \
            each. Overstated if all of it is under the claim less the tolerance, understated if all is \
            over the claim plus it. --tolerance sets the limits.",
        rests_on: "The definition of PPE (ANSI/ASABE S640). The seller's own figures.",
        cannot_see: "An efficacy that is meant for the bare diodes, unless the text says so or says 'up \
            to': then it is not used.",
        example: "plainwatt vet --claim 240 --ppf 300.82 --ppe 1.5 --working",
    },
    Meaning {
        word: "implied-by-doubtful",
        gist: "an efficacy too good to imply watts from",
        means: "The stated efficacy (PPE) is above that of the best packages, so it is doubted, and the \
            watts that it makes with the photon flux (PPF) do not speak against the claim.",
        decided_by: "The stated PPE is over the best packages' umol/J for the counted mix; without a \
            complete count, over those of the best package of any colour.",
        rests_on: "The efficiencies of the reference table ('plainwatt diodes'); above all Kusuma, Pattison \
            & Bugbee 2020, Hortic. Res. 7:56.",
        cannot_see: "Packages made since. Ask for a test report of the whole light.",
        example: "plainwatt vet --claim 300 --ppf 900 --ppe 5 --working",
    },
    Meaning {
        word: "reading-beyond-ceiling",
        gist: "the reading is more than the diodes can draw",
        means: "The meter reads more than these diodes would draw at their published maximum. The count \
            or the class is probably wrong.",
        decided_by: "The reading is over the best estimate of the ceiling draw. No setting changes it.",
        rests_on: "Published maximum currents in the reference table ('plainwatt diodes').",
        cannot_see: "Which of them is wrong. The verdict rests on the reading all the same.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\" --measured 400W",
    },
    Meaning {
        word: "reading-under-common",
        gist: "the reading is far under what is common",
        means: "The meter reads less than the diodes would draw at half of the lowest current that such \
            lights are commonly run at. The count or the class is probably wrong, or the light was \
            dimmed.",
        decided_by: "The reading is under the wall draw at half of the lowest common current of the \
            class. No setting changes it.",
        rests_on: "The common range in the reference table, which rests on a few published and measured \
            lights and on memory. The half is our choice.",
        cannot_see: "How the light was set when it was measured.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\" --measured 30W",
    },
    Meaning {
        word: "admitted-beyond-ceiling",
        gist: "the admitted draw is more than the diodes can draw",
        means: "The listing gives a draw above what its diodes would draw at their published maximum. \
            The draw, the count or the class is wrong.",
        decided_by: "The lower end of the admitted draw, a printed tolerance included, is over the upper \
            end of the 95 % interval of the ceiling draw, and the count is not a lower bound.",
        rests_on: "Published maximum currents in the reference table ('plainwatt diodes'), and the \
            seller's word.",
        cannot_see: "Which of them is wrong. A plug-in meter tells.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\" --admits 450W",
    },
    Meaning {
        word: "own-words-against-count",
        gist: "other numbers say more, the count allows the claim",
        means: "The listing's other numbers point to more than the claim, while the diodes can draw the \
            claim. The two are held open.",
        decided_by: "Own words alone would be understated, the count alone does not convict, and there \
            is no reading: the verdict is unsettled.",
        rests_on: "The order of evidence: a seller's figures never overrule a count that allows the claim.",
        cannot_see: "Which is right. A plug-in meter settles it.",
        example: "plainwatt vet --claim 150 --class 3W --tally \"100 red\" --admits 190W",
    },
    Meaning {
        word: "no-claim",
        gist: "no wattage is claimed",
        means: "There is evidence but no claimed wattage, so there is nothing to grade. What is known of \
            the draw is shown.",
        decided_by: "No claim is given by a flag, a column or the title. With a count, what the class's \
            name would need is shown instead.",
        rests_on: "What is absent: an absent figure is never taken for a zero.",
        cannot_see: "What a picture or a type plate may claim.",
        example: "plainwatt vet --class 3W --tally \"100 red\"",
    },
    Meaning {
        word: "nothing-beside-the-claim",
        gist: "a claim, and nothing to hold it against",
        means: "A wattage is claimed and nothing else is known that bears on it. The claim may well be true.",
        decided_by: "There is a claim, and no evidence of any kind.",
        rests_on: "What is absent: an absent figure is never taken for a zero.",
        cannot_see: "The diodes and their class (often '100 x 3W'), an 'actual power' in the details, \
            the amperes on the type plate: look there, or use a plug-in meter.",
        example: "plainwatt vet --claim 1000",
    },
    Meaning {
        word: "nothing-to-go-on",
        gist: "neither a claim nor a count with a class",
        means: "Nothing is known of the light that bears on its watts.",
        decided_by: "There is no claim, no reading, and no other evidence.",
        rests_on: "What is absent: an absent figure is never taken for a zero.",
        cannot_see: "What the details, the pictures or the type plate give. Look there.",
        example: "plainwatt vet --tally \"100 red\"",
    },
];
