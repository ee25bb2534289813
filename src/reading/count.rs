//! How many diodes, and their class.

use super::array::{Array, Arrays, LARGEST_BEAD, Of};
use super::figures::{Figure, What};
use super::fold::Mark;
use super::page::Page;
use super::power::{Chosen, span};
use super::roles::{Cues, Role, Unit};
use super::watts::{All, Says, package_number};
use crate::facts::{Count, LeftWhy, Package, Read, Span, StatedClass, Taken};
use crate::units::Watts;

/// The fewest pieces without a diode word that are taken for diodes; fewer may be lights, fans or hooks.
const FEWEST_PIECES: f64 = 12.0;

/// How sure a count is, by the words beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    Pieces,
    Array,
    Named,
    Total,
}

#[derive(Debug, Clone, Copy)]
struct Found {
    value: f64,
    figure: usize,
    rank: Rank,
    cob: bool,
}

/// Fills `diode_count`, `class` and `package`.
pub(super) fn choose(page: Page, says: &mut All, arrays: &mut Arrays, chosen: Chosen, read: &mut Read) {
    let mut found: smallvec::SmallVec<[Found; 4]> = smallvec::SmallVec::new();
    let sold = read.units_in_pack.map(|t| t.span);
    for (index, f) in page.figures.iter().enumerate() {
        if f.unit == Unit::Bare
            && !arrays.iter().any(|a| a.count == index)
            && !sold.is_some_and(|s| s.start <= span(f).start && span(f).end <= s.end)
            && let Some((rank, cob)) = counted(page, f, sold.is_some())
        {
            found.push(Found { value: f.high, figure: index, rank, cob });
        }
    }
    parts_among_more(page, arrays, &found, says);
    let kept: smallvec::SmallVec<[Array; 2]> =
        arrays.iter().copied().filter(|a| matches!(a.of, Of::Diodes | Of::Cobs)).collect();
    let cobs = kept.iter().any(|a| a.of == Of::Cobs);
    let class = class(page, says, &kept, cobs, chosen);
    package(page, read);
    if let Some((watts, k)) = class {
        let package = package_beside(page, k, cobs).or(read.package.map(|p| p.value).filter(|p| *p != Package::Cob));
        let value = StatedClass { watts: Watts(watts), package };
        read.class = Some(Taken { value, span: span(&page.figures[k]) });
        says[k] = Says::Class;
    }
    if let Some((value, k)) = count(page, &kept, &found, cobs, chosen)
        && value <= f64::from(Count::MOST)
    {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 1 and a million")]
        let value = value as u32;
        read.diode_count = Some(Taken { value, span: span(&page.figures[k]) });
    }
    read.beside_board = page.cues.any(Cues::of(&[Role::Cob, Role::Board])) || board_code(page);
}

/// "40W (4*10W), 80 pcs lamp beads": a few things beside a larger count are heads.
fn parts_among_more(page: Page, arrays: &mut Arrays, found: &[Found], says: &mut All) {
    if arrays.len() != 1 || arrays[0].of != Of::Diodes || arrays[0].worded {
        return;
    }
    let n = page.figures[arrays[0].count].high;
    if n <= 12.0 && found.iter().any(|f| f.value > n && f.rank >= Rank::Named) {
        arrays[0].of = Of::Parts;
        says[arrays[0].watts] = Says::Left(LeftWhy::Part);
    }
}

/// The one class of the text, with the figure it was read from; two different ones are none.
fn class(page: Page, says: &All, arrays: &[Array], cobs: bool, chosen: Chosen) -> Option<(f64, usize)> {
    let mut class: Option<(f64, usize)> = None;
    for k in (0..says.len()).filter(|&k| says[k] == Says::Class) {
        let array = arrays.iter().find(|a| a.watts == k);
        if cobs && !array.is_some_and(|a| a.of == Of::Cobs) {
            continue;
        }
        let w = page.figures[k].high;
        match class {
            None => class = Some((w, k)),
            Some((other, _)) if (other - w).abs() < 1e-9 => {}
            Some((other, _)) if page.cues.any(Role::Double.cue()) && ((other * 2.0 - w).abs() < 1e-9 || (other * 3.0 - w).abs() < 1e-9) => {
                class = Some((w, k));
            }
            Some((other, _))
                if page.cues.any(Role::Double.cue()) && ((w * 2.0 - other).abs() < 1e-9 || (w * 3.0 - other).abs() < 1e-9) => {}
            Some(_) => return None,
        }
    }
    class.or_else(|| quotient(page, says, chosen))
}

/// "90W, 30 pcs ..., 3 watt": a lone small figure that is the headline divided by the count.
fn quotient(page: Page, says: &All, chosen: Chosen) -> Option<(f64, usize)> {
    let claim = page.figures[chosen.headline?].high;
    (0..says.len()).find_map(|k| {
        let f = &page.figures[k];
        let fits = says[k] == Says::Bare
            && f.unit == Unit::Watt
            && f.high <= LARGEST_BEAD
            && f.high < claim
            && page.figures.iter().any(|n| {
                n.unit == Unit::Bare && counted(page, n, false).is_some() && (n.high * f.high - claim).abs() < 0.01
            });
        fits.then_some((f.high, k))
    })
}

/// The one count of the text.
fn count(page: Page, arrays: &[Array], found: &[Found], cobs: bool, chosen: Chosen) -> Option<(f64, usize)> {
    let best = found.iter().map(|f| f.rank).max();
    if cobs {
        let mut cob = arrays.iter().filter(|a| a.of == Of::Cobs);
        let first = cob.next()?;
        let n = page.figures[first.count].high;
        return cob.all(|a| (page.figures[a.count].high - n).abs() < 0.5).then_some((n, first.count));
    }
    let named = |f: &&Found| Some(f.rank) == best && f.rank >= Rank::Named;
    let counts = || arrays.iter().map(|a| (page.figures[a.count].high, a.count));

    if arrays.len() == 1 && best != Some(Rank::Total) {
        let (n, k) = counts().next()?;
        let clash = found.iter().filter(named).any(|f| (f.value - n).abs() > 0.5);
        let claim = chosen.headline.map(|k| page.figures[k].high);
        let fits = claim.is_some_and(|c| (n * page.figures[arrays[0].watts].high - c).abs() < 0.01 * c);
        if !clash || fits || arrays[0].worded {
            return Some((n, k));
        }
    }
    if found.iter().any(|f| f.cob) {
        let cob = found.iter().filter(|f| f.cob).count();
        if cob < found.len() || page.cues.any(Cues::of(&[Role::Diode])) {
            return found.iter().find(|f| f.rank == Rank::Total).map(|f| (f.value, f.figure));
        }
    }
    if let Some(first) = found.iter().find(named) {
        let differ = distinct(found.iter().filter(named).map(|f| f.value));
        return (!(differ && chosen.variants)).then_some((first.value, first.figure));
    }
    if arrays.len() > 1 {
        return (!distinct(counts().map(|c| c.0)) && !distinct(arrays.iter().map(|a| page.figures[a.watts].high)))
            .then(|| counts().next())
            .flatten();
    }
    found.iter().max_by(|a, b| a.value.total_cmp(&b.value)).map(|f| (f.value, f.figure))
}

/// A package word or number at item `i`.
fn is_package(page: Page, i: usize) -> bool {
    matches!(page.role(i), Role::Package(_))
        || page.figure(i).is_some_and(|f| f.unit == Unit::Bare && package_number(f.high).is_some())
}

/// A plus or "and" at item `i` with another number after it: a sum of kinds, not the total.
fn joined(page: Page, i: usize) -> bool {
    (matches!(page.mark(i), Some(Mark::Plus | Mark::And)) || page.role(i) == Role::And) && page.figure(i + 1).is_some()
}

/// "COB 4pcs + SMD 96pcs": a plus shortly before the number at item `at`.
fn added(page: Page, at: usize) -> bool {
    let mut i = at;
    while i > 0 && i + 3 > at && matches!(page.what(i - 1), Some(What::Word(_))) {
        i -= 1;
    }
    matches!(page.mark_before(i), Some(Mark::Plus))
}

fn distinct(mut values: impl Iterator<Item = f64>) -> bool {
    values.next().is_some_and(|first| values.any(|v| (v - first).abs() > 0.5))
}

/// Whether the bare number counts diodes, and how surely.
fn counted(page: Page, f: &Figure, pack: bool) -> Option<(Rank, bool)> {
    let at = usize::from(f.item);
    if f.range || f.list || f.decimal || f.high < 1.0 || f.high.fract() != 0.0 {
        return None;
    }
    let package = package_number(f.high).is_some() && !f.worded;
    if page.mark_before(at) == Some(Mark::Times) && at >= 2 && !joined(page, at + 1) && is_package(page, at - 2) {
        // `3030 SMD x 480`
        return Some((Rank::Named, false));
    }
    let after = noun_after(page, at, pack);
    if after == After::Elsewhere || page.mark_before(at) == Some(Mark::Hash) || (package && after != After::Pieces) {
        return None;
    }
    if part_of_part(page, at) || matches!(page.mark_before(at), Some(Mark::Times | Mark::Money)) {
        return None;
    }
    match after {
        After::Cob => return Some((Rank::Named, true)),
        After::Diodes { total: true } => return Some((Rank::Total, false)),
        After::Diodes { total: false } => return Some((Rank::Named, false)),
        After::Light => return doubtful_light(page, f).then_some((Rank::Named, false)),
        _ => {}
    }
    let label = label_before(page, at);
    if label && !matches!(page.role(at + 1), Role::Colour(_) | Role::Letter(_)) && page.mark(at + 1) != Some(Mark::Times) {
        return Some((Rank::Named, false));
    }
    let colour = at > 0 && matches!(page.role(at - 1), Role::Colour(_))
        || matches!(page.mark_before(at), Some(Mark::Times | Mark::Colon)) && nearby_colour(page, at);
    match after {
        After::Total if page.cues.any(Cues::of(&[Role::Diode, Role::Chip, Role::Led])) && f.high >= FEWEST_PIECES => {
            Some((Rank::Total, false))
        }
        After::Pieces if page.figure(at + 2).is_some_and(|w| matches!(w.unit, Unit::Nanometre | Unit::Kelvin)) => None,
        After::Pieces if added(page, at) => None,
        After::Pieces if f.high >= FEWEST_PIECES && !colour && !(at + 2..at + 5).any(|k| joined(page, k)) => Some((Rank::Pieces, false)),
        _ => None,
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum After {
    Diodes { total: bool },
    Cob,
    /// LED in the singular before a word for a light.
    Light,
    Pieces,
    Total,
    /// Something else, or per metre, per bar.
    Elsewhere,
    Nothing,
}

/// What the words after the number at item `at` say it counts.
fn noun_after(page: Page, at: usize, pack: bool) -> After {
    let mut pieces = false;
    let mut others = 0;
    let mut i = at + 1;
    while i < at + 8 {
        match page.what(i) {
            Some(What::Word(role)) => match role {
                Role::Diode | Role::Chip => return diodes(page, i, pack),
                Role::Cob => {
                    return if matches!(page.role(i + 1), Role::Led | Role::Light) && !pieces { After::Light } else { After::Cob };
                }
                Role::Led => match page.role(i + 1) {
                    Role::Diode | Role::Chip | Role::Package(_) => return diodes(page, i, pack),
                    Role::Light | Role::Lights | Role::Part | Role::Board if !pieces => return After::Light,
                    Role::Device if !pieces => return After::Light,
                    Role::Double if !pieces && !matches!(page.role(i + 2), Role::Diode | Role::Chip) => return After::Light,
                    Role::None
                        if !pieces
                            && matches!(page.what(i + 1), Some(What::Word(_)))
                            && (i + 2..i + 4)
                                .any(|k| matches!(page.role(k), Role::Light | Role::Lights | Role::Part)) =>
                    {
                        return After::Light;
                    }
                    _ => return diodes(page, i, pack),
                },
                Role::Pieces if i == at + 1 => pieces = true,
                Role::Unit(Unit::Length) if i == at + 1 && page.role(i + 1) == Role::Total => return After::Total,
                Role::Total => return if i == at + 1 { After::Total } else { After::Nothing },
                Role::Package(_) | Role::Of | Role::DoubleEnded | Role::Double | Role::Rating | Role::Unit(Unit::Amp) | Role::Power => {}
                Role::Colour(_) => {
                    // One colour before the noun; a list of colours counts something else.
                    if !matches!(page.role(i + 1), Role::Diode | Role::Chip | Role::Led | Role::Package(_)) && !pieces {
                        return After::Nothing;
                    }
                    // "768 white and 48 red LEDs": the last of a list of colours.
                    let listed = matches!(page.mark_before(at), Some(Mark::Plus | Mark::And | Mark::Comma))
                        || page.role_before(at) == Role::And;
                    if listed && at >= 2 && matches!(page.role(at - 2), Role::Colour(_)) {
                        return After::Elsewhere;
                    }
                    if page.mark(i + 1) == Some(Mark::Slash) || matches!(page.role(i + 1), Role::And) {
                        return After::Elsewhere;
                    }
                }
                Role::None | Role::Kind | Role::Level | Role::Ppe | Role::Cool | Role::Warm | Role::Deep | Role::Dim if others < 3 => others += 1,
                Role::Light if matches!(page.role(i + 1), Role::Diode | Role::Chip) => {}
                Role::Device | Role::Part | Role::Board | Role::Light | Role::Lights | Role::Pack | Role::Each
                | Role::Pair | Role::Load | Role::Lamp(_) => return if pieces && matches!(role, Role::Each) { After::Pieces } else { After::Elsewhere },
                _ => break,
            },
            Some(What::Code) if others < 3 => others += 1,
            Some(What::Figure(_)) if i > at + 1 || page.is_watts(i) => {
                let f = page.figure(i).map_or(Unit::Other, |f| f.unit);
                let package = page.figure(i).is_some_and(|f| package_number(f.high).is_some());
                if !(f == Unit::Watt && page.figure(i).is_some_and(|f| f.high <= LARGEST_BEAD) || package) {
                    break;
                }
            }
            Some(What::Figure(_)) if page.figure(i).is_some_and(|f| package_number(f.high).is_some()) => {}
            Some(What::Mark(Mark::Dash)) if !page.breaks(i) => {}
            _ => break,
        }
        i += 1;
    }
    if pieces { After::Pieces } else { After::Nothing }
}

/// After a diode word at item `i`: per metre or per bar counts a part, "total" counts all.
fn diodes(page: Page, i: usize, pack: bool) -> After {
    for k in i + 1..i + 4 {
        match page.what(k) {
            Some(What::Word(Role::Per)) => {
                let part = matches!(page.role(k + 1), Role::Unit(_) | Role::Measured | Role::Board)
                    || page.role(k + 1) == Role::Part && !pack && !page.starts(k + 1, "panel");
                return if part { After::Elsewhere } else { After::Diodes { total: false } };
            }
            Some(What::Mark(Mark::Slash)) if matches!(page.role(k + 1), Role::Unit(Unit::Metre | Unit::Length) | Role::Measured | Role::Part) => {
                return After::Elsewhere;
            }
            Some(What::Word(Role::Total)) => return After::Diodes { total: true },
            Some(What::Word(_)) => {}
            _ => break,
        }
    }
    After::Diodes { total: false }
}

/// "10 rows of 12 LEDs", "12 modules each with 15": a count inside one part.
fn part_of_part(page: Page, at: usize) -> bool {
    at >= 2
        && matches!(page.role(at - 1), Role::Of | Role::With)
        && (matches!(page.role(at - 2), Role::Part | Role::Board) && page.figure(at.wrapping_sub(3)).is_some()
            || page.role(at - 2) == Role::Each)
}

/// "225 LED panel" under a headline in watts; round numbers may be a model's name.
fn doubtful_light(page: Page, f: &Figure) -> bool {
    let watts = page.figures.iter().any(|w| w.unit == Unit::Watt);
    let same = page.figures.iter().any(|w| w.unit == Unit::Watt && (w.high - f.high).abs() < 0.5);
    watts && !same && f.high >= FEWEST_PIECES && (f.high % 100.0 != 0.0 || f.high < 300.0)
}

/// "LED Qty: 96", "Number of LEDs: 150", "Diodes: 576", "Chips 60".
fn label_before(page: Page, at: usize) -> bool {
    let (mut i, mut signed, mut quantity, mut diode) = (at, false, false, false);
    for _ in 0..5 {
        let Some(k) = i.checked_sub(1) else { break };
        i = k;
        match page.items[i].what {
            What::Mark(Mark::Colon | Mark::Equal) if i + 1 == at => signed = true,
            What::Mark(Mark::Dash) if i + 1 == at && page.breaks(i) && page.what(at + 1).is_none_or(|w| matches!(w, What::Mark(_))) => {
                signed = true;
            }
            What::Mark(Mark::Compare | Mark::Tilde | Mark::Open | Mark::Close) => {}
            What::Word(Role::Quantity) => quantity = true,
            What::Word(Role::Pieces) if i + 1 == at || signed => quantity = true,
            What::Word(Role::Of | Role::DoubleEnded | Role::Approx | Role::Total | Role::Kind) => {}
            What::Word(Role::Diode) => {
                diode = true;
                signed |= i + 1 == at;
            }
            What::Word(Role::Chip | Role::Led) => {
                diode = true;
                signed |= i + 1 == at && page.role(at + 1) == Role::Pieces;
            }
            _ => break,
        }
    }
    (quantity && (diode || signed)) || (diode && signed)
}

fn nearby_colour(page: Page, at: usize) -> bool {
    (at.saturating_sub(4)..at).any(|i| matches!(page.role(i), Role::Colour(_)))
}

/// Fills the package word: a word, or a bare number that names one.
fn package(page: Page, read: &mut Read) {
    let number = page.figures.iter().find_map(|f| {
        let value = package_number(f.high).filter(|_| f.unit == Unit::Bare && !f.worded)?;
        Some(Taken { value, span: span(f) })
    });
    let words = Cues::of(&[Role::Package(Package::Smd), Role::Cob]);
    let word = |sized: bool| {
        page.items.iter().filter(|item| item.cue.any(words)).find_map(|item| {
            let value = match item.what {
                What::Word(Role::Package(p)) if sized == (p != Package::Smd) => p,
                What::Word(Role::Cob) if !sized => Package::Cob,
                _ => return None,
            };
            Some(Taken { value, span: Span { start: item.start as usize, end: item.end as usize } })
        })
    };
    read.package = if page.cues.any(words) { word(true).or(number).or_else(|| word(false)) } else { number };
}

/// The package of the class: the COB it is of.
fn package_beside(_page: Page, _k: usize, cobs: bool) -> Option<Package> {
    cobs.then_some(Package::Cob)
}

/// Diode codes that are mounted on boards.
fn board_code(page: Page) -> bool {
    (0..page.items.len()).any(|i| {
        matches!(page.items[i].what, What::Code) && page.words(i).get(..2).is_some_and(|w| w.eq_ignore_ascii_case("lm"))
    })
}
