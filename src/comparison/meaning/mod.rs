//! What each word of a result means, how it is decided, what it rests on and what it does not know.
//!
//! The texts are data, one entry a word and one file a group; showing them is for the reports. A word that serves twice
//! (`measured` is a kind of evidence and a reason's code) has one entry that says so.

mod bases;
mod claims;
mod counts;
mod evidence;
mod figures;
mod notes;
mod verdicts;

/// One word of a result, explained.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Meaning {
    /// The word, as results print it.
    pub word: &'static str,
    /// What it says, in a line.
    pub gist: &'static str,
    /// What it says to a reader.
    pub means: &'static str,
    /// The rule, its formula in words, and the settings that it depends on.
    pub decided_by: &'static str,
    /// Standards, sources and figures behind the rule; what is from memory says so.
    pub rests_on: &'static str,
    /// What the word does not know.
    pub cannot_see: &'static str,
    /// A command whose output has the word in it.
    pub example: &'static str,
}

/// Words of one kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Group {
    /// What they have in common.
    pub title: &'static str,
    /// The words.
    pub words: &'static [Meaning],
}

/// Every word, by kind.
pub const GROUPS: [Group; 7] = [
    Group { title: "Verdicts", words: verdicts::VERDICTS },
    Group { title: "Bases: how the claimed figure seems to have been made", words: bases::BASES },
    Group { title: "Evidence: what a verdict rests on", words: evidence::EVIDENCE },
    Group { title: "Reasons: how the listing was read", words: notes::NOTES },
    Group { title: "Reasons: what the diodes show", words: counts::COUNTS },
    Group { title: "Reasons: readings, other numbers, and what is missing", words: figures::FIGURES },
    Group { title: "Reasons: claims of light, lamps and amperes", words: claims::CLAIMS },
];

/// How alike two words have to be (1 is equal) for one to be taken for a slip of the other.
const NEAR: f64 = 0.6;

/// The meaning of a word, in any case, with blanks or underscores for its hyphens.
#[must_use]
pub fn find(word: &str) -> Option<&'static Meaning> {
    let word = simple(word);
    all().find(|meaning| meaning.word == word)
}

/// The word that was probably meant: the most alike, or the only one that has the given word as a part.
#[must_use]
pub fn nearest(word: &str) -> Option<&'static str> {
    let word = simple(word);
    let alike = all()
        .map(|meaning| (strsim::normalized_damerau_levenshtein(&word, meaning.word), meaning.word))
        .filter(|(likeness, _)| *likeness >= NEAR)
        .max_by(|a, b| a.0.total_cmp(&b.0));
    if let Some((_, word)) = alike {
        return Some(word);
    }
    let mut with_it =
        all().map(|meaning| meaning.word).filter(|known| known.split('-').any(|part| part == word));
    with_it.next().filter(|_| with_it.next().is_none())
}

/// Every entry.
pub fn all() -> impl Iterator<Item = &'static Meaning> {
    GROUPS.iter().flat_map(|group| group.words)
}

fn simple(word: &str) -> String {
    word.split([' ', '_', '-', '\t'])
        .filter(|part| !part.is_empty())
        .map(str::to_lowercase)
        .collect::<Vec<_>>()
        .join("-")
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::comparison::{Basis, Evidence, FigureReason, Reason, Verdict};

    /// The word of a row that could not be read belongs to the reports; `tests/meaning.rs` holds the two together.
    const UNREADABLE: &str = "unreadable";

    #[test]
    fn every_word_of_a_result_is_explained_once_and_nothing_else_is() {
        let mut words = BTreeSet::from([UNREADABLE]);
        words.extend(Verdict::ALL.map(Verdict::word));
        words.extend(Basis::ALL.map(Basis::word));
        words.extend(Evidence::ALL.map(Evidence::word));
        words.extend(Reason::CODES);
        words.extend(FigureReason::CODES);
        assert_eq!(all().map(|m| m.word).collect::<BTreeSet<_>>(), words);
        assert_eq!(all().count(), words.len(), "a word stands twice");
    }

    #[test]
    fn every_entry_says_all_it_should_in_plain_sentences() {
        for meaning in all() {
            let word = meaning.word;
            for text in [meaning.means, meaning.decided_by, meaning.rests_on, meaning.cannot_see] {
                assert!(text.ends_with('.') && text.len() > 15, "{word}: {text}");
                assert!(!text.contains("  ") && text.is_ascii(), "{word}: {text}");
            }
            assert!(meaning.gist.len() <= 52 && !meaning.gist.ends_with('.'), "{word}: {}", meaning.gist);
            // With its indentation a command fits 80 columns: it is copied whole, so it is never broken.
            assert!(meaning.example.len() <= 76, "{word}: {}", meaning.example);
            assert!(meaning.example.starts_with("plainwatt "), "{word}: {}", meaning.example);
        }
    }

    #[test]
    fn a_word_is_found_however_it_is_typed() {
        for typed in ["out-of-reach", "Out of reach", " OUT_OF_REACH "] {
            assert_eq!(find(typed).map(|m| m.word), Some("out-of-reach"), "{typed}");
        }
        assert_eq!(find("reach"), None);
        assert_eq!(find(""), None);
    }

    #[test]
    fn the_nearest_word_is_one_that_may_have_been_meant() {
        for (typed, meant) in [
            ("overstate", Some("overstated")),
            ("bourne out", Some("borne-out")),
            ("own words", Some("own-words")),
            ("brightness", Some("full-brightness")),
            ("banana", None),
            // Two reasons end in it, so neither is the likelier.
            ("ceiling", None),
            ("", None),
        ] {
            assert_eq!(nearest(typed), meant, "{typed}");
        }
    }
}
