//! Prints how long reading takes, per text and per 100 bytes. A measure, not a test: nothing is asserted.

use std::hint::black_box;
use std::time::Instant;

use plainwatt::reading::Reader;

fn main() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/fixtures/listings.jsonl");
    let fixture: Vec<String> = std::fs::read_to_string(path)
        .expect("the fixture is in the crate")
        .lines()
        .map(|line| serde_json::from_str::<serde_json::Value>(line).expect("a line of JSON"))
        .filter_map(|value| value["text"].as_str().map(str::to_owned))
        .collect();
    let catalogue: Vec<String> = (1..=1000u32)
        .map(|n| {
            let class = [1, 3, 5, 10][(n % 4) as usize];
            let count = 20 + n * 7 % 300;
            format!(
                "{}W LED Grow Light ({count}x{class}W) Full Spectrum Panel for Indoor Plants, Veg and Bloom",
                count * class
            )
        })
        .collect();
    measure("labelled listings", &fixture, 40);
    measure("catalogue titles", &catalogue, 200);
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
    let (texts, bytes) = (texts.len() as f64, bytes as f64);
    println!(
        "{name}: {:.0} ns a text of {:.0} bytes, {:.0} ns per 100 bytes",
        fastest * 1e9 / texts,
        bytes / texts,
        fastest * 1e11 / bytes
    );
}
