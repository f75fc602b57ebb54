//! The items table as text: the list, and one item with how to measure it.

use std::io;
use std::io::Write;

use textwrap::core::display_width;

use crate::items::Group;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Pictured;
use crate::report::cautions::deferral;
use crate::report::palette;
use crate::report::plain;
use crate::report::wrap::TextPage;
use crate::report::wrap::hanging_in;
use crate::report::wrap::heading_in;

/// Every item by group, a line each.
///
/// # Errors
/// Those of `out`.
pub fn items(out: &mut TextPage<'_>) -> io::Result<()> {
    const GROUPS: [(Group, &str); 4] = [
        (Group::Survey, "About the survey itself"),
        (
            Group::Circumstance,
            "Circumstances: they say which rules apply",
        ),
        (Group::Measured, "Measured at the guard"),
        (Group::Seen, "Seen at the guard"),
    ];
    for (group, title) in GROUPS {
        writeln!(out, "{}", heading_in(out.width(), "", title))?;
        for item in Item::all().filter(|item| item.info().group == group) {
            let label = format!("  {:<24}", item.name());
            writeln!(
                out,
                "{}",
                hanging_in(out.width(), &label, item.info().means)
            )?;
        }
        writeln!(out)?;
    }
    writeln!(
        out,
        "{}",
        hanging_in(
            out.width(),
            "",
            "How to measure one of them: guardrule items height"
        )
    )?;
    deferral(out)
}

/// One item: what it is, how to measure it, what to write.
///
/// # Errors
/// Those of `out`.
pub fn item(out: &mut TextPage<'_>, item: Item) -> io::Result<()> {
    let info = item.info();
    writeln!(out, "{}", palette::heading(info.name))?;
    writeln!(out, "{}", hanging_in(out.width(), "", info.means))?;
    if !info.synonyms.is_empty() {
        let also = format!("Also understood: {}.", info.synonyms.join(", "));
        writeln!(out, "{}", hanging_in(out.width(), "", &also))?;
    }
    writeln!(out, "\n{}", palette::heading("How to"))?;
    for (number, step) in (1..).zip(info.how) {
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), &format!("  {number}. "), step)
        )?;
    }
    pictures(out, info.pictured)?;
    writeln!(out, "\n{}", palette::heading("What to write"))?;
    for example in info.examples {
        writeln!(out, "{}", hanging_in(out.width(), "  ", example))?;
    }
    words(out, item)?;
    writeln!(
        out,
        "{}",
        hanging_in(out.width(), "  ", could_not_look(info.none_allowed))
    )?;
    if !info.hazards.is_empty() {
        let hazards: Vec<&str> = info.hazards.iter().map(|hazard| hazard.name()).collect();
        let line = format!("Bears on: {}.", hazards.join(", "));
        writeln!(out, "\n{}", hanging_in(out.width(), "", &line))?;
    }
    writeln!(out)?;
    deferral(out)
}

/// Each drawing under its caption, so that a screen reader says it in words first.
fn pictures(out: &mut TextPage<'_>, pictured: Pictured) -> io::Result<()> {
    let drawings = match pictured {
        Pictured::By(drawings) => drawings,
        Pictured::Not(_) => return Ok(()),
    };
    writeln!(out, "\n{}", palette::heading("Where the tape goes"))?;
    for (number, drawing) in drawings.iter().enumerate() {
        if number > 0 {
            writeln!(out)?;
        }
        let scene = drawing.scene();
        writeln!(out, "{}\n", hanging_in(out.width(), "  ", scene.caption))?;
        let lines = plain(scene);
        let widest = lines.iter().map(|line| display_width(line)).max();
        let indent = out.width().saturating_sub(widest.unwrap_or(0)).min(4);
        for line in lines {
            writeln!(out, "{}", format!("{:indent$}{line}", "").trim_end())?;
        }
    }
    Ok(())
}

const fn could_not_look(none_allowed: bool) -> &'static str {
    if none_allowed {
        "none: looked, and there is none. not reached: could not look."
    } else {
        "not reached: could not look."
    }
}

fn words(out: &mut TextPage<'_>, item: Item) -> io::Result<()> {
    let Kind::Words(words) = item.info().kind else {
        return Ok(());
    };
    writeln!(out, "\n{}", palette::heading("The words"))?;
    for word in words {
        let label = format!("  {:<24}", word.name);
        let also = match word.synonyms {
            [] => String::new(),
            synonyms => format!("also: {}", synonyms.join(", ")),
        };
        writeln!(out, "{}", hanging_in(out.width(), &label, &also).trim_end())?;
    }
    writeln!(out)
}
