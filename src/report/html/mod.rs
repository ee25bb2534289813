//! A page to be published: one file that loads nothing, is read without a script, and is printed as it is.
//!
//! The page is made like a printed test report: what was found, the pictures, the table, each listing, the method. What is
//! said of all listings is counted over all of them in constant memory; of a long list only the two ends are shown, so that
//! the file stays under 300 kB, and the page says what it leaves out.
//!
//! All text is escaped by maud, and text of a listing goes through the guard of the terminal first, which makes visible what
//! would act unseen. The page's policy allows no source of anything but its own style and script, named by their hashes.

mod axis;
mod detail;
mod histogram;
mod kept;
mod method;
mod page;
mod row;
mod spread;
mod summary;
mod suppliers;
mod used;
mod wide;

pub use kept::{EACH_END, MOST, MOST_UNREADABLE};
pub use page::{SCRIPT, SCRIPT_HASH, STYLE, STYLE_HASH};

use maud::{Markup, html};

use self::kept::{Kept, Order};
use self::used::Used;
use super::table::shortened;
use super::worth::Measure;
use super::{Light, Run, Unreadable};
use crate::audit::{Audit, Histogram};
use crate::comparison::{Counts, sentence};

/// Up to so many listings the details of each are full, with a picture of its own scale; of more they are short. The table
/// has a picture for every listing.
const MOST_FULL: u64 = 60;

/// What the listings are sorted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sorted {
    /// As they came.
    Given,
    /// Draw over claim, the lowest first.
    Share,
    /// By what they cost, the lowest first.
    By(Measure),
}

/// What the page says of itself.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct About {
    /// The name of the file that was graded.
    pub source: Option<String>,
    /// The command that writes every row as CSV.
    pub command: Option<String>,
    /// The address of a file beside the page that holds every row.
    pub beside: Option<String>,
}

/// One listing as the page shows it.
#[derive(Debug)]
struct Entry {
    row: Markup,
    detail: detail::Detail,
}

/// Everything that a page shows, gathered listing by listing.
#[derive(Debug, Default)]
pub struct Report {
    counts: Counts,
    suppliers: Audit,
    shares: Histogram,
    used: Used,
    kept: Kept<Entry>,
    seen: u64,
    /// The sentence of the first listing's verdict, for a page of one.
    first: Option<String>,
    /// All that is known of a light is shown, not only what rests on its claim.
    whole: bool,
}

impl Report {
    /// A report of one light, with all of its working.
    #[must_use]
    pub fn of_one() -> Self {
        Self { whole: true, ..Self::default() }
    }

    /// Takes in a graded listing.
    pub fn light(&mut self, run: Run<'_>, light: Light<'_>, sorted: Sorted) {
        self.seen += 1;
        let assessment = light.assessment;
        if self.seen == 1 {
            self.first = Some(sentence(light.listing, assessment));
        }
        let (verdict, share) = (assessment.verdict, assessment.share);
        self.counts.count(verdict);
        self.shares.count(verdict, share);
        let supplier = super::audit::kept(light.listing.supplier.as_deref().unwrap_or("").trim());
        self.suppliers.count(supplier, verdict, share, || super::audit::page(run, light, supplier));
        self.used.see(run.model, light);
        let cost = match sorted {
            Sorted::By(measure) => measure.of(run, light).map(|cost| (measure, cost)),
            Sorted::Given | Sorted::Share => None,
        };
        let order = match sorted {
            Sorted::Given => Order::Given,
            Sorted::Share => Order::By(share),
            Sorted::By(_) => Order::By(cost.map(|(_, cost)| cost)),
        };
        let (place, whole) = (self.seen, self.whole);
        self.kept.take(place, order, verdict, share, || {
            let draws = axis::Draws::of(light);
            Entry {
                row: row::light(place, light, &draws, cost),
                detail: detail::light(run, light, &draws, place <= MOST_FULL, whole),
            }
        });
    }

    /// Takes in a row that could not be read.
    pub fn unreadable(&mut self, row: Unreadable<'_>) {
        self.seen += 1;
        self.counts.count_unreadable();
        let supplier = super::audit::kept(row.supplier.unwrap_or("").trim());
        self.suppliers.count_unreadable(supplier);
        let place = self.seen;
        self.kept.take_unreadable(place, || Entry {
            row: row::unreadable(place, row),
            detail: detail::unreadable(row),
        });
    }

    /// Takes in another part of the run, whose rows come after.
    pub fn add(&mut self, other: Self) {
        self.first = self.first.take().or(other.first);
        self.counts.add(&other.counts);
        self.suppliers.add(other.suppliers);
        self.shares.add(&other.shares);
        self.used.add(other.used);
        self.kept.add(other.kept, self.seen);
        self.seen += other.seen;
    }

    /// The page.
    #[must_use]
    pub fn page(self, run: Run<'_>, about: &About) -> String {
        page::page(self, run, about)
    }
}

/// Text of a listing as the page may hold it, before maud escapes its markup.
fn safe(text: &str) -> std::borrow::Cow<'_, str> {
    super::sanitise::terminal(text)
}

/// The most bytes of a name, as markup: enough for the 60 characters by which tables name a listing, were they Greek.
const MOST_NAME: usize = 160;

/// Text of a listing cut to so many bytes as markup. A quote takes six: so many characters would not bound the page.
fn cut(text: &str, most: usize) -> String {
    let safe = safe(text);
    let mut bytes = 0;
    let mut end = None;
    for (place, c) in safe.char_indices() {
        bytes += match c {
            '&' => "&amp;".len(),
            '<' | '>' => "&lt;".len(),
            '"' => "&quot;".len(),
            c => c.len_utf8(),
        };
        if bytes <= most - "...".len() {
            end = Some(place + c.len_utf8());
        } else if bytes > most {
            return format!("{}...", &safe[..end.unwrap_or(0)]);
        }
    }
    safe.into_owned()
}

/// The name of a listing or of a supplier.
fn name(text: &str) -> String {
    cut(&shortened(text), MOST_NAME)
}

/// A command to be copied, broken between its words alone.
fn command(command: &str) -> Markup {
    html! {
        code {
            @for (place, word) in command.split(' ').enumerate() {
                @if place > 0 { " " }
                span { (safe(word)) }
            }
        }
    }
}

fn percent(share: f64) -> String {
    format!("{:.0} %", share * 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_cut_to_its_bytes_as_markup() {
        assert_eq!(cut("plain", 10), "plain");
        assert_eq!(cut("ten bytes.", 10), "ten bytes.");
        assert_eq!(cut("eleven byte", 10), "eleven ...");
        for text in ["\"".repeat(90), "\u{1f331}".repeat(90), "<&>".repeat(90), "\u{202e}".repeat(90)] {
            let cut = cut(&text, 100);
            assert!((90..=100).contains(&html! { (cut) }.0.len()), "{cut}");
        }
    }
}
