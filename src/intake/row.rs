//! One row -> one listing.

use std::borrow::Cow;

use super::columns::{Columns, Field};
use super::numbers::{printed, quantity, short_whole};
use super::together::{Pending, put_together};
use crate::counting;
use crate::facts::{Colour, Count, Fault, Group, Listing, Replaced, StatedClass};
use crate::units::{Amps, Watts};

/// Errors as spreadsheets show them, in a sheet or in a CSV that one has saved (ECMA-376 part 1, 18.17.3, from memory).
/// The last is no error of theirs: so the rows of a workbook show a formula that was never worked out.
const SHEET_ERRORS: [&str; 9] = [
    "#DIV/0!",
    "#GETTING_DATA",
    "#N/A",
    "#NAME?",
    "#NULL!",
    "#NUM!",
    "#REF!",
    "#VALUE!",
    "#formula never calculated",
];

impl Columns {
    /// Reads a row into `listing`, which should be empty: filled where it lies, it need not be moved. `cell` gives the text at
    /// a place, `None` past the row's end; `fields` is how many the row has.
    ///
    /// The title is kept as it stands; reading it is another room's work.
    ///
    /// # Errors
    /// The first cell that cannot be read, by its header, with what is accepted there.
    pub fn read<'a>(
        &self,
        fields: usize,
        cell: impl Fn(usize) -> Option<&'a str>,
        listing: &mut Listing<'a>,
    ) -> Result<(), Fault> {
        if fields != self.width() {
            return Err(Fault {
                line: None,
                byte: None,
                column: None,
                cell: None,
                found: format!("{fields} field{}", if fields == 1 { "" } else { "s" }),
                accepted: format!(
                    "{} field{}, as in the header; a field that holds the delimiter is put in quotes",
                    self.width(),
                    if self.width() == 1 { "" } else { "s" }
                ),
            });
        }
        if self.is_header(&cell) {
            return Err(Fault {
                line: None,
                byte: None,
                column: None,
                cell: None,
                found: "the header row again".to_owned(),
                accepted: "a listing; the header row stands once, at the top".to_owned(),
            });
        }
        let mut pending = Pending::default();
        for &(field, place) in &self.fields {
            let Some(text) = cell(place).map(trimmed).filter(|t| !t.is_empty()) else { continue };
            // Most cells of a catalogue are counts: they are spared the way through the other fields.
            if let Field::Count(colour) = field {
                self.read_count(colour, place, text, listing)?;
            } else {
                self.read_cell(field, place, text, listing, &mut pending)?;
            }
        }
        put_together(listing, &mut pending)
    }

    /// Whether a row as wide as the header repeats it, as where files were put together; a byte order mark may stand there.
    fn is_header<'a>(&self, cell: impl Fn(usize) -> Option<&'a str>) -> bool {
        self.headers
            .iter()
            .enumerate()
            .all(|(place, header)| cell(place).is_some_and(|text| without_mark(text) == trimmed(header)))
    }

    fn fault(&self, place: usize, found: &str, accepted: &str) -> Fault {
        Fault::new(self.headers[place].trim(), found, accepted)
    }

    fn above_zero(&self, place: usize, text: &str, unit: &str, accepted: &str) -> Result<f64, Fault> {
        match quantity(text, unit) {
            Some(value) if value > 0.0 && value.is_finite() => Ok(value),
            _ => Err(self.fault(place, text, accepted)),
        }
    }

    fn read_cell<'a>(
        &self,
        field: Field,
        place: usize,
        text: &'a str,
        listing: &mut Listing<'a>,
        pending: &mut Pending<'a>,
    ) -> Result<(), Fault> {
        let watts = || self.above_zero(place, text, "W", "watts above 0, such as 300 or 28.5");
        match field {
            // In a column of numbers it is a fault anyway; as a text it would be taken for one.
            Field::Listing | Field::Supplier | Field::Title | Field::Description
                if text.starts_with('#') && SHEET_ERRORS.contains(&text) =>
            {
                let accepted = "text; this is an error of a spreadsheet: mend its formula, or clear the cell";
                return Err(self.fault(place, text, accepted));
            }
            Field::Listing => listing.name = Some(Cow::Borrowed(text)),
            Field::Supplier => listing.supplier = Some(Cow::Borrowed(text)),
            Field::Title => listing.title = Some(Cow::Borrowed(text)),
            Field::Description => listing.description = Some(Cow::Borrowed(text)),
            Field::ClaimW => listing.claim = Some(Watts(watts()?)),
            Field::Class => listing.class = Some(self.class(place, text)?),
            Field::Tally => {
                pending.tally = Some(
                    counting::tally(text)
                        .map_err(|error| self.fault(place, text, &error.accepted_in(text)))?,
                );
            }
            Field::DiodeCount => pending.total = Some(self.whole(place, text)?),
            Field::Count(colour) => self.read_count(colour, place, text, listing)?,
            Field::DriveMa => {
                let ma = self.above_zero(
                    place,
                    text,
                    "mA",
                    "milliamperes above 0 through each diode, such as 700",
                )?;
                listing.drive = Some(Amps::from_ma(ma));
            }
            Field::MeasuredW => pending.measured_w = Some(watts()?),
            Field::MeasuredV => {
                pending.measured_v = Some(self.above_zero(place, text, "V", "volts above 0, such as 230")?);
            }
            Field::MeasuredA => {
                pending.measured_a =
                    Some(self.above_zero(place, text, "A", "amperes above 0, such as 0.6")?);
            }
            Field::MeasuredPf => {
                let accepted = "a power factor above 0 and at most 1";
                let factor = self.above_zero(place, text, "", accepted)?;
                if factor > 1.0 {
                    return Err(self.fault(place, text, accepted));
                }
                pending.measured_pf = Some(factor);
            }
            Field::AdmitsLowW => pending.admits_low = Some(watts()?),
            Field::AdmitsHighW => pending.admits_high = Some(watts()?),
            Field::SupplyV => {
                self.above_zero(place, text, "V", "volts above 0, such as 120")?;
                pending.supply_v = Some(text);
            }
            Field::SupplyA => {
                self.above_zero(place, text, "A", "amperes above 0, such as 0.6")?;
                pending.supply_a = Some(text);
            }
            Field::Ppf => {
                self.above_zero(place, text, "", "a photon flux in umol/s above 0")?;
                listing.ppf = printed(text, "");
            }
            Field::Ppe => {
                self.above_zero(place, text, "", "a photon efficacy in umol/J above 0")?;
                listing.ppe = printed(text, "");
            }
            Field::ReplacesW => listing.replaces = Some(Replaced { watts: Watts(watts()?), kind: None }),
            Field::UnitsInPack => {
                let units = self.whole(place, text)?;
                if units == 0 {
                    return Err(self.fault(place, text, "a whole number of lights, at least 1"));
                }
                listing.units_in_pack = Some(units);
            }
            Field::Price => {
                listing.price = Some(self.above_zero(
                    place,
                    text,
                    "",
                    "a price above 0 without a currency, such as 89.99",
                )?);
            }
        }
        Ok(())
    }

    fn class(&self, place: usize, text: &str) -> Result<StatedClass, Fault> {
        // Nearly every class of a catalogue is a short whole number and a W.
        if let Some(number) = text.strip_suffix(['W', 'w'])
            && let Some(watts @ 1..100) = short_whole(number)
        {
            return Ok(StatedClass::plain(f64::from(watts)));
        }
        counting::class(text).map_err(|error| self.fault(place, text, &error.accepted_in(text)))
    }

    #[inline]
    fn read_count(
        &self,
        colour: Colour,
        place: usize,
        text: &str,
        listing: &mut Listing<'_>,
    ) -> Result<(), Fault> {
        let number = self.whole(place, text)?;
        if number > 0 {
            let groups = &mut listing.tally.get_or_insert_default().groups;
            groups.push(Group { colour, count: Count::exact(number), class: None });
        }
        Ok(())
    }

    #[inline]
    fn whole(&self, place: usize, text: &str) -> Result<u32, Fault> {
        match short_whole(text) {
            Some(value) if value <= Count::MOST => Ok(value),
            _ => self.long_whole(place, text),
        }
    }

    fn long_whole(&self, place: usize, text: &str) -> Result<u32, Fault> {
        let accepted = "a whole number of diodes, 0 to 1000000";
        let value = quantity(text, "").filter(|v| *v <= f64::from(Count::MOST) && v.fract() == 0.0);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole, 0 to 1000000")]
        value.map(|v| v as u32).ok_or_else(|| self.fault(place, text, accepted))
    }
}

/// The text without white space around it; most cells have none, which two bytes tell.
fn trimmed(text: &str) -> &str {
    let bytes = text.as_bytes();
    match (bytes.first(), bytes.last()) {
        (Some(first), Some(last)) if first.is_ascii_graphic() && last.is_ascii_graphic() => text,
        (None, _) => text,
        _ => text.trim(),
    }
}

/// As [`trimmed`], without the byte order marks before it that files which were put together have.
fn without_mark(text: &str) -> &str {
    if text.starts_with('\u{feff}') { text.trim_start_matches('\u{feff}').trim() } else { trimmed(text) }
}
