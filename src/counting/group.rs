//! One group of the notation: its count, what multiplies it, its colour and its class.

use super::colours::{self, BARE_NM};
use super::cursor::{Cursor, Hue, Unit};
use super::error::Error;
use super::token::{Key, Kind};
use crate::facts::{Colour, Count, StatedClass};

pub(super) const MOST: u64 = Count::MOST as u64;

const AFTER_TIMES: &str =
    "a colour, a wavelength such as 660nm, a class such as 3W or '2835 0.5W', or groups in parentheses";
const WHOLE: &str = "a whole number of diodes, such as 60 or 1,152";
pub(super) const TOO_MANY: &str = "at most 1 000 000 diodes in one light";

/// What has been read of one group.
#[derive(Default)]
pub(super) struct Item {
    /// Where it begins, in bytes of the text.
    pub(super) start: usize,
    /// How many, and by how many they may be off.
    pub(super) count: Option<(u64, u64)>,
    pub(super) hue: Option<Hue>,
    pub(super) class: Option<StatedClass>,
}

impl Cursor<'_> {
    /// True if the number there counts something: it has no unit and is not the package before a class.
    pub(super) fn is_count(&self, ahead: usize) -> bool {
        let package = self.package_at(ahead).is_some()
            && matches!(self.unit_at(ahead + 1), Some(Unit::W | Unit::Watts))
            && matches!(self.kind_at(ahead + 1), Kind::Number(_));
        matches!(self.kind_at(ahead), Kind::Number(_)) && self.unit_at(ahead).is_none() && !package
    }

    /// Two white, where `2W` begins a group among other letter codes.
    pub(super) fn is_white(&self) -> Result<bool, Error> {
        let whole = matches!(self.kind(), Kind::Number(number) if number.whole.is_some());
        let alone =
            matches!(self.kind_at(2), Kind::Joiner | Kind::Comma | Kind::Newline | Kind::Close | Kind::End);
        if self.unit_at(0) != Some(Unit::W) || !whole || !(alone || self.kind_at(2) == Kind::At) {
            return Ok(false);
        }
        if *self.letter_codes.get_or_init(|| self.has_letter_code()) {
            return Ok(true);
        }
        let span = self.start()..self.span_at(1).end;
        let number = &self.text[self.span_at(0)];
        Err(self.error(
            span,
            format!("'{number} white' for diodes, or a count with a class, such as '100 x {number}W'"),
        ))
    }

    /// A code beside `W` that only means a colour: `40R`, `8 B`; `UV` and `IR` are also words, so they must touch the count.
    fn has_letter_code(&self) -> bool {
        self.all().windows(2).any(|pair| {
            let after_count = matches!(pair[0].kind, Kind::Number(_) | Kind::Times);
            let key = Key::of(&self.text[pair[1].span.clone()]);
            let touching = pair[0].span.end == pair[1].span.start;
            let code = match key.as_str() {
                "w" => false,
                "uv" | "ir" | "uva" => touching,
                other => colours::is_letter_code(other),
            };
            after_count && pair[1].kind == Kind::Word && code
        })
    }

    pub(super) fn count(&mut self) -> Result<(u64, u64), Error> {
        let span = self.span_at(0);
        let number = self.whole()?;
        if self.kind() != Kind::PlusMinus {
            return Ok((number, 0));
        }
        self.skip(1);
        let half_width = self.whole()?;
        if half_width > number {
            let span = span.start..self.end();
            return Err(self.error(span, "a doubt no larger than the count, such as 60±2"));
        }
        Ok((number, half_width))
    }

    pub(super) fn whole(&mut self) -> Result<u64, Error> {
        let Kind::Number(number) = self.kind() else { return Err(self.error_here(WHOLE)) };
        let whole = number.whole.ok_or_else(|| self.error_here(WHOLE))?;
        if whole > MOST {
            return Err(self.error_here(TOO_MANY));
        }
        self.skip(1);
        Ok(whole)
    }

    fn wavelength_or_count(&self) -> Error {
        let span = self.span_at(1);
        let number = &self.text[span.clone()];
        self.error(span, format!("'x {number}nm' for a wavelength, 'x ({number} ...)' for a count"))
    }
}

impl Item {
    /// What may follow the first count: `4 x 12 red`, `12 x 660`, `4 x (...)`. Steps up to the
    /// parentheses and gives how often they are repeated.
    pub(super) fn product(&mut self, cursor: &mut Cursor) -> Result<Option<u64>, Error> {
        loop {
            cursor.skip_fillers();
            if cursor.kind() != Kind::Times {
                return Ok(None);
            }
            match cursor.kind_at(1) {
                Kind::Open => {
                    let times = self.repeats(cursor)?;
                    cursor.skip(1);
                    return Ok(Some(times));
                }
                Kind::Number(number) if cursor.is_count(1) => {
                    let bare_nm = number.whole.is_some_and(|nm| BARE_NM.contains(&nm));
                    match (bare_nm, cursor.kind_at(2)) {
                        (_, Kind::Times | Kind::PlusMinus)
                        | (false, Kind::Word | Kind::Hyphen | Kind::Number(_)) => {
                            let times = self.repeats(cursor)?;
                            cursor.skip(1);
                            let (number, half_width) = cursor.count()?;
                            self.count =
                                Some((times.saturating_mul(number), times.saturating_mul(half_width)));
                        }
                        (true, Kind::Word | Kind::Hyphen) => return Err(cursor.wavelength_or_count()),
                        (true, _) => {
                            self.hue = Some(Hue::Wavelength(Colour::from_nanometres(number.value)));
                            cursor.skip(2);
                            return Ok(None);
                        }
                        (false, _) => return Err(cursor.error(cursor.span_at(1), AFTER_TIMES)),
                    }
                }
                _ => return Ok(None),
            }
        }
    }

    /// The first count as a number of repeats, which is never in doubt.
    fn repeats(&self, cursor: &Cursor) -> Result<u64, Error> {
        let accepted = "a number of repeats without ±; put the doubt on the diodes, as in '4 x (12±1 red)'";
        self.count
            .and_then(|(times, doubt)| (doubt == 0).then_some(times))
            .ok_or_else(|| cursor.error(self.start..cursor.end(), accepted))
    }

    /// One more thing said of the item; false if nothing more is.
    pub(super) fn part(&mut self, cursor: &mut Cursor) -> Result<bool, Error> {
        cursor.skip_fillers();
        match cursor.kind() {
            Kind::At => {
                cursor.skip(1);
                let start = cursor.start();
                let class = cursor.class_needed()?;
                self.set_class(cursor, class, start)?;
                Ok(true)
            }
            Kind::Times | Kind::Assign
                if self.count.is_none() && (cursor.is_count(1) || cursor.kind() == Kind::Assign) =>
            {
                cursor.skip(1);
                self.count = Some(cursor.count()?);
                Ok(true)
            }
            Kind::Times => {
                cursor.skip(1);
                cursor.skip_fillers();
                if self.described(cursor, true)? { Ok(true) } else { Err(cursor.error_here(AFTER_TIMES)) }
            }
            _ => self.described(cursor, false),
        }
    }

    /// A class or a part of a colour.
    fn described(&mut self, cursor: &mut Cursor, after_times: bool) -> Result<bool, Error> {
        let start = cursor.start();
        if let Some(class) = cursor.class()? {
            if matches!(self.hue, Some(Hue::Word { code: true, .. })) && !after_times {
                let accepted = "a separator before a count of white, or '@' before a class";
                return Err(cursor.error(start..cursor.end(), accepted));
            }
            self.set_class(cursor, class, start)?;
            return Ok(true);
        }
        let Some(hue) = cursor.hue_part()? else {
            let unknown = cursor.kind() == Kind::Word && self.hue.is_none();
            return if unknown { Err(cursor.no_colour()) } else { Ok(false) };
        };
        let joined = self.hue.map_or(Some(hue), |before| before.and(hue));
        let accepted = "one colour in a group, or a separator before the next group";
        self.hue = Some(joined.ok_or_else(|| cursor.error(start..cursor.end(), accepted))?);
        Ok(true)
    }

    fn set_class(&mut self, cursor: &Cursor, class: StatedClass, start: usize) -> Result<(), Error> {
        match self.class.replace(class) {
            None => Ok(()),
            Some(_) => Err(cursor.error(start..cursor.end(), "one class in a group")),
        }
    }
}
