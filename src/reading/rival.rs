//! Watts that the text holds against other sellers or other lights: "no fake 1000W", "others claim 2000W", "brighter than the
//! rivals' 1500W models", "our old 270W light". Taken for the claim they would accuse the one who warns of them.

use super::beside::Beside;
use super::compared::OUR;
use super::cues::Cues;
use super::drawn::Before;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::listed::{Beginnings, Listed};
use super::page::Page;
use super::phrase::DRAW;
use super::roles::{Role, Unit};
use super::says::Says;
use crate::facts::{LampKind, LeftWhy};

/// "less", "weniger": with a word for a comparison after it, a saving.
const SAVE: Cues = Role::Save.cue();
/// How far from the figure the word stands.
const NEAR: usize = 5;
/// Verbs of warning, that the figure follows.
const WARNING: Listed<4> = Listed::of(["beware", "fooled", "misled", "tricked"]);
/// "one of those": with a denial before it.
const THOSE: Listed<9> =
    Listed::of(["those", "these", "ces", "esas", "esos", "quelle", "quei", "diesen", "dieser"]);
/// A former light of the same maker.
const FORMER: Listed<8> =
    Listed::of(["old", "older", "previous", "former", "earlier", "alte", "ancienne", "vorige"]);

const PAST: Listed<5> = Listed::of(["was", "had", "war", "hatte", "formerly"]);

const MODEL: Listed<6> = Listed::of(["model", "version", "modell", "modele", "modelo", "gen"]);

/// Why the watts at item `at` are not the light's, if the text holds them against another light.
pub(super) fn rival(page: &Page, beside: &Beside, own: f64) -> Option<LeftWhy> {
    let at = beside.at;
    if (beside.next.may_be(SAVE) | beside.second.may_be(SAVE)) && saved(page, at) {
        return Some(LeftWhy::Rhetoric);
    }
    let other = || page.watts().any(|(_, f)| usize::from(f.item) != at && f.high < own);
    if page.cues.any(Cues::of(&[Role::Fake, Role::Deny])) && called_fake(page, at) && other() {
        return Some(LeftWhy::Denied);
    }
    if page.has_mark(Mark::Stop) && supposed(page, at) && other() {
        return Some(LeftWhy::Denied);
    }
    let rivals = page.cues.any(Cues::of(&[Role::Rival, Role::Replaces]))
        || page.cues.any(Role::Versus.cue()) && page.has_mark(Mark::Inch);
    if rivals && of_rivals(page, at) && other() || former(page, beside) {
        return Some(LeftWhy::OtherLight);
    }
    None
}

/// The words before item `at`, nearest first, as far as the phrase that leads straight up to it.
fn words_before<'a>(page: &'a Page<'a>, at: usize) -> impl Iterator<Item = usize> + 'a {
    const ENDS: Cues = DRAW.and(Cues::of(&[Role::Only, Role::Power]));
    (at.saturating_sub(NEAR)..at).rev().take_while(move |&i| match page.what(i) {
        // "No fake watts here 100W": the word has its own noun.
        Some(What::Word(Role::Unit(_))) => page.is(i, const { Letters::of("a") }),
        Some(What::Word(_)) => !page.items[i].cue.any(ENDS) || page.is(i, const { Letters::of("really") }),
        Some(What::Mark(Mark::Inch | Mark::Foot)) => true,
        _ => false,
    })
}

/// "Don't be fooled by 1200W labels", "no fake 1000W", "the 1000-watt myth", "not one of those 1500W lamps".
#[inline(never)]
fn called_fake(page: &Page, at: usize) -> bool {
    let fake = page.cues.any(Role::Fake.cue());
    if fake && words_before(page, at).any(|i| page.role(i) == Role::Fake) {
        return true;
    }
    let those = words_before(page, at).find(|&i| page.is_one(i, &THOSE));
    if those.is_some_and(|k| (k.saturating_sub(NEAR)..k).any(|i| page.role(i) == Role::Deny)) {
        return true;
    }
    if !fake {
        return false;
    }
    for i in at + 1..at + 4 {
        match page.what(i) {
            // "65W, not fake 1000W" without the comma: the word is about the next figure.
            Some(What::Word(Role::Fake)) => {
                return !page.is_watts(i + 1) && !page.is_one(i, &WARNING);
            }
            Some(What::Word(Role::Deny)) => return false,
            Some(What::Word(_)) if page.cue(i).any(DRAW) => return false,
            Some(What::Word(_) | What::Mark(Mark::Inch)) => {}
            Some(What::Mark(Mark::Dash)) if !page.breaks(i) => {}
            _ => return false,
        }
    }
    false
}

/// "We could have printed 3W x 100 = 300W on the box.": what might have been claimed, in a sentence of its own.
#[inline(never)]
fn supposed(page: &Page, at: usize) -> bool {
    const MIGHT: Listed<2> = Listed::of(["could", "might"]);
    let ends = |i: usize| matches!(page.mark(i), Some(Mark::Stop | Mark::Line | Mark::Bang | Mark::Question));
    let might = |i: usize| page.is_one(i, &MIGHT) && page.is(i + 1, const { Letters::of("have") });
    // The word first: it is rare, the ends of sentences are not.
    (at.saturating_sub(12)..at).any(|i| might(i) && !(i..at).any(ends))
        && (at + 1..page.items.len()).any(ends)
}

/// "Others claim 2000W", "than the rivals' 1500W models": the word starts the phrase or is compared with.
#[inline(never)]
fn of_rivals(page: &Page, at: usize) -> bool {
    let the_rivals = |i: usize| {
        page.is(i, const { Letters::of("rivals") })
            && (page.mark(i + 1) == Some(Mark::Foot) || page.role_before(i) == Role::At)
    };
    let found = words_before(page, at).find(|&i| page.role(i) == Role::Rival || the_rivals(i));
    let Some(mut k) = found else { return quoted(page, at) };
    // "other sellers", "most brands"
    while k > 0 && page.what(k - 1) == Some(What::Word(Role::None)) {
        k -= 1;
    }
    k == 0
        || page.breaks(k - 1)
        || (k.saturating_sub(3)..k).any(|i| matches!(page.role(i), Role::Versus | Role::Replaces))
}

/// "their sellers just multiply 100 chips by 10W", "other brands print 245 x 5W": the array that begins at item `first` follows
/// what others do.
#[inline(never)]
pub(super) fn rivals_multiply(page: &Page, first: usize) -> bool {
    const DO: Listed<15> = Listed::of([
        "multipl", "count", "print", "writ", "add", "use", "have", "put", "fit", "claim", "call", "label",
        "rechn", "zahl", "compt",
    ]);
    let words = |i: &usize| matches!(page.what(*i), Some(What::Word(_)));
    let mut before = (first.saturating_sub(8)..first).rev().take_while(words);
    let does = |i: usize| page.begins(i, &DO);
    // Between the verb and the array at most "it up as".
    let verb = before.by_ref().take(4).find(|&i| does(i));
    verb.is_some()
        && before.find(|&i| page.role(i) == Role::Rival).is_some_and(|i| page.role_before(i) != Role::Versus)
}

/// `beats any "2000W" panel`: watts in quotes, of a light that this one is compared with and no lamp of another kind.
#[inline(never)]
fn quoted(page: &Page, at: usize) -> bool {
    const LED: Cues = Cues::of(&[Role::Part, Role::Board, Role::Light, Role::Lights, Role::Led]);
    const LAMP: Cues =
        Cues::of(&[Role::Lamp(LampKind::Hps), Role::Tube, Role::Equivalent, Role::Traditional]);
    const ONES: Listed<2> = Listed::of(["one", "ones"]);
    page.mark_before(at) == Some(Mark::Inch)
        && page.mark(at + 1) == Some(Mark::Inch)
        && page.left(at).cues.any(Cues::of(&[Role::Replaces, Role::Versus]))
        && ((at + 2..at + 5).any(|i| page.cue(i).any(LED)) || page.is_one(at + 2, &ONES))
        && !(at.saturating_sub(NEAR)..at + NEAR).any(|i| page.cue(i).any(LAMP))
}

/// "30W less than", "160W de moins qu'une", "20W weniger als": a saving.
#[inline(never)]
fn saved(page: &Page, at: usize) -> bool {
    // "240W draws less than 190W" is no saving.
    let small =
        matches!(page.what(at + 1), Some(What::Word(Role::Of | Role::DoubleEnded | Role::None | Role::At)));
    let less = at + 1 + usize::from(small && page.may_be(at + 2, SAVE));
    page.may_be(less, SAVE)
        && page.role(less) != Role::Save
        && (page.may_be(less + 1, Role::Versus.cue())
            || less + 1 == page.items.len()
            || page.breaks(less + 1))
}

/// "our old 270W light", "was 200W in the 2021 model".
fn former(page: &Page, beside: &Beside) -> bool {
    // Of the three lists at once: whether a word stands before the figure, or one of the vocabulary, nobody can foretell.
    const WORDS: Beginnings = FORMER.beginnings.and(PAST.beginnings).and(OUR.beginnings);
    WORDS.may_have(beside.before) && of_a_former_light(page, beside)
}

#[inline(never)]
fn of_a_former_light(page: &Page, beside: &Beside) -> bool {
    let at = beside.at;
    let unknown = matches!(beside.before.role, Role::None);
    FORMER.has(beside.before) && at > 1 && page.is_one(at - 2, &OUR)
        || unknown
            && PAST.has(beside.before)
            && ((at + 2..at + 7).any(|i| page.is_one(i, &MODEL)) || earlier_model(page, at - 1))
        || unknown && OUR.has(beside.before) && !beside.before_a_lamp() && succeeded(page, at - 1)
}

/// "version 1 was 135W", "the predecessor had 135W": an earlier model before the verb at item `verb`, in its own phrase. "This
/// model was 135W" is about the light.
#[inline(never)]
fn earlier_model(page: &Page, verb: usize) -> bool {
    const EARLIER: Listed<5> = Listed::of(["predeces", "vorgang", "predecir", "precedes", "voorgang"]);
    let phrase = || (verb.saturating_sub(NEAR)..verb).rev().take_while(|&i| !page.breaks(i));
    let (mut model, mut first) = (false, false);
    for i in phrase() {
        if page.begins(i, &EARLIER) {
            return true;
        }
        model |= page.is_one(i, &MODEL);
        first |= page.is_one(i, &FORMER)
            || page.is_one(i, &FIRST)
            || page.figure(i).is_some_and(|n| n.unit == Unit::Bare && n.high < LATE);
    }
    model && first
}

/// Words for the first of several models.
const FIRST: Listed<5> = Listed::of(["first", "original", "last", "erste", "premiere"]);
/// "version 2", but not "model 600".
const LATE: f64 = 10.0;

/// "successor to our 150W Mk2", "Nachfolger unserer 150W": what `our` at item `our` stands for has been succeeded.
#[inline(never)]
fn succeeded(page: &Page, our: usize) -> bool {
    const SUCCEEDS: Listed<6> = Listed::of(["succe", "nachfolg", "ersetzt", "remplace", "replac", "opvolg"]);
    (our.saturating_sub(3)..our)
        .rev()
        .take_while(|&i| matches!(page.what(i), Some(What::Word(_))))
        .any(|i| page.begins(i, &SUCCEEDS))
}

/// "selling since I moved up to a 720W unit", "replaced it with a 650W fixture": the light that an owner has now. "Upgrade to a 300W
/// light" is the one for sale, and so is the first that is named with no other before it.
#[inline(never)]
pub(super) fn moved_on(page: &Page, at: usize, before: &Before) -> bool {
    const MOVED: Listed<7> =
        Listed::of(["moved", "upgraded", "switched", "went", "swapped", "replaced", "changed"]);
    const OWNER: [Letters; 2] = Letters::all(["i", "we"]);
    let word = |i: &usize| matches!(page.what(*i), Some(What::Word(_)));
    let mut words = (at.saturating_sub(NEAR)..at.saturating_sub(1)).rev().take_while(word);
    let Some(to) =
        words.by_ref().take(2).find(|&i| matches!(page.role(i), Role::To | Role::With | Role::For))
    else {
        return false;
    };
    let Some(verb) = (to.saturating_sub(3)..to).rev().take_while(word).find(|&i| page.is_one(i, &MOVED))
    else {
        return false;
    };
    let it = (verb + 1..to).any(|i| page.is(i, const { Letters::of("it") }));
    let own = || before.all.iter().any(|s| matches!(s, Says::Bare | Says::Nameplate | Says::Draw(_)));
    let owner = || (verb.saturating_sub(4)..verb).any(|i| OWNER.iter().any(|&w| page.is(i, w)));
    it && page.watts().nth(1).is_some() || owner() && own()
}
