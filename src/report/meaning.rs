//! The words of a result, explained, for a terminal.

use std::fmt::Write as _;

use super::style::Style;
use crate::comparison::meaning::{Group, Meaning};

/// Under this many columns a gist goes below its word instead of beside it.
const BESIDE_FROM: usize = 60;

/// One word, under its five headings, `width` columns wide at most; the command is never broken, so that it can be copied.
#[must_use]
pub fn entry(meaning: &Meaning, width: usize, style: Style) -> String {
    let mut text = format!("{}: {}\n", style.strong(meaning.word), meaning.gist);
    for (heading, words) in [
        ("Means", meaning.means),
        ("Decided by", meaning.decided_by),
        ("Rests on", meaning.rests_on),
        ("Cannot see", meaning.cannot_see),
    ] {
        let _ = writeln!(text, "\n{}", style.strong(heading));
        paragraph(&mut text, words, "  ", "  ", width);
    }
    let _ = writeln!(text, "\n{}\n  {}", style.strong("Try"), meaning.example);
    if meaning.example.contains(" fixtures/") {
        paragraph(&mut text, "(in the folder of plainwatt's source, which has that file)", "  ", "  ", width);
    }
    text
}

/// Every word with its gist, by kind.
#[must_use]
pub fn list(groups: &[Group], width: usize, style: Style) -> String {
    let longest = groups.iter().flat_map(|g| g.words).map(|m| m.word.len()).max().unwrap_or(0);
    let mut text = String::new();
    for group in groups {
        for line in textwrap::wrap(group.title, width) {
            let _ = writeln!(text, "{}", style.strong(&line));
        }
        for meaning in group.words {
            if width < BESIDE_FROM {
                let _ = writeln!(text, "  {}", meaning.word);
                paragraph(&mut text, meaning.gist, "    ", "    ", width);
            } else {
                let word = format!("  {:<longest$}  ", meaning.word);
                paragraph(&mut text, meaning.gist, &word, &" ".repeat(longest + 4), width);
            }
        }
        text.push('\n');
    }
    paragraph(&mut text, "'plainwatt meaning WORD' says more of one of them.", "", "", width);
    text
}

fn paragraph(text: &mut String, words: &str, first: &str, rest: &str, width: usize) {
    // Words such as --drive-ma and 2019/2020 are looked up as they stand, so they are not broken at a hyphen.
    let options = textwrap::Options::new(width)
        .initial_indent(first)
        .subsequent_indent(rest)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    text.push_str(&textwrap::fill(words, options));
    text.push('\n');
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::comparison::meaning::{GROUPS, all};

    fn widest(text: &str) -> usize {
        text.lines().map(str::len).max().unwrap_or(0)
    }

    #[test]
    fn everything_fits_eighty_columns() {
        assert!(widest(&list(&GROUPS, 80, Style::PLAIN)) <= 80);
        for meaning in all() {
            assert!(widest(&entry(meaning, 80, Style::PLAIN)) <= 80, "{}", meaning.word);
        }
    }

    #[test]
    fn on_a_narrow_terminal_all_but_the_command_fits() {
        assert!(widest(&list(&GROUPS, 40, Style::PLAIN)) <= 40);
        for meaning in all() {
            let text = entry(meaning, 40, Style::PLAIN).replace(meaning.example, "");
            let below_the_head = text.split_once('\n').map_or("", |(_, rest)| rest);
            assert!(widest(below_the_head) <= 40, "{}", meaning.word);
        }
    }

    #[test]
    fn an_entry_has_its_headings_in_order_and_its_command_whole() {
        for meaning in all() {
            let text = entry(meaning, 80, Style::PLAIN);
            let headings: Vec<&str> =
                text.lines().skip(1).filter(|l| !l.is_empty() && !l.starts_with(' ')).collect();
            assert_eq!(
                headings,
                ["Means", "Decided by", "Rests on", "Cannot see", "Try"],
                "{}",
                meaning.word
            );
            assert!(text.contains(&format!("\nTry\n  {}\n", meaning.example)), "{}", meaning.word);
        }
    }
}
