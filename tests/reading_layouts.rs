//! How sellers lay out and word what they state: tables, leaders, packs, draws and counts in less usual constructions. The
//! texts are invented.

use plainwatt::facts::Read;
use plainwatt::reading::read;

fn claim(read: &Read) -> Option<f64> {
    read.advertised_w.map(|t| t.value.value)
}

fn draw(read: &Read) -> Option<(f64, f64)> {
    read.actual_w.map(|t| (t.value.low.0, t.value.high.0))
}

fn count(read: &Read) -> Option<u32> {
    read.diode_count.map(|t| t.value)
}

#[test]
fn a_row_of_a_table_or_a_leader_labels_its_value() {
    for text in [
        "Plant lamp Orvane\nNominal | 1000 W\nConsumption | 130 W\nLED count | 100",
        "Plant lamp Orvane\n| Power | 1000 W |\n|---|---|\n| True wattage | 130 W |\n| LEDs | 100 |",
        "Lampe Orvane\nPuissance nominale | 1000 W\nConsommation | 130 W\nNombre de LED | 100",
        "Plant lamp Orvane\nPower ........ 1000 W\nMains draw @100 % ...... 130 W\nDraw @50 % .... 66 W\nLEDs .... 100",
    ] {
        let read = read(text);
        assert_eq!(
            (claim(&read), draw(&read), count(&read)),
            (Some(1000.0), Some((130.0, 130.0)), Some(100)),
            "{text}"
        );
    }
    let title = read("Power lamp Orvane | 300W\nColour | black");
    assert_eq!((claim(&title), draw(&title)), (Some(300.0), None));
}

#[test]
fn a_draw_is_seen_in_less_usual_words() {
    for (text, low, high) in [
        ("Grow lamp 1000W\nOn-mode power: 130 W\nStandby power: 0.4 W", 130.0, 130.0),
        ("Grow lamp 1000W, pulls 130 from the wall", 130.0, 130.0),
        ("Grow lamp 1000W, only takes 130 watts from the wall socket", 130.0, 130.0),
        ("Lampe horticole 1000W, ne consomme que 130 W", 130.0, 130.0),
        ("Lámpara 1000W, consumo 130W a 220V y 137W a 110V", 130.0, 137.0),
        ("Growlampe 1000W, echte Leistung lt. Messgerät 130 W", 130.0, 130.0),
        ("Grow lamp 1000W, power consumption abt. 0,13 KW", 130.0, 130.0),
    ] {
        assert_eq!(draw(&read(text)), Some((low, high)), "{text}");
    }
    assert_eq!(claim(&read("Off-grid plant lamp 48W, 12V")), Some(48.0));
    assert_eq!(claim(&read("Clip lamp, button on the cord: low 4W / mid 7W / high 11W")), Some(11.0));
}
