//! A comparison for reading.

use std::io;
use std::io::Write;

use crate::judge::Authority;
use crate::report::ReportBasis;
use crate::report::compared::told::ComparisonTold;
use crate::report::palette;
use crate::report::reader;
use crate::report::told::DEFERRAL;
use crate::report::wrap::Lines;

pub(super) fn write(
    out: &mut dyn Write,
    basis: &ReportBasis<'_>,
    told: &ComparisonTold,
) -> io::Result<()> {
    let mut lines = Lines::new(basis.width);
    lines.spread("", "", &told.head);
    lines.spread("", "", &told.counts);
    if told.authority == Authority::Guidance {
        lines.spread("", "", "NO BUILDING RULES WERE CHECKED, only advice.");
    }
    for part in told.parts() {
        lines.gap();
        lines.push(palette::heading(&part.heading.to_uppercase()));
        for (name, changes) in part.guards {
            let each: Vec<String> = changes
                .iter()
                .map(|change| format!("{}: {} ({}).", change.what, change.says, change.by()))
                .collect();
            lines.spread("  ", "     ", &format!("{name}. {}", each.join(" ")));
        }
    }
    if !told.not_entered.is_empty() {
        lines.gap();
        lines.push(palette::heading("NOT ENTERED THIS TIME"));
        for (name, why, before) in &told.not_entered {
            let why = if why.is_empty() {
                String::new()
            } else {
                format!(" (\"{why}\")")
            };
            let text = format!("{name}{why}; before: {}.", reader::verdict(*before));
            lines.spread("  ", "     ", &text);
        }
    }
    if !told.questions.is_empty() {
        lines.gap();
        lines.push(palette::heading("IN ONE ROUND ALONE"));
        for question in &told.questions {
            lines.spread("  ", "     ", question);
        }
    }
    if !told.unchanged.is_empty() {
        lines.gap();
        let names = reader::listed(&told.unchanged);
        lines.spread("", "  ", &format!("Nothing to say of: {names}."));
    }
    lines.gap();
    let taken = "A change counts where the readings differ by more than twice the tapes' doubt together. \
What nobody measured again is not taken as mended.";
    lines.spread("", "", taken);
    lines.spread("", "", &told.judged_by);
    lines.spread("", "", DEFERRAL);
    writeln!(out, "{}", lines.joined())
}
