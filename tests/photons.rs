//! Photons from a count against published photon energies, package figures, spectra and measured fixtures.

mod chance;
mod published;

use chance::Chance;
use plainwatt::draw::{Draw, Model, Part};
use plainwatt::facts::{Colour, Count, StatedClass};
use plainwatt::photons::{Band, LIGHT_HIGH, LIGHT_LOW, LIMIT_PAR, PerJoule, Photons, per_joule};
use plainwatt::reference::{Die, Table, driver};

fn light(model: &Model, class: f64, diodes: &[(Colour, u32)]) -> Draw {
    let class = model.table().find(&StatedClass::plain(class)).expect("a class of the table");
    let part = |(colour, n): &(Colour, u32)| Part { class, colour: *colour, count: Count::exact(*n) };
    let parts: Vec<Part> = diodes.iter().map(part).collect();
    Draw::of(model, &parts, None).expect("inside the curves")
}

fn model() -> Model {
    Model::new(Table::built_in()).expect("the built-in table fits its curves")
}

/// SI Brochure, 9th edition: lambda / (`N_A` h c).
#[test]
fn a_wavelength_has_the_photons_per_joule_of_the_exact_constants() {
    for row in published::rows("umolJ_") {
        let nm: f64 = row.id.trim_start_matches("umolJ_").parse().expect("a wavelength");
        row.agrees(PerJoule::at(nm).0);
    }
    assert!((LIMIT_PAR.0 - PerJoule::at(700.0).0).abs() < 1e-12);
}

/// CIE illuminants LED-B1 to LED-B5 (CIE 15:2018) as colour-science 0.4.7 tabulates them.
#[test]
fn white_spans_the_cie_led_illuminants() {
    let table = Table::built_in();
    for die in Die::ALL {
        let white = per_joule(table.diode(die, Colour::White).0);
        published::row("PPF_LED-B5").agrees(white.low.0);
        published::row("PPF_LED-B1").agrees(white.high.0);
        for row in published::rows("PPF_LED-B") {
            let per_joule = row.values()[0];
            assert!(white.low.0 - 1e-5 <= per_joule && per_joule <= white.high.0 + 1e-5, "{}", row.id);
        }
    }
}

/// Kusuma, Pattison & Bugbee 2020, Horticulture Research 7:56: umol per joule into the best package of each colour.
#[test]
fn the_best_packages_are_those_published_in_2020() {
    let table = Table::built_in();
    let best = |colour| {
        let row = table.diode(Die::Power, colour).0;
        row.eff_high * PerJoule::at(row.peak_nm.expect("a colour of one wavelength")).0
    };
    published::row("kusuma_660").agrees(best(Colour::DeepRed));
    published::row("kusuma_450").agrees(best(Colour::RoyalBlue));
    published::row("kusuma_730").agrees(best(Colour::FarRed));
    assert!((best(Colour::Green) - 1.9).abs() < 0.05, "green 1.9: {}", best(Colour::Green));
    let cool = published::row("PPF_LED-B5").values()[0];
    let warm = published::row("PPF_LED-B1").values()[0];
    for die in Die::ALL {
        let white = table.diode(die, Colour::White).0;
        assert!((white.eff_high * cool - 2.9).abs() < 0.05, "cool white 2.9: {}", white.eff_high * cool);
        let pink = table.diode(die, Colour::Pink).0;
        assert!((pink.eff_high * warm - 2.6).abs() < 0.05, "as warm white 2.6: {}", pink.eff_high * warm);
    }
    let model = model();
    let white = Photons::of(&model, &light(&model, 3.0, &[(Colour::White, 100)]));
    assert!((white.best_packages.0 - 2.9).abs() < 0.05, "{}", white.best_packages);
}

/// Kusuma et al. 2020: lights reach at most 3.4 (white with red) and 4.1 (blue with red) umol/J.
#[test]
fn an_estimate_stays_within_the_published_limits_of_lights() {
    let model = model();
    for (diodes, limit) in [
        (vec![(Colour::White, 60), (Colour::DeepRed, 40)], 3.4),
        (vec![(Colour::RoyalBlue, 20), (Colour::DeepRed, 80)], 4.1),
    ] {
        let photons = Photons::of(&model, &light(&model, 3.0, &diodes));
        assert!(photons.efficacy.value.0 < limit, "{}", photons.efficacy.value);
        assert!(photons.best_packages.0 < photons.limit.0);
        // The published limit is of light with no loss but the best driver and packages: ours is within a tenth of it.
        let best = photons.best_packages.0 * LIGHT_HIGH;
        assert!((best / limit - 1.0).abs() < 0.12, "{best} against {limit}");
    }
}

/// Sellers call 660 nm red too, so what deep red may reach speaks against no light of "red" diodes.
#[test]
fn plain_red_may_be_as_good_as_deep_red() {
    let model = model();
    for class in [3.0, 0.2] {
        let of = |colour| Photons::of(&model, &light(&model, class, &[(colour, 1000)]));
        let (red, deep) = (of(Colour::Red), of(Colour::DeepRed));
        assert!(red.best_packages >= deep.best_packages, "{} and {}", red.best_packages, deep.best_packages);
        assert!(red.limit >= deep.limit, "{} and {}", red.limit, deep.limit);
        let (red, deep) = (red.efficacy_interval(), deep.efficacy_interval());
        assert!(red.0 < deep.0 && red.1 > deep.1 * 0.95, "{red:?} and {deep:?}");
    }
}

/// ANSI/ASABE S640: PPF is 400-700 nm; far red is 700-800 nm.
#[test]
fn far_red_infrared_and_ultraviolet_are_not_in_the_ppf() {
    let model = model();
    let plain = Photons::of(&model, &light(&model, 3.0, &[(Colour::DeepRed, 100)]));
    assert_eq!((plain.far_red, plain.beyond), (None, None), "absent is not zero");
    let more = [(Colour::DeepRed, 100), (Colour::FarRed, 20), (Colour::Infrared, 5), (Colour::UvA, 5)];
    let more = Photons::of(&model, &light(&model, 3.0, &more));
    assert!((more.par.value / plain.par.value - 1.0).abs() < 0.01, "the same red diodes, the same PPF");
    assert!(more.efficacy.value.0 < plain.efficacy.value.0, "more watts for it");
    assert!(more.far_red.is_some_and(|f| f.value.0 > 0.0) && more.beyond.is_some_and(|f| f.value.0 > 0.0));
    let only = Photons::of(&model, &light(&model, 3.0, &[(Colour::FarRed, 50)]));
    assert!(only.par.value.0.abs() < 1e-12 && only.efficacy.value.0.abs() < 1e-12);
    for colour in Colour::ALL {
        if let Some(nm) = Table::built_in().diode(Die::Power, colour).0.peak_nm {
            let band = if (400.0..700.0).contains(&nm) {
                Band::Photosynthetic
            } else if (700.0..800.0).contains(&nm) {
                Band::FarRed
            } else {
                Band::Beyond
            };
            assert_eq!(Band::of(colour), band, "{} at {nm} nm", colour.name());
        }
    }
}

/// JCGM 101:2008: the same model with every input drawn at random has the mean and the spread that the law of propagation
/// gives, within what a first-order law leaves out.
#[test]
fn the_uncertainty_is_that_of_a_monte_carlo_run() {
    const RUNS: u32 = 40_000;
    let model = model();
    let counts = [(Colour::DeepRed, 60), (Colour::RoyalBlue, 20), (Colour::White, 20)];
    let draw = light(&model, 3.0, &counts);
    let photons = Photons::of(&model, &draw);
    let mut chance = Chance::seeded(2020);
    let (mut sum, mut squares) = (0.0, 0.0);
    for _ in 0..RUNS {
        let led = 1.0 + chance.normal() * (draw.full.led.u / draw.full.led.value);
        // One maker for all packages: one place between poor and best for every colour, and one for the spectra.
        let (place, hue) = (chance.between(0.0, 1.0), chance.between(0.0, 1.0));
        let kept = chance.between(LIGHT_LOW / draw.full.efficiency.low, LIGHT_HIGH / driver::ETA_HIGH);
        let mut flux = 0.0;
        for part in &draw.parts {
            let row = model.table().diode(Die::Power, part.colour).0;
            let spectrum = per_joule(row);
            let watts = draw.package_at_full(&model, part).watts.0 * f64::from(part.count.number);
            flux += watts
                * (row.eff_low + (row.eff_high - row.eff_low) * place)
                * (spectrum.low.0 + (spectrum.high.0 - spectrum.low.0) * hue);
        }
        let par = flux * led * kept;
        sum += par;
        squares += par * par;
    }
    let mean = sum / f64::from(RUNS);
    let sd = (squares / f64::from(RUNS) - mean * mean).sqrt();
    assert!((photons.par.value.0 / mean - 1.0).abs() < 0.01, "{} and {mean}", photons.par.value);
    assert!((photons.par.u.0 / sd - 1.0).abs() < 0.05, "{} and {sd}", photons.par.u);
}
