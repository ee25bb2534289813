//! A place among the tokens, and what several rules read alike: colours, wavelengths, units, fillers.

use std::borrow::Cow;
use std::cell::OnceCell;
use std::ops::Range;

use super::colours::{self, MOST_WORDS};
use super::error::Error;
use super::token::{Key, Kind, Number, Token, Tokens, tokens};
use crate::facts::{Colour, Package};

/// The longest text that is read; a light described in more bytes than this is not typed by a person.
pub(super) const MOST_BYTES: usize = 10_000;

/// What a number is, by what follows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    Nanometres,
    Kelvin,
    /// `W`, which is also the code for white.
    W,
    Watts,
}

pub(super) struct Cursor<'t> {
    pub(super) text: &'t str,
    tokens: Tokens,
    at: usize,
    /// Whether the text has a code for a colour other than white, once somebody asked.
    pub(super) letter_codes: OnceCell<bool>,
}

impl<'t> Cursor<'t> {
    pub(super) fn over(text: &'t str) -> Result<Self, Error> {
        if text.len() > MOST_BYTES {
            let from = (0..=MOST_BYTES).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
            let accepted = format!("at most {MOST_BYTES} bytes, and this has {}", text.len());
            return Err(Error::new(text, from..text.len(), accepted));
        }
        Ok(Self { text, tokens: tokens(text), at: 0, letter_codes: OnceCell::new() })
    }

    pub(super) fn kind_at(&self, ahead: usize) -> Kind {
        self.tokens.get(self.at + ahead).map_or(Kind::End, |t| t.kind)
    }

    pub(super) fn kind(&self) -> Kind {
        self.kind_at(0)
    }

    pub(super) fn span_at(&self, ahead: usize) -> Range<usize> {
        let end = self.text.len()..self.text.len();
        self.tokens.get(self.at + ahead).map_or(end, |t| t.span.clone())
    }

    /// Where the token here begins.
    pub(super) fn start(&self) -> usize {
        self.span_at(0).start
    }

    /// Where the token before here ends.
    pub(super) fn end(&self) -> usize {
        self.at.checked_sub(1).map_or(0, |before| self.tokens[before].span.end)
    }

    pub(super) fn skip(&mut self, count: usize) {
        self.at = (self.at + count).min(self.tokens.len() - 1);
    }

    pub(super) fn all(&self) -> &[Token] {
        &self.tokens
    }

    /// The folded word at that place; empty if it is no word.
    pub(super) fn key_at(&self, ahead: usize) -> Key {
        match self.kind_at(ahead) {
            Kind::Word => Key::of(&self.text[self.span_at(ahead)]),
            _ => Key::default(),
        }
    }

    pub(super) fn error(&self, span: Range<usize>, accepted: impl Into<Cow<'static, str>>) -> Error {
        Error::new(self.text, span, accepted)
    }

    /// An error at the token here.
    pub(super) fn error_here(&self, accepted: impl Into<Cow<'static, str>>) -> Error {
        self.error(self.span_at(0), accepted)
    }

    /// The unit after the number at that place, if it has one.
    pub(super) fn unit_at(&self, ahead: usize) -> Option<Unit> {
        let hyphen = usize::from(self.kind_at(ahead + 1) == Kind::Hyphen);
        match self.key_at(ahead + 1 + hyphen).as_str() {
            "nm" => Some(Unit::Nanometres),
            "k" | "kelvin" => Some(Unit::Kelvin),
            "w" if hyphen == 0 => Some(Unit::W),
            "watt" | "watts" | "w" => Some(Unit::Watts),
            _ => None,
        }
    }

    /// Steps over a number's unit, with the hyphen before it.
    pub(super) fn skip_unit(&mut self) {
        self.skip(1 + usize::from(self.kind() == Kind::Hyphen));
    }

    /// The package word or number at that place.
    pub(super) fn package_at(&self, ahead: usize) -> Option<Package> {
        match self.kind_at(ahead) {
            Kind::Word => {
                let key = self.key_at(ahead);
                let word = key.as_str();
                Package::from_word(word).or_else(|| Package::from_word(word.strip_suffix('s')?))
            }
            Kind::Number(Number { whole: Some(size @ 1000..=9999), .. }) => {
                Package::from_word(&size.to_string())
            }
            _ => None,
        }
    }

    pub(super) fn skip_fillers(&mut self) {
        loop {
            let hyphen = usize::from(self.kind() == Kind::Hyphen);
            if !colours::is_filler(self.key_at(hyphen).as_str()) {
                return;
            }
            self.skip(1 + hyphen);
        }
    }

    /// The name of a colour, of as many words as fit; steps over it. Says whether it was a letter code.
    pub(super) fn colour_word(&mut self) -> Option<(Colour, bool)> {
        let mut key = Key::default();
        let (mut ahead, mut best) = (0, None);
        for words in 1..=MOST_WORDS {
            if self.kind_at(ahead) != Kind::Word {
                break;
            }
            key.add(&self.text[self.span_at(ahead)]);
            ahead += 1;
            if colours::uncovered(key.as_str()).is_some() {
                return None;
            }
            if let Some(colour) = colours::known(key.as_str()) {
                best = Some((colour, words == 1 && colours::is_letter_code(key.as_str()), ahead));
            }
            ahead += usize::from(self.kind_at(ahead) == Kind::Hyphen);
        }
        best.map(|(colour, code, used)| {
            self.skip(used);
            (colour, code)
        })
    }

    /// A word that stands where a colour is accepted and is none: what to say of it, with the nearest colour.
    pub(super) fn no_colour(&self) -> Error {
        let mut key = Key::default();
        let (mut ahead, mut nearest) = (0, None::<(usize, &str, usize)>);
        for _ in 0..MOST_WORDS {
            if self.kind_at(ahead) != Kind::Word {
                break;
            }
            key.add(&self.text[self.span_at(ahead)]);
            let span = self.start()..self.span_at(ahead).end;
            if let Some(accepted) = colours::uncovered(key.as_str()) {
                return self.error(span, accepted);
            }
            if let Some((distance, name)) = colours::nearest(key.as_str())
                && nearest.is_none_or(|(least, ..)| distance < least)
            {
                nearest = Some((distance, name, span.end));
            }
            ahead += 1 + usize::from(self.kind_at(ahead + 1) == Kind::Hyphen);
        }
        let end = nearest.map_or(self.span_at(0).end, |(.., end)| end);
        self.error(self.start()..end, "a colour such as deep-red or royal-blue, a wavelength such as 660nm, a colour temperature such as 3000K")
            .suggesting(nearest.map(|(_, name, _)| name))
    }

    /// A wavelength or a colour temperature at a number with that unit; steps over both.
    pub(super) fn measured_hue(&mut self) -> Result<Option<Hue>, Error> {
        let (Kind::Number(number), Some(unit)) = (self.kind(), self.unit_at(0)) else { return Ok(None) };
        let start = self.start();
        let (least, most, accepted) = match unit {
            Unit::Nanometres => (315.0, 1100.0, "a wavelength from 315nm to 1100nm"),
            Unit::Kelvin => (1000.0, 25_000.0, "a colour temperature from 1000K to 25000K"),
            Unit::W | Unit::Watts => return Ok(None),
        };
        self.skip(1);
        self.skip_unit();
        if !(least..=most).contains(&number.value) {
            return Err(self.error(start..self.end(), accepted));
        }
        Ok(Some(match unit {
            Unit::Nanometres => Hue::Wavelength(Colour::from_nanometres(number.value)),
            _ => Hue::Temperature,
        }))
    }

    /// A whole colour: words, wavelength and temperature in any order that agrees.
    pub(super) fn hue(&mut self) -> Result<Option<Colour>, Error> {
        let mut hue: Option<Hue> = None;
        while let Some(more) = self.hue_part()? {
            let joined = match hue {
                None => Some(more),
                Some(before) => before.and(more),
            };
            hue = Some(joined.ok_or_else(|| self.error(0..self.end(), "one colour"))?);
            self.skip_fillers();
        }
        Ok(hue.map(Hue::colour))
    }

    /// One word, wavelength or temperature, the last two also in parentheses.
    pub(super) fn hue_part(&mut self) -> Result<Option<Hue>, Error> {
        let hyphen = usize::from(self.kind() == Kind::Hyphen);
        let bracket = usize::from(self.kind_at(hyphen) == Kind::Open);
        match self.kind_at(hyphen + bracket) {
            Kind::Number(_) => {
                let measured =
                    matches!(self.unit_at(hyphen + bracket), Some(Unit::Nanometres | Unit::Kelvin));
                let closed = bracket == 0 || {
                    let unit_hyphen = usize::from(self.kind_at(hyphen + 2) == Kind::Hyphen);
                    self.kind_at(hyphen + 3 + unit_hyphen) == Kind::Close
                };
                if !measured || !closed {
                    return Ok(None);
                }
                self.skip(hyphen + bracket);
                let hue = self.measured_hue()?;
                self.skip(bracket);
                Ok(hue)
            }
            Kind::Word if bracket == 0 => {
                let before = self.at;
                self.skip(hyphen);
                let word = self.colour_word();
                if word.is_none() {
                    self.at = before;
                }
                Ok(word.map(|(colour, code)| Hue::Word { colour, code }))
            }
            _ => Ok(None),
        }
    }
}

/// A colour and what it was taken from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Hue {
    Word { colour: Colour, code: bool },
    Wavelength(Colour),
    Temperature,
}

impl Hue {
    pub(super) fn colour(self) -> Colour {
        match self {
            Self::Word { colour, .. } | Self::Wavelength(colour) => colour,
            Self::Temperature => Colour::White,
        }
    }

    /// Both together, if they can be said of one diode: a wavelength overrides a word, a temperature goes with white and
    /// with full spectrum.
    pub(super) fn and(self, other: Self) -> Option<Self> {
        match (self, other) {
            (Self::Word { .. }, wave @ Self::Wavelength(_))
            | (wave @ Self::Wavelength(_), Self::Word { .. }) => Some(wave),
            (Self::Word { colour, .. }, Self::Temperature)
            | (Self::Temperature, Self::Word { colour, .. }) => {
                matches!(colour, Colour::White | Colour::Pink).then_some(Self::Temperature)
            }
            _ => None,
        }
    }
}
