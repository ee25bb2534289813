//! Every rule of the notation, as tables of what is read and what is refused.

use super::{notation, tally};

/// Each text of a row, separated by `|`, reads as the row's canonical form.
fn all_read(rows: &[(&str, &str)]) {
    for (texts, canonical) in rows {
        for text in texts.split('|') {
            let read = tally(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
            assert_eq!(notation(&read), *canonical, "{text:?}");
        }
    }
}

/// Each text is refused at the place in the second column, with words of the third in what is accepted.
fn all_refused(rows: &[(&str, &str, &str)]) {
    for (text, found, accepted) in rows {
        match tally(text) {
            Ok(read) => panic!("{text:?} read as {}", notation(&read)),
            Err(error) => {
                assert_eq!(error.found, *found, "{text:?}: {error}");
                assert!(error.accepted.contains(accepted), "{text:?}: {error}");
            }
        }
    }
}

#[test]
fn a_count_and_a_colour_in_any_common_dress() {
    all_read(&[
        (
            "60 red|60 RED|60red|60 x red|60x red|60xred|60×red|60 * red|６０　ｒｅｄ|60\u{a0}red|60-red|60 reds|60 red leds",
            "60 red",
        ),
        (
            "60 pcs red|60pcs x red|60 pieces of red|60 red diodes|60 led beads red|60 red led chips|red x 60|red: 60|red = 60|redx60",
            "60 red",
        ),
        (
            "60x deep-red|60 deep_red|60 deep red leds|60 hyper red|60 DR|60DR|60 x 660nm|60 660nm|60 red 660nm|60 deep red (660nm)|660nm x 60|60 660 nm red",
            "60 deep-red",
        ),
        ("2 uv-a|2 UV|2 uv a|2UVA|2 violet|2 x 395nm", "2 uv-a"),
        (
            "96 x 3000K|96 3000 K|96 warm white|96 WW|96 white 3000K|96 x white (3000K)|3000K x 96|96 x 3000K white",
            "96 white",
        ),
        ("4 IR 730nm|4 x IR (730nm)|4 FR|4 far red", "4 far-red"),
        ("60|60 leds|60 unstated|60 pcs", "60"),
    ]);
}

#[test]
fn separators_between_groups() {
    let canonical = "60 red + 20 blue + 10 white";
    let texts = "60 red + 20 blue + 10 white|60 red,20 blue,10 white|60 red; 20 blue; 10 white|60 red/20 blue/10 white|\
        60 red & 20 blue and 10 white|60 red\n20 blue\r\n10 white\n|\n60 red,\n20 blue, and 10 white|60 red plus 20 blue plus 10 white,";
    all_read(&[(texts, canonical)]);
    all_refused(&[
        ("60 red 20 blue", "20", "before the next group"),
        ("60 red +", "", "a count and a colour"),
        ("60 red ++ 20 blue", "+", "a count and a colour"),
        ("+ 60 red", "+", "a count and a colour"),
        ("60 red,, 20 blue", ",", "a count and a colour"),
        ("60 red and", "", "a count and a colour"),
    ]);
}

#[test]
fn a_comma_groups_thousands_only_before_exactly_three_digits() {
    all_read(&[
        ("1,152 white|1152 white", "1152 white"),
        ("1,000,000 white", "1000000 white"),
        ("60 red,200 blue", "60 red + 200 blue"),
        ("60, 200 blue", "60 + 200 blue"),
        ("60,20 blue", "60 + 20 blue"),
        ("60,2000 blue", "60 + 2000 blue"),
    ]);
    all_refused(&[
        ("1.5 red", "1.5", "whole number"),
        ("0,152 white", "0,152", "whole number"),
        ("1,152,300 white", "1,152,300", "1 000 000"),
    ]);
}

#[test]
fn products_multiply_every_count_inside() {
    all_read(&[
        (
            "4 x (12 deep-red + 3 royal-blue) + 2 uv-a|4x(12 deep-red+3 royal-blue)+2 uv-a|(12 deep-red + 3 royal-blue) x 4 + 2 uv-a|4 × （12 deep-red ＋ 3 royal-blue） ＋ 2 uv-a",
            "48 deep-red + 12 royal-blue + 2 uv-a",
        ),
        ("2 x (3 x (4 red + 1 blue) + 1 white)", "24 red + 6 blue + 2 white"),
        ("4 x 12 red|4 x 12 x red|2 x 2 x 12 red|4 pcs x 12 red", "48 red"),
        ("4 x (12±1 red)|4 x 12±1 red", "48±4 red"),
        ("4 x 12 x 660nm|4 x 12 x 660", "48 deep-red"),
        ("((5 red))", "5 red"),
        ("2 x (\n3 red\n4 blue\n)", "6 red + 8 blue"),
        ("1 red + 0 x (3 blue)", "1 red"),
    ]);
    all_refused(&[
        ("4 (12 red)", "(", "'x' between"),
        ("4 x ()", ")", "a count and a colour"),
        ("4 x (12 red", "", "to close the '(' at column 5"),
        ("12 red)", ")", "without its '('"),
        ("4±1 x (12 red)", "4±1", "put the doubt on the diodes"),
        ("(12 red) x 4 blue", "blue", "before the next group"),
        ("(12 red) x 3W", "3", "repeats"),
        ("60 red x 2", "2", "a colour"),
    ]);
}

#[test]
fn counts_in_doubt() {
    all_read(&[
        (
            "60±2 red, 20 blue|60 ± 2 red, 20 blue|60+-2 red, 20 blue|60 +/- 2 red, 20 blue|60+/-2 red + 20 blue",
            "60±2 red + 20 blue",
        ),
        ("60±0 red", "60 red"),
        ("60±60 red", "60±60 red"),
    ]);
    all_refused(&[
        ("60±61 red", "60±61", "no larger than the count"),
        ("60± red", "red", "whole number"),
        ("60±1.5 red", "1.5", "whole number"),
        ("60 red ±2", "±", "before the next group"),
    ]);
}

#[test]
fn classes_of_a_group_and_of_all_in_parentheses() {
    all_read(&[
        (
            "96 x 3000K @0.2W + 12 x 660nm @3W|96 x 3000K @ 0.2 W + 12 x 660nm 3W|96 3000K at 0,2W + 12 660nm x 3W|3000K x 96 @.2W + 3W 660nm x 12",
            "96 white @0.2W + 12 deep-red @3W",
        ),
        (
            "100 x 3W|100x3W|3W x 100|3Wx100|100 3W leds|100 x 3W class|100 leds x 3 W|100 @3W|3 watt x 100",
            "100 @3W",
        ),
        ("100 x 3W red|100 red x 3W|3W red x 100|3W x 100 red", "100 red @3W"),
        ("90 white @ smd-3W|90 white @SMD 3W|90 white smd-3W", "90 white @smd-3W"),
        ("2 x COB 100W|2 x 100W COB|2 @cob-100W|COB 100W x 2|2 x 100 W cob", "2 @cob-100W"),
        ("225 x 2835 0.5W|225 x SMD2835 0.5W|225 x 0.5W 2835|2835 0.5W x 225", "225 @2835-0.5W"),
        ("100 x 3W 3030 red", "100 red @3030-3W"),
        ("2 x (60 red @5W + 20 blue) @3W|(60 red @5W + 20 blue) @3W x 2", "120 red @5W + 40 blue @3W"),
        ("((1 red) @1W + 1 blue) @3W", "1 red @1W + 1 blue @3W"),
    ]);
    all_refused(&[
        ("12 red @", "", "a class such as 3W"),
        ("12 red @3", "3", "a class such as 3W"),
        ("12 red @0W", "0W", "from 0.001W"),
        ("12 red @2000W", "2000W", "to 1000W"),
        ("12 red @3W @5W", "5W", "one class"),
        ("@3W", "@", "before its class"),
        ("60 red, @3W", "@", "before its class"),
        ("100 x 2835", "2835", "'2835 0.5W'"),
        ("12 smd red", "smd", "with its watts"),
        ("3W", "3W", "'3 white' for diodes"),
        ("3 watt", "3 watt", "a count with it"),
        ("12 red @700mA", "700", "a class such as 3W"),
    ]);
}

#[test]
fn a_wavelength_without_its_unit_only_after_a_times_sign() {
    all_read(&[
        ("12 x 660", "12 deep-red"),
        ("12 x 660 @3W", "12 deep-red @3W"),
        ("660 red", "660 red"),
        ("660", "660"),
    ]);
    all_refused(&[
        ("12 x 660 red", "660", "'x 660nm' for a wavelength"),
        ("12 x 660 leds", "660", "'x 660nm' for a wavelength"),
        ("100 x 3", "3", "a class such as 3W"),
        ("12 x 3000", "3000", "a wavelength"),
        ("660nm", "660nm", "a count with it"),
        ("12 x 100nm", "100nm", "315nm to 1100nm"),
        ("12 x 300K", "300K", "1000K to 25000K"),
    ]);
}

#[test]
fn two_w_is_two_white_only_among_letter_codes() {
    all_read(&[
        (
            "40R/8B/2W/1UV|40 R / 8 B / 2 W / 1 UV|40R, 8B, 2W, 1UV|40R\n8B\n2W\n1UV",
            "40 red + 8 blue + 2 white + 1 uv-a",
        ),
        ("2W/40R|2±0W/40R", "2 white + 40 red"),
        ("2W/1UV", "2 white + 1 uv-a"),
        ("4 x (10R + 2W) @3W", "40 red @3W + 8 white @3W"),
        ("10R + 2W @3W", "10 red + 2 white @3W"),
        ("2 white + 10WW|2 x W + 10 CW", "2 white + 10 white"),
        ("40R x 3W|40R @3W", "40 red @3W"),
    ]);
    let asks = "for diodes, or a count with a class, such as '100 x";
    all_refused(&[
        ("10W", "10W", "'10 white' for diodes, or a count with a class, such as '100 x 10W'"),
        ("10 W", "10 W", asks),
        ("10W/20W", "10W", asks),
        ("60 red + 2W", "2W", asks),
        ("4 UV + 2W", "2W", asks),
        ("40R 2W", "2W", "a separator before a count of white"),
    ]);
}

#[test]
fn zero_groups_add_nothing_and_zero_lights_are_refused() {
    all_read(&[("0 red + 5 blue", "5 blue")]);
    all_refused(&[
        ("0", "0", "at least one diode"),
        ("0 red + 0 x (5 blue)", "0 red + 0 x (5 blue)", "at least one diode"),
    ]);
}

#[test]
fn counts_depth_and_length_have_limits() {
    let most = "1 000 000 diodes";
    all_read(&[("1000000 red", "1000000 red"), ("999999 red + 1 blue", "999999 red + 1 blue")]);
    all_refused(&[
        ("1000001 red", "1000001", most),
        ("1000000000000 red", "1000000000000", most),
        ("99999999999999999999999999 red", "99999999999999999999999999", most),
        ("1000000 red + 1 blue", "1000000 red + 1 blue", most),
        ("1000 x (1000 red + 1 blue)", "1000 x (1000 red + 1 blue)", most),
        ("9999 x 9999 x 9999 x 9999 x 9999 x 9999 red", "9999 x 9999 x 9999 x 9999 x 9999 x 9999 ...", most),
    ]);
    let nested = |depth: usize| format!("{}5 red{}", "(".repeat(depth), ")".repeat(depth));
    assert!(tally(&nested(16)).is_ok());
    assert_eq!(tally(&nested(17)).unwrap_err().accepted, "parentheses at most 16 deep");
    assert!(tally(&"(".repeat(9000)).unwrap_err().accepted.contains("16 deep"));
    let long = "1 red+".repeat(1666) + "1 b";
    assert_eq!(long.len(), 9999);
    assert_eq!(tally(&long).unwrap().groups.len(), 1667);
    let error = tally(&"赤".repeat(4000)).unwrap_err();
    assert_eq!(
        (error.span, error.accepted.as_ref()),
        (9999..12000, "at most 10000 bytes, and this has 12000")
    );
}

#[test]
fn what_is_no_colour_is_named_with_the_nearest() {
    for (text, found, suggestion) in [
        ("60 depred", "depred", Some("deep-red")),
        ("60 dep red + 1 blue", "dep red", Some("deep-red")),
        ("60 rde", "rde", Some("red")),
        ("5 red + 60 royal blu leds", "royal blu", Some("royal-blue")),
        ("60 wihte leds", "wihte", Some("white")),
        ("60 turnip", "turnip", None),
        ("60 lime", "lime", None),
        ("60 uv-b", "uv-b", None),
        ("depred x 60", "depred", Some("deep-red")),
    ] {
        let error = tally(text).unwrap_err();
        assert_eq!(
            (error.found.as_str(), error.suggestion.as_deref()),
            (found, suggestion),
            "{text}: {error}"
        );
    }
    all_refused(&[
        ("60 lime", "lime", "lime has no row, so count it as 'unstated'"),
        ("60 uv-b", "uv-b", "only uv-a has"),
    ]);
}

#[test]
fn what_cannot_be_read_says_what_can() {
    all_refused(&[
        ("", "", "a count and a colour"),
        (" \n ", "", "a count and a colour"),
        ("-5 red", "-", "a count and a colour"),
        ("5 red - 3 blue", "-", "before the next group"),
        ("red", "red", "a count with it"),
        ("red 60", "red", "a count with it"),
        ("60 red blue", "blue", "one colour in a group"),
        ("60 red 3000K", "3000K", "one colour in a group"),
        ("10-12 red", "-", "before the next group"),
        ("60 %", "%", "before the next group"),
        ("x 60 red", "x", "a count and a colour"),
        ("60 x x red", "x", "a colour"),
        ("1e5 red", "e", "a colour such as"),
        ("60 \u{1b}[31mred", "\u{1b}", "before the next group"),
    ]);
}
