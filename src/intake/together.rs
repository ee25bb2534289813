//! Cells that mean something only together: volts with amperes, colours with their total, the two ends of a range.

use smallvec::SmallVec;

use super::numbers::printed;
use crate::counting;
use crate::facts::{Admitted, Colour, Count, Fault, Group, Listing, MeterReading, Note, Supply, Tally};
use crate::units::{Amps, Volts, Watts};

/// Cells that belong together and are put together once the row is read. Columns of colours are in the listing by then.
#[derive(Default)]
pub(super) struct Pending<'a> {
    pub(super) tally: Option<Tally>,
    pub(super) total: Option<u32>,
    pub(super) measured_w: Option<f64>,
    pub(super) measured_v: Option<f64>,
    pub(super) measured_a: Option<f64>,
    pub(super) measured_pf: Option<f64>,
    pub(super) admits_low: Option<f64>,
    pub(super) admits_high: Option<f64>,
    pub(super) supply_v: Option<&'a str>,
    pub(super) supply_a: Option<&'a str>,
}

/// Puts them together in the listing.
///
/// # Errors
/// If half of a pair is missing, a range is upside down, or there are more diodes than one light has.
pub(super) fn put_together(listing: &mut Listing<'_>, pending: &mut Pending<'_>) -> Result<(), Fault> {
    combine(&mut listing.tally, pending.tally.take(), pending.total, &mut listing.notes)?;
    listing.reading = match (pending.measured_w, pending.measured_v, pending.measured_a) {
        (Some(watts), _, _) => Some(MeterReading::Watts(Watts(watts))),
        (None, Some(volts), Some(amps)) => {
            let (volts, amps) = (Volts(volts), Amps(amps));
            Some(match pending.measured_pf {
                Some(power_factor) => MeterReading::Factors { volts, amps, power_factor },
                None => MeterReading::VoltAmps { volts, amps },
            })
        }
        (None, None, None) => None,
        (None, Some(volts), None) => {
            return Err(half("measured_a", &format!("{volts} V without amperes")));
        }
        (None, None, Some(amps)) => {
            return Err(half("measured_v", &format!("{amps} A without volts")));
        }
    };
    listing.admitted = match (pending.admits_low, pending.admits_high) {
        (None, None) => None,
        (low, high) => {
            let (low, high) = (low.or(high).unwrap_or(0.0), high.or(low).unwrap_or(0.0));
            if low > high {
                return Err(Fault::new(
                    "admits_low_w",
                    format!("{low} to {high} W"),
                    "the lower figure in admits_low_w and the higher in admits_high_w",
                ));
            }
            Some(Admitted { low: Watts(low), high: Watts(high), tolerance: None })
        }
    };
    if let (Some(volts), Some(amps)) =
        (pending.supply_v.and_then(|t| printed(t, "V")), pending.supply_a.and_then(|t| printed(t, "A")))
    {
        listing.supply = Some(Supply { volts, amps });
    }
    Ok(())
}

fn half(missing: &str, found: &str) -> Fault {
    Fault::new(missing, found, "volts and amperes together, or watts in measured_w")
}

/// A tally without colours beside colour columns is the total of them; with colours, the two are held against each
/// other and the larger count of a colour stands.
fn combine(
    tally: &mut Option<Tally>,
    typed: Option<Tally>,
    total: Option<u32>,
    notes: &mut SmallVec<[Note; 2]>,
) -> Result<(), Fault> {
    let mut total = total.filter(|t| *t > 0);
    if let Some(typed) = typed {
        let bare = typed
            .groups
            .iter()
            .all(|g| g.colour == Colour::Unstated && g.class.is_none() && g.count.half_width.is_none());
        match tally {
            None => *tally = Some(typed),
            Some(_) if bare => total = total.max(u32::try_from(typed.total()).ok()),
            Some(columns) => merge(&mut columns.groups, &typed.groups, notes),
        }
    }
    if let Some(total) = total {
        let groups = tally.take().unwrap_or_default().groups;
        let (settled, note) = counting::settle(groups, total);
        notes.extend(note);
        *tally = Some(settled);
    }
    let Some(tally) = tally else { return Ok(()) };
    if tally.total() > u64::from(Count::MOST) {
        return Err(Fault::new(
            "tally",
            format!("{} diodes", tally.total()),
            format!("at most {} diodes in one light", Count::MOST),
        ));
    }
    Ok(())
}

fn merge(groups: &mut SmallVec<[Group; 8]>, typed: &[Group], notes: &mut SmallVec<[Note; 2]>) {
    for colour in Colour::ALL {
        let of = |groups: &[Group]| -> u32 {
            groups.iter().filter(|g| g.colour == colour).map(|g| g.count.number).sum()
        };
        let (ours, theirs) = (of(groups), of(typed));
        if ours > 0 && theirs > 0 && ours != theirs {
            notes.push(Note::CountsDiffer { smaller: ours.min(theirs), larger: ours.max(theirs) });
        }
        if theirs > 0 && theirs >= ours {
            groups.retain(|g| g.colour != colour);
            groups.extend(typed.iter().filter(|g| g.colour == colour).copied());
        }
    }
}
