//! `audit`: a catalogue by supplier, the pages to correct, and a gate.

use std::io::Write;
use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};

use super::apart::Files;
use super::assessing::{Assessing, Graded, Texts};
use super::input::{self, shown};
use super::output::{Progress, Sink, TerminalGuard, say, stop_on_interrupt};
use super::{Ended, rejects, setting_up, since, terminal};
use crate::audit::{Audit as ByGroup, Changes, Earlier, Said, Unreadables};
use crate::cli::{Audit, AuditFormat, When};
use crate::comparison::Counts;
use crate::intake::Columns;
use crate::report::changes::{changes_line, changes_text, json_changes};
use crate::report::faults::{self, faults_text, json_faults};
use crate::report::style::Style;
use crate::report::{Run, audit as render, sanitise, summary};
use crate::stream::{self, Merge, Output, Record, Sinks, StreamError};

/// What one worker has counted.
#[derive(Default)]
struct Worker {
    summary: Counts,
    counts: ByGroup,
    changes: Changes,
    unreadable: Unreadables,
    texts: Texts,
}

impl Merge for Worker {
    fn merge(&mut self, other: Self) {
        self.summary.add(&other.summary);
        self.counts.add(other.counts);
        self.changes.add(other.changes);
        self.unreadable.add(other.unreadable);
    }
}

pub(super) fn run(audit: &Audit, colour: When) -> Result<Ended> {
    files(audit).apart()?;
    let settings = setting_up::settings(&audit.strictness)?;
    let model = setting_up::model(audit.strictness.reference.as_deref())?;
    let earlier = audit.since.as_deref().map(since::read).transpose()?;
    let input::Opened { reader, columns, sheet, watched } = input::catalogue(&audit.catalogue)?;
    let place = place(audit, &columns)?;
    let run = Run { model: &model, settings: &settings };
    let assessing = Assessing {
        run,
        columns: &columns,
        titles: !audit.catalogue.no_titles,
        sheet: sheet.as_deref(),
        figures: false,
        money: None,
    };
    let csv = render::Csv { raw: audit.raw };
    let mut out = Sink::open(audit.output.as_deref())?;
    let mut rejects = rejects::open(audit.rejects.as_deref(), sheet.as_deref())?;
    let outcome = {
        let flush = out.is_standard();
        let mut progress = Progress::over(&audit.catalogue.file, out.is_terminal());
        let mut guarded = TerminalGuard::new(&mut out);
        if audit.format == AuditFormat::Csv {
            guarded.write_all(&csv.header(&audit.by)).map_err(StreamError::Write)?;
        }
        let how = stream::Run {
            threads: input::threads(&audit.catalogue),
            waits: watched.waits(),
            flush,
            stop: Some(stop_on_interrupt()),
            progress: Some(&mut |done| progress.show(done)),
        };
        let map = |worker: &mut Worker, record: &Record<'_>, output: &mut Output| {
            let group = render::kept(record.get(place).unwrap_or("").trim());
            let Worker { summary, counts, changes, unreadable, texts } = worker;
            let mut see = |name: Option<&str>, supplier: Option<&str>, said| {
                let named = || (name.unwrap_or("").to_owned(), supplier.unwrap_or("").to_owned());
                earlier.as_ref().map(|earlier| changes.see(earlier, named(), said))
            };
            assessing.row(texts, record, |graded| match graded {
                Graded::Unreadable(row) => {
                    see(row.name, row.supplier, None);
                    summary.count_unreadable();
                    counts.count_unreadable(group);
                    unreadable.push(record.line(), || faults::row(row.name, row.supplier, row.fault));
                    if audit.rejects.is_some() {
                        rejects::write(&mut output.rejects, row.fault, record.raw(), audit.raw);
                    }
                }
                Graded::Light(light) => {
                    let verdict = light.assessment.verdict;
                    let listing = light.listing;
                    let said = Some(Said { verdict, claim: listing.claim });
                    let newly = see(listing.name.as_deref(), listing.supplier.as_deref(), said);
                    summary.count(verdict);
                    counts.count(group, verdict, light.assessment.share, || render::page(run, light, group));
                    match audit.format {
                        AuditFormat::Csv if verdict.convicts() => {
                            csv.page(&mut output.rows, run, light, group);
                        }
                        AuditFormat::Json if verdict.convicts() => {
                            render::json_page(&mut output.rows, run, light, &audit.by, group, newly);
                        }
                        _ => {}
                    }
                }
            });
        };
        let mut rejects = rejects.as_mut().map(TerminalGuard::new);
        let rejects = rejects.as_mut().map(|rejects| rejects as &mut dyn Write);
        let outcome = stream::run(reader, how, map, Sinks { rows: &mut guarded, rejects });
        progress.finish();
        match outcome {
            Err(StreamError::Read(error)) => {
                let file = shown(&audit.catalogue.file);
                return Err(error).with_context(|| format!("{file} could not be read to its end"));
            }
            outcome => outcome?,
        }
    };
    if outcome.stopped {
        bail!("stopped after {} listings", outcome.done.rows);
    }
    watched.check(&audit.catalogue.file)?;
    let sinks = (out, rejects);
    finish(audit, sinks, outcome.summary, &outcome.notices, earlier.as_ref(), colour)
}

/// Writes and says what can only be known when all rows are counted.
fn finish(
    audit: &Audit,
    (mut out, rejects): (Sink, Option<Sink>),
    worker: Worker,
    notices: &[stream::Notice],
    earlier: Option<&Earlier>,
    colour: When,
) -> Result<Ended> {
    let Worker { summary: total, mut counts, changes, unreadable, .. } = worker;
    let nothing = nothing(audit, &total);
    let told = faults_text(&unreadable);
    if let Some(rejects) = rejects {
        rejects.commit()?;
    }
    if let (Some(nothing), Some(_)) = (&nothing, audit.stop_at) {
        // What an earlier run wrote stays: an empty list of pages would look like a clean catalogue.
        tell(&told);
        bail!("{nothing}; accepted by --stop-at: at least one row that can be read");
    }
    write_totals(audit, &mut out, &mut counts, &changes, earlier, colour)?;
    if audit.format == AuditFormat::Json {
        TerminalGuard::new(&mut out)
            .write_all(json_faults(&unreadable).as_bytes())
            .map_err(StreamError::Write)?;
    }
    out.commit()?;
    for notice in notices {
        say(&notice.to_string());
    }
    tell(&told);
    say(&summary::line(&total));
    if let Some(nothing) = nothing {
        say(&nothing);
    }
    if let Some(earlier) = earlier {
        say(&changes_line(&changes, earlier));
    }
    Ok(gate(audit, &counts, total.total()))
}

/// Says what there is to say, if anything.
fn tell(text: &str) {
    if !text.is_empty() {
        say(text.trim_end());
    }
}

/// What is read and written.
fn files(audit: &Audit) -> Files<'_> {
    let mut files = Files { read: vec![("the input", &audit.catalogue.file)], ..Files::default() };
    files.read.extend(audit.strictness.reference.as_deref().map(|path| ("--reference", path)));
    files.read.extend(audit.since.as_deref().map(|path| ("--since", path)));
    files.written.push(("--output", audit.output.as_deref().unwrap_or(Path::new("-"))));
    files.written.extend(audit.rejects.as_deref().map(|path| ("--rejects", path)));
    files
}

/// Writes what can only be said when all rows are counted.
fn write_totals(
    audit: &Audit,
    out: &mut Sink,
    counts: &mut ByGroup,
    changes: &Changes,
    earlier: Option<&Earlier>,
    colour: When,
) -> Result<()> {
    match audit.format {
        AuditFormat::Csv => {}
        AuditFormat::Json => {
            let mut text = render::json_groups(counts, &audit.by);
            if let Some(earlier) = earlier {
                text.push_str(&json_changes(changes, earlier));
            }
            TerminalGuard::new(out).write_all(text.as_bytes()).map_err(StreamError::Write)?;
        }
        AuditFormat::Table => {
            let style = if out.is_standard() { terminal::style(colour) } else { Style::PLAIN };
            let mut text = render::table(counts, &audit.by, terminal::width(), style);
            if let Some(earlier) = earlier {
                text.push_str(&changes_text(changes, earlier, terminal::width()));
            }
            out.write_all(text.as_bytes()).map_err(StreamError::Write)?;
        }
    }
    Ok(())
}

/// The place of the column to group by.
fn place(audit: &Audit, columns: &Columns) -> Result<usize> {
    columns.place(&audit.by).ok_or_else(|| {
        let headers = columns.headers().join(", ");
        anyhow!(
            "--by: no column holds '{}'; the headers are: {}; say --by with one of them",
            sanitise::terminal(&audit.by),
            sanitise::terminal(&headers)
        )
    })
}

/// Says so where no row could be graded, which must not pass for a catalogue without faults.
fn nothing(audit: &Audit, total: &Counts) -> Option<String> {
    let found = match (total.total(), total.unreadable()) {
        (0, _) => format!("{} has no rows", shown(&audit.catalogue.file)),
        (1, 1) => "the only row is unreadable".to_owned(),
        (all, unreadable) if all == unreadable => format!("all {all} rows are unreadable"),
        _ => return None,
    };
    Some(format!("nothing could be graded: {found}"))
}

fn gate(audit: &Audit, counts: &ByGroup, total: u64) -> Ended {
    let Some(verdict) = audit.stop_at else { return Ended::Ran };
    let n = counts.at_least(verdict);
    if n == 0 {
        return Ended::Ran;
    }
    say(&format!("gate not met: {n} of {total} listings are {} or worse", verdict.word()));
    Ended::GateNotMet
}
