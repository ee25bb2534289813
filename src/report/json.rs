//! JSON, one object a listing: full precision, absent is null.

use serde::Serialize;
use serde_json::{Map, Value};

use super::{Light, Run, UNREADABLE, Unreadable, builder, figures, load, worth};
use crate::comparison::{Basis, honest_label};
use crate::facts::{Fault, Read};
use crate::photons::Photons;
use crate::uncertain::{Chance, Contribution, Uncertain};
use crate::units::{Amps, Watts};

#[derive(Default, Serialize)]
struct Object<'a> {
    listing: Option<&'a str>,
    supplier: Option<&'a str>,
    claim_w: Option<f64>,
    verdict: &'a str,
    evidence: Option<&'a str>,
    basis: Option<&'a str>,
    share: Option<f64>,
    p_reach: Option<f64>,
    p_ceiling: Option<f64>,
    tolerance: f64,
    confidence: f64,
    table: &'a str,
    led_w: Option<Uncertain<Watts>>,
    wall_w: Option<Interval>,
    common_wall_w: Option<Range>,
    ceiling_wall_w: Option<Uncertain<Watts>>,
    photons: Option<figures::PhotonsObject>,
    class_ma: Option<f64>,
    needed_ma: Option<f64>,
    running_ma: Option<f64>,
    running_ma_u: Option<f64>,
    needed_scale: Option<f64>,
    running_scale: Option<f64>,
    measured_w: Option<Uncertain<Watts>>,
    admitted_w: Option<[f64; 2]>,
    volt_amps: Option<f64>,
    implied_w: Option<f64>,
    findings: Vec<Finding>,
    load: Option<load::LoadObject>,
    build: Option<builder::BuilderObject>,
    cost: Option<worth::CostObject<'a>>,
    claims: Vec<figures::ClaimObject>,
    groups: Vec<Group<'a>>,
    budget: Vec<Contribution>,
    reasons: Vec<Reason>,
    honest_label: Option<String>,
    fault: Option<&'a Fault>,
    read: Option<Words>,
}

#[derive(Serialize)]
struct Interval {
    value: Watts,
    u: Watts,
    low: Watts,
    high: Watts,
}

#[derive(Serialize)]
struct Range {
    low: Watts,
    high: Watts,
}

#[derive(Serialize)]
struct Finding {
    evidence: &'static str,
    verdict: &'static str,
    code: &'static str,
    reason: String,
}

#[derive(Serialize)]
struct Reason {
    code: &'static str,
    text: String,
}

/// Per package: `ma` times `volts` is `watts_each`.
#[derive(Serialize)]
struct Group<'a> {
    colour: &'static str,
    class: &'a str,
    count: u32,
    count_half_width: Option<u32>,
    ma: f64,
    volts: f64,
    watts_each: f64,
    watts: f64,
}

#[derive(Serialize)]
struct Words {
    advertised_w: Option<f64>,
    diode_count: Option<u32>,
    class_w: Option<f64>,
    actual_w: Option<[f64; 2]>,
    replaces_w: Option<f64>,
    replaces_kind: Option<&'static str>,
    ppf: Option<f64>,
    ppe: Option<f64>,
    volts: Option<[f64; 2]>,
    amps: Option<f64>,
    units_in_pack: Option<u32>,
    colours: Option<Map<String, Value>>,
}

impl From<&Read> for Words {
    fn from(read: &Read) -> Self {
        let mut colours = Map::new();
        for taken in &read.colours {
            let place = colours.entry(taken.value.word.key()).or_insert_with(|| Value::from(0));
            *place = Value::from(place.as_u64().unwrap_or(0) + u64::from(taken.value.count));
        }
        Self {
            advertised_w: read.advertised_w.map(|t| t.value.value),
            diode_count: read.diode_count.map(|t| t.value),
            class_w: read.class.map(|t| t.value.watts.0),
            actual_w: read.actual_w.map(|t| [t.value.low.0, t.value.high.0]),
            replaces_w: read.replaces.map(|t| t.value.watts.0),
            replaces_kind: read.replaces.and_then(|t| t.value.kind).map(crate::facts::LampKind::key),
            ppf: read.ppf.map(|t| t.value.value),
            ppe: read.ppe.map(|t| t.value.value),
            volts: read.volts.map(|t| [t.value.0.value, t.value.1.value]),
            amps: read.amps.map(|t| t.value.value),
            units_in_pack: read.units_in_pack.map(|t| t.value),
            colours: (!colours.is_empty()).then_some(colours),
        }
    }
}

fn object<'a>(run: Run<'a>, light: Light<'a>) -> Object<'a> {
    let (listing, assessment) = (light.listing, light.assessment);
    let draw = assessment.counted.draw.as_ref();
    let table = run.model.table();
    let lower_bound = listing.tally.as_ref().is_some_and(|t| t.lower_bound);
    Object {
        listing: listing.name.as_deref(),
        supplier: listing.supplier.as_deref(),
        claim_w: listing.claim.map(|w| w.0),
        verdict: assessment.verdict.word(),
        evidence: Some(assessment.evidence.word()),
        basis: assessment.basis.map(Basis::word),
        share: assessment.share,
        p_reach: assessment.counted.p_reach.map(Chance::p),
        p_ceiling: assessment.counted.p_ceiling.map(Chance::p),
        tolerance: run.settings.tolerance,
        confidence: run.settings.confidence(),
        table: table.name(),
        led_w: draw.map(|d| d.full.led),
        wall_w: draw.map(|d| {
            let (low, high) = d.full.wall_interval();
            Interval { value: d.full.wall.value, u: d.full.wall.u, low, high }
        }),
        common_wall_w: draw.map(|d| Range { low: d.common.0, high: d.common.1 }),
        ceiling_wall_w: assessment.counted.ceiling().map(|c| c.wall),
        photons: draw.map(|d| figures::PhotonsObject::from(&Photons::of(run.model, d))),
        class_ma: assessment.class_current.map(Amps::ma),
        needed_ma: assessment.needed.and_then(|n| n.current).map(Amps::ma),
        running_ma: assessment.running.and_then(|r| r.current).map(Amps::ma),
        running_ma_u: assessment.running.and_then(|r| r.current_u).map(Amps::ma),
        needed_scale: assessment.needed.map(|n| n.scale),
        running_scale: assessment.running.map(|r| r.scale),
        measured_w: assessment.measured,
        admitted_w: listing.admitted.map(|a| [a.low.0, a.high.0]),
        volt_amps: assessment.volt_amps.map(|w| w.0),
        implied_w: assessment.implied.map(|w| w.0),
        findings: assessment
            .findings
            .iter()
            .map(|f| Finding {
                evidence: f.evidence.word(),
                verdict: f.verdict.word(),
                code: f.reason.code(),
                reason: f.reason.text(),
            })
            .collect(),
        load: load::LoadObject::of(light),
        build: builder::BuilderObject::of(run, light),
        cost: worth::CostObject::of(run, light),
        claims: assessment.figures.iter().map(figures::ClaimObject::from).collect(),
        groups: draw.map_or_else(Vec::new, |d| {
            let group = |part: &crate::draw::Part| {
                let class = table.class(part.class);
                let point = d.package_at_full(run.model, part);
                Group {
                    colour: part.colour.name(),
                    class: &class.name,
                    count: part.count.number,
                    count_half_width: part.count.half_width,
                    ma: point.die_current.ma() * f64::from(class.parallel),
                    volts: point.die_voltage.0 * f64::from(class.series),
                    watts_each: point.watts.0,
                    watts: point.watts.0 * f64::from(part.count.number),
                }
            };
            d.parts.iter().map(group).collect()
        }),
        budget: draw.map_or_else(Vec::new, |d| d.budget(run.model)),
        reasons: assessment.reasons.iter().map(|r| Reason { code: r.code(), text: r.text() }).collect(),
        honest_label: honest_label(assessment, run.model, lower_bound),
        fault: None,
        read: light.read.map(Words::from),
    }
}

/// Appends the object of a light on one line.
pub fn light(out: &mut Vec<u8>, run: Run<'_>, light: Light<'_>) {
    line(out, &object(run, light));
}

/// The object of a light over several lines, for reading one.
#[must_use]
pub fn light_pretty(run: Run<'_>, light: Light<'_>) -> String {
    serde_json::to_string_pretty(&object(run, light)).unwrap_or_default()
}

/// Appends the object of a row that could not be read on one line.
pub fn unreadable(out: &mut Vec<u8>, run: Run<'_>, row: Unreadable<'_>) {
    line(
        out,
        &Object {
            listing: row.name,
            supplier: row.supplier,
            verdict: UNREADABLE,
            tolerance: run.settings.tolerance,
            confidence: run.settings.confidence(),
            table: run.model.table().name(),
            fault: Some(row.fault),
            ..Object::default()
        },
    );
}

fn line(out: &mut Vec<u8>, object: &Object<'_>) {
    // Plain types into memory: serialising them cannot fail.
    let _ = serde_json::to_writer(&mut *out, object);
    out.push(b'\n');
}
