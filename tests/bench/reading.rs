//! Prints how long reading takes, per text and per 100 bytes. A measure, not a test: nothing is asserted.
//!
//! A processor learns by heart which way the branches of a few hundred texts go that it reads in the same order again and
//! again, and then needs little more than half of the time that a new text costs. So no text comes twice in a round here: a
//! catalogue has some hundred wordings, each with other numbers every time. What texts cost of which each is worded in a way of
//! its own is told beside it.

#[path = "catalogue_help/chance.rs"]
mod chance;

use std::hint::black_box;
use std::time::Instant;

use chance::Chance;
use plainwatt::reading::Reader;

/// How many texts a catalogue has.
const MANY: usize = 20_000;

fn main() {
    let labelled = fixture("listings.jsonl");
    let catalogue: Vec<String> = (1..=MANY).map(title).collect();
    let mut chance = Chance::new();
    let varied: Vec<String> = (0..MANY)
        .map(|_| {
            let wording = index(&mut chance, labelled.len());
            other_numbers(&labelled[wording], &mut chance)
        })
        .collect();
    let all = [&labelled[..], &fixture("listings-more.jsonl"), &fixture("listings-afresh.jsonl")].concat();
    measure("catalogue titles, one wording", &catalogue);
    measure(&format!("labelled listings, {} wordings, other numbers", labelled.len()), &varied);
    measure("labelled listings, each worded otherwise", &all);
}

/// An invented title of about 100 bytes.
fn title(n: usize) -> String {
    let class = [1, 3, 5, 10][n % 4];
    let count = 20 + n * 7 % 300;
    let claim = count * class;
    format!(
        "{claim}W LED Grow Light ({count}x{class}W) Full Spectrum Panel for Indoor Plants, Veg and Bloom, No. {n}"
    )
}

/// The text with every other digit changed; zeros stay, and so no number starts with one that did not.
fn other_numbers(text: &str, chance: &mut Chance) -> String {
    text.chars()
        .map(|c| match c {
            '1'..='9' if chance.below(2) == 0 => char::from(b"123456789"[index(chance, 9)]),
            _ => c,
        })
        .collect()
}

/// An index below `bound`.
fn index(chance: &mut Chance, bound: usize) -> usize {
    usize::try_from(chance.below(bound as u64)).unwrap_or(0)
}

/// The texts of a fixture.
fn fixture(name: &str) -> Vec<String> {
    let path = format!("{}/fixtures/{name}", env!("CARGO_MANIFEST_DIR"));
    let lines = std::fs::read_to_string(path).expect("the fixture is in the crate");
    let values = lines.lines().map(serde_json::from_str::<serde_json::Value>);
    values.filter_map(|value| value.expect("a line of JSON")["text"].as_str().map(str::to_owned)).collect()
}

/// Reads all texts a few times, and prints the fastest round.
#[expect(clippy::print_stdout, reason = "the timing is what is wanted")]
fn measure(name: &str, texts: &[String]) {
    let bytes: usize = texts.iter().map(String::len).sum();
    let mut reader = Reader::new();
    let mut fastest = f64::INFINITY;
    for _ in 0..8 {
        let start = Instant::now();
        for text in texts {
            black_box(reader.read(black_box(text)));
        }
        fastest = fastest.min(start.elapsed().as_secs_f64());
    }
    #[expect(clippy::cast_precision_loss, reason = "counts of a measurement")]
    let (count, bytes) = (texts.len() as f64, bytes as f64);
    println!(
        "{name}: {} texts of {:.0} bytes, {:.0} ns each, {:.0} ns per 100 bytes",
        texts.len(),
        bytes / count,
        fastest * 1e9 / count,
        fastest * 1e11 / bytes
    );
}
