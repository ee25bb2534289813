//! What holds for every text and every tally.

use proptest::prelude::*;

use super::{Error, class, colour, nearest_colour, notation, tally};
use crate::facts::{Colour, Count, Group, Package, StatedClass, Tally};
use crate::units::Watts;

/// Text that is nearly the notation, so that the rules are reached.
fn near_misses() -> impl Strategy<Value = String> {
    let pieces = prop::sample::select(vec![
        "60", "1,152", "660", "0", "3", "2835", "0.5", "999999", "±2", "+/-", " ", " ", " ", "x", "×", "(",
        ")", "+", ",", "/", "\n", "@", ":", "-", "_", "W", "3W", "nm", "K", "R", "B", "UV", "red", "deep",
        "blue", "white", "depred", "lime", "leds", "class", "smd", "cob", "and", "赤", "e\u{301}",
        "\u{202e}", "６", ".",
    ]);
    prop::collection::vec(pieces, 0..14).prop_map(|pieces| pieces.concat())
}

fn groups() -> impl Strategy<Value = Vec<Group>> {
    let package = prop::option::of(prop::sample::select(Package::ALL.to_vec()));
    let class = (1_u32..1_000_000, package)
        .prop_map(|(mw, package)| StatedClass { watts: Watts(f64::from(mw) / 1000.0), package });
    let count = (1_u32..50_000, prop::option::of(1_u32..500))
        .prop_map(|(number, half)| Count { number, half_width: half.filter(|half| *half <= number) });
    let group = (prop::sample::select(Colour::ALL.to_vec()), count, prop::option::of(class))
        .prop_map(|(colour, count, class)| Group { colour, count, class });
    prop::collection::vec(group, 1..20)
}

fn stands_in(error: &Error, text: &str) -> Result<(), TestCaseError> {
    prop_assert!(text.get(error.span.clone()).is_some(), "{error:?}");
    prop_assert_eq!(error.column, text[..error.span.start].chars().count() + 1);
    prop_assert!(!error.accepted.is_empty());
    for line in error.pointer(text).lines() {
        prop_assert!(unicode_width::UnicodeWidthStr::width(line) <= Error::COLUMNS, "{line}");
    }
    prop_assert!(!error.to_string().contains(char::is_control));
    Ok(())
}

fn survives(text: &str) -> Result<(), TestCaseError> {
    if let Err(error) = class(text) {
        stands_in(&error, text)?;
    }
    let (_, _) = (colour(text), nearest_colour(text));
    match tally(text) {
        Err(error) => stands_in(&error, text),
        Ok(read) => {
            prop_assert!((1..=u64::from(Count::MOST)).contains(&read.total()));
            prop_assert_eq!(tally(&notation(&read)), Ok(read));
            Ok(())
        }
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused_at_a_place_inside_it(text in any::<String>()) {
        survives(&text)?;
    }

    #[test]
    fn so_is_any_near_miss(text in near_misses()) {
        survives(&text)?;
    }

    #[test]
    fn a_tally_printed_and_read_is_the_same(groups in groups()) {
        let given = Tally { groups: groups.into(), lower_bound: false };
        prop_assert_eq!(tally(&notation(&given)), Ok(given));
    }

    #[test]
    fn repeats_multiply_every_count_and_nothing_else(groups in groups(), times in 1_u32..=20) {
        let once = Tally { groups: groups.into(), lower_bound: false };
        let mut many = once.clone();
        for group in &mut many.groups {
            group.count.number *= times;
            group.count.half_width = group.count.half_width.map(|half| half * times);
        }
        let read = tally(&format!("{times} x ({})", notation(&once)));
        if many.total() > u64::from(Count::MOST) {
            prop_assert!(read.is_err());
        } else {
            prop_assert_eq!(read.as_ref(), Ok(&many));
            prop_assert_eq!(read, tally(&format!("({}) x {times}", notation(&once))));
        }
    }
}
