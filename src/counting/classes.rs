//! The class words: watts that name a drive class, with the package they stand beside.

use super::cursor::{Cursor, Unit};
use super::error::Error;
use super::token::{Kind, Number};
use crate::facts::{Package, StatedClass};
use crate::units::Watts;

/// The lowest and highest watts that a class can be named for. The reference table spans 0.06 W to 100 W.
const LEAST_W: f64 = 0.001;
const MOST_W: f64 = 1000.0;

const ACCEPTED: &str = "a class such as 3W, 0.5W, smd-3W, '2835 0.5W' or cob-100W";

/// Reads one class: `3W`, `3 W`, `0.2`, `3w class`, `3W-class`, `smd-3W`, `2835 0.5W`, `3W 3030`, `100W COB`.
///
/// Any watts from 0.001 to 1000 are a class that can be stated; whether the reference table has a row is another question.
///
/// # Errors
///
/// If the text is anything else, a package without watts included.
pub fn class(text: &str) -> Result<StatedClass, Error> {
    let mut cursor = Cursor::over(text)?;
    cursor.skip_class_words();
    let bare = match cursor.kind() {
        Kind::Number(number) if cursor.unit_at(0).is_none() && cursor.package_at(0).is_none() => Some(number),
        _ => None,
    };
    let class = match bare {
        Some(number) => {
            let watts = cursor.watts(number, cursor.span_at(0))?;
            cursor.skip(1);
            StatedClass { watts, package: None }
        }
        None => cursor.class()?.ok_or_else(|| cursor.error_here(ACCEPTED))?,
    };
    cursor.skip_class_words();
    match cursor.kind() {
        Kind::End => Ok(class),
        _ => Err(cursor.error_here(format!("one class and nothing after it, such as {class}"))),
    }
}

impl Cursor<'_> {
    /// A class at this place; steps over it. `None` if what stands here is something else.
    pub(super) fn class(&mut self) -> Result<Option<StatedClass>, Error> {
        let start = self.start();
        let (package, ahead) = self.packages();
        let watts_follow = matches!(self.kind_at(ahead), Kind::Number(_))
            && matches!(self.unit_at(ahead), Some(Unit::W | Unit::Watts));
        if !watts_follow {
            let named = package.is_some() && self.kind() == Kind::Word;
            return if named { Err(self.package_alone(ahead)) } else { Ok(None) };
        }
        self.skip(ahead);
        let Kind::Number(number) = self.kind() else { return Ok(None) };
        self.skip(1);
        self.skip_unit();
        let watts = self.watts(number, start..self.end())?;
        self.skip_class_word();
        let package = package.or_else(|| self.package_after());
        self.skip_class_word();
        Ok(Some(StatedClass { watts, package }))
    }

    /// A class that must stand here.
    pub(super) fn class_needed(&mut self) -> Result<StatedClass, Error> {
        self.class()?.ok_or_else(|| self.error_here(ACCEPTED))
    }

    /// `SMD 2835`, `2835`, `cob-`: the package and the number of tokens up to the watts.
    fn packages(&self) -> (Option<Package>, usize) {
        let (mut package, mut ahead) = (None, 0);
        while let Some(more) = self.package_at(ahead).filter(|_| self.unit_at(ahead).is_none() && ahead < 4) {
            package = Some(match package {
                // "SMD 2835" and "2835 SMD" are a 2835.
                Some(known) if more == Package::Smd => known,
                _ => more,
            });
            ahead += 1;
            ahead += usize::from(self.kind_at(ahead) == Kind::Hyphen);
        }
        (package, ahead)
    }

    /// The package words after the watts; steps over them.
    fn package_after(&mut self) -> Option<Package> {
        let hyphen = usize::from(self.kind() == Kind::Hyphen);
        self.package_at(hyphen).filter(|_| self.unit_at(hyphen).is_none())?;
        self.skip(hyphen);
        let (package, ahead) = self.packages();
        self.skip(ahead);
        package
    }

    fn package_alone(&self, ahead: usize) -> Error {
        let end = self.span_at(ahead.max(1) - 1).end;
        self.error(self.start()..end, "a package with its watts, such as 'smd-3W' or 'cob-100W'")
    }

    fn watts(&self, number: Number, span: std::ops::Range<usize>) -> Result<Watts, Error> {
        if (LEAST_W..=MOST_W).contains(&number.value) {
            return Ok(Watts(number.value));
        }
        Err(self.error(span, format!("a class from {LEAST_W}W to {MOST_W}W, such as 3W")))
    }

    fn skip_class_word(&mut self) -> bool {
        let hyphen = usize::from(self.kind() == Kind::Hyphen);
        let found = self.key_at(hyphen).as_str() == "class";
        if found {
            self.skip(1 + hyphen);
        }
        found
    }

    fn skip_class_words(&mut self) {
        self.skip_fillers();
        while self.skip_class_word() {
            self.skip_fillers();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn classes_are_read_as_listings_write_them() {
        for (texts, watts, package) in [
            (
                "3W|3 W|3w|3w class|3W-class|class 3W|3 watt|3-watt|3W LEDs|3 watts|3|3.0|３Ｗ|\u{a0}3\u{a0}W ",
                3.0,
                None,
            ),
            ("0.2|0.2W|.2W|0,2W|0,2 W", 0.2, None),
            ("1.5W|1.5", 1.5, None),
            ("0.25W", 0.25, None),
            ("61W", 61.0, None),
            ("1000W|1,000W", 1000.0, None),
            ("smd-3W|SMD 3W|smd3W|3W SMD|3W-smd|SMD 3W class", 3.0, Some(Package::Smd)),
            (
                "2835 0.5W|2835-0.5W|SMD 2835 0.5W|SMD2835 0.5W|0.5W 2835|0.5W SMD 2835|0.5W 2835 SMD|2835 SMD 0.5W",
                0.5,
                Some(Package::P2835),
            ),
            ("3W 3030|3030 3W|3030-3W|3W class 3030", 3.0, Some(Package::P3030)),
            ("cob-100W|COB 100W|100W COB|100W COBs", 100.0, Some(Package::Cob)),
        ] {
            for text in texts.split('|') {
                assert_eq!(class(text), Ok(StatedClass { watts: Watts(watts), package }), "{text}");
            }
        }
    }

    #[test]
    fn what_is_no_class_is_refused_at_its_place() {
        for (text, found) in [
            ("", ""),
            ("W", "W"),
            ("watts", "watts"),
            ("0W", "0W"),
            ("0", "0"),
            ("-3W", "-"),
            ("NaN", "NaN"),
            ("inf", "inf"),
            ("1001W", "1001W"),
            ("3W 5W", "5"),
            ("3W/5W", "/"),
            ("3 mW", "mW"),
            ("2835", "2835"),
            ("smd", "smd"),
            ("COB", "COB"),
            ("SMD 2835", "SMD 2835"),
            ("3W red", "red"),
            ("(3W)", "("),
            ("700mA", "mA"),
            ("99999999999999999999999W", "99999999999999999999999W"),
        ] {
            assert_eq!(class(text).map_err(|e| e.found), Err(found.to_owned()), "{text}");
        }
    }

    #[test]
    fn a_class_printed_is_read_back() {
        for stated in [0.06, 0.2, 3.0, 1000.0].into_iter().flat_map(|watts| {
            let packages = Package::ALL.into_iter().map(Some).chain([None]);
            packages.map(move |package| StatedClass { watts: Watts(watts), package })
        }) {
            assert_eq!(class(&stated.to_string()), Ok(stated), "{stated}");
        }
    }
}
