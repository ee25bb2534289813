//! CSV rows: lean and stable, or `wide` with everything that fits a cell.

use super::number::six_digits;
use super::sanitise::spreadsheet;
use super::{Light, Run, UNREADABLE, Unreadable, worth};
use crate::comparison::{Claimed, honest_label};
use crate::cost::Span;
use crate::draw::Draw;
use crate::photons::Photons;
use crate::uncertain::Chance;
use crate::units::{Amps, Watts};

const LEAN: &str = "listing,supplier,claim_w,verdict,evidence,basis,share,led_w,wall_w,wall_low_w,wall_high_w,\
common_low_w,common_high_w,needed_ma,reasons";
const WIDE: &str = ",p_reach,p_ceiling,tolerance,confidence,table,led_u_w,wall_u_w,ceiling_wall_w,ceiling_wall_u_w,\
class_ma,needed_scale,running_ma,running_ma_u,running_scale,measured_w,measured_u_w,admitted_low_w,admitted_high_w,\
volt_amps,implied_w,honest_label,ppf_verdict,ppe_verdict,replaces_verdict,amps_verdict,photons_umol_s,photons_u_umol_s,far_red_umol_s,efficacy_umol_j,efficacy_u_umol_j,\
price_per_w,price_per_w_low,price_per_w_high,price_per_umol_s,price_per_umol_s_low,price_per_umol_s_high,day_cost,\
month_cost,year_cost,year_common_low,year_common_high,year_full_low,year_full_high";

/// By byte: whether a cell that has it is put in quotes (RFC 4180).
const QUOTED: [bool; 256] = {
    let mut quoted = [false; 256];
    quoted[b',' as usize] = true;
    quoted[b'"' as usize] = true;
    quoted[b'\n' as usize] = true;
    quoted[b'\r' as usize] = true;
    quoted
};

/// How rows are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Format {
    /// Every column.
    pub wide: bool,
    /// Without the guard against spreadsheet formulas.
    pub raw: bool,
}

impl Format {
    /// The header row, with its line end.
    #[must_use]
    pub fn header(self) -> String {
        if self.wide { format!("{LEAN}{WIDE}\n") } else { format!("{LEAN}\n") }
    }

    /// Appends the row of a light.
    pub fn light(self, out: &mut Vec<u8>, run: Run<'_>, light: Light<'_>) {
        let assessment = light.assessment;
        let draw = assessment.counted.draw.as_ref();
        self.text(out, light.listing.name.as_deref().unwrap_or(""));
        self.next_text(out, light.listing.supplier.as_deref().unwrap_or(""));
        number(out, light.listing.claim.map(|w| w.0));
        word(out, assessment.verdict.word());
        word(out, assessment.evidence.word());
        word(out, assessment.basis.map_or("", |b| b.word()));
        number(out, assessment.share);
        watts(out, draw.map(|d| d.full.led.value));
        watts(out, draw.map(|d| d.full.wall.value));
        let interval = draw.map(|d| d.full.wall_interval());
        watts(out, interval.map(|i| i.0));
        watts(out, interval.map(|i| i.1));
        watts(out, draw.map(|d| d.common.0));
        watts(out, draw.map(|d| d.common.1));
        current(out, assessment.needed.and_then(|n| n.current));
        out.push(b',');
        for (place, reason) in assessment.reasons.iter().enumerate() {
            if place > 0 {
                out.push(b' ');
            }
            out.extend_from_slice(reason.code().as_bytes());
        }
        if self.wide {
            self.rest(out, run, light, draw);
        }
        out.push(b'\n');
    }

    fn rest(self, out: &mut Vec<u8>, run: Run<'_>, light: Light<'_>, draw: Option<&Draw>) {
        let assessment = light.assessment;
        number(out, assessment.counted.p_reach.map(Chance::p));
        number(out, assessment.counted.p_ceiling.map(Chance::p));
        number(out, Some(run.settings.tolerance));
        number(out, Some(run.settings.confidence()));
        self.next_text(out, run.model.table().name());
        watts(out, draw.map(|d| d.full.led.u));
        watts(out, draw.map(|d| d.full.wall.u));
        let ceiling = assessment.counted.ceiling();
        watts(out, ceiling.map(|c| c.wall.value));
        watts(out, ceiling.map(|c| c.wall.u));
        current(out, assessment.class_current);
        number(out, assessment.needed.map(|n| n.scale));
        current(out, assessment.running.and_then(|r| r.current));
        current(out, assessment.running.and_then(|r| r.current_u));
        number(out, assessment.running.map(|r| r.scale));
        watts(out, assessment.measured.map(|m| m.value));
        watts(out, assessment.measured.map(|m| m.u));
        let admitted = light.listing.admitted;
        watts(out, admitted.map(|a| a.low));
        watts(out, admitted.map(|a| a.high));
        watts(out, assessment.volt_amps);
        watts(out, assessment.implied);
        let lower_bound = light.listing.tally.as_ref().is_some_and(|t| t.lower_bound);
        self.next_text(out, &honest_label(assessment, run.model, lower_bound).unwrap_or_default());
        let verdict = |is: fn(&Claimed) -> bool| {
            assessment.figures.iter().find(|f| is(&f.claimed)).map_or("", |f| f.verdict.word())
        };
        word(out, verdict(|c| matches!(c, Claimed::Flux(_))));
        word(out, verdict(|c| matches!(c, Claimed::Efficacy(_))));
        word(out, verdict(|c| matches!(c, Claimed::Replaces(_))));
        word(out, verdict(|c| matches!(c, Claimed::Amperes { .. })));
        photons(out, draw.map(|draw| Photons::of(run.model, draw)));
        money(out, run, light);
    }

    /// Appends the row of a listing that could not be read: its names, the word, and a code that names the column.
    pub fn unreadable(self, out: &mut Vec<u8>, row: Unreadable<'_>) {
        self.text(out, row.name.unwrap_or(""));
        self.next_text(out, row.supplier.unwrap_or(""));
        out.push(b',');
        word(out, UNREADABLE);
        out.extend_from_slice(b",,,,,,,,,,,");
        self.text(out, &format!("fault:{}", row.fault.column.as_deref().unwrap_or("row")));
        if self.wide {
            out.resize(out.len() + WIDE.bytes().filter(|b| *b == b',').count(), b',');
        }
        out.push(b'\n');
    }

    fn next_text(self, out: &mut Vec<u8>, text: &str) {
        out.push(b',');
        self.text(out, text);
    }

    fn text(self, out: &mut Vec<u8>, text: &str) {
        let guarded = if self.raw { text.into() } else { spreadsheet(text) };
        let bytes = guarded.as_bytes();
        if !bytes.iter().any(|b| QUOTED[usize::from(*b)]) {
            out.extend_from_slice(bytes);
            return;
        }
        out.push(b'"');
        for byte in bytes {
            if *byte == b'"' {
                out.push(b'"');
            }
            out.push(*byte);
        }
        out.push(b'"');
    }
}

fn photons(out: &mut Vec<u8>, photons: Option<Photons>) {
    number(out, photons.map(|p| p.par.value.0));
    number(out, photons.map(|p| p.par.u.0));
    number(out, photons.and_then(|p| p.far_red).map(|f| f.value.0));
    number(out, photons.map(|p| p.efficacy.value.0));
    number(out, photons.map(|p| p.efficacy.u.0));
}

/// Days and months have the range of a year, over 365 and 12.
fn money(out: &mut Vec<u8>, run: Run<'_>, light: Light<'_>) {
    let best = light.money.and_then(|money| worth::at_best(run, light, money));
    let cost = light.money.and_then(|money| worth::of(run, light, money)).map(|(cost, _)| cost);
    let span = |out: &mut Vec<u8>, span: Option<Span>| {
        number(out, span.map(|s| s.low));
        number(out, span.map(|s| s.high));
    };
    number(out, best.and_then(|b| b.per_watt));
    span(out, cost.and_then(|c| c.per_watt));
    number(out, best.and_then(|b| b.per_flux));
    span(out, cost.and_then(|c| c.per_flux));
    number(out, best.and_then(|b| b.day));
    number(out, best.and_then(|b| b.month));
    number(out, best.and_then(|b| b.year));
    let year = cost.and_then(|c| c.year);
    span(out, year.and_then(|y| y.common));
    span(out, year.map(|y| y.full));
}

fn word(out: &mut Vec<u8>, word: &str) {
    out.push(b',');
    out.extend_from_slice(word.as_bytes());
}

fn number(out: &mut Vec<u8>, value: Option<f64>) {
    out.push(b',');
    if let Some(value) = value {
        six_digits(out, value);
    }
}

fn watts(out: &mut Vec<u8>, value: Option<Watts>) {
    number(out, value.map(|w| w.0));
}

fn current(out: &mut Vec<u8>, value: Option<Amps>) {
    number(out, value.map(Amps::ma));
}
