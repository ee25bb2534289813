//! The grammar of the notation.
//!
//! ```text
//! list   = item (separator item)*
//! item   = count [x count]* [x] part*  |  part+ (x | : | =) count part*  |  [count x] "(" list ")" [x count] [@ class]
//! part   = colour | wavelength | temperature | class | "@" class | filler
//! count  = whole number [± whole number]
//! ```
//!
//! Where two readings are near (`10W`: ten white or a 10 W class; `12 x 660 red`: a wavelength or a product) the answer is
//! an error that asks, never a guess.

use smallvec::SmallVec;

use super::cursor::{Cursor, Hue};
use super::error::Error;
use super::group::{Item, MOST, TOO_MANY};
use super::token::Kind;
use crate::facts::{Colour, Count, Group, StatedClass, Tally};

/// Parentheses inside parentheses; a light has panels, modules and rows.
const MOST_DEPTH: usize = 16;

const GROUP: &str = "a count and a colour, such as '60 deep-red' or '4 x (12 deep-red + 3 royal-blue)'";
const SEPARATOR: &str = "'+', ',', '/' or a new line before the next group";

/// A group while its count may still be multiplied.
#[derive(Clone, Copy)]
struct Draft {
    colour: Colour,
    number: u64,
    half_width: u64,
    class: Option<StatedClass>,
}

pub(super) struct Parser<'t> {
    cursor: Cursor<'t>,
    groups: SmallVec<[Draft; 8]>,
    depth: usize,
}

impl<'t> Parser<'t> {
    pub(super) fn over(text: &'t str) -> Result<Self, Error> {
        Ok(Self { cursor: Cursor::over(text)?, groups: SmallVec::new(), depth: 0 })
    }

    pub(super) fn tally(mut self) -> Result<Tally, Error> {
        self.list()?;
        if self.cursor.kind() != Kind::End {
            return Err(self.cursor.error_here("no ')' without its '('"));
        }
        self.within_most(0, 0)?;
        let groups: SmallVec<[Group; 8]> = self.groups.iter().filter_map(|draft| draft.finished()).collect();
        if groups.is_empty() {
            return Err(self.cursor.error(0..self.cursor.end(), "at least one diode"));
        }
        Ok(Tally { groups, lower_bound: false })
    }

    fn list(&mut self) -> Result<(), Error> {
        self.newlines();
        loop {
            self.item()?;
            if self.separator()? {
                return Ok(());
            }
        }
    }

    fn newlines(&mut self) {
        while self.cursor.kind() == Kind::Newline {
            self.cursor.skip(1);
        }
    }

    /// Steps over one separator (`, and` is one); true if the list ends here instead.
    fn separator(&mut self) -> Result<bool, Error> {
        let before = self.cursor.start();
        self.newlines();
        let comma = self.cursor.kind() == Kind::Comma;
        self.cursor.skip(usize::from(comma));
        self.newlines();
        let joiner = self.cursor.kind() == Kind::Joiner;
        self.cursor.skip(usize::from(joiner));
        self.newlines();
        match self.cursor.kind() {
            Kind::End | Kind::Close if !joiner => Ok(true),
            _ if self.cursor.start() == before => Err(self.cursor.error_here(SEPARATOR)),
            _ => Ok(false),
        }
    }

    fn item(&mut self) -> Result<(), Error> {
        let mut item = Item { start: self.cursor.start(), ..Item::default() };
        match self.cursor.kind() {
            Kind::Open => return self.bracketed(1, item.start),
            Kind::Number(_) if self.cursor.is_count(0) || self.cursor.is_white()? => {
                item.count = Some(self.cursor.count()?);
                if let Some(times) = item.product(&mut self.cursor)? {
                    return self.bracketed(times, item.start);
                }
            }
            Kind::Number(_) | Kind::Word => {}
            Kind::At => {
                let accepted = "a group before its class; for several groups write '(60 red + 20 blue) @3W'";
                return Err(self.cursor.error_here(accepted));
            }
            _ => return Err(self.cursor.error_here(GROUP)),
        }
        while item.part(&mut self.cursor)? {}
        let span = item.start..self.cursor.end();
        let Some((number, half_width)) = item.count else {
            let no_word = item.hue.is_none() && item.class.is_none();
            return Err(if no_word && self.cursor.kind() == Kind::Word {
                self.cursor.no_colour()
            } else {
                self.cursor.error(span, "a count with it, such as '12 x 660nm', '60 red' or '100 x 3W'")
            });
        };
        if self.cursor.kind() == Kind::Open && item.hue.is_none() {
            return Err(self
                .cursor
                .error_here("'x' between a count and its parentheses, a separator between groups"));
        }
        let colour = item.hue.map_or(Colour::Unstated, Hue::colour);
        self.groups.push(Draft { colour, number, half_width, class: item.class });
        self.within_most(self.groups.len() - 1, item.start)
    }

    /// A list in parentheses and what applies to all of it.
    fn bracketed(&mut self, times: u64, start: usize) -> Result<(), Error> {
        if self.depth == MOST_DEPTH {
            return Err(self.cursor.error_here(format!("parentheses at most {MOST_DEPTH} deep")));
        }
        let opened = self.cursor.span_at(0);
        self.depth += 1;
        self.cursor.skip(1);
        let first = self.groups.len();
        self.list()?;
        if self.cursor.kind() != Kind::Close {
            let column = self.cursor.error(opened, "").column;
            return Err(self.cursor.error_here(format!("')' to close the '(' at column {column}")));
        }
        self.cursor.skip(1);
        self.depth -= 1;
        self.repeat(first, times);
        loop {
            match self.cursor.kind() {
                Kind::Times if self.cursor.is_count(1) => {
                    self.cursor.skip(1);
                    let times = self.cursor.whole()?;
                    self.repeat(first, times);
                }
                Kind::Times => {
                    return Err(self
                        .cursor
                        .error(self.cursor.span_at(1), "a number of repeats after 'x', or '@' and a class"));
                }
                Kind::At => {
                    self.cursor.skip(1);
                    let class = self.cursor.class_needed()?;
                    for group in &mut self.groups[first..] {
                        group.class.get_or_insert(class);
                    }
                }
                _ => return self.within_most(first, start),
            }
        }
    }

    fn repeat(&mut self, first: usize, times: u64) {
        for group in &mut self.groups[first..] {
            group.number = group.number.saturating_mul(times);
            group.half_width = group.half_width.saturating_mul(times);
        }
    }

    /// Refuses the groups from `first` on, written from `start` to here, if they are more than a light can have.
    fn within_most(&self, first: usize, start: usize) -> Result<(), Error> {
        let total = self.groups[first..].iter().fold(0, |sum: u64, group| sum.saturating_add(group.number));
        if total > MOST { Err(self.cursor.error(start..self.cursor.end(), TOO_MANY)) } else { Ok(()) }
    }
}

impl Draft {
    /// The group, if it has any diodes.
    fn finished(self) -> Option<Group> {
        let number = u32::try_from(self.number).ok().filter(|number| *number > 0)?;
        let half_width = u32::try_from(self.half_width).ok().filter(|half| *half > 0);
        Some(Group { colour: self.colour, count: Count { number, half_width }, class: self.class })
    }
}
