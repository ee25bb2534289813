//! What is read, or left, because else an honest maker would be accused or somebody not warned. All texts are invented.

use plainwatt::reading::read;

/// Sellers have to state standby, and a language may have a word for it that the vocabulary has not.
#[test]
fn watts_that_can_only_be_standby_are_no_draw_in_any_language() {
    for text in [
        "植物灯 240W 待机功率 0.5W",
        "植物育成ライト 240W 待機時消費電力 0.5W",
        "Фитолампа 240 Вт, потребляемая мощность в режиме ожидания 0,5 Вт",
        "Bitki lambası 240W, bekleme güç tüketimi 0.5W",
        "Lámpara 240W, consumo en espera 0,5 W",
        "Lampa 240W, pobór mocy w trybie czuwania 0,5 W",
        "Painel 240W, consumo em espera 0,5 W",
        "Växtlampa 240W, effektförbrukning i viloläge 0,5 W",
        "Kweeklamp 240W, verbruik in stand-by <1 W",
        "Pflanzenlampe 240W, Leistungsaufnahme im Bereitschaftsbetrieb 0,5 W",
    ] {
        let found = read(text);
        assert_eq!(found.advertised_w.map(|t| t.value.value), Some(240.0), "{text}");
        assert!(found.actual_w.is_none(), "{text}");
    }
    // A small light's own draw.
    let small = read("USB plant light 5W, actual power 1.8W");
    assert_eq!(small.actual_w.map(|t| t.value.high.0), Some(1.8));
}

/// A caution depends on it.
#[test]
fn ultraviolet_is_noticed_without_a_count() {
    for text in ["UVB supplemental bar 20W, 24 x 1W", "Grow bar 395nm 20W", "UV-A strip 30W", "UVC lamp 36W"]
    {
        assert!(read(text).ultraviolet, "{text}");
    }
    for text in ["LED grow light 100W 380-800nm", "Red 660nm bar 20W", "300W LED grow light"] {
        assert!(!read(text).ultraviolet, "{text}");
    }
}

/// A part's draw or a dimmed level's is not the light's.
#[test]
fn a_numbered_parts_or_dimmed_draw_is_not_the_lights() {
    for text in ["Grow light with four 100W (actual) boards, 400W", "Grow light 400W, 4 100W actual boards"] {
        assert!(read(text).actual_w.is_none(), "{text}");
    }
    let strips =
        read("Each of the six strips in this new fixture runs at 40 W; the whole lamp is rated 240 W");
    assert!(strips.actual_w.is_none());
    let dimmed = read("植物育成ライト 消費電力60W(50%時31W)");
    assert_eq!(dimmed.advertised_w.map(|t| t.value.value), Some(60.0));
    let dimmed = read("Фитолампа: потребление 120 Вт, при яркости 50% — 61 Вт");
    assert_eq!(dimmed.advertised_w.map(|t| t.value.value), Some(120.0));
}
