//! `vet`: one light.

use std::borrow::Cow;
use std::io::Write as _;

use anyhow::{Result, bail};

use super::output::Sink;
use super::{Ended, flags, paging, setting_up, terminal};
use crate::cli::{Format, Vet, When};
use crate::comparison::assess;
use crate::facts::Listing;
use crate::intake;
use crate::reading;
use crate::report::style::Style;
use crate::report::{Light, Run, csv, html, json, light, markdown};
use crate::stream::StreamError;

pub(super) fn run(vet: &Vet, colour: When) -> Result<Ended> {
    let settings = setting_up::settings(&vet.strictness)?;
    let model = setting_up::model(vet.strictness.reference.as_deref())?;
    let mut listing = listing(vet)?;
    if listing == Listing::default() {
        bail!(
            "nothing to vet; accepted is a title, --claim, --tally with --class, or --measured ('plainwatt vet --help')"
        );
    }
    let read = listing.title.as_deref().map(reading::read);
    if let Some(read) = &read {
        intake::complete(&mut listing, read);
    }
    let money = setting_up::money(&vet.money)?;
    let money_asked = vet.price.is_some() || money.tariff.is_some();
    let fit_supply = vet.fit_supply.as_deref().map(|t| flags::watts("fit-supply", t)).transpose()?;
    let circuit = vet.circuit.as_deref().map(flags::circuit).transpose()?;
    let assessment = assess(&listing, &model, &settings);
    let run = Run { model: &model, settings: &settings };
    let result = Light {
        listing: &listing,
        read: read.as_ref(),
        assessment: &assessment,
        money: money_asked.then_some(&money),
        circuit,
        fit_supply,
    };
    let mut out = Sink::open(vet.output.as_deref())?;
    paging::refuse_terminal(vet.format, &out)?;
    let text = match vet.format {
        Format::Table => {
            let layout = light::Layout {
                width: terminal::width().into(),
                style: if out.is_standard() { terminal::style(colour) } else { Style::PLAIN },
                working: vet.working,
            };
            light::light(run, result, layout)
        }
        Format::Json => json::light_pretty(run, result) + "\n",
        Format::Csv => {
            let format = csv::Format { wide: true, raw: false };
            let mut out = format.header().into_bytes();
            format.light(&mut out, run, result);
            String::from_utf8_lossy(&out).into_owned()
        }
        Format::Markdown => markdown::light(run, result),
        Format::Html => {
            let mut report = html::Report::of_one();
            report.light(run, result, html::Sorted::Given);
            report.page(run, &html::About::default())
        }
    };
    out.write_all(text.as_bytes()).map_err(StreamError::Write)?;
    out.commit()?;
    Ok(Ended::Ran)
}

fn listing(vet: &Vet) -> Result<Listing<'_>> {
    let text = |t: &Option<String>| t.as_deref().map(str::trim).filter(|t| !t.is_empty()).map(str::to_owned);
    let given = |t: &Option<String>| text(t);
    Ok(Listing {
        title: text(&vet.title).map(Cow::Owned),
        claim: given(&vet.claim).map(|t| flags::watts("claim", &t)).transpose()?,
        class: given(&vet.class).map(|t| flags::class(&t)).transpose()?,
        tally: given(&vet.tally).map(|t| flags::tally(&t)).transpose()?,
        drive: given(&vet.drive_ma).map(|t| flags::drive("drive-ma", &t)).transpose()?,
        reading: given(&vet.measured).map(|t| flags::reading(&t)).transpose()?,
        admitted: given(&vet.admits).map(|t| flags::admitted(&t)).transpose()?,
        supply: given(&vet.supply).map(|t| flags::supply(&t)).transpose()?,
        ppf: given(&vet.ppf)
            .map(|t| flags::figure("ppf", &t, "a photon flux in umol/s above 0, such as 300"))
            .transpose()?,
        ppe: given(&vet.ppe)
            .map(|t| flags::figure("ppe", &t, "a photon efficacy in umol/J above 0, such as 1.5"))
            .transpose()?,
        price: given(&vet.price)
            .map(|t| flags::money("price", &t, "a price above 0 without a currency, such as 89.99"))
            .transpose()?
            .map(|price| price.value),
        replaces: given(&vet.replaces).map(|t| flags::replaced(&t)).transpose()?,
        ..Listing::default()
    })
}
