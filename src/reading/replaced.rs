//! The lamp that the light is said to replace: its watts, and its kind where the text names one.

use super::array::{Arrays, Of};
use super::compared::OUR;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::power::span;
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use crate::facts::{LampKind, LeftWhy, Read, Replaced, Taken};
use crate::units::Watts;

/// Fills `replaces` with the first claim of the text.
pub(super) fn choose(page: &Page, says: &mut All, arrays: &Arrays, read: &mut Read) {
    let mut first: Option<usize> = None;
    let mut compared = says.places(Set::EQUIVALENT);
    while let Some(k) = compared.next(says) {
        let f = &page.figures[k];
        if against_leds(page, f) || tells_of_the_lamp(page, f) {
            says[k] = Says::Left(LeftWhy::Rhetoric);
            continue;
        }
        if own_model(page, f) {
            says[k] = Says::Left(LeftWhy::OtherLight);
            continue;
        }
        first = first.or(Some(k));
    }
    let Some(k) = first else { return };
    let f = total(page, arrays, k).unwrap_or(&page.figures[k]);
    if let Some(t) = page.figures.iter().position(|g| g.item == f.item) {
        says.set(t, Says::Equivalent);
    }
    let kind = kind(page, &page.figures[k]);
    read.replaces = Some(Taken { value: Replaced { watts: Watts(f.high), kind }, span: span(f) });
}

/// "beats 1000W LEDs": a comparison with another LED light.
fn against_leds(page: &Page, f: &Figure) -> bool {
    let at = usize::from(f.item);
    // The word after the watts first: it is looked up at once, and rarely is one for LEDs.
    if !matches!(page.role(at + 1), Role::Diode | Role::Led) {
        return false;
    }
    let left = page.left(at).cues;
    left.any(Role::Versus.cue().and(Role::Replaces.cue())) && !left.any(Role::Lamp(LampKind::Hps).cue())
}

/// "replaces our old model of 60 W": a former light of the seller, not a lamp.
#[inline(never)]
fn own_model(page: &Page, f: &Figure) -> bool {
    const OLD: Cues = Cues::of(&[Role::Lamp(LampKind::Hps), Role::Light, Role::Tube]);
    let at = usize::from(f.item);
    (at.saturating_sub(5)..at).any(|i| page.is_one(i, &OUR))
        && !page.left(at).cues.any(OLD)
        && !page.right(at).cues.any(OLD)
        && page.role(at + 1) != Role::Metal
}

/// "a 600W HPS uses 660W": what the other lamp does is no claim of this one.
fn tells_of_the_lamp(page: &Page, f: &Figure) -> bool {
    let at = usize::from(f.item);
    matches!(page.role(at + 1), Role::Lamp(_)) && page.role(at + 2) == Role::DrawVerb
}

/// "4 x 54W T5 lamps (216W)": the stated total of the replaced lamps.
#[inline(never)]
fn total<'a>(page: &Page<'a>, arrays: &Arrays, k: usize) -> Option<&'a Figure> {
    let array = arrays.iter().find(|a| a.watts == k && a.of == Of::Replaced)?;
    let product = page.figures[array.count].high * page.figures[k].high;
    page.figures.iter().find(|f| f.unit == Unit::Watt && (f.high - product).abs() < 0.01)
}

/// The kind that the words after the figure name, else those before it.
#[inline(never)]
fn kind(page: &Page, f: &Figure) -> Option<LampKind> {
    let at = usize::from(f.item);
    let mut kind = None;
    let mut tube = false;
    for i in at + 1..at + 9 {
        match page.what(i) {
            Some(What::Word(Role::Lamp(lamp))) => kind = Some(merge(kind, lamp)),
            Some(What::Word(Role::DoubleEnded))
                if page.is(i, const { Letters::of("de") }) && page.capitals(i) && kind.is_none() =>
            {
                kind = Some(LampKind::Hps);
            }
            Some(What::Word(Role::Tube)) => tube = true,
            Some(What::Word(Role::Double)) if page.is(i + 2, const { Letters::of("ended") }) => {
                kind = kind.or(Some(LampKind::Hps));
            }
            Some(What::Word(Role::Led)) if kind.is_none() => break,
            Some(What::Word(_)) => {}
            Some(What::Figure(_)) => break,
            Some(What::Mark(Mark::Slash | Mark::Plus | Mark::And))
                if matches!(page.role(i + 1), Role::Lamp(_)) => {}
            Some(What::Mark(Mark::Open)) if matches!(page.role(i + 1), Role::Lamp(_)) => {}
            Some(What::Mark(Mark::Dash)) if !page.breaks(i) => {}
            _ => break,
        }
    }
    if kind.is_none() && tube {
        kind = Some(LampKind::Fluorescent);
    }
    if kind.is_some() {
        return kind;
    }
    for i in (at.saturating_sub(8)..at).rev() {
        match page.what(i) {
            Some(What::Word(Role::Lamp(lamp))) => kind = Some(merge(kind, lamp)),
            Some(What::Word(Role::DoubleEnded))
                if page.is(i, const { Letters::of("de") }) && page.capitals(i) =>
            {
                kind = kind.or(Some(LampKind::Hps));
            }
            Some(What::Word(Role::Tube)) => tube = true,
            Some(What::Word(Role::Light | Role::Lights | Role::Led)) if kind.is_some() => break,
            Some(What::Word(_)) => {}
            Some(What::Mark(Mark::Slash))
                if kind.is_some() && matches!(page.role(i.wrapping_sub(1)), Role::Lamp(_)) => {}
            Some(What::Mark(Mark::Colon | Mark::Close | Mark::Compare | Mark::Equal)) => {}
            Some(What::Figure(_)) if page.figure(i).is_some_and(|f| f.unit == Unit::Bare) => {}
            _ => break,
        }
    }
    if kind.is_none() && tube { Some(LampKind::Fluorescent) } else { kind }
}

/// Sodium and metal halide together are high-intensity discharge.
fn merge(kind: Option<LampKind>, lamp: LampKind) -> LampKind {
    match (kind, lamp) {
        (None, lamp) => lamp,
        (
            Some(LampKind::Hps | LampKind::Mh | LampKind::Hid),
            LampKind::Hps | LampKind::Mh | LampKind::Hid,
        ) if kind != Some(lamp) => LampKind::Hid,
        (Some(kind), _) => kind,
    }
}
