//! Whose a figure is: one diode's, a part's, what feeds the light, or of no thing at all but of papers.

use plainwatt::facts::Read;
use plainwatt::reading::read;
use plainwatt::units::Watts;

fn claim(read: &Read) -> Option<f64> {
    read.advertised_w.map(|t| t.value.value)
}

#[test]
fn letters_of_mathematics_are_letters() {
    assert_eq!(claim(&read("𝐆𝐫𝐨𝐰 lamp 𝟒𝟓𝟎 𝐖, 𝑎𝑐𝑡𝑢𝑎𝑙 210 𝘞")), Some(450.0));
}

#[test]
fn colours_are_counted_past_a_name_or_a_type() {
    let table = [
        ("Grow light 100W, pink full spectrum: 12pcs, red: 40pcs", vec![12, 40]),
        ("Board 240W, 4000K LM301H+ x 512 and 32 pcs 660nm red", vec![32, 512]),
        ("Bar 320W, 900 diodes, 36 of which red", vec![36]),
        ("Panel 20W red blue 300 SMD LEDs (240R/60B)", vec![60, 240]),
    ];
    for (text, counts) in table {
        let mut found: Vec<u32> = read(text).colours.iter().map(|c| c.value.count).collect();
        found.sort_unstable();
        assert_eq!(found, counts, "{text}");
    }
}
