//! Prints how long reading takes, per text and per 100 bytes. A measure, not a test: nothing is asserted.
//!
//! A processor learns by heart which way the branches of a few hundred texts go that it reads again and again, and then needs
//! little more than half of the time that a text costs which it has never seen. So the sets are told apart: those of thousands
//! of different texts are what a catalogue costs, the small one is what it costs at best.

use std::hint::black_box;
use std::time::Instant;

use plainwatt::reading::Reader;

fn main() {
    let labelled = fixture("listings.jsonl");
    let all = [&labelled[..], &fixture("listings-more.jsonl"), &fixture("listings-afresh.jsonl")].concat();
    let catalogue: Vec<String> = (1..=20_000).map(title).collect();
    measure("catalogue titles, each different", &catalogue, 8);
    measure("labelled listings, each different", &all, 20);
    measure("some of them, again and again", &labelled, 200);
}

/// An invented title of about 100 bytes.
fn title(n: u32) -> String {
    let class = [1, 3, 5, 10][(n % 4) as usize];
    let count = 20 + n * 7 % 300;
    let claim = count * class;
    format!(
        "{claim}W LED Grow Light ({count}x{class}W) Full Spectrum Panel for Indoor Plants, Veg and Bloom, No. {n}"
    )
}

/// The texts of a fixture.
fn fixture(name: &str) -> Vec<String> {
    let path = format!("{}/fixtures/{name}", env!("CARGO_MANIFEST_DIR"));
    let lines = std::fs::read_to_string(path).expect("the fixture is in the crate");
    let values = lines.lines().map(serde_json::from_str::<serde_json::Value>);
    values.filter_map(|value| value.expect("a line of JSON")["text"].as_str().map(str::to_owned)).collect()
}

/// Reads all texts `rounds` times, and prints the fastest round.
#[expect(clippy::print_stdout, reason = "the timing is what is wanted")]
fn measure(name: &str, texts: &[String], rounds: u32) {
    let bytes: usize = texts.iter().map(String::len).sum();
    let mut reader = Reader::new();
    let mut fastest = f64::INFINITY;
    for _ in 0..rounds {
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
