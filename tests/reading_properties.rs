//! What holds for every text, listing or not.

use plainwatt::facts::{LeftWhy, Read, Span};
use plainwatt::reading::{LIMIT, Reader, read};
use proptest::prelude::*;

/// Every span of what was read.
fn spans(read: &Read) -> Vec<Span> {
    let mut spans: Vec<Span> = read.left.iter().map(|l| l.span).collect();
    spans.extend(read.colours.iter().map(|c| c.span));
    spans.extend(
        [
            read.advertised_w.map(|t| t.span),
            read.diode_count.map(|t| t.span),
            read.class.map(|t| t.span),
            read.actual_w.map(|t| t.span),
            read.replaces.map(|t| t.span),
            read.ppf.map(|t| t.span),
            read.ppe.map(|t| t.span),
            read.volts.map(|t| t.span),
            read.amps.map(|t| t.span),
            read.supply.map(|t| t.span),
            read.units_in_pack.map(|t| t.span),
            read.drive.map(|t| t.span),
            read.package.map(|t| t.span),
        ]
        .into_iter()
        .flatten(),
    );
    spans
}

/// What was read without where.
fn values(read: &Read) -> String {
    format!(
        "{:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?}",
        read.advertised_w.map(|t| t.value),
        read.diode_count.map(|t| t.value),
        read.class.map(|t| t.value),
        read.actual_w.map(|t| t.value),
        read.replaces.map(|t| t.value),
        read.ppf.map(|t| t.value),
        read.ppe.map(|t| t.value),
        read.ppe_is_bound,
        read.volts.map(|t| t.value),
        read.amps.map(|t| t.value),
        read.supply.map(|t| t.value),
        read.units_in_pack.map(|t| t.value),
        read.drive.map(|t| t.value),
        read.colours.iter().map(|c| c.value).collect::<Vec<_>>(),
        read.left.iter().map(|l| l.why).collect::<Vec<_>>(),
        read.notes,
    )
}

fn assert_spans_fit(text: &str) {
    for span in spans(&read(text)) {
        assert!(span.start <= span.end && span.end <= text.len(), "{span:?} outside {text:?}");
        assert!(
            text.is_char_boundary(span.start) && text.is_char_boundary(span.end),
            "{span:?} splits {text:?}"
        );
    }
}

fn fixture() -> Vec<String> {
    ["listings.jsonl", "listings-more.jsonl", "listings-afresh.jsonl"]
        .iter()
        .flat_map(|file| {
            let path = format!("{}/fixtures/{file}", env!("CARGO_MANIFEST_DIR"));
            std::fs::read_to_string(path).unwrap().lines().map(str::to_owned).collect::<Vec<_>>()
        })
        .map(|line| {
            serde_json::from_str::<serde_json::Value>(&line).unwrap()["text"].as_str().unwrap().to_owned()
        })
        .collect()
}

fn full_width(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_ascii_digit() { char::from_u32(c as u32 - 0x30 + 0xff10).unwrap() } else { c })
        .collect()
}

#[test]
fn spans_of_listings_are_the_words_of_the_listing() {
    for text in fixture() {
        assert_spans_fit(&text);
        if let Some(claim) = read(&text).advertised_w {
            let words = &text[claim.span.start..claim.span.end];
            assert!(words.chars().any(char::is_numeric), "{words:?} in {text:?} is no figure");
        }
    }
}

#[test]
fn added_white_space_changes_nothing() {
    for text in fixture() {
        let wide = format!("  {}   ", text.replace(' ', "  "));
        assert_eq!(values(&read(&text)), values(&read(&wide)), "{text}");
    }
}

#[test]
fn full_width_digits_read_as_their_ascii_equals() {
    // Digits inside an HTML entity are not digits of the text.
    for text in fixture().into_iter().filter(|t| !t.contains("&#")) {
        assert_eq!(values(&read(&text)), values(&read(&full_width(&text))), "{text}");
    }
}

#[test]
fn zero_width_characters_change_nothing() {
    for text in fixture().into_iter().filter(|t| !t.contains('&')) {
        let padded: String = text.chars().flat_map(|c| [c, '\u{200b}']).collect();
        assert_eq!(values(&read(&text)), values(&read(&padded)), "{text}");
    }
}

#[test]
fn a_text_over_the_limit_is_read_up_to_it() {
    let title = "300W LED Grow Light 100x3W ";
    let long = format!("{title}{}", "äx ".repeat(LIMIT));
    assert!((read(&long).advertised_w.unwrap().value.value - 300.0).abs() < 1e-9);
    let hidden = format!("{}{title}", " ".repeat(LIMIT));
    assert!(read(&hidden).advertised_w.is_none());
}

/// Of the first 64 figures of a page it is noted which say what; those behind them are looked for one by one.
#[test]
fn a_figure_behind_many_others_says_the_same() {
    let read_behind = |figures: usize| {
        let sizes = "12 cm, ".repeat(figures);
        let text = format!(
            "LED grow light, {sizes}1000W, actual power 110W (55W at 50 %). Replaces 400W HPS. 25W fan."
        );
        (values(&read(&text)), read(&text).left.iter().map(|l| l.why).collect::<Vec<_>>())
    };
    let (few, left) = read_behind(3);
    assert!(few.contains("110") && left.contains(&LeftWhy::NotFullPower), "{few} {left:?}");
    for figures in [57, 60, 61, 62, 63, 64, 65, 100, 300] {
        assert_eq!(read_behind(figures), (few.clone(), left.clone()), "behind {figures} figures");
    }
}

#[test]
fn a_reader_used_again_remembers_nothing() {
    let mut reader = Reader::new();
    for text in fixture() {
        assert_eq!(values(reader.read(&text)), values(&read(&text)), "{text}");
    }
}

#[test]
fn a_character_written_as_an_entity_reads_as_that_character() {
    for (escaped, plain) in [
        ("240W light &ndash; 2.8 &micro;mol/J", "240W light – 2.8 µmol/J"),
        ("lampe 300W, consommation r&eacute;elle 130 W", "lampe 300W, consommation réelle 130 W"),
        ("lampe 300W, consommation r&#233;elle 130 W", "lampe 300W, consommation réelle 130 W"),
        ("&Uuml;ber 300W Lampe f&#252;r Pflanzen", "Über 300W Lampe für Pflanzen"),
        ("&#51;00W light", "300W light"),
        ("3&#48;0W light", "300W light"),
    ] {
        assert_eq!(values(&read(escaped)), values(&read(plain)), "{escaped}");
    }
}

/// Strings that look like listings: words, numbers, units and signs in any order.
fn listing_like() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        "[0-9]{1,5}",
        "[0-9]{1,3}[.,'][0-9]{1,3}",
        "[0-9]{1,4}(W|w| watt|V|A|mA|kW|nm|K|pcs|%|\"|ft| µmol/s| µmol/J)",
        Just("100x3W".to_owned()),
        Just("x".to_owned()),
        Just("LED".to_owned()),
        Just("LEDs".to_owned()),
        Just("chip".to_owned()),
        Just("actual".to_owned()),
        Just("power".to_owned()),
        Just("replaces".to_owned()),
        Just("equivalent".to_owned()),
        Just("HPS".to_owned()),
        Just("COB".to_owned()),
        Just("red".to_owned()),
        Just("deep".to_owned()),
        Just("B".to_owned()),
        Just("R".to_owned()),
        Just("all".to_owned()),
        Just("pack".to_owned()),
        Just("of".to_owned()),
        Just("each".to_owned()),
        Just("twin".to_owned()),
        Just("heads".to_owned()),
        Just("total".to_owned()),
        Just("SKU".to_owned()),
        Just("size".to_owned()),
        Just("PPF".to_owned()),
        Just("not".to_owned()),
        Just("灯珠".to_owned()),
        Just("実測".to_owned()),
        Just("２８３５".to_owned()),
        "[-:=/|,;.()+±~@?!&*×&<>'\"]",
        Just("&quot;".to_owned()),
        Just("\u{200b}".to_owned()),
    ];
    prop::collection::vec((piece, prop_oneof![Just(""), Just(" "), Just("\n")]), 0..24)
        .prop_map(|pieces| pieces.into_iter().flat_map(|(piece, space)| [piece, space.to_owned()]).collect())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    #[test]
    fn any_text_is_read_without_panic_and_spans_fit(text in "\\PC{0,200}") {
        assert_spans_fit(&text);
    }

    #[test]
    fn any_characters_are_read_without_panic_and_spans_fit(text in proptest::collection::vec(any::<char>(), 0..120)) {
        assert_spans_fit(&text.into_iter().collect::<String>());
    }

    #[test]
    fn anything_like_a_listing_is_read_without_panic_and_spans_fit(text in listing_like()) {
        assert_spans_fit(&text);
    }

    #[test]
    fn anything_with_entities_is_read_to_its_end(text in "(&(#x?[0-9]{1,4}|[a-z]{1,6});?|[0-9]{1,3}|[a-zW]{1,3}| ){0,20}") {
        assert_spans_fit(&text);
    }

    #[test]
    fn doubled_spaces_change_nothing_anywhere(text in listing_like()) {
        let wide = format!(" {} ", text.replace(' ', "  "));
        prop_assert_eq!(values(&read(&text)), values(&read(&wide)));
    }

    #[test]
    fn full_width_digits_read_alike_anywhere(text in listing_like()) {
        prop_assert_eq!(values(&read(&text)), values(&read(&full_width(&text))));
    }
}
