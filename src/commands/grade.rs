//! `grade`: a table of many listings.

use std::io::Write;
use std::path::Path;

use anyhow::{Context as _, Result, bail};
use clap::ValueEnum as _;

use super::apart::Files;
use super::grading::{Form, Grading, Keep, Rows, Worker, cut, measure};
use super::input::{self, shown};
use super::output::{Sink, TerminalGuard, say};
use super::{Ended, paging, rejects, setting_up, terminal};
use crate::cli::{Format, Grade, Sort, When};
use crate::report::worth::{Measure, Money};
use crate::report::{self, csv, markdown, table};
use crate::stream::{self, Sinks, StreamError};

/// The most lines of a table: it has to be held whole to be laid out, and nobody reads more.
const MOST_LINES: usize = 1_000;

/// The most rows that are sorted: they have to be held whole, some 200 bytes each.
const MOST_SORTED: usize = 100_000;

pub(super) fn run(grade: &Grade, colour: When) -> Result<Ended> {
    if grade.no_header && grade.catalogue.header.is_none() {
        bail!("--no-header needs --header \"listing,claim_w,...\" to name the columns of the input");
    }
    apart(grade)?;
    let money = costs(grade)?;
    let settings = setting_up::settings(&grade.strictness)?;
    let model = setting_up::model(grade.strictness.reference.as_deref())?;
    let input::Opened { reader, columns, sheet, watched } = input::catalogue(&grade.catalogue)?;
    let form = form(grade);
    let mut out = Sink::open(grade.output.as_deref())?;
    paging::refuse_terminal(grade.format, &out)?;
    let mut rejects = rejects::open(grade.rejects.as_deref(), sheet.as_deref())?;
    let stop = super::output::stop_on_interrupt();
    let run = report::Run { model: &model, settings: &settings };
    let grading = Grading {
        run,
        columns: &columns,
        form,
        money: &money,
        titles: !grade.catalogue.no_titles,
        sheet: sheet.as_deref(),
        rejects: rejects.is_some(),
        raw: grade.raw,
    };
    let outcome = {
        let flush = out.is_standard();
        let mut progress = super::output::Progress::over(&grade.catalogue.file, out.is_terminal());
        let mut guarded = TerminalGuard::new(&mut out);
        guarded.write_all(header(grade).as_bytes()).map_err(StreamError::Write)?;
        let mut rejects = rejects.as_mut().map(TerminalGuard::new);
        let outcome = stream::run(
            reader,
            stream::Run {
                threads: threads(grade, form),
                waits: watched.waits(),
                flush,
                stop: Some(stop),
                progress: Some(&mut |done| progress.show(done)),
            },
            |worker: &mut Worker, record, output| grading.row(worker, record, output),
            Sinks { rows: &mut guarded, rejects: rejects.as_mut().map(|r| r as &mut dyn Write) },
        );
        progress.finish();
        match outcome {
            Err(StreamError::Read(error)) => {
                return Err(error).with_context(|| {
                    format!("{} could not be read to its end", shown(&grade.catalogue.file))
                });
            }
            outcome => outcome?,
        }
    };
    if outcome.stopped {
        let unchanged = grade
            .output
            .as_deref()
            .filter(|_| !out.is_standard())
            .map(|p| format!("; {} is unchanged", p.display()));
        bail!("stopped after {} listings{}", outcome.done.rows, unchanged.unwrap_or_default());
    }
    watched.check(&grade.catalogue.file)?;
    let mut worker = outcome.summary;
    match form {
        Form::Rows(_) => {}
        Form::Page(_) => {
            let page = std::mem::take(&mut worker.page).page(run, &paging::about(grade));
            out.write_all(page.as_bytes()).map_err(StreamError::Write)?;
        }
        Form::Sorted(_, keep) => {
            let total = worker.summary.total();
            cut(&mut worker.texts, keep);
            let mut guarded = TerminalGuard::new(&mut out);
            for kept in &worker.texts {
                guarded.write_all(&kept.row).map_err(StreamError::Write)?;
            }
            left_out(worker.texts.len(), total);
        }
        Form::Lines(keep) => {
            cut(&mut worker.lines, keep);
            let lines: Vec<_> = worker.lines.into_iter().map(|kept| kept.row).collect();
            let style = if out.is_standard() { terminal::style(colour) } else { report::style::Style::PLAIN };
            let text = table::table(&lines, terminal::width(), style);
            out.write_all(text.as_bytes()).map_err(StreamError::Write)?;
            left_out(lines.len(), worker.summary.total());
        }
    }
    unsorted(grade, worker.ranked, worker.summary.total());
    out.commit()?;
    if let Some(rejects) = rejects {
        rejects.commit()?;
    }
    for notice in &outcome.notices {
        say(&notice.to_string());
    }
    say(&report::summary::line(&worker.summary));
    Ok(Ended::Ran)
}

/// Refuses outputs that would break each other or the input.
fn apart(grade: &Grade) -> Result<()> {
    let rows = grade.output.as_deref().unwrap_or(Path::new("-"));
    let mut files =
        Files { read: vec![("the input", &grade.catalogue.file)], written: vec![("--output", rows)] };
    files.read.extend(grade.strictness.reference.as_deref().map(|path| ("--reference", path)));
    files.written.extend(grade.rejects.as_deref().map(|path| ("--rejects", path)));
    files.apart()
}

/// As it is typed.
fn name(by: Sort) -> String {
    by.to_possible_value().map(|value| value.get_name().to_owned()).unwrap_or_default()
}

/// What was asked about money; running costs cannot be sorted by without a tariff.
fn costs(grade: &Grade) -> Result<Money> {
    let money = setting_up::money(&grade.money)?;
    match grade.sort {
        Some(by) if money.tariff.is_none() && measure(by).is_some_and(Measure::needs_tariff) => bail!(
            "--sort {}: found no tariff, accepted: --tariff with the price of a kWh, such as 0.31",
            name(by)
        ),
        _ => Ok(money),
    }
}

/// Says so where no listing has what rows are sorted by.
fn unsorted(grade: &Grade, ranked: bool, total: u64) {
    let Some(by) = grade.sort.filter(|_| !ranked && total > 0) else { return };
    let lacks = match measure(by) {
        None => "a claim with a draw",
        Some(measure) if measure.needs_tariff() => "a draw",
        Some(_) => "a price (a column 'price', of the whole pack where there is one) and a draw",
    };
    say(&format!("not sorted by {}: no listing has {lacks}", name(by)));
}

fn left_out(shown: usize, total: u64) {
    let left = total.saturating_sub(shown as u64);
    if left > 0 {
        say(&format!("{left} listings are not shown: --format csv, unsorted, writes all"));
    }
}

fn form(grade: &Grade) -> Form {
    let by = grade.sort;
    let rows = match grade.format {
        Format::Table => return Form::Lines(Keep { most: MOST_LINES, by }),
        Format::Csv => Rows::Csv(csv::Format { wide: grade.wide, raw: grade.raw }),
        Format::Json => Rows::Json,
        Format::Markdown => Rows::Markdown,
        Format::Html => return Form::Page(by),
    };
    if by.is_some() { Form::Sorted(rows, Keep { most: MOST_SORTED, by }) } else { Form::Rows(rows) }
}

fn header(grade: &Grade) -> String {
    match grade.format {
        Format::Csv if !grade.no_header => csv::Format { wide: grade.wide, raw: grade.raw }.header(),
        Format::Markdown if !grade.no_header => markdown::HEADER.to_owned(),
        _ => String::new(),
    }
}

fn threads(grade: &Grade, form: Form) -> usize {
    // Rows that are kept must come in order, which one thread gives for nothing; nobody waits for a thousand lines.
    if !matches!(form, Form::Rows(_)) {
        return 1;
    }
    input::threads(&grade.catalogue)
}
