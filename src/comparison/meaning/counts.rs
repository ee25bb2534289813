//! Reasons that a diode count gives.

use super::Meaning;

pub(super) const COUNTS: &[Meaning] = &[
    Meaning {
        word: "counted-draw",
        gist: "what the counted diodes draw at full",
        means: "The finding of the count: the 95 % interval of the wall draw with every diode at its \
            class's current, or at the stated one.",
        decided_by: "The sum of count x dice x amperes x volts, over the driver's efficiency, plus fans \
            and controls, plus and minus 1.96 standard uncertainties. --drive-ma and --reference change \
            it.",
        rests_on: "The reference table ('plainwatt diodes') and JCGM 100:2008. 'vet --working' shows \
            each contribution to the uncertainty.",
        cannot_see: "The current that really flows.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\" --format json",
    },
    Meaning {
        word: "counted-ceiling",
        gist: "the most that diodes of a package can draw",
        means: "The finding of a count where only a package is named: what the diodes draw at the \
            published maximum of the package's largest class.",
        decided_by: "The same sum as counted-draw, at the maximum current of the class of that package \
            that draws most. It can only show that a claim is too high.",
        rests_on: "The reference table ('plainwatt diodes') and JCGM 100:2008.",
        cannot_see: "The class. A package is a size of housing, not a power.",
        example: "plainwatt vet \"LED Grow Light 2000W, 100 pcs 2835 SMD LEDs\" --format json",
    },
    Meaning {
        word: "class-not-stated",
        gist: "diodes are counted, their drive class is not given",
        means: "A count without a class says nothing about watts: by name the classes of the table run \
            from 0.06 W to 100 W a diode.",
        decided_by: "A counted colour has no class, neither its own nor the light's, and no package \
            alone bounds the count.",
        rests_on: "The design of the rule: a count convicts only with a class that the listing or you \
            state, and one is never guessed.",
        cannot_see: "The class. Look for '3W' or a drive current in the details, or ask the seller.",
        example: "plainwatt vet --claim 300 --tally \"100 red\"",
    },
    Meaning {
        word: "class-unknown",
        gist: "the stated class has no row in the table",
        means: "The class is stated, but the reference table has no row for it, so the count is not used.",
        decided_by: "No row has those watts and that package. It is never interpolated from its neighbours.",
        rests_on: "The classes in the reference table: 'plainwatt diodes' lists them with their sources.",
        cannot_see: "What such diodes draw. A meter reading or the seller's stated draw would help.",
        example: "plainwatt vet --claim 300 --class 6W --tally \"50 red\"",
    },
    Meaning {
        word: "package-only",
        gist: "a package is named, but no class",
        means: "Words such as 2835 or SMD are sizes of housings. The same housing is sold at 0.2 W and \
            at 3 W.",
        decided_by: "No diode has a class, a package is named, and the table has a class for it. The \
            ceiling of the largest class of the package is the only thing that can then speak against a \
            claim.",
        rests_on: "The classes in the reference table; a vendor page shows a 2835 sold as 3 W that is \
            rated 0.92 W.",
        cannot_see: "The class and the current. Ask the seller for the drive current.",
        example: "plainwatt vet \"LED Grow Light 2000W, 100 pcs 2835 SMD LEDs\"",
    },
    Meaning {
        word: "no-row-for-colour",
        gist: "that kind of die has no row for the colour",
        means: "The reference table has no row for this colour on this kind of die. The row for an \
            unstated colour of that kind stands in, with its wider uncertainty.",
        decided_by: "There is no row for the pair of die and colour, in the built-in table or in the one \
            of --reference.",
        rests_on: "The reference table: 'plainwatt diodes' shows which rows there are. Rows for an \
            unstated colour are inferred.",
        cannot_see: "The colour's own voltage. A bench sweep of such a diode gives it a row ('plainwatt \
            sweep').",
        example: "plainwatt vet --claim 30 --class 0.5W --tally \"100 green\"",
    },
    Meaning {
        word: "drive-stated",
        gist: "a stated current replaces the class's current",
        means: "The listing or you state a drive current. It is used in place of the current that the \
            class's name stands for, so the result holds only if it is true.",
        decided_by: "A drive current is given (--drive-ma, the column drive_ma, or the title). It is \
            through each package.",
        rests_on: "Whoever stated it. The +-5 % that a driver may be off has no source.",
        cannot_see: "Whether the driver delivers it, and whether the light keeps cool at it.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\" --drive-ma 1000",
    },
    Meaning {
        word: "drive-outside-curve",
        gist: "the stated current is outside the table's curves",
        means: "The stated drive current is so far from where the diode was tested that its voltage \
            there would be a guess. The count is not used.",
        decided_by: "The current through a die is under 0.05 or over 5 times the test current of its row.",
        rests_on: "The equation of the curve (Shockley with series resistance) is good near its test \
            point; the two limits are our choice.",
        cannot_see: "What the light draws. Check that the current is in milliamperes and for one diode.",
        example: "plainwatt vet --claim 300 --class 3W --tally \"100 red\" --drive-ma 5",
    },
    Meaning {
        word: "lower-bound",
        gist: "there may be more diodes than were counted",
        means: "Colours are counted beside a COB or a board without a total, so the count may be \
            incomplete. It cannot speak against the claim.",
        decided_by: "The text counts colours, names a COB or a board and gives no diode count; and by \
            what was counted the claim would be too high.",
        rests_on: "The text as it was read.",
        cannot_see: "The rest of the diodes. Find the total.",
        example: "plainwatt vet \"COB grow light, 20 red, 10 blue\" --claim 600 --class 3W",
    },
    Meaning {
        word: "ceiling-from-memory",
        gist: "a published maximum is from memory",
        means: "The count says that the claim is out of reach, but the maximum current of a class was \
            not found in a source. The verdict stops at overstated.",
        decided_by: "The rule of out-of-reach is met, and a class of the count is graded 'memory' in the \
            reference table. --tolerance and --confidence set the limits.",
        rests_on: "The grade of the class, shown by 'plainwatt diodes'.",
        cannot_see: "The true maximum. A datasheet or a meter reading would settle more.",
        example: "plainwatt vet --claim 400 --class 10W --tally \"20 white\"",
    },
    Meaning {
        word: "small-light",
        gist: "too small a light for a count to convict",
        means: "In small lights the driver's losses are a large and little known part of the draw, so \
            the count alone does not speak against the claim.",
        decided_by: "The count would convict, the LED power is under 15 W, and the most that the draw \
            could be still reaches the claim less the tolerance: LED power plus its uncertainty at the \
            confidence (1.645 times at 95 %), over the least efficient driver, plus 6 % for fans. \
            --tolerance and --confidence set the limits.",
        rests_on: "Driver losses by Regulation (EU) 2019/2020, Annex II Table 3. Below 15 W the \
            first-order uncertainty (JCGM 100) is too narrow.",
        cannot_see: "The driver. A plug-in meter settles it; small watts need a meter that is accurate \
            there.",
        example: "plainwatt vet --claim 9 --class 1W --tally \"6 red\"",
    },
    Meaning {
        word: "needed-outside-curve",
        gist: "no current on the curves gives the watts",
        means: "The current at which the diodes would draw the claim is so far from where they were \
            tested that no figure is given for it. It bears on that figure alone, not on the verdict.",
        decided_by: "Solving the wall draw for the claim (without one, for count times class) leads \
            under 0.05 or over 5 times the test current of a die.",
        rests_on: "The equation of the curve is good near its test point; the two limits are our choice.",
        cannot_see: "Nothing that the verdict needs.",
        example: "plainwatt vet --claim 1000 --class 3W --tally \"100 red\" --working",
    },
];
