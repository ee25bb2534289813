//! How sellers lay out and word what they state: tables, leaders, packs, draws and counts in less usual constructions. The
//! texts are invented.

mod reading_help;

use plainwatt::facts::Read;
use plainwatt::reading::read;
use reading_help::claim;

fn draw(read: &Read) -> Option<(f64, f64)> {
    read.actual_w.map(|t| (t.value.low.0, t.value.high.0))
}

fn count(read: &Read) -> Option<u32> {
    read.diode_count.map(|t| t.value)
}

fn class(read: &Read) -> Option<f64> {
    read.class.map(|t| t.value.watts.0)
}

fn units(read: &Read) -> Option<u32> {
    read.units_in_pack.map(|t| t.value)
}

#[test]
fn a_row_of_a_table_or_a_leader_labels_its_value() {
    for text in [
        "Plant lamp Orvane\nNominal | 1000 W\nConsumption | 130 W\nLED count | 100",
        "Plant lamp Orvane\n| Power | 1000 W |\n|---|---|\n| True wattage | 130 W |\n| LEDs | 100 |",
        "Lampe Orvane\nPuissance nominale | 1000 W\nConsommation | 130 W\nNombre de LED | 100",
        "Plant lamp Orvane\nRated power\n1000 W\nPower consumption\n130 W\nNumber of LEDs\n100 pcs",
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
        ("We tested it: 1000W label, 130W on the meter", 130.0, 130.0),
        ("Kill-a-watt: 130W at full, 1000W claim", 130.0, 130.0),
        ("Growlampe 1000W, echte Leistung lt. Messgerät 130 W", 130.0, 130.0),
        ("Grow lamp 1000W, power consumption abt. 0,13 KW", 130.0, 130.0),
    ] {
        assert_eq!(draw(&read(text)), Some((low, high)), "{text}");
    }
    assert_eq!(claim(&read("Off-grid plant lamp 48W, 12V")), Some(48.0));
    assert_eq!(claim(&read("Clip lamp, button on the cord: low 4W / mid 7W / high 11W")), Some(11.0));
}

#[test]
fn a_count_and_a_class_are_seen_in_less_usual_places() {
    for (text, diodes, watts) in [
        ("Grow lamp 600W 200pcs/3W for tents", Some(200), Some(3.0)),
        ("DOUBLE CHIPS!! 10W LED!! QTY 80!! draws 142W", Some(80), Some(10.0)),
        ("Grow lamp, four COBs rated 75W a piece, 262W from the wall", Some(4), Some(75.0)),
        ("Chip qty*watt: 96*3; total watt: 288W", Some(96), Some(3.0)),
        ("LED (pcs x W): 100 x 10, real power 180W", Some(100), Some(10.0)),
        ("Grow bulb, 6 pcs 3W LED chips 18W", Some(6), Some(3.0)),
        ("Grow lamp, 6 modules each 15 LED of 3W, totally 90 LED, 270W", Some(90), Some(3.0)),
        ("Lamp 1500W: COB x 5 (300W each)", Some(5), Some(300.0)),
        ("Lamp: LEDs (3W) 100, real power 130W", Some(100), Some(3.0)),
        ("Board 240W LEDs*768, dimmable", Some(768), None),
        ("Board 205W, 468 LM281B+ diodes", Some(468), None),
        ("Kweeklamp 45W\nAantal LED's | 100", Some(100), None),
        ("Lampe 45W, quatre-vingt LED", Some(80), None),
        ("LED strip, 4 bars, 10W each, 40W total", None, None),
        ("Grow light 600W, 60 pcs 10W lamp beads", Some(60), Some(10.0)),
        ("Clip lamp\nWattage 24 W\nLED bead 96\nTimer 6H", Some(96), None),
        ("Board: 320 pcs 3000K, 40 pcs deep red 660nm, 155W", None, None),
        ("Series Orvane\nModel | A | B\nLEDs | 504 | 1008\nPower | 200W | 400W", None, None),
        ("Twin head 10W LED, 40 beads, replaces a 100W bulb", Some(40), None),
        ("Grow lamp 600W, watts per LED: 3, LEDs: 200", Some(200), Some(3.0)),
        ("Grow lamp 600W: number of beads: 60; watts per bead: 10", Some(60), Some(10.0)),
        ("Board 110W: 192 W, 48 R, 6 FR, 2 UV, LEDs total 248", Some(248), None),
        // One colour of several, or the lights themselves, are not the light's diodes.
        ("Grow bar 48W, 96 LED white and 24 red", None, None),
        ("Barre 60W, 48 LED rouges + 32 LED bleues", None, None),
        ("Barra 60W, 96 ledes blancos y 24 rojos", None, None),
        ("Zwei LED-Leuchten, je 100 W", None, None),
        ("15 LED-Lampen, 45 W", None, None),
        ("24 stuks LED lampen 9W per stuk", None, None),
        ("Lamp 100W, 60 LEDs deep red 660nm, 40 LEDs blue 450nm", None, None),
        ("Lamp 100W with 60 LEDs (red) and 40 LEDs (blue)", None, None),
        ("Lampe 100 W, 60 LEDs in Rot, 40 in Blau", None, None),
        ("Lamp 100W\n60 LED red\n40 LED blue", None, None),
        ("Lamp 100W, 100 LEDs (80 red, 20 blue)", Some(100), None),
        ("Grow lamp 80W, 4 heads, full spectrum with 80 bulbs (LEDs)", Some(80), None),
        ("Grow lamp\nCOBs: 4\nRated power: 200W", Some(4), None),
        ("Grow lamp 800W | COB: 4 pcs, 200W each | plus 48 red LEDs", Some(4), Some(200.0)),
        ("Grow lamp 100W, ten 10W double chips, the old 3W single chips are gone", Some(10), Some(10.0)),
    ] {
        let read = read(text);
        assert_eq!((count(&read), class(&read)), (diodes, watts), "{text}");
    }
}

#[test]
fn a_pack_is_told_from_parts_and_each_lamp_from_all() {
    for (text, lights, watts, drawn) in [
        (
            "2x 1000W double chip grow lights, true wattage of one lamp 185W, both 370W",
            Some(2),
            1000.0,
            Some(185.0),
        ),
        ("TRIO PACK! three 100W panels, 300W all together, real 98W each", Some(3), 100.0, Some(98.0)),
        ("Grow panel, 1 pack = 2 pcs, 25W/pc", Some(2), 25.0, None),
        ("Bitki lambası 50W, 2'li paket", Some(2), 50.0, None),
        ("Lot de 2 lampes 45W, consommation par lampe 22W", Some(2), 45.0, Some(22.0)),
        (
            "45W grow light - 2 Pack\nNumber of items | 2\nAbout: each panel consumes 43W",
            Some(2),
            45.0,
            Some(43.0),
        ),
        ("Pair of 600W panels, real 110W per panel", Some(2), 600.0, Some(110.0)),
        ("2 grow lights 100W each, consumption per lamp 48W", Some(2), 100.0, Some(48.0)),
        ("6pcs 5W LED bulbs", Some(6), 5.0, None),
        ("2 pack 45W lamps, true draw 44W for both lamps", Some(2), 45.0, None),
        ("2 pack 45W lamps, power consumption 44W total", Some(2), 45.0, None),
        ("Grow spot 5W, 7pcs 1 Watt chips", None, 5.0, None),
        ("Two (2) 60W panels, 120W the pair, each panel draws 55W", Some(2), 60.0, Some(55.0)),
        ("3 stuks kweeklampen 12W, verbruik 11W per lamp", Some(3), 12.0, Some(11.0)),
        ("Half-dozen bulbs, 12 watt apiece", Some(6), 12.0, None),
        ("Kit 3 lâmpadas 20W cada, 60W as três juntas", Some(3), 20.0, None),
        (
            "2x Brand 200W grow lights, 190W real per unit, two 100W boards in each",
            Some(2),
            200.0,
            Some(190.0),
        ),
        ("Set of 3 45W panels, each with 96 LEDs, 43W real per panel", Some(3), 45.0, Some(43.0)),
        ("Saucers 300W, 168W draw each, sold as a pair with hooks", Some(2), 300.0, Some(168.0)),
        ("Grow lamp 25W, qty 12, shipped by the case", Some(12), 25.0, None),
        ("Tube grow light 18W, selected: 3 pcs", Some(3), 18.0, None),
        ("Buy 1 Get 1: clip light 20W, 2 lights", Some(2), 20.0, None),
        ("18W tube x 4, 96 diodes each", Some(4), 18.0, None),
        ("Desk lamp 20W with two lights, 10W each", None, 20.0, None),
        ("Plant lamp 25W, sold singly (photo shows a set of 4)", None, 25.0, None),
        ("Reef light 14W, 10 pcs 660nm + 4 pcs 450nm", None, 14.0, None),
        ("1800W triple chip lamp (120 LEDs of 15W, 3 pc 5W crystal per bead)", None, 1800.0, None),
    ] {
        let read = read(text);
        assert_eq!(
            (units(&read), claim(&read), draw(&read).map(|d| d.1)),
            (lights, Some(watts), drawn),
            "{text}"
        );
    }
}

#[test]
fn figures_that_are_no_claim_of_this_light_stay_out() {
    for (text, watts) in [
        ("Grow lamp: draws 412 W with the knob at 100 % and 206 W at 50 %", Some(412.0)),
        ("Grow lamp 200W at 50 % off", Some(200.0)),
        ("Plant lamp, size 30 L x 22 W x 4 H cm", None),
        ("Low power consumption plant lamp 45W", Some(45.0)),
        ("LED rack light kit: 4 bars on one adapter 12V 3A, kit total 28W (7W per bar)", Some(28.0)),
        ("Used grow lamp, label 320W, my meter: 331 W full, 68 W at min, pick up only", Some(320.0)),
    ] {
        assert_eq!(claim(&read(text)), watts, "{text}");
    }
    assert_eq!(claim(&read("Lamp\nWatts (actual): 150\nWatts (claimed): 1000")), Some(1000.0));
    let sizes = read("Small | 100W\nMedium | 200W\nTall | 400W");
    assert!(claim(&sizes).is_none() && draw(&sizes).is_none(), "{sizes:?}");
    let own = read("450W grow lamp, 30% less heat than our V-6 330W");
    assert!(own.replaces.is_none() && claim(&own) == Some(450.0), "{own:?}");
    assert!(draw(&read("450W grow lamp, uses less than our old 600W")).is_none());
}

/// The colours of a text, in its order.
fn colours(text: &str) -> Vec<(&'static str, u32)> {
    read(text).colours.iter().map(|c| (c.value.word.key(), c.value.count)).collect()
}

#[test]
fn colours_are_seen_in_lists_of_every_order() {
    for (text, expected) in [
        (
            "Board 200W (3000K 352 / 5000K 308 / 660nm 40)",
            vec![("warm_white", 352), ("cool_white", 308), ("deep_red", 40)],
        ),
        ("Lamp 21W, red 64 + blue 16 + white 80 beads", vec![("red", 64), ("blue", 16), ("white", 80)]),
        ("Light 600W + 84pcs 0.5W red assist LED", vec![("red", 84)]),
        (
            "Aqua lamp 58W (W 126, R 42, G 21, B 20)",
            vec![("white", 126), ("red", 42), ("green", 21), ("blue", 20)],
        ),
        (
            "Aqua lamp 58W (W:126 R:42 G:21 B:20)",
            vec![("white", 126), ("red", 42), ("green", 21), ("blue", 20)],
        ),
        ("Aqua lamp 58W, R 42 G 21 B 20", vec![("red", 42), ("green", 21), ("blue", 20)]),
        ("Lamp 45W 60R/20B/10G/10W", vec![("red", 60), ("blue", 20), ("green", 10), ("white", 10)]),
        ("Anzuchtlampe 22W (60 warmweiß, 20 rot)", vec![("warm_white", 60), ("red", 20)]),
        (
            "Lamp 150W: eighty-four red, twenty-one blue and three pink LEDs",
            vec![("red", 84), ("blue", 21), ("pink", 3)],
        ),
        ("Panel 45W R:B 8:1, weight 300 g", vec![]),
        ("Board 120W: 240 x 0.5W white LEDs", vec![("white", 240)]),
        ("Panel 45W, 225 LEDs red, blue, white", vec![]),
        ("Panel 45W, 225 LEDs: R165+B60", vec![("red", 165), ("blue", 60)]),
        ("Saucer 50W, 50 LEDs, R40 B10 by piece", vec![("red", 40), ("blue", 10)]),
        ("Panel 45W, 225 LEDs, replaces R80/B100", vec![]),
        ("Light: 1,056 in total, of which 48 are deep red", vec![("deep_red", 48)]),
    ] {
        assert_eq!(colours(text), expected, "{text}");
    }
    assert_eq!(claim(&read("Lamp 45W 60R/20B/10G/10W")), Some(45.0));
    for text in [
        "Lamp 100W 20pcs 3W red + 10pcs 3W blue LEDs",
        "Panel 100W: 3000K 80pcs, 5000K 80pcs, 660nm 12pcs",
        "Lamp 27W, B: 20pcs R: 60pcs",
        "Lamp 21W, red 64 + blue 16 + white 80 beads",
    ] {
        assert_eq!(count(&read(text)), None, "{text}");
    }
}

#[test]
fn currents_and_volts_are_seen_in_less_usual_print() {
    for (text, volts, amps) in [
        ("Board 630W, 277-400 V AC, current 2.3-1.6 A", (277.0, 400.0), Some(2.3)),
        ("Board 720W, 715W @240V~ 2.98A, at 120V~ 6.0A", (120.0, 240.0), Some(6.0)),
        ("Wattage=480; Volt=100-277; Amp(120V)=4.1", (100.0, 277.0), Some(4.1)),
        ("Light 200W 120V 1.7A, timer outlet 15A", (120.0, 120.0), Some(1.7)),
        ("Board 240W, AC input 100-to-277 volts", (100.0, 277.0), None),
        ("Lamp 35W 230V, FCC ID 2AX300WQ", (230.0, 230.0), None),
        ("How many LEDs? 256. Volts? 120-277. Amps? 0.9.", (120.0, 277.0), Some(0.9)),
        ("Lamp 35W 230V, FCC ID: 2AX9-C1500W", (230.0, 230.0), None),
    ] {
        let read = read(text);
        let seen = read.volts.map(|t| (t.value.0.value, t.value.1.value));
        assert_eq!((seen, read.amps.map(|t| t.value.value)), (Some(volts), amps), "{text}");
    }
}

#[test]
fn photons_are_seen_in_less_usual_print() {
    for (text, flux, efficacy) in [
        ("L-100 | W 100 | A 0.9 | µmol/s 270", Some(270.0), None),
        ("L-100 | W 100 | µmol/m²/s 900", None, None),
        ("wattage=315; umol/J=2.5", None, Some(2.5)),
        ("Lamp 315W, 850 umol total output per second, 2.7 umol per watt-second", Some(850.0), Some(2.7)),
    ] {
        let read = read(text);
        assert_eq!(
            (read.ppf.map(|t| t.value.value), read.ppe.map(|t| t.value.value)),
            (flux, efficacy),
            "{text}"
        );
    }
}

#[test]
fn a_row_about_items_or_another_device_is_none_about_diodes_or_the_draw() {
    for (text, lights) in [
        ("45W lamp\nItem count | 2\nColour | red", Some(2)),
        ("45W lamp\nPack size: 4", Some(4)),
        ("45W lamp\nQty: 2", None),
        ("45W lamp\nItem size: 60", None),
        ("45W lamp\nItem model number | 1000\nColour | red", None),
    ] {
        let read = read(text);
        assert_eq!((units(&read), count(&read)), (lights, None), "{text}");
    }
    assert_eq!(draw(&read("Lamp 240W\nFan power: 5W")), None);
    assert_eq!(draw(&read("Grow lamp 600W draws approx 240 at the wall")), Some((240.0, 240.0)));
}

#[test]
fn watts_in_front_of_their_number_are_read() {
    let table = [
        ("Plant lamp. Nominal watts 600, measured watts 140", Some(600.0), Some(140.0)),
        ("Lamp, 500 LEDs; power in watts 240; driver efficiency 94 %", Some(240.0), None),
        ("Pflanzenlampe, Leistung in Watt 240, Verbrauch in Watt 231", Some(240.0), Some(231.0)),
        ("Grow light 75W, 72W used at 100%", Some(75.0), Some(72.0)),
        ("Lamp 75W used at home", Some(75.0), None),
    ];
    for (text, watts, draw) in table {
        let found = read(text);
        assert_eq!(found.advertised_w.map(|t| t.value.value), watts, "{text}");
        assert_eq!(found.actual_w.map(|t| t.value.high.0), draw, "{text}");
    }
}
