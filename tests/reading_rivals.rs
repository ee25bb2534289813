//! Watts that the text holds against others, saves, or gives of a lamp that is replaced are not the light's.

use plainwatt::facts::LeftWhy;
use plainwatt::reading::read;

/// The words that were left, with their reasons.
fn left(text: &str) -> Vec<(&str, LeftWhy)> {
    read(text).left.iter().map(|l| (&text[l.span.start..l.span.end], l.why)).collect()
}

/// The claim and the upper bound of the draw.
fn watts(text: &str) -> (Option<f64>, Option<f64>) {
    let read = read(text);
    (read.advertised_w.map(|t| t.value.value), read.actual_w.map(|t| t.value.high.0))
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
