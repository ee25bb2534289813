//! Watts that the text holds against others, saves, or gives of a lamp that is replaced are not the light's.

mod reading_help;

use plainwatt::facts::{LampKind, LeftWhy};
use plainwatt::reading::read;
use reading_help::{claim, left};

/// The claim and the upper bound of the draw.
fn watts(text: &str) -> (Option<f64>, Option<f64>) {
    let read = read(text);
    (claim(&read), read.actual_w.map(|t| t.value.high.0))
}

#[test]
fn what_the_text_warns_of_is_no_claim() {
    let table = [
        ("Do not be fooled by 900W stickers: this lamp draws 95W", "900W", LeftWhy::Denied, 95.0),
        ("Not one of these cheap 800W lamps. 90W measured", "800W", LeftWhy::Denied, 90.0),
        ("Basta falsi 800W! Lampada 90W", "800W", LeftWhy::Denied, 90.0),
        ("Kein 800W-Märchen: LED-Panel 90W", "800W", LeftWhy::Denied, 90.0),
        ("Geen 800 watt, maar 90 watt kweeklamp", "800 watt", LeftWhy::Denied, 90.0),
        ("Pas de faux 800W : lampe 90W", "800W", LeftWhy::Denied, 90.0),
        ("Other sellers call it 800W. Grow light 90W", "800W", LeftWhy::OtherLight, 90.0),
        ("Our 90W bar beats any \"800W\" panel", "800W", LeftWhy::OtherLight, 90.0),
        ("LED bar 90W, was 80W in the first version", "80W", LeftWhy::OtherLight, 90.0),
    ];
    for (text, words, why, claim) in table {
        assert!(left(text).contains(&(words, why)), "{text}: {:?}", left(text));
        assert_eq!(watts(text).0, Some(claim), "{text}");
    }
    assert_eq!(watts("No fake watts: 90W true power, 200 LEDs").0, Some(90.0));
    assert_eq!(watts("150W grow light, not a fake, 140W measured"), (Some(150.0), Some(140.0)));
}

#[test]
fn a_saving_is_no_draw() {
    let table = [
        ("LED bar 200W: uses 90W less than an HPS 290W", "90W", 200.0),
        ("LED 200W, verbraucht 90 W weniger als eine HPS 290 W", "90 W", 200.0),
        ("Lampe 200W, consomme 90W de moins que la HPS 290W", "90W", 200.0),
    ];
    for (text, words, claim) in table {
        assert!(left(text).contains(&(words, LeftWhy::Rhetoric)), "{text}: {:?}", left(text));
        assert_eq!(watts(text), (Some(claim), None), "{text}");
        assert_eq!(read(text).replaces.map(|t| t.value.watts.0), Some(290.0), "{text}");
    }
    assert_eq!(watts("LED lamp 200W draws less than 190W"), (Some(200.0), Some(190.0)));
}

#[test]
fn a_draw_before_another_lamp_stays_the_lights() {
    for text in
        ["LEDライト 300W 実消費電力90W HPS150W相当", "LED light 300W, real power 90W HPS 150W equivalent"]
    {
        assert_eq!(watts(text), (Some(300.0), Some(90.0)), "{text}");
        assert_eq!(read(text).replaces.map(|t| t.value.watts.0), Some(150.0), "{text}");
    }
    assert_eq!(watts("Remplace 2 lampes HPS de 400 W : luminaire 500 W").0, Some(500.0));
}

#[test]
fn a_figure_may_name_the_light_whose_draw_follows() {
    for text in [
        "Power consumption of the 500W panel: about 95W",
        "The consumption of our 500W LED light is 95W",
        "Stromverbrauch der 500W Lampe: 95 W",
    ] {
        assert_eq!(watts(text), (Some(500.0), Some(95.0)), "{text}");
    }
}

#[test]
fn pieces_of_replaced_tubes_or_of_a_carton_are_no_pack() {
    for text in [
        "Odlingslampa 90W, ersätter 3 st 36W T8 lysrör",
        "Kweeklamp 60W, vervangt 3 stuks 58W TL-buizen",
        "Grow light 90W, sold in cartons of 8 pcs",
        "Grow light 90W, min. order 5 pcs",
        "UV strip 30W, 365nm 6 pcs",
    ] {
        assert_eq!(read(text).units_in_pack.map(|t| t.value), None, "{text}");
    }
    assert_eq!(read("45W LED grow light 2 pcs").units_in_pack.map(|t| t.value), Some(2));
}

#[test]
fn a_figure_that_was_used_or_repeats_the_claim_is_told_as_such() {
    let repeated = "Plant lamp 18W, pack of 6 (6 x 18W)";
    assert_eq!(left(repeated), [("18W", LeftWhy::Repeat)]);
    assert_eq!(read(repeated).advertised_w.map(|t| t.span.start), Some(11));
    assert_eq!(left("Grow light 900W, actual power draw: 181W @120V, 176W @240V"), []);
    assert_eq!(left("Grow light 240W with 2 drivers 120W each"), [("120W", LeftWhy::Part)]);
    assert_eq!(
        left("Shelf light 18 W, 60 W/m2, 4 W/ft"),
        [("60 W", LeftWhy::PerArea), ("4 W", LeftWhy::PerArea)]
    );
}

#[test]
fn the_answer_to_a_question_about_the_draw_is_the_draw() {
    let text = "Grow lamp. Q: How many watts? A: It is a 700W lamp. Q: And at the wall? A: About 120 watts.";
    assert_eq!(watts(text), (Some(700.0), Some(120.0)));
    assert_eq!(watts("700W LED lamp. Q: Draw? A: 120W at 120V."), (Some(700.0), Some(120.0)));
    assert_eq!(watts("700W LED lamp. Q: What does the fan draw? A: 12W."), (Some(700.0), None));
}

#[test]
fn a_lamp_is_compared_with_by_its_number_or_its_tube_and_the_own_old_model_is_none() {
    for (text, compared) in [
        ("36W shop light, brighter than a 2-lamp 64W T8 fixture", Some((64.0, Some(LampKind::Fluorescent)))),
        ("Anzuchtleiste 24 W, ersetzt 2 x 18 W T8-Röhren", Some((18.0, Some(LampKind::Fluorescent)))),
        ("Grow light 45W replaces our 600W HPS", Some((600.0, Some(LampKind::Hps)))),
        ("Kweeklamp 45 W, vervangt ons oude model van 60 W", None),
        ("Lampe horticole 45 W, remplace notre modèle de 60 W", None),
    ] {
        let read = read(text).replaces.map(|t| (t.value.watts.0, t.value.kind));
        assert_eq!(read, compared, "{text}");
    }
}

#[test]
fn an_earlier_model_of_the_same_maker_is_no_claim() {
    let table = [
        ("Grow bar 90W. Version 2; version 1 was 110W", 90.0),
        ("Grow bar 90W; the first version had 110W", 90.0),
        ("Grow bar 90W, its predecessor had 110W", 90.0),
        ("LED-Leiste 90W, der Vorgänger hatte 110W", 90.0),
        ("Grow bar, successor to our 110W bar. It draws 90W", 90.0),
        ("Grow bar Mk2, replaces our 110W Mk1. It draws 90W", 90.0),
        ("LED-Leiste, Nachfolger unserer 110W Leiste. Verbrauch 90W", 90.0),
    ];
    for (text, own) in table {
        assert!(left(text).contains(&("110W", LeftWhy::OtherLight)), "{text}: {:?}", left(text));
        assert_eq!(watts(text).0, Some(own), "{text}");
    }
    assert_eq!(watts("This model was 110W when we sold it first").0, Some(110.0));
    let lamp = read("LED bar 90W, replaces our 250W HPS lamp");
    assert_eq!((claim(&lamp), lamp.replaces.map(|t| t.value.watts.0)), (Some(90.0), Some(250.0)));
}

#[test]
fn a_question_about_our_own_light_names_its_watts() {
    let text = "Why is our 190W bar dearer than a \"900W\" one? Because it pulls 191W";
    assert_eq!(watts(text), (Some(190.0), Some(191.0)));
    assert!(read(text).replaces.is_none());
    assert!(left("Why is a 900W bar so cheap? Grow bar 190W").contains(&("900W", LeftWhy::Rhetoric)));
}

#[test]
fn what_other_sellers_multiply_is_no_array_of_the_light() {
    for text in [
        "Grow bar 90W with 180 diodes. Other sellers just multiply 200 chips by 5W",
        "Other brands count 200 x 5W and call it 1000W. Grow bar 90W with 180 diodes",
        "LED-Leiste 90W, 180 Dioden. Andere rechnen 200 x 5W = 1000W",
    ] {
        let read = read(text);
        assert_eq!((claim(&read), read.class.is_none()), (Some(90.0), true), "{text}");
        assert_eq!(read.diode_count.map(|c| c.value), Some(180), "{text}");
        assert!(left(text).contains(&("5W", LeftWhy::OtherLight)), "{text}");
    }
    assert_eq!(read("Sellers love it: grow bar 180 x 3W").diode_count.map(|c| c.value), Some(180));
}

#[test]
fn watts_that_a_reader_should_stop_burning_are_another_lamps() {
    for text in [
        "Stop burning 400 watts: your MH lamp has met the 150W LED bar",
        "Quit paying for 400 watts of sodium light, 150W LED bar",
        "Schluss mit 400 Watt HPS! LED-Leiste 150W",
    ] {
        let read = read(text);
        assert_eq!(claim(&read), Some(150.0), "{text}");
        assert_eq!(read.replaces.map(|t| t.value.watts.0), Some(400.0), "{text}");
    }
    assert_eq!(claim(&read("Stop light: 150W LED bar, no HPS lamp")), Some(150.0));
}
