//! What the text is about: a light, or something sold beside lights (a fan, a timer, a cable), whose figures are not a light's.
//!
//! The head of the title decides: the last word for a thing before the first break or preposition. "Duct fan 52W for grow
//! tents" is a fan, "grow light with timer" a light. A bundle that has a light with its own watts is about the light.

use super::counted::FEWEST_PIECES;
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::{Item, Letters};
use super::page::Page;
use super::rated::feeds;
use super::roles::{Role, Unit};

/// Words for the wall that also name a thing to buy.
const WITH_SOCKETS: [Letters; 9] =
    Letters::all(["plug", "outlet", "steckdos", "prise", "enchufe", "presa", "stopcont", "tomada", "gniazd"]);

/// What a meter does that is no goods: "the wall meter reads 96W".
const READS: [Letters; 4] = Letters::all(["reads", "shows", "says", "showed"]);

/// Whether the word for measuring or for the wall also names a thing to buy.
fn to_buy(item: &Item) -> bool {
    match item.role {
        Role::Measured => item.is(const { Letters::of("meter") }),
        Role::Wall => WITH_SOCKETS.iter().any(|&w| item.starts(w)),
        _ => false,
    }
}

/// Whether the figures of the page may be a light's.
pub(super) fn is_light(page: &Page) -> bool {
    const OTHER: Cues = Cues::of(&[Role::Device, Role::Measured, Role::Wall]);
    const DEVICE: Cues = Role::Device.cue();
    let goods = |item: &Item| item.cue.any(OTHER) && to_buy(item);
    if !page.cues.any(OTHER) || !page.cues.any(DEVICE) && !page.items.iter().any(goods) {
        return true;
    }
    leads(page)
}

/// Whether the head of the title, on a page that has another device, is a light.
#[inline(never)]
fn leads(page: &Page) -> bool {
    /// Words for goods and for lights: until one of them or watts come by, nothing else tells what the text is about.
    const GOODS: Cues = Cues::of(&[Role::Device, Role::Measured, Role::Wall, Role::Bundle]);
    const LIGHTS: Cues = Cues::of(&[Role::Diode, Role::Light, Role::Part, Role::Led, Role::Cob]);
    let (mut thing, mut light_before, mut bundle) = (None, false, false);
    for i in 0..page.items.len() {
        let item = &page.items[i];
        // Most items tell nothing, so all that may are asked for at once. A light after a light tells nothing new.
        let words = if thing == Some(true) { GOODS } else { GOODS.and(LIGHTS).and(Cues::WATTS) };
        let small = matches!(item.role, Role::For | Role::With | Role::Of | Role::At | Role::To);
        let ends = item.is_figure() | small;
        let told = thing.is_some() | light_before;
        if !(item.cue.any(words) | thing.is_some() & ends | told & item.mark.is_some()) {
            continue;
        }
        match item.what {
            // "lights a 2x2 tent": where the light goes.
            What::Word(Role::Device)
                if thing == Some(true) && page.figure_before(i).is_some_and(|f| f.unit == Unit::Size) => {}
            What::Word(Role::Device)
                if page.role(i + 1) == Role::Has || thing == Some(true) && lacks(page, i) => {}
            // "Trellis&Vine 1000 watt LED": half of a maker's name.
            What::Word(Role::Device)
                if page.mark(i + 1) == Some(Mark::And)
                    && !page.spaced(i + 1)
                    && !page.spaced(i + 2)
                    && matches!(page.what(i + 2), Some(What::Word(Role::None))) => {}
            // "LED hood": an aquarium's light.
            What::Word(Role::Device)
                if page.role_before(i) == Role::Led && page.starts(i, const { Letters::of("hood") }) => {}
            // "400W board set: driver can do 480W": what feeds the light that the title names.
            What::Word(Role::Device) if thing != Some(false) && row_of_feeder(page, i) => break,
            What::Word(Role::Device) => thing = Some(false),
            What::Word(Role::Measured)
                if !light_before && to_buy(&page.items[i]) && !READS.iter().any(|&w| page.is(i + 1, w)) =>
            {
                thing = Some(false);
            }
            What::Word(Role::Wall)
                if !light_before
                    && !matches!(page.role(i + 1), Role::Power | Role::DrawNoun)
                    && page.role_before(i) != Role::At
                    && to_buy(&page.items[i]) =>
            {
                thing = Some(false);
            }
            What::Word(
                Role::Diode | Role::Light | Role::Lights | Role::Part | Role::Board | Role::Led | Role::Cob,
            ) => {
                thing = Some(true);
                light_before = true;
            }
            What::Word(Role::Bundle) => bundle = true,
            // "hanging kit for 600W LED panels": the lights are not in the kit.
            What::Word(Role::For) if thing == Some(false) && page.is_watts(i + 1) => {
                bundle = false;
                break;
            }
            What::Word(Role::For | Role::With | Role::Of) if thing.is_some() => break,
            // "4 bars on one adapter"
            What::Word(Role::At) if thing == Some(true) => break,
            // "meter to check your grow light"
            What::Word(Role::To) if thing == Some(false) => break,
            What::Figure(_)
                if thing == Some(true)
                    && page.figure(i).is_some_and(|f| {
                        matches!(f.unit, Unit::Watt | Unit::Volt | Unit::VoltAc | Unit::VoltDc | Unit::Amp)
                    }) =>
            {
                break;
            }
            What::Figure(_) if page.is_watts(i) && thing.is_none() => light_before = true,
            What::Mark(_) if page.breaks(i) && (thing.is_some() || light_before) => break,
            _ => {}
        }
    }
    thing != Some(false) || bundle && lit(page, 0) || counted_light(page)
}

/// "...: driver": the device at item `i` begins a row, feeds a light, and watts came before it.
fn row_of_feeder(page: &Page, i: usize) -> bool {
    page.mark_before(i) == Some(Mark::Colon)
        && feeds(page, i)
        && (0..i).any(|k| page.is_watts(k))
        && !(0..i).any(|k| matches!(page.role(k), Role::For | Role::Device))
}

/// "no fan", "ohne Lüfter", "无风扇": the light does without the device at item `i`.
pub(super) fn lacks(page: &Page, i: usize) -> bool {
    const WITHOUT: [Letters; 9] =
        Letters::all(["without", "ohne", "sans", "sin", "senza", "zonder", "sem", "bez", "utan"]);
    page.role(i) == Role::Device
        && (page.role_before(i) == Role::Deny
            || i > 0 && WITHOUT.iter().any(|&w| page.is(i - 1, w))
            || ideographs_deny(page, i))
}

/// "无风扇", "不带适配器": as part of a run of ideographs.
fn ideographs_deny(page: &Page, i: usize) -> bool {
    const WITHOUT: [&str; 8] = ["无", "無", "免", "没有", "沒有", "不带", "不帶", "不含"];
    let start = page.items[i].start as usize;
    !page.text.as_bytes()[start].is_ascii() && WITHOUT.iter().any(|w| page.text[..start].ends_with(w))
}

/// "Socket rated 660W max, grow bulb 24W, 24 x 1W": a phrase of its own begins with a light and its watts, and the light's
/// diodes are counted.
fn counted_light(page: &Page) -> bool {
    let phrase = |i: usize| {
        let named = (i..i + 3)
            .take_while(|&k| matches!(page.what(k), Some(What::Word(Role::None | Role::Led | Role::Light))));
        named.last().is_some_and(|k| page.role(k) == Role::Light && page.is_watts(k + 1))
    };
    let counts = |i: usize| {
        page.figure(i).is_some_and(|n| n.unit == Unit::Bare && n.high >= FEWEST_PIECES)
            && (matches!(page.role(i + 1), Role::Colour(_) | Role::Diode)
                || page.mark(i + 1) == Some(Mark::Times) && page.is_watts(i + 2))
    };
    let starts = |i: usize| page.mark(i) == Some(Mark::Comma) && phrase(i + 1);
    (0..page.items.len()).any(starts) && (0..page.items.len()).any(counts)
}

/// Whether a light with its own watts is named after item `from`.
fn lit(page: &Page, from: usize) -> bool {
    (from..page.items.len()).any(|i| {
        page.figure(i).is_some_and(|f| f.unit == Unit::Watt)
            && matches!(page.what(i + 1), Some(What::Word(_)))
            && matches!(
                page.role(i + 1),
                Role::Led | Role::Light | Role::Lights | Role::None | Role::Board | Role::Cob
            )
            && (i + 1..i + 5).any(|k| matches!(page.role(k), Role::Led | Role::Light | Role::Lights))
    })
}
