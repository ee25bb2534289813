//! A file of bench readings: `colour, volts, amps[, temperature_c][, die]`, one reading a line.

use csv::{ReaderBuilder, StringRecord, Trim};

use super::cell;
use super::curve::{Curve, Point};
use crate::draw::BENCH;
use crate::facts::{Colour, Fault};
use crate::reference::Die;

/// The columns, in the order of [`Columns`]; the first [`NEEDED`] have to be there.
const NAMES: [&str; 5] = ["colour", "volts", "amps", "temperature_c", "die"];
const NEEDED: usize = 3;

/// How alike (Jaro-Winkler, 0 to 1) a header has to be to one of ours that is missing to pass for a slip of the pen: an
/// optional column must not be dropped over one.
const ALIKE: f64 = 0.85;

/// Reads a file of bench readings into one curve for each kind of die and colour, in the order in which they first occur.
///
/// Columns stand in any order; others beside them are passed over. Lines that start with `#` are comments. No die is
/// `power`, no temperature 25 degrees Celsius.
///
/// # Errors
/// The first thing that is not a bench reading, with its line and column: nothing in the file, a column missing or
/// misspelt, an unknown colour or die, a number that is not above 0 or in another unit, volts that do not rise with amps.
pub fn read(text: &str) -> Result<Vec<Curve>, Fault> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .comment(Some(b'#'))
        .trim(Trim::All)
        .from_reader(text.as_bytes());
    let mut lines = Lines { text, byte: 0, line: 1 };
    let mut columns: Option<Columns> = None;
    let mut curves: Vec<Curve> = Vec::new();
    let mut header_line = 1;
    for record in reader.records() {
        let record = record.map_err(|error| unreadable(&error))?;
        let line = lines.of(record.position().map_or(0, csv::Position::byte));
        let Some(columns) = &columns else {
            columns = Some(Columns::of(&record).map_err(|fault| at(line, fault))?);
            header_line = line;
            continue;
        };
        if record.iter().all(str::is_empty) {
            continue;
        }
        columns.add(&record, line, &mut curves).map_err(|fault| at(line, fault))?;
    }
    if curves.is_empty() {
        return Err(nothing(columns.map(|_| header_line)));
    }
    curves.iter().try_for_each(Curve::check_rising)?;
    Ok(curves)
}

/// The colour of a word in the colour column. The one place to teach more words.
fn colour(word: &str) -> Option<Colour> {
    let name = word.to_lowercase().replace(['_', ' '], "-");
    Colour::from_name(&name).filter(|&colour| colour != Colour::Unstated)
}

fn die(word: &str) -> Option<Die> {
    if word.is_empty() {
        return Some(Die::Power);
    }
    Die::ALL.into_iter().find(|die| die.name().eq_ignore_ascii_case(word))
}

fn alike(ours: &str, name: &str) -> bool {
    strsim::jaro_winkler(ours, name) >= ALIKE
}

/// Where each column stands.
struct Columns {
    places: [Option<usize>; NAMES.len()],
    width: usize,
}

impl Columns {
    fn of(header: &StringRecord) -> Result<Self, Fault> {
        let mut places = [None; NAMES.len()];
        let mut others = Vec::new();
        for (place, found) in header.iter().enumerate() {
            let name = found.to_lowercase().replace(' ', "_");
            match NAMES.iter().position(|ours| *ours == name) {
                Some(column) if places[column].replace(place).is_some() => {
                    return Err(Fault::new(found, "the column twice", "each column once"));
                }
                Some(_) => {}
                None => others.push((found, name)),
            }
        }
        // A line of one field is not in columns at all, whatever it looks like.
        let others = others.into_iter().filter(|_| header.len() > 1);
        for (found, name) in others {
            let missing = NAMES.iter().zip(places).filter(|(_, place)| place.is_none());
            if let Some((ours, _)) = missing.into_iter().find(|(ours, _)| alike(ours, &name)) {
                return Err(Fault::new(found, found, format!("'{ours}', if that column is meant")));
            }
        }
        if let Some(missing) = (0..NEEDED).find(|&column| places[column].is_none()) {
            let found = header.iter().collect::<Vec<_>>().join(", ");
            let accepted = "a header line with the columns colour, volts, amps and, if need be, temperature_c and die, \
                            separated by commas";
            return Err(Fault::new(NAMES[missing], found, accepted));
        }
        Ok(Self { places, width: header.len() })
    }

    fn add(&self, record: &StringRecord, line: u64, curves: &mut Vec<Curve>) -> Result<(), Fault> {
        if record.len() != self.width {
            let accepted = format!("{} fields, as in the header", self.width);
            return Err(Fault {
                line: None,
                byte: None,
                column: None,
                cell: None,
                found: format!("{} fields", record.len()),
                accepted,
            });
        }
        let [name, volts, amps, celsius, kind] =
            self.places.map(|place| place.and_then(|place| record.get(place)).unwrap_or_default());
        let colour = colour(name).ok_or_else(|| Fault::new("colour", name, colours()))?;
        let die = die(kind)
            .ok_or_else(|| Fault::new("die", kind, "power, mid or small; leave it empty for power"))?;
        let (volts, half_digit) = cell::volts(volts)?;
        let amps = cell::amps(amps)?;
        let temperature = if celsius.is_empty() { BENCH } else { cell::celsius(celsius)? };
        let point = Point { line, volts, amps, temperature };
        match curves.iter_mut().find(|curve| curve.die == die && curve.colour == colour) {
            Some(curve) => {
                curve.points.push(point);
                curve.half_digit = curve.half_digit.min(half_digit);
            }
            None => curves.push(Curve { die, colour, points: vec![point], half_digit }),
        }
        Ok(())
    }
}

fn colours() -> String {
    let names: Vec<_> =
        Colour::ALL.into_iter().filter(|c| *c != Colour::Unstated).map(Colour::name).collect();
    format!("a colour of the reference table: {}", names.join(", "))
}

/// Counts lines up to a record: the position that the csv crate gives is that of the blank and comment lines before it.
struct Lines<'a> {
    text: &'a str,
    byte: usize,
    line: u64,
}

impl Lines<'_> {
    /// The line of the record that is looked for from `byte` on; never asked to go back.
    fn of(&mut self, byte: u64) -> u64 {
        let bytes = self.text.as_bytes();
        let wanted = usize::try_from(byte).unwrap_or(usize::MAX);
        let mut in_comment = false;
        while let Some(&b) = bytes.get(self.byte) {
            let ends = b == b'\n' || (b == b'\r' && bytes.get(self.byte + 1) != Some(&b'\n'));
            if self.byte >= wanted && !in_comment {
                in_comment = b == b'#';
                if !(in_comment || b == b'\n' || b == b'\r') {
                    break;
                }
            }
            self.byte += 1;
            if ends {
                self.line += 1;
                in_comment = false;
            }
        }
        self.line
    }
}

fn at(line: u64, fault: Fault) -> Fault {
    Fault { line: Some(line), ..fault }
}

fn nothing(header: Option<u64>) -> Fault {
    let found = if header.is_some() { "a header without a reading" } else { "an empty file" };
    Fault {
        line: header,
        byte: None,
        column: None,
        cell: None,
        found: found.to_owned(),
        accepted:
            "a header line 'colour,volts,amps' and at least one reading under it, such as 'red,2.2,0.7'"
                .to_owned(),
    }
}

fn unreadable(error: &csv::Error) -> Fault {
    Fault {
        line: error.position().map(csv::Position::line),
        byte: None,
        column: None,
        cell: None,
        found: error.to_string(),
        accepted: "text in columns separated by commas".to_owned(),
    }
}
