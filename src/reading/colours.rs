//! Counts by colour: "165 red and 60 blue", "Red 630nm: 64pcs", `40R/8B/2W`, `3000K*88 660nm*12`.
//!
//! The listing's word decides; without one the colour temperature or the wavelength does. Ratios and percentages are no
//! counts.

use super::class::package_number;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::hues::{
    LETTER, after_colour, by_figure, class_of_pieces, crossed_class, ends_list, green_count, is_count,
    is_shade, letter_first, letters, modifies, named, named_after, named_ratio, number_first, of_them,
    past_type, shade_first, shared,
};
use super::item::Letters;
use super::letters::white_letter;
use super::page::Page;
use super::power::span;
use super::roles::{Role, Unit};
use super::says::{All, Says};
use crate::facts::{Colour, ColourCount, ColourWord, Left, LeftWhy, Read, Span, Taken};

/// Fills `colours`.
pub(super) fn choose(page: &Page, says: &mut All, read: &mut Read) {
    const WORDS: Cues = Cues::of(&[Role::Colour(ColourWord::Red), Role::Letter(ColourWord::Red)]);
    // A count is a bare number, or stands in a list of letters with some that are.
    let named = page.cues.any(WORDS) || page.has_unit(&[Unit::Nanometre, Unit::Kelvin]);
    if !(named & page.has_unit(&[Unit::Bare])) {
        return;
    }
    // Watts are white diodes only among letters.
    let watts = if page.cues.any(LETTER) { Cues::WATTS } else { Cues::default() };
    let wanted = WORDS.and(Cues::SHADE).and(Cues::LETTERED).and(watts);
    let mut used = 0usize; // items before this one belong to an earlier colour
    let mut i = 0;
    while let Some(item) = page.items.get(i) {
        if !item.cue.any(wanted) {
            i += 1;
            continue;
        }
        let step = if item.is_figure() {
            figure(page, usize::from(item.figure), used, says, read)
        } else {
            word(page, i, used, read)
        };
        i += 1;
        if let Some(next) = step {
            (used, i) = (next, next.max(i));
        }
    }
    refuse_too_many(read);
}

/// A colour word at item `i` with its number before or after it; returns the item after what was used.
#[inline(never)]
fn word(page: &Page, i: usize, used: usize, read: &mut Read) -> Option<usize> {
    let (word, letter) = named(page, i)?;
    let (word, first) = modified(page, i, word, used);
    // "blanco cálido", "rouge lointain"
    let (word, i) = modified_after(page, i, word);
    if page.role_before(first) == Role::All {
        return all_of_one(first, word, read);
    }
    let mut wave = None;
    let noun = |i: usize| matches!(page.role(i), Role::Diode | Role::Led | Role::Chip);
    // The number before: "120 Red", "1152× white", "100 pcs red", "660nm deep red 48".
    let mut k = first;
    while k > used {
        match page.items[k - 1].what {
            What::Word(Role::Pieces | Role::Of | Role::DoubleEnded) | What::Mark(Mark::Times) => k -= 1,
            What::Word(Role::Led | Role::Diode) if !letter => k -= 1,
            // "84pcs 0.5W red"
            What::Figure(f) if !letter && class_of_pieces(page, k - 1, &page.figures[usize::from(f)]) => {
                k -= 1;
            }
            // "240 x 0.5W white LEDs"
            What::Figure(f)
                if !letter && crossed_class(page, k - 1, &page.figures[usize::from(f)]) && noun(i + 1) =>
            {
                k -= 1;
            }
            What::Figure(f) if is_shade(&page.figures[usize::from(f)]) && !letter => {
                wave = by_figure(&page.figures[usize::from(f)]).map(|b| b.1);
                k -= 1;
            }
            // "48 of them deep red"
            What::Word(_) if k > used + 2 && of_them(page, k - 1) => k -= 1,
            _ => break,
        }
    }
    if letter && !letters(page, i) && !letter_first(page, i) {
        return None;
    }
    let before = k.checked_sub(1).filter(|&b| b >= used).and_then(|b| page.figure(b).map(|f| (b, f)));
    let end = after_colour(page, i, &mut wave);
    let glued = || {
        page.figure(i + 1).is_some_and(is_count) && !page.spaced(i + 1)
            || letter && page.mark(i + 1).is_some() && letter_first(page, i)
    };
    let total = |f: &Figure| {
        read.diode_count.is_some_and(|c| c.span == span(f)) && page.figure(i + 1).is_some_and(is_count)
    };
    if let Some((b, f)) = before
        && is_count(f)
        && !glued()
        && package_number(f.high).is_none()
        && !total(f)
        && page.mark_before(b) != Some(Mark::Times)
        && (f.item as usize) >= used
    {
        if shared(page, i, k, b) {
            read.left.push(Left { span: span(f), why: LeftWhy::Ratio });
            let mut j = i + 1;
            while matches!(page.role(j), Role::Colour(_)) || page.mark(j) == Some(Mark::Slash) {
                j += 1;
            }
            return Some(j);
        }
        add(page, read, word, wave, f.high, b, end.max(i + 1));
        return Some(end.max(i + 1));
    }
    // The number after: "Red 198", "UV 2pcs", "Red 630nm: 64pcs", "white (3200K) x 60".
    let mut j = named_after(page, end.max(i + 1));
    while matches!(page.mark(j), Some(Mark::Colon | Mark::Equal | Mark::Times | Mark::Open))
        || matches!(page.role(j), Role::Led | Role::Diode | Role::Chip | Role::Quantity)
            && page.mark(j + 1).is_some_and(|m| matches!(m, Mark::Colon | Mark::Times))
    {
        j += 1;
    }
    let f = page.figure(j)?;
    if named_ratio(page, first, j) {
        read.left.push(Left { span: span(f), why: LeftWhy::Ratio });
        return Some(j + 1);
    }
    let unit_next = page.role(j + 1);
    let lists = j > i + 1 || !letter || letter_first(page, i);
    let next_colour = (matches!(unit_next, Role::Colour(_)) || modifies(page, j + 1))
        && page.mark(j - 1) != Some(Mark::Times)
        && number_first(page, j);
    let counts_other = matches!(
        unit_next,
        Role::Diode
            | Role::Led
            | Role::Chip
            | Role::Cob
            | Role::Part
            | Role::Board
            | Role::Light
            | Role::Lights
    ) && !matches!(page.mark(j - 1), Some(Mark::Colon | Mark::Times | Mark::Equal))
        && !ends_list(page, first)
        // "red blue 225 SMD LEDs": the count of both.
        || matches!(unit_next, Role::Package(_)) && matches!(page.role_before(first), Role::Colour(_));
    // "red 80 x 3W" is a count and a class, "red 3030 x 80" a package.
    let model = page.mark(j + 1) == Some(Mark::Times) && !page.is_watts(j + 2)
        || package_number(f.high).is_some() && f.unit == Unit::Bare;
    if is_count(f) && lists && !next_colour && !counts_other && !model {
        let stop = if unit_next == Role::Pieces { j + 2 } else { j + 1 };
        add(page, read, word, wave, f.high, first, stop);
        return Some(stop);
    }
    None
}

/// The colour with the words before it taken in ("deep red", "far-red", "royal blue"), and the first item of it.
fn modified(page: &Page, i: usize, word: ColourWord, used: usize) -> (ColourWord, usize) {
    const PLAIN: [Letters; 6] = Letters::all(["royal", "natural", "neutral", "pure", "super", "bright"]);
    let dash = usize::from(page.mark_before(i) == Some(Mark::Dash) && !page.breaks(i - 1));
    let word = match (page.role_before(i - dash), word) {
        (Role::Deep, ColourWord::Red) => ColourWord::DeepRed,
        (Role::Far, ColourWord::Red) => ColourWord::FarRed,
        (Role::Warm, ColourWord::White) => ColourWord::WarmWhite,
        (Role::Cool, ColourWord::White) => ColourWord::CoolWhite,
        _ => word,
    };
    let mut first = if dash == 1 && i >= 2 && modifies(page, i - 2) { i - 1 } else { i };
    while first > used && (modifies(page, first - 1) || PLAIN.iter().any(|&w| page.is(first - 1, w))) {
        first -= 1;
    }
    (word, first)
}

/// The colour with a word after it taken in, as Romance and Slavic languages put it, and the last item of it.
fn modified_after(page: &Page, i: usize, word: ColourWord) -> (ColourWord, usize) {
    let word = match (page.role(i + 1), word) {
        _ if matches!(page.role(i + 2), Role::Colour(_)) => return (word, i),
        (Role::Deep, ColourWord::Red) => ColourWord::DeepRed,
        (Role::Far, ColourWord::Red) => ColourWord::FarRed,
        (Role::Warm, ColourWord::White) => ColourWord::WarmWhite,
        (Role::Cool, ColourWord::White) => ColourWord::CoolWhite,
        _ => return (word, i),
    };
    (word, i + 1)
}

/// "all blue 60 x 3W": every diode has that colour.
fn all_of_one(first: usize, word: ColourWord, read: &mut Read) -> Option<usize> {
    let count = read.diode_count?;
    read.colours.push(Taken {
        value: ColourCount { word, colour: word.colour(), count: count.value },
        span: count.span,
    });
    Some(first + 2)
}

/// A wavelength or temperature with a count and no colour word, or the white of a letter list.
#[inline(never)]
fn figure(page: &Page, index: usize, used: usize, says: &mut All, read: &mut Read) -> Option<usize> {
    let f = &page.figures[index];
    let at = usize::from(f.item);
    if f.unit == Unit::Watt && white_letter(page, at) {
        if f.high.fract() == 0.0 {
            add(page, read, ColourWord::White, None, f.high, at, at + 1);
            says[index] = Says::Nothing;
        }
        return Some(at + 1);
    }
    if green_count(page, at) {
        add(page, read, ColourWord::Green, None, f.high, at, at + 1);
        return Some(at + 1);
    }
    if !is_shade(f) {
        return None;
    }
    let follows = |k: usize| {
        matches!(page.role(k), Role::Colour(_))
            || modifies(page, k)
            || page.is(k, const { Letters::of("royal") })
    };
    if follows(at + 1) || f.list {
        return None;
    }
    // `3000K*88`, `660nm x 16`, `660nm: 48pcs`
    let mut j = past_type(page, at + 1);
    while page.mark(j) == Some(Mark::Close) || matches!(page.role(j), Role::Led | Role::Diode | Role::Chip) {
        j += 1;
    }
    let sign = page.mark(j);
    if matches!(sign, Some(Mark::Times | Mark::Colon | Mark::Equal))
        && let Some(n) = page.figure(j + 1)
        && is_count(n)
    {
        let (word, colour) = by_figure(f)?;
        add(page, read, word, Some(colour), n.high, at, j + 2);
        return Some(j + 2);
    }
    if let Some(n) = page.figure(j)
        && is_count(n)
        && (page.role(j + 1) == Role::Pieces || shade_first(page, at))
    {
        let (word, colour) = by_figure(f)?;
        add(page, read, word, Some(colour), n.high, at, j + 2);
        return Some(j + 2);
    }
    // `48× 660 nm`, `12 pcs 660nm`
    let mut k = at;
    while k > used
        && matches!(page.items[k - 1].what, What::Word(Role::Pieces | Role::Of) | What::Mark(Mark::Times))
    {
        k -= 1;
    }
    let n = page.figure(k.checked_sub(1)?)?;
    // "144 pcs 3000K 660nm": the count of all, and then the list of its colours.
    let of_all =
        read.diode_count.is_some_and(|c| c.span == span(n)) && page.figure(at + 1).is_some_and(is_shade);
    if !is_count(n) || k == at || usize::from(n.item) < used || of_all {
        return None;
    }
    let (word, colour) = by_figure(f)?;
    add(page, read, word, Some(colour), n.high, k - 1, at + 1);
    Some(at + 1)
}

/// Adds a count; entries under the same word are summed.
fn add(
    page: &Page,
    read: &mut Read,
    word: ColourWord,
    wave: Option<Colour>,
    count: f64,
    from: usize,
    to: usize,
) {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "counts are between 1 and a million"
    )]
    let count = count as u32;
    let last = to.min(page.items.len()).max(from + 1) - 1;
    let span = Span { start: page.items[from].start as usize, end: page.items[last].end as usize };
    let colour = wave.unwrap_or(word.colour());
    read.colours.push(Taken { value: ColourCount { word, colour, count }, span });
}

/// More diodes than a light can have are a misread list.
fn refuse_too_many(read: &mut Read) {
    if read.colours.iter().map(|c| u64::from(c.value.count)).sum::<u64>()
        > u64::from(crate::facts::Count::MOST)
    {
        read.colours.clear();
    }
}
