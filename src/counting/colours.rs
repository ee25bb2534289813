//! The words that people use for a diode's colour, all in one table.
//!
//! Trade names, codes and spellings are common practice; there is no standard that fixes them. Where a wavelength or a
//! colour temperature is given it decides, because a word such as IR or red is used for several.

use super::cursor::Cursor;
use super::token::{Key, Kind};
use crate::facts::Colour;

macro_rules! words {
    ($($colour:ident: $($word:literal)+;)+) => {
        /// Every word with its colour; written without the hyphens, spaces and underscores, which never matter.
        const WORDS: &[(&str, Colour)] = &[$($(($word, Colour::$colour),)+)+];

        /// The colour of a folded word.
        fn exactly(key: &str) -> Option<Colour> {
            match key {
                $($($word)|+ => Some(Colour::$colour),)+
                _ => None,
            }
        }
    };
}

words! {
    FarRed: "farred" "fr";
    DeepRed: "deepred" "hyperred" "photored" "dr";
    Red: "red" "r";
    RedOrange: "redorange" "orangered";
    Amber: "amber" "orange" "yellow";
    Green: "green" "g";
    Cyan: "cyan";
    Blue: "blue" "b";
    RoyalBlue: "royalblue" "deepblue" "rb";
    UvA: "uva" "uv" "ultraviolet" "ultravioleta" "violet";
    White: "white" "warmwhite" "coolwhite" "coldwhite" "neutralwhite" "naturalwhite" "daylight" "daylightwhite"
        "fullspectrumwhite" "whitefullspectrum" "w" "ww" "cw" "nw";
    Pink: "pink" "purple" "fullspectrum" "fullspectrumpink" "fullspectrumpurple" "pinkfullspectrum"
        "purplefullspectrum" "purplephosphor" "pinkphosphor";
    Infrared: "infrared" "nearinfrared" "ir" "nir";
    Unstated: "unstated" "unknown";
}

/// Colours that the reference table has no row for, with what to do about it.
const UNCOVERED: &[(&str, &str)] = &[
    ("lime", "a colour of the reference table; lime has no row, so count it as 'unstated'"),
    ("mint", "a colour of the reference table; mint has no row, so count it as 'unstated'"),
    (
        "phosphoramber",
        "a colour of the reference table; phosphor amber has no row, so count it as 'unstated'",
    ),
    ("pcamber", "a colour of the reference table; phosphor amber has no row, so count it as 'unstated'"),
    ("uvb", "a colour of the reference table; UV-B has no row, only uv-a has"),
    ("uvc", "a colour of the reference table; UV-C has no row, only uv-a has"),
    ("rgb", "one colour; count red, green and blue dice apart"),
    ("rgbw", "one colour; count red, green, blue and white dice apart"),
];

/// Words that may stand beside a colour or a count and say nothing about either.
pub(super) fn is_filler(key: &str) -> bool {
    matches!(
        key,
        "led"
            | "leds"
            | "diode"
            | "diodes"
            | "pc"
            | "pcs"
            | "piece"
            | "pieces"
            | "chip"
            | "chips"
            | "bead"
            | "beads"
            | "of"
    )
}

/// Codes that nobody would write as a word: beside one of these `2W` is two white.
pub(super) fn is_letter_code(key: &str) -> bool {
    matches!(key, "r" | "b" | "g" | "w" | "dr" | "fr" | "rb" | "ww" | "cw" | "nw")
}

/// The most words in the name of a colour ("full spectrum pink").
pub(super) const MOST_WORDS: usize = 3;

/// Wavelengths that a number alone, without `nm`, is taken for.
pub(super) const BARE_NM: std::ops::RangeInclusive<u64> = 360..=960;

/// Looks up a folded word; a plural is taken as its singular.
pub(super) fn known(key: &str) -> Option<Colour> {
    exactly(key).or_else(|| key.strip_suffix('s').filter(|one| one.len() > 2).and_then(exactly))
}

/// What to say of a colour that has no row.
pub(super) fn uncovered(key: &str) -> Option<&'static str> {
    UNCOVERED.iter().find(|(word, _)| *word == key).map(|(_, what)| *what)
}

/// The colour of a word, a code, a wavelength or a colour temperature: `deep red`, `uv_a`, `WW`, `660nm`, `660`, `3000 K`,
/// `IR 730nm`. Case, hyphens, underscores and spaces do not matter. `None` if it is none of these.
#[must_use]
pub fn colour(word: &str) -> Option<Colour> {
    let mut cursor = Cursor::over(word).ok()?;
    let bare = match cursor.kind() {
        Kind::Number(number) if cursor.kind_at(1) == Kind::End => {
            number.whole.filter(|nm| BARE_NM.contains(nm))
        }
        _ => None,
    };
    if bare.is_some()
        && let Kind::Number(number) = cursor.kind()
    {
        return Some(Colour::from_nanometres(number.value));
    }
    let hue = cursor.hue().ok()??;
    (cursor.kind() == Kind::End).then_some(hue)
}

/// The name of the colour whose word is nearest to this one, if it is near enough to be a slip of the fingers: one wrong,
/// missing, extra or swapped letter in a word of three to five, two in a longer one.
#[must_use]
pub fn nearest_colour(word: &str) -> Option<&'static str> {
    nearest(Key::of(word).as_str()).map(|(_, name)| name)
}

/// The distance of the nearest word and its colour's name.
pub(super) fn nearest(key: &str) -> Option<(usize, &'static str)> {
    let allowed = match key.chars().count() {
        0..3 => return None,
        3..6 => 1,
        _ => 2,
    };
    WORDS
        .iter()
        .filter(|(word, _)| word.len() >= 3)
        .map(|(word, colour)| (strsim::osa_distance(key, word), colour.name()))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_of_the_trade_mean_a_colour_of_the_table() {
        for (words, expected) in [
            ("far red|far-red|farred|Far_Red|FR|730nm|730", Colour::FarRed),
            (
                "deep red|deep-red|deep_red|DEEP RED|hyper red|Photo Red|DR|660|660nm|660 nm|red 660nm|IR 660nm",
                Colour::DeepRed,
            ),
            ("red|Red|R|630nm|ｒｅｄ|reds|red leds", Colour::Red),
            ("red-orange|orange red|610nm", Colour::RedOrange),
            ("amber|orange|yellow|590nm", Colour::Amber),
            ("green|G|525nm", Colour::Green),
            ("cyan|500nm", Colour::Cyan),
            ("blue|B|470nm|460nm", Colour::Blue),
            ("royal blue|royal_blue|RB|deep blue|450nm|459nm", Colour::RoyalBlue),
            ("UV|UVA|uv-a|uv_a|UV A|violet|ultraviolet|395nm|uv 395nm", Colour::UvA),
            (
                "white|warm white|cool white|neutral-white|W|WW|CW|3000K|3000 K|6500k|white 3000K|full spectrum white",
                Colour::White,
            ),
            ("pink|purple|full spectrum|full-spectrum pink", Colour::Pink),
            ("IR|infrared|infra-red|850nm|IR 850nm", Colour::Infrared),
            ("IR 730nm|infrared (730nm)", Colour::FarRed),
            ("unstated|unknown", Colour::Unstated),
        ] {
            for word in words.split('|') {
                assert_eq!(colour(word), Some(expected), "{word}");
            }
        }
    }

    #[test]
    fn what_is_no_colour_of_the_table_is_none() {
        for word in [
            "",
            " ",
            "lime",
            "mint",
            "uv-b",
            "60 red",
            "red blue",
            "12",
            "2000",
            "3W",
            "100nm",
            "red 3000K",
            "redd",
            "(",
            "s",
        ] {
            assert_eq!(colour(word), None, "{word}");
        }
    }

    #[test]
    fn every_name_of_the_table_is_its_own_word() {
        for expected in Colour::ALL {
            assert_eq!(colour(expected.name()), Some(expected));
            assert_eq!(colour(&expected.name().replace('-', "_")), Some(expected));
        }
    }

    #[test]
    fn a_slip_finds_the_colour_and_a_stranger_does_not() {
        for (slip, meant) in [
            ("depred", "deep-red"),
            ("royl blue", "royal-blue"),
            ("rde", "red"),
            ("whit", "white"),
            ("infared", "infrared"),
            ("warm whte", "white"),
            ("purpel", "pink"),
        ] {
            assert_eq!(colour(slip), None, "{slip}");
            assert_eq!(nearest_colour(slip), Some(meant), "{slip}");
        }
        for stranger in ["", "x", "ab", "chartreuse", "banana", "panel", "赤"] {
            assert_eq!(nearest_colour(stranger), None, "{stranger}");
        }
    }

    #[test]
    fn no_word_stands_twice_or_is_longer_than_a_key_can_be() {
        for (at, (word, colour)) in WORDS.iter().enumerate() {
            assert!(word.len() <= 28, "{word}");
            assert_eq!(exactly(word), Some(*colour));
            assert_eq!(WORDS.iter().rposition(|(other, _)| other == word), Some(at), "{word}");
            assert!(uncovered(word).is_none() && !is_filler(word), "{word}");
        }
    }
}
