//! Reasons beside what is claimed of light, lamps and amperes.

use super::Meaning;

pub(super) const CLAIMS: &[Meaning] = &[
    Meaning {
        word: "flux-estimated",
        gist: "what the diodes give, and no more is said",
        means: "The photon flux (PPF) that the counted diodes are thought to give. It reaches the claim, \
            or it is too uncertain to speak against it.",
        decided_by: "Per colour LED watts x efficiency x wavelength / 119.6266, times the share that a \
            light keeps. Within reach if the probability that it reaches the claim less the tolerance is \
            at least the confidence. --tolerance and --confidence set the limits.",
        rests_on: "Efficiencies of the table, from what is on the market to the best package published \
            in 2020, and a light's share of 0.67 to 0.93: Kusuma, Pattison & Bugbee 2020, Hortic. Res. \
            7:56. Bands: ANSI/ASABE S640.",
        cannot_see: "How good the diodes on sale are, hence the wide range. A test report tells.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --ppf 300 --working",
    },
    Meaning {
        word: "flux-of-best-packages",
        gist: "too much even for the best packages known",
        means: "At the current of their class, were each diode the best that the reference table has \
            (plain red: deep red) and nothing lost in the light, the photon flux (or that of the lamp) would still not be reached.",
        decided_by: "The probability that LED watts at full draw (or the watts read) x the best \
            packages' umol/J reach the claim less the tolerance is at most 1 minus the confidence. \
            --tolerance and --confidence set the limits.",
        rests_on: "Kusuma, Pattison & Bugbee 2020, Hortic. Res. 7:56: 2.9 umol/J white, 4.5 at 660 nm, \
            3.5 at 450 nm; 'plainwatt diodes' has every row's source. Decision: JCGM 106:2012, clause 7.",
        cannot_see: "A drive current above the class's own, and packages made since.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --ppf 1000 --working",
    },
    Meaning {
        word: "flux-limit",
        gist: "more photons than the power of the light has",
        means: "Were every diode at its published maximum and all of its power turned into light, the \
            photon flux would still not be reached.",
        decided_by: "As flux-of-best-packages, and besides with LED watts at the published maximum x the \
            photons that a joule of such light has. No class of the count may be one from memory.",
        rests_on: "The energy of photons, wavelength / 119.6266 umol/J (SI Brochure, 9th edition); white \
            light: CIE illuminants LED-B1 to LED-B5 (CIE 15:2018).",
        cannot_see: "Diodes that the listing does not count.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --ppf 3000 --working",
    },
    Meaning {
        word: "efficacy-estimated",
        gist: "the efficacy that lights of such diodes have",
        means: "The photon efficacy (PPE) that lights of such diodes are thought to have. It reaches the \
            claim, or it is too uncertain to speak against it.",
        decided_by: "The photon flux over the wall draw. Within reach if the probability that it reaches \
            the claim less the tolerance is at least the confidence. --tolerance and --confidence set \
            the limits.",
        rests_on: "As flux-estimated: Kusuma, Pattison & Bugbee 2020, Hortic. Res. 7:56.",
        cannot_see: "How good the diodes on sale are. A test report tells.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --ppe 1.2 --working",
    },
    Meaning {
        word: "efficacy-above-best-packages",
        gist: "above the best packages known, so ask",
        means: "The efficacy is above that of the best packages of the reference table. They improve, so \
            it is left open.",
        decided_by: "The claim is over the best packages' umol/J for this mix, and the claim less the \
            tolerance is not over the photons that a joule of such light has. --tolerance sets that.",
        rests_on: "Kusuma, Pattison & Bugbee 2020, Hortic. Res. 7:56. Certified lights of mostly white \
            diodes reach 2.87 umol/J (95th percentile of a public qualified-products list, May 2025).",
        cannot_see: "Packages made since. Ask for a test report of the whole light.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --ppe 3.2 --working",
    },
    Meaning {
        word: "efficacy-limit",
        gist: "more photons than a joule of light has",
        means: "Even with all of its power turned into light the light could not have that efficacy.",
        decided_by: "The claim less the tolerance is over the photons that a joule of light of this mix \
            has; without a count, over those of light at 700 nm. --tolerance sets that.",
        rests_on: "The energy of photons, wavelength / 119.6266 umol/J (SI Brochure, 9th edition); white \
            light: CIE illuminants LED-B1 to LED-B5 (CIE 15:2018); the band of 400-700 nm: ANSI/ASABE \
            S640.",
        cannot_see: "Far red, which some count in and S640 does not.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --ppe 6 --working",
    },
    Meaning {
        word: "nothing-counted",
        gist: "no diode count to hold the figure against",
        means: "The figure is claimed, and no count of diodes with their class is known that it could be \
            held against. It may well be true.",
        decided_by: "There is no count with a class, and no meter reading that bears on the figure.",
        rests_on: "What is absent: an absent figure is never taken for a zero.",
        cannot_see: "The diodes and their class. Look for '100 x 3W' in the details, or ask the seller.",
        example: "plainwatt vet --claim 300 --ppf 300 --working",
    },
    Meaning {
        word: "lamp-kind-not-stated",
        gist: "which kind of lamp it replaces is not said",
        means: "A lamp is replaced by its photons or its lumens, and kinds of lamps differ in them by a \
            factor of five and more.",
        decided_by: "Watts are given for the replaced lamp, and no kind that is known (HPS, MH, CMH, HID, \
            incandescent, fluorescent).",
        rests_on: "Nelson & Bugbee 2014, PLoS ONE 9(6): e99010, for sodium and metal halide fixtures.",
        cannot_see: "What the seller had in mind. Give the kind with --replaces.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --replaces 600 --working",
    },
    Meaning {
        word: "lamp-not-published",
        gist: "no published photon flux for such a lamp",
        means: "The lamp's photon flux was not found published, so nothing can be held against it.",
        decided_by: "The lamp is no sodium lamp from 100 to 1000 W, no ceramic metal halide lamp of \
            315 W and no incandescent lamp of a usual size.",
        rests_on: "Nelson & Bugbee 2014, PLoS ONE 9(6): e99010; between its sodium lamps and \
            below the flux is scaled and said to be, above them it is not. Regulation (EU) 2019/2015, Annex V.",
        cannot_see: "What that lamp gives.",
        example: "plainwatt vet --claim 300 --replaces \"2000W HPS\" --working",
    },
    Meaning {
        word: "lumens-of-colours",
        gist: "an incandescent lamp is replaced by lumens",
        means: "An incandescent lamp is there to see by. Coloured diodes give few lumens for their \
            photons, so the two are not compared.",
        decided_by: "The replaced lamp is incandescent and the counted diodes are not known to be all \
            white.",
        rests_on: "Regulation (EU) 2019/2015, Annex V: a lamp may be called equivalent by its luminous \
            flux only.",
        cannot_see: "How bright the light looks.",
        example: "plainwatt vet --class 3W --tally 9R --replaces \"60W incandescent\" --working",
    },
    Meaning {
        word: "amperes-estimated",
        gist: "the current that the light takes there",
        means: "The current at the stated voltage, from the counted diodes or from watts that were read. \
            It is near the stated one, or too uncertain to tell.",
        decided_by: "Wall watts over the highest volts stated, and over the lowest and the power factor \
            assumed, are its two ends. Within reach if the counted diodes reach the stated amperes less the tolerance even at a \
            power factor of 1. Understated if watts that were read take more than the stated amperes \
            plus the tolerance even so. --tolerance and --confidence set the limits.",
        rests_on: "Amperes are watts over volts and power factor. 0.9 over 25 W, and 0.5 below, is the \
            least that Regulation (EU) 2019/2020, Annex II Table 4 allows; from 380 V up three phases \
            are assumed (common practice, no source).",
        cannot_see: "The power factor: lights sold elsewhere may have less. A plug-in meter shows it.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --supply \"120V 1.7A\" --working",
    },
    Meaning {
        word: "amperes-measured",
        gist: "a meter read the current itself",
        means: "A meter read amperes at that mains, and they are held against the stated ones.",
        decided_by: "Borne out if the probability that the current is at least the stated one less the \
            tolerance is at least the confidence and that of more than the stated one plus the tolerance \
            at most 1 minus it; understated if the second is at least the confidence; else unsettled. \
            --tolerance, --confidence and --meter set the limits.",
        rests_on: "JCGM 106:2012, clause 7. The reading's voltage is within 10 % of the stated one: 115 \
            and 120 V, 220 and 240 V name the same mains (common practice, no source).",
        cannot_see: "Whether the light was at full brightness.",
        example: "plainwatt vet --measured \"120V 1.2A pf 0.9\" --supply \"120V 1.2A\" --working",
    },
    Meaning {
        word: "amperes-rating",
        gist: "more amperes than it takes, as ratings are",
        means: "The stated current is more than the light takes. It is mostly a rating, an upper limit \
            that a type plate or an adapter has to state, so that is no fault and never convicts.",
        decided_by: "The rule by which watts would be overstated, with the power factor that makes the \
            most of the current.",
        rests_on: "Common practice, no source: type plates and adapters state the most that they take. \
            Regulation (EU) 2019/2020, Annex II Table 4, for the power factor.",
        cannot_see: "Whether the seller means it as the draw.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --supply \"120V 5A\" --working",
    },
    Meaning {
        word: "amperes-exceeded",
        gist: "the diodes can take more than is stated",
        means: "At the current of their class the diodes take more amperes than are stated. Either they \
            are run lower, which says something of the watts too, or the figure is too low for a circuit \
            to be planned by.",
        decided_by: "The probability that the current at full draw is over the stated one plus the \
            tolerance is at least the confidence, even at a power factor of 1. A count never calls a \
            light understated, since many run below their class. --tolerance and --confidence set the \
            limits.",
        rests_on: "The reference table ('plainwatt diodes'). Amperes are at least watts over volts.",
        cannot_see: "The current that really flows. Measure it before a circuit depends on it; local \
            code and a licensed electrician decide.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --supply \"120V 0.6A\" --working",
    },
    Meaning {
        word: "amperes-of-adapter",
        gist: "no mains has that voltage",
        means: "The amperes are stated at a voltage that no mains has, so they rate an adapter. A light \
            need not use an adapter in full.",
        decided_by: "The stated voltage is under 85 V. No setting changes it.",
        rests_on: "From memory: the lowest mains is 100 V, and wide-range inputs are printed from 85 V.",
        cannot_see: "What the adapter takes from the mains.",
        example: "plainwatt vet --class 3W --tally \"100 white\" --supply \"24V 5A\" --working",
    },
];
