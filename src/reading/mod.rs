//! Free text to facts: what a listing's own words state, each fact with the words it was read from.
//!
//! Three steps. A tokenizer cuts the text into words, numbers and signs where they stand (nothing is rewritten,
//! so a span is a span of the original); the vocabulary gives each word of twelve languages its role; then small rules, one
//! file a family of fields, decide by roles. Where they are not sure a field stays `None` and the figure is listed under
//! `left` with its reason, because a misread number accuses somebody.

#![expect(clippy::match_same_arms, reason = "the arms of a grammar are grouped by what they mean")]
#![expect(
    clippy::needless_bitwise_bool,
    reason = "what is known already is joined without a branch, which the processor would have to guess"
)]

mod admitted;
mod array;
mod beside;
mod builder;
mod by_colour;
mod chains;
mod class;
mod coded;
mod codes;
mod colours;
mod company;
mod compared;
mod count;
mod counted;
mod cues;
mod drawn;
mod electrical;
mod figures;
mod fold;
mod foreign;
mod hues;
mod ideographs;
mod item;
mod label;
mod left;
mod letters;
mod levels;
mod listed;
mod noun;
mod number;
mod pack;
mod package;
mod page;
mod paired;
mod pairs;
mod partial;
mod photons;
mod phrase;
mod power;
mod rated;
mod replaced;
mod rival;
mod roles;
mod rows;
mod says;
mod scan;
mod settled;
mod sold;
mod steps;
mod subject;
mod together;
mod unitless;
mod units;
mod variants;
mod watts;
mod words;

use crate::facts::{Left, LeftWhy, Note, Read, Span};

/// How much of a text is read, in bytes: 64 KiB. A title is 100 bytes, a long description a few thousand; what comes after
/// the limit is listed as left, [`LeftWhy::BeyondLimit`].
pub const LIMIT: usize = 64 * 1024;

/// Reads texts one after another and keeps its buffers between them.
#[derive(Debug, Default)]
pub struct Reader {
    tokens: scan::Tokens,
    items: Vec<figures::Item>,
    figures: Vec<figures::Figure>,
    read: Read,
}

impl Reader {
    /// A reader with empty buffers.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Reads one text, its first [`LIMIT`] bytes and at most some hundred figures. What it states lies in the reader until the
    /// next text is read: it is large, and moving it would cost as much as reading a few words.
    pub fn read(&mut self, text: &str) -> &Read {
        let Self { tokens, items, figures, read } = self;
        *read = Read::default();
        let end = limit(text);
        scan::scan(&text[..end], tokens);
        let (seen, stopped) = builder::build(&text[..end], tokens, items, figures);
        let end = stopped.map_or(end, |at| at as usize);
        let seen = rows::label(text, items, seen);
        rules(&page::Page::new(&text[..end], items, figures, seen), read);
        if end < text.len() {
            let span = Span { start: end, end: text.len() };
            read.left.push(Left { span, why: LeftWhy::BeyondLimit });
        }
        read
    }
}

/// Applies the rules to the items of a page, in the order in which they need one another.
fn rules(page: &page::Page, read: &mut Read) {
    if !subject::is_light(page) {
        left::other_device(page, read);
        read.notes.push(Note::OtherDevice);
        return;
    }
    read.ultraviolet = hues::ultraviolet(page);
    read.units_in_pack = pack::units(page);
    let pack = read.units_in_pack.map(|t| t.value);
    let mut arrays = array::find(page, pack);
    let mut says = watts::classify(page, &arrays, pack);
    replaced::choose(page, &mut says, &arrays, read);
    let chosen = power::choose(page, &mut says, &arrays, pack, read);
    count::choose(page, &mut says, &mut arrays, chosen, read);
    colours::choose(page, &mut says, read);
    coded::choose(page, read);
    photons::choose(page, chosen.variants, read);
    electrical::choose(page, read);
    left::list(page, &says, read);
}

/// The last character boundary within the limit.
fn limit(text: &str) -> usize {
    let mut end = text.len().min(LIMIT);
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    end
}

/// Reads one text. For many texts a [`Reader`] saves the allocations.
#[must_use]
pub fn read(text: &str) -> Read {
    let mut reader = Reader::new();
    reader.read(text);
    reader.read
}
