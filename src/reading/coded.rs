//! Counts by colour that are written like model numbers: "225 LED: R165+B60", "50 LEDs, R40 B10".
//!
//! A list of them is taken only where it adds up to the count of the text, for "R80/B100" may be two models.

use smallvec::SmallVec;

use super::figures::{Item, What};
use super::fold::{Fold, Mark, next};
use super::page::Page;
use crate::facts::{ColourCount, ColourWord, Read, Span, Taken};

/// The most digits of a count.
const MOST_DIGITS: u32 = 4;

/// The most bytes of an entry: a letter and its digits, each of three bytes if they are full-width.
const LONGEST: u32 = 24;

/// Fills `colours`, if nothing else did.
pub(super) fn choose(page: &Page, read: &mut Read) {
    let Some(total) = read.diode_count.filter(|_| page.has_codes()) else { return };
    if !read.colours.is_empty() {
        return;
    }
    list(page, total.value, read);
}

/// Fills `colours` with a list that adds up to the total.
#[inline(never)]
fn list(page: &Page, total: u32, read: &mut Read) {
    let mut list: SmallVec<[Taken<ColourCount>; 4]> = SmallVec::new();
    let mut end = 0;
    let short = |item: &Item| item.what == What::Code && item.end - item.start <= LONGEST;
    for (i, item) in page.items.iter().enumerate().filter(|(_, item)| short(item)) {
        let Some((word, count)) = coded(page.words(i)) else { continue };
        let signs = matches!(page.mark_before(i), Some(Mark::Plus | Mark::Slash | Mark::Comma | Mark::And));
        if i != end + usize::from(signs) || list.iter().any(|c| c.value.word == word) {
            list.clear();
        }
        let span = Span { start: item.start as usize, end: item.end as usize };
        list.push(Taken { value: ColourCount { word, colour: word.colour(), count }, span });
        end = i + 1;
        if list.len() > 1 && list.iter().map(|c| c.value.count).sum::<u32>() == total {
            read.colours.extend(list);
            return;
        }
    }
}

/// A colour's letter and its count.
fn coded(code: &str) -> Option<(ColourWord, u32)> {
    let (mut word, mut count, mut digits, mut at) = (None, 0, 0, 0);
    while let Some((folded, length)) = next(code, at) {
        at += length;
        match folded {
            Fold::Letter(letter) if word.is_none() => {
                word = Some(match char::from_u32(letter)? {
                    'r' => ColourWord::Red,
                    'b' => ColourWord::Blue,
                    'w' => ColourWord::White,
                    'g' => ColourWord::Green,
                    _ => return None,
                });
            }
            Fold::Digit(d) if word.is_some() && digits < MOST_DIGITS => {
                count = count * 10 + u32::from(d);
                digits += 1;
            }
            Fold::Skip => {}
            _ => return None,
        }
    }
    word.zip((count > 0).then_some(count))
}
