//! Reasons seen while a listing was read.

use super::Meaning;

pub(super) const NOTES: &[Meaning] = &[
    Meaning {
        word: "colours-short",
        gist: "the colours add up to less than the diode count",
        means: "Fewer diodes are named by colour than the light is said to have.",
        decided_by: "The sum of the colours is under the diode count. The rest is counted with an \
            unstated colour, whose voltage is less certain. No setting changes it.",
        rests_on: "The listing's own counts. The row for an unstated colour is inferred: the middle of \
            the range of colours, with a spread that covers it.",
        cannot_see: "Which colour the rest is, and whether the total or the colours are wrong.",
        example: "plainwatt grade fixtures/meaning/counts.csv --format json",
    },
    Meaning {
        word: "colours-exceed",
        gist: "the colours add up to more than the diode count",
        means: "More diodes are named by colour than the light is said to have. One of the counts is wrong.",
        decided_by: "The sum of the colours is over the diode count. The larger is used, so that the \
            doubt is to the claim's benefit. No setting changes it.",
        rests_on: "The listing's own counts.",
        cannot_see: "Which of them is right: count a picture, or ask the seller.",
        example: "plainwatt grade fixtures/meaning/counts.csv --format json",
    },
    Meaning {
        word: "counts-differ",
        gist: "one colour is counted twice, differently",
        means: "A colour's own column and the tally give different numbers of that colour.",
        decided_by: "Both are above 0 and not equal. The larger is used, so that the doubt is to the \
            claim's benefit. No setting changes it.",
        rests_on: "The row of the file.",
        cannot_see: "Which of them is right.",
        example: "plainwatt grade fixtures/meaning/counts.csv --format json",
    },
    Meaning {
        word: "title-contradicts",
        gist: "the title states another figure than the column",
        means: "A column or a flag gives one figure and the title another. What was given is used.",
        decided_by: "The two differ by more than 0.5 % of the given one. No setting changes it.",
        rests_on: "The column or the flag, and the title as it was read. The 0.5 % is our choice, to let \
            rounding pass.",
        cannot_see: "Which of them is right, and whether the title was read as it was meant.",
        example: "plainwatt vet \"LED Grow Light 1000W\" --claim 300",
    },
    Meaning {
        word: "pack-divided",
        gist: "the claim is a whole pack's total",
        means: "The claim given is the total of several lights sold together, so it was divided. One \
            light is tested.",
        decided_by: "The claim equals the number of lights in the pack times the title's figure, within \
            0.5 % of the claim. No setting changes it.",
        rests_on: "The column or the flag, and the title as it was read.",
        cannot_see: "Whether the lights in a pack are alike.",
        example: "plainwatt vet \"LED Grow Light 100W (2-Pack)\" --claim 200",
    },
    Meaning {
        word: "headlines-conflict",
        gist: "the text gives two figures as its headline",
        means: "Two wattages stand in the text as if each were the light's own. One is tested, the other \
            is named.",
        decided_by: "Another figure in watts without any qualifying word differs from the one that is \
            used, and is not a count times a class. No setting changes it.",
        rests_on: "The text as it was read.",
        cannot_see: "Which one is sold. Give it with --claim.",
        example: "plainwatt vet \"LED Grow Light 1000W full spectrum, 600W lamp for plants\"",
    },
    Meaning {
        word: "variant-not-selected",
        gist: "several variants are offered, none is selected",
        means: "One text sells several lights. Figures that differ between them are left out, since they \
            may belong to another one.",
        decided_by: "The text offers several wattages as a choice and marks none as chosen. No setting \
            changes it.",
        rests_on: "The text as it was read.",
        cannot_see: "Which one you mean. Give its figures with flags or columns.",
        example: "plainwatt vet \"LED Grow Light 300W/600W/1000W choose\"",
    },
    Meaning {
        word: "other-device",
        gist: "the text seems to be about another device",
        means: "What is sold seems to be a fan, a timer, a plug, a driver or the like. Its watts say nothing of a \
            light, so none is taken.",
        decided_by: "The last word for a thing at the head of the text names something else than a light, and the \
            text is no kit with a light of its own watts. No setting changes it.",
        rests_on: "The text as it was read.",
        cannot_see: "A light with an unusual name. Give its figures with flags or columns.",
        example: "plainwatt vet \"Smart plug 16A 1800W max with energy meter\"",
    },
];
