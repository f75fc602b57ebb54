//! What `rules find` answers: the rulesets that hold somewhere, what each covers,
//! and what is not here.

use std::io;
use std::io::Write;

use crate::items::Hazard;
use crate::report::Counts;
use crate::report::cautions::DEFERRAL;
use crate::report::one_line;
use crate::report::palette;
use crate::report::wrap::TextPage;
use crate::report::wrap::hanging_in;
use crate::rules::FoundRules;
use crate::rules::Home;
use crate::rules::Offer;
use crate::rules::Ruleset;
use crate::rules::Sought;

/// The answer, and the command that judges by it.
///
/// # Errors
/// Those of `out`.
pub fn found_rules(out: &mut TextPage<'_>, found: &FoundRules<'_>) -> io::Result<()> {
    let taken = taken(&found.sought);
    writeln!(out, "{}", hanging_in(out.width(), "Taken as: ", &taken))?;
    for (word, near) in &found.sought.unknown {
        let near = near.map_or_else(String::new, |near| format!("; did you mean {near}?"));
        let says = format!("\"{}\"{near}", one_line(word));
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Not understood: ", &says)
        )?;
    }
    let sought = &found.sought;
    let title = "Building rules that may hold there";
    offers(out, title, &found.law, sought)?;
    offers(out, "Advice, beside the rules", &found.advice, sought)?;
    if !found.only_where.is_empty() {
        writeln!(
            out,
            "\n{}",
            palette::heading("Only for some things or places")
        )?;
        for offer in &found.only_where {
            let only = offer.only.as_deref().unwrap_or_default();
            let says = format!("{only}: {}", one_line(&offer.ruleset.title));
            let id = format!("  {}  ", one_line(&offer.ruleset.id));
            writeln!(out, "{}", hanging_in(out.width(), &id, &says))?;
        }
    }
    if !found.not_here.is_empty() {
        writeln!(out, "\n{}", palette::heading("Not here"))?;
        for says in &found.not_here {
            writeln!(out, "{}", hanging_in(out.width(), "  - ", says))?;
        }
    }
    if !found.ask.is_empty() {
        let says = format!("{}.", found.ask.join("; "));
        writeln!(
            out,
            "\n{}",
            hanging_in(out.width(), "Say as well, if you can: ", &says)
        )?;
    }
    writeln!(out)?;
    if let Some(first) = found.law.first().or(found.advice.first()) {
        let id = one_line(&first.ruleset.id);
        let next = format!("guardrule check survey.csv --rules {id}");
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "To judge by it: ", &next)
        )?;
        let next = format!("guardrule rules show {id}");
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "What it asks:   ", &next)
        )?;
    }
    writeln!(out, "{}", hanging_in(out.width(), "", DEFERRAL))
}

fn taken(sought: &Sought) -> String {
    let mut parts: Vec<String> = Vec::new();
    let country = sought.countries.join(" or ");
    parts.extend(sought.region.map(str::to_owned));
    if !country.is_empty() {
        parts.push(country);
    }
    parts.extend(sought.home.map(|home| {
        let home = match home {
            Home::Flat => "a flat in a building with three homes or more",
            Home::House => "a house of one or two homes",
        };
        home.to_owned()
    }));
    if sought.home.is_none() {
        parts.extend(sought.purpose.map(str::to_owned));
    }
    parts.extend(sought.place.map(str::to_owned));
    let matters = sought.matters.iter().map(|matter| matter.name().to_owned());
    parts.extend(matters);
    parts.extend(sought.built.map(|year| format!("built {year}")));
    if parts.is_empty() {
        return "nothing about a place or a building".to_owned();
    }
    parts.join("; ")
}

fn offers(
    out: &mut TextPage<'_>,
    title: &str,
    offers: &[Offer<'_>],
    sought: &Sought,
) -> io::Result<()> {
    if offers.is_empty() {
        return Ok(());
    }
    writeln!(out, "\n{}", palette::heading(title))?;
    for offer in offers {
        let ruleset = offer.ruleset;
        writeln!(out, "  {}", palette::heading(&one_line(&ruleset.id)))?;
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "    ", &one_line(&ruleset.title))
        )?;
        if !ruleset.covers.says.is_empty() {
            let says = one_line(&ruleset.covers.says);
            writeln!(out, "{}", hanging_in(out.width(), "    Covers: ", &says))?;
        }
        let left: Vec<&str> = offer
            .leaves_out(sought)
            .map(|left| left.says.as_str())
            .collect();
        if !left.is_empty() {
            let says = one_line(&left.join(" ")).into_owned();
            writeln!(out, "{}", hanging_in(out.width(), "    Not in it: ", &says))?;
        }
        if let Some(says) = asks_nothing(ruleset) {
            writeln!(out, "{}", hanging_in(out.width(), "    ", &says))?;
        }
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "    ", &Counts::of(ruleset).says())
        )?;
        if let Some(year) = offer.ended {
            let says = format!(
                "It ended in {year}, and what came after is not here: for newer work ask the building office."
            );
            writeln!(out, "{}", hanging_in(out.width(), "    ", &says))?;
        }
        if offer.read_there {
            let says = "This edition was read in the print of the state, which leaves these rules as they are.";
            writeln!(out, "{}", hanging_in(out.width(), "    ", says))?;
        }
        if !offer.editions.is_empty() {
            let editions = one_line(&offer.editions.join(", ")).into_owned();
            writeln!(
                out,
                "{}",
                hanging_in(out.width(), "    Other editions: ", &editions)
            )?;
        }
    }
    Ok(())
}

/// The hazards that a text was read to ask nothing about, somewhere or everywhere.
fn asks_nothing(ruleset: &Ruleset) -> Option<String> {
    let silent = |hazard: &Hazard| ruleset.asks_nothing.iter().any(|of| of.hazard == *hazard);
    let of: Vec<&str> = Hazard::ALL
        .iter()
        .filter(|hazard| silent(hazard))
        .map(|hazard| hazard.name())
        .collect();
    let of = (!of.is_empty()).then(|| of.join(", "))?;
    Some(format!(
        "It asks nothing, or not everywhere, about: {of}. That is no word about danger."
    ))
}
