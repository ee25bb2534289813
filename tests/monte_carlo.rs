//! The first-order uncertainty (JCGM 100) against a Monte Carlo (JCGM 101) written apart from it.
//!
//! What first order leaves out is that the driver's lower bound of efficiency itself rises with the LED power, up to 51 W
//! (Regulation (EU) 2019/2020, Annex II Table 3, until it meets 0.85). So:
//!
//! - with that bound held fixed, as the equations say, the two agree everywhere above 15 W: standard uncertainty within 3 %,
//!   half the 95 % interval within 4 %;
//! - with the bound following the power they agree as well from 51 W up. Between 15 and 51 W first order is never too narrow
//!   by more than that, and up to 6 % too wide: a light that draws more has a better driver, which first order does not see.
//!   It errs on the side of not convicting;
//! - below 15 W it is off by more, and to the wrong side: how far is measured and printed, and is why a conviction there
//!   needs the bounds as well.

#![expect(clippy::print_stdout, reason = "what was measured is shown with --nocapture")]

mod chance;
mod simulated;

use chance::Chance;
use plainwatt::draw::{Draw, Model, Part, PointDraw};
use plainwatt::facts::{Colour, Count, Package, StatedClass};
use plainwatt::reference::Table;
use plainwatt::units::Watts;
use simulated::{Group, Light, Tables};

const TRIALS: u32 = 100_000;

/// A light by its groups: class, colour, count, doubt about the count.
type Groups = &'static [(&'static str, &'static str, u32, u32)];

const FROM_51_W: [(&str, Groups); 10] = [
    (
        "100 x 3 W, five colours",
        &[
            ("3W", "deep-red", 60, 0),
            ("3W", "royal-blue", 20, 0),
            ("3W", "white", 10, 0),
            ("3W", "uv-a", 6, 0),
            ("3W", "far-red", 4, 0),
        ],
    ),
    ("90 x 1 W, colours not given", &[("1W", "unstated", 90, 0)]),
    ("36 x 3 W deep red", &[("3W", "deep-red", 36, 0)]),
    ("50 x 5 W red and blue", &[("5W", "red", 40, 0), ("5W", "blue", 10, 0)]),
    ("600 x 0.2 W white", &[("0.2W", "white", 600, 0)]),
    ("684 x 0.5 W, mostly white", &[("0.5W", "white", 620, 0), ("0.5W", "deep-red", 64, 0)]),
    (
        "600 x 10 W, seven colours",
        &[
            ("10W", "deep-red", 240, 0),
            ("10W", "red", 120, 0),
            ("10W", "royal-blue", 90, 0),
            ("10W", "blue", 60, 0),
            ("10W", "white", 50, 0),
            ("10W", "far-red", 20, 0),
            ("10W", "uv-a", 20, 0),
        ],
    ),
    ("225 x 3030 1 W, 12 x 3 W deep red", &[("3030-1W", "white", 225, 0), ("3W", "deep-red", 12, 0)]),
    ("1 W and 3 W dice of one batch", &[("1W", "deep-red", 40, 0), ("3W", "deep-red", 40, 0)]),
    ("counted on a picture", &[("3W", "red", 60, 6), ("3W", "blue", 20, 3), ("3W", "infrared", 4, 1)]),
];

const FROM_15_TO_51_W: [(&str, Groups); 6] = [
    ("12 x 3 W deep red", &[("3W", "deep-red", 12, 0)]),
    ("20 x 1 W white", &[("1W", "white", 20, 0)]),
    ("19 x 1 W, colours not given", &[("1W", "unstated", 19, 0)]),
    ("90 x 0.2 W white", &[("0.2W", "white", 90, 0)]),
    ("7 x 3 W green", &[("3W", "green", 7, 0)]),
    ("1 COB of 50 W, pink", &[("cob-50W", "pink", 1, 0)]),
];

const BELOW_15_W: [(&str, Groups); 6] = [
    ("6 x 3 W white", &[("3W", "white", 6, 0)]),
    ("5 + 3 x 1 W deep red and royal blue", &[("1W", "deep-red", 5, 0), ("1W", "royal-blue", 3, 0)]),
    ("3 x 1 W white", &[("1W", "white", 3, 0)]),
    ("1 x 3 W deep red", &[("3W", "deep-red", 1, 0)]),
    ("2 x 0.5 W white", &[("0.5W", "white", 2, 0)]),
    ("2 x 0.2 W white", &[("0.2W", "white", 2, 0)]),
];

fn first_order(model: &Model, groups: &[Group]) -> PointDraw {
    let part = |group: &Group| {
        let package = group.class.name.split_once('-').and_then(|(word, _)| Package::from_word(word));
        let stated = StatedClass { watts: Watts(group.class.nominal_w), package };
        Part {
            class: model.table().find(&stated).expect("a class with a row"),
            colour: Colour::from_name(&group.colour).expect("a colour of the table"),
            count: Count { number: group.count, half_width: (group.doubt > 0).then_some(group.doubt) },
        }
    };
    let parts: Vec<Part> = groups.iter().map(part).collect();
    Draw::of(model, &parts, None).expect("inside the curves").full
}

/// What the simulated lights showed.
struct Simulated {
    wall: f64,
    u_led: f64,
    u_wall: f64,
    low: f64,
    high: f64,
    /// Share of them beyond 1.645 standard uncertainties over the estimate: 5 % if first order were all there is.
    beyond: f64,
}

fn simulate(light: &mut Light, ours: &PointDraw, bound_at: Option<f64>, seed: u64) -> Simulated {
    let mut chance = Chance::seeded(seed);
    let (led, mut wall): (Vec<f64>, Vec<f64>) =
        (0..TRIALS).map(|_| light.true_draw(&mut chance, bound_at)).unzip();
    let spread = |values: &[f64]| {
        let mean = values.iter().sum::<f64>() / f64::from(TRIALS);
        (values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / f64::from(TRIALS - 1)).sqrt()
    };
    let (u_led, u_wall) = (spread(&led), spread(&wall));
    wall.sort_unstable_by(f64::total_cmp);
    let edge = ours.wall.value.0 + 1.645 * ours.wall.u.0;
    let over = u32::try_from(wall.len() - wall.partition_point(|w| *w <= edge)).expect("at most all");
    Simulated {
        wall: wall.iter().sum::<f64>() / f64::from(TRIALS),
        u_led,
        u_wall,
        low: wall[wall.len() / 40],
        high: wall[wall.len() - 1 - wall.len() / 40],
        beyond: f64::from(over) / f64::from(TRIALS),
    }
}

/// First order over Monte Carlo, each as a ratio.
struct Compared {
    led: f64,
    wall: f64,
    u_led: f64,
    u_wall: f64,
    half_width: f64,
    beyond: f64,
}

/// How the simulation draws the driver's lower bound of efficiency.
#[derive(Clone, Copy, PartialEq)]
enum Bound {
    /// At the true LED power: what the light would have.
    Follows,
    /// At the estimated LED power: what the equations say.
    Held,
}

fn compare(name: &str, groups: Groups, bound: Bound, seed: u64) -> Compared {
    let (model, tables) = (Model::new(Table::built_in()).expect("fits its curves"), Tables::read());
    let groups = groups.iter().map(|&(class, colour, count, doubt)| {
        let class = tables.classes.iter().find(|c| c.name == class).expect("a class with a row");
        tables.group(class, colour, count, doubt)
    });
    let mut light = Light::of(groups.collect());
    let ours = first_order(&model, &light.groups);
    let (low, high) = ours.wall_interval();
    let bound_at = (bound == Bound::Held).then_some(ours.led.value.0);
    let truth = simulate(&mut light, &ours, bound_at, seed);
    let compared = Compared {
        led: ours.led.value.0,
        wall: ours.wall.value.0 / truth.wall,
        u_led: ours.led.u.0 / truth.u_led,
        u_wall: ours.wall.u.0 / truth.u_wall,
        half_width: (high - low).0 / (truth.high - truth.low),
        beyond: truth.beyond,
    };
    println!(
        "{name:36} bound {}: LED {:7.1} W, wall {:7.1} to {:7.1}, simulated {:7.1} to {:7.1}; u(LED) {:+5.1} %, u(wall) \
         {:+5.1} %, interval {:+5.1} %; {:4.1} % beyond",
        if bound == Bound::Held { "held   " } else { "follows" },
        compared.led,
        low.0,
        high.0,
        truth.low,
        truth.high,
        (compared.u_led - 1.0) * 100.0,
        (compared.u_wall - 1.0) * 100.0,
        (compared.half_width - 1.0) * 100.0,
        compared.beyond * 100.0
    );
    compared
}

fn agree(name: &str, compared: &Compared) {
    // The mean over the driver's efficiency is a little more than the draw at its mean, which is what is quoted.
    assert!((0.99..=1.001).contains(&compared.wall), "{name}: wall draw {}", compared.wall);
    assert!((compared.u_led - 1.0).abs() <= 0.03, "{name}: u(LED power) {}", compared.u_led);
    assert!((compared.u_wall - 1.0).abs() <= 0.03, "{name}: u(wall draw) {}", compared.u_wall);
    assert!((compared.half_width - 1.0).abs() <= 0.04, "{name}: interval {}", compared.half_width);
}

#[test]
fn from_51_w_first_order_agrees_with_monte_carlo() {
    for ((name, groups), seed) in FROM_51_W.into_iter().zip(1..) {
        let follows = compare(name, groups, Bound::Follows, seed);
        assert!(follows.led > 51.4, "{name}: {} W of LED power", follows.led);
        agree(name, &follows);
        assert!(follows.beyond < 0.06, "{name}: {} beyond", follows.beyond);
    }
}

#[test]
fn from_15_to_51_w_first_order_is_the_wider_and_only_through_the_drivers_bound() {
    for ((name, groups), seed) in FROM_15_TO_51_W.into_iter().zip(51..) {
        let follows = compare(name, groups, Bound::Follows, seed);
        assert!((15.0..51.4).contains(&follows.led), "{name}: {} W of LED power", follows.led);
        agree(name, &compare(name, groups, Bound::Held, seed));
        assert!((follows.u_led - 1.0).abs() <= 0.03, "{name}: u(LED power) {}", follows.u_led);
        assert!((0.97..=1.06).contains(&follows.u_wall), "{name}: u(wall draw) {}", follows.u_wall);
        assert!((0.96..=1.06).contains(&follows.half_width), "{name}: interval {}", follows.half_width);
        assert!(follows.beyond < 0.06, "{name}: {} beyond", follows.beyond);
    }
}

/// The LED power's uncertainty is still right. The wall draw's is not, and the simulated lights lie higher than the interval,
/// because one over a wide range of efficiencies is skewed: at 1 W more than a tenth of honest lights would lie beyond the
/// limit that convicts one in twenty.
#[test]
fn below_15_w_first_order_alone_would_convict_too_many() {
    let mut most_beyond = 0.0_f64;
    for ((name, groups), seed) in BELOW_15_W.into_iter().zip(101..) {
        let follows = compare(name, groups, Bound::Follows, seed);
        assert!(follows.led < 15.0, "{name}: {} W of LED power", follows.led);
        assert!((follows.u_led - 1.0).abs() <= 0.03, "{name}: u(LED power) {}", follows.u_led);
        most_beyond = most_beyond.max(follows.beyond);
    }
    assert!(most_beyond > 0.10, "{most_beyond}: then the rule for small lights has no reason");
}
