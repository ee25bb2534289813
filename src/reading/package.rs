//! What the diodes are mounted in, and whether on a board: a word, a code, or the bare number that names a package.

use super::class::package_number;
use super::cues::Cues;
use super::figures::{Figure, Item, What};
use super::fold::Mark;
use super::page::Page;
use super::power::span;
use super::roles::Role;
use crate::facts::{Package, Span, Taken};

/// The package that a bare number names.
pub(super) fn numbered(f: &Figure) -> Option<Taken<Package>> {
    let value = if f.worded { return None } else { package_number(f.high)? };
    Some(Taken { value, span: span(f) })
}

/// Words that name a package.
const PACKAGES: Cues = Cues::of(&[Role::Package(Package::Smd), Role::Cob]);

/// The package: a word, or the bare number that names one.
pub(super) fn named(page: &Page, number: Option<Taken<Package>>) -> Option<Taken<Package>> {
    let word = |sized: bool| {
        page.items.iter().filter(|item| item.cue.any(PACKAGES)).find_map(|item| {
            let value = match item.what {
                What::Word(Role::Package(p)) if sized == (p != Package::Smd) => p,
                What::Word(Role::Cob) if !sized => Package::Cob,
                _ => return None,
            };
            Some(Taken { value, span: Span { start: item.start as usize, end: item.end as usize } })
        })
    };
    if page.cues.any(PACKAGES) { word(true).or(number).or_else(|| word(false)) } else { number }
}

/// A word for a board, or the code of a diode that is mounted on boards.
pub(super) fn on_board(page: &Page) -> bool {
    let mounted = |code: &Item| {
        let letters = page.text.as_bytes()[code.start as usize..].first_chunk();
        letters.is_some_and(|&[a, b]| (code.end - code.start > 1) & (a | 0x20 == b'l') & (b | 0x20 == b'm'))
    };
    page.cues.any(Cues::BOARD)
        || page.has_codes() && page.items.iter().any(|item| matches!(item.what, What::Code) && mounted(item))
}

/// Whether a package word stands with the class, and not in another part of the sentence: "100 x 3W chips plus 2835 UV" names
/// two kinds of diodes, and the small package's class would accuse a light of large ones.
#[inline(never)]
pub(super) fn beside(page: &Page, package: Span, class: usize) -> bool {
    /// From here on, in items, words hardly belong to the same diodes.
    const FAR: usize = 8;
    let place = page.items.iter().position(|item| item.end as usize >= package.end).unwrap_or(0);
    let (from, to) = (place.min(class), place.max(class));
    to - from <= FAR
        && (from..to).all(|i| {
            !matches!(page.mark(i), Some(Mark::Plus | Mark::And | Mark::Line | Mark::Pipe))
                && !matches!(page.role(i), Role::And | Role::With)
        })
}
