//! Colours by wavelength or colour temperature, and the look of a list of colours.

use super::array::LARGEST_BEAD;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::letters::white_letter;
use super::page::Page;
use super::pairs;
use super::roles::{Role, Unit};
use crate::facts::{Colour, ColourWord};

pub(super) const LETTER: Cues = Role::Letter(ColourWord::Red).cue();

/// The most diodes of one colour.
const MOST: f64 = 1_000_000.0;

/// A wave length or colour temperature as a word: the bands of the labelling conventions.
pub(super) fn by_figure(f: &Figure) -> Option<(ColourWord, Colour)> {
    let v = f.high;
    match f.unit {
        Unit::Nanometre => {
            let word = match v {
                x if x < 400.0 => ColourWord::Uv,
                x if x < 500.0 => ColourWord::Blue,
                x if x < 570.0 => ColourWord::Green,
                x if x < 620.0 => ColourWord::Orange,
                x if x < 640.0 => ColourWord::Red,
                x if x < 700.0 => ColourWord::DeepRed,
                x if x < 760.0 => ColourWord::FarRed,
                _ => ColourWord::Ir,
            };
            Some((word, Colour::from_nanometres(v)))
        }
        Unit::Kelvin if v >= 1000.0 => {
            let word = match v {
                x if x < 4000.0 => ColourWord::WarmWhite,
                x if x < 5000.0 => ColourWord::White,
                _ => ColourWord::CoolWhite,
            };
            Some((word, Colour::White))
        }
        _ => None,
    }
}

/// Whether it is a wavelength or a colour temperature.
pub(super) fn is_shade(f: &Figure) -> bool {
    f.unit == Unit::Nanometre || f.unit == Unit::Kelvin && f.high >= 1000.0
}

pub(super) fn is_count(f: &Figure) -> bool {
    pairs::is_count(f) & (f.high <= MOST)
}

/// Whether the item modifies a colour: deep, far, warm, cool.
pub(super) fn modifies(page: &Page, i: usize) -> bool {
    matches!(page.role(i), Role::Deep | Role::Far | Role::Warm | Role::Cool)
}

/// Whether in this list the numbers stand before their colours: the colour after the number at item `j` has none after it.
pub(super) fn number_first(page: &Page, j: usize) -> bool {
    let mut k = j + 1;
    while matches!(page.role(k), Role::Colour(_) | Role::Deep | Role::Far | Role::Warm | Role::Cool) {
        k += 1;
    }
    !page.figure(k).is_some_and(is_count)
}

/// "84pcs 0.5W red": the figure at item `i` is the class of the pieces before it.
pub(super) fn class_of_pieces(page: &Page, i: usize, f: &Figure) -> bool {
    f.unit == Unit::Watt && f.high <= LARGEST_BEAD && page.role_before(i) == Role::Pieces
}

/// "240 x 0.5W white LEDs": the figure at item `i` is the class of the diodes counted before the cross.
pub(super) fn crossed_class(page: &Page, i: usize, f: &Figure) -> bool {
    f.unit == Unit::Watt
        && f.high <= LARGEST_BEAD
        && page.mark_before(i) == Some(Mark::Times)
        && page.figure_before(i - 1).is_some_and(is_count)
}

/// "3000K 352 / 5000K 308 / 660nm 40": whether the figure at item `i` heads a list of shades, each with its count after it.
pub(super) fn shade_first(page: &Page, i: usize) -> bool {
    let sign = |m: Option<Mark>| matches!(m, Some(Mark::Slash | Mark::Comma | Mark::Plus | Mark::Pipe));
    let entry = |i: usize| {
        page.figure(i).is_some_and(|f| is_shade(f) && !f.range) && page.figure(i + 1).is_some_and(is_count)
    };
    let before = i >= 3 && sign(page.mark(i - 1)) && entry(i - 3);
    let after = sign(page.mark(i + 2)) && entry(i + 3);
    let first = i == 0 || page.mark(i - 1).is_some();
    first && entry(i) && page.mark(i + 2).is_some() && (before || after)
}

/// "red 64 + blue 16 + white 80 beads": whether the colour at item `i` goes on a list in which the counts come after.
pub(super) fn ends_list(page: &Page, i: usize) -> bool {
    let joined = i >= 3
        && (matches!(page.mark(i - 1), Some(Mark::Plus | Mark::And | Mark::Comma | Mark::Slash))
            || page.role(i - 1) == Role::And);
    joined && page.figure(i - 2).is_some_and(is_count) && matches!(page.role(i - 3), Role::Colour(_))
}

/// Skips a wavelength or temperature in brackets or bare after the colour at item `i`; returns the item after it.
pub(super) fn after_colour(page: &Page, i: usize, wave: &mut Option<Colour>) -> usize {
    let mut j = i + 1;
    let open = page.mark(j) == Some(Mark::Open);
    if open {
        j += 1;
    }
    let mut any = false;
    while let Some(f) = page.figure(j) {
        let Some((_, colour)) = by_figure(f) else { break };
        *wave = wave.or(Some(colour).filter(|_| !any || !f.range));
        any = true;
        j += 1;
        if matches!(page.mark(j), Some(Mark::Slash | Mark::And | Mark::Plus))
            && page.figure(j + 1).is_some_and(is_shade)
        {
            j += 1;
        }
    }
    if open && any && page.mark(j) == Some(Mark::Close) {
        j += 1;
    }
    if any { j } else { i + 1 }
}

/// Whether the letter at item `i` stands in a list of letters with numbers, at least two different ones.
pub(super) fn letters(page: &Page, i: usize) -> bool {
    let from = i.saturating_sub(5);
    (from..(i + 6).min(page.items.len())).any(|k| {
        k != i
            && (matches!(page.role(k), Role::Letter(_)) && page.role(k) != page.role(i)
                || page.is_watts(k) && white_letter(page, k)
                || matches!(page.role(k), Role::Colour(_))
                    && page.figure_before(k).is_some_and(is_count)
                    && matches!(
                        page.role(k),
                        Role::Colour(
                            ColourWord::Uv
                                | ColourWord::Ir
                                | ColourWord::FarRed
                                | ColourWord::DeepRed
                                | ColourWord::WarmWhite
                                | ColourWord::CoolWhite
                        )
                    ))
    })
}

/// The letter g.
pub(super) fn green_letter(page: &Page, i: usize) -> bool {
    page.is(i, const { Letters::of("g") })
}

/// "(R 60, B 20, W 14", "W:126 R:42 B:21": whether the letter at item `i` stands before its number, in a list of such.
pub(super) fn letter_first(page: &Page, i: usize) -> bool {
    let sign = |i: usize| matches!(page.mark(i), Some(Mark::Comma | Mark::Slash | Mark::Plus | Mark::Pipe));
    let letter =
        |i: usize| matches!(page.role(i), Role::Letter(_) | Role::Unit(Unit::Watt)) || green_letter(page, i);
    // The number of items of an entry.
    let entry = |i: usize| {
        let colon = usize::from(matches!(page.mark(i + 1), Some(Mark::Colon | Mark::Equal)));
        let any = letter(i) || colon == 0 && matches!(page.role(i), Role::Colour(_));
        (any && page.figure(i + 1 + colon).is_some_and(is_count)).then_some(2 + colon)
    };
    let Some(length) = entry(i) else { return false };
    let colon = length == 3;
    let before = i > length
        && (sign(i - 1) && entry(i - 1 - length).is_some() || colon && entry(i - length) == Some(length));
    let next = i + length;
    let after = sign(next) && entry(next + 1).is_some() || colon && entry(next) == Some(length);
    // "R 42 G 21 B 21", without signs: the list begins with a letter.
    let mut start = i;
    while start >= 2 && entry(start - 2) == Some(2) {
        start -= 2;
    }
    let run = length == 2
        && (start < i || entry(next) == Some(2))
        && !page.figure_before(start).is_some_and(is_count)
        && letter(start);
    let first = i == 0 || page.mark(i - 1).is_some() || colon || run;
    first && (page.mark(next).is_some() || colon || run) && (before || after || run)
}

/// "126W, 42R, 21G, 21B": whether the figure at item `at` counts green diodes in a list of letters; alone it would be grams.
pub(super) fn green_count(page: &Page, at: usize) -> bool {
    let letter =
        |i: usize| page.figure(i).is_some_and(is_count) && matches!(page.role(i + 1), Role::Letter(_));
    let sign = |m: Option<Mark>| matches!(m, Some(Mark::Comma | Mark::Slash | Mark::Plus));
    page.cues.any(LETTER)
        && page.figure(at).is_some_and(|f| f.unit == Unit::Other && f.high.fract() == 0.0 && !f.range)
        && page.last_letter(at) == Some('G')
        && (sign(page.mark(at + 1)) && letter(at + 2) || at >= 3 && sign(page.mark(at - 1)) && letter(at - 3))
}

/// `R:B 8:1`
fn ratio_letters(page: &Page, b: usize) -> bool {
    b >= 3 && matches!(page.role(b - 2), Role::Letter(_))
}

/// Whether a word or a wavelength on the page names ultraviolet; "380-800nm" is the span of a whole spectrum.
pub(super) fn ultraviolet(page: &Page) -> bool {
    page.cues.any(Cues::ULTRAVIOLET)
        || page.has_unit(&[Unit::Nanometre])
            && page.others(false).any(|(_, f)| f.unit == Unit::Nanometre && !f.range && f.high < 400.0)
}

/// "pink full spectrum: 8pcs", "660nm assist 24pcs": the item after a name that stands between a colour and its pieces.
pub(super) fn named_after(page: &Page, j: usize) -> usize {
    let pieces = |k: usize| {
        let k = k + usize::from(page.mark(k) == Some(Mark::Colon));
        page.figure(k).is_some_and(is_count) && page.role(k + 1) == Role::Pieces
    };
    if page.is(j, const { Letters::of("full") })
        && page.starts(j + 1, const { Letters::of("spectr") })
        && pieces(j + 2)
    {
        return j + 2;
    }
    if matches!(page.what(j), Some(What::Word(Role::None))) && pieces(j + 1) { j + 1 } else { j }
}

/// "48 of them deep red": what `of` is followed by where a share of the diodes is told.
pub(super) fn of_them(page: &Page, i: usize) -> bool {
    const WORDS: [Letters; 6] = Letters::all(["them", "which", "are", "sind", "sont", "zijn"]);
    WORDS.iter().any(|&w| page.is(i, w))
}

/// `3500K LM281B+ × 288`: the item after the type of the diodes, where a count follows it.
pub(super) fn past_type(page: &Page, j: usize) -> usize {
    let end = j + 1 + usize::from(page.mark(j + 1) == Some(Mark::Plus));
    let typed = matches!(page.what(j), Some(What::Code)) && page.mark(end) == Some(Mark::Times);
    if typed { end } else { j }
}

/// The largest side of a ratio.
const SIDE: f64 = 20.0;

/// "red 4 : blue 1": whether the number at item `j` after the colour at item `first` is a side of a ratio.
pub(super) fn named_ratio(page: &Page, first: usize, j: usize) -> bool {
    let coloured = |i: usize| matches!(page.role(i), Role::Colour(_));
    page.has_mark(Mark::Colon)
        && page.figure(j).is_some_and(|f| is_count(f) && f.high <= SIDE)
        && (page.mark(j + 1) == Some(Mark::Colon) && coloured(j + 2)
            || first >= 3
                && page.mark(first - 1) == Some(Mark::Colon)
                && page.figure(first - 2).is_some_and(|f| is_count(f) && f.high <= SIDE)
                && coloured(first - 3))
}

/// "4 red:1 blue": whether the number at item `b` with the colour at item `i` is a side of a ratio.
fn worded_ratio(page: &Page, b: usize, i: usize) -> bool {
    let side = |b: usize| {
        page.figure(b).is_some_and(|f| is_count(f) && f.high <= SIDE)
            && matches!(page.role(b + 1), Role::Colour(_))
    };
    side(b)
        && (page.mark(i + 1) == Some(Mark::Colon) && side(i + 2)
            || b >= 3 && page.mark(b - 1) == Some(Mark::Colon) && side(b - 3))
}

/// "225 LEDs red, blue, white": another colour without a number of its own follows the colour at item `i`.
fn more_without_number(page: &Page, i: usize) -> bool {
    let and = matches!(page.mark(i + 1), Some(Mark::Comma | Mark::And | Mark::Plus));
    let sign = usize::from(matches!(page.mark(i + 3), Some(Mark::Colon | Mark::Times | Mark::Equal)));
    (and || page.role(i + 1) == Role::And)
        && matches!(page.role(i + 2), Role::Colour(_))
        && !(i + 3..i + 5 + sign).any(|k| page.figure(k).is_some())
}

/// Whether the number at item `b`, before the colour at item `i`, whose words begin at item `k`, is not that colour's alone.
pub(super) fn shared(page: &Page, i: usize, k: usize, b: usize) -> bool {
    // "225 LED red blue panel"
    matches!(page.role(i + 1), Role::Colour(_))
        || page.mark(i + 1) == Some(Mark::Slash)
            && (matches!(page.role(i + 2), Role::Colour(_)) || modifies(page, i + 2))
        || page.mark_before(k.wrapping_sub(1)) == Some(Mark::Colon) && ratio_letters(page, b)
        || more_without_number(page, i)
        || worded_ratio(page, b, i)
}

/// The colour that the word or letter at item `i` names, and whether it is a letter.
pub(super) fn named(page: &Page, i: usize) -> Option<(ColourWord, bool)> {
    Some(match page.role(i) {
        Role::Colour(word) => (word, false),
        Role::Letter(word) => (word, true),
        // "R 60, B 20, W 14": the white of a list of letters.
        Role::Unit(Unit::Watt) if page.is(i, const { Letters::of("w") }) && letter_first(page, i) => {
            (ColourWord::White, true)
        }
        // "R 42, G 21": grams elsewhere.
        Role::Unit(Unit::Other) if green_letter(page, i) && letter_first(page, i) => {
            (ColourWord::Green, true)
        }
        _ => return None,
    })
}
