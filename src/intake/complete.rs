//! Facts from the title, where nothing else gives them.

use smallvec::SmallVec;

use crate::counting;
use crate::facts::{Count, Group, Listing, Note, Read, Tally};
use crate::units::{Volts, Watts};

/// How far a column and the title may differ before it is called a contradiction, as a share.
const SAME: f64 = 0.005;

/// Fills what a listing's columns (or flags) leave open from what its text states. What is given always wins; where the
/// text contradicts it, a note says so.
pub fn complete(listing: &mut Listing<'_>, read: &Read) {
    let notes = &mut listing.notes;
    if let Some(advertised) = &read.advertised_w {
        let title = advertised.value.value;
        match listing.claim {
            None => {
                listing.claim = Some(Watts(title));
                notes.extend(read.notes.iter().copied());
            }
            Some(given) => listing.claim = Some(per_light(given, title, read, notes)),
        }
    } else if listing.claim.is_none() {
        notes.extend(read.notes.iter().copied());
    }
    fill(&mut listing.units_in_pack, read.units_in_pack.map(|t| t.value));
    if let Some(stated) = read.class {
        match listing.class {
            None => listing.class = Some(stated.value),
            Some(given) => contradiction("class_w", given.watts.0, stated.value.watts.0, notes),
        }
    }
    fill(&mut listing.package, read.package.map(|t| t.value));
    fill(&mut listing.drive, read.drive.map(|t| t.value));
    tally(listing, read);
    if let Some(admitted) = read.actual_w {
        match &listing.admitted {
            None => listing.admitted = Some(admitted.value),
            Some(given) => {
                contradiction("actual_w", given.high.0, admitted.value.high.0, &mut listing.notes);
            }
        }
    }
    supply(listing, read);
    fill(&mut listing.ppf, read.ppf.map(|t| t.value));
    fill(&mut listing.ppe, read.ppe.filter(|_| !read.ppe_is_bound).map(|t| t.value));
    match (&mut listing.replaces, read.replaces) {
        (Some(given), Some(title)) if given.kind.is_none() => given.kind = title.value.kind,
        (place @ None, Some(title)) => *place = Some(title.value),
        _ => {}
    }
}

/// With the range of voltages that the text gives, where no one of them goes with the current.
fn supply(listing: &mut Listing<'_>, read: &Read) {
    if listing.supply.is_none()
        && let Some(stated) = read.supply
    {
        listing.supply = Some(stated.value);
        let volts = stated.value.volts.value;
        let range = read.volts.map(|t| (t.value.0.value, t.value.1.value));
        listing.supply_from =
            range.filter(|(low, high)| *low < *high && *high <= volts).map(|(low, _)| Volts(low));
    }
}

fn fill<T>(place: &mut Option<T>, from: Option<T>) {
    if place.is_none() {
        *place = from;
    }
}

fn contradiction(field: &'static str, given: f64, title: f64, notes: &mut SmallVec<[Note; 2]>) {
    if (given - title).abs() > SAME * given.abs() {
        notes.push(Note::TitleContradicts { field, given, title });
    }
}

/// A claim is per light: one that equals the pack's units times the title's figure is the pack's total.
fn per_light(given: Watts, title: f64, read: &Read, notes: &mut SmallVec<[Note; 2]>) -> Watts {
    let units = read.units_in_pack.map_or(1, |t| t.value);
    if units > 1 && (given.0 - title * f64::from(units)).abs() <= SAME * given.0 {
        notes.push(Note::PackDivided { units, total: given });
        return Watts(title);
    }
    contradiction("advertised_w", given.0, title, notes);
    given
}

fn tally(listing: &mut Listing<'_>, read: &Read) {
    if let Some(given) = &listing.tally {
        if let Some(title) = read.diode_count {
            #[expect(clippy::cast_precision_loss, reason = "at most 1000000")]
            let given = given.total() as f64;
            contradiction("diode_count", given, f64::from(title.value), &mut listing.notes);
        }
        return;
    }
    let colours = read.colours.iter().map(|taken| Group {
        colour: taken.value.colour,
        count: Count::exact(taken.value.count),
        class: None,
    });
    listing.tally = match read.diode_count {
        Some(total) => {
            let (tally, note) = counting::settle(colours, total.value);
            listing.notes.extend(note);
            Some(tally)
        }
        None if !read.colours.is_empty() => {
            Some(Tally { groups: colours.collect(), lower_bound: read.beside_board })
        }
        None => None,
    };
}
