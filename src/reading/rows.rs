//! Tables of two columns, a row a line ("Consumption | 17.2 W") or a cell a line. The stroke or the line end between a label
//! and its value is read as a colon.

use super::builder::Seen;
use super::cues::Cues;
use super::figures::{Item, What};
use super::fold::Mark;
use super::phrase::POWER;
use super::roles::{Role, Unit};

/// The most words and signs of a label.
const LONGEST_LABEL: usize = 7;

/// Turns the stroke of each row into a colon, if the page has a table of two columns.
pub(super) fn label(text: &str, items: &mut [Item], mut seen: Seen) -> Seen {
    if seen.marks & Mark::Line.bit() != 0 {
        tables(text, items, &mut seen);
    }
    seen
}

/// The same on a page of several lines.
#[inline(never)]
fn tables(text: &str, items: &mut [Item], seen: &mut Seen) {
    if seen.cues.any(LABELS) {
        cells(items, seen);
    }
    if seen.marks & Mark::Pipe.bit() == 0 {
        return;
    }
    // A lone "Brand lamp | 300W" is a title, so a table has two rows at least.
    let mut last: Option<usize> = None;
    let mut start = 0;
    for end in 0..=items.len() {
        if items.get(end).is_some_and(|item| item.mark != Some(Mark::Line)) {
            continue;
        }
        if end > start {
            let row = row(text, items, start, end);
            if let (Some(row), Some(before)) = (row, last) {
                items[row] = colon(items[row]);
                items[before] = colon(items[before]);
                seen.marks |= Mark::Colon.bit();
            }
            // The title's stroke is a row's only where the next line is a row too.
            last = row.or(last.filter(|&at| below_first_line(items, at)));
        }
        start = end + 1;
    }
}

/// Turns the line ends between labels and their values into colons: "Power consumption", and "130 W" on the next line. Two such
/// pairs make a table.
fn cells(items: &mut [Item], seen: &mut Seen) {
    let mut last: Option<usize> = None;
    // Where the line starts, and the line before it.
    let (mut start, mut line_before) = (0, 0..0);
    for end in 0..=items.len() {
        if items.get(end).is_some_and(|item| item.mark != Some(Mark::Line)) {
            continue;
        }
        // Few lines are values, so that is asked first.
        if is_value(&items[start..end])
            && is_label(&items[line_before])
            && let Some(before) = last.replace(start - 1)
        {
            items[before] = colon(items[before]);
            items[start - 1] = colon(items[start - 1]);
            seen.marks |= Mark::Colon.bit();
        }
        line_before = start..end;
        start = end + 1;
    }
}

/// What a label on a line of its own speaks of.
const LABELS: Cues = POWER.and(Cues::of(&[Role::Quantity, Role::Diode, Role::Unit(Unit::Volt)]));

/// "Low power consumption" is praise and no label.
const PRAISE: Cues = Cues::of(&[Role::Dim, Role::Save]);

/// A few words that speak of power, volts or a number.
fn is_label(line: &[Item]) -> bool {
    !line.is_empty()
        && line.len() <= LONGEST_LABEL
        && line.iter().any(|item| item.cue.any(LABELS))
        && !line.iter().any(|item| item.cue.any(PRAISE))
        && line.iter().all(|item| {
            matches!(item.what, What::Word(_)) || matches!(item.mark, Some(Mark::Open | Mark::Close))
        })
}

/// A figure with at most a few words.
fn is_value(line: &[Item]) -> bool {
    let current = usize::from(line.first().is_some_and(|item| matches!(item.role, Role::Ac | Role::Dc)));
    line.get(current).is_some_and(Item::is_figure) && line.len() <= 3
}

/// Whether the row is below the first line, so that other lines may stand between it and the next row.
fn below_first_line(items: &[Item], at: usize) -> bool {
    items[..at].iter().any(|item| item.mark == Some(Mark::Line))
}

fn colon(item: Item) -> Item {
    Item::other(What::Mark(Mark::Colon), (item.start, item.end), item.spaced)
}

/// The stroke between the label and the value of the line from item `start` to `end`, if it is such a row. Strokes at the
/// edges, as some tables have them, do not count.
fn row(text: &str, items: &[Item], mut start: usize, mut end: usize) -> Option<usize> {
    let stroke = |item: &Item| {
        item.mark == Some(Mark::Pipe)
            && matches!(&text[item.start as usize..item.end as usize], "|" | "｜" | "¦")
    };
    if stroke(&items[start]) {
        start += 1;
    }
    if end > start && stroke(&items[end - 1]) {
        end -= 1;
    }
    let mut strokes = (start..end).filter(|&i| stroke(&items[i]));
    let at = strokes.next()?;
    let label = &items[start..at];
    let short = !label.is_empty() && label.len() <= LONGEST_LABEL;
    let fits = short
        && at + 1 < end
        && strokes.next().is_none()
        && label.iter().any(|item| matches!(item.what, What::Word(_)))
        && label.iter().all(|item| !matches!(item.mark, Some(Mark::Colon | Mark::Comma | Mark::Pipe)))
        && label[0].role != Role::Deny;
    fits.then_some(at)
}
