//! One record -> one graded row, in whichever form; what `grade` does again and again.

use super::assessing::{Assessing, Graded, Texts};
use super::rejects;
use crate::cli::Sort;
use crate::comparison::Counts;
use crate::intake::Columns;
use crate::report::table::Line;
use crate::report::worth::{Measure, Money};
use crate::report::{Run, csv, html, json, markdown};
use crate::stream::{Merge, Output, Record};

/// A form that is written row by row.
#[derive(Debug, Clone, Copy)]
pub(super) enum Rows {
    Csv(csv::Format),
    Json,
    Markdown,
}

/// Where a graded row goes.
#[derive(Debug, Clone, Copy)]
pub(super) enum Form {
    /// As text, at once.
    Rows(Rows),
    /// Kept as a line of the table.
    Lines(Keep),
    /// Kept as text with its sort key.
    Sorted(Rows, Keep),
    /// Gathered for a page.
    Page(Option<Sort>),
}

impl Form {
    /// Whether its rows say more of a light than its watts.
    fn has_figures(self) -> bool {
        match self {
            Self::Rows(rows) | Self::Sorted(rows, _) => match rows {
                Rows::Csv(format) => format.wide,
                Rows::Json => true,
                Rows::Markdown => false,
            },
            Self::Lines(_) => false,
            Self::Page(_) => true,
        }
    }

    /// What the rows are sorted by.
    fn by(self) -> Option<Sort> {
        match self {
            Self::Rows(_) => None,
            Self::Page(by) => by,
            Self::Lines(keep) | Self::Sorted(_, keep) => keep.by,
        }
    }
}

/// The cost that is sorted by; none for the share, which every form shows anyway.
pub(super) const fn measure(by: Sort) -> Option<Measure> {
    match by {
        Sort::Share => None,
        Sort::PricePerWatt => Some(Measure::PerWatt),
        Sort::PricePerFlux => Some(Measure::PerFlux),
        Sort::DayCost => Some(Measure::Day),
        Sort::MonthCost => Some(Measure::Month),
        Sort::YearCost => Some(Measure::Year),
    }
}

const fn sorted(by: Option<Sort>) -> html::Sorted {
    match by {
        None => html::Sorted::Given,
        Some(by) => match measure(by) {
            None => html::Sorted::Share,
            Some(measure) => html::Sorted::By(measure),
        },
    }
}

/// How many rows are kept in memory for what cannot be written row by row.
#[derive(Debug, Clone, Copy)]
pub(super) struct Keep {
    /// At most so many.
    pub(super) most: usize,
    /// Those that come first by that, sorted so; else the first.
    pub(super) by: Option<Sort>,
}

/// A row that was kept.
#[derive(Debug, Clone)]
pub(super) struct Kept<T> {
    rank: (u8, f64),
    place: u64,
    pub(super) row: T,
}

/// What one worker has: its counts, and what had to be kept.
#[derive(Debug, Default)]
pub(super) struct Worker {
    pub(super) summary: Counts,
    pub(super) lines: Vec<Kept<Line>>,
    pub(super) texts: Vec<Kept<Vec<u8>>>,
    pub(super) page: html::Report,
    /// Whether any row had what rows are sorted by.
    pub(super) ranked: bool,
    seen: u64,
    /// Set aside while a row is read; boxed, so that this moves a pointer.
    texts_read: Option<Box<Texts>>,
}

impl Merge for Worker {
    fn merge(&mut self, other: Self) {
        self.summary.add(&other.summary);
        self.lines.extend(other.lines);
        self.texts.extend(other.texts);
        self.page.add(other.page);
        self.ranked |= other.ranked;
        self.seen += other.seen;
    }
}

/// Everything that does not change from row to row.
#[derive(Clone, Copy)]
pub(super) struct Grading<'a> {
    pub(super) run: Run<'a>,
    pub(super) columns: &'a Columns,
    pub(super) form: Form,
    /// What was asked about money.
    pub(super) money: &'a Money,
    /// Whether titles and descriptions are read.
    pub(super) titles: bool,
    /// The sheet that the records are rows of, if they are.
    pub(super) sheet: Option<&'a str>,
    /// Whether rejects are wanted.
    pub(super) rejects: bool,
    /// Rejects without the guard against spreadsheet formulas.
    pub(super) raw: bool,
}

impl Grading<'_> {
    /// Grades a record.
    pub(super) fn row(&self, worker: &mut Worker, record: &Record<'_>, out: &mut Output) {
        let Self { run, columns, titles, sheet, .. } = *self;
        let figures = self.form.has_figures();
        let assessing = Assessing { run, columns, titles, sheet, figures, money: Some(self.money) };
        let mut texts = worker.texts_read.take().unwrap_or_default();
        assessing.row(&mut texts, record, |graded| {
            let rank = match &graded {
                Graded::Light(light) => {
                    worker.summary.count(light.assessment.verdict);
                    // By share the worst come first: the verdicts that convict have the lowest. What has none cannot be ranked.
                    let key = match self.form.by().map(measure) {
                        Some(Some(measure)) => measure.of(run, *light),
                        Some(None) | None => light.assessment.share,
                    };
                    worker.ranked |= key.is_some();
                    key.map_or((1, 0.0), |key| (0, key))
                }
                Graded::Unreadable(row) => {
                    worker.summary.count_unreadable();
                    if self.rejects {
                        rejects::write(&mut out.rejects, row.fault, record.raw(), self.raw);
                    }
                    (2, 0.0)
                }
            };
            self.keep(worker, rank, &graded, out);
        });
        worker.texts_read = Some(texts);
        worker.seen += 1;
    }

    fn keep(&self, worker: &mut Worker, rank: (u8, f64), graded: &Graded<'_>, out: &mut Output) {
        let place = worker.seen;
        match self.form {
            Form::Rows(rows) => self.write(rows, graded, &mut out.rows),
            Form::Page(by) => match graded {
                Graded::Light(light) => worker.page.light(self.run, *light, sorted(by)),
                Graded::Unreadable(row) => worker.page.unreadable(*row),
            },
            Form::Sorted(rows, keep) => {
                let mut row = Vec::new();
                self.write(rows, graded, &mut row);
                push(&mut worker.texts, Kept { rank, place, row }, keep);
            }
            Form::Lines(keep) => {
                if keep.by.is_none() && worker.lines.len() >= keep.most {
                    return;
                }
                let row = match (graded, keep.by.and_then(measure)) {
                    (Graded::Light(light), Some(measure)) => {
                        Line::light(*light).with(measure, &self.money.currency, measure.of(self.run, *light))
                    }
                    (Graded::Light(light), None) => Line::light(*light),
                    (Graded::Unreadable(row), _) => Line::unreadable(*row),
                };
                push(&mut worker.lines, Kept { rank, place, row }, keep);
            }
        }
    }

    fn write(&self, rows: Rows, graded: &Graded<'_>, out: &mut Vec<u8>) {
        match (rows, graded) {
            (Rows::Csv(format), Graded::Light(light)) => format.light(out, self.run, *light),
            (Rows::Csv(format), Graded::Unreadable(row)) => format.unreadable(out, *row),
            (Rows::Json, Graded::Light(light)) => json::light(out, self.run, *light),
            (Rows::Json, Graded::Unreadable(row)) => json::unreadable(out, self.run, *row),
            (Rows::Markdown, Graded::Light(light)) => markdown::row(out, *light),
            (Rows::Markdown, Graded::Unreadable(row)) => markdown::unreadable(out, *row),
        }
    }
}

/// Keeps at most `keep.most`, for a moment twice as many: sorting now and then is cheaper than on every row.
fn push<T>(kept: &mut Vec<Kept<T>>, row: Kept<T>, keep: Keep) {
    kept.push(row);
    if kept.len() >= keep.most.saturating_mul(2) {
        cut(kept, keep);
    }
}

/// Sorts where asked, and drops what is over the most.
pub(super) fn cut<T>(kept: &mut Vec<Kept<T>>, keep: Keep) {
    if keep.by.is_some() {
        kept.sort_by(|a, b| {
            (a.rank.0.cmp(&b.rank.0)).then(a.rank.1.total_cmp(&b.rank.1)).then(a.place.cmp(&b.place))
        });
    }
    kept.truncate(keep.most);
}
