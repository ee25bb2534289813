//! How many diodes, and their class.

use smallvec::SmallVec;

use super::array::{Array, Arrays, LARGEST_BEAD, Of};
use super::counted::{Rank, counted, one_of_several};
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::package;
use super::page::Page;
use super::power::{Chosen, span};
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use super::variants::bracketed_choice;
use crate::facts::{Count, LeftWhy, Package, Read, Span, StatedClass, Taken};
use crate::units::Watts;

#[derive(Debug, Clone, Copy)]
struct Found {
    value: f64,
    figure: usize,
    rank: Rank,
    cob: bool,
}

/// Fills `diode_count`, `class` and `package`.
pub(super) fn choose(
    page: &Page,
    says: &mut All,
    arrays: &mut SmallVec<[Array; 2]>,
    chosen: Chosen,
    read: &mut Read,
) {
    let mut found: SmallVec<[Found; 4]> = SmallVec::new();
    let pack = read.units_in_pack.is_some();
    let sold = read.units_in_pack.map_or(Span { start: usize::MAX, end: 0 }, |t| t.span);
    // The counts of arrays, a bit each of the first 64 figures.
    let bit = |k: usize| u64::from(k < 64) << (k % 64);
    let in_arrays = arrays.iter().fold(0, |all, a| all | bit(a.count));
    let (mut number, mut cob_counted) = (None, false);
    for (index, f) in page.bare() {
        number = number.or_else(|| package::numbered(f));
        let multiplied =
            if index < 64 { in_arrays & bit(index) != 0 } else { arrays.iter().any(|a| a.count == index) };
        let of_a_pack = (sold.start <= f.start as usize) & (f.end as usize <= sold.end);
        if !(multiplied | of_a_pack)
            && let Some((rank, cob)) = counted(page, f, pack)
        {
            cob_counted |= cob;
            found.push(Found { value: f.high, figure: index, rank, cob });
        }
    }
    let (mut cobs, mut diodes) = (false, false);
    if !arrays.is_empty() {
        parts_among_more(page, arrays, &found, says);
        arrays.retain(|a| matches!(a.of, Of::Diodes | Of::Cobs));
        for a in arrays.iter() {
            cobs |= a.of == Of::Cobs;
            diodes |= a.of == Of::Diodes;
        }
    }
    let kept = &arrays[..];
    read.package = package::named(page, number);
    read.beside_board = page.cues.any(Role::Cob.cue()) || package::on_board(page);
    // "4 x 50W COB + 100 x 3W": neither class speaks for the whole light, and one of the counts alone would accuse it.
    if diodes & (cobs | cob_counted) {
        for array in kept {
            says.set(array.watts, Says::Left(LeftWhy::Part));
        }
        return;
    }
    let class =
        class(page, says, kept, cobs, chosen).filter(|&(watts, _)| !beside_another_class(page, watts));
    if let Some((watts, k)) = class {
        let word = read
            .package
            .filter(|p| {
                p.value != Package::Cob && package::beside(page, p.span, usize::from(page.figures[k].item))
            })
            .map(|p| p.value);
        let package = if cobs { Some(Package::Cob) } else { word };
        let value = StatedClass { watts: Watts(watts), package };
        read.class = Some(Taken { value, span: span(&page.figures[k]) });
        says[k] = Says::Class;
    }
    // Most often there is none.
    let any = !(kept.is_empty() & found.is_empty());
    let counted = if any { count(page, kept, &found, (cobs, cob_counted), chosen) } else { None };
    let pieces = || pieces_of_a_total(page, read.class?.value.watts.0, chosen);
    if let Some((value, k)) = counted.or_else(pieces)
        && value <= f64::from(Count::MOST)
    {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 1 and a million"
        )]
        let value = value as u32;
        read.diode_count = Some(Taken { value, span: span(&page.figures[k]) });
    }
}

/// "40W (4*10W), 80 pcs lamp beads": a few things beside a larger count are heads.
#[inline(never)]
fn parts_among_more(page: &Page, arrays: &mut Arrays, found: &[Found], says: &mut All) {
    if arrays.len() != 1 || arrays[0].of != Of::Diodes {
        return;
    }
    let n = page.figures[arrays[0].count].high;
    // "100 LEDs, two 5W chips each": called chips, two or three are the halves of one bead.
    let most = if arrays[0].worded { 3.0 } else { 12.0 };
    if n <= most && found.iter().any(|f| f.value > n && f.rank >= Rank::Named) {
        arrays[0].of = Of::Parts;
        says.set(arrays[0].watts, Says::Left(LeftWhy::Part));
    }
}

/// The one class of the text, with the figure it was read from; two different ones are none.
fn class(page: &Page, says: &All, arrays: &[Array], cobs: bool, chosen: Chosen) -> Option<(f64, usize)> {
    let mut class: Option<(f64, usize)> = None;
    for k in says.that(Set::CLASS) {
        let array = arrays.iter().find(|a| a.watts == k);
        if cobs && !array.is_some_and(|a| a.of == Of::Cobs) {
            continue;
        }
        let w = page.figures[k].high;
        match class {
            None => class = Some((w, k)),
            Some((other, _)) if (other - w).abs() < 1e-9 => {}
            Some((other, _))
                if page.cues.any(Role::Double.cue())
                    && ((other * 2.0 - w).abs() < 1e-9 || (other * 3.0 - w).abs() < 1e-9) =>
            {
                class = Some((w, k));
            }
            Some((other, _))
                if page.cues.any(Role::Double.cue())
                    && ((w * 2.0 - other).abs() < 1e-9 || (w * 3.0 - other).abs() < 1e-9) => {}
            Some(_) => return None,
        }
    }
    class.or_else(|| quotient(page, says, chosen))
}

/// "50 pcs 5W + 50 pcs 3W": another count and class is added to this one, whether or not both were seen as such.
#[inline(never)]
fn beside_another_class(page: &Page, class: f64) -> bool {
    let small =
        |i: usize| page.figure(i).filter(|f| f.unit == Unit::Watt && f.high <= LARGEST_BEAD).map(|f| f.high);
    let words = |i: usize| {
        matches!(page.what(i), Some(What::Word(Role::Pieces | Role::Led | Role::Diode | Role::Chip)))
    };
    if !page.has_mark(Mark::Plus) && !page.has_mark(Mark::And) {
        return false;
    }
    page.bare().any(|(_, n)| {
        let Some(i) = usize::from(n.item).checked_sub(1) else { return false };
        if !matches!(page.mark(i), Some(Mark::Plus | Mark::And)) {
            return false;
        }
        let (mut a, mut z) = (i, i + 2);
        while a > 0 && words(a - 1) {
            a -= 1;
        }
        while words(z) || page.mark(z) == Some(Mark::Times) {
            z += 1;
        }
        let (Some(one), Some(other)) = (a.checked_sub(1).and_then(small), small(z)) else { return false };
        (one - other).abs() > 1e-9 && ((one - class).abs() < 1e-9 || (other - class).abs() < 1e-9)
    })
}

/// "90W, 30 pcs ..., 3 watt": a lone small figure that is the headline divided by the count.
fn quotient(page: &Page, says: &All, chosen: Chosen) -> Option<(f64, usize)> {
    let headline = chosen.headline.filter(|_| page.has_unit(&[Unit::Bare]));
    let claim = page.figures[headline?].high;
    says.that(Set::UNQUALIFIED).find_map(|k| {
        let f = &page.figures[k];
        let fits = (f.unit == Unit::Watt) & (f.high <= LARGEST_BEAD) & (f.high < claim)
            && page
                .bare()
                .any(|(_, n)| (n.high * f.high - claim).abs() < 0.01 && counted(page, n, false).is_some());
        fits.then_some((f.high, k))
    })
}

/// The one count of the text; `cobs` in arrays, or `counted` by themselves.
#[inline(never)]
fn count(
    page: &Page,
    arrays: &[Array],
    found: &[Found],
    (cobs, counted): (bool, bool),
    chosen: Chosen,
) -> Option<(f64, usize)> {
    let best = found.iter().map(|f| f.rank).max();
    if cobs {
        let mut cob = arrays.iter().filter(|a| a.of == Of::Cobs);
        let first = cob.next()?;
        let n = page.figures[first.count].high;
        return cob.all(|a| (page.figures[a.count].high - n).abs() < 0.5).then_some((n, first.count));
    }
    let named = |f: &&Found| Some(f.rank) == best && f.rank >= Rank::Named;
    let counts = || arrays.iter().map(|a| (page.figures[a.count].high, a.count));
    let of_a_colour = |a: &Array| one_of_several(page, usize::from(page.figures[a.count].item));
    if arrays.len() == 1 && best != Some(Rank::Total) && !of_a_colour(&arrays[0]) {
        let (n, k) = counts().next()?;
        let clash = found.iter().filter(named).any(|f| (f.value - n).abs() > 0.5);
        let claim = chosen.headline.map(|k| page.figures[k].high);
        let fits = claim.is_some_and(|c| (n * page.figures[arrays[0].watts].high - c).abs() < 0.01 * c);
        if !clash || fits || arrays[0].worded {
            return Some((n, k));
        }
    }
    if counted {
        let cob = found.iter().filter(|f| f.cob).count();
        if cob < found.len() || page.cues.any(Cues::of(&[Role::Diode])) {
            return found.iter().find(|f| f.rank == Rank::Total).map(|f| (f.value, f.figure));
        }
    }
    if let Some(first) = found.iter().find(named) {
        let differ =
            distinct(found.iter().filter(named).map(|f| f.value)) || one_of_a_row(page, first.figure);
        if differ && chosen.variants {
            return selected(page, found);
        }
        return Some((first.value, first.figure));
    }
    if arrays.len() > 1 {
        return (!distinct(counts().map(|c| c.0))
            && !distinct(arrays.iter().map(|a| page.figures[a.watts].high)))
        .then(|| counts().next())
        .flatten();
    }
    found.iter().max_by(|a, b| a.value.total_cmp(&b.value)).map(|f| (f.value, f.figure))
}

/// The only count between the brackets around what was chosen.
fn selected(page: &Page, found: &[Found]) -> Option<(f64, usize)> {
    let (open, close) = bracketed_choice(page)?;
    let mut inside = found.iter().filter(|f| {
        f.rank >= Rank::Named && (open..close).contains(&usize::from(page.figures[f.figure].item))
    });
    let only = inside.next()?;
    inside.next().is_none().then_some((only.value, only.figure))
}

/// "LEDs | 504 | 1008": the first of a row with a figure for each model.
fn one_of_a_row(page: &Page, k: usize) -> bool {
    let at = usize::from(page.figures[k].item);
    page.mark(at + 1) == Some(Mark::Pipe)
        && page.figure(at + 2).is_some_and(|n| n.unit == Unit::Bare)
        && (at + 3 >= page.items.len() || matches!(page.mark(at + 3), Some(Mark::Line | Mark::Pipe)))
}

/// "10W double chips 60pcs grow light, 600W": pieces that the headline is the class times.
#[inline(never)]
fn pieces_of_a_total(page: &Page, class: f64, chosen: Chosen) -> Option<(f64, usize)> {
    let claim = page.figures[chosen.headline?].high;
    page.bare().find_map(|(k, n)| {
        let fits =
            page.role(usize::from(n.item) + 1) == Role::Pieces && (n.high * class - claim).abs() < 0.01;
        fits.then_some((n.high, k))
    })
}

fn distinct(mut values: impl Iterator<Item = f64>) -> bool {
    values.next().is_some_and(|first| values.any(|v| (v - first).abs() > 0.5))
}
